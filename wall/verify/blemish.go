package verify

import (
	"maps"
	"slices"
)

// standard are the weights and least sizes by the names of priorities, which the contract leaves
// open: those of plans. Edges and corners weigh per foot of height and inch of cut or mismatch.
var standard = map[string]rat{
	"exposed_end":    whole(8),
	"outside_corner": whole(4),
	"covered_end":    whole(0),
	"step_side":      whole(3),
	"opening_side":   whole(2), // of a window or other opening
	"box_side":       whole(0),
	"inside_corner":  whole(1),
	"seam":           ratio(1, 8), // inches per foot of height
	"seam_line":      whole(8),    // per inch
	"weak_strip":     whole(1),
	"box_clear":      whole(1), // inches
	"least_panel":    whole(2), // pitches
	"whole_end":      whole(1), // 1: a run's only exposed end must show a whole feature
}

// weights returns the defaults with the job's priorities put in.
func (j *room) weights() map[string]rat {
	out := maps.Clone(standard)
	out["least_strip"], out["height_jump"], out["trim_margin"] = ratio(3, 4), whole(1), ratio(1, 4) // inches
	if j.Units != "" && j.Units != "in" {
		for name, mm := range map[string]int64{"least_strip": 20, "height_jump": 25, "trim_margin": 6} {
			out[name] = times(whole(mm), perUnit["mm"])
		}
	}
	maps.Copy(out, j.Priorities)
	return out
}

// weigh takes the plan's priorities, which must agree with the contract's defaults and the job.
func (c *checker) weigh() {
	c.weights = c.job.weights()
	for k, p := range c.plan.Priorities {
		path := item("priorities", k)
		value, set := c.job.Priorities[p.Name]
		if !set {
			value = p.Default
		}
		c.equal(Priorities, path+".value", p.Value, value, "%s is neither the job's nor its default", p.Name)
		if want, known := standard[p.Name]; known {
			c.equal(Priorities, path+".default", p.Default, want, "%s is not the contract's default", p.Name)
		}
	}
	c.job.margin = c.weights["trim_margin"]
}

// blemishes compares the plan's terms with those of the contract, what is alike at one place together.
func (c *checker) blemishes() {
	total := zero()
	var stated []planBlemish
	for k, b := range c.plan.Blemishes {
		path := item("blemishes", k)
		total = sum(total, b.Cost)
		c.require(c.runOf(b.Run) >= 0, Blemish, path+".run", b.Run, "a run", "unknown run")
		c.between(Blemish, path+".cost", b.Cost, zero(), nil, "a negative cost")
		c.require(b.Height != nil || b.Kind == "seam off its line", Blemish, path+".height", "none", "a height", "a term that counts by its height")
		c.equal(Blemish, path+".cost", b.Cost, b.product(), "not weight x height x amount")
		b.path = path
		n := slices.IndexFunc(stated, func(a planBlemish) bool {
			return a.Run == b.Run && a.Kind == b.Kind && same(a.At, b.At) && same(a.Amount, b.Amount) && same(a.Weight, b.Weight)
		})
		if n < 0 {
			stated = append(stated, b)
			continue
		}
		height := sum(or(stated[n].Height, zero()), or(b.Height, zero()))
		stated[n].Height, stated[n].Cost = &height, sum(stated[n].Cost, b.Cost)
	}
	c.equal(Blemish, "blemish_total", c.plan.BlemishTotal, total, "not the sum of the costs")
	var terms []term
	for _, t := range c.terms() {
		n := slices.IndexFunc(terms, func(u term) bool {
			return u.run == t.run && u.kind == t.kind && same(u.at, t.at) && same(u.amount, t.amount) && same(u.weight, t.weight)
		})
		if n < 0 {
			terms = append(terms, t)
		} else {
			terms[n].height = sum(terms[n].height, t.height)
		}
	}
	taken := make([]bool, len(stated))
	for _, t := range terms {
		if t.cost().Sign() == 0 {
			continue
		}
		k := c.stated(t, stated, taken)
		if k < 0 {
			c.fault(Blemish, "blemishes", "nothing", t.cost(), "%s at %s of %s is missing: %s x %s in high x %s", t.kind, text(t.at),
				c.job.Runs[t.run].Name, text(t.weight), text(t.height), text(t.amount))
			continue
		}
		taken[k] = true
		b := stated[k]
		c.equal(Blemish, b.path+".amount", b.Amount, t.amount, "amount of %s", t.kind)
		c.given(Blemish, b.path+".height", b.Height, t.height, "height of "+t.kind)
		c.equal(Blemish, b.path+".weight", b.Weight, t.weight, "weight of %s", t.kind)
	}
	for k, b := range stated {
		if !taken[k] && b.Cost.Sign() != 0 {
			c.fault(Blemish, b.path, b.Cost, "nothing", "%s at %s of %s: no such term of the contract", b.Kind, text(b.At), b.Run)
		}
	}
}

// product returns weight x amount, and x the height in feet where the term states one.
func (b planBlemish) product() rat {
	return over(times(times(b.Weight, b.Amount), or(b.Height, whole(12))), whole(12))
}

// stated finds a term of the plan that is t, rather one at the same place and of the same amount.
func (c *checker) stated(t term, all []planBlemish, taken []bool) int {
	best, score := -1, 0
	for k, b := range all {
		i, points := c.runOf(b.Run), 1
		if taken[k] || i != t.run && i != t.next || b.Kind != t.kind || !same(b.Cost, t.cost()) {
			continue
		}
		if same(b.Amount, t.amount) {
			points++
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
