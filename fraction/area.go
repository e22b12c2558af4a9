package fraction

import "math/big"

// Area is an exact area: a rational number of square inches. The zero value is zero. What is said
// of [Length] about values, == and overflow holds for an Area too.
type Area value

// Add returns a+b.
func (a Area) Add(b Area) Area { return Area(add(value(a), value(b))) }

// Sub returns a-b.
func (a Area) Sub(b Area) Area { return Area(sub(value(a), value(b))) }

// Neg returns -a. It never overflows.
func (a Area) Neg() Area { return Area(value(a).neg()) }

// Scale returns r times a.
func (a Area) Scale(r Ratio) Area { return Area(mul(value(a), value(r))) }

// Over returns the width of a rectangle of area a and height b. It panics with a
// *[ZeroDivisorError] if b is 0.
func (a Area) Over(b Length) Length { return Length(div(value(a), value(b))) }

// Compare returns -1, 0 or +1 as a is smaller than, equal to or greater than b. It never overflows.
func (a Area) Compare(b Area) int { return compare(value(a), value(b)) }

// Sign returns -1, 0 or +1 as a is negative, zero or positive.
func (a Area) Sign() int { return value(a).sign() }

// IsZero reports whether a is zero.
func (a Area) IsZero() bool { return a == Area{} }

// SquareFeet returns a in square feet, exactly.
func (a Area) SquareFeet() Ratio { return Ratio(div(value(a), value{144, 0})) }

// SquareMetres returns a in square metres, exactly. One square inch is 6.4516 cm² exactly.
func (a Area) SquareMetres() Ratio { return Ratio(mul(value(a), squareMetre)) }

// squareMetre is the square inch in square metres: 6.4516 cm2 is 0.00064516 m2 = 16129/25000000 (16
// CFR 500.19(a)).
var squareMetre = value{16129, 25_000_000 - 1}

// Rat returns a as a new number of the standard library, in square inches.
func (a Area) Rat() *big.Rat { return value(a).rat() }

// Float64 returns the float64 nearest to a in square inches, for drawing and printing only: it is
// not exact.
func (a Area) Float64() float64 { return value(a).float64() }
