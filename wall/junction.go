package wall

import "example.com/groovewright/fraction"

// junction is a place where a stretch starts: the left end of a run (from < 0)
// or a break that is used. butts says whether the run butts at its left end.
type junction struct {
	run, from int
	butts     bool
}

// coupler ranks the meeting of two patterns at a junction.
type coupler struct {
	perInch fraction.Ratio // what an inch of mismatch costs
	fixed   fraction.Ratio // what the joint costs all the same
	allowed bool           // whether patterns that agree may meet here
	none    bool
}

// coupler returns the coupler of the junction; for the end of a closed room,
// that of the corner where it closes.
func (c *chain) coupler(j junction) *coupler {
	if k, ok := c.couplers[j]; ok {
		return k
	}
	k := &coupler{allowed: true}
	c.couplers[j] = k
	one := fraction.Inches(1)
	switch {
	case j.from >= 0:
		terms, err := c.m.breakTerms(j.run, j.from, one)
		if err != nil {
			k.none = true
			break
		}
		k.perInch, k.fixed, k.allowed = terms[0].Cost(), terms[1].Cost(), false
		if c.m.room.Profile.Boards {
			k.fixed = fraction.Ratio{}
		}
	case j.run > 0 && c.m.sharesInside(j.run-1) && (j.run < len(c.m.room.Runs) || c.residue >= 0):
		term, err := c.m.cornerTerm(j.run-1, j.butts, one)
		if err != nil {
			k.none = true
			break
		}
		k.perInch = term.Cost()
	}
	return k
}

// meet returns the rank of residue i following residue before at the junction.
func (c *chain) meet(j junction, before, i int) (rank, bool) {
	k := c.coupler(j)
	r := noRank
	if k.none || !k.allowed && before == i {
		return r, false
	}
	if !k.perInch.IsZero() {
		r.blemish = k.perInch.Mul(c.mismatch(j, before, i).Over(inch)).Add(k.fixed)
	} else {
		r.blemish = k.fixed
	}
	return r, true
}

// mismatch returns how far the patterns of two residues are apart, in inches
// round the repeat.
func (c *chain) mismatch(j junction, before, i int) fraction.Length {
	if j.run == len(c.m.room.Runs) {
		u := c.m.residues[j.run-1][before].Add(c.m.shift[j.run])
		return fraction.Circular(u, c.m.residues[0][i], c.m.room.Profile.Pitch())
	}
	return fraction.Circular(c.m.residues[c.runBefore(j)][before], c.m.residues[j.run][i], c.m.room.Profile.Pitch())
}

// runBefore returns the run of the stretch that ends at the junction.
func (c *chain) runBefore(j junction) int {
	if j.from >= 0 {
		return j.run
	}
	return max(j.run-1, 0)
}
