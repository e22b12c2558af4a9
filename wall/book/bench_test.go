package book

import "testing"

// BenchmarkBook draws the whole book of the made-up kitchen.
func BenchmarkBook(b *testing.B) {
	p := kitchen()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Files(p); err != nil {
			b.Fatal(err)
		}
	}
}
