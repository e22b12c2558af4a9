package finish

import (
	"errors"
	"fmt"
	"math/big"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
)

// List is what to buy for a plan, and what it costs.
type List struct {
	Rows     []Row           `json:"rows"`
	Subtotal decimal.Decimal `json:"subtotal"` // the costs of the rows that have a price, added up
	Tax      decimal.Decimal `json:"tax"`      // reckoned once on the subtotal and rounded to the cent, halves up
	Total    decimal.Decimal `json:"total"`    // subtotal and tax: what is paid
	// Unpriced counts the rows to buy for which no price is known. They are not in the total.
	Unpriced int `json:"unpriced"`
	// Leftover is what stays in the opened packs at [Materials.LeftoverWorth]. It is not taken off the total.
	Leftover decimal.Decimal `json:"leftover"`
	Passes   []Pass          `json:"passes"`
	Warnings []Warning       `json:"warnings"`
}

// Row is one line of the list. Quantity and Unit say what is needed, rounded up in the last place written; Buy is how many of
// Container. Where one thing is bought in packs of several sizes each has a row, and the quantities of these add up to what is needed.
type Row struct {
	Item      string           `json:"item"`
	Quantity  string           `json:"quantity"`
	Unit      string           `json:"unit"`
	Buy       int              `json:"buy"`
	Container string           `json:"container"`
	Price     *decimal.Decimal `json:"price,omitempty"`
	Cost      *decimal.Decimal `json:"cost,omitempty"` // Buy times Price, rounded once to the cent, halves up
	How       string           `json:"how"`
}

// Pass is one time that paint is put on.
type Pass struct {
	Paint  string `json:"paint"` // primer or top coat
	When   string `json:"when"`  // before fitting or after sealing
	Coats  int    `json:"coats"`
	Area   string `json:"area"`   // one coat or several together, with edges and backs
	Volume string `json:"volume"` // with what stays in brush and roller
}

// Warning is a doubt about a joint, a nail or a box.
type Warning struct {
	Where string `json:"where"`
	Text  string `json:"text"`
}

// settings are the Materials, read.
type settings struct {
	house     house
	paint     painting
	sealant   sealing
	adhesive  gluing
	nails     nailing
	furring   stripping
	electric  electric
	tape      masking
	sheeting  covering
	trim      trimming
	extras    []extra
	tax       *big.Rat
	remainder *big.Rat // LeftoverWorth
}

// read reads every field of m.
func (r *reader) read(m Materials) settings {
	d := Defaults(r.units)
	var s settings
	s.house = r.house(m.House, d.House)
	s.paint = r.painting(m.Paint, d.Paint)
	s.sealant = r.sealing(m.Sealant, d.Sealant)
	s.adhesive = r.gluing(m.Adhesive, r.units)
	s.nails = r.nailing(m.Nails, d.Nails)
	s.furring = r.stripping(m.Furring, d.Furring)
	s.electric = r.electric(m, d)
	s.tape = r.masking(m.Tape, d.Tape)
	s.sheeting = r.covering(m.Sheeting, d.Sheeting)
	s.trim = r.trimming(m.Trim, d.Trim)
	s.extras = r.extras(m.Extras)
	s.tax = r.share("tax", m.Tax, d.Tax)
	s.remainder = r.number("leftover_worth", m.LeftoverWorth, d.LeftoverWorth, 0, 1)
	return s
}

// Validate returns nil, or everything that is wrong with the fields in a job with these units: an error that wraps one
// *fault.Fault for each, in the order of the fields.
func (m Materials) Validate(units fraction.Unit) error {
	r := &reader{units: units}
	r.read(m)
	return errors.Join(r.faults...)
}

// TakeOff reckons what the work needs.
//
// It fails if a field of m or a quantity of w is out of range, with an error that wraps a *fault.Fault for each, or with a *[MixError]
// where something needs more packs than [MaxPacks]. The cost is linear in the size of w, and at most [MixSteps] steps for each thing bought.
func TakeOff(w Work, m Materials) (list List, err error) {
	defer fraction.Catch(&err)
	r := readFor(w)
	s := r.read(m)
	w.check(r)
	if err := errors.Join(r.faults...); err != nil {
		return List{}, err
	}
	b := &builder{work: w, settings: s, writer: writer{w.Units}, factor: developed(w.Profile, s.paint.groove), leftover: new(big.Rat)}
	if len(w.Pieces) > 0 && b.thickness().Sign() == 0 {
		b.warn("profile.thickness", "it is not given, so that nails, extenders, edges and filled gaps are reckoned as for a skin: give it before you buy")
	}
	b.sheets()
	b.paint()
	b.seal()
	b.glue()
	b.nail()
	b.strips()
	b.boxes()
	b.mask()
	b.cover()
	b.trims()
	b.extras()
	if b.err != nil {
		return List{}, b.err
	}
	b.sum()
	return b.list, nil
}

// builder makes the list row by row.
type builder struct {
	writer
	work     Work
	settings settings
	list     List
	factor   *big.Rat // how much wider the face is than it looks
	leftover *big.Rat
	err      error
}

func (b *builder) thickness() *big.Rat { return b.work.Profile.Thickness.Rat() }

// row adds a row and its cost.
func (b *builder) row(row Row) {
	if row.Price != nil {
		cost := decimal.NewFromBigRat(mul(row.Price.Rat(), whole(int64(row.Buy))), 2)
		row.Cost = &cost
	}
	b.list.Rows = append(b.list.Rows, row)
}

// warn adds a warning.
func (b *builder) warn(where, text string, args ...any) {
	b.list.Warnings = append(b.list.Warnings, Warning{where, fmt.Sprintf(text, args...)})
}

// buy adds the rows of the best mix for what is needed; nothing if nothing is. The largest packs stand first, and each row
// says how much of the need it serves, so that the quantities of the rows add up to the need.
func (b *builder) buy(item string, need *big.Rat, write func(*big.Rat) string, offers []offer, how string) {
	if need.Sign() <= 0 || b.err != nil {
		return
	}
	if few := fewest(need, offers); few > MaxPacks {
		b.err = &MixError{item, few}
		return
	}
	best := leastMoney(need, offers, b.settings.remainder)
	if lowest, ok := lowestRate(offers); ok {
		b.leftover = add(b.leftover, mul(sub(best.size, need), lowest, b.settings.remainder))
	}
	how += chosen(offers, best.proved)
	rest := need
	for _, i := range largestFirst(offers) {
		if n := best.counts[i]; n > 0 {
			o := offers[i]
			served := least(rest, mul(whole(n), o.size))
			rest = sub(rest, served)
			number, unit, _ := strings.Cut(write(served), " ")
			b.row(Row{item, number, unit, int(n), o.name, o.price, nil, how})
			how = "with the row above"
		}
	}
}

// largestFirst returns the places of the offers, the largest first.
func largestFirst(offers []offer) []int {
	order := make([]int, len(offers))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return offers[j].size.Cmp(offers[i].size) })
	return order
}

// fewest returns the least number of packs that can hold what is needed.
func fewest(need *big.Rat, offers []offer) int64 {
	few := int64(1<<63 - 1)
	for _, o := range offers {
		few = min(few, count(quo(need, o.size)))
	}
	return few
}

// chosen says by what the packs were chosen, where there was a choice.
func chosen(offers []offer, proved bool) string {
	_, priced := lowestRate(offers)
	switch {
	case !proved:
		return fmt.Sprintf("; the best of the first %d mixes of packs, not proved least", MixSteps)
	case len(offers) == 1:
		return ""
	case priced:
		return "; least money of these packs"
	}
	return "; fewest packs, as not all have a price"
}

// sheets lists what the plan is cut from.
func (b *builder) sheets() {
	one := b.work.board("sheet", "board")
	for _, s := range b.work.Sheets {
		if s.Count > 0 {
			b.row(Row{s.Name + b.size(s), fmt.Sprint(s.Count), plural(s.Count, one), s.Count, s.Name, s.Price, nil, "counted from the " + one + "s to saw, none to spare"})
		}
	}
}

// size tells width, length and thickness of a sheet, the thickness only where it is known.
func (b *builder) size(s SheetRow) string {
	if s.Width.IsZero() || s.Length.IsZero() {
		return ""
	}
	sides := []string{b.small(s.Width.Rat()), b.small(s.Length.Rat())}
	if b.thickness().Sign() > 0 {
		sides = append(sides, b.small(b.thickness()))
	}
	last := len(sides) - 1
	for i := range sides[:last] {
		sides[i] = sides[i][:strings.LastIndexByte(sides[i], ' ')] // the unit stands once
	}
	return ", " + strings.Join(sides, " x ")
}

// extra is an Extra, read.
type extra struct {
	Extra
	price *decimal.Decimal
}

func (r *reader) extras(given []Extra) []extra {
	var all []extra
	for i, e := range given {
		path := fmt.Sprintf("extras[%d]", i)
		if strings.TrimSpace(e.Item) == "" {
			r.fault(path+".item", "", "want what to buy, such as brush")
		}
		if e.Buy < 1 || e.Buy > MaxPacks {
			r.fault(path+".buy", fmt.Sprint(e.Buy), fmt.Sprintf("want 1 to %d", MaxPacks))
		}
		all = append(all, extra{e, r.price(path+".price", e.Price)})
	}
	return all
}

// extras lists what the job asks for on top.
func (b *builder) extras() {
	for _, e := range b.settings.extras {
		b.row(Row{e.Item, fmt.Sprint(e.Buy), plural(e.Buy, "piece"), e.Buy, "piece", e.price, nil, "asked for by the job"})
	}
}

func plural(n int, word string) string {
	if n == 1 {
		return word
	}
	return word + "s"
}

// sum adds up the costs.
func (b *builder) sum() {
	l := &b.list
	for _, row := range l.Rows {
		if row.Cost == nil {
			l.Unpriced++
			continue
		}
		l.Subtotal = l.Subtotal.Add(*row.Cost)
	}
	l.Tax = decimal.NewFromBigRat(mul(l.Subtotal.Rat(), b.settings.tax), 2)
	l.Total = l.Subtotal.Add(l.Tax)
	l.Leftover = decimal.NewFromBigRat(b.leftover, 2)
}
