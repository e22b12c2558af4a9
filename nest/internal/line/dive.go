package line

import (
	"cmp"
	"math"
	"slices"
)

// dive rounds the linear programme: it fixes the whole parts of its solution,
// then one pattern after the other, solving the programme for the rest each
// time, and turns back where the rest needs too many bins. It is a heuristic; it
// proves nothing (a depth-first form of G. Belov and G. Scheithauer's residual
// rounding, "A branch-and-cut-and-price algorithm for one-dimensional stock
// cutting", European Journal of Operational Research 171, 2006).
type dive struct {
	columns *columns
	need    []int
	fixed   []pattern
	found   []pattern
	fails   int    // dead ends so far
	noise   uint64 // state of the generator that varies the order, 0 to leave it
}

// width is the number of patterns tried at one level of a dive, nearly the
// smallest fraction taken for a whole number of bins too many, and small the
// number of bins that a dive hands to the complete search.
const (
	width    = 3
	nearly   = 1e-3
	small    = 12
	finish   = 300
	patience = 20
)

// dive looks for a packing of the needed items into so many bins.
func (c *columns) dive(need []int, bins int, round int) []pattern {
	d := &dive{columns: c, need: slices.Clone(need), noise: uint64(round)}
	d.descend(bins)
	return d.found
}

// descend packs the rest into so many bins, or restores the state.
func (d *dive) descend(bins int) bool {
	j, m := d.columns.job, d.columns.master
	mark := len(d.fixed)
	undo := func() bool {
		for _, p := range d.fixed[mark:] {
			for _, t := range p {
				d.need[t.kind] += t.count
			}
		}
		d.fixed = d.fixed[:mark]
		d.fails++
		return false
	}
	rest := j.greedy(d.need)
	if len(rest) <= bins {
		d.found = append(slices.Clone(d.fixed), rest...)
		return true
	}
	value, _ := d.columns.solve(d.need, float64(bins))
	if value > float64(bins)+nearly || d.columns.meter.used >= d.columns.meter.limit {
		return undo()
	}
	type choice struct {
		pattern pattern
		level   float64
	}
	var choices []choice
	for r, column := range m.basis {
		if column < 0 || m.level[r] < 1e-3 {
			continue
		}
		p := m.pool[column]
		whole := math.Floor(m.level[r] + 1e-3)
		for ; whole > 0; whole-- {
			bins -= d.fix(p)
		}
		if part := m.level[r] - math.Floor(m.level[r]+1e-3); part > 1e-2 {
			choices = append(choices, choice{p, part + d.vary()})
		}
	}
	slices.SortStableFunc(choices, func(a, b choice) int {
		if c := cmp.Compare(b.level, a.level); c != 0 {
			return c
		}
		return comparePatterns(a.pattern, b.pattern)
	})
	rest = j.greedy(d.need)
	if len(rest) <= bins {
		d.found = append(slices.Clone(d.fixed), rest...)
		return true
	}
	if bins <= small {
		d.columns.meter.within(finish, func(part *meter) {
			s := newCompletion(j, d.need, part)
			if s.search(bins) {
				d.found = append(slices.Clone(d.fixed), s.chosen...)
			}
		})
		if d.found != nil {
			return true
		}
	}
	tried := 0
	for _, ch := range choices {
		if !ch.pattern.proper(d.need) {
			continue
		}
		fixed := d.fix(ch.pattern)
		if d.descend(bins - fixed) {
			return true
		}
		last := len(d.fixed) - 1
		for _, t := range d.fixed[last] {
			d.need[t.kind] += t.count
		}
		d.fixed = d.fixed[:last]
		if tried++; tried == width || d.fails > patience || d.columns.meter.used >= d.columns.meter.limit {
			break
		}
	}
	return undo()
}

// fix packs one bin with the pattern, less what is not needed, and returns the
// number of bins used.
func (d *dive) fix(p pattern) int {
	var part pattern
	for _, t := range p {
		if count := min(t.count, d.need[t.kind]); count > 0 {
			part = append(part, take{t.kind, count})
			d.need[t.kind] -= count
		}
	}
	if part == nil {
		return 0
	}
	d.fixed = append(d.fixed, part)
	return 1
}

// vary is an amount between 0 and 1/4 to add to a level, 0 in the first round.
func (d *dive) vary() float64 {
	if d.noise == 0 {
		return 0
	}
	d.noise = d.noise*6364136223846793005 + 1442695040888963407
	return float64(d.noise>>40) / (1 << 26)
}
