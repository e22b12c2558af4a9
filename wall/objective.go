package wall

import (
	"context"
	"iter"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// Objective says what pieces cost, so that layouts can be ordered by what they take and not
// by looks.
type Objective struct {
	// Of is the cost of an inch of width of a piece of this height. It must not be nil, and a
	// higher piece must not cost less than a lower one.
	Of func(height fraction.Length) int64

	// Extra is added to the width of each piece: the kerf of the saw.
	Extra fraction.Length

	// Weight, where it is above 0, is the blemish that an inch of cost counts as: then layouts
	// are ordered by the sum of both.
	Weight fraction.Ratio
}

// LayoutsByCost yields the layouts that [Layouts] does, those first whose pieces together cost
// least (Layout.Cost), and only among those of equal cost those of less blemish. The Cost of
// the first layout is a lower bound for every layout: no layout's pieces, each taken as its
// bounding box, cost less. Where lines slope and corners are rounded, Layout.Cost is rounded
// down for this. With a Weight the sum of blemish and weighted cost decides, and Cost is 0.
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

// valued is a part with its worth for every inch of width.
type valued struct {
	part
	each int64
}

// cost is the part of a rank that objective adds to.
type cost struct {
	worth   fraction.Length
	blemish fraction.Ratio
}

func (a *cost) compare(b *cost) int {
	if a.worth != b.worth {
		return a.worth.Compare(b.worth)
	}
	return a.blemish.Compare(b.blemish)
}

// add returns the cost with that of pieces that are worth so much.
func (t *Objective) add(c cost, worth fraction.Length) cost {
	if t.Weight.Sign() > 0 {
		c.blemish = c.blemish.Add(worth.Over(inch).Mul(t.Weight))
	} else {
		c.worth = c.worth.Add(worth)
	}
	return c
}

// worth returns what the pieces of a panel from left, in column first, to right,
// in column last, are worth.
func (s *stretch) worth(first, last int, left, right fraction.Length) (sum fraction.Length) {
	g, mark := s.region, s.room.Mark
	// A sloped side of an opening that bounds a panel is rounded sideways, and its
	// corner once more where it is rounded up or down.
	if up := ceil(left, mark); left == g.columns[first].left && up != left {
		left = up.Add(mark)
	}
	if down := floor(right, mark); right == g.columns[last].right && down != right {
		right = down.Sub(mark)
	}
	for _, v := range s.valuedParts(first, last) {
		from, to := left, right
		if first < v.first {
			from = g.columns[v.first].left.Add(mark)
		}
		if v.last < last {
			to = g.columns[v.last].right.Sub(mark)
		}
		if from.Less(to) {
			sum = sum.Add(to.Sub(from).Add(s.objective.Extra).Mul(v.each))
		}
	}
	return sum
}

// valuedParts returns the pieces of a panel that starts in column first and stops
// in column last. Of these two columns only the side that is surely in the panel
// counts for how high a piece is, and where lines slope two marks are left out, for
// what rounding takes.
func (s *stretch) valuedParts(first, last int) []valued {
	g := s.region
	if s.worths[first] == nil {
		s.worths[first] = make([][]valued, len(g.columns))
	}
	if parts := s.worths[first][last]; parts != nil {
		return parts
	}
	from, to := g.columns[first].right, g.columns[last].left
	if first == last {
		from = g.columns[first].left
		to = from
	}
	parts := []valued{}
	for _, p := range g.parts(first, last, from, to) {
		height := atLeast(p.top, p.bottom)
		if first == last {
			height = s.leastOf(first, p)
		} else if s.slopes(p) {
			height = height.Sub(s.room.Mark.Mul(2))
		}
		if height.Sign() > 0 {
			parts = append(parts, valued{p, s.objective.Of(height)})
		}
	}
	s.worths[first][last] = parts
	return parts
}

// leastOf returns the least height of the part of a single column.
func (s *stretch) leastOf(column int, p part) fraction.Length {
	col := s.region.columns[column]
	for _, c := range col.cells {
		if c.bottom(col.left) == p.bottom {
			return c.least(col.left, col.right, s.room.Mark)
		}
	}
	return fraction.Length{}
}

// slopes reports whether any line of the part's columns slopes.
func (s *stretch) slopes(p part) bool {
	for _, col := range s.region.columns[p.first : p.last+1] {
		for _, c := range col.cells {
			if c.topLeft.Y != c.topRight.Y || c.bottomLeft.Y != c.bottomRight.Y {
				return true
			}
		}
	}
	return false
}
