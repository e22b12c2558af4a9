package nest

import (
	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// replayed is what lies on the bench while cuts are replayed.
type replayed struct {
	free    map[area]int
	notches map[area][]area // taken out of a free rectangle, kerfs included
}

func (b replayed) put(a area) {
	if a.width.Sign() > 0 && a.height.Sign() > 0 {
		b.free[a]++
	}
}

// take takes a rectangle off the bench, if it lies there.
func (b replayed) take(a area) bool {
	if b.free[a] == 0 {
		return false
	}
	b.free[a]--
	return true
}

// apart reports whether one of two rectangles lies in a notch of the other.
func (b replayed) apart(p, q area) bool {
	for _, pair := range [][2]area{{p, q}, {q, p}} {
		for _, notch := range b.notches[pair[0]] {
			if notch.holds(pair[1]) {
				return true
			}
		}
	}
	return false
}

// notch makes a stopped rip and a stopped crosscut on a rectangle; false if they
// do not free a corner of it that is still there.
func (b replayed) notch(on area, rip, across Cut, kerf fraction.Length) bool {
	if across.Kind != StoppedCrosscut || (area{across.Left, across.Bottom, across.Width, across.Height}) != on {
		return false
	}
	left, width, ok := stopped(rip.At, across.From, across.To, on.width, kerf)
	if !ok {
		return false
	}
	bottom, height, ok := stopped(across.At, rip.From, rip.To, on.height, kerf)
	if !ok {
		return false
	}
	gone := area{on.left.Add(left), on.bottom.Add(bottom), width, height}
	for _, other := range b.notches[on] {
		if gone.overlaps(other) {
			return false
		}
	}
	b.notches[on] = append(b.notches[on], gone)
	// The kerfs lie along the two inner sides of what is gone.
	free := gone
	free.width, free.height = width.Sub(kerf), height.Sub(kerf)
	if left.Sign() > 0 {
		free.left = free.left.Add(kerf)
	}
	if bottom.Sign() > 0 {
		free.bottom = free.bottom.Add(kerf)
	}
	b.put(free)
	return true
}

// stopped returns the side of a notch along one way: at is the blade of the cut
// across that way, from and to the run of the cut along it, size the part's.
func stopped(at, from, to, size, kerf fraction.Length) (start, length fraction.Length, ok bool) {
	switch from {
	case fraction.Length{}: // from the near edge: the kerf ends where the cut stops
		return fraction.Length{}, to, at.Sign() > 0 && to.Less(size) && at.Add(kerf) == to
	case size:
		return to, size.Sub(to), to.Sign() > 0 && to.Add(kerf).Less(size) && at == to
	}
	return start, length, false
}

// holds reports whether b lies wholly in a.
func (a area) holds(b area) bool {
	return !b.left.Less(a.left) && !b.bottom.Less(a.bottom) &&
		!a.left.Add(a.width).Less(b.left.Add(b.width)) && !a.bottom.Add(a.height).Less(b.bottom.Add(b.height))
}

// in returns where a rectangle lies in a part that lies at p, seen as the part
// is: from its lower left corner, the part upright.
func (a area) in(p area, turned bool) area {
	a.left, a.bottom = a.left.Sub(p.left), a.bottom.Sub(p.bottom)
	if turned {
		a.left = p.width.Sub(a.left).Sub(a.width)
		a.bottom = p.height.Sub(a.bottom).Sub(a.height)
	}
	return a
}

// waste reports whether nothing of the part's shape lies in a rectangle.
func (p *Part) waste(a area) bool {
	if p.Shape.IsEmpty() {
		return false // the whole rectangle is wanted
	}
	var left fraction.Area
	for _, s := range p.Shape.Minus(cutout.Rectangle(a.left, a.bottom, a.width, a.height), fraction.Length{}) {
		left = left.Add(s.Area())
	}
	return left.Compare(p.Shape.Area()) == 0
}
