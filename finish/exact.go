package finish

import (
	"math/big"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// Quantities are rationals of any size, as areas are divided by coverages of any denominator. No
// function here writes to what it is given. For a number that is not rational (a circle, a slope)
// stands a rational bound above it, so that a quantity is never short.

// piAbove is π rounded up at the eleventh place: half a circle over a chord of 2.
var piAbove = fraction.Must(cutout.ArcLength(fraction.Inches(2), fraction.Inches(1), fraction.Of(1, 100_000_000_000))).Rat()

func whole(n int64) *big.Rat       { return new(big.Rat).SetInt64(n) }
func part(num, den int64) *big.Rat { return big.NewRat(num, den) }

func add(a ...*big.Rat) *big.Rat {
	total := new(big.Rat)
	for _, x := range a {
		total.Add(total, x)
	}
	return total
}

func sub(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }

func mul(a ...*big.Rat) *big.Rat {
	product := whole(1)
	for _, x := range a {
		product.Mul(product, x)
	}
	return product
}

// quo returns a/b; the callers have refused b = 0.
func quo(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

func least(a, b *big.Rat) *big.Rat {
	if b.Cmp(a) < 0 {
		return b
	}
	return a
}

// ceiling returns the least whole number that is not below x.
func ceiling(x *big.Rat) *big.Int {
	above := new(big.Int).Sub(new(big.Int).Add(x.Num(), x.Denom()), big.NewInt(1))
	return above.Div(above, x.Denom()) // Euclidean: rounds down, as the denominator is positive
}

// count returns ceiling(x) as an int64, or the greatest int64 where it does not fit.
func count(x *big.Rat) int64 {
	n := ceiling(x)
	if !n.IsInt64() {
		return 1<<63 - 1
	}
	return n.Int64()
}

// roundUp returns the least multiple of 1/scale that is not below x.
func roundUp(x *big.Rat, scale int64) *big.Rat {
	return new(big.Rat).SetFrac(ceiling(mul(x, whole(scale))), big.NewInt(scale))
}

// The scales of roundUp: for lengths as they are written, and for bounds on circles and slopes.
const hundredths, tenThousandths, billionths = 100, 10_000, 1_000_000_000

// rootAbove returns a number not below the square root of x and less than a billionth above it.
func rootAbove(x *big.Rat) *big.Rat {
	n := ceiling(mul(x, whole(billionths), whole(billionths)))
	root := new(big.Int).Sqrt(n)
	if new(big.Int).Mul(root, root).Cmp(n) < 0 {
		root.Add(root, big.NewInt(1))
	}
	return new(big.Rat).SetFrac(root, big.NewInt(billionths))
}
