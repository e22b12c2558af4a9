package cutout

import (
	"math/big"
	"slices"

	"example.com/groovewright/fraction"
)

// WeakKind tells why a spot may break.
type WeakKind int

const (
	Strip  WeakKind = iota // a bridge of material that is too narrow
	Leg                    // an arm, fixed at one end only, that is too long or too thin
	Corner                 // a sharp inside corner near another edge
)

func (k WeakKind) String() string {
	switch k {
	case Strip:
		return "strip"
	case Leg:
		return "leg"
	}
	return "corner"
}

// Weak is a spot of a shape that may break in the hand or under the saw.
type Weak struct {
	Kind   WeakKind
	At     Point           // the corner, or the middle of the spot to the nearest 1/64
	Width  fraction.Length // of the material at its narrowest; see [Shape.WeakSpots]
	Length fraction.Length // how far a strip or leg runs, 0 for a corner or a neck
	Rings  [2]int          // what lies on either side: indices of holes, -1 for the outline
	WayOut string

	level bool // a strip that runs across, between what lies above and below
}

// Limits say below what a spot is weak.
type Limits struct {
	Strip    fraction.Length // least width of material between two edges
	Corner   fraction.Length // least material from a sharp inside corner to the next edge
	LegRatio fraction.Ratio  // greatest length of a leg as a multiple of its width
}

// UsualLimits are 3/4 in for a strip, 1-1/2 in behind a corner and legs up to 8
// times as long as wide: common practice with sheets of 1/4 in, no source.
func UsualLimits() Limits {
	return Limits{Strip: fraction.Of(3, 4), Corner: fraction.Of(3, 2), LegRatio: fraction.NewRatio(8, 1)}
}

const (
	// stubRatio is how many times its width a thin arm must be long to count: a
	// shorter one is a stub, too stout to break. Common practice, no source.
	stubRatio = 2
	// anchorRatio is how many times wider than a leg the part must be that it
	// grows from; otherwise it is a narrow piece and no leg. Common practice, no source.
	anchorRatio = 2
)

// How finely weak spots are told where the exact figure is irrational, or finer
// than anybody needs; in inches.
var (
	widthGrain = big.NewRat(1, 1024) // widths are rounded down to it
	placeGrain = big.NewRat(1, 64)   // the place of a spot, near enough to find it by
	probeGrain = big.NewRat(1, 4096) // a place that is asked whether it lies in the material
)

// WeakSpots returns the weak spots of s in its own coordinates: strips, then
// legs, then corners, each from left to right.
//
//   - A strip is material narrower than limits.Strip with more of the piece at
//     both ends, between a cutout and the edge, two cutouts, or two edges; or all
//     of a piece that narrow. A neck from corner to corner of two cutouts counts.
//   - A leg is an arm with one free end: narrower than limits.Strip and more than
//     twice as long as wide; or of any width, longer than limits.LegRatio times
//     its width, and growing from a part at least twice as wide.
//   - A corner is a sharp inside corner with less than limits.Corner of material
//     between it and another edge, where it is no strip already.
//
// Widths are taken across and up, and for material between two slanting edges
// square to them; they are exact but for the widths of slanting strips, necks and
// behind corners, which are rounded down to 1/1024 in. It takes time in
// proportion to n for each sharp corner and for each narrow cell.
func (s Shape) WeakSpots(limits Limits) []Weak {
	if s.IsEmpty() {
		return nil
	}
	var spots []Weak
	var strips []box
	for _, upright := range []bool{false, true} {
		f := newField(s, upright, limits)
		spots = append(spots, f.thin(&strips)...)
		spots = append(spots, f.longLegs()...)
	}
	spots = append(spots, s.weakCorners(limits, strips)...)
	for i := range spots {
		spots[i].WayOut = wayOut(spots[i])
	}
	slices.SortStableFunc(spots, func(a, b Weak) int {
		if a.Kind != b.Kind {
			return int(a.Kind) - int(b.Kind)
		}
		if c := a.At.X.Compare(b.At.X); c != 0 {
			return c
		}
		return a.At.Y.Compare(b.At.Y)
	})
	return slices.CompactFunc(spots, func(a, b Weak) bool { return a.Kind == b.Kind && a.At == b.At })
}

func wayOut(w Weak) string {
	holes := 0
	for _, ring := range w.Rings {
		if ring >= 0 {
			holes++
		}
	}
	switch {
	case w.Kind == Leg:
		return "saw the leg as a piece of its own, with a seam at its root, or tape a batten across it until it is fixed"
	case w.Kind == Corner:
		return "drill the corner round before sawing and carry the piece flat, or move the seam to the corner"
	case holes == 2 && w.Rings[0] != w.Rings[1]:
		return "saw both cutouts as one if their plates still cover it, or let a seam run through them"
	case w.level && holes > 0:
		return "let the cutout run out there if its plate or trim still covers what falls away, or tape a batten across the strip until the piece is fixed, and saw this cutout last"
	case w.level:
		return "saw the strip as a piece of its own, or tape a batten across it until the piece is fixed"
	case holes > 0:
		return "move the seam so that the cutout runs out at the edge or lies further in, or saw the piece in two at the cutout"
	}
	return "move the seam so that more is left beside the notch, or saw the strip as a piece of its own"
}

// weakCorners returns the corners with too little material behind them, and the
// necks between corners that no strip covers.
func (s Shape) weakCorners(limits Limits, strips []box) []Weak {
	var spots []Weak
	reach := fraction.Max(limits.Corner, limits.Strip)
	for number, ring := range s.rings {
		for i, v := range ring {
			if !sharpInside(ring, i) {
				continue
			}
			to, other, square := s.behindCorner(number, i, v, reach)
			if square == nil || slices.ContainsFunc(strips, func(b box) bool { return b.contains(v) }) {
				continue
			}
			w := Weak{Kind: Corner, At: v, Rings: [2]int{number, other}}
			w.Width = fitOr(rootDown(square))
			// Beside a straight edge it would be a strip with a length of its own.
			corner := to.x.Cmp(v.X.Rat()) != 0 && to.y.Cmp(v.Y.Rat()) != 0 || s.isCorner(other, to)
			if w.Width.Less(limits.Strip) && corner {
				w.Kind, w.At = Strip, spotPoint(halfWay(v.rational(), to))
			} else if !w.Width.Less(limits.Corner) {
				continue
			}
			spots = append(spots, w)
		}
	}
	return spots
}

// isCorner reports whether the place is a corner of that ring, -1 being the
// outline.
func (s Shape) isCorner(number int, at rational) bool {
	p, ok := at.point()
	return ok && slices.Contains(s.ring(number), p)
}

// ring returns the hole of that number, or the outline for -1.
func (s Shape) ring(number int) []Point {
	if number < 0 {
		return s.Outline
	}
	return s.Holes[number]
}

// behindCorner looks for the nearest edge less than reach away from corner i of a
// ring, with nothing but material between. square is nil if there is none.
func (s Shape) behindCorner(number, i int, v Point, reach fraction.Length) (to rational, other int, square *big.Rat) {
	limit := squared(reach.Rat())
	own := s.ring(number)
	beside := [2]Point{own[before(i, len(own))], own[after(i, len(own))]}
	for n, ring := range s.rings {
		for j, a := range ring {
			next := after(j, len(ring))
			if n == number && (j == i || next == i) || farApart(a, ring[next], v, reach) {
				continue
			}
			at, d := nearestOnEdge(a.rational(), ring[next].rational(), v.rational())
			if p, ok := at.point(); ok && n == number && (p == beside[0] || p == beside[1]) {
				continue // the edge between them is no material
			}
			if d.Cmp(limit) < 0 && (square == nil || d.Cmp(square) < 0) && s.solid(halfWay(v.rational(), at)) {
				to, other, square = at, n, d
			}
		}
	}
	return to, other, square
}

func halfWay(p, q rational) rational {
	x, y := new(big.Rat).Add(p.x, q.x), new(big.Rat).Add(p.y, q.y)
	return rational{x.Quo(x, two), y.Quo(y, two)}
}

// solid reports whether the place, to probeGrain, lies inside s and not on its edge.
func (s Shape) solid(r rational) bool {
	p, ok := rational{nearestMultiple(r.x, probeGrain), nearestMultiple(r.y, probeGrain)}.point()
	if !ok || place(s.Outline, p) <= 0 {
		return false
	}
	for _, hole := range s.Holes {
		if place(hole, p) >= 0 {
			return false
		}
	}
	return true
}

// rootDown is the root if it is rational, or else rounded down to widthGrain.
func rootDown(square *big.Rat) *big.Rat {
	if root, ok := exactRoot(square); ok {
		return root
	}
	return rootBelow(square, widthGrain)
}

// spotPoint rounds a place to placeGrain.
func spotPoint(r rational) Point {
	return Point{fitOr(nearestMultiple(r.x, placeGrain)), fitOr(nearestMultiple(r.y, placeGrain))}
}

// box is an upright rectangle, its edge included.
type box struct{ lo, hi Point }

func (b box) contains(p Point) bool {
	return !p.X.Less(b.lo.X) && !b.hi.X.Less(p.X) && !p.Y.Less(b.lo.Y) && !b.hi.Y.Less(p.Y)
}
