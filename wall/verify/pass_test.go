package verify_test

import (
	"testing"

	"example.com/groovewright/wall/plan"
	"example.com/groovewright/wall/verify"
)

// Rooms whose plans are right for a reason of their own.
func TestPlansThatPass(t *testing.T) {
	for name, job := range map[string][]byte{
		"sides of two boxes at one place count together": room(wallWith(`, "openings": [
			{"name": "lower", "kind": "box", "left": "20", "bottom": "2", "width": "3", "height": "5"},
			{"name": "upper", "kind": "box", "left": "20", "bottom": "12", "width": "3", "height": "5"}]`), `, "priorities": {"box_side": 1}`),
		"no line that a seam can move to is clear of the box": room(wallWith(`, "openings": [
			{"name": "box", "kind": "box", "left": "2", "bottom": "5", "width": "56", "height": "5"}]`), ""),
		"a seam moved clear of the box would leave a panel wider than both sheets": []byte(`{"profile": "beadboard 2", "stock": [{"name": "sheet", "width": "48", "length": "96", "count": 2}],
			"runs": [{"name": "A", "width": "95 1/4", "left": {"kind": "covered"}, "right": {"kind": "covered"}, "heights": [{"at": "0", "top": "24"}, {"at": "95 1/4", "top": "24"}],
				"openings": [{"name": "box", "kind": "box", "left": "42", "bottom": "5", "width": "10", "height": "5"}]}]}`),
		"sides of two boxes on a wall without other edges count together": []byte(`{"profile": "beadboard 2", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
			"priorities": {"box_side": 1}, "runs": [{"name": "A", "width": "40", "left": {"kind": "inside corner"}, "right": {"kind": "inside corner"},
				"heights": [{"at": "0", "top": "24"}, {"at": "40", "top": "24"}], "openings": [
			{"name": "lower", "kind": "box", "left": "19 1/4", "bottom": "2", "width": "3", "height": "5"},
			{"name": "upper", "kind": "box", "left": "19 1/4", "bottom": "12", "width": "3", "height": "5"}]}]}`),
		"an arched head whose taped corners begin at its upper left": room(wallWith(`, "openings": [{"name": "niche", "kind": "other", "rise": "2", "points": {"corners": [
			{"bases": [["9", "0"], ["24", "0"]], "side": "left", "distances": ["20", "25"]}, {"bases": [["0", "0"], ["25", "0"]], "side": "left", "distances": ["15", "20"]},
			{"bases": [["0", "0"], ["25", "0"]], "side": "left", "distances": ["20", "15"]}, {"bases": [["1", "0"], ["16", "0"]], "side": "left", "distances": ["25", "20"]}]}}]`), ""),
		"an end that leans over two grooves side by side": []byte(`{"profile": {"features": [{"kind": "flat", "width": "2"}, {"kind": "groove", "width": "1/4"}, {"kind": "groove", "width": "1/2"}], "thickness": "1/4"},
			"stock": [{"name": "sheet", "width": "48", "length": "96"}], "runs": [{"name": "A", "width": "40", "left": {"kind": "exposed", "lean": "2"}, "right": {"kind": "exposed", "lean": "-2"},
				"heights": [{"at": "0", "top": "24"}, {"at": "40", "top": "24"}]}]}`),
	} {
		data, message, exit := planned(t, job, plan.Looks, small)
		if exit != 0 {
			t.Fatalf("%s: exit %d, %s", name, exit, message)
		}
		for _, f := range verify.Plan(job, data) {
			t.Errorf("%s: %v", name, f)
		}
	}
}
