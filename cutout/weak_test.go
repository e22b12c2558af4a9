package cutout_test

import (
	"fmt"
	"math/big"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// usual limits of sheets of 1/4 in.
var usual = cutout.Limits{Strip: of(3, 4), Corner: of(3, 2), LegRatio: fraction.NewRatio(8, 1)}

func TestWeakSpots(t *testing.T) {
	limits := usual
	half := of(1, 2)
	tests := []struct {
		name string
		s    cutout.Shape
		want []string
	}{
		{"sound", mustShape(t, rect(0, 0, 48, 20), rect(10, 8, 2, 3)), nil},
		{"exactly the least strip", mustShape(t, rect(0, 0, 48, 20), cutout.Rectangle(of(3, 4), in(8), in(2), in(3))),
			[]string{"corner 3/4 × 0 at (3/4, 8) between 0 and -1: drill the corner", "corner 3/4 × 0 at (3/4, 11) between 0 and -1: drill the corner"}},
		{"exactly the least at a corner", mustShape(t, rect(0, 0, 48, 20), cutout.Rectangle(of(3, 2), in(8), in(2), in(3))), nil},
		{"box near the left edge", mustShape(t, rect(0, 0, 48, 20), cutout.Rectangle(half, in(8), in(2), in(3))),
			[]string{"strip 1/2 × 3 at (1/4, 9 1/2) between -1 and 0: move the seam"}},
		{"box near the lower edge", mustShape(t, rect(0, 0, 48, 20), cutout.Rectangle(in(8), half, in(2), in(3))),
			[]string{"strip 1/2 × 2 at (9, 1/4) between -1 and 0: let the cutout run out"}},
		{"two boxes side by side", mustShape(t, rect(0, 0, 48, 20), rect(8, 8, 2, 3), cutout.Rectangle(of(21, 2), in(8), in(2), in(3))),
			[]string{"strip 1/2 × 3 at (10 1/4, 9 1/2) between 0 and 1: join the cutouts"}},
		{"two boxes corner to corner", mustShape(t, rect(0, 0, 48, 20), rect(8, 8, 2, 3), cutout.Rectangle(of(103, 10), of(57, 5), in(2), in(3))),
			[]string{"strip 1/2 × 0 at (10 5/32, 11 13/64) between 0 and 1: join the cutouts"}},
		{"a piece that is a wedge", mustShape(t, []cutout.Point{at(0, 0), {X: half, Y: in(20)}, at(0, 20)}),
			[]string{"strip 0 × 20 at (0, 0) between -1 and -1: widen the piece"}},
		{"thin arm beside a notch", mustShape(t, []cutout.Point{at(0, 0), at(20, 0), at(20, 10), {X: half, Y: in(10)}, {X: half, Y: in(18)}, {Y: in(18)}}),
			[]string{"leg 1/2 × 8 at (1/4, 14) between -1 and -1: part the leg"}},
		{"a stub is stout enough", mustShape(t, []cutout.Point{at(0, 0), at(20, 0), at(20, 10), {X: half, Y: in(10)}, {X: half, Y: in(11)}, {Y: in(11)}}),
			[]string{"corner 1/2 × 0 at (1/2, 10) between -1 and -1: drill the corner"}},
		{"a narrow notch in sound material", mustShape(t, ring(0, 0, 48, 0, 48, 20, 25, 20, 25, 17, 24, 17, 24, 20, 0, 20)), nil},
		{"long leg beside a window", mustShape(t, ring(0, 0, 48, 0, 48, 10, 3, 10, 3, 60, 0, 60)),
			[]string{"leg 3 × 50 at (1 1/2, 35) between -1 and -1: part the leg"}},
		{"the same leg, short", mustShape(t, ring(0, 0, 48, 0, 48, 10, 3, 10, 3, 34, 0, 34)), nil},
		{"a long narrow piece is no leg", mustShape(t, rect(0, 0, 3, 60)), nil},
		{"legs either side of a notch", mustShape(t, ring(0, 0, 2, 0, 2, 20, 30, 20, 30, 0, 32, 0, 32, 24, 0, 24)),
			[]string{"leg 2 × 20 at (1, 10) between -1 and -1: part the leg", "leg 2 × 20 at (31, 10) between -1 and -1: part the leg"}},
		{"narrower than a strip all over", mustShape(t, cutout.Rectangle(zero, zero, half, in(60))),
			[]string{"strip 1/2 × 60 at (1/4, 30) between -1 and -1: widen the piece"}},
		{"lower than a strip all over", mustShape(t, cutout.Rectangle(zero, zero, in(60), half)),
			[]string{"strip 1/2 × 60 at (30, 1/4) between -1 and -1: widen the piece"}},
		{"tip of 45 degrees", mustShape(t, ring(0, 0, 20, 0, 20, 20)), nil},
		{"tip of 1 in 10", mustShape(t, ring(0, 0, 20, 0, 20, 2)), []string{"leg 0 × 7 1/2 at (0, 0) between -1 and -1: part the leg"}},
		{"slanting strip of 3-4-5: 5/8 upright is 1/2 square", mustShape(t, []cutout.Point{at(0, 0), at(40, 0), at(40, 40), at(0, 40)},
			[]cutout.Point{at(10, 10), {X: in(18), Y: in(16)}, {X: in(10), Y: in(16)}},
			[]cutout.Point{{X: in(10), Y: of(75, 8)}, {X: in(18), Y: of(75, 8)}, {X: in(18), Y: of(123, 8)}}),
			[]string{"strip 1/2 × 8 at (14, 12 11/16) between 0 and 1: join the cutouts"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			var got []string
			for _, w := range must(test.s.WeakSpots(limits)) {
				got = append(got, fmt.Sprintf("%v %v × %v at (%v, %v) between %d and %d: %v", w.Kind, w.Width, w.Length, w.At.X, w.At.Y, w.Rings[0], w.Rings[1], w.WayOut))
			}
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// In a sheet with upright rectangular holes every gap can be worked out from the
// sides: hole to edge, hole beside or above hole, and corner to corner. The
// narrowest strip reported must be the narrowest gap, and none is reported where
// no gap is too narrow.
func TestNarrowestStripEqualsTheNarrowestGap(t *testing.T) {
	weak := 0
	rapid.Check(t, func(t *rapid.T) {
		type hole struct{ left, bottom, right, top fraction.Length }
		var holes []hole
		var rings [][]cutout.Point
		for range rapid.IntRange(1, 4).Draw(t, "holes") {
			h := hole{left: drawLength(t, 1, 18, "left"), bottom: drawLength(t, 1, 18, "bottom")}
			h.left, h.bottom = h.left.Sub(of(7, 8)), h.bottom.Sub(of(7, 8))
			w, u := drawLength(t, 1, 4, "width"), drawLength(t, 1, 4, "height")
			h.right, h.top = h.left.Add(w), h.bottom.Add(u)
			holes = append(holes, h)
			rings = append(rings, cutout.Rectangle(h.left, h.bottom, w, u))
		}
		size := in(24)
		s, err := cutout.NewShape(cutout.Rectangle(zero, zero, size, size), rings...)
		if err != nil {
			t.Skip(err) // holes overlap
		}
		// Squares of gaps, as one of them may be slanting.
		var least *big.Rat
		note := func(across, up fraction.Length) {
			square := new(big.Rat).Add(new(big.Rat).Mul(across.Rat(), across.Rat()), new(big.Rat).Mul(up.Rat(), up.Rat()))
			if least == nil || square.Cmp(least) < 0 {
				least = square
			}
		}
		for i, h := range holes {
			for _, gap := range []fraction.Length{h.left, h.bottom, size.Sub(h.right), size.Sub(h.top)} {
				note(gap, zero)
			}
			for _, g := range holes[:i] {
				note(fraction.Max(zero, g.left.Sub(h.right), h.left.Sub(g.right)), fraction.Max(zero, g.bottom.Sub(h.top), h.bottom.Sub(g.top)))
			}
		}
		limits := cutout.Limits{Strip: of(3, 4), LegRatio: fraction.NewRatio(1000, 1)}
		var narrowest *big.Rat
		for _, w := range must(s.WeakSpots(limits)) {
			if w.Kind != cutout.Strip {
				t.Fatalf("%v in a sheet with holes only", w)
			}
			if narrowest == nil || w.Width.Rat().Cmp(narrowest) < 0 {
				narrowest = w.Width.Rat()
			}
		}
		switch limit := new(big.Rat).Mul(limits.Strip.Rat(), limits.Strip.Rat()); {
		case least.Cmp(limit) >= 0:
			if narrowest != nil {
				t.Fatalf("strip of %v reported, narrowest gap squared is %v", narrowest, least)
			}
		case narrowest == nil:
			t.Fatalf("no strip reported, narrowest gap squared is %v", least)
		default:
			weak++
			above := new(big.Rat).Add(narrowest, big.NewRat(1, 1024))
			if new(big.Rat).Mul(narrowest, narrowest).Cmp(least) > 0 || new(big.Rat).Mul(above, above).Cmp(least) < 0 {
				t.Fatalf("narrowest strip %v, narrowest gap squared %v", narrowest, least)
			}
		}
	})
	if weak == 0 {
		t.Error("no sheet ever had a weak strip")
	}
}

// The edge between two corners is no neck, though its middle, off every grain, may
// look solid once it is rounded: the flat top of this notch is 25/48 long.
func TestTheEdgeBetweenCornersIsNoNeck(t *testing.T) {
	foot := cutout.Point{}
	top := of(1*127+3, 127)
	s := cutout.Raw([]cutout.Point{
		foot, {X: of(25, 48), Y: top}, {X: of(25, 24), Y: top}, {X: of(25, 16), Y: of(65, 127)}, {X: of(5, 2), Y: foot.Y}, {X: of(5, 2), Y: in(10)}, {X: foot.X, Y: in(10)},
	})
	for _, w := range must(s.WeakSpots(usual)) {
		if w.At.X == of(25, 32) {
			t.Errorf("a weak spot in the middle of an edge: %+v", w)
		}
	}
}

// A piece seen from behind has weak spots of the same kinds. (Not the same
// number: two spots that round to one place are one.)
func TestWeakSpotsOfTheMirroredPiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s := drawShape(t)
		kinds := func(s cutout.Shape) (has [3]bool) {
			for _, w := range must(s.WeakSpots(usual)) {
				has[w.Kind] = true
			}
			return has
		}
		if got, want := kinds(mirror(s, in(100))), kinds(s); got != want {
			t.Fatalf("mirrored %v, face %v", got, want)
		}
	})
}

// No seam that is moved widens a strip that runs across, so that its way out is
// another than that of one which runs up. The figures are worked by hand: a
// sheet of 20 by 18 with a hole of 3 by 3, 1/2 from its left edge or from the
// lower edge of a notch above it.
func TestWayOutFollowsTheWayThatTheStripRuns(t *testing.T) {
	notched := ring(0, 0, 20, 0, 20, 12, 4, 12, 4, 18, 0, 18)
	for _, test := range []struct {
		name string
		hole []cutout.Point
		want cutout.WayOut
	}{
		{"beside the left edge", cutout.Rectangle(of(1, 2), in(5), in(3), in(3)), cutout.MoveSeam},
		{"under the notch", cutout.Rectangle(in(10), of(17, 2), in(3), in(3)), cutout.RunOut},
	} {
		s := mustShape(t, notched, test.hole)
		spots := must(s.WeakSpots(cutout.Limits{Strip: of(3, 4), LegRatio: fraction.NewRatio(1000, 1)}))
		if len(spots) != 1 || spots[0].Kind != cutout.Strip || spots[0].Width != of(1, 2) || spots[0].Length != in(3) {
			t.Errorf("%s: %+v, want one strip of 1/2 by 3", test.name, spots)
			continue
		}
		if spots[0].WayOut != test.want {
			t.Errorf("%s: way out %v, want %v", test.name, spots[0].WayOut, test.want)
		}
	}
}

// Two holes of which one ends where the other begins, one above the other: the
// neck between their corners has no length across, and is a strip all the same.
func TestNeckBetweenCornersInLineIsAStrip(t *testing.T) {
	s := mustShape(t, rect(0, 0, 20, 20), rect(4, 4, 6, 6), cutout.Rectangle(in(10), of(41, 4), in(6), in(6)))
	spots := must(s.WeakSpots(cutout.Limits{Strip: of(3, 4), LegRatio: fraction.NewRatio(1000, 1)}))
	found := false
	for _, w := range spots {
		found = found || w.Kind == cutout.Strip && w.Width == of(1, 4) && w.At == (cutout.Point{X: in(10), Y: of(81, 8)})
	}
	if !found {
		t.Errorf("%+v, want a strip of 1/4 at (10, 10 1/8)", spots)
	}
}

func TestLengthsThatABigNumberIs(t *testing.T) {
	over := new(big.Int).Lsh(big.NewInt(1), 64)
	for _, test := range []struct {
		name     string
		num, den *big.Int
		want     fraction.Length
		fits     bool
	}{
		{"3/4", big.NewInt(3), big.NewInt(4), of(3, 4), true},
		{"the greatest", big.NewInt(1<<63 - 1), big.NewInt(1), in(1<<63 - 1), true},
		{"the least int64", big.NewInt(-1 << 63), big.NewInt(1), zero, false},
		{"too great", new(big.Int).Add(over, big.NewInt(1)), big.NewInt(2), zero, false},
		{"too fine", big.NewInt(1), over, zero, false},
	} {
		if got, ok := cutout.Fit(new(big.Rat).SetFrac(test.num, test.den)); got != test.want || ok != test.fits {
			t.Errorf("%s: %v, %v", test.name, got, ok)
		}
	}
}
