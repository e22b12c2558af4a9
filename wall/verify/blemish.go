package verify

import (
	"fmt"
	"strings"
)

// blemishes compares the plan's terms with those of the contract.
func (c *checker) blemishes() {
	total := zero()
	taken := make([]bool, len(c.plan.Blemishes))
	for k, b := range c.plan.Blemishes {
		path := item("blemishes", k)
		total = sum(total, b.Cost)
		if c.runOf(b.Run) < 0 {
			c.fault(Blemish, path+".run", b.Run, "a run", "unknown run")
		}
		c.between(Blemish, path+".cost", b.Cost, zero(), nil, "a negative cost")
	}
	c.equal(Blemish, "blemish_total", c.plan.BlemishTotal, total, "not the sum of the costs")
	for _, t := range c.terms() {
		if t.cost().Sign() == 0 {
			continue
		}
		k := c.stated(t, taken)
		if k < 0 {
			c.fault(Blemish, "blemishes", "nothing", t.cost(), "%s", c.missing(t, taken))
			continue
		}
		taken[k] = true
		b, path := c.plan.Blemishes[k], item("blemishes", k)
		c.equal(Blemish, path+".amount", b.Amount, t.amount, "amount of %s", t.what)
		if b.Height != nil {
			c.equal(Blemish, path+".height", *b.Height, t.height, "height of %s", t.what)
		}
		if full := over(times(times(b.Weight, t.amount), t.height), whole(12)); !same(b.Cost, b.product()) && !same(b.Cost, full) {
			c.fault(Blemish, path+".weight", b.Weight, t.weight, "weight of %s, with or without its height of %s in", t.what, text(t.height))
		}
	}
	for k, b := range c.plan.Blemishes {
		path := item("blemishes", k)
		switch {
		case taken[k] || b.Cost.Sign() == 0:
		case strings.Contains(b.Kind, "strip"): // the planner's own, beyond the contract
			c.equal(Blemish, path+".cost", b.Cost, b.product(), "not weight x height x amount")
		default:
			c.fault(Blemish, path, b.Cost, "nothing", "%s at %s of %s: no such term of the contract", b.Kind, text(b.At), b.Run)
		}
	}
}

// product returns weight x amount, and x the height in feet where the term states one.
func (b planBlemish) product() rat {
	return over(times(times(b.Weight, b.Amount), or(b.Height, whole(12))), whole(12))
}

// stated finds a term of the plan with the run, cost and amount of t, rather one at the same place.
func (c *checker) stated(t term, taken []bool) int {
	best, score := -1, 0
	for k, b := range c.plan.Blemishes {
		i := c.runOf(b.Run)
		if taken[k] || i != t.run && i != t.next || !same(b.Cost, t.cost()) {
			continue
		}
		points := 1
		if same(b.Amount, t.amount) {
			points += 2
		}
		if same(b.At, t.at) {
			points++
		}
		if points > score {
			best, score = k, points
		}
	}
	return best
}

// missing describes a term that the plan lacks, with what the plan has instead at that place.
func (c *checker) missing(t term, taken []bool) string {
	var near []string
	for k, b := range c.plan.Blemishes {
		if !taken[k] && c.runOf(b.Run) == t.run && same(b.At, t.at) {
			near = append(near, fmt.Sprintf("blemishes[%d] %s: %s x %s = %s", k, b.Kind, text(b.Weight), text(b.Amount), text(b.Cost)))
		}
	}
	return fmt.Sprintf("%s at %s of %s: %s x %s ft x %s is missing (there: %s)", t.what, text(t.at), c.job.Runs[t.run].Name,
		text(t.weight), text(over(t.height, whole(12))), text(t.amount), strings.Join(near, "; "))
}
