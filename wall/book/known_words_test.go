package book

import (
	"strings"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/groove"
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
	} {
		p := plan.Plan{List: finish.List{Rows: test.rows}}
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

// What is needed at least is said in the number that it is.
func TestNotProvedIsSaidInItsNumber(t *testing.T) {
	for least, want := range map[int]string{1: "At least 1 sheet is needed for these pieces", 2: "At least 2 sheets are needed for these pieces"} {
		p := plan.Plan{Choices: []plan.Choice{{Chosen: true}}, Bound: plan.Bound{SheetsAtLeast: least}}
		if got := new(text).proof(p); !strings.Contains(got, want) {
			t.Errorf("%d: %s", least, got)
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
	b := &page{text: &text{tape: p.TapeMeasure()}, Plan: p, drawn: map[string]rendered{}}
	if err := b.draw(); err != nil {
		t.Fatal(err)
	}
	got := string(b.legend(nil, "run-1"))
	if !strings.Contains(got, "by its number among the points from taped distances") || strings.Contains(got, "corner or other place with its measures") {
		t.Error(got)
	}
}
