package cutout_test

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/fractiontest"
)

// source reads values from the bytes of a fuzz input; where these end, zeros.
type source []byte

func (s *source) byte() int64 {
	if len(*s) == 0 {
		return 0
	}
	b := (*s)[0]
	*s = (*s)[1:]
	return int64(int8(b))
}

// length is mostly one of sixteenths, and at times among the largest, smallest and oddest there
// are.
func (s *source) length() fraction.Length {
	wild := [...]fraction.Length{
		in(math.MaxInt64), in(-math.MaxInt64), in(1 << 40), of(1, math.MaxInt64), of(-1, math.MaxInt64-1), of(1, 1<<40),
		of(math.MaxInt64, math.MaxInt64-1), fraction.Millimetres(1, 1<<30), of(1<<62-1, 1<<31-1), {},
	}
	n := s.byte()
	if n >= int64(128-len(wild)) {
		return wild[127-n]
	}
	return of(n, 16)
}

func (s *source) point() cutout.Point { return cutout.Point{X: s.length(), Y: s.length()} }

func (s *source) ring() (ring []cutout.Point) {
	for range s.byte() & 7 {
		ring = append(ring, s.point())
	}
	return ring
}

// FuzzWild calls everything with any values: nothing may panic, and a shape that is found has its
// form.
func FuzzWild(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add([]byte{4, 0, 0, 64, 0, 64, 64, 0, 64, 4, 16, 16, 32, 16, 32, 32, 16, 32, 20, 24})     // a hole
	f.Add([]byte{4, 0, 0, 64, 0, 64, 64, 0, 64, 3, 16, 16, 96, 16, 96, 32, 20, 96})             // a notch
	f.Add([]byte{4, 0, 0, 64, 64, 64, 0, 0, 64, 3, 0, 0, 1, 1, 2, 0, 0, 32})                    // a bow tie
	f.Add([]byte{4, 0, 0, 64, 0, 64, 64, 0, 64, 4, 16, 16, 96, 32, 96, 16, 16, 32, 5, 6, 7, 8}) // a bow tie cut out
	f.Add([]byte{4, 0, 0, 127, 0, 127, 127, 0, 127, 4, 1, 1, 124, 1, 126, 126, 1, 120, 120, 124, 123})
	f.Fuzz(func(t *testing.T, data []byte) {
		s := source(data)
		outline, clip := s.ring(), s.ring()
		shape, err := cutout.NewShape(outline)
		if err != nil {
			if all := fault.All(err); len(all) == 0 || all[0].Path[0].Name != "Outline" {
				t.Fatalf("error without a place: %v", err)
			}
		}
		if holed, err := cutout.NewShape(outline, clip); err == nil {
			shape = holed
		}
		shapes := []cutout.Shape{{}, shape}
		for _, cut := range []func() ([]cutout.Shape, error){
			func() ([]cutout.Shape, error) { return shape.Minus(clip) },
			func() ([]cutout.Shape, error) { return shape.Within(clip) },
			func() ([]cutout.Shape, error) { return shape.Band(s.length(), s.length()) },
			func() ([]cutout.Shape, error) { return shape.ClipLine(s.point(), s.point()) },
		} {
			pieces, err := cut()
			if err != nil && pieces != nil {
				t.Fatalf("pieces beside the error %v", err)
			}
			snapped, _ := cutout.Snap(pieces, s.length(), s.length(), nil)
			shapes = append(append(shapes, pieces...), snapped...)
		}
		for _, p := range shapes {
			if !p.IsEmpty() {
				checkForm(t, p)
			}
			_, _ = p.Move(s.length(), s.length())
			_, _ = p.Cells()
			_, _ = p.Area()
			_, _ = p.Marks()
			_, _ = p.Cuttings(s.length(), s.length())
			_, _ = p.WeakSpots(cutout.Limits{Strip: s.length(), Corner: s.length(), LegRatio: s.length().Over(in(1))})
			p.Contains(s.point())
			p.Uprights()
			p.Bounds()
			data, err := json.Marshal(p)
			if err != nil {
				t.Fatal(err)
			}
			var back cutout.Shape
			if err := json.Unmarshal(data, &back); err == nil && !back.Equal(p) {
				t.Fatalf("%v reads back as %v", p, back)
			}
		}
		side := cutout.Side(s.byte())
		_, _ = cutout.Radius(s.length(), s.length())
		_, _ = cutout.Arc(s.point(), s.length(), s.length(), s.length(), s.length())
		_, _ = cutout.Grow(outline, s.length())
		_, _ = cutout.HeightAt(s.point(), s.point(), s.length())
		cutout.Rectangle(s.length(), s.length(), s.length(), s.length())
		cutout.BoundsOverlap(outline, clip)
		var taped []cutout.Taped
		for range s.byte() & 3 {
			taped = append(taped, cutout.Taped{From: s.point(), Distance: s.length()})
		}
		located, _ := cutout.Locate(taped, side, s.length())
		located.Worst()
	})
}

// FuzzAreas holds what is cut against the law that areas add up.
func FuzzAreas(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add([]byte{4, 0, 0, 64, 0, 64, 64, 0, 64, 4, 16, 16, 32, 16, 32, 32, 16, 32})
	f.Add([]byte{5, 0, 0, 64, 3, 64, 64, 9, 80, 0, 64, 4, 16, 16, 96, 32, 96, 16, 16, 32})
	f.Fuzz(func(t *testing.T, data []byte) {
		s := source(data)
		outline, clip := s.ring(), s.ring()
		shape, err := cutout.NewShape(outline)
		if err != nil {
			return
		}
		left, err := shape.Minus(clip)
		if err != nil {
			return
		}
		taken, err := shape.Within(clip)
		if err != nil {
			return
		}
		if sum := areaOf(left); sum.Add(sum, areaOf(taken)).Cmp(slowArea(shape)) != 0 {
			t.Fatalf("minus and within do not add up: %v less %v", shape, clip)
		}
	})
}

// FuzzLocate gives any distances to Locate; what it finds must be within its own bound of the taped
// distances.
func FuzzLocate(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add(int16(0), int16(0), int16(120), int16(0), int16(72), int16(96), true)
	f.Add(int16(0), int16(0), int16(10), int16(0), int16(4), int16(5), false) // too short
	f.Add(int16(3), int16(3), int16(3), int16(3), int16(4), int16(5), false)  // one point
	f.Add(int16(0), int16(0), int16(7), int16(5), int16(8), int16(6), true)   // irrational
	f.Fuzz(func(t *testing.T, ax, ay, bx, by, a, b int16, left bool) {
		side := cutout.Right
		if left {
			side = cutout.Left
		}
		got, err := cutout.Locate([]cutout.Taped{taped(int64(ax), int64(ay), int64(a)), taped(int64(bx), int64(by), int64(b))}, side, of(1, 16))
		if err != nil {
			var at *fault.Fault
			if !errors.As(err, &at) || len(at.Path) != 2 {
				t.Fatalf("error without a place: %v", err)
			}
			return
		}
		if _, off := got.Worst(); got.Within.Add(of(1, 16*1024)).Less(off) {
			t.Fatalf("closing errors %v beyond the bound %v", got.Closing, got.Within)
		}
	})
}
