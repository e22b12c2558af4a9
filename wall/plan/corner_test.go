package plan_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// corners returns a closed plan of four runs 10 wide: a passes into the corner to b, butts against c in that from b to c, none
// shares a corner at the right end of c, and d is mitred to a.
func corners() plan.Plan {
	run := func(name string, corner *plan.Corner) plan.Run {
		return plan.Run{Name: name, Width: in("10"), Limits: [2]fraction.Length{{}, in("10")}, CornerRight: corner}
	}
	return plan.Plan{Closed: true, Runs: []plan.Run{
		run("a", &plan.Corner{Kind: wall.InsideCorner, Next: "b", Passes: "a", Butts: "b"}),
		run("b", &plan.Corner{Kind: wall.InsideCorner, Next: "c", Passes: "c", Butts: "b"}),
		run("c", nil),
		run("d", &plan.Corner{Kind: wall.OutsideCorner, Next: "a"}),
	}}
}

// Which ends pass into their corners, and how corners are called: letters run on over the runs that share one.
func TestCorners(t *testing.T) {
	p := corners()
	for i, want := range map[int][2]bool{-1: {}, 0: {false, true}, 1: {}, 2: {true, false}, 3: {}, 4: {}} {
		if got := [2]bool{p.Passes(i, false), p.Passes(i, true)}; got != want {
			t.Errorf("run %d passes to the left and the right: %v", i, got)
		}
	}
	p.Runs[3].CornerRight = &plan.Corner{Kind: wall.InsideCorner, Next: "a", Passes: "a", Butts: "d"}
	if !p.Passes(0, false) || p.Passes(3, true) {
		t.Error("the last run meets the first, which passes")
	}
	for i, want := range map[int]string{-1: "", 0: "A", 1: "B", 2: "", 3: "C", 4: ""} {
		if got := p.CornerLetter(i); got != want {
			t.Errorf("corner %d is %q, want %q", i, got, want)
		}
	}
}

// Panels that are up at an inside corner: pieces pass behind them where those butt, and close before others where none is up.
func TestPanelsUpAtACorner(t *testing.T) {
	panel := func(left, right string) []plan.Installed {
		return []plan.Installed{{Left: in(left), Right: in(right)}}
	}
	for _, row := range []struct {
		name           string
		corner         int // between runs 0 and 1, where 0 passes, or 1 and 2, where 2 passes
		left, right    []plan.Installed
		behind, closes bool
	}{
		{"none", 0, nil, nil, false, true},
		{"the passing one", 0, panel("5", "10"), nil, false, false},
		{"the butting one", 0, nil, panel("0", "5"), true, false},
		{"both", 0, panel("5", "10"), panel("0", "5"), false, false},
		{"short of the corner", 0, panel("5", "9"), panel("1", "5"), false, true},
		{"beyond it", 0, panel("5", "11"), panel("-1", "5"), false, false},
		{"none where the right one passes", 1, nil, nil, false, true},
		{"the left one where it butts", 1, panel("5", "10"), nil, true, false},
		{"the right one where it passes", 1, nil, panel("0", "5"), false, false},
	} {
		p := corners()
		p.Runs[1-row.corner].CornerRight = nil
		p.Runs[row.corner].Installed, p.Runs[row.corner+1].Installed = row.left, row.right
		if behind, closes := p.Behind(row.corner), p.ClosesBefore(); behind != row.behind || closes != row.closes {
			t.Errorf("%s: behind %v, closes before %v", row.name, behind, closes)
		}
		if up := p.Up(); up != (row.left != nil || row.right != nil) {
			t.Errorf("%s: up is %v", row.name, up)
		}
	}
	p := corners()
	for _, i := range []int{-1, 2, 3, 4} {
		p.Runs[0].Installed = panel("0", "10")
		if p.Behind(i) {
			t.Errorf("there is no inside corner %d", i)
		}
	}
}

// A piece that goes 3/16 in behind a panel of the other wall, 1/4 thick: it cannot come from the side where the next panel on its own
// wall is up and nearer to it than that, nor where there is no room behind. Mirrored it is the same.
func TestLocked(t *testing.T) {
	for _, row := range []struct {
		next, up string // how far the next panel is off the piece, "" for none; how far the other wall's is off the corner
		want     bool
	}{{"0", "5/16", true}, {"1/8", "5/16", true}, {"3/16", "5/16", false}, {"", "5/16", false}, {"", "3/16", true}, {"3/16", "1/4", false}} {
		for _, mirrored := range []bool{false, true} {
			place := func(from, to string) (l, r fraction.Length) {
				if mirrored {
					return in("96").Sub(in(to)), in("96").Sub(in(from))
				}
				return in(from), in(to)
			}
			var p plan.Plan
			p.Profile.Thickness = in("1/4")
			passing, butting := plan.Run{Name: "passing", Width: in("96")}, plan.Run{Name: "butting", Width: in("96")}
			passing.Limits[0], passing.Limits[1] = place("1/16", "95 15/16")
			butting.Limits[0], butting.Limits[1] = place("5/16", "95")
			piece := wall.Panel{Number: 1}
			piece.Left, piece.Right = place("70", "95 15/16")
			passing.Panels = []wall.Panel{piece}
			if row.next != "" {
				left, right := place("40", in("70").Sub(in(row.next)).String())
				passing.Installed = []plan.Installed{{Left: left, Right: right}}
			}
			left, right := place(row.up, "40")
			butting.Installed = []plan.Installed{{Left: left, Right: right}}
			p.Runs = []plan.Run{passing, butting}
			if mirrored {
				p.Runs = []plan.Run{butting, passing}
			}
			p.Runs[0].CornerRight = &plan.Corner{Kind: wall.InsideCorner, Next: p.Runs[1].Name, Passes: "passing", Butts: "butting"}
			if got := p.Locked(0); got != row.want {
				t.Errorf("next %q, up %s, mirrored %v: locked is %v", row.next, row.up, mirrored, got)
			}
		}
	}
}

// The panel nearest to an end, whether it is up or to be fitted.
func TestEndPanel(t *testing.T) {
	run := plan.Run{Installed: []plan.Installed{{Left: in("30"), Right: in("40"), LeftPhase: in("1/2")}}}
	if got, ok := run.EndPanel(false); !ok || got != run.Installed[0] {
		t.Errorf("the only one: %+v, %v", got, ok)
	}
	run.Panels = []wall.Panel{{Left: in("5"), Right: in("30"), LeftPhase: in("1/4")}, {Left: in("40"), Right: in("48"), LeftPhase: in("3/4")}}
	for right, want := range map[bool]plan.Installed{false: {Left: in("5"), Right: in("30"), LeftPhase: in("1/4")}, true: {Left: in("40"), Right: in("48"), LeftPhase: in("3/4")}} {
		if got, ok := run.EndPanel(right); !ok || got != want {
			t.Errorf("at the right end %v: %+v, %v", right, got, ok)
		}
	}
	if got, ok := (plan.Run{}).EndPanel(true); ok || got != (plan.Installed{}) {
		t.Errorf("a run without panels: %+v, %v", got, ok)
	}
}

// Corners of a wall 20 wide that belong to its ends, also as far as an end leans outward or inward.
func TestAtEnd(t *testing.T) {
	for _, row := range []struct{ left, right, x, want string }{
		{"0", "0", "0", "1"}, {"0", "0", "1/16", "0"}, {"0", "0", "19 15/16", "0"}, {"0", "0", "20", "2"},
		{"2", "-3", "2", "1"}, {"2", "-3", "2 1/16", "0"}, {"2", "-3", "17", "2"}, {"2", "-3", "16 15/16", "0"},
		{"-2", "3", "-2", "1"}, {"-2", "3", "0", "1"}, {"-2", "3", "1/16", "0"}, {"-2", "3", "20", "2"}, {"-2", "3", "23", "2"}, {"-2", "3", "19", "0"},
	} {
		run := plan.Run{Width: in("20"), Left: plan.End{Lean: in(row.left)}, Right: plan.End{Lean: in(row.right)}}
		if got := run.AtEnd(plan.Point{X: in(row.x), Y: in("9")}); fmt.Sprint(got) != row.want {
			t.Errorf("ends lean %s and %s: a corner at %s belongs to %d, want %s", row.left, row.right, row.x, got, row.want)
		}
	}
}

// The box round a wall has its foot, its outline, its openings and the limits of its panels in it.
func TestExtent(t *testing.T) {
	at := func(x, y string) plan.Point { return plan.Point{X: in(x), Y: in(y)} }
	run := plan.Run{Width: in("20")}
	for _, row := range []struct {
		name   string
		change func()
		lo, hi plan.Point
	}{
		{"its foot alone", func() {}, at("0", "0"), at("20", "0")},
		{"an outline", func() { run.Outline = []plan.Point{at("0", "1"), at("20", "2"), at("19", "9")} }, at("0", "0"), at("20", "9")},
		{"an opening beyond it", func() { run.Openings = []plan.Opening{{Outline: []plan.Point{at("5", "-1"), at("6", "12")}}} }, at("0", "-1"), at("20", "12")},
		{"limits beyond it", func() { run.Limits = [2]fraction.Length{in("-1/4"), in("20 1/4")} }, at("-1/4", "-1"), at("20 1/4", "12")},
	} {
		row.change()
		if lo, hi := run.Extent(); lo != row.lo || hi != row.hi {
			t.Errorf("%s: from %v to %v, want %v to %v", row.name, lo, hi, row.lo, row.hi)
		}
	}
}

// The upright edges of a piece of the run with a hole, on the run.
func TestUprights(t *testing.T) {
	piece := pieceOf(9, 5, [2]int64{}, [2]int64{9, 0}, [2]int64{9, 5}, [2]int64{0, 4})
	piece.Run, piece.Panel, piece.At = "a", 3, plan.Point{X: in("10"), Y: in("1")}
	piece.Holes = []plan.Hole{{Outline: pieceOf(0, 0, [2]int64{2, 1}, [2]int64{2, 3}, [2]int64{3, 3}, [2]int64{3, 1}).Outline}}
	other := piece
	other.Run = "b"
	p := plan.Plan{Pieces: []plan.Piece{other, piece}}
	got, err := p.Uprights(plan.Run{Name: "a"})
	if want := "[{19 1 6 3} {10 1 5 3} {12 2 4 3} {13 2 4 3}]"; err != nil || fmt.Sprint(got) != want {
		t.Errorf("%v, %v; want %s", got, err, want)
	}
	p.Pieces[1].At.X = fraction.Inches(math.MaxInt64)
	if _, err := p.Uprights(plan.Run{Name: "a"}); err == nil {
		t.Error("no error beyond exact arithmetic")
	}
}

// Sheets of 20 meet at a gap of 1/4 over and under a window, which the first has less of; beyond a door of 30 none does, nor with boards.
func TestMeetings(t *testing.T) {
	piece := func(panel int, left string, corners ...[2]int64) plan.Piece {
		p := pieceOf(20, 30, corners...)
		p.Run, p.Panel, p.At.X = "a", panel, in(left)
		return p
	}
	run := plan.Run{Name: "a", Panels: []wall.Panel{{Number: 4, Right: in("20")}, {Number: 5, Left: in("20 1/4"), Right: in("40 1/4")}, {Number: 6, Left: in("70 1/4"), Right: in("90 1/4")}}}
	p := plan.Plan{Gaps: wall.Gaps{Seam: in("1/4")}, Pieces: []plan.Piece{
		piece(4, "0", [2]int64{}, [2]int64{20, 0}, [2]int64{20, 9}, [2]int64{15, 9}, [2]int64{15, 21}, [2]int64{20, 21}, [2]int64{20, 30}, [2]int64{0, 30}),
		piece(5, "20 1/4", [2]int64{}, [2]int64{20, 0}, [2]int64{20, 30}, [2]int64{0, 30}, [2]int64{0, 20}, [2]int64{5, 20}, [2]int64{5, 10}, [2]int64{0, 10}),
		piece(6, "70 1/4", [2]int64{}, [2]int64{20, 0}, [2]int64{20, 30}, [2]int64{0, 30})}}
	got, err := p.Meetings(run)
	if want := "[{20 1/8 0 9 4} {20 1/8 21 30 4}]"; err != nil || fmt.Sprint(got) != want {
		t.Errorf("%v, %v; want %s", got, err, want)
	}
	p.Profile.Boards = true
	if got, err := p.Meetings(run); err != nil || got != nil {
		t.Errorf("boards: %v, %v", got, err)
	}
	p.Profile.Boards, run.Panels[1].Left = false, fraction.Inches(math.MinInt64+1)
	if _, err := p.Meetings(run); err == nil {
		t.Error("no error beyond exact arithmetic")
	}
}

// An edge meets a circle of radius 5 about 10, 5 where triangles of 3, 4 and 5 have it, upright or level; one that leans or passes it by
// does not, and what is nearest to its end lies on the line from the centre.
func TestMeet(t *testing.T) {
	for _, row := range []struct{ p, q, want [2]int64 }{
		{[2]int64{13, 8}, [2]int64{13, 0}, [2]int64{13, 9}},
		{[2]int64{13, 2}, [2]int64{13, 5}, [2]int64{13, 1}},
		{[2]int64{15, 6}, [2]int64{15, 0}, [2]int64{15, 5}},
		{[2]int64{13, 8}, [2]int64{0, 8}, [2]int64{14, 8}},
		{[2]int64{6, 8}, [2]int64{0, 8}, [2]int64{6, 8}},
		{[2]int64{11, 10}, [2]int64{0, 10}, [2]int64{10, 10}},
		{[2]int64{16, 13}, [2]int64{16, 0}, [2]int64{13, 9}},
		{[2]int64{16, 13}, [2]int64{0, 13}, [2]int64{13, 9}},
		{[2]int64{16, 13}, [2]int64{20, 20}, [2]int64{13, 9}},
		{[2]int64{16, 13}, [2]int64{16, 13}, [2]int64{13, 9}},
		{[2]int64{13, 9}, [2]int64{13, 9}, [2]int64{13, 9}},
		{[2]int64{10, 5}, [2]int64{10, 5}, [2]int64{10, 5}}, // the centre is as near to all
	} {
		at := func(c [2]int64) plan.Point { return plan.Point{X: fraction.Inches(c[0]), Y: fraction.Inches(c[1])} }
		x, y := plan.Arc{Centre: at([2]int64{10, 5}), Radius: in("5")}.Meet(at(row.p), at(row.q))
		if x != float64(row.want[0]) || y != float64(row.want[1]) {
			t.Errorf("from %v to %v: %v, %v; want %v", row.q, row.p, x, y, row.want)
		}
	}
}

// The arc of an opening as taped: the line to saw is a gap of 1/4 outside it.
func TestArcsOf(t *testing.T) {
	of := func(run, opening string) plan.Piece {
		return plan.Piece{Run: run, At: plan.Point{X: in("10"), Y: in("20")}, Marks: plan.Marks{Arcs: []plan.Arc{{Opening: opening,
			Centre: plan.Point{X: in("3"), Y: in("-5")}, Radius: in("13 1/4"), Springs: in("1")}}}}
	}
	p := plan.Plan{Gaps: wall.Gaps{Window: in("1/4")}, Pieces: []plan.Piece{of("b", "hatch"), of("a", "other"), of("a", "hatch"), of("a", "hatch")}}
	p.Pieces[0].Marks.Arcs[0].Radius = in("99")
	hatch := plan.Opening{Name: "hatch", Kind: wall.Window}
	got, err := p.ArcsOf(plan.Run{Name: "a"}, hatch)
	if want := []plan.Arc{{Opening: "hatch", Centre: plan.Point{X: in("13"), Y: in("15")}, Radius: in("13"), Springs: in("21")}}; err != nil || fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("%+v, %v; want %+v", got, err, want)
	}
	if got, err := p.ArcsOf(plan.Run{Name: "c"}, hatch); err != nil || got != nil {
		t.Errorf("on another run: %+v, %v", got, err)
	}
	p.Pieces[2].At.X = fraction.Inches(math.MaxInt64)
	if _, err := p.ArcsOf(plan.Run{Name: "a"}, hatch); err == nil {
		t.Error("no error beyond exact arithmetic")
	}
}

// Blemishes that cost something are numbered, those that cost nothing are not.
func TestBlemishNumber(t *testing.T) {
	var p plan.Plan
	for _, cost := range []int64{2, 0, 3, 1} {
		p.Blemishes = append(p.Blemishes, plan.Blemish{Cost: fraction.NewRatio(cost, 1)})
	}
	for i, want := range map[int]int{-1: 0, 0: 1, 1: 0, 2: 2, 3: 3, 4: 0} {
		if got := p.BlemishNumber(i); got != want {
			t.Errorf("blemish %d has the number %d, want %d", i, got, want)
		}
	}
}

// An end that an opening takes is called bare, whatever its kind, and has no miter.
func TestEndsThatOpeningsTake(t *testing.T) {
	for _, row := range []struct {
		end   plan.End
		word  string
		mitre bool
	}{
		{plan.End{Kind: wall.OutsideCorner}, wall.OutsideCorner.String(), true},
		{plan.End{Kind: wall.Exposed}, wall.Exposed.String(), false},
		{plan.End{Kind: wall.OutsideCorner, Bare: true}, "bare", false},
	} {
		if row.end.Word() != row.word || row.end.Mitred() != row.mitre {
			t.Errorf("%+v is called %q, mitred %v", row.end, row.end.Word(), row.end.Mitred())
		}
	}
	if !(plan.Run{}).Bare() || (plan.Run{StoryPole: make([]plan.Mark, 1)}).Bare() {
		t.Error("a run with nothing on its pole is bare, and no other")
	}
}

// In a closed room each run is fitted after the one that it butts against: never do they all butt against the one before, or
// all against the one after, though in these rooms such a layout would look as good.
func TestPassingRunsAreFittedFirst(t *testing.T) {
	corner := `"left": {"kind": "inside corner"}, "right": {"kind": "inside corner"}`
	for _, room := range []struct{ profile, stock, a, b, door string }{
		{"beadboard 2", "48", "77 1/16", "93 5/8", "8"},
		{"beadboard 1-1/2", "48", "68 9/16", "47 7/8", "12"},
		{"tongue and groove 5-1/8", "5 1/8", "45", "49 7/8", "14"},
	} {
		var runs []string
		for i, width := range []string{room.a, room.b, room.a, room.b} {
			runs = append(runs, fmt.Sprintf(`{"name": "%c", "width": %q, %s, "heights": [{"at": "0", "top": "36"}, {"at": %q, "top": "36"}]`, 'a'+i, width, corner, width))
		}
		runs[0] += fmt.Sprintf(`, "openings": [{"name": "door", "kind": "other", "left": %q, "bottom": "0", "width": "26", "height": "80"}]`, room.door)
		p := makeFrom(t, fmt.Sprintf(`{"closed": true, "profile": %q, "stock": [{"name": "x", "width": %q, "length": "96"}], "gaps": {"side": "1/16", "seam": "1/8"},
			"runs": [%s}]}`, room.profile, room.stock, strings.Join(runs, "}, ")))
		first := map[string]int{}
		for _, piece := range p.Pieces {
			if n, known := first[piece.Run]; !known || piece.Number < n {
				first[piece.Run] = piece.Number
			}
		}
		for _, run := range p.Runs {
			if c := run.CornerRight; first[c.Butts] < first[c.Passes] {
				t.Errorf("%s: %s butts against %s and is fitted before it", room.profile, c.Butts, c.Passes)
			}
		}
	}
}
