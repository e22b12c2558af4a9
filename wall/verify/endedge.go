package verify

import (
	"slices"
	"sort"
)

// endEdge is the edge of a region at one end of the run.
type endEdge struct {
	x       rat // the limit: leftmost or rightmost x of the region
	stop    rat // where the panels stop: if it leans, the limit with the edge's ends rounded
	middle  rat // x halfway up the edge
	height  rat // of what bounds the shape
	leaning bool
	line    [2]point // if it leans, its exact foot and head
	foot    rat      // and their x once they are rounded
	head    rat
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
	sort.SliceStable(on, func(i, j int) bool { return less(on[i].Y, on[j].Y) })
	foot, head := on[0], on[len(on)-1]
	x := outer(foot.X, head.X)
	if !leaning {
		height := length(g.at(x, side(!right)))
		return endEdge{x: x, stop: x, middle: x, height: height}
	}
	g.spare = append(g.spare, shape{swept(foot, head, g.job.tape)}.edges())
	low, high := g.rounded(foot, line, false, right), g.rounded(head, line, true, right)
	from, to := g.cut(low, line, right), g.cut(high, line, right)
	// Sideways a corner goes from where the line is at its rounded height.
	g.beyond = append(g.beyond, shape{swept(point{line(low), low}, point{line(high), high}, g.job.snap)}.edges())
	out := endEdge{outer(foot.X, head.X), outer(from, to), middle(from, to), diff(high, low), true, [2]point{foot, head}, from, to}
	if slices.ContainsFunc(g.holes, func(hole loop) bool { // no job parts such an end
		a, b, ok := bounds(hole)
		return ok && within(foot.X, a.X, b.X) && within(head.X, a.X, b.X) && !less(low, a.Y) && !less(b.Y, high)
	}) {
		out.height = zero()
	}
	return out
}

// cut returns the x of an end of a leaning edge, which stands at y by now: where the line is there,
// rounded sideways into the space unless it is the taped end of the wall moved by the inset alone.
func (g *region) cut(y rat, line func(rat) rat, right bool) rat {
	x := line(y)
	if g.tapeGave(x) {
		return x
	}
	return g.job.snapped(x, !right)
}

// tapeGave says whether x is that of a foot or a head of an end that was taped, moved by the inset alone.
func (g *region) tapeGave(x rat) bool {
	return slices.ContainsFunc(g.moved, func(taped rat) bool { return same(taped, x) })
}

// rounded rounds the end of a leaning edge where a sloped line gives it, into the space also once it
// has gone sideways, and where it would be more than snap off sideways too.
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
			if outward := less(p.Y, y) == isTop && !same(p.Y, y); outward && less(g.job.snap, size(diff(g.cut(y, line, right), p.X))) {
				if y = down(p.Y, g.job.tape); !isTop {
					y = up(p.Y, g.job.tape)
				}
			}
			if g.tapeGave(line(y)) {
				return y // there it stays
			}
			return inner(y, g.job.snapped(e.y(g.cut(y, line, right)), !isTop))
		}
	}
	return p.Y
}
