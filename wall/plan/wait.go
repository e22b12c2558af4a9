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

// SpareWidth returns how much wider than the survey has it a closing piece can be sawn on the wall's word: what is left on it
// to scribe, or else what lies beside its closing edge on the part that it is sawn from, up to the blade of the next
// piece; at most Plan.Scribe, which is also that of a piece that no sheet has. It fails where a place does not fit a Length.
func (p Plan) SpareWidth(piece Piece) (spare fraction.Length, err error) {
	defer fraction.Catch(&err)
	if piece.Scribe != nil {
		return fraction.Min(p.Scribe, piece.Scribe.Width), nil
	}
	spare = p.Scribe
	for _, s := range p.Sheets {
		for _, placed := range s.Placements {
			if placed.Part == piece.Number {
				spare = fraction.Min(spare, p.beside(s, piece, placed))
			}
		}
	}
	return spare, nil
}

// beside is what lies beside the closing edge of a placed piece on the part that the edge is sawn on, nothing where it
// is sawn on none.
func (p Plan) beside(s Sheet, piece Piece, placed nest.Placement) (room fraction.Length) {
	left := (p.ClosingEdge(piece) == wall.Left) != placed.Turned // it lies at the left on the sheet
	for _, c := range s.Cuts {
		if !p.closes(c, piece, placed) {
			continue
		}
		gap := func(x, wide fraction.Length) fraction.Length { // from the edge to what lies beside it
			if left {
				return placed.X.Sub(x.Add(wide))
			}
			return x.Sub(placed.X.Add(piece.Width))
		}
		if room = gap(c.Rect[0], fraction.Length{}); !left {
			room = gap(c.Rect[0].Add(c.Rect[2]), fraction.Length{})
		}
		for _, other := range s.Placements {
			q, _ := p.Piece(other.Part)
			width, _, err := q.Blank()
			own := rect{other.X, other.Y, fraction.Must(width, err), q.Height}
			if by := gap(other.X, own[2]); other.Part != piece.Number && within(own, c.Rect) && by.Sign() > 0 {
				room = fraction.Min(room, by.Sub(p.Saw.Kerf))
			}
		}
	}
	return room
}
