package wall

import (
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

// Scribe is what a closing piece is cut wider on one edge, to be sawn off to the wall as it is.
type Scribe struct {
	Edge  Direction       `json:"edge"`
	Width fraction.Length `json:"width"`
}

// Part returns the rectangle that a piece is sawn from, with what is left on it to scribe. The phase
// of its left edge is below 0 where the scribe begins in the repeat before.
func (p Piece) Part() (part nest.Part, err error) {
	defer fraction.Catch(&err)
	_, high := p.Shape.Bounds()
	part = nest.Part{Number: p.Number, Width: high.X, Height: high.Y, LeftPhase: p.LeftPhase}
	if s := p.Scribe; s != nil {
		part.Width = part.Width.Add(s.Width)
		if s.Edge == Left {
			part.LeftPhase = part.LeftPhase.Sub(s.Width)
		}
	}
	return part, nil
}

// closes reports whether a panel of run r closes it or a part of it: the last in the direction of
// work, or before a panel that is on the wall, or one beside an opening that parts the run. Its scribed
// edge is the far one, unless the run ends there exposed or at an outside corner; else that beside the
// opening, if there is one. It is
// alone where no panel stands beside it: its space is the wall's own.
func (m *Model) closes(g *region, r int, panel *Panel, far Direction, last bool) (closing, alone bool, scribed *Direction) {
	bare := g.bareEnds()
	atDoor := map[Direction]bool{
		Left:  g.columnAt(panel.Left, true) < 0 && (g.left.Less(panel.Left) || bare[0]),
		Right: g.columnAt(panel.Right, false) < 0 && (panel.Right.Less(g.right) || bare[1]),
	}
	alone = (atDoor[Left] || !g.left.Less(panel.Left)) && (atDoor[Right] || !panel.Right.Less(g.right))
	near, end := Left-far, m.room.Runs[r].Right // the other direction
	if far == Left {
		end = m.room.Runs[r].Left
	}
	switch {
	case atDoor[far], m.meetsUp(r, panel, far), last && end.Kind != Exposed && end.Kind != OutsideCorner:
		return true, alone, &far
	case atDoor[near]:
		return true, alone, &near
	}
	return last, alone, nil
}

// meetsUp reports whether a panel of run r shares its seam on that side with one on the wall already.
func (m *Model) meetsUp(r int, panel *Panel, side Direction) bool {
	return slices.ContainsFunc(m.room.Installed, func(in Installed) bool {
		gap := in.Left.Sub(panel.Right)
		if side == Left {
			gap = panel.Left.Sub(in.Right)
		}
		return in.Run == r && gap.Sign() >= 0 && !m.room.Gaps.Seam.Less(gap)
	})
}

// scribe returns what is left on an edge of a closing piece, nil where that is nothing: as much as
// the room says, or the most that a sheet has which gives the piece, also one that WithStock left
// out. A piece that an opening stops short of the panel's edge has nothing to scribe there.
func (m *Model) scribe(piece *Piece, panel *Panel, edge Direction) *Scribe {
	pitch := m.room.Profile.Pitch()
	_, high := piece.Shape.Bounds()
	at := piece.At.X
	if edge == Right {
		at = at.Add(high.X)
	}
	if at != panel.Left && at != panel.Right && slices.ContainsFunc(m.room.Runs[piece.Run].Openings, func(o Opening) bool {
		lo, hi := o.Bounds()
		gap := m.room.Gaps.Around(o.Kind)
		return !at.Less(lo.X.Sub(gap)) && !hi.X.Add(gap).Less(at)
	}) {
		return nil
	}
	var most fraction.Length
	for _, s := range m.scribable {
		spare := s.Width.Sub(high.X)
		if s.Length.Less(high.Y) || spare.Sign() < 0 {
			continue
		}
		// beside returns the most that lies beside the piece where its left edge can stand at first and
		// every pitch beyond: right of it at the first place, left of it at the last.
		beside := func(first fraction.Length, left bool) {
			room := spare.Sub(first)
			if left && room.Sign() >= 0 {
				room = spare.Sub(groove.Modulo(room, pitch))
			}
			most = fraction.Max(most, room)
		}
		beside(groove.Modulo(piece.LeftPhase.Sub(s.LeftPhase), pitch), edge == Left)
		if axis, _ := m.room.Profile.Mirror(); m.room.Profile.Turns() {
			beside(groove.Modulo(axis.Mul(2).Sub(piece.LeftPhase.Add(high.X)).Sub(s.LeftPhase), pitch), edge == Right)
		}
	}
	if most = fraction.Min(most, m.room.Scribe); most.IsZero() {
		return nil
	}
	return &Scribe{edge, most}
}
