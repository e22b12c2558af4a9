package drawing

import "testing"

// BenchmarkBook draws the whole book of the made-up kitchen.
func BenchmarkBook(b *testing.B) {
	p := kitchen()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Book(p); err != nil {
			b.Fatal(err)
		}
	}
}
