package nest

import (
	"cmp"
	"slices"
)

// A job of stacks of shelves on stock of several lengths and prices is bin packing in bins of variable sizes
// (D. K. Friesen and M. A. Langston, "Variable sized bin packing", SIAM Journal on Computing 15,
// 1986). Which stock to take is a short list; whether all parts can be cut from it is bin packing in
// equal bins: each sheet of the list is a marker so long that no bin has room for two, and leaves as
// much room in its bin as the sheet has.

// mix is how many sheets are taken of each of the kinds that are of use, the longest first.
type mix []int

// mostMixes is how many mixes are looked at for a list at most.
const mostMixes = 2000

// mixes finds the best sheets for stacks of the shelves, from some that hold them; sure if there are
// surely none better. It decides on mixes that would be better, in the order of what they hold, until
// none is left.
func (s *searcher) mixes(shelves []shelf, sheets []layout) (best []layout, sure bool) {
	j := s.job
	kinds := slices.SortedStableFunc(slices.Values(j.stockOrder()), func(a, b int) int { return cmp.Compare(j.kinds[b].h, j.kinds[a].h) })
	sizes, budget := j.lengths(shelves), s.budget/lineShare
	var short []mix // of which it is known that they do not hold all
	for {
		open, all := j.better(sheets, kinds, len(shelves), short)
		if !all || len(open) == 0 {
			return sheets, all
		}
		m := open[0]
		for _, other := range open {
			if other.holds(m) && !m.holds(other) {
				m = other
			}
		}
		bins, markers := j.binsOf(m, kinds)
		r, err := j.memory.line.Pack(s.ctx, bins, slices.Concat(sizes, markers), max(1, budget))
		if err != nil {
			return sheets, false // too large a job for line
		}
		s.nodes += r.Nodes
		switch budget -= r.Nodes; {
		case len(r.Bins) == len(markers):
			sheets = j.stacks(shelves, m, kinds, r.Bins)
		case r.Lower > len(markers):
			short = append(short, m)
		default:
			return sheets, false
		}
	}
}

// better lists the mixes that are better than some sheets and that no short one holds, of those with
// more or fewer of the last kind that with most; false if they are too many.
func (j *job) better(sheets []layout, kinds []int, pieces int, short []mix) (list []mix, all bool) {
	best := j.objective(&plan{sheets: sheets})
	m, tried := make(mix, len(kinds)), 0
	var fill func(n, left int) bool
	fill = func(n, left int) bool {
		if n == len(kinds) {
			if !slices.ContainsFunc(short, func(s mix) bool { return s.holds(m) }) {
				list = append(list, slices.Clone(m))
			}
			tried++
			return tried <= mostMixes
		}
		most := 0
		for ; most < min(left, j.kinds[kinds[n]].count); most++ {
			if m[n] = most + 1; j.of(m[:n+1], kinds).compare(best) >= 0 {
				break
			}
		}
		least := 0
		if n == len(kinds)-1 {
			least = most
		}
		for m[n] = most; m[n] >= least; m[n]-- {
			if !fill(n+1, left-m[n]) {
				return false
			}
		}
		m[n] = 0
		return true
	}
	return list, fill(0, pieces)
}

// of is the objective of a mix.
func (j *job) of(m mix, kinds []int) (sum objective) {
	for i, n := range m {
		for range n {
			sum = sum.plus(j.kinds[kinds[i]].objective())
		}
	}
	return sum
}

// holds reports whether each sheet of another mix can be had from one of this.
func (m mix) holds(other mix) bool {
	spare := 0
	for i, n := range m {
		if spare += n - other[i]; spare < 0 {
			return false
		}
	}
	return true
}

// binsOf returns the capacity of the bins, and a marker for each sheet of a mix.
func (j *job) binsOf(m mix, kinds []int) (capacity int64, markers []int64) {
	longest := j.kinds[kinds[0]].h + j.kerf
	marker := longest + 1
	for i, n := range m {
		markers = append(markers, slices.Repeat([]int64{marker + longest - j.kinds[kinds[i]].h - j.kerf}, n)...)
	}
	return marker + longest, markers
}

// stacks returns the sheets of a mix whose bins hold pieces and one marker each.
func (j *job) stacks(shelves []shelf, m mix, kinds []int, bins [][]int) (sheets []layout) {
	var marked []int // kinds of the markers
	for i, n := range m {
		marked = append(marked, slices.Repeat(kinds[i:i+1], n)...)
	}
	for _, items := range bins {
		marker := slices.IndexFunc(items, func(n int) bool { return n >= len(shelves) })
		kind := marked[items[marker]-len(shelves)]
		if items = slices.Delete(items, marker, marker+1); len(items) > 0 {
			sheets = append(sheets, j.stackOf(kind, shelves, items))
		}
	}
	return sheets
}
