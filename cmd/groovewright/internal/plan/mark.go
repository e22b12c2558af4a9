package plan

import (
	"example.com/groovewright/wall"
)

// mark adds the lines to draw on a piece.
func (m *maker) mark(piece *Piece, p wall.Piece) {
	piece.Marks.From = "left edge and lower edge"
	piece.Marks.Face = piece.Outline
	for _, at := range piece.Outline {
		piece.Marks.Back = append(piece.Marks.Back, Point{piece.Width.Sub(at[0]), at[1]})
	}
}
