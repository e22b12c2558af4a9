package verify

import (
	"slices"
	"strings"
)

// outlines checks every piece by itself: outline, bounding box, phase, holes, marks.
func (c *checker) outlines() {
	labels, grids := map[string]bool{}, make([]grid, len(c.regions))
	for i, g := range c.regions {
		grids[i] = g.grid(c.boards[i])
	}
	for k, piece := range c.plan.Pieces {
		path := item("pieces", k)
		c.equal(Order, path+".number", piece.Number, k+1, "pieces are not numbered from 1 in order")
		c.require(c.owner[piece.Number] != "", Order, path+".panel", piece.Panel, "a panel that lists it",
			"piece of no panel")
		if label := piece.Label; label != nil {
			c.require(!labels[*label], Order, path+".label", *label, "another", "two pieces of one label")
			labels[*label] = true
		}
		i := c.runOf(piece.Run)
		switch {
		case len(piece.Outline) < 3:
			c.fault(Outline, path+".outline", len(piece.Outline), "3 or more", "not an outline")
			continue
		case i < 0:
			c.fault(Outline, path+".run", piece.Run, "a run", "unknown run")
			continue
		}
		low, high, _ := bounds(piece.Outline)
		c.equal(Outline, path+".outline", []any{low, high}, []any{point{zero(), zero()}, point{piece.Width, piece.Height}},
			"the outline does not stand in the piece's rectangle")
		area := size(piece.Outline.area())
		c.equal(Outline, path+".outline", area, c.job.sweep.area(shape{piece.Outline}.edges()), "the outline crosses itself")
		c.equal(Phase, path+".left_phase", piece.LeftPhase, c.phase(i, piece.At.X, fromRight), "not what the set-out gives")
		c.corner(path+".outline", piece.Outline.moved(piece.At.X, piece.At.Y), grids[i])
		for h, hole := range piece.Holes {
			c.corner(item(path+".holes", h)+".outline", hole.Outline.moved(piece.At.X, piece.At.Y), grids[i])
			c.hole(item(path+".holes", h), i, piece, hole, area)
		}
		c.marks(path+".marks", i, piece)
	}
}

func (c *checker) runOf(name string) int {
	return slices.IndexFunc(c.job.Runs, func(r run) bool { return r.Name == name })
}

// hole checks that a hole of a piece is as large as its opening grown by its gap, or as the openings that
// its name joins, and lies wholly inside the outline; coverage checks its shape.
func (c *checker) hole(path string, i int, piece planPiece, got planHole, area rat) {
	if len(got.Outline) < 3 {
		c.fault(Hole, path+".outline", len(got.Outline), "3 or more", "not an outline")
		return
	}
	low, high, _ := bounds(got.Outline.moved(piece.At.X, piece.At.Y))
	var names []string
	var all []loop
	square := true
	for _, o := range c.job.Runs[i].Openings {
		parts, _ := c.job.grown(o)
		if from, to, ok := bounds(o.taped); ok && less(from.X, high.X) && less(low.X, to.X) && less(from.Y, high.Y) && less(low.Y, to.Y) {
			names, all, square = append(names, o.Name), append(all, parts...), square && o.taped.square()
		}
	}
	if want := strings.Join(names, " and "); got.Opening != want || want == "" {
		c.fault(Hole, path+".opening", got.Opening, want, "not the opening that is there")
		return
	}
	c.equal(Hole, path+".outline", c.job.sweep.area(shape{got.Outline, piece.Outline}.edges()), diff(area, size(got.Outline.area())),
		"the hole leaves its piece (area left of the piece)")
	if from, to, ok := bounds(all...); ok && square {
		c.equal(Hole, path+".outline", []any{low, high}, []any{from, to},
			"not the opening grown by its gap (corners on the run)")
	}
}

// marks checks what is drawn on a piece: its corners on the face, the same on the back, where left
// is right, and starter holes that stay in the waste.
func (c *checker) marks(path string, i int, piece planPiece) {
	m := piece.Marks
	c.drawn(path+".face", m.Face, piece.Outline)
	c.drawn(path+".back", m.Back, piece.mirrored(piece.Outline...))
	c.equal(Marks, path+".holes", len(m.Holes), len(piece.Holes), "not the holes of the piece")
	for h := range min(len(m.Holes), len(piece.Holes)) {
		at := item(path+".holes", h)
		c.drawn(at+".face", m.Holes[h].Face, piece.Holes[h].Outline)
		c.drawn(at+".back", m.Holes[h].Back, piece.mirrored(piece.Holes[h].Outline...))
	}
	halves := make([]rat, len(m.Arcs)) // of the chords, with the gaps: the circles go on beyond
	for k, arc := range m.Arcs {
		at := item(path+".arcs", k)
		c.drawn(at+".back", loop{arc.Back}, piece.mirrored(arc.Centre))
		halves[k] = arc.Radius
		for _, o := range c.job.Runs[i].Openings {
			if _, gap := c.job.grown(o); o.Name == arc.Opening && o.radius != nil {
				if from, to, ok := bounds(o.taped); ok {
					halves[k] = sum(half(diff(to.X, from.X)), gap)
				}
				c.drawn(at+".centre", loop{arc.Centre}, loop{o.centre}.moved(negative(piece.At.X), negative(piece.At.Y)))
				c.equal(Marks, at+".radius", arc.Radius, sum(o.radius, gap), "not the opening's radius and its gap")
			}
		}
	}
	drilled := map[int]int{}
	for _, step := range m.Order {
		for _, k := range step.Drill {
			drilled[k]++
			c.require(k >= 0 && k < len(m.Drill), Marks, path+".order", k, len(m.Drill), "no such starter hole")
		}
	}
	for k, d := range m.Drill {
		at := item(path+".drill", k)
		c.equal(Marks, at, drilled[k], 1, "the order of cuts drills the starter hole other than once")
		c.drawn(at+".back", loop{d.Back}, piece.mirrored(d.At))
		c.require(d.Diameter.Sign() > 0 && within(d.At.X, zero(), piece.Width) && within(d.At.Y, zero(), piece.Height),
			Marks, at, []any{d.At, d.Diameter}, "a hole within the piece's rectangle", "no such starter hole")
		edges, reach := piece.shape().edges(), square(half(d.Diameter))
		for _, s := range c.job.sweep.spans(edges, d.At.X, fromRight) {
			c.require(!within(d.At.Y, s.low.y, s.high.y), Marks, at+".at", d.At, "a place in the waste",
				"the starter hole is in the piece")
		}
		for n, arc := range m.Arcs {
			if less(square(halves[n]), square(diff(d.At.X, arc.Centre.X))) {
				continue
			}
			off, limit := apart(d.At, arc.Centre), square(diff(arc.Radius, half(d.Diameter)))
			rise, springs := diff(d.At.Y, arc.Centre.Y), diff(arc.Springs, arc.Centre.Y)
			beside := less(zero(), rise) && less(times(square(springs), off), times(square(rise), square(arc.Radius))) // what is nearest is over the springing
			outside := square(sum(arc.Radius, times(whole(4), c.job.tape)))                                            // where the outline's corners may be
			c.require(!beside || !less(off, outside) || !less(limit, off), Marks, at+".at", off, limit,
				"the starter hole cuts across the arc (squares of distances from its centre)")
		}
		for _, l := range piece.shape() {
			for n, p := range l {
				if near := square2(d.At, p, l[(n+1)%len(l)]); less(near, reach) {
					c.fault(Marks, at+".diameter", near, reach,
						"the starter hole cuts into the piece (squares of the distance and the radius)")
				}
			}
		}
	}
}

// drawn reports marks that are not the corners that they stand for.
func (c *checker) drawn(path string, got, want loop) {
	c.require(slices.EqualFunc(got, want, point.is), Marks, path, got, want, "not where the piece has its corners")
}

// mirrored returns points of a piece as they are seen from the back.
func (p planPiece) mirrored(face ...point) loop {
	var back loop
	for _, q := range face {
		back = append(back, point{diff(p.Width, q.X), q.Y})
	}
	return back
}

// square2 returns the square of the distance of c from the straight line between p and q.
func square2(c, p, q point) rat {
	if p.is(q) {
		return apart(c, p)
	}
	dot := sum(times(diff(c.X, p.X), diff(q.X, p.X)), times(diff(c.Y, p.Y), diff(q.Y, p.Y)))
	t := least(whole(1), most(zero(), over(dot, apart(p, q))))
	return apart(c, along(p, q, t))
}

// numbering checks that the pieces of run i are numbered in order of fitting, that panels and
// pieces know each other, and that each panel's pieces fill its width.
func (c *checker) numbering(i int) {
	r, last := c.plan.Runs[i], 0
	for n := range r.Panels {
		at := n
		if r.SetOut.Direction == "left" {
			at = len(r.Panels) - 1 - n
		}
		panel, path := r.Panels[at], item(item("runs", i)+".panels", at)
		if len(panel.Pieces) == 0 {
			c.fault(Order, path+".pieces", "none", "some", "a panel without pieces")
			continue
		}
		left, right := panel.Right, panel.Left
		for _, number := range panel.Pieces {
			k, known := c.pieces[number]
			if !known || c.owner[number] != "" {
				c.fault(Order, path+".pieces", number, "a piece of its own", "piece unknown, or of %q too", c.owner[number])
				continue
			}
			c.owner[number] = path
			piece := c.plan.Pieces[k]
			c.require(piece.Run == r.Name && piece.Panel == panel.Number, Order, item("pieces", k)+".panel", piece.Panel,
				panel.Number, "not the panel that lists it")
			c.require(number >= last, Order, path+".pieces", number, last, "not numbered in order of fitting")
			last = max(last, number)
			left, right = least(left, piece.At.X), most(right, sum(piece.At.X, piece.Width))
		}
		c.equal(Panels, path+".left", panel.Left, left, "the pieces do not begin at the panel's left")
		c.equal(Panels, path+".right", panel.Right, right, "the pieces do not end at the panel's right")
	}
}
