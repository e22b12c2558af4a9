package fraction

import (
	"cmp"
	"math"
	"math/big"
	"math/bits"
)

// value is the one exact rational number behind [Length], [Area] and [Ratio].
//
// It is num/(denMinus1+1), always in lowest terms, with
//
//	-math.MaxInt64 <= num <= math.MaxInt64    (never math.MinInt64: Neg and Abs cannot fail)
//	0 <= denMinus1 < math.MaxInt64            (the denominator fits an int64)
//
// Storing the denominator less one makes the zero value of the struct the number zero, and one
// number has one form, so that == compares numbers. Only an operand that was a whole number may
// have the numerator math.MinInt64, on its way into a product or a quotient.
type value struct{ num, denMinus1 int64 }

// reach bounds the quick path: with every numerator in [-reach, reach) and every denominator at
// most reach, a product of two of them stays within 62 bits and the sum of two such products within
// 63.
const reach = 1 << 31

// small reports whether both numbers are within reach.
func small(a, b value) bool {
	return uint64((a.num+reach)|(b.num+reach))>>32|uint64(a.denMinus1|b.denMinus1)>>31 == 0
}

// dyadic reports whether both numbers are small and both denominators powers of two: a tape's
// marks. A power of two less one is a row of ones, which shares no bit with the power.
func dyadic(a, b value) bool {
	return uint64((a.num+reach)|(b.num+reach))>>32|
		uint64((a.denMinus1|b.denMinus1)>>31|a.denMinus1&(a.denMinus1+1)|b.denMinus1&(b.denMinus1+1)) == 0
}

// reducePow2 takes the common factors of two out of num/den, which is all that lowest terms ask for
// where den is a power of two.
func reducePow2(num, den int64) value {
	const top = 1 << 63 // den is not 0 anyhow; so the compiler sees it, and leaves a case out
	twos := bits.TrailingZeros64(uint64(num|den)|top) & 63
	return value{num >> twos, den>>twos - 1}
}

// fit stores n/d, which is in lowest terms already, and reports whether it fits.
func fit(negative bool, n, d uint64) (value, bool) {
	if n > math.MaxInt64 || d > math.MaxInt64 {
		return value{}, false
	}
	if negative {
		return value{-int64(n), int64(d) - 1}, true
	}
	return value{int64(n), int64(d) - 1}, true
}

// ratio returns num/den in lowest terms, and whether it fits. den is not 0.
func ratio(num, den int64) (value, bool) {
	n, d := magnitude(num), magnitude(den)
	g := gcd(n, d)
	return fit((num < 0) != (den < 0), n/g, d/g)
}

// magnitude is the distance of x from zero, right for math.MinInt64 too.
func magnitude(x int64) uint64 {
	if x < 0 {
		return -uint64(x)
	}
	return uint64(x)
}

// gcd is the greatest common divisor, by Euclid's algorithm down to numbers that stand in the
// table; gcd(0, b) is b.
func gcd(a, b uint64) uint64 {
	for b >= shortcut {
		a, b = b, a%b
	}
	if b == 0 {
		return a
	}
	return uint64(divisors[a%b][b])
}

// shortcut is the size of the table of divisors. It is above 127, the denominator of a millimetre.
const shortcut = 128

// divisors holds the greatest common divisor of each two numbers below shortcut, except for 0 and
// 0. It is filled once, and only read afterwards.
var divisors = func() (table [shortcut][shortcut]uint8) {
	for d := range shortcut {
		for i := 0; d > 0 && i < shortcut; i += d {
			for j := 0; j < shortcut; j += d {
				table[i][j] = uint8(d)
			}
		}
	}
	return table
}()

func (a value) den() int64 { return a.denMinus1 + 1 }

func (a value) neg() value { return value{-a.num, a.denMinus1} }

func (a value) abs() value {
	if a.num < 0 {
		return a.neg()
	}
	return a
}

func (a value) sign() int { return cmp.Compare(a.num, 0) }

// compare is [Length.Compare], where the reason of its form stands.
func compare(a, b value) int { return Length(a).Compare(Length(b)) }

func add(a, b value) value {
	if dyadic(a, b) {
		return reducePow2(a.num*b.den()+b.num*a.den(), a.den()*b.den())
	}
	sum, ok := sum(a, b)
	if !ok {
		overflow("+", a, b)
	}
	return sum
}

func sub(a, b value) value {
	if dyadic(a, b) {
		return reducePow2(a.num*b.den()-b.num*a.den(), a.den()*b.den())
	}
	difference, ok := sum(a, b.neg())
	if !ok {
		overflow("-", a, b)
	}
	return difference
}

// sum is a+b, and whether it fits.
//
// With g the common divisor of the denominators, only a divisor of g can be common to the numerator
// a.num*(db/g)+b.num*(da/g) and the denominator da*db/g. (Henrici; the proof is exercise material
// in Knuth, The Art of Computer Programming, vol. 2, 4.5.1: from memory.)
func sum(a, b value) (value, bool) {
	da, db := uint64(a.den()), uint64(b.den())
	g := da
	if da != db {
		g = gcd(da, db)
	}
	if small(a, b) {
		if g == 1 {
			return value{a.num*int64(db) + b.num*int64(da), int64(da*db) - 1}, true
		}
		da /= g
		t := a.num*int64(db/g) + b.num*int64(da)
		if h := gcd(magnitude(t), g); h != 1 {
			return value{t / int64(h), int64(da*(db/h)) - 1}, true
		}
		return value{t, int64(da*db) - 1}, true
	}
	negative, t := addSigned(a.num < 0, times64(magnitude(a.num), db/g), b.num < 0, times64(magnitude(b.num), da/g))
	h := gcd(t.mod64(g), g)
	if t.hi >= h {
		return value{}, false // the quotient needs more than 64 bits
	}
	n, _ := bits.Div64(t.hi, t.lo, h)
	d := times64(da/g, db/h)
	if d.hi != 0 {
		return value{}, false
	}
	return fit(negative, n, d.lo)
}

func mul(a, b value) value {
	if dyadic(a, b) {
		return reducePow2(a.num*b.num, a.den()*b.den())
	}
	p, ok := product(a, b)
	if !ok {
		overflow("*", a, b)
	}
	return p
}

// product is a*b, and whether it fits. The common factors are taken out first, crosswise, so that
// what is left is in lowest terms.
func product(a, b value) (value, bool) {
	an, bn := magnitude(a.num), magnitude(b.num)
	da, db := uint64(a.den()), uint64(b.den())
	g, h := gcd(an, db), gcd(bn, da)
	if small(a, b) {
		if g != 1 {
			an, db = an/g, db/g
		}
		if h != 1 {
			bn, da = bn/h, da/h
		}
		return fit((a.num < 0) != (b.num < 0), an*bn, da*db)
	}
	n, d := times64(an/g, bn/h), times64(da/h, db/g)
	if n.hi|d.hi != 0 {
		return value{}, false
	}
	return fit((a.num < 0) != (b.num < 0), n.lo, d.lo)
}

func div(a, b value) value {
	if b.num == 0 {
		divideByZero(a)
	}
	inverse := value{b.den(), b.num - 1}
	if b.num < 0 {
		inverse = value{-b.den(), -b.num - 1}
	}
	if dyadic(a, inverse) {
		return reducePow2(a.num*inverse.num, a.den()*inverse.den())
	}
	p, ok := product(a, inverse)
	if !ok {
		overflow("/", a, b)
	}
	return p
}

func (a value) rat() *big.Rat { return big.NewRat(a.num, a.den()) }

func (a value) float64() float64 {
	const exact = 1 << 53 // every whole number up to here is a float64, and one division rounds once
	if -exact <= a.num && a.num <= exact && a.den() <= exact {
		return float64(a.num) / float64(a.den())
	}
	f, _ := a.rat().Float64()
	return f
}
