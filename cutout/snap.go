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
// counts as less than half a mark. Any other goes into the space. A corner of an upright and a sloped
// edge moves along the upright one, one of a level and a sloped edge along the level one, no farther
// than to or beside a corner that stays; one of two sloped edges goes along the steeper one up or down and then
// sideways, and again where that leads out of the space; its height goes into the space where it would
// be more than the tolerance off sideways too. Where that is a mark or more off the line of the other, it
// goes to a mark in the space that is less off both. A corner of an upright and a level edge never moves.
// So where a corner goes depends on its own edges alone, it stays less than a mark from their lines, across
// and up, and no piece is larger than the exact one by more than the tolerance.
//
// Where edges would meet that did not before, the piece is parted at an upright line there, the parts
// are rounded each by itself and joined again: a sloped edge gets a corner at one that was in its way.
// Parts that would overlap by what the tolerance adds are rounded without one, only into the space.
// What this leaves a mark wide and with edges that meet is dropped, as is a piece that vanishes.
//
// Last, edges no longer than a mark between two computed corners of sloped edges go, which no saw could
// follow: one of the two corners does, where nothing is added, the piece keeps its bounding box and no
// upright edge begins to slope, and rather one that leaves level edges level. A triangle goes whole.
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
	g := snapper{mark, tolerance, taped, map[Point]bool{}}
	for _, s := range shapes {
		for _, own := range g.snap(s) {
			for number, ring := range own.rings {
				own.setRing(number, rotated(simplify(g.merge(own, ring))))
			}
			if !own.IsEmpty() {
				kept = append(kept, own)
			}
		}
	}
	slices.SortStableFunc(kept, compareShapes)
	return kept, nil
}

// snapper is what shapes are snapped to.
type snapper struct {
	mark, tolerance fraction.Length
	taped           func(Point) bool
	computed        map[Point]bool // where corners of sloped edges are that no tape gave
}

// snap returns what is left of a shape with its corners rounded.
func (g *snapper) snap(s Shape) []Shape {
	own := Shape{outline: simplify(g.corners(s.outline))}
	if own.outline == nil {
		return nil
	}
	for _, hole := range s.holes {
		if hole = simplify(g.corners(hole)); hole != nil {
			own.holes = append(own.holes, hole)
		}
	}
	lo, hi := s.Bounds()
	within := func(x fraction.Length) bool { return lo.X.Less(x) && x.Less(hi.X) }
	at, meet := own.meeting(s.pinched(), within)
	switch {
	case !meet && counterclockwise(own.outline):
		return []Shape{own}
	case !meet || !within(at):
		if at, _ = lo.X.Add(hi.X).Div(2).Round(g.mark, fraction.Down); !within(at) {
			return nil
		}
	}
	bands := slices.Concat(s.band(lo.X, at), s.band(at, hi.X))
	parts := g.each(bands)
	if overlap(parts) {
		inward := *g
		inward.tolerance = fraction.Length{}
		parts = inward.each(bands)
	}
	var joined sweep
	for _, part := range parts {
		joined.addShape(part, nil)
	}
	joined.run(inShapeOnly)
	parts = joined.pieces()
	for i := range parts {
		parts[i].straighten(at, own)
	}
	return parts
}

// each returns what is left of every shape, rounded by itself.
func (g *snapper) each(shapes []Shape) (all []Shape) {
	for _, s := range shapes {
		all = append(all, g.snap(s)...)
	}
	return all
}

// overlap reports whether some of the shapes share more than edges.
func overlap(shapes []Shape) bool {
	for i, s := range shapes {
		for _, other := range shapes[:i] {
			if len(fraction.Must(s.Within(other.outline))) > 0 {
				return true
			}
		}
	}
	return false
}

// straighten takes out of a shape the corners on an upright line that rounding without it would not
// have made, but for those without which edges would meet.
func (s *Shape) straighten(at fraction.Length, without Shape) {
	any := func(fraction.Length) bool { return true }
	for number, ring := range s.rings {
		for i := 0; i < len(ring) && len(ring) > 3; i++ {
			needed := ring[i].X != at || upright(ring[before(i, len(ring))], ring[i], ring[after(i, len(ring))])
			for _, other := range without.rings {
				needed = needed || slices.Contains(other, ring[i])
			}
			if needed {
				continue
			}
			less := Shape{s.outline, slices.Clone(s.holes)}
			less.setRing(number, slices.Delete(slices.Clone(ring), i, i+1))
			if _, meet := less.meeting(true, any); !meet { // it has no corner twice that s has not
				ring, i = less.ring(number), i-1
				*s = less
			}
		}
	}
}

// pinched reports whether a corner of the shape stands in its rings twice.
func (s Shape) pinched() bool {
	corners := map[Point]bool{}
	for p := range s.Edges() {
		if corners[p] {
			return true
		}
		corners[p] = true
	}
	return false
}

// meeting reports whether edges of the shape meet that are no neighbours, in a pinched shape elsewhere
// than at a corner of both, and an x at which to part it: that of an end of one of them beside the
// other, or of any end within.
func (s Shape) meeting(pinched bool, within func(fraction.Length) bool) (at fraction.Length, meet bool) {
	type edge struct {
		a, b, lo, hi Point
		number       int
	}
	var all []edge
	for number, ring := range s.rings {
		for a, b := range edges(ring) {
			lo, hi := Bounds([]Point{a, b})
			all = append(all, edge{a, b, lo, hi, number})
		}
	}
	for i, e := range all {
		for _, f := range all[:i] {
			if e.hi.X.Less(f.lo.X) || f.hi.X.Less(e.lo.X) || e.hi.Y.Less(f.lo.Y) || f.hi.Y.Less(e.lo.Y) {
				continue
			}
			switch shared := e.a == f.a || e.b == f.b; {
			case e.number == f.number && (e.a == f.b || e.b == f.a), shared && pinched:
				continue
			case !shared && !edgesMeet(e.a, e.b, f.a, f.b):
				continue
			}
			meet, at = true, e.a.X
			for _, x := range []fraction.Length{e.a.X, e.b.X, f.a.X, f.b.X} {
				if within(x) {
					at = x
				}
				if within(x) && e.lo.X.Less(x) != f.lo.X.Less(x) && x.Less(e.hi.X) != x.Less(f.hi.X) {
					return x, true
				}
			}
			return at, true
		}
	}
	return at, false
}

// corners returns a ring with its corners rounded, nil where nothing is left. A corner that would pass
// the far end of its edge goes there, if that end stays, or as far as that along its upright or level edge.
// Of two slopes with a far end that moves, such a corner is left out.
func (g *snapper) corners(exact []Point) []Point {
	n := len(exact)
	if n < 3 {
		return nil
	}
	ring := slices.Clone(exact)
	for i, v := range exact {
		if u, w := exact[before(i, n)], exact[after(i, n)]; !g.taped(v) {
			ring[i] = g.corner(u, v, w)
			if !upright(u, v, w) || !level(u, v, w) {
				g.computed[ring[i]] = true
			}
		}
	}
	for i, v := range exact {
		u, w := exact[before(i, n)], exact[after(i, n)]
		for _, k := range []int{before(i, n), after(i, n)} {
			far := exact[k]
			switch {
			case !passes(v, ring[i], far):
			case ring[k] == far && upright(u, v, w):
				ring[i].Y = far.Y
			case ring[k] == far && level(u, v, w):
				ring[i].X = far.X
			case ring[k] == far:
				ring[i] = far
			case !upright(u, v, w) && !level(u, v, w):
				return g.corners(slices.Delete(slices.Clone(exact), i, i+1))
			}
		}
	}
	return ring
}

// passes reports whether a place lies beyond the far end of an edge as one looks along it from v.
func passes(v, to, far Point) bool {
	across, up := v.X.Compare(far.X)*far.X.Compare(to.X), v.Y.Compare(far.Y)*far.Y.Compare(to.Y)
	if across*up >= 0 { // no need to multiply
		return across+up > 0
	}
	edge, beyond := far.rational().minus(v.rational()), to.rational().minus(far.rational())
	return edge.dot(beyond).Sign() > 0
}

// corner returns where the corner v between u and w goes. It is convex, as every crossing of two
// borders is, or stays.
func (g *snapper) corner(u, v, w Point) Point {
	if Orient(u, v, w) <= 0 {
		return v
	}
	toward := func(x, far fraction.Length) fraction.Length { return mustFit(g.round(x.Rat(), x.Less(far))) }
	switch {
	case upright(u, v, w) && level(u, v, w):
	case v.X == u.X:
		v.Y = toward(v.Y, u.Y)
	case v.X == w.X:
		v.Y = toward(v.Y, w.Y)
	case v.Y == u.Y:
		v.X = toward(v.X, u.X)
	case v.Y == w.Y:
		v.X = toward(v.X, w.X)
	default:
		return g.ofSlopes(u, v, w)
	}
	return v
}

// round returns the nearest mark within the tolerance, else, and midway between two, that above or below.
func (g *snapper) round(r *big.Rat, up bool) *big.Rat {
	inward, outward := multiple(r, g.mark.Rat(), up), multiple(r, g.mark.Rat(), !up)
	in, out := gap(inward, r), gap(outward, r)
	if out.Cmp(in) < 0 && out.Cmp(g.tolerance.Rat()) <= 0 {
		return outward
	}
	return inward
}

// gap is how far apart two numbers are.
func gap(a, b *big.Rat) *big.Rat {
	off := new(big.Rat).Sub(a, b)
	return off.Abs(off)
}

// upright and level report whether an edge at v, between u and w, is.
func upright(u, v, w Point) bool { return u.X == v.X || v.X == w.X }
func level(u, v, w Point) bool   { return u.Y == v.Y || v.Y == w.Y }

// ofSlopes returns the mark for a corner of two slopes: that along the steeper line or, where it lies a
// mark or more off the other, across and up, the one nearest to the place half a mark off both. That is
// at most half a mark from there, across and up, and so less than a mark off each line and beyond none.
func (g *snapper) ofSlopes(u, v, w Point) Point {
	slope := func(p Point) *big.Rat {
		rise := new(big.Rat).Quo(difference(p.Y, v.Y), difference(p.X, v.X))
		return rise.Abs(rise)
	}
	if slope(u).Cmp(slope(w)) < 0 {
		u, w = w, u
	}
	to, mark := g.alongSteeper(v, u, w), g.mark.Rat()
	steep, flat := u.rational().minus(v.rational()), w.rational().minus(v.rational())
	if off := flat.cross(to.rational().minus(v.rational())); off.Abs(off).Cmp(new(big.Rat).Mul(mark, flat.reach())) < 0 {
		return to
	}
	half, area := new(big.Rat).Quo(mark, two), steep.cross(flat)
	inward := steep.times(flat.reach()).plus(flat.times(steep.reach())).times(new(big.Rat).Quo(half, area.Abs(area)))
	nearest := func(from fraction.Length, by *big.Rat) fraction.Length { // of two that nearer to v
		at := new(big.Rat).Mul(half, big.NewRat(int64(-by.Sign()), 1))
		return mustFit(multiple(at.Add(at, by).Add(at, from.Rat()), mark, by.Sign() > 0))
	}
	return Point{nearest(v.X, inward.x), nearest(v.Y, inward.y)}
}

// alongSteeper returns the mark near a corner of two slopes: its height is rounded toward the far end of
// the steeper line, and then the place on that line at this height toward the far end of the other,
// unless that place is taped. Where the other line is passed by then, its height there is rounded.
func (g *snapper) alongSteeper(v, steep, flat Point) Point {
	slope := func(p Point) *big.Rat {
		return new(big.Rat).Quo(difference(p.Y, v.Y), difference(p.X, v.X))
	}
	up, side := v.Y.Less(steep.Y), Orient(v, flat, steep)
	y := v.Y.Rat()
	for range mostTurns {
		y = g.round(y, up)
		x := new(big.Rat).Sub(y, v.Y.Rat())
		x.Add(x.Quo(x, slope(steep)), v.X.Rat())
		at, ok := fit(x)
		tapeGave := ok && g.taped(Point{at, mustFit(y)})
		if !tapeGave {
			x = g.round(x, v.X.Less(flat.X))
		}
		if outward := v.Y.Compare(steep.Y); y.Cmp(v.Y.Rat()) == outward && gap(x, v.X.Rat()).Cmp(g.tolerance.Rat()) > 0 {
			y = multiple(v.Y.Rat(), g.mark.Rat(), up)
			continue
		}
		to := Point{mustFit(x), mustFit(y)}
		if tapeGave || Orient(v, flat, to) != -side {
			return to
		}
		beside := x.Sub(x, v.X.Rat())
		beside.Add(beside.Mul(beside, slope(flat)), v.Y.Rat())
		if beside = g.round(beside, up); beside.Cmp(y) == 0 { // within the tolerance
			return to
		}
		y = beside
	}
	return v
}

// mostTurns is how often a corner goes up or down and sideways: the second time it does so from where
// the flatter line is a mark or two off, and no more is left to go.
const mostTurns = 4

// merge returns a ring of the shape less corners, so that no edge between two computed ones is as short
// as a mark, where that is possible; nil for a triangle with one that is.
func (g *snapper) merge(s Shape, ring []Point) []Point {
	most := squared(g.mark.Rat())
	for i := 0; i < len(ring); i++ {
		next := after(i, len(ring))
		p, q := ring[i], ring[next]
		if !g.computed[p] || !g.computed[q] || squaredDistance(p.rational(), q.rational()).Cmp(most) > 0 {
			continue
		}
		if len(ring) == 3 {
			return nil
		}
		least, out, tilts := (*big.Rat)(nil), -1, false
		for _, k := range []int{i, next} {
			u, v, w := ring[before(k, len(ring))], ring[k], ring[after(k, len(ring))]
			beyond := w // the corner at the far end of its other edge
			if k == i {
				beyond = u
			}
			if Orient(u, v, w) < 0 || beyond.X == v.X || !s.clear(u, v, w) || !boundedWithout(ring, k) {
				continue
			}
			lost := v.rational().minus(u.rational()).cross(w.rational().minus(u.rational()))
			if level := beyond.Y == v.Y; least == nil || tilts && !level || tilts == level && lost.Cmp(least) < 0 {
				least, out, tilts = lost, k, level
			}
		}
		if out >= 0 {
			ring = slices.Delete(slices.Clone(ring), out, out+1)
			i = max(i-2, -1)
		}
	}
	return ring
}

// boundedWithout reports whether the ring has the same bounds without one corner.
func boundedWithout(ring []Point, corner int) bool {
	lo, hi := Bounds(ring)
	from, to := Bounds(slices.Delete(slices.Clone(ring), corner, corner+1))
	return lo == from && hi == to
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

// clear reports whether no corner of the shape but u, v and w lies in the triangle of these, its edges
// included.
func (s Shape) clear(u, v, w Point) bool {
	lo, hi := Bounds([]Point{u, v, w})
	space := box{lo, hi}
	for p := range s.Edges() {
		if p != u && p != v && p != w && space.contains(p) && Orient(u, v, p) >= 0 && Orient(v, w, p) >= 0 && Orient(w, u, p) >= 0 {
			return false
		}
	}
	return true
}
