package plan_test

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
	"example.com/groovewright/wall/plan"
)

func TestCornerNames(t *testing.T) {
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "A1", 53: "B2"} {
		if got := plan.CornerName(i); got != want {
			t.Errorf("corner %d is %s, want %s", i, got, want)
		}
	}
}

func TestLookUps(t *testing.T) {
	p := plan.Plan{
		Runs:   []plan.Run{{Name: "a"}, {Name: "b", Width: fraction.Inches(7)}},
		Stock:  []plan.Stock{{Stock: nest.Stock{Name: "sheet"}}, {Stock: nest.Stock{Name: "offcut"}, Used: 5}},
		Sheets: []plan.Sheet{{Number: 1, Placements: []nest.Placement{{Part: 3}}}, {Number: 2, Placements: []nest.Placement{{Part: 1}, {Part: 4}}}},
	}
	if run, i := p.Run("b"); i != 1 || run.Width != fraction.Inches(7) {
		t.Errorf("run b is %d, %v wide", i, run.Width)
	}
	if run, i := p.Run("c"); i != -1 || run.Name != "" {
		t.Errorf("run c is %d, %q", i, run.Name)
	}
	if stock, i := p.StockNamed("offcut"); i != 1 || stock.Used != 5 {
		t.Errorf("offcut is %d, %d used", i, stock.Used)
	}
	if _, i := p.StockNamed("plank"); i != -1 {
		t.Errorf("plank is %d", i)
	}
	for part, want := range map[int]int{3: 1, 4: 2, 2: 0} {
		if got := p.SheetOf(part); got != want {
			t.Errorf("piece %d is cut from sheet %d, want %d", part, got, want)
		}
	}
}

func TestPolePlaces(t *testing.T) {
	var run plan.Run
	for _, at := range []int64{0, 0, 3, 5, 5, 5} {
		run.StoryPole = append(run.StoryPole, plan.Mark{At: fraction.Inches(at)})
	}
	if got, want := fmt.Sprint(run.PolePlaces()), "[[0 1] [2] [3 4 5]]"; got != want {
		t.Errorf("places %s, want %s", got, want)
	}
	if got := (plan.Run{}).PolePlaces(); got != nil {
		t.Errorf("an empty pole has the places %v", got)
	}
}

func TestMitredEdges(t *testing.T) {
	end := func(kind wall.EndKind) plan.End { return plan.End{Kind: kind} }
	limits := [2]fraction.Length{fraction.Inches(-1), fraction.Inches(21)}
	piece := func(left, width int64) plan.Piece {
		return plan.Piece{At: plan.Point{X: fraction.Inches(left)}, Width: fraction.Inches(width)}
	}
	out, in := end(wall.OutsideCorner), end(wall.InsideCorner)
	for _, row := range []struct {
		name  string
		run   plan.Run
		piece plan.Piece
		want  [2]bool
	}{
		{"the left piece", plan.Run{Left: out, Right: out, Limits: limits}, piece(-1, 10), [2]bool{true, false}},
		{"the right piece", plan.Run{Left: out, Right: out, Limits: limits}, piece(9, 12), [2]bool{false, true}},
		{"one piece alone", plan.Run{Left: out, Right: out, Limits: limits}, piece(-1, 22), [2]bool{true, true}},
		{"a piece between", plan.Run{Left: out, Right: out, Limits: limits}, piece(0, 20), [2]bool{}},
		{"inside corners", plan.Run{Left: in, Right: in, Limits: limits}, piece(-1, 22), [2]bool{}},
	} {
		if got, err := row.run.MitredEdges(row.piece); err != nil || got != row.want {
			t.Errorf("%s: %v, %v, want %v", row.name, got, err, row.want)
		}
	}
	far := plan.Piece{At: plan.Point{X: fraction.Of(1<<62, 3)}, Width: fraction.Of(1<<62, 5)}
	if _, err := (plan.Run{Right: out}).MitredEdges(far); err == nil {
		t.Error("no error beyond exact arithmetic")
	}
}

func TestSheetsOnHand(t *testing.T) {
	two := 2
	p := plan.Plan{Stock: []plan.Stock{{Stock: nest.Stock{Name: "own", Count: &two}, Used: 1}, {Stock: nest.Stock{Name: "shop"}}}}
	for _, row := range []struct {
		row  finish.Row
		want bool
	}{
		{finish.Row{Name: "own"}, true},
		{finish.Row{Name: "shop"}, false},
		{finish.Row{Name: "own", Price: money.MustParse("3")}, false},
		{finish.Row{Name: "own", Item: finish.ItemExtra}, false},
	} {
		if got := p.OnHand(row.row); got != row.want {
			t.Errorf("%+v is on hand: %v", row.row, got)
		}
	}
}

func TestChoicesAgainstTheChosenOne(t *testing.T) {
	blemish := func(n int64) fraction.Ratio { return fraction.NewRatio(n, 1) }
	p := plan.Plan{Choices: []plan.Choice{{BlemishTotal: blemish(1)}, {BlemishTotal: blemish(2), Chosen: true, Proved: true}, {BlemishTotal: blemish(3)}},
		Stock: []plan.Stock{{Used: 1}}}
	for i, want := range []bool{true, false, false} {
		if got := p.LooksBetter(p.Choices[i]); got != want {
			t.Errorf("choice %d looks better: %v", i, got)
		}
	}
	if p.Cheapest() {
		t.Error("sheets without a price are called the cheapest")
	}
	p.Stock[0].Price = money.MustParse("20")
	if !p.Cheapest() {
		t.Error("proved sheets with a price are not called the cheapest")
	}
	if p.Bound.Proved = true; p.Cheapest() {
		t.Error("the fewest are called the cheapest")
	}
}

// TestCourses: boards of 3 1/4 are marked at the first, the last and every fourth joint; a joint out of
// step, as beyond a door, begins a course of its own.
func TestCourses(t *testing.T) {
	p := plan.Plan{Profile: plan.Profile{Profile: groove.Profile{Boards: true}}}
	var run plan.Run
	mark := func(quarters int64, kind plan.MarkKind) {
		run.StoryPole = append(run.StoryPole, plan.Mark{At: fraction.Of(quarters, 4), Kind: kind})
	}
	mark(0, plan.PanelsStart)
	for i := range int64(9) {
		mark(13*(i+1), plan.PanelsMeet)
		mark(13*(i+1)+1, plan.OpeningLeft)
	}
	mark(200, plan.PanelsMeet)
	mark(213, plan.PanelsMeet)
	courses := p.Courses(run)
	if len(courses) != 1 || courses[0].Every != fraction.Of(13, 4) {
		t.Fatalf("courses %+v", courses)
	}
	c := courses[0]
	if got, want := fmt.Sprint(c.Marks, c.Checks()), "[1 3 5 7 9 11 13 15 17] [7 15]"; got != want {
		t.Errorf("marks and checks %s, want %s", got, want)
	}
	p.Profile.Boards = false
	if got := p.Courses(run); got != nil {
		t.Errorf("seams of sheets are each marked, not %+v", got)
	}
}

// TestStretches: the line of a hatch of 24 with a rise of 8 and a gap of 1/8, centre of its circle 5 below
// the springing, radius 13: the arc is said by its own ends, 5.025 over the centre at 12 1/8 beside it and
// 12.99 at 1 7/8, not by the corners of the polyline.
func TestStretches(t *testing.T) {
	point := func(x, y int64) plan.Point { return plan.Point{X: fraction.Of(x, 16), Y: fraction.Of(y, 16)} }
	arc := plan.Arc{Opening: "hatch", Centre: point(-30, 104), Radius: fraction.Of(105, 8), Springs: fraction.Of(23, 2)}
	piece := plan.Piece{Width: fraction.Inches(44), Height: fraction.Inches(24), Marks: plan.Marks{Arcs: []plan.Arc{arc}}}
	cut := plan.SawCut{Points: []plan.Point{point(0, 313), point(40, 304), point(80, 286), point(139, 232), point(164, 186), point(164, 26)}}
	from, parts, err := piece.Stretches(cut, fraction.Of(1, 16))
	if err != nil {
		t.Fatal(err)
	}
	want := []plan.Stretch{{Arc: &piece.Marks.Arcs[0], To: point(164, 184)}, {To: point(164, 26)}}
	if from != point(0, 312) || !slices.Equal(parts, want) {
		t.Errorf("from %v along %+v, want %+v", from, parts, want)
	}
}

// TestClosingEdge: the far edge, but the one at the door where a panel stands beside the far one.
func TestClosingEdge(t *testing.T) {
	in := fraction.Inches
	run := plan.Run{Name: "wall", Panels: []wall.Panel{{Number: 1, Right: in(30)}, {Number: 2, Left: in(66), Right: in(71)}, {Number: 3, Left: in(71), Right: in(80)}}}
	run.SetOut.Direction = wall.Right
	p := plan.Plan{Runs: []plan.Run{run}}
	for panel, want := range map[int]wall.Direction{1: wall.Right, 2: wall.Left, 3: wall.Right} {
		if got := p.ClosingEdge(plan.Piece{Run: "wall", Panel: panel, Closing: true}); got != want {
			t.Errorf("piece of panel %d closes at its %v edge, want %v", panel, got, want)
		}
	}
	p.Runs[0].SetOut.Direction = wall.Left
	for panel, want := range map[int]wall.Direction{2: wall.Left, 3: wall.Right, 1: wall.Left} {
		if got := p.ClosingEdge(plan.Piece{Run: "wall", Panel: panel, Closing: true}); got != want {
			t.Errorf("worked to the left, piece of panel %d closes at its %v edge, want %v", panel, got, want)
		}
	}
	scribed := plan.Piece{Run: "wall", Panel: 1, Scribe: &wall.Scribe{Edge: wall.Right, Width: in(1)}}
	if got := p.ClosingEdge(scribed); got != wall.Right {
		t.Errorf("scribed at the %v edge", got)
	}
}

// TestMeasure: a blade of 2.2 mm leaves 1676.4 below a strip of 558, which is what to measure; never the
// waste beside a piece, nor what is no better.
func TestMeasure(t *testing.T) {
	mm := func(tenths int64) fraction.Length { return fraction.Millimetres(tenths, 10) }
	for _, c := range []struct {
		at, length int64
		frees      [2]int
		want       int64
		far        bool
	}{
		{16764, 22366, [2]int{}, 5580, true},
		{16764, 22366, [2]int{1, 0}, 16764, false},
		{16760, 22366, [2]int{}, 16760, false},
		{16765, 22367, [2]int{}, 16765, false}, // half a mark
		{22366, 24300, [2]int{}, 22366, false},
	} {
		cut := plan.Cut{Cut: nest.Cut{Kind: nest.Crosscut, At: mm(c.at)}, Frees: c.frees}
		cut.Rect[3] = mm(c.length)
		got, far, err := cut.Measure(mm(22), mm(10))
		if err != nil || got != mm(c.want) || far != c.far {
			t.Errorf("%d of %d: %v from the far end %v, %v", c.at, c.length, got, far, err)
		}
	}
}

// TestPlaned: a taper of 1/16 along one edge is planed where less than 1/8 is; one of 1/8 is sawn, as is
// a notch however small.
func TestPlaned(t *testing.T) {
	p := plan.Plan{Saw: plan.Saw{Saw: nest.Saw{LeastRip: fraction.Of(1, 8)}}}
	piece := plan.Piece{Width: fraction.Inches(30), Height: fraction.Inches(20)}
	point := func(x, y int64) plan.Point { return plan.Point{X: fraction.Of(x, 16), Y: fraction.Of(y, 16)} }
	for _, c := range []struct {
		kind     cutout.CuttingKind
		from, to plan.Point
		want     bool
	}{
		{cutout.EdgeCut, point(0, 0), point(480, 1), true},
		{cutout.EdgeCut, point(0, 319), point(480, 320), true},
		{cutout.EdgeCut, point(480, 0), point(479, 320), true},
		{cutout.EdgeCut, point(0, 0), point(480, 2), false},
		{cutout.EdgeCut, point(0, 40), point(40, 0), false},
		{cutout.NotchCut, point(0, 0), point(480, 1), false},
	} {
		cutting := plan.Cutting{Waste: plan.Waste{Kind: c.kind}, Saw: []plan.SawCut{{Points: []plan.Point{c.from, c.to}}}}
		if got := p.Planed(piece, cutting); got != c.want {
			t.Errorf("%v from %v to %v: planed %v", c.kind, c.from, c.to, got)
		}
	}
}

// TestPoleEntries: an opening, a seam with a gap and a course are one entry each; what is at one place is
// together.
func TestPoleEntries(t *testing.T) {
	mark := func(at int64, kind plan.MarkKind, panel int, opening string) plan.Mark {
		return plan.Mark{At: fraction.Inches(at), Kind: kind, Panel: panel, Opening: opening}
	}
	say := func(p plan.Plan, marks ...plan.Mark) (text string) {
		for _, e := range p.PoleEntries(plan.Run{StoryPole: marks}) {
			text += fmt.Sprint(e.From, "-", e.To)
			for _, m := range e.Marks {
				text += fmt.Sprint(" ", m.Kind, m.Panel, m.Next)
			}
			text += map[bool]string{true: " course"}[e.Course != nil] + "; "
		}
		return text
	}
	got := say(plan.Plan{}, mark(0, plan.PanelsStart, 0, ""), mark(0, plan.RepeatStarts, 0, ""), mark(5, plan.OpeningLeft, 0, "a"), mark(7, plan.PanelRight, 1, ""),
		mark(8, plan.PanelLeft, 2, ""), mark(9, plan.OpeningRight, 0, "a"), mark(20, plan.PanelRight, 2, ""), mark(21, plan.OpeningLeft, 0, "door"),
		mark(29, plan.OpeningRight, 0, "door"), mark(30, plan.PanelLeft, 3, ""))
	if want := "0-0 panels start 0 0 repeat starts 0 0; 5-9 opening left 0 0; 7-8 panels meet 1 2; 20-20 panel right 2 0; 21-29 opening left 0 0; 30-30 panel left 3 0; "; got != want {
		t.Errorf("entries %s, want %s", got, want)
	}
	boards := []plan.Mark{mark(0, plan.PanelsStart, 0, "")}
	for i := range int64(6) {
		boards = append(boards, mark(3*(i+1), plan.PanelsMeet, int(i+1), ""))
	}
	boards = append(boards[:2:2], append([]plan.Mark{mark(3, plan.RepeatStarts, 0, "")}, boards[2:]...)...)
	got = say(plan.Plan{Profile: plan.Profile{Profile: groove.Profile{Boards: true}}}, boards...)
	if want := "0-0 panels start 0 0; 3-18 panels meet 1 0 course; "; got != want {
		t.Errorf("boards: entries %s, want %s", got, want)
	}
}
