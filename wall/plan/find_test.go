package plan_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/plan"
)

func TestCornerNames(t *testing.T) {
	for i, want := range map[int]string{-1: "A", 0: "A", 8: "J", 21: "Z", 22: "AA", 43: "AZ", 44: "BA"} {
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
	p := plan.Plan{Stock: []plan.Stock{{Stock: nest.Stock{Name: "own", Count: &two}, Used: 1}, {Stock: nest.Stock{Name: "shop"}}, {Stock: nest.Stock{Name: "few", Count: &two, Price: money.MustParse("3")}}}}
	for _, row := range []struct {
		row  finish.Row
		want bool
	}{
		{finish.Row{Name: "own"}, true},
		{finish.Row{Name: "shop"}, false},
		{finish.Row{Name: "few"}, false},
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
	if p.LeastOfAll() || p.ByPrice() {
		t.Error("nothing is proved, and there is one kind of stock")
	}
	p.Stock, p.Search.Least = append(p.Stock, plan.Stock{}), true
	if p.LeastOfAll() || p.ByPrice() {
		t.Error("another choice needs less, and no stock has a price")
	}
	p.Stock[0].Price, p.Choices = money.MustParse("20"), p.Choices[:2]
	if !p.LeastOfAll() || !p.ByPrice() {
		t.Error("none needs less than the last choice, and a price counts against none")
	}
	p.Stock[1].Count = new(int)
	if p.ByPrice() {
		t.Error("what is on hand without a price has none to count")
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
	from, parts, err := piece.Stretches(cut, fraction.Of(1, 16), fraction.Of(1, 64))
	if err != nil {
		t.Fatal(err)
	}
	want := []plan.Stretch{{Arc: &piece.Marks.Arcs[0], To: point(164, 185)}, {To: point(164, 26)}}
	if from != point(0, 312) || !slices.Equal(parts, want) {
		t.Errorf("from %v along %+v, want %+v", from, parts, want)
	}
}

// An arch that springs at the lower edge of a piece, 24 wide and 8 high, radius 13 about a centre 5 below: its ends are 12 to
// the right and to the left of the middle, beside the corners that stand for them. A corner
// stands for it that is less than 1/4 off.
func TestStretchesFromEdgeToEdge(t *testing.T) {
	at := func(x, y string) plan.Point { return plan.Point{X: fraction.MustParse(x), Y: fraction.MustParse(y)} }
	piece := plan.Piece{Width: fraction.Inches(30), Height: fraction.Inches(10), Marks: plan.Marks{Arcs: []plan.Arc{{Centre: at("15", "-5"), Radius: fraction.Inches(13)}}}}
	arc := &piece.Marks.Arcs[0]
	for _, row := range []struct {
		points []plan.Point
		from   plan.Point
		to     []plan.Stretch
	}{
		{[]plan.Point{at("27 1/16", "0"), at("15", "8 1/8"), at("2 15/16", "0")}, at("27", "0"), []plan.Stretch{{Arc: arc, To: at("3", "0")}}},
		{[]plan.Point{at("2 15/16", "0"), at("15", "8 1/8"), at("27 1/16", "0"), at("30", "0")}, at("3", "0"), []plan.Stretch{{Arc: arc, To: at("27", "0")}, {To: at("30", "0")}}},
		{[]plan.Point{at("2 15/16", "0"), at("15", "8 1/8"), at("27 1/8", "1/16")}, at("3", "0"), []plan.Stretch{{Arc: arc, To: at("27", "0")}}}, // right below the last it is 5/16 below the piece
		{[]plan.Point{at("0", "4"), at("30", "4")}, at("0", "4"), []plan.Stretch{{To: at("30", "4")}}},
	} {
		from, parts, err := piece.Stretches(plan.SawCut{Points: row.points}, fraction.Of(1, 16), fraction.Of(1, 64))
		if err != nil || from != row.from || !slices.Equal(parts, row.to) {
			t.Errorf("%v: from %v along %+v, %v; want %v, %+v", row.points, from, parts, err, row.from, row.to)
		}
	}
	// A straight line that meets the arc at a corner beside its end ends with it.
	piece.Marks.Arcs[0].Ends = []plan.ArcEnd{{Corner: 4, At: at("27", "0")}}
	up := plan.SawCut{Points: []plan.Point{at("27 1/16", "-5"), at("27 1/16", "1/16")}, Corners: []int{3, 4}}
	if from, parts, err := piece.Stretches(up, fraction.Of(1, 16), fraction.Of(1, 64)); err != nil || from != up.Points[0] || !slices.Equal(parts, []plan.Stretch{{To: at("27", "0")}}) {
		t.Errorf("from %v along %+v, %v", from, parts, err)
	}
	if got := plan.ArcAt(piece.Marks.Arcs, at("27", "-1/4")); got != nil {
		t.Error("a corner 1/4 below the springing stands for the arc")
	}
	for y, want := range map[string]bool{"8": true, "8 3/16": true, "8 1/4": false, "7 13/16": true, "7 3/4": false} {
		if got := plan.ArcAt(piece.Marks.Arcs, at("15", y)) != nil; got != want {
			t.Errorf("a corner at %s, where the arc is at 8, stands for it: %v", y, got)
		}
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
	if got := p.ClosingEdge(plan.Piece{Run: "wall", Panel: 9}); got != wall.Left {
		t.Errorf("worked to the left, the piece of no panel closes at its %v edge", got)
	}
	for gap, want := range map[int64]wall.Direction{35: wall.Left, 36: wall.Right, 37: wall.Right} { // the door's 36, or less, are a seam
		p.Gaps.Seam = in(gap)
		if got := p.ClosingEdge(plan.Piece{Run: "wall", Panel: 2}); got != want {
			t.Errorf("beside a gap of 36 with seams of %d a piece closes at its %v edge, want %v", gap, got, want)
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

// TestNotchesTooFine: a notch whose size is beyond exact arithmetic is an error.
func TestNotchesTooFine(t *testing.T) {
	finer, fine, ten := fraction.Of(1, math.MaxInt64), fraction.Of(1, 999_983), fraction.Inches(10)
	outline := []plan.Point{{X: finer}, {X: ten}, {X: ten, Y: ten}, {Y: ten}, {Y: in("3")}, {X: fine, Y: in("3")}}
	if found, err := (plan.Piece{Width: ten, Height: ten, Outline: outline}).Notches(); err == nil {
		t.Errorf("%v, want an error", found)
	}
}

// TestPlaned: a taper of 1/16 along one edge is planed where less than 1/8 is, as it is beside a notch; one of
// 1/8 is sawn, and what ends in an inside corner or goes round a hole.
func TestPlaned(t *testing.T) {
	p := plan.Plan{Saw: plan.Saw{Saw: nest.Saw{LeastRip: fraction.Of(1, 8)}}}
	point := func(x, y int64) plan.Point { return plan.Point{X: fraction.Of(x, 16), Y: fraction.Of(y, 16)} }
	// A step of 1/16 at the upper left, and at the upper right a notch up to which the upper edge falls by 1/16.
	piece := plan.Piece{Width: fraction.Inches(30), Height: fraction.Inches(20), Outline: []plan.Point{
		point(0, 0), point(480, 0), point(480, 100), point(400, 100), point(400, 319), point(40, 320), point(40, 319), point(0, 319)}}
	for _, c := range []struct {
		points  []plan.Point
		corners []int
		want    bool
	}{
		{[]plan.Point{point(0, 0), point(480, 1)}, nil, true},
		{[]plan.Point{point(0, 0), point(480, 1)}, []int{0, 1}, true}, // both ends are outside corners, the first among them
		{[]plan.Point{point(0, 319), point(480, 320)}, nil, true},
		{[]plan.Point{point(480, 0), point(479, 320)}, nil, true},
		{[]plan.Point{point(0, 0), point(480, 2)}, nil, false},
		{[]plan.Point{point(0, 40), point(40, 0)}, nil, false},
		{[]plan.Point{point(400, 319), point(40, 320)}, []int{4, 5}, true},
		{[]plan.Point{point(0, 319), point(40, 319)}, []int{7, 6}, false},
		{[]plan.Point{point(480, 100), point(400, 100)}, []int{2, 3}, false},
		{[]plan.Point{point(1, 20), point(1, 30)}, []int{8, 9}, false},
		{nil, nil, false},
	} {
		if got := p.Planed(piece, plan.SawCut{Points: c.points, Corners: c.corners}); got != c.want {
			t.Errorf("%v by %v: planed %v", c.points, c.corners, got)
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
	gaps := plan.Plan{}
	gaps.Gaps.Seam = fraction.Inches(1)
	got := say(gaps, mark(0, plan.PanelsStart, 0, ""), mark(0, plan.RepeatStarts, 0, ""), mark(5, plan.OpeningLeft, 0, "a"), mark(7, plan.PanelRight, 1, ""),
		mark(8, plan.PanelLeft, 2, ""), mark(9, plan.OpeningRight, 0, "a"), mark(20, plan.PanelRight, 2, ""), mark(21, plan.OpeningLeft, 0, "door"),
		mark(29, plan.OpeningRight, 0, "door"), mark(30, plan.PanelLeft, 3, ""),
		mark(40, plan.PanelRight, 3, ""), mark(40, plan.OpeningLeft, 0, "bare gate"), mark(42, plan.OpeningRight, 0, "bare gate"), mark(42, plan.PanelLeft, 4, ""))
	if want := "0-0 panels start 0 0 repeat starts 0 0; 5-9 opening left 0 0; 7-8 panels meet 1 2; 20-20 panel right 2 0; 21-29 opening left 0 0; 30-30 panel left 3 0; " +
		"40-40 panel right 3 0; 40-42 opening left 0 0; 42-42 panel left 4 0; "; got != want {
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

// pieceOf returns a piece of whole inches with these corners in its outline.
func pieceOf(width, height int64, outline ...[2]int64) plan.Piece {
	p := plan.Piece{Width: fraction.Inches(width), Height: fraction.Inches(height)}
	for _, c := range outline {
		p.Outline = append(p.Outline, plan.Point{X: fraction.Inches(c[0]), Y: fraction.Inches(c[1])})
	}
	return p
}

// A piece is rectangular with four corners that are those of its bounding rectangle, and plain without a hole.
func TestRectangularAndPlain(t *testing.T) {
	for _, row := range []struct {
		name        string
		piece       plan.Piece
		rectangular bool
	}{
		{"a rectangle", pieceOf(9, 5, [2]int64{}, [2]int64{9, 0}, [2]int64{9, 5}, [2]int64{0, 5}), true},
		{"a sloped top", pieceOf(9, 5, [2]int64{}, [2]int64{9, 0}, [2]int64{9, 5}, [2]int64{0, 4}), false},
		{"a leaning side", pieceOf(9, 5, [2]int64{}, [2]int64{8, 0}, [2]int64{9, 5}, [2]int64{0, 5}), false},
		{"a foot off the level", pieceOf(9, 5, [2]int64{0, 1}, [2]int64{9, 0}, [2]int64{9, 5}, [2]int64{0, 5}), false},
		{"half of a rectangle", pieceOf(9, 5, [2]int64{}, [2]int64{9, 0}, [2]int64{9, 5}), false},
		{"a notch", pieceOf(9, 5, [2]int64{}, [2]int64{9, 0}, [2]int64{9, 3}, [2]int64{7, 3}, [2]int64{7, 5}, [2]int64{0, 5}), false},
		{"a corner within an edge", pieceOf(9, 5, [2]int64{}, [2]int64{9, 0}, [2]int64{9, 5}, [2]int64{0, 5}, [2]int64{0, 3}), false},
	} {
		if row.piece.Rectangular() != row.rectangular || row.piece.Plain() != row.rectangular {
			t.Errorf("%s: rectangular %v, plain %v", row.name, row.piece.Rectangular(), row.piece.Plain())
		}
		row.piece.Holes = make([]plan.Hole, 1)
		if row.piece.Plain() {
			t.Errorf("%s with a hole is plain", row.name)
		}
	}
}

// A piece holds what lies on its bounding rectangle, the edges among it.
func TestHolds(t *testing.T) {
	p := pieceOf(9, 5)
	for at, want := range map[[2]int64]bool{{0, 0}: true, {9, 5}: true, {0, 5}: true, {9, 0}: true, {4, 2}: true,
		{-1, 2}: false, {10, 2}: false, {4, -1}: false, {4, 6}: false} {
		if got := p.Holds(plan.Point{X: fraction.Inches(at[0]), Y: fraction.Inches(at[1])}); got != want {
			t.Errorf("%v: %v", at, got)
		}
	}
}

// A piece is sawn with what is left on to scribe; at its left edge it begins so far in.
func TestBlank(t *testing.T) {
	for edge, begins := range map[wall.Direction]int64{wall.Left: 2, wall.Right: 0} {
		p := pieceOf(9, 5)
		p.Scribe = &wall.Scribe{Edge: edge, Width: fraction.Inches(2)}
		if width, left, err := p.Blank(); err != nil || width != fraction.Inches(11) || left != fraction.Inches(begins) {
			t.Errorf("scribed at the %v: %v wide, begins at %v, %v", edge, width, left, err)
		}
		p.Width, p.Scribe.Width = fraction.Of(1<<62, 3), fraction.Of(1<<62, 5)
		if _, _, err := p.Blank(); err == nil {
			t.Error("no error beyond exact arithmetic")
		}
	}
	if width, left, err := pieceOf(9, 5).Blank(); err != nil || width != fraction.Inches(9) || !left.IsZero() {
		t.Errorf("not scribed: %v wide, begins at %v, %v", width, left, err)
	}
}

// Panels reach farthest at the top of an end that leans away from the run.
func TestLeansOut(t *testing.T) {
	for _, row := range []struct {
		end        wall.Direction
		lean       int64
		leans, top bool
	}{
		{wall.Left, 0, false, false}, {wall.Left, -1, true, true}, {wall.Left, 1, true, false},
		{wall.Right, 0, false, false}, {wall.Right, -1, true, false}, {wall.Right, 1, true, true},
	} {
		run, lean := plan.Run{}, fraction.Inches(row.lean)
		if row.end == wall.Left {
			run.Left.Lean = lean
		} else {
			run.Right.Lean = lean
		}
		if leans, top := run.LeansOut(row.end); leans != row.leans || top != row.top {
			t.Errorf("%v end by %v: leans %v, farthest at the top %v", row.end, lean, leans, top)
		}
	}
}

// A part is ambiguous where another part, an offcut or a blank of its sheet has its size to the nearest
// sixteenth: 10 x 20 is also 10 1/64 x 20, not 10 1/16 x 20, nor 20 x 10.
func TestAmbiguous(t *testing.T) {
	of := func(width, length string) (rect [4]fraction.Length) {
		rect[2], rect[3] = fraction.MustParse(width), fraction.MustParse(length)
		return rect
	}
	own := nest.Cut{Rect: of("10", "20")}
	alone := plan.Cut{Cut: own}
	for _, row := range []struct {
		name  string
		width string
		want  bool
	}{{"nearly as wide", "10 1/64", true}, {"a mark wider", "10 1/16", false}} {
		other := of(row.width, "20")
		piece := plan.Piece{Number: 1, Width: other[2], Height: other[3]}
		for where, s := range map[string]plan.Sheet{
			"a part":    {Cuts: []plan.Cut{alone, {Cut: nest.Cut{Rect: other}}}},
			"an offcut": {Offcuts: []nest.Offcut{{Width: other[2], Length: other[3]}}},
			"a blank":   {Placements: []nest.Placement{{Part: 1}}},
		} {
			p := plan.Plan{Tape: fraction.Of(1, 16), Pieces: []plan.Piece{piece}}
			if got, err := p.Ambiguous(s, alone); err != nil || got != row.want {
				t.Errorf("%s %s: %v, %v", where, row.name, got, err)
			}
		}
	}
	p := plan.Plan{Tape: fraction.Of(1, 16)}
	for _, row := range []struct {
		name string
		s    plan.Sheet
		cut  plan.Cut
		want bool
	}{
		{"itself", plan.Sheet{Cuts: []plan.Cut{alone}}, alone, false},
		{"alike already", plan.Sheet{}, plan.Cut{Cut: own, Alike: true}, true},
		{"a part that lies across", plan.Sheet{Cuts: []plan.Cut{{Cut: nest.Cut{Rect: of("20", "10")}}}}, alone, false},
	} {
		if got, err := p.Ambiguous(row.s, row.cut); err != nil || got != row.want {
			t.Errorf("%s: %v, %v", row.name, got, err)
		}
	}
	p.Tape = fraction.Of(1, 1<<40+1)
	if _, err := p.Ambiguous(plan.Sheet{}, plan.Cut{Cut: nest.Cut{Rect: [4]fraction.Length{2: fraction.Of(1<<62, 3)}}}); err == nil {
		t.Error("no error beyond exact arithmetic")
	}
}

// A starter hole is in a corner that lies half its diameter from both of its edges, of the piece or of a
// hole; all of them must and be alike.
func TestDrillInset(t *testing.T) {
	at := func(x, y string) plan.Point { return plan.Point{X: fraction.MustParse(x), Y: fraction.MustParse(y)} }
	drill := func(diameter string, at plan.Point) plan.Drill {
		return plan.Drill{At: at, Diameter: fraction.MustParse(diameter)}
	}
	for _, row := range []struct {
		name  string
		holes []plan.Drill
		inset string
		all   bool
	}{
		{"none", nil, "0", false},
		{"in a corner of the piece", []plan.Drill{drill("3/8", at("5 3/16", "6 13/16"))}, "3/16", true},
		{"and one of the hole", []plan.Drill{drill("3/8", at("5 3/16", "6 13/16")), drill("3/8", at("19 13/16", "20 3/16"))}, "3/16", true},
		{"half its diameter from one edge only", []plan.Drill{drill("3/8", at("5 3/16", "6 3/4"))}, "3/16", false},
		{"and from the other only", []plan.Drill{drill("3/8", at("5 1/4", "6 13/16"))}, "3/16", false},
		{"two sizes", []plan.Drill{drill("3/8", at("5 3/16", "6 13/16")), drill("1/4", at("19 7/8", "20 1/8"))}, "1/8", false},
		{"one in no corner after one that is", []plan.Drill{drill("3/8", at("5 3/16", "6 13/16")), drill("3/8", at("12", "12"))}, "3/16", false},
	} {
		m := plan.Marks{Drill: row.holes, Holes: []plan.HoleMarks{{Corners: cutout.Corners{Face: []plan.Point{at("20", "20")}}}}}
		m.Face = []plan.Point{at("5", "7")}
		if inset, all := m.DrillInset(); inset != fraction.MustParse(row.inset) || all != row.all {
			t.Errorf("%s: %v, %v; want %s, %v", row.name, inset, all, row.inset, row.all)
		}
	}
}

func TestSmallAnswers(t *testing.T) {
	in := fraction.Inches
	p := plan.Plan{Tape: in(2), Units: fraction.Millimetre, Pieces: []plan.Piece{{Number: 4}, {Number: 2, Panel: 7}}}
	if got := p.TapeMeasure(); got != (fraction.Tape{Mark: in(2), Unit: fraction.Millimetre}) {
		t.Errorf("tape %+v", got)
	}
	if piece, i := p.Piece(2); i != 1 || piece.Panel != 7 {
		t.Errorf("piece 2 is number %d, %+v", i, piece)
	}
	if _, i := p.Piece(3); i != -1 {
		t.Errorf("piece 3 is number %d", i)
	}
	if top, err := (plan.Arc{Centre: plan.Point{X: in(3), Y: in(-5)}, Radius: in(13)}).Top(); err != nil || top != (plan.Point{X: in(3), Y: in(8)}) {
		t.Errorf("top of the arc %v, %v", top, err)
	}
	if _, err := (plan.Arc{Centre: plan.Point{Y: fraction.Of(1<<62, 3)}, Radius: fraction.Of(1<<62, 5)}).Top(); err == nil {
		t.Error("no error beyond exact arithmetic")
	}
	if !(plan.Corner{}).Mitred() || (plan.Corner{Passes: "a", Butts: "b"}).Mitred() {
		t.Error("a corner is mitred where no run passes")
	}
	if got := (plan.Choice{Sheets: 5, Bought: 3}).OnHand(); got != 2 {
		t.Errorf("%d sheets are on hand, of 5 with 3 to buy", got)
	}
	line := func(x int64) plan.SawCut { return plan.SawCut{Points: []plan.Point{{X: in(x)}}} }
	marks := plan.Marks{Order: []plan.Cutting{{Saw: []plan.SawCut{line(1), line(2)}}, {Saw: []plan.SawCut{line(3)}}}}
	if got := marks.Strokes(); len(got) != 3 || got[0].Points[0].X != in(1) || got[2].Points[0].X != in(3) {
		t.Errorf("lines to saw %v", got)
	}
	profile := plan.Profile{}
	if got := profile.Word("sheet", "board"); got != "sheet" {
		t.Errorf("sheets are called %s", got)
	}
	if profile.Boards = true; profile.Word("sheet", "board") != "board" {
		t.Error("boards are not called boards")
	}
	if _, err := (plan.Plan{Units: 77}).JSON(); err == nil {
		t.Error("a plan in an unknown unit has JSON")
	}
	if got := (plan.Plan{Saw: plan.Saw{Saw: nest.Saw{LeastRip: in(1)}}}).Planed(pieceOf(9, 5), plan.SawCut{}); got {
		t.Error("an edge without a line to saw is planed")
	}
	leaves, err := plan.Cut{Cut: nest.Cut{Kind: nest.Rip, Rect: [4]fraction.Length{{}, {}, in(48), in(96)}}, Off: in(5)}.Leaves()
	if err != nil || leaves != in(43) {
		t.Errorf("a rip of 5 leaves %v of 48, %v", leaves, err)
	}
	leaves, err = plan.Cut{Cut: nest.Cut{Kind: nest.Crosscut, Rect: [4]fraction.Length{{}, {}, in(48), in(96)}}, Off: in(5)}.Leaves()
	if err != nil || leaves != in(91) {
		t.Errorf("a crosscut of 5 leaves %v of 96, %v", leaves, err)
	}
}

// A course has five joints or more; a distance that changes ends it, and its last joint begins the next. On
// every fourth joint stands a check, but not on the last.
func TestCoursesAreOfFiveJoints(t *testing.T) {
	courses := func(at ...int64) (text string) {
		var run plan.Run
		for _, x := range at {
			run.StoryPole = append(run.StoryPole, plan.Mark{At: fraction.Inches(x), Kind: plan.PanelsMeet})
		}
		for _, c := range (plan.Plan{Profile: plan.Profile{Profile: groove.Profile{Boards: true}}}).Courses(run) {
			text += fmt.Sprintf("%v%v%v", c.Every, c.Marks, c.Checks())
		}
		return text
	}
	for _, row := range []struct {
		at   []int64
		want string
	}{
		{[]int64{3, 6, 9, 12}, ""},
		{[]int64{3, 6, 9, 12, 15}, "3[0 1 2 3 4][3]"},
		{[]int64{3, 6, 9, 12, 15, 18, 21, 24}, "3[0 1 2 3 4 5 6 7][3]"},
		{[]int64{3, 6, 9, 12, 15, 18, 21, 24, 27}, "3[0 1 2 3 4 5 6 7 8][3 7]"},
		{[]int64{3, 6, 9, 12, 15, 20, 25, 30, 35}, "3[0 1 2 3 4][3]5[4 5 6 7 8][7]"},
		{[]int64{3, 6, 9, 12, 17, 22, 27, 32}, "5[3 4 5 6 7][6]"},
	} {
		if got := courses(row.at...); got != row.want {
			t.Errorf("joints at %v: courses %q, want %q", row.at, got, row.want)
		}
	}
}

// Whatever panels an arch goes through have its arc, and no others.
func TestArcsOfPanels(t *testing.T) {
	for _, left := range []int64{4, 30, 60, 92} {
		p, err := plan.Make(t.Context(), jobFrom(t, small(fmt.Sprintf(`"runs": [{"name": "hall", "width": "110", "left": {"kind": "covered"}, "right": {"kind": "covered"},
			"heights": [{"at": "0", "top": "40"}, {"at": "110", "top": "40"}],
			"openings": [{"name": "hatch", "kind": "window", "left": "%d", "bottom": "8", "width": "12", "height": "14", "rise": "4"}]}]`, left))),
			plan.Options{Budget: choice.Budget{Layouts: 1, Nodes: 1000}})
		if err != nil {
			t.Fatal(err)
		}
		for _, piece := range p.Pieces {
			through := piece.At.X.Less(fraction.Inches(left+12)) && fraction.Inches(left).Less(piece.At.X.Add(piece.Width))
			if len(piece.Marks.Arcs) != 0 != through {
				t.Errorf("hatch at %d: piece %d from %v on, %v wide, has arcs %v", left, piece.Number, piece.At.X, piece.Width, piece.Marks.Arcs)
			}
		}
	}
}

// Cables or pipes lie in the walls of a plan where one of its runs has a box, or another opening that ends within the wall.
func TestInWall(t *testing.T) {
	at := func(x, y int64) plan.Point { return plan.Point{X: fraction.Inches(x), Y: fraction.Inches(y)} }
	square := func(x, y, size int64) []plan.Point {
		return []plan.Point{at(x, y), at(x+size, y), at(x+size, y+size), at(x, y+size)}
	}
	for _, row := range []struct {
		openings []plan.Opening
		want     bool
	}{
		{nil, false},
		{[]plan.Opening{{Kind: wall.Window, Outline: square(10, 10, 5)}}, false},
		{[]plan.Opening{{Kind: wall.Other, Outline: square(10, 0, 5)}}, false},
		{[]plan.Opening{{Kind: wall.Other, Outline: square(10, 10, 5)}}, true},
		{[]plan.Opening{{Kind: wall.Window, Outline: square(10, 10, 5)}, {Kind: wall.Box, Outline: square(30, 10, 2)}}, true},
	} {
		p := plan.Plan{Runs: []plan.Run{{Outline: square(0, 0, 40)}, {Outline: square(0, 0, 40), Openings: row.openings}}}
		if got := p.InWall(); got != row.want {
			t.Errorf("%+v: %v", row.openings, got)
		}
	}
}
