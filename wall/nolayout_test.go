package wall_test

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// A wall taller than every sheet is found before a seam is tried, which would take ten seconds: of a
// closed room of ten runs, and also where the wall rises above the sheets only at one end of a slope.
func TestTooTallIsFoundAtOnce(t *testing.T) {
	profile, _ := groove.Find("beadboard 1-1/2")
	in := fraction.Inches
	for _, top := range []int64{97, 120} {
		room := wall.Room{Profile: profile, Closed: true, Mark: fraction.Of(1, 16), Priorities: wall.DefaultPriorities(fraction.Inch),
			Stock: []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96)}, {Name: "short", Width: in(30), Length: in(40)}}}
		corner := wall.End{Kind: wall.InsideCorner}
		for r := range int64(10) {
			width := in(60).Add(fraction.Of(37*r, 8))
			room.Runs = append(room.Runs, wall.Run{Name: fmt.Sprint(r), Width: width, Left: corner, Right: corner,
				Heights: []wall.Height{{Top: in(30 + r)}, {At: in(20), Top: in(30 + r)}, {At: in(20), Top: in(40)}, {At: width, Top: in(40)}}})
		}
		last := room.Runs[9].Heights
		last[2].Top, last[3].Top = in(217-top), in(top)
		before := fractiontest.ProcessorTime(os.Getpid())
		for _, err := range wall.Layouts(t.Context(), room) {
			var none *wall.NoLayoutError
			if !errors.As(err, &none) || none.Reason != wall.TooTall || none.Run != "9" || none.Over.Sign() <= 0 || in(24).Less(none.Over) {
				t.Errorf("%d in: %v", top, err)
			}
			break
		}
		if took := (fractiontest.ProcessorTime(os.Getpid()) - before).Seconds(); took > 3 {
			t.Errorf("%d in: after %v s", top, took)
		}
	}
}

// A repeat that is wider than every sheet is refused at once, and not after seams at every mark of the
// tape were tried, which took more than half a minute.
func TestImpossiblePatternIsFoundAtOnce(t *testing.T) {
	in := fraction.Inches
	flat, cut := groove.Feature{Kind: groove.Flat, Width: in(100)}, groove.Feature{Kind: groove.Groove, Width: in(1), Depth: fraction.Of(1, 16)}
	room := wall.Room{Profile: groove.Profile{Name: "wide", Features: []groove.Feature{flat, cut, flat, cut}, Thickness: fraction.Of(1, 4)},
		Mark: fraction.Of(1, 16), Priorities: wall.DefaultPriorities(fraction.Inch), Stock: []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96)}},
		Runs: []wall.Run{{Name: "long", Width: in(7800), Heights: []wall.Height{{Top: in(40)}, {At: in(7800), Top: in(40)}}}}}
	before := fractiontest.ProcessorTime(os.Getpid())
	for _, err := range wall.Layouts(t.Context(), room) {
		var none *wall.NoLayoutError
		if !errors.As(err, &none) || none.Reason != wall.TooNarrow {
			t.Error(err)
		}
		break
	}
	if took := (fractiontest.ProcessorTime(os.Getpid()) - before).Seconds(); took > 3 {
		t.Errorf("after %v s", took)
	}
}

// Whether a run can be panelled at all is what plain search finds that puts panels, each a part of a
// sheet that shows the pattern, upright or turned, side by side at every mark of the tape.
func TestWhatCanBePanelledIsThatOfPlainSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 3))
	in := func(n int) fraction.Length { return fraction.Inches(int64(n)) }
	counts := map[bool]int{}
	for range 400 {
		a, b, width, half := 2+r.IntN(8), 1+r.IntN(2), 6+r.IntN(40), r.IntN(2)
		room := wall.Room{Profile: groove.Profile{Name: "p", Features: []groove.Feature{{Kind: groove.Flat, Width: in(a)}, {Kind: groove.Bead, Width: in(b)}}},
			Mark: in(1), Gaps: wall.Gaps{Seam: in(2 * half)}, Priorities: wall.DefaultPriorities(fraction.Inch),
			Runs: []wall.Run{{Name: "run", Width: in(width), Heights: []wall.Height{{Top: in(9)}, {At: in(width), Top: in(9)}}}}}
		pitch := a + b
		for i := range 1 + r.IntN(2) {
			room.Stock = append(room.Stock, nest.Stock{Name: fmt.Sprint(i), Width: in(3 + r.IntN(12)), Length: in(20), LeftPhase: in(r.IntN(pitch))})
		}
		run := &room.Runs[0]
		origin := in(r.IntN(pitch))
		run.Keep.Origin = &origin
		if from := 1 + r.IntN(width-2); r.IntN(2) == 0 {
			run.Keep.Clear = []wall.Clear{{From: in(from), To: in(min(width, from+2+r.IntN(6)))}}
		}
		// shown reports whether a sheet shows a panel from left to right.
		shown := func(left, right int) bool {
			for _, s := range room.Stock {
				for x := right - int(s.Width.Float64()); x <= left; x++ { // the sheet's left edge
					upright := (in(x).Sub(origin).Sub(s.LeftPhase)).Mod(in(pitch)).IsZero()
					// Turned about the middle of its flat the pattern is its own mirror image, and what was at
					// the sheet's right edge is at its left.
					phase := in(a).Sub(s.LeftPhase).Sub(s.Width)
					if upright || in(x).Sub(origin).Sub(phase).Mod(in(pitch)).IsZero() {
						return true
					}
				}
			}
			return false
		}
		starts := make([]bool, width+1) // places where a panel may start
		starts[0] = true
		want := false
		for left := range width {
			for right := left + 1; starts[left] && right <= width; right++ {
				seam := right + half
				clear := run.Keep.Clear
				switch barred := len(clear) > 0 && clear[0].From.Less(in(seam)) && in(seam).Less(clear[0].To); {
				case !shown(left, right):
				case right == width:
					want = true
				case seam+half < width && !barred:
					starts[seam+half] = true
				}
			}
		}
		got := false
		for _, err := range wall.Layouts(t.Context(), room) {
			got = err == nil
			break
		}
		if counts[want]++; got != want {
			t.Fatalf("%v, want %v: %+v", got, want, room)
		}
	}
	if counts[true] < 50 || counts[false] < 50 {
		t.Errorf("%v of each", counts)
	}
}

// Which installed panel reaches too far is said by its path: the second one stands in the gap at the right end.
func TestInstalledPanelThatReachesTooFarIsNamed(t *testing.T) {
	profile, _ := groove.Find("plain sheet")
	in := fraction.Inches
	room := wall.Room{Profile: profile, Mark: fraction.Of(1, 16), Priorities: wall.DefaultPriorities(fraction.Inch), Gaps: wall.Gaps{Side: in(1)},
		Stock: []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96)}}, Installed: []wall.Installed{{Left: in(1), Right: in(20)}, {Left: in(80), Right: in(100)}},
		Runs: []wall.Run{{Name: "wall", Width: in(100), Heights: []wall.Height{{Top: in(40)}, {At: in(100), Top: in(40)}}}}}
	for _, err := range wall.Layouts(t.Context(), room) {
		if want := `run "wall" cannot be panelled: ` + wall.InstalledOutside.String() + ": installed[1]"; err == nil || err.Error() != want {
			t.Errorf("%v, want %s", err, want)
		}
		break
	}
}
