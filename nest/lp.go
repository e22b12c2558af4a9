package nest

import "math"

// covering is the linear programme over sets of parts that one sheet gives: the least number of
// sheets, in fractions, that give each group as often as needed (P. C. Gilmore and R. E. Gomory, "A
// linear programming approach to the cutting-stock problem", Operations Research 9 (1961)). Its
// prices tell what a part is worth. It is reckoned in floating point, but nothing rests on that:
// the prices are rounded to whole numbers, and whatever they are, the fullest sheet at those
// prices, which is found exactly, makes a bound of them.
//
// Products are rounded to float64 one by one, so that every machine takes the same steps.
type covering struct {
	need    []float64
	level   []float64   // of the set in each row of the basis
	inverse [][]float64 // of the basis
	price   []float64   // by group
}

// tight is what counts as zero in the linear programme.
const tight = 1e-9

// newCovering starts from sets of one group each, as many as a sheet gives.
func newCovering(need, most []int) *covering {
	n := len(need)
	c := &covering{price: make([]float64, n)}
	for g := range need {
		row := make([]float64, n)
		row[g] = 1 / float64(most[g])
		c.inverse = append(c.inverse, row)
		// Needs that differ a little keep equal steps from running in a circle.
		c.need = append(c.need, float64(need[g])+float64(g+1)*1e-7)
		c.level = append(c.level, c.need[g]/float64(most[g]))
	}
	c.reprice()
	return c
}

// reprice sums the rows of the inverse: each set costs one sheet.
func (c *covering) reprice() {
	for g := range c.price {
		c.price[g] = 0
		for _, row := range c.inverse {
			c.price[g] += row[g]
		}
	}
}

// enter brings a set, as pieces by group, into the basis; ok is false if that cannot be done.
func (c *covering) enter(count []int) (ok bool) {
	n := len(c.need)
	column := make([]float64, n)
	out, least := -1, math.Inf(1)
	for r, row := range c.inverse {
		for g, k := range count {
			if k != 0 {
				column[r] += float64(row[g] * float64(k))
			}
		}
		if column[r] > tight {
			if ratio := c.level[r] / column[r]; ratio < least {
				out, least = r, ratio
			}
		}
	}
	if out < 0 {
		return false
	}
	pivot := column[out]
	for g := range c.inverse[out] {
		c.inverse[out][g] /= pivot
	}
	c.level[out] = least
	for r, row := range c.inverse {
		if r == out || column[r] == 0 {
			continue
		}
		for g := range row {
			row[g] -= float64(column[r] * c.inverse[out][g])
		}
		c.level[r] -= float64(column[r] * least)
	}
	c.reprice()
	return true
}

// wholePrices returns the prices in parts of one, not below zero, rounded.
func (c *covering) wholePrices(one int64) []int64 {
	whole := make([]int64, len(c.price))
	for g, p := range c.price {
		if p > 0 && p <= 1 {
			whole[g] = int64(math.Round(float64(p * float64(one))))
		} else if p > 1 {
			whole[g] = one
		}
	}
	return whole
}
