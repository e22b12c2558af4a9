package wall_test

import (
	"context"
	"fmt"
	"os"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
)

// coupledRoom returns a room of n runs, panelled all round if closed: every corner is an inside one,
// and each run has a step and a box or a window. The figures are invented.
func coupledRoom(n int, closed bool) wall.Room {
	r := wall.Room{
		Profile: bead(), Closed: closed, Mark: in("1/16"), Priorities: wall.DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: in("48"), Length: in("96")}},
		Saw:   nest.Saw{Kerf: in("1/8")},
		Gaps:  wall.Gaps{Top: in("1/8"), Bottom: in("1/8"), Side: in("1/16"), Seam: in("1/16"), Box: in("1/16"), Window: in("1/8")},
	}
	for i := range int64(n) {
		sixteenths := func(base int64, times, of int64) fraction.Length { return fraction.Of(16*base+i*times%of, 16) }
		width, step := sixteenths(96, 37, 491), sixteenths(60, 29, 163)
		low, high := sixteenths(18, 5, 61), sixteenths(30, 11, 83)
		run := wall.Run{Name: fmt.Sprint("run ", i), Width: width, Left: wall.End{Kind: wall.InsideCorner}, Right: wall.End{Kind: wall.InsideCorner},
			Heights: []wall.Height{{Top: low}, {At: step, Top: low}, {At: step, Top: high}, {At: width, Top: high}}}
		if i%2 == 0 {
			run.Openings = []wall.Opening{{Name: "box", Kind: wall.Box, Outline: cutout.Rectangle(sixteenths(12, 41, 311), in("6"), in("2 1/4"), in("4"))}}
		} else {
			run.Openings = []wall.Opening{{Name: "window", Kind: wall.Window, Outline: cutout.Rectangle(sixteenths(14, 43, 287), in("7"), in("20"), in("60"))}}
		}
		r.Runs = append(r.Runs, run)
	}
	return r
}

// BenchmarkCoupledRoom plans rooms whose corners all couple, by their runs: the first layout alone, and
// the whole trade-off. It reports the processor time too, as other work on the machine does not count.
func BenchmarkCoupledRoom(b *testing.B) {
	timed := func(name string, f func(b *testing.B)) {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			before := fractiontest.ProcessorTime(os.Getpid())
			f(b)
			b.ReportMetric((fractiontest.ProcessorTime(os.Getpid())-before).Seconds()*1000/float64(b.N), "cpu-ms/op")
		})
	}
	for _, closed := range []bool{false, true} {
		for _, n := range []int{8, 40, 100} {
			if n > 8 && testing.Short() {
				continue
			}
			r := coupledRoom(n, closed)
			timed(fmt.Sprintf("first/closed=%v/runs=%d", closed, n), func(b *testing.B) { benchmarkFirst(b, r) })
			timed(fmt.Sprintf("explore/closed=%v/runs=%d", closed, n), func(b *testing.B) {
				for b.Loop() {
					if _, err := choice.Explore(context.Background(), r, choice.Budget{}); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
