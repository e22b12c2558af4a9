package finish

import "math/big"

// Quantities are rationals of any size, as areas are divided by coverages of any denominator. No
// function here writes to what it is given. For a number that is not rational (a circle, a slope)
// stands a rational bound above it, so that a quantity is never short.

// piAbove is π = 3.14159265358979… rounded up at the eleventh place.
var piAbove = big.NewRat(314159265359, 100000000000)

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
const hundredths, billionths = 100, 1_000_000_000

// rootAbove returns a number not below the square root of x and less than a billionth above it.
func rootAbove(x *big.Rat) *big.Rat {
	n := ceiling(mul(x, whole(billionths), whole(billionths)))
	root := new(big.Int).Sqrt(n)
	if new(big.Int).Mul(root, root).Cmp(n) < 0 {
		root.Add(root, big.NewInt(1))
	}
	return new(big.Rat).SetFrac(root, big.NewInt(billionths))
}

// arcAbove returns a number not below the length of an arc over a chord, where 0 < 2*rise <= chord.
// With r = (chord² + 4 rise²)/(8 rise) and t = 2 rise/chord, the tangent of a quarter of its angle,
// it is 4 r arctan t.
func arcAbove(chord, rise *big.Rat) *big.Rat {
	r := quo(add(mul(chord, chord), mul(whole(4), rise, rise)), mul(whole(8), rise))
	t := quo(mul(whole(2), rise), chord)
	return roundUp(mul(whole(4), r, arctanAbove(t)), billionths)
}

// arctanAbove returns a number not below arctan t, for 0 < t <= 1. Where the series is slow,
// towards 1, it takes arctan t = π/4 - arctan((1-t)/(1+t)).
func arctanAbove(t *big.Rat) *big.Rat {
	if t.Cmp(part(2, 5)) <= 0 {
		_, above := arctanSeries(t)
		return above
	}
	below, _ := arctanSeries(quo(sub(whole(1), t), add(whole(1), t)))
	return sub(quo(piAbove, whole(4)), below)
}

// arctanSeries returns two neighbouring partial sums of t - t³/3 + t⁵/5 - … about arctan t.
func arctanSeries(t *big.Rat) (below, above *big.Rat) {
	square := mul(t, t)
	term, sum := t, new(big.Rat)
	for k := int64(1); ; k += 4 {
		above = add(sum, quo(term, whole(k)))
		term = mul(term, square)
		below = sub(above, quo(term, whole(k+2)))
		term = mul(term, square)
		if sub(above, below).Cmp(part(1, 1_000_000_000_000)) < 0 { // an arc gains far less than 1e-9 in
			return below, above
		}
		sum = below
	}
}
