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
		total = sum(total, b.Cost.r())
		if c.runOf(b.Run) < 0 {
			c.fault("blemish", fmt.Sprintf("blemishes[%d].run", k), b.Run, "a run", "unknown run")
		}
		if b.Cost.r().Sign() < 0 {
			c.fault("blemish", fmt.Sprintf("blemishes[%d].cost", k), text(b.Cost.r()), "0 or more", "a negative cost")
		}
	}
	c.equal("blemish", "blemish_total", c.plan.BlemishTotal.r(), total, "not the sum of the costs")
	for _, t := range c.terms() {
		if t.cost().Sign() == 0 {
			continue
		}
		k := c.told(t, taken)
		if k < 0 {
			c.fault("blemish", "blemishes", "nothing", text(t.cost()), "%s", c.missing(t, taken))
			continue
		}
		taken[k] = true
		b := c.plan.Blemishes[k]
		c.equal("blemish", fmt.Sprintf("blemishes[%d].amount", k), b.Amount.r(), t.amount, "amount of %s", t.what)
		product := times(b.Weight.r(), t.amount)
		if full := over(times(product, t.height), whole(12)); !same(product, t.cost()) && !same(full, t.cost()) {
			c.fault("blemish", fmt.Sprintf("blemishes[%d].weight", k), text(b.Weight.r()), text(t.weight), "weight of %s, with or without its height of %s in", t.what, text(t.height))
		}
	}
	for k, b := range c.plan.Blemishes {
		if taken[k] || b.Cost.r().Sign() == 0 {
			continue
		}
		path := fmt.Sprintf("blemishes[%d]", k)
		if contractual(b.Kind) {
			c.fault("blemish", path, text(b.Cost.r()), "nothing", "%s at %s of %s: no such term of the contract", b.Kind, text(b.At.r()), b.Run)
			continue
		}
		c.extra(path, b)
	}
}

// told finds a term of the plan with the run, cost and amount of t, rather one
// at the same place.
func (c *checker) told(t term, taken []bool) int {
	best, score := -1, 0
	for k, b := range c.plan.Blemishes {
		i := c.runOf(b.Run)
		if taken[k] || i != t.run && i != t.next || !same(b.Cost.r(), t.cost()) {
			continue
		}
		points := 1
		if same(b.Amount.r(), t.amount) {
			points += 2
		}
		if same(b.At.r(), t.at) {
			points++
		}
		if points > score {
			best, score = k, points
		}
	}
	return best
}

// missing describes a term that the plan lacks, with what the plan has instead
// at that place.
func (c *checker) missing(t term, taken []bool) string {
	var near []string
	for k, b := range c.plan.Blemishes {
		if !taken[k] && c.runOf(b.Run) == t.run && same(b.At.r(), t.at) {
			near = append(near, fmt.Sprintf("blemishes[%d] %s: %s x %s = %s", k, b.Kind, text(b.Weight.r()), text(b.Amount.r()), text(b.Cost.r())))
		}
	}
	return fmt.Sprintf("%s at %s of %s: %s x %s ft x %s = %s is not told (there: %s)", t.what, text(t.at), c.job.runs[t.run].name,
		text(t.weight), text(over(t.height, whole(12))), text(t.amount), text(t.cost()), strings.Join(near, "; "))
}

// contractual says whether a kind of blemish is one of the contract's own.
func contractual(kind string) bool {
	kind = strings.ToLower(kind)
	if strings.Contains(kind, "weak") || strings.Contains(kind, "strip") {
		return false
	}
	for _, word := range []string{"end", "corner", "step", "window", "opening", "box", "seam", "break", "exposed", "covered", "mismatch"} {
		if strings.Contains(kind, word) {
			return true
		}
	}
	return false
}

// extra checks the arithmetic of a term that the contract does not have: cost =
// weight x amount, or that times a height no greater than the run's.
func (c *checker) extra(path string, b planBlemish) {
	product := times(b.Weight.r(), b.Amount.r())
	if same(product, b.Cost.r()) {
		return
	}
	i := c.runOf(b.Run)
	if product.Sign() <= 0 || i < 0 {
		c.fault("blemish", path+".cost", text(b.Cost.r()), text(product), "not weight x amount")
		return
	}
	low, high := c.regions[i].extent()
	if feet := over(b.Cost.r(), product); less(diff(high, low), times(feet, whole(12))) {
		c.fault("blemish", path+".cost", text(b.Cost.r()), text(product), "not weight x amount, nor that times a height of the run")
	}
}
