package proof

import (
	"os"
	"testing"
)

// byHandFile returns one of the hand-made files of testdata.
func byHandFile(b *testing.B, name string) []byte {
	b.Helper()
	data, err := os.ReadFile("testdata/" + name)
	if err != nil {
		b.Fatal(err)
	}
	return data
}

// BenchmarkCheck judges the hand-made plan of two runs and a window.
func BenchmarkCheck(b *testing.B) {
	job, plan := byHandFile(b, "corner.job.json"), byHandFile(b, "corner.plan.json")
	b.ReportAllocs()
	for b.Loop() {
		if faults := Check(job, plan); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}

// BenchmarkLeastBlemish searches the same room.
func BenchmarkLeastBlemish(b *testing.B) {
	job := byHandFile(b, "corner.job.json")
	for b.Loop() {
		if _, ok := LeastBlemish(job); !ok {
			b.Fatal("not judged")
		}
	}
}
