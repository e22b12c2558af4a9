package verify_test

import (
	"bytes"
	"fmt"
	"os"

	"example.com/groovewright/wall/verify"
)

// A plan that keeps to its job has no faults. One in which a placement is moved by a sixteenth
// shows another part of the pattern there, and is not where the saw leaves it.
func ExamplePlan() {
	job, _ := os.ReadFile("testdata/corner.job.json")
	plan, _ := os.ReadFile("testdata/corner.plan.json")
	fmt.Println(len(verify.Plan(job, plan)), "faults")

	moved := bytes.Replace(plan, []byte(`"x": "1/16", "y"`), []byte(`"x": "1/8", "y"`), 1)
	for _, fault := range verify.Plan(job, moved) {
		fmt.Println(fault)
	}
	// Output:
	// 0 faults
	// placement: sheets[0].placements[1].x: the sheet shows another phase here (got the sheet's phase 1/8, want 1/16)
	// cuts: sheets[0].placements[1]: does not stand free after the cuts (got [1/8, 20 1/8, 35 11/16, 26], want a part of its own)
}
