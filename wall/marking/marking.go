// Package marking names the corners, the openings and the strokes of a piece as it is marked out, for drawings and texts alike.
package marking

import (
	"math"
	"math/cmplx"
	"slices"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/wall/plan"
)

const (
	codeLetters = "ABCDEFGHJKMNPRSTUVWXYZ" // none that looks like a figure or another letter
	mostNames   = 12                       // openings of a run that have their names on drawings
)

// Letters is what thing i from 0 of a list is called: A … Z, AA, AB … It has letters alone, as the leaves of a book and the
// pieces have figures.
func Letters(i int) string {
	const n = len(codeLetters)
	if i < n {
		return codeLetters[i : i+1]
	}
	return Letters(i/n-1) + Letters(i%n)
}

// Coded reports whether a run has so many openings that drawings have codes for them, and a list or a table their names.
func Coded(run plan.Run) bool { return len(run.Openings) > mostNames }

// Code is the code of an opening on the drawings of its run and its pieces, "" where they have its name.
func Code(run plan.Run, opening string) string {
	i := slices.IndexFunc(run.Openings, func(o plan.Opening) bool { return o.Name == opening })
	if i < 0 || !Coded(run) {
		return ""
	}
	return strings.ToLower(Letters(i))
}

// Corners are the corners of a piece's outline and then of each hole as its drawings and tables name them: see
// [plan.Marks.Named]. Those of a level hole have no name, as the hole has one, nor has one that rounding alone makes: within
// the plan's Snap of the straight line between those beside it.
func Corners(p plan.Plan, m plan.Marks) [][]plan.NamedCorner {
	all, n := m.Named(), 0
	for r, ring := range all {
		before := len(ring) - 1
		for i := range ring {
			c, from, to := &ring[i], ring[before].Face, ring[(i+1)%len(ring)].Face
			off, way := vector(from, c.Face), vector(from, to)
			straight := plan.ArcAt(m.Arcs, c.Face) == nil && math.Abs(imag(off*cmplx.Conj(way))) <= p.Snap.Float64()*cmplx.Abs(way)
			if straight || r > 0 && Level(m.Holes[r-1].Face) {
				c.Name = ""
			} else if before = i; c.Name != "" {
				c.Name = Letters(n)
				n++
			}
		}
	}
	return all
}

// vector is the way from one place to another in inches.
func vector(from, to plan.Point) complex128 {
	return complex(to.X.Sub(from.X).Float64(), to.Y.Sub(from.Y).Float64())
}

// Level reports whether a hole is a level rectangle.
func Level(ring []plan.Point) bool {
	lo, hi := cutout.Bounds(ring)
	return len(ring) == 4 && !slices.ContainsFunc(ring, func(p plan.Point) bool { return p.X != lo.X && p.X != hi.X || p.Y != lo.Y && p.Y != hi.Y })
}

// Stroke is what has one number on the drawing of a piece: a line to saw, or the four sides of a level hole.
type Stroke struct {
	plan.Waste
	Saw []plan.SawCut
}

// Sides reports whether it is all sides of a hole.
func (s Stroke) Sides() bool { return len(s.Saw) > 1 }

// Strokes are the strokes of some waste in their order.
func Strokes(order ...plan.Cutting) (all []Stroke) {
	for _, c := range order {
		slanted := func(s plan.SawCut) bool {
			return len(s.Points) != 2 || s.Points[0].X != s.Points[1].X && s.Points[0].Y != s.Points[1].Y
		}
		if c.Opening != "" && len(c.Saw) == 4 && !slices.ContainsFunc(c.Saw, slanted) {
			all = append(all, Stroke{c.Waste, c.Saw})
			continue
		}
		for i := range c.Saw {
			all = append(all, Stroke{c.Waste, c.Saw[i : i+1]})
		}
	}
	return all
}
