package plan

import (
	"math"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
)

// mostNails is the most nails or supports over one length that are listed.
const mostNails = 1000

// Nails returns where the nails of a piece stand on its face, as if the first support lay behind its left
// edge: at most as far apart as the list counts them, and so far off every edge at least; one alone where
// there is no room for half that distance. Of a board it is the middle of each crossing. It fails where a
// place does not fit a Length.
func (p Plan) Nails(piece Piece, off fraction.Length) (nails []Point, err error) {
	defer fraction.Catch(&err)
	f := p.Fixing
	column := func(x, apart fraction.Length) {
		for _, part := range piece.clear(x, off) {
			high := part[1].Sub(part[0])
			n := int64(min(mostNails, math.Ceil(high.Float64()/apart.Float64()-1e-9)))
			if high.Mul(2).Less(apart) {
				nails = append(nails, Point{X: x, Y: part[0].Add(high.Div(2))})
				continue
			}
			for k := range n + 1 {
				nails = append(nails, Point{X: x, Y: part[0].Add(high.Mul(k).Div(n))})
			}
		}
	}
	switch {
	case f.Nails == finish.UsualNails || min(f.Supports.Sign(), off.Sign()) <= 0:
	case f.Level:
		column(piece.Width.Div(2), f.Supports)
	case min(f.Edge.Sign(), f.Field.Sign()) > 0:
		for x, n := (fraction.Length{}), 0; !piece.Width.Less(x) && n < mostNails; x, n = x.Add(f.Supports), n+1 {
			apart := f.Field
			if n == 0 || piece.Width.Less(x.Add(f.Supports)) {
				apart = f.Edge
			}
			column(fraction.Max(off, fraction.Min(x, piece.Width.Sub(off))), apart)
		}
	}
	return nails, nil
}

// clear returns the parts of an upright line whose places lie on the piece, so far off its edges up and
// sideways.
func (p Piece) clear(x, off fraction.Length) (parts [][2]fraction.Length) {
	parts = p.upright(x, true)
	for i := range parts {
		parts[i] = [2]fraction.Length{parts[i][0].Add(off), parts[i][1].Sub(off)}
	}
	for _, beside := range [][][2]fraction.Length{p.upright(x.Sub(off), false), p.upright(x.Add(off), true)} {
		var both [][2]fraction.Length
		for _, a := range parts {
			for _, b := range beside {
				both = append(both, [2]fraction.Length{fraction.Max(a[0], b[0]), fraction.Min(a[1], b[1])})
			}
		}
		parts = both
	}
	return slices.DeleteFunc(parts, func(part [2]fraction.Length) bool { return part[1].Less(part[0]) })
}

// upright returns where an upright line is on the piece, from below; at an edge, right of it or left.
func (p Piece) upright(x fraction.Length, left bool) (parts [][2]fraction.Length) {
	var ys []fraction.Length
	for _, ring := range p.rings() {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if past := func(at Point) bool { return x.Less(at.X) || left && at.X == x }; past(a) != past(b) {
				ys = append(ys, fraction.Must(cutout.HeightAt(a, b, x)))
			}
		}
	}
	slices.SortFunc(ys, fraction.Length.Compare)
	for i := 1; i < len(ys); i += 2 {
		parts = append(parts, [2]fraction.Length{ys[i-1], ys[i]})
	}
	return parts
}
