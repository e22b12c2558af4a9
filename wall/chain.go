package wall

import "slices"

// way is a way to go on from a junction, with the pattern at any residue.
type way struct {
	*program
	next junction
}

// chain holds the best ways to go on from the junctions of a room. In a closed room whose last
// corner is an inside one there is a chain for each way to start, since the end has to meet it; and
// where left limits ask for residues there is one for each way to make these.
type chain struct {
	search  *search
	start   junction
	residue int    // of the first stretch, where it is fixed; else -1
	butts   []bool // by run: how the left ends of the varying runs are made; nil if there are none
	solved  map[junction]*ways
}

// ways are those that go on from a junction, with the best costs by residue: of all that follows
// when the junction's stretch has it (on), and when the stretch before had it (after).
type ways struct {
	all       []way
	on, after []cost
}

func newChain(s *search, start bool, residue int, butts []bool) *chain {
	return &chain{search: s, start: junction{run: 0, from: -1, butts: start, mixed: !s.m.ring()}, residue: residue, butts: butts, solved: map[junction]*ways{}}
}

// free reports whether what follows the junction does not depend on the pattern before it.
func (c *chain) free(j junction) bool {
	m := c.search.m
	return j.from < 0 && (j.run == 0 || j.run < len(m.room.Runs) && !m.coupled(j.run-1))
}

// width returns how many residues a stretch from the junction may have.
func (c *chain) width(j junction) int { return len(c.search.m.residues[j.run]) }

// from returns the ways to go on from the junction, in the order that breaks ties.
func (c *chain) from(j junction) (all []way) {
	m := c.search.m
	last := len(m.room.Runs[j.run].Breaks)
	for to := last; to > j.from && to >= 0; to-- {
		for _, butts := range c.rightEnds(j, to == last) {
			s, err := m.stretch(j.run, j.from, to, fitting{buttsLeft: j.butts, buttsRight: butts})
			if err != nil {
				continue // this way of fitting leaves nothing, or meets an installed panel
			}
			next := junction{run: j.run, from: to, butts: j.butts, mixed: j.mixed}
			if to == last {
				left := m.sharesInside(j.run) && !butts
				next = junction{run: j.run + 1, from: -1, butts: left, mixed: j.mixed || left != c.start.butts}
			}
			if next.run == len(m.room.Runs) && !next.mixed {
				continue // each run would have to be fitted before the one that it butts against
			}
			all = append(all, way{c.search.program(s), next})
		}
	}
	return all
}

// rightEnds returns the ways to make the right end of the stretch: whether it butts there.
func (c *chain) rightEnds(j junction, atEnd bool) []bool {
	m := c.search.m
	switch {
	case !atEnd || !m.sharesInside(j.run):
		return []bool{false}
	case j.run == len(m.room.Runs)-1:
		return []bool{!c.start.butts}
	case slices.Contains(m.varying, j.run+1):
		return []bool{!c.butts[j.run+1]}
	}
	return []bool{false, true}
}

// tries reports whether the chain starts with residue i at the junction, where it is fixed, and a
// left limit in the layouts of the chain asks for it.
func (c *chain) tries(j junction, i int) bool {
	if c.residue >= 0 && j == c.start && i != c.residue {
		return false
	}
	return c.butts == nil || slices.ContainsFunc(c.search.m.limits[j.run][i], func(l limit) bool {
		return l.run == everyLayout || c.butts[l.run] == l.butts
	})
}

// coupler returns what the meeting of two residues at the junction costs.
func (c *chain) coupler(j junction) *coupler {
	if c.free(j) {
		return nil // nothing
	}
	return c.search.m.coupler(j)
}

// rest returns the best cost of all that follows the junction after a stretch of residue before.
func (c *chain) rest(j junction, before int) cost {
	switch {
	case j.run == len(c.search.m.room.Runs) && c.residue < 0:
		return zeroCost
	case j.run == len(c.search.m.room.Runs):
		return c.coupler(j).meet(before, c.residue)
	case c.free(j):
		before = 0
	}
	return c.solve(j).after[before]
}

// solve fills in the ways from a junction, those from later ones first.
func (c *chain) solve(j junction) *ways {
	if w, ok := c.solved[j]; ok {
		return w
	}
	m, befores := c.search.m, 1
	if !c.free(j) {
		befores = len(m.residues[m.runBefore(j)])
	}
	w := &ways{all: c.from(j), on: slices.Repeat([]cost{infinite}, c.width(j)), after: slices.Repeat([]cost{infinite}, befores)}
	c.solved[j] = w
	for i := range w.on {
		if !c.tries(j, i) {
			continue
		}
		for _, o := range w.all {
			if best := o.best(i); best.feasible() {
				if all := best.plus(c.rest(o.next, i)); all.compare(&w.on[i]) < 0 {
					w.on[i] = all
				}
			}
		}
	}
	order, coupler := w.ascending(), c.coupler(j)
	for before := range w.after {
		for _, i := range order {
			if w.on[i].compare(&w.after[before]) >= 0 {
				break // meeting costs nothing less than zero
			}
			if all := w.on[i].plus(coupler.meet(before, i)); all.compare(&w.after[before]) < 0 {
				w.after[before] = all
			}
		}
	}
	return w
}

// ascending returns the residues with which the ways go on at all, that of least cost first.
func (w *ways) ascending() (order []int) {
	for i := range w.on {
		if w.on[i].feasible() {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return w.on[a].compare(&w.on[b]) })
	return order
}
