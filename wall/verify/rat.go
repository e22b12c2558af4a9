package verify

import "math/big"

// A rat is an exact number: inches, square inches, or a pure number. No function of this package
// writes to a rat that it was given.
type rat = *big.Rat

func whole(n int64) rat         { return new(big.Rat).SetInt64(n) }
func ratio(num, den int64) rat  { return big.NewRat(num, den) }
func zero() rat                 { return new(big.Rat) }
func diff(a, b rat) rat         { return new(big.Rat).Sub(a, b) }
func times(a, b rat) rat        { return new(big.Rat).Mul(a, b) }
func over(a, b rat) rat         { return new(big.Rat).Quo(a, b) }
func half(a rat) rat            { return times(a, ratio(1, 2)) }
func square(a rat) rat          { return times(a, a) }
func negative(a rat) rat        { return new(big.Rat).Neg(a) }
func size(a rat) rat            { return new(big.Rat).Abs(a) }
func less(a, b rat) bool        { return a.Cmp(b) < 0 }
func same(a, b rat) bool        { return a.Cmp(b) == 0 }
func middle(a, b rat) rat       { return half(sum(a, b)) }
func within(a, low, b rat) bool { return !less(a, low) && !less(b, a) }

// sum returns the sum of all terms, 0 for none.
func sum(terms ...rat) rat {
	total := zero()
	for _, term := range terms {
		total.Add(total, term)
	}
	return total
}

func least(a, b rat) rat {
	if less(b, a) {
		return b
	}
	return a
}

func most(a, b rat) rat {
	if less(a, b) {
		return b
	}
	return a
}

// floor returns the greatest whole number not above a.
func floor(a rat) *big.Int {
	// Div of big.Int is Euclidean, and a denominator is positive: this is floor.
	return new(big.Int).Div(a.Num(), a.Denom())
}

// mod returns a less whole multiples of p, in [0, p). p is above 0.
func mod(a, p rat) rat {
	return diff(a, times(p, new(big.Rat).SetInt(floor(over(a, p)))))
}

// down and up round to whole marks toward minus and plus infinity. A mark of 0 rounds nothing.
func down(a, mark rat) rat {
	if mark.Sign() == 0 {
		return a
	}
	return diff(a, mod(a, mark))
}

func up(a, mark rat) rat { return negative(down(negative(a), mark)) }

// circular returns the distance of a and b round a circle of circumference p.
func circular(a, b, p rat) rat {
	d := mod(diff(a, b), p)
	return least(d, diff(p, d))
}

// text writes a as the plan's JSON does: a mixed fraction in lowest terms.
func text(a rat) string {
	if a.IsInt() {
		return a.Num().String()
	}
	sign := ""
	if a.Sign() < 0 {
		sign = "-"
	}
	n := new(big.Int).Abs(a.Num())
	n, rest := n.QuoRem(n, a.Denom(), new(big.Int))
	fraction := rest.String() + "/" + a.Denom().String()
	if n.Sign() == 0 {
		return sign + fraction
	}
	return sign + n.String() + " " + fraction
}
