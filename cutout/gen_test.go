package cutout_test

import (
	"fmt"
	"math/big"
	"slices"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// Walls are drawn the way they are taped: heights at stations, straight between
// them, steps where two stations share a place; openings of three to six corners
// are then cut out. Most lengths are sixteenths, some are millimetres.

func drawLength(t *rapid.T, low, high int64, label string) fraction.Length {
	if rapid.IntRange(0, 9).Draw(t, label+" unit") == 0 {
		return fraction.Millimetres(rapid.Int64Range(low*26, high*25).Draw(t, label+" mm"), 1)
	}
	return of(rapid.Int64Range(low*16, high*16).Draw(t, label+" sixteenths"), 16)
}

// drawRegion returns a wall's outline before openings.
func drawRegion(t *rapid.T) cutout.Shape {
	n := rapid.IntRange(1, 4).Draw(t, "stretches")
	var bottom, top []cutout.Point
	x := zero
	for i := range n {
		next := x.Add(drawLength(t, 2, 40, fmt.Sprintf("width %d", i)))
		for _, at := range []fraction.Length{x, next} {
			bottom = append(bottom, cutout.Point{X: at, Y: drawLength(t, -2, 2, "bottom")})
			top = append(top, cutout.Point{X: at, Y: drawLength(t, 10, 40, "top")})
		}
		x = next
	}
	slices.Reverse(top)
	s, err := cutout.NewShape(append(bottom, top...))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// drawOpening returns a simple outline round a middle: corners in order of angle.
func drawOpening(t *rapid.T) []cutout.Point {
	x, y := drawLength(t, 0, 90, "opening x"), drawLength(t, -2, 40, "opening y")
	w, h := drawLength(t, 1, 20, "opening width"), drawLength(t, 1, 20, "opening height")
	if rapid.Bool().Draw(t, "upright opening") {
		return cutout.Rectangle(x, y, w, h)
	}
	// A horned or arched head: a rectangle with corners cut and a point on top.
	third := w.Div(3)
	corners := []cutout.Point{{X: x, Y: y}, {X: x.Add(w), Y: y}, {X: x.Add(w), Y: y.Add(h)}}
	if rapid.Bool().Draw(t, "clipped corners") {
		corners[1] = cutout.Point{X: x.Add(w), Y: y.Add(h.Div(2))}
		corners[2] = cutout.Point{X: x.Add(third.Mul(2)), Y: y.Add(h)}
		corners = append(corners, cutout.Point{X: x.Add(third), Y: y.Add(h)})
	}
	return corners
}

// drawPieces returns what openings leave of a wall, with exact corners.
func drawPieces(t *rapid.T) []cutout.Shape {
	pieces := []cutout.Shape{drawRegion(t)}
	for range rapid.IntRange(0, 3).Draw(t, "openings") {
		clip := drawOpening(t)
		var left []cutout.Shape
		for _, p := range pieces {
			left = append(left, minus(p, clip, of(1, 16))...)
		}
		pieces = left
	}
	return pieces
}

func drawShape(t *rapid.T) cutout.Shape {
	pieces := drawPieces(t)
	if len(pieces) == 0 {
		return cutout.Shape{}
	}
	return rapid.SampledFrom(pieces).Draw(t, "piece")
}

func drawMark(t *rapid.T) fraction.Length {
	return rapid.SampledFrom([]fraction.Length{of(1, 32), of(1, 16), of(1, 8), of(1, 2), fraction.Millimetres(1, 1)}).Draw(t, "mark")
}

func areaOf(shapes []cutout.Shape) *big.Rat {
	sum := new(big.Rat)
	for _, s := range shapes {
		sum.Add(sum, slowArea(s))
	}
	return sum
}

// checkForm holds a shape that is not empty against the form that the type promises.
func checkForm(t rapid.TB, s cutout.Shape) {
	t.Helper()
	for i, ring := range ringsOf(s) {
		if len(ring) < 3 {
			t.Fatalf("ring %d has %d corners: %v", i-1, len(ring), s)
		}
		for j, p := range ring {
			if p.Y.Less(ring[0].Y) || p.Y == ring[0].Y && p.X.Less(ring[0].X) {
				t.Fatalf("ring %d does not start at its lowest corner: %v", i-1, s)
			}
			if slowSide(ring[(j+len(ring)-1)%len(ring)], p, ring[(j+1)%len(ring)]) == 0 {
				t.Fatalf("corner %v lies within a straight line: %v", p, s)
			}
		}
		area := slowArea(cutout.Raw(ring)).Sign()
		if i == 0 && area <= 0 || i > 0 && area >= 0 {
			t.Fatalf("ring %d runs the wrong way: %v", i-1, s)
		}
		for _, p := range ring {
			if i > 0 && !(cutout.Raw(s.Outline())).Contains(p) {
				t.Fatalf("hole outside the outline: %v", s)
			}
		}
	}
	if slowCrossing(s) {
		t.Fatalf("edges cross: %v", s)
	}
}

// skipOverflow gives up an example whose exact corners or areas do not fit 64
// bits, which happens where odd millimetres and sixteenths meet on slopes.
func skipOverflow(t *rapid.T) {
	switch fault := recover().(type) {
	case nil:
	case *fraction.OverflowError:
		t.Skip(fault)
	default:
		panic(fault)
	}
}
