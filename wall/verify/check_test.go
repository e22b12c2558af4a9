package verify

import (
	"os"
	"testing"
)

// The plans in testdata are made by hand, with pencil and the contract, not by the planner.
var byHand = []string{"shelf", "corner", "outside", "door", "niche", "sill"}

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

// BenchmarkPlan judges the hand-made plan of two runs and a window.
func BenchmarkPlan(b *testing.B) {
	job, plan := fixture(b, "corner")
	b.ReportAllocs()
	for b.Loop() {
		if faults := Plan([]byte(job), []byte(plan)); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}

// BenchmarkLeastBlemish searches the same room.
func BenchmarkLeastBlemish(b *testing.B) {
	job, _ := fixture(b, "corner")
	for b.Loop() {
		if _, ok := LeastBlemish([]byte(job)); !ok {
			b.Fatal("not judged")
		}
	}
}
