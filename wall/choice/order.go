package choice

import (
	"errors"
	"iter"
	"math/big"
	"slices"

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

	next        func() (wall.Layout, error, bool)
	stop        func()
	first, last wall.Layout // that were met
	spent       bool        // every layout was met
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
	if o.first = o.last; err != nil {
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

// boardsOfPiece is how many boards count as one piece there: their nests are mostly of one dimension.
const boardsOfPiece = 5

// An order goes on beyond one part in so many of the layouts that it may take only if so many times as many as it met so
// far can close what it is to close.
const (
	triedShare = 4
	patience   = 8
)

// pursue looks at no more than so many further layouts of an order, until what it is to close is closed, or they do
// not lead there.
func (e *explorer) pursue(o *order, layouts int, closed func() bool) error {
	all := layouts * usualPieces
	if e.room.Profile.Boards {
		all *= boardsOfPiece
	}
	for left := all; left > 0 && !closed() && !e.ended(); {
		if all-left > all/triedShare && !o.leadsTo(closed) {
			return nil
		}
		left -= max(1, len(o.last.Pieces))
		if err := e.advance(o); err != nil {
			return err
		}
	}
	return nil
}

// leadsTo reports whether an order that rises as fast as it did so far closes what it is to close by patience times as
// many layouts more; also where the numbers are too fine to say. It rises ever slower: the more it has of something, the
// more layouts have as much.
func (o *order) leadsTo(closed func() bool) (yes bool) {
	now, fine := o.last, error(nil) // closed asks what the order would say there
	defer func() { o.last, yes = now, yes || fine != nil }()
	defer fraction.Catch(&fine)
	o.last.Cost = now.Cost.Add(now.Cost.Sub(o.first.Cost).Mul(patience))
	o.last.Floor = now.Floor.Add(now.Floor.Sub(o.first.Floor).Mul(fraction.NewRatio(patience, 1)))
	return closed()
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
		if e.ties, err = e.startSum(e.prices[0].price, tieBlemish, &e.found[0].Layout, &wall.Layout{}); err != nil {
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
		a, b := e.step(i)
		step := [2]fraction.Ratio{a.Total, b.Total}
		if e.between[step] == nil {
			o, err := e.startSum(e.prices[0].price, b.Total.Sub(a.Total), a, b)
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

// step returns the layouts of a choice and the next one.
func (e *explorer) step(i int) (a, b *wall.Layout) { return &e.found[i].Layout, &e.found[i+1].Layout }

// startSum starts on the order of the sum of blemish and a price in which the difference in price of
// two layouts counts as so much blemish; nil if the first does not cost more, or by so little that the
// sums do not fit.
func (e *explorer) startSum(w nest.DualWeight, blemish fraction.Ratio, dear, cheap *wall.Layout) (*order, error) {
	o, err := e.sum(w, blemish, dear, cheap)
	if errors.As(err, new(*fraction.OverflowError)) {
		return nil, nil
	}
	return o, err
}

func (e *explorer) sum(w nest.DualWeight, blemish fraction.Ratio, dear, cheap *wall.Layout) (o *order, err error) {
	defer fraction.Catch(&err)
	price := e.objective(w)
	more := fraction.Must(price.Cost(dear)).Sub(fraction.Must(price.Cost(cheap)))
	if more.Sign() <= 0 {
		return nil, nil
	}
	return e.startPrice(w, blemish.Div(more.Over(fraction.Inches(1))))
}
