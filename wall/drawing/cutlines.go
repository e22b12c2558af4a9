package drawing

import (
	"slices"

	"example.com/groovewright/wall/plan"
)

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
		found = append(found, notches(piece, i)...)
	}
	profile := p.Profile
	return slices.DeleteFunc(found, func(c cutLine) bool {
		most := mostPages
		if c.square() {
			most = 1
		}
		return len(c.points) == 0 || slices.ContainsFunc(Papers(), func(p Paper) bool {
			across, down := c.pages(p)
			_, fits := c.small(p, profile, 0)
			return max(across, down) > most && !fits
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
	if c.closed {
		return v.curved(arcs, c.points)
	}
	return v.trace(arcs, c.points, false)
}

// notches finds the stretches of a piece's outline off its bounding box that are worth a template.
func notches(piece plan.Piece, index int) (found []cutLine) {
	n := len(piece.Outline)
	onEdge := func(i int) bool {
		p, q := piece.Outline[i%n], piece.Outline[(i+1)%n]
		return p.X == q.X && (p.X.IsZero() || p.X == piece.Width) || p.Y == q.Y && (p.Y.IsZero() || p.Y == piece.Height)
	}
	for start := range n {
		if onEdge(start) || !onEdge(start+n-1) {
			continue
		}
		cut := cutLine{piece: piece, index: index, what: "notch", path: ref("pieces[%d].outline", index), first: start, count: n}
		for i := start; ; i++ {
			cut.points = append(cut.points, piece.Outline[i%n])
			if onEdge(i) {
				break
			}
		}
		if cut.worthIt() {
			found = append(found, cut)
		}
	}
	return found
}

// A stretch whose straights all run within one part in flatter of level, or of plumb, is an edge
// that follows the wall, as is the meeting of two such edges: two measurements mark it better.
// Common practice, no source.
const (
	flatter   = 8
	curveTurn = 4 // so many corners that all turn the same way are a curve
)

// worthIt reports whether a stretch of an outline is a notch or a curve.
func (c cutLine) worthIt() bool {
	steep, level := false, false
	for i := 1; i < len(c.points); i++ {
		p, q := c.points[i-1], c.points[i]
		across, up := q.X.Sub(p.X).Abs(), q.Y.Sub(p.Y).Abs()
		steep = steep || across.Less(up.Mul(flatter))
		level = level || up.Less(across.Mul(flatter))
	}
	inner := false // a corner that turns into the piece
	for i := 2; i < len(c.points); i++ {
		p, q, r := c.points[i-2], c.points[i-1], c.points[i]
		left := q.X.Sub(p.X).Times(r.Y.Sub(q.Y))
		right := q.Y.Sub(p.Y).Times(r.X.Sub(q.X))
		inner = inner || left.Compare(right) < 0 // the outline runs counterclockwise
	}
	return steep && level && (inner || len(c.points)-2 >= curveTurn)
}
