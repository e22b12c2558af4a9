package line_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/nest/internal/line"
)

// TestPackingsStayTheSame holds what little effort finds, down to the last item. After a change of a
// heuristic read what got better and what worse, and use -update.
func TestPackingsStayTheSame(t *testing.T) {
	var b strings.Builder
	b.WriteString("Items that the test draws, packed by a budget of 4000 steps: capacity, bins, bound, what it rests on, steps; the bins;\n" +
		"the value and the bound of the programme, the bins of its first dive into that bound and one more; a sum of all dual values.\n\n")
	for k := range 24 {
		r := rand.New(rand.NewPCG(uint64(k), 5))
		capacity := 100 + r.Int64N(900)
		low, high := 1+capacity/8, capacity/2
		if k%3 == 0 {
			low, high = capacity/4, capacity/2
		}
		sizes := make([]int64, 12+2*k)
		for i := range sizes {
			sizes[i] = low + r.Int64N(high-low)
		}
		got, err := line.Pack(context.Background(), capacity, sizes, 4000)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&b, "%d: %d, %d, %v, %d\n  %v\n", capacity, len(got.Bins), got.Lower, got.How, got.Nodes, got.Bins)
		programme := line.NewProgramme(capacity, sizes, 4000)
		value, bound := programme.Solve()
		sum := int64(0)
		for _, d := range line.Duals(capacity, []int64{capacity / 2, capacity / 3, capacity / 4, 7}, []int{1, 2, 3, 5}) {
			for size := range capacity + 1 {
				sum += (size + 1) * d.At(size)
			}
			sum += d.Most
		}
		fmt.Fprintf(&b, "  %.4f, %d, %d and %d, %d\n", value, bound, len(programme.Dive(bound, 1)), len(programme.Dive(bound+1, 2)), sum)
	}
	fractiontest.Golden(t, "testdata/same.txt", b.String())
}
