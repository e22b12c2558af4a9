package verify

import "testing"

// BenchmarkCheck judges the hand-made plan of two runs and a window.
func BenchmarkCheck(b *testing.B) {
	job, plan := fixture(b, "corner")
	b.ReportAllocs()
	for b.Loop() {
		if faults := Check([]byte(job), []byte(plan)); len(faults) > 0 {
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
