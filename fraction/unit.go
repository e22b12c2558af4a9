package fraction

import (
	"strings"

	"example.com/groovewright/fraction/enum"
)

// Unit is a unit of length that a tape is marked in. The zero value is the inch.
type Unit uint8

// The units.
const (
	Inch Unit = iota
	Millimetre
	Centimetre
)

// ParseUnit reads the name of a unit: in, inch, inches, mm, millimetre, millimetres, cm,
// centimetre, centimetres (also spelt -meter). Case does not matter. The error is a *[ParseError].
func ParseUnit(s string) (Unit, error) {
	for _, w := range words {
		for u := range units {
			if strings.EqualFold(w.word, s) && w.size == Unit(u).size() {
				return Unit(u), nil
			}
		}
	}
	return Inch, &ParseError{Input: s, Rest: s, Reason: "unknown unit", Accepted: "in, mm or cm"}
}

var (
	units   = enum.Of[Unit]("in", "mm", "cm")
	plurals = enum.Of[Unit]("inches", "millimeters", "centimeters")
)

// String returns "in", "mm" or "cm".
func (u Unit) String() string { return units.String(u) }

// Plural returns "inches", "millimeters" or "centimeters".
func (u Unit) Plural() string { return plurals.String(u) }

// MarshalText writes [Unit.String], and fails for an unknown unit.
func (u Unit) MarshalText() ([]byte, error) { return units.Marshal(u) }

// UnmarshalText reads what [ParseUnit] reads.
func (u *Unit) UnmarshalText(text []byte) error {
	parsed, err := ParseUnit(string(text))
	if err == nil {
		*u = parsed
	}
	return err
}

// size is one of the unit in inches; an unknown unit counts as the inch.
func (u Unit) size() value {
	if sizes := [...]value{inch, millimetre, centimetre}; int(u) < len(sizes) {
		return sizes[u]
	}
	return inch
}
