package cutout_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// Against the standard library's arctangent.
func TestArcLengthLiesAboveByALittle(t *testing.T) {
	unit := fraction.Of(1, 1_000_000_000)
	rapid.Check(t, func(t *rapid.T) {
		chord, rise := rapid.Int64Range(1, 2000).Draw(t, "chord"), rapid.Int64Range(1, 1000).Draw(t, "rise")
		chord = max(chord, 2*rise)
		got, err := cutout.ArcLength(fraction.Of(chord, 64), fraction.Of(rise, 64), unit)
		if err != nil {
			t.Fatal(err)
		}
		c, h := float64(chord)/64, float64(rise)/64
		want := (c*c + 4*h*h) / (2 * h) * math.Atan(2*h/c)
		if got := got.Float64(); got < want-1e-12*want || got > want*(1+1e-9)+2e-9 {
			t.Fatalf("arc over %v rising %v: %v, want %v", c, h, got, want)
		}
	})
}

func TestNoArcHasNoLength(t *testing.T) {
	if _, err := cutout.ArcLength(fraction.Inches(4), fraction.Inches(3), fraction.Of(1, 16)); !errors.Is(err, cutout.ErrNoArc) {
		t.Errorf("an arc that rises by more than half its chord: %v", err)
	}
	if _, err := cutout.ArcLength(fraction.Inches(4), fraction.Inches(1), fraction.Length{}); err == nil {
		t.Error("no unit is taken")
	}
}
