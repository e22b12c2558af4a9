package verify

import "slices"

// bound checks what the plan says of its number of sheets.
func (c *checker) bound() {
	sheets, b := len(c.plan.Sheets), c.plan.Bound
	c.require(b.SheetsAtLeast <= sheets, Bound, "bound.sheets_at_least", b.SheetsAtLeast, sheets,
		"more than the plan's sheets")
	// Where stock is counted, proved speaks of the sheets to buy, which some on hand may replace.
	if !slices.ContainsFunc(c.job.Stock, func(s stock) bool { return s.Count != nil }) {
		c.equal(Bound, "bound.proved", b.Proved, b.SheetsAtLeast == sheets, "proved is not the same as bound met")
	}
	area, best := zero(), zero()
	for _, piece := range c.plan.Pieces {
		area = sum(area, size(piece.Outline.area()))
	}
	for _, s := range c.job.Stock {
		best = most(best, times(s.Width, s.usable()))
	}
	c.between(Bound, "sheets", times(best, whole(int64(sheets))), area, nil,
		"square inches of sheets, less than the pieces have")
}

// choices checks the trade-off: one is chosen, it is the plan's, and none is worse than another.
func (c *checker) choices() {
	chosen := 0
	for k, choice := range c.plan.Choices {
		path := item("choices", k)
		if choice.Chosen {
			chosen++
			c.equal(Choices, path+".sheets", choice.Sheets, len(c.plan.Sheets), "not the plan's sheets")
			c.equal(Choices, path+".blemish_total", choice.BlemishTotal, c.plan.BlemishTotal, "not the plan's total")
			c.equal(Choices, path+".cost", choice.Cost, or(c.plan.Total, choice.Cost), "not the plan's total")
		}
		c.require(choice.Bought == nil || *choice.Bought <= choice.Sheets, Choices, path+".bought", choice.Bought, choice.Sheets, "more than all")
		for l, other := range c.plan.Choices[:k] {
			c.require(!choice.asGood(other) && !other.asGood(choice), Choices, path, "as good or worse",
				"better in something", "one of this and choices[%d] is no better in anything", l)
		}
	}
	c.equal(Choices, "choices", chosen, 1, "choices chosen")
}

// asGood says whether a is at least as good as b in everything.
func (a planChoice) asGood(b planChoice) bool {
	if a.Bought != nil && b.Bought != nil && *a.Bought > *b.Bought {
		return false
	}
	return a.Sheets <= b.Sheets && !less(b.Cost, a.Cost) && !less(b.BlemishTotal, a.BlemishTotal)
}

// takeoff checks the sums of the take-off, as far as prices are known.
func (c *checker) takeoff() {
	subtotal, unpriced := zero(), 0
	for k, row := range c.plan.Takeoff {
		if row.Price == nil && row.Buy > 0 {
			unpriced++
		}
		cost := times(or(row.Price, zero()), whole(int64(row.Buy)))
		c.given(Takeoff, item("takeoff", k)+".cost", row.Cost, cost, "not the price of what to buy")
		subtotal = sum(subtotal, cost)
	}
	c.given(Takeoff, "subtotal", c.plan.Subtotal, subtotal, "not the sum of the rows")
	c.given(Takeoff, "total", c.plan.Total, sum(subtotal, or(c.plan.Tax, zero())), "not subtotal and tax")
	if c.plan.Unpriced != nil {
		c.equal(Takeoff, "unpriced", *c.plan.Unpriced, unpriced, "rows to buy without a price")
	}
}
