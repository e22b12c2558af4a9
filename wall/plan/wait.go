package plan

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// Wait says what a cut of a sheet waits for; the zero value is one that waits for nothing.
type Wait struct {
	Piece int // the closing piece whose closing edge it makes: its space is measured on the wall first
	Step  int // the cut before it that waits and leaves the part that it is made on
}

// Waits returns what each cut of a sheet waits for. A cut waits that makes the closing edge of a piece on which
// nothing is left to scribe, and each that is made on what such a cut leaves. It fails where a place does not fit a
// Length.
func (p Plan) Waits(s Sheet) (all []Wait, err error) {
	defer fraction.Catch(&err)
	all = make([]Wait, len(s.Cuts))
	held := map[int]bool{} // steps that wait
	for i, c := range s.Cuts {
		for _, placed := range s.Placements {
			if piece, _ := p.Piece(placed.Part); piece.Closing && piece.Scribe == nil && p.closes(c, piece, placed) {
				all[i].Piece = placed.Part
			}
		}
		if all[i].Piece == 0 && held[c.From.Step] {
			all[i].Step = c.From.Step
		}
		held[c.Step] = all[i] != Wait{}
	}
	return all, nil
}

// closes reports whether a cut makes the closing edge of a placed piece.
func (p Plan) closes(c Cut, piece Piece, placed nest.Placement) bool {
	own := rect{placed.X, placed.Y, piece.Width, piece.Height}
	if c.Kind != nest.Rip || !within(own, c.Rect) {
		return false
	}
	blade := c.Rect[0].Add(c.At)
	if (p.ClosingEdge(piece) == wall.Left) != placed.Turned { // it lies at the left on the sheet
		return placed.X == blade.Add(p.Saw.Kerf)
	}
	return placed.X.Add(piece.Width) == blade
}
