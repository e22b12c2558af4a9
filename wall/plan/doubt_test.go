package plan_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// A sheet without a price beside one with a price looks free, and is doubted; an
// offcut on hand is free.
func TestSheetWithoutAPriceIsDoubted(t *testing.T) {
	for _, row := range []struct {
		stock string
		want  []string
	}{
		{`{"name": "a", "width": "48", "length": "96", "price": "40"}, {"name": "b", "width": "48", "length": "48"}`, []string{"Stock[1]"}},
		{`{"name": "a", "width": "48", "length": "96", "price": "40"}, {"name": "b", "width": "48", "length": "48", "count": 1}`, nil},
		{`{"name": "a", "width": "48", "length": "96", "price": "40", "count": 1}, {"name": "b", "width": "48", "length": "48"}`, []string{"Stock[1]"}},
		{`{"name": "a", "width": "48", "length": "96"}, {"name": "b", "width": "48", "length": "48"}`, nil},
	} {
		j := jobFrom(t, `{"profile": "beadboard 2", "stock": [`+row.stock+`], "runs": [{"name": "a", "width": "40",
			"left": {"kind": "exposed"}, "right": {"kind": "exposed"}, "heights": [{"at": "0", "top": "18"}, {"at": "40", "top": "18"}]}]}`)
		if got := fractiontest.Doubts(t, j, plan.NoPrice); !slices.Equal(got, row.want) {
			t.Errorf("stock %s: doubts at %q, want %q", row.stock, got, row.want)
		}
	}
}

// Stock to buy that is wider than long, and stock for boards that holds two of them side by side, are
// doubted; an offcut may be wider than long.
func TestStockOfOddSizeIsDoubted(t *testing.T) {
	const squares = `{"name": "squares", "features": [{"kind": "flat", "width": "4 7/8"}, {"kind": "groove", "width": "1/4", "depth": "1/8"}], "boards": true, "edges": "square", "thickness": "1/2"}`
	for _, row := range []struct {
		profile, width, length, count string
		swapped, several              bool
	}{
		{`"beadboard 2"`, "48", "96", "", false, false},
		{`"beadboard 2"`, "96", "48", "", true, false},
		{`"beadboard 2"`, "96", "48", `, "count": 2`, false, false},
		{`"beadboard 2"`, "48", "48", "", false, false},
		{`"tongue and groove 5-1/8"`, "5 1/8", "96", "", false, false},
		{squares, "5 1/8", "96", "", false, false},
		{squares, "10 1/4", "96", "", false, true},
		{squares, "48", "96", "", false, true},
	} {
		j := jobFrom(t, fmt.Sprintf(`{"profile": %s, "stock": [{"name": "a", "width": %q, "length": %q%s}], "runs": [{"name": "a", "width": "40",
			"left": {"kind": "exposed"}, "right": {"kind": "exposed"}, "heights": [{"at": "0", "top": "18"}, {"at": "40", "top": "18"}]}]}`,
			row.profile, row.width, row.length, row.count))
		if got := fractiontest.Doubts(t, j, plan.StockSwapped); len(got) > 0 != row.swapped {
			t.Errorf("%+v: swapped at %q", row, got)
		}
		if got := fractiontest.Doubts(t, j, plan.StockOfSeveral); len(got) > 0 != row.several {
			t.Errorf("%+v: several boards at %q", row, got)
		}
	}
}

// A blade and a thickness that are hardly sold may be of another unit.
func TestSizesOfAnotherUnit(t *testing.T) {
	for _, row := range []struct{ thickness, kerf, want string }{
		{"2", "1/4", "[]"}, {"2", "3", "[Saw.Kerf]"}, {"9", "6 mm", "[Profile.Thickness]"},
	} {
		j := jobFrom(t, fmt.Sprintf(`{"profile": {"features": [{"kind": "flat", "width": "4"}], "thickness": %q}, "saw": {"kerf": %q}, "stock": [{"name": "a", "width": "48", "length": "96"}],
			"runs": [{"name": "a", "width": "40", "left": {"kind": "exposed"}, "right": {"kind": "exposed"}, "heights": [{"at": "0", "top": "18"}, {"at": "40", "top": "18"}]}]}`, row.thickness, row.kerf))
		if got := fmt.Sprint(fractiontest.Doubts(t, j, plan.TooGreat)); got != row.want {
			t.Errorf("%+v: %s", row, got)
		}
	}
}

// A job's units bring the plates of their region: a box for one device of either kind, with the gap that
// the electrical code leaves, is hidden by its plate.
func TestPlatesGoWithTheUnits(t *testing.T) {
	for _, job := range []string{
		`"units": "in", "runs": [{"name": "a", "width": "40", "heights": [{"at": "0", "top": "18"}, {"at": "40", "top": "18"}],
			"openings": [{"name": "socket", "kind": "box", "left": "10", "bottom": "5", "width": "2", "height": "3 3/4"}]`,
		`"units": "mm", "runs": [{"name": "a", "width": "1000", "heights": [{"at": "0", "top": "450"}, {"at": "1000", "top": "450"}],
			"openings": [{"name": "socket", "kind": "box", "left": "250", "bottom": "120", "width": "68", "height": "68"}]`,
		`"units": "mm", "runs": [{"name": "a", "width": "1000", "heights": [{"at": "0", "top": "450"}, {"at": "1000", "top": "450"}],
			"openings": [{"name": "two sockets", "kind": "box", "left": "250", "bottom": "120", "width": "139", "height": "68"}]`,
	} {
		j := jobFrom(t, `{"profile": "beadboard 2", "gaps": {"box": "3 mm"}, "stock": [{"name": "a", "width": "48 in", "length": "96 in"}], `+job+
			`, "left": {"kind": "exposed"}, "right": {"kind": "exposed"}}]}`)
		if all, err := j.Doubts(); err != nil || len(all) > 0 {
			t.Errorf("%s: doubts %v, %v", job, all, err)
		}
	}
}

// Each row makes one thing of the sound job look like a mistake, or nearly so. What is doubted has its path,
// its names, lengths and counts.
func TestDoubts(t *testing.T) {
	in := fraction.Inches
	box := func(left, bottom, width, height string) func(*plan.Job) {
		return func(j *plan.Job) {
			m := fraction.MustParse
			j.Runs[0].Openings[0].Outline = cutout.Rectangle(m(left), m(bottom), m(width), m(height))
		}
	}
	cornered := func(change func(*plan.Job)) func(*plan.Job) { // of panels 1 1/4 thick, so that enough is left beside the box
		return func(j *plan.Job) {
			change(j)
			j.Profile.Thickness, j.Runs[0].Left.Kind = fraction.MustParse("1 1/4"), wall.InsideCorner
		}
	}
	trims := func(covers string) func(*plan.Job) {
		return func(j *plan.Job) {
			trim := func(name string) *wall.EdgeTrim {
				return &wall.EdgeTrim{Name: name, Covers: fraction.MustParse(covers)}
			}
			j.Gaps.Bottom, j.Gaps.Top, j.Gaps.Window = in(1), in(2), in(3)
			j.Trim = wall.Trims{Bottom: trim("base"), Top: trim("cap"), Casing: trim("casing")}
			j.Runs[0].Trim = wall.Trims{Bottom: trim("own base")}
			j.Runs = append(j.Runs, j.Runs[0])
			j.Runs[1].Name, j.Runs[1].Trim = "other", wall.Trims{}
		}
	}
	neighbors := func(right, left wall.EndKind) func(*plan.Job) {
		return func(j *plan.Job) {
			j.Runs = append(j.Runs, j.Runs[0])
			j.Runs[1].Name = "other"
			j.Runs[0].Right.Kind, j.Runs[1].Left.Kind = right, left
		}
	}
	for _, row := range []struct {
		name   string
		change func(*plan.Job)
		want   []string
	}{
		{"stock to buy that is wider than long", func(j *plan.Job) { j.Stock[0].Length = in(47) }, []string{"Stock[0].Width: stock swapped [] [48 47] []"}},
		{"a tape in millimeters beside inches", func(j *plan.Job) { j.Mark, j.Snap = fraction.Millimetres(1, 1), fraction.Length{} }, []string{"Tape: tape of another unit [] [] []"}},
		{"square stock", func(j *plan.Job) { j.Stock[0].Length = in(48) }, nil},
		// A plate for one device is 2 3/4 x 4 1/2 and is to hide 1/8 more on each side of the hole.
		{"a box that its plate just hides", box("10", "5", "2 1/2", "4 1/4"), nil},
		{"one that is too wide", box("10", "5", "2 5/8", "4 1/4"), []string{"Runs[0].Openings[0]: cover too small [socket] [2 3/4 4 1/2 1/16 1/8 1/8] [1]"}},
		{"one that is too high", box("10", "5", "2 1/2", "4 3/8"), []string{"Runs[0].Openings[0]: cover too small [socket] [2 3/4 4 1/2 1/8 1/16 1/8] [1]"}},
		{"a plate of the job's", func(j *plan.Job) {
			j.Plates = map[int]wall.Plate{1: {Width: in(3), Height: fraction.MustParse("3 15/16")}}
		}, []string{"Runs[0].Openings[0]: cover too small [socket] [3 3 15/16 3/8 3/32 1/8] [1]"}},
		{"a box that ends at the top of the wall", box("10", "13", "2", "5"), []string{"Runs[0].Openings[0]: cover too small [socket] [2 3/4 4 1/2 3/8 -1/4 1/8] [1]"}},
		{"a box that sticks out", box("10", "15", "2", "4"), []string{"Runs[0].Openings[0]: box sticks out [socket sink wall] [] []"}},
		{"a plate down to the foot of the wall", box("10", "3/8", "2 1/4", "3 3/4"), nil},
		{"one past it", box("10", "5/16", "2 1/4", "3 3/4"), []string{"Runs[0].Openings[0]: plate out [socket] [] []"}},
		{"one under the trim of its foot", func(j *plan.Job) {
			box("10", "1", "2 1/4", "3 3/4")(j)
			j.Trim.Bottom = &wall.EdgeTrim{Name: "base", Covers: in(1)}
		}, []string{"Runs[0].Openings[0]: plate out [socket] [] []"}},
		{"one at the panels round a corner", cornered(box("1 1/2", "5", "2 1/4", "3 3/4")), nil},
		{"one into them", cornered(box("1 7/16", "5", "2 1/4", "3 3/4")), []string{"Runs[0].Openings[0]: plate out [socket] [] []"}},
		{"plates side by side", func(j *plan.Job) {
			second := j.Runs[0].Openings[0]
			second.Name, second.Outline = "second", cutout.Rectangle(in(23), in(5), fraction.MustParse("2 1/4"), fraction.MustParse("3 3/4"))
			box("20 1/4", "5", "2 1/4", "3 3/4")(j)
			j.Runs[0].Openings = append(j.Runs[0].Openings, second)
		}, nil},
		{"plates that overlap", func(j *plan.Job) {
			second := j.Runs[0].Openings[0]
			second.Name, second.Outline = "second", cutout.Rectangle(in(23), in(5), fraction.MustParse("2 1/4"), fraction.MustParse("3 3/4"))
			box("20 5/16", "5", "2 1/4", "3 3/4")(j)
			j.Runs[0].Openings = append(j.Runs[0].Openings, second)
		}, []string{"Runs[0].Openings[2]: plates meet [second socket] [] []"}},
		{"windows that overlap", func(j *plan.Job) {
			j.Runs[0].Openings[0] = wall.Opening{Name: "second", Kind: wall.Window, Outline: cutout.Rectangle(in(30), in(4), in(20), in(10))}
		}, []string{"Runs[0].Openings[1]: openings overlap [second window] [] []"}},
		{"windows that touch", func(j *plan.Job) {
			j.Runs[0].Openings[0] = wall.Opening{Name: "second", Kind: wall.Window, Outline: cutout.Rectangle(in(30), in(4), in(10), in(10))}
		}, nil},
		{"a corner of a right end alone", neighbors(wall.InsideCorner, wall.Covered), []string{"Runs[0].Right.Kind: corner of a right end [other] [] []"}},
		{"a corner of a left end alone", neighbors(wall.Covered, wall.InsideCorner), []string{"Runs[1].Left.Kind: corner of a left end [sink wall] [] []"}},
		{"a corner of both", neighbors(wall.InsideCorner, wall.InsideCorner), nil},
		{"a corner of none", neighbors(wall.Covered, wall.Covered), nil},
		// A trim is to reach 1/4 over the gap that it hides: the gaps are 1, 2 and 3. One of the room is doubted once.
		{"trims that are wide enough", trims("3 1/4"), nil},
		{"a casing that is narrow", trims("3 3/16"), []string{"Trim.Casing: trim narrow [casing] [3 3/16 3 1/4] []"}},
		{"all trims narrow", trims("1"), []string{"Runs[0].Trim.Bottom: trim narrow [own base] [1 1 1/4] []", "Trim.Top: trim narrow [cap] [1 2 1/4] []",
			"Trim.Casing: trim narrow [casing] [1 3 1/4] []", "Trim.Bottom: trim narrow [base] [1 1 1/4] []"}},
	} {
		j := backsplash()
		j.Runs[0].Openings[1].Outline = cutout.Rectangle(in(40), in(8), in(20), in(30))
		row.change(&j)
		if err := j.Validate(); err != nil {
			t.Errorf("%s: %v", row.name, err)
			continue
		}
		all, err := j.Doubts()
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
		}
		var got []string
		for _, d := range all {
			if !strings.HasPrefix(string(d.Kind), "narrow strip") && !strings.HasPrefix(string(d.Kind), "boxes") {
				got = append(got, fmt.Sprintf("%v: %s %v %v %v", d.Path, d.Kind, d.Names, d.Lengths, d.Counts))
			}
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%s:\ngot  %q\nwant %q", row.name, got, row.want)
		}
	}
}

// Points of an arched window on a wall that begins at (0, 0) and (24, 0), and of a hatch beside it: by the squares of
// sides, 26² = 24² + 10², 30² = 24² + 18². Springings that differ by more than 1/8 are doubted, as is a third distance
// that misses by more.
func TestTapedPlacesAreDoubted(t *testing.T) {
	job := func(fourth, third string) plan.Job {
		return jobFrom(t, small(`"runs": [{"name": "a", "width": "90", "left": {"kind": "covered"}, "right": {"kind": "covered"}, "heights": [{"at": "0", "top": "60"}, {"at": "90", "top": "60"}],
			"openings": [{"name": "plain", "kind": "window", "left": "60", "bottom": "10", "width": "12", "height": "10", "rise": "2"},
				{"name": "arched", "kind": "window", "rise": "8", "points": {"bases": [["0", "0"], ["24", "0"]], "side": "left", "corners": [
					{"distances": ["0", "24"]}, {"distances": ["24", "0"]}, {"distances": ["26", "10"]}, {"distances": `+fourth+`}]}},
				{"name": "hatch", "kind": "window", "points": {"bases": [["30", "0"], ["54", "0"], ["30", "10"]], "side": "left", "corners": [
					{"distances": ["0", "24", "10"]}, {"distances": ["24", "0", `+third+`]}, {"distances": ["26", "10", "24"]}]}}]}]`))
	}
	for _, row := range []struct {
		fourth, third string
		uneven, apart []string
	}{
		{`["10", "26"]`, `"26"`, nil, nil},
		{`["10 1/8", "26 1/16"]`, `"26"`, nil, nil},
		{`["18", "30"]`, `"26"`, []string{"Runs[0].Openings[1].Rise"}, nil},
		{`["10", "26"]`, `"27"`, nil, []string{"Runs[0].Openings[2].Points.Corners[1].Distances"}},
		{`["10", "26"]`, `"26 1/16"`, nil, nil},
	} {
		j := job(row.fourth, row.third)
		if got := fractiontest.Doubts(t, j, plan.ArchUneven); !slices.Equal(got, row.uneven) {
			t.Errorf("fourth corner by %s: uneven at %q, want %q", row.fourth, got, row.uneven)
		}
		if got := fractiontest.Doubts(t, j, plan.PointsApart); !slices.Equal(got, row.apart) {
			t.Errorf("third distance %s: apart at %q, want %q", row.third, got, row.apart)
		}
	}
	all, err := job(`["18", "30"]`, `"27"`).Doubts()
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range all {
		if d.Kind == plan.ArchUneven && d.Lengths[0] != fraction.Inches(8) {
			t.Errorf("springings at 10 and 18 differ by %v", d.Lengths)
		}
		if d.Kind == plan.PointsApart && (d.Lengths[0].Less(fraction.Of(1, 4)) || fraction.Inches(1).Less(d.Lengths[0]) || d.Counts[0] < 1 || d.Counts[0] > 3) {
			t.Errorf("a distance that is 1 too long: %+v", d)
		}
	}
}

// A closing piece that is sawn to the wall last is doubted where its sheet has less beside that edge than the scribe that
// the job asks for. With a scribe of 1/4 the sheet of 48 in has, from its left, 20 3/16 with that scribe, the blade of 1/8,
// 3/16 to the next place in the pattern and 27 3/16, which leaves 1/16.
func TestLittleSpareIsDoubted(t *testing.T) {
	for _, row := range []struct {
		scribe string
		want   []string // label, edge, spare, scribe
	}{
		{`"1/4"`, []string{"2", "right", "1/16", "1/4"}},
		{`"1/8"`, []string{"2", "right", "1/16", "1/8"}},
		{`"1/16"`, nil},
		{`"0"`, nil},
	} {
		j := jobFrom(t, `{"profile": "beadboard 1-1/2", "scribe": `+row.scribe+`, "stock": [{"name": "sheet", "width": "48", "length": "96"}], "saw": {"kerf": "1/8", "square_up": "1/4"},
			"gaps": {"top": "1/16", "bottom": "1/8", "side": "1/16"}, "runs": [
			{"name": "wall", "width": "75", "left": {"kind": "exposed"}, "right": {"kind": "outside corner"}, "heights": [{"at": "0", "top": "32"}, {"at": "75", "top": "32"}]},
			{"name": "return", "width": "20", "left": {"kind": "outside corner"}, "right": {"kind": "covered"}, "heights": [{"at": "0", "top": "32"}, {"at": "20", "top": "32"}]}]}`)
		p, err := plan.Make(t.Context(), j, plan.Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, w := range p.Warnings {
			if w.Kind == plan.LittleSpare {
				got = append(got, w.Names...)
				for _, l := range w.Lengths {
					got = append(got, fraction.Tape{}.Format(l))
				}
			}
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("scribe %s: %q, want %q", row.scribe, got, row.want)
		}
	}
}
