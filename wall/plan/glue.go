package plan

import (
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
)

// mostGlue is the most places of adhesive over one length that are listed.
const mostGlue = 20000

// GlueInset returns how far adhesive stays from the edges and the cutouts of a piece: as far as a bead or a dot is wide, so that
// none comes out there, else as far as nails do. Common practice, no source.
func (p Plan) GlueInset() fraction.Length { return fraction.Max(p.Fixing.GlueSize, p.Fixing.Inset) }

// Glue returns where the adhesive goes on a piece, by places of its face, as the list counts it but for what would lie nearer to
// an edge than [Plan.GlueInset]: each time a bead from one place to another, or the middle of a dot, where both are the same.
// Boards have one across each support, sheets upright beads or a grid of dots. It fails where a place does not fit a Length.
func (p Plan) Glue(piece Piece) (all [][2]Point, err error) {
	defer fraction.Catch(&err)
	f, w, h := p.Fixing, piece.Width, piece.Height
	middle := func(a, b Point) [2]Point {
		at := Point{X: a.X.Add(b.X).Div(2), Y: a.Y.Add(b.Y).Div(2)}
		return [2]Point{at, at}
	}
	dots := f.Glue == finish.GlueDots
	if !dots && f.Glue != finish.GlueBeads {
		return nil, nil
	}
	if f.Level {
		for _, bead := range p.beads(piece) {
			if from, to := bead[0].X.Add(f.GlueSize), bead[1].X.Sub(f.GlueSize); dots {
				all = append(all, middle(bead[0], bead[1]))
			} else if !to.Less(from) {
				all = append(all, [2]Point{{X: from, Y: bead[0].Y}, {X: to, Y: bead[0].Y}})
			}
		}
		return all, nil
	}
	off := p.GlueInset()
	across, up := evenly(w, f.GlueSpacing), evenly(h, f.GlueSpacing)
	for k, x := range across {
		if x = fraction.Max(off, fraction.Min(x, w.Sub(off))); !dots {
			for _, part := range piece.clear(x, off) {
				all = append(all, [2]Point{{X: x, Y: part[0]}, {X: x, Y: part[1]}})
			}
		}
		for m := 1; m < len(up) && dots && k > 0; m++ {
			dot := middle(Point{X: across[k-1], Y: up[m-1]}, Point{X: across[k], Y: up[m]})
			if len(clipped(piece.clear(dot[0].X, off), stretch{dot[0].Y, dot[0].Y})) > 0 {
				all = append(all, dot)
			}
		}
	}
	return all, nil
}

// beads returns where a board lies on the level supports of its run, see [Run].Supports: at its foot and its top, as
// far in as nails are and where it has its width, and at those between. What is cut out of it has none.
func (p Plan) beads(board Piece) (all [][2]Point) {
	if p.Fixing.Supports.Sign() <= 0 {
		return nil
	}
	run, _ := p.Run(board.Run)
	off := p.Fixing.Inset
	foot, top := board.level()
	from, to := board.At.Y.Add(foot).Add(off), board.At.Y.Add(top).Sub(off)
	lying := board.lying()
	for _, y := range slices.Compact(crossed(from, to, off.Mul(2), p.supports(run))) {
		y = y.Sub(board.At.Y)
		for _, part := range lying.upright(y, !y.IsZero()) {
			all = append(all, [2]Point{{X: part[0], Y: y}, {X: part[1], Y: y}})
		}
	}
	return all
}

// level returns the upper end of the edge at the foot of a piece, in its middle, and the lower end of the edge at its
// top: where these slope the piece is as wide as between them.
func (p Piece) level() (foot, top fraction.Length) {
	middle, low, high := p.Width.Div(2), p.Height, fraction.Length{}
	for i, a := range p.Outline {
		b := p.Outline[(i+1)%len(p.Outline)]
		if a.X == b.X || middle.Less(fraction.Min(a.X, b.X)) || fraction.Max(a.X, b.X).Less(middle) {
			continue
		}
		if y := fraction.Must(cutout.HeightAt(a, b, middle)); !low.Less(y) {
			low, foot = y, fraction.Max(a.Y, b.Y)
		}
		if y := fraction.Must(cutout.HeightAt(a, b, middle)); !y.Less(high) {
			high, top = y, fraction.Min(a.Y, b.Y)
		}
	}
	return foot, top
}

// lying returns the outline and the holes of a piece with its sides for its ends.
func (p Piece) lying() (lying Piece) {
	lying.Outline = swapped(p.Outline)
	for _, hole := range p.Holes {
		lying.Holes = append(lying.Holes, Hole{Outline: swapped(hole.Outline)})
	}
	return lying
}

// swapped returns points with across for up.
func swapped(ring []Point) []Point {
	out := make([]Point, len(ring))
	for i, at := range ring {
		out[i] = Point{X: at.Y, Y: at.X}
	}
	return out
}

// steps returns into how many parts a length is divided that are no longer than apart, which is above 0.
func steps(length, apart fraction.Length) int64 {
	n, rest := length.DivMod(apart)
	return n + int64(rest.Sign())
}

// evenly returns places from 0 to a length, at most so far apart, if that is a distance.
func evenly(length, apart fraction.Length) (at []fraction.Length) {
	if apart.Sign() <= 0 {
		return nil
	}
	n := steps(length, apart)
	for k := int64(0); n >= 1 && n < mostGlue && k <= n; k++ {
		at = append(at, length.Mul(k).Div(n))
	}
	return at
}
