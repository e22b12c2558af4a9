package cutout_test

import (
	"errors"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// pointsFrom reads corners from bytes, two to a coordinate, in sixteenths.
func pointsFrom(data []byte) (points []cutout.Point) {
	for ; len(data) >= 2 && len(points) < 24; data = data[2:] {
		points = append(points, cutout.Point{X: of(int64(int8(data[0])), 16), Y: of(int64(int8(data[1])), 16)})
	}
	return points
}

// FuzzShapes gives any corners to everything that takes corners. Whatever passes
// NewShape must keep the laws of areas; whatever does not must still not panic,
// as a caller may fill in a Shape himself.
func FuzzShapes(f *testing.F) {
	f.Add([]byte{0, 0, 64, 0, 64, 64, 0, 64}, []byte{16, 16, 32, 16, 32, 32, 16, 32}, int8(20), int8(24)) // a hole
	f.Add([]byte{0, 0, 64, 0, 64, 64, 0, 64}, []byte{16, 16, 96, 16, 96, 32}, int8(20), int8(96))         // a notch
	f.Add([]byte{0, 0, 64, 64, 64, 0, 0, 64}, []byte{0, 0, 1, 1, 2, 0}, int8(0), int8(32))                // a bow tie
	f.Add([]byte{0, 0, 9, 1, 3, 7, 5, 5}, []byte{0, 0, 0, 0, 0, 0}, int8(-1), int8(4))                    // nothing cut
	f.Fuzz(func(t *testing.T, a, b []byte, low, high int8) {
		defer func() {
			if fault := recover(); fault != nil {
				if _, ok := fault.(*fraction.OverflowError); !ok {
					panic(fault)
				}
			}
		}()
		outline, clip := pointsFrom(a), pointsFrom(b)
		left, right := of(int64(low), 16), of(int64(high), 16)
		s, err := cutout.NewShape(outline)
		valid := err == nil
		if !valid {
			var ring *cutout.RingError
			if !errors.As(err, &ring) || ring.Hole != -1 {
				t.Fatalf("error without a place: %v", err)
			}
			s = cutout.Shape{Outline: outline, Holes: [][]cutout.Point{clip}}
		}
		bands := s.Band(left, right, zero)
		if n := s.Components(left, right); valid && n != len(bands) {
			t.Fatalf("Components = %d, Band gives %d", n, len(bands))
		}
		minus, within := s.Minus(clip, zero), s.Within(clip, zero)
		if _, err := cutout.NewShape(clip); valid && err == nil {
			sum := areaOf(minus)
			if sum.Add(sum, areaOf(within)).Cmp(slowArea(s)) != 0 {
				t.Fatalf("minus and within do not add up")
			}
		}
		for _, p := range append(minus, s) {
			p.Band(left, right, of(1, 16))
			p.Minus(clip, of(1, 16))
			p.ClipLine(cutout.Point{X: left}, cutout.Point{Y: right}, of(1, 16))
			p.Slabs()
			p.Uprights()
			p.Area()
			p.Marks()
			p.WeakSpots(cutout.UsualLimits())
			for _, c := range p.Cuttings(of(3, 8), of(1, 16)) {
				c.Words("", fraction.Tape{Mark: of(1, 16)})
			}
		}
	})
}

// FuzzLocate gives any distances to Locate; what it finds must be within its own
// bound of the taped distances.
func FuzzLocate(f *testing.F) {
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
			var fault *cutout.TapedError
			if !errors.As(err, &fault) {
				t.Fatalf("error without a place: %v", err)
			}
			return
		}
		if _, off := got.Worst(); got.Within.Add(of(1, 16*1024)).Less(off) {
			t.Fatalf("closing errors %v beyond the bound %v", got.Closing, got.Within)
		}
	})
}
