package wall

import (
	"context"
	"iter"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// Objective says what pieces cost, so that layouts can be ordered by it and not by looks.
type Objective struct {
	// Of is the cost of an inch of width of a piece of this height, 0 or more. It must not be nil,
	// and a higher piece must not cost less than a lower one.
	Of func(height fraction.Length) int64

	// Extra is added to the width of each piece: the kerf of the saw.
	Extra fraction.Length

	// Weight, where it is above 0, is the blemish that an inch of cost counts as: then layouts are
	// ordered by the sum of both.
	Weight fraction.Ratio
}

// LayoutsByCost yields the layouts that [Layouts] does in the order of what their pieces cost
// together (Layout.Cost), and among those of equal cost of blemish. The first Cost is a lower
// bound: no layout's pieces, each taken as its bounding box, cost less; where lines slope and
// corners are rounded, Layout.Cost is rounded down for this. With a Weight the sum of blemish and
// weighted cost decides, and Cost is 0.
func LayoutsByCost(ctx context.Context, room Room, o Objective) iter.Seq2[Layout, error] {
	if o.Of == nil {
		return func(yield func(Layout, error) bool) {
			yield(Layout{}, &fault.Fault{Path: fault.Of("Of"), Want: "a function that says what an inch of a piece costs"})
		}
	}
	return layouts(ctx, room, &o)
}

// Cost returns what the pieces of a layout cost together, each taken as its bounding box. Without
// an Of nothing costs anything.
func (o Objective) Cost(l *Layout) (sum fraction.Length, err error) {
	defer fraction.Catch(&err)
	if o.Of == nil || l == nil {
		return sum, nil
	}
	for _, p := range l.Pieces {
		low, high := p.Shape.Bounds()
		sum = sum.Add(high.X.Sub(low.X).Add(o.Extra).Mul(o.Of(high.Y.Sub(low.Y))))
	}
	return sum, nil
}

// pricedPart is a part with the cost of an inch of its width.
type pricedPart struct {
	part
	each int64
}

// add adds the price of pieces to a cost.
func (o *Objective) add(c *cost, price fraction.Length) {
	if o.Weight.Sign() > 0 {
		c.blemish = c.blemish.Add(price.Over(inch).Mul(o.Weight))
	} else {
		c.price = c.price.Add(price)
	}
}

// price returns the least cost of a panel's pieces from left, in column first, to right, in last.
func (s *stretch) price(first, last int, left, right fraction.Length) (sum fraction.Length) {
	g, mark := s.region, s.room.Mark
	// A sloped side of an opening that bounds a panel is rounded sideways, and its corner once more
	// where it is rounded up or down.
	if up := ceil(left, mark); left == g.columns[first].left && up != left {
		left = up.Add(mark)
	}
	if down := floor(right, mark); right == g.columns[last].right && down != right {
		right = down.Sub(mark)
	}
	for _, p := range s.pricedParts(first, last) {
		from, to := left, right
		if first < p.first {
			from = g.columns[p.first].left.Add(mark)
		}
		if p.last < last {
			to = g.columns[p.last].right.Sub(mark)
		}
		if from.Less(to) {
			sum = sum.Add(to.Sub(from).Add(s.objective.Extra).Mul(p.each))
		}
	}
	return sum
}

// pricedParts returns the pieces of a panel that starts in column first and stops in column last.
// Of these two columns only the side that is surely in the panel counts for the height of a piece,
// and where lines slope two marks are left out, for what rounding takes.
func (s *stretch) pricedParts(first, last int) []pricedPart {
	key := [2]int{first, last}
	if parts, ok := s.priced[key]; ok {
		return parts
	}
	g := s.region
	from, to := g.columns[first].right, g.columns[last].left
	if first == last {
		from = g.columns[first].left
		to = from
	}
	var parts []pricedPart
	for _, p := range g.parts(first, last, from, to) {
		height := atLeast(p.top, p.bottom)
		if first == last {
			height = s.leastOf(first, p)
		} else if s.slopes(p) {
			height = height.Sub(s.room.Mark.Mul(2))
		}
		if height.Sign() > 0 {
			parts = append(parts, pricedPart{p, s.objective.Of(height)})
		}
	}
	s.priced[key] = parts
	return parts
}

// leastOf returns the least height of the part of a single column.
func (s *stretch) leastOf(column int, p part) fraction.Length {
	col := s.region.columns[column]
	for _, c := range col.cells {
		if c.bottom.at(col.left) == p.bottom {
			return c.least(col.left, col.right, s.room.Mark)
		}
	}
	return fraction.Length{}
}

// slopes reports whether any line of the part's columns slopes.
func (s *stretch) slopes(p part) bool {
	return slices.ContainsFunc(s.region.columns[p.first:p.last+1], func(col column) bool {
		return slices.ContainsFunc(col.cells, func(c cell) bool { return c.top.slopes() || c.bottom.slopes() })
	})
}
