package fraction

import (
	"cmp"
	"strconv"
	"strings"
	"unicode/utf8"
)

// The bounds of what [Parse] and [ParseRatio] accept. They leave arithmetic its head-room: within
// them the sum of any two lengths fits (58 bits), and a sum of many does as long as their
// denominators have factors in common, as those of tapes have.
const (
	// MaxInput is the greatest size of a length in inches (some 1.6 miles), and of a ratio.
	MaxInput = 100_000
	// MaxDenominator is the greatest denominator in lowest terms of a length in inches, and of a
	// ratio. It admits six decimal places of an inch and four of a millimetre (1/254000 in).
	MaxDenominator = 1_000_000
)

// ParseError says why a text is no length, ratio or unit.
type ParseError struct {
	Input    string // the whole text
	Rest     string // what was not read any more, from the fault on
	Reason   string // what is wrong, such as "zero denominator"
	Accepted string // what would be accepted
}

// Error returns the fault in one line.
func (e *ParseError) Error() string {
	s := strconv.Quote(e.Input) + ": " + e.Reason
	if e.Rest != "" && e.Rest != e.Input {
		s += " at " + strconv.Quote(e.Rest)
	}
	return s + "; write " + e.Accepted
}

const (
	lengthsAccepted = `a length such as 63 1/4, 63-1/4, 63.25, 5' 3 1/4", 7/8, -1/2, 1606.55 mm or 160.6 cm`
	numbersAccepted = `a number such as 2, 0.125, 1/8 or 1 1/2`
	tooLong         = "too many digits"
)

// Parse reads a length as people write it:
//
//	length   = [ "-" ] ( number [ unit ] | feet [ [ "-" ] inches ] )
//	feet     = number foot-mark                  whole feet where inches follow
//	inches   = number [ inch-mark ]              less than 12
//	number   = digits "." digits | "." digits | fraction | digits [ join fraction ]
//	fraction = digits "/" digits | one of ¼ ½ ¾ ⅓ ⅔ ⅕ ⅖ ⅗ ⅘ ⅙ ⅚ ⅐ ⅛ ⅜ ⅝ ⅞ ⅑ ⅒
//	join     = spaces | "-" | nothing before one of the single characters
//	unit     = inch-mark | foot-mark | mm | cm   also spelt out
//
// An inch mark is " or a double prime, curly quote, or two foot marks, or in, inch, inches; a foot
// mark is ' or a prime or curly quote, or ft, foot, feet. The stroke may be the fraction slash
// U+2044, the sign the minus U+2212. Spaces may stand around the whole, before a unit and round the
// dash after feet. The fraction after a whole number is less than one. A bare number is in the unit
// u; inches after feet are inches always.
//
// Parse fails with a *[ParseError] on everything else: a plus sign, a sign inside, a comma, an
// exponent, a point without digits after it, a zero denominator, another unit, and beyond
// [MaxInput], or finer than [MaxDenominator]. It does not allocate unless it fails.
func Parse(s string, u Unit) (Length, error) {
	if v, ok := plain(s); ok {
		if u != Inch {
			v, ok = product(v, u.size())
		}
		if ok && v.denMinus1 < MaxDenominator {
			return Length(v), nil
		}
	}
	v, err := parse(s, true, u)
	v, err = bounded(v, err, s, "beyond 100,000 inches", "too fine: in inches and lowest terms the denominator is above 1,000,000", lengthsAccepted)
	return Length(v), err
}

// MustParse is [Parse] in inches for texts that are known to be right, such as constants and tests;
// it panics where Parse fails.
func MustParse(s string) Length {
	a, err := Parse(s, Inch)
	if err != nil {
		panic(err)
	}
	return a
}

// ParseRatio reads a pure number: "2", "0.125", "1/8", "1 1/2", "-½". It takes the numbers of
// [Parse] without a unit, and also the exponents of JSON numbers, as in "2.5e-1". It fails as
// Parse does and has the same bounds.
func ParseRatio(s string) (Ratio, error) {
	if v, ok := plain(s); ok {
		return Ratio(v), nil
	}
	v, err := parse(s, false, Inch)
	v, err = bounded(v, err, s, "beyond 100,000", "too fine: in lowest terms the denominator is above 1,000,000", numbersAccepted)
	return Ratio(v), err
}

// bounded passes on what was read from s, and refuses it beyond [MaxInput] or finer than
// [MaxDenominator].
func bounded(v value, err error, s, great, fine, accepted string) (value, error) {
	switch {
	case compare(v.abs(), value{MaxInput, 0}) > 0:
		return value{}, &ParseError{s, "", great, accepted}
	case v.denMinus1 >= MaxDenominator:
		return value{}, &ParseError{s, "", fine, accepted}
	}
	return v, err
}

// reader walks through a text. Its methods read one part and step over it, or stop the whole with a
// syntax fault.
type reader struct {
	text string
	at   int
}

// syntax is what a reader panics with where it cannot go on, and parse recovers from.
type syntax struct {
	at     int // where the fault is
	reason string
}

func (r *reader) fail(at int, reason string) { panic(syntax{at, reason}) }

// fits returns v, unless it does not fit.
func (r *reader) fits(v value, ok bool) value {
	if !ok {
		r.fail(r.at, tooLong)
	}
	return v
}

// parse reads a length, a bare number in the unit u, or a pure number.
func parse(s string, length bool, u Unit) (v value, err error) {
	r := reader{text: s}
	defer func() {
		switch fault := recover().(type) {
		case nil:
		case syntax:
			accepted := numbersAccepted
			if length {
				accepted = lengthsAccepted
			}
			v, err = value{}, &ParseError{s, s[fault.at:], fault.reason, accepted}
		default:
			panic(fault)
		}
	}()
	r.spaces()
	if r.next() == '+' {
		r.fail(r.at, "a plus sign is not used")
	}
	negative := r.take('-') || r.take('−')
	v = r.number()
	if length {
		v = r.length(v, u)
	} else {
		v = r.exponent(v)
		r.spaces()
	}
	if r.at < len(s) {
		r.fail(r.at, "unexpected text")
	}
	if negative {
		v = v.neg()
	}
	return v, nil
}

// length reads the unit of the number v, and the inches that may follow feet.
func (r *reader) length(v value, u Unit) value {
	r.spaces()
	size := cmp.Or(r.measure(), u.size())
	v = r.fits(product(v, size))
	r.spaces()
	if size != foot || r.at == len(r.text) {
		return v
	}
	if v.denMinus1 != 0 || v.num%12 != 0 {
		r.fail(r.at, "feet are whole where inches follow")
	}
	if r.take('-') {
		r.spaces()
	}
	start := r.at
	inches := r.number()
	if compare(inches, foot) >= 0 {
		r.fail(start, "inches after feet are less than 12")
	}
	r.spaces()
	start = r.at
	if cmp.Or(r.measure(), inch) != inch {
		r.fail(start, "only inches follow feet")
	}
	r.spaces()
	return r.fits(sum(v, inches))
}

// spaces steps over blanks, tabs and the spaces that typesetting puts before a unit.
func (r *reader) spaces() {
	for r.take(' ') || r.take('\t') || r.take('\u00a0') || r.take('\u2009') || r.take('\u202f') {
	}
}

// next returns the character that is next, or [utf8.RuneError] at the end, as for bytes of none.
func (r *reader) next() rune {
	c, _ := utf8.DecodeRuneInString(r.text[r.at:])
	return c
}

func (r *reader) take(c rune) bool {
	if r.next() != c {
		return false
	}
	r.at += utf8.RuneLen(c)
	return true
}

// mark reads one of the marks.
func (r *reader) mark(marks string) bool {
	c := r.next()
	return strings.ContainsRune(marks, c) && r.take(c)
}

// measure reads a mark or a word of a unit and returns its size, zero where there is none.
func (r *reader) measure() value {
	const footMarks = "'′’‘"
	switch {
	case r.mark("\"″”“"):
		return inch
	case r.mark(footMarks):
		if r.mark(footMarks) {
			return inch
		}
		return foot
	}
	start := r.at
	for r.at < len(r.text) && 'a' <= r.text[r.at]|0x20 && r.text[r.at]|0x20 <= 'z' {
		r.at++
	}
	if r.at == start {
		return value{}
	}
	for _, w := range words {
		if strings.EqualFold(w.word, r.text[start:r.at]) {
			if w.word == "in" || w.word == "ft" {
				r.take('.')
			}
			return w.size
		}
	}
	r.fail(start, "unknown unit, which is in, ft, mm or cm")
	return value{}
}

var words = [...]struct {
	word string
	size value
}{
	{"in", inch}, {"inch", inch}, {"inches", inch}, {"ft", foot}, {"foot", foot}, {"feet", foot},
	{"mm", millimetre}, {"millimetre", millimetre}, {"millimetres", millimetre}, {"millimeter", millimetre}, {"millimeters", millimetre},
	{"cm", centimetre}, {"centimetre", centimetre}, {"centimetres", centimetre}, {"centimeter", centimetre}, {"centimeters", centimetre},
}
