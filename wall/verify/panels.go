package verify

import (
	"slices"
	"strings"
)

// panels checks order, gaps, phases and sizes of the panels of run i.
func (c *checker) panels(i int) {
	r, p := c.plan.Runs[i], c.job.pattern
	for k, panel := range r.Panels {
		path := item(item("runs", i)+".panels", k)
		c.require(less(panel.Left, panel.Right), Panels, path+".right", panel.Right, "more than "+text(panel.Left),
			"a panel without width")
		c.between(Panels, path+".left", panel.Left, r.Limits.Left, nil, "left of the limit")
		c.between(Panels, path+".right", panel.Right, nil, r.Limits.Right, "right of the limit")
		c.require(k == 0 || panel.Number != r.Panels[k-1].Number, Panels, path+".number", panel.Number, "another",
			"two panels of one number")
		c.equal(Phase, path+".left_phase", panel.LeftPhase, c.phase(i, panel.Left, fromRight), "not what the set-out gives")
		c.equal(Phase, path+".right_phase", panel.RightPhase, c.phase(i, panel.Right, fromLeft), "not what the set-out gives")
		width, narrow := diff(panel.Right, panel.Left), p.narrowest(c.weights)
		c.require(p.sheetFor(c.job.Stock, width, c.phase(i, panel.Left, fromRight)), Panels, path, width,
			"as wide as a sheet allows at phase "+text(panel.LeftPhase), "wider than any stock allows at its phase")
		warned := false
		for _, w := range c.plan.Warnings {
			here := w.Kind == "narrow panel" && strings.HasPrefix(w.Path, item("runs", i))
			warned = warned || here && slices.Contains(w.Counts, panel.Number)
		}
		c.require(p.Boards || !less(width, narrow) || warned, Narrow, path, width, narrow,
			"narrower than the least panel without a warning")
	}
	c.acrossJoints(i)
}

// acrossJoints checks each joint of run i: its width, that the pattern runs on over it unless it
// starts afresh there, and that a seam stays away from boxes.
func (c *checker) acrossJoints(i int) {
	p := c.job.pattern
	for k, j := range c.joints[i] {
		before, after := c.boards[i][k], c.boards[i][k+1]
		gap := diff(j.right, j.left)
		if gap.Sign() < 0 {
			c.fault(Panels, after.path+".left", j.right, j.left, "overlaps the panel before it")
			continue
		}
		if shut := p.Boards && gap.Sign() == 0; !j.open && !j.old && !shut {
			c.equal(SeamGap, after.path+".left", gap, c.job.Gaps.Seam, "the gap before this panel is not the seam gap")
		}
		if c.restarted(i, j) {
			continue
		}
		carried := mod(sum(before.leftPhase, diff(after.left, before.left)), p.pitch)
		c.equal(Phase, after.path+".left_phase", after.leftPhase, carried, "the pattern does not run on over the seam")
		seam, clear := !p.Boards && !j.open && !before.old && !after.old, c.weights["box_clear"]
		if seam && c.job.nearBoxes(i, j.middle(), clear) > 0 && c.otherSeam(i, before.left, j.middle(), after.right) {
			c.fault(Box, after.path+".left", j.middle(), text(clear)+" from a box's side",
				"seam close to a box where another line would do")
		}
	}
}

// nearBoxes counts the boxes of run i that x lies in, as taped, or nearer to than clear.
func (j *room) nearBoxes(i int, x, clear rat) int {
	n := 0
	for _, o := range j.Runs[i].Openings {
		if o.Kind != "box" {
			continue
		}
		low, high, ok := bounds(o.taped)
		if ok && less(diff(low.X, clear), x) && less(x, sum(high.X, clear)) {
			n++
		}
	}
	return n
}

// otherSeam says whether a seam, now between a panel that starts at left and one that ends at
// right, could have fallen on another allowed line with all other seams left where they are. One that
// the job keeps could not.
func (c *checker) otherSeam(i int, left, now, right rat) bool {
	if slices.ContainsFunc(c.job.Runs[i].Keep.Seams, func(x rat) bool { return same(x, now) }) {
		return false
	}
	p, gap := c.job.pattern, half(c.job.Gaps.Seam)
	origin := c.origin(i, now, fromLeft)
	narrow := p.narrowest(c.weights)
	for _, x := range c.job.linesBetween(origin, left, right) {
		a, b := diff(x, gap), sum(x, gap)
		if same(x, now) || c.job.nearBoxes(i, x, c.weights["box_clear"]) > 0 || less(diff(a, left), narrow) || less(diff(right, b), narrow) {
			continue
		}
		if p.sheetFor(c.job.Stock, diff(a, left), p.phase(left, origin)) && p.sheetFor(c.job.Stock, diff(right, b), p.phase(b, origin)) {
			return true
		}
	}
	return false
}

// linesBetween returns every place strictly between left and right for a seam, rightward.
func (j *room) linesBetween(origin, left, right rat) []rat {
	p := j.pattern
	var out []rat
	if len(p.lines) == 0 {
		return out
	}
	for start := diff(left, p.phase(left, origin)); less(start, right); start = sum(start, p.pitch) {
		j.sweep.spend(100 * (1 + len(p.lines))) // it may be a fine pattern on a long stretch
		for _, line := range p.lines {
			if x := sum(start, line); less(left, x) && less(x, right) {
				out = append(out, x)
			}
		}
	}
	return out
}
