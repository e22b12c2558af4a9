package nest_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// kitchen draws a job as kitchens have them: n panels of one or two heights, the
// widths what a sheet allows or what is left, some pieces above and below
// windows; measures on sixteenths.
func kitchen(r *rand.Rand, n int, mirrored bool) nest.Problem {
	sixteenths := func(low, high int) fraction.Length { return fraction.Of(int64(low*16+r.IntN((high-low)*16)), 16) }
	p := nest.Problem{
		Stock: []nest.Stock{
			{Name: "sheet", Width: inches("48"), Length: inches("96"), Price: fraction.NewRatio(2498, 100)},
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

func TestKitchens(t *testing.T) {
	for _, n := range []int{8, 15, 20, 25} {
		for seed := range uint64(10) {
			p := kitchen(rand.New(rand.NewPCG(seed, uint64(n))), n, seed%2 == 0)
			first, _ := nest.FirstFit(p)
			start := time.Now()
			r, err := nest.Search(context.Background(), p, nest.Budget{})
			if err != nil {
				t.Fatal(err)
			}
			took := time.Since(start)
			if err := nest.Verify(p, r); err != nil {
				t.Error(err)
			}
			fmt.Printf("n=%d seed=%d first %d found %d bound %d proved %v nodes %d %v %s\n", n, seed, len(first.Sheets), len(r.Sheets), first.Bound.Sheets, r.Bound.Proved, r.Nodes, took.Round(100*time.Microsecond), r.Bound.How)
		}
	}
}
