package verify

import (
	"fmt"
	"slices"
)

// outlines checks every piece by itself: outline, bounding box, phase, holes.
func (c *checker) outlines() {
	for k, piece := range c.plan.Pieces {
		path := fmt.Sprintf("pieces[%d]", k)
		outline := loopOf(piece.Outline)
		if len(outline) < 3 {
			c.fault("outline", path+".outline", fmt.Sprint(len(outline)), "3 or more", "not an outline")
			continue
		}
		low, high := outline.bounds()
		c.equal("outline", path+".outline", low.x, zero(), "leftmost point is not at the box's left")
		c.equal("outline", path+".outline", low.y, zero(), "lowest point is not at the box's bottom")
		c.equal("outline", path+".width", piece.Width.r(), high.x, "not the outline's width")
		c.equal("outline", path+".height", piece.Height.r(), high.y, "not the outline's height")
		if inside := area(shape{outline}.edges()); !same(inside, size(outline.area())) {
			c.fault("outline", path+".outline", text(size(outline.area())), text(inside), "the outline crosses itself")
		}
		i := c.runOf(piece.Run)
		if i < 0 {
			c.fault("outline", path+".run", piece.Run, "a run", "unknown run")
			continue
		}
		at := piece.At.point()
		c.equal("phase", path+".left_phase", piece.LeftPhase.r(), c.phase(i, at.x, fromRight), "not what the set-out gives")
		c.holes(i, k)
	}
}

func (c *checker) runOf(name string) int {
	return slices.IndexFunc(c.job.runs, func(r run) bool { return r.name == name })
}

// area returns the area of the shape of some edges.
func area(edges []edge) rat {
	total := zero()
	xs := events(edges)
	for k := 0; k+1 < len(xs); k++ {
		total.Add(total, times(diff(xs[k+1], xs[k]), length(spans(edges, middle(xs[k], xs[k+1]), fromRight))))
	}
	return total
}

// holes checks that each hole of a piece is its opening grown by its gap, and
// lies wholly inside the outline.
func (c *checker) holes(i, k int) {
	piece := c.plan.Pieces[k]
	at := piece.At.point()
	outline := loopOf(piece.Outline)
	for h, hole := range piece.Holes {
		path := fmt.Sprintf("pieces[%d].holes[%d]", k, h)
		n := slices.IndexFunc(c.job.runs[i].openings, func(o opening) bool { return o.name == hole.Opening })
		if n < 0 {
			c.fault("hole", path+".opening", hole.Opening, "an opening of the run", "unknown opening")
			continue
		}
		got := loopOf(hole.Outline)
		if len(got) < 3 {
			c.fault("hole", path+".outline", fmt.Sprint(len(got)), "3 or more", "not an outline")
			continue
		}
		want := c.regions[i].grown[n].moved(negative(at.x), negative(at.y))
		if c.regions[i].loose[n] {
			continue // how such an opening grows is not settled; coverage bounds it
		}
		if apart := area(shape{got, want}.edges()); apart.Sign() != 0 {
			c.fault("hole", path+".outline", text(size(got.area())), text(size(want.area())), "not the opening grown by its gap (areas of the two; %s differs)", text(apart))
		}
		if out := area(shape{got, outline}.edges()); !same(out, diff(size(outline.area()), size(got.area()))) {
			c.fault("hole", path+".outline", text(out), text(diff(size(outline.area()), size(got.area()))), "the hole leaves its piece (area left of the piece)")
		}
	}
}
