package fraction

import "strconv"

// append writes v as a mixed fraction in lowest terms: "16 3/16", "-1/2", "0". A leading minus sign
// stands for the whole.
func (v value) append(b []byte) []byte {
	if v.num < 0 {
		b = append(b, '-')
	}
	n, d := magnitude(v.num), uint64(v.den())
	if whole := n / d; whole != 0 || d == 1 {
		b = strconv.AppendUint(b, whole, 10)
		if d == 1 {
			return b
		}
		b = append(b, ' ')
	}
	b = strconv.AppendUint(b, n%d, 10)
	b = append(b, '/')
	return strconv.AppendUint(b, d, 10)
}

func (v value) string() string {
	var room [64]byte // three numbers of at most 19 digits, a sign, a space and a stroke: 60 bytes
	return string(v.append(room[:0]))
}

// String writes a in inches as a mixed fraction in lowest terms, such as "16 3/16", "-1/2" or "0".
// It is exact, and [Length.UnmarshalText] reads it back.
func (a Length) String() string { return value(a).string() }

// MarshalText writes [Length.String]. The error is always nil. In JSON a length is therefore a
// string; a number, which passes through binary floating point in most programs, is refused.
func (a Length) MarshalText() ([]byte, error) { return value(a).append(nil), nil }

// UnmarshalText reads every notation of [Parse], a bare number in inches. Since it must read back
// whatever MarshalText wrote, it accepts every value that fits, also beyond the bounds that Parse
// sets for people's input.
func (a *Length) UnmarshalText(text []byte) error { return (*value)(a).read(text, true) }

// String writes a in square inches as a mixed fraction in lowest terms, exactly.
func (a Area) String() string { return value(a).string() }

// MarshalText writes [Area.String]. The error is always nil.
func (a Area) MarshalText() ([]byte, error) { return value(a).append(nil), nil }

// UnmarshalText reads a pure number as [ParseRatio] does, without its bounds, as square inches.
func (a *Area) UnmarshalText(text []byte) error { return (*value)(a).read(text, false) }

// String writes a as a mixed fraction in lowest terms, such as "1 1/2", "-1/8" or "0", exactly.
func (a Ratio) String() string { return value(a).string() }

// MarshalText writes [Ratio.String]. The error is always nil.
func (a Ratio) MarshalText() ([]byte, error) { return value(a).append(nil), nil }

// UnmarshalText reads every notation of [ParseRatio], without its bounds.
func (a *Ratio) UnmarshalText(text []byte) error { return (*value)(a).read(text, false) }

// read sets v to the length, in inches, or the pure number that text writes.
func (v *value) read(text []byte, length bool) error {
	got, err := parse(string(text), length, Inch)
	if err == nil {
		*v = got
	}
	return err
}
