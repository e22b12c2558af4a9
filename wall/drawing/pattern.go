package drawing

import (
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

var zero fraction.Length

// drawPattern draws the beads and grooves of a board, as far as the picture is wide.
func (pic *Picture) drawPattern(on *node, v view, profile plan.Profile, phase, width, height fraction.Length) {
	all := profile.Stripes(zero, width, phase)
	for _, kind := range []groove.Kind{groove.Bead, groove.Groove} {
		var path strings.Builder
		for _, s := range all {
			if s.Kind != kind {
				continue
			}
			b := v.area(fraction.Max(s.Left, zero), zero, fraction.Min(s.Right, width), height)
			if b.x+b.w > 0 && b.x < pic.Width {
				path.WriteString(b.path())
			}
		}
		if path.Len() > 0 {
			on.stroke(kind.String(), path.String())
		}
	}
}

// drawPiece draws a piece with its pattern, seen in v, which has the piece's own coordinates.
func (pic *Picture) drawPiece(on *node, v view, profile plan.Profile, piece plan.Piece, what string) {
	shape := v.curved(piece.Marks.Arcs, rings(piece)...)
	on.stroke("board", shape).set("fill-rule", "evenodd")
	pic.drawPattern(on.add("g", "clip-path", pic.clip(what, shape)), v, profile, piece.LeftPhase, piece.Width, piece.Height)
	on.stroke("edge", shape).set("fill-rule", "evenodd")
}

// rings are the outline of a piece and its holes.
func rings(piece plan.Piece) [][]plan.Point {
	all := [][]plan.Point{piece.Outline}
	for _, hole := range piece.Holes {
		all = append(all, hole.Outline)
	}
	return all
}
