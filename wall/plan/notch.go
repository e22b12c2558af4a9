package plan

import (
	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// Notch is a stretch of a piece's outline off its bounding box that is worth a template: a notch or a
// curve. First is the number of its first point in the outline.
type Notch struct {
	First  int
	Points []Point
}

// Notches returns the stretches of the outline that are worth a template. It fails where their size does
// not fit a Length.
func (p Piece) Notches() (found []Notch, err error) {
	defer fraction.Catch(&err)
	n := len(p.Outline)
	onEdge := func(i int) bool {
		a, b := p.Outline[i%n], p.Outline[(i+1)%n]
		return a.X == b.X && (a.X.IsZero() || a.X == p.Width) || a.Y == b.Y && (a.Y.IsZero() || a.Y == p.Height)
	}
	for start := range n {
		if onEdge(start) || !onEdge(start+n-1) {
			continue
		}
		notch := Notch{First: start}
		for i := start; ; i++ {
			notch.Points = append(notch.Points, p.Outline[i%n])
			if onEdge(i) {
				break
			}
		}
		if notch.worthIt() {
			found = append(found, notch)
		}
	}
	return found, nil
}

// A stretch whose straights all run within one part in flatter of level, or of plumb, is an edge
// that follows the wall, as is the meeting of two such edges: two measurements mark it better.
// Common practice, no source.
const (
	flatter   = 8
	curveTurn = 4 // so many corners that all turn the same way are a curve
)

// worthIt reports whether a stretch of an outline is a notch or a curve.
func (c Notch) worthIt() bool {
	steep, level := false, false
	for i := 1; i < len(c.Points); i++ {
		p, q := c.Points[i-1], c.Points[i]
		across, up := q.X.Sub(p.X).Abs(), q.Y.Sub(p.Y).Abs()
		steep = steep || across.Less(up.Mul(flatter))
		level = level || up.Less(across.Mul(flatter))
	}
	inner := false // a corner that turns into the piece
	for i := 2; i < len(c.Points); i++ {
		inner = inner || cutout.Orient(c.Points[i-2], c.Points[i-1], c.Points[i]) < 0 // the outline runs counterclockwise
	}
	return steep && level && (inner || len(c.Points)-2 >= curveTurn)
}
