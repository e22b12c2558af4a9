package finish

import (
	"cmp"
	"encoding"
	"encoding/json"
	"fmt"
	"math/big"
	"reflect"
	"slices"
	"strings"
	"unicode/utf8"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
)

// Taped is a length as a tape reads, such as "1/4" or "6 mm"; a bare number is in the job's units.
type Taped string

// Number is a decimal as a JSON number or string, 0.1 or "24.98": of money, a share or a count.
type Number string

// Volume is a number of gal, qt, pt, fl oz (US liquid), L or mL, such as "10.1 fl oz" or "2.5 L".
type Volume string

// Coverage is the surface that a volume of paint covers, such as "350 ft2/gal" or "9 m2/L".
type Coverage string

// Surface is an area, such as "108 ft2" or "20 m2".
type Surface string

// UnmarshalJSON takes any JSON value as it is written; Validate refuses what is no number.
func (n *Number) UnmarshalJSON(data []byte) error {
	if text := string(data); text == "null" || strings.HasPrefix(text, `"`) {
		return json.Unmarshal(data, (*string)(n))
	}
	*n = Number(data)
	return nil
}

// settings are a work and its Materials with every default filled in.
type settings struct {
	Work
	Materials
	usual   Materials // the defaults
	guessed bool      // the datum is taken to be the floor; see [Work.onFloor]
}

// read fills in the defaults, also in place of wrong fields, and returns what is wrong with m.
func read(w Work, m Materials) (settings, fault.List) {
	s := settings{Work: w, Materials: m, usual: Defaults(w.Units), guessed: m.House.Datum == "" && w.onFloor()}
	r := &reader{units: w.Units}
	if s.guessed {
		s.usual.House.Datum = "0"
	}
	if m.House.Backing == BareStuds || m.House.Backing == Masonry {
		s.usual.House.Wall = "0"
	}
	if m.House.Material > Plywood {
		s.usual.Paint.EdgeCoats = "1"
	}
	glue, usual, thin := m.Adhesive, &s.usual.Adhesive, w.Profile.Thickness.Rat().Cmp(thinSheet) <= 0
	form := cmp.Or(glue.Form, of(thin, GlueBeads, GlueCustom))
	if w.Profile.Boards {
		form = cmp.Or(glue.Boards, glue.Form, usual.Boards)
	}
	s.usual.Nails.Kind = of(thin && form != NoGlue && !w.Profile.Boards, FinishNails, Brads)
	if m.House.Material == Noncombustible {
		s.usual.Nails.Kind = PanelScrews
	}
	if !s.nailed() && glue.Hold == LightHold { // glue alone holds
		glue.Hold, s.Adhesive.Hold = FullHold, FullHold
	}
	usual.Size, usual.Spacing = usualGlue(form, glue.Hold, w.Units != fraction.Inch)
	r.coating("Primer", &s.Paint.Primer, &s.usual.Paint.Primer)
	r.coating("Top", &s.Paint.Top, &s.usual.Paint.Top)
	r.fields(nil, reflect.ValueOf(&s.Materials).Elem(), reflect.ValueOf(s.usual))
	s.Adhesive.Form = form
	return s, r.List
}

// Validate returns nil, or a *fault.Fault for each field that a job in these units cannot use.
func (m Materials) Validate(units fraction.Unit) error {
	_, faults := read(Work{Units: units}, m)
	return faults.Err()
}

// reader checks values and gathers what is wrong with them.
type reader struct {
	units fraction.Unit
	fault.List
}

// under returns the path of a part.
func under(path []any, step any) []any { return append(slices.Clip(path), step) }

// coating refuses a coverage beside solids and dry film, and one of these without the other.
func (r *reader) coating(paint string, c, usual *Coating) {
	switch dry := c.Solids != "" || c.DryFilm != ""; {
	case dry && c.Coverage != "":
		r.Add(string(c.Coverage), "the coverage, or solids and the dry film, not both", "Paint", paint, "Coverage")
	case dry && (c.Solids == "" || c.DryFilm == ""):
		r.Add(nil, "solids and the dry film together", "Paint", paint)
	case dry:
		usual.Coverage = ""
		return
	default:
		return
	}
	c.Solids, c.DryFilm = "", ""
}

// fields checks every field of a struct. An invalid usual stands for no defaults.
func (r *reader) fields(path []any, v, usual reflect.Value) {
	for i := range v.NumField() {
		field := v.Type().Field(i)
		var otherwise reflect.Value
		if usual.IsValid() {
			otherwise = usual.Field(i)
		}
		optional := strings.Contains(field.Tag.Get("json"), "omitzero")
		r.value(under(path, field.Name), field.Name, v.Field(i), otherwise, optional)
	}
}

// value checks a value by its type and field name. The usual one takes its place where it is left
// out, or is single and wrong.
func (r *reader) value(path []any, name string, v, usual reflect.Value, optional bool) {
	if usual.IsValid() && (v.IsZero() || v.Kind() == reflect.Slice && v.Len() == 0) {
		v.Set(usual)
	}
	switch v.Interface().(type) {
	case groove.Profile:
		return
	case fraction.Length, fraction.Area, money.Amount: // have no parts
	default:
		switch {
		case v.Kind() == reflect.Slice:
			r.list(path, name, v)
			return
		case v.Kind() == reflect.Struct && v.FieldByName("Name").IsValid():
			usual = reflect.Value{} // a pack has defaults as a whole only
			fallthrough
		case v.Kind() == reflect.Struct:
			r.fields(path, v, usual)
			return
		case optional && v.IsZero():
			return
		}
	}
	if want := r.want(name, v.Interface()); want != "" {
		var shown any
		if text := fmt.Sprint(v); text != "" {
			shown = text
		}
		r.Add(shown, want, path...)
		if usual.IsValid() {
			v.Set(usual)
		}
	}
}

// list checks every item of a list: names differ, lengths rise.
func (r *reader) list(path []any, name string, v reflect.Value) {
	seen := map[string]bool{}
	var last fraction.Length
	for i := range v.Len() {
		item, inner := v.Index(i), under(path, i)
		r.value(inner, name, item, reflect.Value{}, false)
		for _, field := range []string{"Name", "Item"} {
			if item.Kind() != reflect.Struct || !item.FieldByName(field).IsValid() {
				continue
			}
			text := item.FieldByName(field).String()
			if seen[text] && path[0] != "Work" { // runs may share names of boxes
				r.Add(text, "each name once", under(inner, field)...)
			}
			seen[text] = true
			if i == MaxOffers && name != "Boxes" && name != "Extras" && path[0] != "Work" {
				r.Add(fmt.Sprint(v.Len()), fmt.Sprintf("at most %d", MaxOffers), path...)
			}
		}
		if text, ok := item.Interface().(Taped); ok {
			next, err := fraction.Parse(string(text), r.units)
			if err == nil && i > 0 && !last.Less(next) {
				r.Add(string(text), "the lengths rising", inner...)
			}
			last = next
		}
	}
}

// want returns what a value of this type and field name should be, and "" where it is that.
func (r *reader) want(name string, v any) string {
	switch x := v.(type) {
	case fraction.Length:
		if x.Sign() < 0 || maxLength.Less(x) {
			return "a length from 0 to " + maxLength.String() + " in"
		}
	case fraction.Area:
		if x.Sign() < 0 || x.Compare(maxLength.Times(maxLength)) > 0 {
			return "an area that is not negative, and less than a town"
		}
	case money.Amount:
		if d, _ := x.Decimal(); d.IsNegative() {
			return "a price that is not negative"
		}
	case JointKind:
		if x == NoJoint || int(x) >= len(jointKinds) {
			return jointKinds[1:].Want()
		}
	case encoding.TextMarshaler:
		if _, err := x.MarshalText(); err != nil {
			return fault.All(err)[0].Want
		}
	case Taped:
		return r.wantLength(name, string(x))
	case Number:
		return wantNumber(name, string(x))
	case Volume:
		return of(measured(string(x), volumes).Sign() > 0, "a volume such as 1 qt, 10.1 fl oz or 2.5 L", "")
	case Surface:
		return of(measured(string(x), surfaces).Sign() > 0, "an area such as 108 ft2 or 20 m2", "")
	case Coverage:
		return of(measured(string(x), coverages).Sign() > 0, "a coverage such as 350 ft2/gal or 9 m2/L", "")
	case int:
		low, high := 1, MaxCount // Count, Buy
		switch name {
		case "Gangs":
			low, high = 0, 10
		case "Built":
			low, high = 0, 9999
		}
		if x < low || x > high {
			return fmt.Sprintf("%d to %d", low, high)
		}
	case string:
		if !utf8.ValidString(x) {
			return "text in UTF-8"
		}
		if (name == "Fitting" || name == "Closing") && (x == "" || strings.ContainsAny(x, ",;")) {
			return "a label without a comma or a semicolon"
		}
		if (name == "Name" || name == "Item") && strings.TrimSpace(x) == "" {
			return "a name, such as quart"
		}
	}
	return ""
}

// leastLengths are the least values of fields that may be 0, or have to be more than just positive.
var leastLengths = map[string]fraction.Length{
	"Wall": {}, "Datum": {}, "GrooveFill": {}, "Penetration": {}, "Reach": {}, "Clear": {}, "Allow": {}, "SetBack": fraction.Inches(-fraction.MaxInput),
	"Studs": fraction.Inches(1), "Spacing": fraction.Inches(1), "Edge": fraction.Of(1, 2), "Field": fraction.Of(1, 2),
}

func (r *reader) wantLength(name, text string) string {
	least, ok := leastLengths[name]
	if !ok {
		least = fraction.Of(1, 10000) // a tenth of a mil, thinner than any film
	}
	switch l, err := fraction.Parse(text, r.units); {
	case err != nil:
		return "a length such as 1/4, 0.25 or 6 mm"
	case l.Less(least):
		return "at least " + fraction.Tape{Unit: r.units}.Format(least)
	}
	return ""
}

func wantNumber(name, text string) string {
	n, err := fraction.ParseRatio(text)
	one := fraction.NewRatio(1, 1)
	valid, want := n.Sign() >= 0 && n.Den() == 1 && n.Num() <= 99, "a whole number from 0 to 99"
	switch name {
	case "Price":
		var price money.Amount
		price, err = money.Parse(text)
		d, _ := price.Decimal()
		// fuel and fasteners are priced below the cent
		valid = d.Exponent() >= -4 && d.Rat().Cmp(whole(fraction.MaxInput)) <= 0
		want = `a price such as "24.98", with at most 4 decimal places`
	case "Loss", "Waste", "Tax":
		valid, want = n.Sign() >= 0 && n.Less(one), "a share below 1, such as 0.1 for ten percent"
	case "Solids":
		valid, want = n.Sign() > 0 && !one.Less(n), "a share above 0 and up to 1, such as 0.4 for forty percent"
	case "LeftoverWorth":
		valid, want = n.Sign() >= 0 && !one.Less(n), "a number from 0 to 1"
	}
	return of(err == nil && valid, want, "")
}

// The units that each kind of text may have.
var (
	volumes   = []string{"fl oz", "gal", "qt", "pt", "mL", "L"}
	surfaces  = []string{"ft2", "m2"}
	coverages = []string{"ft2/gal", "m2/L"}
)

// measured reads a positive number with one of the units (l for L too), and returns 0 for others.
func measured(text string, units []string) *big.Rat {
	text = strings.TrimSpace(text)
	for _, u := range units {
		number, ok := strings.CutSuffix(text, u)
		if !ok && strings.HasSuffix(u, "L") {
			number, ok = strings.CutSuffix(text, strings.ToLower(u))
		}
		if n, err := fraction.ParseRatio(strings.TrimSpace(number)); ok && err == nil && n.Sign() > 0 {
			return mul(n.Rat(), scales[u].size)
		}
	}
	return new(big.Rat)
}

// in returns a length that was checked, in inches.
func (s settings) in(text Taped) *big.Rat {
	l, _ := fraction.Parse(string(text), s.Units)
	return l.Rat()
}

// ratio returns a number that was checked.
func ratio(text Number) *big.Rat {
	n, _ := fraction.ParseRatio(string(text))
	return n.Rat()
}

// times returns a whole number that was checked.
func times(text Number) int64 { return count(ratio(text)) }

// price returns an amount of money that was checked, or is not given.
func price(text Number) money.Amount {
	amount, _ := money.Parse(string(text))
	return amount
}
