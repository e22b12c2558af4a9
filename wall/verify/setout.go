package verify

import "slices"

// A joint is what lies between two neighbouring panels of a run, new or on the wall already.
type joint struct {
	left, right rat  // of the gap
	open        bool // an opening parts the run here: no seam
	old         bool // between two panels that are on the wall already
}

func (j joint) middle() rat { return middle(j.left, j.right) }

// board is a panel as the checks see it, new or on the wall already.
type board struct {
	left, right, leftPhase rat
	path                   string
	old                    bool
}

// boardsOf returns the panels of run i, from left to right as the plan lists them, with those that
// are on the wall already put in their places.
func (c *checker) boardsOf(i int) []board {
	var out []board
	for k, p := range c.plan.Runs[i].Panels {
		out = append(out, board{p.Left, p.Right, p.LeftPhase, item(item("runs", i)+".panels", k), false})
	}
	for k, p := range c.job.Installed {
		if p.Run != c.job.Runs[i].Name {
			continue
		}
		at := 0
		for at < len(out) && less(out[at].left, p.Left) {
			at++
		}
		out = slices.Insert(out, at, board{p.Left, p.Right, p.LeftPhase, item("installed", k), true})
	}
	return out
}

// jointsOf returns what lies between the boards of run i.
func (c *checker) jointsOf(i int) []joint {
	boards := c.boards[i]
	var out []joint
	for k := 0; k+1 < len(boards); k++ {
		j := joint{left: boards[k].right, right: boards[k+1].left, old: boards[k].old && boards[k+1].old}
		from, to := sum(j.left, c.job.tape), diff(j.right, c.job.tape) // a panel under a slope begins at a mark
		if !less(from, to) {
			from, to = j.left, j.right
		}
		j.open = less(from, to) && c.regions[i].empty(from, to)
		out = append(out, j)
	}
	return out
}

// laid says whether a panel is on run i already.
func (c *checker) laid(i int) bool {
	return slices.ContainsFunc(c.boards[i], func(b board) bool { return b.old })
}

// origin returns the pattern's origin at x on run i: the set-out's from where the work begins to
// the first restart on the way, then each restart's. At a restart itself, look says whose.
func (c *checker) origin(i int, x rat, look side) rat {
	r := c.plan.Runs[i]
	way, at := 1, fromRight // the way to work, and the side of a restart that it is for
	if r.SetOut.Direction == "left" {
		way, at = -1, fromLeft
	}
	out, nearest := r.SetOut.Origin, rat(nil)
	for _, restart := range r.Restarts {
		passed := x.Cmp(restart.At)*way > 0 || same(x, restart.At) && look == at
		if passed && (nearest == nil || restart.At.Cmp(nearest)*way > 0) {
			nearest, out = restart.At, restart.Origin
		}
	}
	return out
}

func (c *checker) phase(i int, x rat, look side) rat {
	return c.job.pattern.phase(x, c.origin(i, x, look))
}

// setOut checks limits, direction, restarts, the story pole and the corner mismatch of run i.
func (c *checker) setOut(i int) {
	r, g, path := c.plan.Runs[i], c.regions[i], item("runs", i)
	if c.job.bare[i] {
		c.due[notice{"run bare", path}] = true
		c.equal(Panels, path, []any{len(r.Panels), len(r.StoryPole)}, []any{0, 0}, "panels and marks on a run that stays bare")
		return
	}
	for k, e := range []endEdge{g.left, g.right} { // a leaning one is a computed point, exact or rounded
		got := []rat{r.Limits.Left, r.Limits.Right}[k]
		low, high := least(e.x, e.stop), most(e.x, e.stop)
		if e.leaning && c.job.pattern.Boards { // of a board no more than a mark may be left, which is none
			if k == 0 {
				high = most(high, sum(e.stop, c.job.tape))
			} else {
				low = least(low, diff(e.stop, c.job.tape))
			}
		}
		c.between(Limits, item(path+".limits", k), got, low, high, "not where the shape ends")
		end := []*planEnd{r.Left, r.Right}[k]
		if end != nil {
			c.equal(Job, path+[]string{".left", ".right"}[k]+".bare", end.Bare, e.taken(), "not whether an opening takes the end")
		}
		if end != nil && end.Cut != nil && !end.Bare {
			f, shown := c.job.pattern.beside(c.phase(i, e.middle, side(k == 0)), k == 0)
			if e.leaning {
				f, shown = c.job.pattern.slanted(c.phase(i, e.foot, side(k == 0)), diff(e.head, e.foot), k == 0)
			}
			c.equal(Phase, path+[]string{".left", ".right"}[k]+".cut", []any{end.Cut.Feature, end.Cut.Width, end.Cut.Of},
				[]any{f.Kind, shown, f.Width}, "not what the end shows of a feature: its kind, so much, of how much")
		}
	}
	begin, known := map[string]rat{"right": r.Limits.Left, "left": r.Limits.Right}[r.SetOut.Direction]
	if !known {
		c.fault(Order, path+".set_out.direction", r.SetOut.Direction, "right or left", "no direction")
	} else if !c.laid(i) {
		c.equal(Order, path+".set_out.from", r.SetOut.From, begin,
			"the work does not begin at the limit that the direction leaves")
	}
	if r.SetOut.Why != nil {
		seen := 0
		for _, u := range g.uprights(c.weights) {
			if u.end && u.right && u.seen().Sign() > 0 {
				seen |= 1
			} else if u.end && u.seen().Sign() > 0 {
				seen |= 2
			}
		}
		want := []string{"neither end is seen", "left end is seen", "right end is seen", "both ends are seen"}[seen]
		c.equal(Order, path+".set_out.why", *r.SetOut.Why, want, "not the ends that are seen")
	}
	right := func(a, b place) int { return a.At.Cmp(b.At) }
	c.require(slices.IsSortedFunc(r.StoryPole, right), Order, path+".story_pole", "not so", "each right of the one before", "marks in order")
	for k, p := range r.Panels {
		for _, x := range []rat{p.Left, p.Right} {
			c.require(has(r.StoryPole, x), Marks, path+".story_pole", "no mark", x, "an edge of panels[%d] is not marked", k)
		}
	}
	c.supports(i)
	c.restarts(i)
	if next, ok := c.job.corner(i); ok && r.CornerRight != nil {
		c.equal(Corner, path+".corner_right", []any{r.CornerRight.Kind, r.CornerRight.Next},
			[]any{c.job.Runs[next].Left.Kind, c.job.Runs[next].Name}, "not the run round the corner")
		c.equal(Phase, path+".corner_right.mismatch", r.CornerRight.Mismatch, c.mismatch(i, next),
			"mismatch at the corner calculated wrongly")
	}
	for k, p := range c.job.Installed {
		if p.Run == r.Name {
			c.equal(Phase, path+".set_out.origin", c.phase(i, p.Left, fromRight), p.LeftPhase,
				"the set-out does not go through installed[%d]", k)
		}
	}
}

// restarts checks that the pattern starts afresh only at breaks, and at a seam.
func (c *checker) restarts(i int) {
	restarts := c.plan.Runs[i].Restarts
	for k, restart := range restarts {
		path := item(item("runs", i)+".restarts", k)
		at := restart.At
		c.require(has(c.job.Runs[i].Breaks, at), Restart, path+".at", at, "a break of the job", "the pattern may not start afresh here")
		c.require(k == 0 || !same(restarts[k-1].At, at), Restart, path+".at", at, "another", "two restarts at one place")
		c.require(slices.ContainsFunc(c.joints[i], func(j joint) bool { return within(at, j.left, j.right) }), Restart,
			path+".at", at, "a seam", "the pattern starts afresh within a panel")
		want := circular(c.phase(i, at, fromLeft), c.phase(i, at, fromRight), c.job.pattern.pitch)
		c.equal(Restart, path+".mismatch", restart.Mismatch, want, "mismatch calculated wrongly")
	}
}

// supports checks how high the level supports behind the boards of run i stand, from below, if the plan says it: on marks, and
// no farther apart than its fixing has them, or than marks are.
func (c *checker) supports(i int) {
	path, up := item("runs", i)+".supports", c.plan.Runs[i].Supports
	c.require(len(up) == 0 || c.job.pattern.Boards, Marks, path, len(up), 0, "level supports behind sheets")
	if len(up) == 0 {
		return
	}
	heights := c.job.Runs[i].Heights
	below, top := heights[0].Bottom, heights[0].Top
	for _, h := range heights {
		below, top = least(below, h.Bottom), most(top, h.Top)
	}
	for k, y := range append(slices.Clone(up), top) {
		at := item(path, k)
		c.between(Marks, at, y, below, top, "not between the support under it and the top of the wall")
		if k < len(up) {
			c.equal(Marks, at, y, down(y, c.job.tape), "on no mark of the tape")
		}
		if far := c.plan.Fixing.Supports; far != nil {
			c.between(Marks, at, diff(y, below), nil, most(far, c.job.tape), "farther from the one under it than supports may be")
		}
		below = y
	}
}

// has says whether one of the places is x.
func has(places []place, x rat) bool {
	return slices.ContainsFunc(places, func(p place) bool { return same(p.At, x) })
}

func (c *checker) restarted(i int, j joint) bool {
	return slices.ContainsFunc(c.plan.Runs[i].Restarts, func(r restart) bool { return within(r.At, j.left, j.right) })
}

// mismatch returns how far the patterns of two runs are apart at the seen corner right of run i.
func (c *checker) mismatch(i, next int) rat {
	t := c.job.pattern.Thickness
	if c.job.Runs[i].Right.Kind == outsideCorner {
		t = negative(t)
	}
	x := diff(c.job.Runs[i].Width, t)
	return circular(c.phase(i, x, fromLeft), c.phase(next, t, fromRight), c.job.pattern.pitch)
}
