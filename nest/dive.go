package nest

import "slices"

// dive rounds the programme: it fixes the filling of the greatest level, less the pieces that others
// have, and solves the programme for the rest, until no more than so many sheets can do. What is
// left over is put on further sheets. (The residual rounding of G. Belov and G. Scheithauer, "A
// branch-and-cut-and-price algorithm for one-dimensional stock cutting", European Journal of
// Operational Research 171 (2006), without turning back; rounds differ by chance.)
func (c *generator) dive(sheets int, nodes int) plan {
	c.limit = c.nodes + nodes
	need := slices.Clone(c.need)
	var fixed []layout
	for len(fixed) < sheets && slices.Max(need) > 0 {
		c.lp.Cover(need)
		value := c.optimize()
		for range 2 {
			if c.over() || !c.filled(c.lp.Prices(sheetOfPrices), need) {
				break
			}
			value = c.optimize()
		}
		if float64(len(fixed))+value > float64(sheets)+1e-3 || c.over() {
			break
		}
		chosen, most := -1, 0.0
		for i, level := range c.lp.Levels() {
			if level += c.rand.Float64() / 4; level > most {
				chosen, most = i, level
			}
		}
		fixed = append(fixed, c.fix(chosen, need))
	}
	if c.lp.Cover(c.need); c.boards {
		c.lp.Loosen()
	}
	left := c.job.except(c.relax.pieces)
	var rest []int
	for g, n := range need {
		rest = append(rest, c.groups[g].pieces[:n]...)
	}
	rest = c.job.order(rest, tallFirst)
	for len(rest) > 0 {
		var l layout
		l.kind = c.kind
		before := len(rest)
		if l.spots, rest = c.filler.fill(c.kind, rest, manner{}, nil, nil); len(rest) == before {
			left = append(left, rest...)
			break
		}
		fixed = append(fixed, l)
	}
	return plan{fixed, left}
}

// filled looks for fillings worth more than a sheet, of the pieces needed, and reports whether it added any.
func (c *generator) filled(value []int64, need []int) bool {
	above := sheetOfPrices + int64(len(c.groups))
	if c.boards {
		_, filling := c.fullestBoard(c.kind, value, need, above)
		return c.add(filling)
	}
	return c.fillings(value, above, need) > 0
}

// fix takes what is needed of a filling.
func (c *generator) fix(column int, need []int) layout {
	l := layout{kind: c.kind}
	for _, at := range c.columns[column] {
		if g := at.piece; need[g] > 0 {
			need[g]--
			l.spots = append(l.spots, spot{c.groups[g].pieces[need[g]], at.x, at.y})
		}
	}
	return l
}
