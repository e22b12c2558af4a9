package verify

import (
	"fmt"
	"slices"
)

// boundAndChoices checks what the plan says of its number of sheets.
func (c *checker) boundAndChoices() {
	sheets := len(c.plan.Sheets)
	b := c.plan.Bound
	if b.SheetsAtLeast > sheets {
		c.fault("bound", "bound.sheets_at_least", fmt.Sprint(b.SheetsAtLeast), fmt.Sprint(sheets), "more than the plan's sheets")
	}
	// Where some stock is counted, a sheet on hand may stand for one to buy, and
	// proved speaks of those to buy.
	counted := slices.ContainsFunc(c.job.stock, func(s stock) bool { return s.count != nil })
	if !counted && b.Proved != (b.SheetsAtLeast == sheets) {
		c.fault("bound", "bound.proved", fmt.Sprint(b.Proved), fmt.Sprint(b.SheetsAtLeast == sheets), "proved is not the same as bound met")
	}
	if n := c.areaBound(); n > sheets {
		c.fault("bound", "sheets", fmt.Sprint(sheets), fmt.Sprint(n), "fewer sheets than the pieces' area fills")
	}
	chosen := 0
	for k, choice := range c.plan.Choices {
		path := fmt.Sprintf("choices[%d]", k)
		if choice.Chosen {
			chosen++
			if choice.Sheets != sheets {
				c.fault("choices", path+".sheets", fmt.Sprint(choice.Sheets), fmt.Sprint(sheets), "not the plan's sheets")
			}
			c.equal("choices", path+".blemish_total", choice.BlemishTotal.r(), c.plan.BlemishTotal.r(), "not the plan's total")
		}
		for l, other := range c.plan.Choices[:k] {
			if choice.asGood(other) || other.asGood(choice) {
				c.fault("choices", path, choice.String(), fmt.Sprintf("choices[%d]: %v", l, other), "one of the two is no better in anything")
			}
		}
	}
	if chosen != 1 {
		c.fault("choices", "choices", fmt.Sprint(chosen), "1", "choices chosen")
	}
}

// asGood says whether a is at least as good as b in everything.
func (a planChoice) asGood(b planChoice) bool {
	if a.Bought != nil && b.Bought != nil && *a.Bought > *b.Bought {
		return false
	}
	return a.Sheets <= b.Sheets && !less(b.Cost.r(), a.Cost.r()) && !less(b.BlemishTotal.r(), a.BlemishTotal.r())
}

func (a planChoice) String() string {
	return fmt.Sprintf("%d sheets, %s, blemish %s", a.Sheets, text(a.Cost.r()), text(a.BlemishTotal.r()))
}

// areaBound returns a number of sheets below which the pieces' own area cannot
// be had from the job's largest sheets, what is squared up taken off.
func (c *checker) areaBound() int {
	total, best := zero(), zero()
	for _, piece := range c.plan.Pieces {
		if len(piece.Outline) > 2 {
			total = sum(total, size(loopOf(piece.Outline).area()))
		}
	}
	for _, s := range c.job.stock {
		best = most(best, times(s.width, diff(s.length, times(whole(2), s.squareUp))))
	}
	if best.Sign() <= 0 {
		return 0
	}
	return int(negative(down(negative(over(total, best)), whole(1))).Num().Int64())
}
