package nest_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/nest"
)

// kitchen draws a job as kitchens have them, invented here: n pieces of one or two heights, some
// narrow, some short as above and below a window, on sheets of 48 x 96 with a repeat of 1-5/8;
// measures on sixteenths.
func kitchen(r *rand.Rand, n int, mirrored bool) nest.Problem {
	sixteenths := func(low, high int) fraction.Length { return fraction.Of(int64(low*16+r.IntN((high-low)*16)), 16) }
	p := nest.Problem{
		Stock: []nest.Stock{
			{Name: "sheet", Width: inches("48"), Length: inches("96"), Price: money.MustParse("24.98")},
		},
		Pattern: nest.Pattern{Pitch: inches("1-5/8"), Mirrored: mirrored, Axis: inches("11/16")},
		Saw:     nest.Saw{Kerf: inches("1/8"), SquareUp: inches("1/4")},
	}
	heights := []fraction.Length{sixteenths(16, 22), sixteenths(30, 50)}
	for i := range n {
		q := nest.Part{Number: i + 1, Height: heights[r.IntN(2)], Width: sixteenths(30, 46), LeftPhase: fraction.Of(r.Int64N(26), 16)}
		switch r.IntN(4) {
		case 0:
			q.Width = sixteenths(3, 30)
		case 1:
			q.Height = sixteenths(4, 30)
		}
		p.Parts = append(p.Parts, q)
	}
	return p
}

// backsplash is a run of 240 in, 18 in high, in five widths of a 48 x 96 sheet.
func backsplash() nest.Problem {
	p := nest.Problem{
		Stock:   []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("96")}},
		Pattern: nest.Pattern{Pitch: inches("1-1/2")},
		Saw:     nest.Saw{Kerf: inches("1/8"), SquareUp: inches("1/4")},
	}
	for n := range 5 {
		p.Parts = append(p.Parts, nest.Part{Number: n + 1, Width: inches("48"), Height: inches("18")})
	}
	return p
}

// TestBacksplashTakesOneSheet: 5 x 18 and 4 kerfs are 90-1/2, and 95-1/2 are left of 96 when both
// ends are square.
func TestBacksplashTakesOneSheet(t *testing.T) {
	p := backsplash()
	for name, find := range map[string]func() (nest.Result, error){
		"FirstFit": func() (nest.Result, error) { return nest.FirstFit(p) },
		"Search":   func() (nest.Result, error) { return nest.Search(context.Background(), p, nest.Budget{}) },
	} {
		r, err := find()
		if err != nil {
			t.Fatal(err)
		}
		if len(r.Sheets) != 1 || len(r.Unplaced) > 0 || !r.Bound.Proved || r.Status != nest.Proved {
			t.Errorf("%s: %d sheets, %v unplaced, %+v", name, len(r.Sheets), r.Unplaced, r.Bound)
		}
		if err := nest.Verify(p, r); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if got := len(r.Sheets[0].Cuts); got != 7 {
			t.Errorf("%s: %d cuts, want 2 to square up and one for each part", name, got)
		}
	}
}

// TestKitchensAreProved: jobs of up to 25 parts, each proved best within a small budget; about one
// in ten needs more than the bounds without search.
func TestKitchensAreProved(t *testing.T) {
	for _, n := range []int{8, 15, 20, 25} {
		for seed := range uint64(10) {
			name := fmt.Sprintf("n=%d seed=%d", n, seed)
			p := kitchen(rand.New(rand.NewPCG(seed, uint64(n))), n, seed%2 == 0)
			r, err := nest.Search(context.Background(), p, nest.Budget{Nodes: 2_000_000})
			if err != nil {
				t.Fatal(err)
			}
			if !r.Bound.Proved {
				t.Errorf("%s: %d sheets, %+v, %d nodes", name, len(r.Sheets), r.Bound, r.Nodes)
			}
			if err := nest.Verify(p, r); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}
