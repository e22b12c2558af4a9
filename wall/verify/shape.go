package verify

import (
	"slices"
)

type point struct{ x, y rat }

// A loop is a closed polygon; a shape is what lies inside an odd number of its
// loops.
type loop []point
type shape []loop

func rectangle(left, bottom, width, height rat) []point {
	right, top := sum(left, width), sum(bottom, height)
	return []point{{left, bottom}, {right, bottom}, {right, top}, {left, top}}
}

func (l loop) moved(dx, dy rat) loop {
	out := make(loop, len(l))
	for i, p := range l {
		out[i] = point{sum(p.x, dx), sum(p.y, dy)}
	}
	return out
}

// turned returns the loop turned by 180° within a box of the given size.
func (l loop) turned(width, height rat) loop {
	out := make(loop, len(l))
	for i, p := range l {
		out[i] = point{diff(width, p.x), diff(height, p.y)}
	}
	return out
}

// area is positive for a loop that runs counterclockwise.
func (l loop) area() rat {
	total := zero()
	for i, p := range l {
		q := l[(i+1)%len(l)]
		total.Add(total, diff(times(p.x, q.y), times(q.x, p.y)))
	}
	return half(total)
}

// bounds returns the lower left and upper right corners; the loop is not empty.
func (l loop) bounds() (low, high point) {
	low, high = l[0], l[0]
	for _, p := range l[1:] {
		low = point{least(low.x, p.x), least(low.y, p.y)}
		high = point{most(high.x, p.x), most(high.y, p.y)}
	}
	return low, high
}

// grown returns the loop with every edge moved outward by gap, exactly; ok is
// false where an edge is neither level nor upright and the gap is not 0.
func (l loop) grown(gap rat) (out loop, ok bool) {
	if gap.Sign() == 0 {
		return l, true
	}
	outward := gap
	if l.area().Sign() < 0 {
		outward = negative(gap)
	}
	for i, p := range l {
		before, after := l[(i+len(l)-1)%len(l)], l[(i+1)%len(l)]
		q := p
		for _, edge := range [2][2]point{{before, p}, {p, after}} {
			dx, dy := diff(edge[1].x, edge[0].x), diff(edge[1].y, edge[0].y)
			switch {
			case dx.Sign() == 0 && dy.Sign() != 0:
				q.x = sum(p.x, times(outward, whole(int64(dy.Sign()))))
			case dy.Sign() == 0 && dx.Sign() != 0:
				q.y = diff(p.y, times(outward, whole(int64(dx.Sign()))))
			default:
				return l, false
			}
		}
		out = append(out, q)
	}
	return out, true
}

// keep returns the part of the loop where side is not negative. The line where
// side is 0 is straight, and side is linear.
func (l loop) keep(side func(point) rat) loop {
	var out loop
	for i, p := range l {
		q := l[(i+1)%len(l)]
		a, b := side(p), side(q)
		if a.Sign() >= 0 {
			out = append(out, p)
		}
		if a.Sign()*b.Sign() < 0 {
			t := over(a, diff(a, b))
			out = append(out, point{sum(p.x, times(t, diff(q.x, p.x))), sum(p.y, times(t, diff(q.y, p.y)))})
		}
	}
	return out
}

// An edge runs from left to right; upright edges are none.
type edge struct {
	a, b   point
	sloped bool
}

func (e edge) y(x rat) rat {
	if !e.sloped {
		return e.a.y
	}
	t := over(diff(x, e.a.x), diff(e.b.x, e.a.x))
	return sum(e.a.y, times(t, diff(e.b.y, e.a.y)))
}

func (s shape) edges() []edge {
	var out []edge
	for _, l := range s {
		for i, p := range l {
			q := l[(i+1)%len(l)]
			if same(p.x, q.x) {
				continue
			}
			if less(q.x, p.x) {
				p, q = q, p
			}
			out = append(out, edge{a: p, b: q, sloped: !same(p.y, q.y)})
		}
	}
	return out
}

// A bound is an end of a span on an upright line; sloped says that a sloped
// edge gave it, at a place that is no vertex of it.
type bound struct {
	y      rat
	sloped bool
}

// A span is a part of an upright line from low to high.
type span struct{ low, high bound }

// side says from which side a line is looked at, where it runs through vertices.
type side int

const (
	fromLeft  side = iota // the shape just left of the line
	fromRight             // the shape just right of the line
)

// spans returns the parts of the upright line at x inside the edges' shape,
// upward.
func spans(edges []edge, x rat, look side) []span {
	var hits []bound
	for _, e := range edges {
		from, to := e.a.x.Cmp(x), e.b.x.Cmp(x)
		if look == fromRight && from <= 0 && to > 0 || look == fromLeft && from < 0 && to >= 0 {
			hits = append(hits, bound{y: e.y(x), sloped: e.sloped && from != 0 && to != 0})
		}
	}
	slices.SortStableFunc(hits, func(a, b bound) int { return a.y.Cmp(b.y) })
	var out []span
	for i := 0; i+1 < len(hits); i += 2 {
		if less(hits[i].y, hits[i+1].y) {
			out = append(out, span{hits[i], hits[i+1]})
		}
	}
	return out
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
	slices.SortStableFunc(in, func(a, b span) int { return a.low.y.Cmp(b.low.y) })
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

// events returns, in order, every x at which the picture made of the edges can
// change: their ends, the crossings of sloped ones, and the further places.
func events(edges []edge, further ...rat) []rat {
	xs := slices.Clone(further)
	for i, e := range edges {
		xs = append(xs, e.a.x, e.b.x)
		for _, f := range edges[:i] {
			if !e.sloped && !f.sloped {
				continue
			}
			left, right := most(e.a.x, f.a.x), least(e.b.x, f.b.x)
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
