package line_test

import (
	"maps"
	"math"
	"math/bits"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/nest/internal/line"
)

// plenty is a budget that no test of this file reaches.
const plenty = 1 << 30

// TestProgrammeOpenData: the linear programme of instance u250_13 is 102.0407, as solved by another
// program in another model (arc flow, README of the data), so that 103 bins are needed. The other
// 159 have an optimum equal to the programme's value rounded up: the sample checks that it is not
// above.
func TestProgrammeOpenData(t *testing.T) {
	for i, in := range instances(t) {
		if !sampled(i, in) {
			continue
		}
		value, bound := line.NewProgramme(in.Capacity, in.Sizes, plenty).Solve()
		if bound != in.Optimum || value > float64(in.Optimum)+1e-3 {
			t.Errorf("%s: programme %.4f, proved %d, optimum %d", in.ID, value, bound, in.Optimum)
		}
		if in.ID == "u250_13" && math.Abs(value-102.0407) > 1e-3 {
			t.Errorf("%s: programme %.4f, want 102.0407", in.ID, value)
		}
	}
}

// TestLevelsOfAProgramme: of two items of a kind and three of another, where one of each fits a bin, two bins hold
// both and one the third.
func TestLevelsOfAProgramme(t *testing.T) {
	m := line.NewMaster([]int{2, 3}, []int{1, 1})
	if !m.Add([]int{1, 1}) || m.Add([]int{1, 1}) {
		t.Error("a pattern is not added once")
	}
	bins, _ := m.Optimize()
	levels := maps.Collect(m.Levels())
	if math.Abs(bins-3) > 1e-3 || len(levels) != 2 || math.Abs(levels[1]-1) > 1e-3 || math.Abs(levels[2]-2) > 1e-3 {
		t.Errorf("%v bins, levels %v", bins, levels)
	}
}

// TestProgrammeBoundHolds: what the integer prices prove is never above the fewest bins.
func TestProgrammeBoundHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity, sizes := problems(t, 8)
		if len(sizes) == 0 {
			t.Skip("nothing to price")
		}
		_, bound := line.NewProgramme(capacity, sizes, plenty).Solve()
		if optimum := fewest(capacity, sizes); bound > optimum {
			t.Fatalf("bound %d, but %d bins suffice", bound, optimum)
		}
	})
}

// TestDivePacks: what a dive finds is a packing into the bins asked for, whatever the round, and it
// finds one when there is room for first-fit.
func TestDivePacks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity, sizes := problems(t, 30)
		if len(sizes) == 0 {
			t.Skip("nothing to pack")
		}
		first := len(line.FirstFit(capacity, sizes))
		lower, _ := line.Lower(capacity, sizes)
		bins := rapid.IntRange(lower, first).Draw(t, "bins")
		round := rapid.IntRange(0, 3).Draw(t, "round")
		packed := line.NewProgramme(capacity, sizes, plenty).Dive(bins, round)
		if packed == nil {
			if bins == first {
				t.Fatalf("no packing into %d bins", bins)
			}
			return
		}
		if err := line.Verify(capacity, sizes, packed); err != nil {
			t.Fatal(err)
		}
		if len(packed) > bins {
			t.Fatalf("%d bins, want at most %d", len(packed), bins)
		}
	})
}

// TestKnapsackEqualsSubsets: the dearest pattern is the dearest of all subsets.
func TestKnapsackEqualsSubsets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity, sizes := problems(t, 9)
		if len(sizes) == 0 {
			t.Skip("nothing to pack")
		}
		worth := make(map[int64]int64)
		for _, size := range sizes {
			if _, ok := worth[size]; !ok {
				worth[size] = rapid.Int64Range(0, 100).Draw(t, "worth")
			}
		}
		var want int64
		for set := range uint(1) << len(sizes) {
			var load, value int64
			for rest := set; rest != 0; rest &= rest - 1 {
				size := sizes[bits.TrailingZeros(rest)]
				load, value = load+size, value+worth[size]
			}
			if load <= capacity {
				want = max(want, value)
			}
		}
		got := line.NewProgramme(capacity, sizes, plenty).Best(func(size int64) int64 { return worth[size] })
		if got != want {
			t.Fatalf("dearest pattern %d, want %d", got, want)
		}
	})
}

// TestThresholdBoundEqualsItsDefinition: the bound computed in one pass is L2 as S. Martello and P.
// Toth define it ("Knapsack Problems", 1990, section 8.3): for each a up to half the capacity, with
// J1 the items above capacity-a, J2 the others above half, J3 the others from a up,
//
//	|J1| + |J2| + max(0, ceil((sum J3 - (|J2| capacity - sum J2)) / capacity)).
//
// And Lower is never below it.
func TestThresholdBoundEqualsItsDefinition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity, sizes := problems(t, 20)
		want := 0
		for a := int64(0); 2*a <= capacity; a++ {
			var whole, over int
			var room, shared int64
			for _, size := range sizes {
				switch {
				case size > capacity-a:
					whole++
				case 2*size > capacity:
					over++
					room += capacity - size
				case size >= a:
					shared += size
				}
			}
			more := max(0, (shared-room+capacity-1)/capacity)
			want = max(want, whole+over+int(more))
		}
		if got := line.ThresholdBound(capacity, sizes); got != want {
			t.Fatalf("threshold bound %d, want %d", got, want)
		}
		if got, how := line.Lower(capacity, sizes); got < want {
			t.Fatalf("Lower = %d (%v), below L2 = %d", got, how, want)
		}
	})
}

// TestCompleteSearchAlone: the search without the linear programme decides small problems: a
// packing into the fewest bins, and a proof that one less is too few.
func TestCompleteSearchAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity, sizes := problems(t, 8)
		want := fewest(capacity, sizes)
		packed, _ := line.Complete(capacity, sizes, want)
		if err := line.Verify(capacity, sizes, packed); err != nil || len(packed) > want {
			t.Fatalf("packing into %d bins: %v, %v", want, packed, err)
		}
		if want == 0 {
			return
		}
		if packed, proved := line.Complete(capacity, sizes, want-1); packed != nil || !proved {
			t.Fatalf("%d bins: %v, proved %v, want a proof that they are too few", want-1, packed, proved)
		}
	})
}
