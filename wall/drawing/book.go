package drawing

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

//go:embed book.tmpl template.tmpl survey.tmpl page.css
var texts embed.FS

// File is one file of a job book.
type File struct {
	Name string
	Body []byte
}

// page is what the text of the book is made from.
type page struct {
	scribe
	Plan      plan.Plan
	Style     template.CSS
	Templates bool // there are cutting lines worth a template
	drawn     map[string]*Picture
	small     map[string]*Picture // for a phone, of those that are wide, by the same name
	order     []*Picture
}

// Book returns the files of the job book: book.html, one SVG for each drawing,
// and, where there is something to saw round, the full-size templates for US
// Letter and A4. The first file is the book.
func Book(p plan.Plan) (files []File, err error) {
	defer fraction.Catch(&err)
	b := &page{scribe: newScribe(p), Plan: p, drawn: map[string]*Picture{}, small: map[string]*Picture{}}
	b.Style = style()
	cuts := cutLines(p)
	b.Templates = len(cuts) > 0
	b.draw()
	body, err := b.execute("book.tmpl", b)
	if err != nil {
		return nil, err
	}
	files = append(files, File{"book.html", body})
	for _, picture := range b.order {
		files = append(files, File{picture.Name + ".svg", picture.SVG()})
	}
	for _, paper := range Papers() {
		if !b.Templates {
			break
		}
		body, err := b.templates(cuts, paper)
		if err != nil {
			return nil, err
		}
		files = append(files, File{"templates-" + paper.Size + ".html", body})
	}
	return files, nil
}

// style is the style sheet of the pages with that of the drawings.
func style() template.CSS {
	css, err := texts.ReadFile("page.css")
	if err != nil {
		panic(err) // embedded: it cannot be missing
	}
	return template.CSS(drawingStyle + string(css))
}

// draw makes every picture once, and those that are wider than a phone once
// more for a phone.
func (b *page) draw() {
	keep := func(p *Picture) {
		b.drawn[p.Name] = p
		b.order = append(b.order, p)
	}
	small := func(name string, p *Picture) { b.small[name] = p }
	if len(b.Plan.Runs) > 0 {
		keep(drawRoom(b.scribe, wideInk))
		small("room", drawRoom(b.scribe, halfInk))
	}
	for i := range b.Plan.Runs {
		keep(drawElevation(b.scribe, i, wideInk))
		small(ref("run-%d", i+1), drawElevation(b.scribe, i, halfInk))
		for _, right := range []bool{false, true} {
			if end := drawEnd(b.scribe, i, right); end != nil {
				keep(end)
			}
		}
	}
	for i := range b.Plan.Sheets {
		keep(drawSheet(b.scribe, i))
	}
	for i, piece := range b.Plan.Pieces {
		if odd(piece) || len(piece.Weak) > 0 {
			face := drawPieceSide(b.scribe, i, false, halfInk)
			if wide(piece) {
				onPhone := face
				face = drawPieceSide(b.scribe, i, false, wideInk)
				small(face.Name, onPhone)
			}
			keep(face)
			keep(drawPieceSide(b.scribe, i, true, halfInk))
		}
	}
}

// execute fills one of the embedded texts.
func (b *page) execute(name string, data any) ([]byte, error) {
	funcs := template.FuncMap{
		"length":   b.unbroken,
		"within":   b.within,
		"minus":    func(a, b fraction.Length) fraction.Length { return a.Sub(b) },
		"apart":    func(a, b fraction.Length) fraction.Length { return a.Sub(b).Abs() },
		"ratio":    decimalOf,
		"money":    money,
		"count":    func(i int) int { return i + 1 },
		"picture":  b.picture,
		"has":      func(name string) bool { return b.drawn[name] != nil },
		"letter":   func(i int) string { return CornerLetter(b.Plan, i) },
		"corner":   plan.CornerName,
		"text":     fmt.Sprintf,
		"pieces":   b.labels,
		"sheetOf":  b.sheetOf,
		"piece":    func(number int) plan.Piece { return b.Plan.Pieces[b.pieceIndex(number)] },
		"unit":     b.unit,
		"sentence": sentence,
		"capital":  capital,
		"cost":     func(r plan.Blemish) bool { return r.Cost.Sign() > 0 },
		"flaw":     b.flaw,
		"sheets":   func() string { return sheets(b.Plan) },
		"panels":   func() string { return panels(b.Plan) },
		"one":      one,
		"trim":     func(at fraction.Length) fraction.Length { return at.Add(b.Plan.Saw.Kerf) },
		"counted":  counting,
		"pole":     b.poleRows,
		"installed": func() bool {
			return slices.ContainsFunc(b.Plan.Runs, func(r plan.Run) bool { return len(r.Installed) > 0 })
		},
		"wide":   wide,
		"parted": parted,
		"corners": func() bool {
			return slices.ContainsFunc(b.Plan.Runs, func(r plan.Run) bool { return r.CornerRight != nil })
		},
	}
	parsed, err := template.New(name).Funcs(funcs).ParseFS(texts, name)
	if err != nil {
		return nil, err
	}
	var w bytes.Buffer
	if err := parsed.Execute(&w, data); err != nil {
		return nil, err
	}
	return w.Bytes(), nil
}

// within is a closing error as a tape shows it, rounded up.
func (b *page) within(closing fraction.Length) string {
	up, _ := closing.Round(b.tape.Mark, fraction.Up)
	return b.unbroken(up)
}

// unit is the name of the unit that people read.
func (b *page) unit() string {
	switch b.tape.Unit {
	case fraction.Millimetre:
		return "millimetres"
	case fraction.Centimetre:
		return "centimetres"
	}
	return "inches"
}

// wholeAndFraction is the space after a whole number: before its fraction or its
// unit.
var wholeAndFraction = regexp.MustCompile(`(\d) (\d+/|mm|cm)`)

// unbroken writes a length whose whole, fraction and unit stay on one line.
func (b *page) unbroken(l fraction.Length) string {
	return wholeAndFraction.ReplaceAllString(b.tape.Format(l), "$1\u00a0$2")
}

// caution is a caution in its parts.
type caution struct{ First, Rest, Reason string }

// parted parts a caution into its first sentence, the rest of what it says, and
// why it is there.
func parted(text string) caution {
	text, reason, found := strings.Cut(text, " (Raised because ")
	if found {
		reason = "(Raised because " + reason
	}
	first, rest, found := strings.Cut(text, ". ")
	if found {
		first += "."
	}
	return caution{first, rest, reason}
}

// flaw is the number of blemish i in the table and on the drawings: those that
// cost nothing have none.
func (s scribe) flaw(i int) int {
	number := 1
	for _, b := range s.plan.Blemishes[:i] {
		if b.Cost.Sign() > 0 {
			number++
		}
	}
	return number
}

// counting writes a number with its noun, given for many.
func counting(n int, many string) string {
	if n == 1 {
		return "1 " + one(many)
	}
	return fmt.Sprint(n, " ", many)
}

// poleRow is one row of the table of a story pole.
type poleRow struct {
	At   fraction.Length
	What []string
}

// poleRows are the marks of a story pole, those at one place in one row.
func (b *page) poleRows(run plan.Run) []poleRow {
	var rows []poleRow
	for _, m := range run.StoryPole {
		if last := len(rows) - 1; last >= 0 && rows[last].At == m.At {
			rows[last].What = append(rows[last].What, m.What)
		} else {
			rows = append(rows, poleRow{m.At, []string{m.What}})
		}
	}
	return rows
}

// sentence begins a text with a capital and ends it with a full stop.
func sentence(text string) string {
	text = capital(strings.TrimSpace(text))
	if text != "" && !strings.ContainsAny(text[len(text)-1:], ".!?") {
		text += "."
	}
	return text
}

// capital begins a text with a capital.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

// picture is a drawing as part of a page: a wide one with another beside it that
// takes its place on a phone.
func (b *page) picture(name string) template.HTML {
	large, small := b.drawn[name], b.small[name]
	if small == nil {
		return template.HTML(large.markup(false))
	}
	return template.HTML(fmt.Sprintf("<div class=\"across\" style=\"--natural:%spx\">%s</div>\n<div class=\"onphone\" style=\"--natural:%spx\">%s</div>",
		ink(large.Width), large.markup(false), ink(small.Width), small.markup(false)))
}

// labels lists the labels of some pieces.
func (b *page) labels(numbers []int) string {
	var all []string
	for _, number := range numbers {
		if i := b.pieceIndex(number); i >= 0 {
			all = append(all, b.Plan.Pieces[i].Label)
		}
	}
	return strings.Join(all, ", ")
}

// sheetOf is the number of the sheet that a piece is cut from, or a dash.
func (b *page) sheetOf(number int) string {
	for _, sheet := range b.Plan.Sheets {
		for _, placed := range sheet.Placements {
			if placed.Piece == number {
				return fmt.Sprint(sheet.Number)
			}
		}
	}
	return "–"
}

// decimalOf writes a ratio to two places, ties away from zero, with a sign if
// that is not exact.
func decimalOf(r fraction.Ratio) string {
	text := r.Rat().FloatString(2)
	if exact, err := decimal.NewFromString(text); err == nil && exact.Rat().Cmp(r.Rat()) != 0 {
		return "~" + text
	}
	return text
}

// money writes an amount with two places, or a dash where there is none.
func money(d *decimal.Decimal) string {
	if d == nil {
		return "–"
	}
	return d.StringFixed(2)
}

// leaf is one page of the templates: one picture, or more that share it.
type leaf struct {
	Picture template.HTML
	Cells   []placed
}

// placed is a picture and where it stands on its page.
type placed struct {
	Style   template.CSS
	Picture template.HTML
}

// sharing returns the pages of the templates that are small.
func (b *page) sharing(small []cell, paper Paper) []leaf {
	var leaves []leaf
	_, foot := paper.shared()
	for n, cells := range share(small, paper) {
		at := func(x, y float64, pic *Picture) placed {
			return placed{template.CSS(fmt.Sprintf("left:%.4fin;top:%.4fin", x+pageMargin, y+pageMargin)), template.HTML(pic.markup(false))}
		}
		var one leaf
		for _, c := range cells {
			one.Cells = append(one.Cells, at(c.x, c.y, drawTile(b.scribe, c.tiling, c.tiles[0], c.number)))
		}
		one.Cells = append(one.Cells, at(0, foot, drawRuler(paper, n+1)))
		leaves = append(leaves, one)
	}
	return leaves
}

// chart is one cutting line on the front page of the templates.
type chart struct {
	Map     template.HTML
	Piece   string
	What    string
	Pages   string
	Skipped bool
}

// templates returns the pages of full-size templates for one paper.
func (b *page) templates(cuts []cutLine, paper Paper) ([]byte, error) {
	var data struct {
		Title  string
		Paper  Paper
		Style  template.CSS
		Square template.HTML
		Fronts [][]chart // the charts of each front page
		Leaves []leaf
	}
	data.Title, data.Paper, data.Style = b.Plan.Title, paper, b.Style
	data.Square = template.HTML(drawSquare().markup(false))
	var charts []chart
	var small []cell
	for i, cut := range cuts {
		t := cut.tile(paper)
		if c, ok := cut.small(paper, b.Plan.Profile, i+1); ok && len(t.tiles) == 1 {
			small = append(small, c)
			continue
		}
		one := chart{Map: template.HTML(drawMap(t, i+1).markup(false)), Piece: cut.piece.Label, What: cut.what}
		var names []string
		for _, tile := range t.tiles {
			if !tile.needed {
				one.Skipped = true
				continue
			}
			names = append(names, tile.name)
			data.Leaves = append(data.Leaves, leaf{Picture: template.HTML(drawTile(b.scribe, t, tile, i+1).markup(false))})
		}
		one.Pages = strings.Join(names, " ")
		charts = append(charts, one)
	}
	data.Leaves = append(b.sharing(small, paper), data.Leaves...)
	const onFirst, onOther = 2, 6 // charts that a front page has room for
	for n := onFirst; len(charts) > 0 || len(data.Fronts) == 0; n = onOther {
		n = min(n, len(charts))
		data.Fronts = append(data.Fronts, charts[:n])
		charts = charts[n:]
	}
	return b.execute("template.tmpl", data)
}

// drawSquare returns the square that shows whether the printer kept the scale.
func drawSquare() *Picture {
	const side = CheckSquare * perInch
	pic := newPicture("check-square", "Square to check the printer's scale")
	pic.Desc = "A square of three inches, 76.2 mm, a side."
	pic.Width, pic.Height = side+20, side+20
	pic.add("path", "class", "square", "d", fmt.Sprintf("M10 10h%sv%sh-%sz", ink(side), ink(side), ink(side)))
	line{"3 in = 76.2 mm a side"}.write(&pic.root, "bold", pic.Width/2, pic.Height/2, "middle")
	line{"from line to line, both ways"}.write(&pic.root, "", pic.Width/2, pic.Height/2+16, "middle")
	return pic
}
