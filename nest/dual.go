package nest

import (
	"fmt"
	"slices"
)

// dual is a set of sizes after a dual feasible function: whichever of them
// fitted together into the whole before still fit into whole now.
type dual struct {
	name  string
	size  []int64
	whole int64
}

// dualsOf returns the sizes as they are and after each function of three
// families, with every parameter at which one of them can change:
//
//   - larger sizes count as the whole, those below a threshold as nothing;
//   - rounding by multiples: floor((k+1)x) / k where (k+1)x is not whole;
//   - counting how often a threshold goes into what a large size leaves.
//
// The first two are in G. S. Lueker, "Bin packing with items uniformly
// distributed over intervals [a,b]", FOCS (1983) and S. P. Fekete and J.
// Schepers, "New classes of fast lower bounds for bin packing problems",
// Mathematical Programming 91 (2001) 11-31; the third in J. Carlier, F. Clautiaux
// and A. Moukrim, "New reduction procedures and lower bounds for the
// two-dimensional bin packing problem with fixed orientation", Computers &
// Operations Research 34 (2007) 2223-2250.
func dualsOf(sizes []int64, whole int64) []dual {
	all := []dual{{"sizes as they are", sizes, whole}}
	for _, t := range thresholds(sizes, whole) {
		all = append(all,
			dual{fmt.Sprintf("threshold at %d/%d", t, whole), apply(sizes, func(x int64) int64 {
				switch {
				case x > whole-t:
					return whole
				case x < t:
					return 0
				}
				return x
			}), whole},
			dual{fmt.Sprintf("count by %d/%d", t, whole), apply(sizes, func(x int64) int64 {
				switch {
				case 2*x > whole:
					return 2 * (whole/t - (whole-x)/t)
				case 2*x == whole:
					return whole / t
				}
				return 2 * (x / t)
			}), 2 * (whole / t)})
	}
	// Larger multiples hardly ever give more; none is wrong.
	const mostMultiple = 32
	for k := int64(1); k <= mostMultiple; k++ {
		all = append(all, dual{fmt.Sprintf("rounding by %d", k+1), apply(sizes, func(x int64) int64 {
			if (k+1)*x%whole == 0 {
				return x * k
			}
			return (k + 1) * x / whole * whole
		}), whole * k})
	}
	return distinct(all)
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

func apply(sizes []int64, f func(int64) int64) []int64 {
	out := make([]int64, len(sizes))
	for i, x := range sizes {
		out[i] = f(x)
	}
	return out
}

// distinct drops functions which give the same sizes as an earlier one.
func distinct(all []dual) []dual {
	var out []dual
	for _, d := range all {
		if !slices.ContainsFunc(out, func(e dual) bool {
			return e.whole == d.whole && slices.Equal(e.size, d.size)
		}) {
			out = append(out, d)
		}
	}
	return out
}
