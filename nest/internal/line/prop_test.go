package line_test

import (
	"context"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/groovewright/nest/internal/line"
)

// problems draws a capacity and sizes. Drawn numbers lean towards small ones, where first-fit and
// the area settle nearly everything; the harder problems are those of TestManySmallProblems.
func problems(t *rapid.T, items int) (capacity int64, sizes []int64) {
	capacity = rapid.Int64Range(1, 60).Draw(t, "capacity")
	low, high, fewest := int64(1), capacity, 0
	if rapid.Bool().Draw(t, "quarter to half") {
		low, high, fewest = max(1, capacity/4), max(1, capacity/2), items
	}
	return capacity, rapid.SliceOfN(rapid.Int64Range(low, high), fewest, items).Draw(t, "sizes")
}

func TestPackEqualsPlainEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity, sizes := problems(t, 8)
		got, err := line.Pack(context.Background(), capacity, sizes, line.DefaultNodes)
		if err != nil {
			t.Fatal(err)
		}
		if err := line.Verify(capacity, sizes, got.Bins); err != nil {
			t.Fatal(err)
		}
		if want := fewest(capacity, sizes); len(got.Bins) != want || !got.Proved || got.Lower != want {
			t.Fatalf("Pack = %v, want %d bins, proved", got, want)
		}
	})
}

func TestBoundsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity, sizes := problems(t, 8)
		lower, how := line.Lower(capacity, sizes)
		if optimum := fewest(capacity, sizes); lower > optimum {
			t.Fatalf("Lower = %d (%v), but %d bins suffice", lower, how, optimum)
		}
	})
}

// TestFirstFitWorstCase: 9 FFD <= 11 OPT + 6 (Dosa 2007, as in the open data).
func TestFirstFitWorstCase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity, sizes := problems(t, 8)
		first, optimum := len(line.FirstFit(capacity, sizes)), fewest(capacity, sizes)
		if 9*first > 11*optimum+6 {
			t.Fatalf("first-fit %d, optimum %d", first, optimum)
		}
	})
}

func TestPackIsDeterministic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity, sizes := problems(t, 40)
		budget := rapid.IntRange(1, 3000).Draw(t, "nodes")
		first, err := line.Pack(context.Background(), capacity, sizes, budget)
		if err != nil {
			t.Fatal(err)
		}
		second, _ := line.Pack(context.Background(), capacity, sizes, budget)
		if diff := cmp.Diff(first, second); diff != "" {
			t.Fatalf("two runs differ:\n%s", diff)
		}
		if err := line.Verify(capacity, sizes, first.Bins); err != nil {
			t.Fatal(err)
		}
		if first.Lower > len(first.Bins) || first.Proved != (first.Lower == len(first.Bins)) || first.Nodes > budget {
			t.Fatalf("inconsistent: %+v", first)
		}
	})
}

// TestPackIgnoresScale: multiplying all lengths changes nothing.
func TestPackIgnoresScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity, sizes := problems(t, 20)
		scale := rapid.Int64Range(2, 1<<30).Draw(t, "scale")
		scaled := make([]int64, len(sizes))
		for i, size := range sizes {
			scaled[i] = size * scale
		}
		first, _ := line.Pack(context.Background(), capacity, sizes, line.DefaultNodes)
		second, err := line.Pack(context.Background(), capacity*scale, scaled, line.DefaultNodes)
		if err != nil {
			t.Fatal(err)
		}
		if len(first.Bins) != len(second.Bins) && first.Proved && second.Proved {
			t.Fatalf("%d bins, %d when scaled by %d", len(first.Bins), len(second.Bins), scale)
		}
	})
}
