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

// sizes are those of boxes and plates where a unit is used: one device's box, one device's plate,
// and how much wider each further device makes both.
type sizes struct{ box, width, height, step fraction.Length }

// sizesIn returns the sizes of the region of a unit. With inches the plates are those of NEMA WD 6
// as an architects' reference prints them (it rounds the width for two gangs; the standard's own
// height is 4.490 in), the box is that of a home-repair article. Metric ones stand on holes of 68 mm
// with centres 71 mm apart, their frames are 80 mm: from memory.
func sizesIn(units fraction.Unit) sizes {
	if units == fraction.Inch {
		return sizes{fraction.Inches(2), fraction.Of(11, 4), fraction.Of(9, 2), fraction.Of(29, 16)}
	}
	mm := func(n int64) fraction.Length { return fraction.Millimetres(n, 1) }
	return sizes{mm(68), mm(80), mm(80), mm(71)}
}

// StandardPlate returns the plate for boxes of 1 to [MaxGangs] gangs where lengths are in these
// units: 2-3/4 in wide, 1-13/16 in more for each further gang and 4-1/2 in high, or 80 mm, 71 mm
// and 80 mm. It fails with [ErrGangs] for other numbers.
func StandardPlate(units fraction.Unit, gangs int) (Plate, error) {
	if gangs < 1 || gangs > MaxGangs {
		return Plate{}, ErrGangs
	}
	s := sizesIn(units)
	return Plate{Width: s.width.Add(s.step.Mul(int64(gangs - 1))), Height: s.height}, nil
}

// Gangs returns how many devices side by side a box of this width holds where lengths are in these
// units, 1 to [MaxGangs]: the nearest number by 2 in for one device and 1-13/16 in for each further
// one, or 68 and 71 mm, the lesser of two equally near.
func Gangs(units fraction.Unit, width fraction.Length) int {
	s := sizesIn(units)
	for n := 1; n < MaxGangs; n++ {
		if limit := s.box.Add(s.step.Mul(int64(n)).Sub(s.step.Div(2))); width.Compare(limit) <= 0 {
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
