package finish

import (
	"errors"
	"math/big"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/fraction/money"
)

// Unit is the unit of a figure, such as "ft2" and "nails"; counted things are plural, but after 1.
type Unit uint8

// The units.
const (
	NoUnit Unit = iota // of a factor or a share
	UnitInch
	UnitMillimetre
	UnitFoot
	UnitMetre
	UnitSquareInch
	UnitSquareMillimetre
	UnitSquareFoot
	UnitSquareMetre
	UnitQuart // US liquid
	UnitLitre
	UnitFluidOunce // US
	UnitMillilitre
	UnitFootPerGallon // square feet per US gallon
	UnitMetrePerLitre // square metres per litre
	UnitSheet         // from here on counted things
	UnitBoard
	UnitPiece
	UnitExtender
	UnitNail
	UnitScrew
	UnitCoat
	UnitRepeat // of the pattern
	UnitCrossing
	UnitDot
	UnitLine
)

var units = enum.Of[Unit]("", "in", "mm", "ft", "m", "in2", "mm2", "ft2", "m2", "qt", "L", "fl oz", "mL", "ft2/gal", "m2/L",
	"sheets", "boards", "pieces", "extenders", "nails", "screws", "coats", "repeats", "crossings", "dots", "lines")

// String returns the word of the unit, or its number in brackets where it has none.
func (u Unit) String() string { return units.String(u) }

// MarshalText writes the word of the unit, and fails where it has none.
func (u Unit) MarshalText() ([]byte, error) { return units.Marshal(u) }

// UnmarshalText reads the word of a unit, of a counted thing in the singular too.
func (u *Unit) UnmarshalText(text []byte) error {
	err := units.Unmarshal(text, u)
	if err != nil && units.Unmarshal([]byte(string(text)+"s"), u) == nil {
		return nil
	}
	return err
}

// of returns the word of the unit after this number.
func (u Unit) of(n Decimal) string {
	if u >= UnitSheet && n.Decimal.Equal(decimal.NewFromInt(1)) {
		return strings.TrimSuffix(u.String(), "s")
	}
	return u.String()
}

// cubicInch is 2.54³ cubic centimetres.
var cubicInch = part(16387064, 1000000)

// scales are the exact sizes of the units in inches, square and cubic inches (16 CFR 500.19 prints
// 1 in = 2.54 cm and the US gallon of 231 cubic inches), and the step to which a quantity is
// rounded up.
var scales = map[string]struct{ size, step *big.Rat }{
	"in":      {whole(1), part(1, 64)},
	"mm":      {part(10, 254), part(1, 100)},
	"ft":      {whole(12), part(1, 100)},
	"m":       {part(10000, 254), part(1, 100)},
	"in2":     {whole(1), part(1, 10000)},
	"mm2":     {part(100, 64516), part(1, 10)},
	"ft2":     {whole(144), part(1, 100)},
	"m2":      {part(25000000, 16129), part(1, 100)},
	"fl oz":   {part(231, 128), part(1, 10)},
	"pt":      {part(231, 8), nil},
	"qt":      {part(231, 4), part(1, 100)},
	"gal":     {whole(231), nil},
	"mL":      {quo(whole(1), cubicInch), whole(1)},
	"L":       {quo(whole(1000), cubicInch), part(1, 100)},
	"ft2/gal": {part(144, 231), nil},
	"m2/L":    {part(254, 10), nil},
	"repeats": {whole(1), part(1, 10)},
}

// Decimal is an exact decimal number, a JSON string whatever the decimal package is set to.
type Decimal struct{ decimal.Decimal }

// MarshalJSON writes the number in quotes.
func (d Decimal) MarshalJSON() ([]byte, error) { return []byte(`"` + d.String() + `"`), nil }

// UnmarshalJSON reads what MarshalJSON writes, up to 30 digits on each side of the point.
func (d *Decimal) UnmarshalJSON(data []byte) error {
	var a money.Amount
	if err := a.UnmarshalJSON(data); err != nil {
		return err
	}
	if !a.Known() {
		return errors.New("want a number")
	}
	d.Decimal, _ = a.Decimal()
	return nil
}

// Figure is a number with its unit. Its text is "0.71 qt" or, without a unit, "0.1".
type Figure struct {
	Value Decimal
	Unit  Unit
}

// String returns the number and the word of its unit.
func (f Figure) String() string {
	return strings.TrimSpace(f.Value.String() + " " + f.Unit.of(f.Value))
}

// MarshalText writes the figure as String does, and fails where its unit is none.
func (f Figure) MarshalText() ([]byte, error) {
	_, err := f.Unit.MarshalText()
	return []byte(f.String()), err
}

// UnmarshalText reads what MarshalText writes.
func (f *Figure) UnmarshalText(text []byte) error {
	number, unit, _ := strings.Cut(string(text), " ")
	var read Figure
	if err := errors.Join(read.Value.UnmarshalJSON([]byte(`"`+number+`"`)), read.Unit.UnmarshalText([]byte(unit))); err != nil {
		return err
	}
	*f = read
	return nil
}

// up returns x in the unit, rounded up to its step (counted things go by ones), so that what is
// read is never too little.
func up(x *big.Rat, u Unit) Figure {
	scale, ok := scales[u.String()]
	if !ok {
		scale.size, scale.step = whole(1), whole(1)
	}
	steps := new(big.Rat).SetInt(ceiling(quo(x, mul(scale.size, scale.step))))
	return near(mul(steps, scale.step), 6, u) // exact: no step has more than six places
}

// down returns x in the unit, rounded down to its step: what is left is never overstated.
func down(x *big.Rat, u Unit) Figure {
	f := up(x, u)
	if scale, ok := scales[u.String()]; ok && mul(f.Value.Rat(), scale.size).Cmp(x) > 0 {
		f.Value = Decimal{f.Value.Sub(decimal.NewFromBigRat(scale.step, 6))}
	}
	return f
}

// apportioned returns the parts of a sum in the unit, rounded so that they add up to the sum as it is rounded up: for volumes of
// sealant, of which each rounded up by itself would make too much.
func apportioned(parts []*big.Rat, u Unit) (all []Figure) {
	scale, sum, steps := scales[u.String()], new(big.Rat), []*big.Rat{}
	for _, x := range parts {
		steps = append(steps, quo(x, mul(scale.size, scale.step)))
		sum = add(sum, steps[len(steps)-1])
	}
	for _, n := range fraction.Apportion(steps, ceiling(sum)) {
		all = append(all, near(mul(new(big.Rat).SetInt(n), scale.step), 6, u))
	}
	return all
}

// plus and times return the sum of two figures of a unit and the product with a number, as a reader makes them
// of what is written.
func (f Figure) plus(g Figure) Figure { return Figure{Decimal{f.Value.Add(g.Value.Decimal)}, f.Unit} }
func (f Figure) times(x *big.Rat) Figure {
	return Figure{Decimal{f.Value.Mul(decimal.NewFromBigRat(x, 6))}, f.Unit} // no factor has more than six places
}

// near returns x, which is in the unit already, rounded to the nearest in the given decimal place.
func near(x *big.Rat, places int32, u Unit) Figure {
	return Figure{Decimal{decimal.NewFromBigRat(x, places)}, u}
}

// counted returns a number of things.
func counted(n int64, u Unit) Figure { return Figure{Decimal{decimal.NewFromInt(n)}, u} }

// unit returns the one of two units that holds in the job.
func (s settings) unit(inch, metric Unit) Unit { return of(s.Units != fraction.Inch, inch, metric) }

// The units of an area, a long length, a volume of paint and one of sealant or adhesive.
func (s settings) area() Unit { return s.unit(UnitSquareFoot, UnitSquareMetre) }
func (s settings) run() Unit  { return s.unit(UnitFoot, UnitMetre) }
func (s settings) can() Unit  { return s.unit(UnitQuart, UnitLitre) }
func (s settings) tube() Unit { return s.unit(UnitFluidOunce, UnitMillilitre) }

// small returns a short length, such as that of a nail.
func (s settings) small(x *big.Rat) Figure { return up(x, s.unit(UnitInch, UnitMillimetre)) }

// Terms of a short length, a long one and a number of things.
func (s settings) short(k TermKind, x *big.Rat) Term { return Term{Kind: k, Value: s.small(x)} }
func (s settings) long(k TermKind, x *big.Rat) Term  { return Term{Kind: k, Value: up(x, s.run())} }
func number(k TermKind, n int64, u Unit) Term        { return Term{Kind: k, Value: counted(n, u)} }
