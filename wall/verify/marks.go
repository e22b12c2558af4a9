package verify

import "slices"

// grid is where the corners of a run's pieces may stand besides on the tape's marks: the lines that
// were taped, less gaps. The keys are texts of lengths.
type grid struct{ xs, ys map[string]bool }

// grid collects them.
func (g *region) grid(boards []board) grid {
	out := grid{map[string]bool{}, map[string]bool{}}
	add := func(to map[string]bool, of ...rat) {
		for _, n := range of {
			to[text(n)] = true
		}
	}
	add(out.xs, g.left.x, g.left.stop, g.right.x, g.right.stop)
	for _, p := range g.taped {
		add(out.xs, p.X)
		add(out.ys, p.Y)
	}
	for _, s := range g.steps {
		add(out.xs, s.x)
	}
	add(out.xs, g.moved...)
	for _, o := range g.run.Openings {
		_, gap := g.job.grown(o)
		for _, p := range o.taped {
			add(out.xs, diff(p.X, gap), p.X, sum(p.X, gap))
			add(out.ys, diff(p.Y, gap), p.Y, sum(p.Y, gap))
		}
	}
	for _, b := range boards {
		add(out.xs, b.left, b.right)
	}
	return out
}

// corner checks that each corner of a piece is on taped lines, edges of panels or marks of the
// tape, and that no edge between two computed corners is too short to saw.
func (c *checker) corner(path string, l loop, grid grid) {
	mark := c.job.tape
	on := func(n rat, taped map[string]bool) bool { return taped[text(n)] || mod(n, mark).Sign() == 0 }
	computed := make([]bool, len(l))
	for k, p := range l {
		computed[k] = !grid.xs[text(p.X)] || !grid.ys[text(p.Y)]
		if !on(p.X, grid.xs) || !on(p.Y, grid.ys) {
			c.fault(Mark, item(path, k), p, "on the marks of the tape", "a corner that no tape gave and no mark shows (on the run)")
		}
	}
	for k, p := range l {
		next := (k + 1) % len(l)
		before, after := l[(k+len(l)-1)%len(l)], l[(next+1)%len(l)]
		if q := l[next]; same(before.X, p.X) && same(q.X, after.X) {
			continue // the end of a tab, whose sides are upright
		} else if computed[k] && computed[next] && !less(square(mark), apart(p, q)) {
			c.fault(Mark, item(path, k), []any{p, q}, "more than a mark apart", "an edge that no saw can make (on the run)")
		}
	}
}

// slack returns what is within snap of sloped edges, and of level ones that end at those, where a corner was
// computed: there a piece may be larger than its space, or a corner of a nearly straight line left out.
func (g *region) slack() (sloped, level [][]edge) {
	for _, loop := range append([][]edge{g.outline}, g.taken...) {
		for _, e := range loop {
			g.spend(len(loop))
			computed := slices.ContainsFunc(loop, func(f edge) bool {
				return f.sloped && (e.a.is(f.a) || e.a.is(f.b) || e.b.is(f.a) || e.b.is(f.b))
			})
			if near := (shape{swept(e.a, e.b, g.job.snap)}).edges(); e.sloped {
				sloped = append(sloped, near)
			} else if computed {
				level = append(level, near)
			}
		}
	}
	return sloped, level
}
