package finish

import (
	"encoding"
	"encoding/json"
	"fmt"
	"math/big"
	"strconv"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/money"
)

// The texts of a job file keep the spelling of the person who wrote them. They are read when the
// units of the job are known.

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

type measure struct {
	name string
	size *big.Rat
}

var (
	volumes   = []measure{{"fl oz", fluidOunce}, {"gal", gallon}, {"qt", quart}, {"pt", pint}, {"mL", millilitre}, {"ml", millilitre}, {"L", litre}, {"l", litre}}
	surfaces  = []measure{{"ft2", squareFoot}, {"m2", squareMetre}}
	coverages = []measure{{"ft2/gal", footPerGallon}, {"m2/L", metrePerLitre}, {"m2/l", metrePerLitre}}
)

// reader turns the texts into numbers and gathers what is wrong with them.
type reader struct {
	units  fraction.Unit
	boards bool // the panels are tongue-and-groove boards
	floor  bool // the runs seem to stand on the floor; see [Work.onFloor]
	faults []error
}

// readFor returns a reader of the materials of this work.
func readFor(w Work) *reader {
	return &reader{units: w.Units, boards: w.Profile.Boards, floor: w.onFloor()}
}

// fault records that the value at a path of Go fields cannot be used.
func (r *reader) fault(path, value, want string) {
	f := &fault.Fault{Path: steps(path), Want: want}
	if value != "" {
		f.Value = strconv.Quote(value)
	}
	r.faults = append(r.faults, f)
}

// steps parses a path such as Paint.Top.Containers[1].Size.
func steps(path string) (p fault.Path) {
	_ = p.UnmarshalText([]byte(path)) // any text is a path
	return p
}

// known returns v, or the zero value and a fault where v is none of its enumeration.
func known[T encoding.TextMarshaler](r *reader, path string, v T) (zero T) {
	if _, err := v.MarshalText(); err != nil {
		for _, f := range fault.All(err) {
			r.faults = append(r.faults, &fault.Fault{Path: steps(path), Value: f.Value, Want: f.Want})
		}
		return zero
	}
	return v
}

// positive is the least length where nothing makes no sense: a tenth of a mil, thinner than any film.
var positive = fraction.Of(1, 10000)

// length reads a length that is at least low; an empty text is the default.
func (r *reader) length(path string, text, otherwise Taped, low fraction.Length) *big.Rat {
	if text == "" {
		text = otherwise
	}
	l, err := fraction.Parse(string(text), r.units)
	switch {
	case err != nil:
		r.fault(path, string(text), "a length such as 1/4, 0.25 or 6 mm")
	case l.Less(low):
		r.fault(path, string(text), "at least "+fraction.Tape{Unit: r.units}.Format(low))
	default:
		return l.Rat()
	}
	return low.Rat()
}

// lengths reads the lengths in which nails or screws are sold.
func (r *reader) lengths(path string, given, otherwise []Taped) []*big.Rat {
	if len(given) == 0 {
		given = otherwise
	}
	var all []*big.Rat
	for i, text := range given {
		path := fmt.Sprintf("%s[%d]", path, i)
		before := len(r.faults)
		l := r.length(path, text, text, positive)
		if len(r.faults) == before && i > 0 && l.Cmp(all[i-1]) <= 0 {
			r.fault(path, string(text), "the lengths rising")
		}
		all = append(all, l)
	}
	return all
}

// number reads a number from low to high; an empty text is the default.
func (r *reader) number(path string, text, otherwise Number, low, high int64) *big.Rat {
	if text == "" {
		text = otherwise
	}
	n, err := fraction.ParseRatio(string(text))
	if err != nil || n.Rat().Cmp(whole(low)) < 0 || n.Rat().Cmp(whole(high)) > 0 {
		r.fault(path, string(text), fmt.Sprintf("a number from %d to %d", low, high))
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
		r.fault(path, string(text), "a share below 1, such as 0.1 for ten percent")
		return new(big.Rat)
	}
	return n.Rat()
}

// times reads a whole number of coats, lines or pieces, at most 99.
func (r *reader) times(path string, text, otherwise Number) int64 {
	n := r.number(path, text, otherwise, 0, 99)
	if !n.IsInt() {
		r.fault(path, string(text), "a whole number")
		return 0
	}
	return n.Num().Int64()
}

// pricePlaces is the greatest number of decimal places of a price: fuel and fasteners are priced finer than the cent.
const pricePlaces = 4

// price reads an amount of money; one that is not given is not known.
func (r *reader) price(path string, text Number) money.Amount {
	if text == "" {
		return money.Amount{}
	}
	price, err := money.Parse(string(text))
	d, _ := price.Decimal()
	if err != nil || d.Exponent() < -pricePlaces || d.Rat().Cmp(whole(fraction.MaxInput)) > 0 {
		r.fault(path, string(text), "a price such as \"24.98\", with at most 4 decimal places")
		return money.Amount{}
	}
	return price
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

// named refuses an empty name.
func (r *reader) named(path, name string) {
	if strings.TrimSpace(name) == "" {
		r.fault(path+".Name", name, "a name, such as quart")
	}
}
