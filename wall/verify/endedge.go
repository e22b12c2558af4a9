package verify

import "slices"

// endEdge is the edge of a region at one end of the run.
type endEdge struct {
	x       rat // the limit: leftmost or rightmost x of the region
	stop    rat // where the panels stop: if it leans, the limit with the edge's ends rounded
	middle  rat // x halfway up the edge, where it does not lean
	height  rat // of all parts
	parts   []endPart
	leaning bool
	line    [2]point // its exact foot and head, if it leans
}

// endPart is a part of an end's edge that bounds the shape, after rounding. Openings part an edge.
type endPart struct{ foot, head, height rat } // x at its foot and head

// tallest returns the part that speaks for what the end shows.
func (e endEdge) tallest() endPart {
	best := endPart{e.x, e.x, zero()}
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
	way, ends := edge{foot, head, !same(foot.X, head.X)}, map[string]point{} // of parts, rounded, by exact y
	for _, p := range on {
		y := g.rounded(p, line, p.is(head), right)
		ends[text(p.Y)] = point{g.cut(y, line, right), y}
	}
	var taken []span
	for _, hole := range g.holes {
		a, b, ok := bounds(hole)
		if !ok {
			continue
		}
		p, q := way.y(a.X), way.y(b.X) // where it meets the opening's sides
		from, to := most(a.Y, least(p, q)), least(b.Y, most(p, q))
		if !less(from, to) {
			continue
		}
		taken = append(taken, span{bound{y: from}, bound{y: to}})
		for _, y := range []rat{from, to} {
			if ends[text(y)] = (point{g.cut(y, line, right), y}); !same(y, a.Y) && !same(y, b.Y) { // along a side
				ends[text(y)] = point{line(y), g.job.snapped(y, same(y, from))}
			}
		}
	}
	out := endEdge{x: x, stop: x, middle: x, height: zero(), leaning: true, line: [2]point{foot, head}}
	for _, s := range without([]span{{bound{y: foot.Y}, bound{y: head.Y}}}, joined(taken)) {
		low, high := ends[text(s.low.y)], ends[text(s.high.y)]
		between := same(low.Y, s.low.y) && same(high.Y, s.high.y) // level edges; else no saw makes a short part
		if !less(low.Y, high.Y) || !between && !less(square(g.job.tape), apart(low, high)) {
			continue
		}
		if len(out.parts) == 0 {
			out.x, out.stop = line(s.low.y), low.X
		}
		out.x, out.stop = outer(out.x, line(s.low.y), line(s.high.y)), outer(out.stop, low.X, high.X)
		out.parts, out.height = append(out.parts, endPart{low.X, high.X, diff(high.Y, low.Y)}), sum(out.height, diff(high.Y, low.Y))
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
