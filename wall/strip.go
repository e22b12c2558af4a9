package wall

import (
	"context"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

var (
	stripGrid = fraction.Of(1, 64) // strips are rounded down to it, so that sloped lines bring in no fine denominators
	stripFall = fraction.Inches(1) // the most that a line of the wall falls within a strip
)

const mostStrips = 32 // into which the stretch between two stations is parted

// Strips returns strips that do not overlap and that every layout of the room covers, but for seam
// gaps, for a lower bound on the sheets before any layout is known. They are rounded down: each run
// butts at both ends, a strip is as high as the wall is where it is lowest within it, beside a step
// the taller strip loses the seam gap that may count with the panel to its left. It fails as
// [Room.Validate] does, or with a [*NoLayoutError].
func (room *Room) Strips() (strips []nest.Strip, err error) {
	defer fraction.Catch(&err)
	if err := room.Validate(); err != nil {
		return nil, err
	}
	for r := range room.Runs {
		g, err := newRegion(context.Background(), room, r, fitting{buttsLeft: true, buttsRight: true})
		if leavesNothing(err) {
			continue
		}
		if err != nil {
			return nil, err
		}
		strips = append(strips, room.stripsOf(r, g)...)
	}
	return strips, nil
}

// stripsOf returns the strips of run r, whose region is g.
func (room *Room) stripsOf(r int, g *region) (strips []nest.Strip) {
	for i, col := range g.columns {
		left, right := col.left, col.right
		if i > 0 {
			left = left.Add(room.Gaps.Seam)
		}
		if i < len(g.columns)-1 {
			right = right.Sub(room.Gaps.Seam)
		}
		if !left.Less(right) {
			continue
		}
		parts := col.parted(left, right)
		for j := 1; j < len(parts); j++ {
			if s := room.strip(r, col, parts[j-1], parts[j]); s.Width.Sign() > 0 && s.Tallest.Sign() > 0 {
				strips = append(strips, s)
			}
		}
	}
	return strips
}

// strip returns what is to be covered of a column of the run from left to right.
func (room *Room) strip(run int, col column, left, right fraction.Length) (s nest.Strip) {
	width := right.Sub(left)
	for _, in := range room.Installed {
		from, to := fraction.Max(left, in.Left.Sub(room.Gaps.Seam)), fraction.Min(right, in.Right.Add(room.Gaps.Seam))
		if in.Run == run && from.Less(to) {
			width = width.Sub(to.Sub(from))
		}
	}
	s.Width = floor(width, stripGrid)
	// A seam gap counts with the panel to its left, which may end a gap before.
	from := fraction.Max(col.left, left.Sub(room.Gaps.Seam))
	for _, c := range col.cells {
		height := floor(c.least(from, right, room.Mark), stripGrid)
		s.Height = s.Height.Add(height)
		s.Tallest = fraction.Max(s.Tallest, height)
	}
	return s
}

// parted returns where the column is parted between left and right, both included, so that no line
// of it falls by more than stripFall in one part. Lines steeper than 1 in 1 are leaning ends and
// sides of openings, whose corners are rounded sideways: they are not followed.
func (col column) parted(left, right fraction.Length) []fraction.Length {
	n := int64(1)
	for _, c := range col.cells {
		for _, line := range []line{c.top, c.bottom} {
			fall := atMost(line.at(col.right), line.at(col.left)).Abs()
			if right.Sub(left).Less(fall) {
				return []fraction.Length{left, right}
			}
			whole, rest := fall.DivMod(stripFall)
			if !rest.IsZero() {
				whole++
			}
			n = max(n, min(whole, mostStrips))
		}
	}
	parts := []fraction.Length{left}
	for i := int64(1); i < n; i++ {
		if x := floor(left.Add(right.Sub(left).Mul(i).Div(n)), stripGrid); parts[len(parts)-1].Less(x) {
			parts = append(parts, x)
		}
	}
	return append(parts, right)
}

// least returns the least height of the cell between two places; where its lines slope one mark
// less, for what rounding takes.
func (c cell) least(from, to, mark fraction.Length) fraction.Length {
	height := fraction.Min(atLeast(c.top.at(from), c.bottom.at(from)), atLeast(c.top.at(to), c.bottom.at(to)))
	if c.top.slopes() {
		height = height.Sub(mark)
	}
	if c.bottom.slopes() {
		height = height.Sub(mark)
	}
	return fraction.Max(height, fraction.Length{})
}
