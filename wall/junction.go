package wall

import "example.com/groovewright/fraction"

// junction is a place where a stretch starts: the left end of a run (from < 0) or a break that is
// used. butts says whether the run butts at its left end.
type junction struct {
	run, from int
	butts     bool
}

// coupler has what the meeting of two patterns at a junction costs.
type coupler struct {
	perInch fraction.Ratio // of mismatch
	fixed   cost           // of the joint itself, infinite where there can be none
	afresh  bool           // patterns that agree do not meet here: they run on
}

// coupler returns the coupler of the junction, which may be the corner where a closed room closes.
func (c *chain) coupler(j junction) *coupler {
	if k, ok := c.couplers[j]; ok {
		return k
	}
	k := &coupler{fixed: zeroCost}
	c.couplers[j] = k
	var err error
	switch {
	case j.from >= 0:
		k.afresh = true
		var terms []Blemish
		if terms, err = c.m.breakTerms(j.run, j.from, inch); err == nil {
			k.perInch = terms[0].cost()
			if !c.m.room.Profile.Boards {
				k.fixed.blemish = terms[1].cost()
			}
		}
	case j.run > 0 && c.m.sharesInside(j.run-1) && (j.run < len(c.m.room.Runs) || c.residue >= 0):
		var term Blemish
		if term, err = c.m.cornerTerm(j.run-1, j.butts, inch); err == nil {
			k.perInch = term.cost()
		}
	}
	if err != nil {
		k.fixed = infinite
	}
	return k
}

// meet returns the cost of residue i following residue before at the junction.
func (c *chain) meet(j junction, before, i int) cost {
	if c.free(j) {
		return zeroCost
	}
	k := c.coupler(j)
	if k.afresh && before == i {
		return infinite
	}
	all := k.fixed
	if !k.perInch.IsZero() {
		all.blemish = all.blemish.Add(k.perInch.Mul(c.mismatch(j, before, i).Over(inch)))
	}
	return all
}

// mismatch returns how far the patterns of two residues are apart, in inches round the repeat.
func (c *chain) mismatch(j junction, before, i int) fraction.Length {
	u, next := c.m.residues[c.runBefore(j)][before], j.run
	if next == len(c.m.room.Runs) {
		u, next = u.Add(c.m.shift[next]), 0
	}
	pitch := c.m.room.Profile.Pitch()
	if pitch.IsZero() {
		return pitch // there is no pattern to miss
	}
	return fraction.Circular(u, c.m.residues[next][i], pitch)
}

// runBefore returns the run of the stretch that ends at the junction.
func (c *chain) runBefore(j junction) int {
	if j.from >= 0 {
		return j.run
	}
	return max(j.run-1, 0)
}
