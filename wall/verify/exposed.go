package verify

import (
	"fmt"
	"slices"
)

// wantsWhole says whether an upright is a run's only exposed end that is seen,
// which has to show a whole feature.
func (g *region) wantsWhole(u upright, w weights) bool {
	shown := func(e end) bool { return e.kind == exposed && (e.prominence == nil || e.prominence.Sign() > 0) }
	left, right := shown(g.run.left), shown(g.run.right)
	return u.end && left != right && u.right == left && u.seen().Sign() > 0 && w[wholeEnd].Sign() > 0
}

// exposedEnds checks that a run's only exposed end shows a whole feature. Kind
// "exposed" means that the end outweighs everything else the set-out decides;
// "exposed outweighed" that it does not, so that the least blemish alone may well
// cut it. Where the job sets the rule aside nothing is checked.
func (c *checker) exposedEnds() {
	for i, g := range c.regions {
		uprights := g.uprights(c.weights)
		k := slices.IndexFunc(uprights, func(u upright) bool { return g.wantsWhole(u, c.weights) })
		if k < 0 || c.laid(i) {
			continue
		}
		u, look := uprights[k], fromLeft
		if u.right {
			look = fromRight
		}
		amount := c.job.pattern.cut(c.phase(i, u.x, look), u.right)
		if amount.Sign() == 0 {
			continue
		}
		kind, others := "exposed", c.others(i, uprights, k)
		if less(u.seen(), others) {
			kind = "exposed outweighed"
		}
		c.fault(kind, fmt.Sprintf("runs[%d].set_out.origin", i), text(amount), "0",
			"inches from a whole feature at %s, which weighs %s; the rest weighs %s", text(u.x), text(u.seen()), text(others))
	}
}

// others returns what all but upright k of run i weighs that its set-out decides.
func (c *checker) others(i int, uprights []upright, k int) rat {
	total := zero()
	for l, u := range uprights {
		if l != k {
			total = sum(total, u.seen())
		}
	}
	n, g := len(c.regions), c.regions[i]
	for _, corner := range []int{i, (i + n - 1) % n} { // at its right and at its left
		if _, ok := c.job.corner(corner); ok && c.job.runs[corner].right.kind == insideCorner {
			total = sum(total, times(c.job.cornerWeight(corner, c.weights), most(g.left.height, g.right.height)))
		}
	}
	return total
}

// laid says whether a panel is on run i already.
func (c *checker) laid(i int) bool {
	return slices.ContainsFunc(c.job.installed, func(p installed) bool { return p.run == c.job.runs[i].name })
}
