package cutout

import (
	"errors"

	"example.com/groovewright/fraction"
)

// Plate is the cover plate of a box.
type Plate struct {
	Width, Height fraction.Length
}

// ErrGangs says that a plate has no gang, or more than the ten of the standard.
var ErrGangs = errors.New("a plate has 1 to 10 gangs")

// The plates of NEMA WD 6, as an architects' reference prints their widths (which
// rounds the one for two gangs); the standard's height is 4.490 in.
var (
	plateWidth  = fraction.Of(11, 4)  // for one gang, 2-3/4 in
	plateStep   = fraction.Of(29, 16) // wider for each further gang, 1-13/16 in
	plateHeight = fraction.Of(9, 2)   // 4-1/2 in
)

const mostGangs = 10 // of the standard

// StandardPlate returns the plate for boxes of 1 to 10 gangs: 2-3/4 in wide and
// 1-13/16 in more for each further gang, 4-1/2 in high. It fails with [ErrGangs]
// for other numbers.
func StandardPlate(gangs int) (Plate, error) {
	if gangs < 1 || gangs > mostGangs {
		return Plate{}, ErrGangs
	}
	return Plate{Width: plateWidth.Add(plateStep.Mul(int64(gangs - 1))), Height: plateHeight}, nil
}

// Overlap is by how much a plate reaches past a cutout on each side. A side below
// zero is a gap that is seen.
type Overlap struct {
	Left, Right, Bottom, Top fraction.Length
}

// Least returns the smallest of the four.
func (o Overlap) Least() fraction.Length { return fraction.Min(o.Left, o.Right, o.Bottom, o.Top) }

// Cover returns how far a plate centred on the box covers the cutout round it.
// The cutout may be any outline; that of its bounds counts.
func Cover(cutout []Point, plate Plate, centre Point) Overlap {
	lo, hi := bounds(cutout)
	across, up := plate.Width.Div(2), plate.Height.Div(2)
	return Overlap{
		Left:   lo.X.Sub(centre.X.Sub(across)),
		Right:  centre.X.Add(across).Sub(hi.X),
		Bottom: lo.Y.Sub(centre.Y.Sub(up)),
		Top:    centre.Y.Add(up).Sub(hi.Y),
	}
}
