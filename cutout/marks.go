package cutout

import "example.com/groovewright/fraction"

// Marks are the corners of a piece as running measurements, each by itself from the left edge and
// from the lower edge of the piece's bounding rectangle.
type Marks struct {
	Outline Corners
	Holes   []Corners // in the order of the shape's holes
}

// Corners are the corners of one ring in its order; the same corner has the same index in both
// lists.
type Corners struct {
	Face []Point `json:"face"` // seen from the front
	Back []Point `json:"back"` // seen from behind, where left and right are exchanged: x is width less x
}

// Marks returns the marks of s on its face and on its back. It fails where a coordinate does not
// fit a Length.
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
