package verify

// weight is one weight of the blemish, or a least size of the hard rules.
type weight int

const (
	exposedEnd weight = iota
	outsideEnd
	coveredEnd
	stepUpright
	openingUpright // of a window or other opening
	boxUpright
	insideMismatch
	seamItself
	seamOffLine
	boxClear   // inches
	leastPanel // pitches
	wholeEnd   // 1: a run's only exposed end must show a whole feature
	weightCount
)

// weights holds every weight in use, by its constant.
type weights [weightCount]rat

// standard are the defaults of the contract. The weights of edges and corners are per foot of height
// and inch of cut or mismatch, seamItself is inches per foot of height, and seamOffLine is per inch.
var standard = weights{
	exposedEnd:     whole(8),
	outsideEnd:     whole(4),
	coveredEnd:     whole(0),
	stepUpright:    whole(3),
	openingUpright: whole(2),
	boxUpright:     whole(0),
	insideMismatch: whole(1),
	seamItself:     ratio(1, 8),
	seamOffLine:    whole(8),
	boxClear:       whole(1),
	leastPanel:     whole(2),
	wholeEnd:       whole(1),
}

// named are the names of the weights and sizes in a job's and a plan's priorities. The contract leaves
// the names open; these are those of the plans.
var named = map[string]weight{
	"exposed_end":    exposedEnd,
	"outside_corner": outsideEnd,
	"covered_end":    coveredEnd,
	"step_side":      stepUpright,
	"opening_side":   openingUpright,
	"box_side":       boxUpright,
	"inside_corner":  insideMismatch,
	"seam":           seamItself,
	"seam_line":      seamOffLine,
	"box_clear":      boxClear,
	"least_panel":    leastPanel,
	"whole_end":      wholeEnd,
}

// given returns the defaults with the job's priorities put in.
func (j *room) given() weights {
	out := standard
	for name, value := range j.Priorities {
		if w, known := named[name]; known {
			out[w] = value
		}
	}
	return out
}

// weigh takes the weights from the plan's priorities, which must agree with the contract's defaults and
// with the job.
func (c *checker) weigh() {
	c.weights = c.job.given()
	for k, p := range c.plan.Priorities {
		path := item("priorities", k)
		value, set := c.job.Priorities[p.Name]
		if !set {
			value = p.Default
		}
		c.equal(Priorities, path+".value", p.Value, value, "%s is neither the job's nor its default", p.Name)
		if w, known := named[p.Name]; known {
			c.equal(Priorities, path+".default", p.Default, standard[w], "%s is not the contract's default", p.Name)
			c.weights[w] = p.Value
		}
	}
}
