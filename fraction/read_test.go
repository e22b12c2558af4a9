package fraction_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
)

func TestParse(t *testing.T) {
	const in, mm, cm = fraction.Inch, fraction.Millimetre, fraction.Centimetre
	for _, test := range []struct {
		text string
		unit fraction.Unit
		want string // a mixed fraction of inches
	}{
		// Whole numbers and fractions.
		{"0", in, "0"},
		{"-0", in, "0"},
		{"63", in, "63"},
		{"007", in, "7"}, // leading zeros say nothing
		{"7/8", in, "7/8"},
		{"14/16", in, "7/8"}, {"14/7", in, "2"},
		{"17/16", in, "1 1/16"}, // alone a fraction may exceed one
		{"63 1/4", in, "63 1/4"},
		{"63  1/4", in, "63 1/4"},
		{"63-1/4", in, "63 1/4"}, // a dash that joins, not a minus
		{"-63-1/4", in, "-63 1/4"},
		{"-1/2", in, "-1/2"},
		{"-63 1/4", in, "-63 1/4"}, // the sign is that of the whole
		{" 63 1/4\t", in, "63 1/4"},
		{"5 0/4", in, "5"},
		// Decimals.
		{"63.25", in, "63 1/4"},
		{".5", in, "1/2"},
		{"-.5", in, "-1/2"},
		{"0.015625", in, "1/64"},
		{"63.2500000000000000000000000000000", in, "63 1/4"}, // zeros at the end say nothing
		{"0.050", in, "1/20"},
		// Typeset.
		{"63¼", in, "63 1/4"},
		{"63 ¼", in, "63 1/4"},
		{"63-¼", in, "63 1/4"},
		{"¼", in, "1/4"}, {"½", in, "1/2"}, {"¾", in, "3/4"},
		{"⅛", in, "1/8"}, {"⅜", in, "3/8"}, {"⅝", in, "5/8"}, {"⅞", in, "7/8"},
		{"⅓", in, "1/3"}, {"⅔", in, "2/3"}, {"⅙", in, "1/6"}, {"⅚", in, "5/6"},
		{"⅕", in, "1/5"}, {"⅖", in, "2/5"}, {"⅗", in, "3/5"}, {"⅘", in, "4/5"},
		{"⅐", in, "1/7"}, {"⅑", in, "1/9"}, {"⅒", in, "1/10"},
		{"3⁄8", in, "3/8"},          // U+2044 fraction slash
		{"−63¼", in, "-63 1/4"},     // U+2212 minus
		{"63\u00a0¼", in, "63 1/4"}, // no-break space
		{"63\u2009mm", in, "2 61/127"},
		{"63\u202fmm", in, "2 61/127"},
		// Inches by name.
		{`63 1/4"`, in, "63 1/4"}, {`63 1/4 "`, in, "63 1/4"},
		{"63¼″", in, "63 1/4"}, {"63¼”", in, "63 1/4"}, {"63¼“", in, "63 1/4"},
		{"63''", in, "63"}, {"63′′", in, "63"}, {"63’’", in, "63"},
		{"63in", in, "63"}, {"63 in.", in, "63"}, {"63 inches", in, "63"}, {"1 Inch", in, "1"},
		{`63 1/4"`, mm, "63 1/4"}, // the text's own unit goes before the job's
		// Feet.
		{"5'", in, "60"}, {"5′", in, "60"}, {"5’", in, "60"}, {"5‘", in, "60"},
		{"5 ft", in, "60"}, {"5ft.", in, "60"}, {"1 foot", in, "12"}, {"5 FEET", in, "60"},
		{"5.5'", in, "66"}, {"5 1/2 ft", in, "66"},
		{`5' 3 1/4"`, in, "63 1/4"}, {`5'3 1/4"`, in, "63 1/4"}, {`5'-3 1/4"`, in, "63 1/4"}, {`5' - 3-1/4"`, in, "63 1/4"},
		{"5′3¼″", in, "63 1/4"}, {"5’ 3¼”", in, "63 1/4"}, {"5 ft 3 1/4 in", in, "63 1/4"}, {"5 feet 3.25 inches", in, "63 1/4"},
		{"5' 3 1/4", in, "63 1/4"}, {"5' 3 1/4", mm, "63 1/4"}, // inches after feet, whatever the unit
		{`-5' 3 1/4"`, in, "-63 1/4"}, {`5' 0"`, in, "60"}, {`5' 11 15/16"`, in, "71 15/16"}, {"5'3''", in, "63"},
		// Metric.
		{"1606.55 mm", in, "63 1/4"}, {"1606.55mm", in, "63 1/4"}, {"1606.55", mm, "63 1/4"},
		{"160.6 cm", in, "63 29/127"}, {"160.6", cm, "63 29/127"}, {"25 2/5 mm", in, "1"}, {"-25.4 MM", in, "-1"},
		{"254 millimetres", in, "10"}, {"2.54 centimeter", in, "1"}, {"25.4 millimeter", in, "1"}, {"1 centimetre", in, "50/127"},
		// The bounds.
		{"100000", in, "100000"}, {"-100000", in, "-100000"}, {"2540000", mm, "100000"},
		{"1/1000000", in, "1/1000000"}, {"0.000001", in, "1/1000000"},
	} {
		got, err := fraction.Parse(test.text, test.unit)
		if err != nil || got.String() != test.want {
			t.Errorf("Parse(%q, %v) = %v, %v, want %v", test.text, test.unit, got, err, test.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, test := range []struct{ text, reason, rest string }{
		{"", "no number", ""},
		{" ", "no number", ""},
		{"x", "no number", "x"},
		{"NaN", "no number", "NaN"},
		{"-", "no number", ""},
		{"--5", "no number", "-5"},
		{"- 5", "no number", " 5"}, // a sign stands at its number
		{"+5", "a plus sign is not used", "+5"},
		{"5-", "unexpected text", "-"},
		{"5 - 1/4", "unexpected text", "- 1/4"}, // that is a sum, not a length
		{"5- 1/4", "unexpected text", "- 1/4"},
		{"5 -1/4", "unexpected text", "-1/4"},
		{"5–1/4", "unexpected text", "–1/4"}, // U+2013, an en dash
		{"5 1/-4", "no number", "-4"},
		{"5'-", "no number", ""},
		{"5' -3\" x", "unexpected text", "x"},
		{"5..2", "no digits after the point", ".2"},
		{"5.", "no digits after the point", ""},
		{".", "no digits after the point", ""},
		{"5.2.1", "unexpected text", ".1"},
		{"5.5 1/4", "unexpected text", "1/4"},
		{"5.5/4", "unexpected text", "/4"},
		{"63,25", "a comma; use a point before decimals and nothing between thousands", ",25"},
		{"1,606.55 mm", "a comma; use a point before decimals and nothing between thousands", ",606.55 mm"},
		{"1e3", "unknown unit, which is in, ft, mm or cm", "e3"},
		{"0x10", "unknown unit, which is in, ft, mm or cm", "x10"},
		{"63 1/0", "zero denominator", "0"},
		{"1/0", "zero denominator", "0"},
		{"0/0", "zero denominator", "0"},
		{"1/", "no number", ""},
		{"/4", "no number", "/4"},
		{"1/2/3", "unexpected text", "/3"},
		{"1 /2", "unexpected text", "/2"},
		{"1/ 2", "no number", " 2"},
		{"1//2", "no number", "/2"},
		{"63 5/4", "the fraction after a whole number is less than one", "5/4"},
		{"63 4/4", "the fraction after a whole number is less than one", "4/4"},
		{"63 1", "only a fraction follows a whole number", "1"},
		{"63 1 1/4", "only a fraction follows a whole number", "1 1/4"},
		{"63-1", "only a fraction follows a whole number", "1"},
		{"½½", "unexpected text", "½"},
		{"½ 1/4", "unexpected text", "1/4"},
		{"5½1/4", "unexpected text", "1/4"},
		{"5 m", "unknown unit, which is in, ft, mm or cm", "m"},
		{"5 yd", "unknown unit, which is in, ft, mm or cm", "yd"},
		{"5 zoll", "unknown unit, which is in, ft, mm or cm", "zoll"},
		{"5 apples", "unknown unit, which is in, ft, mm or cm", "apples"},
		{"5 AZ", "unknown unit, which is in, ft, mm or cm", "AZ"},
		{"5 inn", "unknown unit, which is in, ft, mm or cm", "inn"},
		{"5 mm.", "unexpected text", "."},
		{"5 mm 3", "unexpected text", "3"},
		{`5" 3"`, "unexpected text", `3"`},
		{`5' 3' 2"`, "only inches follow feet", `' 2"`},
		{"5' 3 mm", "only inches follow feet", "mm"},
		{"5' 12\"", "inches after feet are less than 12", "12\""},
		{"5' 144/12", "inches after feet are less than 12", "144/12"},
		{"5.5' 3\"", "feet are whole where inches follow", "3\""},
		{"5' x", "no number", "x"},
		{"5'''", "unexpected text", "'"},
		{"６３", "no number", "６３"}, // full-width digits
		{"63\n", "unexpected text", "\n"},
		{"63\x00", "unexpected text", "\x00"},
		{"63\xff", "unexpected text", "\xff"},
		{"100000 1/1000", "beyond 100,000 inches", ""},
		{"-100001", "beyond 100,000 inches", ""},
		{"2540000.1 mm", "beyond 100,000 inches", ""},
		{"9223372036854775807", "beyond 100,000 inches", ""},
		{"9223372036854775808", "too many digits", "9223372036854775808"},
		{"99999999999999999999999", "too many digits", "99999999999999999999999"},
		{"1/9223372036854775808", "too many digits", "9223372036854775808"},
		{"9223372036854775807 ft", "too many digits", ""},
		{"9223372036854775807.5", "too many digits", ""},
		{"9223372036854775807 1/2", "too many digits", ""},
		{"5 99999999999999999999/2", "too many digits", "99999999999999999999/2"},
		{"768614336404564650 ft 0.5 in", "too many digits", ""},
		{"5' 3 yd", "unknown unit, which is in, ft, mm or cm", "yd"},
		{"0.0000000000000000001", "more than 18 decimal places", "1"},
		{"1/1000001", "too fine: in inches and lowest terms the denominator is above 1,000,000", ""},
		{"0.0000001", "too fine: in inches and lowest terms the denominator is above 1,000,000", ""},
		{"0.00001 mm", "too fine: in inches and lowest terms the denominator is above 1,000,000", ""},
	} {
		got, err := fraction.Parse(test.text, fraction.Inch)
		var parse *fraction.ParseError
		if !errors.As(err, &parse) {
			t.Errorf("Parse(%q) = %v, %v, want a *ParseError", test.text, got, err)
			continue
		}
		if got != (fraction.Length{}) {
			t.Errorf("Parse(%q) = %v with an error", test.text, got)
		}
		if parse.Input != test.text || parse.Reason != test.reason || parse.Rest != test.rest {
			t.Errorf("Parse(%q): reason %q at %q, want %q at %q", test.text, parse.Reason, parse.Rest, test.reason, test.rest)
		}
		if !strings.Contains(err.Error(), parse.Reason) || !strings.Contains(err.Error(), "63 1/4") {
			t.Errorf("Parse(%q): %v: says not what is wrong and what would do", test.text, err)
		}
	}
}

func TestParseRatio(t *testing.T) {
	for _, test := range []struct{ text, want string }{
		{"2", "2"}, {"0.125", "1/8"}, {"1/8", "1/8"}, {"1 1/2", "1 1/2"}, {"-½", "-1/2"}, {"24.98", "24 49/50"},
		{"1e3", "1000"}, {"2.5E-1", "1/4"}, {"1e+2", "100"}, {"0e5", "0"}, {"-0", "0"}, {"0.333333", "333333/1000000"},
	} {
		if got, err := fraction.ParseRatio(test.text); err != nil || got.String() != test.want {
			t.Errorf("ParseRatio(%q) = %v, %v, want %v", test.text, got, err, test.want)
		}
	}
	for _, test := range []struct{ text, reason string }{
		{"", "no number"}, {"+2", "a plus sign is not used"}, {"2 in", "unexpected text"}, {"2%", "unexpected text"}, {"1/0", "zero denominator"},
		{"1e", "no number"}, {"1e19", "an exponent beyond 18"}, {"1e-19", "an exponent beyond 18"}, {"1e6", "beyond 100,000"},
		{"100e18", "too many digits"}, {"1e-7", "too fine: in lowest terms the denominator is above 1,000,000"},
	} {
		got, err := fraction.ParseRatio(test.text)
		var parse *fraction.ParseError
		if !errors.As(err, &parse) || parse.Reason != test.reason {
			t.Errorf("ParseRatio(%q) = %v, %v, want the reason %q", test.text, got, err, test.reason)
		}
	}
}

func TestParseUnit(t *testing.T) {
	for text, want := range map[string]fraction.Unit{
		"in": fraction.Inch, "inches": fraction.Inch, "mm": fraction.Millimetre, "Millimetres": fraction.Millimetre, "cm": fraction.Centimetre,
	} {
		if got, err := fraction.ParseUnit(text); err != nil || got != want {
			t.Errorf("ParseUnit(%q) = %v, %v, want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "m", "ft", "in ", " in", "mmm", "5"} {
		if got, err := fraction.ParseUnit(text); err == nil {
			t.Errorf("ParseUnit(%q) = %v, want an error", text, got)
		}
	}
	for _, u := range []fraction.Unit{fraction.Inch, fraction.Millimetre, fraction.Centimetre} {
		text, _ := u.MarshalText()
		var back fraction.Unit
		if err := back.UnmarshalText(text); err != nil || back != u {
			t.Errorf("%v reads back as %v, %v", u, back, err)
		}
	}
}

func TestMustParsePanics(t *testing.T) {
	defer func() {
		if _, ok := recover().(*fraction.ParseError); !ok {
			t.Error("MustParse does not panic with a *ParseError")
		}
	}()
	fraction.MustParse("a foot and a bit")
}
