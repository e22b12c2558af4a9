package verify

import (
	"cmp"
	"fmt"
	"slices"
	"sort"
	"strings"
)

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

// upright is an edge that may be seen: upright, or one part of a leaning end.
type upright struct {
	kind       string
	x          rat
	foot, head rat // where it leans, x at its foot and head; else nil
	height     rat
	weight     rat
	right      bool // the material lies right of it
	end        bool // of the run
}

// seen is how much the edge is seen: its weight x its height.
func (u upright) seen() rat { return times(u.weight, u.height) }

// endKinds are the kinds of terms of ends that are seen.
var endKinds = map[string]string{exposed: "exposed end", outsideCorner: "outside corner", covered: "covered end"}

// uprights returns every upright edge of the region, whatever it weighs.
func (g *region) uprights(w map[string]rat) []upright {
	var out []upright
	for k, e := range []endEdge{g.left, g.right} {
		given := []end{g.run.Left, g.run.Right}[k]
		kind := endKinds[given.Kind]
		if kind == "" {
			continue
		}
		if e.leaning && !e.taken() {
			out = append(out, upright{kind, e.middle, e.foot, e.head, e.height, or(given.Prominence, w[named(kind)]), k == 0, true})
		}
	}
	for _, s := range g.sides(w) {
		for _, part := range s.parts {
			height := g.beside(s.x, part[0], part[1], s.right)
			out = append(out, upright{s.kind, s.x, nil, nil, height, s.weight, s.right, s.end})
		}
	}
	return out
}

// A uprightSide is the upright side of a step or a grown opening, or an upright end, with the parts of it, upward, that
// no other side at the same place that weighs more claims.
type uprightSide struct {
	kind      string
	x         rat
	low, high rat
	weight    rat
	right     bool // the material lies right of it
	end       bool // of the run
	parts     [][2]rat
}

// holds says whether the wall goes on all round an opening.
func (g *region) holds(o opening) bool {
	var wall loop
	for _, h := range g.run.Heights {
		wall = append(wall, point{h.At, h.Bottom}, point{h.At, h.Top})
	}
	lo, hi, _ := bounds(o.taped)
	from, to, _ := bounds(wall)
	return less(from.X, lo.X) && less(hi.X, to.X) && less(from.Y, lo.Y) && less(hi.Y, to.Y)
}

// sides returns the upright sides of steps and openings, and the upright ends.
func (g *region) sides(w map[string]rat) []uprightSide {
	var out []uprightSide
	for _, s := range g.steps {
		out = append(out, uprightSide{"step side", s.x, s.low, s.high, w["step_side"], s.right, false, nil})
	}
	for _, o := range g.run.Openings {
		kind, weight := "opening side", w["opening_side"]
		switch {
		case o.Kind == "box":
			kind, weight = "box side", w["box_side"]
		case cmp.Or(g.run.Trim.Casing, g.job.Trim.Casing) != nil && (o.Kind == "window" || !g.holds(o)):
			weight = zero()
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
			out = append(out, uprightSide{kind, x, diff(least(p.Y, q.Y), gap), sum(most(p.Y, q.Y), gap), weight, right, false, nil})
		}
	}
	low, high, _ := bounds(g.taped)
	for k, e := range []endEdge{g.left, g.right} {
		given := []end{g.run.Left, g.run.Right}[k]
		if kind := endKinds[given.Kind]; kind != "" && !e.leaning && !e.taken() {
			out = append(out, uprightSide{kind, e.x, diff(low.Y, g.job.tape), sum(high.Y, g.job.tape), or(given.Prominence, w[named(kind)]), k == 0, true, nil})
		}
	}
	at := func(a, b uprightSide) int { // place by place, what weighs more first
		return cmp.Or(a.x.Cmp(b.x), cmp.Compare(fmt.Sprint(a.right), fmt.Sprint(b.right)), b.weight.Cmp(a.weight), cmp.Compare(fmt.Sprint(b.end), fmt.Sprint(a.end)), cmp.Compare(b.kind, a.kind))
	}
	sort.SliceStable(out, func(i, j int) bool { return at(out[i], out[j]) < 0 })
	var claimed []span
	for k := range out {
		s := &out[k]
		if k == 0 || !same(out[k-1].x, s.x) || out[k-1].right != s.right {
			claimed = nil
		}
		g.spend(len(claimed))
		own := []span{{bound{y: s.low}, bound{y: s.high}}}
		for _, part := range without(own, claimed) {
			s.parts = append(s.parts, [2]rat{part.low.y, part.high.y})
		}
		claimed = joined(append(claimed, own...))
	}
	return out
}

// named returns the name of the priority that weighs a kind of term.
func named(kind string) string { return strings.ReplaceAll(kind, " ", "_") }

// uprightTerm returns the term of an upright edge where a repeat starts at origin; whole says that
// it shows a whole feature.
func (j *room) uprightTerm(run int, u upright, origin rat) (t term, whole bool) {
	p := j.pattern
	t = term{run, run, u.kind, u.x, p.cut(p.phase(u.x, origin), u.right), u.weight, u.height}
	if whole = t.amount.Sign() == 0; u.foot != nil {
		t.amount, whole = j.leaning(u.foot, u.head, origin, u.right)
	}
	return t, whole
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

// weakStrips returns the terms of what a seam's two panels leave between their edges there and the
// upright side of an opening or step: an upright strip beside it, or a tab that ends below or above.
func (g *region) weakStrips(i int, j joint, w map[string]rat) []term {
	var out []term
	sides := g.sides(w)
	for _, e := range []struct {
		x     rat
		right bool // its panel lies right of it
	}{{j.left, false}, {j.right, true}} {
		for k, s := range sides {
			if s.end {
				continue
			}
			width := diff(e.x, s.x)
			if e.right {
				width = negative(width)
			}
			if width.Sign() <= 0 || !less(width, w["least_strip"]) {
				continue
			}
			height := zero()
			for _, part := range s.parts {
				height = sum(height, g.beside(s.x, part[0], part[1], s.right))
			}
			if s.right == e.right { // a tab beyond the side, once for each place where something ends
				ends := func(t uprightSide) bool {
					return !t.end && same(t.x, s.x) && t.right == s.right && slices.ContainsFunc(t.parts, func(p [2]rat) bool { return g.beside(t.x, p[0], p[1], t.right).Sign() > 0 })
				}
				if height.Sign() == 0 || slices.ContainsFunc(sides[:k], ends) {
					continue
				}
				height = length(g.at(s.x, side(!s.right)))
			}
			out = append(out, term{i, i, "weak strip", s.x, diff(w["least_strip"], width), w["weak_strip"], height})
		}
	}
	return out
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
			t, _ := c.job.uprightTerm(i, u, c.origin(i, u.x, side(u.right)))
			out = append(out, t)
		}
		if next, ok := c.job.corner(i); ok && c.job.Runs[i].Right.Kind == insideCorner {
			out = append(out, c.job.cornerTerm(i, next, g, c.regions[next], c.mismatch(i, next), c.weights))
		}
		for _, j := range c.joints[i] {
			if j.open || p.Boards || less(j.right, j.left) {
				continue
			}
			x := j.middle()
			out = append(append(out, g.seamTerm(i, x, c.weights)), g.weakStrips(i, j, c.weights)...)
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
	shown := func(e end, edge endEdge) bool {
		return e.Kind == exposed && !edge.taken() && or(e.Prominence, whole(1)).Sign() > 0
	}
	left, right := shown(g.run.Left, g.left), shown(g.run.Right, g.right)
	return u.end && left != right && u.right == left && u.seen().Sign() > 0 && w["whole_end"].Sign() > 0
}

// canBeWhole says whether the pattern has a flat as wide as an end leans, so that it crosses nothing.
func (g *region) canBeWhole(e endEdge) bool {
	room, flat, p := zero(), zero(), g.job.pattern
	for _, f := range slices.Concat(p.Features, p.Features) {
		if flat = sum(flat, f.Width); f.Kind != "flat" {
			flat = zero()
		}
		room = most(room, flat)
	}
	return p.pitch.Sign() == 0 || !e.leaning || !less(room, size(diff(e.head, e.foot)))
}

// exposedEnd checks that run i's only exposed end shows a whole feature, unless the job waives it.
func (c *checker) exposedEnd(i int) {
	g := c.regions[i]
	for _, u := range g.uprights(c.weights) {
		e := map[bool]endEdge{true: g.left, false: g.right}[u.right]
		if !g.wantsWhole(u, c.weights) || c.laid(i) || c.job.Runs[i].Keep.binds() || !g.canBeWhole(e) {
			continue
		}
		if t, whole := c.job.uprightTerm(i, u, c.origin(i, u.x, side(u.right))); !whole {
			c.fault(Exposed, item("runs", i)+".set_out.origin", t.amount, zero(), "inches from a whole feature at the exposed end")
		}
	}
}
