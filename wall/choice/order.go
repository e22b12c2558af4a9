package choice

import (
	"errors"
	"iter"
	"math/big"
	"slices"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// order is the layouts of a room from the least of something up: of blemish, of the price of their
// pieces, or of the sum of both. Those that have not been met have no less of it than the last one,
// and a layout of such a price needs no less than the dual weight behind the price says. So an order
// says what the layouts need that were never looked at: a lower bound by Lagrangian relaxation (A. M.
// Geoffrion, "Lagrangean relaxation for integer programming", Mathematical Programming Study 2, 1974).
type order struct {
	price  nest.DualWeight // with weight; the zero value for the order of blemish
	within *limit          // for which alone the price holds, or nil
	weight fraction.Ratio  // the blemish that an inch of price counts as; 0: price alone decides
	byLook bool            // the order of blemish

	next  func() (wall.Layout, error, bool)
	stop  func()
	last  wall.Layout // the last one that was met
	spent bool        // every layout was met
}

// unmet returns the least price of the layouts that were not met, of those with at most this blemish
// where it is not nil; false if there are none.
func (o *order) unmet(blemish *fraction.Ratio) (price fraction.Length, some bool) {
	switch {
	case o.spent, o.byLook && blemish != nil && blemish.Less(o.last.Floor):
		return price, false
	case !o.byLook && o.weight.IsZero():
		return o.last.Cost, true
	case !o.byLook && blemish != nil:
		return o.leastPrice(*blemish), true
	}
	return price, true
}

// leastNeed returns what a layout of this price needs at least.
func (o *order) leastNeed(price fraction.Length) (n Need) {
	n.Cost, n.Bought, n.Sheets = o.price.Least(price)
	if o.within != nil && o.within.need.Compare(n) < 0 {
		n = o.within.need
	}
	return n
}

// leastPrice returns the least price of the layouts of this blemish that were not met, in an order of
// both, rounded down to whole parts of an inch: the exact one may be too fine.
func (o *order) leastPrice(blemish fraction.Ratio) fraction.Length {
	const parts = 1 << 16
	price := new(big.Rat).Sub(o.last.Floor.Rat(), blemish.Rat())
	price.Quo(price, o.weight.Rat()).Mul(price, big.NewRat(parts, 1))
	whole := new(big.Int).Div(price.Num(), price.Denom())
	if !whole.IsInt64() {
		return fraction.Length{} // it says nothing
	}
	return fraction.Of(whole.Int64(), parts)
}

// noneBetter reports whether every layout that was not met looks no better than the choice, or needs
// more.
func (o *order) noneBetter(c *Choice) bool {
	if o.byLook && c.Layout.Total.Compare(o.last.Floor) <= 0 {
		return true
	}
	price, some := o.unmet(&c.Layout.Total)
	return !some || !o.byLook && c.Need.Compare(o.leastNeed(price)) < 0
}

// start adds an order and meets the first layout of it.
func (e *explorer) start(o *order, layouts iter.Seq2[wall.Layout, error]) (*order, error) {
	o.next, o.stop = iter.Pull2(layouts)
	e.orders = append(e.orders, o)
	err := e.advance(o)
	if err != nil {
		e.drop(o)
	}
	return o, err
}

// advance looks at the next layout of an order.
func (e *explorer) advance(o *order) error {
	layout, err, more := o.next()
	if err != nil {
		return err
	}
	if o.spent = !more; o.spent {
		return nil
	}
	o.last = layout
	return e.look(layout)
}

// startLooks starts on the order of blemish.
func (e *explorer) startLooks() error {
	o, err := e.start(&order{byLook: true}, e.model.Layouts(e.ctx))
	e.broken = o.last.Broken
	return err
}

// pricesTried is how many dual weights prices are made of.
const pricesTried = 3

// startPrices starts on the orders of the prices that say most of the walls. No layout's pieces cost
// less than those of the first: that may raise the bound.
func (e *explorer) startPrices() error {
	var heights []fraction.Length
	for _, p := range e.found[0].Layout.Pieces {
		low, high := p.Shape.Bounds()
		heights = append(heights, high.Y.Sub(low.Y))
	}
	weights, err := nest.DualWeights(e.bare, e.strips, heights, pricesTried)
	if err != nil {
		return err
	}
	for _, w := range weights {
		o, err := e.startPrice(w, fraction.Ratio{})
		if err != nil {
			return err
		}
		e.prices = append(e.prices, o)
		if e.raise(o.price.LowerBound(o.last.Cost)); e.ended() {
			return nil
		}
	}
	sort.SliceStable(e.prices, func(i, j int) bool { return e.prices[i].relaxed() > e.prices[j].relaxed() })
	for _, step := range []func() error{e.sharpen, e.measure} {
		if err := step(); err != nil || e.ended() {
			return err
		}
	}
	return nil
}

// relaxed returns about what the layout of least price needs by the price of an order.
func (o *order) relaxed() float64 { return o.price.Relaxed(o.last.Cost) }

// sharpen tries the price that says most of the pieces of the layout of least price: the walls alone do not say how
// high the pieces are that go past boxes. They count as high as prices see them: less what rounding may take where
// lines slope. Done again it hardly raises a bound.
func (e *explorer) sharpen() error {
	if len(e.prices) == 0 {
		return nil
	}
	cheap := &e.prices[0].last
	parts := fraction.Must(Nesting(e.room, cheap)).Parts
	for i, piece := range cheap.Pieces {
		low, high := piece.Shape.Bounds()
		parts[i].Height = high.Y.Sub(low.Y)
		for p, q := range piece.Shape.Edges() {
			if p.X != q.X && p.Y != q.Y {
				parts[i].Height = high.Y.Sub(low.Y).Sub(e.room.Mark.Mul(2))
			}
		}
	}
	w, err := nest.DualWeightOf(e.bare, e.strips, parts)
	if err != nil {
		return err
	}
	if cost, err := e.objective(w).Cost(cheap); err == nil && w.Relaxed(cost) > e.prices[0].relaxed() {
		_, err = e.try(w)
		return err
	}
	return nil
}

// How many mixtures of windows are tried at most, fewer where layouts have more than usualPieces and one alone where it takes
// more than so many panels, and how soon they settle.
const (
	mostMixtures = 12
	heavyMixture = 16_000_000 // a second or a few
	settling     = 60
)

// mixtures returns how many mixtures of windows are tried at most.
func (e *explorer) mixtures(pieces int) int {
	if e.panels() > heavyMixture {
		return 1
	}
	return max(2, mostMixtures*usualPieces/max(usualPieces, pieces))
}

// panels returns about how many panels are looked at for one layout of least price: from each seam line as far as
// a sheet reaches, with each origin.
func (e *explorer) panels() (panels int) {
	pitch := e.room.Profile.Pitch()
	lines := func(x fraction.Length) int {
		n, _ := x.Mul(int64(len(e.room.Profile.Features))).DivMod(pitch)
		return int(n) + 1
	}
	reach := 0
	for _, s := range e.room.Stock {
		reach = max(reach, lines(s.Width))
	}
	for r, run := range e.room.Runs {
		panels += e.model.Origins(r) * lines(run.Width) * reach
	}
	return panels
}

// measure tries the best price with widths counted by windows of the pattern.
func (e *explorer) measure() error {
	if len(e.prices) == 0 {
		return nil
	}
	for _, family := range e.prices[0].price.Measured() {
		if err := e.mix(family); err != nil || e.ended() {
			return err
		}
	}
	return nil
}

// mix looks for the mixture of windows that says most, a game against the layouts: those windows count more and more
// that count most in the layouts of least price that were met (Y. Freund and R. E. Schapire, "Adaptive game
// playing using multiplicative weights", Games and Economic Behavior 29, 1999). No mixture says more than the best
// window does of these layouts on average.
func (e *explorer) mix(family []nest.DualWeight) error {
	sums, shares := make([]float64, len(family)), make([]float64, len(family))
	cheap := &e.prices[0].last
	for met := 1; met <= e.mixtures(len(cheap.Pieces)) && e.needOpen(); met++ {
		for i, w := range family {
			cost, err := e.objective(w).Cost(cheap)
			if err != nil {
				return nil // too fine
			}
			sums[i] += w.Relaxed(cost)
		}
		most := slices.Max(sums)
		if most/float64(met) <= e.relaxedLeast() {
			return nil
		}
		for i, sum := range sums {
			shares[i] = 1
			for range settling * met {
				shares[i] *= sum / most
			}
		}
		var err error
		if cheap, err = e.try(nest.Mixed(family, shares)); cheap == nil || err != nil {
			return err
		}
	}
	return nil
}

// relaxedLeast returns the bound of the room as [nest.DualWeight.Relaxed] counts.
func (e *explorer) relaxedLeast() float64 {
	if e.least.Cost.IsZero() {
		return float64(e.least.Sheets)
	}
	return float64(e.least.Cost.Num()) / float64(e.least.Cost.Den())
}

// try starts on the order of a price and makes it the first if it says more than the others, in place of the one that
// says least where there are many: each takes memory. It returns the layout of least price; nil where the numbers are too
// fine.
func (e *explorer) try(w nest.DualWeight) (*wall.Layout, error) {
	o, err := e.startPrice(w, fraction.Ratio{})
	if errors.As(err, new(*fraction.OverflowError)) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	e.raise(w.LowerBound(o.last.Cost))
	if o.relaxed() <= e.prices[0].relaxed() {
		e.drop(o)
		return &o.last, nil
	}
	e.prices = append([]*order{o}, e.prices...)
	if last := len(e.prices) - 1; last >= pricesTried {
		e.drop(e.prices[last])
		e.prices = e.prices[:last]
	}
	return &o.last, nil
}

// drop ends an order.
func (e *explorer) drop(o *order) {
	o.stop()
	e.orders = slices.DeleteFunc(e.orders, func(other *order) bool { return other == o })
}

// objective is the price of pieces, each with its kerf.
func (e *explorer) objective(w nest.DualWeight) wall.Objective {
	return wall.Objective{Of: w.Of, Measure: w.Measure}
}

// startPrice starts on the order of a price, or of the sum of blemish and the price so weighted.
func (e *explorer) startPrice(w nest.DualWeight, blemish fraction.Ratio) (*order, error) {
	o := e.objective(w)
	o.Weight = blemish
	return e.start(&order{price: w, within: e.within, weight: blemish}, e.model.LayoutsByCost(e.ctx, o))
}

// Shares of the layouts of a round.
const (
	priceShare = 2 // part of them in the order of price, to close the front's cheap end
	looksShare = 4 // in the order of blemish, equal ones by price, to close its other end
	stepShare  = 4 // for each of at most stepsTried steps between two choices
	stepsTried = 4
)

// tieBlemish is what the price of the whole room counts as in the order of blemish and price.
var tieBlemish = fraction.NewRatio(1, 100)

// closed reports whether no layout that was not met and has at most this blemish, where it is not
// nil, can need less than the choice.
func (e *explorer) closed(blemish *fraction.Ratio, c *Choice) bool {
	return slices.ContainsFunc(e.orders, func(o *order) bool {
		price, some := o.unmet(blemish)
		return !some || c.complete() && c.Need.Compare(o.leastNeed(price)) <= 0
	})
}

// usualPieces is how many pieces a layout has that counts as one of [Budget.Layouts]. Of layouts with
// fewer pieces more are looked at, since each takes less time, and of those with more fewer.
const usualPieces = 24

// pursue looks at no more than so many further layouts of an order, until what it is to close is
// closed.
func (e *explorer) pursue(o *order, layouts int, closed func() bool) error {
	for pieces := layouts * usualPieces; pieces > 0 && !closed() && !e.ended(); {
		pieces -= max(1, len(o.last.Pieces))
		if err := e.advance(o); err != nil {
			return err
		}
	}
	return nil
}

// closeGaps looks at layouts that might need less than the choices found or look better: first those
// beyond the cheap end of the front, then those that look as good as its other end, then those
// between two choices, by the weighted sum in which both of them count the same.
func (e *explorer) closeGaps() (err error) {
	if len(e.prices) == 0 {
		return e.pursue(e.orders[0], e.budget.Layouts, func() bool { return false })
	}
	cheap := func() bool { return e.closed(nil, &e.found[len(e.found)-1]) }
	if err := e.pursue(e.prices[0], e.budget.Layouts/priceShare, cheap); err != nil {
		return err
	}
	looks := func() bool { return e.closed(&e.found[0].Layout.Total, &e.found[0]) }
	if e.ties == nil && !looks() {
		if e.ties, err = e.startSum(tieBlemish, &e.found[0].Layout, &wall.Layout{}); err != nil {
			return err
		}
	}
	if e.ties != nil {
		if err := e.pursue(e.ties, e.budget.Layouts/looksShare, looks); err != nil {
			return err
		}
	}
	for range stepsTried {
		i := e.openStep()
		if i < 0 || e.ended() {
			return nil
		}
		a, b := &e.found[i].Layout, &e.found[i+1].Layout
		step := [2]fraction.Ratio{a.Total, b.Total}
		if e.between[step] == nil {
			o, err := e.startSum(b.Total.Sub(a.Total), a, b)
			if err != nil {
				return err
			}
			if o == nil { // price says nothing
				o = e.orders[0]
			}
			e.between[step] = o
		}
		err = e.pursue(e.between[step], e.budget.Layouts/stepShare, func() bool { i := e.openStep(); return i < 0 || e.found[i+1].Layout.Total != step[1] })
		if err != nil {
			return err
		}
	}
	return nil
}

// openStep returns the number of the last choice but one such that a layout may be found that looks
// better than the next choice and needs less than this one; -1 if there is none.
func (e *explorer) openStep() int {
	for i := len(e.found) - 2; i >= 0; i-- {
		if !e.closed(&e.found[i+1].Layout.Total, &e.found[i]) {
			return i
		}
	}
	return -1
}

// startSum starts on the order of the sum of blemish and price in which the difference in price of
// two layouts counts as so much blemish; nil if the first does not cost more, or by so little that the
// sums do not fit.
func (e *explorer) startSum(blemish fraction.Ratio, dear, cheap *wall.Layout) (*order, error) {
	o, err := e.sum(blemish, dear, cheap)
	if errors.As(err, new(*fraction.OverflowError)) {
		return nil, nil
	}
	return o, err
}

func (e *explorer) sum(blemish fraction.Ratio, dear, cheap *wall.Layout) (o *order, err error) {
	defer fraction.Catch(&err)
	price := e.objective(e.prices[0].price)
	more := fraction.Must(price.Cost(dear)).Sub(fraction.Must(price.Cost(cheap)))
	if more.Sign() <= 0 {
		return nil, nil
	}
	return e.startPrice(e.prices[0].price, blemish.Div(more.Over(fraction.Inches(1))))
}
