package verify

import (
	"os"
	"testing"
)

// The plans in testdata are made by hand, with pencil and the contract, not by the planner.
var byHand = []string{"shelf", "corner", "outside", "door", "niche"}

// fixture returns one of them with its job.
func fixture(t interface {
	Helper()
	Fatal(...any)
}, name string) (job, plan string) {
	t.Helper()
	read := func(file string) string {
		data, err := os.ReadFile("testdata/" + file)
		if err != nil {
			t.Fatal(err)
		}
		return string(data)
	}
	return read(name + ".job.json"), read(name + ".plan.json")
}

func TestRightPlansPass(t *testing.T) {
	for _, name := range byHand {
		job, plan := fixture(t, name)
		for _, f := range Plan([]byte(job), []byte(plan)) {
			t.Errorf("%s: %v", name, f)
		}
	}
}
