package fraction_test

import (
	"encoding"
	"errors"
	"fmt"
	"math"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"

	"pgregory.net/rapid"
)

// FuzzParse: no text makes Parse panic, what it accepts is within its bounds, and every way of
// writing that down reads back as the same length.
func FuzzParse(once *testing.F) {
	f := fractiontest.F{F: once}
	for _, seed := range []string{
		"63 1/4", "63-1/4", "63.25", `5' 3 1/4"`, "7/8", "-1/2", "1606.55 mm", "160.6 cm", // the notations
		"63¼", "−5′ 3¼″", "3⁄8", "5 ft - 3 in.", // typeset ones
		"1/0", "63 5/4", "1e3", "+5", "5'''", "", ".", "-", // refused
		"100000", "1/1000000", "9223372036854775807 ft", "0.000000000000000001", // at the bounds
	} {
		f.Add(seed, 0)
		f.Add(seed, 1)
	}
	f.Fuzz(func(t *testing.T, text string, unit int) {
		u := fraction.Unit(unit)
		a, err := fraction.Parse(text, u)
		if err != nil {
			if a != (fraction.Length{}) || err.Error() == "" {
				t.Fatalf("Parse(%q) = %v with %q", text, a, err)
			}
			return
		}
		if fraction.Inches(fraction.MaxInput).Less(a.Abs()) || a.Den() > fraction.MaxDenominator {
			t.Fatalf("Parse(%q) = %v, beyond the bounds", text, a)
		}
		for _, written := range []string{
			a.String(), fraction.Tape{Unit: fraction.Millimetre}.Format(a), fraction.Tape{Unit: fraction.Centimetre}.Format(a),
		} {
			if b, err := fraction.Parse(written, fraction.Inch); err != nil || b != a {
				t.Fatalf("Parse(%q) = %v; %q reads back as %v, %v", text, a, written, b, err)
			}
		}
	})
}

// FuzzParseRatio: the same for pure numbers.
func FuzzParseRatio(once *testing.F) {
	f := fractiontest.F{F: once}
	for _, seed := range []string{"2", "0.125", "1/8", "1 1/2", "-½", "2.5e-1", "1E+3", "1e19", "1/0", "2 in"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		a, err := fraction.ParseRatio(text)
		if err != nil {
			return
		}
		if b, err := fraction.ParseRatio(a.String()); err != nil || b != a {
			t.Fatalf("ParseRatio(%q) = %v, which reads back as %v, %v", text, a, b, err)
		}
	})
}

// FuzzArithmetic drives the laws of arithmetic with the fuzzer's bytes.
func FuzzArithmetic(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Fuzz(rapid.MakeFuzz(func(t *rapid.T) {
		rapid.SampledFrom([]func(*rapid.T){
			addEqualsBigRat, subEqualsBigRat, timesEqualsBigRat, modEqualsBigRat, roundEqualsBigRat, compareEqualsBigRat,
		}).Draw(t, "law")(t)
	}))
}

// FuzzWild calls everything with any values: arithmetic may panic with the errors that its doc
// names and with nothing else, and what does no arithmetic not at all.
func FuzzWild(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add(int64(1), int64(2), int64(3), int64(4), uint8(0), "63 1/4")
	f.Add(int64(math.MaxInt64), int64(1), int64(1), int64(math.MaxInt64), uint8(1), "mm")
	f.Add(int64(math.MinInt64), int64(-1), int64(math.MinInt64), int64(math.MinInt64), uint8(2), "-1e-18")
	f.Add(int64(0), int64(0), int64(1<<62-1), int64(1<<31-1), uint8(9), "\xff'")
	f.Fuzz(func(t *testing.T, n, d, m, e int64, small uint8, text string) {
		try := func(f func()) {
			var err error
			defer func() {
				var overflow *fraction.OverflowError
				var divisor *fraction.ZeroDivisorError
				if err != nil && !errors.As(err, &overflow) && !errors.As(err, &divisor) {
					t.Fatal(err)
				}
			}()
			defer fraction.Catch(&err)
			f()
		}
		var a, b fraction.Length
		try(func() { a = fraction.Of(n, d) })
		try(func() { b = fraction.Millimetres(m, e) })
		var r fraction.Ratio
		try(func() { r = fraction.NewRatio(e, n) })
		x, y := fraction.Area{}, fraction.Area{}
		try(func() { x = a.Times(b) })
		try(func() { y = a.Times(a) })
		unit, direction := fraction.Unit(small), fraction.Direction(small)
		for _, f := range []func(){
			func() { a.Add(b) }, func() { a.Sub(b) }, func() { a.Mul(m) }, func() { a.Div(m) }, func() { a.Scale(r) },
			func() { a.Over(b) }, func() { a.Mod(b) }, func() { a.DivMod(b) }, func() { a.Round(b, direction) }, func() { fraction.Circular(a, b, a) },
			func() { x.Add(y) }, func() { x.Sub(y) }, func() { x.Scale(r) }, func() { x.Over(b) }, func() { x.SquareFeet() },
			func() { x.SquareMetres() }, func() { r.Add(r) }, func() { r.Sub(a.Over(b)) }, func() { r.Mul(r) }, func() { r.Div(r) }, func() { fraction.Inches(n) },
			func() { fraction.Must(fraction.Parse("1", unit)) },
		} {
			try(f)
		}
		for _, c := range []int{a.Compare(b), -b.Compare(a), a.Sub(fraction.Length{}).Compare(b), a.Neg().Neg().Compare(b)} {
			if c != a.Rat().Cmp(b.Rat()) {
				t.Fatalf("%v and %v compare as %d", a, b, c)
			}
		}
		a.Abs().Neg().Sign()
		x.Neg().Compare(y)
		r.Abs().Neg().Compare(r)
		_ = r.Floor()
		_, _, _, _ = a.Float64(), x.Float64(), r.Float64(), fraction.Min(a, b).Less(fraction.Max(a, b))
		_ = fraction.Tape{Mark: b, Unit: unit}.Format(a)
		_, _ = fraction.ParseUnit(text)
		_, _ = fraction.Parse(text, unit)
		_, _ = unit.String(), direction.String()
		for _, v := range []interface {
			encoding.TextMarshaler
			fmt.Stringer
		}{a, x, r, unit} {
			written, err := v.MarshalText()
			if err == nil && string(written) != v.String() {
				t.Fatalf("%T writes %q and %q", v, written, v)
			}
		}
		var l fraction.Length
		if err := l.UnmarshalText([]byte(a.String())); err != nil || l != a {
			t.Fatalf("%v reads back as %v, %v", a, l, err)
		}
		_, _, _ = l.UnmarshalText([]byte(text)), y.UnmarshalText([]byte(text)), r.UnmarshalText([]byte(text))
		_ = unit.UnmarshalText([]byte(text))
	})
}
