package drawing

import (
	"fmt"
	"math"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/plan"
)

// Full-size templates: 96 units of ink are one inch on paper.
const (
	perInch     = 96.0
	pageMargin  = 0.5  // inches left white round each page; printers cannot reach further out
	pageFoot    = 0.75 // inches under the drawing for the ruler and the page's name
	pageOverlap = 0.5  // inches that neighboring pages share
	aroundLine  = 1.0  // inches of board shown round a cutting line
	mostPages   = 26   // in a row or a column, which letters name
)

// Paper is a size of paper.
type Paper struct {
	Name          string
	Size          string  // its name in a style sheet
	Width, Height float64 // inches
}

// Papers returns the sizes that templates are made for. The figures are those of ISO 216 (A4, 210
// by 297 mm) and ANSI/ASME Y14.1 (letter, 8 1/2 by 11 in).
func Papers() []Paper {
	return []Paper{{"US Letter", "letter", 8.5, 11}, {"A4", "a4", 210 / 25.4, 297 / 25.4}}
}

// check returns a fault for a paper that has no room for a template.
func (p Paper) check() error {
	if w, h := p.page(pageFoot); !(w >= CheckSquare && h >= CheckSquare && w < 1000 && h < 1000) { // not a number is no size either
		return &fault.Fault{Path: fault.Of("Paper"), Value: fmt.Sprintf("%v by %v in", p.Width, p.Height), Want: "a size such as 8.5 by 11 in"}
	}
	return nil
}

// page is what a page has to draw on beside its margins and its foot.
func (p Paper) page(foot float64) (w, h float64) {
	return p.Width - 2*pageMargin, p.Height - 2*pageMargin - foot
}

// tile is one page's part of a cutting line, in piece coordinates, inches.
type tile struct {
	name       string
	x, y, w, h float64
	needed     bool // false: only a straight passes through, or nothing at all
	shared     bool // it has a page together with others
}

// tiling lays pages over a cutting line.
type tiling struct {
	cut   cutLine
	paper Paper
	tiles []tile // rows from the top down
	tile         // what they show together
}

// pages is how many pages cover the line and the board round it.
func (c cutLine) pages(paper Paper) (across, down int) {
	pages := func(size, page float64) int {
		return max(1, int(math.Ceil(min(mostPages+1, (size-pageOverlap)/(page-pageOverlap))-1e-9)))
	}
	lo, hi := cutout.Bounds(c.points)
	w, h := paper.page(pageFoot)
	return pages(hi.X.Sub(lo.X).Float64()+2*aroundLine, w), pages(hi.Y.Sub(lo.Y).Float64()+2*aroundLine, h)
}

// tile covers the line and the board round it with as few pages as go, in the middle of them.
func (c cutLine) tile(paper Paper) tiling {
	across, down := c.pages(paper)
	lo, hi := cutout.Bounds(c.points)
	w, h := paper.page(pageFoot)
	t := tiling{cut: c, paper: paper}
	t.w, t.h = float64(across)*(w-pageOverlap)+pageOverlap, float64(down)*(h-pageOverlap)+pageOverlap
	t.x = (lo.X.Float64() + hi.X.Float64() - t.w) / 2
	t.y = (lo.Y.Float64() + hi.Y.Float64() - t.h) / 2
	for row := range down {
		for column := range across {
			x, y := t.x+float64(column)*(w-pageOverlap), t.y+float64(down-1-row)*(h-pageOverlap)
			one := tile{name: fmt.Sprintf("%c%d", 'A'+row, column+1), x: x, y: y, w: w, h: h}
			one.needed = across*down == 1 || one.turns(c)
			t.tiles = append(t.tiles, one)
		}
	}
	return t
}

// turns reports whether the line turns or ends within the page. Where it only passes straight
// through, a straightedge between the pages on both sides does better than paper.
func (t tile) turns(c cutLine) bool {
	return slices.ContainsFunc(c.points, func(p plan.Point) bool {
		x, y := p.X.Float64(), p.Y.Float64()
		return x >= t.x && x <= t.x+t.w && y >= t.y && y <= t.y+t.h
	})
}
