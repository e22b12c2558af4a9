package fraction

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// The bounds of what [Parse] and [ParseRatio] accept. They leave arithmetic its head-room: within
// them the sum of any two lengths fits (58 bits), and a sum of many does as long as their
// denominators have factors in common, as those of tapes have.
const (
	// MaxInput is the greatest size of a length in inches (some 1.5 miles), and of a ratio.
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
	tooGreat        = "beyond 100,000"
	tooGreatLength  = "beyond 100,000 inches"
	tooFine         = "too fine: in lowest terms the denominator is above 1,000,000"
	tooFineLength   = "too fine: in inches and lowest terms the denominator is above 1,000,000"
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
	v, err := parseLength(s, u)
	if err == nil {
		err = bounded(v, s, tooGreatLength, tooFineLength, lengthsAccepted)
	}
	if err != nil {
		return Length{}, err
	}
	return Length(v), nil
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
// [Parse] without a unit, and besides the exponents of JSON numbers, as in "2.5e-1". It fails as
// Parse does and has the same bounds.
func ParseRatio(s string) (Ratio, error) {
	v, err := parseNumber(s)
	if err == nil {
		err = bounded(v, s, tooGreat, tooFine, numbersAccepted)
	}
	if err != nil {
		return Ratio{}, err
	}
	return Ratio(v), nil
}

// bounded refuses what was read from s and is beyond [MaxInput] or finer than [MaxDenominator].
func bounded(v value, s, great, fine, accepted string) error {
	switch {
	case compare(v.abs(), value{MaxInput, 0}) > 0:
		return &ParseError{s, "", great, accepted}
	case v.denMinus1 >= MaxDenominator:
		return &ParseError{s, "", fine, accepted}
	}
	return nil
}

func parseLength(s string, u Unit) (value, error) {
	r := reader{text: s}
	v, ok := r.length(u)
	if !ok {
		return value{}, r.failure(lengthsAccepted)
	}
	return v, nil
}

func parseNumber(s string) (value, error) {
	r := reader{text: s}
	r.spaces()
	negative := r.sign()
	v, ok := r.number()
	if ok {
		v, ok = r.exponent(v)
	}
	r.spaces()
	if !ok || !r.end() {
		return value{}, r.failure(numbersAccepted)
	}
	if negative {
		v = v.neg()
	}
	return v, nil
}

// reader walks through a text. Its methods read one part and step over it, or say in reason what is
// wrong and stay where the fault is.
type reader struct {
	text   string
	at     int
	reason string
}

func (r *reader) failure(accepted string) error {
	return &ParseError{r.text, r.text[r.at:], r.reason, accepted}
}

func (r *reader) fail(reason string) bool {
	if r.reason == "" {
		r.reason = reason
	}
	return false
}

func (r *reader) length(u Unit) (v value, ok bool) {
	r.spaces()
	negative := r.sign()
	if v, ok = r.number(); !ok {
		return v, false
	}
	r.spaces()
	m, ok := r.measure()
	if !ok {
		return v, false
	}
	if m == bare {
		v, ok = product(v, u.size())
	} else {
		v, ok = product(v, m.size())
	}
	if !ok {
		return v, r.fail(tooLong)
	}
	r.spaces()
	if m == footMark && r.at < len(r.text) {
		if v, ok = r.inches(v); !ok {
			return v, false
		}
	}
	if !r.end() {
		return v, false
	}
	if negative {
		v = v.neg()
	}
	return v, true
}

// inches reads what follows the feet.
func (r *reader) inches(feet value) (value, bool) {
	if feet.denMinus1 != 0 || feet.num%12 != 0 {
		return feet, r.fail("feet are whole where inches follow")
	}
	if r.take('-') {
		r.spaces()
	}
	start := r.at
	v, ok := r.number()
	if !ok {
		return v, false
	}
	if compare(v, foot) >= 0 {
		r.at = start
		return v, r.fail("inches after feet are less than 12")
	}
	r.spaces()
	start = r.at
	m, ok := r.measure()
	if !ok {
		return v, false
	}
	if m != inchMark && m != bare {
		r.at = start
		return v, r.fail("only inches follow feet")
	}
	r.spaces()
	if v, ok = sum(feet, v); !ok {
		return v, r.fail(tooLong)
	}
	return v, true
}

// spaces steps over blanks, tabs and the spaces that typesetting puts before a unit.
func (r *reader) spaces() {
	for {
		switch r.next() {
		case ' ', '\t', '\u00a0', '\u2009', '\u202f':
			r.step()
		default:
			return
		}
	}
}

func (r *reader) next() rune {
	if r.at == len(r.text) {
		return -1
	}
	if c := r.text[r.at]; c < utf8.RuneSelf {
		return rune(c)
	}
	c, _ := utf8.DecodeRuneInString(r.text[r.at:])
	return c
}

func (r *reader) step() {
	_, size := utf8.DecodeRuneInString(r.text[r.at:])
	r.at += size
}

func (r *reader) take(c rune) bool {
	if r.next() != c {
		return false
	}
	r.step()
	return true
}

func (r *reader) end() bool { return r.at == len(r.text) || r.fail("unexpected text") }

// measure is a unit as it stands behind a number.
type measure int

const (
	bare measure = iota // none
	inchMark
	footMark
	millimetreMark
	centimetreMark
)

func (m measure) size() value {
	return [...]value{inchMark: {1, 0}, footMark: foot, millimetreMark: millimetre, centimetreMark: centimetre}[m]
}

// measure reads a mark or a word, if there is one.
func (r *reader) measure() (measure, bool) {
	switch r.next() {
	case '"', '″', '”', '“':
		r.step()
		return inchMark, true
	case '\'', '′', '’', '‘':
		r.step()
		switch r.next() {
		case '\'', '′', '’', '‘':
			r.step()
			return inchMark, true
		}
		return footMark, true
	}
	start := r.at
	for r.at < len(r.text) && 'a' <= r.text[r.at]|0x20 && r.text[r.at]|0x20 <= 'z' {
		r.at++
	}
	if r.at == start {
		return bare, true
	}
	for _, w := range words {
		if strings.EqualFold(w.word, r.text[start:r.at]) {
			if w.stop {
				r.take('.')
			}
			return w.measure, true
		}
	}
	r.at = start
	return bare, r.fail("unknown unit, which is in, ft, mm or cm")
}

var words = [...]struct {
	word    string
	measure measure
	stop    bool // may be written with a full stop
}{
	{"in", inchMark, true}, {"inch", inchMark, false}, {"inches", inchMark, false},
	{"ft", footMark, true}, {"foot", footMark, false}, {"feet", footMark, false},
	{"mm", millimetreMark, false}, {"millimetre", millimetreMark, false}, {"millimetres", millimetreMark, false},
	{"millimeter", millimetreMark, false}, {"millimeters", millimetreMark, false},
	{"cm", centimetreMark, false}, {"centimetre", centimetreMark, false}, {"centimetres", centimetreMark, false},
	{"centimeter", centimetreMark, false}, {"centimeters", centimetreMark, false},
}
