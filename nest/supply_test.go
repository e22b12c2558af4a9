package nest

import (
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"
)

// drawSupply draws up to three kinds of sheets, what each holds of a weight and how many there are.
func drawSupply(r *rand.Rand) (s supply, g weighing, stock []int) {
	j := &job{}
	var holds []uint64
	for range 1 + r.IntN(3) {
		j.kinds = append(j.kinds, sheetKind{price: r.Int64N(6), limited: r.IntN(2) == 0})
		holds, stock = append(holds, uint64(r.IntN(5))), append(stock, r.IntN(4))
	}
	kinds := []int{0, 1, 2}[:len(j.kinds)]
	s = j.supply(kinds)
	return s, s.weighing(PartArea, holds), stock
}

// each calls f for every number of sheets of each kind, of which there are no more than in stock.
func each(stock []int, f func(taken []int)) {
	taken := make([]int, len(stock))
	var next func(kind int)
	next = func(kind int) {
		if kind == len(stock) {
			f(taken)
			return
		}
		for taken[kind] = 0; taken[kind] <= stock[kind]; taken[kind]++ {
			next(kind + 1)
		}
	}
	next(0)
}

// What bounds say of sheets is that of plain enumeration of all numbers of them: how many hold a weight, what as many cost
// at least, and what is least compared by money, bought and all; and no choice of them that holds the weight costs less than is said, nor buys fewer.
func TestSupplyEqualsEnumeration(t *testing.T) {
	for seed := range uint64(2000) {
		r := rand.New(rand.NewPCG(seed, 1))
		s, g, stock := drawSupply(r)
		total, sheets := uint64(r.IntN(20)), r.IntN(8)
		most, none := 0, 0 // sheets that hold any, and that there are
		for kind, n := range stock {
			if g.holds[kind] > 0 {
				most += n
			}
			none += n
		}
		need := [3]int64{math.MaxInt64}
		fewest, least, bought, cheapest := most, int64(math.MaxInt64), math.MaxInt, int64(math.MaxInt64)
		each(stock, func(taken []int) {
			var n, buys int
			var cost int64
			var held uint64
			for kind, k := range taken {
				n, cost, held = n+k, cost+int64(k)*s.job.kinds[kind].price, held+uint64(k)*g.holds[kind]
				if !s.job.kinds[kind].limited {
					buys += k
				}
			}
			if held >= total {
				if one := [3]int64{cost, int64(buys), int64(n)}; slices.Compare(one[:], need[:]) < 0 {
					need = one
				}
				fewest, least, bought = min(fewest, n), min(least, cost), min(bought, buys)
			}
			if n == min(sheets, none) {
				cheapest = min(cheapest, cost)
			}
		})
		if got, ok := s.least(&g, total, stock); ok != (need[0] < math.MaxInt64) || ok && got != need {
			t.Errorf("seed %d: money, bought and sheets %v (%v) hold %d, want %v", seed, got, ok, total, need)
		}
		if got := s.sheets(&g, total, stock); got != fewest {
			t.Errorf("seed %d: %d sheets hold %d, want %d", seed, got, total, fewest)
		}
		if got := s.cheapest(sheets, stock); got != cheapest {
			t.Errorf("seed %d: %d sheets cost %d, want %d", seed, sheets, got, cheapest)
		}
		if got := s.cost(&g, total, stock); got > least {
			t.Errorf("seed %d: %d to hold %d, though %d is enough", seed, got, total, least)
		}
		if got := s.bought(&g, total, stock); got > bought {
			t.Errorf("seed %d: %d are bought to hold %d, though %d are enough", seed, got, total, bought)
		}
	}
}

// What is said is as much as it can be where one kind is bought, worked by hand: sheets that hold 4 and cost 5, and two on
// hand that hold 3 for nothing. For 14 the two take 6, which leaves 8: two more for 10. For 15 it is three, and with
// fractions of a sheet 5 x 9/4 = 11 1/4, in whole coins 12.
func TestSupplyByHand(t *testing.T) {
	j := &job{kinds: []sheetKind{{price: 5}, {limited: true}, {price: 9, limited: true}}}
	s := j.supply([]int{0, 1, 2})
	g, stock := s.weighing(PartArea, []uint64{4, 3, 0}), []int{9, 2, 1}
	if !slices.Equal(g.large, []int{0, 1, 2}) || !slices.Equal(g.cheap, []int{1, 0}) || !slices.Equal(s.byPrice, []int{1, 0, 2}) || s.unit != 1 {
		t.Errorf("large %v, cheap %v, by price %v, in units of %d", g.large, g.cheap, s.byPrice, s.unit)
	}
	for _, row := range []struct {
		total  uint64
		sheets int
		cost   int64
		bought int
	}{{0, 0, 0, 0}, {3, 1, 0, 0}, {6, 2, 0, 0}, {7, 2, 2, 1}, {10, 3, 5, 1}, {14, 4, 10, 2}, {15, 4, 12, 3}, {42, 11, 45, 9}, {99, 11, 45, 24}} {
		sheets, cost, bought := s.sheets(&g, row.total, stock), s.cost(&g, row.total, stock), s.bought(&g, row.total, stock)
		if sheets != row.sheets || cost != row.cost || bought != row.bought {
			t.Errorf("%d: %d sheets, for %d, %d bought; want %+v", row.total, sheets, cost, bought, row)
		}
	}
	j.kinds[1].price = 15
	if s := j.supply([]int{0, 1}); s.unit != 5 {
		t.Errorf("prices of 5 and 15 are multiples of %d", s.unit)
	}
}

// Products that do not fit 64 bits are seen, also where one number is 0.
func TestTimes(t *testing.T) {
	for _, row := range [][2]int64{{0, 7}, {7, 1}, {1, 7}, {-3, 5}, {math.MaxInt64, 1}, {math.MinInt64, 1}, {1 << 40, 1 << 22}, {1 << 40, 1 << 23}, {-(1 << 40), 1 << 23}, {-(1 << 40), 1<<23 + 1}, {math.MaxInt64, 2}, {math.MinInt64, 2}} {
		want := new(big.Int).Mul(big.NewInt(row[0]), big.NewInt(row[1]))
		if got, ok := times(row[0], row[1]); ok != want.IsInt64() || ok && got != want.Int64() {
			t.Errorf("%d x %d: %d, %v", row[0], row[1], got, ok)
		}
	}
	for _, row := range [][3]int64{{7, 3, 1}, {-7, 3, 2}, {-6, 3, 0}, {0, 3, 0}, {5, 0, 0}} {
		if got := floorMod(row[0], row[1]); got != row[2] {
			t.Errorf("%d modulo %d: %d", row[0], row[1], got)
		}
	}
}

// Sets of numbers on both sides of 64.
func TestSets(t *testing.T) {
	var s set
	for _, i := range []int{70, 3, 127, 64, 63} {
		s = s.with(i)
	}
	for i := range mostInSet {
		if s.has(i) != slices.Contains([]int{3, 63, 64, 70, 127}, i) {
			t.Errorf("has %d: %v", i, s.has(i))
		}
	}
	var u set
	u = u.with(3).with(70).with(100)
	var order []int
	for rest := s; !rest.empty(); rest = rest.without(rest.first()) {
		order = append(order, rest.first())
	}
	if !slices.Equal(order, []int{3, 63, 64, 70, 127}) || s.size() != 5 || s.minus(u).size() != 3 || s.plus(u).size() != 6 || s.and(u) != (set{}).with(3).with(70) {
		t.Errorf("in order %v, %d of them, %d less, %d with, %v of both", order, s.size(), s.minus(u).size(), s.plus(u).size(), s.and(u))
	}
}
