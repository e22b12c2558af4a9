package book

import (
	"fmt"
	"slices"
	"strings"
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

// Where the tongue of a board lies on the bench: with the good face down at the other hand. Boards of which nobody said what edges they
// have are to be looked at.
func TestTongueOnTheBench(t *testing.T) {
	for _, row := range []struct {
		boards bool
		edges  groove.Edges
		tongue groove.Tongue
		face   plan.Face
		want   string
	}{
		{true, groove.Tongued, groove.TongueLeft, plan.FaceUp, ", its tongue at the left"},
		{true, groove.Tongued, groove.TongueLeft, plan.FaceDown, ", its tongue at the right"},
		{true, groove.Tongued, groove.TongueRight, plan.FaceUp, ", its tongue at the right"},
		{true, groove.Tongued, groove.TongueRight, plan.FaceDown, ", its tongue at the left"},
		{true, groove.Lapped, 0, plan.FaceUp, ""},
		{true, groove.EdgesUnknown, 0, plan.FaceUp, ", all the same way up; where they have tongues"},
		{false, groove.EdgesUnknown, 0, plan.FaceUp, ""},
		{false, groove.Tongued, groove.TongueLeft, plan.FaceUp, ""},
	} {
		p := plan.Plan{Profile: plan.Profile{Profile: groove.Profile{Boards: row.boards, Edges: row.edges, Tongue: row.tongue}}}
		p.Saw.Face = row.face
		if got := tongueAt(p); !strings.HasPrefix(got, row.want) || (got == "") != (row.want == "") {
			t.Errorf("%+v: %q", row, got)
		}
	}
}

// Trims of the list are fitted, and no bead is drawn behind those that hide a joint.
func TestTrimsOfTheList(t *testing.T) {
	row := func(item finish.Item, name string) finish.Row { return finish.Row{Item: item, Name: name} }
	for _, test := range []struct {
		rows        []finish.Row
		fit, hidden string
	}{
		{nil, "", ""},
		{[]finish.Row{row(finish.ItemSheet, "sheet")}, "", ""},
		{[]finish.Row{row(finish.ItemEdgeTrim, "")}, "Fit edge trim over the cut edges of exposed ends.", ""},
		{[]finish.Row{row(finish.ItemCovering, "base")}, "Fit base.", "No bead behind base."},
		{[]finish.Row{row(finish.ItemCornerTrim, ""), row(finish.ItemCovering, "base"), row(finish.ItemCovering, "rail")}, "Fit base and rail. Fit corner trim over the outside corners.", "No bead behind base and rail."},
		{[]finish.Row{row(finish.ItemCovering, "base"), row(finish.ItemCovering, "casing")}, "Fit base and casing, casings first, as the others butt against them.", "No bead behind base and casing."},
	} {
		var run plan.Run
		run.Trim.Casing = &wall.EdgeTrim{Name: "casing"}
		p := plan.Plan{List: finish.List{Rows: test.rows}, Runs: []plan.Run{run}}
		if fit, hidden := trims(p); fit != test.fit || hidden != test.hidden {
			t.Errorf("%+v: %q, %q", test.rows, fit, hidden)
		}
	}
}

// The outside corners to be mitered are those where two runs meet and those at the ends of an open room, which
// nothing of the plan meets; not inside corners and not ends that an opening takes.
func TestMiteredCorners(t *testing.T) {
	out, in, bare := plan.End{Kind: wall.OutsideCorner}, plan.End{Kind: wall.InsideCorner}, plan.End{Kind: wall.OutsideCorner, Bare: true}
	miter, pass := &plan.Corner{Next: "b"}, &plan.Corner{Next: "b", Passes: "a", Butts: "b"}
	for _, row := range []struct {
		a, b       plan.Run
		met, alone string
	}{
		{plan.Run{Right: out, CornerRight: miter}, plan.Run{Left: out}, "the corner of a and b", ""},
		{plan.Run{Left: out, Right: in, CornerRight: pass}, plan.Run{Left: in}, "", "the corner at the left end of a"},
		{plan.Run{Left: out, Right: out, CornerRight: miter}, plan.Run{Left: out, Right: out}, "the corner of a and b", "the corner at the left end of a, the corner at the right end of b"},
		{plan.Run{Left: out, Right: out, CornerRight: miter}, plan.Run{Left: out, Right: out, CornerRight: &plan.Corner{Next: "a"}}, "the corner of a and b, the corner of b and a", ""},
		{plan.Run{Left: bare, Right: in}, plan.Run{}, "", ""},
	} {
		row.a.Name, row.b.Name = "a", "b"
		met, alone := corners(plan.Plan{Runs: []plan.Run{row.a, row.b}})
		if met, alone := strings.Join(met, ", "), strings.Join(alone, ", "); met != row.met || alone != row.alone {
			t.Errorf("%+v: %q and alone %q", row, met, alone)
		}
	}
}

// The width of a closing piece, or of one that is alone, is the space measured for it, less its gaps and longer by the thickness at an outside
// corner, and the step of fitting says so; the step before says which pieces are mitered only then.
func TestSpacesOfClosingPieces(t *testing.T) {
	for _, row := range []struct {
		job, label, space, less, more string
		says                          []string
	}{
		{"unpriced", "2", "26 15/16", "0", "1/4", []string{"middle and top, less a gap of 1/16 at an end of a run; at an outside corner measure to the corner of the wall and add the thickness, 1/4; saw",
			"Miter 2 and 3 only when measured on the wall and sawn to that.", "angle of the corner of wall and return. Try half of it on"}},
		{"unpriced", "3", "20", "1/16", "1/4", nil},
		{"ten-runs", "7", "30", "0", "1/2", []string{"each of these: the corner of wall 3 and wall 4; the corner of wall 5 and wall 6; the corner of wall 6 and wall 7. Try half of each on",
			"Measure the space of piece 7 at foot", "Miter 7 after all other cuts. Miter 1, 5, 6 and 10 only"}}, // 7 goes from corner to corner
		{"stair", "7", "18 11/16", "1/16", "0", []string{"middle and top, less a gap of 1/16 at an end of a run; saw"}},
	} {
		for _, n := range hardJobs() {
			if n.name != row.job {
				continue
			}
			if n.err != nil {
				t.Fatal(n.err)
			}
			i := slices.IndexFunc(n.plan.Pieces, func(piece plan.Piece) bool { return piece.Label == row.label })
			want := fraction.MustParse(row.space).Sub(fraction.MustParse(row.less)).Add(fraction.MustParse(row.more))
			if got := n.plan.Pieces[i]; got.Closing != (row.job != "ten-runs") || got.Width != want {
				t.Errorf("%s, piece %s: closing %v, %v wide, want %v", row.job, row.label, got.Closing, got.Width, want)
			}
			text := strings.Join(strings.Fields(Part(n.plan, Order, true)), " ")
			for _, says := range row.says {
				if !strings.Contains(text, says) {
					t.Errorf("%s lacks %q in %s", row.job, says, text)
				}
			}
		}
	}
	corner := plan.Corner{Next: "b"}
	run := plan.Run{Name: "a", Limits: [2]fraction.Length{{}, fraction.Inches(50)}, Right: plan.End{Kind: wall.OutsideCorner}, CornerRight: &corner}
	in := fraction.Inches
	door := plan.Opening{Kind: wall.Other, Outline: cutout.Rectangle(in(60), in(0), in(70), in(90))}
	p := plan.Plan{Tape: fraction.Of(1, 16), Runs: []plan.Run{run, {Name: "b", Limits: [2]fraction.Length{in(1), in(99)}, Openings: []plan.Opening{door}}}, Pieces: []plan.Piece{
		{Label: "1", Run: "a", Width: in(10), At: plan.Point{X: in(40)}}, {Label: "2", Run: "b", Width: in(49), At: plan.Point{X: in(10)}, Closing: true},
		{Label: "3", Run: "b", Width: in(28), At: plan.Point{X: in(71)}, Closing: true}}}
	p.Gaps = wall.Gaps{Side: in(2), Window: in(1), Seam: fraction.Of(1, 8)}
	if got, want := net(p), ", less a gap of 1/8 at a seam, 1 beside an opening and 2 at an end of a run"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	// Piece 2 closes at its left, and the panel at its right is number 4, or was up before it as number 1.
	p.Pieces[1].Panel = 2
	for number, says := range map[int]string{4: "; where the next panel is not up yet, to the pole's mark of its own edge", 1: ""} {
		p.Runs[1].Panels = []wall.Panel{{Number: 2, Left: in(10), Right: in(59)}, {Number: number, Left: in(59).Add(p.Gaps.Seam), Right: in(99)}}
		if got := net(p); !strings.HasSuffix(got, "2 at an end of a run"+says) {
			t.Errorf("beside panel %d: %q", number, got)
		}
	}
	if got, want := miters(p), "Miter 1 after all other cuts."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// What is needed at least is said in the number that it is.
func TestNotProvedIsSaidInItsNumber(t *testing.T) {
	for least, want := range map[int]string{1: "At least 1 sheet is needed for these pieces", 2: "At least 2 sheets are needed for these pieces"} {
		p := plan.Plan{Choices: []plan.Choice{{Chosen: true}}, Bound: plan.Bound{SheetsAtLeast: least}}
		if got := new(text).proof(p); !strings.Contains(got, want) {
			t.Errorf("%d: %s", least, got)
		}
	}
	p := plan.Plan{Choices: []plan.Choice{{Chosen: true}}, Bound: plan.Bound{SheetsAtLeast: 1, Proved: true}} // one sheet, of the dearer kind
	for _, price := range []string{"30", "44"} {
		p.Stock = append(p.Stock, plan.Stock{Stock: nest.Stock{Price: money.MustParse(price)}})
	}
	in := &text{}
	in.choices(p)
	for got, want := range map[string]string{in.proof(p): "Whether cheaper sheets can do for these pieces was not proved.", in.String(): "Not proved to be the cheapest"} {
		if !strings.Contains(got, want) {
			t.Errorf("%s: no %q", got, want)
		}
	}
}

// The legend of a wall whose openings were taped names the dots of their corners, and not those of a piece, of which it has none.
func TestLegendOfTapedCorners(t *testing.T) {
	p, err := madePlan(strings.NewReader(`{"profile": "beadboard 1-1/2", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
		"runs": [{"name": "hall", "width": "40", "left": {"kind": "exposed"}, "right": {"kind": "covered"}, "heights": [{"at": "0", "top": "48"}, {"at": "40", "top": "48"}],
		"openings": [{"name": "window", "kind": "window", "points": {"bases": [["0", "0"], ["25", "0"]], "side": "left", "corners": [
			{"distances": ["15", "20"]}, {"distances": ["20", "15"]}, {"bases": [["1", "0"], ["16", "0"]], "side": "left", "distances": ["25", "20"]}, {"bases": [["9", "0"], ["24", "0"]], "side": "left", "distances": ["20", "25"]}]}}]}]}`))
	if err != nil {
		t.Fatal(err)
	}
	b := newPage(p, "")
	b.draw()
	got := fmt.Sprint(b.signs(nil, "run-1"))
	if !strings.Contains(got, "as named among the points from taped distances") || strings.Contains(got, "corner, by its letter") {
		t.Error(got)
	}
}
