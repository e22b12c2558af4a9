package cutout_test

import (
	"math/big"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

func TestAreaEqualsShoelace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		if must(s.Area()).Rat().Cmp(slowArea(s)) != 0 {
			t.Fatalf("Area = %v, want %v", must(s.Area()), slowArea(s))
		}
	})
}

func TestCellsAddUpToTheShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s := drawShape(t)
		sum := new(big.Rat)
		for _, c := range must(s.Cells()) { // half of both heights by the width
			high := new(big.Rat).Sub(c.TopLeft.Rat(), c.BottomLeft.Rat())
			high.Add(high, c.TopRight.Rat()).Sub(high, c.BottomRight.Rat())
			high.Mul(high, new(big.Rat).Sub(c.Right.Rat(), c.Left.Rat()))
			sum.Add(sum, high.Quo(high, big.NewRat(2, 1)))
		}
		if sum.Cmp(slowArea(s)) != 0 {
			t.Fatalf("cells %v, shape %v", sum, slowArea(s))
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
			pieces := band(s, cuts[i-1], cuts[i], zero)
			for _, p := range pieces {
				checkForm(t, p)
				if from, to := p.Bounds(); from.X.Less(cuts[i-1]) || cuts[i].Less(to.X) {
					t.Fatalf("piece %v leaves the band", p)
				}
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
		left, taken := minus(s, clip, zero), within(s, clip, zero)
		for _, p := range slices.Concat(left, taken) {
			checkForm(t, p)
		}
		if sum := new(big.Rat).Add(areaOf(left), areaOf(taken)); sum.Cmp(slowArea(s)) != 0 {
			t.Fatalf("minus %v + within %v is not %v", areaOf(left), areaOf(taken), slowArea(s))
		}
	})
}

func TestMinusEqualsCountingPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, clip := drawShape(t), drawOpening(t)
		if s.IsEmpty() {
			return
		}
		left, taken := minus(s, clip, zero), within(s, clip, zero)
		for range 40 {
			// Odd denominators keep the points off every vertex.
			p := cutout.Point{X: of(rapid.Int64Range(0, 100*77).Draw(t, "x")*2+1, 154), Y: of(rapid.Int64Range(-200, 40*77).Draw(t, "y")*2+1, 154)}
			if onEdge(s, p) || onEdge(cutout.Raw(clip), p) {
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
			if got, want := count(left) == 1, inShape && !inClip; got != want || count(left) > 1 {
				t.Fatalf("%v in Minus: %v, want %v", p, got, want)
			}
			if got, want := count(taken) == 1, inShape && inClip; got != want || count(taken) > 1 {
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
		left, right := clipLine(s, p, q, zero), clipLine(s, q, p, zero)
		for _, piece := range left {
			checkForm(t, piece)
			for _, corner := range piece.Outline() {
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

// Rectangles of whole inches are taken out of a square, and off a grid at the
// same time; pieces and squares must tell the same story.
func TestMinusEqualsFloodedGrid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var g grid
		size := int64(len(g))
		g.fill(0, 0, size, size, true)
		pieces := []cutout.Shape{cutout.Raw(rect(0, 0, size, size))}
		for range rapid.IntRange(1, 8).Draw(t, "cuts") {
			x, y := rapid.Int64Range(-1, size).Draw(t, "x"), rapid.Int64Range(-1, size).Draw(t, "y")
			w, h := rapid.Int64Range(1, 6).Draw(t, "w"), rapid.Int64Range(1, 6).Draw(t, "h")
			g.fill(x, y, w, h, false)
			var left []cutout.Shape
			for _, p := range pieces {
				left = append(left, minus(p, rect(x, y, w, h), zero)...)
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
			n += len(must(p.Band(in(int64(left)), in(int64(right)))))
		}
		if _, want := g.flood(left, right); n != want {
			t.Fatalf("Band(%d, %d) has %d pieces, grid has %d", left, right, n, want)
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
		for _, p := range band(s, left, right, zero) {
			twice = append(twice, band(p, from, to, zero)...)
		}
		once := band(s, from, to, zero)
		if areaOf(twice).Cmp(areaOf(once)) != 0 || len(twice) != len(once) {
			t.Fatalf("twice %v, once %v", twice, once)
		}
	})
}

func pointsOf(s cutout.Shape) []cutout.Point { return slices.Concat(ringsOf(s)...) }

func TestMoveKeepsTheForm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		dx, dy := drawLength(t, -50, 50, "dx"), drawLength(t, -50, 50, "dy")
		moved := must(s.Move(dx, dy))
		if diff := cmp.Diff(s, must(moved.Move(dx.Neg(), dy.Neg())), exactly); diff != "" {
			t.Fatalf("(-want +got)\n%s", diff)
		}
		if must(moved.Area()) != must(s.Area()) {
			t.Fatalf("area %v, want %v", must(moved.Area()), must(s.Area()))
		}
	})
}
