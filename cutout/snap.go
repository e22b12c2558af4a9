package cutout

import (
	"math/big"
	"slices"

	"example.com/groovewright/fraction"
)

// Snap rounds the corners of shapes to multiples of the mark and returns the shapes in the order of
// [Shape.Band]. It is for shapes that were cut exactly, several times over, so that each computed
// corner is rounded once and last. Corners for which taped returns true stay; with a nil taped none
// does.
//
// A coordinate within the tolerance of a mark goes to that mark, to whichever side; the tolerance
// counts as half a mark at most. Any other goes into the space. A corner of an upright and a sloped
// edge moves along the upright one, one of a level and a sloped edge along the level one, one of two
// sloped edges along the steeper one up or down and then sideways; a corner of an upright and a level
// edge never moves. So no piece is larger than the exact one by more than the tolerance. Where no
// mark lies between a corner and the far end of its edge, or moving it would run over another corner
// of the piece, the first half, quarter and so on to 1/256 of the mark that can be used is, else the
// corner stays exact. Where places of the tolerance would make edges of a piece cross, all of its corners
// go into the space. A piece that vanishes, nowhere a mark wide, is dropped.
//
// Last, edges no longer than a mark between two computed corners of sloped edges go, which no saw could
// follow: one of the two corners does, where nothing is added, the piece keeps its bounding box and no
// upright edge begins to slope, and rather one that leaves level edges level.
//
// With a mark of zero or below the shapes stay as they are. It fails where a mark fits no Length.
func Snap(shapes []Shape, mark, tolerance fraction.Length, taped func(Point) bool) (kept []Shape, err error) {
	defer fraction.Catch(&err)
	if mark.Sign() <= 0 {
		return shapes, nil
	}
	if taped == nil {
		taped = func(Point) bool { return false }
	}
	for _, s := range shapes {
		g := snapper{mark: mark, tolerance: tolerance, taped: taped}
		own := Shape{s.Outline(), s.Holes()}
		some := g.snap(&own)
		if some && g.near {
			if _, err := NewShape(own.outline, own.holes...); err != nil {
				// Corners that went outward met: all go into the space.
				g.tolerance, own = fraction.Length{}, Shape{s.Outline(), s.Holes()}
				some = g.snap(&own)
			}
		}
		if some {
			kept = append(kept, own)
		}
	}
	slices.SortFunc(kept, compareShapes)
	return kept, nil
}

// snapper is what shapes are snapped to.
type snapper struct {
	mark, tolerance fraction.Length
	taped           func(Point) bool
	near            bool // a corner went to a mark within the tolerance, maybe outward
}

// snap rounds one shape in place and reports whether anything is left of it.
func (g *snapper) snap(s *Shape) bool {
	onMark := func(x fraction.Length) bool {
		_, off := x.Round(g.mark, fraction.Down)
		return off.IsZero()
	}
	computed := map[Point]bool{}
	for _, ring := range s.rings {
		exact := slices.Clone(ring)
		for i, p := range ring {
			if g.taped(p) {
				continue
			}
			if !(onMark(p.X) && onMark(p.Y)) {
				g.corner(*s, ring, exact, i)
			}
			u, w := exact[before(i, len(exact))], exact[after(i, len(exact))]
			computed[ring[i]] = !upright(u, p, w) || !level(u, p, w)
		}
	}
	g.merge(s, &s.outline, computed)
	s.outline = rotated(simplify(s.outline))
	for i := range s.holes {
		g.merge(s, &s.holes[i], computed)
		s.holes[i] = rotated(simplify(s.holes[i]))
	}
	s.holes = slices.DeleteFunc(s.holes, func(hole []Point) bool { return hole == nil })
	return s.outline != nil
}

// merge takes corners out of a ring of the shape until no edge between two computed ones is as short
// as a mark, where that is possible.
func (g *snapper) merge(s *Shape, ring *[]Point, computed map[Point]bool) {
	most := squared(g.mark.Rat())
	for i := 0; i < len(*ring) && len(*ring) > 3; i++ {
		next := after(i, len(*ring))
		p, q := (*ring)[i], (*ring)[next]
		if !computed[p] || !computed[q] || squaredDistance(p.rational(), q.rational()).Cmp(most) > 0 {
			continue
		}
		least, out, tilts := (*big.Rat)(nil), -1, false
		for _, k := range []int{i, next} {
			u, v, w := (*ring)[before(k, len(*ring))], (*ring)[k], (*ring)[after(k, len(*ring))]
			beyond := w // the corner at the far end of its other edge
			if k == i {
				beyond = u
			}
			if orient(u, v, w) < 0 || beyond.X == v.X || !s.clear(u, v, w, u) || !boundedWithout(*ring, k) {
				continue
			}
			lost := v.rational().minus(u.rational()).cross(w.rational().minus(u.rational()))
			if level := beyond.Y == v.Y; least == nil || tilts && !level || tilts == level && lost.Cmp(least) < 0 {
				least, out, tilts = lost, k, level
			}
		}
		if out >= 0 {
			*ring = slices.Delete(*ring, out, out+1)
			i = max(i-2, -1)
		}
	}
}

// boundedWithout reports whether the ring has the same bounds without one corner.
func boundedWithout(ring []Point, corner int) bool {
	lo, hi := Bounds(ring)
	from, to := Bounds(slices.Delete(slices.Clone(ring), corner, corner+1))
	return lo == from && hi == to
}

// finer is how often the mark is halved where no mark lies in the space: down to 1/4096 in for
// 1/16. Finer than any saw, it keeps denominators small that an exact corner would let grow.
const finer = 8

// corner moves corner i of the ring to a mark, or where none will do to a half, a quarter …
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
func (g *snapper) corner(s Shape, ring, exact []Point, i int) {
	u, v, w := ring[before(i, len(ring))], ring[i], ring[after(i, len(ring))]
	a, b := exact[before(i, len(ring))], exact[after(i, len(ring))]
	if orient(a, v, b) <= 0 {
		return
	}
	if to, ok := g.within(a, v, b); ok && s.free(ring, i, to, g.taped) {
		ring[i], g.near = to, true
		return
	}
	fine := snapper{mark: g.mark, taped: g.taped}
	for range finer + 1 {
		for _, to := range fine.beside(a, v, b) {
			inside := inCorner(u, v, w, to) || inCorner(a, v, u, to) || inCorner(v, b, w, to)
			if inside && orient(w, u, to) >= 0 && s.clear(u, v, w, to) {
				ring[i] = to
				return
			}
		}
		fine.mark = fine.mark.Div(2)
	}
}

// upright and level report whether an edge at v, between u and w, is.
func upright(u, v, w Point) bool { return u.X == v.X || v.X == w.X }
func level(u, v, w Point) bool   { return u.Y == v.Y || v.Y == w.Y }

// within returns the mark within the tolerance to which the corner v between u and w goes; of two
// slopes, one coordinate of it may go into the space.
func (g *snapper) within(u, v, w Point) (to Point, ok bool) {
	if g.tolerance.Sign() <= 0 {
		return v, false
	}
	near := func(x fraction.Length) (fraction.Length, bool) {
		on, off := x.Round(g.mark, fraction.Nearest)
		return on, off.Abs().Compare(g.tolerance) <= 0
	}
	switch to = v; {
	case upright(u, v, w) && level(u, v, w):
		return v, false
	case upright(u, v, w):
		to.Y, ok = near(v.Y)
	case level(u, v, w):
		to.X, ok = near(v.X)
	default:
		if marks := g.intoSpace(u, v, w); len(marks) > 0 {
			return marks[0], true
		}
	}
	return to, ok
}

// free reports whether corner i of the ring can go to a place on either side of its edges: the ring
// turns as before there and at both neighbors, unless those stay where they are, and nothing else of the
// shape lies in the way.
func (s Shape) free(ring []Point, i int, to Point, stays func(Point) bool) bool {
	n := len(ring)
	u, v, w := ring[before(i, n)], ring[i], ring[after(i, n)]
	uu, ww := ring[before(before(i, n), n)], ring[after(after(i, n), n)]
	if orient(u, to, w) <= 0 || !stays(u) && orient(uu, u, to) != orient(uu, u, v) || !stays(w) && orient(to, w, ww) != orient(v, w, ww) {
		return false
	}
	crosses := func(a, b, p, q Point) bool {
		lo, hi := Bounds([]Point{a, b})
		from, end := Bounds([]Point{p, q})
		if hi.X.Less(from.X) || end.X.Less(lo.X) || hi.Y.Less(from.Y) || end.Y.Less(lo.Y) {
			return false // on one line, maybe, but apart
		}
		return orient(a, b, p)*orient(a, b, q) <= 0 && orient(p, q, a)*orient(p, q, b) <= 0
	}
	for p, q := range s.Edges() {
		if p == v || q == v {
			continue
		}
		if p != u && p != w && (anyTriangle(u, v, to, p) || anyTriangle(v, w, to, p)) ||
			p != u && q != u && crosses(u, to, p, q) || p != w && q != w && crosses(to, w, p, q) {
			return false
		}
	}
	return true
}

// beside lists the marks to which the corner v between u and w may go.
func (g *snapper) beside(u, v, w Point) []Point {
	mark := g.mark
	x, _ := v.X.Round(mark, fraction.Down)
	y, _ := v.Y.Round(mark, fraction.Down)
	switch {
	case upright(u, v, w) && level(u, v, w):
		return nil
	case upright(u, v, w):
		return []Point{{v.X, y}, {v.X, y.Add(mark)}}
	case level(u, v, w):
		return []Point{{x, v.Y}, {x.Add(mark), v.Y}}
	}
	// Up or down first, and from there along the steeper line sideways; then the four marks round
	// the point, and with the twelve round these, the nearest of each first.
	beside := g.intoSpace(u, v, w)
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
// other, unless that place is taped; each to the nearest mark within the tolerance. It returns none
// where that is out of range.
func (g *snapper) intoSpace(u, v, w Point) []Point {
	steep, flat := u, w
	slope := func(p Point) *big.Rat {
		return new(big.Rat).Quo(difference(p.Y, v.Y), difference(p.X, v.X))
	}
	if first, second := slope(u), slope(w); first.Abs(first).Cmp(second.Abs(second)) < 0 {
		steep, flat = w, u
	}
	round := func(r *big.Rat, up bool) *big.Rat {
		near := nearestMultiple(r, g.mark.Rat())
		if off := new(big.Rat).Sub(near, r); off.Abs(off).Cmp(g.tolerance.Rat()) <= 0 {
			return near
		}
		return multiple(r, g.mark.Rat(), up)
	}
	y, ok := fit(round(v.Y.Rat(), v.Y.Less(steep.Y)))
	if !ok {
		return nil
	}
	along := new(big.Rat).Quo(difference(y, v.Y), slope(steep))
	along.Add(along, v.X.Rat())
	if x, ok := fit(along); ok && g.taped(Point{x, y}) {
		return []Point{{x, y}}
	}
	x, ok := fit(round(along, v.X.Less(flat.X)))
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
		if p != u && p != v && p != w && space.contains(p) && (inBounded(u, v, to, p) || inBounded(v, w, to, p)) {
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

// inBounded does the same, and of what is in line with a flat one takes only what lies between.
func inBounded(a, b, c, p Point) bool {
	lo, hi := Bounds([]Point{a, b, c})
	return inTriangle(a, b, c, p) && box{lo, hi}.contains(p)
}

// anyTriangle does the same whichever way the triangle turns, and never for a flat one.
func anyTriangle(a, b, c, p Point) bool { return inCorner(a, b, c, p) || inCorner(c, b, a, p) }
