package fraction_test

import (
	"testing"

	"example.com/groovewright/fraction"
	"pgregory.net/rapid"
)

// FuzzParse: no text makes Parse panic, what it accepts is within its bounds, and every way of
// writing that down reads back as the same length.
func FuzzParse(f *testing.F) {
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
func FuzzParseRatio(f *testing.F) {
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
func FuzzArithmetic(f *testing.F) {
	f.Fuzz(rapid.MakeFuzz(func(t *rapid.T) {
		rapid.SampledFrom([]func(*rapid.T){
			addEqualsBigRat, subEqualsBigRat, timesEqualsBigRat, modEqualsBigRat, roundEqualsBigRat, compareEqualsBigRat,
		}).Draw(t, "law")(t)
	}))
}
