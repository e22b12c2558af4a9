package fraction

import (
	"math/big"
	"math/bits"

	"example.com/groovewright/fraction/enum"
)

// Length is an exact length: a rational number of inches, positive or negative.
//
// Values are immutable and always in lowest terms, so == compares lengths and a Length can be the
// key of a map. The zero value is zero inches. Arithmetic is exact and does not allocate; it panics
// with a *[OverflowError] if, and only if, the exact result in lowest terms has a numerator or
// denominator beyond math.MaxInt64. A length that [Parse] accepted is far from that.
type Length value

// Inches returns n inches.
func Inches(n int64) Length { return Of(n, 1) }

// Of returns num/den inches. It panics with a *[ZeroDivisorError] if den is 0.
func Of(num, den int64) Length { return Length(quotient(num, den)) }

// Millimetres returns num/den millimetres. One inch is 25.4 mm exactly. It panics with a
// *[ZeroDivisorError] if den is 0.
func Millimetres(num, den int64) Length { return Length(mul(quotient(num, den), millimetre)) }

var (
	millimetre = value{5, 127 - 1}  // 1 in = 25.4 mm exactly: 16 CFR 500.19(a)
	centimetre = value{50, 127 - 1} // ten of them
	foot       = value{12, 0}
	inch       = value{1, 0}
)

func quotient(num, den int64) value {
	if den == 0 {
		divideByZero(value{num, 0})
	}
	v, ok := ratio(num, den)
	if !ok {
		overflow("/", value{num, 0}, value{den, 0})
	}
	return v
}

// Add returns a+b.
func (a Length) Add(b Length) Length { return Length(add(value(a), value(b))) }

// Sub returns a-b.
func (a Length) Sub(b Length) Length { return Length(sub(value(a), value(b))) }

// Neg returns -a. It never overflows.
func (a Length) Neg() Length { return Length(value(a).neg()) }

// Abs returns the distance of a from zero. It never overflows.
func (a Length) Abs() Length { return Length(value(a).abs()) }

// Mul returns n times a.
func (a Length) Mul(n int64) Length { return Length(mul(value(a), value{n, 0})) }

// Div returns the n-th part of a. It panics with a *[ZeroDivisorError] if n is 0.
func (a Length) Div(n int64) Length { return Length(div(value(a), value{n, 0})) }

// Times returns the area of a rectangle a by b.
func (a Length) Times(b Length) Area { return Area(mul(value(a), value(b))) }

// Scale returns r times a.
func (a Length) Scale(r Ratio) Length { return Length(mul(value(a), value(r))) }

// Over returns how many times b goes into a, exactly. It panics with a *[ZeroDivisorError] if b is
// 0.
func (a Length) Over(b Length) Ratio { return Ratio(div(value(a), value(b))) }

// Mod returns what is left of a after taking away whole multiples of p: the r with 0 <= r < |p|
// such that a-r is a whole multiple of p. It panics with a *[ZeroDivisorError] if p is 0.
func (a Length) Mod(p Length) Length { return Length(mod(value(a), value(p))) }

// DivMod returns the whole number q and the length r, 0 <= r < |p|, with a = q*p + r. It panics
// with a *[ZeroDivisorError] if p is 0.
func (a Length) DivMod(p Length) (q int64, r Length) {
	q, rest := divMod(value(a), value(p))
	return q, Length(rest)
}

// Compare returns -1, 0 or +1 as a is shorter than, equal to or longer than b. It never overflows,
// and fits [slices.SortFunc].
func (a Length) Compare(b Length) int {
	// The sign of a.num*b.den - b.num*a.den in 128 bits. A negative num is 2^64 too large as an
	// unsigned factor, so the other denominator is taken off the upper half again. The compiler
	// inlines the method in just this form.
	if a == b {
		return 0
	}
	left, low := bits.Mul64(uint64(a.num), uint64(b.denMinus1+1))
	right, lower := bits.Mul64(uint64(b.num), uint64(a.denMinus1+1))
	_, low = bits.Sub64(low, lower, 0)
	return int((int64(left-right-low)-a.num>>63&(b.denMinus1+1)+b.num>>63&(a.denMinus1+1))>>63) | 1
}

// Less reports whether a is shorter than b. It never overflows.
func (a Length) Less(b Length) bool { return a.Compare(b) < 0 }

// Sign returns -1, 0 or +1 as a is negative, zero or positive.
func (a Length) Sign() int { return value(a).sign() }

// IsZero reports whether a is zero.
func (a Length) IsZero() bool { return a == Length{} }

// Num returns the numerator of a in lowest terms, with the sign.
func (a Length) Num() int64 { return a.num }

// Den returns the denominator of a in lowest terms, at least 1.
func (a Length) Den() int64 { return value(a).den() }

// Rat returns a as a new number of the standard library, in inches.
func (a Length) Rat() *big.Rat { return value(a).rat() }

// Float64 returns the float64 nearest to a in inches, for drawing only: it is not exact.
func (a Length) Float64() float64 { return value(a).float64() }

// Min returns the shortest of the lengths.
func Min(a Length, b ...Length) Length {
	for _, other := range b {
		if other.Less(a) {
			a = other
		}
	}
	return a
}

// Max returns the longest of the lengths.
func Max(a Length, b ...Length) Length {
	for _, other := range b {
		if a.Less(other) {
			a = other
		}
	}
	return a
}

// Circular returns the shorter way between a and b round a circle of circumference p: by how much
// two repeats of a pattern with the pitch p miss each other. It is at most half of p. It panics
// with a *[ZeroDivisorError] if p is 0.
func Circular(a, b, p Length) Length {
	one := a.Sub(b).Mod(p)
	return Min(one, p.Abs().Sub(one))
}

// Direction says which multiple of a mark [Length.Round] chooses.
type Direction uint8

// The directions of rounding.
const (
	Nearest Direction = iota // the nearest multiple; the upper one where two are equally near
	Down                     // the greatest multiple that is not above, towards minus infinity
	Up                       // the least multiple that is not below, towards plus infinity
)

var directions = enum.Of[Direction]("nearest", "down", "up")

// String returns "nearest", "down" or "up".
func (d Direction) String() string { return directions.String(d) }

// Round returns a multiple of mark beside a, and by how much it lies above a: err is rounded-a
// exactly, in (-mark, mark). Multiples count from zero, so that marks rounded one by one from a
// fixed reference never add up their errors. A mark of zero means no rounding: Round returns a and
// 0. The sign of mark does not matter.
func (a Length) Round(mark Length, d Direction) (rounded, err Length) {
	r, over := round(value(a), value(mark), d)
	return Length(r), Length(over)
}
