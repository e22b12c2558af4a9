package verify

import "slices"

// endEdge is the edge of a region at one end of the run.
type endEdge struct {
	x          rat // the limit: leftmost or rightmost x of the region
	foot, head point
	leaning    bool
	cut        rat // of an end that leans: the limit with its ends rounded
	height     rat // of the upright part that bounds the shape, after rounding
}

func (e endEdge) middle() rat { return middle(e.foot.X, e.head.X) }

// rise is how much higher the head of an end edge stands than its foot.
func (e endEdge) rise() rat { return diff(e.head.Y, e.foot.Y) }

// stop returns where the panels stop, at the rounded limit of an end that leans.
func (e endEdge) stop() rat {
	if e.leaning {
		return e.cut
	}
	return e.x
}

// outer returns the leftmost or rightmost x of the edge.
func (e endEdge) outer(right bool) rat {
	if right {
		return most(e.foot.X, e.head.X)
	}
	return least(e.foot.X, e.head.X)
}

// endEdge finds the edge of the wall's shape that lies on the given end line.
func (g *region) endEdge(wall loop, line func(rat) rat, inset rat, leaning, right bool) endEdge {
	var on []point
	for _, p := range wall {
		if same(p.X, line(p.Y)) {
			on = append(on, p)
		}
	}
	if len(on) < 2 {
		none := point{zero(), zero()}
		return endEdge{x: line(zero()), cut: line(zero()), foot: none, head: none, height: zero()}
	}
	slices.SortFunc(on, func(a, b point) int { return a.Y.Cmp(b.Y) })
	out := endEdge{foot: on[0], head: on[len(on)-1], leaning: leaning}
	out.x = out.outer(right)
	if !leaning {
		out.height = length(g.at(out.x, facing(!right)))
		return out
	}
	low, high := g.rounded(out.foot, line, false), g.rounded(out.head, line, true)
	out.foot, out.head = g.cut(low, line, inset, right), g.cut(high, line, inset, right)
	out.cut = out.outer(right)
	out.height = most(zero(), diff(high, low))
	for _, h := range g.holes {
		// An opening that takes away the leaning end takes its height away.
		if from, to, ok := h.bounds(); ok && within(out.middle(), from.X, to.X) {
			cut := diff(least(high, to.Y), most(low, from.Y))
			out.height = most(zero(), diff(out.height, most(zero(), cut)))
		}
	}
	return out
}

// cut rounds an end of a leaning edge, which stands at y by now, into the space: sideways from where
// the line is there, unless it is the taped end of the wall moved by the inset alone.
func (g *region) cut(y rat, line func(rat) rat, inset rat, right bool) point {
	at, lean := zero(), g.run.Left.Lean
	if right {
		at, lean = g.run.Heights[len(g.run.Heights)-1].At, g.run.Right.Lean
	}
	switch x := line(y); {
	case same(x, sum(at, inset)), same(x, sum(at, lean, inset)):
		return point{x, y}
	case right:
		return point{down(x, g.mark), y}
	default:
		return point{up(x, g.mark), y}
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
