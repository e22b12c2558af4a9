package verify

import "slices"

// coverage checks that the pieces of run i cover its region exactly once. It compares them between
// all the upright lines at which either changes, where everything is straight and in one order, so
// that the lengths on the middle line speak for the whole strip.
func (c *checker) coverage(i int) {
	g, path := c.regions[i], item("runs", i)
	for k, n := 0, len(g.taped)/2; k < n; k++ { // the lines at its stations, bottom and top
		low, high := g.taped[k].Y, g.taped[n+k].Y
		c.require(less(low, high), Cover, path, high, "more than "+text(low), "nothing is left of the wall at %s after gaps", text(g.taped[k].X))
	}
	slopes := g.left.leaning || g.right.leaning || slices.ContainsFunc(g.run.Openings, func(o opening) bool { return !o.taped.square() })
	sloped, level := g.slack()
	allowed, spare := slices.Concat(sloped, level, g.beyond), slices.Concat(g.spare, level, g.merged(c.joints[i], c.plan.Runs[i].Limits.Left, c.plan.Runs[i].Limits.Right))
	all := slices.Concat(g.outline, slices.Concat(g.taken...), slices.Concat(spare...), slices.Concat(allowed...))
	var pieces [][]edge
	for _, piece := range c.plan.Pieces {
		if piece.Run != c.job.Runs[i].Name {
			continue
		}
		var moved shape
		for _, l := range piece.shape() {
			moved = append(moved, l.moved(piece.At.X, piece.At.Y))
		}
		pieces = append(pieces, moved.edges())
		all = append(all, moved.edges()...)
	}
	covered := func(x rat, look side) (each []span) {
		for _, piece := range pieces {
			each = append(each, g.spans(piece, x, look)...)
		}
		return each
	}
	var more []rat
	for _, b := range c.boards[i] {
		more = append(more, b.left, b.right)
	}
	xs := g.events(all, more...)
	for k := 0; k+1 < len(xs); k++ {
		left, right, x := xs[k], xs[k+1], middle(xs[k], xs[k+1])
		wanted := !slices.ContainsFunc(c.boards[i], func(b board) bool { return b.old && within(x, b.left, b.right) }) &&
			!slices.ContainsFunc(c.joints[i], func(j joint) bool { return !j.open && less(j.left, x) && less(x, j.right) })
		due := func(x rat, look side, spared bool) []span { // spared, only what rounding cannot leave open
			if !wanted {
				return nil
			}
			if !spared {
				return g.open(x, look, nil)
			}
			return g.open(x, look, spare)
		}
		// What is missing changes along a straight line: it is most at one of the sides.
		inside, mark := due(x, fromRight, false), c.job.tape
		if slopes {
			mark = times(mark, sum(whole(1), g.steepest(x)))
		}
		missing := most(lost(mark, inside, due(left, fromRight, true), joined(covered(left, fromRight))),
			lost(mark, inside, due(right, fromLeft, true), joined(covered(right, fromLeft))))
		each, width, place := covered(x, fromRight), diff(right, left), text(left)+" to "+text(right)
		union := joined(each)
		c.equal(Cover, path, times(width, diff(length(each), length(union))), zero(), "covered twice, in square inches from %s", place)
		within := slices.Clone(due(x, fromRight, false))
		for _, edges := range allowed {
			within = append(within, g.spans(edges, x, fromRight)...)
		}
		c.equal(Cover, path, times(width, length(without(union, within))), zero(),
			"pieces outside the region, in square inches from %s", place)
		c.equal(Cover, path, times(width, missing), zero(), "region without a piece, in square inches from %s", place)
	}
}

// merged returns what may be left open beside a leaning end at whose foot or head a joint stands, or a limit
// that no more than a mark of a board is left beyond: a mark from it or less, once both are rounded. That edge
// is none, and the end is cut from the panel's.
func (g *region) merged(joints []joint, limits ...rat) (spare [][]edge) {
	wide := sum(g.job.tape, g.job.tape)
	for k, e := range []endEdge{g.left, g.right} {
		within := g.job.pattern.Boards && !same(limits[k], e.x) && !same(limits[k], e.stop)
		for _, p := range e.line {
			near := func(x rat) bool { return e.leaning && !less(wide, size(diff(x, p.X))) }
			if within && near(limits[k]) || slices.ContainsFunc(joints, func(j joint) bool { return near(j.left) || near(j.right) }) {
				spare = append(spare, shape{swept(e.line[0], e.line[1], wide)}.edges())
			}
		}
	}
	return spare
}

// lost returns how much of the wanted spans at one side of a strip is not covered, beyond rounding:
// that takes less than one mark, only at an end that a sloped line gives. On a run with a leaning end
// or sloped openings, where a corner of two slopes goes less than a mark across and up, it takes less
// than a mark and what the line rises over one. inside are the spans within the strip, with what is sloped.
func lost(mark rat, inside, wanted, union []span) rat {
	total := zero()
	for k, s := range wanted {
		for _, hole := range without([]span{s}, union) {
			allowed, near := zero(), inside // fewer spans than inside where a sliver ends at this side
			if len(inside) == len(wanted) {
				near = inside[k : k+1]
			}
			if same(hole.low.y, s.low.y) && slices.ContainsFunc(near, func(s span) bool { return s.low.sloped }) {
				allowed = sum(allowed, mark)
			}
			if same(hole.high.y, s.high.y) && slices.ContainsFunc(near, func(s span) bool { return s.high.sloped }) {
				allowed = sum(allowed, mark)
			}
			if missing := diff(hole.high.y, hole.low.y); !less(missing, allowed) {
				total = sum(total, missing)
			}
		}
	}
	return total
}

// steepest returns the greatest rise over run of the lines at top and bottom at x, and beyond their ends.
func (g *region) steepest(x rat) rat {
	steepest, n := zero(), len(g.taped)/2
	for _, line := range [][]point{g.taped[:n], g.taped[n:]} {
		at := most(line[0].X, least(x, line[n-1].X))
		for k, b := range line[1:] {
			if a := line[k]; within(at, a.X, b.X) && !same(a.X, b.X) {
				steepest = most(steepest, size(over(diff(b.Y, a.Y), diff(b.X, a.X))))
			}
		}
	}
	return steepest
}
