package nest

import (
	"cmp"
	"math/bits"
	"slices"
)

// weights are dual feasible weights of the groups: what one sheet can hold of
// each is known, so each bounds the number of sheets, and tells sets that
// cannot be cut from one sheet without a closer look.
type weights struct {
	groups []group
	each   [][]uint64 // by function and group
	whole  []uint64   // what one sheet holds, by function
	relax  relaxed
}

// mayFit reports whether no weight forbids that the set comes from one sheet.
func (w *weights) mayFit(s set) bool {
	for i := range w.each {
		if w.weight(i, s) > w.whole[i] {
			return false
		}
	}
	return true
}

// sheets returns the least number of sheets that the set needs.
func (w *weights) sheets(s set) (most int) {
	for i := range w.each {
		total := w.weight(i, s)
		most = max(most, int((total+w.whole[i]-1)/w.whole[i]))
	}
	return most
}

func (w *weights) weight(i int, s set) (total uint64) {
	each := w.each[i]
	for b := 0; b < len(s); b++ {
		for t := s[b]; t != 0; t &= t - 1 {
			total += each[b*64+bits.TrailingZeros64(t)]
		}
	}
	return total
}

// mostWeights is how many of the best pairs of functions the search uses.
const mostWeights = 32

// mostWhole bounds what a sheet holds, so that sums over a set fit 64 bits.
const mostWhole = 1 << 56

// newWeights returns the pairs of dual feasible functions that bound the whole
// job best. The pieces are numbered as the groups number them.
func newWeights(j *job, groups []group) weights {
	var order []int
	for _, g := range groups {
		order = append(order, g.pieces...)
	}
	w := weights{groups: groups, relax: j.relaxOf(order)}
	type pair struct {
		across, along dual
		percent       int
	}
	var pairs []pair
	across := dualsOf(w.relax.pace, slices.Max(w.relax.span))
	along := dualsOf(w.relax.height, slices.Max(w.relax.tall))
	for _, f := range across {
		for _, g := range along {
			if hi, whole := bits.Mul64(uint64(f.whole), uint64(g.whole)); hi == 0 && whole < mostWhole {
				pairs = append(pairs, pair{f, g, permille(f, g, whole)})
			}
		}
	}
	if len(pairs) > 1 {
		slices.SortStableFunc(pairs[1:], func(a, b pair) int { return cmp.Compare(b.percent, a.percent) })
	}
	for _, p := range pairs[:min(len(pairs), mostWeights)] {
		each := make([]uint64, len(order))
		for i := range each {
			each[i] = uint64(p.across.size[i]) * uint64(p.along.size[i])
		}
		w.each = append(w.each, each)
		w.whole = append(w.whole, uint64(p.across.whole)*uint64(p.along.whole))
	}
	return w
}

// permille returns the bound of a pair in thousandths of a sheet.
func permille(f, g dual, whole uint64) (total int) {
	for i := range f.size {
		hi, lo := bits.Mul64(uint64(f.size[i])*uint64(g.size[i]), 1000)
		q, _ := bits.Div64(hi, lo, whole)
		total += int(q)
	}
	return total
}

// cost returns what the set costs at least, from the sheets that are left.
func (w *weights) cost(e *exact, s set) int64 {
	var need int64
	for b := range s {
		for t := s[b]; t != 0; t &= t - 1 {
			i := b*64 + bits.TrailingZeros64(t)
			need += w.relax.pace[i] * w.relax.height[i]
		}
	}
	return w.relax.leastCost(e.job, need, e.stock)
}
