package verify

import (
	"fmt"
	"slices"
	"strings"
)

// A joint is what lies between two neighbouring panels of a run, new or on the
// wall already.
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

// boards returns the panels of run i, from left to right as the plan lists them,
// with those that are on the wall already put in their places.
func (c *checker) boards(i int) []board {
	var out []board
	for k, p := range c.plan.Runs[i].Panels {
		out = append(out, board{p.Left.r(), p.Right.r(), p.LeftPhase.r(), fmt.Sprintf("runs[%d].panels[%d]", i, k), false})
	}
	for k, p := range c.job.installed {
		if p.run != c.job.runs[i].name {
			continue
		}
		at := 0
		for at < len(out) && less(out[at].left, p.left) {
			at++
		}
		out = slices.Insert(out, at, board{p.left, p.right, p.leftPhase, fmt.Sprintf("installed[%d]", k), true})
	}
	return out
}

// joints returns what lies between the boards of run i.
func (c *checker) joints(i int) []joint {
	boards := c.boards(i)
	var out []joint
	for k := 0; k+1 < len(boards); k++ {
		j := joint{left: boards[k].right, right: boards[k+1].left, old: boards[k].old && boards[k+1].old}
		j.open = less(j.left, j.right) && c.regions[i].empty(j.left, j.right)
		out = append(out, j)
	}
	return out
}

// origin returns the origin of the pattern at x on run i. The set-out holds from
// where the work begins to the first restart on the way, and each restart from
// there on. At a restart itself, look says which side's origin is meant.
func (c *checker) origin(i int, x rat, look side) rat {
	r := c.plan.Runs[i]
	out := r.SetOut.Origin.r()
	var nearest rat
	for _, restart := range r.Restarts {
		at := restart.At.r()
		passed := less(at, x) || same(at, x) && look == fromRight
		nearer := nearest == nil || less(nearest, at)
		if r.SetOut.Direction == "left" {
			passed = less(x, at) || same(at, x) && look == fromLeft
			nearer = nearest == nil || less(at, nearest)
		}
		if passed && nearer {
			nearest, out = at, restart.Origin.r()
		}
	}
	return out
}

func (c *checker) phase(i int, x rat, look side) rat {
	return c.job.pattern.phase(x, c.origin(i, x, look))
}

// setOut checks limits, directions, restarts and corner mismatches.
func (c *checker) setOut() {
	for i, r := range c.plan.Runs {
		path := fmt.Sprintf("runs[%d]", i)
		g := c.regions[i]
		c.limit(path+".limits[0]", r.Limits[0].r(), g.left)
		c.limit(path+".limits[1]", r.Limits[1].r(), g.right)
		if d := r.SetOut.Direction; d != "right" && d != "left" {
			c.fault("order", path+".set_out.direction", d, "right or left", "no direction")
		}
		for k := range r.StoryPole {
			if k > 0 && less(r.StoryPole[k].At.r(), r.StoryPole[k-1].At.r()) {
				c.fault("order", fmt.Sprintf("%s.story_pole[%d].at", path, k), text(r.StoryPole[k].At.r()),
					text(r.StoryPole[k-1].At.r()), "marks do not run to the right")
			}
		}
		c.restarts(i)
		c.cornerMismatch(i)
	}
}

func (c *checker) limit(path string, got rat, e endEdge) {
	if !e.leaning {
		c.equal("limits", path, got, e.x, "not where the shape ends")
		return
	}
	// Where the wall leans the limit is a computed point, exact or rounded.
	if low, high := least(e.x, e.cut), most(e.x, e.cut); !within(got, low, high) {
		c.fault("limits", path, text(got), text(e.x)+" to "+text(e.cut), "not where the leaning end's shape ends")
	}
}

// restarts checks that the pattern starts afresh only at breaks, and at a seam.
func (c *checker) restarts(i int) {
	for k, restart := range c.plan.Runs[i].Restarts {
		path := fmt.Sprintf("runs[%d].restarts[%d]", i, k)
		at := restart.At.r()
		if !slices.ContainsFunc(c.job.runs[i].breaks, func(b place) bool { return same(b.at, at) }) {
			c.fault("restart", path+".at", text(at), "a break of the job", "the pattern may not start afresh here")
		}
		if k > 0 && same(c.plan.Runs[i].Restarts[k-1].At.r(), at) {
			c.fault("restart", path+".at", text(at), "another", "two restarts at one place")
		}
		seam := slices.ContainsFunc(c.joints(i), func(j joint) bool { return within(at, j.left, j.right) })
		if !seam {
			c.fault("restart", path+".at", text(at), "a seam", "the pattern starts afresh within a panel")
		}
		want := circular(c.phase(i, at, fromLeft), c.phase(i, at, fromRight), c.job.pattern.pitch)
		c.equal("restart", path+".mismatch", restart.Mismatch.r(), want, "mismatch reckoned wrongly")
	}
}

// mismatch returns how far the patterns of two runs are apart at the seen corner
// right of run i.
func (c *checker) mismatch(i, next int) rat {
	t := c.job.pattern.thickness
	width := c.job.runs[i].width
	x, y := diff(width, t), t
	if c.job.runs[i].right.kind == outsideCorner {
		x, y = sum(width, t), negative(t)
	}
	return circular(c.phase(i, x, fromLeft), c.phase(next, y, fromRight), c.job.pattern.pitch)
}

func (c *checker) cornerMismatch(i int) {
	next, ok := c.job.corner(i)
	told := c.plan.Runs[i].CornerRight
	if !ok || told == nil {
		return
	}
	c.equal("phase", fmt.Sprintf("runs[%d].corner_right.mismatch", i), told.Mismatch.r(), c.mismatch(i, next), "mismatch at the corner reckoned wrongly")
}

// panels checks order, gaps, phases and sizes of the panels of every run.
func (c *checker) panels() {
	for i, r := range c.plan.Runs {
		path := fmt.Sprintf("runs[%d]", i)
		low, high := r.Limits[0].r(), r.Limits[1].r()
		for k, panel := range r.Panels {
			at := fmt.Sprintf("%s.panels[%d]", path, k)
			left, right := panel.Left.r(), panel.Right.r()
			if !less(left, right) {
				c.fault("panels", at+".right", text(right), "more than "+text(left), "a panel without width")
			}
			if less(left, low) {
				c.fault("panels", at+".left", text(left), text(low), "left of the limit")
			}
			if less(high, right) {
				c.fault("panels", at+".right", text(right), text(high), "right of the limit")
			}
			if k > 0 && panel.Number == r.Panels[k-1].Number {
				c.fault("panels", at+".number", fmt.Sprint(panel.Number), "another", "two panels of one number")
			}
			c.equal("phase", at+".left_phase", panel.LeftPhase.r(), c.phase(i, left, fromRight), "not what the set-out gives")
			c.equal("phase", at+".right_phase", panel.RightPhase.r(), c.phase(i, right, fromLeft), "not what the set-out gives")
			c.panelSize(i, k)
		}
		c.acrossJoints(i)
		for k, p := range c.job.installed {
			if p.run == c.job.runs[i].name {
				c.equal("phase", fmt.Sprintf("runs[%d].set_out.origin", i), c.phase(i, p.left, fromRight), p.leftPhase,
					"the set-out does not go through installed[%d]", k)
			}
		}
	}
}

// acrossJoints checks each joint of run i: its width, and that the pattern runs
// on over it unless it starts afresh there.
func (c *checker) acrossJoints(i int) {
	p := c.job.pattern
	boards := c.boards(i)
	for k, j := range c.joints(i) {
		path := boards[k+1].path
		if less(j.right, j.left) {
			c.fault("panels", path+".left", text(j.right), text(j.left), "overlaps the panel before it")
			continue
		}
		gap := diff(j.right, j.left)
		shut := p.boards && gap.Sign() == 0
		if !j.open && !j.old && !shut {
			c.equal("seam gap", path+".left", gap, c.job.gaps.seam, "the gap before this panel is not the seam gap")
		}
		if c.restarted(i, j) {
			continue
		}
		carried := mod(sum(boards[k].leftPhase, diff(boards[k+1].left, boards[k].left)), p.pitch)
		c.equal("phase", path+".left_phase", boards[k+1].leftPhase, carried, "the pattern does not run on over the seam")
	}
}

func (c *checker) restarted(i int, j joint) bool {
	for _, restart := range c.plan.Runs[i].Restarts {
		if within(restart.At.r(), j.left, j.right) {
			return true
		}
	}
	return false
}

// panelSize checks the hard rules on a panel's width and on seams near boxes.
func (c *checker) panelSize(i, k int) {
	p := c.job.pattern
	panel := c.plan.Runs[i].Panels[k]
	path := fmt.Sprintf("runs[%d].panels[%d]", i, k)
	left, right := panel.Left.r(), panel.Right.r()
	width := diff(right, left)
	if !p.sheetFor(c.job.stock, width, p.phase(left, c.origin(i, left, fromRight))) {
		c.fault("panels", path, text(width), "as wide as a sheet allows at phase "+text(panel.LeftPhase.r()), "wider than any stock allows at its phase")
	}
	if p.boards {
		return
	}
	if less(width, times(c.weights[leastPanel], p.pitch)) && !c.warned(i) {
		c.fault("narrow", path, text(width), text(times(c.weights[leastPanel], p.pitch)), "narrower than the least panel without a warning")
	}
	if k+1 == len(c.plan.Runs[i].Panels) {
		return
	}
	j := joint{left: right, right: c.plan.Runs[i].Panels[k+1].Left.r()}
	if less(j.right, j.left) || c.regions[i].empty(j.left, j.right) && less(j.left, j.right) || c.restarted(i, j) {
		return
	}
	if c.job.nearBoxes(i, j.middle(), c.weights[boxClear]) > 0 && c.otherSeam(i, k, j.middle()) {
		c.fault("box", fmt.Sprintf("runs[%d].panels[%d].left", i, k+1), text(j.middle()), text(c.weights[boxClear])+" from a box's side", "seam close to a box where another line would do")
	}
}

// sheetFor says whether some sheet is wide enough at a phase.
func (p *pattern) sheetFor(sheets []stock, width, leftPhase rat) bool {
	return slices.ContainsFunc(sheets, func(s stock) bool { return p.fits(width, leftPhase, s) })
}

// nearBoxes counts the boxes of run i of which a side, as taped, lies nearer than
// clear to x.
func (j *room) nearBoxes(i int, x, clear rat) int {
	n := 0
	for _, o := range j.runs[i].openings {
		if o.kind != "box" {
			continue
		}
		for k, p := range o.outline {
			q := o.outline[(k+1)%len(o.outline)]
			if same(p.x, q.x) && less(size(diff(p.x, x)), clear) {
				n++
				break
			}
		}
	}
	return n
}

// otherSeam says whether the seam after panel k could have fallen on another
// allowed line with all other seams left where they are.
func (c *checker) otherSeam(i, k int, now rat) bool {
	p := c.job.pattern
	left, right := c.plan.Runs[i].Panels[k].Left.r(), c.plan.Runs[i].Panels[k+1].Right.r()
	origin := c.origin(i, now, fromLeft)
	least := times(c.weights[leastPanel], p.pitch)
	for _, x := range p.linesBetween(origin, left, right) {
		a, b := diff(x, half(c.job.gaps.seam)), sum(x, half(c.job.gaps.seam))
		if same(x, now) || c.job.nearBoxes(i, x, c.weights[boxClear]) > 0 || less(diff(a, left), least) || less(diff(right, b), least) {
			continue
		}
		if p.sheetFor(c.job.stock, diff(a, left), p.phase(left, origin)) && p.sheetFor(c.job.stock, diff(right, b), p.phase(b, origin)) {
			return true
		}
	}
	return false
}

// linesBetween returns every place strictly between left and right where a seam
// may fall, rightward.
func (p *pattern) linesBetween(origin, left, right rat) []rat {
	var out []rat
	for start := diff(left, p.phase(left, origin)); less(start, right); start = sum(start, p.pitch) {
		for _, line := range p.lines {
			if x := sum(start, line); less(left, x) && less(x, right) {
				out = append(out, x)
			}
		}
	}
	return out
}

// warned says whether the plan warns of something on run i.
func (c *checker) warned(i int) bool {
	path := fmt.Sprintf("runs[%d]", i)
	return slices.ContainsFunc(c.plan.Warnings, func(w planWarning) bool { return strings.HasPrefix(w.Path, path) })
}
