package line_test

import (
	"context"
	"testing"

	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/nest/internal/line"
)

// FuzzPack: whatever the bytes, Pack fails or gives a packing that Verify
// accepts, and says Proved only of a bound that it reaches.
func FuzzPack(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add(uint16(10), []byte{5, 5, 5})                                  // three halves
	f.Add(uint16(100), []byte{34, 34, 34, 33, 33})                      // thirds, some too large
	f.Add(uint16(0), []byte{})                                          // no capacity
	f.Add(uint16(7), []byte{0, 9})                                      // sizes out of range
	f.Add(uint16(255), []byte{128, 127, 64, 63, 64, 100, 55, 100, 200}) // pairs that fill
	f.Fuzz(func(t *testing.T, capacity uint16, data []byte) {
		sizes := make([]int64, min(len(data), 60))
		for i := range sizes {
			sizes[i] = int64(data[i])
		}
		got, err := line.Pack(context.Background(), int64(capacity), sizes, 2000)
		if (err == nil) != (line.Check(int64(capacity), sizes) == nil) {
			t.Fatalf("Pack fails with %v, Check does not agree", err)
		}
		if err != nil {
			return
		}
		if err := line.Verify(int64(capacity), sizes, got.Bins); err != nil {
			t.Fatal(err)
		}
		if got.Lower > len(got.Bins) || got.Proved != (got.Lower == len(got.Bins)) {
			t.Fatalf("%d bins, lower %d, proved %v", len(got.Bins), got.Lower, got.Proved)
		}
	})
}
