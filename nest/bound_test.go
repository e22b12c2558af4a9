package nest

import (
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func upTo(n int) (all []int) {
	for i := range n {
		all = append(all, i)
	}
	return all
}

// Sums of products are exact in 128 bits, whatever the size of the values.
func TestPairSum(t *testing.T) {
	wide := 0
	rapid.Check(t, func(t *rapid.T) {
		draw := func(n int) *dual {
			d := &dual{whole: int64(1) << rapid.SampledFrom([]int{1, 20, 31, 33, 61}).Draw(t, "whole")}
			for range n {
				d.size = append(d.size, rapid.OneOf(rapid.Int64Range(0, d.whole), rapid.Just(d.whole)).Draw(t, "size"))
			}
			return d
		}
		n := rapid.IntRange(1, 3).Draw(t, "n")
		f, g := draw(n), draw(n)
		r := relaxed{pieces: make([]int, 2*n), paces: distinct{number: rapid.Permutation(slices.Repeat(upTo(n), 2)).Draw(t, "paces")},
			highs: distinct{sizes: g.size, number: slices.Repeat(upTo(n), 2)}}
		hi, lo, whole := pairSum(r.across(f, make([]uint64, len(r.highs.sizes))), 2*n, f.whole, g)
		sum, product := new(big.Int), new(big.Int).Mul(big.NewInt(f.whole), big.NewInt(g.whole))
		for i := range r.pieces {
			sum.Add(sum, new(big.Int).Mul(big.NewInt(f.size[r.paces.number[i]]), big.NewInt(g.size[r.highs.number[i]])))
		}
		got := new(big.Int).Add(new(big.Int).Lsh(new(big.Int).SetUint64(hi), 64), new(big.Int).SetUint64(lo))
		if got.Cmp(sum) != 0 {
			t.Fatalf("%v, want %v", got, sum)
		}
		if hi > 0 {
			wide++
		}
		want := uint64(0)
		if top := new(big.Int).Rsh(sum, 64); product.IsUint64() && product.Cmp(top) > 0 {
			want = product.Uint64()
		}
		if whole != want {
			t.Fatalf("a sheet holds %d, want %d", whole, want)
		}
	})
	if wide == 0 {
		t.Error("no sum is wider than 64 bits")
	}
}

// What a stack is worth at most is that of all stacks, counted one by one; where parts are rounded it is no less.
func TestMostIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		capacity := rapid.Int64Range(1, 60).Draw(t, "capacity")
		sizes := rapid.SliceOfN(rapid.Int64Range(1, 40), 1, 5).Draw(t, "sizes")
		values := rapid.SliceOfN(rapid.Int64Range(0, 20), len(sizes), len(sizes)).Draw(t, "values")
		var best func(room int64) int64
		best = func(room int64) (most int64) {
			for k, size := range sizes {
				if size <= room {
					most = max(most, values[k]+best(room-size))
				}
			}
			return most
		}
		memo := map[int64]int64{}
		plain := best
		best = func(room int64) int64 {
			if _, ok := memo[room]; !ok {
				memo[room] = plain(room)
			}
			return memo[room]
		}
		limit := rapid.Int64Range(0, 400).Draw(t, "limit")
		if got, want := mostIn(values, sizes, capacity, limit), min(best(capacity), limit); got != want {
			t.Fatalf("%d, want %d", got, want)
		}
		const fine = 1009 // so many marks in one of these
		for k := range sizes {
			sizes[k] *= fine
		}
		if got, want := mostIn(values, sizes, capacity*fine, limit), min(memo[capacity], limit); got < want {
			t.Fatalf("rounded: %d, less than %d", got, want)
		}
	})
}
