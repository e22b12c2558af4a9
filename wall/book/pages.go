package book

import (
	"embed"
	"errors"
	"fmt"
	"html/template"
	"slices"
	"strconv"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/plan"
)

//go:embed book.tmpl legend.tmpl template.tmpl survey.tmpl starter.tmpl
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
	Contents  []chapter
	every     []sign // of the legends
	drawn     map[string]rendered
	sheets    []string // numbers of those that have a leaf
	odd       []string // labels of pieces that have one,
	leaves    []*leaf  // and these
	exact     float64  // what sides of a piece on a page are drawn one to, 0 for anything
	pictures  []rendered
}

// Files returns the files of a plan's job book: first book.html, then one SVG for each drawing and,
// where there is something to saw round, the full-size templates for US Letter and A4.
func Files(p plan.Plan) ([]File, error) { return Dated(p, "") }

// Dated is [Files] with a date, in any words, at the head of the book and the foot of printed pages.
func Dated(p plan.Plan, date string) (files []File, err error) {
	defer fraction.Catch(&err)
	b := newPage(p, date)
	b.draw()
	b.drawPieces()
	drafts := []*draft{{File{Name: "book.html"}, func() []byte { return fraction.Must(execute("book.tmpl", b.funcs(), b)) }}}
	for _, made := range b.pictures {
		drafts = append(drafts, &draft{File{Name: made.Name + ".svg"}, made.SVG})
	}
	for _, paper := range drawing.Papers() {
		if set := fraction.Must(drawing.Templates(p, paper)); len(set.Pages) > 0 {
			b.Templates = true
			drafts = append(drafts, &draft{File{Name: "templates-" + paper.Size + ".html"}, func() []byte { return fraction.Must(b.templates(set, paper)) }})
		}
	}
	inParallel(drafts, func(d *draft) { d.Body = d.write() })
	for _, d := range drafts {
		files = append(files, d.File)
	}
	return files, nil
}

func newPage(p plan.Plan, date string) *page {
	return &page{Date: date, text: &text{tape: p.TapeMeasure(), shop: true}, Plan: p, drawn: map[string]rendered{}, Style: style()}
}

// draft is a file that is not written yet.
type draft struct {
	File
	write func() []byte
}

// style is the style sheet of the pages with that of the drawings.
func style() template.CSS { return template.CSS(drawing.Style() + pageStyle) }

// sketch is a picture on its way to the book.
type sketch struct {
	make func() (drawing.Picture, error)
	may  bool // be missing, where there is nothing to draw
	made rendered
}

// draw makes every picture once, several at a time.
func (b *page) draw() {
	var all []*sketch
	keep := func(make func() (drawing.Picture, error)) *sketch {
		all = append(all, &sketch{make: make})
		return all[len(all)-1]
	}
	each := func(i int, draw func(p plan.Plan, i int) (drawing.Picture, error)) *sketch {
		return keep(func() (drawing.Picture, error) { return draw(b.Plan, i) })
	}
	for _, draw := range []func(plan.Plan) (drawing.Picture, error){drawing.Unfolded, drawing.Preview, drawing.Room, drawing.Joint} {
		keep(func() (drawing.Picture, error) { return draw(b.Plan) }).may = true // where there is no run, and no joint of boards
	}
	for i, run := range b.Plan.Runs {
		each(i, drawing.Elevation)
		if b.sectioned(i) == i {
			each(i, drawing.Section)
		}
		if before := (i + len(b.Plan.Runs) - 1) % len(b.Plan.Runs); b.Plan.Runs[before].CornerRight == nil {
			keep(func() (drawing.Picture, error) { return drawing.End(b.Plan, i, false) }).may = true
		}
		if run.CornerRight != nil {
			each(i, drawing.Corner)
		} else {
			keep(func() (drawing.Picture, error) { return drawing.End(b.Plan, i, true) }).may = true
		}
		each(i, drawing.FittingStrip).may = true // a run of one piece has none
	}
	for i, sheet := range b.Plan.Sheets {
		if !crosscut(b.Plan, sheet) {
			b.sheets = append(b.sheets, strconv.Itoa(sheet.Number))
			each(i, drawing.Sheet)
		}
	}
	for i, piece := range b.Plan.Pieces {
		if odd(b.Plan, piece) {
			b.odd, b.leaves = append(b.odd, piece.Label), append(b.leaves, &leaf{at: i, n: len(b.leaves), piece: piece})
		}
	}
	b.Contents = b.contents()
	b.every = b.legend()
	inParallel(all, func(s *sketch) {
		if pic, err := s.make(); !s.may || !errors.As(err, new(*fault.Fault)) {
			s.made = b.render(fraction.Must(pic, err))
		}
	})
	for _, s := range all {
		if s.made.shown != nil {
			b.keep(s.made)
		}
	}
}

// keep keeps a picture for the book, and as a file.
func (b *page) keep(made rendered) { b.drawn[made.Name], b.pictures = made, append(b.pictures, made) }

// leaf is the title of the job and the date as a string of a style sheet, at the foot of each page.
func (b *page) leaf() template.CSS {
	quoted := ""
	for _, r := range strings.Trim(b.Plan.Title+" · "+b.Date, "· ") {
		quoted += fmt.Sprintf(`\%06x`, r)
	}
	return template.CSS(`"` + quoted + `"`)
}

// picture is a drawing as part of a page: a wide one with another for a phone.
func (b *page) picture(name string) template.HTML {
	large := b.drawn[name]
	of := func(attrs string, width float64, markup string) template.HTML {
		return template.HTML(fmt.Sprintf("<div %s style=\"--natural:%.5gpx\">%s</div>\n", attrs, width, markup))
	}
	if small, ok := large.Narrow(); ok {
		return of(`class="across"`, large.Width, large.shown[0].text) + of(`class="onphone"`, small.Width, large.shown[1].text)
	}
	return of(either(b.wide(name), `class="alone sideways" tabindex="0" role="group" aria-label="Wide drawing"`, `class="alone"`), large.Width, large.shown[0].text)
}

// templates returns the pages of full-size templates for one paper.
func (b *page) templates(set drawing.TemplateSet, paper drawing.Paper) ([]byte, error) {
	const onFirst, onOther = 2, 6 // maps that a front page has room for
	first := min(onFirst, len(set.Maps))
	fronts := slices.AppendSeq([][]drawing.TemplateMap{set.Maps[:first]}, slices.Chunk(set.Maps[first:], onOther)) // the maps of each
	return execute("template.tmpl", b.funcs(), map[string]any{"Title": b.Plan.Title, "Paper": paper, "Style": b.Style, "Fronts": fronts, "Square": set.Square, "Pages": set.Pages})
}
