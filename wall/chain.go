package wall

import (
	"slices"
)

// option is a way to go on from a junction.
type option struct {
	sol     *solution
	residue int
	next    junction
}

// chain holds the best ways to go on from the junctions of a room. In a closed room whose last
// corner is an inside one there is a chain for each way to start, since the end has to meet it; and
// where left limits ask for residues there is one for each way to make these.
type chain struct {
	m        *model
	start    junction
	residue  int    // of the first stretch, where it is fixed; else -1
	butts    []bool // by run: how the left ends of the varying runs are made; nil if there are none
	ways     map[junction]*ways
	options  map[junction][]option
	couplers map[junction]*coupler
}

// ways holds the best costs by residue: of all that follows when the junction's stretch has it
// (on), and when the stretch before had it (after).
type ways struct{ on, after []cost }

func newChain(m *model, start bool, residue int, butts []bool) *chain {
	return &chain{m: m, start: junction{run: 0, from: -1, butts: start}, residue: residue, butts: butts,
		ways: map[junction]*ways{}, options: map[junction][]option{}, couplers: map[junction]*coupler{}}
}

// free reports whether what follows the junction does not depend on the pattern before it.
func (c *chain) free(j junction) bool {
	return j.from < 0 && (j.run == 0 || j.run < len(c.m.room.Runs) && !c.m.coupled(j.run-1))
}

// from returns the options at the junction, in the order that breaks ties.
func (c *chain) from(j junction) []option {
	if options, ok := c.options[j]; ok {
		return options
	}
	var options []option
	run := &c.m.room.Runs[j.run]
	last := len(run.Breaks)
	for to := last; to > j.from && to >= 0; to-- {
		for _, butts := range c.rightEnds(j, to == last) {
			s, err := c.m.stretch(j.run, j.from, to, fitting{buttsLeft: j.butts, buttsRight: butts})
			if err != nil {
				continue // this way of fitting leaves nothing, or meets an installed panel
			}
			next := junction{run: j.run, from: to, butts: j.butts}
			if to == last {
				next = junction{run: j.run + 1, from: -1, butts: c.m.sharesInside(j.run) && !butts}
			}
			for i := range c.m.residues[j.run] {
				if c.residue >= 0 && j == c.start && i != c.residue || !c.tries(j.run, i) {
					continue
				}
				if o := c.m.origin(j.run, i); s.agrees(o) && s.solve(o).best.feasible() {
					options = append(options, option{s.solve(o), i, next})
				}
			}
		}
	}
	c.options[j] = options
	return options
}

// rightEnds returns the ways to make the right end of the stretch: whether it butts there.
func (c *chain) rightEnds(j junction, atEnd bool) []bool {
	switch {
	case !atEnd || !c.m.sharesInside(j.run):
		return []bool{false}
	case j.run == len(c.m.room.Runs)-1:
		return []bool{!c.start.butts}
	case slices.Contains(c.m.varying, j.run+1):
		return []bool{!c.butts[j.run+1]}
	}
	return []bool{false, true}
}

// tries reports whether a left limit in the layouts of the chain asks for residue i of the run.
func (c *chain) tries(run, i int) bool {
	return c.butts == nil || slices.ContainsFunc(c.m.limits[run][i], func(l limit) bool {
		return l.run == everyLayout || c.butts[l.run] == l.butts
	})
}

// rest returns the best cost of all that follows the junction after a stretch of residue before.
func (c *chain) rest(j junction, before int) cost {
	switch {
	case j.run == len(c.m.room.Runs) && c.residue < 0:
		return zeroCost
	case j.run == len(c.m.room.Runs):
		return c.meet(j, before, c.residue)
	case c.free(j):
		before = 0
	}
	return c.solve(j).after[before]
}

// solve fills in the ways from a junction, those from later ones first.
func (c *chain) solve(j junction) *ways {
	if w, ok := c.ways[j]; ok {
		return w
	}
	befores := 1
	if !c.free(j) {
		befores = len(c.m.residues[c.runBefore(j)])
	}
	w := &ways{on: slices.Repeat([]cost{infinite}, len(c.m.residues[j.run])), after: slices.Repeat([]cost{infinite}, befores)}
	c.ways[j] = w
	for _, o := range c.from(j) {
		if all := o.sol.best.plus(c.rest(o.next, o.residue)); all.compare(&w.on[o.residue]) < 0 {
			w.on[o.residue] = all
		}
	}
	for before := range w.after {
		check(c.m.ctx)
		for i := range w.on {
			if w.on[i].compare(&w.after[before]) >= 0 {
				continue // meeting costs nothing less than zero
			}
			if all := w.on[i].plus(c.meet(j, before, i)); all.compare(&w.after[before]) < 0 {
				w.after[before] = all
			}
		}
	}
	return w
}
