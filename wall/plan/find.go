package plan

import (
	"slices"

	"example.com/groovewright/fraction"
)

// TapeMeasure returns the tape that people read the plan's lengths on: its unit and smallest mark.
func (p Plan) TapeMeasure() fraction.Tape {
	unit, err := fraction.ParseUnit(p.Units)
	if err != nil {
		unit = fraction.Inch // the zero plan has no units
	}
	return fraction.Tape{Mark: p.Tape, Unit: unit}
}

// Piece returns the piece of a number and its index in Pieces; the zero Piece and -1 where there is
// none.
func (p Plan) Piece(number int) (Piece, int) {
	i := slices.IndexFunc(p.Pieces, func(piece Piece) bool { return piece.Number == number })
	if i < 0 {
		return Piece{}, -1
	}
	return p.Pieces[i], i
}

// Rectangular reports whether the outline of a piece is its own bounding rectangle.
func (p Piece) Rectangular() bool {
	for _, c := range p.Outline {
		if !c.X.IsZero() && c.X != p.Width || !c.Y.IsZero() && c.Y != p.Height {
			return false
		}
	}
	return len(p.Outline) <= 4
}

// Plain reports whether a piece is done when its rectangle is sawn.
func (p Piece) Plain() bool { return p.Rectangular() && len(p.Holes) == 0 }
