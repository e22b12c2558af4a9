package verify

import "slices"

// endEdge is the edge of a region at one end of the run.
type endEdge struct {
	x       rat // the limit: leftmost or rightmost x of the region
	stop    rat // where the panels stop: if it leans, the limit with the edge's ends rounded
	middle  rat // x halfway up the edge
	height  rat // of all parts
	parts   []endPart
	leaning bool
	line    [2]point // its exact foot and head, if it leans
}

// endPart is a part of an end's edge that bounds the shape, after rounding. Openings part an edge.
type endPart struct{ foot, head, height rat } // x at its foot and head

// tallest returns the part that speaks for what the end shows.
func (e endEdge) tallest() endPart {
	best := endPart{e.middle, e.middle, zero()}
	for _, p := range e.parts {
		if less(best.height, p.height) {
			best = p
		}
	}
	return best
}

// taken says whether openings leave nothing of the edge, so that no panel reaches the end.
func (e endEdge) taken() bool { return e.height.Sign() <= 0 }

// endEdge finds the edge of the wall's shape that lies on the given end line.
func (g *region) endEdge(wall loop, line func(rat) rat, leaning, right bool) endEdge {
	outer := least
	if right {
		outer = most
	}
	on := slices.DeleteFunc(slices.Clone(wall), func(p point) bool { return !same(p.X, line(p.Y)) })
	if len(on) < 2 {
		x := line(zero())
		return endEdge{x: x, stop: x, middle: x, height: zero()}
	}
	slices.SortFunc(on, func(a, b point) int { return a.Y.Cmp(b.Y) })
	foot, head := on[0], on[len(on)-1]
	x := outer(foot.X, head.X)
	if !leaning {
		height := length(g.at(x, side(!right)))
		return endEdge{x: x, stop: x, middle: x, height: height, parts: []endPart{{x, x, height}}}
	}
	g.spare = append(g.spare, shape{swept(foot, head, g.job.tape)}.edges())
	low, high := g.rounded(foot, line, false, right), g.rounded(head, line, true, right)
	from, to := g.cut(low, line, right), g.cut(high, line, right)
	out := endEdge{x: x, stop: outer(from, to), middle: middle(from, to), height: zero(), leaning: true, line: [2]point{foot, head}}
	var taken []span
	for _, hole := range g.holes {
		if a, b, ok := bounds(hole); ok {
			way := edge{foot, head, !same(foot.X, head.X)}
			p, q := way.y(a.X), way.y(b.X) // where it meets the opening's sides
			if from, to := most(a.Y, least(p, q)), least(b.Y, most(p, q)); less(from, to) {
				taken = append(taken, span{bound{y: from}, bound{y: to}})
			}
		}
	}
	for _, s := range without([]span{{bound{y: low}, bound{y: high}}}, taken) {
		part := endPart{g.cut(s.low.y, line, right), g.cut(s.high.y, line, right), diff(s.high.y, s.low.y)}
		out.parts, out.height = append(out.parts, part), sum(out.height, part.height)
	}
	return out
}

// cut returns the x of an end of a leaning edge, which stands at y by now: where the line is there,
// rounded sideways into the space unless it is the taped end of the wall moved by the inset alone.
func (g *region) cut(y rat, line func(rat) rat, right bool) rat {
	x := line(y)
	if slices.ContainsFunc(g.moved, func(taped rat) bool { return same(taped, x) }) {
		return x
	}
	return g.job.snapped(x, !right)
}

// rounded rounds the end of a leaning edge into the space where a sloped line gives it, also once it
// has gone sideways.
func (g *region) rounded(p point, line func(rat) rat, isTop, right bool) rat {
	inner := most
	if isTop {
		inner = least
	}
	for _, e := range g.outline {
		if same(e.a.X, line(e.a.Y)) && same(e.b.X, line(e.b.Y)) {
			continue // the leaning edge itself
		}
		if e.sloped && within(p.X, e.a.X, e.b.X) && same(e.y(p.X), p.Y) && !g.station(p.X, isTop) {
			y := g.job.snapped(p.Y, !isTop)
			return inner(y, g.job.snapped(e.y(g.cut(y, line, right)), !isTop))
		}
	}
	return p.Y
}
