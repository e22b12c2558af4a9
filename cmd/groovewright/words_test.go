package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/groovewright/cmd/groovewright/internal/plan"
	"example.com/groovewright/fraction"
)

// boardJob is an invented wall of tongue-and-groove boards, 8 ft by 4 ft.
const boardJob = `{"profile": "tongue and groove 5-1/4", "stock": [{"name": "plank", "width": "5 1/4", "length": "96"}],
	"runs": [{"name": "hall", "width": "96", "left": {"kind": "exposed"}, "right": {"kind": "covered"},
	"heights": [{"at": "0", "top": "48"}, {"at": "96", "top": "48"}]}]}`

// 96 in of boards 5 1/4 in wide are 19; each is 48 in high and crosses supports
// 16 in apart 4 times. That is 76 nails, and a tenth more.
func TestBoardsAreNailedAtTheirCrossings(t *testing.T) {
	path := filepath.Join(t.TempDir(), "boards.json")
	if err := os.WriteFile(path, []byte(boardJob), 0o600); err != nil {
		t.Fatal(err)
	}
	text := planned(t, path)
	for _, want := range []string{"Board 1: plank", "on hall, board 1", "84 nails", "Strips behind the boards", "taken to be the floor", "lower line"} {
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
	x := newText(fraction.Tape{Mark: fraction.Of(1, 16)})
	for _, row := range []struct{ got, want string }{
		{x.within(fraction.Length{}), "exactly"},
		{x.within(fraction.Of(109, 4096)), "within 1/16"},
		{x.about(fraction.MustParse("1 3/16").Sub(fraction.Of(1, 1000))), "about 1 3/16"},
		{x.about(fraction.MustParse("1 3/16")), "1 3/16"},
		{x.above(fraction.Of(-1, 8)), "1/8 below the level line"},
		{x.above(fraction.Of(1, 8)), "1/8 up"},
	} {
		if row.got != row.want {
			t.Errorf("%q, want %q", row.got, row.want)
		}
	}
}

func TestCornerNames(t *testing.T) {
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "A1", 53: "B2"} {
		if got := plan.CornerName(i); got != want {
			t.Errorf("corner %d is %s, want %s", i, got, want)
		}
	}
}

// TestTapedPointsAreNamedForReading: the text names the corner, the JSON keeps
// the path too.
func TestTapedPointsAreNamedForReading(t *testing.T) {
	p := oddPlan(t, "odd-window")
	if len(p.Taped) == 0 || p.Taped[0].Name != "corner 1 of window with a horned sill" || !strings.HasPrefix(p.Taped[0].Path, "runs[0].openings[") {
		t.Errorf("taped: %+v", p.Taped)
	}
}

// TestStoryPoleShowsPanelsOnTheWall: what is planned round is measured too.
func TestStoryPoleShowsPanelsOnTheWall(t *testing.T) {
	p := oddPlan(t, "kitchen-replan")
	for _, m := range p.Runs[0].StoryPole {
		if m.What == "panel on the wall, right" {
			return
		}
	}
	t.Errorf("no panel on the wall in %+v", p.Runs[0].StoryPole)
}

// kitchenWith returns the example with one text put in place of another.
func kitchenWith(t *testing.T, old, new string) string {
	t.Helper()
	data, err := os.ReadFile(examples(t)["kitchen"])
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(data), old) {
		t.Fatalf("the kitchen has no %s", old)
	}
	return strings.ReplaceAll(string(data), old, new)
}

func TestCheckDoubtsBoxesAndTheirCovers(t *testing.T) {
	for _, row := range []struct{ name, old, new, want string }{
		{"a wide gap", `"box": "1/8"`, `"box": "3/8"`, "leaves 1/8 bare at the sides and overlaps by 0 above and below"},
		{"a box past the top", `"bottom": "5", "width": "4 1/16", "height": "3 3/4"`, `"bottom": "15", "width": "4 1/16", "height": "3 3/4"`, "sticks out of the wall of sink wall"},
	} {
		out, _, code := try(strings.NewReader(kitchenWith(t, row.old, row.new)), "check", "-")
		if text := strings.Join(strings.Fields(out), " "); code != done || !strings.Contains(text, row.want) {
			t.Errorf("%s: exit %d, no %q in\n%s", row.name, code, row.want, out)
		}
		clean, _, _ := try(strings.NewReader(kitchenWith(t, row.old, row.old)), "check", "-")
		if text := strings.Join(strings.Fields(clean), " "); strings.Contains(text, row.want) {
			t.Errorf("the kitchen itself: %q in\n%s", row.want, clean)
		}
	}
}

func TestTooFewSheetsAreTold(t *testing.T) {
	_, says, code := try(strings.NewReader(kitchenWith(t, `"length": "96", "price"`, `"length": "96", "count": 1, "price"`)), "plan", "-")
	if text := strings.Join(strings.Fields(says), " "); code != failed || !strings.Contains(text, "the stock is not enough: 2 sheets on hand, ") || !strings.Contains(text, "left over: piece ") {
		t.Errorf("exit %d: %s", code, says)
	}
}
