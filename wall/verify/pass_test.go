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
