package verify

import "slices"

// region is what panels must cover of one run: the wall's shape less the gaps,
// in run coordinates.
type region struct {
	run     *run
	outline []edge
	holes   [][]edge // grown openings, as run.openings; none for one that cannot be told
	grown   []loop   // their loops
	loose   []bool   // the opening has a gap and an edge that is neither level nor upright
	left    endEdge
	right   endEdge
	mark    rat
	steps   []stepSide
	bounds  []rat // events of the region alone
}

// endEdge is the edge of a region at one end of the run.
type endEdge struct {
	x          rat // the limit: leftmost or rightmost x of the region
	foot, head point
	leaning    bool
	cut        rat // of an end that leans: the limit with its ends rounded
	height     rat // of the upright part that bounds the shape, after rounding
}

func (e endEdge) middle() rat { return middle(e.foot.x, e.head.x) }

// stop returns where the panels stop, at the rounded limit of an end that leans.
func (e endEdge) stop() rat {
	if e.leaning {
		return e.cut
	}
	return e.x
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

// inset returns how far the shape of a run stays back from the end of its wall;
// less than 0 at an outside corner.
func (j *room) inset(kind string, r role) rat {
	switch {
	case kind == outsideCorner:
		return negative(j.pattern.thickness)
	case kind == insideCorner && r == butts:
		return sum(j.pattern.thickness, j.gaps.side)
	}
	return j.gaps.side
}

// region builds the region of run i. The pattern is known.
func (j *room) region(i int, atLeft, atRight role) *region {
	r := &j.runs[i]
	out := &region{run: r, mark: j.tape}
	n := len(r.heights)
	bottom := make([]point, n)
	top := make([]point, n)
	for k, h := range r.heights {
		bottom[k] = point{h.at, sum(h.bottom, j.gaps.bottom)}
		top[k] = point{h.at, diff(h.top, j.gaps.top)}
	}
	top[0].x = sum(top[0].x, r.left.lean)
	top[n-1].x = sum(top[n-1].x, r.right.lean)
	bottom = out.stepped(bottom, j.gaps.side, false)
	top = out.stepped(top, j.gaps.side, true)

	leftInset, rightInset := j.inset(r.left.kind, atLeft), j.inset(r.right.kind, atRight)
	reach := sum(whole(1), size(leftInset), size(rightInset), size(r.left.lean), size(r.right.lean))
	level := [2]bool{r.left.kind == outsideCorner, r.right.kind == outsideCorner}
	wall := append(loop(extended(bottom, reach, level)), reversed(extended(top, reach, level))...)
	first, last := r.heights[0], r.heights[n-1]
	fromLeft := lineAt(sum(first.at, leftInset), r.left.lean, first)
	fromRight := lineAt(diff(last.at, rightInset), r.right.lean, last)
	wall = wall.keep(func(p point) rat { return diff(p.x, fromLeft(p.y)) })
	wall = wall.keep(func(p point) rat { return diff(fromRight(p.y), p.x) })
	out.outline = shape{wall}.edges()
	for _, o := range r.openings {
		gap := j.gaps.window
		if o.kind == "box" {
			gap = j.gaps.box
		}
		grown, ok := loop(o.outline).grown(gap)
		out.grown = append(out.grown, grown)
		out.loose = append(out.loose, !ok)
		out.holes = append(out.holes, shape{grown}.edges())
	}
	out.bounds = events(slices.Concat(append(slices.Clone(out.holes), out.outline)...))
	out.left = out.endEdge(wall, fromLeft, leftInset, r.left.lean.Sign() != 0, false)
	out.right = out.endEdge(wall, fromRight, negative(rightInset), r.right.lean.Sign() != 0, true)
	return out
}

// lineAt returns the x of the line of a wall's end at a height: it passes
// through (x, foot of the station) and leans by lean at the station's top.
func lineAt(x, lean rat, h station) func(y rat) rat {
	if lean.Sign() == 0 {
		return func(rat) rat { return x }
	}
	return func(y rat) rat {
		return sum(x, times(lean, over(diff(y, h.bottom), diff(h.top, h.bottom))))
	}
}

// stepped moves the upright side of every step of a line by the gap toward the
// taller part and notes it. The low line runs on level over the gap.
func (g *region) stepped(line []point, gap rat, isTop bool) []point {
	var out []point
	for k := 0; k < len(line); k++ {
		p := line[k]
		if k+1 == len(line) || !same(p.x, line[k+1].x) {
			out = append(out, p)
			continue
		}
		q := line[k+1]
		k++
		switch {
		case same(p.y, q.y):
			out = append(out, p)
		case less(p.y, q.y) == isTop: // taller at the right
			x := sum(p.x, gap)
			high := q
			if k+1 < len(line) {
				high = point{x, edge{q, line[k+1], !same(q.y, line[k+1].y)}.y(x)}
			}
			high.x = x
			out = append(out, p, point{x, p.y}, high)
			g.steps = append(g.steps, stepSide{x, least(p.y, high.y), most(p.y, high.y), true})
		default:
			x := diff(p.x, gap)
			high := p
			if k >= 2 {
				high = point{x, edge{line[k-2], p, !same(line[k-2].y, p.y)}.y(x)}
			}
			high.x = x
			out = append(out, high, point{x, q.y}, q)
			g.steps = append(g.steps, stepSide{x, least(q.y, high.y), most(q.y, high.y), false})
		}
	}
	return out
}

// extended runs a line on past both its ends by the given length in x: straight,
// or level at an end for which level says so.
func extended(line []point, reach rat, level [2]bool) []point {
	n := len(line)
	rise := func(a, b point, level bool) rat {
		if level || same(a.x, b.x) {
			return zero()
		}
		return times(reach, over(diff(b.y, a.y), diff(b.x, a.x)))
	}
	first, last := line[0], line[n-1]
	before := point{diff(first.x, reach), diff(first.y, rise(first, line[1], level[0]))}
	after := point{sum(last.x, reach), sum(last.y, rise(line[n-2], last, level[1]))}
	return append(append([]point{before}, line...), after)
}

func reversed(line []point) []point {
	out := slices.Clone(line)
	slices.Reverse(out)
	return out
}

// exactly returns the parts of the upright line at x inside the region.
func (g *region) exactly(x rat, look side) []span {
	out := spans(g.outline, x, look)
	for _, hole := range g.holes {
		out = without(out, spans(hole, x, look))
	}
	return out
}

// at returns the same with the ends that sloped lines give rounded into the space.
func (g *region) at(x rat, look side) []span {
	var out []span
	for _, s := range g.exactly(x, look) {
		if s.low.sloped || g.computed(s.low.y, x, look) {
			s.low.y = up(s.low.y, g.mark)
		}
		if s.high.sloped || g.computed(s.high.y, x, look) {
			s.high.y = down(s.high.y, g.mark)
		}
		if less(s.low.y, s.high.y) {
			out = append(out, s)
		}
	}
	return out
}

// computed says whether (x, y) is an end of a sloped edge of the outline that no
// tape gave: the edge ends there only because a gap or a corner cuts it off.
func (g *region) computed(y, x rat, look side) bool {
	if g.taped(x) {
		return false
	}
	for _, e := range g.outline {
		if e.sloped && (look == fromRight && same(e.a.x, x) && same(e.a.y, y) ||
			look == fromLeft && same(e.b.x, x) && same(e.b.y, y)) {
			return true
		}
	}
	return false
}

// seen returns the height of the shape at x: the lesser side where they differ.
func (g *region) seen(x rat) rat {
	return least(length(g.at(x, fromLeft)), length(g.at(x, fromRight)))
}

// extent returns the lowest and highest y of a region's outline.
func (g *region) extent() (low, high rat) {
	low, high = zero(), zero()
	for k, e := range g.outline {
		if k == 0 {
			low, high = e.a.y, e.a.y
		}
		low, high = least(low, least(e.a.y, e.b.y)), most(high, most(e.a.y, e.b.y))
	}
	return low, high
}

// empty says whether nothing of the region lies between from and to.
func (g *region) empty(from, to rat) bool {
	last := from
	for _, x := range append(slices.Clone(g.bounds), to) {
		x = least(x, to)
		if less(last, x) {
			if len(g.exactly(middle(last, x), fromRight)) > 0 {
				return false
			}
			last = x
		}
	}
	return true
}

// stretches returns the parts of the run which no opening parts from top to
// bottom, from left to right, each as its left and right x. Where an end of the
// wall leans, the stretch goes as far as its rounded limit.
func (g *region) stretches() [][2]rat {
	var out [][2]rat
	for k := 0; k+1 < len(g.bounds); k++ {
		from, to := g.bounds[k], g.bounds[k+1]
		if len(g.exactly(middle(from, to), fromRight)) == 0 {
			continue
		}
		if n := len(out); n > 0 && same(out[n-1][1], from) {
			out[n-1][1] = to
			continue
		}
		out = append(out, [2]rat{from, to})
	}
	for k := range out {
		if same(out[k][0], g.left.x) {
			out[k][0] = g.left.stop()
		}
		if same(out[k][1], g.right.x) {
			out[k][1] = g.right.stop()
		}
	}
	return out
}
