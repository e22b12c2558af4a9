package plan

import (
	"bytes"
	"encoding/json"
	"slices"

	"example.com/groovewright/fraction"
)

// JSON returns the plan as JSON with one field a line, which encoding/json reads back as it is.
func (p Plan) JSON() ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(p); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// TapeMeasure returns the tape that people read the plan's lengths on: its unit and smallest mark.
func (p Plan) TapeMeasure() fraction.Tape { return fraction.Tape{Mark: p.Tape, Unit: p.Units} }

// Piece returns the piece of a number and its index in Pieces; the zero Piece and -1 for none.
func (p Plan) Piece(number int) (Piece, int) {
	i := slices.IndexFunc(p.Pieces, func(piece Piece) bool { return piece.Number == number })
	if i < 0 {
		return Piece{}, -1
	}
	return p.Pieces[i], i
}

// Rectangular reports whether the outline of a piece is its own bounding rectangle.
func (p Piece) Rectangular() bool {
	return len(p.Outline) <= 4 && !slices.ContainsFunc(p.Outline, func(c Point) bool {
		return !c.X.IsZero() && c.X != p.Width || !c.Y.IsZero() && c.Y != p.Height
	})
}

// Plain reports whether a piece is done when its rectangle is sawn.
func (p Piece) Plain() bool { return p.Rectangular() && len(p.Holes) == 0 }
