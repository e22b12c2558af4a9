package plan

import (
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
)

// mostGlue is the most places of adhesive over one length that are listed.
const mostGlue = 20000

// Glue returns where the adhesive goes on a piece, by places of its face, as the list counts it: each time
// a bead from one place to another, or the middle of a dot, where both are the same. Boards have one
// across each support, sheets upright beads or a grid of dots. It fails where a place does not fit a
// Length.
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
		for _, y := range evenly(h, f.Supports) {
			bead := [2]Point{{Y: y}, {X: w, Y: y}}
			if dots {
				bead = middle(bead[0], bead[1])
			}
			all = append(all, bead)
		}
		return all, nil
	}
	across, up := evenly(w, f.GlueSpacing), evenly(h, f.GlueSpacing)
	for k, x := range across {
		if !dots {
			all = append(all, [2]Point{{X: x}, {X: x, Y: h}})
		}
		for m := 1; m < len(up) && dots && k > 0; m++ {
			all = append(all, middle(Point{X: across[k-1], Y: up[m-1]}, Point{X: x, Y: up[m]}))
		}
	}
	return all, nil
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
