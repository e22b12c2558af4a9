package cutout

import (
	"cmp"
	"slices"

	"example.com/groovewright/fraction"
)

// stitcher joins the borders of the cells of a sweep to closed rings. A border has the material to
// its left: the lower edge of a cell runs to the right, the upper edge to the left, and an upright
// stretch where only the slab on one side has material runs up or down.
type stitcher struct {
	nodes   []Point
	borders []border
	out     [][]int // for each node the borders that leave it
}

type border struct {
	from, to int // nodes
	edge     int // index of the side it is a part of, or vertical
	used     bool
}

const (
	none     = -1
	vertical = -1 // the edge of upright borders
)

// pieces draws the connected pieces of the decomposition, in the form that [Shape] describes,
// ordered from left to right and then from the bottom up.
func (w *sweep) pieces() []Shape {
	if len(w.cells) == 0 {
		return nil
	}
	var t stitcher
	corners := make([][4]int, len(w.cells)) // nodes
	for i := range w.xs {
		w.column(&t, i, corners)
	}
	for i, c := range w.cells {
		t.add(corners[i][bl], corners[i][br], c.lower)
		t.add(corners[i][tr], corners[i][tl], c.upper)
	}
	var outlines, holes [][]Point
	for i := range t.borders {
		if t.borders[i].used {
			continue
		}
		switch ring := t.trace(i); {
		case len(ring) < 3:
		case counterclockwise(ring):
			outlines = appendRing(outlines, ring)
		default:
			for _, hole := range unpinched(ring) {
				holes = appendRing(holes, hole)
			}
		}
	}
	return assemble(outlines, holes)
}

// appendRing appends a ring in its form, unless it has no area.
func appendRing(rings [][]Point, ring []Point) [][]Point {
	if ring = simplify(ring); ring == nil {
		return rings
	}
	return append(rings, rotated(ring))
}

func (t *stitcher) node(p Point) int {
	t.nodes = append(t.nodes, p)
	t.out = append(t.out, nil)
	return len(t.nodes) - 1
}

func (t *stitcher) add(from, to, edge int) {
	t.out[from] = append(t.out[from], len(t.borders))
	t.borders = append(t.borders, border{from: from, to: to, edge: edge})
}

// column goes up the line between two slabs. It makes one node of all corners at the same height
// and an upright border wherever one slab only has material.
func (w *sweep) column(t *stitcher, i int, corners [][4]int) {
	left, right := w.slab(i-1), w.slab(i)
	var l, r int // corners passed on either side; an odd number means inside a cell
	onLeft := func() fraction.Length { return left[l/2].y[br+l%2*(tr-br)] }
	onRight := func() fraction.Length { return right[r/2].y[bl+r%2*(tl-bl)] }
	previous := none
	for l < 2*len(left) || r < 2*len(right) {
		var y fraction.Length
		switch {
		case l == 2*len(left):
			y = onRight()
		case r == 2*len(right):
			y = onLeft()
		default:
			y = fraction.Min(onLeft(), onRight())
		}
		node := t.node(Point{w.xs[i], y})
		switch inLeft, inRight := l%2 == 1, r%2 == 1; {
		case inLeft && !inRight:
			t.add(previous, node, vertical)
		case inRight && !inLeft:
			t.add(node, previous, vertical)
		}
		for ; l < 2*len(left) && onLeft() == y; l++ {
			corners[w.start[i-1]+l/2][br+l%2*(tr-br)] = node
		}
		for ; r < 2*len(right) && onRight() == y; r++ {
			corners[w.start[i]+r/2][bl+r%2*(tl-bl)] = node
		}
		previous = node
	}
}

// trace follows the borders from the given one until the ring closes and returns its vertices, none
// within an edge. Each border is in one ring: it has one border before it and one after.
func (t *stitcher) trace(start int) []Point {
	var ring []Point
	for at := start; ; {
		b := &t.borders[at]
		b.used = true
		next := t.leftmost(b)
		if t.borders[next].edge != b.edge {
			ring = append(ring, t.nodes[b.to])
		}
		if at = next; t.borders[at].used {
			return ring
		}
	}
}

// leftmost returns the border to go on with from the end of the given one. Where several leave the
// node, two parts touch at a point and must come apart: the leftmost goes round one wedge only.
func (t *stitcher) leftmost(b *border) int {
	from, at := t.nodes[b.from], t.nodes[b.to]
	best := t.out[b.to][0]
	for _, other := range t.out[b.to][1:] {
		p, q := t.nodes[t.borders[other].to], t.nodes[t.borders[best].to]
		if tp, tq := Orient(from, at, p), Orient(from, at, q); tp > tq || tp == tq && Orient(at, q, p) > 0 {
			best = other
		}
	}
	return best
}

// counterclockwise reports the direction of a ring by its turns at the lowest vertex. Round an
// outline all material, which is to the left, lies above that vertex, so that every turn there is
// to the left, however often the outline comes back to it. Round a hole one turn is to the right.
func counterclockwise(ring []Point) bool {
	lowest := slices.MinFunc(ring, lower)
	for i, p := range ring {
		if p == lowest && orientAt(ring, i) < 0 {
			return false
		}
	}
	return true
}

// unpinched splits a hole that touches itself at a point into simple holes.
func unpinched(ring []Point) [][]Point {
	for i := range ring {
		for j := i + 1; j < len(ring); j++ {
			if ring[i] == ring[j] {
				inner := slices.Clone(ring[i:j])
				rest := slices.Delete(slices.Clone(ring), i, j)
				return append(unpinched(inner), unpinched(rest)...)
			}
		}
	}
	return [][]Point{ring}
}

// assemble gives each hole to the outline round it, the smallest of several, and sorts.
func assemble(outlines, holes [][]Point) []Shape {
	shapes := make([]Shape, len(outlines))
	for i, outline := range outlines {
		shapes[i].outline = outline
	}
	slices.SortStableFunc(shapes, compareShapes)
	for _, hole := range holes {
		best := none
		for i := range shapes {
			if len(shapes) > 1 && !within(hole, shapes[i].outline) {
				continue
			}
			if best == none || within(shapes[i].outline, shapes[best].outline) {
				best = i
			}
		}
		if best != none {
			shapes[best].holes = append(shapes[best].holes, hole)
		}
	}
	for i := range shapes {
		slices.SortStableFunc(shapes[i].holes, compareRings)
	}
	return shapes
}

// within reports whether ring a, which does not cross ring b, lies in it: a vertex off b decides.
func within(a, b []Point) bool {
	for _, p := range a {
		if where := locate(b, p); where != 0 {
			return where > 0
		}
	}
	return false
}

func compareShapes(a, b Shape) int { return compareRings(a.outline, b.outline) }

// compareRings orders rings by the left, then the lower edge of their bounds, then by first vertex.
func compareRings(a, b []Point) int {
	aLow, _ := Bounds(a)
	bLow, _ := Bounds(b)
	return cmp.Or(lower(flip(aLow), flip(bLow)), lower(a[0], b[0]))
}
