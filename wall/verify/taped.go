package verify

import (
	"slices"
	"sort"
)

// taped takes from the plan what the job gives by distances from known points, and arched heads,
// once they are near enough to what was taped.
func (c *checker) taped() {
	for i := range c.job.Runs {
		r := &c.job.Runs[i]
		for k := range r.Heights {
			if h := &r.Heights[k]; h.Taped != nil {
				at := c.solved(item(item("runs", i)+".heights", k)+".taped", *h.Taped, r.Name, "", k+1)
				h.At, h.Top = at.X, at.Y
			}
		}
		for k := range r.Openings {
			o, path := &r.Openings[k], item(item("runs", i)+".openings", k)
			if p := o.Points; p != nil {
				for n, corner := range p.Corners {
					if len(corner.Bases) == 0 {
						corner.Bases = p.Bases
					}
					if corner.Side == "" {
						corner.Side = p.Side
					}
					o.taped = append(o.taped, c.solved(item(path+".points.corners", n), corner, r.Name, o.Name, n+1))
				}
			}
			if len(o.taped) > 2 && o.Rise.Sign() > 0 {
				var head loop
				if k < len(c.plan.Runs[i].Openings) {
					head = c.plan.Runs[i].Openings[k].Outline
				}
				o.taped = c.arched(path+".outline", o, head)
			}
			o.taped = o.taped.simple()
		}
	}
}

// solved returns the plan's point for distances from known points. It must be said to be the one
// that it is, lie on the right side of the bases, within a mark of two distances, and off the
// others by no more than the plan says.
func (c *checker) solved(path string, b bearing, run, opening string, number int) point {
	k := slices.IndexFunc(c.plan.Taped, func(t taped) bool { return t.Path == path })
	if k < 0 || len(b.Bases) < 2 || len(b.Distances) != len(b.Bases) {
		c.fault(Taped, "taped", "nothing", path, "no point for these distances")
		return point{zero(), zero()}
	}
	got, first, second := c.plan.Taped[k], b.Bases[0], b.Bases[1]
	c.equal(Taped, item("taped", k), []any{got.Run, got.Opening, got.Number}, []any{run, opening, number},
		"not this point's run, opening, number")
	if (turn(first, second, got.At) > 0) != (b.Side == "left") {
		c.fault(Taped, item("taped", k)+".at", got.At, b.Side, "on the other side of the bases")
	}
	near := 0
	for n, base := range b.Bases {
		if about(apart(got.At, base), b.Distances[n], c.job.tape) {
			near++
		}
		c.require(about(apart(got.At, base), b.Distances[n], sum(got.Closing, got.Within, ratio(1, 1024))), Taped,
			item("taped", k)+".closing", got.Closing, "more", "off distances[%d] by more than that", n)
	}
	c.require(near >= 2, Taped, item("taped", k)+".at", got.At, "within a mark",
		"agrees with fewer than two of the distances")
	return got.At
}

// about says whether the root of squared lies within slack of d.
func about(squared, d, slack rat) bool {
	low := most(zero(), diff(d, slack))
	return within(squared, square(low), square(sum(d, slack)))
}

// arched returns the outline of an opening with an arched head, as the plan has it: its own
// corners, and over the upper two points on the arc or up to two marks outside, none of it inside.
func (c *checker) arched(path string, o *opening, head loop) loop {
	corners, rise := o.taped, o.Rise
	if len(head) < 3 {
		c.fault(Taped, path, "nothing", "an arched head", "no outline")
		return corners
	}
	upper := slices.Clone(corners)
	sort.SliceStable(upper, func(i, j int) bool { return less(upper[j].Y, upper[i].Y) })
	springs, wide := upper[0].Y, half(size(diff(upper[0].X, upper[1].X)))
	radius := over(sum(square(wide), square(rise)), times(whole(2), rise))
	centre := point{middle(upper[0].X, upper[1].X), diff(sum(springs, rise), radius)}
	o.radius, o.centre = radius, centre
	far := square(sum(radius, c.job.tape, c.job.tape))
	for k, p := range head {
		q := head[(k+1)%len(head)]
		own := slices.ContainsFunc(corners, p.is)
		if !own && (less(p.Y, springs) || less(far, apart(p, centre))) ||
			!(own && slices.ContainsFunc(corners, q.is)) && less(square2(centre, p, q), square(radius)) {
			c.fault(Taped, item(path, k), p, "two marks outside of the arc or less",
				"neither a corner nor on the arched head")
		}
	}
	for _, p := range corners {
		c.require(slices.ContainsFunc(head, p.is) || !less(p.Y, upper[1].Y), Taped, path, "nothing", p,
			"a corner of the opening is missing")
	}
	return head
}
