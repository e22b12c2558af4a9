package verify

import "maps"

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
	"box_clear":      whole(1),    // inches
	"least_panel":    whole(2),    // pitches
	"whole_end":      whole(1),    // 1: a run's only exposed end must show a whole feature
}

// weights returns the defaults with the job's priorities put in.
func (j *room) weights() map[string]rat {
	out := maps.Clone(standard)
	out["least_strip"] = ratio(3, 4) // inches: the unit of least_panel on plain sheets
	if j.Units != "" && j.Units != "in" {
		out["least_strip"] = times(whole(20), perUnit["mm"])
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
		c.weights[p.Name] = p.Value
	}
}

// blemishes compares the plan's terms with those of the contract.
func (c *checker) blemishes() {
	total := zero()
	taken := make([]bool, len(c.plan.Blemishes))
	for k, b := range c.plan.Blemishes {
		path := item("blemishes", k)
		total = sum(total, b.Cost)
		c.require(c.runOf(b.Run) >= 0, Blemish, path+".run", b.Run, "a run", "unknown run")
		c.between(Blemish, path+".cost", b.Cost, zero(), nil, "a negative cost")
	}
	c.equal(Blemish, "blemish_total", c.plan.BlemishTotal, total, "not the sum of the costs")
	for _, t := range c.terms() {
		if t.cost().Sign() == 0 {
			continue
		}
		k := c.stated(t, taken)
		if k < 0 {
			c.fault(Blemish, "blemishes", "nothing", t.cost(), "%s at %s of %s is missing: %s x %s in high x %s", t.kind, text(t.at),
				c.job.Runs[t.run].Name, text(t.weight), text(t.height), text(t.amount))
			continue
		}
		taken[k] = true
		b, path := c.plan.Blemishes[k], item("blemishes", k)
		c.equal(Blemish, path+".amount", b.Amount, t.amount, "amount of %s", t.kind)
		c.given(Blemish, path+".height", b.Height, t.height, "height of "+t.kind)
		if full := over(times(times(b.Weight, t.amount), t.height), whole(12)); !same(b.Cost, b.product()) && !same(b.Cost, full) {
			c.fault(Blemish, path+".weight", b.Weight, t.weight, "weight of %s, with or without its height of %s in",
				t.kind, text(t.height))
		}
	}
	for k, b := range c.plan.Blemishes {
		path := item("blemishes", k)
		switch {
		case taken[k] || b.Cost.Sign() == 0:
		case b.Kind == "weak strip": // beyond the contract
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

// stated finds a term of the plan that is t, rather one at the same place and of the same amount.
func (c *checker) stated(t term, taken []bool) int {
	best, score := -1, 0
	for k, b := range c.plan.Blemishes {
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
