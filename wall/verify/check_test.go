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

// An end that leans by 1 over a height of 10 does so by half at half the height; one without height stands upright.
func TestLinesOfLeaningEnds(t *testing.T) {
	tall, low := station{Bottom: zero(), Top: ratio(10, 1)}, station{Bottom: ratio(5, 1), Top: ratio(5, 1)}
	for _, test := range []struct {
		lean rat
		at   station
		want rat // at a height of 5, of a line that stands at 3
	}{{ratio(1, 1), tall, ratio(7, 2)}, {ratio(-1, 1), tall, ratio(5, 2)}, {zero(), tall, ratio(3, 1)}, {ratio(1, 1), low, ratio(3, 1)}} {
		if got := lineAt(ratio(3, 1), test.lean, test.at)(ratio(5, 1)); !same(got, test.want) {
			t.Errorf("lean %v from %v to %v: %v, want %v", test.lean, test.at.Bottom, test.at.Top, got, test.want)
		}
	}
}
