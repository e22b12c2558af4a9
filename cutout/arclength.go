package cutout

import (
	"math/big"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// piAbove is π = 3.14159265358979… rounded up at the eleventh place.
var piAbove = big.NewRat(314159265359, 100000000000)

// ArcLength returns the length of an arc over a chord, as a multiple of unit that is not below it, and above it
// by little more than the unit. It fails with [ErrNoArc] as [Radius] does, with a *fault.Fault where unit is not
// above zero, and where the length does not fit a Length.
//
// With the radius r and t = 2 rise/chord, the tangent of a quarter of its angle, it is 4 r arctan t.
func ArcLength(chord, rise, unit fraction.Length) (length fraction.Length, err error) {
	defer fraction.Catch(&err)
	if unit.Sign() <= 0 {
		return length, &fault.Fault{Path: fault.Of("Unit"), Value: unit.String(), Want: "more than 0"}
	}
	exact, err := radius(chord, rise)
	if err != nil {
		return length, err
	}
	exact.Mul(exact, big.NewRat(4, 1))
	exact.Mul(exact, arctanAbove(new(big.Rat).Quo(rise.Mul(2).Rat(), chord.Rat())))
	return mustFit(multiple(exact, unit.Rat(), true)), nil
}

// arctanAbove returns a number not below arctan t, for 0 < t <= 1. Where the series is slow, towards 1, it takes
// arctan t = π/4 - arctan((1-t)/(1+t)).
func arctanAbove(t *big.Rat) *big.Rat {
	if t.Cmp(big.NewRat(2, 5)) <= 0 {
		_, above := arctanSeries(t)
		return above
	}
	one := big.NewRat(1, 1)
	below, _ := arctanSeries(new(big.Rat).Quo(new(big.Rat).Sub(one, t), new(big.Rat).Add(one, t)))
	return below.Sub(new(big.Rat).Quo(piAbove, big.NewRat(4, 1)), below)
}

// arctanSeries returns two neighbouring partial sums of t - t³/3 + t⁵/5 - … about arctan t.
func arctanSeries(t *big.Rat) (below, above *big.Rat) {
	square, term, near := squared(t), new(big.Rat).Set(t), big.NewRat(1, 1_000_000_000_000)
	below = new(big.Rat)
	for k := int64(1); ; k += 4 {
		above = new(big.Rat).Add(below, new(big.Rat).Quo(term, big.NewRat(k, 1)))
		term.Mul(term, square)
		below = new(big.Rat).Sub(above, new(big.Rat).Quo(term, big.NewRat(k+2, 1)))
		term.Mul(term, square)
		if new(big.Rat).Sub(above, below).Cmp(near) < 0 {
			return below, above
		}
	}
}
