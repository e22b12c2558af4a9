package verify

import (
	"cmp"
	"slices"
)

// region is what panels must cover of one run: the wall's shape less the gaps, in run coordinates.
type region struct {
	*sweep
	job         *room
	run         *run
	outline     []edge
	holes       []loop   // openings grown by their gaps, each as parts that may overlap
	taken       [][]edge // their edges
	beyond      [][]edge // by how much pieces may outgrow leaning ends
	spare       [][]edge // what rounding may leave open besides: beside sloped openings and leaning ends
	taped       []point  // both lines at their stations, after gaps
	left, right endEdge
	moved       []rat // x of foot and head of the ends, after gaps, thickness and long points
	steps       []stepSide
	bounds      []rat // events of the region alone
}

// grown returns an opening grown by its gap, in parts that may overlap, and the gap.
func (j *room) grown(o opening) (parts []loop, gap rat) {
	if gap = j.Gaps.Window; o.Kind == "box" {
		gap = j.Gaps.Box
	}
	if len(o.taped) == 0 {
		return nil, gap
	}
	return o.taped.grown(gap), gap
}

// stepSide is the upright side of a step, after the gap.
type stepSide struct {
	x         rat
	low, high rat  // of the whole upright
	right     bool // the shape lies right of it
}

// role is what a run does at an inside corner.
type role int

const (
	alone  role = iota // no inside corner
	passes             // fitted first, into the corner
	butts              // against the face of the other
)

// inset returns how far a run's shape stays back from its wall's end; below 0 at an outside corner.
func (j *room) inset(kind string, r role) rat {
	switch {
	case kind == outsideCorner:
		return negative(j.pattern.Thickness)
	case kind == insideCorner && r == butts:
		return sum(j.pattern.Thickness, j.Gaps.Side)
	}
	return j.Gaps.Side
}

// region builds the region of run i. The pattern is known.
func (j *room) region(i int, atLeft, atRight role) *region {
	r := &j.Runs[i]
	out := &region{sweep: j.sweep, job: j, run: r}
	n := len(r.Heights)
	bottom, top := make([]point, n), make([]point, n)
	for k, h := range r.Heights {
		bottom[k] = point{h.At, sum(h.Bottom, j.Gaps.Bottom)}
		top[k] = point{h.At, diff(h.Top, j.Gaps.Top)}
	}
	top[0].X = sum(top[0].X, r.Left.Lean)
	top[n-1].X = sum(top[n-1].X, r.Right.Lean)
	out.taped = slices.Concat(bottom, top)
	bottom = out.levelled(out.stepped(bottom, j.Gaps.Side, false), cmp.Or(r.Trim.Bottom, j.Trim.Bottom), j.Gaps.Bottom, false)
	top = out.levelled(out.stepped(top, j.Gaps.Side, true), cmp.Or(r.Trim.Top, j.Trim.Top), j.Gaps.Top, true)

	leftInset, rightInset := j.inset(r.Left.Kind, atLeft), j.inset(r.Right.Kind, atRight)
	reach := sum(whole(1), size(leftInset), size(rightInset), size(r.Left.Lean), size(r.Right.Lean))
	level := [2]bool{r.Left.Kind == outsideCorner, r.Right.Kind == outsideCorner}
	under, over := extended(bottom, reach, level), extended(top, reach, level)
	slices.Reverse(over)
	wall := loop(append(under, over...))
	first, last := r.Heights[0], r.Heights[n-1]
	left, right := sum(first.At, leftInset), diff(last.At, rightInset)
	out.moved = []rat{left, sum(left, r.Left.Lean), right, sum(right, r.Right.Lean)}
	fromLeft, fromRight := lineAt(left, r.Left.Lean, first), lineAt(right, r.Right.Lean, last)
	wall = wall.keep(func(p point) rat { return diff(p.X, fromLeft(p.Y)) })
	wall = wall.keep(func(p point) rat { return diff(fromRight(p.Y), p.X) })
	out.outline = shape{wall}.edges()
	for k, p := range wall { // edges that no saw can make are merged away
		if q := wall[(k+1)%len(wall)]; !less(square(j.tape), apart(p, q)) {
			out.spare = append(out.spare, shape{swept(p, q, j.tape)}.edges())
		}
	}
	for _, o := range r.Openings {
		parts, gap := j.grown(o)
		out.holes = append(out.holes, parts...)
		for _, l := range parts {
			out.taken = append(out.taken, shape{l}.edges())
			out.spare = append(out.spare, out.crossings(l)...)
		}
		if !o.taped.square() {
			for _, l := range o.taped.grown(sum(gap, j.tape, j.tape)) {
				out.spare = append(out.spare, shape{l}.edges())
			}
		}
	}
	for k, x := range []rat{first.At, last.At} { // what a mitre or a lean has past an end goes with it
		if beyond := []rat{diff(x, reach), sum(x, reach)}[k]; len(wall) > 0 && len(out.open(x, side(k == 0), nil)) == 0 {
			low, high, _ := bounds(wall)
			l := rectangle(point{least(x, beyond), low.Y}, point{most(x, beyond), high.Y})
			out.holes, out.taken = append(out.holes, l), append(out.taken, shape{l}.edges())
		}
	}
	out.bounds = out.events(slices.Concat(out.outline, slices.Concat(out.taken...)))
	out.left = out.endEdge(wall, fromLeft, r.Left.Lean.Sign() != 0, false)
	out.right = out.endEdge(wall, fromRight, r.Right.Lean.Sign() != 0, true)
	var xs []rat
	for k := 0; k+1 < len(out.bounds); k++ {
		if from, to := out.bounds[k], out.bounds[k+1]; len(out.open(middle(from, to), side(true), nil)) > 0 {
			xs = append(xs, from, to)
		}
	}
	for k, e := range []*endEdge{&out.left, &out.right} {
		if e.taken() && len(xs) > 0 { // the limit is where an opening stops
			x := []rat{xs[0], xs[len(xs)-1]}[k]
			*e = endEdge{x: x, stop: j.snapped(x, k == 0), middle: x, height: zero()}
		}
	}
	return out
}

// crossings returns what may be left open where level edges of an opening meet sloped lines of the wall:
// that corner goes along the level one to a mark.
func (g *region) crossings(l loop) (spare [][]edge) {
	low, high, _ := bounds(l)
	for _, e := range g.outline {
		for _, y := range []rat{low.Y, high.Y} {
			if !e.sloped || !within(y, least(e.a.Y, e.b.Y), most(e.a.Y, e.b.Y)) {
				continue
			}
			x := sum(e.a.X, times(diff(e.b.X, e.a.X), over(diff(y, e.a.Y), diff(e.b.Y, e.a.Y))))
			if within(x, low.X, high.X) {
				spare = append(spare, shape{swept(point{diff(x, g.job.tape), y}, point{sum(x, g.job.tape), y}, g.job.tape)}.edges())
			}
		}
	}
	return spare
}

// lineAt returns the x of the line of a wall's end at a height: it passes through (x, foot of the
// station) and leans by lean at the station's top.
func lineAt(x, lean rat, h station) func(y rat) rat {
	if lean.Sign() == 0 || same(h.Top, h.Bottom) {
		return func(rat) rat { return x }
	}
	return func(y rat) rat {
		return sum(x, times(lean, over(diff(y, h.Bottom), diff(h.Top, h.Bottom))))
	}
}

// levelled cuts each part of a line between two steps or ends level where trim hides its slope, and
// notes the upright sides of the steps.
func (g *region) levelled(line []point, by *trim, gap rat, isTop bool) []point {
	hidden, out, inmost := zero(), slices.Clone(line), most
	if isTop {
		inmost = least
	}
	if by != nil {
		hidden = diff(diff(by.Covers, gap), g.job.margin)
	}
	for from := 0; from < len(line); {
		to, y := from, line[from].Y
		var ys []rat
		for ; to < len(line) && (to == from || !same(line[to-1].X, line[to].X)); to++ {
			ys = append(ys, line[to].Y)
			y = inmost(y, line[to].Y)
		}
		if !slices.ContainsFunc(g.taped, func(p point) bool { return same(p.Y, y) }) {
			y = g.job.snapped(y, !isTop)
		}
		for k := from; k < to && !less(hidden, diff(most(ys...), least(ys...))); k++ {
			out[k].Y = y
		}
		if from > 0 {
			p, q := out[from-1], out[from]
			side := stepSide{p.X, least(p.Y, q.Y), most(p.Y, q.Y), less(p.Y, q.Y) == isTop}
			if isTop { // the far end may be rounded outward
				side.high = sum(side.high, g.job.tape)
			} else {
				side.low = diff(side.low, g.job.tape)
			}
			g.steps = append(g.steps, side)
		}
		from = to
	}
	return out
}

// stepped moves the upright side of every step of a line by the gap toward the taller part. The low
// line runs on level over the gap.
func (g *region) stepped(line []point, gap rat, isTop bool) []point {
	on := func(a, b point, x rat) rat { return edge{a: a, b: b, sloped: !same(a.X, b.X) && !same(a.Y, b.Y)}.y(x) }
	var out []point
	for k := 0; k < len(line); k++ {
		p := line[k]
		if k+1 == len(line) || !same(p.X, line[k+1].X) {
			out = append(out, p)
			continue
		}
		q := line[k+1]
		k++
		switch {
		case same(p.Y, q.Y):
			out = append(out, p)
		case less(p.Y, q.Y) == isTop: // taller at the right
			high := point{sum(p.X, gap), q.Y}
			if k+1 < len(line) {
				high.Y = on(q, line[k+1], high.X)
			}
			out = append(out, p, point{high.X, p.Y}, high)
		default:
			high := point{diff(p.X, gap), p.Y}
			if k >= 2 {
				high.Y = on(line[k-2], p, high.X)
			}
			out = append(out, high, point{high.X, q.Y}, q)
		}
	}
	return out
}

// extended runs a line on past both ends by reach in x: straight, or level where level says so.
func extended(line []point, reach rat, level [2]bool) []point {
	n := len(line)
	rise := func(a, b point, level bool) rat {
		if level || same(a.X, b.X) {
			return zero()
		}
		return times(reach, over(diff(b.Y, a.Y), diff(b.X, a.X)))
	}
	first, last := line[0], line[n-1]
	before := point{diff(first.X, reach), diff(first.Y, rise(first, line[min(1, n-1)], level[0]))}
	after := point{sum(last.X, reach), sum(last.Y, rise(line[max(n-2, 0)], last, level[1]))}
	return append(append([]point{before}, line...), after)
}

// open returns the parts of the upright line at x inside the region, less what may be left open.
func (g *region) open(x rat, look side, spare [][]edge) []span {
	out := g.spans(g.outline, x, look)
	for _, holes := range [][][]edge{g.taken, spare} {
		for _, edges := range holes {
			out = without(out, g.spans(edges, x, look))
		}
	}
	return out
}

// at returns what is inside the region with the ends that sloped lines give rounded into the space.
func (g *region) at(x rat, look side) []span {
	var out []span
	for _, s := range g.open(x, look, nil) {
		if s = g.roundedSpan(s, x, look); less(s.low.y, s.high.y) {
			out = append(out, s)
		}
	}
	return out
}

func (g *region) roundedSpan(s span, x rat, look side) span {
	if s.low.sloped || g.computed(s.low.y, x, look, false) {
		s.low.y = g.job.snapped(s.low.y, true)
	}
	if s.high.sloped || g.computed(s.high.y, x, look, true) {
		s.high.y = g.job.snapped(s.high.y, false)
	}
	return s
}

// computed says whether (x, y) is an end of a sloped edge of the outline that no tape gave: the
// edge ends there only because a gap or a corner cuts it off.
func (g *region) computed(y, x rat, look side, isTop bool) bool {
	if g.station(x, isTop) {
		return false
	}
	return slices.ContainsFunc(g.outline, func(e edge) bool {
		return e.sloped && (look == fromRight && e.a.is(point{x, y}) || look == fromLeft && e.b.is(point{x, y}))
	})
}

// station says whether a station of the top or the bottom line stands at x, at a leaning end its head or foot.
func (g *region) station(x rat, isTop bool) bool {
	all, last := g.run.Heights, len(g.run.Heights)-1
	left, right := all[0].At, all[last].At
	if isTop {
		left, right = sum(left, g.run.Left.Lean), sum(right, g.run.Right.Lean)
	}
	return same(left, x) || same(right, x) ||
		slices.ContainsFunc(all[1:last], func(h station) bool { return same(h.At, x) })
}

// seen returns the height of the shape at x: the lesser side where they differ.
func (g *region) seen(x rat) rat {
	return least(length(g.at(x, fromLeft)), length(g.at(x, fromRight)))
}

// beside returns how much of the upright from low to high at x bounds the shape on the given side. An end of
// it within the shape, such as a taped corner, stays where it is.
func (g *region) beside(x, low, high rat, right bool) rat {
	total := zero()
	for _, exact := range g.open(x, side(right), nil) {
		s := g.roundedSpan(exact, x, side(right))
		if less(high, exact.high.y) {
			s.high.y = high
		}
		if less(exact.low.y, low) {
			s.low.y = low
		}
		total = sum(total, most(zero(), diff(s.high.y, s.low.y)))
	}
	return total
}

// findBare finds the runs that stay bare: of which nothing is left or, where none is panelled, nothing
// that is more than a mark of the tape wide and high.
func (j *room) findBare(panelled func(i int) bool) {
	bare := make([]bool, len(j.Runs))
	for i := range bare {
		g := j.region(i, alone, alone)
		least := j.tape
		if panelled(i) {
			least = zero()
		}
		bare[i] = true
		for k := 0; k+1 < len(g.bounds); k++ {
			from, to := g.bounds[k], g.bounds[k+1]
			wide := less(least, diff(to, from))
			for _, s := range g.open(middle(from, to), fromRight, nil) {
				if wide && less(least, diff(s.high.y, s.low.y)) {
					bare[i] = false
				}
			}
		}
	}
	j.bare = bare
	for i := range j.Runs {
		passing, butting := j.region(i, passes, passes), j.region(i, butts, butts)
		j.takenEnds = append(j.takenEnds, [2]bool{passing.left.taken() && butting.left.taken(), passing.right.taken() && butting.right.taken()})
	}
}

// empty says whether nothing of the region lies between from and to.
func (g *region) empty(from, to rat) bool {
	last := from
	for _, x := range append(slices.Clone(g.bounds), to) {
		x = least(x, to)
		if less(last, x) {
			if len(g.open(middle(last, x), fromRight, nil)) > 0 {
				return false
			}
			last = x
		}
	}
	return true
}
