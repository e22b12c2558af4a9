package verify

import "slices"

// term is one term of a layout's blemish as the contract defines it.
type term struct {
	run    int
	next   int // the other run of a corner, else -1
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
		given := []end{g.run.left, g.run.right}[k]
		var weight rat
		switch given.kind {
		case exposed:
			weight = w[exposedEnd]
		case outsideCorner:
			weight = w[outsideEnd]
		case covered:
			weight = w[coveredEnd]
		default:
			continue
		}
		if given.prominence != nil {
			weight = given.prominence
		}
		x := e.x
		if e.leaning {
			x = e.middle()
		}
		out = append(out, upright{given.kind + " end", x, e.height, weight, k == 0, true})
	}
	for _, s := range g.steps {
		height := g.beside(s.x, s.low, s.high, s.right)
		for _, hole := range g.grown { // where an opening's side runs along it, that is what is seen
			low, high := hole.bounds()
			if same(low.x, s.x) && !s.right || same(high.x, s.x) && s.right {
				height = diff(height, g.beside(s.x, most(s.low, low.y), least(s.high, high.y), s.right))
			}
		}
		out = append(out, upright{"side of a step", s.x, height, w[stepUpright], s.right, false})
	}
	for n, hole := range g.grown {
		o := g.run.openings[n]
		weight := map[string]rat{"box": w[boxUpright], "window": w[windowUpright]}[o.kind]
		if weight == nil {
			weight = w[otherUpright]
		}
		counterclockwise := hole.area().Sign() > 0
		for k, p := range hole {
			q := hole[(k+1)%len(hole)]
			if !same(p.x, q.x) || same(p.y, q.y) {
				continue
			}
			right := less(p.y, q.y) == counterclockwise
			out = append(out, upright{"side of " + o.name, p.x, g.beside(p.x, least(p.y, q.y), most(p.y, q.y), right), weight, right, false})
		}
	}
	return out
}

// beside returns how much of the upright from low to high at x bounds the shape
// on the given side.
func (g *region) beside(x, low, high rat, right bool) rat {
	look := fromLeft
	if right {
		look = fromRight
	}
	total := zero()
	for _, s := range g.at(x, look) {
		from, to := most(s.low.y, low), least(s.high.y, high)
		if less(from, to) {
			total = sum(total, diff(to, from))
		}
	}
	return total
}

// uprightTerm returns the term of an upright edge at a phase.
func (p *pattern) uprightTerm(run int, u upright, phase rat) term {
	return term{run: run, next: -1, what: u.what, at: u.x, amount: p.cut(phase, u.right), weight: u.weight, height: u.height}
}

// prominence returns how much a seam at x is seen: that of the focal zone there,
// or 1.
func (r *run) prominence(x rat) rat {
	var out rat
	for _, z := range r.focal {
		if within(x, z.from, z.to) && (out == nil || less(out, z.prominence)) {
			out = z.prominence
		}
	}
	if out == nil {
		return whole(1)
	}
	return out
}

// seamTerm returns the term of a seam whose middle is x.
func (g *region) seamTerm(i int, x rat, w weights) term {
	return term{
		run: i, next: -1, what: "seam", at: x, amount: w[seamItself], weight: g.run.prominence(x), height: g.seen(x),
	}
}

// offLineTerm returns the term of a seam's distance off the nearest line where a
// seam may fall, which counts whatever the height.
func offLineTerm(i int, x, off rat, w weights) term {
	return term{run: i, next: -1, what: "seam off its line", at: x, amount: off, weight: w[seamOffLine], height: whole(12)}
}

// cornerTerm returns the term of the inside corner right of run i.
func (j *room) cornerTerm(i, next int, left, right *region, mismatch rat, w weights) term {
	return term{
		run: i, next: next, what: "inside corner", at: diff(j.runs[i].width, j.pattern.thickness), amount: mismatch,
		weight: j.cornerWeight(i, w), height: least(left.right.height, right.left.height),
	}
}

// cornerWeight returns what the inside corner right of run i weighs: the greater
// prominence that its two ends state, if any does.
func (j *room) cornerWeight(i int, w weights) rat {
	var out rat
	ends := []end{j.runs[i].right}
	if next, ok := j.corner(i); ok {
		ends = append(ends, j.runs[next].left)
	}
	for _, e := range ends {
		if e.prominence != nil && (out == nil || less(out, e.prominence)) {
			out = e.prominence
		}
	}
	if out == nil {
		return w[insideMismatch]
	}
	return out
}

// terms returns every term of the plan's own layout.
func (c *checker) terms() []term {
	var out []term
	p := c.job.pattern
	for i, g := range c.regions {
		for _, u := range g.uprights(c.weights) {
			look := fromLeft
			if u.right {
				look = fromRight
			}
			out = append(out, p.uprightTerm(i, u, c.phase(i, u.x, look)))
		}
		if next, ok := c.job.corner(i); ok && c.job.runs[i].right.kind == insideCorner {
			out = append(out, c.job.cornerTerm(i, next, g, c.regions[next], c.mismatch(i, next), c.weights))
		}
		for _, j := range c.joints(i) {
			if j.open || p.boards || less(j.right, j.left) {
				continue
			}
			x := j.middle()
			out = append(out, g.seamTerm(i, x, c.weights))
			if !c.restarted(i, j) {
				out = append(out, offLineTerm(i, x, p.offLine(c.phase(i, x, fromLeft)), c.weights))
			}
		}
		out = append(out, c.breakTerms(i)...)
	}
	return out
}

func (c *checker) breakTerms(i int) []term {
	var out []term
	for _, restart := range c.plan.Runs[i].Restarts {
		at := restart.At.r()
		n := slices.IndexFunc(c.job.runs[i].breaks, func(b place) bool { return same(b.at, at) })
		if n < 0 {
			continue // reported by restarts
		}
		out = append(out, term{
			run: i, next: -1, what: "break", at: at, amount: circular(c.phase(i, at, fromLeft), c.phase(i, at, fromRight), c.job.pattern.pitch),
			weight: c.job.runs[i].breaks[n].prominence, height: c.regions[i].seen(at),
		})
	}
	return out
}
