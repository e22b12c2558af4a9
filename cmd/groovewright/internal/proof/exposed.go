package proof

import (
	"fmt"
	"slices"
)

// exposedEnds checks that a run whose only seen end is an exposed one shows a
// whole feature there. Kind "exposed" means that the end outweighs everything
// else the set-out decides; "exposed outweighed" that it does not, so that the
// least blemish may well cut it. Where the job sets the rule aside nothing is
// checked.
func (c *checker) exposedEnds() {
	if c.weights[wholeEnd].Sign() == 0 {
		return
	}
	n := len(c.regions)
	for i, g := range c.regions {
		var ends []upright
		others := zero()
		for _, u := range g.uprights(c.weights) {
			seen := times(u.weight, u.height)
			if u.end && seen.Sign() > 0 {
				ends = append(ends, u)
				continue
			}
			others = sum(others, seen)
		}
		if len(ends) != 1 || ends[0].what != exposed+" end" || c.laid(i) {
			continue
		}
		for _, k := range []int{i, (i + n - 1) % n} { // the inside corners at its right and left
			if _, ok := c.job.corner(k); ok && c.job.runs[k].right.kind == insideCorner {
				others = sum(others, times(c.job.cornerWeight(k, c.weights), most(g.left.height, g.right.height)))
			}
		}
		u := ends[0]
		look := fromLeft
		if u.right {
			look = fromRight
		}
		amount := c.job.pattern.cut(c.phase(i, u.x, look), u.right)
		if amount.Sign() == 0 {
			continue
		}
		kind := "exposed"
		if less(times(u.weight, u.height), others) {
			kind = "exposed outweighed"
		}
		c.fault(kind, fmt.Sprintf("runs[%d].set_out.origin", i), text(amount), "0",
			"inches from a whole feature at %s, which weighs %s; the rest weighs %s", text(u.x), text(times(u.weight, u.height)), text(others))
	}
}

// laid says whether a panel is on run i already.
func (c *checker) laid(i int) bool {
	return slices.ContainsFunc(c.job.installed, func(p installed) bool { return p.run == c.job.runs[i].name })
}
