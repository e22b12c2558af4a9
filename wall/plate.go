package wall

import (
	"errors"

	"example.com/groovewright/fraction"
)

// MaxGangs is the greatest number of devices side by side in a box.
const MaxGangs = 10

// ErrGangs says that a plate has no gang, or more than [MaxGangs].
var ErrGangs = errors.New("a plate has 1 to 10 gangs")

// Plate is the cover plate of a box.
type Plate struct {
	Width, Height fraction.Length
}

// StandardPlate returns the plate for boxes of 1 to [MaxGangs] gangs: 2-3/4 in wide and 1-13/16 in
// more for each further gang, 4-1/2 in high. It fails with [ErrGangs] for other numbers.
//
// These are the plates of NEMA WD 6 as an architects' reference prints them (it rounds the width
// for two gangs); the standard's own height is 4.490 in.
func StandardPlate(gangs int) (Plate, error) {
	if gangs < 1 || gangs > MaxGangs {
		return Plate{}, ErrGangs
	}
	return Plate{Width: fraction.Of(11, 4).Add(gangStep().Mul(int64(gangs - 1))), Height: fraction.Of(9, 2)}, nil
}

// gangStep is how much wider each further device makes a plate and a box: 1-13/16 in.
func gangStep() fraction.Length { return fraction.Of(29, 16) }

// Gangs returns how many devices side by side a box of this width holds, 1 to [MaxGangs]: the
// nearest number by 2 in for one device (a home-repair article) and 1-13/16 in for each further
// one, the lesser of two equally near.
func Gangs(width fraction.Length) int {
	narrow, step := fraction.Inches(2), gangStep()
	for n := 1; n < MaxGangs; n++ {
		if limit := narrow.Add(step.Mul(int64(n)).Sub(step.Div(2))); width.Compare(limit) <= 0 {
			return n
		}
	}
	return MaxGangs
}

// Overlap returns by how much the plate reaches past the cutout round a box: at either side, and
// above and below. The plate is centred on the box, which is width by height; the cutout is gap
// larger on every side. A value below zero is a gap that is seen. It fails where a result does not
// fit a Length.
func (p Plate) Overlap(width, height, gap fraction.Length) (side, above fraction.Length, err error) {
	defer fraction.Catch(&err)
	side = p.Width.Sub(width).Div(2).Sub(gap)
	return side, p.Height.Sub(height).Div(2).Sub(gap), nil
}
