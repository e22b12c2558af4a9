package nest_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"example.com/groovewright/nest"
)

func BenchmarkKitchen(b *testing.B) {
	for _, n := range []int{8, 15, 25} {
		p := kitchen(rand.New(rand.NewPCG(1, uint64(n))), n, true)
		b.Run(fmt.Sprintf("first/n=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := nest.FirstFit(p); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(fmt.Sprintf("lower/n=%d", n), func(b *testing.B) {
			for b.Loop() {
				if _, err := nest.LowerBound(p); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(fmt.Sprintf("search/n=%d", n), func(b *testing.B) {
			var r nest.Result
			for b.Loop() {
				var err error
				if r, err = nest.Search(context.Background(), p, nest.Budget{}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(len(r.Sheets)), "sheets")
			b.ReportMetric(float64(r.Nodes), "nodes")
		})
	}
}
