package finish

import (
	"fmt"
	"math/big"
	"slices"
	"sort"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/fraction/warning"
)

// TakeOff returns what the work needs, and what to think over before anything is bought.
//
// It fails with a *fault.Fault for each field of m and quantity of w that is out of range (the
// paths of w begin with Work), or else for each thing of more than [MaxPacks]; the cause of these
// is [ErrPacks]. The cost is linear in the size of w, and at most [MixSteps] steps for each thing
// bought.
func TakeOff(w Work, m Materials) (list List, doubts []warning.Warning, err error) {
	defer fraction.Catch(&err)
	s, faults := read(w, m)
	faults.Join(w.check())
	if err := faults.Err(); err != nil {
		return List{}, nil, err
	}
	b := &builder{settings: s, factor: developed(w.Profile, s.Paint.Groove), leftover: new(big.Rat)}
	if len(w.Pieces) > 0 && b.thickness().Sign() == 0 {
		b.warn(ThicknessUnknown, fault.Of("Profile", "Thickness"), nil)
	}
	b.sheets()
	b.paint()
	b.seal()
	b.glue()
	b.miters()
	b.nail()
	b.strips()
	b.boxes()
	b.mask()
	b.cover()
	b.coverings()
	b.trims()
	b.extras()
	if err := b.tooMany.Err(); err != nil {
		return List{}, nil, err
	}
	return b.sum(), b.doubts, nil
}

// builder makes the list row by row.
type builder struct {
	settings
	rows     []Row
	doubts   []warning.Warning
	factor   *big.Rat // how much wider the face is than it looks
	leftover *big.Rat
	tooMany  fault.List
}

func (b *builder) thickness() *big.Rat { return b.Profile.Thickness.Rat() }

// refused reports whether an item needs more packs than [MaxPacks], and records that.
func (b *builder) refused(item Item, packs int64) bool {
	if packs <= MaxPacks {
		return false
	}
	b.tooMany.Join(&fault.Fault{Value: fmt.Sprintf("%s, %d packs", item, packs), Cause: ErrPacks,
		Want: fmt.Sprintf("at most %d: check its quantities and sizes", MaxPacks)})
	return true
}

// row adds a row and its cost.
func (b *builder) row(row Row, quantity Figure) {
	row.Quantity, row.Unit = quantity.Value, quantity.Unit
	if row.Price.Known() {
		row.Cost = money.Of(decimal.NewFromBigRat(mul(amount(row.Price), whole(int64(row.Buy))), 2))
	}
	b.rows = append(b.rows, row)
}

// more adds a share for waste.
func more(x, waste *big.Rat) *big.Rat { return mul(x, add(whole(1), waste)) }

// buyMore buys what is needed and a share for waste, and says how much that is.
func (b *builder) buyMore(row Row, need, waste *big.Rat, unit Unit, offers []offer) {
	b.buySum(row, up(need, unit), need, waste, unit, offers)
}

// buySum is buyMore where what is needed is written as a sum of parts, which are rounded up each by itself: what
// is on top of that is less by as much, and what is bought goes by what is needed.
func (b *builder) buySum(row Row, sum Figure, need, waste *big.Rat, unit Unit, offers []offer) {
	if waste.Sign() > 0 {
		row.Terms = append(row.Terms, Term{Kind: TermWaste, Value: near(waste, 3, NoUnit)})
		if onTop := up(more(need, waste), unit).plus(sum.times(whole(-1))); onTop.Value.Sign() > 0 {
			row.Terms = append(row.Terms, Term{Kind: TermOnTop, Value: onTop})
		}
	}
	b.buy(row, more(need, waste), unit, offers)
}

// buy adds the rows of the best mix for a need, if there is one, the largest packs first. Each row
// says how much of the need it serves, so that the quantities add up to it; the first what is left
// where that is less than a tenth of the packs: half a coat too little costs a day. Judgment.
func (b *builder) buy(row Row, need *big.Rat, unit Unit, offers []offer) {
	if need.Sign() <= 0 {
		return
	}
	sort.SliceStable(offers, func(i, j int) bool { return offers[j].size.Cmp(offers[i].size) < 0 })
	if b.refused(row.Item, count(quo(need, offers[0].size))) {
		return
	}
	best := leastMoney(need, offers, ratio(b.LeftoverWorth))
	lowest, priced := lowestRate(offers)
	if priced {
		b.leftover = add(b.leftover, mul(sub(best.size, need), lowest, ratio(b.LeftoverWorth)))
	}
	if !best.proved {
		row.Choice = FirstMixes
	} else if len(offers) > 1 {
		row.Choice = of(priced, LeastLeft, LeastMoney)
	}
	if spare := sub(best.size, need); mul(spare, whole(10)).Cmp(best.size) < 0 {
		row.Terms = append(row.Terms, Term{Kind: TermMargin, Value: down(spare, unit)})
	}
	if sizes := slices.DeleteFunc(slices.Clone(best.counts), func(n int64) bool { return n == 0 }); len(sizes) > 1 {
		row.Terms = append(row.Terms, Term{Kind: TermInAll, Value: up(need, unit)})
	}
	for i, o := range offers {
		if n := best.counts[i]; n > 0 && !b.refused(row.Item, n) {
			served := least(need, mul(whole(n), o.size))
			need = sub(need, served)
			row.Buy, row.Container, row.Price = int(n), o.name, o.price
			b.row(row, up(served, unit))
			row.How, row.Terms, row.Source, row.Choice = WithRowAbove, nil, NoSource, OnlyPack
		}
	}
}

// sheets lists what the plan is cut from.
func (b *builder) sheets() {
	for _, s := range b.Sheets {
		if s.Count == 0 {
			continue
		}
		row := Row{Item: ItemSheet, Name: s.Name, Buy: s.Count, Container: s.Name, Price: s.Price, How: ByPlan}
		if !s.Width.IsZero() && !s.Length.IsZero() {
			row.Size = []Figure{b.small(s.Width.Rat()), b.small(s.Length.Rat())}
			if b.thickness().Sign() > 0 {
				row.Size = append(row.Size, b.small(b.thickness()))
			}
		}
		b.row(row, counted(int64(s.Count), of(b.Profile.Boards, UnitSheet, UnitBoard)))
	}
}

// extras lists what the job asks for on top.
func (b *builder) extras() {
	for _, e := range b.Extras {
		b.row(Row{Item: ItemExtra, Name: e.Item, Buy: e.Buy, Container: "piece", Price: price(e.Price), How: ByRequest}, counted(int64(e.Buy), UnitPiece))
	}
}

// sum adds up the costs.
func (b *builder) sum() List {
	list := List{Rows: append([]Row{}, b.rows...)}
	subtotal := decimal.Zero
	for _, row := range b.rows {
		cost, known := row.Cost.Decimal()
		if !known {
			list.Unpriced++
		}
		subtotal = subtotal.Add(cost)
	}
	tax := decimal.NewFromBigRat(mul(subtotal.Rat(), ratio(b.Tax)), 2)
	list.Subtotal, list.Tax, list.Total = money.Of(subtotal), money.Of(tax), money.Of(subtotal.Add(tax))
	list.AtHand, list.Spare = b.atHand(), b.spare()
	list.Leftover = money.Of(decimal.NewFromBigRat(b.leftover, 2))
	return list
}
