package drawing

import (
	"slices"

	"example.com/groovewright/fraction"
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
		notches, err := piece.Notches()
		for _, n := range fraction.Must(notches, err) {
			found = append(found, cutLine{piece: piece, index: i, what: "notch", points: n.Points, path: ref("pieces[%d].outline", i), first: n.First, count: len(piece.Outline)})
		}
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
