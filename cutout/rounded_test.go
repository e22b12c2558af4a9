package cutout_test

import (
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
)

// outside returns the area of the pieces that lies outside all exact ones.
func outside(pieces, exact []cutout.Shape) *big.Rat {
	rest := areaOf(pieces)
	for _, p := range pieces {
		for _, e := range exact {
			rest.Sub(rest, areaOf(within(e, p.Outline(), zero)))
			for _, hole := range p.Holes() {
				rest.Add(rest, areaOf(within(e, hole, zero)))
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
		exact, rounded := band(s, left, right, zero), band(s, left, right, mark)
		checkRounded(t, rounded, exact, slices.Concat(ringsOf(s)...))
	})
}

func TestRoundedMinusLiesWithinTheExactOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s, clip, mark := drawShape(t), drawOpening(t), drawMark(t)
		taped := slices.Concat(append(ringsOf(s), clip)...)
		checkRounded(t, minus(s, clip, mark), minus(s, clip, zero), taped)
		checkRounded(t, within(s, clip, mark), within(s, clip, zero), taped)
	})
}

func TestRoundedClipLineLiesWithinTheExactOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s, mark := drawShape(t), drawMark(t)
		p := cutout.Point{X: drawLength(t, 0, 90, "px"), Y: drawLength(t, -2, 40, "py")}
		q := cutout.Point{X: p.X.Add(drawLength(t, -3, 3, "lean")), Y: p.Y.Add(drawLength(t, 1, 40, "rise"))}
		checkRounded(t, clipLine(s, p, q, mark), clipLine(s, p, q, zero), append(slices.Concat(ringsOf(s)...), p, q))
	})
}

// A narrow strip under a slope, whose upper corners are both snapped, the second
// beside the first that has already gone down: it must not pass the strip's side.
func TestSnappedCornerStaysBesideAMovedNeighbour(t *testing.T) {
	strip := cutout.Raw([]cutout.Point{
		{X: zero, Y: zero}, {X: of(5, 127), Y: zero}, {X: of(5, 127), Y: of(10*16129+935, 16129)},
		{X: of(632060, 29467937), Y: of(10*29467937+1895380, 29467937)}, {X: zero, Y: of(161, 16)},
	})
	taped := func(p cutout.Point) bool { return p.X.IsZero() }
	settled := must(cutout.Snap([]cutout.Shape{strip}, of(1, 8), taped))
	if len(settled) != 1 {
		t.Fatalf("%d pieces, want 1", len(settled))
	}
	if _, high := settled[0].Bounds(); of(5, 127).Less(high.X) {
		t.Errorf("the settled strip reaches to %v, past its side at 5/127: %v", high.X, settled)
	}
}

// In a wall without openings, at least a few marks high everywhere, each corner
// that the band makes on a slope can go to a mark, and so it does.
func TestBandCornersLieOnMarks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, mark := drawRegion(t), drawMark(t)
		left := drawLength(t, 0, 60, "left")
		right := left.Add(drawLength(t, 3, 30, "width"))
		for _, p := range band(s, left, right, mark) {
			for _, corner := range p.Outline() {
				level := slices.ContainsFunc(s.Outline(), func(v cutout.Point) bool { return v.Y == corner.Y })
				if corner.Y.Mod(mark).Sign() != 0 && !level {
					t.Fatalf("corner %v of %v is off the mark %v", corner, p, mark)
				}
			}
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
		s := rapid.SampledFrom(minus(wall, box, mark)).Draw(t, "piece")
		if pieces := minus(s, drawOpening(t), mark); len(pieces) > 0 {
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
		pieces := [2][]cutout.Shape{band(s, lo.X, seam, mark), band(s, seam, hi.X, mark)}
		if len(pieces[0]) != len(must(s.Band(lo.X, seam))) || len(pieces[1]) != len(must(s.Band(seam, hi.X))) {
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
