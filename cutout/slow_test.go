package cutout_test

import (
	"math/big"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// The naive answers that the package is compared with: even-odd counting by
// math/big, and a grid of unit squares flooded square by square.

// slowContains counts the edges above p by the even-odd rule; p must not lie on
// an upright line through a vertex.
func slowContains(rings [][]cutout.Point, p cutout.Point) bool {
	inside := false
	x, y := p.X.Rat(), p.Y.Rat()
	for _, ring := range rings {
		for i := range ring {
			a, b := ring[i], ring[(i+1)%len(ring)]
			ax, ay, bx, by := a.X.Rat(), a.Y.Rat(), b.X.Rat(), b.Y.Rat()
			if (ax.Cmp(x) < 0) == (bx.Cmp(x) < 0) {
				continue
			}
			h := new(big.Rat).Sub(x, ax)
			h.Mul(h, new(big.Rat).Sub(by, ay)).Quo(h, new(big.Rat).Sub(bx, ax)).Add(h, ay)
			if h.Cmp(y) > 0 {
				inside = !inside
			}
		}
	}
	return inside
}

func ringsOf(s cutout.Shape) [][]cutout.Point {
	return append([][]cutout.Point{s.Outline()}, s.Holes()...)
}

// slowArea is the shoelace formula in math/big.
func slowArea(s cutout.Shape) *big.Rat {
	sum := new(big.Rat)
	for _, ring := range ringsOf(s) {
		for i := range ring {
			a, b := ring[i], ring[(i+1)%len(ring)]
			sum.Add(sum, new(big.Rat).Mul(a.X.Rat(), b.Y.Rat()))
			sum.Sub(sum, new(big.Rat).Mul(a.Y.Rat(), b.X.Rat()))
		}
	}
	return sum.Quo(sum, big.NewRat(2, 1))
}

// grid is a field of unit squares; true is material.
type grid [12][12]bool

func (g *grid) fill(left, bottom, width, height int64, to bool) {
	for y := max(bottom, 0); y < min(bottom+height, int64(len(g))); y++ {
		for x := max(left, 0); x < min(left+width, int64(len(g[0]))); x++ {
			g[y][x] = to
		}
	}
}

// flood numbers the connected parts between two columns, from 1, by spreading
// from square to square across shared sides, and returns how many there are.
func (g *grid) flood(left, right int) (part [12][12]int, count int) {
	for y := range g {
		for x := left; x < right; x++ {
			if !g[y][x] || part[y][x] != 0 {
				continue
			}
			count++
			open := [][2]int{{x, y}}
			for len(open) > 0 {
				x, y := open[0][0], open[0][1]
				open = open[1:]
				if x < left || x >= right || y < 0 || y >= len(g) || !g[y][x] || part[y][x] != 0 {
					continue
				}
				part[y][x] = count
				open = append(open, [2]int{x + 1, y}, [2]int{x - 1, y}, [2]int{x, y + 1}, [2]int{x, y - 1})
			}
		}
	}
	return part, count
}

// slowCrossing reports whether two edges of s cross properly: each has the ends
// of the other on either side.
func slowCrossing(s cutout.Shape) bool {
	var edges [][2]cutout.Point
	for _, ring := range ringsOf(s) {
		for i := range ring {
			edges = append(edges, [2]cutout.Point{ring[i], ring[(i+1)%len(ring)]})
		}
	}
	for i, e := range edges {
		for _, f := range edges[:i] {
			if slowSide(e[0], e[1], f[0])*slowSide(e[0], e[1], f[1]) < 0 &&
				slowSide(f[0], f[1], e[0])*slowSide(f[0], f[1], e[1]) < 0 {
				return true
			}
		}
	}
	return false
}

func slowSide(a, b, c cutout.Point) int {
	sub := func(p, q fraction.Length) *big.Rat { return new(big.Rat).Sub(p.Rat(), q.Rat()) }
	l := sub(b.X, a.X)
	l.Mul(l, sub(c.Y, a.Y))
	r := sub(b.Y, a.Y)
	r.Mul(r, sub(c.X, a.X))
	return l.Cmp(r)
}
