package plan

import (
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// Wait says what a cut of a sheet waits for; the zero value is one that waits for nothing.
type Wait struct {
	Piece int `json:"piece,omitzero"` // the closing piece whose closing edge it makes: its space is measured on the wall first
	Step  int `json:"step,omitzero"`  // the cut before it that waits and leaves the part that it is made on
}

// wait finds the cuts of a sheet that wait: each that makes the closing edge of a piece on which nothing is left to scribe,
// and each that is made on what such a cut leaves. A cut that other pieces need, but for those of the panel that it closes,
// waits for nothing: they are fitted or coated before the space can be measured.
func (p Plan) wait(s *Sheet) {
	held := map[int]bool{} // steps that wait
	for i := range s.Cuts {
		c := &s.Cuts[i]
		waits := Wait{}
		for _, placed := range s.Placements {
			piece, _ := p.Piece(placed.Part)
			on := within(p.placed(piece, placed), c.Rect)
			if on && piece.Closing && piece.Scribe == nil && p.closes(c.Cut, piece, placed) {
				waits.Piece = piece.Number
			}
		}
		closed, _ := p.Piece(waits.Piece)
		if slices.ContainsFunc(s.Placements, func(placed nest.Placement) bool {
			piece, _ := p.Piece(placed.Part)
			return within(p.placed(piece, placed), c.Rect) && (piece.Run != closed.Run || piece.Panel != closed.Panel || !p.closes(c.Cut, piece, placed))
		}) {
			waits.Piece = 0
		}
		if waits.Piece == 0 && held[c.From.Step] {
			waits.Step = c.From.Step
		}
		c.Waits = waits
		held[c.Step] = waits != Wait{}
	}
}

// closeLast returns the cuts of a sheet such that what lies beside a closing piece comes free before its closing edge is made,
// where two rips in a row do both: turned round, they leave the same parts.
func (p Plan) closeLast(s Sheet, cuts []nest.Cut) []nest.Cut {
	cuts = slices.Clone(cuts)
	for i := range cuts {
		for _, placed := range s.Placements {
			piece, _ := p.Piece(placed.Part)
			if !piece.Closing || piece.Scribe != nil || !p.closes(cuts[i], piece, placed) {
				continue
			}
			left := p.closesLeft(piece, placed)
			own, rest := sides(cuts[i], p.Saw.Kerf)
			if left {
				own, rest = rest, own
			}
			n := i + 1 + slices.IndexFunc(cuts[i+1:], func(c nest.Cut) bool { return c.Rect == rest || c.Rect == own })
			if n == i || cuts[n].Kind != nest.Rip || cuts[n].Rect != rest {
				continue
			}
			waste, beyond := sides(cuts[n], p.Saw.Kerf)
			if left {
				waste = beyond
			}
			if slices.ContainsFunc(s.Placements, func(other nest.Placement) bool {
				q, _ := p.Piece(other.Part)
				return within(p.placed(q, other), waste)
			}) {
				continue
			}
			first, then := &cuts[i], &cuts[n]
			edge := first.At
			then.Rect = first.Rect
			if left {
				first.At = then.At
				_, then.Rect = sides(*first, p.Saw.Kerf)
				then.At = edge.Sub(first.At).Sub(p.Saw.Kerf)
			} else {
				first.At = edge.Add(p.Saw.Kerf).Add(then.At)
				then.Rect, _ = sides(*first, p.Saw.Kerf)
				then.At = edge
			}
		}
	}
	return cuts
}

// placed is what a placed piece takes of its sheet, with what is left on it to scribe.
func (p Plan) placed(piece Piece, at nest.Placement) rect {
	width, _, err := piece.Blank()
	return rect{at.X, at.Y, fraction.Must(width, err), piece.Height}
}

// closes reports whether a cut makes the closing edge of a placed piece.
func (p Plan) closes(c nest.Cut, piece Piece, placed nest.Placement) bool {
	own := rect{placed.X, placed.Y, piece.Width, piece.Height}
	if c.Kind != nest.Rip || !within(own, c.Rect) {
		return false
	}
	blade := c.Rect[0].Add(c.At)
	if p.closesLeft(piece, placed) {
		return placed.X == blade.Add(p.Saw.Kerf)
	}
	return placed.X.Add(piece.Width) == blade
}

// closesLeft reports whether the closing edge of a placed piece lies at its left on the sheet.
func (p Plan) closesLeft(piece Piece, placed nest.Placement) bool {
	return (p.ClosingEdge(piece) == wall.Left) != placed.Turned
}

// Waits reports whether the cut that makes the closing edge of a piece waits. It fails where a place does not fit a Length.
func (p Plan) Waits(piece Piece) (waits bool, err error) {
	defer fraction.Catch(&err)
	c, _ := p.waiting(piece)
	return c.Step != 0, nil
}

// SpareWidth returns how much wider than the survey has it a closing piece can be sawn on the wall's word: what is left on it
// to scribe, or else what lies beside its closing edge on the part that a cut which waits is made on, and nothing where none
// waits; at most Plan.Scribe, which is also that of a piece that no sheet has. It fails where a place does not fit a Length.
func (p Plan) SpareWidth(piece Piece) (spare fraction.Length, err error) {
	defer fraction.Catch(&err)
	c, placed := p.waiting(piece)
	switch {
	case piece.Scribe != nil:
		spare = piece.Scribe.Width
	case p.SheetOf(piece.Number) == 0:
		spare = p.Scribe
	case c.Step != 0 && p.closesLeft(piece, placed):
		spare = placed.X.Sub(c.Rect[0])
	case c.Step != 0:
		spare = c.Rect[0].Add(c.Rect[2]).Sub(placed.X).Sub(piece.Width)
	}
	return fraction.Min(p.Scribe, spare), nil
}

// waiting returns the cut that waits and makes the closing edge of a piece, and where the piece is placed; the zero Cut where
// none does.
func (p Plan) waiting(piece Piece) (Cut, nest.Placement) {
	for _, s := range p.Sheets {
		for _, placed := range s.Placements {
			for _, c := range s.Cuts {
				if placed.Part == piece.Number && c.Waits.Piece != 0 && p.closes(c.Cut, piece, placed) {
					return c, placed
				}
			}
		}
	}
	return Cut{}, nest.Placement{}
}
