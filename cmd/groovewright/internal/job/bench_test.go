package job_test

import (
	"testing"

	"example.com/groovewright/cmd/groovewright/internal/job"
)

// BenchmarkRead reads the job without a fault.
func BenchmarkRead(b *testing.B) {
	data := []byte(sound)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := job.Read(data); err != nil {
			b.Fatal(err)
		}
	}
}
