package jobfile_test

import (
	"bytes"
	"testing"

	"example.com/groovewright/wall/jobfile"
)

// BenchmarkRead reads the job without a fault.
func BenchmarkRead(b *testing.B) {
	data := []byte(sound)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := jobfile.Read(bytes.NewReader(data)); err != nil {
			b.Fatal(err)
		}
	}
}
