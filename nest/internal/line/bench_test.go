package line_test

import (
	"context"
	"fmt"
	"testing"

	"example.com/groovewright/nest/internal/line"
)

// BenchmarkPack packs the first instance of each open set: nodes and bins beside the time.
func BenchmarkPack(b *testing.B) {
	for i, in := range instances(b) {
		if i%20 != 0 {
			continue
		}
		b.Run("set="+in.set(), func(b *testing.B) {
			b.ReportAllocs()
			var got line.Result
			for b.Loop() {
				got, _ = line.Pack(context.Background(), in.Capacity, in.Sizes, line.DefaultNodes)
			}
			b.ReportMetric(float64(got.Nodes), "nodes")
			b.ReportMetric(float64(len(got.Bins)), "bins")
		})
	}
}

// BenchmarkFirstFit and BenchmarkLower grow with the number of items.
func BenchmarkFirstFit(b *testing.B) {
	benchmarkSizes(b, func(in instance) { line.FirstFit(in.Capacity, in.Sizes) })
}

func BenchmarkLower(b *testing.B) {
	benchmarkSizes(b, func(in instance) { line.Lower(in.Capacity, in.Sizes) })
}

func benchmarkSizes(b *testing.B, work func(instance)) {
	for i, in := range instances(b)[:80] {
		if i%20 != 0 {
			continue
		}
		b.Run(fmt.Sprintf("n=%d", len(in.Sizes)), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				work(in)
			}
		})
	}
}

// BenchmarkSmall compares the search with plain enumeration on nine items.
func BenchmarkSmall(b *testing.B) {
	sizes := []int64{44, 41, 37, 33, 31, 29, 28, 27, 24}
	b.Run("search", func(b *testing.B) {
		for b.Loop() {
			line.Pack(context.Background(), 100, sizes, line.DefaultNodes)
		}
	})
	b.Run("enumeration", func(b *testing.B) {
		for b.Loop() {
			fewest(100, sizes)
		}
	})
}
