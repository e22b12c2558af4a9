package verify

import (
	"fmt"
	"slices"
	"strings"
)

// The stages of the work in the order of hands: what is seen to first, the lines on the wall, by
// which the survey is checked before anything is sawn, sawing, a dry fit and the first coats, then fitting piece by piece, and what closes the joints.
var stages = []string{"look", "rest", "strips", "lines", "cut", "miter", "mains off", "dry fit", "first coats", "fit", "trim", "fill", "tape", "seal",
	"last coats", "seal wet", "devices", "power on"}

// workOrder checks the order of work: each stage at most once and in order, the current off before hands
// are at boxes and on again last, and each piece fitted once, in order, the closing ones as such.
func (c *checker) workOrder() {
	if len(c.plan.Order) == 0 {
		return // the plan says nothing of it
	}
	heads := make([]string, len(c.plan.Order))
	last := -1
	for k, step := range c.plan.Order {
		head, acts, _ := strings.Cut(step, ": ")
		heads[k] = head
		at := slices.Index(stages, head)
		c.require(at > last, Order, item("order", k), head, "a later stage", "not in the order of hands")
		if last = max(last, at); head == "fit" {
			c.fitting(item("order", k), acts)
		}
	}
	boxes := c.anyRun(func(i int) bool {
		return slices.ContainsFunc(c.job.Runs[i].Openings, func(o opening) bool { return o.Kind == "box" })
	})
	for _, head := range []string{"mains off", "devices", "power on"} {
		c.equal(Order, "order", slices.Contains(heads, head), boxes, "stage %q is for boxes", head)
	}
	for _, head := range []string{"lines", "cut", "dry fit", "fit"} {
		c.require(slices.Contains(heads, head), Order, "order", heads, head, "a stage is missing")
	}
}

// fitting checks that the pieces are fitted one after the other, the closing ones measured and sawn just
// before.
func (c *checker) fitting(path, acts string) {
	var got, want []string
	for _, act := range strings.Split(acts, "; ") {
		for _, kind := range []string{"fitting", "closing"} {
			if labels, is := strings.CutPrefix(act, kind+" "); is {
				for _, label := range strings.Split(labels, ", ") {
					got = append(got, kind+" "+label)
				}
			}
		}
	}
	for _, p := range c.plan.Pieces {
		label := fmt.Sprint(p.Number)
		if p.Label != nil {
			label = *p.Label
		}
		want = append(want, map[bool]string{false: "fitting ", true: "closing "}[p.Closing]+label)
	}
	c.equal(Order, path, got, want, "not piece by piece")
}

// anyRun says whether a run is such.
func (c *checker) anyRun(is func(i int) bool) bool {
	for i := range c.job.Runs {
		if is(i) {
			return true
		}
	}
	return false
}
