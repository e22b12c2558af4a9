package line_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/nest/internal/line"
)

// TestDualsAreFeasible: for every capacity up to 40 and every function of every family and step,
// the dearest items that together fit the capacity, any number of each size, are worth Most and no
// more. (The definition of a dual feasible function; the dearest items by the textbook recursion
// for the knapsack.)
func TestDualsAreFeasible(t *testing.T) {
	for capacity := int64(1); capacity <= 40; capacity++ {
		duals := []line.Dual{line.Identity(capacity)}
		for step := int64(1); step <= capacity; step++ {
			duals = append(duals, line.Remainder(capacity, step), line.Rounding(capacity, step))
			if 2*step <= capacity+1 {
				duals = append(duals, line.Threshold(capacity, step))
			}
			if 2*step <= capacity {
				duals = append(duals, line.Splitting(capacity, step))
			}
		}
		for _, d := range duals {
			best := make([]int64, capacity+1)
			for room := int64(1); room <= capacity; room++ {
				for size := int64(1); size <= room; size++ {
					best[room] = max(best[room], best[room-size]+d.At(size))
				}
			}
			if best[capacity] != d.Most {
				t.Errorf("capacity %d, %v: items worth %d fit, Most is %d", capacity, d, best[capacity], d.Most)
			}
		}
	}
}

// TestDualsHoldForTheirItems: the same for [line.Duals], which depend on the items: no subset that
// fits is worth more than Most.
func TestDualsHoldForTheirItems(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity := rapid.Int64Range(2, 50).Draw(t, "capacity")
		set := rapid.SliceOfNDistinct(rapid.Int64Range(1, capacity), 1, 6, rapid.ID).Draw(t, "sizes")
		var sizes []int64
		for size := capacity; size > 0; size-- {
			for _, s := range set {
				if s == size {
					sizes = append(sizes, s)
				}
			}
		}
		counts := make([]int, len(sizes))
		for i := range counts {
			counts[i] = rapid.IntRange(1, 3).Draw(t, "count")
		}
		for _, d := range line.Duals(capacity, sizes, counts) {
			best := make([]int64, capacity+1)
			for i, size := range sizes {
				for range counts[i] {
					for room := capacity; room >= size; room-- {
						best[room] = max(best[room], best[room-size]+d.At(size))
					}
				}
			}
			if best[capacity] > d.Most {
				t.Fatalf("capacity %d, %v on %v: items worth %d fit, Most is %d", capacity, d, sizes, best[capacity], d.Most)
			}
		}
	})
}

// TestBestDual: what [line.BestDual] values any items at that fit is no more than Most, also sizes
// that it was not given, and no other function that holds for any items bounds those given better,
// but for the rounding of prices to a millionth of a bin.
func TestBestDual(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity := rapid.Int64Range(2, 60).Draw(t, "capacity")
		sizes := rapid.SliceOfNDistinct(rapid.Int64Range(1, capacity), 1, 6, rapid.ID).Draw(t, "sizes")
		slices.Sort(sizes)
		slices.Reverse(sizes)
		counts := make([]int, len(sizes))
		for i := range counts {
			counts[i] = rapid.IntRange(1, 9).Draw(t, "count")
		}
		d, ok := line.BestDual(capacity, sizes, counts)
		if !ok {
			t.Fatal("no function")
		}
		best := make([]int64, capacity+1)
		for room := int64(1); room <= capacity; room++ {
			for size := int64(1); size <= room; size++ {
				best[room] = max(best[room], best[room-size]+d.At(size))
			}
		}
		if best[capacity] > d.Most {
			t.Fatalf("items worth %d fit, Most is %d", best[capacity], d.Most)
		}
		bins := func(d line.Dual) (sum float64) {
			for i, size := range sizes {
				sum += float64(counts[i]) * float64(d.At(size)) / float64(d.Most)
			}
			return sum
		}
		unlimited := slices.Repeat([]int{int(capacity)}, len(sizes))
		for _, other := range line.Duals(capacity, sizes, unlimited) {
			if bins(d) < bins(other)*(1-1e-4) {
				t.Fatalf("%v of %v: %v bins, %v gives %v", sizes, counts, bins(d), other, bins(other))
			}
		}
	})
	if _, ok := line.BestDual(10, []int64{11, 3}, []int{1, 1}); ok {
		t.Error("a function for a size that does not fit")
	}
	if _, ok := line.BestDual(10, nil, nil); ok {
		t.Error("a function for no sizes")
	}
}

// TestDualsAreMonotone: a larger item is worth no less, except where the items given are counted:
// two items of 1 and 2 fit a capacity of 3, so that if the first is worth the whole, the second is
// worth nothing.
func TestDualsAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity := rapid.Int64Range(2, 300).Draw(t, "capacity")
		size := rapid.Int64Range(1, capacity).Draw(t, "size")
		for _, d := range line.Duals(capacity, []int64{size}, []int{1}) {
			if strings.HasPrefix(d.String(), "counting") {
				continue
			}
			for x := int64(1); x <= capacity; x++ {
				if d.At(x) < d.At(x-1) {
					t.Fatalf("%v of capacity %d falls from %d to %d at %d", d, capacity, d.At(x-1), d.At(x), x)
				}
			}
		}
	})
}
