package plan_test

import (
	"path/filepath"
	"strings"
	"testing"

	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/plan"
	"example.com/groovewright/wall/verify"
)

// soundRooms are small rooms that together have what the examples lack, each with the blade, the sheets and
// the profile of the first lines.
var soundRooms = map[string]string{
	"stepped wall": steppedWall,
	"two boxes, a notch and a closed room of outside corners": small(`"gaps": {"side": "1/16", "seam": "1/16", "box": "1/16", "top": "1/8"}, "closed": true, "runs": [
		{"name": "a", "width": "30", "left": {"kind": "outside corner"}, "right": {"kind": "outside corner"}, "heights": [{"at": "0", "top": "24"}, {"at": "30", "top": "24"}],
		 "openings": [{"name": "one", "kind": "box", "left": "6", "bottom": "4", "width": "2", "height": "4"}, {"name": "two", "kind": "box", "left": "16", "bottom": "4", "width": "2", "height": "4"}]},
		{"name": "b", "width": "60", "left": {"kind": "outside corner"}, "right": {"kind": "outside corner"}, "heights": [{"at": "0", "top": "24"}, {"at": "60", "top": "26"}],
		 "openings": [{"name": "shelf", "kind": "other", "left": "20", "bottom": "20", "width": "30", "height": "20"}]}]`),
	"a door, a hatch with an arch and a leaning end": small(`"gaps": {"side": "1/8", "window": "1/8"}, "runs": [
		{"name": "hall", "width": "110", "left": {"kind": "exposed", "lean": "-3/4"}, "right": {"kind": "covered", "lean": "1/2"}, "heights": [{"at": "0", "top": "40"}, {"at": "110", "top": "38"}],
		 "openings": [{"name": "door", "kind": "other", "left": "30", "bottom": "-1", "width": "30", "height": "60"},
			{"name": "hatch", "kind": "window", "left": "70", "bottom": "8", "width": "12", "height": "14", "rise": "4"}]}]`),
	"offcuts by count and one panel that is up": small(`"runs": [
		{"name": "a", "width": "80", "left": {"kind": "exposed"}, "right": {"kind": "inside corner"}, "heights": [{"at": "0", "top": "24"}, {"at": "80", "top": "24"}]},
		{"name": "b", "width": "50", "left": {"kind": "inside corner"}, "right": {"kind": "exposed"}, "heights": [{"at": "0", "top": "24"}, {"at": "20", "top": "24"}, {"at": "20", "top": "36"}, {"at": "50", "top": "36"}]}],
		"installed": [{"run": "a", "left": "0", "right": "30", "left_phase": "0"}]`),
}

// small returns a job with what its rooms have in common.
func small(more string) string {
	return `{"profile": {"features": [{"kind": "flat", "width": "1 1/8"}, {"kind": "bead", "width": "3/8"}], "thickness": "1/4"}, "saw": {"kerf": "1/8", "square_up": "1/4"},
		"stock": [{"name": "sheet", "width": "48", "length": "96", "price": "30"}, {"name": "offcut", "width": "32", "length": "48", "count": 2, "left_phase": "3/4"}], ` + more + `}`
}

// The checker, which knows the contract and nothing of the planner, finds no fault in the plans of the
// examples and of small rooms.
func TestPlansHaveNoFaults(t *testing.T) {
	judge := func(name, job string, p plan.Plan) {
		data, err := p.JSON()
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range verify.Plan([]byte(job), data) {
			t.Errorf("%s: %v", name, f)
		}
	}
	for name, job := range soundRooms {
		p, err := plan.Make(t.Context(), jobFrom(t, job), plan.Options{Budget: choice.Budget{Layouts: 4, Nodes: 20_000}})
		if err != nil {
			t.Fatal(name, err)
		}
		judge(name, job, p)
	}
	plans, err := examplePlans()
	if err != nil {
		t.Fatal(err)
	}
	for name, p := range plans {
		if name == "odd-arch.json" && testing.Short() { // its many corners take seconds; the hatch is of its kind
			continue
		}
		judge(strings.TrimSuffix(name, ".json"), readText(t, filepath.Join("../../examples", name)), p)
	}
}
