package cutout

import (
	"math/big"
	"slices"

	"example.com/groovewright/fraction"
)

// settled rounds the computed corners of the pieces to the mark, into the space.
// Vertices of the shape and of the other outline are taped and stay. A piece of
// which nothing is left is dropped: it was nowhere a mark wide.
func settled(pieces []Shape, mark fraction.Length, from Shape, other []Point) []Shape {
	if mark.Sign() <= 0 {
		return pieces
	}
	taped := func(p Point) bool {
		for _, ring := range from.rings {
			if slices.Contains(ring, p) {
				return true
			}
		}
		return slices.Contains(other, p)
	}
	return Settle(pieces, mark, taped)
}

// Settle returns shapes that were cut exactly with their corners rounded to the
// mark, into the space, as a mark above 0 does in [Shape.Band]. Corners for which
// taped returns true stay. It is for shapes cut several times over, so that each
// corner is rounded once and last. The shapes given are not changed.
func Settle(pieces []Shape, mark fraction.Length, taped func(Point) bool) []Shape {
	if mark.Sign() <= 0 {
		return pieces
	}
	var kept []Shape
	for _, piece := range pieces {
		own := Shape{Outline: slices.Clone(piece.Outline)}
		for _, hole := range piece.Holes {
			own.Holes = append(own.Holes, slices.Clone(hole))
		}
		if settle(&own, mark, taped) {
			kept = append(kept, own)
		}
	}
	slices.SortFunc(kept, compareShapes)
	return kept
}

// settle rounds one piece in place and reports whether anything is left of it.
func settle(piece *Shape, mark fraction.Length, taped func(Point) bool) bool {
	moved := false
	for _, ring := range piece.rings {
		exact := slices.Clone(ring)
		for i := range ring {
			if _, err := ring[i].X.Round(mark, fraction.Down); err.IsZero() {
				if _, err := ring[i].Y.Round(mark, fraction.Down); err.IsZero() {
					continue
				}
			}
			if !taped(ring[i]) && settleCorner(*piece, ring, exact, i, mark, taped) {
				moved = true
			}
		}
	}
	if !moved {
		return true
	}
	if piece.Outline = straightened(piece.Outline); piece.Outline == nil {
		return false
	}
	piece.Outline = rotated(piece.Outline)
	for i, hole := range piece.Holes {
		piece.Holes[i] = rotated(straightened(hole))
	}
	return true
}

// finer is how often the mark is halved where no mark lies in the space: down to
// 1/4096 in for a mark of 1/16. Finer than any saw, it keeps the denominators of
// later sums small where an exact corner would let them grow.
const finer = 8

// settleCorner moves corner i of the ring to a mark and reports whether it did; where
// no mark will do it takes a half, a quarter … of one.
//
// The corner v lies between its neighbours u and w. It is convex, as every
// crossing of two borders is, so a new place in the triangle u v w gives up
// material and adds none. Where a neighbour has been moved already, from a to u
// or from b to w, what its own move gave up beside this edge, the triangle a v u
// or v b w, may be taken back: no other corner lies in it.
//
//	w            what is given up is the space between u-v-w and u-v'-w; if no
//	|\           other corner lies in it, no edge can run through it either,
//	| v'__       for an edge would have to end there or cross u-v or v-w
//	|     ''-_
//	v---------u
func settleCorner(piece Shape, ring, exact []Point, i int, mark fraction.Length, taped func(Point) bool) bool {
	u, v, w := ring[before(i, len(ring))], ring[i], ring[after(i, len(ring))]
	a, b := exact[before(i, len(ring))], exact[after(i, len(ring))]
	if turn(a, v, b) <= 0 {
		return false
	}
	for range finer + 1 {
		for _, to := range marksBeside(a, v, b, mark, taped) {
			inside := inCorner(u, v, w, to) || inCorner(a, v, u, to) || inCorner(v, b, w, to)
			if inside && turn(w, u, to) >= 0 && piece.clear(u, v, w, to) {
				ring[i] = to
				return true
			}
		}
		mark = mark.Div(2)
	}
	return false
}

// marksBeside lists the marks to which the corner v between u and w may go.
func marksBeside(u, v, w Point, mark fraction.Length, taped func(Point) bool) []Point {
	upright := u.X == v.X || v.X == w.X
	level := u.Y == v.Y || v.Y == w.Y
	x, _ := v.X.Round(mark, fraction.Down)
	y, _ := v.Y.Round(mark, fraction.Down)
	switch {
	case upright && level:
		return nil
	case upright:
		return []Point{{v.X, y}, {v.X, y.Add(mark)}}
	case level:
		return []Point{{x, v.Y}, {x.Add(mark), v.Y}}
	}
	// Up or down first, and from there along the steeper line sideways; then the
	// four marks round the point and the twelve round these, the nearest of each
	// first.
	beside := intoSpace(u, v, w, mark, taped)
	first := len(beside)
	for ring := range int64(2) {
		for dy := -ring; dy <= ring+1; dy++ {
			for dx := -ring; dx <= ring+1; dx++ {
				if ring == 0 || dx == -ring || dx == ring+1 || dy == -ring || dy == ring+1 {
					beside = append(beside, Point{x.Add(mark.Mul(dx)), y.Add(mark.Mul(dy))})
				}
			}
		}
	}
	away := func(p Point) fraction.Length { return p.X.Sub(v.X).Abs().Add(p.Y.Sub(v.Y).Abs()) }
	nearer := func(p, q Point) int { return away(p).Compare(away(q)) }
	slices.SortStableFunc(beside[first:first+4], nearer)
	slices.SortStableFunc(beside[first+4:], nearer)
	return beside
}

// intoSpace returns the mark for a corner of two slopes: its height is rounded
// toward the far end of the steeper line, and then the place on that line at this
// height toward the far end of the other, unless that place is taped. It returns
// none where that is out of range.
func intoSpace(u, v, w Point, mark fraction.Length, taped func(Point) bool) []Point {
	steep, flat := u, w
	slope := func(p Point) *big.Rat {
		return new(big.Rat).Quo(difference(p.Y, v.Y), difference(p.X, v.X))
	}
	if first, second := slope(u), slope(w); first.Abs(first).Cmp(second.Abs(second)) < 0 {
		steep, flat = w, u
	}
	up, right := v.Y.Less(steep.Y), v.X.Less(flat.X)
	y, ok := fit(onMark(v.Y.Rat(), mark, up))
	if !ok {
		return nil
	}
	along := new(big.Rat).Quo(difference(y, v.Y), slope(steep))
	along.Add(along, v.X.Rat())
	if x, ok := fit(along); ok && taped(Point{x, y}) {
		return []Point{{x, y}}
	}
	x, ok := fit(onMark(along, mark, right))
	if !ok {
		return nil
	}
	return []Point{{x, y}}
}

// onMark rounds x to a multiple of the mark, up or down.
func onMark(x *big.Rat, mark fraction.Length, up bool) *big.Rat {
	marks := new(big.Rat).Quo(x, mark.Rat())
	n, rest := new(big.Int).DivMod(marks.Num(), marks.Denom(), new(big.Int))
	if up && rest.Sign() != 0 {
		n.Add(n, big.NewInt(1))
	}
	return marks.Mul(marks.SetInt(n), mark.Rat())
}

// clear reports whether no corner of the piece but u, v and w lies in the space
// given up when v goes to the new place, its edges included.
func (s Shape) clear(u, v, w, to Point) bool {
	low := Point{fraction.Min(u.X, v.X, w.X), fraction.Min(u.Y, v.Y, w.Y)}
	high := Point{fraction.Max(u.X, v.X, w.X), fraction.Max(u.Y, v.Y, w.Y)}
	for _, ring := range s.rings {
		for _, p := range ring {
			if p.X.Less(low.X) || high.X.Less(p.X) || p.Y.Less(low.Y) || high.Y.Less(p.Y) {
				continue
			}
			if p != u && p != v && p != w && (inTriangle(u, v, to, p) || inTriangle(v, w, to, p)) {
				return false
			}
		}
	}
	return true
}

// inCorner reports whether p lies in the triangle a b c, its edges included, if
// that is counterclockwise and not flat.
func inCorner(a, b, c, p Point) bool {
	return turn(a, b, c) > 0 && inTriangle(a, b, c, p)
}

// inTriangle reports whether p lies in the triangle a b c, which is
// counterclockwise or flat, its edges included.
func inTriangle(a, b, c, p Point) bool {
	return turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0
}
