package cutout

import (
	"cmp"
	"math/big"
	"slices"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
)

// WeakKind says why a spot may break.
type WeakKind uint8

// The kinds of weak spots.
const (
	Strip  WeakKind = iota // a bridge of material that is too narrow
	Leg                    // an arm, fixed at one end only, that is too long or too thin
	Corner                 // a sharp inside corner near another edge
)

var weakKinds = enum.Of[WeakKind]("strip", "leg", "corner")

// String returns the word of the kind.
func (k WeakKind) String() string { return weakKinds.String(k) }

// MarshalText writes the word of the kind.
func (k WeakKind) MarshalText() ([]byte, error) { return weakKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *WeakKind) UnmarshalText(text []byte) error { return weakKinds.Unmarshal(text, k) }

// WayOut says what can be done so that a weak spot does not break.
type WayOut uint8

// The ways out, each for one sort of spot.
const (
	PartLeg     WayOut = iota // a leg: saw it as a piece of its own, or stiffen it with a batten
	DrillCorner               // a corner: drill it round first, or move the seam to it
	JoinCutouts               // between two cutouts: saw both as one, or seam through them
	RunOut                    // across, over or under a cutout: run the cutout out, or stiffen it
	PartStrip                 // across, beside no cutout: saw it as its own piece, or stiffen it
	MoveSeam                  // up, beside a cutout: move the seam, or part the piece at the cutout
	WidenStrip                // up, beside a notch: move the seam, or saw it as its own piece
	WidenPiece                // all of a piece, or of one that is nowhere wider: start the pattern elsewhere, or cover its place
)

var waysOut = enum.Of[WayOut]("part the leg", "drill the corner", "join the cutouts", "let the cutout run out",
	"part the strip", "move the seam", "widen the strip", "widen the piece")

// String returns the word of the way out.
func (w WayOut) String() string { return waysOut.String(w) }

// MarshalText writes the word of the way out.
func (w WayOut) MarshalText() ([]byte, error) { return waysOut.Marshal(w) }

// UnmarshalText reads the word of a way out.
func (w *WayOut) UnmarshalText(text []byte) error { return waysOut.Unmarshal(text, w) }

// Weak is a spot of a shape that may break in the hand or under the saw.
type Weak struct {
	Kind   WeakKind
	At     Point           // the corner, or the middle of the spot to the nearest 1/64
	Width  fraction.Length // of the material at its narrowest; see [Shape.WeakSpots]
	Length fraction.Length // how far a strip or leg runs, 0 for a corner or a neck
	Rings  [2]int          // what lies on either side: indices of holes, -1 for the outline
	WayOut WayOut

	level bool // a strip that runs across, between what lies above and below
}

// Limits say below what a spot is weak.
type Limits struct {
	Strip    fraction.Length // least width of material between two edges
	Corner   fraction.Length // least material from a sharp inside corner to the next edge
	LegRatio fraction.Ratio  // greatest length of a leg as a multiple of its width
}

const (
	// stubRatio is how many times its width a thin arm must be long to count: a shorter one is a
	// stub, too stout to break. Common practice, no source.
	stubRatio = 2
	// anchorRatio is how many times wider than a leg the part must be that it grows from; otherwise
	// it is a narrow piece and no leg. Common practice, no source.
	anchorRatio = 2
)

// How finely weak spots are given where the exact figure is irrational or needless, in inches.
var (
	widthGrain = big.NewRat(1, 1024) // widths are rounded down to it
	placeGrain = big.NewRat(1, 64)   // the place of a spot, near enough to find it by
	probeGrain = big.NewRat(1, 4096) // a place where it is tested whether there is material
)

// WeakSpots returns the weak spots of s, in its own x and y: strips, legs, corners, each rightward.
//
//   - A strip is material narrower than limits.Strip with more of the piece at both ends, between a
//     cutout and the edge, two cutouts, or two edges; or all of a piece that narrow. A neck from
//     corner to corner of two cutouts counts.
//   - A leg is an arm with one free end: narrower than limits.Strip and more than twice as long as
//     wide; or of any width, longer than limits.LegRatio times its width, and growing from a part
//     at least twice as wide.
//   - A corner is a sharp inside corner with less than limits.Corner of material between it and
//     another edge, where it is no strip already.
//
// Widths are taken across and up, between two slanting edges square to them; those of slanting
// strips, necks and behind corners are rounded down to 1/1024 in, the others exact. It takes time
// in proportion to n for each sharp corner and narrow cell, and fails where a width fits no Length.
func (s Shape) WeakSpots(limits Limits) (spots []Weak, err error) {
	defer fraction.Catch(&err)
	var strips []box
	for _, upright := range []bool{false, true} {
		f := newField(s, upright, limits)
		spots = append(spots, f.thin(&strips)...)
		spots = append(spots, f.longLegs()...)
	}
	spots = append(spots, s.weakCorners(limits, strips)...)
	lo, hi := s.Bounds()
	for i := range spots {
		w := &spots[i]
		w.WayOut = w.wayOut()
		whole := hi.X.Sub(lo.X)
		if w.level {
			whole = hi.Y.Sub(lo.Y)
		}
		if w.Kind == Strip && w.Rings == [2]int{-1, -1} && (w.Width == whole || whole.Less(limits.Strip)) {
			w.WayOut = WidenPiece
		}
	}
	sort.SliceStable(spots, func(i, j int) bool {
		a, b := &spots[i], &spots[j]
		return cmp.Or(cmp.Compare(a.Kind, b.Kind), lower(flip(a.At), flip(b.At))) < 0
	})
	return slices.CompactFunc(spots, func(a, b Weak) bool { return a.Kind == b.Kind && a.At == b.At }), nil
}

func (w *Weak) wayOut() WayOut {
	beside := w.Rings[0] >= 0 || w.Rings[1] >= 0 // a cutout
	switch {
	case w.Kind == Leg:
		return PartLeg
	case w.Kind == Corner:
		return DrillCorner
	case w.Rings[0] >= 0 && w.Rings[1] >= 0 && w.Rings[0] != w.Rings[1]:
		return JoinCutouts
	case w.level && beside:
		return RunOut
	case w.level:
		return PartStrip
	case beside:
		return MoveSeam
	}
	return WidenStrip
}

// weakCorners returns the corners with too little behind them, and the necks that no strip covers.
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
			root, ok := exactRoot(square)
			if !ok {
				root = rootBelow(square, widthGrain)
			}
			w.Width = mustFit(root)
			// Beside a straight edge it would be a strip with a length of its own.
			p, fits := to.point()
			corner := to.x.Cmp(v.X.Rat()) != 0 && to.y.Cmp(v.Y.Rat()) != 0 || fits && slices.Contains(s.ring(other), p)
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

// behindCorner looks for the nearest edge less than reach away from corner i of a ring, with
// nothing but material between. square is nil if there is none.
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

func halfWay(p, q rational) rational { return p.plus(q).times(big.NewRat(1, 2)) }

// solid reports whether the place, to probeGrain, lies inside s and not on its edge.
func (s Shape) solid(r rational) bool {
	p, ok := rational{nearestMultiple(r.x, probeGrain), nearestMultiple(r.y, probeGrain)}.point()
	return ok && s.locate(p) > 0
}

// spotPoint rounds a place to placeGrain.
func spotPoint(r rational) Point {
	return rational{nearestMultiple(r.x, placeGrain), nearestMultiple(r.y, placeGrain)}.mustPoint()
}

// box is an upright rectangle, its edge included.
type box struct{ lo, hi Point }

func (b box) contains(p Point) bool {
	return !p.X.Less(b.lo.X) && !b.hi.X.Less(p.X) && !p.Y.Less(b.lo.Y) && !b.hi.Y.Less(p.Y)
}
