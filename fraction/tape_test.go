package fraction_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"pgregory.net/rapid"
)

func TestTape(t *testing.T) {
	sixteenths := fraction.Tape{Mark: fraction.Of(1, 16)}
	thirtySeconds := fraction.Tape{Mark: fraction.Of(1, 32)}
	millimetres := fraction.Tape{Mark: fraction.Millimetres(1, 1), Unit: fraction.Millimetre}
	halves := fraction.Tape{Mark: fraction.Millimetres(1, 2), Unit: fraction.Centimetre}
	for _, test := range []struct {
		tape           fraction.Tape
		length, format string
	}{
		{sixteenths, "16 3/16", "16 3/16"},
		{sixteenths, "16 23/128", "16 3/16 less 1/128"},
		{sixteenths, "16 25/128", "16 3/16 plus 1/128"},
		{sixteenths, "16 5/32", "16 5/32"}, // half way: a tape shows it
		{sixteenths, "-16 5/32", "-16 5/32"},
		{sixteenths, "1000 mm", "39 3/8"},               // 39.37007…: less than a tenth of a mark
		{sixteenths, "1001 mm", "39 7/16 less 0.029"},   // 39.40944…: too awkward a fraction
		{sixteenths, "16 31/160", "16 3/16 plus 0.007"}, // a tenth of a mark, 1/160
		{sixteenths, "0", "0"},
		{sixteenths, "1/64", "1/64"},
		{sixteenths, "-1/64", "-1/64"},
		{sixteenths, "3/1016", "0.003"}, // half of what 70 mm have more than 2 3/4
		{sixteenths, "-3/1016", "-0.003"},
		{sixteenths, "12", "12"},
		{sixteenths, "11 63/64", "12 less 1/64"}, // the mark carries over to the foot
		{sixteenths, "-63 1/4", "-63 1/4"},
		{sixteenths, "-16 23/128", "-16 3/16 less 1/128"}, // less far to the left
		{sixteenths, "101 mm", "4 less 0.024"},            // by 3/127
		{sixteenths, "3 1/4", "3 1/4"},
		{thirtySeconds, "16 5/32", "16 5/32"},
		{millimetres, "412 mm", "412 mm"},
		{millimetres, "412.5 mm", "412.5 mm"},
		{millimetres, "16 3/16", "411 mm plus 0.2 mm"}, // 411.1625 mm; differences are rounded away from zero
		{millimetres, "594.1 mm", "594 mm plus 0.1 mm"},
		{millimetres, "593.95 mm", "594 mm"}, // half a tenth of a mark: no saw cuts it
		{halves, "16 3/16", "41.1 cm plus 0.017 cm"},
		{halves, "412.5 mm", "41.25 cm"},
		{halves, "-412.5 mm", "-41.25 cm"},
		{fraction.Tape{}, "16 23/128", "16 23/128"}, // the zero value rounds nothing
		{fraction.Tape{Unit: fraction.Millimetre}, "1/3", "8 7/15 mm"},
		{fraction.Tape{Unit: fraction.Millimetre}, "1/262144", "0.000096893310546875 mm"}, // 18 places, and one more below
		{fraction.Tape{Unit: fraction.Millimetre}, "1/524288", "127/2621440 mm"},
		{fraction.Tape{Unit: fraction.Centimetre}, "0", "0 cm"},
		{fraction.Tape{Mark: fraction.Of(-1, 16)}, "16 23/128", "16 3/16 less 1/128"},
	} {
		a := fraction.MustParse(test.length)
		if got := test.tape.Format(a); got != test.format {
			t.Errorf("%+v.Format(%v) = %q, want %q", test.tape, a, got, test.format)
		}
	}
}

func drawTape(t *rapid.T) fraction.Tape {
	return fraction.Tape{
		Mark: rapid.SampledFrom([]fraction.Length{
			{}, fraction.Of(1, 8), fraction.Of(1, 16), fraction.Of(1, 32), fraction.Of(1, 64), fraction.Of(1, 100),
			fraction.Millimetres(1, 1), fraction.Millimetres(1, 2),
		}).Draw(t, "mark"),
		Unit: rapid.SampledFrom([]fraction.Unit{fraction.Inch, fraction.Millimetre, fraction.Centimetre}).Draw(t, "unit"),
	}
}

// What a tape writes can be typed in again, and is the nearest mark or, as it is, half way between two or short of the first;
// the difference beside it is the way to the length, exactly where it is written as a fraction of an inch and never too small
// elsewhere. Without one the length is on the mark, or less than a tenth of a mark from it. One short of the first mark that is no
// fraction as rules have them is a decimal, never too small.
func TestTapeReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tape := drawTape(t)
		a := tapedLengths().Draw(t, "length")
		if rapid.Bool().Draw(t, "negative") {
			a = a.Neg()
		}
		mark, over := a.Round(tape.Mark, fraction.Nearest)
		awkward := mark.IsZero() && !tape.Mark.IsZero() && tape.Unit == fraction.Inch && fraction.FinestError%a.Den() != 0
		if over.Mul(2).Abs() == tape.Mark || mark.IsZero() {
			mark, over = a, fraction.Length{}
		}
		if over.Mul(10).Abs().Less(tape.Mark) {
			over = fraction.Length{}
		}
		text := tape.Format(a)
		number, more, plus := strings.Cut(text, " plus ")
		number, less, _ := strings.Cut(number, " less ")
		if strings.ContainsAny(text, "~()") || (more+less == "") != over.IsZero() {
			t.Fatalf("%q marks a rounded length wrongly; it is off by %v", text, over)
		}
		if got, fault := fraction.Parse(number, fraction.Inch); fault != nil || got != mark && !(awkward && !got.Abs().Less(a.Abs()) && got.Sub(a).Abs().Less(fraction.Of(1, 1000))) {
			t.Fatalf("%q reads back as %v, %v, want %v", text, got, fault, mark)
		}
		if over.IsZero() {
			return
		}
		shown, fault := fraction.Parse(more+less, fraction.Inch)
		if fault != nil {
			t.Fatalf("difference in %q: %v", text, fault)
		}
		beyond := shown.Sub(over.Abs())
		grain, exact := fraction.Of(1, 1000), fraction.FinestError%over.Den() == 0
		if tape.Unit != fraction.Inch {
			grain, exact = fraction.Millimetres(1, 100), false
			if !tape.Mark.Less(fraction.Millimetres(1, 1)) {
				grain = fraction.Millimetres(1, 10)
			}
		}
		if plus != mark.Abs().Less(a.Abs()) || beyond.Sign() < 0 || !beyond.Less(grain) || exact && !beyond.IsZero() {
			t.Fatalf("%q: the difference is %v, shown as %v", text, over, shown)
		}
	})
}

// A length reads the same in every notation.
func TestNotationsAgree(t *testing.T) {
	characters := map[string]string{"1/2": "½", "1/4": "¼", "3/4": "¾", "1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞"}
	rapid.Check(t, func(t *rapid.T) {
		want := fraction.Of(rapid.Int64Range(0, 480*16).Draw(t, "sixteenths"), 16)
		mixed := want.String()
		texts := []string{mixed, mixed + ` "`, mixed + " in", strings.ReplaceAll(mixed, " ", "-"), strings.ReplaceAll(mixed, "/", "⁄")}
		texts = append(texts, want.Rat().FloatString(4))                                         // sixteenths end after four places
		texts = append(texts, want.Over(fraction.Millimetres(1, 1)).Rat().FloatString(5)+" mm")  // 25.4/16 = 1.5875
		texts = append(texts, want.Over(fraction.Millimetres(10, 1)).Rat().FloatString(5)+" cm") // 0.15875
		feet, inches := want.DivMod(fraction.Inches(12))
		texts = append(texts, want.Over(fraction.Inches(12)).String()+" ft") // twelfths of sixteenths
		for _, form := range []string{`%d' %v"`, "%d′ %v″", "%d ft - %v inches"} {
			texts = append(texts, fmt.Sprintf(form, feet, inches))
		}
		for fraction, character := range characters {
			if whole, ok := strings.CutSuffix(mixed, fraction); ok && (whole == "" || strings.HasSuffix(whole, " ")) {
				texts = append(texts, whole+character, strings.TrimSpace(whole)+character)
			}
		}
		for _, text := range texts {
			if got, err := fraction.Parse(text, fraction.Inch); err != nil || got != want {
				t.Fatalf("Parse(%q) = %v, %v, want %v", text, got, err, want)
			}
			if got, err := fraction.Parse("-"+text, fraction.Inch); err != nil || got != want.Neg() {
				t.Fatalf("Parse(%q) = %v, %v, want %v", "-"+text, got, err, want.Neg())
			}
			if got, err := fraction.Parse("−"+text, fraction.Inch); err != nil || got != want.Neg() {
				t.Fatalf("Parse(%q) = %v, %v, want %v", "−"+text, got, err, want.Neg())
			}
		}
	})
}

// A length that is too great for the tape's marks or unit is written as it is.
func TestTapeWritesTheGreatestLengths(t *testing.T) {
	great := fraction.Of(math.MaxInt64, 3)
	for _, tape := range []fraction.Tape{{Mark: fraction.Of(1, 16)}, {Mark: fraction.Millimetres(1, 1), Unit: fraction.Millimetre}, {Unit: fraction.Centimetre}} {
		if got, want := tape.Format(great), `3074457345618258602 1/3"`; got != want {
			t.Errorf("%+v writes %s, want %s", tape, got, want)
		}
	}
}
