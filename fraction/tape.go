package fraction

import (
	"math/bits"
	"strconv"
)

// Tape writes lengths for people, to the marks of the tape that they hold.
//
// A length on a mark, or half way between two, is written as it is: "16 3/16", "16 5/32". Another is
// written as the nearest mark and what the length has more or less: "16 3/16 less 1/128",
// "16 3/16 plus 1/128", unless that is less than a tenth of a mark ([Finest]), which nobody can saw to.
// One below half a mark is written without a mark, as there is none to start from: exactly, or as a difference would be ([FinestError]).
//
// The zero value is a tape in inches without marks: everything on it is exact.
type Tape struct {
	Mark Length // the smallest mark; 0 rounds nothing
	Unit Unit   // what numbers are written in
}

// FinestError is the greatest denominator of a difference that a [Tape] writes as a fraction, which is
// a part of an inch as rules have them. Others are written as decimals, in inches to a thousandth, in millimetres to a tenth or, on a tape
// with finer marks than a millimetre, a hundredth, rounded away from zero.
const FinestError = 128

// Finest is the part of a mark that a [Tape] still writes as a difference, a tenth. A length that is
// nearer to a mark is written as the mark.
func Finest() Ratio { return NewRatio(1, 10) }

// Format writes a in the unit of the tape: "16 3/16" in inches, "412.5 mm", "41.25 cm". Metric
// numbers are decimals where these end, mixed fractions otherwise. A length that is too great to be
// rounded or converted is written exactly, in inches with their sign.
func (t Tape) Format(a Length) (text string) {
	var err error
	defer func() {
		if err != nil {
			text = a.String() + `"`
		}
	}()
	defer Catch(&err)
	var room [128]byte
	mark, over := a.Round(t.Mark, Nearest)
	switch {
	case mark.IsZero() && !t.Mark.IsZero() && t.Unit == Inch && FinestError%a.Den() != 0:
		if mark = t.outward(a.Abs()); a.Sign() < 0 {
			mark = mark.Neg()
		}
		return string(value(mark).appendDecimal(room[:0]))
	case mark.IsZero() || over.Mul(2).Abs() == t.Mark.Abs():
		mark, over = a, Length{}
	}
	if over.Abs().Less(t.Mark.Abs().Scale(Finest())) {
		over = Length{}
	}
	b := t.append(room[:0], value(mark))
	switch more := over.Sign() < 0 == (a.Sign() > 0); { // of -1 1/128 there is more than of -1
	case over.IsZero():
		return string(b)
	case more:
		b = append(b, " plus "...)
	default:
		b = append(b, " less "...)
	}
	switch over = over.Abs(); {
	case t.Unit != Inch:
		b = t.append(b, value(t.outward(over)))
	case FinestError%over.Den() != 0:
		b = value(t.outward(over)).appendDecimal(b)
	default:
		b = value(over).append(b)
	}
	return string(b)
}

// append writes v, which is in inches, in the unit of the tape.
func (t Tape) append(b []byte, v value) []byte {
	if t.Unit == Inch {
		return v.append(b)
	}
	b = div(v, t.Unit.size()).appendDecimal(b)
	b = append(b, ' ')
	return append(b, t.Unit.String()...)
}

// outward rounds a difference up, so that it is never written too small.
func (t Tape) outward(over Length) Length {
	grain := Of(1, 1000)
	switch millimetre := Millimetres(1, 1); {
	case t.Unit != Inch && t.Mark.Abs().Less(millimetre):
		grain = Millimetres(1, 100)
	case t.Unit != Inch:
		grain = Millimetres(1, 10)
	}
	over, _ = over.Round(grain, Up)
	return over
}

// appendDecimal writes v as a decimal if that ends within 18 places, and else as a mixed fraction.
func (v value) appendDecimal(b []byte) []byte {
	d := uint64(v.den())
	twos, fives := bits.TrailingZeros64(d), 0
	d >>= twos
	for ; d%5 == 0; d /= 5 {
		fives++
	}
	if d != 1 || max(twos, fives) > places {
		return v.append(b)
	}
	if v.num < 0 {
		b = append(b, '-')
	}
	n, d := magnitude(v.num), uint64(v.den())
	b = strconv.AppendUint(b, n/d, 10)
	if d == 1 {
		return b
	}
	b = append(b, '.')
	for rest := n % d; rest != 0; {
		digit := times64(rest, 10)
		var q uint64
		q, rest = bits.Div64(digit.hi, digit.lo, d)
		b = append(b, byte('0'+q))
	}
	return b
}
