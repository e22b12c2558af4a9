package choice

import (
	"cmp"
	"context"
	"encoding/binary"
	"math/rand/v2"
	"slices"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// What counts as so many steps of a nest, by time: a piece of a layout that is built, for each kind of
// stock, and a panel that offcuts could give.
const (
	stepsOfPiece = 100
	stepsOfPanel = 1
)

// The parts of the budget, one in so many, for the nest of a layout on trial: that of boards is nearly one of one
// dimension, so more of it is proved or found by more steps.
const (
	draftShare = 100
	boardShare = 10
)

// explorer looks at the layouts of one room.
type explorer struct {
	ctx    context.Context
	room   wall.Room
	model  *wall.Model
	budget Budget
	fewer  func(noUse ruling) ([]Choice, error) // what is found with fewer kinds of stock, but what is of no use
	noneOf ruling                               // what is of no use here; nil for nothing

	found   []Choice          // a front, from least blemish up
	layouts int               // looked at
	steps   int               // that this took
	tied    int               // of these those that were nested only to break ties
	nested  map[string]nested // by partsKey
	memory  nest.Memory       // of the nests
	end     EndCause

	bare   nest.Problem  // without a part
	strips []nest.Strip  // that every layout covers
	least  Need          // no layout needs less
	how    nest.Argument // what that rests on
	within *limit        // what prices hold for, nil where that is every choice
	onHand int           // sheets of stock with a count
	buys   bool          // other stock has none

	endless int // what needed returns, once it is known

	orders  []*order // all that were started
	prices  []*order // of these those by price alone, the best first
	dice    *rand.Rand
	ties    *order                       // by blemish, equal ones by price
	between map[[2]fraction.Ratio]*order // between choices of these blemishes, the order to close the gap by
	open    []openNest                   // of the layouts whose least need is not known
	broken  int                          // hard rules that the first layout had to break; no other may break more
}

// limit is that choices cost no more than one that was found, so that none takes a sheet of a dearer kind.
type limit struct {
	need Need // of the one that was found
	all  Need // no choice needs less of any of it, however dear
}

// nested is what is known of the least blemish with which some parts were met, and their nest if one
// was searched.
type nested struct {
	blemish fraction.Ratio
	nest    *nest.Result
}

// openNest is a layout whose nest was not searched to its end.
type openNest struct {
	blemish fraction.Ratio
	lower   nest.Bound
}

// close ends the orders.
func (e *explorer) close() {
	for _, o := range e.orders {
		o.stop()
	}
}

func (e *explorer) stopped() bool { return e.ctx.Err() != nil }

// search looks at the layout of least blemish and finds what no layout can need less than. Then it
// goes round: layouts that use offcuts, from the second round on by chance too, then those that the
// bounds leave open, in the orders that close the gaps of the front. Each round goes on where the one
// before ended, so that more rounds find all that fewer do.
func (e *explorer) search() error {
	for _, start := range []func() error{e.bound, e.startLooks, e.takeOver, e.leaveOut, e.startPrices} {
		if err := start(); err != nil || e.ended() {
			return err
		}
	}
	offcuts := newOffcuts(e)
	for round, before := 0, 0; (round < e.budget.Effort || e.steps/e.budget.Effort < e.budget.Steps) && before < e.layouts; round++ {
		before = e.layouts
		steps := []func() error{offcuts.look, e.closeGaps}
		if round > 0 {
			steps = []func() error{offcuts.look, offcuts.shuffle, e.closeGaps}
		}
		for _, step := range steps {
			if err := step(); err != nil || e.ended() {
				return err
			}
		}
	}
	return nil
}

// ended reports whether nothing is left to be found, and notes why.
func (e *explorer) ended() bool {
	switch {
	case len(e.found) == 0:
		return false
	case e.found[0].complete() && e.found[0].Need.Compare(e.least) <= 0:
		e.end = BoundMet
	case slices.ContainsFunc(e.orders, func(o *order) bool { return o.spent }):
		e.end = LayoutsSpent
	case e.stopped():
		e.end = ContextStopped
	case e.tooLittle(), e.ruledOut():
	case e.nothingOpen():
		e.end = GapsClosed
	default:
		return false
	}
	return true
}

// nothingOpen reports whether no layout that was not met can stand beside the choices found.
func (e *explorer) nothingOpen() bool {
	return e.closed(nil, &e.found[len(e.found)-1]) && e.closed(&e.found[0].Layout.Total, &e.found[0]) && e.openStep() < 0
}

// bound finds what no layout of the room can need less than.
func (e *explorer) bound() (err error) {
	if e.strips, err = e.room.Strips(); err != nil {
		return err
	}
	e.bare = fraction.Must(Nesting(e.room, &wall.Layout{}))
	lower, err := nest.StripBound(e.bare, e.room.Gaps.Seam, e.strips)
	if err != nil {
		return err
	}
	e.raise(lower)
	e.countStock()
	return nil
}

// leaveOut leaves the kinds out of prices of which one sheet costs more than what is found: what takes it needs more.
func (e *explorer) leaveOut() error {
	cheap, bare := &e.found[len(e.found)-1], e.bare
	bare.Stock = slices.DeleteFunc(slices.Clone(e.room.Stock), func(s nest.Stock) bool {
		return cheap.Need.Cost.Less(fraction.Must(s.Price.Ratio()))
	})
	if !cheap.complete() || len(bare.Stock) == len(e.room.Stock) {
		return nil
	}
	lower, err := nest.StripBound(bare, e.room.Gaps.Seam, e.strips)
	if err == nil {
		e.bare, e.within = bare, &limit{cheap.Need, e.least}
		e.raise(lower)
	}
	return err
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

// look nests a layout unless one with the same parts that looks as good was met before or a bound says
// that it cannot need less, and keeps it if it needs less than all that look as good or better.
func (e *explorer) look(layout wall.Layout) error {
	e.layouts++
	e.steps += len(layout.Pieces) * len(e.room.Stock) * stepsOfPiece
	problem := fraction.Must(Nesting(e.room, &layout))
	key := partsKey(problem)
	before, met := e.nested[key]
	if met && before.blemish.Compare(layout.Total) <= 0 {
		return nil
	}
	e.nested[key] = nested{layout.Total, before.nest}
	if before.nest != nil {
		e.keep(e.choice(layout, *before.nest))
		return nil
	}
	at := e.after(layout.Total)
	r, err := e.nestOnTrial(&layout, problem, at)
	switch {
	case err != nil:
		return err
	case r != nil:
		e.nested[key] = nested{layout.Total, r}
		e.keep(e.choice(layout, *r))
	case e.found[at-1].Layout.Total == layout.Total:
		return e.lookAtTie(layout, problem, at-1)
	}
	return nil
}

// nestOnTrial returns a nest of a layout, or nil once a bound says that it needs no less than the last
// of so many choices, which look as good.
func (e *explorer) nestOnTrial(l *wall.Layout, problem nest.Problem, at int) (*nest.Result, error) {
	b := nest.Budget{Nodes: e.budget.Nodes / draftShare, Draft: true, Memory: &e.memory}
	if e.room.Profile.Boards {
		b.Nodes = e.budget.Nodes / boardShare
	}
	if at > 0 && e.found[at-1].complete() {
		need := e.found[at-1].Need
		if worse, err := e.priceSaysAsMuch(l, need); worse || err != nil {
			return nil, err
		}
		b.Enough = func(b nest.Bound) bool { return need.Compare(e.atLeast(b)) <= 0 }
	}
	r, err := nest.Search(e.ctx, problem, b)
	e.steps += r.Nodes
	if err != nil || b.Enough != nil && b.Enough(r.Bound) {
		return nil, err
	}
	return &r, nil
}

// priceSaysAsMuch reports whether prices say that a layout needs no less.
func (e *explorer) priceSaysAsMuch(l *wall.Layout, need Need) (bool, error) {
	for _, o := range e.prices {
		cost, err := e.objective(o.price).Cost(l)
		if err != nil {
			return false, err
		}
		if need.Compare(o.leastNeed(cost)) <= 0 {
			return true, nil
		}
	}
	return false, nil
}

// takeOver looks at the layouts that were found with fewer kinds of stock, and keeps the nests that
// were found with these where it finds none as good.
func (e *explorer) takeOver() error {
	if e.fewer == nil {
		return nil
	}
	choices, err := e.fewer(e.noUse)
	if err != nil {
		return err
	}
	for _, c := range choices {
		if c.Layout.Broken > e.broken {
			continue
		}
		if err := e.look(c.Layout); err != nil {
			return err
		}
		if at := e.after(c.Layout.Total); at > 0 && e.found[at-1].compare(&c) <= 0 {
			continue
		}
		if c.Nest.Bound, err = nest.LowerBound(fraction.Must(Nesting(e.room, &c.Layout))); err != nil {
			return err
		}
		c.Nest.Status = nest.Spent
		e.keep(e.choice(c.Layout, c.Nest))
	}
	return nil
}

// noUse reports whether what needs no less than this is of no use: the layout of least blemish does not need more.
func (e *explorer) noUse(least Need) bool {
	looks := &e.found[0]
	return looks.complete() && looks.Need.Compare(least) <= 0
}

// ruledOut reports whether nothing that the search may find is of use.
func (e *explorer) ruledOut() bool { return e.noneOf != nil && e.noneOf(e.least) }

// partsKey is the same for problems with the same parts in the same order.
func partsKey(p nest.Problem) string {
	var key []byte
	for _, part := range p.Parts {
		for _, x := range [...]fraction.Length{part.Width, part.Height, part.LeftPhase} {
			key = binary.AppendVarint(binary.AppendVarint(key, x.Num()), x.Den())
		}
	}
	return string(key)
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
		e.prefer(at-1, c)
		return
	}
	for at > 0 && e.found[at-1].Layout.Total == c.Layout.Total {
		at-- // it looks no better and needs more
	}
	later := slices.DeleteFunc(slices.Clone(e.found[at:]), func(d Choice) bool { return d.compare(&c) >= 0 })
	e.found = append(append(e.found[:at:at], c), later...)
}

// atLeast returns a need that no nest with this bound has less than: what is not on hand is bought.
func (e *explorer) atLeast(b nest.Bound) Need {
	return Need{b.Cost, max(b.Bought, b.Sheets-e.onHand), b.Sheets}
}
