package drawing

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// mostStripes is the most features that are drawn over one width: more would be too fine to see.
const mostStripes = 20000

// stripe is one feature of the pattern where it lies on a board.
type stripe struct {
	groove.Feature
	index       int // in the repeat
	left, right fraction.Length
}

// stripes returns the features that a board shows from its left edge, which has a phase, as far as
// its right edge; the outermost may run past the edges. There is none where the pattern has no
// width or is far too fine.
func stripes(profile plan.Profile, from, to, phase fraction.Length) []stripe {
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
	var found []stripe
	for at, i := start, 0; at.Less(to); i++ {
		n := i % len(profile.Features)
		feature := profile.Features[n]
		end := at.Add(feature.Width)
		if from.Less(end) {
			found = append(found, stripe{feature, n, at, end})
		}
		at = end
	}
	return found
}

// drawPattern draws beads and grooves over a width and a height, in the view's coordinates, to the
// right of x = 0, where the pattern has a phase. Flats leave no ink.
func drawPattern(on *node, v view, profile plan.Profile, phase, width, bottom, top fraction.Length, seen func(box) bool) {
	var zero fraction.Length
	all := stripes(profile, zero, width, phase)
	for _, kind := range []groove.Kind{groove.Bead, groove.Groove} {
		path := ""
		for _, s := range all {
			b := v.area(fraction.Max(s.left, zero), bottom, fraction.Min(s.right, width), top)
			if s.Kind == kind && (seen == nil || seen(b)) {
				path += b.path()
			}
		}
		if path != "" {
			on.stroke(kind.String(), path)
		}
	}
}

// drawPiece draws a piece with its pattern, seen in v, which has the piece's own coordinates.
func (pic *Picture) drawPiece(on *node, v view, profile plan.Profile, piece plan.Piece, what string) {
	shape := v.outline(rings(piece)...)
	clip := pic.defs.add("clipPath", "id", pic.id(what))
	clip.add("path", "d", shape, "clip-rule", "evenodd")
	on.stroke("board", shape).set("fill-rule", "evenodd")
	pattern := on.add("g", "clip-path", "url(#"+pic.id(what)+")")
	drawPattern(pattern, v, profile, piece.LeftPhase, piece.Width, fraction.Length{}, piece.Height, nil)
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
