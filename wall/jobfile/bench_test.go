package jobfile_test

import (
	"strings"
	"testing"

	"example.com/groovewright/wall/jobfile"
)

// BenchmarkRead reads the job without a fault.
func BenchmarkRead(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := jobfile.Read(strings.NewReader(sound)); err != nil {
			b.Fatal(err)
		}
	}
}
