package line

import (
	"cmp"
	"math"
	"slices"
	"sort"
)

// dive rounds the linear programme: it fixes the whole parts of its solution, then one pattern
// after the other, solving the programme for the rest each time, and turns back where the rest
// needs too many bins. It proves nothing (a depth-first form of G. Belov and G. Scheithauer's
// residual rounding, "A branch-and-cut-and-price algorithm for one-dimensional stock cutting",
// European Journal of Operational Research 171, 2006).
type dive struct {
	columns *columns
	need    []int
	fixed   []pattern
	found   []pattern
	fails   int    // dead ends so far
	noise   uint64 // state of the generator that varies the order, 0 to leave it
}

const (
	width    = 3    // patterns tried at one level
	patience = 20   // dead ends after which a dive is given up
	small    = 12   // bins that are left to the complete search
	finish   = 300  // nodes of that search
	nearly   = 1e-3 // of a bin: what the programme's perturbation may amount to
	little   = 1e-2 // of a bin: levels below are not tried
)

// dive looks for a packing of the needed items into so many bins. Rounds differ in the order in
// which patterns of similar levels are tried.
func (c *columns) dive(need []int, bins int, round int) []pattern {
	d := &dive{columns: c, need: slices.Clone(need), noise: uint64(round)}
	d.descend(bins)
	return d.found
}

// descend packs the needed items into so many bins, or restores the state.
func (d *dive) descend(bins int) bool {
	mark := len(d.fixed)
	if d.settle(bins) || d.deepen(bins) {
		return true
	}
	d.undo(mark)
	d.fails++
	return false
}

// deepen solves the programme, fixes the whole parts, and tries the patterns of the greatest
// levels.
func (d *dive) deepen(bins int) bool {
	value, _ := d.columns.solve(d.need, float64(bins))
	if value > float64(bins)+nearly || d.tired() {
		return false
	}
	mark := len(d.fixed)
	choices := d.fixWhole()
	bins -= len(d.fixed) - mark
	if bins < 0 {
		return false
	}
	if d.settle(bins) || bins <= small && d.complete(bins) {
		return true
	}
	tried := 0
	for _, c := range choices {
		if tried == width || d.tired() {
			return false
		}
		if !c.proper(d.need) {
			continue
		}
		tried++
		mark := len(d.fixed)
		d.fix(c.pattern)
		if d.descend(bins - 1) {
			return true
		}
		d.undo(mark)
	}
	return false
}

// choice is a pattern of the programme's solution with its level.
type choice struct {
	pattern
	level float64
}

// fixWhole fixes the whole part of each level and returns what fractions are left, greatest first.
func (d *dive) fixWhole() (choices []choice) {
	m := d.columns.master
	for r, column := range m.basis {
		if column < 0 {
			continue
		}
		p := m.pool[column]
		whole := math.Floor(m.level[r] + nearly)
		for range int(whole) {
			d.fix(p)
		}
		if part := m.level[r] - whole; part > little {
			choices = append(choices, choice{p, part + d.vary()})
		}
	}
	sort.SliceStable(choices, func(i, j int) bool {
		a, b := choices[i], choices[j]
		return cmp.Or(cmp.Compare(b.level, a.level), comparePatterns(a.pattern, b.pattern)) < 0
	})
	return choices
}

// settle packs the needed items greedily, if that is good enough.
func (d *dive) settle(bins int) bool {
	rest := d.columns.job.greedy(d.need)
	if len(rest) > bins {
		return false
	}
	d.found = append(slices.Clone(d.fixed), rest...)
	return true
}

// complete packs the needed items by a short complete search.
func (d *dive) complete(bins int) bool {
	d.columns.meter.within(finish, func(part *meter) {
		s := newCompletion(d.columns.job, d.need, part)
		if s.search(bins) {
			d.found = append(slices.Clone(d.fixed), s.chosen...)
		}
	})
	return d.found != nil
}

// fix packs one bin with the pattern, less what is not needed, unless nothing is left of it.
func (d *dive) fix(p pattern) {
	var part pattern
	for _, t := range p {
		if count := min(t.count, d.need[t.kind]); count > 0 {
			part = append(part, take{t.kind, count})
			d.need[t.kind] -= count
		}
	}
	if part != nil {
		d.fixed = append(d.fixed, part)
	}
}

// undo takes back what was fixed after the mark.
func (d *dive) undo(mark int) {
	for _, p := range d.fixed[mark:] {
		for _, t := range p {
			d.need[t.kind] += t.count
		}
	}
	d.fixed = d.fixed[:mark]
}

// tired reports whether the dive or its budget is at its end.
func (d *dive) tired() bool {
	return d.fails > patience || d.columns.meter.spent()
}

// vary is an amount between 0 and 1/4 to add to a level, 0 in the first round.
func (d *dive) vary() float64 {
	if d.noise == 0 {
		return 0
	}
	d.noise = scramble(d.noise)
	return float64(d.noise>>40) / (1 << 26)
}
