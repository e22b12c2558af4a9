package drawing

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestSpreadKeepsTheGap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wanted := rapid.SliceOfN(rapid.Float64Range(0, 600), 1, 40).Draw(t, "wanted")
		slices.Sort(wanted)
		const gap, lo, hi = 13.0, 0.0, 700.0
		got := spread(wanted, gap, lo, hi)
		if len(got) != len(wanted) {
			t.Fatalf("spread gave %d places for %d", len(got), len(wanted))
		}
		for i := range got {
			if i > 0 && got[i]-got[i-1] < gap-1e-9 {
				t.Fatalf("places %v and %v are too close", got[i-1], got[i])
			}
			if got[i] < lo-1e-9 || got[i] > hi+1e-9 {
				t.Fatalf("place %v outside %v to %v", got[i], lo, hi)
			}
		}
	})
}

func TestSpreadLeavesAloneWhatIsApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var wanted []float64
		at := rapid.Float64Range(0, 10).Draw(t, "first")
		for range rapid.IntRange(1, 20).Draw(t, "count") {
			wanted = append(wanted, at)
			at += rapid.Float64Range(13.001, 30).Draw(t, "step")
		}
		for i, got := range spread(wanted, 13, 0, 1000) {
			if math.Abs(got-wanted[i]) > 1e-9 {
				t.Fatalf("mark %d moved from %v to %v", i, wanted[i], got)
			}
		}
	})
}

func TestSpreadIsNoFartherThanPushing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wanted := rapid.SliceOfN(rapid.Float64Range(100, 200), 1, 20).Draw(t, "wanted")
		slices.Sort(wanted)
		moved := func(places []float64) float64 {
			sum := 0.0
			for i, p := range places {
				sum += (p - wanted[i]) * (p - wanted[i])
			}
			return sum
		}
		pushed := slices.Clone(wanted) // the plain rule: each mark pushes the next to the right
		for i := 1; i < len(pushed); i++ {
			pushed[i] = max(pushed[i], pushed[i-1]+13)
		}
		if got := moved(spread(wanted, 13, -1000, 1000)); got > moved(pushed)+1e-6 {
			t.Fatalf("spread moves marks by %v, pushing by %v", got, moved(pushed))
		}
	})
}

func TestLabelsNeverOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := board{frame: box{0, 0, 100, 100}}
		for range rapid.IntRange(1, 30).Draw(t, "labels") {
			c := box{rapid.Float64Range(-10, 100).Draw(t, "x"), rapid.Float64Range(-10, 100).Draw(t, "y"), rapid.Float64Range(1, 40).Draw(t, "w"), rapid.Float64Range(1, 40).Draw(t, "h")}
			if seat, ok := b.place(c, box{c.y, c.x, c.w, c.h}); ok && !seat.inside(b.frame) {
				t.Fatalf("label %v lies outside", seat)
			}
		}
		for i, c := range b.taken {
			for _, d := range b.taken[:i] {
				if c.overlaps(d) {
					t.Fatalf("labels %v and %v overlap", c, d)
				}
			}
		}
	})
}

func TestWrapKeepsEveryWord(t *testing.T) {
	for _, row := range []struct {
		text        line
		width, most float64
		want        []string
	}{
		{line{""}, 67, 67, nil},
		{line{"one"}, 1, 67, []string{"one"}},
		{line{"box left of the range"}, 67, 67, []string{"box left", "of the", "range"}},
		{line{"box left ", figure{"of the", "a"}, " range"}, 67, 67, []string{"box left", "of the", "range"}},
		{line{"box left of ", figure{"the range", "a"}}, 1000, 1000, []string{"box left of the range"}},
		{line{figure{"range", "a"}, "; ", figure{"window", "b"}, ": ", figure{"14 3/8", "c"}}, 67, 67, []string{"range;", "window:", "14 3/8"}},
		{line{"wainscoting of oak"}, 60, 60, []string{"wainsc-", "oting of", "oak"}},
		{line{figure{"wainscoting", "a"}, " of oak"}, 86, 86, []string{"wainscot-", "ing of oak"}}, // no two letters alone
		{line{figure{"壁板壁板壁板壁板", "a"}}, 64, 64, []string{"壁板壁板", "壁板壁板"}},
	} {
		var got []string
		for _, l := range row.text.wrap(row.width, row.most) {
			got = append(got, l.String())
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%q in %v = %q, want %q", row.text, row.width, got, row.want)
		}
	}
}

func TestClipFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		width := rapid.Float64Range(15, 200).Draw(t, "width")
		got := clip(text, width, 10)
		if textWidth(got, 10) > width {
			t.Fatalf("clip(%q, %v) = %q is too wide", text, width, got)
		}
		if got != text && !strings.HasSuffix(got, "…") {
			t.Fatalf("clip(%q, %v) = %q hides that it was shortened", text, width, got)
		}
	})
}

func TestInk(t *testing.T) {
	for _, row := range []struct {
		v    float64
		want string
	}{{0, "0"}, {-0.001, "0"}, {1, "1"}, {100, "100"}, {1.5, "1.5"}, {-2.345, "-2.35"}, {math.NaN(), "0"}, {math.Inf(-1), "0"}, {0.126, "0.13"}} {
		if got := ink(row.v); got != row.want {
			t.Errorf("ink(%v) = %q, want %q", row.v, got, row.want)
		}
	}
}

// A frame of more ink than any paper has no place for a label: to look through 10^13 rows would not end.
func TestHugeFramesHaveNoPlaces(t *testing.T) {
	b, at := board{frame: box{0, 0, 1e14, 1e14}}, spot(5e13+5e13i)
	if seat, ok := b.led(8, 19, farLead, at); ok {
		t.Errorf("place %v", seat)
	}
}
