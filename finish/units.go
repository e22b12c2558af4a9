package finish

import (
	"math/big"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
)

// writer writes quantities in the units of the job. Quantities are rounded up, in the last place written, so that what
// is read is never too little; what is bought is reckoned from the exact number before that.
type writer struct {
	units fraction.Unit
}

func (w writer) metric() bool { return w.units != fraction.Inch }

// text writes x rounded up to so many places, without noughts at the end.
func text(x *big.Rat, places int) string {
	n := ceiling(mul(x, new(big.Rat).SetInt(power(places))))
	return decimal.NewFromBigInt(n, -int32(places)).String()
}

// near writes x rounded to the nearest in the given place, for factors that are shown beside an exact result.
func near(x *big.Rat, places int) string {
	return decimal.NewFromBigRat(x, int32(places)).String()
}

// area is square feet or square metres.
func (w writer) area(x *big.Rat) string { return w.with(x, squareFoot, "ft2", squareMetre, "m2") }

// run is a long length in feet or metres.
func (w writer) run(x *big.Rat) string { return w.with(x, foot, "ft", metre, "m") }

// can is a volume in quarts or litres.
func (w writer) can(x *big.Rat) string { return w.with(x, quart, "qt", litre, "L") }

func (w writer) with(x, inch *big.Rat, inchName string, metric *big.Rat, metricName string) string {
	size, name := inch, inchName
	if w.metric() {
		size, name = metric, metricName
	}
	return text(quo(x, size), 2) + " " + name
}

// tube is a volume in fluid ounces or millilitres.
func (w writer) tube(x *big.Rat) string {
	if w.metric() {
		return text(quo(x, millilitre), 0) + " mL"
	}
	return text(quo(x, fluidOunce), 1) + " fl oz"
}

// section is a small area in square inches or square millimetres.
func (w writer) section(x *big.Rat) string {
	if w.metric() {
		return text(mul(x, part(64516, 100)), 1) + " mm2"
	}
	return text(x, 4) + " in2"
}

// coverage is what a volume covers, rounded to the nearest.
func (w writer) coverage(x *big.Rat) string {
	if w.metric() {
		return near(quo(x, metrePerLitr), 2) + " m2/L"
	}
	return near(quo(x, footPerGal), 1) + " ft2/gal"
}

// inches writes a small length as a mixed fraction of an inch, or in millimetres: the exact number where it
// ends on a 64th or a hundredth, else rounded up to that.
func (w writer) small(x *big.Rat) string {
	if w.metric() {
		return text(mul(x, part(254, 10)), 2) + " mm"
	}
	n := ceiling(mul(x, whole(64)))
	if !n.IsInt64() {
		return text(x, 2) + " in"
	}
	return strings.TrimSpace(fraction.Of(n.Int64(), 64).String()) + " in"
}

// counted writes a number of pieces.
func counted(name string) func(*big.Rat) string {
	return func(x *big.Rat) string { return text(x, 0) + " " + name }
}
