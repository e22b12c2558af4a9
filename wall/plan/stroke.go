package plan

import (
	"math"
	"math/big"
	"slices"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// mostNames is how many openings a run may have that bear their names on drawings.
const mostNames = 12

// Coded reports whether a run has so many openings that drawings have codes for them, and a list or a table their names.
func (r Run) Coded() bool { return len(r.Openings) > mostNames }

// Code is the code of an opening on the drawings of its run and its pieces, "" where they have its name.
func (r Run) Code(opening string) string {
	i := slices.IndexFunc(r.Openings, func(o Opening) bool { return o.Name == opening })
	if i < 0 || !r.Coded() {
		return ""
	}
	return strings.ToLower(CornerName(i))
}

// onLine reports whether a place is no farther than so much from the straight line through two others.
func onLine(at, from, to Point, most fraction.Length) bool {
	across, up := to.X.Sub(from.X), to.Y.Sub(from.Y)
	a, b := across.Float64()*at.Y.Sub(from.Y).Float64(), up.Float64()*at.X.Sub(from.X).Float64()
	if far := most.Float64() * math.Hypot(across.Float64(), up.Float64()); math.Abs(a-b) > 1.001*far+1e-9*(math.Abs(a)+math.Abs(b)) {
		return false // by far more than a float is wrong by, as most corners are
	}
	x, y := across.Rat(), up.Rat()
	off := new(big.Rat).Mul(x, at.Y.Sub(from.Y).Rat())
	off.Sub(off, new(big.Rat).Mul(y, at.X.Sub(from.X).Rat())) // times the length of the line
	square := new(big.Rat).Add(new(big.Rat).Mul(x, x), new(big.Rat).Mul(y, y))
	return off.Mul(off, off).Cmp(square.Mul(square, new(big.Rat).Mul(most.Rat(), most.Rat()))) <= 0
}

// Level reports whether a hole is a level rectangle.
func Level(ring []Point) bool {
	lo, hi := cutout.Bounds(ring)
	return len(ring) == 4 && !slices.ContainsFunc(ring, func(p Point) bool { return p.X != lo.X && p.X != hi.X || p.Y != lo.Y && p.Y != hi.Y })
}

// Stroke is what has one number on the drawing of a piece: a line to saw, or the four sides of a level hole.
type Stroke struct {
	Waste
	Saw []SawCut
}

// Sides reports whether it is all sides of a hole.
func (s Stroke) Sides() bool { return len(s.Saw) > 1 }

// Strokes are the strokes of some waste in their order.
func Strokes(order ...Cutting) (all []Stroke) {
	for _, c := range order {
		slanted := func(s SawCut) bool {
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
