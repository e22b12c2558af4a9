package plan

import (
	"math"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
)

// mostNails is the most nails or supports over one length that are listed.
const mostNails = 1000

// Nails returns where the nails of a piece stand on its face, for the list as for drawings: nowhere nearer to
// an electrical box of its run than the plan says.
//
// A sheet has them in columns, as if the first support lay behind its left edge, and round each opening
// in it that has a frame: at most as far apart as the plan says, and so far off every edge at least, of a
// miter off that of the back. One stands alone where there is no room for half that distance. A board has
// one at its foot, one at its top, and one where it crosses a support between, see [Plan.supports]: through
// its tongue, which is on the side toward which one works, and where it has none through its face. Nails
// fails where a place does not fit a Length.
func (p Plan) Nails(piece Piece, off fraction.Length) (nails []Point, err error) {
	defer fraction.Catch(&err)
	f := p.Fixing
	if f.Nails == finish.UsualNails || min(f.Supports.Sign(), off.Sign()) <= 0 {
		return nil, nil
	}
	run, _ := p.Run(piece.Run)
	switch {
	case f.Level:
		nails = p.crossings(run, piece, off)
	case min(f.Edge.Sign(), f.Field.Sign()) > 0:
		nails = p.columns(run, piece, off)
	}
	return slices.DeleteFunc(nails, func(nail Point) bool { return p.atBox(run, piece, nail) }), nil
}

// atBox reports whether a place on a piece is nearer to an electrical box of the run, sideways and upright, than
// nails may be.
func (p Plan) atBox(run Run, piece Piece, at Point) bool {
	x, y, clear := piece.At.X.Add(at.X), piece.At.Y.Add(at.Y), p.Fixing.Clear
	return slices.ContainsFunc(run.Openings, func(o Opening) bool {
		lo, hi := cutout.Bounds(o.Outline)
		return o.Kind == wall.Box && lo.X.Sub(clear).Less(x) && x.Less(hi.X.Add(clear)) && lo.Y.Sub(clear).Less(y) && y.Less(hi.Y.Add(clear))
	})
}

// columns returns the nails of a sheet.
func (p Plan) columns(run Run, piece Piece, off fraction.Length) (nails []Point) {
	f, in := p.Fixing, p.insets(run, piece, off)
	for x, n := (fraction.Length{}), 0; !piece.Width.Less(x) && n < mostNails; x, n = x.Add(f.Supports), n+1 {
		apart := f.Field
		if n == 0 || piece.Width.Less(x.Add(f.Supports)) {
			apart = f.Edge
		}
		column := fraction.Max(in[0], fraction.Min(x, piece.Width.Sub(in[1])))
		for _, part := range piece.clear(column, off) {
			high := part[1].Sub(part[0])
			if high.Mul(2).Less(apart) {
				nails = append(nails, Point{X: column, Y: part[0].Add(high.Div(2))})
			} else {
				nails = append(nails, spaced(column, part[0], part[1], high, apart)...)
			}
		}
	}
	for _, hole := range piece.Holes {
		if slices.ContainsFunc(run.Openings, func(o Opening) bool { return o.Name == hole.Opening && o.Kind != wall.Box }) {
			nails = append(nails, piece.round(hole.Outline, f.Edge, off)...)
		}
	}
	return nails
}

// spaced returns places up a column, as many as a length takes at most so far apart, and one more.
func spaced(x, from, to, high, apart fraction.Length) (nails []Point) {
	n := max(1, min(mostNails, steps(high, apart)))
	for k := range n + 1 {
		nails = append(nails, Point{X: x, Y: from.Add(to.Sub(from).Mul(k).Div(n))})
	}
	return nails
}

// crossings returns the nails of a board.
func (p Plan) crossings(run Run, board Piece, off fraction.Length) (nails []Point) {
	x, left := board.Width.Div(2), true
	if p.Profile.Edges == groove.Tongued {
		if x = board.Width; run.SetOut.Direction == wall.Left {
			x, left = fraction.Length{}, false
		}
		if at := board.At.X.Add(x); at == run.Limits[0] || at == run.Limits[1] { // sawn off, through the face
			x, left = fraction.Max(off, fraction.Min(x, board.Width.Sub(off))), true
		}
	}
	supports := p.supports(run)
	for _, part := range board.upright(x, left) {
		from, to := board.At.Y.Add(part[0].Add(off)), board.At.Y.Add(part[1].Sub(off))
		for _, y := range crossed(from, to, off.Mul(2), supports) {
			nails = append(nails, Point{X: x, Y: y.Sub(board.At.Y)})
		}
	}
	return nails
}

// crossed returns the two heights and the supports between them, from below; a support so near to one of the
// two stands for it, and the middle for both where they are as near to each other.
func crossed(from, to, near fraction.Length, supports []fraction.Length) (at []fraction.Length) {
	if to.Sub(from).Less(near) {
		return []fraction.Length{from.Add(to).Div(2)}
	}
	for _, y := range supports {
		if !y.Less(from) && !to.Less(y) {
			at = append(at, y)
		}
	}
	if len(at) == 0 || !at[0].Sub(from).Less(near) {
		at = append([]fraction.Length{from}, at...)
	}
	if !to.Sub(at[len(at)-1]).Less(near) {
		at = append(at, to)
	}
	return at
}

// supports returns how high the level supports behind the boards of a run stand between its lowest foot and
// its highest top, over the datum: the same for all its boards, evenly and at most as far apart as the plan
// says. None gives way to an opening.
func (p Plan) supports(run Run) (at []fraction.Length) {
	lo, hi := cutout.Bounds(run.Outline)
	high := hi.Y.Sub(lo.Y)
	n := min(mostNails, steps(high, p.Fixing.Supports))
	for k := int64(1); k < n; k++ {
		at = append(at, lo.Y.Add(high.Mul(k).Div(n)))
	}
	return at
}

// insets returns how far in from the left and the right of a sheet its columns stand at least: off an edge
// that leans, and off the edge of the back, which lies a thickness in at a miter.
func (p Plan) insets(run Run, piece Piece, off fraction.Length) (in [2]fraction.Length) {
	for i, a := range piece.Outline {
		b := piece.Outline[(i+1)%len(piece.Outline)]
		if lo, hi := fraction.Min(a.X, b.X), fraction.Max(a.X, b.X); hi.Sub(lo).Mul(flatter).Less(a.Y.Sub(b.Y).Abs()) {
			if lo.IsZero() {
				in[0] = fraction.Max(in[0], hi)
			}
			if hi == piece.Width {
				in[1] = fraction.Max(in[1], hi.Sub(lo))
			}
		}
	}
	for side, mitred := range fraction.Must(run.MitredEdges(piece)) {
		if in[side] = in[side].Add(off); mitred {
			in[side] = in[side].Add(p.Profile.Thickness)
		}
	}
	return in
}

// round returns nails round a hole, evenly along its edge and off it, to the nearest 1/64 in.
func (p Piece) round(hole []Point, apart, off fraction.Length) (nails []Point) {
	const grain = 64
	long, area := 0.0, 0.0
	sides := make([][4]float64, len(hole)) // where each begins and what it runs across and up
	for i, a := range hole {
		b := hole[(i+1)%len(hole)]
		sides[i] = [4]float64{a.X.Float64(), a.Y.Float64(), b.X.Sub(a.X).Float64(), b.Y.Sub(a.Y).Float64()}
		long += math.Hypot(sides[i][2], sides[i][3])
		area += a.X.Float64()*b.Y.Float64() - b.X.Float64()*a.Y.Float64()
	}
	n := max(1, min(mostNails, math.Ceil(long/apart.Float64()-1e-9)))
	away, at := math.Copysign(off.Float64()+1./grain, area), long/n/2
	for _, s := range sides {
		l := math.Hypot(s[2], s[3])
		for ; at < l; at += long / n {
			x, y := s[0]+(s[2]*at+s[3]*away)/l, s[1]+(s[3]*at-s[2]*away)/l
			nail := Point{X: fraction.Of(int64(math.Round(x*grain)), grain), Y: fraction.Of(int64(math.Round(y*grain)), grain)}
			if slices.ContainsFunc(p.clear(nail.X, off), func(part [2]fraction.Length) bool { return !nail.Y.Less(part[0]) && !part[1].Less(nail.Y) }) {
				nails = append(nails, nail)
			}
		}
		at -= l
	}
	return nails
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
	for _, ring := range p.Rings() {
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
