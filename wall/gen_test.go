package wall

import (
	"fmt"
	"iter"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

// quarters draws a length between lo and hi inches on quarters of an inch.
func quarters(t *rapid.T, label string, lo, hi int64) fraction.Length {
	return fraction.Of(rapid.Int64Range(4*lo, 4*hi).Draw(t, label), 4)
}

// profiles has one of each sort: mirrored, not mirrored, with wide flats.
var profiles = []groove.Profile{
	{Name: "bead", Thickness: fraction.Of(1, 4), Features: []groove.Feature{
		{Kind: groove.Flat, Width: fraction.Of(5, 2)}, {Kind: groove.Bead, Width: fraction.Of(1, 2)}}},
	{Name: "one-sided", Thickness: fraction.Of(1, 2), Features: []groove.Feature{
		{Kind: groove.Flat, Width: fraction.Of(2, 1)}, {Kind: groove.Bead, Width: fraction.Of(1, 2)}, {Kind: groove.Groove, Width: fraction.Of(1, 4)}, {Kind: groove.Flat, Width: fraction.Of(5, 4)}}},
	{Name: "wide", Thickness: fraction.Of(1, 4), WideFlats: true, Features: []groove.Feature{
		{Kind: groove.Flat, Width: fraction.Of(19, 4)}, {Kind: groove.Groove, Width: fraction.Of(1, 4)}}},
}

// firstLayouts returns the first layouts, n at most; without any it skips the test.
func firstLayouts(t *rapid.T, layouts iter.Seq2[Layout, error], n int) (some []Layout) {
	for layout, err := range layouts {
		if err != nil && len(some) == 0 {
			t.Skip("no layout: " + err.Error())
		} else if err != nil {
			break
		}
		if some = append(some, layout); len(some) == n {
			break
		}
	}
	return some
}

// drawRoom draws a small valid room: few enough layouts to enumerate.
func drawRoom(t *rapid.T) Room {
	room := Room{
		Profile:    rapid.SampledFrom(profiles).Draw(t, "profile"),
		Mark:       fraction.Of(1, 16),
		Priorities: DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: quarters(t, "sheet width", 12, 24), Length: fraction.Inches(40),
			LeftPhase: quarters(t, "left phase", 0, 2)}},
	}
	if rapid.Bool().Draw(t, "gaps") {
		room.Gaps = Gaps{Top: fraction.Of(1, 8), Bottom: fraction.Of(1, 8), Side: fraction.Of(1, 8), Seam: fraction.Of(1, 8), Box: fraction.Of(1, 8), Window: fraction.Of(1, 8)}
	}
	room.Snap = rapid.SampledFrom([]fraction.Length{{}, fraction.Of(1, 64), fraction.Of(1, 32)}).Draw(t, "snap")
	n := rapid.IntRange(1, 3).Draw(t, "runs")
	room.Closed = n > 1 && rapid.Bool().Draw(t, "closed")
	closing := rapid.SampledFrom([]EndKind{InsideCorner, InsideCorner, OutsideCorner}).Draw(t, "closing corner")
	kinds := make([]EndKind, n+1) // at the left of run i
	for i := range kinds {
		kinds[i] = rapid.SampledFrom([]EndKind{InsideCorner, InsideCorner, OutsideCorner, Exposed, Covered}).Draw(t, "end")
		if i > 0 && i < n && kinds[i] > OutsideCorner {
			kinds[i] = InsideCorner
		}
		if room.Closed && (i == 0 || i == n) {
			kinds[i] = closing
		}
	}
	for i := range n {
		room.Runs = append(room.Runs, drawRun(t, i, End{Kind: kinds[i]}, End{Kind: kinds[i+1]}))
	}
	return room
}

// keepSome lets some runs keep something, which may be no place for it.
func keepSome(t *rapid.T, room *Room) {
	for r := range room.Runs {
		keep := &room.Runs[r].Keep
		switch rapid.IntRange(0, 9).Draw(t, "keep") {
		case 0:
			keep.Seams = []fraction.Length{quarters(t, "kept seam", 3, 20)}
		case 1:
			from := quarters(t, "clear from", 0, 9)
			keep.Clear = []Clear{{from, from.Add(quarters(t, "clear", 1, 9))}}
		case 2:
			keep.Origin = new(quarters(t, "kept origin", 0, 3))
		}
	}
}

func drawRun(t *rapid.T, i int, left, right End) Run {
	run := Run{Name: fmt.Sprintf("run %d", i), Width: quarters(t, "width", 10, 36), Left: left, Right: right}
	height := quarters(t, "height", 12, 20)
	run.Heights = []Height{{Top: height}, {At: run.Width, Top: height}}
	switch rapid.IntRange(0, 4).Draw(t, "shape") {
	case 1: // a step
		at := quarters(t, "step", 3, 6)
		more := height.Add(quarters(t, "rise", -4, 8))
		run.Heights = []Height{{Top: height}, {At: at, Top: height}, {At: at, Top: more}, {At: run.Width, Top: more}}
		if more == height {
			run.Heights = []Height{run.Heights[0], run.Heights[3]}
		}
	case 2: // a slope
		run.Heights[1].Top = height.Add(fraction.Of(rapid.Int64Range(-6, 6).Draw(t, "slope"), 16))
		run.Heights[1].Bottom = fraction.Of(rapid.Int64Range(-6, 6).Draw(t, "bottom slope"), 16)
	case 3:
		run.Left.Lean = fraction.Of(rapid.Int64Range(-4, 4).Draw(t, "left lean"), 16)
		run.Right.Lean = fraction.Of(rapid.Int64Range(-4, 4).Draw(t, "right lean"), 16)
	}
	switch rapid.IntRange(0, 5).Draw(t, "opening") {
	case 1:
		run.Openings = append(run.Openings, Opening{Name: "box", Kind: Box,
			Outline: cutout.Rectangle(quarters(t, "box", 1, 6), fraction.Inches(4), fraction.Of(9, 4), fraction.Inches(4))})
	case 2:
		run.Openings = append(run.Openings, Opening{Name: "window", Kind: Window,
			Outline: cutout.Rectangle(quarters(t, "window", 2, 5), fraction.Inches(6), fraction.Inches(4), fraction.Inches(40))})
	case 3:
		run.Openings = append(run.Openings, Opening{Name: "door", Kind: Other,
			Outline: cutout.Rectangle(quarters(t, "door", 2, 5), fraction.Inches(-4), fraction.Inches(3), fraction.Inches(60))})
	case 4: // sloping sides part the run at places which no mark of the tape meets
		left, out := quarters(t, "door", 2, 5), fraction.Of(rapid.Int64Range(1, 7).Draw(t, "slope of the door"), 8)
		run.Openings = append(run.Openings, Opening{Name: "sloping door", Kind: Other, Outline: []cutout.Point{
			{X: left, Y: fraction.Inches(-4)}, {X: left.Add(fraction.Inches(3)), Y: fraction.Inches(-4)},
			{X: left.Add(fraction.Inches(3)).Add(out), Y: fraction.Inches(27)}, {X: left.Add(out), Y: fraction.Inches(27)}}})
	}
	if rapid.IntRange(0, 4).Draw(t, "break") == 0 {
		run.Breaks = []Break{{At: quarters(t, "break at", 4, 9), Prominence: fraction.NewRatio(1, 2)}}
	}
	if rapid.IntRange(0, 3).Draw(t, "focal") == 0 {
		run.Focal = []Focal{{From: fraction.Inches(2), To: fraction.Inches(8), Prominence: fraction.NewRatio(3, 1)}}
	}
	return run
}
