package proof

import "slices"

// seams returns the least price of the seams between left and right, all of them
// on lines. ok is false where no sheets can cover the stretch so.
func (s *search) seams(i int, g *region, origin, left, right rat) (best price, ok bool) {
	j, p := s.job, s.job.pattern
	if p.boards {
		return price{0, zero()}, true
	}
	c := covering{
		pattern: p, sheets: s.sheets(g), origin: origin, narrow: times(s.weights[leastPanel], p.pitch),
		starts: []rat{left}, prices: []price{{0, zero()}},
	}
	if c.fits(left, right) {
		// A seam more costs something or nothing, never less.
		return c.panel(left, right), true
	}
	gap := half(j.gaps.seam)
	for _, x := range p.linesBetween(origin, left, right) {
		best, ok := c.cheapest(diff(x, gap))
		if !ok {
			continue
		}
		best.blemish = sum(best.blemish, g.seamTerm(i, x, s.weights).cost())
		best.broken += j.nearBoxes(i, x, s.weights[boxClear])
		c.starts, c.prices = append(c.starts, sum(x, gap)), append(c.prices, best)
	}
	return c.cheapest(right)
}

// sheets returns the stock that counts for a region.
func (s *search) sheets(g *region) []stock {
	low, high := g.extent()
	return slices.DeleteFunc(slices.Clone(s.job.stock), func(sheet stock) bool {
		usable := diff(sheet.length, times(whole(2), sheet.squareUp))
		return s.longOnly && less(usable, diff(high, low))
	})
}

// covering is a stretch covered from its left edge as far as the places where a
// panel may start.
type covering struct {
	pattern        *pattern
	sheets         []stock
	origin, narrow rat
	starts         []rat
	prices         []price // the least of all up to each start
}

// fits says whether some sheet gives a panel from left to right.
func (c *covering) fits(left, right rat) bool {
	return less(left, right) && c.pattern.sheetFor(c.sheets, diff(right, left), c.pattern.phase(left, c.origin))
}

// panel returns the price of a panel: a narrow one breaks a rule.
func (c *covering) panel(left, right rat) price {
	if less(diff(right, left), c.narrow) {
		return price{1, zero()}
	}
	return price{0, zero()}
}

// cheapest returns the least price of reaching a panel's right edge from any of
// the starts.
func (c *covering) cheapest(right rat) (best price, ok bool) {
	widest := zero()
	for _, s := range c.sheets {
		widest = most(widest, s.width)
	}
	for k := len(c.starts) - 1; k >= 0; k-- {
		if less(widest, diff(right, c.starts[k])) {
			break // the starts before lie farther left still
		}
		total := c.prices[k].plus(c.panel(c.starts[k], right))
		if (!ok || total.compare(best) < 0) && c.fits(c.starts[k], right) {
			best, ok = total, true
		}
	}
	return best, ok
}
