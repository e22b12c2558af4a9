package cutout

import (
	"math/big"
	"slices"

	"example.com/groovewright/fraction"
)

// Snap rounds the corners of shapes to multiples of the mark, into the space, and returns the
// shapes in the order of [Shape.Band]. It is for shapes that were cut exactly, several times over,
// so that each computed corner is rounded once and last. Corners for which taped returns true stay;
// with a nil taped none does.
//
// A corner of an upright and a sloped edge moves along the upright one, one of a level and a sloped
// edge along the level one, one of two sloped edges to the first mark beside it that lies in the
// space; a corner of an upright and a level edge never moves. Each piece thus lies within the exact
// one. Where no mark lies between a corner and the far end of its edge, or moving it would run over
// another corner of the piece, the first half, quarter and so on to 1/256 of the mark that can be
// used is, else the corner stays exact. A piece that vanishes, nowhere a mark wide, is dropped.
//
// With a mark of zero or below the shapes stay as they are. It fails where a mark fits no Length.
func Snap(shapes []Shape, mark fraction.Length, taped func(Point) bool) (kept []Shape, err error) {
	defer fraction.Catch(&err)
	if mark.Sign() <= 0 {
		return shapes, nil
	}
	if taped == nil {
		taped = func(Point) bool { return false }
	}
	for _, s := range shapes {
		if own := (Shape{s.Outline(), s.Holes()}); snap(&own, mark, taped) {
			kept = append(kept, own)
		}
	}
	slices.SortFunc(kept, compareShapes)
	return kept, nil
}

// snap rounds one shape in place and reports whether anything is left of it.
func snap(s *Shape, mark fraction.Length, taped func(Point) bool) bool {
	onMark := func(x fraction.Length) bool {
		_, off := x.Round(mark, fraction.Down)
		return off.IsZero()
	}
	for _, ring := range s.rings {
		exact := slices.Clone(ring)
		for i, p := range ring {
			if !(onMark(p.X) && onMark(p.Y)) && !taped(p) {
				snapCorner(*s, ring, exact, i, mark, taped)
			}
		}
	}
	s.outline = rotated(simplify(s.outline))
	for i, hole := range s.holes {
		s.holes[i] = rotated(simplify(hole))
	}
	s.holes = slices.DeleteFunc(s.holes, func(hole []Point) bool { return hole == nil })
	return s.outline != nil
}

// finer is how often the mark is halved where no mark lies in the space: down to 1/4096 in for
// 1/16. Finer than any saw, it keeps denominators small that an exact corner would let grow.
const finer = 8

// snapCorner moves corner i of the ring to a mark, or where none will do to a half, a quarter …
//
// The corner v lies between its neighbours u and w. It is convex, as every crossing of two borders
// is, so a new place in the triangle u v w gives up material and adds none. Where a neighbour has
// been moved already, from a to u or from b to w, what its own move gave up beside this edge, the
// triangle a v u or v b w, may be taken back: no other corner lies in it.
//
//	w            what is given up is the space between u-v-w and u-v'-w; if no
//	|\           other corner lies in it, no edge can run through it either,
//	| v'__       for an edge would have to end there or cross u-v or v-w
//	|     ''-_
//	v---------u
func snapCorner(s Shape, ring, exact []Point, i int, mark fraction.Length, taped func(Point) bool) {
	u, v, w := ring[before(i, len(ring))], ring[i], ring[after(i, len(ring))]
	a, b := exact[before(i, len(ring))], exact[after(i, len(ring))]
	if orient(a, v, b) <= 0 {
		return
	}
	for range finer + 1 {
		for _, to := range marksBeside(a, v, b, mark, taped) {
			inside := inCorner(u, v, w, to) || inCorner(a, v, u, to) || inCorner(v, b, w, to)
			if inside && orient(w, u, to) >= 0 && s.clear(u, v, w, to) {
				ring[i] = to
				return
			}
		}
		mark = mark.Div(2)
	}
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
	// Up or down first, and from there along the steeper line sideways; then the four marks round
	// the point, and with the twelve round these, the nearest of each first.
	beside := intoSpace(u, v, w, mark, taped)
	away := func(p Point) fraction.Length { return p.X.Sub(v.X).Abs().Add(p.Y.Sub(v.Y).Abs()) }
	for ring := range int64(2) {
		marks := marksRound(Point{x, y}, mark, -ring, ring+1)
		slices.SortStableFunc(marks, func(p, q Point) int { return away(p).Compare(away(q)) })
		beside = append(beside, marks...)
	}
	return beside
}

// marksRound returns the marks from low to high steps right of and above a place, row by row.
func marksRound(p Point, mark fraction.Length, low, high int64) (marks []Point) {
	for dy := low; dy <= high; dy++ {
		for dx := low; dx <= high; dx++ {
			marks = append(marks, p.plus(mark.Mul(dx), mark.Mul(dy)))
		}
	}
	return marks
}

// intoSpace returns the mark for a corner of two slopes: its height is rounded toward the far end
// of the steeper line, and then the place on that line at this height toward the far end of the
// other, unless that place is taped. It returns none where that is out of range.
func intoSpace(u, v, w Point, mark fraction.Length, taped func(Point) bool) []Point {
	steep, flat := u, w
	slope := func(p Point) *big.Rat {
		return new(big.Rat).Quo(difference(p.Y, v.Y), difference(p.X, v.X))
	}
	if first, second := slope(u), slope(w); first.Abs(first).Cmp(second.Abs(second)) < 0 {
		steep, flat = w, u
	}
	unit := mark.Rat()
	y, ok := fit(multiple(v.Y.Rat(), unit, v.Y.Less(steep.Y)))
	if !ok {
		return nil
	}
	along := new(big.Rat).Quo(difference(y, v.Y), slope(steep))
	along.Add(along, v.X.Rat())
	if x, ok := fit(along); ok && taped(Point{x, y}) {
		return []Point{{x, y}}
	}
	x, ok := fit(multiple(along, unit, v.X.Less(flat.X)))
	if !ok {
		return nil
	}
	return []Point{{x, y}}
}

// clear reports whether no corner of the shape but u, v and w lies in the space given up when v
// goes to the new place, its edges included.
func (s Shape) clear(u, v, w, to Point) bool {
	lo, hi := Bounds([]Point{u, v, w})
	space := box{lo, hi}
	for p := range s.Edges() {
		if p != u && p != v && p != w && space.contains(p) && (inTriangle(u, v, to, p) || inTriangle(v, w, to, p)) {
			return false
		}
	}
	return true
}

// inCorner reports whether p lies in the triangle a b c, if counterclockwise, or on its edge.
func inCorner(a, b, c, p Point) bool {
	return orient(a, b, c) > 0 && inTriangle(a, b, c, p)
}

// inTriangle does the same for a triangle that is counterclockwise or flat.
func inTriangle(a, b, c, p Point) bool {
	return orient(a, b, p) >= 0 && orient(b, c, p) >= 0 && orient(c, a, p) >= 0
}
