package cutout_test

import (
	"fmt"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// stepped is a wall of n steps with a sloped top, two openings in each step.
func stepped(tb testing.TB, n int64) cutout.Shape {
	outline := []cutout.Point{at(0, 0), at(20*n, 0)}
	var holes [][]cutout.Point
	for i := n - 1; i >= 0; i-- {
		outline = append(outline,
			cutout.Point{X: in(20 * (i + 1)), Y: of(16*(40+3*i)+5, 16)},
			cutout.Point{X: in(20 * i), Y: of(8*(40+3*i)+1, 8)})
		holes = append(holes, rect(20*i+3, 10, 3, 5), rect(20*i+12, 12, 5, 5))
	}
	return mustShape(tb, outline, holes...)
}

func BenchmarkBand(b *testing.B) {
	sixteenth := of(1, 16)
	b.Run("n=4", func(b *testing.B) {
		s := mustShape(b, rect(0, 0, 100, 40))
		b.ReportAllocs()
		for b.Loop() {
			band(s, in(7), in(55), sixteenth)
		}
	})
	for _, n := range []int64{1, 5} {
		s := stepped(b, n)
		b.Run(fmt.Sprintf("n=%d", 12*n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				band(s, in(4), of(299*n, 16), sixteenth)
			}
		})
	}
}

func BenchmarkMinus(b *testing.B) {
	s := stepped(b, 5)
	clip := cutout.Rectangle(in(22), in(30), in(30), in(90))
	b.ReportAllocs()
	for b.Loop() {
		minus(s, clip, of(1, 16))
	}
}

func BenchmarkCells(b *testing.B) {
	s := stepped(b, 5)
	b.ReportAllocs()
	for b.Loop() {
		must(s.Cells())
	}
}

var sinkArea fraction.Area

func BenchmarkArea(b *testing.B) {
	s := stepped(b, 5)
	b.ReportAllocs()
	for b.Loop() {
		sinkArea = must(s.Area())
	}
}

func BenchmarkWeakSpots(b *testing.B) {
	for _, n := range []int64{1, 5} {
		s := stepped(b, n)
		b.Run(fmt.Sprintf("n=%d", 12*n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				must(s.WeakSpots(usual))
			}
		})
	}
}

func BenchmarkCuttings(b *testing.B) {
	s := stepped(b, 1)
	b.ReportAllocs()
	for b.Loop() {
		must(s.Cuttings(of(3, 8), of(1, 16)))
	}
}

func BenchmarkLocate(b *testing.B) {
	ties := []cutout.Taped{taped(0, 0, 50), taped(81, 0, 51), taped(40, -10, 40)}
	for n := 2; n <= 3; n++ {
		b.Run(fmt.Sprintf("n=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := cutout.Locate(ties[:n], cutout.Left, of(1, 16)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkArc(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := cutout.Arc(at(0, 0), in(36), in(6), of(1, 8), of(1, 16)); err != nil {
			b.Fatal(err)
		}
	}
}
