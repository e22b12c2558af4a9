package cutout_test

import (
	"fmt"
	"math/big"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// Walls are drawn the way they are taped: heights at stations, straight between
// them, steps where two stations share a place; openings of three to six corners
// are then cut out. Most lengths are sixteenths, some are millimetres.

func drawLength(t *rapid.T, low, high int64, label string) fraction.Length {
	if rapid.IntRange(0, 9).Draw(t, label+" unit") == 0 {
		return fraction.Millimetres(rapid.Int64Range(low*26, high*25).Draw(t, label+" mm"), 1)
	}
	return of(rapid.Int64Range(low*16, high*16).Draw(t, label+" sixteenths"), 16)
}

// drawRegion returns a wall's outline before openings.
func drawRegion(t *rapid.T) cutout.Shape {
	n := rapid.IntRange(1, 4).Draw(t, "stretches")
	var bottom, top []cutout.Point
	x := zero
	for i := range n {
		next := x.Add(drawLength(t, 2, 40, fmt.Sprintf("width %d", i)))
		for _, at := range []fraction.Length{x, next} {
			bottom = append(bottom, cutout.Point{X: at, Y: drawLength(t, -2, 2, "bottom")})
			top = append(top, cutout.Point{X: at, Y: drawLength(t, 10, 40, "top")})
		}
		x = next
	}
	slices.Reverse(top)
	s, err := cutout.NewShape(append(bottom, top...))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// drawOpening returns a simple outline round a middle: corners in order of angle.
func drawOpening(t *rapid.T) []cutout.Point {
	x, y := drawLength(t, 0, 90, "opening x"), drawLength(t, -2, 40, "opening y")
	w, h := drawLength(t, 1, 20, "opening width"), drawLength(t, 1, 20, "opening height")
	if rapid.Bool().Draw(t, "upright opening") {
		return cutout.Rectangle(x, y, w, h)
	}
	// A horned or arched head: a rectangle with corners cut and a point on top.
	third := w.Div(3)
	corners := []cutout.Point{{X: x, Y: y}, {X: x.Add(w), Y: y}, {X: x.Add(w), Y: y.Add(h)}}
	if rapid.Bool().Draw(t, "clipped corners") {
		corners[1] = cutout.Point{X: x.Add(w), Y: y.Add(h.Div(2))}
		corners[2] = cutout.Point{X: x.Add(third.Mul(2)), Y: y.Add(h)}
		corners = append(corners, cutout.Point{X: x.Add(third), Y: y.Add(h)})
	}
	return corners
}

// drawPieces returns what openings leave of a wall, with exact corners.
func drawPieces(t *rapid.T) []cutout.Shape {
	pieces := []cutout.Shape{drawRegion(t)}
	for range rapid.IntRange(0, 3).Draw(t, "openings") {
		clip := drawOpening(t)
		var left []cutout.Shape
		for _, p := range pieces {
			left = append(left, p.Minus(clip, of(1, 16))...)
		}
		pieces = left
	}
	return pieces
}

func drawShape(t *rapid.T) cutout.Shape {
	pieces := drawPieces(t)
	if len(pieces) == 0 {
		return cutout.Shape{}
	}
	return rapid.SampledFrom(pieces).Draw(t, "piece")
}

func drawMark(t *rapid.T) fraction.Length {
	return rapid.SampledFrom([]fraction.Length{of(1, 32), of(1, 16), of(1, 8), of(1, 2), fraction.Millimetres(1, 1)}).Draw(t, "mark")
}

func areaOf(shapes []cutout.Shape) *big.Rat {
	sum := new(big.Rat)
	for _, s := range shapes {
		sum.Add(sum, slowArea(s))
	}
	return sum
}

// checkForm holds a shape against the form that the type promises.
func checkForm(t *rapid.T, s cutout.Shape) {
	t.Helper()
	for i, ring := range ringsOf(s) {
		if len(ring) < 3 {
			t.Fatalf("ring %d has %d corners: %v", i-1, len(ring), s)
		}
		for j, p := range ring {
			if p.Y.Less(ring[0].Y) || p.Y == ring[0].Y && p.X.Less(ring[0].X) {
				t.Fatalf("ring %d does not start at its lowest corner: %v", i-1, s)
			}
			if slowSide(ring[(j+len(ring)-1)%len(ring)], p, ring[(j+1)%len(ring)]) == 0 {
				t.Fatalf("corner %v lies within a straight line: %v", p, s)
			}
		}
		area := slowArea(cutout.Shape{Outline: ring}).Sign()
		if i == 0 && area <= 0 || i > 0 && area >= 0 {
			t.Fatalf("ring %d runs the wrong way: %v", i-1, s)
		}
		for _, p := range ring {
			if i > 0 && !(cutout.Shape{Outline: s.Outline}).Contains(p) {
				t.Fatalf("hole outside the outline: %v", s)
			}
		}
	}
	if slowCrossing(s) {
		t.Fatalf("edges cross: %v", s)
	}
}

func TestAreaEqualsShoelace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		if s.Area().Rat().Cmp(slowArea(s)) != 0 {
			t.Fatalf("Area = %v, want %v", s.Area(), slowArea(s))
		}
	})
}

func TestSlabsAddUpToTheShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s := drawShape(t)
		sum := new(big.Rat)
		for _, slab := range s.Slabs() {
			sum.Add(sum, slab.Area().Rat())
		}
		if sum.Cmp(slowArea(s)) != 0 {
			t.Fatalf("slabs %v, shape %v", sum, slowArea(s))
		}
	})
}

func TestBandsAddUpToTheShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		lo, hi := s.Bounds()
		cuts := []fraction.Length{lo.X, hi.X}
		for range rapid.IntRange(0, 4).Draw(t, "cuts") {
			cuts = append(cuts, drawLength(t, 0, 100, "cut"))
		}
		slices.SortFunc(cuts, fraction.Length.Compare)
		sum := new(big.Rat)
		for i := 1; i < len(cuts); i++ {
			pieces := s.Band(cuts[i-1], cuts[i], zero)
			for _, p := range pieces {
				checkForm(t, p)
				if from, to := p.Bounds(); from.X.Less(cuts[i-1]) || cuts[i].Less(to.X) {
					t.Fatalf("piece %v leaves the band", p)
				}
			}
			if n := s.Components(cuts[i-1], cuts[i]); n != len(pieces) {
				t.Fatalf("Components = %d, Band gives %d", n, len(pieces))
			}
			sum.Add(sum, areaOf(pieces))
		}
		if sum.Cmp(slowArea(s)) != 0 {
			t.Fatalf("bands %v, shape %v", sum, slowArea(s))
		}
	})
}

func TestMinusAndWithinAddUpToTheShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s, clip := drawShape(t), drawOpening(t)
		minus, within := s.Minus(clip, zero), s.Within(clip, zero)
		for _, p := range slices.Concat(minus, within) {
			checkForm(t, p)
		}
		if sum := new(big.Rat).Add(areaOf(minus), areaOf(within)); sum.Cmp(slowArea(s)) != 0 {
			t.Fatalf("minus %v + within %v is not %v", areaOf(minus), areaOf(within), slowArea(s))
		}
	})
}

func TestMinusEqualsCountingPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, clip := drawShape(t), drawOpening(t)
		if s.IsEmpty() {
			return
		}
		minus, within := s.Minus(clip, zero), s.Within(clip, zero)
		for range 40 {
			// Odd denominators keep the points off every vertex.
			p := cutout.Point{X: of(rapid.Int64Range(0, 100*77).Draw(t, "x")*2+1, 154), Y: of(rapid.Int64Range(-200, 40*77).Draw(t, "y")*2+1, 154)}
			if onEdge(s, p) || onEdge(cutout.Shape{Outline: clip}, p) {
				continue // belongs to both sides
			}
			inShape, inClip := slowContains(ringsOf(s), p), slowContains([][]cutout.Point{clip}, p)
			count := func(shapes []cutout.Shape) (n int) {
				for _, piece := range shapes {
					if slowContains(ringsOf(piece), p) {
						n++
					}
				}
				return n
			}
			if got, want := count(minus) == 1, inShape && !inClip; got != want || count(minus) > 1 {
				t.Fatalf("%v in Minus: %v, want %v", p, got, want)
			}
			if got, want := count(within) == 1, inShape && inClip; got != want || count(within) > 1 {
				t.Fatalf("%v in Within: %v, want %v", p, got, want)
			}
			if got := s.Contains(p); got != inShape {
				t.Fatalf("Contains(%v) = %v", p, got)
			}
		}
	})
}

func TestClipLineHalvesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s := drawShape(t)
		p := cutout.Point{X: drawLength(t, 0, 90, "px"), Y: drawLength(t, -2, 40, "py")}
		q := cutout.Point{X: drawLength(t, 0, 90, "qx"), Y: drawLength(t, -2, 40, "qy")}
		if p == q {
			return
		}
		left, right := s.ClipLine(p, q, zero), s.ClipLine(q, p, zero)
		for _, piece := range left {
			checkForm(t, piece)
			for _, corner := range piece.Outline {
				if slowSide(p, q, corner) < 0 {
					t.Fatalf("corner %v lies to the right of the line", corner)
				}
			}
		}
		if sum := new(big.Rat).Add(areaOf(left), areaOf(right)); sum.Cmp(slowArea(s)) != 0 {
			t.Fatalf("halves add up to %v, shape %v", sum, slowArea(s))
		}
	})
}

// skipOverflow gives up an example whose exact corners or areas do not fit 64
// bits, which happens where odd millimetres and sixteenths meet on slopes.
func skipOverflow(t *rapid.T) {
	switch fault := recover().(type) {
	case nil:
	case *fraction.OverflowError:
		t.Skip(fault)
	default:
		panic(fault)
	}
}

// outside returns the area of the pieces that lies outside all exact ones.
func outside(pieces, exact []cutout.Shape) *big.Rat {
	rest := areaOf(pieces)
	for _, p := range pieces {
		for _, e := range exact {
			rest.Sub(rest, areaOf(e.Within(p.Outline, zero)))
			for _, hole := range p.Holes {
				rest.Add(rest, areaOf(e.Within(hole, zero)))
			}
		}
	}
	return rest
}

// checkRounded holds rounded pieces against the exact ones: a subset, well
// formed, with every taped corner still on the edge of a piece.
func checkRounded(t *rapid.T, rounded, exact []cutout.Shape, taped []cutout.Point) {
	t.Helper()
	for _, p := range rounded {
		checkForm(t, p)
	}
	if rest := outside(rounded, exact); rest.Sign() != 0 {
		t.Fatalf("area %v of the rounded pieces lies outside the exact ones\nexact %v\nrounded %v", rest, exact, rounded)
	}
	for _, e := range exact {
		if outside([]cutout.Shape{e}, rounded).Cmp(slowArea(e)) == 0 {
			continue // nothing of it is left
		}
		for _, corner := range slices.Concat(ringsOf(e)...) {
			if slices.Contains(taped, corner) && !slices.ContainsFunc(rounded, func(p cutout.Shape) bool { return onEdge(p, corner) }) {
				t.Fatalf("taped corner %v has moved\nexact %v\nrounded %v", corner, exact, rounded)
			}
		}
	}
}

func onEdge(s cutout.Shape, p cutout.Point) bool {
	for _, ring := range ringsOf(s) {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if slowSide(a, b, p) == 0 && a.X.Compare(p.X)*p.X.Compare(b.X) >= 0 && a.Y.Compare(p.Y)*p.Y.Compare(b.Y) >= 0 {
				return true
			}
		}
	}
	return false
}

func TestRoundedBandLiesWithinTheExactOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s, mark := drawShape(t), drawMark(t)
		left := drawLength(t, 0, 60, "left")
		right := left.Add(drawLength(t, 1, 30, "width"))
		exact, rounded := s.Band(left, right, zero), s.Band(left, right, mark)
		checkRounded(t, rounded, exact, slices.Concat(ringsOf(s)...))
	})
}

func TestRoundedMinusLiesWithinTheExactOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s, clip, mark := drawShape(t), drawOpening(t), drawMark(t)
		taped := slices.Concat(append(ringsOf(s), clip)...)
		checkRounded(t, s.Minus(clip, mark), s.Minus(clip, zero), taped)
		checkRounded(t, s.Within(clip, mark), s.Within(clip, zero), taped)
	})
}

func TestRoundedClipLineLiesWithinTheExactOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s, mark := drawShape(t), drawMark(t)
		p := cutout.Point{X: drawLength(t, 0, 90, "px"), Y: drawLength(t, -2, 40, "py")}
		q := cutout.Point{X: p.X.Add(drawLength(t, -3, 3, "lean")), Y: p.Y.Add(drawLength(t, 1, 40, "rise"))}
		checkRounded(t, s.ClipLine(p, q, mark), s.ClipLine(p, q, zero), append(slices.Concat(ringsOf(s)...), p, q))
	})
}

// In a wall without openings, at least a few marks high everywhere, each corner
// that the band makes on a slope can go to a mark, and so it does.
func TestBandCornersLieOnMarks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, mark := drawRegion(t), drawMark(t)
		left := drawLength(t, 0, 60, "left")
		right := left.Add(drawLength(t, 3, 30, "width"))
		for _, p := range s.Band(left, right, mark) {
			for _, corner := range p.Outline {
				level := slices.ContainsFunc(s.Outline, func(v cutout.Point) bool { return v.Y == corner.Y })
				if corner.Y.Mod(mark).Sign() != 0 && !level {
					t.Fatalf("corner %v of %v is off the mark %v", corner, p, mark)
				}
			}
		}
	})
}

// Rectangles of whole inches are taken out of a square, and off a grid at the
// same time; pieces and squares must tell the same story.
func TestMinusEqualsFloodedGrid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var g grid
		size := int64(len(g))
		g.fill(0, 0, size, size, true)
		pieces := []cutout.Shape{{Outline: rect(0, 0, size, size)}}
		for range rapid.IntRange(1, 8).Draw(t, "cuts") {
			x, y := rapid.Int64Range(-1, size).Draw(t, "x"), rapid.Int64Range(-1, size).Draw(t, "y")
			w, h := rapid.Int64Range(1, 6).Draw(t, "w"), rapid.Int64Range(1, 6).Draw(t, "h")
			g.fill(x, y, w, h, false)
			var left []cutout.Shape
			for _, p := range pieces {
				left = append(left, p.Minus(rect(x, y, w, h), zero)...)
			}
			pieces = left
		}
		part, count := g.flood(0, int(size))
		if count != len(pieces) {
			t.Fatalf("%d pieces, grid has %d", len(pieces), count)
		}
		for _, p := range pieces {
			checkForm(t, p)
			number := 0
			for y := range g {
				for x := range g[y] {
					middle := cutout.Point{X: of(2*int64(x)+1, 2), Y: of(2*int64(y)+1, 2)}
					if p.Contains(middle) {
						if number == 0 {
							number = part[y][x]
						}
						if part[y][x] != number || number == 0 {
							t.Fatalf("piece %v has square %d, %d of part %d", p, x, y, part[y][x])
						}
					} else if number != 0 && part[y][x] == number {
						t.Fatalf("piece %v lacks square %d, %d", p, x, y)
					}
				}
			}
		}
		left := rapid.IntRange(0, int(size)-1).Draw(t, "left")
		right := rapid.IntRange(left+1, int(size)).Draw(t, "right")
		n := 0
		for _, p := range pieces {
			n += p.Components(in(int64(left)), in(int64(right)))
		}
		if _, want := g.flood(left, right); n != want {
			t.Fatalf("Components(%d, %d) = %d, grid has %d", left, right, n, want)
		}
	})
}

func TestBandOfABandIsTheNarrowerBand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s := drawShape(t)
		left := drawLength(t, 0, 50, "left")
		right := left.Add(drawLength(t, 2, 40, "width"))
		from, to := left.Add(of(1, 2)), right.Sub(of(1, 2))
		var twice []cutout.Shape
		for _, p := range s.Band(left, right, zero) {
			twice = append(twice, p.Band(from, to, zero)...)
		}
		once := s.Band(from, to, zero)
		if areaOf(twice).Cmp(areaOf(once)) != 0 || len(twice) != len(once) {
			t.Fatalf("twice %v, once %v", twice, once)
		}
	})
}

func TestMirrorTwiceIsTheShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, axis := drawShape(t), drawLength(t, -10, 100, "axis")
		mirrored := s.Mirror(axis)
		if !s.IsEmpty() {
			checkForm(t, mirrored)
		}
		back := mirrored.Mirror(axis)
		slices.SortFunc(back.Holes, func(a, b []cutout.Point) int {
			return slices.Index(pointsOf(s), a[0]) - slices.Index(pointsOf(s), b[0])
		})
		if diff := cmp.Diff(s, back, exactly); diff != "" {
			t.Fatalf("(-want +got)\n%s", diff)
		}
	})
}

func pointsOf(s cutout.Shape) []cutout.Point { return slices.Concat(ringsOf(s)...) }

func TestMoveKeepsTheForm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		dx, dy := drawLength(t, -50, 50, "dx"), drawLength(t, -50, 50, "dy")
		moved := s.Move(dx, dy)
		if diff := cmp.Diff(s, moved.Move(dx.Neg(), dy.Neg()), exactly); diff != "" {
			t.Fatalf("(-want +got)\n%s", diff)
		}
		if moved.Area() != s.Area() {
			t.Fatalf("area %v, want %v", moved.Area(), s.Area())
		}
	})
}

// A seam through a box leaves half a notch on either piece; their corners on the
// seam are the same points.
func TestHalfNotchesAgreeAcrossASeam(t *testing.T) {
	met := 0
	rapid.Check(t, func(t *rapid.T) {
		wall, mark := drawRegion(t), drawMark(t)
		lo, hi := wall.Bounds()
		eighth := hi.X.Sub(lo.X).Div(8)
		box := cutout.Rectangle(lo.X.Add(eighth.Mul(2)), drawLength(t, 3, 5, "bottom of the box"), eighth.Mul(3), drawLength(t, 1, 4, "height of the box"))
		s := rapid.SampledFrom(wall.Minus(box, mark)).Draw(t, "piece")
		if pieces := s.Minus(drawOpening(t), mark); len(pieces) > 0 {
			s = rapid.SampledFrom(pieces).Draw(t, "piece with an opening")
		}
		seam := lo.X.Add(eighth.Mul(rapid.Int64Range(1, 6).Draw(t, "seam in eighths")))
		lo, hi = s.Bounds()
		onSeam := func(pieces []cutout.Shape) map[cutout.Point]bool {
			points := map[cutout.Point]bool{}
			for _, p := range pieces {
				for _, corner := range pointsOf(p) {
					if corner.X == seam && !slices.Contains(pointsOf(s), corner) {
						points[corner] = true
					}
				}
			}
			return points
		}
		// Only level edges: those of boxes. A sloped one is rounded, and may be
		// taken to another mark on one side where something is in the way.
		level := func(p cutout.Point) bool {
			for _, ring := range ringsOf(s) {
				for i, a := range ring {
					b := ring[(i+1)%len(ring)]
					if a.Y == b.Y && a.Y == p.Y && a.X.Compare(seam)*b.X.Compare(seam) < 0 {
						return true
					}
				}
			}
			return false
		}
		pieces := [2][]cutout.Shape{s.Band(lo.X, seam, mark), s.Band(seam, hi.X, mark)}
		if len(pieces[0]) != s.Components(lo.X, seam) || len(pieces[1]) != s.Components(seam, hi.X) {
			return // a sliver of less than a mark was dropped
		}
		left, right := onSeam(pieces[0]), onSeam(pieces[1])
		for _, pair := range [][2]map[cutout.Point]bool{{left, right}, {right, left}} {
			for p := range pair[0] {
				if level(p) {
					met++
					if !pair[1][p] {
						t.Fatalf("corner %v on one side of the seam only", p)
					}
				}
			}
		}
	})
	if met == 0 {
		t.Error("no seam ever met a level edge")
	}
}
