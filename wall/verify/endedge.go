package verify

import "slices"

// endEdge finds the edge of the wall's shape that lies on the given end line.
func (g *region) endEdge(wall loop, line func(rat) rat, inset rat, leaning, right bool) endEdge {
	var on []point
	for _, p := range wall {
		if same(p.x, line(p.y)) {
			on = append(on, p)
		}
	}
	if len(on) < 2 {
		return endEdge{x: line(zero()), cut: line(zero()), foot: point{zero(), zero()}, head: point{zero(), zero()}, height: zero()}
	}
	slices.SortFunc(on, func(a, b point) int { return a.y.Cmp(b.y) })
	out := endEdge{foot: on[0], head: on[len(on)-1], leaning: leaning}
	out.x = least(out.foot.x, out.head.x)
	if right {
		out.x = most(out.foot.x, out.head.x)
	}
	if !leaning {
		look := fromRight
		if right {
			look = fromLeft
		}
		out.height = length(g.at(out.x, look))
		return out
	}
	low, high := g.rounded(out.foot, line, false), g.rounded(out.head, line, true)
	out.foot, out.head = g.cut(out.foot, low, line, inset, right), g.cut(out.head, high, line, inset, right)
	out.cut = least(out.foot.x, out.head.x)
	if right {
		out.cut = most(out.foot.x, out.head.x)
	}
	out.height = most(zero(), diff(high, low))
	for _, hole := range g.grown {
		// An opening that takes away the leaning end takes its height away.
		if len(hole) == 0 {
			continue
		}
		from, to := hole.bounds()
		if within(out.middle(), from.x, to.x) {
			cut := diff(least(high, to.y), most(low, from.y))
			out.height = most(zero(), diff(out.height, most(zero(), cut)))
		}
	}
	return out
}

// cut rounds an end p of a leaning edge into the space: first up or down to y,
// then sideways from where the line is there, unless it is the taped end of the
// wall moved by the inset alone.
func (g *region) cut(p point, y rat, line func(rat) rat, inset rat, right bool) point {
	n := len(g.run.heights) - 1
	taped := []rat{zero(), g.run.left.lean}
	if right {
		at := g.run.heights[n].at
		taped = []rat{at, sum(at, g.run.right.lean)}
	}
	x := line(y)
	for _, t := range taped {
		if same(x, sum(t, inset)) {
			return point{x, y}
		}
	}
	if right {
		return point{down(x, g.mark), y}
	}
	return point{up(x, g.mark), y}
}

// rounded rounds the end of a leaning edge into the space where a sloped line
// gives it.
func (g *region) rounded(p point, line func(rat) rat, isTop bool) rat {
	for _, e := range g.outline {
		if same(e.a.x, line(e.a.y)) && same(e.b.x, line(e.b.y)) {
			continue // the leaning edge itself
		}
		if e.sloped && within(p.x, e.a.x, e.b.x) && same(e.y(p.x), p.y) && !g.taped(p.x) {
			if isTop {
				return down(p.y, g.mark)
			}
			return up(p.y, g.mark)
		}
	}
	return p.y
}

// taped says whether a station or a leaning end's head stands at x.
func (g *region) taped(x rat) bool {
	r := g.run
	n := len(r.heights) - 1
	for k, h := range r.heights {
		at := h.at
		switch k {
		case 0:
			at = sum(at, r.left.lean)
		case n:
			at = sum(at, r.right.lean)
		}
		if same(at, x) {
			return true
		}
	}
	return false
}
