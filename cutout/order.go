package cutout

import (
	"slices"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
)

// CuttingKind says what is sawn out of a piece.
type CuttingKind uint8

// The kinds of cuttings, in the order of sawing.
const (
	HoleCut  CuttingKind = iota // waste with material all round
	EdgeCut                     // waste at the edge that one way takes off: a slope, a curve
	NotchCut                    // waste at the edge, with an inside corner
)

var cuttingKinds = enum.Of[CuttingKind]("hole", "edge", "notch")

// String returns the word of the kind.
func (k CuttingKind) String() string { return cuttingKinds.String(k) }

// MarshalText writes the word of the kind.
func (k CuttingKind) MarshalText() ([]byte, error) { return cuttingKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *CuttingKind) UnmarshalText(text []byte) error { return cuttingKinds.Unmarshal(text, k) }

// Cutting is one part of a piece's waste and how to saw it out, measured like [Shape.Marks]. The
// waste hangs by the last way, so that is the shortest left: common practice, no source.
type Cutting struct {
	Kind     CuttingKind
	Hole     int // index of the hole, -1 for the others
	Starters []Starter
	Tight    []Point // inside corners in which no starter hole fits
	Ways     []Way   // in the order of sawing
}

// Way is a line to saw in one go from where the saw comes in, bent only where the saw can follow.
type Way []Point

// Cuttings returns everything that is sawn out of the bounding rectangle of s once that is free:
// holes first, while the piece is stiff, then edges, while no notch leaves a leg that bends under the
// saw, then notches (common practice, no source). Every edge of s that does not lie on the rectangle is
// in one way. The starter holes have that diameter and stand on marks,
// where mark is above zero.
//
// A hole is sawn from starter to starter, the longest way first. In a notch the two ways that come
// in from the edge are first, each sawn inwards. It fails where a place does not fit a Length.
func (s Shape) Cuttings(diameter, mark fraction.Length) (cuttings []Cutting, err error) {
	defer fraction.Catch(&err)
	s = s.atOrigin()
	for i, hole := range s.holes {
		// A hole is cut at its sharp corners, or at its lowest corner if it has none.
		ways := splitWays(hole, max(0, firstCorner(hole, sharp)), len(hole))
		sortLongestFirst(ways)
		cuttings = append(cuttings, Cutting{Kind: HoleCut, Hole: i, Ways: ways})
	}
	cuttings = append(cuttings, s.notches()...)
	sort.SliceStable(cuttings, func(i, j int) bool { return cuttings[i].Kind < cuttings[j].Kind })
	for i := range cuttings {
		c := &cuttings[i]
		ring, line := s.ring(c.Hole), slices.Concat(c.Ways...)
		for k, corner := range ring {
			if !slices.Contains(line, corner) || !startsAt(c.Hole, ring, k) {
				continue
			}
			if drilled, ok := s.drill(c.Hole, ring, k, diameter, mark); ok {
				c.Starters = append(c.Starters, drilled)
			} else {
				c.Tight = append(c.Tight, corner)
			}
		}
	}
	return cuttings, nil
}

// extent stands for a way's length, which may be irrational: what its edges go across and along.
func (w Way) extent() (sum fraction.Length) {
	for i := 1; i < len(w); i++ {
		p, q := w[i-1], w[i]
		sum = sum.Add(q.X.Sub(p.X).Abs()).Add(q.Y.Sub(p.Y).Abs())
	}
	return sum
}

func sortLongestFirst(ways []Way) {
	sort.SliceStable(ways, func(i, j int) bool { return ways[j].extent().Less(ways[i].extent()) })
}

// firstCorner returns the first corner of a ring that is such, -1 if none is.
func firstCorner(ring []Point, such func(ring []Point, i int) bool) int {
	for i := range ring {
		if such(ring, i) {
			return i
		}
	}
	return -1
}

// splitWays cuts the line of count edges of the ring, from corner first on, at its sharp corners.
func splitWays(ring []Point, first, count int) []Way {
	var ways []Way
	way := Way{ring[first%len(ring)]}
	for i := 1; i <= count; i++ {
		corner := (first + i) % len(ring)
		way = append(way, ring[corner])
		if i == count || sharp(ring, corner) {
			ways = append(ways, way)
			way = Way{ring[corner]}
		}
	}
	return ways
}

// notches walks along the outline. Edges that lie inside the bounding rectangle and follow one
// another are one notch, or one edge cut, up to where they reach the rectangle again.
func (s Shape) notches() []Cutting {
	ring := s.outline
	n := len(ring)
	_, hi := s.Bounds()
	onBounds := func(ring []Point, i int) bool { // edge i runs from corner i to the next
		p, q := ring[i%n], ring[(i+1)%n]
		return p.X == q.X && (p.X.IsZero() || p.X == hi.X) || p.Y == q.Y && (p.Y.IsZero() || p.Y == hi.Y)
	}
	atEdge := func(p Point) bool { return p.X.IsZero() || p.Y.IsZero() || p.X == hi.X || p.Y == hi.Y }
	from := firstCorner(ring, onBounds) + 1
	var found []Cutting
	for i := 0; i < n; {
		if onBounds(ring, from+i) {
			i++
			continue
		}
		first := i
		for i++; i < n && !onBounds(ring, from+i) && !atEdge(ring[(from+i)%n]); i++ {
		}
		found = append(found, notch(ring, from+first, i-first))
	}
	return found
}

// notch makes a cutting of the count edges that start at corner first.
func notch(ring []Point, first, count int) Cutting {
	c := Cutting{Kind: EdgeCut, Hole: -1, Ways: splitWays(ring, first, count)}
	for i := 1; i < count; i++ {
		if sharpInside(ring, (first+i)%len(ring)) {
			c.Kind = NotchCut
		}
	}
	if last := len(c.Ways) - 1; last > 0 {
		in := c.Ways[last]
		slices.Reverse(in) // in from the edge, like the first
		c.Ways = slices.Insert(c.Ways[:last], 1, in)
		sortLongestFirst(c.Ways[:2])
		sortLongestFirst(c.Ways[2:])
	}
	return c
}

// Marks are the corners of a piece as running measurements, each by itself from the left edge and
// from the lower edge of the piece's bounding rectangle.
type Marks struct {
	Outline Corners
	Holes   []Corners // in the order of the shape's holes
}

// Corners are the corners of one ring in its order, each with the same index in both lists.
type Corners struct {
	Face []Point `json:"face"` // seen from the front
	Back []Point `json:"back"` // seen from behind: x is the width of the piece less x
}

// Marks returns the marks of s on face and back. It fails where a coordinate does not fit a Length.
func (s Shape) Marks() (m Marks, err error) {
	defer fraction.Catch(&err)
	s = s.atOrigin()
	_, hi := s.Bounds()
	m.Outline = corners(s.Outline(), hi.X)
	for _, hole := range s.Holes() {
		m.Holes = append(m.Holes, corners(hole, hi.X))
	}
	return m, nil
}

func corners(ring []Point, width fraction.Length) Corners {
	c := Corners{Face: ring, Back: make([]Point, len(ring))}
	for i, p := range ring {
		c.Back[i] = behind(p, width)
	}
	return c
}

// behind returns where a point of a piece of the given width lies on its back.
func behind(p Point, width fraction.Length) Point { return Point{width.Sub(p.X), p.Y} }
