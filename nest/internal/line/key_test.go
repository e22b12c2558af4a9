package line_test

import (
	"slices"
	"testing"

	"example.com/groovewright/nest/internal/line"
)

// Every pattern that differs from those before is new, whatever its kinds and counts; the same one is not.
func TestPatternsAreToldApart(t *testing.T) {
	m := line.NewMaster(slices.Repeat([]int{1 << 15}, 600), slices.Repeat([]int{1}, 600))
	for _, kind := range []int{0, 1, 255, 256, 257, 511, 512, 513} {
		for _, count := range []int{2, 255, 256, 257, 258, 512, 513, 514, 1024, 1025} {
			counts := make([]int, 600)
			counts[kind] = count
			if !m.Add(counts) {
				t.Errorf("%d of kind %d is known", count, kind)
			}
			if m.Add(counts) {
				t.Errorf("%d of kind %d is new again", count, kind)
			}
		}
	}
}
