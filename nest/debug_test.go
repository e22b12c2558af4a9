package nest

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"example.com/groovewright/fraction"
)

func kitchenX(r *rand.Rand, n int, mirrored bool) Problem {
	inches := fraction.MustParse
	sixteenths := func(low, high int) fraction.Length { return fraction.Of(int64(low*16+r.IntN((high-low)*16)), 16) }
	p := Problem{
		Stock:   []Stock{{Name: "sheet", Width: inches("48"), Length: inches("96"), Price: fraction.NewRatio(2498, 100)}},
		Pattern: Pattern{Pitch: inches("1-5/8"), Mirrored: mirrored, Axis: inches("11/16")},
		Saw:     Saw{Kerf: inches("1/8"), SquareUp: inches("1/4")},
	}
	heights := []fraction.Length{sixteenths(16, 22), sixteenths(30, 50)}
	for i := range n {
		q := Part{Number: i + 1, Height: heights[r.IntN(2)], Width: sixteenths(30, 46), LeftPhase: fraction.Of(r.Int64N(26), 16)}
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

func TestDebug(t *testing.T) {
	debug = true
	for _, c := range [][2]int{{20, 1}, {25, 1}, {25, 2}, {25, 3}, {25, 4}} {
		fmt.Println("=====", c)
		p := kitchenX(rand.New(rand.NewPCG(uint64(c[1]), uint64(c[0]))), c[0], c[1]%2 == 0)
		r, _ := Search(context.Background(), p, Budget{})
		fmt.Println(len(r.Sheets), r.Bound, r.Nodes)
	}
}
