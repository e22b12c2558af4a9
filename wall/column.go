package wall

import (
	"math/big"
	"slices"
	"sort"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// column is an upright strip of a region in which nothing begins or ends: its cells lie one above
// the other, from the lowest up.
type column struct {
	left, right fraction.Length
	cells       []cell
	joins       [][2]int // cells that touch one of the column before, each with that
}

// cell is one part of a column, between two lines that may reach past it: they run between corners
// of the shape, not between computed ones, so that heights on them have small denominators.
type cell struct{ bottom, top line }

// line is a side of a shape that is not upright, from its left corner.
type line struct{ left, right cutout.Point }

func (l line) at(x fraction.Length) fraction.Length {
	if !l.slopes() {
		return l.left.Y
	}
	return heightOn(l.left, l.right, x)
}

func (l line) slopes() bool { return l.left.Y != l.right.Y }

// columnsOf merges the slabs of shapes that do not overlap.
func columnsOf(shapes []cutout.Shape) []column {
	var cells []cutout.Cell
	var sides []line
	var xs []fraction.Length
	for _, s := range shapes {
		sides = append(sides, slopesOf(s)...)
		for _, c := range fraction.Must(s.Cells()) {
			cells = append(cells, c)
			xs = append(xs, c.Left, c.Right)
		}
	}
	slices.SortFunc(xs, fraction.Length.Compare)
	xs = slices.Compact(xs)
	var columns []column
	for i := 0; i+1 < len(xs); i++ {
		col := column{left: xs[i], right: xs[i+1]}
		for _, c := range cells {
			if col.left.Less(c.Left) || c.Right.Less(col.right) {
				continue
			}
			bottom := line{cutout.Point{X: c.Left, Y: c.BottomLeft}, cutout.Point{X: c.Right, Y: c.BottomRight}}
			top := line{cutout.Point{X: c.Left, Y: c.TopLeft}, cutout.Point{X: c.Right, Y: c.TopRight}}
			col.cells = append(col.cells, cell{whole(sides, bottom), whole(sides, top)})
		}
		if len(col.cells) == 0 {
			continue
		}
		sort.SliceStable(col.cells, func(i, j int) bool {
			middle := col.left.Add(col.right).Div(2)
			return col.cells[i].bottom.at(middle).Less(col.cells[j].bottom.at(middle))
		})
		if n := len(columns); n > 0 && columns[n-1].right == col.left {
			col.joins = joinsOf(columns[n-1].cells, col.cells, col.left)
		}
		columns = append(columns, col)
	}
	return columns
}

// rise returns how far the line of the column rises or falls that does most.
func (col *column) rise() (most fraction.Length) {
	for _, c := range col.cells {
		for _, l := range []line{c.top, c.bottom} {
			most = fraction.Max(most, atMost(l.at(col.right), l.at(col.left)).Abs())
		}
	}
	return most
}

// joinsOf returns which cells right of x touch which left of it.
func joinsOf(before, cells []cell, x fraction.Length) (joins [][2]int) {
	for i, c := range cells {
		for j, d := range before {
			low, high := fraction.Max(c.bottom.at(x), d.bottom.at(x)), fraction.Min(c.top.at(x), d.top.at(x))
			if low.Less(high) {
				joins = append(joins, [2]int{i, j})
			}
		}
	}
	return joins
}

// level reports whether no line of the column slopes.
func (col *column) level() bool {
	return !slices.ContainsFunc(col.cells, func(c cell) bool { return c.top.slopes() || c.bottom.slopes() })
}

// slot is a part of a column within which a panel that starts or stops there counts as high as the column is at the slot's inner
// side.
type slot struct {
	column      int
	left, right fraction.Length
}

// How columns are parted into slots: as many at most, of so many inches at least.
const mostSlots, leastSlot = 64, 4

// slotsOf parts columns so that no line of them rises by more than a mark in one slot, but not into slots narrower than
// leastSlot.
func slotsOf(columns []column, mark fraction.Length) (all []slot) {
	for i, col := range columns {
		width, n := col.right.Sub(col.left), int64(1)
		if rise := col.rise(); rise.Compare(width) <= 0 { // steeper lines are ends that lean, and sides of openings
			n = max(1, min(times(rise, mark), times(width, fraction.Inches(leastSlot)), mostSlots))
		}
		left := col.left
		for k := int64(1); k <= n; k++ {
			right := col.right
			if k < n {
				right = floor(col.left.Add(width.Mul(k).Div(n)), stripGrid)
			}
			if left.Less(right) {
				all = append(all, slot{i, left, right})
				left = right
			}
		}
	}
	return all
}

// times returns how often a step fits into a length, at most mostSlots.
func times(x, step fraction.Length) int64 {
	if x.Compare(step.Mul(mostSlots)) >= 0 {
		return mostSlots
	}
	n, _ := x.DivMod(step)
	return n
}

// alike reports whether the columns have the same right side, the same heights there and at the left
// of b, and hang together with the columns before them in the same way, where both do.
func (col *column) alike(b *column) bool {
	return col.right == b.right && slices.EqualFunc(col.cells, b.cells, func(c, d cell) bool {
		return c.bottom.at(b.right) == d.bottom.at(b.right) && c.top.at(b.right) == d.top.at(b.right) &&
			c.bottom.at(b.left) == d.bottom.at(b.left) && c.top.at(b.left) == d.top.at(b.left)
	})
}

// slopesOf returns the sides of a shape that are neither level nor upright.
func slopesOf(s cutout.Shape) (out []line) {
	for p, q := range s.Edges() {
		if q.X.Less(p.X) {
			p, q = q, p
		}
		if p.X != q.X && p.Y != q.Y {
			out = append(out, line{p, q})
		}
	}
	return out
}

// whole returns the side that the line is a part of, or the line itself.
func whole(sides []line, part line) line {
	for _, s := range sides {
		if part.slopes() && !part.left.X.Less(s.left.X) && !s.right.X.Less(part.right.X) &&
			s.at(part.left.X) == part.left.Y && s.at(part.right.X) == part.right.Y {
			return s
		}
	}
	return part
}

// nearly is the steps to the inch to which a difference of heights is rounded that is too fine.
const nearly = 1 << 16

// atMost returns how far high lies above low, or up to a step more where that is too fine.
func atMost(high, low fraction.Length) fraction.Length { return atLeast(low, high).Neg() }

// atLeast returns how far high lies above low, or up to a step less where that is too fine.
func atLeast(high, low fraction.Length) (height fraction.Length) {
	var err error
	defer func() {
		if err != nil {
			exact := new(big.Rat).Sub(high.Rat(), low.Rat())
			exact.Mul(exact, big.NewRat(nearly, 1))
			steps := new(big.Int).Div(exact.Num(), exact.Denom()) // toward the lower one
			if !steps.IsInt64() {
				fraction.Must(steps, err)
			}
			height = fraction.Of(steps.Int64(), nearly)
		}
	}()
	defer fraction.Catch(&err)
	return high.Sub(low)
}

// heightAt returns the seen height at x: the lesser of both sides at a step.
func (g *region) heightAt(x, mark fraction.Length) fraction.Length {
	before, after := g.columnAt(x, true), g.columnAt(x, false)
	height := g.heightIn(before, x, mark)
	if after != before {
		height = fraction.Min(height, g.heightIn(after, x, mark))
	}
	return height
}

// heightBeside returns the seen height just left of x, if before, or just right of it: 0 in a void,
// sloped lines rounded to mark into the space.
func (g *region) heightBeside(x fraction.Length, before bool, mark fraction.Length) fraction.Length {
	return g.heightIn(g.columnAt(x, before), x, mark)
}

// heightIn returns the seen height at x of column k, 0 of none.
func (g *region) heightIn(k int, x, mark fraction.Length) (sum fraction.Length) {
	if k < 0 {
		return sum
	}
	for _, c := range g.columns[k].cells {
		bottom, top := g.ends(c, x, mark)
		if bottom.Less(top) {
			sum = sum.Add(top.Sub(bottom))
		}
	}
	return sum
}

// ends returns the bottom and the top of a cell at x, those of sloped lines snapped to the mark; one
// of 0 leaves them exact.
func (g *region) ends(c cell, x, mark fraction.Length) (bottom, top fraction.Length) {
	return g.endOn(c.bottom, x, mark, fraction.Up), g.endOn(c.top, x, mark, fraction.Down)
}

// sloped is a place on a sloped line, and which mark it goes to.
type sloped struct {
	line
	x, mark fraction.Length
	way     fraction.Direction
}

// endOn returns the height of a line at x.
func (g *region) endOn(l line, x, mark fraction.Length, way fraction.Direction) fraction.Length {
	if !l.slopes() {
		return l.left.Y
	}
	key := sloped{l, x, mark, way}
	g.heightLock.Lock()
	y, known := g.heights[key]
	g.heightLock.Unlock()
	if known {
		return y
	}
	if y = l.at(x); !g.taped[cutout.Point{X: x, Y: y}] {
		y = g.snapped(y, mark, way)
	}
	g.heightLock.Lock()
	g.heights[key] = y
	g.heightLock.Unlock()
	return y
}

// span is a stretch of a region without a void.
type span struct{ left, right fraction.Length }

// spans returns the stretches of from <= x <= to that panels must cover.
func (g *region) spans(from, to fraction.Length) []span {
	var out []span
	for i, col := range g.columns {
		left, right := fraction.Max(col.left, from), fraction.Min(col.right, to)
		if i == 0 && from.Less(col.left) { // the ends may lie on marks beyond the exact shape
			left = from
		}
		if i == len(g.columns)-1 && col.right.Less(to) {
			right = to
		}
		if !left.Less(right) {
			continue
		}
		if n := len(out); n > 0 && out[n-1].right == left {
			out[n-1].right = right
		} else {
			out = append(out, span{left, right})
		}
	}
	return out
}

// part is one of the pieces into which openings cut the panelling of some columns: the columns it
// lies in, and how far it reaches up and down.
type part struct {
	first, last int
	bottom, top fraction.Length
}

// cellSets are the sets of cells that hang together, by cell: union-find.
type cellSets []int

func (s cellSets) find(i int) int {
	for s[i] != i {
		i = s[i]
	}
	return i
}

// add adds the cells of a column, numbered on, and joins those that touch one of the column before,
// whose cells are the last so far. It hands each join of two sets to joined: of b, which stays, and
// a, which becomes part of it.
func (s *cellSets) add(col *column, first bool, before int, joined func(a, b int)) {
	start := len(*s)
	for i := range col.cells {
		*s = append(*s, start+i)
	}
	if first {
		return
	}
	for _, join := range col.joins {
		if a, b := s.find(start+join[0]), s.find(start-before+join[1]); a != b {
			(*s)[a] = b
			joined(a, b)
		}
	}
}

// parts returns the pieces into which openings cut the region between columns first and last; how
// far up and down they reach is measured between left and right, on the mark as [region.ends] says.
func (g *region) parts(first, last int, left, right, mark fraction.Length) (parts []part) {
	var sets cellSets
	var found []part // by cell; that of a set stands at its root
	before := 0      // cells of the column before
	for k := first; k <= last; k++ {
		col := &g.columns[k]
		l, r := fraction.Max(col.left, left), fraction.Min(col.right, right)
		for _, c := range col.cells {
			bottom, top := g.ends(c, l, mark)
			low, high := g.ends(c, r, mark)
			found = append(found, part{k, k, fraction.Min(bottom, low), fraction.Max(top, high)})
		}
		sets.add(col, k == first, before, func(a, b int) { found[b] = found[a].join(found[b]) })
		before = len(col.cells)
	}
	for i, p := range found {
		if sets[i] == i {
			parts = append(parts, p)
		}
	}
	return parts
}

// countsFrom returns by column how many pieces the region has from column first up to that.
func (g *region) countsFrom(first int) []int32 {
	var sets cellSets
	counts := make([]int32, len(g.columns))
	n, before := 0, 0
	for k := first; k < len(g.columns); k++ {
		n += len(g.columns[k].cells)
		sets.add(&g.columns[k], k == first, before, func(a, b int) { n-- })
		before = len(g.columns[k].cells)
		counts[k] = int32(n)
	}
	return counts
}

func (p part) join(q part) part {
	return part{min(p.first, q.first), max(p.last, q.last), fraction.Min(p.bottom, q.bottom), fraction.Max(p.top, q.top)}
}

// tallest returns the height of the tallest part, or more where that is too fine, so that a sheet of
// this length gives it.
func tallest(parts []part) (height fraction.Length) {
	for _, p := range parts {
		height = fraction.Max(height, atMost(p.top, p.bottom))
	}
	return height
}

// columnAt returns the number of the column that holds what is just right of x, or left if before.
func (g *region) columnAt(x fraction.Length, before bool) int {
	return slices.IndexFunc(g.columns, func(c column) bool {
		if before {
			return c.left.Less(x) && !c.right.Less(x)
		}
		return !x.Less(c.left) && x.Less(c.right)
	})
}

// slotFrom returns the slot of what is just right of x, or left if before, which some slot holds, none before slot k.
func (g *region) slotFrom(k int, x fraction.Length, before bool) int {
	for k+1 < len(g.slots) && (g.slots[k].right.Less(x) || !before && g.slots[k].right == x) {
		k++
	}
	return k
}

// columnFrom returns what columnAt does of an x that some column holds, none before column k.
func (g *region) columnFrom(k int, x fraction.Length, before bool) int {
	for k+1 < len(g.columns) && (g.columns[k].right.Less(x) || !before && g.columns[k].right == x) {
		k++
	}
	return k
}
