package verify

import "slices"

// seams returns the least price of the seams between left and right, all of them on lines. ok is
// false where no sheets can cover the stretch so.
func (s *search) seams(i int, g *region, origin, left, right rat) (best price, ok bool) {
	j, p := s.job, s.job.pattern
	if p.Boards {
		return price{0, zero()}, true
	}
	c := covering{
		pattern: p, sheets: s.sheets(g), origin: origin, narrow: p.narrowest(s.weights), widest: zero(),
		starts: []rat{left}, prices: []price{{0, zero()}},
	}
	for _, sheet := range c.sheets {
		c.widest = most(c.widest, sheet.Width)
	}
	// A seam more costs something or nothing, never less.
	if best, ok := c.cheapest(right); ok {
		return best, true
	}
	gap := half(j.Gaps.Seam)
	for _, x := range j.linesBetween(origin, left, right) {
		best, ok := c.cheapest(diff(x, gap))
		if !ok {
			continue
		}
		best.blemish = sum(best.blemish, s.seam(i, g, x))
		best.broken += j.nearBoxes(i, x, s.weights["box_clear"])
		c.starts, c.prices = append(c.starts, sum(x, gap)), append(c.prices, best)
	}
	return c.cheapest(right)
}

// seam returns the blemish of a seam with its middle at x on a line.
func (s *search) seam(i int, g *region, x rat) rat {
	gap, total := half(s.job.Gaps.Seam), g.seamTerm(i, x, s.weights).cost()
	for _, t := range g.weakStrips(i, joint{left: diff(x, gap), right: sum(x, gap)}, s.weights) {
		total = sum(total, t.cost())
	}
	return total
}

// sheets returns the stock that counts for a region.
func (s *search) sheets(g *region) []stock {
	if !s.sureOnly {
		return s.job.Stock
	}
	low, high := g.extent()
	sure := slices.DeleteFunc(slices.Clone(s.job.Stock), func(sheet stock) bool {
		return sheet.Count != nil || less(sheet.usable(), diff(high, low))
	})
	s.others = s.others || len(sure) < len(s.job.Stock)
	return sure
}

// extent returns the lowest and highest y of a region's outline.
func (g *region) extent() (low, high rat) {
	var l loop
	for _, e := range g.outline {
		l = append(l, e.a, e.b)
	}
	if from, to, ok := bounds(l); ok {
		return from.Y, to.Y
	}
	return zero(), zero()
}

// covering is a stretch covered from its left edge as far as the places where a panel may start.
type covering struct {
	pattern        *pattern
	sheets         []stock
	origin         rat
	narrow, widest rat // panels below one break a rule, above the other no sheet gives them
	starts         []rat
	prices         []price // the least of all up to each start
}

// cheapest returns the least price of reaching a panel's right edge from any of the starts. ok is
// false where no sheet gives a panel that ends there.
func (c *covering) cheapest(right rat) (best price, ok bool) {
	for k := len(c.starts) - 1; k >= 0; k-- {
		width := diff(right, c.starts[k])
		if less(c.widest, width) {
			break // the starts before lie farther left still
		}
		total := c.prices[k]
		if less(width, c.narrow) {
			total.broken++
		}
		if width.Sign() <= 0 || ok && total.compare(best) >= 0 {
			continue
		}
		if c.pattern.sheetFor(c.sheets, width, c.pattern.phase(c.starts[k], c.origin)) {
			best, ok = total, true
		}
	}
	return best, ok
}

// stretches returns the parts of the run which no opening parts from top to bottom, from left to
// right, each as its left and right x. Where an end of the wall leans, the stretch goes as far as
// its rounded limit.
func (g *region) stretches() [][2]rat {
	var out [][2]rat
	for k := 0; k+1 < len(g.bounds); k++ {
		from, to := g.bounds[k], g.bounds[k+1]
		if len(g.open(middle(from, to), fromRight, nil)) == 0 {
			continue
		}
		if n := len(out); n > 0 && same(out[n-1][1], from) {
			out[n-1][1] = to
			continue
		}
		out = append(out, [2]rat{from, to})
	}
	for k := range out {
		if same(out[k][0], g.left.x) {
			out[k][0] = g.left.stop
		}
		if same(out[k][1], g.right.x) {
			out[k][1] = g.right.stop
		}
	}
	return out
}
