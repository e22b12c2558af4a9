package nest

import (
	"math"
	"slices"

	"example.com/groovewright/fraction"
)

// On boards the pattern leaves a piece one place across, or two if it can be turned. So the fullest board is a matter of
// heights alone: a dynamic programme finds by height what the pieces between two places across are worth at most, in a stack
// whose shelves are single pieces, or parted by a rip between two such places (P. C. Gilmore and R. E. Gomory, "The theory and
// computation of knapsack functions", Operations Research 14, 1966). It counts a piece that is needed once a second time only
// where it stands on both sides of rips, or in several shelves.

// boards is one search for the fullest board.
type boards struct {
	kerf  int64
	tall  int // of a board with a kerf, in units
	items []standing
	known map[span][]int64
	steps int
}

// standing is a piece of a group where it stands across a board.
type standing struct {
	span
	group int
	high  int // with a kerf, in units
	value int64
	need  int
}

// mostTall is how many units a board has at most: lengths are rounded down to fewer than there are marks.
const mostTall = 1 << 14

// onBoards reports whether sheets of a kind are boards to the pieces.
func (c *generator) onBoards(kind int) bool {
	k := &c.job.kinds[kind]
	return c.job.pitch > 0 && !slices.ContainsFunc(c.groups, func(g group) bool {
		return slices.ContainsFunc(g.at[:g.ways], func(at int64) bool {
			return floorMod(at-k.phase, c.job.pitch)+c.job.pitch+g.w <= k.w
		})
	})
}

// nearBoards is how near to the best prices so far boards are filled.
const nearBoards = 0.7

// standard is what a piece of a board is worth at the prices of a job, where a board is worth sheetOfPrices: for others, whose
// pieces are as large or larger.
type standard struct {
	left, right, height fraction.Length
	value               int64
}

// mostStandards is how many jobs' prices are remembered.
const mostStandards = 4

// recall bounds the job by the prices of others: a piece is worth as much as one of its size, or else as the dearest that could be
// cut from it.
func (c *generator) recall() {
	for _, known := range c.job.memory.boards {
		var values []int64
		for g := range c.groups {
			own, value := c.standard(g, 0), int64(0)
			for _, s := range known {
				if s.left == own.left && s.right == own.right && s.height == own.height {
					value = s.value
					break
				}
				if s.value > value && s.height.Compare(own.height) <= 0 && own.left.Compare(s.left) <= 0 && s.right.Compare(own.right) <= 0 {
					value = s.value
				}
			}
			values = append(values, value)
		}
		most, _ := c.fullestBoard(c.kind, values, c.need, math.MaxInt64)
		c.raise(c.pricesOf(values), most)
	}
}

// remember keeps the prices of the job for others.
func (c *generator) remember() {
	if c.best.value == nil {
		return
	}
	var own []standard
	for g, v := range c.best.value {
		own = append(own, c.standard(g, int64(float64(v)*(sheetOfPrices/float64(c.best.holds)))))
	}
	m := c.job.memory
	m.boards = append([][]standard{own}, m.boards[:min(len(m.boards), mostStandards-1)]...)
}

// standard returns a piece of a group with a value.
func (c *generator) standard(group int, value int64) standard {
	j, q := c.job, &c.groups[group]
	left := j.length(floorMod(q.at[0]-j.kinds[c.kind].phase, j.pitch))
	return standard{left, left.Add(j.length(q.w)), j.length(q.h), value}
}

// near fills a board at prices between the best so far and those of the programme, which settles sooner so, and reports
// whether that is worth more than above at the latter.
func (c *generator) near(now []int64, above int64) bool {
	if c.best.holds == 0 {
		return false
	}
	values := make([]int64, len(now))
	scale := float64(sheetOfPrices) / float64(c.best.holds)
	for g, v := range now {
		values[g] = int64(float64(nearBoards*(float64(c.best.value[g])*scale)) + float64((1-nearBoards)*float64(v)))
	}
	most, filling := c.fullestBoard(c.kind, values, c.need, 0)
	c.raise(c.pricesOf(values), most)
	var worth int64
	for _, at := range filling {
		worth += now[c.groupOf[at.piece]]
	}
	return worth > above && c.add(filling)
}

// fullestBoard returns the most that a board of a kind is worth, no less than any that the saw can make of the pieces needed, and
// a filling of that worth if it is more than above and lengths are not rounded: it may take a piece more often than it is needed.
// It takes time in proportion to the pieces and the units of length.
func (c *generator) fullestBoard(kind int, value []int64, need []int, above int64) (most int64, filling []spot) {
	j, k := c.job, &c.job.kinds[kind]
	unit := k.h + j.kerf
	for g := range c.groups {
		unit = gcd(unit, c.groups[g].h+j.kerf)
	}
	rounded := (k.h + j.kerf + mostTall - 1) / mostTall
	real := rounded <= unit
	unit = max(unit, rounded)
	b := boards{kerf: j.kerf, tall: int((k.h + j.kerf) / unit), known: map[span][]int64{}}
	for g := range c.groups {
		q := &c.groups[g]
		if value[g] <= 0 || need[g] == 0 || !j.fits(k, &q.piece) {
			continue
		}
		for _, at := range q.at[:q.ways] {
			if x := floorMod(at-k.phase, j.pitch); x+q.w <= k.w {
				high := int((q.h + j.kerf) / unit)
				if high == 0 {
					return math.MaxInt64, nil // lower than lengths are rounded: nothing is known
				}
				b.items = append(b.items, standing{span{x, x + q.w}, g, high, value[g], min(need[g], b.tall/high)})
			}
		}
	}
	in := span{0, k.w}
	if full := b.content(in); full != nil {
		most = full[b.tall]
	}
	if real && most > above {
		filling = b.trace(in, b.tall, 0, nil)
	}
	c.nodes += 1 + b.steps/gridStepsPerNode
	counts := make([]int, len(c.groups))
	for i := range filling {
		at := &filling[i]
		g := at.piece
		counts[g]++
		at.piece, at.y = c.groups[g].pieces[min(counts[g], c.need[g])-1], at.y*unit
	}
	return most, filling
}

// within returns the pieces that stand in a part of a board, and how much of it they take across.
func (b *boards) within(in span) (items []standing, taken span) {
	taken = span{in.to, in.from}
	for _, q := range b.items {
		if in.from <= q.from && q.to <= in.to {
			items = append(items, q)
			taken = span{min(taken.from, q.from), max(taken.to, q.to)}
		}
	}
	return items, taken
}

// content returns by height what a part of a board is worth at most; nil where nothing stands in it.
func (b *boards) content(in span) []int64 {
	items, taken := b.within(in)
	if len(items) == 0 {
		return nil
	}
	full, known := b.known[taken]
	if !known {
		full = b.shelves(items, taken)
		for _, q := range items {
			b.add(full, q)
		}
		b.known[taken] = full
	}
	return full
}

// add puts a piece on the stacks as often as it is needed.
func (b *boards) add(full []int64, q standing) {
	if q.need == 0 {
		return
	}
	below := full[:len(full)-q.high]
	if q.need >= b.tall/q.high {
		b.steps += len(below)
		for h, x := range below {
			full[h+q.high] = max(full[h+q.high], x+q.value)
		}
		return
	}
	b.steps += q.need * len(below)
	for range q.need {
		for h := len(below) - 1; h >= 0; h-- {
			full[h+q.high] = max(full[h+q.high], below[h]+q.value)
		}
	}
}

// ripped returns by height what shelves that are parted by a rip are worth at most; nil where there are none.
func (b *boards) ripped(items []standing, taken span) (beside []int64) {
	for i, q := range items {
		if slices.ContainsFunc(items[:i], func(p standing) bool { return p.to == q.to }) {
			continue
		}
		right := b.content(span{q.to + b.kerf, taken.to})
		if right == nil {
			continue
		}
		left := b.content(span{taken.from, q.to})
		if beside == nil {
			beside = make([]int64, b.tall+1)
		}
		b.steps += len(left)
		for h, x := range left {
			beside[h] = max(beside[h], x+right[h])
		}
	}
	return beside
}

// shelves returns by height what stacks of shelves that are parted by a rip are worth at most.
func (b *boards) shelves(items []standing, taken span) []int64 {
	full, beside := make([]int64, b.tall+1), b.ripped(items, taken)
	if beside == nil {
		return full
	}
	var steps []int // heights from which on a shelf is worth more
	for h := 1; h < len(full); h++ {
		if beside[h] > beside[h-1] {
			steps = append(steps, h)
		}
		full[h] = full[h-1]
		b.steps += len(steps)
		for _, s := range steps {
			full[h] = max(full[h], beside[s]+full[h-s])
		}
	}
	return full
}

// trace adds the pieces that make up what content says of a part of a board that is so high, from a height on: groups in place
// of pieces, and units.
func (b *boards) trace(in span, high int, y int64, spots []spot) []spot {
	items, taken := b.within(in)
	if len(items) == 0 {
		return spots
	}
	full := b.shelves(items, taken)
	before := make([][]int64, len(items))
	for i, q := range items {
		before[i] = slices.Clone(full)
		b.add(full, q)
	}
	worth := full[high]
	for i := len(items) - 1; i >= 0; i-- {
		for q := &items[i]; before[i][high] != worth; {
			spots = append(spots, spot{q.group, q.from, y})
			worth, high, y = worth-q.value, high-q.high, y+int64(q.high)
		}
	}
	if worth == 0 {
		return spots
	}
	beside, stacks := b.ripped(items, taken), before[0]
	for worth > 0 {
		s := 1
		for beside[s] == 0 || beside[s]+stacks[high-s] != worth {
			s++
		}
		for _, q := range items {
			left, right := span{taken.from, q.to}, span{q.to + b.kerf, taken.to}
			if r := b.content(right); r != nil && b.content(left)[s]+r[s] == beside[s] {
				spots = b.trace(right, s, y, b.trace(left, s, y, spots))
				break
			}
		}
		worth, high, y = worth-beside[s], high-s, y+int64(s)
	}
	return spots
}
