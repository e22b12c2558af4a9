package fraction_test

import (
	"math"

	"example.com/groovewright/fraction"
	"pgregory.net/rapid"
)

// tapedLengths draws a length as a tape gives it: 0 to 40 ft, mostly on sixteenths of an inch, at
// times on other binary marks, on whole or half millimetres, or with decimals.
func tapedLengths() *rapid.Generator[fraction.Length] {
	return betweenLengths(fraction.Length{}, fraction.Inches(480))
}

// betweenLengths draws a taped length in [low, high], both ends included often. low is not above
// high.
func betweenLengths(low, high fraction.Length) *rapid.Generator[fraction.Length] {
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

// positiveLengths draws a taped length above 0 and at most high, which is at least 1/16.
func positiveLengths(high fraction.Length) *rapid.Generator[fraction.Length] {
	return betweenLengths(fraction.Of(1, 16), high)
}

// anyLengths draws any length that there is, with weight on awkward ones: 0, the greatest and the
// next to it, powers of two and their neighbours, common denominators.
func anyLengths() *rapid.Generator[fraction.Length] {
	return rapid.Custom(func(t *rapid.T) fraction.Length {
		num := wholeNumbers().Draw(t, "numerator")
		den := wholeNumbers().Filter(func(n int64) bool { return n > 0 }).Draw(t, "denominator")
		return fraction.Of(num, den)
	})
}

// wholeNumbers draws a whole number in [-math.MaxInt64, math.MaxInt64], with weight on awkward
// ones.
func wholeNumbers() *rapid.Generator[int64] {
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
