package fraction

import "math/big"

// Ratio is an exact pure number: a weight, a count, a cost, a length in other units. The zero value
// is zero. What is said of [Length] about values, == and overflow holds for a Ratio too.
type Ratio value

// NewRatio returns num/den. It panics with a *[ZeroDivisorError] if den is 0.
func NewRatio(num, den int64) Ratio { return Ratio(quotient(num, den)) }

// Add returns a+b.
func (a Ratio) Add(b Ratio) Ratio { return Ratio(add(value(a), value(b))) }

// Sub returns a-b.
func (a Ratio) Sub(b Ratio) Ratio { return Ratio(sub(value(a), value(b))) }

// Mul returns a*b.
func (a Ratio) Mul(b Ratio) Ratio { return Ratio(mul(value(a), value(b))) }

// Div returns a/b. It panics with a *[ZeroDivisorError] if b is 0.
func (a Ratio) Div(b Ratio) Ratio { return Ratio(div(value(a), value(b))) }

// Neg returns -a. It never overflows.
func (a Ratio) Neg() Ratio { return Ratio(value(a).neg()) }

// Abs returns the distance of a from zero. It never overflows.
func (a Ratio) Abs() Ratio { return Ratio(value(a).abs()) }

// Compare returns -1, 0 or +1 as a is less than, equal to or greater than b. It never overflows.
func (a Ratio) Compare(b Ratio) int { return compare(value(a), value(b)) }

// Less reports whether a is less than b. It never overflows.
func (a Ratio) Less(b Ratio) bool { return compare(value(a), value(b)) < 0 }

// Sign returns -1, 0 or +1 as a is negative, zero or positive.
func (a Ratio) Sign() int { return value(a).sign() }

// IsZero reports whether a is zero.
func (a Ratio) IsZero() bool { return a == Ratio{} }

// Num returns the numerator of a in lowest terms, with the sign.
func (a Ratio) Num() int64 { return a.num }

// Den returns the denominator of a in lowest terms, at least 1.
func (a Ratio) Den() int64 { return value(a).den() }

// Floor returns the greatest whole number that is not above a. It never overflows.
func (a Ratio) Floor() int64 {
	q, _ := divMod(value(a), value{1, 0})
	return q
}

// Rat returns a as a new number of the standard library.
func (a Ratio) Rat() *big.Rat { return value(a).rat() }

// Float64 returns the float64 nearest to a, for drawing and printing only: it is not exact.
func (a Ratio) Float64() float64 { return value(a).float64() }
