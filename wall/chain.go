package wall

import (
	"slices"

	"example.com/groovewright/fraction"
)

// option is a way to go on from a junction.
type option struct {
	sol     *solution
	residue int
	next    junction
}

// chain holds the best ways to go on from the junctions of a room. In a closed
// room whose last corner is an inside one there is a chain for each way to
// start, since the end has to meet it; and where left limits ask for residues
// there is one for each way to make these.
type chain struct {
	m        *model
	start    junction
	residue  int    // of the first stretch, where it is fixed; else -1
	butts    []bool // by run: how the left ends of the varying runs are made; nil if there are none
	ways     map[junction]*ways
	options  map[junction][]option
	couplers map[junction]*coupler
}

// ways holds the best ranks by residue: of all that follows when the junction's
// stretch has it (on), and when the stretch before had it (after).
type ways struct {
	on, after     []rank
	onOK, afterOK []bool
}

func newChain(m *model, start bool, residue int, butts []bool) *chain {
	return &chain{m: m, start: junction{run: 0, from: -1, butts: start}, residue: residue, butts: butts,
		ways: map[junction]*ways{}, options: map[junction][]option{}, couplers: map[junction]*coupler{}}
}

// free reports whether what follows the junction does not depend on the
// pattern before it.
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
				o := c.m.origin(j.run, i)
				if !s.agrees(o) {
					continue
				}
				if sol := s.solve(o); sol.ok {
					options = append(options, option{sol, i, next})
				}
			}
		}
	}
	c.options[j] = options
	return options
}

// rightEnds returns the ways to make the right end of the stretch: whether it
// butts there.
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

// tries reports whether residue i of the run is tried in the layouts of the
// chain: whether one of them has a left limit that asks for it.
func (c *chain) tries(run, i int) bool {
	return c.butts == nil || slices.ContainsFunc(c.m.limits[run][i], func(l limit) bool {
		return l.run == everyLayout || c.butts[l.run] == l.butts
	})
}

// agrees reports whether the installed panels of the stretch show the pattern
// with its origin at o.
func (s *stretch) agrees(o fraction.Length) bool {
	for _, in := range s.installed() {
		if s.room.Profile.Phase(in.Left, o) != in.LeftPhase {
			return false
		}
	}
	return true
}

// rest returns the best rank of all that follows the junction when the stretch
// before it has the given residue.
func (c *chain) rest(j junction, before int) (rank, bool) {
	if j.run == len(c.m.room.Runs) {
		if c.residue < 0 {
			return noRank, true
		}
		return c.meet(j, before, c.residue)
	}
	w := c.solve(j)
	if c.free(j) {
		before = 0
	}
	return w.after[before], w.afterOK[before]
}

// solve fills in the ways from a junction, those from later ones first.
func (c *chain) solve(j junction) *ways {
	if w, ok := c.ways[j]; ok {
		return w
	}
	n := len(c.m.residues[j.run])
	w := &ways{on: make([]rank, n), onOK: make([]bool, n)}
	c.ways[j] = w
	for _, o := range c.from(j) {
		rest, ok := c.rest(o.next, o.residue)
		if !ok {
			continue
		}
		if r := o.sol.best.plus(rest); !w.onOK[o.residue] || r.compare(w.on[o.residue]) < 0 {
			w.on[o.residue], w.onOK[o.residue] = r, true
		}
	}
	befores := len(c.m.residues[c.runBefore(j)])
	if c.free(j) {
		befores = 1
	}
	w.after, w.afterOK = make([]rank, befores), make([]bool, befores)
	for before := range befores {
		check(c.m.ctx)
		for i := range n {
			if !w.onOK[i] {
				continue
			}
			if w.afterOK[before] && w.on[i].compare(w.after[before]) >= 0 {
				continue // meeting costs nothing less than zero
			}
			r := w.on[i]
			if !c.free(j) {
				meeting, ok := c.meet(j, before, i)
				if !ok {
					continue
				}
				r = r.plus(meeting)
			}
			if !w.afterOK[before] || r.compare(w.after[before]) < 0 {
				w.after[before], w.afterOK[before] = r, true
			}
		}
	}
	return w
}
