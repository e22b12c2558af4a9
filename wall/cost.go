package wall

import (
	"cmp"
	"fmt"
	"math/bits"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// cost is what layouts are ordered by, lexicographically: the first difference decides. Costs of
// parts combine into the cost of the whole, and a better part never makes a worse whole; that is
// what lets dynamic programming find the least, and best-first search the order.
//
// All but the counts are whole multiples of small units, each term rounded down once: the cost of a
// layout is never more than the exact one. The terms of most rooms are such multiples exactly.
type cost struct {
	broken  int32 // hard rules: seams through a box or too near one, panels too narrow, only exposed ends cut
	pieces  int32
	whole   int32 // panels that are whole sheets, as wide as they are, more is better
	price   int64 // of the pieces by an objective, in units of the search; 0 for Layouts
	blemish int64 // in grains
	uneven  int64 // sum of what [stretch.uneven] returns, in steps
	narrow  int64 // least panel width in steps, more is better; far where there is no panel
}

const (
	// grains go to one inch of blemish: a weight and an amount in inches, or in millimetres with
	// three decimals, times a height in feet are a whole number of them.
	grains = 12 << 18 * 125 * 127 * 127
	// steps go to one inch of length.
	steps = nest.PlacesPerInch
	// mostCost is above every sum of costs that is not refused.
	mostCost = 1 << 61
	// far is wider than any panel: the narrowest panel of no panels.
	far = mostCost
)

var (
	zeroCost = cost{narrow: far}
	infinite = cost{broken: 1 << 24, narrow: far} // of what cannot be
)

func (a *cost) feasible() bool { return a.broken < infinite.broken }

// set sets a to b, each field alone: what reads or changes one soon would have to wait for a copy of all.
func (a *cost) set(b *cost) {
	a.broken, a.pieces, a.whole = b.broken, b.pieces, b.whole
	a.price, a.blemish, a.uneven, a.narrow = b.price, b.blemish, b.uneven, b.narrow
}

func (a cost) plus(b cost) cost {
	a.broken += b.broken
	a.pieces += b.pieces
	a.whole += b.whole
	a.price = total(a.price, b.price)
	a.blemish = total(a.blemish, b.blemish)
	a.uneven = total(a.uneven, b.uneven)
	a.narrow = min(a.narrow, b.narrow)
	return a
}

// total adds two costs, neither above mostCost.
func total(a, b int64) int64 {
	if a+b > mostCost {
		tooMuch("+", a, b)
	}
	return a + b
}

// tooMuch stands apart so that total is inlined.
//
//go:noinline
func tooMuch(operation string, a, b int64) {
	fraction.Must(0, &fraction.OverflowError{Operation: operation, Left: fmt.Sprint(a), Right: fmt.Sprint(b)})
}

// exceeds reports whether what decides first is more in a than in b.
func (a *cost) exceeds(b *cost) bool {
	return a.broken > b.broken || a.broken == b.broken && (a.price > b.price || a.price == b.price && a.blemish > b.blemish)
}

func (a *cost) compare(b *cost) int {
	if a.broken != b.broken {
		return cmp.Compare(a.broken, b.broken)
	}
	if a.price != b.price {
		return cmp.Compare(a.price, b.price)
	}
	if a.blemish != b.blemish {
		return cmp.Compare(a.blemish, b.blemish)
	}
	if a.pieces != b.pieces {
		return cmp.Compare(a.pieces, b.pieces)
	}
	if a.uneven != b.uneven {
		return cmp.Compare(a.uneven, b.uneven)
	}
	if a.whole != b.whole {
		return cmp.Compare(b.whole, a.whole)
	}
	return cmp.Compare(b.narrow, a.narrow)
}

// inUnits returns num/den in whole units, rounded down.
func inUnits(num, den, units int64) int64 {
	size := uint64(num)
	if num < 0 {
		size = -size
	}
	hi, lo := bits.Mul64(size, uint64(units))
	if hi >= uint64(den) {
		tooMuch("*", num, units)
	}
	whole, rest := bits.Div64(hi, lo, uint64(den))
	if whole >= mostCost {
		tooMuch("*", num, units)
	}
	if num >= 0 {
		return int64(whole)
	}
	if rest > 0 {
		whole++
	}
	return -int64(whole)
}

// down returns x in whole units to the inch, rounded down.
func down(x fraction.Length, units int64) int64 { return inUnits(x.Num(), x.Den(), units) }

// up returns x in whole units to the inch, rounded up.
func up(x fraction.Length, units int64) int64 { return -inUnits(-x.Num(), x.Den(), units) }

// inGrains returns a blemish in grains, rounded down.
func inGrains(x fraction.Ratio) int64 { return inUnits(x.Num(), x.Den(), grains) }
