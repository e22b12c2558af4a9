package book

import (
	"errors"
	"html/template"
	"strings"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// The total names its tax where there is one.
func TestTotalNamesItsTax(t *testing.T) {
	for tax, want := range map[string]string{"0": "Total 108.25.", "8.25": "Total 108.25, with tax of 8.25."} {
		p := kitchen()
		p.Rows = []finish.Row{{Item: finish.ItemSheet, Cost: money.MustParse("100")}}
		p.Total, p.Tax, p.Unpriced = money.MustParse("108.25"), money.MustParse(tax), 0
		if got := Part(p, Buy, false); !strings.Contains(got, want) {
			t.Errorf("a tax of %s: no %q in %s", tax, want, got)
		}
	}
}

// Of boards that are only sawn across, those to be mitered are named after the list of their lengths, and no others.
func TestBoardsToMiterAreNamed(t *testing.T) {
	in := fraction.Inches
	p := plan.Plan{Tape: fraction.Of(1, 16), Profile: plan.Profile{Profile: groove.Profile{Boards: true}}}
	p.Runs = []plan.Run{{Name: "wall", Limits: [2]fraction.Length{{}, in(10)}, Right: plan.End{Kind: wall.OutsideCorner}}}
	for i, label := range []string{"1", "2"} {
		p.Pieces = append(p.Pieces, plan.Piece{Number: i + 1, Label: label, Run: "wall", Width: in(5), Height: in(30), At: plan.Point{X: in(5).Mul(int64(i))}})
		p.Sheets = append(p.Sheets, plan.Sheet{Number: i + 1, Stock: "board", Placements: []nest.Placement{{Part: i + 1}}, Cuts: []plan.Cut{{Cut: nest.Cut{Kind: nest.Crosscut}}}})
	}
	got := Part(p, Cuts, false)
	if !strings.Contains(got, "Piece 2 (then miter the right edge of its face).") || strings.Contains(got, "Piece 1") {
		t.Error(got)
	}
}

// Plans side by side: what the columns hold is said below.
func TestComparedColumnsAreExplained(t *testing.T) {
	got := strings.Join(strings.Fields(Compare(nil, []plan.Plan{kitchen()})), " ")
	for _, want := range []string{"sheets", "money", "flaws"} {
		if strings.Count(strings.ToLower(got), want) < 2 {
			t.Errorf("%q is not explained in %s", want, got)
		}
	}
}

// A doubt about a weak spot belongs to its piece, where it has the label of one; every other belongs to a path.
func TestPlaceOfADoubt(t *testing.T) {
	path := fault.Of("Runs", 0)
	for _, row := range []struct {
		warning warning.Warning
		want    string
	}{
		{warning.Warning{Kind: plan.WeakSpot, Path: path, Names: []string{"3"}}, "piece 3"},
		{warning.Warning{Kind: plan.WeakSpot, Path: path, Names: []string{"3", "strip"}}, "piece 3"},
		{warning.Warning{Kind: plan.WeakSpot, Path: path}, "runs[0]"},
		{warning.Warning{Kind: finish.SeamTight, Path: path, Names: []string{"3"}}, "runs[0]"},
	} {
		if got := place(row.warning); got != row.want {
			t.Errorf("%+v: %q, want %q", row.warning, got, row.want)
		}
	}
}

// Tape is pulled after a bead along which a step before put it: in the step of taping, or in that of the lower line itself.
func TestMaskedJoints(t *testing.T) {
	steps := func(stage finish.Stage, kinds ...finish.ActKind) (s finish.Step) {
		s.Stage = stage
		for _, kind := range kinds {
			s.Acts = append(s.Acts, finish.Act{Kind: kind})
		}
		return s
	}
	tape, low := steps(finish.StageTape, finish.ActFloor, finish.ActJoints), steps(finish.StageSealWet, finish.ActJoints)
	for _, row := range []struct {
		order     []finish.Step
		seal, wet bool
	}{
		{nil, false, false},
		{[]finish.Step{tape}, true, false},
		{[]finish.Step{low}, false, true},
		{[]finish.Step{tape, low}, true, true},
		{[]finish.Step{steps(finish.StageTape, finish.ActFloor), steps(finish.StageSealWet, finish.ActRod)}, false, false},
		{[]finish.Step{steps(finish.StageSeal, finish.ActJoints)}, false, false},
		{[]finish.Step{steps(finish.StageTape)}, false, false},
	} {
		p := plan.Plan{Order: row.order}
		if seal, wet := masked(p, finish.StageSeal), masked(p, finish.StageSealWet); seal != row.seal || wet != row.wet {
			t.Errorf("%+v: %v and %v", row.order, seal, wet)
		}
	}
}

// What a text calls may fail, and then the text does.
func TestTextsFailWithWhatTheyCall(t *testing.T) {
	wrong := errors.New("wrong")
	count := func(int) (int, error) { return 0, wrong }
	if _, err := execute("starter.tmpl", template.FuncMap{"count": count, "right": count}, []string{"exposed"}); !errors.Is(err, wrong) {
		t.Errorf("no fault: %v", err)
	}
	if _, err := execute("starter.tmpl", nil, []string{"exposed"}); err == nil {
		t.Error("a text that calls what is not there is no fault")
	}
}

// That poles differ from pieces is said where a pole has a step or an opening, and only there.
func TestPolesAsTapedAreSaid(t *testing.T) {
	for _, row := range []struct {
		kinds []plan.MarkKind
		want  bool
	}{
		{nil, false},
		{[]plan.MarkKind{plan.PanelsMeet, plan.RepeatStarts}, false},
		{[]plan.MarkKind{plan.PanelsMeet, plan.OpeningLeft}, true},
		{[]plan.MarkKind{plan.StepSide}, true},
	} {
		p := plan.Plan{Runs: make([]plan.Run, 2)}
		for _, kind := range row.kinds {
			p.Runs[1].StoryPole = append(p.Runs[1].StoryPole, plan.Mark{Kind: kind})
		}
		if got := asTaped(p); (got != "") != row.want {
			t.Errorf("%v: %q", row.kinds, got)
		}
	}
}

// Boxes of which the same is said are one doubt with their names; a doubt without a place begins with what it says.
func TestDoubtsOfSeveralBoxes(t *testing.T) {
	in := fraction.Inches
	deep := func(name string, by int64) warning.Warning {
		return warning.Warning{Kind: finish.BoxTooDeep, Names: []string{name}, Lengths: []fraction.Length{in(by)}}
	}
	p := plan.Plan{Tape: fraction.Of(1, 16), Warnings: []warning.Warning{deep("a", 2), deep("b", 2), {Kind: finish.TrimJoint, Names: []string{"wall", "left end"}}, deep("c", 3), deep("d", 2)}}
	got := strings.Join(strings.Fields(Part(p, Doubts, false)), " ")
	const want = "! a, b and d: front 2 behind the face, farther than any extender on the list reaches: have an electrician bring it forward ! left end of wall: its trim is longer than a strip and gets a joint ! c: front 3"
	if !strings.Contains(got, want) || len(p.Warnings[0].Names) != 1 {
		t.Errorf("%s; want %s", got, want)
	}
	if got := Warning(p, p.Warnings[2]); !strings.HasPrefix(got, "left end of wall") {
		t.Error(got)
	}
}

// What is not on the list is not named where devices are put back.
func TestWhatBringsDevicesOut(t *testing.T) {
	for _, row := range []struct {
		rows []finish.Row
		want string
	}{
		{nil, "Put back devices and covers: each yoke"},
		{[]finish.Row{{Item: finish.ItemSpacers}}, "and covers, with their spacers: each"},
		{[]finish.Row{{Item: finish.ItemSpacers}, {Item: finish.ItemExtender}}, "and covers, with their extenders and spacers: each"},
	} {
		p := plan.Plan{}
		p.List.Rows = row.rows
		if got := Step(p, finish.Step{Stage: finish.StageDevices}); !strings.Contains(got, row.want) {
			t.Errorf("%q lacks %q", got, row.want)
		}
	}
}

// Nothing is a word, not a number; ends of a run are left and right.
func TestNothingToSpare(t *testing.T) {
	feet := func(text string) finish.Figure {
		var f finish.Figure
		if err := f.UnmarshalText([]byte(text)); err != nil {
			t.Fatal(err)
		}
		return f
	}
	for _, row := range []struct{ margin, want string }{{"0 ft", "; tight: none to spare"}, {"0.1 ft", "; tight: 0.1 ft to spare"}} {
		if got := How(finish.Row{Terms: []finish.Term{{Kind: finish.TermMargin, Value: feet(row.margin)}}}); !strings.HasSuffix("; "+got, row.want) {
			t.Errorf("%q lacks %q", got, row.want)
		}
	}
	ends := finish.Row{How: finish.ByEnds, Terms: []finish.Term{{Kind: finish.TermLeftEnd, Name: "hall", Value: feet("3 ft")}, {Kind: finish.TermRightEnd, Name: "hall", Value: feet("3 ft")}, {Kind: finish.TermEnd, Name: "pier", Value: feet("2 ft")}}}
	if got := How(ends); !strings.HasPrefix(got, "left end of hall: 3 ft, right end of hall: 3 ft, end of pier: 2 ft") {
		t.Error(got)
	}
	for by, want := range map[int64]string{0: "its sheet has nothing to spare at its right edge", 1: "its sheet has only 1 to spare at its right edge"} {
		if got := Doubt(fraction.Tape{}, warning.Warning{Kind: plan.LittleSpare, Names: []string{"2", "right"}, Lengths: []fraction.Length{fraction.Inches(by), fraction.Inches(2)}}); !strings.HasPrefix(got, want) {
			t.Errorf("%q lacks %q", got, want)
		}
	}
}

// Points from taped distances are a table, two columns in: a height by its number, a corner by that of its opening.
func TestTableOfTapedPoints(t *testing.T) {
	in := fraction.Inches
	x := &text{tape: fraction.Tape{Mark: fraction.Of(1, 16)}}
	x.taped([]plan.Taped{{Run: "north", Number: 2, At: plan.Point{X: in(30), Y: in(40)}}, {Run: "north", Opening: "window", Number: 4, At: plan.Point{X: in(5), Y: in(6)}, Closing: fraction.Of(1, 8)}})
	for _, want := range []string{"\n  point ", "\n  height 2 of north    north  30         40  ", "\n  corner c4 of window  north  5          6   "} {
		if !strings.Contains(x.String(), want) {
			t.Errorf("no %q in %s", want, x.String())
		}
	}
}

// Waste is an upright rectangle where each side is one cut, all of them or those from edge to edge, and each inside corner has
// its hole.
func TestWasteThatIsARectangle(t *testing.T) {
	at := func(x, y int64) plan.Point { return plan.Point{X: fraction.Inches(x), Y: fraction.Inches(y)} }
	for _, row := range []struct {
		name  string
		path  []plan.Point
		holes int
		want  bool
	}{
		{"all round", []plan.Point{at(0, 0), at(0, 9), at(5, 9), at(5, 0), at(0, 0)}, 4, true},
		{"a notch", []plan.Point{at(0, 9), at(5, 9), at(5, 0)}, 1, true},
		{"a notch without its hole", []plan.Point{at(0, 9), at(5, 9), at(5, 0)}, 0, false},
		{"an upright side in two", []plan.Point{at(0, 0), at(0, 4), at(0, 9), at(5, 9), at(5, 0), at(0, 0)}, 5, false},
		{"a level side in two", []plan.Point{at(0, 0), at(0, 9), at(3, 9), at(5, 9), at(5, 0), at(0, 0)}, 5, false},
		{"a step", []plan.Point{at(0, 9), at(3, 9), at(3, 4), at(5, 4), at(5, 0)}, 3, false},
		{"aslant", []plan.Point{at(0, 9), at(5, 0)}, 0, false},
	} {
		var c plan.Cutting
		for i := range row.path[1:] {
			c.Saw = append(c.Saw, plan.SawCut{Points: row.path[i : i+2]})
		}
		c.Drill = make([]int, row.holes)
		if _, hi, ok := rectangle(c); ok != row.want || ok && hi != at(5, 9) {
			t.Errorf("%s: %v up to %v", row.name, ok, hi)
		}
	}
}

// Sizes of a metric pattern are written on its own marks, tenths of a millimeter.
func TestMetricProfilesAreListedInMillimeters(t *testing.T) {
	mm := func(tenths int64) fraction.Length { return fraction.Millimetres(tenths, 10) }
	got := Profiles([]groove.Profile{{Name: "Nut", Thickness: mm(125), Features: []groove.Feature{{Kind: groove.Flat, Width: mm(797)}, {Kind: groove.Groove, Width: mm(33)}}}})
	for _, want := range []string{"repeats every 83 mm", "12.5 mm thick", "79.7", "3.3"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
}

// A board with a slanted end is a row of a table where it is nothing more: no box, no weak spot, no piece to close with.
func TestSlantedBoardsAreRows(t *testing.T) {
	at := func(x, y int64) plan.Point { return plan.Point{X: fraction.Inches(x), Y: fraction.Inches(y)} }
	for _, row := range []struct {
		name   string
		change func(*plan.Plan, *plan.Piece)
		want   bool
	}{
		{"a slanted end", func(*plan.Plan, *plan.Piece) {}, true},
		{"a sheet", func(p *plan.Plan, _ *plan.Piece) { p.Profile.Boards = false }, false},
		{"a plain board", func(_ *plan.Plan, piece *plan.Piece) { piece.Outline[2] = at(5, 30) }, false},
		{"a weak spot", func(_ *plan.Plan, piece *plan.Piece) { piece.Weak = make([]plan.Weak, 1) }, false},
		{"a hole", func(_ *plan.Plan, piece *plan.Piece) { piece.Holes = make([]plan.Hole, 1) }, false},
		{"a hole and a weak spot", func(_ *plan.Plan, piece *plan.Piece) {
			piece.Holes, piece.Weak = make([]plan.Hole, 1), make([]plan.Weak, 1)
		}, false},
		{"a closing piece", func(_ *plan.Plan, piece *plan.Piece) { piece.Closing = true }, false},
	} {
		p := plan.Plan{Profile: plan.Profile{Profile: groove.Profile{Boards: true}}}
		piece := plan.Piece{Width: fraction.Inches(5), Height: fraction.Inches(30), Outline: []plan.Point{at(0, 0), at(5, 0), at(5, 28), at(0, 30)}}
		row.change(&p, &piece)
		if got := slant(p, piece); got != row.want {
			t.Errorf("%s: %v", row.name, got)
		}
	}
}

// What a search leaves open says how many sheets a layout that looks as good takes at least, where that is known and fewer
// than the plan takes.
func TestLeastSheetsOfAnEqualLook(t *testing.T) {
	for least, want := range map[int]string{0: "", 1: "takes at least 1 sheet", 2: "takes at least 2 sheets", 3: "", 4: ""} {
		p := plan.Plan{Sheets: make([]plan.Sheet, 3), Choices: []plan.Choice{{}, {Chosen: true, SheetsAtLeast: least}}}
		if got := Search(p); !strings.HasSuffix(got, want) || (want == "") == strings.Contains(got, "at least") {
			t.Errorf("at least %d of 3: %q", least, got)
		}
	}
}

// Extras in a row share a line of the short list, wherever they stand in it, and all else has a row.
func TestExtrasShareALine(t *testing.T) {
	p := kitchen()
	extra := func(item string, buy int) finish.Row {
		return finish.Row{Item: finish.ItemExtra, Name: item, How: finish.ByRequest, Buy: buy}
	}
	p.Rows = []finish.Row{extra("brush", 1), {Item: finish.ItemSheet, Name: "fir", Buy: 3}, extra("respirator", 1), extra("rag", 4)}
	got := Part(p, Buy, false)
	if !strings.Contains(got, "of each: brush; respirator\n") || !strings.Contains(got, "fir") || !strings.Contains(got, "rag") {
		t.Error(got)
	}
}
