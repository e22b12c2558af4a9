package fraction_test

import (
	"math"
	"math/big"
	"testing"

	"example.com/groovewright/fraction"
	"pgregory.net/rapid"
)

// The oracle is math/big.Rat throughout: it has no bounds.

// fits reports whether the package promises to hold x.
func fits(x *big.Rat) bool {
	limit := big.NewInt(math.MaxInt64)
	return x.Num().CmpAbs(limit) <= 0 && x.Denom().Cmp(limit) <= 0
}

// number is any of the exact types.
type number interface{ Rat() *big.Rat }

// equals checks that got computes want, or panics with an overflow if, and only if, want does not
// fit.
func equals[N number](t *rapid.T, what string, want *big.Rat, got func() N) {
	t.Helper()
	var n N
	err := func() (err error) {
		defer fraction.Catch(&err)
		n = got()
		return nil
	}()
	switch {
	case err != nil && fits(want):
		t.Fatalf("%s: %v, want %v", what, err, want)
	case err == nil && !fits(want):
		t.Fatalf("%s = %v, want an overflow: exactly %v", what, n.Rat(), want)
	case err == nil && n.Rat().Cmp(want) != 0:
		t.Fatalf("%s = %v, want %v", what, n.Rat(), want)
	}
}

func two(t *rapid.T) (a, b fraction.Length) {
	g := rapid.OneOf(anyLengths(), tapedLengths())
	return g.Draw(t, "a"), g.Draw(t, "b")
}

func addEqualsBigRat(t *rapid.T) {
	a, b := two(t)
	equals(t, "a+b", new(big.Rat).Add(a.Rat(), b.Rat()), func() fraction.Length { return a.Add(b) })
}

func subEqualsBigRat(t *rapid.T) {
	a, b := two(t)
	equals(t, "a-b", new(big.Rat).Sub(a.Rat(), b.Rat()), func() fraction.Length { return a.Sub(b) })
}

func TestAddEqualsBigRat(t *testing.T) { rapid.Check(t, addEqualsBigRat) }

func TestSubEqualsBigRat(t *testing.T) { rapid.Check(t, subEqualsBigRat) }

func timesEqualsBigRat(t *rapid.T) {
	a, b := two(t)
	want := new(big.Rat).Mul(a.Rat(), b.Rat())
	equals(t, "a*b", want, func() fraction.Area { return a.Times(b) })
	equals(t, "a scaled by b", want, func() fraction.Length { return a.Scale(ratioOf(b)) })
	equals(t, "the product of ratios", want, func() fraction.Ratio { return ratioOf(a).Mul(ratioOf(b)) })
}

func TestTimesEqualsBigRat(t *testing.T) { rapid.Check(t, timesEqualsBigRat) }

func TestOverEqualsBigRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := two(t)
		if b.IsZero() {
			wantZeroDivisor(t, func() { a.Over(b) })
			wantZeroDivisor(t, func() { ratioOf(a).Div(ratioOf(b)) })
			return
		}
		want := new(big.Rat).Quo(a.Rat(), b.Rat())
		equals(t, "a/b", want, func() fraction.Ratio { return a.Over(b) })
		equals(t, "the quotient of ratios", want, func() fraction.Ratio { return ratioOf(a).Div(ratioOf(b)) })
	})
}

func TestMulAndDivByWholeNumbersEqualBigRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, _ := two(t)
		n := rapid.OneOf(wholeNumbers(), rapid.Just[int64](math.MinInt64)).Draw(t, "n")
		whole := new(big.Rat).SetInt64(n)
		equals(t, "a*n", new(big.Rat).Mul(a.Rat(), whole), func() fraction.Length { return a.Mul(n) })
		if n == 0 {
			wantZeroDivisor(t, func() { a.Div(n) })
			return
		}
		equals(t, "a/n", new(big.Rat).Quo(a.Rat(), whole), func() fraction.Length { return a.Div(n) })
	})
}

func TestOfEqualsBigRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		any := rapid.OneOf(wholeNumbers(), rapid.Just[int64](math.MinInt64))
		num, den := any.Draw(t, "num"), any.Draw(t, "den")
		if den == 0 {
			wantZeroDivisor(t, func() { fraction.Of(num, den) })
			wantZeroDivisor(t, func() { fraction.Millimetres(num, den) })
			return
		}
		want := big.NewRat(1, 1).SetFrac(big.NewInt(num), big.NewInt(den))
		equals(t, "Of", want, func() fraction.Length { return fraction.Of(num, den) })
		equals(t, "NewRatio", want, func() fraction.Ratio { return fraction.NewRatio(num, den) })
		equals(t, "Inches", new(big.Rat).SetInt64(num), func() fraction.Length { return fraction.Inches(num) })
		inches := new(big.Rat).Quo(want, big.NewRat(254, 10)) // 1 in = 25.4 mm: 16 CFR 500.19(a)
		equals(t, "Millimetres", inches, func() fraction.Length { return fraction.Millimetres(num, den) })
	})
}

func compareEqualsBigRat(t *rapid.T) {
	a, b := two(t)
	if rapid.Bool().Draw(t, "the same") {
		b = a
	}
	want := a.Rat().Cmp(b.Rat())
	if got := a.Compare(b); got != want {
		t.Fatalf("(%v).Compare(%v) = %d, want %d", a, b, got, want)
	}
	if got := ratioOf(a).Compare(ratioOf(b)); got != want {
		t.Fatalf("ratios: (%v).Compare(%v) = %d, want %d", a, b, got, want)
	}
	if a.Less(b) != (want < 0) || ratioOf(a).Less(ratioOf(b)) != (want < 0) {
		t.Fatalf("(%v).Less(%v) = %t, want %t", a, b, a.Less(b), want < 0)
	}
	if (a == b) != (want == 0) {
		t.Fatalf("%v == %v is %t", a, b, a == b)
	}
	if lesser, greater := fraction.Min(a, b), fraction.Max(a, b); greater.Less(lesser) || lesser != a && lesser != b || greater != a && greater != b {
		t.Fatalf("Min(%v, %v) = %v, Max = %v", a, b, lesser, greater)
	}
	if a.Sign() != a.Rat().Sign() || a.IsZero() != (a.Sign() == 0) {
		t.Fatalf("(%v).Sign() = %d", a, a.Sign())
	}
}

func TestCompareEqualsBigRat(t *testing.T) { rapid.Check(t, compareEqualsBigRat) }

func TestNegAndAbsNeverOverflow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, _ := two(t)
		equals(t, "-a", new(big.Rat).Neg(a.Rat()), a.Neg)
		equals(t, "|a|", new(big.Rat).Abs(a.Rat()), a.Abs)
		if a.Neg().Neg() != a {
			t.Fatalf("-(-a) = %v, want %v", a.Neg().Neg(), a)
		}
	})
}

func TestValuesAreInLowestTerms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := two(t)
		for _, op := range []func() fraction.Length{
			func() fraction.Length { return a },
			func() fraction.Length { return a.Add(b) },
			func() fraction.Length { return a.Sub(b) },
			func() fraction.Length { return a.Scale(ratioOf(b)) },
			func() fraction.Length { return a.Mul(12) },
			func() fraction.Length { return a.Div(-12) },
			func() fraction.Length { return a.Mod(b) },
		} {
			var err error
			func() {
				defer fraction.Catch(&err)
				v := op()
				if n, d := v.Num(), v.Den(); d < 1 || new(big.Int).GCD(nil, nil, new(big.Int).Abs(big.NewInt(n)), big.NewInt(d)).Int64() != 1 {
					t.Fatalf("%d/%d is not in lowest terms", n, d)
				}
			}()
		}
	})
}

func TestAreasEqualBigRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, y := two(t)
		a, b := areaOf(x), areaOf(y)
		equals(t, "a+b", new(big.Rat).Add(a.Rat(), b.Rat()), func() fraction.Area { return a.Add(b) })
		equals(t, "a-b", new(big.Rat).Sub(a.Rat(), b.Rat()), func() fraction.Area { return a.Sub(b) })
		equals(t, "-a", new(big.Rat).Neg(a.Rat()), a.Neg)
		equals(t, "a scaled", new(big.Rat).Mul(a.Rat(), b.Rat()), func() fraction.Area { return a.Scale(ratioOf(y)) })
		equals(t, "square feet", new(big.Rat).Quo(a.Rat(), big.NewRat(144, 1)), a.SquareFeet)
		equals(t, "square metres", new(big.Rat).Mul(a.Rat(), big.NewRat(64516, 100_000_000)), a.SquareMetres)
		if a.Compare(b) != a.Rat().Cmp(b.Rat()) || a.Sign() != a.Rat().Sign() || a.IsZero() != (a.Sign() == 0) {
			t.Fatalf("(%v).Compare(%v) = %d", a, b, a.Compare(b))
		}
		if y.IsZero() {
			wantZeroDivisor(t, func() { a.Over(y) })
			return
		}
		equals(t, "a/y", new(big.Rat).Quo(a.Rat(), y.Rat()), func() fraction.Length { return a.Over(y) })
	})
}

func TestRatiosEqualBigRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, y := two(t)
		a, b := ratioOf(x), ratioOf(y)
		equals(t, "a+b", new(big.Rat).Add(a.Rat(), b.Rat()), func() fraction.Ratio { return a.Add(b) })
		equals(t, "a-b", new(big.Rat).Sub(a.Rat(), b.Rat()), func() fraction.Ratio { return a.Sub(b) })
		equals(t, "-a", new(big.Rat).Neg(a.Rat()), a.Neg)
		equals(t, "|a|", new(big.Rat).Abs(a.Rat()), a.Abs)
		floor := new(big.Int).Div(a.Rat().Num(), a.Rat().Denom()) // Euclidean, and the denominator is positive
		if got := a.Floor(); got != floor.Int64() {
			t.Fatalf("(%v).Floor() = %d, want %v", a, got, floor)
		}
	})
}

// The everyday path and the wide one meet at 32 bits: all pairs of numbers about there.
func TestPairsWhereThePathsMeet(t *testing.T) {
	var numbers []fraction.Length
	for _, num := range []int64{0, 1, 1<<31 - 1, 1 << 31, 1<<31 + 1, 1<<32 - 1, 1 << 32, math.MaxInt64} {
		for _, den := range []int64{1, 2, 127, 1<<31 - 1, 1 << 31, 1<<31 + 1, 1 << 32, math.MaxInt64} {
			numbers = append(numbers, fraction.Of(num, den), fraction.Of(-num, den))
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.SampledFrom(numbers).Draw(t, "a")
		for _, b := range numbers {
			x, y := a.Rat(), b.Rat()
			equals(t, "a+b", new(big.Rat).Add(x, y), func() fraction.Length { return a.Add(b) })
			equals(t, "a-b", new(big.Rat).Sub(x, y), func() fraction.Length { return a.Sub(b) })
			equals(t, "a*b", new(big.Rat).Mul(x, y), func() fraction.Area { return a.Times(b) })
			equals(t, "a*whole", new(big.Rat).Mul(x, new(big.Rat).SetInt64(b.Num())), func() fraction.Length { return a.Mul(b.Num()) })
			if a.Compare(b) != x.Cmp(y) {
				t.Fatalf("(%v).Compare(%v) = %d", a, b, a.Compare(b))
			}
			if b.IsZero() {
				continue
			}
			equals(t, "a/whole", new(big.Rat).Quo(x, new(big.Rat).SetInt64(b.Num())), func() fraction.Length { return a.Div(b.Num()) })
			_, r := floorDivision(x, y)
			equals(t, "a mod b", r, func() fraction.Length { return a.Mod(b) })
		}
	})
}

func TestFloat64IsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, _ := two(t)
		if rapid.Bool().Draw(t, "beyond 53 bits") { // where a division of two rounded numbers would round twice
			a = fraction.Of(1<<53+rapid.Int64Range(1, 1000).Draw(t, "num"), rapid.Int64Range(1, 99).Draw(t, "den"))
		}
		if want, _ := a.Rat().Float64(); a.Float64() != want {
			t.Fatalf("(%v).Float64() = %v, want %v", a, a.Float64(), want)
		}
	})
}

func TestStringReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, _ := two(t)
		var b fraction.Length
		if err := b.UnmarshalText([]byte(a.String())); err != nil || b != a {
			t.Fatalf("UnmarshalText(%q) = %v, %v, want %v", a.String(), b, err, a)
		}
		var r fraction.Ratio
		if err := r.UnmarshalText([]byte(a.String())); err != nil || r != ratioOf(a) {
			t.Fatalf("ratio: UnmarshalText(%q) = %v, %v", a.String(), r, err)
		}
		var area fraction.Area
		if err := area.UnmarshalText([]byte(a.String())); err != nil || area != areaOf(a) {
			t.Fatalf("area: UnmarshalText(%q) = %v, %v", a.String(), area, err)
		}
	})
}

// ratioOf is the number of inches in a.
func ratioOf(a fraction.Length) fraction.Ratio { return a.Over(fraction.Inches(1)) }

// areaOf is a strip of length a and one inch wide.
func areaOf(a fraction.Length) fraction.Area { return a.Times(fraction.Inches(1)) }

func wantZeroDivisor(t *rapid.T, f func()) {
	t.Helper()
	var err error
	func() {
		defer fraction.Catch(&err)
		f()
	}()
	if _, ok := err.(*fraction.ZeroDivisorError); !ok {
		t.Fatalf("err = %v, want a *ZeroDivisorError", err)
	}
}
