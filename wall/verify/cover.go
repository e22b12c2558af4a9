package verify

import (
	"fmt"
	"slices"
)

// cover is what the sweep over one run finds, in square inches.
type cover struct {
	twice, outside rat
	missing        rat // more than rounding explains
	slack          rat // missing where an end of the wall leans
	allowed        rat // the most that rounding may cost there
}

// coverage checks that the pieces of each run cover its region exactly once.
func (c *checker) coverage() {
	for i := range c.job.runs {
		got := c.sweep(i)
		path := fmt.Sprintf("runs[%d]", i)
		if got.twice.Sign() != 0 {
			c.fault("cover", path, text(got.twice), "0", "square inches covered by two pieces")
		}
		if got.outside.Sign() != 0 {
			c.fault("cover", path, text(got.outside), "0", "square inches of pieces outside the region")
		}
		if got.missing.Sign() != 0 {
			c.fault("cover", path, text(got.missing), "0", "square inches of the region without a piece")
		}
		if less(got.allowed, got.slack) {
			c.fault("cover", path, text(got.slack), "at most "+text(got.allowed), "square inches without a piece, more than rounding to the tape explains")
		}
	}
}

// sweep compares the pieces of run i with its region between all the upright
// lines at which either changes, where everything is straight and in one order,
// so that the lengths on the middle line speak for the whole strip.
func (c *checker) sweep(i int) cover {
	g := c.regions[i]
	out := cover{zero(), zero(), zero(), zero(), zero()}
	var pieces [][]edge
	all := slices.Concat(append(slices.Clone(g.holes), g.outline)...)
	for _, piece := range c.plan.Pieces {
		if piece.Run != c.job.runs[i].name {
			continue
		}
		at := piece.At.point()
		var moved shape
		for _, l := range piece.shape() {
			moved = append(moved, l.moved(at.x, at.y))
		}
		pieces = append(pieces, moved.edges())
		all = append(all, moved.edges()...)
	}
	joints, boards := c.joints(i), c.boards(i)
	var more []rat
	for _, b := range boards {
		more = append(more, b.left, b.right)
	}
	leans, mark := c.leans(i), g.mark
	if len(leans) > 0 {
		mark = times(mark, sum(whole(1), c.steepest(i)))
	}
	for _, l := range leans {
		more = append(more, l[0], l[1])
		out.allowed = sum(out.allowed, times(g.mark, sum(g.left.rise(), g.right.rise(), whole(1))))
	}
	xs := events(all, more...)
	for k := 0; k+1 < len(xs); k++ {
		x := middle(xs[k], xs[k+1])
		wanted := g.exactly(x, fromRight)
		for _, b := range boards {
			if b.old && within(x, b.left, b.right) {
				wanted = nil
			}
		}
		for _, j := range joints {
			if !j.open && less(j.left, x) && less(x, j.right) {
				wanted = nil
			}
		}
		c.strip(g, &out, strip{xs[k], xs[k+1], pieces, wanted != nil, leaning(leans, x), mark})
	}
	return out
}

// strip is a part of a run in which nothing changes but along straight lines.
type strip struct {
	left, right rat
	pieces      [][]edge
	wanted      bool // the region is to be covered here
	leaning     bool // an end of the wall leans through it, where rounding is to the side
	mark        rat  // what rounding may take up or down
}

// covered returns what the pieces cover on the upright line at x: each by itself.
func (s strip) covered(x rat, look side) []span {
	var each []span
	for _, piece := range s.pieces {
		each = append(each, spans(piece, x, look)...)
	}
	return each
}

// strip adds what is wrong in one strip.
func (c *checker) strip(g *region, out *cover, s strip) {
	x, width := middle(s.left, s.right), diff(s.right, s.left)
	wanted := func(x rat, look side) []span {
		if !s.wanted {
			return nil
		}
		return g.exactly(x, look)
	}
	each := s.covered(x, fromRight)
	union := joined(each)
	out.twice.Add(out.twice, times(width, diff(length(each), length(union))))
	out.outside.Add(out.outside, times(width, length(without(union, wanted(x, fromRight)))))
	allowed := c.allowance(g, x, wanted(x, fromRight))
	if s.leaning {
		lost := length(without(wanted(x, fromRight), union))
		out.slack.Add(out.slack, times(width, lost))
		out.allowed.Add(out.allowed, times(width, allowed))
		return
	}
	// What is missing changes along a straight line: it is most at one of the sides.
	lost := most(
		c.lost(s.mark, wanted(x, fromRight), wanted(s.left, fromRight), joined(s.covered(s.left, fromRight))),
		c.lost(s.mark, wanted(x, fromRight), wanted(s.right, fromLeft), joined(s.covered(s.right, fromLeft))),
	)
	if beyond := diff(lost, c.loose(g, x)); beyond.Sign() > 0 {
		out.missing.Add(out.missing, times(width, lost))
	}
}

// lost returns how much of the wanted spans at one side of a strip is not
// covered and cannot be laid to rounding: that takes less than one mark, and
// only at an end that a sloped line gives. On a run with a leaning end, where a
// corner of two slopes is rounded up or down and then sideways too, it can take as
// much more as the line rises over a mark. inside are the same spans within the
// strip, whose ends say what is sloped.
func (c *checker) lost(mark rat, inside, wanted, union []span) rat {
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

// allowance returns how much of the wanted spans at x rounding may cost: less
// than one mark at each end that a sloped line gives.
func (c *checker) allowance(g *region, x rat, wanted []span) rat {
	allowed := zero()
	for _, s := range wanted {
		for _, end := range []bound{s.low, s.high} {
			if end.sloped {
				allowed = sum(allowed, g.mark)
			}
		}
	}
	return sum(allowed, c.loose(g, x))
}

// loose returns how much may be missing at x because nothing says how an opening
// with a sloped edge grows by its gap.
func (c *checker) loose(g *region, x rat) rat {
	allowed := zero()
	for n, hole := range g.grown {
		if !g.loose[n] {
			continue
		}
		low, high := hole.bounds()
		gap := most(c.job.gaps.box, c.job.gaps.window)
		if within(x, diff(low.x, gap), sum(high.x, gap)) {
			allowed = sum(allowed, diff(high.y, low.y), gap, gap)
		}
	}
	return allowed
}

// rise is how much higher the head of an end edge stands than its foot.
func (e endEdge) rise() rat { return diff(e.head.y, e.foot.y) }

// leans returns the strips of run i in which an end of the wall leans, one mark
// wider on both sides.
func (c *checker) leans(i int) [][2]rat {
	var out [][2]rat
	for _, e := range []endEdge{c.regions[i].left, c.regions[i].right} {
		if e.leaning {
			low, high := least(e.foot.x, e.head.x), most(e.foot.x, e.head.x)
			out = append(out, [2]rat{diff(low, c.job.tape), sum(high, c.job.tape)})
		}
	}
	return out
}

// steepest returns the greatest rise over run of the lines at top and bottom.
func (c *checker) steepest(i int) rat {
	steepest := zero()
	stations := c.job.runs[i].heights
	for k := 1; k < len(stations); k++ {
		a, b := stations[k-1], stations[k]
		if same(a.at, b.at) {
			continue
		}
		rise := most(size(diff(b.top, a.top)), size(diff(b.bottom, a.bottom)))
		steepest = most(steepest, over(rise, diff(b.at, a.at)))
	}
	return steepest
}

func leaning(leans [][2]rat, x rat) bool {
	return slices.ContainsFunc(leans, func(l [2]rat) bool { return within(x, l[0], l[1]) })
}
