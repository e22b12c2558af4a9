package cutout

import (
	"fmt"
	"slices"
	"strings"

	"example.com/groovewright/fraction"
)

// CuttingKind tells what is sawn out of a piece.
type CuttingKind int

const (
	HoleCut  CuttingKind = iota // waste with material all round
	NotchCut                    // waste at the edge, with an inside corner
	EdgeCut                     // waste at the edge that one way takes off: a slope, a curve
)

func (k CuttingKind) String() string {
	switch k {
	case HoleCut:
		return "hole"
	case NotchCut:
		return "notch"
	}
	return "edge"
}

// Cutting is one part of the waste of a piece and the order in which to saw it
// out, measured like [Shape.Marks].
//
// That waste hangs by the last way, so that way is the shortest that the others
// leave; the rule is common practice, no source.
type Cutting struct {
	Kind     CuttingKind
	Hole     int // index of the hole, -1 for the others
	Starters []Starter
	Tight    []Point // inside corners in which no starter hole fits
	Ways     []Way   // in the order of sawing
}

// Way is a line to saw in one go: straight, or bent where the saw can follow.
// It starts where the saw comes in.
type Way struct {
	Points []Point
}

// Cuttings returns everything that is sawn out of the bounding rectangle of s
// once that is free: holes first, while the piece is stiff, then notches, then
// edges. Every edge of s that does not lie on the rectangle is in one way.
//
// Starter holes are those of [Shape.Starters] with the same diameter and mark. A
// hole is sawn from starter to starter, the longest way first. In a notch the two
// ways that come in from the edge are first, each sawn inwards.
func (s Shape) Cuttings(diameter, mark fraction.Length) []Cutting {
	s = s.atOrigin()
	starters, tight := s.Starters(diameter, mark)
	var cuttings []Cutting
	for i, hole := range s.Holes {
		c := Cutting{Kind: HoleCut, Hole: i, Ways: holeWays(hole)}
		c.claim(hole, starters, tight)
		cuttings = append(cuttings, c)
	}
	notches := s.notches()
	for i := range notches {
		notches[i].claim(notches[i].line(), starters, tight)
	}
	slices.SortStableFunc(notches, func(a, b Cutting) int { return int(a.Kind) - int(b.Kind) })
	return append(cuttings, notches...)
}

// claim takes in the starters whose corners the line passes.
func (c *Cutting) claim(line []Point, starters []Starter, tight []Point) {
	for _, s := range starters {
		if s.Hole == c.Hole && slices.Contains(line, s.Corner) {
			c.Starters = append(c.Starters, s)
		}
	}
	for _, p := range tight {
		if slices.Contains(line, p) {
			c.Tight = append(c.Tight, p)
		}
	}
}

// line returns the points of all ways.
func (c *Cutting) line() []Point {
	var line []Point
	for _, w := range c.Ways {
		line = append(line, w.Points...)
	}
	return line
}

// extent stands for the length of a way, which need not be rational: the sum of
// what its edges go across and along.
func (w Way) extent() (sum fraction.Length) {
	for i := 1; i < len(w.Points); i++ {
		p, q := w.Points[i-1], w.Points[i]
		sum = sum.Add(q.X.Sub(p.X).Abs()).Add(q.Y.Sub(p.Y).Abs())
	}
	return sum
}

func longestFirst(a, b Way) int { return b.extent().Compare(a.extent()) }

// holeWays cuts a hole's ring at its sharp corners, or at its lowest corner if it
// has none.
func holeWays(ring []Point) []Way {
	if len(ring) == 0 {
		return nil
	}
	from := 0
	for i := range ring {
		if sharp(ring, i) {
			from = i
			break
		}
	}
	closed := slices.Concat(ring[from:], ring[:from], ring[from:from+1])
	ways := splitWays(closed, func(i int) bool { return sharp(ring, (from+i)%len(ring)) })
	slices.SortStableFunc(ways, longestFirst)
	return ways
}

// splitWays cuts a line at the inner points that at names.
func splitWays(line []Point, at func(i int) bool) []Way {
	var ways []Way
	start := 0
	for i := 1; i < len(line); i++ {
		if i == len(line)-1 || at(i) {
			ways = append(ways, Way{slices.Clone(line[start : i+1])})
			start = i
		}
	}
	return ways
}

// notches walks along the outline. Edges that lie inside the bounding rectangle
// and follow one another are one notch, or one edge cut, up to where they reach
// the rectangle again.
func (s Shape) notches() []Cutting {
	ring := s.Outline
	n := len(ring)
	if n == 0 {
		return nil
	}
	_, hi := s.Bounds()
	onBounds := func(i int) bool { // edge i runs from corner i to the next
		p, q := ring[i], ring[after(i, n)]
		return p.X == q.X && (p.X.IsZero() || p.X == hi.X) || p.Y == q.Y && (p.Y.IsZero() || p.Y == hi.Y)
	}
	from := 0
	for i := range ring {
		if onBounds(i) {
			from = after(i, n)
			break
		}
	}
	var found []Cutting
	for i := 0; i < n; {
		if onBounds((from + i) % n) {
			i++
			continue
		}
		first := i
		for i++; i < n && !onBounds((from+i)%n) && !atEdge(ring[(from+i)%n], hi); i++ {
		}
		found = append(found, notch(ring, from+first, i-first))
	}
	return found
}

// atEdge reports whether p lies on the edge of the rectangle from the origin to hi.
func atEdge(p, hi Point) bool {
	return p.X.IsZero() || p.Y.IsZero() || p.X == hi.X || p.Y == hi.Y
}

// notch makes a cutting of the count edges that start at corner first.
func notch(ring []Point, first, count int) Cutting {
	c := Cutting{Kind: EdgeCut, Hole: -1}
	line := make([]Point, count+1)
	for i := range line {
		corner := (first + i) % len(ring)
		line[i] = ring[corner]
		if i > 0 && i < count && sharpInside(ring, corner) {
			c.Kind = NotchCut
		}
	}
	ways := splitWays(line, func(i int) bool { return sharp(ring, (first+i)%len(ring)) })
	if len(ways) > 1 {
		slices.Reverse(ways[len(ways)-1].Points) // in from the edge, like the first
		ends := []Way{ways[0], ways[len(ways)-1]}
		inner := ways[1 : len(ways)-1]
		slices.SortStableFunc(ends, longestFirst)
		slices.SortStableFunc(inner, longestFirst)
		ways = append(ends, inner...)
	}
	c.Ways = ways
	return c
}

// Words returns the cutting as instructions, one to a line, each beginning with
// the name, such as that of the opening; an empty name stands for the kind of
// cutting. Places are given across from the left edge and up from the lower
// edge, on the face.
func (c Cutting) Words(name string, tape fraction.Tape) []string {
	if name == "" {
		name = c.Kind.String()
	}
	var words []string
	for _, s := range c.Starters {
		words = append(words, fmt.Sprintf("%s: drill %s, centre %s", name, tape.Format(s.Diameter), placeWords(s.At, tape)))
	}
	for _, p := range c.Tight {
		words = append(words, fmt.Sprintf("%s: no starter hole fits at %s; use a smaller bit or cut in from both sides", name, placeWords(p, tape)))
	}
	for i, w := range c.Ways {
		verb := "saw "
		if i == len(c.Ways)-1 && len(c.Ways) > 1 {
			verb = "hold the waste and last saw "
		}
		words = append(words, name+": "+verb+w.words(tape))
	}
	return words
}

func placeWords(p Point, tape fraction.Tape) string {
	return tape.Format(p.X) + " across, " + tape.Format(p.Y) + " up"
}

// curvePoints is the most points of a way that are all told; one of more is a
// curve, whose marks are in the list of corners.
const curvePoints = 8

// words tells where to saw. A straight upright or level way is told by its line
// and from where to where on it.
func (w Way) words(tape fraction.Tape) string {
	first, last := w.Points[0], w.Points[len(w.Points)-1]
	switch {
	case len(w.Points) == 2 && first.X == last.X:
		return fmt.Sprintf("%s at %s across, from %s to %s", direction(first.Y, last.Y, "up", "down"),
			tape.Format(first.X), tape.Format(first.Y), tape.Format(last.Y))
	case len(w.Points) == 2 && first.Y == last.Y:
		return fmt.Sprintf("%s at %s up, from %s to %s", direction(first.X, last.X, "right", "left"),
			tape.Format(first.Y), tape.Format(first.X), tape.Format(last.X))
	case len(w.Points) > curvePoints:
		middle := w.Points[len(w.Points)/2]
		return fmt.Sprintf("along the curve from %s, by %s, to %s", placeWords(first, tape), placeWords(middle, tape), placeWords(last, tape))
	}
	places := make([]string, len(w.Points))
	for i, p := range w.Points {
		places[i] = placeWords(p, tape)
	}
	return "from " + strings.Join(places, ", to ")
}

func direction(from, to fraction.Length, rising, falling string) string {
	if from.Less(to) {
		return rising
	}
	return falling
}
