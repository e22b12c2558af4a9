package finish

import (
	"encoding/json"
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// The texts of a job file keep the spelling of the person who wrote them. They are read when the units of the job are
// known, and a fault is then told with the path of its field.

// Taped is a length as a tape reads, such as "1/4" or "6 mm"; a bare number is in the units of the job.
type Taped string

// Number is a decimal number, a JSON number or a JSON string: 0.1, "24.98". Money, shares and counts are Numbers.
type Number string

// Volume is a number and a unit: gal, qt, pt, fl oz (US liquid), L or mL, such as "1 qt", "10.1 fl oz", "2.5 L".
type Volume string

// Coverage is the surface that a volume of paint covers, such as "350 ft2/gal" or "9 m2/L".
type Coverage string

// Surface is an area, such as "108 ft2" or "20 m2".
type Surface string

// UnmarshalJSON takes any JSON value as it is written. What is no number is refused later, with its path.
func (n *Number) UnmarshalJSON(data []byte) error {
	text := string(data)
	switch {
	case text == "null":
		return nil
	case strings.HasPrefix(text, `"`):
		return json.Unmarshal(data, (*string)(n))
	}
	*n = Number(text)
	return nil
}

// Exact sizes of the units of volume and area. Lengths are in inches, areas in square inches and volumes in cubic inches.
// The litre is 1000 cm3 with 1 in = 2.54 cm, and the US gallon 231 cubic inches; 16 CFR 500.19 prints both.
var (
	gallon       = whole(231)
	quart        = part(231, 4)
	pint         = part(231, 8)
	fluidOunce   = part(231, 128)
	litre        = quo(whole(1000), cubicInch)
	millilitre   = quo(whole(1), cubicInch)
	cubicInch    = part(16387064, 1000000) // in cubic centimetres
	squareFoot   = whole(144)
	squareMetre  = quo(whole(1), part(16129, 25000000))
	foot         = whole(12)
	metre        = quo(whole(1000), part(254, 10))
	footPerGal   = quo(squareFoot, gallon) // square inches per cubic inch
	metrePerLitr = quo(squareMetre, litre)
)

type measure struct {
	name string
	size *big.Rat
}

var (
	volumes   = []measure{{"fl oz", fluidOunce}, {"gal", gallon}, {"qt", quart}, {"pt", pint}, {"mL", millilitre}, {"ml", millilitre}, {"L", litre}, {"l", litre}}
	surfaces  = []measure{{"ft2", squareFoot}, {"m2", squareMetre}}
	coverages = []measure{{"ft2/gal", footPerGal}, {"m2/L", metrePerLitr}, {"m2/l", metrePerLitr}}
)

// reader turns the texts into numbers and gathers what is wrong with them.
type reader struct {
	units  fraction.Unit
	boards bool // the panels are tongue-and-groove boards
	floor  bool // the runs seem to stand on the floor; see [Work.onFloor]
	faults []error
}

// fault records that the value at a path, which is spelt as in a job file, cannot be used.
func (r *reader) fault(path, value, want string) {
	f := &fault.Fault{Want: strings.TrimPrefix(want, "want ")}
	if value != "" {
		f.Value = strconv.Quote(value)
	}
	_ = f.Path.UnmarshalText([]byte(path)) // any text is a path
	r.faults = append(r.faults, f)
}

// length reads a length that is at least low; an empty text is the default.
func (r *reader) length(path string, text, otherwise Taped, low fraction.Length) *big.Rat {
	if text == "" {
		text = otherwise
	}
	l, err := fraction.Parse(string(text), r.units)
	switch {
	case err != nil:
		r.fault(path, string(text), `want a length such as 1/4, 0.25 or 6 mm`)
	case l.Less(low):
		r.fault(path, string(text), "want at least "+fraction.Tape{Unit: r.units}.Format(low))
	default:
		return l.Rat()
	}
	return low.Rat()
}

// positive is the least length where nought makes no sense: a tenth of a mil, thinner than any film.
var positive = fraction.Of(1, 10000)

// number reads a number from low to high; an empty text is the default.
func (r *reader) number(path string, text, otherwise Number, low, high int64) *big.Rat {
	if text == "" {
		text = otherwise
	}
	n, err := fraction.ParseRatio(string(text))
	if err != nil || n.Rat().Cmp(whole(low)) < 0 || n.Rat().Cmp(whole(high)) > 0 {
		r.fault(path, string(text), fmt.Sprintf("want a number from %d to %d", low, high))
		return whole(max(low, 0))
	}
	return n.Rat()
}

// share reads a part of the whole, less than one.
func (r *reader) share(path string, text, otherwise Number) *big.Rat {
	if text == "" {
		text = otherwise
	}
	n, err := fraction.ParseRatio(string(text))
	if err != nil || n.Sign() < 0 || n.Rat().Cmp(whole(1)) >= 0 {
		r.fault(path, string(text), "want a share below 1, such as 0.1 for ten percent")
		return new(big.Rat)
	}
	return n.Rat()
}

// times reads a whole number of coats, lines or pieces, at most 99.
func (r *reader) times(path string, text, otherwise Number) int64 {
	n := r.number(path, text, otherwise, 0, 99)
	if !n.IsInt() {
		r.fault(path, string(text), "want a whole number")
		return 0
	}
	return n.Num().Int64()
}

// pricePlaces is the greatest number of decimal places of a price: fuel and fasteners are priced finer than the cent.
const pricePlaces = 4

// price reads an amount of money, or nil if none is given.
func (r *reader) price(path string, text Number) *decimal.Decimal {
	if text == "" {
		return nil
	}
	d, err := decimal.NewFromString(string(text))
	if err != nil || strings.ContainsAny(string(text), "eE+") || d.IsNegative() || d.Exponent() < -pricePlaces || d.Cmp(decimal.NewFromInt(fraction.MaxInput)) > 0 {
		r.fault(path, string(text), "want a price such as \"24.98\", with at most 4 decimal places")
		return nil
	}
	return &d
}

// quantity reads a positive number with one of the units.
func (r *reader) quantity(path, text, want string, units []measure) *big.Rat {
	for _, u := range units {
		number, ok := strings.CutSuffix(strings.TrimSpace(text), u.name)
		if !ok {
			continue
		}
		if n, err := fraction.ParseRatio(strings.TrimSpace(number)); err == nil && n.Sign() > 0 {
			return mul(n.Rat(), u.size)
		}
	}
	r.fault(path, text, want)
	return whole(1)
}

func (r *reader) volume(path string, text Volume) *big.Rat {
	return r.quantity(path, string(text), "want a volume such as 1 qt, 10.1 fl oz or 2.5 L", volumes)
}

func (r *reader) surface(path string, text Surface) *big.Rat {
	return r.quantity(path, string(text), "want an area such as 108 ft2 or 20 m2", surfaces)
}

func (r *reader) coverage(path string, text Coverage) *big.Rat {
	return r.quantity(path, string(text), "want a coverage such as 350 ft2/gal or 9 m2/L", coverages)
}

// word reads one of a few words; an empty text is the first of them.
func (r *reader) word(path, text string, words ...string) string {
	if text == "" {
		return words[0]
	}
	if !slices.Contains(words, text) {
		r.fault(path, text, "want "+strings.Join(words, ", "))
		return words[0]
	}
	return text
}
