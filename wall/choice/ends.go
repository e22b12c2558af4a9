package choice

import (
	"math"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// searchEnds searches the nests of the front's ends with the whole budget, that of least need first.
func (e *explorer) searchEnds() error {
	if err := e.searchAgain(len(e.found) - 1); err != nil {
		return err
	}
	return e.searchAgain(slices.IndexFunc(e.found, func(c Choice) bool { return c.complete() }))
}

// searchAgain searches the nest of choice i with the whole budget; nothing where it is proved
// already or i is none.
func (e *explorer) searchAgain(i int) error {
	if i < 0 || e.found[i].Nest.Bound.Proved || e.stopped() {
		return nil
	}
	before := e.found[i]
	problem := fraction.Must(Nesting(e.room, &before.Layout))
	r, err := nest.Search(e.ctx, problem, nest.Budget{Nodes: e.nodes(), Draft: true, Memory: &e.memory})
	if err != nil {
		return err
	}
	again := e.choice(before.Layout, r)
	if again.compare(&before) > 0 {
		return nil
	}
	e.open = slices.DeleteFunc(e.open, func(o openNest) bool { return o.blemish == before.Layout.Total && o.lower == before.Nest.Bound })
	e.found = slices.Delete(e.found, i, i+1)
	e.keep(again)
	return nil
}

// nodes returns the steps that the nest of a choice may take.
func (e *explorer) nodes() int {
	if e.budget.Effort > math.MaxInt/e.budget.Nodes {
		return math.MaxInt
	}
	return e.budget.Effort * e.budget.Nodes
}

// choices returns the front with what is proved of each choice.
func (e *explorer) choices() (Choices, error) {
	c := Choices{Least: e.least, How: e.how, Layouts: e.layouts, End: e.end}
	for _, f := range e.found {
		if f.complete() {
			f.Status = e.proved(&f)
			f.LeastNeed, f.LeastBlemish = e.leastNeed(&f), e.leastBlemish(&f)
			f.Nest = fraction.Must(nest.PostOptimize(fraction.Must(Nesting(e.room, &f.Layout)), f.Nest))
			c.Front = append(c.Front, f)
		}
	}
	if len(c.Front) == 0 {
		return Choices{}, e.short()
	}
	switch last := c.Sheets(); {
	case last.Need.Compare(e.least) > 0 && e.noneNeedsLess(&last, nil):
		c.Least = last.Need
	case c.End == BudgetSpent && last.Need.Compare(e.least) <= 0:
		c.End = BoundMet
	}
	return c, nil
}

// noneNeedsLess reports whether it is proved that no layout with at most this blemish, where it is not nil, needs less than
// a choice. A layout that was passed over because of a bound needs no less than one that looks as good.
func (e *explorer) noneNeedsLess(c *Choice, blemish *fraction.Ratio) bool {
	return c.Need.Compare(e.least) <= 0 || c.Nest.Bound.Proved && e.closed(blemish, c) && !slices.ContainsFunc(e.open, func(o openNest) bool {
		return (blemish == nil || !blemish.Less(o.blemish)) && e.atLeast(o.lower).Compare(c.Need) < 0
	})
}

// proved returns what is proved of a choice.
func (e *explorer) proved(c *Choice) (status Status) {
	looks := slices.ContainsFunc(e.orders, func(o *order) bool { return o.noneBetter(c) })
	for _, o := range e.open {
		looks = looks && (!o.blemish.Less(c.Layout.Total) || c.Need.Compare(e.atLeast(o.lower)) < 0)
	}
	if e.noneNeedsLess(c, &c.Layout.Total) {
		status |= NeedProved
	}
	if looks {
		status |= LooksProved
	}
	return status
}

// leastNeed returns what no layout that looks as good as the choice or better needs less than.
func (e *explorer) leastNeed(c *Choice) Need {
	if c.Status&NeedProved != 0 {
		return c.Need
	}
	floor, beyond := e.least, e.within != nil && e.within.need.Cost.Less(c.Need.Cost)
	if beyond {
		floor = e.within.all
	}
	least := floor
	for _, o := range e.orders {
		if beyond && o.within != nil {
			continue
		}
		price, some := o.unmet(&c.Layout.Total)
		if !some {
			least = c.Need
		} else if n := e.atLeast(o.price.LowerBound(price)); least.Compare(n) < 0 {
			least = n
		}
	}
	for _, o := range e.open {
		if n := e.atLeast(o.lower); !c.Layout.Total.Less(o.blemish) && n.Compare(least) < 0 {
			least = n
		}
	}
	least = slices.MaxFunc([]Need{least, floor}, Need.Compare)
	return slices.MinFunc([]Need{least, c.Need}, Need.Compare)
}

// leastBlemish returns the blemish that no layout has less of that needs as little as the choice.
func (e *explorer) leastBlemish(c *Choice) fraction.Ratio {
	least := c.Layout.Total
	if c.Status&LooksProved != 0 {
		return least
	}
	if floor := e.orders[0].last.Floor; floor.Less(least) { // the order of blemish
		least = floor
	}
	for _, o := range e.open {
		if o.blemish.Less(least) && e.atLeast(o.lower).Compare(c.Need) <= 0 {
			least = o.blemish
		}
	}
	return least
}

// short returns the error for stock that gave the pieces of no layout.
func (e *explorer) short() error {
	short := &ShortError{Layouts: e.layouts, OnHand: e.onHand, Buys: e.buys, Least: e.needed(), Stopped: e.stopped()}
	short.Proved = e.tooLittle() || e.end == LayoutsSpent && len(e.open) == 0
	if n := len(e.found); n > 0 {
		c := e.found[n-1]
		for _, u := range c.Nest.Unplaced {
			piece := c.Layout.Pieces[u.Part-1]
			short.Left = append(short.Left, LeftOver{piece.Label, e.room.Runs[piece.Run].Name, u.Why, u.Needs})
		}
	}
	return short
}

// tooLittle reports whether no layout can do with the stock.
func (e *explorer) tooLittle() bool { return !e.buys && e.onHand < e.needed() }

// countStock finds how many sheets are on hand and whether others can be bought.
func (e *explorer) countStock() {
	for _, s := range e.room.Stock {
		if s.Count == nil {
			e.buys = true
		} else if e.onHand += *s.Count; e.onHand < 0 {
			e.onHand = math.MaxInt
		}
	}
}

// needed returns how many sheets every layout needs at least, were there enough.
func (e *explorer) needed() int {
	if e.endless == 0 {
		endless := e.bare
		endless.Stock = slices.Clone(e.room.Stock)
		for i := range endless.Stock {
			endless.Stock[i].Count = nil
		}
		e.endless = fraction.Must(nest.StripBound(endless, e.room.Gaps.Seam, e.strips)).Sheets
	}
	return e.endless
}
