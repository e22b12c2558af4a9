package book

import (
	"bytes"
	"embed"
	"errors"
	"fmt"
	"html/template"
	"regexp"
	"slices"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/plan"
)

//go:embed book.tmpl template.tmpl survey.tmpl starter.tmpl
var texts embed.FS

//go:embed page.css
var pageStyle string

// File is one file of a job book.
type File struct {
	Name string
	Body []byte
}

// page is what the text of the book is made from.
type page struct {
	*text
	Plan      plan.Plan
	Date      string // of the book, if it has one
	Style     template.CSS
	Templates bool // there are cutting lines worth a template
	drawn     map[string]drawing.Picture
	pictures  []File
}

// Files returns the files of a plan's job book: book.html, one SVG for each drawing, and, where
// there is something to saw round, the full-size templates for US Letter and A4. The first file is
// the book.
func Files(p plan.Plan) ([]File, error) { return Dated(p, "") }

// Dated returns the files of [Files] with a date, in any words, at the head of the book and at the
// foot of each printed page.
func Dated(p plan.Plan, date string) (files []File, err error) {
	defer fraction.Catch(&err)
	b := &page{Date: date, text: &text{tape: p.TapeMeasure()}, Plan: p, drawn: map[string]drawing.Picture{}, Style: style()}
	if err := b.draw(); err != nil {
		return nil, err
	}
	var templates []File
	for _, paper := range drawing.Papers() {
		if set := fraction.Must(drawing.Templates(p, paper)); len(set.Pages) > 0 {
			templates = append(templates, File{"templates-" + paper.Size + ".html", fraction.Must(b.templates(set, paper))})
		}
	}
	b.Templates = len(templates) > 0
	book := File{"book.html", fraction.Must(execute("book.tmpl", b.funcs(), b))}
	return slices.Concat([]File{book}, b.pictures, templates), nil
}

// style is the style sheet of the pages with that of the drawings.
func style() template.CSS { return template.CSS(drawing.Style() + pageStyle) }

// draw makes every picture once.
func (b *page) draw() (failed error) {
	keep := func(p drawing.Picture, err error) {
		failed = errors.Join(failed, err)
		if err == nil {
			b.drawn[p.Name] = p
			b.pictures = append(b.pictures, File{p.Name + ".svg", p.SVG()})
		}
	}
	if len(b.Plan.Runs) > 0 {
		keep(drawing.Unfolded(b.Plan))
		keep(drawing.Preview(b.Plan))
		keep(drawing.Room(b.Plan))
	}
	for i, run := range b.Plan.Runs {
		keep(drawing.Elevation(b.Plan, i))
		if len(run.Panels) > 0 && b.Plan.Profile.Pitch.Sign() > 0 {
			keep(drawing.End(b.Plan, i, false))
			keep(drawing.End(b.Plan, i, true))
		}
		if drawing.CornerLetter(b.Plan, i) != "" {
			keep(drawing.Corner(b.Plan, i))
		}
		if strip, err := drawing.FittingStrip(b.Plan, i); err == nil { // a run of one piece has none
			keep(strip, nil)
		}
	}
	for i, sheet := range b.Plan.Sheets {
		if !crosscut(b.Plan, sheet) {
			keep(drawing.Sheet(b.Plan, i))
		}
	}
	for i, piece := range b.Plan.Pieces {
		if !piece.Plain() || len(piece.Weak) > 0 {
			keep(drawing.Piece(b.Plan, i, false))
			keep(drawing.Piece(b.Plan, i, true))
		}
	}
	return failed
}

// funcs are what the texts of the pages call.
func (b *page) funcs() template.FuncMap {
	return template.FuncMap{
		"length": b.unbroken, "picture": b.picture, "strokes": strokes, "alike": alike, "lengths": lengths, "fitted": fitted, "priced": priced,
		"setting": b.setting, "leaf": b.leaf, "ends": b.ends, "drawn": drawing.PieceName, "onArc": drawing.OnArc, "buying": func() string { return b.buying(b.Plan) }, "doubt": b.doubt, "choice": b.choice, "why": b.why, "way": way, "where": b.where,
		"item": Item, "quantity": Quantity, "how": How, "step": Step, "caution": cautioned, "taxed": taxed, "besides": besides,
		"sheet": sheetWord, "panel": panelWord, "pieces": labels, "pole": poleMarks, "waste": waste, "from": measuredFrom,
		"letter": drawing.CornerLetter, "flaw": drawing.BlemishNumber, "corner": plan.CornerName, "ratio": rounded, "describe": describe,
		"sentence": sentence, "capital": capital, "counted": count, "place": func(w warning.Warning) string { return placeName(b.Plan, w) }, "point": pointName, "text": fmt.Sprintf,
		"within": func(closing fraction.Length) string {
			up, _ := closing.Round(b.tape.Mark, fraction.Up)
			return b.unbroken(up)
		},
		"money":   func(a money.Amount) string { return cents(a, "–") },
		"count":   func(i int) int { return i + 1 },
		"has":     func(name string) bool { _, ok := b.drawn[name]; return ok },
		"wide":    func(name string) bool { _, wide := b.drawn[name].Narrow(); return wide },
		"wayOut":  func(w cutout.WayOut) string { return wayOutWords[w] },
		"kind":    func(k fmt.Stringer) string { return capital(k.String()) },
		"piece":   func(number int) plan.Piece { piece, _ := b.Plan.Piece(number); return piece },
		"between": b.between, "given": b.given,
		"element": func(p drawing.Picture) template.HTML { return template.HTML(p.Element()) },
	}
}

// leaf is the title of the job, and the date, as a string of a style sheet, at the foot of each
// printed page.
func (b *page) leaf() template.CSS {
	quoted := ""
	for _, r := range strings.Trim(b.Plan.Title+" · "+b.Date, "· ") {
		quoted += fmt.Sprintf(`\%06x`, r)
	}
	return template.CSS(`"` + quoted + `"`)
}

// ends names the drawings of what is at both ends of run i: the end itself, or the corner that it
// has to the right of it.
func (b *page) ends(i int) (names []string) {
	before := (i + len(b.Plan.Runs) - 1) % len(b.Plan.Runs)
	left, right, corner := fmt.Sprintf("run-%d-left-end", i+1), fmt.Sprintf("run-%d-right-end", i+1), fmt.Sprintf("corner-%d", i+1)
	if _, ok := b.drawn[left]; ok && b.Plan.Runs[before].CornerRight == nil {
		names = append(names, left)
	}
	if _, ok := b.drawn[corner]; ok {
		return append(names, corner)
	}
	if _, ok := b.drawn[right]; ok {
		names = append(names, right)
	}
	return names
}

// execute fills one of the embedded texts.
func execute(name string, funcs template.FuncMap, data any) ([]byte, error) {
	parsed, err := template.New(name).Funcs(funcs).ParseFS(texts, name)
	if err != nil {
		return nil, err
	}
	var w bytes.Buffer
	err = parsed.Execute(&w, data)
	return w.Bytes(), err
}

// wholeAndFraction is the space after a whole number: before its fraction or its unit.
var wholeAndFraction = regexp.MustCompile(`(\d) (\d+/|mm\b|cm\b)`)

// unbroken writes a length whose whole, fraction and unit stay on one line.
func (b *page) unbroken(l fraction.Length) string {
	return wholeAndFraction.ReplaceAllString(b.tape.Format(l), "$1\u00a0$2")
}

// picture is a drawing as part of a page: a wide one with another beside it that takes its place on
// a phone.
func (b *page) picture(name string) template.HTML {
	large := b.drawn[name]
	small, ok := large.Narrow()
	if !ok {
		return template.HTML(large.Element())
	}
	return template.HTML(fmt.Sprintf("<div class=\"across\" style=\"--natural:%.5gpx\">%s</div>\n<div class=\"onphone\" style=\"--natural:%.5gpx\">%s</div>",
		large.Width, large.Element(), small.Width, small.Element()))
}

// templates returns the pages of full-size templates for one paper.
func (b *page) templates(set drawing.TemplateSet, paper drawing.Paper) ([]byte, error) {
	const onFirst, onOther = 2, 6 // maps that a front page has room for
	data := struct {
		Title  string
		Paper  drawing.Paper
		Style  template.CSS
		Fronts [][]drawing.TemplateMap // the maps of each front page
		drawing.TemplateSet
	}{b.Plan.Title, paper, b.Style, nil, set}
	for n, maps := onFirst, set.Maps; len(maps) > 0 || len(data.Fronts) == 0; n = onOther {
		n = min(n, len(maps))
		data.Fronts = append(data.Fronts, maps[:n])
		maps = maps[n:]
	}
	return execute("template.tmpl", b.funcs(), data)
}
