package verify

import (
	"cmp"
	"slices"
	"sort"
)

type point struct{ X, Y rat }

func (p point) is(q point) bool { return same(p.X, q.X) && same(p.Y, q.Y) }

// along returns the point at part t of the way from p to q.
func along(p, q point, t rat) point {
	return point{sum(p.X, times(t, diff(q.X, p.X))), sum(p.Y, times(t, diff(q.Y, p.Y)))}
}

// apart returns the square of the distance of two points.
func apart(p, q point) rat { return sum(square(diff(p.X, q.X)), square(diff(p.Y, q.Y))) }

// turn returns 1 where c lies left of the way from a to b, -1 where it lies right.
func turn(a, b, c point) int {
	return times(diff(b.X, a.X), diff(c.Y, a.Y)).Cmp(times(diff(b.Y, a.Y), diff(c.X, a.X)))
}

// A loop is a closed polygon; a shape is what lies inside an odd number of its loops.
type loop []point
type shape []loop

func rectangle(low, high point) loop {
	return loop{low, {high.X, low.Y}, high, {low.X, high.Y}}
}

func (l loop) moved(dx, dy rat) loop {
	out := make(loop, len(l))
	for i, p := range l {
		out[i] = point{sum(p.X, dx), sum(p.Y, dy)}
	}
	return out
}

// area is positive for a loop that runs counterclockwise.
func (l loop) area() rat {
	total := zero()
	for i, p := range l {
		q := l[(i+1)%len(l)]
		total.Add(total, diff(times(p.X, q.Y), times(q.X, p.Y)))
	}
	return half(total)
}

// bounds returns the lower left and upper right corners of a box round some loops, if any.
func bounds(loops ...loop) (low, high point, ok bool) {
	for i, p := range slices.Concat(loops...) {
		if i == 0 {
			low, high, ok = p, p, true
		}
		low = point{least(low.X, p.X), least(low.Y, p.Y)}
		high = point{most(high.X, p.X), most(high.Y, p.Y)}
	}
	return low, high, ok
}

// simple returns the loop without points that stand twice or on a level or upright edge.
func (l loop) simple() loop {
	out := slices.Clone(l)
	for i := 0; i < len(out) && len(out) > 3; {
		before, p, after := out[(i+len(out)-1)%len(out)], out[i], out[(i+1)%len(out)]
		if i++; p.is(after) || same(before.X, p.X) && same(p.X, after.X) || same(before.Y, p.Y) && same(p.Y, after.Y) {
			out = slices.Delete(out, i-1, i)
			i = max(i-2, 0)
		}
	}
	return out
}

// square returns whether every edge is level or upright.
func (l loop) square() bool {
	for i, p := range l {
		if q := l[(i+1)%len(l)]; !same(p.X, q.X) && !same(p.Y, q.Y) {
			return false
		}
	}
	return true
}

// grown returns loops that hold every place within gap of the inside, measured along and across.
func (l loop) grown(gap rat) []loop {
	if len(l) == 4 && l.square() {
		low, high, _ := bounds(l)
		return []loop{rectangle(point{diff(low.X, gap), diff(low.Y, gap)}, point{sum(high.X, gap), sum(high.Y, gap)})}
	}
	out := []loop{l}
	for i, p := range l {
		out = append(out, swept(p, l[(i+1)%len(l)], gap))
	}
	return out
}

// swept returns what a square of twice the gap covers when its middle moves from p to q.
func swept(p, q point, gap rat) loop {
	if less(q.X, p.X) || same(p.X, q.X) && less(q.Y, p.Y) {
		p, q = q, p
	}
	at := func(p point, x, y int64) point {
		return point{sum(p.X, times(gap, whole(x))), sum(p.Y, times(gap, whole(y)))}
	}
	up := int64(1)
	if less(q.Y, p.Y) {
		up = -1
	}
	return loop{at(p, -1, -up), at(p, 1, -up), at(q, 1, -up), at(q, 1, up), at(q, -1, up), at(p, -1, up)}
}

// keep returns the part of the loop where side, which is linear, is not negative.
func (l loop) keep(side func(point) rat) loop {
	var out loop
	for i, p := range l {
		q := l[(i+1)%len(l)]
		a, b := side(p), side(q)
		if a.Sign() >= 0 {
			out = append(out, p)
		}
		if a.Sign()*b.Sign() < 0 {
			out = append(out, along(p, q, over(a, diff(a, b))))
		}
	}
	return out
}

// A sweep looks at shapes along upright lines: between two neighbouring places of change everything
// is straight and in one order, so that the middle line speaks for all. It counts the edges that it
// looks at and panics when there are too many: plans need few, but a file can hold anything.
type sweep struct{ left int }

// mostSteps is how many edges can be looked at in some ten seconds.
const mostSteps = 30_000_000

// tooMuch is what a sweep panics with.
type tooMuch struct{}

func (s *sweep) spend(steps int) {
	if s.left -= steps; s.left < 0 {
		panic(tooMuch{})
	}
}

// An edge runs from left to right; upright edges are none.
type edge struct {
	a, b                  point
	sloped                bool
	left, right, low, top float64 // the nearest to its bounds: where these differ, so do those, in the same order
}

func (e edge) y(x rat) rat {
	if !e.sloped {
		return e.a.Y
	}
	t := over(diff(x, e.a.X), diff(e.b.X, e.a.X))
	return sum(e.a.Y, times(t, diff(e.b.Y, e.a.Y)))
}

func (s shape) edges() []edge {
	var out []edge
	for _, l := range s {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			if less(q.X, p.X) {
				p, q = q, p
			}
			if !same(p.X, q.X) {
				e := edge{a: p, b: q, sloped: !same(p.Y, q.Y), left: nearest(p.X), right: nearest(q.X), low: nearest(p.Y), top: nearest(q.Y)}
				e.low, e.top = min(e.low, e.top), max(e.low, e.top)
				out = append(out, e)
			}
		}
	}
	return out
}

// A bound is an end of a span on an upright line; sloped: a sloped edge, not an end of it, gave it.
type bound struct {
	y      rat
	sloped bool
}

// A span is a part of an upright line from low to high.
type span struct{ low, high bound }

// side says from which side a line is looked at, where it runs through vertices.
type side bool

const (
	fromLeft  side = false // the shape just left of the line
	fromRight side = true  // the shape just right of the line
)

// spans returns the parts of the upright line at x inside the edges' shape, upward.
func (s *sweep) spans(edges []edge, x rat, look side) []span {
	s.spend(len(edges))
	var hits []bound
	near := nearest(x)
	for _, e := range edges {
		from, to := cmp.Compare(e.left, near), cmp.Compare(e.right, near)
		if from == 0 {
			from = e.a.X.Cmp(x)
		}
		if to == 0 {
			to = e.b.X.Cmp(x)
		}
		if look == fromRight && from <= 0 && to > 0 || look == fromLeft && from < 0 && to >= 0 {
			hits = append(hits, bound{y: e.y(x), sloped: e.sloped && from != 0 && to != 0})
		}
	}
	sort.SliceStable(hits, func(i, j int) bool { return less(hits[i].y, hits[j].y) })
	var out []span
	for i := 0; i+1 < len(hits); i += 2 {
		if less(hits[i].y, hits[i+1].y) {
			out = append(out, span{hits[i], hits[i+1]})
		}
	}
	return out
}

// events returns, in order, every x at which the picture made of the edges can change: their ends,
// the crossings of sloped ones, and the further places.
func (s *sweep) events(edges []edge, further ...rat) []rat {
	xs := slices.Clone(further)
	for i, e := range edges {
		s.spend(i)
		xs = append(xs, e.a.X, e.b.X)
		for _, f := range edges[:i] {
			if !e.sloped && !f.sloped || e.right < f.left || f.right < e.left || e.top < f.low || f.top < e.low {
				continue
			}
			left, right := most(e.a.X, f.a.X), least(e.b.X, f.b.X)
			if !less(left, right) {
				continue
			}
			a, b := diff(e.y(left), f.y(left)), diff(e.y(right), f.y(right))
			if a.Sign()*b.Sign() < 0 {
				xs = append(xs, sum(left, times(diff(right, left), over(a, diff(a, b)))))
			}
		}
	}
	slices.SortFunc(xs, rat.Cmp)
	return slices.CompactFunc(xs, same)
}

// area returns the area of the shape of some edges.
func (s *sweep) area(edges []edge) rat {
	total := zero()
	xs := s.events(edges)
	for k := 0; k+1 < len(xs); k++ {
		total.Add(total, times(diff(xs[k+1], xs[k]), length(s.spans(edges, middle(xs[k], xs[k+1]), fromRight))))
	}
	return total
}

// without returns the spans less what lies in the holes, upward.
func without(spans, holes []span) []span {
	for _, hole := range holes {
		var out []span
		for _, s := range spans {
			if !less(s.low.y, hole.high.y) || !less(hole.low.y, s.high.y) {
				out = append(out, s)
				continue
			}
			if less(s.low.y, hole.low.y) {
				out = append(out, span{s.low, hole.low})
			}
			if less(hole.high.y, s.high.y) {
				out = append(out, span{hole.high, s.high})
			}
		}
		spans = out
	}
	return spans
}

// length adds up the spans' lengths.
func length(spans []span) rat {
	total := zero()
	for _, s := range spans {
		total.Add(total, diff(s.high.y, s.low.y))
	}
	return total
}

// joined returns the same points as one set of spans that do not overlap.
func joined(in []span) []span {
	in = slices.Clone(in)
	sort.SliceStable(in, func(i, j int) bool { return less(in[i].low.y, in[j].low.y) })
	var out []span
	for _, s := range in {
		if n := len(out); n > 0 && !less(out[n-1].high.y, s.low.y) {
			if less(out[n-1].high.y, s.high.y) {
				out[n-1].high = s.high
			}
			continue
		}
		out = append(out, s)
	}
	return out
}
