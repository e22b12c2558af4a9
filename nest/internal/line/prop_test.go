package line_test

import (
	"context"
	"errors"
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
		got, err := line.Pack(context.Background(), capacity, sizes, line.Budget{})
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
		budget := line.Budget{Nodes: rapid.IntRange(1, 3000).Draw(t, "nodes")}
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
		if first.Lower > len(first.Bins) || first.Proved != (first.Lower == len(first.Bins)) || first.Nodes > budget.Nodes {
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
		first, _ := line.Pack(context.Background(), capacity, sizes, line.Budget{})
		second, err := line.Pack(context.Background(), capacity*scale, scaled, line.Budget{})
		if err != nil {
			t.Fatal(err)
		}
		if len(first.Bins) != len(second.Bins) && first.Proved && second.Proved {
			t.Fatalf("%d bins, %d when scaled by %d", len(first.Bins), len(second.Bins), scale)
		}
	})
}

func TestBoardsEqualPlainEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		boards := make([]line.Board, rapid.IntRange(1, 3).Draw(t, "kinds"))
		for i := range boards {
			boards[i] = line.Board{
				Length:  rapid.Int64Range(1, 24).Draw(t, "length"),
				Price:   rapid.Int64Range(0, 12).Draw(t, "price"),
				Limited: rapid.Bool().Draw(t, "limited"),
				Count:   rapid.IntRange(0, 3).Draw(t, "count"),
			}
		}
		longest := int64(0)
		for _, b := range boards {
			if !b.Limited || b.Count > 0 {
				longest = max(longest, b.Length)
			}
		}
		if longest == 0 {
			t.Skip("no board")
		}
		sizes := rapid.SliceOfN(rapid.Int64Range(1, longest), 0, 6).Draw(t, "sizes")
		price, number, ok := cheapest(boards, sizes)
		got, err := line.Boards(context.Background(), boards, sizes, line.Budget{})
		if !ok {
			if !errors.Is(err, line.ErrTooFew) {
				t.Fatalf("Boards = %v, %v, want %v", got, err, line.ErrTooFew)
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if err := line.VerifyBoards(boards, sizes, got); err != nil {
			t.Fatal(err)
		}
		if got.Price != price || len(got.Cuts) != number || !got.Proved || got.Lower != price {
			t.Fatalf("Boards = %+v, want price %d with %d boards, proved", got, price, number)
		}
	})
}

// TestBoardsEqualSubsets: more items than plain enumeration manages, on boards of which there are
// enough.
func TestBoardsEqualSubsets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		boards := make([]line.Board, rapid.IntRange(2, 4).Draw(t, "kinds"))
		for i := range boards {
			boards[i].Length = rapid.Int64Range(12, 40).Draw(t, "length")
			boards[i].Price = boards[i].Length + rapid.Int64Range(0, 6).Draw(t, "extra")
		}
		sizes := rapid.SliceOfN(rapid.Int64Range(3, 12), 0, 9).Draw(t, "sizes")
		got, err := line.Boards(context.Background(), boards, sizes, line.Budget{})
		if err != nil {
			t.Fatal(err)
		}
		if err := line.VerifyBoards(boards, sizes, got); err != nil {
			t.Fatal(err)
		}
		if want := cheapestUnlimited(boards, sizes); got.Price != want || !got.Proved {
			t.Fatalf("Boards = %+v, want price %d, proved", got, want)
		}
	})
}

// TestBoardsBoundHolds: on larger jobs with a small budget the answer is a cutting whose price is
// not below the bound, the same each time.
func TestBoardsBoundHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		boards := []line.Board{
			{Length: 96, Price: rapid.Int64Range(1, 900).Draw(t, "price")},
			{Length: 144, Price: rapid.Int64Range(1, 900).Draw(t, "price")},
			{Length: 60, Limited: true, Count: rapid.IntRange(0, 4).Draw(t, "count")},
		}
		sizes := rapid.SliceOfN(rapid.Int64Range(10, 144), 0, 30).Draw(t, "sizes")
		budget := line.Budget{Nodes: 3000}
		got, err := line.Boards(context.Background(), boards, sizes, budget)
		if err != nil {
			t.Fatal(err)
		}
		if err := line.VerifyBoards(boards, sizes, got); err != nil {
			t.Fatal(err)
		}
		if again, _ := line.Boards(context.Background(), boards, sizes, budget); !cmp.Equal(got, again) {
			t.Fatal("two runs differ")
		}
	})
}
