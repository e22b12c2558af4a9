package verify

import "slices"

// coverage checks that the pieces of run i cover its region exactly once. It compares them between
// all the upright lines at which either changes, where everything is straight and in one order, so
// that the lengths on the middle line speak for the whole strip.
func (c *checker) coverage(i int) {
	g, path := c.regions[i], item("runs", i)
	s := strip{c: c, g: g, path: path, mark: g.mark}
	all := slices.Concat(g.outline, slices.Concat(g.taken...), slices.Concat(g.spare...))
	for _, piece := range c.plan.Pieces {
		if piece.Run != c.job.Runs[i].Name {
			continue
		}
		var moved shape
		for _, l := range piece.shape() {
			moved = append(moved, l.moved(piece.At.X, piece.At.Y))
		}
		s.pieces = append(s.pieces, moved.edges())
		all = append(all, moved.edges()...)
	}
	var more []rat
	for _, b := range c.boards[i] {
		more = append(more, b.left, b.right)
	}
	if g.left.leaning || g.right.leaning {
		s.mark = times(s.mark, sum(whole(1), g.run.steepest()))
	}
	xs := g.events(all, more...)
	for k := 0; k+1 < len(xs); k++ {
		s.left, s.right, s.x = xs[k], xs[k+1], middle(xs[k], xs[k+1])
		s.wanted = !slices.ContainsFunc(c.boards[i], func(b board) bool { return b.old && within(s.x, b.left, b.right) }) &&
			!slices.ContainsFunc(c.joints[i], func(j joint) bool { return !j.open && less(j.left, s.x) && less(s.x, j.right) })
		s.judge()
	}
}

// strip is a part of a run in which nothing changes but along straight lines.
type strip struct {
	c              *checker
	g              *region
	path           string
	left, right, x rat // its sides and its middle
	pieces         [][]edge
	wanted         bool // the region is to be covered here
	mark           rat  // what rounding may take up or down
}

// covered returns what the pieces cover on the upright line at x: each by itself.
func (s *strip) covered(x rat, look side) []span {
	var each []span
	for _, piece := range s.pieces {
		each = append(each, s.g.spans(piece, x, look)...)
	}
	return each
}

// due returns what must be covered on the upright line at x or, spared, what rounding cannot leave
// open of it.
func (s *strip) due(x rat, look side, spared bool) []span {
	if !s.wanted {
		return nil
	}
	return s.g.open(x, look, spared)
}

// judge reports what is wrong in one strip.
func (s *strip) judge() {
	place := "square inches from " + text(s.left) + " to " + text(s.right)
	width, each := diff(s.right, s.left), s.covered(s.x, fromRight)
	union, due := joined(each), s.due(s.x, fromRight, false)
	s.c.equal(Cover, s.path, times(width, diff(length(each), length(union))), zero(), "%s covered by two pieces", place)
	s.c.equal(Cover, s.path, times(width, length(without(union, due))), zero(), "%s of pieces outside the region", place)
	due = s.due(s.x, fromRight, true)
	// What is missing changes along a straight line: it is most at one of the sides.
	lost := most(
		lost(s.mark, due, s.due(s.left, fromRight, true), joined(s.covered(s.left, fromRight))),
		lost(s.mark, due, s.due(s.right, fromLeft, true), joined(s.covered(s.right, fromLeft))),
	)
	s.c.equal(Cover, s.path, times(width, lost), zero(), "%s of the region without a piece", place)
}

// lost returns how much of the wanted spans at one side of a strip is not covered and cannot be
// laid to rounding: that takes less than one mark, and only at an end that a sloped line gives. On
// a run with a leaning end, where a corner of two slopes is rounded up or down and then sideways
// too, it can take as much more as the line rises over a mark. inside are the same spans within the
// strip, whose ends say what is sloped.
func lost(mark rat, inside, wanted, union []span) rat {
	total := zero()
	for k, s := range wanted {
		for _, hole := range without([]span{s}, union) {
			allowed := zero()
			// Where a sliver ends at this side there are fewer spans than inside.
			near := inside
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

// steepest returns the greatest rise over run of the lines at top and bottom.
func (r *run) steepest() rat {
	steepest := zero()
	for k := 1; k < len(r.Heights); k++ {
		a, b := r.Heights[k-1], r.Heights[k]
		if same(a.At, b.At) {
			continue
		}
		rise := most(size(diff(b.Top, a.Top)), size(diff(b.Bottom, a.Bottom)))
		steepest = most(steepest, size(over(rise, diff(b.At, a.At))))
	}
	return steepest
}
