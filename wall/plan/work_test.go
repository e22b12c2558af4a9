package plan

import (
	"fmt"
	"slices"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// roundACorner is a room of two runs round an outside corner. A panel of the first is up, from 30 to past the
// corner, with a box in it. The window reaches over the top.
func roundACorner() Job {
	in := fraction.Inches
	profile, _ := groove.Find("beadboard 1-1/2")
	j := NewJob(fraction.Inch, profile)
	j.Stock = []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96), Price: money.MustParse("30")}}
	j.Runs = []wall.Run{
		{Name: "a", Width: in(40), Left: wall.End{Kind: wall.Exposed}, Right: wall.End{Kind: wall.OutsideCorner},
			Heights: []wall.Height{{Top: in(30)}, {At: in(40), Top: in(30)}},
			Openings: []wall.Opening{
				{Name: "one", Kind: wall.Box, Outline: cutout.Rectangle(in(5), in(5), in(2), in(4))},
				{Name: "window", Kind: wall.Window, Outline: cutout.Rectangle(in(15), in(20), in(10), in(20))},
				{Name: "two", Kind: wall.Box, Outline: cutout.Rectangle(in(34), in(5), in(2), in(4))}}},
		{Name: "b", Width: in(20), Left: wall.End{Kind: wall.OutsideCorner}, Right: wall.End{Kind: wall.Covered},
			Heights:  []wall.Height{{Top: in(24)}, {At: in(20), Top: in(24)}},
			Openings: []wall.Opening{{Name: "pipe", Outline: cutout.Rectangle(in(10), in(10), in(2), in(3))}}},
	}
	j.Installed = []wall.Installed{{Left: in(30), Right: in(40).Add(profile.Thickness)}}
	return j
}

// The quantities of that room by hand, with panels 1/4 thick and no gaps. To be fitted are 30 x 30 less the window's
// 10 x 10 and the box's 2 x 4, and 20 1/4 x 24 less the pipe's 2 x 3: 792 + 480 square inches. Up are 10 1/4 x 30 less
// 2 x 4, 10 1/4 being to the long point. The sides of the window are 10 high each below the top of the wall, those of the pipe 3. The strip of the corner is as high as the higher run.
func TestWorkByHand(t *testing.T) {
	j := roundACorner()
	m, err := explore(t.Context(), j, Options{})
	if err != nil {
		t.Fatal(err)
	}
	m.chosen = m.choices.Front[m.taken]
	w := m.work(&m.chosen)
	for _, row := range []struct {
		what      string
		got, want any
	}{
		{"units", w.Units, fraction.Inch},
		{"profile", w.Profile.Name, "beadboard 1-1/2"},
		{"face", w.Face, fraction.Inches(1272).Times(fraction.Inches(1))},
		{"up", w.Up, fraction.Of(599, 2).Times(fraction.Inches(1))},
		{"width", w.Width, fraction.Inches(60)},
		{"highest", w.Highest, fraction.Inches(30)},
		{"low", w.Low, fraction.Inches(24)},
		{"sides", w.Sides, fraction.Inches(26)},
		{"boxes", w.Boxes, "[{one 1 false} {two 1 true}]"},
		{"ends", w.Ends, "[{a 30 true false false false} {a 30 false false true false}]"},
		{"mitred", w.Mitred, true},
		{"cooking", w.Cooking, false},
		{"sheets", w.Sheets, "[{sheet 1 48 96 30 false}]"},
		{"edges", w.Edges, "250 1/2"},                                                     // 4 x 30 and twice the window's 10, 12 round the box; 2 x (20 1/4 + 24), 10 round the pipe
		{"pieces", w.Pieces, "[{30 30 792 0 <nil> <nil>} {20 1/4 24 480 0 <nil> <nil>}]"}, // a pipe has no frame; where nails stand and what boards cross is counted later
		{"labels", w.Fitting, "[1 2]"},
		{"closing", w.Closing, "[1 2]"},
		{"joints", w.Joints, "[{lower line a  40 1/4 0 true false false} {upper line a  30 1/4 0 false false false} {window a window 30 0 false false false} {end a  30 0 false false false} " +
			"{outside corner a  30 0 false false false} {lower line b  20 1/4 0 true false false} {upper line b  20 1/4 0 false false false} {window b pipe 10 0 false false false} " +
			"{end b  24 0 false true false} {seam a  30 0 false false false}]"}, // from the left end to the corner's long point; a covered end is hidden
	} {
		if fmt.Sprint(row.got) != fmt.Sprint(row.want) {
			t.Errorf("%s: %v, want %v", row.what, row.got, row.want)
		}
	}
}

// What needs cooking, boards of stock with a count and trims say so.
func TestWorkOfOtherJobs(t *testing.T) {
	j := roundACorner()
	j.Cooking, j.Built = []Cooking{{To: fraction.Inches(1)}}, 1950
	j.Stock[0].Count = new(3)
	j.Trim.Bottom = &wall.EdgeTrim{Name: "base", Covers: fraction.Inches(3)}
	j.Installed = []wall.Installed{{Right: fraction.Inches(30)}, {Run: 1, Left: fraction.Inches(5), Right: fraction.Inches(20)}}
	m, err := explore(t.Context(), j, Options{})
	if err != nil {
		t.Fatal(err)
	}
	m.chosen = m.choices.Front[m.taken]
	w := m.work(&m.chosen)
	if !w.Cooking || w.Built != 1950 || fmt.Sprint(w.Covers) != "[{base a 40 1/4} {base b 20 1/4}]" || fmt.Sprint(w.Sheets) != "[{sheet 1 48 96 30 true}]" {
		t.Errorf("cooking %v, built %d, covers %v, sheets %v", w.Cooking, w.Built, w.Covers, w.Sheets)
	}
	if got := fmt.Sprint(w.Ends, w.Sides, w.Boxes, w.Up); got != "[{a 30 true false false true} {a 30 false false true false}] 0 [{one 1 true} {two 1 false}] 1146" { // 792 + 15 x 24 - 6: the left end is up, and what stands round the openings too
		t.Errorf("ends, sides, boxes and what is up: %s", got)
	}
}

// An outside corner is mitred, with glue on the list and no strip, also where no other run meets it.
func TestCornerThatNoRunMeets(t *testing.T) {
	for _, row := range []struct {
		left wall.EndKind
		want bool
	}{{wall.OutsideCorner, true}, {wall.Exposed, false}, {wall.InsideCorner, false}} {
		j := roundACorner()
		j.Runs = j.Runs[1:]
		j.Installed, j.Runs[0].Left.Kind = nil, row.left
		p, err := Make(t.Context(), j, Options{})
		if err != nil {
			t.Fatal(err)
		}
		var glue, strip, step bool
		for _, r := range p.List.Rows {
			glue, strip = glue || r.Item == finish.ItemMiterGlue, strip || r.Item == finish.ItemCornerTrim
		}
		for _, s := range p.Order {
			step = step || s.Stage == finish.StageMiter
		}
		edges, err := p.Runs[0].MitredEdges(p.Pieces[0])
		if err != nil || edges[0] != row.want || glue != row.want || step != row.want || strip {
			t.Errorf("%v: mitred %v, glue %v, step %v, strip %v: %v", row.left, edges, glue, step, strip, err)
		}
	}
}

// An inside corner where no other run meets has panels on one side alone: what the last coat does not cover beside it is
// taped.
func TestCornersOfWallsWithoutPanels(t *testing.T) {
	j := roundACorner()
	j.Installed = nil
	for i := range j.Runs {
		j.Runs[i].Left.Kind, j.Runs[i].Right.Kind = wall.InsideCorner, wall.InsideCorner
	}
	m, err := explore(t.Context(), j, Options{})
	if err != nil {
		t.Fatal(err)
	}
	m.chosen = m.choices.Front[m.taken]
	var got []string
	for _, joint := range m.work(&m.chosen).Joints {
		if joint.Kind == finish.InsideCorner {
			got = append(got, fmt.Sprint(joint.Run, " ", joint.Alone))
		}
	}
	if want := []string{"a true", "a false", "b true"}; !slices.Equal(got, want) {
		t.Errorf("inside corners alone: %q, want %q", got, want)
	}
}

// The bound counts where it is of the sheets that are taken, or where stock to buy of one price stands beside some on
// hand, of which it does not speak.
func TestBound(t *testing.T) {
	two := 2
	of := func(price string, count *int) nest.Stock {
		return nest.Stock{Price: money.MustParse(price), Count: count}
	}
	for _, row := range []struct {
		name   string
		sheets int
		proved bool
		stock  []nest.Stock
		want   bool
	}{
		{"as many as are needed", 3, true, []nest.Stock{of("30", nil)}, true},
		{"not proved", 2, false, []nest.Stock{of("30", nil)}, false},
		{"as many as are needed, but cheaper ones may do", 3, false, []nest.Stock{of("30", nil), of("10", nil)}, true},
		{"as many, one of them on hand, not proved", 3, false, []nest.Stock{of("30", nil), of("0", &two)}, false},
		{"cheaper ones, but more", 2, true, []nest.Stock{of("30", nil), of("10", nil)}, false},
		{"one on hand", 2, true, []nest.Stock{of("30", nil), of("0", &two)}, true},
		{"one on hand and two of one price", 2, true, []nest.Stock{of("30", nil), of("30", nil), of("0", &two)}, true},
		{"one on hand and two prices", 2, true, []nest.Stock{of("30", nil), of("10", nil), of("0", &two)}, false},
	} {
		m := maker{job: Job{Room: wall.Room{Stock: row.stock}}}
		m.chosen.Nest.Sheets = make([]nest.Sheet, 3)
		m.chosen.Nest.Bound = nest.Bound{Sheets: row.sheets, Proved: row.proved, How: nest.PartHeights}
		if got := m.bound(); got != (Bound{row.sheets, row.want, nest.PartHeights}) {
			t.Errorf("%s: %+v", row.name, got)
		}
	}
}

// What a crosscut of 1/8 leaves of a sheet of 96 over a piece: nothing where no more than the blade is left, and all of that
// comes off; below the piece it takes off what lies there and the blade.
func TestTrims(t *testing.T) {
	in := fraction.MustParse
	for _, row := range []struct {
		at, foot, height string // of the cut and the piece
		trim             Trim
		off              string
	}{
		{"95 3/4", "0", "95 3/4", NoTrim, "0"}, {"95 7/8", "0", "95 7/8", TrimBeyond, "1/8"}, {"95 15/16", "0", "95 15/16", TrimBeyond, "1/16"}, {"1", "1 1/8", "90", TrimNear, "1 1/8"},
	} {
		cut := nest.Cut{Step: 1, Kind: nest.Crosscut, At: in(row.at), Rect: rect{{}, {}, in("48"), in("96")}}
		got := cutList([]nest.Cut{cut}, map[int]rect{7: {{}, in(row.foot), in("48"), in(row.height)}}, Saw{Saw: nest.Saw{Kerf: in("1/8"), LeastRip: in("1/8")}})[0]
		if got.Trim != row.trim || got.Off != in(row.off) || got.Plane != (row.off == "1/16") {
			t.Errorf("cut at %s over a piece of %s from %s: %v takes off %v, planed %v", row.at, row.height, row.foot, got.Trim, got.Off, got.Plane)
		}
	}
}

// Stairs rise all one way: seven risers of 7 are 49; a recess, which goes down and up again, is none, nor is one step.
func TestStairs(t *testing.T) {
	at := func(x, y int64) Point { return Point{X: fraction.Inches(x), Y: fraction.Inches(y)} }
	flight := []Point{at(0, 0)}
	for k := int64(1); k < 8; k++ {
		flight = append(flight, at(10*k, 7*k-7), at(10*k, 7*k))
	}
	for name, row := range map[string]struct {
		foot []Point
		want int64
	}{
		"a flight": {append(flight, at(80, 49), at(80, 90), at(0, 40)), 49},
		"a recess": {[]Point{at(0, 0), at(10, 0), at(10, -2), at(20, -2), at(20, 0), at(80, 0), at(80, 90), at(0, 90)}, 0},
		"one step": {[]Point{at(0, 0), at(10, 0), at(10, 7), at(80, 7), at(80, 90), at(0, 90)}, 0},
	} {
		if got := (Run{Width: fraction.Inches(80), Outline: row.foot}).Stairs(); got != fraction.Inches(row.want) {
			t.Errorf("%s: %v, want %d", name, got, row.want)
		}
	}
}
