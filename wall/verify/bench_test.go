package verify

import "testing"

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
