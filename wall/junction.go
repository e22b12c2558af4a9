package wall

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// junction is a place where a stretch starts: the left end of a run (from < 0) or a break that is
// used. butts says whether the run butts at its left end. The run after the last stands for the
// corner where a closed room closes. mixed is false in a ring as long as all left ends so far butt, or none does.
type junction struct {
	run, from    int
	butts, mixed bool
}

// coupler has what the meeting of two patterns at a junction costs.
type coupler struct {
	fixed  cost // of the joint itself, infinite where there can be none
	afresh bool // patterns that agree do not meet here: they run on

	// The blemish of a mismatch is a distance round a circle, in grains: that between the places of
	// two residues, of the stretch before and of the one that starts here. Where places are rounded,
	// slack is by how much the distance may be too great.
	before, here  []int64
	circumference int64
	slack         int64
}

// makeCouplers makes the couplers of the left end and the breaks of run r.
func (m *Model) makeCouplers(r int) {
	n := len(m.room.Runs)
	for _, butts := range []bool{false, true} {
		for k := range m.room.Runs[r].Breaks {
			j := junction{run: r, from: k, butts: butts}
			m.couplers[j] = m.newCoupler(j)
		}
		if r > 0 || m.room.Closed {
			j := junction{run: r, from: -1, butts: butts}
			if r == 0 {
				j.run = n
			}
			m.couplers[j] = m.newCoupler(j)
		}
	}
}

// coupler returns what the meeting of two residues at the junction costs.
func (m *Model) coupler(j junction) *coupler {
	j.mixed = false
	return m.couplers[j]
}

func (m *Model) newCoupler(j junction) *coupler {
	k := &coupler{fixed: zeroCost}
	var perInch fraction.Ratio // of mismatch
	var err error
	switch {
	case j.from >= 0:
		k.afresh = true
		var terms []Blemish
		if terms, err = m.breakTerms(j.run, j.from, inch); err == nil {
			perInch = terms[0].cost()
			for _, t := range terms[1:] { // of the seam
				k.fixed.blemish = total(k.fixed.blemish, inGrains(t.cost()))
				if t.Kind == Seam {
					k.fixed.broken = int32(len(m.room.BoxesAt(j.run, t.At)))
				}
			}
		}
	case m.sharesInside(j.run - 1):
		var term Blemish
		if term, err = m.cornerTerm(j.run-1, j.butts, inch); err == nil {
			perInch = term.cost()
		}
	}
	if err != nil {
		k.fixed = infinite
	}
	place := func(u fraction.Length) int64 {
		exact := perInch.Mul(u.Over(inch))
		if grains%exact.Den() != 0 {
			k.slack = 1
		}
		return inGrains(exact)
	}
	before := m.residues[m.runBefore(j)]
	k.before, k.here = make([]int64, len(before)), make([]int64, len(m.residues[j.run%len(m.residues)]))
	if perInch.IsZero() {
		return k
	}
	k.circumference = place(m.room.Profile.Pitch())
	for i := range k.before {
		k.before[i] = place(m.carriedTo(j, i))
	}
	for i, u := range m.residues[j.run%len(m.residues)] {
		k.here[i] = place(u)
	}
	return k
}

// meet returns the cost of residue i following residue before at the junction.
func (k *coupler) meet(before, i int) cost {
	if k == nil {
		return zeroCost
	}
	if k.afresh && before == i {
		return infinite
	}
	apart := k.before[before] - k.here[i]
	if apart < 0 {
		apart = -apart
	}
	all := k.fixed
	all.blemish = total(all.blemish, max(0, min(apart, k.circumference-apart)-k.slack))
	return all
}

// mismatch returns how far the patterns of two residues are apart, in inches round the repeat.
func (m *Model) mismatch(j junction, before, i int) fraction.Length {
	here, pitch := m.residues[j.run%len(m.residues)][i], m.room.Profile.Pitch()
	if pitch.IsZero() {
		return pitch // there is no pattern to miss
	}
	return fraction.Circular(m.carriedTo(j, before), here, pitch)
}

// carriedTo returns residue i of the stretch before the junction as one of the stretch that starts
// there: in [0, pitch).
func (m *Model) carriedTo(j junction, i int) fraction.Length {
	u := m.residues[m.runBefore(j)][i]
	if n := len(m.room.Runs); j.run == n {
		u = groove.Modulo(u.Add(m.shift[n]), m.room.Profile.Pitch())
	}
	return u
}

// runBefore returns the run of the stretch that ends at the junction.
func (m *Model) runBefore(j junction) int {
	if j.from >= 0 {
		return j.run
	}
	return max(j.run-1, 0)
}
