package drawing

import (
	"cmp"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// Small templates share a page, in inches.
const (
	cellAcross = 0.6  // board shown beside a line, at least
	cellLeast  = 3.57 // across, so that figures have room: two go on a page
	cellUp     = 0.28 // board shown above and below it
	cellName   = 0.28 // for the name under each
	cellGap    = 0.08 // between neighbors
	sharedFoot = 0.45 // for the ruler at the foot of the page
)

// cell is a small template and its place on a page, from the upper left of what the page can show.
type cell struct {
	tiling
	number    int // of the cutting line
	left, top float64
}

func (c cell) height() float64 { return c.h + cellName }

// small returns the line with a little board, and reports whether that fits a page and shows where
// the line lies: a bead, a groove or an edge of the piece.
func (c cutLine) small(paper Paper, profile plan.Profile, number int) (cell, bool) {
	lo, hi := cutout.Bounds(c.points)
	beside := max(cellAcross, (cellLeast-hi.X.Sub(lo.X).Float64())/2)
	one := tile{name: "A1", x: lo.X.Float64() - beside, y: lo.Y.Float64() - cellUp, needed: true, shared: true}
	one.w, one.h = hi.X.Float64()+beside-one.x, hi.Y.Float64()+cellUp-one.y
	found := cell{tiling: tiling{cut: c, paper: paper, tiles: []tile{one}, tile: one}, number: number}
	w, h := paper.page(sharedFoot)
	placed := one.x <= 0 || one.x+one.w >= c.piece.Width.Float64()
	for _, s := range profile.Stripes(zero, c.piece.Width, c.piece.LeftPhase) {
		placed = placed || s.Kind != groove.Flat && s.Left.Float64() >= one.x && s.Right.Float64() <= one.x+one.w
	}
	return found, placed && found.w <= w && found.height() <= h
}

// share lays small templates on pages in rows, the highest first, each into the first row with room
// (first-fit decreasing height).
func share(all []cell, paper Paper) [][]cell {
	type row struct {
		page            int
		top, high, used float64
	}
	w, h := paper.page(sharedFoot)
	all = slices.Clone(all)
	slices.SortStableFunc(all, func(a, b cell) int { return cmp.Compare(b.height(), a.height()) })
	var rows []row
	var pages [][]cell
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
	word := rulerWord(unit)
	pic := Picture{Name: ref("ruler-%s-%d", paper.Size, page), Title: "Ruler of whole " + word, Desc: "Shows whether the printer kept the scale.", Width: w * perInch, Height: sharedFoot * perInch}
	line{"Full size: the ruler shows whole " + word + ". Cut the templates apart along their frames."}.write(&pic.node, "", 0, 14, "start")
	pic.ruler(unit, w, 38)
	return pic
}
