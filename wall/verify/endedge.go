package verify

import "slices"

// endEdge is the edge of a region at one end of the run.
type endEdge struct {
	x       rat // the limit: leftmost or rightmost x of the region
	stop    rat // where the panels stop: if it leans, the limit with the edge's ends rounded
	middle  rat // x halfway up the edge, which speaks for its phase
	height  rat // of the upright part that bounds the shape, after rounding
	leaning bool
}

// endEdge finds the edge of the wall's shape that lies on the given end line.
func (g *region) endEdge(wall loop, line func(rat) rat, inset rat, leaning, right bool) endEdge {
	outer := least
	if right {
		outer = most
	}
	on := slices.DeleteFunc(slices.Clone(wall), func(p point) bool { return !same(p.X, line(p.Y)) })
	if len(on) < 2 {
		x := line(zero())
		return endEdge{x, x, x, zero(), false}
	}
	slices.SortFunc(on, func(a, b point) int { return a.Y.Cmp(b.Y) })
	foot, head := on[0], on[len(on)-1]
	x := outer(foot.X, head.X)
	if !leaning {
		return endEdge{x, x, x, length(g.at(x, side(!right))), false}
	}
	g.spare = append(g.spare, shape{swept(foot, head, g.mark)}.edges())
	low, high := g.rounded(foot, line, false), g.rounded(head, line, true)
	from, to := g.cut(low, line, inset, right), g.cut(high, line, inset, right)
	out := endEdge{x, outer(from, to), middle(from, to), most(zero(), diff(high, low)), true}
	for _, o := range g.run.Openings {
		// An opening that takes away the leaning end takes its height away.
		parts, _ := g.job.grown(o)
		if from, to, ok := bounds(parts...); ok && within(out.middle, from.X, to.X) {
			cut := diff(least(high, to.Y), most(low, from.Y))
			out.height = most(zero(), diff(out.height, most(zero(), cut)))
		}
	}
	return out
}

// cut returns the x of an end of a leaning edge, which stands at y by now: where the line is there,
// rounded sideways into the space unless it is the taped end of the wall moved by the inset alone.
func (g *region) cut(y rat, line func(rat) rat, inset rat, right bool) rat {
	at, lean := zero(), g.run.Left.Lean
	if right {
		at, lean = g.run.Heights[len(g.run.Heights)-1].At, g.run.Right.Lean
	}
	switch x := line(y); {
	case same(x, sum(at, inset)), same(x, sum(at, lean, inset)):
		return x
	case right:
		return down(x, g.mark)
	default:
		return up(x, g.mark)
	}
}

// rounded rounds the end of a leaning edge into the space where a sloped line gives it.
func (g *region) rounded(p point, line func(rat) rat, isTop bool) rat {
	for _, e := range g.outline {
		if same(e.a.X, line(e.a.Y)) && same(e.b.X, line(e.b.Y)) {
			continue // the leaning edge itself
		}
		if e.sloped && within(p.X, e.a.X, e.b.X) && same(e.y(p.X), p.Y) && !g.taped(p.X) {
			if isTop {
				return down(p.Y, g.mark)
			}
			return up(p.Y, g.mark)
		}
	}
	return p.Y
}
