package cutout

import (
	"errors"
	"math/big"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/fraction/fault"
)

// Taped is a distance from a known point, where the tape's zero lies, to the point that is sought.
type Taped struct {
	From     Point
	Distance fraction.Length
}

// Side says on which side of a line a point lies, looking from its first point to its second.
type Side uint8

// The sides of a line.
const (
	Left Side = iota
	Right
)

var sides = enum.Of[Side]("left", "right")

// String returns "left" or "right".
func (s Side) String() string { return sides.String(s) }

// MarshalText writes the word of the side.
func (s Side) MarshalText() ([]byte, error) { return sides.Marshal(s) }

// UnmarshalText reads the word of a side.
func (s *Side) UnmarshalText(text []byte) error { return sides.Unmarshal(text, s) }

// Located is a point found from taped distances.
type Located struct {
	At Point

	// Exact says that At is the very point where two distances meet. If not, each coordinate is the
	// mark nearest to the exact one, and Within is a bound of how far At is from the exact point.
	Exact  bool
	Within fraction.Length

	// Closing is the closing error of each distance, how much longer it would have to be to end at
	// At: exact where that is rational, else to the nearest 1/1024 of the mark.
	Closing []fraction.Length
}

// Worst returns the greatest closing error, without its sign, and the index of its distance.
func (l Located) Worst() (index int, off fraction.Length) {
	for i, c := range l.Closing {
		if off.Less(c.Abs()) {
			index, off = i, c.Abs()
		}
	}
	return index, off
}

// closingParts is how many parts of a mark irrational closing errors and bounds are stated to.
const closingParts = 1024

// What may be wrong with taped distances.
var (
	ErrTooFewTaped = errors.New("fewer than two taped distances")
	ErrSamePoint   = errors.New("both distances are taped from the same point")
	ErrNegative    = errors.New("a taped distance is below zero")
	ErrNoMark      = errors.New("the point is not rational and needs a mark above zero to round to")
	ErrTooShort    = errors.New("the two distances together do not reach from one point to the other")
	ErrTooLong     = errors.New("one distance reaches beyond all of the other")
)

// Locate finds a point from taped distances to two or more known points. It lies on
// the given side of the line from the first known point to the second.
//
// Two distances a and b from points d apart give the point at d/2 + (a²-b²)/2d along that line and
// the root of what is left of a² beside it: the two-tape method, by formula. The first, as a part
// of d, is always rational; the point is exact where the second is, else at the nearest mark.
//
// With three distances or more, each two are tried; the point wins whose greatest closing error is
// least, of equal ones the first. Known points in one line do not give the side even then.
//
// It fails with [ErrTooFewTaped], where no pair gives a point with a *fault.Fault that has another
// of the errors as its cause and the first distance at fault as its path, such as [0].Distance, and
// where a coordinate does not fit a Length. The time for n distances grows as n cubed.
func Locate(taped []Taped, side Side, mark fraction.Length) (best Located, err error) {
	defer fraction.Catch(&err)
	if len(taped) < 2 {
		return Located{}, ErrTooFewTaped
	}
	for i, t := range taped {
		if t.Distance.Sign() < 0 {
			return Located{}, unlocated(i, ErrNegative)
		}
	}
	if taped[0].From == taped[1].From {
		return Located{}, unlocated(0, ErrSamePoint)
	}
	found := false
	var least fraction.Length
	var first error
	for i := range taped {
		for j := i + 1; j < len(taped); j++ {
			candidates, cause := pairPoints(taped, i, j, side, mark)
			if cause != nil && first == nil {
				first = unlocated(i, cause)
			}
			for _, c := range candidates {
				c.close(taped, mark)
				if _, off := c.Worst(); !found || off.Less(least) {
					best, least, found = c, off, true
				}
			}
		}
	}
	if !found {
		return Located{}, first
	}
	return best, nil
}

func unlocated(i int, cause error) error {
	return &fault.Fault{Path: fault.Of(i, "Distance"), Cause: cause, Want: "distances that meet in a point"}
}

// pairPoints returns the points that distances i and j give on the given side of the base line:
// one, or two where their own line crosses it.
func pairPoints(taped []Taped, i, j int, side Side, mark fraction.Length) (found []Located, err error) {
	along, beside, err := meet(taped[i], taped[j])
	if err != nil {
		return nil, err
	}
	base := i == 0 && j == 1
	for _, s := range []Side{Left, Right} {
		if base && s != side {
			continue
		}
		l, err := pointBeside(taped[i].From, taped[j].From, along, beside, s, mark)
		if err != nil {
			return nil, err
		}
		if where := Orient(taped[0].From, taped[1].From, l.At); base || where == 0 || (where > 0) == (side == Left) {
			found = append(found, l)
		}
	}
	return found, nil
}

// meet returns where two distances meet: the part of the way from the first known point to the
// second, and the square of the part of it to go to the side.
func meet(a, b Taped) (along, beside *big.Rat, err error) {
	if a.From == b.From {
		return nil, nil, ErrSamePoint
	}
	base := squaredDistance(a.From.rational(), b.From.rational())
	ra, rb := squared(a.Distance.Rat()), squared(b.Distance.Rat())
	along = new(big.Rat).Sub(ra, rb)
	along.Quo(along.Add(along, base), new(big.Rat).Mul(base, two))
	beside = new(big.Rat).Quo(ra, base)
	beside.Sub(beside, squared(along))
	if beside.Sign() >= 0 {
		return along, beside, nil
	}
	if sum := new(big.Rat).Add(a.Distance.Rat(), b.Distance.Rat()); squared(sum).Cmp(base) < 0 {
		return nil, nil, ErrTooShort
	}
	return nil, nil, ErrTooLong
}

// pointBeside turns the two parts into a point on one side of the line from a to b.
func pointBeside(a, b Point, along, beside *big.Rat, side Side, mark fraction.Length) (Located, error) {
	line := b.rational().minus(a.rational())
	at := a.rational().plus(line.times(along))
	// The left of (x, y) is (-y, x).
	across := rational{line.y.Neg(line.y), line.x}
	if side == Right {
		across = across.times(big.NewRat(-1, 1))
	}
	if root, ok := exactRoot(beside); ok {
		return Located{At: at.plus(across.times(root)).mustPoint(), Exact: true}, nil
	}
	if mark.Sign() <= 0 {
		return Located{}, ErrNoMark
	}
	unit := mark.Rat()
	nearX, offX := nearRoot(at.x, across.x, beside, unit)
	nearY, offY := nearRoot(at.y, across.y, beside, unit)
	off := new(big.Rat).Add(squared(offX), squared(offY))
	within := rootAbove(off, new(big.Rat).Quo(unit, big.NewRat(closingParts, 1)))
	return Located{At: rational{nearX, nearY}.mustPoint(), Within: mustFit(within)}, nil
}

// nearRoot returns the multiple of unit nearest to r + u·√q, which is irrational, and an upper
// bound of how far it is off. The root is enclosed ever more narrowly until both ends round to the
// same multiple: that happens, since no irrational number is half-way between two.
func nearRoot(r, u, q, unit *big.Rat) (near, off *big.Rat) {
	if u.Sign() == 0 {
		near = nearestMultiple(r, unit)
		return near, gap(near, r)
	}
	for bits := uint(32); ; bits *= 2 {
		step := new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Lsh(big.NewInt(1), bits))
		low := rootBelow(q, step)
		high := new(big.Rat).Add(low, step)
		low.Add(low.Mul(low, u), r)
		high.Add(high.Mul(high, u), r)
		near = nearestMultiple(low, unit)
		if near.Cmp(nearestMultiple(high, unit)) == 0 {
			low.Abs(low.Sub(low, near))
			high.Abs(high.Sub(high, near))
			if low.Cmp(high) > 0 {
				return near, low
			}
			return near, high
		}
	}
}

// close works out the closing error of every distance.
func (l *Located) close(taped []Taped, mark fraction.Length) {
	unit := big.NewRat(1, closingParts)
	if mark.Sign() > 0 {
		unit.Mul(unit, mark.Rat())
	}
	l.Closing = make([]fraction.Length, len(taped))
	for i, t := range taped {
		square := squaredDistance(t.From.rational(), l.At.rational())
		reach, ok := exactRoot(square)
		if !ok { // the multiple of unit nearest to the root
			reach = nearestMultiple(rootBelow(square, new(big.Rat).Quo(unit, two)), unit)
		}
		l.Closing[i] = mustFit(reach.Sub(reach, t.Distance.Rat()))
	}
}
