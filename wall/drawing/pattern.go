package drawing

import (
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

var zero fraction.Length

// mostStripes is the most features that are drawn over one width: more would be too fine to see.
const mostStripes = 20000

// stripe is one feature of the pattern where it lies on a board.
type stripe struct {
	groove.Feature
	index       int // in the repeat
	left, right fraction.Length
}

// stripes returns the features of a board whose left edge has a phase; the outermost may run past
// its edges. There is none where the pattern has no width or is far too fine.
func stripes(profile plan.Profile, from, to, phase fraction.Length) (found []stripe) {
	var repeat fraction.Length
	for _, f := range profile.Features {
		if f.Width.Sign() < 0 {
			return nil
		}
		repeat = repeat.Add(f.Width)
	}
	start := from.Sub(phase)
	if repeat.Sign() <= 0 || to.Sub(start).Float64()/repeat.Float64()*float64(len(profile.Features)) > mostStripes {
		return nil
	}
	for n := 0; start.Less(to); n = (n + 1) % len(profile.Features) {
		s := stripe{profile.Features[n], n, start, start.Add(profile.Features[n].Width)}
		if start = s.right; from.Less(s.right) {
			found = append(found, s)
		}
	}
	return found
}

// drawPattern draws the beads and grooves of a board, as far as the picture is wide.
func (pic *Picture) drawPattern(on *node, v view, profile plan.Profile, phase, width, height fraction.Length) {
	all := stripes(profile, zero, width, phase)
	for _, kind := range []groove.Kind{groove.Bead, groove.Groove} {
		var path strings.Builder
		for _, s := range all {
			if s.Kind != kind {
				continue
			}
			b := v.area(fraction.Max(s.left, zero), zero, fraction.Min(s.right, width), height)
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
