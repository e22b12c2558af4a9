package cutout_test

import (
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

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
		for _, w := range s.WeakSpots(limits) {
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

// A piece seen from behind has weak spots of the same kinds. (Not the same
// number: two spots that round to one place are one.)
func TestWeakSpotsOfTheMirroredPiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s := drawShape(t)
		kinds := func(s cutout.Shape) (has [3]bool) {
			for _, w := range s.WeakSpots(cutout.UsualLimits()) {
				has[w.Kind] = true
			}
			return has
		}
		if got, want := kinds(s.Mirror(in(100))), kinds(s); got != want {
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
		seam bool
	}{
		{"beside the left edge", cutout.Rectangle(of(1, 2), in(5), in(3), in(3)), true},
		{"under the notch", cutout.Rectangle(in(10), of(17, 2), in(3), in(3)), false},
	} {
		s := mustShape(t, notched, test.hole)
		spots := s.WeakSpots(cutout.Limits{Strip: of(3, 4), LegRatio: fraction.NewRatio(1000, 1)})
		if len(spots) != 1 || spots[0].Kind != cutout.Strip || spots[0].Width != of(1, 2) || spots[0].Length != in(3) {
			t.Errorf("%s: %+v, want one strip of 1/2 by 3", test.name, spots)
			continue
		}
		if got := strings.Contains(spots[0].WayOut, "move the seam"); got != test.seam {
			t.Errorf("%s: way out %q", test.name, spots[0].WayOut)
		}
	}
}

// Two holes of which one ends where the other begins, one above the other: the
// neck between their corners has no length across, and is a strip all the same.
func TestNeckBetweenCornersInLineIsAStrip(t *testing.T) {
	s := mustShape(t, rect(0, 0, 20, 20), rect(4, 4, 6, 6), cutout.Rectangle(in(10), of(41, 4), in(6), in(6)))
	spots := s.WeakSpots(cutout.Limits{Strip: of(3, 4), LegRatio: fraction.NewRatio(1000, 1)})
	found := false
	for _, w := range spots {
		found = found || w.Kind == cutout.Strip && w.Width == of(1, 4) && w.At == (cutout.Point{X: in(10), Y: of(81, 8)})
	}
	if !found {
		t.Errorf("%+v, want a strip of 1/4 at (10, 10 1/8)", spots)
	}
}
