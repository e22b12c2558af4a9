// Package money has the one type for a price that may not be known.
//
// It wraps a decimal and writes itself as a decimal string, such as "24.98". That does not depend
// on the global settings of the decimal package, which any importer may change.
package money

import (
	"errors"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
)

// Amount is an exact amount of money in a currency that is not named, or, as its zero value, one
// that is not known. It must not be compared with ==; use Equal.
type Amount struct {
	value decimal.Decimal
	known bool
}

// mostDigits is how many digits an amount may have on each side of its point.
const mostDigits = 30

// Of returns the amount of a decimal. One of more than 30 digits on either side of its point is no
// money, and not known.
func Of(d decimal.Decimal) Amount {
	e := int(d.Exponent())
	if e < -mostDigits || e > mostDigits || d.NumDigits()+e > mostDigits {
		return Amount{}
	}
	return Amount{value: d, known: true}
}

// MustParse returns the amount that s writes and panics where [Parse] fails. It is for texts that
// stand in code.
func MustParse(s string) Amount {
	a, err := Parse(s)
	if err != nil {
		panic(err)
	}
	return a
}

// ErrSyntax says that a text is no amount of money.
var ErrSyntax = errors.New("not a decimal number of up to nine digits before the point and nine after it, without a sign or a currency")

// Parse reads digits with at most one point, nine digits on each side at the most, such as "24.98".
// It takes no sign and no exponent, and fails with [ErrSyntax].
func Parse(s string) (Amount, error) {
	return parse(s, 9)
}

// parse reads a decimal of up to most digits on each side of the point.
func parse(s string, most int) (Amount, error) {
	whole, part, point := strings.Cut(s, ".")
	if !digits(whole, most) || point && !digits(part, most) {
		return Amount{}, ErrSyntax
	}
	return Of(decimal.RequireFromString(s)), nil
}

// digits reports whether s is one to most decimal digits.
func digits(s string, most int) bool {
	if s == "" || len(s) > most {
		return false
	}
	return !strings.ContainsFunc(s, func(c rune) bool { return c < '0' || c > '9' })
}

// Decimal returns the amount, and false where it is not known.
func (a Amount) Decimal() (decimal.Decimal, bool) { return a.value, a.known }

// Ratio returns the amount as an exact number, 0 where it is not known. It fails with a
// *fraction.OverflowError or a *fraction.ParseError where the number does not fit.
func (a Amount) Ratio() (fraction.Ratio, error) { return fraction.ParseRatio(a.value.String()) }

// Known reports whether there is an amount.
func (a Amount) Known() bool { return a.known }

// IsZero reports whether the amount is not known; it makes the tag omitzero work.
func (a Amount) IsZero() bool { return !a.known }

// Equal reports whether both amounts are the same, or both not known.
func (a Amount) Equal(b Amount) bool { return a.known == b.known && a.value.Equal(b.value) }

// String returns the amount as a decimal number, and nothing where it is not known.
func (a Amount) String() string {
	if !a.known {
		return ""
	}
	return a.value.String()
}

// MarshalJSON writes the amount in quotes, and null where it is not known.
func (a Amount) MarshalJSON() ([]byte, error) {
	if !a.known {
		return []byte("null"), nil
	}
	return []byte(`"` + a.value.String() + `"`), nil
}

// UnmarshalJSON reads what MarshalJSON writes. As sums may be, an amount may be negative here and
// have up to 30 digits on each side of the point.
func (a *Amount) UnmarshalJSON(data []byte) error {
	text := string(data)
	if text == "null" {
		*a = Amount{}
		return nil
	}
	if len(text) < 2 || text[0] != '"' || text[len(text)-1] != '"' {
		return ErrSyntax
	}
	unsigned, negative := strings.CutPrefix(text[1:len(text)-1], "-")
	b, err := parse(unsigned, mostDigits)
	if err != nil {
		return err
	}
	if negative {
		b.value = b.value.Neg()
	}
	*a = b
	return nil
}
