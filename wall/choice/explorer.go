package choice

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"iter"
	"math"
	"slices"
	"sort"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

const (
	priceShare  = 4   // part of the budget for each price of pieces
	narrowShare = 2   // for each width of narrower panels
	weighShare  = 4   // for each weighted sum of price and blemish
	screenShare = 100 // for the nest of each layout on trial

	pricesTried  = 3
	weightsTried = 4
)

// explorer looks at the layouts of one room.
type explorer struct {
	ctx    context.Context
	room   wall.Room
	model  *wall.Model // of the room
	budget Budget

	found   []Choice // a front, from least blemish up
	layouts int      // looked at
	seen    map[string]bool
	end     EndCause

	bare   nest.Problem  // without a part
	strips []nest.Strip  // that every layout covers
	least  Need          // no layout needs less
	how    nest.Argument // what that rests on

	enumerated fraction.Ratio // every layout of less blemish has been looked at
	all        bool           // every layout has
	open       []openNest     // of the layouts whose least need is not known
	broken     int            // hard rules that the first layout had to break; no other may break more
	priced     []priced
}

// openNest is a layout whose nest was not searched to its end.
type openNest struct {
	blemish fraction.Ratio
	lower   nest.Bound
}

// priced is the layouts in the order of the price of their pieces. The first has been met.
type priced struct {
	weight nest.DualWeight
	first  wall.Layout
	next   func() (wall.Layout, error, bool)
	stop   func()
}

// close ends what startPriced started.
func (e *explorer) close() {
	for _, p := range e.priced {
		p.stop()
	}
}

// met reports whether the last choice needs no more than the bound of the room.
func (e *explorer) met() bool {
	n := len(e.found)
	return n > 0 && e.found[n-1].complete() && e.found[n-1].Need.Compare(e.least) <= 0
}

func (e *explorer) stopped() bool { return e.ctx.Err() != nil }

// search looks at layouts from the least blemish up until no later one can need less. Where that is
// not proved within the budget, it looks at layouts whose pieces cost little and at those of
// narrower panels too: they have more seams, and sometimes fit fewer sheets.
func (e *explorer) search() error {
	if err := e.bound(); err != nil {
		return err
	}
	var err error
	if e.model, err = wall.NewModel(e.ctx, e.room); err != nil {
		return err
	}
	e.all, err = e.explore(e.model.Layouts(e.ctx), e.budget.Layouts, func(layout wall.Layout) (bool, error) {
		e.enumerated = layout.Floor
		if e.layouts > 1 || e.met() {
			return e.met(), nil
		}
		err := e.startPriced()
		return e.met(), err
	})
	switch {
	case err != nil:
		return err
	case e.met():
		e.end = BoundMet
		return nil
	case e.all:
		e.end = LayoutsSpent
		return nil
	}
	met := func(wall.Layout) (bool, error) { return e.met(), nil }
	if _, err := e.explore(e.inTurn(e.budget.Layouts/priceShare), math.MaxInt, met); err != nil {
		return err
	}
	for _, stock := range e.narrower() {
		if e.met() {
			break
		}
		narrower, err := e.model.WithStock(stock)
		if err != nil {
			return err
		}
		var none *wall.NoLayoutError
		if _, err := e.explore(narrower.Layouts(e.ctx), e.budget.Layouts/narrowShare, met); err != nil && !errors.As(err, &none) {
			return err
		}
	}
	if err := e.weigh(e.budget.Layouts / weighShare); err != nil {
		return err
	}
	switch {
	case e.met():
		e.end = BoundMet
	case e.stopped():
		e.end = ContextStopped
	}
	return nil
}

// bound finds what no layout of the room can need less than.
func (e *explorer) bound() (err error) {
	if e.strips, err = e.room.Strips(); err != nil {
		return err
	}
	e.bare = fraction.Must(Nesting(e.room, &wall.Layout{}))
	lower, err := nest.StripBound(e.bare, e.room.Gaps.Seam, e.strips)
	e.raise(lower)
	return err
}

// explore looks at layouts in their order until most have been looked at, the context has ended or
// done, which gets each after that, says so. It reports whether it came to their end.
func (e *explorer) explore(layouts iter.Seq2[wall.Layout, error], most int, done func(wall.Layout) (bool, error)) (all bool, err error) {
	n := 0
	for layout, err := range layouts {
		if err != nil {
			return false, err
		}
		if e.layouts == 0 {
			e.broken = layout.Broken
		}
		if layout.Broken > e.broken {
			return false, nil
		}
		if err := e.look(layout); err != nil {
			return false, err
		}
		if end, err := done(layout); end || err != nil {
			return false, err
		}
		if n++; n >= most || e.stopped() {
			return false, nil
		}
	}
	return true, nil
}

// narrower returns the stock as if its sheets were narrower, which all fit the whole ones:
// by a quarter, a third, a half, and as wide as each kind of counted stock. Panels of less than a
// third of the width are no panelling but strips: common practice, no source.
func (e *explorer) narrower() [][]nest.Stock {
	if e.room.Profile.Boards {
		return nil // a board is as wide as it is
	}
	var widest fraction.Length
	for _, s := range e.room.Stock {
		widest = fraction.Max(widest, s.Width)
	}
	widths := []fraction.Length{widest.Mul(3).Div(4), widest.Mul(2).Div(3), widest.Div(2)}
	for _, s := range e.room.Stock {
		if s.Count != nil && s.Width.Less(widest) && !s.Width.Less(widest.Div(3)) {
			widths = append(widths, s.Width)
		}
	}
	var stocks [][]nest.Stock
	for _, width := range widths {
		stock := slices.Clone(e.room.Stock)
		for i := range stock {
			stock[i].Width = fraction.Min(stock[i].Width, width)
		}
		stocks = append(stocks, stock)
	}
	return stocks
}

// startPriced starts on the layouts in the order of each of the prices that say most of the walls.
// No layout's pieces cost less than those of the first: that may raise the bound.
func (e *explorer) startPriced() error {
	if e.room.Profile.Boards {
		return nil // a board is as wide as it is
	}
	var heights []fraction.Length
	for _, p := range e.found[0].Layout.Pieces {
		low, high := p.Shape.Bounds()
		heights = append(heights, high.Y.Sub(low.Y))
	}
	weights, err := nest.DualWeights(e.bare, e.strips, heights, pricesTried)
	if err != nil {
		return err
	}
	for _, weight := range weights {
		p := priced{weight: weight}
		p.next, p.stop = iter.Pull2(e.model.LayoutsByCost(e.ctx, e.objective(weight)))
		p.first, err, _ = p.next()
		e.priced = append(e.priced, p)
		if err != nil {
			return err
		}
		e.raise(weight.LowerBound(p.first.Cost))
		if e.met() {
			return nil
		}
	}
	return nil
}

// objective orders layouts by the price of their pieces, each with its kerf.
func (e *explorer) objective(weight nest.DualWeight) wall.Objective {
	return wall.Objective{Of: weight.Of, Extra: e.room.Saw.Kerf}
}

// raise raises the bound of the room to another one.
func (e *explorer) raise(l nest.Bound) {
	raised := Need{e.least.Cost, max(e.least.Bought, l.Bought), max(e.least.Sheets, l.Sheets)}
	if raised.Cost.Less(l.Cost) {
		raised.Cost = l.Cost
	}
	if raised != e.least {
		e.least, e.how = raised, l.How
	}
}

// inTurn yields no more than most of the layouts of each price, one of each after the other.
func (e *explorer) inTurn(most int) iter.Seq2[wall.Layout, error] {
	return func(yield func(wall.Layout, error) bool) {
		for n := range most {
			for _, p := range e.priced {
				layout, err, more := p.first, error(nil), true
				if n > 0 {
					layout, err, more = p.next()
				}
				if more && !yield(layout, err) {
					return
				}
			}
		}
	}
}

// weigh looks for the supported points of the front between its last two choices, by weighted sums
// of blemish and price. By each weight the two count the same, so that what comes first lies
// between them. No more than most layouts are looked at for each of at most weightsTried weights.
func (e *explorer) weigh(most int) error {
	if len(e.found) < 2 || len(e.priced) == 0 {
		return nil
	}
	objective, dearer := e.objective(e.priced[0].weight), e.found[len(e.found)-2].Layout
	for range weightsTried {
		last := e.found[len(e.found)-1].Layout
		more, less := fraction.Must(objective.Cost(&dearer)), fraction.Must(objective.Cost(&last))
		looks, takes := last.Total.Sub(dearer.Total), more.Sub(less)
		if looks.Sign() <= 0 || takes.Sign() <= 0 || e.stopped() {
			return nil
		}
		objective.Weight = looks.Div(takes.Over(fraction.Inches(1)))
		first, n := dearer, 0
		_, err := e.explore(e.model.LayoutsByCost(e.ctx, objective), most, func(layout wall.Layout) (bool, error) {
			if n++; n == 1 {
				first = layout
			}
			return false, nil
		})
		if err != nil {
			return err
		}
		if e.found[len(e.found)-1].Layout.Total == last.Total {
			if first.Total == dearer.Total {
				return nil // nothing lies between
			}
			dearer = first
		}
	}
	return nil
}

// look nests a layout unless one with the same parts was nested before or a bound says that it
// cannot need less, and keeps it if it needs less than all that look as good or better.
func (e *explorer) look(layout wall.Layout) error {
	e.layouts++
	problem := fraction.Must(Nesting(e.room, &layout))
	key := partsKey(problem)
	if e.seen[key] {
		return nil
	}
	e.seen[key] = true
	if at := e.after(layout.Total); at > 0 {
		lower, err := nest.LowerBound(problem) // far cheaper than a search
		if err != nil {
			return err
		}
		if best := e.found[at-1]; best.complete() && !e.canNeedLess(lower, best.Need) {
			return nil
		}
	}
	r, err := nest.Search(e.ctx, problem, nest.Budget{Nodes: e.budget.Nodes / screenShare, Draft: true})
	if err != nil {
		return err
	}
	e.keep(e.choice(layout, r))
	return nil
}

// partsKey is the same for problems with the same parts in the same order.
func partsKey(p nest.Problem) string {
	var b strings.Builder
	for _, part := range p.Parts {
		fmt.Fprint(&b, part.Width, part.Height, part.LeftPhase, ";")
	}
	return b.String()
}

// choice returns a layout with its nest.
func (e *explorer) choice(layout wall.Layout, r nest.Result) Choice {
	c := Choice{Layout: layout, Nest: r, Need: Need{Cost: r.Cost, Sheets: len(r.Sheets)}}
	for _, s := range r.Sheets {
		if e.room.Stock[s.Stock].Count == nil {
			c.Need.Bought++
		}
	}
	return c
}

// compare orders choices by what they leave over, then by what they need.
func (c *Choice) compare(d *Choice) int {
	return cmp.Or(cmp.Compare(len(c.Nest.Unplaced), len(d.Nest.Unplaced)), c.Need.Compare(d.Need))
}

// after returns how many of the choices found look as good as the blemish or better.
func (e *explorer) after(blemish fraction.Ratio) int {
	return sort.Search(len(e.found), func(i int) bool { return blemish.Less(e.found[i].Layout.Total) })
}

// keep adds a choice to the front, and takes away those that it dominates.
func (e *explorer) keep(c Choice) {
	if !c.Nest.Bound.Proved {
		e.open = append(e.open, openNest{c.Layout.Total, c.Nest.Bound})
	}
	at := e.after(c.Layout.Total)
	if at > 0 && c.compare(&e.found[at-1]) >= 0 {
		return
	}
	for at > 0 && e.found[at-1].Layout.Total == c.Layout.Total {
		at-- // it looks no better and needs more
	}
	later := slices.DeleteFunc(slices.Clone(e.found[at:]), func(d Choice) bool { return d.compare(&c) >= 0 })
	e.found = append(append(e.found[:at:at], c), later...)
}

// canDoWith reports whether a nest with this bound might need no more than the need.
func (e *explorer) canDoWith(lower nest.Bound, need Need) bool {
	need.Sheets++
	return e.canNeedLess(lower, need)
}

// canNeedLess reports whether a nest with this bound might need less than the need.
func (e *explorer) canNeedLess(lower nest.Bound, need Need) bool {
	if c := lower.Cost.Compare(need.Cost); c != 0 {
		return c < 0
	}
	// Sheets on hand may take the place of bought ones, whose number comes first.
	onHand := slices.ContainsFunc(e.room.Stock, func(s nest.Stock) bool { return s.Count != nil })
	return lower.Sheets < need.Sheets || need.Bought > 0 && onHand
}
