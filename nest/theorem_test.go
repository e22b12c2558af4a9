package nest_test

import (
	"context"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// What is proved of the heuristics for every job must hold for each that is tried.
// testdata/bounds/worst_case.json gives the statements and their sources.

// boards is a job in one dimension: parts as wide as the board.
func boards(length int64, sizes ...int64) nest.Problem {
	p := nest.Problem{Stock: []nest.Stock{{Width: inches("5-1/2"), Length: fraction.Inches(length)}}}
	for i, size := range sizes {
		p.Parts = append(p.Parts, nest.Part{Number: i + 1, Width: inches("5-1/2"), Height: fraction.Inches(size)})
	}
	return p
}

func repeat(size int64, n int) []int64 { return slices.Repeat([]int64{size}, n) }

// TestTightExample is the classical family of D. S. Johnson (1973): lengths of 1/2 + e, 1/4 + 2e,
// 1/4 + e and 1/4 - 2e, here of 400, where first-fit decreasing takes 11 boards and 9 do.
func TestTightExample(t *testing.T) {
	sizes := slices.Concat(repeat(201, 6), repeat(102, 6), repeat(101, 6), repeat(98, 12))
	p := boards(400, sizes...)
	first, err := nest.FirstFit(p)
	if err != nil {
		t.Fatal(err)
	}
	best, err := nest.Search(context.Background(), p, nest.Budget{})
	if err != nil {
		t.Fatal(err)
	}
	if len(first.Sheets) != 11 || len(best.Sheets) != 9 || !best.Bound.Proved {
		t.Errorf("first fit %d, search %d, %+v; want 11 and 9, proved", len(first.Sheets), len(best.Sheets), best.Bound)
	}
}

// TestFirstFitTakesElevenNinths: 9 FFD <= 11 OPT + 6 (G. Dosa and others, Theoretical Computer
// Science 510 (2013) 13-61).
func TestFirstFitTakesElevenNinths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := boards(100, rapid.SliceOfN(rapid.Int64Range(5, 100), 1, 25).Draw(t, "sizes")...)
		first, err := nest.FirstFit(p)
		if err != nil {
			t.Fatal(err)
		}
		best, err := nest.Search(context.Background(), p, nest.Budget{})
		if err != nil {
			t.Fatal(err)
		}
		if !best.Bound.Proved {
			t.Skip("no proof")
		}
		if 9*len(first.Sheets) > 11*len(best.Sheets)+6 {
			t.Fatalf("first fit %d, optimum %d", len(first.Sheets), len(best.Sheets))
		}
	})
}

// TestRowsAreNotTooHigh: rows filled by first fit in one long sheet of width W are less than 2A/W +
// h_max high, A being the area of the parts.
func TestRowsAreNotTooHigh(t *testing.T) {
	for i, c := range readClasses(t) {
		if i%7 != 0 {
			continue // sawing a sheet of a hundred parts takes its time
		}
		p := c.problem()
		p.Stock[0].Length = fraction.Inches(int64(len(c.Items)) * c.H)
		r, err := nest.FirstFit(p)
		if err != nil {
			t.Fatal(err)
		}
		if len(r.Sheets) != 1 {
			t.Fatalf("%s: %d sheets", c.ID, len(r.Sheets))
		}
		var area, tallest, high int64
		for _, item := range c.Items {
			area += item[0] * item[1]
			tallest = max(tallest, item[1])
		}
		for _, pl := range r.Sheets[0].Placements {
			high = max(high, pl.Y.Num()+c.Items[pl.Part][1])
		}
		if high*c.W >= 2*area+tallest*c.W {
			t.Errorf("%s: rows %d high, area %d, tallest %d", c.ID, high, area, tallest)
		}
	}
}

// TestFirstFitOnOpenInstances: the counts are those of a routine for hybrid first-fit that was
// written apart from this one; they are below 4A/(WH) + 2 h_max/H + 1; and the bound is at least
// that of pairs of dual feasible functions calculated apart, and at most what is known to be
// enough.
func TestFirstFitOnOpenInstances(t *testing.T) {
	for _, c := range readClasses(t) {
		r, err := nest.FirstFit(c.problem())
		if err != nil {
			t.Fatal(err)
		}
		if len(r.Sheets) != c.HFF || len(r.Unplaced) > 0 {
			t.Errorf("%s: %d sheets, want %d", c.ID, len(r.Sheets), c.HFF)
		}
		if r.Bound.Sheets < c.Dual || r.Bound.Sheets > c.High {
			t.Errorf("%s: bound %d, want %d to %d", c.ID, r.Bound.Sheets, c.Dual, c.High)
		}
		var area, tallest int64
		for _, item := range c.Items {
			area += item[0] * item[1]
			tallest = max(tallest, item[1])
		}
		if int64(len(r.Sheets))*c.W*c.H >= 4*area+2*tallest*c.W+c.W*c.H {
			t.Errorf("%s: %d sheets for area %d", c.ID, len(r.Sheets), area)
		}
	}
}
