package book

import (
	"encoding/csv"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// A warning is placed by the names of what its path leads to; a path to what a plan has not is left out or kept as it is.
func TestPlacesOfWarnings(t *testing.T) {
	p := plan.Plan{Runs: []plan.Run{{Name: "north"}, {Name: "east", Openings: []plan.Opening{{Name: "window"}, {Name: "outlet"}}}},
		Stock: []plan.Stock{{Stock: nest.Stock{Name: "oak"}}, {Stock: nest.Stock{Name: "pine"}}}}
	for _, row := range []struct {
		path fault.Path
		want string
	}{
		{fault.Of("Runs", 0), "north"}, {fault.Of("Runs", 1, "Heights", 2), "height 3 of east"}, {fault.Of("Runs", 1, "Heights", 0, "Top"), "height 1 of east"},
		{fault.Of("Runs", 1, "Openings", 0), "window, east"}, {fault.Of("Runs", 1, "Openings", 1), "outlet, east"}, {fault.Of("Runs", 1, "Openings", 2), "east"},
		{fault.Of("Runs", 0, "Left"), "left end of north"}, {fault.Of("Runs", 1, "Right", "Kind"), "right end of east"},
		{fault.Of("Runs", 2), ""}, {fault.Of("Stock", 0), "oak"}, {fault.Of("Stock", 1, "Price"), "pine"},
	} {
		if got := placeName(p, warning.Warning{Path: row.path}); got != row.want {
			t.Errorf("%v: %q, want %q", row.path, got, row.want)
		}
	}
	w := warning.Warning{Path: fault.Of("Runs", 1), Kind: "a kind of tomorrow"}
	if got := Doubt(p.TapeMeasure(), w); got != "a kind of tomorrow" {
		t.Errorf("Doubt: %q", got)
	}
	if got := Warning(p, w); got != "east: a kind of tomorrow" {
		t.Errorf("Warning: %q", got)
	}
}

// What the job insists on is said, each of it.
func TestWhatIsKept(t *testing.T) {
	in := fraction.Inches
	for _, row := range []struct {
		keep wall.Keep
		want string
	}{
		{wall.Keep{}, ""}, {wall.Keep{Origin: new(in(2))}, "a repeat at 2"}, {wall.Keep{Direction: new(wall.Left)}, "work to the left"},
		{wall.Keep{Origin: new(in(2)), Seams: []fraction.Length{in(3), in(4)}, Clear: []wall.Clear{{From: in(5), To: in(6)}}}, "a repeat at 2, a seam at 3, a seam at 4, no seam from 5 to 6"},
	} {
		if got := sixteenths.kept(row.keep); got != row.want {
			t.Errorf("%q, want %q", got, row.want)
		}
	}
}

func TestPlacesOfBlemishes(t *testing.T) {
	for _, row := range []struct {
		b    plan.Blemish
		want string
	}{
		{plan.Blemish{Where: wall.AtCorner, Next: "east"}, "inside corner with east"}, {plan.Blemish{Where: wall.AtStep}, "side of the step"},
		{plan.Blemish{Where: wall.AtOpening, Opening: "window"}, "side of window"}, {plan.Blemish{Kind: wall.WeakStrip, Where: wall.AtOpening, Opening: "box"}, "strip between the seam and the side of box"},
		{plan.Blemish{Kind: wall.Seam, Where: wall.AtBreak}, "seam at the break"},
	} {
		if got := sixteenths.where(row.b); got != row.want {
			t.Errorf("%q, want %q", got, row.want)
		}
	}
}

// What is seen most of a choice is said where there is the choice.
func TestSeenMostOfAChoice(t *testing.T) {
	p := kitchen()
	for _, i := range []int{-1, len(p.Choices)} {
		if got := SeenMost(p, i); got != "" {
			t.Errorf("choice %d: %q", i, got)
		}
	}
	for i, c := range p.Choices {
		if got := SeenMost(p, i); got != (&text{tape: p.TapeMeasure(), full: true}).seenMost(c) || got == "" {
			t.Errorf("choice %d: %q", i, got)
		}
	}
}

// The table of cuts has the cuts of every sheet, a trim at the near edge by what it takes off alone, and a sheet that is not cut
// by its piece.
func TestTableOfCuts(t *testing.T) {
	in := fraction.Inches
	p := plan.Plan{Pieces: []plan.Piece{{Number: 1, Label: "1", Width: in(48), Height: in(96), Outline: cutout.Rectangle(in(0), in(0), in(48), in(96))}}}
	rect := [4]fraction.Length{in(0), in(0), in(48), in(96)}
	p.Sheets = []plan.Sheet{{Number: 1, Stock: "oak", Placements: []nest.Placement{{Part: 1}}},
		{Number: 2, Stock: "pine", Cuts: []plan.Cut{
			{Cut: nest.Cut{Step: 1, Rect: rect, Kind: nest.Crosscut, At: in(40)}},
			{Cut: nest.Cut{Step: 2, Rect: rect, Kind: nest.Rip, At: in(2)}, Trim: plan.TrimNear, Off: in(2)},
			{Cut: nest.Cut{Step: 3, Rect: rect, Kind: nest.Rip, At: in(30)}, Trim: plan.TrimBeyond, Off: in(3)},
			{Cut: nest.Cut{Step: 4, Rect: rect, Kind: nest.Rip, At: fraction.Of(189, 4)}, Trim: plan.TrimBeyond, Off: fraction.Of(3, 4), Plane: true, From: plan.Source{Step: 2}, Alike: true},
			{Cut: nest.Cut{Step: 5, Rect: rect, Kind: nest.Rip, At: fraction.Of(641, 16)}}}}}
	p.Tape, p.Saw.Kerf = fraction.Of(1, 4), fraction.Of(15, 16)
	rows, err := csv.NewReader(strings.NewReader(CSV(p, CutsTable))).ReadAll()
	if err != nil || len(rows) != 7 {
		t.Fatal(rows, err)
	}
	for i, want := range []string{"1,oak,,,,,,,,", "2,pine,1,crosscut,48,96,,40,lower end,", "2,pine,2,rip,48,96,,,left edge,2",
		"2,pine,3,rip,48,96,,30,left edge,3", "2,pine,4,plane,48,96,left of cut 2,47 1/4,left edge,3/4", "2,pine,5,rip,48,96,,7,right edge,"} {
		if got := strings.Join(rows[i+1][:10], ","); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestWordsOfTables(t *testing.T) {
	text, err := CutsTable.MarshalText()
	var again Table
	if err != nil || string(text) != CutsTable.String() || again.UnmarshalText(text) != nil || again != CutsTable || again.UnmarshalText([]byte("chairs")) == nil {
		t.Errorf("%q is read as %v: %v", text, again, err)
	}
}

// TestDetailsNameOtherLeaves: a details leaf without an upright section names the leaf of a wall with the same trims, and
// the leaf of the corner at its left; a wall with a steep top says how its gap is measured, as 1/16 plumb is 3/64 square to
// an edge of 45 degrees, and one with level edges does not.
func TestDetailsNameOtherLeaves(t *testing.T) {
	wall := func(name, left, right, top string) string {
		return `{"name": "` + name + `", "width": "30", "left": {"kind": "` + left + `"}, "right": {"kind": "` + right + `"}, "heights": [{"at": "0", "top": "40"}, {"at": "30", "top": "` + top + `"}]}`
	}
	p, err := madePlan(strings.NewReader(`{"profile": "beadboard 1-1/2", "gaps": {"top": "1/16"}, "stock": [{"name": "sheet", "width": "48", "length": "96"}],
		"runs": [` + wall("a", "exposed", "inside corner", "40") + `,` + wall("b", "inside corner", "exposed", "70") + `]}`))
	if err != nil {
		t.Fatal(err)
	}
	b := newPage(p, "")
	for i, want := range []string{"", "Upright section as on leaf D1, but for heights. Corner A: leaf D1. Gaps along sloped edges are measured plumb."} {
		if got := b.elsewhere(i); got != want {
			t.Errorf("leaf D%d: %q, want %q", i+1, got, want)
		}
	}
}
