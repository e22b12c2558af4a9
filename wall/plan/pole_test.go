package plan_test

import (
	"fmt"
	"strings"
	"testing"

	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// pole returns the story pole of the only run in a job as text.
func pole(t *testing.T, job string) string {
	t.Helper()
	var marks []string
	for _, m := range makeFrom(t, job).Runs[0].StoryPole {
		marks = append(marks, strings.TrimRight(fmt.Sprintf("%v %v %d %d %s", m.At, m.Kind, m.Panel, m.Next, m.Opening), " "))
	}
	return strings.Join(marks, "\n")
}

// The story pole of a run of 90 whose seam is kept at 48, worked by hand: the first repeat of 1 1/2 is marked, a seam of 1/4 leaves the edges of
// the panels 1/8 on either side of it; side gaps of 1/2 are at both ends, and at the step toward its taller part.
func TestStoryPole(t *testing.T) {
	const run = `"runs": [{"name": "a", "width": "90", "left": {"kind": "covered"}, "right": {"kind": "covered"}, "keep": {"origin": "0", "seams": ["48"]},
		"heights": [{"at": "0", "top": "24"}, {"at": "60", "top": "24"}, {"at": "60", "top": "36"}, {"at": "90", "top": "36"}],
		"openings": [{"name": "box", "kind": "box", "left": "10", "bottom": "5", "width": "2", "height": "4"}]}]`
	for _, row := range []struct{ name, job, want string }{
		{"a seam with a gap", small(`"gaps": {"seam": "1/4", "side": "1/2"}, ` + run), `
1/2 panels start 0 0
1 1/2 repeat starts 0 0
10 opening left 0 0 box
12 opening right 0 0 box
47 7/8 panel right 1 0
48 1/8 panel left 2 0
60 step 0 0
89 1/2 panels stop 0 0`},
		{"a seam without a gap", small(run), `
0 panels start 0 0
0 repeat starts 0 0
10 opening left 0 0 box
12 opening right 0 0 box
48 panels meet 1 2
60 step 0 0
90 panels stop 0 0`},
		{"a run that is narrower than a repeat", small(`"runs": [{"name": "a", "width": "1", "left": {"kind": "covered"}, "right": {"kind": "covered"}, "keep": {"origin": "5/4"},
			"heights": [{"at": "0", "top": "24"}, {"at": "1", "top": "24"}]}]`), `
0 panels start 0 0
1 panels stop 0 0`},
		{"one that is worked to the left", small(`"runs": [{"name": "a", "width": "1", "left": {"kind": "covered"}, "right": {"kind": "covered"}, "keep": {"origin": "5/4", "direction": "left"},
			"heights": [{"at": "0", "top": "24"}, {"at": "1", "top": "24"}]}]`), `
0 panels start 0 0
1 panels stop 0 0`},
		{"panels that are up on both sides", small(strings.Replace(run, `"keep": {"origin": "0", "seams": ["48"]}`, `"keep": {}`, 1) +
			`, "installed": [{"run": "a", "left": "0", "right": "15", "left_phase": "0"}, {"run": "a", "left": "15", "right": "30", "left_phase": "0"}, {"run": "a", "left": "60", "right": "89", "left_phase": "0"}]`), `
0 panels start 0 0
0 repeat starts 0 0
10 opening left 0 0 box
12 opening right 0 0 box
15 installed meet 0 0
30 installed meet 1 0
60 installed meet 1 0
60 step 0 0
89 installed meet 2 0
90 panels stop 0 0`},
	} {
		if got := "\n" + pole(t, row.job); got != row.want {
			t.Errorf("%s:%s\nwant%s", row.name, got, row.want)
		}
	}
}

// A wall as it was taped begins at its foot, and its upper corners lean with its ends; a point that two heights
// share is one corner.
func TestWallOutline(t *testing.T) {
	j := jobFrom(t, small(`"runs": [{"name": "a", "width": "90", "left": {"kind": "covered", "lean": "-1/2"}, "right": {"kind": "covered", "lean": "2"},
		"heights": [{"at": "0", "top": "24"}, {"at": "60", "bottom": "1", "top": "24"}, {"at": "60", "bottom": "1", "top": "36"}, {"at": "90", "top": "35"}],
		"openings": [{"name": "window", "kind": "window", "left": "10", "bottom": "5", "width": "2", "height": "4"}]}],
		"installed": [{"run": "a", "left": "0", "right": "15", "left_phase": "3/4"}]`))
	p, err := j.Walls()
	if err != nil {
		t.Fatal(err)
	}
	run := p.Runs[0]
	if got, want := fmt.Sprint(run.Outline), "[{0 0} {60 1} {90 0} {92 35} {60 36} {60 24} {-1/2 24}]"; got != want {
		t.Errorf("outline %s, want %s", got, want)
	}
	if got, want := fmt.Sprintf("%v %v %v %v %+v", run.Limits, run.Left.Lean, run.Right.Lean, run.Openings[0].Name, run.Installed), "[0 90] -1/2 2 window [{Left:0 Right:15 LeftPhase:3/4}]"; got != want {
		t.Errorf("run %s, want %s", got, want)
	}
	if _, err := (plan.Job{}).Walls(); err == nil {
		t.Error("a job that is not valid has walls")
	}
}

// Boards meet at joints, also one that is on the wall.
func TestBoardsMeetAtJoints(t *testing.T) {
	boards := plan.Profile{Profile: groove.Profile{Boards: true}}
	for _, row := range []struct {
		profile plan.Profile
		panel   int
		want    string
	}{{boards, 3, "joint of board 3 and one on the wall"}, {boards, 0, "joint of two on the wall"}, {plan.Profile{}, 3, "seam of panel 3 and one on the wall"}} {
		if got := (plan.Mark{Kind: plan.InstalledMeet, Panel: row.panel}).Name(row.profile); got != row.want {
			t.Errorf("%q, want %q", got, row.want)
		}
	}
}
