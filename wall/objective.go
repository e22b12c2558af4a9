package wall

import (
	"context"
	"iter"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// Objective says what pieces cost, so that layouts can be ordered by it and not by looks. A piece
// costs Of its height times its width. Searches on several goroutines call Of at the same time.
type Objective struct {
	// Of is the cost of an inch of width of a piece of this height, 0 or more. It must not be nil,
	// and a higher piece must not cost less than a lower one.
	Of func(height fraction.Length) int64

	// Measure says how widths count.
	Measure nest.Measure

	// Weight, where it is above 0, is the blemish that an inch of cost counts as: then layouts are
	// ordered by the sum of both.
	Weight fraction.Ratio
}

// LayoutsByCost yields the layouts that [Layouts] does in the order of what their pieces cost
// together (Layout.Cost), and among those of equal cost of blemish. The first Cost is a lower
// bound: no layout's pieces, each taken as its bounding box, cost less; where lines slope, corners
// are rounded or lengths are finer than 1/3,251,200 in, Layout.Cost is rounded down for this. With a
// Weight the sum of blemish and weighted cost decides, and Cost is 0. The smaller the numbers that
// Of returns, the finer the sums can be; those beyond 2^61 units are refused.
func LayoutsByCost(ctx context.Context, room Room, o Objective) iter.Seq2[Layout, error] {
	return layouts(ctx, room, &o)
}

// Cost returns what the pieces of a layout cost together, each taken as its bounding box. Without
// an Of nothing costs anything.
func (o Objective) Cost(l *Layout) (sum fraction.Length, err error) {
	defer fraction.Catch(&err)
	if o.Of == nil || l == nil {
		return sum, nil
	}
	count := o.Measure.Counter()
	for _, p := range l.Pieces {
		low, high := p.Shape.Bounds()
		width := high.X.Sub(low.X).Add(o.Measure.Extra)
		if !o.Measure.Additive() || len(o.Measure.Windows) > 0 {
			width = fraction.Of(count(up(p.LeftPhase.Add(low.X), steps), down(p.LeftPhase.Add(high.X), steps)), steps)
		}
		sum = sum.Add(fraction.Max(width, fraction.Length{}).Mul(o.Of(high.Y.Sub(low.Y))))
	}
	return sum, nil
}

// unitsOf returns how many units go to an inch of cost: as many as steps, or by half and half fewer
// until the most that the room can cost fits; with a Weight, what an inch of cost counts as.
func (m *Model) unitsOf(o *Objective) int64 {
	if o.Weight.Sign() > 0 {
		return inGrains(o.Weight)
	}
	var width, dearest int64 = 1, 1
	count := o.Measure.Counter()
	for _, run := range m.room.Runs {
		most := run.Width.Abs()
		if o.Measure.Additive() {
			most = fraction.Max(most, fraction.Of(count(0, up(most, steps)), steps))
		}
		width = total(width, 2*up(most, 1))
	}
	for _, s := range m.stretches {
		if s.err == nil {
			dearest = max(dearest, o.Of(s.value.most))
		}
	}
	units := int64(steps)
	for units > 1 && dearest > mostCost/width/units {
		units /= 2
	}
	return units
}

// setObjective sets what layouts are ordered by.
func (s *search) setObjective(o *Objective) {
	s.objective, s.units, s.count = o, s.m.unitsOf(o), o.Measure.Counter()
}

// startOf returns where a panel starts for the objective that starts at left, in a column. A sloped
// side of an opening that bounds a panel is rounded sideways, and its corner once more where it is
// rounded up or down.
func (p *program) startOf(left fraction.Length, column int) int64 {
	if left == p.region.columns[column].left {
		if on := ceil(left, p.room.Mark); on != left {
			left = on.Add(p.room.Mark)
		}
	}
	return up(left, steps)
}

// placeEnds finds where the parts of panels start and stop, rounded as a start is.
func (p *program) placeEnds(c *cover, o fraction.Length) {
	columns, mark := p.region.columns, p.room.Mark
	c.starts, c.stops = resized(c.starts, len(c.at)), resized(c.stops, len(c.at))
	c.originLow, c.originHigh = down(o, steps), up(o, steps)
	if slots := p.region.slots; len(slots) > len(columns) {
		c.starting, c.stopping = resized(c.starting, len(c.at)), resized(c.stopping, len(c.at))
		first, last := 0, 0
		for i := range c.at {
			first, last = p.region.slotFrom(first, c.left[i], false), p.region.slotFrom(last, c.right[i], true)
			c.starting[i], c.stopping[i] = first, last
		}
		c.from, c.to = c.starting, c.stopping
	}
	for i, left := range c.left {
		c.starts[i], c.stops[i] = c.low[i], c.high[i]
		if left == columns[c.first[i]].left {
			c.starts[i] = p.startOf(left, c.first[i])
		}
		if right := c.right[i]; right == columns[c.last[i]].right {
			if on := floor(right, mark); on != right {
				c.stops[i] = down(on.Sub(mark), steps)
			}
		}
	}
	if len(p.columnStarts) == 0 {
		for _, col := range columns {
			p.columnStarts = append(p.columnStarts, up(col.left.Add(mark), steps))
			p.columnStops = append(p.columnStops, down(col.right.Sub(mark), steps))
		}
	}
}

// price returns the least cost in units of the pieces of a panel between nodes i and j of a bay.
func (p *program) price(c *cover, i, j int) (sum int64) {
	first, last := c.first[i], c.last[j]
	row := p.priced[c.from[i]]
	if row == nil {
		row = make([][]pricedPart, len(p.priced))
		p.priced[c.from[i]] = row
	}
	if row[c.to[j]] == nil {
		row[c.to[j]] = p.pricedParts(c.from[i], c.to[j])
	}
	for _, part := range row[c.to[j]] {
		from, to := c.starts[i], c.stops[j]
		if first < part.first {
			from = p.columnStarts[part.first]
		}
		if part.last < last {
			to = p.columnStops[part.last]
		}
		if from < to {
			sum += part.each * p.search.measured(from-c.originLow, to-c.originHigh)
		}
	}
	return sum
}

// measured returns what a part counts, in units rounded down.
func (s *search) measured(from, to int64) int64 {
	counts := max(0, s.count(from, to))
	if s.units == steps {
		return counts
	}
	return inUnits(counts, steps, s.units)
}

// pricedPart is a part with the cost of an inch of its width.
type pricedPart struct {
	part
	each int64
}

// pricedParts returns the pieces of a panel that starts in slot start and stops in slot stop. Of these two only the side that
// is surely in the panel counts for the height of a piece, and where lines slope what rounding may take is left out: corners of
// pieces lie on marks.
func (p *program) pricedParts(start, stop int) []pricedPart {
	g := p.region
	first, last := g.slots[start].column, g.slots[stop].column
	from, to := g.slots[start].right, g.slots[stop].left
	if start == stop {
		from = g.slots[start].left
		to = from
	}
	parts := []pricedPart{}
	for _, q := range g.parts(first, last, from, to, fraction.Length{}) {
		height := atLeast(q.top, q.bottom)
		if start == stop {
			height = p.leastOf(&g.slots[start], q)
		} else if p.slopes(q) {
			height = atLeast(floor(q.top, p.room.Mark), ceil(q.bottom, p.room.Mark))
		}
		if height.Sign() > 0 {
			parts = append(parts, pricedPart{q, p.search.objective.Of(height)})
		}
	}
	widest := p.widest.Add(p.pitch).Add(p.search.objective.Measure.Extra)
	if p.search.objective.Measure.Additive() {
		far := g.right.Sub(g.left).Add(p.pitch)
		widest = fraction.Of(p.search.count(down(p.pitch.Neg(), steps), up(far, steps)), steps)
	}
	for _, q := range parts {
		if most := mostCost / int64(len(parts)) / max(1, up(widest, p.search.units)); q.each > most {
			tooMuch("*", q.each, p.search.units)
		}
	}
	return parts
}

// leastOf returns the least height of the part of a single slot.
func (s *stretch) leastOf(in *slot, p part) fraction.Length {
	for _, c := range s.region.columns[in.column].cells {
		if c.bottom.at(in.left) == p.bottom {
			return c.least(in.left, in.right, s.room.Mark)
		}
	}
	return fraction.Length{}
}

// slopes reports whether any line of the part's columns slopes.
func (s *stretch) slopes(p part) bool {
	return slices.ContainsFunc(s.region.columns[p.first:p.last+1], func(col column) bool { return !col.level() })
}
