package proof

import (
	"slices"
	"strings"
)

// weight is one weight of the blemish.
type weight int

const (
	exposedEnd weight = iota
	outsideEnd
	coveredEnd
	stepUpright
	windowUpright
	otherUpright
	boxUpright
	insideMismatch
	seamItself
	seamOffLine
	breakUsed
	weightCount
)

// weights holds every weight in use, by its constant.
type weights [weightCount]rat

// standard are the defaults of the contract.
var standard = weights{
	exposedEnd:     whole(8),
	outsideEnd:     whole(4),
	coveredEnd:     whole(0),
	stepUpright:    whole(3),
	windowUpright:  whole(2),
	otherUpright:   whole(2),
	boxUpright:     whole(0),
	insideMismatch: whole(1),
	seamItself:     ratio(1, 8),
	seamOffLine:    whole(8),
	breakUsed:      whole(1),
}

// weightsNamed returns the weights that a priority of the given name sets. The
// contract names no priorities, so this goes by the trade words in the name; a
// least size, such as a distance to keep, is no weight.
func weightsNamed(name string) []weight {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return r == '_' || r == ' ' || r == '-' || r == '.' })
	has := func(any ...string) bool {
		return slices.ContainsFunc(any, func(word string) bool { return slices.Contains(words, word) })
	}
	if has("least", "narrowest", "narrow", "min", "minimum", "clear", "clearance", "near", "distance", "strip", "pitches", "from", "weak", "leg", "plate") {
		return nil
	}
	switch {
	case has("seam", "seams"):
		if has("line", "lines", "off") {
			return []weight{seamOffLine}
		}
		return []weight{seamItself}
	case has("exposed"):
		return []weight{exposedEnd}
	case has("outside"):
		return []weight{outsideEnd}
	case has("covered"):
		return []weight{coveredEnd}
	case has("step", "steps"):
		return []weight{stepUpright}
	case has("window", "windows"):
		if has("other", "opening") {
			return []weight{windowUpright, otherUpright}
		}
		return []weight{windowUpright}
	case has("other"):
		return []weight{otherUpright}
	case has("opening", "openings"):
		return []weight{windowUpright, otherUpright}
	case has("box", "boxes"):
		return []weight{boxUpright}
	case has("inside", "corner", "mismatch"):
		return []weight{insideMismatch}
	case has("break", "breaks"):
		return []weight{breakUsed}
	}
	return nil
}

// given returns the defaults with the job's priorities put in.
func (j *room) given() weights {
	out := standard
	for name, value := range j.priorities {
		for _, w := range weightsNamed(name) {
			out[w] = value
		}
	}
	return out
}

// weigh takes the weights from the plan's priorities, which must agree with the
// contract's defaults and with the job.
func (c *checker) weigh() {
	c.weights = c.job.given()
	for k, p := range c.plan.Priorities {
		path := "priorities[" + text(whole(int64(k))) + "]"
		if value, set := c.job.priorities[p.Name]; set {
			c.equal("priorities", path+".value", p.Value.r(), value, "%s is not the job's", p.Name)
		} else {
			c.equal("priorities", path+".value", p.Value.r(), p.Default.r(), "%s is not its default", p.Name)
		}
		for _, w := range weightsNamed(p.Name) {
			c.equal("priorities", path+".default", p.Default.r(), standard[w], "%s is not the contract's default", p.Name)
			c.weights[w] = p.Value.r()
		}
	}
}
