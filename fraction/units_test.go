package fraction_test

import (
	"math/big"
	"testing"

	"example.com/groovewright/fraction"
)

// exactly reads an exact decimal without the bounds of ParseRatio.
func exactly(t *testing.T, text string) fraction.Ratio {
	t.Helper()
	var r fraction.Ratio
	if err := r.UnmarshalText([]byte(text)); err != nil {
		t.Fatal(err)
	}
	return r
}

// Conversion factors that others print. Exact ones must agree exactly, printed ones to their last
// digit, rounded to nearest.
func TestConversionFactors(t *testing.T) {
	const (
		chart   = "16 CFR 500.19(a), conversion chart" // official text; read
		derived = "quotient or product of exact rows of 16 CFR 500.19(a)"
		legal   = "NIST Handbook 44, Appendix C" // from memory; a general web page says the same
	)
	inch, foot := fraction.Inches(1), fraction.Inches(12)
	mm, cm := fraction.Millimetres(1, 1), fraction.Millimetres(10, 1)
	inchInCentimetres := inch.Over(cm)
	cubicInch := inchInCentimetres.Mul(inchInCentimetres).Mul(inchInCentimetres) // in cm3
	gallon := cubicInch.Mul(exactly(t, "231")).Div(exactly(t, "1000"))           // in litres
	for _, test := range []struct {
		name   string
		got    fraction.Ratio
		want   string
		exact  bool
		source string
	}{
		{"inch in mm", inch.Over(mm), "25.4", true, chart},
		{"mil in mm", fraction.Of(1, 1000).Over(mm), "0.0254", true, chart},
		{"foot in mm", foot.Over(mm), "304.8", true, chart},
		{"square inch in cm2", inch.Times(inch).Over(cm).Over(cm), "6.4516", true, chart},
		{"square inch in m2", inch.Times(inch).SquareMetres(), "0.00064516", true, chart},
		{"square foot in cm2", foot.Times(foot).Over(cm).Over(cm), "929.0304", true, chart},
		{"square foot in m2", foot.Times(foot).SquareMetres(), "0.09290304", true, chart},
		{"square foot in square feet", foot.Times(foot).SquareFeet(), "1", true, "by definition"},
		{"square metre in square feet", cm.Mul(100).Times(cm.Mul(100)).SquareFeet(), "10.7639", false, chart},
		{"square metre in square feet, more digits", cm.Mul(100).Times(cm.Mul(100)).SquareFeet(), "10.7639104167", false, derived},
		{"cubic inch in cm3", cubicInch, "16.3871", false, chart},
		{"cubic inch in cm3, all digits", cubicInch, "16.387064", true, derived},
		{"gallon of 231 cubic inches in litres", gallon, "3.78541", false, chart},
		{"gallon of 231 cubic inches in litres, all digits", gallon, "3.785411784", true, derived + "; 231 from " + legal},
		{"quart in litres", gallon.Div(exactly(t, "4")), "0.946353", false, chart},
		{"fluid ounce in millilitres", gallon.Mul(exactly(t, "1000")).Div(exactly(t, "128")), "29.5735", false, chart},
		{"fluid ounce in millilitres, all digits", gallon.Mul(exactly(t, "1000")).Div(exactly(t, "128")), "29.5735295625", true, derived},
		{"litre in cubic inches", exactly(t, "1000").Div(cubicInch), "61.0237440947", false, derived},
		{"area of one gallon one mil thick, square feet", // coverage of paint at 100 % solids
			exactly(t, "231000").Div(exactly(t, "144")), "1604", false, "coatings bulletin on spreading rates"},
	} {
		want := exactly(t, test.want)
		if test.exact {
			if test.got != want {
				t.Errorf("%s = %v, want %v exactly (%s)", test.name, test.got, want, test.source)
			}
			continue
		}
		places := 0
		for i := range test.want {
			if test.want[i] == '.' {
				places = len(test.want) - 1 - i
			}
		}
		if got := test.got.Rat().FloatString(places); got != test.want { // rounds to nearest
			t.Errorf("%s = %s, want %s as printed (%s)", test.name, got, test.want, test.source)
		}
	}
}

// A millimetre is 5/127 in, and the milled marks of a metric tape are exact both ways.
func TestMillimetresAreExact(t *testing.T) {
	for n := int64(-3000); n <= 3000; n++ {
		a := fraction.Millimetres(n, 2)
		want := new(big.Rat).Quo(big.NewRat(n, 2), big.NewRat(254, 10))
		if a.Rat().Cmp(want) != 0 {
			t.Fatalf("Millimetres(%d, 2) = %v, want %v", n, a, want)
		}
		text := fraction.Tape{Unit: fraction.Millimetre}.Format(a)
		if back, err := fraction.Parse(text, fraction.Inch); err != nil || back != a {
			t.Fatalf("%q reads back as %v, %v, want %v", text, back, err, a)
		}
	}
}
