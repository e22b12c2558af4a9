package line_test

import (
	"context"
	"flag"
	"math/rand/v2"
	"testing"

	"example.com/groovewright/nest/internal/line"
)

var cases = flag.Int("cases", 3000, "number of small random problems to compare with plain enumeration")

// scattered is the k-th of a fixed sequence of problems: eight or nine items of any size up to two
// thirds, or from a quarter to a half, of the capacity.
func scattered(k int) (capacity int64, sizes []int64) {
	source := rand.New(rand.NewPCG(uint64(k), 1))
	capacity = 20 + source.Int64N(100)
	low, high := int64(1), capacity*2/3
	if k%2 == 0 {
		low, high = capacity/4, capacity/2
	}
	for range 8 + k%2 {
		sizes = append(sizes, low+source.Int64N(high-low+1))
	}
	return capacity, sizes
}

// TestManySmallProblems compares everything that decides with plain enumeration, also where Pack
// would not need it: the packing, the bounds, the worst case of first-fit (Dosa 2007), the linear
// programme, and the complete search.
func TestManySmallProblems(t *testing.T) {
	beyondArea, beyondFit := 0, 0
	for k := range *cases {
		capacity, sizes := scattered(k)
		optimum := fewest(capacity, sizes)
		got, err := line.Pack(context.Background(), capacity, sizes, line.DefaultNodes)
		if err == nil {
			err = line.Verify(capacity, sizes, got.Bins)
		}
		if err != nil || len(got.Bins) != optimum || !got.Proved {
			t.Errorf("problem %d: Pack(%d, %v) = %+v, %v, want %d bins", k, capacity, sizes, got, err, optimum)
		}
		first := len(line.FirstFit(capacity, sizes))
		if 9*first > 11*optimum+6 {
			t.Errorf("problem %d: first-fit %d, optimum %d", k, first, optimum)
		}
		lower, how := line.Lower(capacity, sizes)
		if lower > optimum {
			t.Errorf("problem %d: Lower(%d, %v) = %d (%v), optimum %d", k, capacity, sizes, lower, how, optimum)
		}
		if _, bound := line.NewProgramme(capacity, sizes, plenty).Solve(); bound > optimum {
			t.Errorf("problem %d: programme of (%d, %v) proves %d, optimum %d", k, capacity, sizes, bound, optimum)
		}
		if packed, _ := line.Complete(capacity, sizes, optimum); line.Verify(capacity, sizes, packed) != nil {
			t.Errorf("problem %d: the complete search finds no packing of (%d, %v) into %d", k, capacity, sizes, optimum)
		}
		if packed, proved := line.Complete(capacity, sizes, optimum-1); packed != nil || !proved {
			t.Errorf("problem %d: the complete search does not refuse (%d, %v) in %d", k, capacity, sizes, optimum-1)
		}
		var total int64
		for _, size := range sizes {
			total += size
		}
		if (total+capacity-1)/capacity < int64(optimum) {
			beyondArea++
		}
		if first > optimum {
			beyondFit++
		}
	}
	t.Logf("%d problems: the area bound falls short in %d, first-fit in %d", *cases, beyondArea, beyondFit)
	if *cases >= 1000 && (beyondArea < *cases/50 || beyondFit < *cases/50) {
		t.Error("the problems are too easy to tell anything")
	}
}
