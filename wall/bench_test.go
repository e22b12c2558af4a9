package wall_test

import (
	"context"
	"fmt"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

func in(s string) fraction.Length { return fraction.MustParse(s) }

// bead is a 1-1/2 in bead in plain figures.
func bead() groove.Profile {
	return groove.Profile{Name: "bead", Thickness: in("1/4"), Features: []groove.Feature{
		{Kind: groove.Flat, Width: in("1 1/4")},
		{Kind: groove.Bead, Width: in("1/4"), Depth: in("1/16")},
	}}
}

// room returns a room of n runs as a kitchen has them, with windows, boxes and tall parts, all
// joined by inside corners. The figures are invented.
func room(n int) wall.Room {
	r := wall.Room{
		Profile: bead(), Mark: in("1/16"), Priorities: wall.DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: in("48"), Length: in("95 1/2")}},
		Gaps:  wall.Gaps{Top: in("1/8"), Bottom: in("1/8"), Side: in("1/16"), Seam: in("1/16"), Box: in("1/16"), Window: in("1/8")},
	}
	for i := range n {
		width := in("119 5/16").Add(in("1/16").Mul(int64(i * 7 % 11)))
		run := wall.Run{Name: fmt.Sprint("run ", i), Width: width, Left: wall.End{Kind: wall.InsideCorner}, Right: wall.End{Kind: wall.InsideCorner}}
		run.Heights = []wall.Height{{Top: in("18")}, {At: width, Top: in("18 1/4")}}
		at := in("12").Add(in("3/16").Mul(int64(i % 5)))
		switch i % 3 {
		case 0:
			run.Openings = []wall.Opening{{Name: "window", Kind: wall.Window, Outline: cutout.Rectangle(at.Add(in("20")), in("6"), in("36"), in("30"))}}
		case 1:
			run.Heights = []wall.Height{{Top: in("18")}, {At: in("45"), Top: in("18")}, {At: in("45"), Top: in("30")}, {At: in("75"), Top: in("30")}, {At: in("75"), Top: in("18")}, {At: width, Top: in("18")}}
		}
		run.Openings = append(run.Openings, wall.Opening{Name: "box", Kind: wall.Box, Outline: cutout.Rectangle(at, in("6"), in("2 1/4"), in("3 3/4"))})
		r.Runs = append(r.Runs, run)
	}
	r.Runs[0].Left.Kind, r.Runs[n-1].Right.Kind = wall.Exposed, wall.Exposed
	return r
}

// benchmarkFirst times the first layout of a room.
func benchmarkFirst(b *testing.B, r wall.Room) {
	for b.Loop() {
		for _, err := range wall.Layouts(context.Background(), r) {
			if err != nil {
				b.Fatal(err)
			}
			break
		}
	}
}

// BenchmarkFirstLayout times the first layout of rooms by the number of runs. Forty runs of ten
// feet should take less than fifty times as long as four.
func BenchmarkFirstLayout(b *testing.B) {
	for _, n := range []int{4, 40} {
		b.Run(fmt.Sprint("runs=", n), func(b *testing.B) { benchmarkFirst(b, room(n)) })
	}
}

// BenchmarkClosedRoom times the first layout of a room panelled all round.
func BenchmarkClosedRoom(b *testing.B) {
	for _, n := range []int{4, 12} {
		b.Run(fmt.Sprint("runs=", n), func(b *testing.B) {
			r := room(n)
			r.Closed = true
			r.Runs[0].Left.Kind, r.Runs[n-1].Right.Kind = wall.InsideCorner, wall.InsideCorner
			benchmarkFirst(b, r)
		})
	}
}

// BenchmarkNextLayouts times the layouts after the first.
func BenchmarkNextLayouts(b *testing.B) {
	r := room(4)
	for b.Loop() {
		n := 0
		for _, err := range wall.Layouts(context.Background(), r) {
			if err != nil {
				b.Fatal(err)
			}
			if n++; n == 1000 {
				break
			}
		}
	}
	b.ReportMetric(1000, "layouts/op")
}
