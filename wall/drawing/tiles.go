package drawing

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// Full-size templates: 96 units of ink are one inch on paper.
const (
	perInch     = 96.0
	pageMargin  = 0.5  // inches left white round each page; printers cannot reach further out
	pageFoot    = 0.75 // inches under the drawing for the ruler and the page's name
	pageOverlap = 0.5  // inches that neighboring pages share
	aroundLine  = 1.0  // inches of board shown round a cutting line
	mostPages   = 26   // in a row or a column
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

// tiling lays pages over a cutting line, or is a small template that shares one.
type tiling struct {
	cut          cutLine
	number       int // of the cutting line
	paper        Paper
	across, down int     // pages
	tiles        []tile  // rows from the top down
	tile                 // what they show together
	left, top    float64 // of a small one on its page, from the upper left of what the page can show
}

// tile covers the line and the board round it with as few pages as go, in the middle of them.
func (c cutLine) tile(paper Paper, number int) tiling {
	pages := func(size, page float64) int {
		return max(1, int(math.Ceil(min(mostPages+1, (size+2*aroundLine-pageOverlap)/(page-pageOverlap))-1e-9)))
	}
	lo, hi := cutout.Bounds(c.points)
	w, h := paper.page(pageFoot)
	across, down := pages(hi.X.Sub(lo.X).Float64(), w), pages(hi.Y.Sub(lo.Y).Float64(), h)
	t := tiling{cut: c, number: number, paper: paper, across: across, down: down}
	t.w, t.h = float64(across)*(w-pageOverlap)+pageOverlap, float64(down)*(h-pageOverlap)+pageOverlap
	t.x = (lo.X.Float64() + hi.X.Float64() - t.w) / 2
	t.y = (lo.Y.Float64() + hi.Y.Float64() - t.h) / 2
	printed := 0
	for row := range down {
		for column := range across {
			x, y := t.x+float64(column)*(w-pageOverlap), t.y+float64(down-1-row)*(h-pageOverlap)
			one := tile{x: x, y: y, w: w, h: h}
			// Where the line passes straight through, a straightedge between the pages on both sides does better than paper.
			one.needed = across*down == 1 || slices.ContainsFunc(c.points, func(p plan.Point) bool {
				return box{x, y, w, h}.holds(complex(p.X.Float64(), p.Y.Float64()))
			})
			if one.needed {
				printed++
				one.name = fmt.Sprint(printed)
			}
			t.tiles = append(t.tiles, one)
		}
	}
	return t
}

// cutLine is a line to saw that is worth a template: a hole, or a notch or curve of the outline.
type cutLine struct {
	piece  plan.Piece
	index  int // of the piece in the plan
	what   string
	points []plan.Point
	closed bool
	path   string // of the points in the plan
	first  int    // number of the first point there
	count  int    // of points in the whole ring
}

// cutLines lists what a plan needs templates for. A rectangular cutout that fits no page has none:
// two measurements and a straightedge mark it better. Nor has one as large as a house.
func cutLines(p plan.Plan) (found []cutLine) {
	for i, piece := range p.Pieces {
		for h, hole := range piece.Holes {
			found = append(found, cutLine{piece: piece, index: i, what: hole.Opening, points: hole.Outline, closed: true,
				path: ref("pieces[%d].holes[%d].outline", i, h), count: len(hole.Outline)})
		}
		for _, n := range fraction.Must(piece.Notches()) {
			found = append(found, cutLine{piece: piece, index: i, what: "notch", points: n.Points, path: ref("pieces[%d].outline", i), first: n.First, count: len(piece.Outline)})
		}
	}
	return slices.DeleteFunc(found, func(c cutLine) bool {
		most := either(c.square(), 1, mostPages)
		return len(c.points) == 0 || slices.ContainsFunc(Papers(), func(paper Paper) bool {
			t := c.tile(paper, 0)
			_, fits := c.small(paper, p.Profile, 0)
			return max(t.across, t.down) > most && !fits
		})
	})
}

// square reports whether every straight is level or plumb.
func (c cutLine) square() bool {
	for i := 1; i < len(c.points); i++ {
		if p, q := c.points[i-1], c.points[i]; p.X != q.X && p.Y != q.Y {
			return false
		}
	}
	return true
}

// line is the path of the line, seen in v.
func (c cutLine) line(v view) string {
	arcs := slices.DeleteFunc(slices.Clone(c.piece.Marks.Arcs), func(a plan.Arc) bool { return c.closed && a.Opening != c.what })
	return either(c.closed, v.curved(arcs, c.points), v.trace(arcs, c.points, false))
}

// Small templates share a page, in inches.
const (
	cellAcross = 0.6  // board shown beside a line, at least
	cellLeast  = 3.57 // across, so that figures have room: two go on a page
	cellUp     = 0.28 // board shown above and below it
	cellName   = 0.28 // for the name under each
	cellGap    = 0.08 // between neighbors
	sharedFoot = 0.45 // for the ruler at the foot of the page
)

// height is what a small template takes of its page, with its name.
func (t tiling) height() float64 { return t.h + cellName }

// small returns the line with a little board, and reports whether that fits a page and shows where
// the line lies: a bead, a groove or an edge of the piece.
func (c cutLine) small(paper Paper, profile plan.Profile, number int) (tiling, bool) {
	lo, hi := cutout.Bounds(c.points)
	beside := max(cellAcross, (cellLeast-hi.X.Sub(lo.X).Float64())/2)
	one := tile{name: "1", x: lo.X.Float64() - beside, y: lo.Y.Float64() - cellUp, needed: true, shared: true}
	one.w, one.h = hi.X.Float64()+beside-one.x, hi.Y.Float64()+cellUp-one.y
	found := tiling{cut: c, number: number, paper: paper, tiles: []tile{one}, tile: one}
	w, h := paper.page(sharedFoot)
	placed := one.x <= 0 || one.x+one.w >= c.piece.Width.Float64()
	for _, s := range profile.Stripes(zero, c.piece.Width, c.piece.LeftPhase) {
		placed = placed || s.Kind != groove.Flat && s.Left.Float64() >= one.x && s.Right.Float64() <= one.x+one.w
	}
	return found, placed && found.w <= w && found.height() <= h
}

// share lays small templates on pages in rows, the highest first, each into the first row with room
// (first-fit decreasing height).
func share(all []tiling, paper Paper) [][]tiling {
	type row struct {
		page            int
		top, high, used float64
	}
	w, h := paper.page(sharedFoot)
	all = slices.Clone(all)
	sort.SliceStable(all, func(i, j int) bool { return all[j].height() < all[i].height() })
	var rows []row
	var pages [][]tiling
	var filled []float64 // of each page, from the top
	for _, c := range all {
		at := slices.IndexFunc(rows, func(r row) bool { return r.used+c.w <= w && c.height() <= r.high })
		if at < 0 {
			page := slices.IndexFunc(filled, func(f float64) bool { return f+c.height() <= h })
			if page < 0 {
				page, pages, filled = len(pages), append(pages, nil), append(filled, 0)
			}
			at, rows = len(rows), append(rows, row{page: page, top: filled[page], high: c.height()})
			filled[page] += c.height() + cellGap
		}
		r := &rows[at]
		c.left, c.top = r.used, r.top
		r.used += c.w + cellGap
		pages[r.page] = append(pages[r.page], c)
	}
	return pages
}

// drawRuler returns the foot of a page that small templates share.
func drawRuler(paper Paper, page int, unit fraction.Unit) Picture {
	w, _ := paper.page(sharedFoot)
	pic := Picture{Name: ref("ruler-%s-%d", paper.Size, page), Desc: "Shows whether the printer kept the scale.", Width: w * perInch, Height: sharedFoot * perInch}
	word := pic.ruler(unit, w, 38)
	pic.Title = "Ruler of whole " + word
	line{"Full size: the ruler shows whole " + word + ". Cut the templates apart along their frames."}.write(&pic.node, "", 0, 14, "start")
	return pic
}
