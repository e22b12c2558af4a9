package verify

import "strings"

// term is one term of a layout's blemish as the contract defines it.
type term struct {
	run    int
	next   int    // the other run of a corner, else that of the term
	kind   string // its word in plans
	at     rat
	amount rat // inches
	weight rat // without the height
	height rat // inches
}

// cost is weight x height in feet x amount in inches.
func (t term) cost() rat { return over(times(times(t.weight, t.height), t.amount), whole(12)) }

// upright is an edge that may be seen.
type upright struct {
	kind      string
	x, height rat
	weight    rat
	right     bool // the material lies right of it
	end       bool // of the run
}

// seen is how much the edge is seen: its weight x its height.
func (u upright) seen() rat { return times(u.weight, u.height) }

// uprights returns every upright edge of the region, whatever it weighs.
func (g *region) uprights(w map[string]rat) []upright {
	var out []upright
	for k, e := range []endEdge{g.left, g.right} {
		given := []end{g.run.Left, g.run.Right}[k]
		kind, seen := map[string]string{exposed: "exposed end", outsideCorner: "outside corner", covered: "covered end"}[given.Kind]
		if !seen {
			continue
		}
		out = append(out, upright{kind, e.middle, e.height, or(given.Prominence, w[named(kind)]), k == 0, true})
	}
	for _, s := range g.steps {
		height := g.beside(s.x, s.low, s.high, s.right)
		for _, o := range g.run.Openings { // where an opening's side runs along it, that is what is seen
			parts, _ := g.job.grown(o)
			low, high, ok := bounds(parts...)
			if ok && (same(low.X, s.x) && !s.right || same(high.X, s.x) && s.right) {
				height = diff(height, g.beside(s.x, most(s.low, low.Y), least(s.high, high.Y), s.right))
			}
		}
		out = append(out, upright{"step side", s.x, height, w["step_side"], s.right, false})
	}
	for _, o := range g.run.Openings {
		kind := "opening side"
		if o.Kind == "box" {
			kind = "box side"
		}
		_, gap := g.job.grown(o)
		way := o.taped.area().Sign()
		for k, p := range o.taped {
			before, q := o.taped[(k+len(o.taped)-1)%len(o.taped)], o.taped[(k+1)%len(o.taped)]
			right := (q.Y.Cmp(p.Y) > 0) == (way > 0)
			if !same(p.X, q.X) {
				// A corner that stands out to one side has an upright edge once it is grown.
				if before.X.Cmp(p.X)*q.X.Cmp(p.X) <= 0 || turn(before, p, q) != way {
					continue
				}
				q, right = p, less(before.X, p.X)
			}
			x := diff(p.X, gap)
			if right {
				x = sum(p.X, gap)
			}
			height := g.beside(x, diff(least(p.Y, q.Y), gap), sum(most(p.Y, q.Y), gap), right)
			out = append(out, upright{kind, x, height, w[named(kind)], right, false})
		}
	}
	return out
}

// named returns the name of the priority that weighs a kind of term.
func named(kind string) string { return strings.ReplaceAll(kind, " ", "_") }

// uprightTerm returns the term of an upright edge at a phase.
func (p *pattern) uprightTerm(run int, u upright, phase rat) term {
	return term{run, run, u.kind, u.x, p.cut(phase, u.right), u.weight, u.height}
}

// prominence returns how much a seam at x is seen: that of the focal zone there, or 1.
func (r *run) prominence(x rat) rat {
	var there []rat
	for _, z := range r.Focal {
		if within(x, z.From, z.To) {
			there = append(there, or(z.Prominence, whole(1)))
		}
	}
	if len(there) == 0 {
		return whole(1)
	}
	return most(there...)
}

// seamTerm returns the term of a seam with its middle at x.
func (g *region) seamTerm(i int, x rat, w map[string]rat) term {
	return term{i, i, "seam", x, w["seam"], g.run.prominence(x), g.seen(x)}
}

// cornerTerm returns the term of the inside corner right of run i. It weighs what the greater
// prominence of its two ends says, if any does.
func (j *room) cornerTerm(i, next int, left, right *region, mismatch rat, w map[string]rat) term {
	weight, a, b := w["inside_corner"], j.Runs[i].Right.Prominence, j.Runs[next].Left.Prominence
	if a != nil || b != nil {
		weight = most(or(a, zero()), or(b, zero()))
	}
	x := diff(j.Runs[i].Width, j.pattern.Thickness)
	return term{i, next, "inside corner", x, mismatch, weight, least(left.right.height, right.left.height)}
}

// terms returns every term of the plan's own layout.
func (c *checker) terms() []term {
	var out []term
	p := c.job.pattern
	for i, g := range c.regions {
		for _, u := range g.uprights(c.weights) {
			out = append(out, p.uprightTerm(i, u, c.phase(i, u.x, side(u.right))))
		}
		if next, ok := c.job.corner(i); ok && c.job.Runs[i].Right.Kind == insideCorner {
			out = append(out, c.job.cornerTerm(i, next, g, c.regions[next], c.mismatch(i, next), c.weights))
		}
		for _, j := range c.joints[i] {
			if j.open || p.Boards || less(j.right, j.left) {
				continue
			}
			x := j.middle()
			out = append(out, g.seamTerm(i, x, c.weights))
			if !c.restarted(i, j) { // a distance counts whatever the height
				out = append(out, term{i, i, "seam off its line", x, p.offLine(c.phase(i, x, fromLeft)), c.weights["seam_line"], whole(12)})
			}
		}
		for _, restart := range c.plan.Runs[i].Restarts {
			for _, b := range c.job.Runs[i].Breaks {
				if same(b.At, restart.At) {
					mismatch := circular(c.phase(i, b.At, fromLeft), c.phase(i, b.At, fromRight), p.pitch)
					out = append(out, term{i, i, "break", b.At, mismatch, or(b.Prominence, whole(1)), g.seen(b.At)})
					break
				}
			}
		}
	}
	return out
}

// wantsWhole says whether an upright is the only seen exposed end: it must show a whole feature.
func (g *region) wantsWhole(u upright, w map[string]rat) bool {
	shown := func(e end) bool { return e.Kind == exposed && or(e.Prominence, whole(1)).Sign() > 0 }
	left, right := shown(g.run.Left), shown(g.run.Right)
	return u.end && left != right && u.right == left && u.seen().Sign() > 0 && w["whole_end"].Sign() > 0
}

// exposedEnd checks that run i's only exposed end shows a whole feature, unless the job waives it.
func (c *checker) exposedEnd(i int) {
	for _, u := range c.regions[i].uprights(c.weights) {
		if c.regions[i].wantsWhole(u, c.weights) && !c.laid(i) {
			amount := c.job.pattern.cut(c.phase(i, u.x, side(u.right)), u.right)
			c.equal(Exposed, item("runs", i)+".set_out.origin", amount, zero(),
				"inches from a whole feature at the exposed end")
		}
	}
}
