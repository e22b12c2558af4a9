package verify

import "slices"

// term is one term of a layout's blemish as the contract defines it.
type term struct {
	run    int
	next   int // the other run of a corner, else that of the term
	what   string
	at     rat
	amount rat // inches
	weight rat // without the height
	height rat // inches
}

// cost is weight x height in feet x amount in inches.
func (t term) cost() rat { return over(times(times(t.weight, t.height), t.amount), whole(12)) }

// upright is an edge that may be seen.
type upright struct {
	what      string
	x, height rat
	weight    rat
	right     bool // the material lies right of it
	end       bool // of the run
}

// seen is how much the edge is seen: its weight x its height.
func (u upright) seen() rat { return times(u.weight, u.height) }

// uprights returns every upright edge of the region, whatever it weighs.
func (g *region) uprights(w weights) []upright {
	var out []upright
	for k, e := range []endEdge{g.left, g.right} {
		given := []end{g.run.Left, g.run.Right}[k]
		n, seen := map[string]weight{exposed: exposedEnd, outsideCorner: outsideEnd, covered: coveredEnd}[given.Kind]
		if !seen {
			continue
		}
		x := e.x
		if e.leaning {
			x = e.middle()
		}
		out = append(out, upright{given.Kind + " end", x, e.height, or(given.Prominence, w[n]), k == 0, true})
	}
	for _, s := range g.steps {
		height := g.beside(s.x, s.low, s.high, s.right)
		for _, hole := range g.holes { // where an opening's side runs along it, that is what is seen
			low, high, ok := hole.bounds()
			if ok && (same(low.X, s.x) && !s.right || same(high.X, s.x) && s.right) {
				height = diff(height, g.beside(s.x, most(s.low, low.Y), least(s.high, high.Y), s.right))
			}
		}
		out = append(out, upright{"side of a step", s.x, height, w[stepUpright], s.right, false})
	}
	for n, o := range g.run.Openings {
		weight, gap := w[openingUpright], g.holes[n].gap
		if o.Kind == "box" {
			weight = w[boxUpright]
		}
		counterclockwise := o.taped.area().Sign() > 0
		for k, p := range o.taped {
			q := o.taped[(k+1)%len(o.taped)]
			if !same(p.X, q.X) || same(p.Y, q.Y) {
				continue
			}
			right, x := less(p.Y, q.Y) == counterclockwise, diff(p.X, gap)
			if right {
				x = sum(p.X, gap)
			}
			height := g.beside(x, diff(least(p.Y, q.Y), gap), sum(most(p.Y, q.Y), gap), right)
			out = append(out, upright{"side of " + o.Name, x, height, weight, right, false})
		}
	}
	return out
}

// uprightTerm returns the term of an upright edge at a phase.
func (p *pattern) uprightTerm(run int, u upright, phase rat) term {
	return term{run, run, u.what, u.x, p.cut(phase, u.right), u.weight, u.height}
}

// prominence returns how much a seam at x is seen: that of the focal zone there, or 1.
func (r *run) prominence(x rat) rat {
	var out rat
	for _, z := range r.Focal {
		if p := or(z.Prominence, whole(1)); within(x, z.From, z.To) && (out == nil || less(out, p)) {
			out = p
		}
	}
	if out == nil {
		return whole(1)
	}
	return out
}

// seamTerm returns the term of a seam with its middle at x.
func (g *region) seamTerm(i int, x rat, w weights) term {
	return term{i, i, "seam", x, w[seamItself], g.run.prominence(x), g.seen(x)}
}

// cornerTerm returns the term of the inside corner right of run i.
func (j *room) cornerTerm(i, next int, left, right *region, mismatch rat, w weights) term {
	return term{
		i, next, "inside corner", diff(j.Runs[i].Width, j.pattern.Thickness), mismatch,
		j.cornerWeight(i, w), least(left.right.height, right.left.height),
	}
}

// cornerWeight returns what the inside corner right of run i weighs: the greater prominence that its
// two ends state, if any does.
func (j *room) cornerWeight(i int, w weights) rat {
	ends := []*rat{j.Runs[i].Right.Prominence}
	if next, ok := j.corner(i); ok {
		ends = append(ends, j.Runs[next].Left.Prominence)
	}
	ends = slices.DeleteFunc(ends, func(p *rat) bool { return p == nil })
	if len(ends) == 0 {
		return w[insideMismatch]
	}
	return most(*ends[0], *ends[len(ends)-1])
}

// terms returns every term of the plan's own layout.
func (c *checker) terms() []term {
	var out []term
	p := c.job.pattern
	for i, g := range c.regions {
		for _, u := range g.uprights(c.weights) {
			out = append(out, p.uprightTerm(i, u, c.phase(i, u.x, facing(u.right))))
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
				out = append(out, term{i, i, "seam off its line", x, p.offLine(c.phase(i, x, fromLeft)), c.weights[seamOffLine], whole(12)})
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

// wantsWhole says whether an upright is a run's only exposed end that is seen, which has to show a
// whole feature.
func (g *region) wantsWhole(u upright, w weights) bool {
	shown := func(e end) bool { return e.Kind == exposed && or(e.Prominence, whole(1)).Sign() > 0 }
	left, right := shown(g.run.Left), shown(g.run.Right)
	return u.end && left != right && u.right == left && u.seen().Sign() > 0 && w[wholeEnd].Sign() > 0
}

// exposedEnd checks that the only exposed end of run i shows a whole feature. The kind is Outweighed
// where everything else that the set-out decides weighs more, so that the least blemish alone may well
// cut it. Where the job sets the rule aside nothing is checked.
func (c *checker) exposedEnd(i int) {
	uprights := c.regions[i].uprights(c.weights)
	k := slices.IndexFunc(uprights, func(u upright) bool { return c.regions[i].wantsWhole(u, c.weights) })
	if k < 0 || c.laid(i) {
		return
	}
	u := uprights[k]
	amount, kind, others := c.job.pattern.cut(c.phase(i, u.x, facing(u.right)), u.right), Exposed, c.others(i, uprights, k)
	if less(u.seen(), others) {
		kind = Outweighed
	}
	c.equal(kind, item("runs", i)+".set_out.origin", amount, zero(),
		"inches from a whole feature at %s, which weighs %s; the rest weighs %s", text(u.x), text(u.seen()), text(others))
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
		if _, ok := c.job.corner(corner); ok && c.job.Runs[corner].Right.Kind == insideCorner {
			total = sum(total, times(c.job.cornerWeight(corner, c.weights), most(g.left.height, g.right.height)))
		}
	}
	return total
}
