// Package fraction holds exact lengths, reads and writes them as a tape measure does, and rounds
// them only by name.
//
// A tape gives 63 1/4 in or 1606.55 mm, and both are the same point on the wall. The package keeps
// such a length as a rational number of inches. A millimetre is 5/127 in exactly, since an inch is
// 25.4 mm exactly; so nothing is lost in either unit, sums come out even, and two lengths are equal
// if and only if == says so.
//
// There are three types, and the compiler checks the units:
//
//	Length               inches          Length + Length, Length × whole number, Length × Ratio
//	Area                 square inches   Length × Length; Area / Length is a Length again
//	Ratio                a pure number   Length / Length; weights, costs, feet, square metres
//
// [Parse] reads every notation of the trade, [Length.String] writes one, the mixed fraction in
// lowest terms, and a [Tape] writes for people: to its marks, with what is more or less where that is
// not exact.
//
// # Units and exactness
//
// Lengths are inches, areas square inches. No operation rounds but [Length.Round] and the writing
// of a [Tape]; both say by how much, but for what is below a tenth of a mark. Float64 is for drawing alone.
//
// A value is a numerator and a denominator of 63 bits each, in lowest terms, the denominator stored
// less one, so that the zero value is zero and is ready to use. Values are immutable, 16 bytes, and
// safe for use by several goroutines.
//
// # Guarantees
//
// Each of these is a property test of that name, against math/big.Rat and with awkward numbers
// among the everyday ones:
//
//   - arithmetic is exact, and overflows if and only if the exact result in lowest terms does not
//     fit (TestAddEqualsBigRat and its like);
//   - every value is in lowest terms (TestValuesAreInLowestTerms);
//   - what String writes UnmarshalText reads back (TestStringReadsBack), and what a Tape writes
//     Parse reads back as the mark (TestTapeReadsBack);
//   - a length reads the same in every notation (TestNotationsAgree);
//   - arithmetic and a successful Parse do not allocate (TestNoAllocs).
//
// # Overflow
//
// An operation whose exact result does not fit panics with a *[OverflowError]; it never returns a
// wrong number. Whoever calculates on behalf of others defers [Catch], which makes an error of the
// panic. [Parse] and [ParseRatio] accept only what leaves room for calculation, see [MaxInput] and
// [MaxDenominator]. The results of a Round or DivMod count together: if one of the two does not fit
// there is neither. [Circular] needs the difference of its points to fit too.
//
// # Errors
//
// Texts fail with a *[ParseError], which holds the text, what was left of it at the fault, the
// reason, and what would be accepted. Division by zero panics with a *[ZeroDivisorError], which
// Catch knows as well.
//
// # What it does not do
//
// It knows no other units than inches, feet, millimetres and centimetres, no irrational numbers,
// and nothing of walls.
package fraction
