package nest

import (
	"slices"

	"example.com/groovewright/nest/internal/line"
)

// dual is what a dual feasible function makes of sizes: whichever of them fitted
// together into the whole before still fit into whole now.
type dual struct {
	name  string
	size  []int64
	whole int64
}

// mostRounding is the largest step of line.Rounding that is tried. Larger ones
// hardly ever give more; none is wrong.
const mostRounding = 32

// dualsOf returns the sizes as they are and after each function worth trying.
// Those of them that depend on a threshold are tried at all places where one of
// the sizes changes sides.
func dualsOf(sizes []int64, whole int64) []dual {
	distinct, counts := countSizes(sizes)
	steps := spread(thresholds(sizes, whole), mostThresholds(len(sizes)))
	functions := []line.Dual{line.Identity(whole)}
	for _, t := range steps {
		functions = append(functions,
			line.Threshold(whole, t), line.Splitting(whole, t),
			line.Remainder(whole, t), line.Counting(whole, t, distinct, counts))
	}
	for step := int64(1); step <= mostRounding; step++ {
		functions = append(functions, line.Rounding(whole, step))
	}
	var all []dual
	for _, f := range functions {
		d := dual{name: f.String(), whole: f.Most}
		for _, x := range sizes {
			d.size = append(d.size, f.At(x))
		}
		if d.whole > 0 && !slices.ContainsFunc(all, func(e dual) bool { return e.whole == d.whole && slices.Equal(e.size, d.size) }) {
			all = append(all, d)
		}
	}
	return all
}

// mostPairs bounds the work on all pairs of functions, in values added up.
const mostPairs = 20_000_000

// mostThresholds returns how many thresholds can be tried on so many sizes.
func mostThresholds(sizes int) int {
	const functions = 4 // at each threshold
	n := 1
	for (functions*n+mostRounding)*(functions*n+mostRounding)*sizes < mostPairs {
		n++
	}
	return n
}

// spread returns at most n of the numbers, evenly chosen.
func spread(all []int64, n int) []int64 {
	if len(all) <= n {
		return all
	}
	some := make([]int64, n)
	for i := range some {
		some[i] = all[i*len(all)/n]
	}
	return some
}

// thresholds returns the sizes up to half the whole, and what larger sizes leave.
func thresholds(sizes []int64, whole int64) []int64 {
	var t []int64
	for _, x := range sizes {
		for _, y := range [...]int64{x, whole - x, x + 1, whole - x + 1} {
			if y > 0 && 2*y <= whole {
				t = append(t, y)
			}
		}
	}
	slices.Sort(t)
	return slices.Compact(t)
}

// countSizes returns the distinct sizes, falling, and how often each occurs.
func countSizes(sizes []int64) (distinct []int64, counts []int) {
	sorted := slices.Clone(sizes)
	slices.Sort(sorted)
	slices.Reverse(sorted)
	for i, x := range sorted {
		if i == 0 || x != sorted[i-1] {
			distinct, counts = append(distinct, x), append(counts, 0)
		}
		counts[len(counts)-1]++
	}
	return distinct, counts
}
