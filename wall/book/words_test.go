package book

import (
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

// boardJob is an invented wall of tongue-and-groove boards, 8 ft by 4 ft.
const boardJob = `{"profile": "tongue and groove 5-1/8", "stock": [{"name": "plank", "width": "5 1/8", "length": "96"}],
	"runs": [{"name": "hall", "width": "96", "left": {"kind": "exposed"}, "right": {"kind": "covered"},
	"heights": [{"at": "0", "top": "48"}, {"at": "96", "top": "48"}]}]}`

// 96 in of boards 5 1/4 in wide are 19; each is 48 in high and crosses supports 16 in apart 4
// times. That is 76 nails, 4 more along the edge with which the first starts the run, and a tenth more.
func TestBoardsAreNailedAtTheirCrossings(t *testing.T) {
	p, err := madePlan(strings.NewReader(boardJob))
	if err != nil {
		t.Fatal(err)
	}
	text := Explained(p)
	for _, want := range []string{"Boards 1 to 18, plank, 5 1/8 x 96: crosscut", "88 nails", "Strips behind the boards", "taken to be the floor", "lower line"} {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), want) {
			t.Errorf("the plan of boards lacks %q", want)
		}
	}
	for _, not := range []string{"panel adhesive", "panel nails", "Sheet 1", "on the counter instead"} {
		if strings.Contains(text, not) {
			t.Errorf("the plan of boards has %q", not)
		}
	}
}

func TestLengthsForReading(t *testing.T) {
	x := &text{tape: fraction.Tape{Mark: fraction.Of(1, 16)}}
	for _, row := range []struct{ got, want string }{
		{x.within(fraction.Length{}), "exactly"},
		{x.within(fraction.Of(109, 4096)), "within 1/16"},
		{x.about(fraction.MustParse("1 3/16").Sub(fraction.Of(1, 1000))), "about 1 3/16"},
		{x.about(fraction.MustParse("1 3/16")), "1 3/16"},
		{x.above(fraction.Of(-1, 8)), "1/8 below level"},
		{x.above(fraction.Of(1, 8)), "1/8 up"},
	} {
		if row.got != row.want {
			t.Errorf("%q, want %q", row.got, row.want)
		}
	}
}

func TestEveryArgumentHasWords(t *testing.T) {
	for _, how := range every[nest.Argument]() {
		if argument(plan.Plan{}, how) == "" {
			t.Errorf("%v has no words", how)
		}
	}
}

// TestTapedPointsAreNamedForReading: the text names the corner, the JSON keeps the path too.
func TestTapedPointsAreNamedForReading(t *testing.T) {
	p := examplePlans(t)["odd-window"]
	if len(p.Taped) == 0 || pointName(p.Taped[0]) != "corner c1 of window with a horned sill" || !strings.HasPrefix(p.Taped[0].Path.String(), "Runs[0].Openings[") {
		t.Errorf("taped: %+v", p.Taped)
	}
}

// TestStoryPoleShowsPanelsOnTheWall: what is planned round is measured too, each place once.
func TestStoryPoleShowsPanelsOnTheWall(t *testing.T) {
	p := examplePlans(t)["kitchen-replan"]
	text := written(p.TapeMeasure(), false, func(t *text) { t.pole(p, p.Runs[0]) })
	for _, want := range []string{"48 1/16 seam of two on the wall;", "69 5/16 seam of panel 1 and one on the wall;"} {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
}
