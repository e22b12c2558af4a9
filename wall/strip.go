package wall

import (
	"example.com/groovewright/fraction"
)

// Strip is an upright strip of wall that every layout of a room covers: Width
// wide, with panelling of Height in all, the tallest part of it Tallest high.
type Strip struct {
	Width, Height, Tallest fraction.Length
}

// stripGrid is what strips are rounded down to, so that sloped lines do not bring
// in denominators that sums outgrow.
var stripGrid = fraction.Of(1, 64)

// Strips returns strips that do not overlap and that every layout of the room
// covers, but for seam gaps, from which a bound on the sheets can be reckoned
// before any layout is known. They lean to the small side: each run is taken as
// if it butted at both ends, beside a step the taller strip loses a seam gap, so
// that one seam gap can be counted with the panel to its left, and all is rounded
// down to stripGrid.
func (room *Room) Strips() (strips []Strip, err error) {
	defer fraction.Catch(&err)
	if err := room.Validate(); err != nil {
		return nil, err
	}
	for r := range room.Runs {
		g, err := newRegion(room, r, fitting{buttsLeft: true, buttsRight: true})
		if err != nil {
			return nil, err
		}
		for i, col := range g.columns {
			left, right := col.left, col.right
			if i > 0 {
				left = left.Add(room.Gaps.Seam)
			}
			if i < len(g.columns)-1 {
				right = right.Sub(room.Gaps.Seam)
			}
			width := right.Sub(left)
			for _, in := range room.Installed {
				if in.Run != r {
					continue
				}
				from := fraction.Max(left, in.Left.Sub(room.Gaps.Seam))
				to := fraction.Min(right, in.Right.Add(room.Gaps.Seam))
				if from.Less(to) {
					width = width.Sub(to.Sub(from))
				}
			}
			if width.Sign() <= 0 {
				continue
			}
			s := Strip{Width: floor(width, stripGrid)}
			for _, c := range col.cells {
				height := floor(c.least(room.Mark), stripGrid)
				s.Height = s.Height.Add(height)
				s.Tallest = fraction.Max(s.Tallest, height)
			}
			if s.Width.Sign() > 0 && s.Tallest.Sign() > 0 {
				strips = append(strips, s)
			}
		}
	}
	return strips, nil
}

// least returns the least height of the cell; where its lines slope one mark
// less, for what rounding takes.
func (c cell) least(mark fraction.Length) fraction.Length {
	height := fraction.Min(c.topLeft.Y.Sub(c.bottomLeft.Y), c.topRight.Y.Sub(c.bottomRight.Y))
	if c.topLeft.Y != c.topRight.Y {
		height = height.Sub(mark)
	}
	if c.bottomLeft.Y != c.bottomRight.Y {
		height = height.Sub(mark)
	}
	return fraction.Max(height, fraction.Length{})
}
