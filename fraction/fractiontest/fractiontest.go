// Package fractiontest draws exact lengths for property tests with pgregory.net/rapid.
//
// Each function returns a generator; the same generator serves any test.
package fractiontest

import (
	"flag"
	"math"
	"testing"

	"example.com/groovewright/fraction"
	"pgregory.net/rapid"
)

// Main runs the tests of a package with the same random draws each time. For other draws there is
// the flag -rapid.seed.
func Main(m *testing.M) int {
	flag.Parse()
	if seed := flag.Lookup("rapid.seed"); seed != nil && seed.Value.String() == "0" {
		if err := seed.Value.Set("1"); err != nil {
			panic(err)
		}
	}
	return m.Run()
}

// Taped draws a length as a tape gives it: 0 to 40 ft, mostly on sixteenths of an inch, at times on
// other binary marks, on whole or half millimetres, or with decimals.
func Taped() *rapid.Generator[fraction.Length] {
	return Between(fraction.Length{}, fraction.Inches(480))
}

// Between draws a taped length in [low, high], both ends included often. low is not above high.
func Between(low, high fraction.Length) *rapid.Generator[fraction.Length] {
	marks := []fraction.Length{
		fraction.Of(1, 16), fraction.Of(1, 16), fraction.Of(1, 16), fraction.Of(1, 8), fraction.Of(1, 32), fraction.Of(1, 64),
		fraction.Inches(1), fraction.Millimetres(1, 1), fraction.Millimetres(1, 2), fraction.Of(1, 100), fraction.Of(1, 3),
	}
	return rapid.Custom(func(t *rapid.T) fraction.Length {
		switch rapid.IntRange(0, 15).Draw(t, "end or between") {
		case 0:
			return low
		case 1:
			return high
		}
		mark := rapid.SampledFrom(marks).Draw(t, "mark")
		steps, _ := high.Sub(low).DivMod(mark)
		first, _ := low.Round(mark, fraction.Up)
		a := first.Add(mark.Mul(rapid.Int64Range(0, steps).Draw(t, "marks")))
		return fraction.Max(low, fraction.Min(a, high))
	})
}

// Positive draws a taped length above 0 and at most high, which is at least 1/16.
func Positive(high fraction.Length) *rapid.Generator[fraction.Length] {
	return Between(fraction.Of(1, 16), high)
}

// Any draws any length that there is, with weight on awkward ones: 0, the greatest and the next to
// it, powers of two and their neighbours, common denominators.
func Any() *rapid.Generator[fraction.Length] {
	return rapid.Custom(func(t *rapid.T) fraction.Length {
		num := Whole().Draw(t, "numerator")
		den := Whole().Filter(func(n int64) bool { return n > 0 }).Draw(t, "denominator")
		return fraction.Of(num, den)
	})
}

// Whole draws a whole number in [-math.MaxInt64, math.MaxInt64], with weight on awkward ones.
func Whole() *rapid.Generator[int64] {
	return rapid.Custom(func(t *rapid.T) int64 {
		var n int64
		switch rapid.IntRange(0, 7).Draw(t, "sort of number") {
		case 0:
			n = rapid.SampledFrom([]int64{0, 1, 2, 16, 127, 254, 1 << 31, math.MaxInt64, math.MaxInt64 - 1}).Draw(t, "awkward")
		case 1:
			n = 1<<rapid.IntRange(0, 62).Draw(t, "power of two") + rapid.Int64Range(-1, 1).Draw(t, "beside it")
		case 2, 3:
			n = rapid.Int64Range(0, math.MaxInt64).Draw(t, "any")
		case 4:
			n = rapid.Int64Range(0, 1<<32).Draw(t, "middling")
		default:
			n = rapid.Int64Range(0, 1000).Draw(t, "everyday")
		}
		if rapid.Bool().Draw(t, "negative") {
			return -n
		}
		return n
	})
}
