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

// checkRounded holds rounded pieces against the exact ones: a subset, well formed, without what is
// narrow or beside a slope, and with every taped corner still on the edge of a piece that has nothing
// else near it.
func checkRounded(t *rapid.T, rounded, exact []cutout.Shape, taped []cutout.Point, mark fraction.Length) {
	t.Helper()
	for _, p := range rounded {
		checkForm(t, p)
	}
	if rest := outside(rounded, exact); rest.Sign() != 0 {
		t.Fatalf("area %v of the rounded pieces lies outside the exact ones\nexact %v\nrounded %v", rest, exact, rounded)
	}
	for _, e := range exact {
		checkLost(t, e, rounded, mark)
		for _, corner := range slices.Concat(ringsOf(e)...) {
			if slices.Contains(taped, corner) && alone(e, corner, mark.Mul(4)) && !slices.ContainsFunc(rounded, func(p cutout.Shape) bool { return onEdge(p, corner) }) {
				t.Fatalf("taped corner %v has moved\nexact %v\nrounded %v", corner, exact, rounded)
			}
		}
	}
}

// checkLost checks of the middle of all that rounding takes that the exact piece ends within three marks
// to its left, to its right, above or below.
func checkLost(t *rapid.T, exact cutout.Shape, rounded []cutout.Shape, mark fraction.Length) {
	lost := []cutout.Shape{exact}
	for _, r := range rounded {
		var rest []cutout.Shape
		for _, s := range lost {
			rest = append(rest, must(s.Minus(r.Outline()))...)
			for _, hole := range r.Holes() {
				rest = append(rest, must(s.Within(hole))...)
			}
		}
		lost = rest
	}
	far := mark.Mul(3)
	for _, s := range lost {
		for _, c := range must(s.Cells()) {
			middle := cutout.Point{X: c.Left.Add(c.Right).Div(2), Y: c.BottomLeft.Add(c.BottomRight).Div(2).Add(c.TopLeft.Add(c.TopRight).Div(2)).Div(2)}
			inside := func(dx, dy int64) bool {
				for halves := range int64(7) {
					off := far.Mul(halves).Div(6)
					if !exact.Contains(cutout.Point{X: middle.X.Add(off.Mul(dx)), Y: middle.Y.Add(off.Mul(dy))}) {
						return false
					}
				}
				return true
			}
			if inside(1, 0) && inside(-1, 0) && inside(0, 1) && inside(0, -1) {
				t.Fatalf("%v is lost\nexact %v\nrounded %v", middle, exact, rounded)
			}
		}
	}
}

// alone reports whether nothing of a shape but the edges at a corner, which is not sharp, is as near to
// that as far.
func alone(s cutout.Shape, corner cutout.Point, far fraction.Length) bool {
	near := must(s.Within(cutout.Rectangle(corner.X.Sub(far), corner.Y.Sub(far), far.Mul(2), far.Mul(2))))
	least := new(big.Rat).Mul(far.Rat(), far.Div(2).Rat())
	return len(near) == 1 && len(near[0].Outline()) <= 7 && areaOf(near).Cmp(least) > 0 && len(near[0].Holes()) == 0 && len(s.Holes()) == 0 &&
		!slices.ContainsFunc(near[0].Outline(), func(p cutout.Point) bool {
			return p != corner && slices.Contains(s.Outline(), p)
		})
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
		checkRounded(t, rounded, exact, slices.Concat(ringsOf(s)...), mark)
	})
}

func TestRoundedMinusLiesWithinTheExactOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s, clip, mark := drawShape(t), drawOpening(t), drawMark(t)
		taped := slices.Concat(append(ringsOf(s), clip)...)
		checkRounded(t, minus(s, clip, mark), minus(s, clip, zero), taped, mark)
		checkRounded(t, within(s, clip, mark), within(s, clip, zero), taped, mark)
	})
}

func TestRoundedClipLineLiesWithinTheExactOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s, mark := drawShape(t), drawMark(t)
		p := cutout.Point{X: drawLength(t, 0, 90, "px"), Y: drawLength(t, -2, 40, "py")}
		q := cutout.Point{X: p.X.Add(drawLength(t, -3, 3, "lean")), Y: p.Y.Add(drawLength(t, 1, 40, "rise"))}
		checkRounded(t, clipLine(s, p, q, mark), clipLine(s, p, q, zero), append(slices.Concat(ringsOf(s)...), p, q), mark)
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
	settled := must(cutout.Snap([]cutout.Shape{strip}, of(1, 8), zero, taped))
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

// Corners worked by hand. The mark is 1/16 in, the tolerance 1/64 = 0.015625 in.
func TestSnapGoesToTheNearestMarkWithinItsTolerance(t *testing.T) {
	number := fraction.MustParse
	right := func(y string) []cutout.Point { // a top that falls or rises from (0, 18) to x = 10
		return []cutout.Point{at(0, 0), at(10, 0), {X: in(10), Y: number(y)}, at(0, 18)}
	}
	tests := []struct {
		name           string
		outline, taped []cutout.Point
		want           []cutout.Point
	}{
		{"17.93647 lies 0.00103 below 17 15/16", right("17.93647"), nil, right("17 15/16")},
		{"17.95 lies 0.0125 above it", right("17.95"), nil, right("17 15/16")},
		{"17.97 lies 0.03 below 18: down", right("17.97"), nil, right("17 15/16")},
		{"17.99 lies 0.01 below 18: then the cut is level", right("17.99"), nil, right("18")},
		{"17 61/64 is just within the tolerance", right("17 61/64"), nil, right("17 15/16")},
		{"17 59/64 as well, from below", right("17 59/64"), nil, right("17 15/16")},
		{"a taped corner stays", right("17.93647"), []cutout.Point{{X: in(10), Y: number("17.93647")}}, right("17.93647")},
		{"a bottom goes up, to 1/16", []cutout.Point{at(0, 0), {X: in(10), Y: number("0.02")}, at(10, 9), at(0, 9)}, nil,
			[]cutout.Point{at(0, 0), {X: in(10), Y: of(1, 16)}, at(10, 9), at(0, 9)}},
		{"or down within the tolerance", []cutout.Point{at(0, 0), {X: in(10), Y: number("0.015")}, at(10, 9), at(0, 9)}, nil, rect(0, 0, 10, 9)},
		{"a level edge's corner sideways", []cutout.Point{at(0, 0), at(10, 0), {X: number("9.26"), Y: in(8)}, at(0, 8)}, nil,
			[]cutout.Point{at(0, 0), at(10, 0), {X: number("9.25"), Y: in(8)}, at(0, 8)}},
		// The side leans by 1 in 16, the top falls by 1 in 8; they meet at (9.5, 7.9). Up to 7 15/16 is
		// too far, so down to 7 7/8, where the side is at 10 - 7.875/16 = 9.5078, 0.0078 from 9 1/2.
		{"of two slopes, along the steeper one first", []cutout.Point{at(0, 0), at(10, 0), {X: number("9.50625"), Y: number("7.9")}, {Y: number("9.0625")}}, nil,
			[]cutout.Point{at(0, 0), at(10, 0), {X: number("9.5"), Y: number("7.875")}, {Y: number("9.0625")}}},
		{"and no farther than to a taped place on it", []cutout.Point{at(0, 0), at(10, 0), {X: number("9.50625"), Y: number("7.9")}, {Y: number("9.0625")}},
			[]cutout.Point{{X: number("9.5078125"), Y: number("7.875")}},
			[]cutout.Point{at(0, 0), at(10, 0), {X: number("9.5078125"), Y: number("7.875")}, {Y: number("9.0625")}}},
		// That is 1 in 17: v at (9.53, 7.99) would go up 0.01 to 8, and then 0.03 sideways; so it goes down. From 9 33/64 it is 1/64.
		{"not out where it is off sideways too", []cutout.Point{at(0, 0), at(10, 0), {X: number("9.53"), Y: number("7.99")}, at(0, 9)}, nil,
			[]cutout.Point{at(0, 0), at(10, 0), {X: number("9.5"), Y: number("7.9375")}, at(0, 9)}},
		{"but by no more than the tolerance", []cutout.Point{at(0, 0), at(10, 0), {X: number("9 33/64"), Y: number("7.99")}, at(0, 9)}, nil,
			[]cutout.Point{at(0, 0), at(10, 0), {X: number("9.5"), Y: in(8)}, at(0, 9)}},
		// The bottom rises by 1 in 4, the top falls by 1 in 5. Down to 8 the bottom is at 9.8, 0.0125 from 9 13/16, where the top is 0.0875
		// higher: 1/16 across and up is 0.075. Half of it off both is (9.8299, 8.0465).
		{"nor a mark off the flatter one", []cutout.Point{{Y: number("5.55")}, {X: in(10), Y: number("8.05")}, {Y: number("10.05")}}, []cutout.Point{{Y: number("5.55")}, {Y: number("10.05")}},
			[]cutout.Point{{Y: number("5.55")}, {X: number("9 13/16"), Y: number("8 1/16")}, {Y: number("10.05")}}},
		// Both lines rise 1 in 1: at 9 the one from the right is at 5.06, 0.0025 from 5 1/16, the other at 5.
		{"of two as steep, along the first", []cutout.Point{at(0, 0), at(10, 0), {X: in(10), Y: number("4.06")}, {X: number("5.03"), Y: number("9.03")}, at(0, 4)}, nil,
			[]cutout.Point{at(0, 0), at(10, 0), {X: in(10), Y: number("4 1/16")}, {X: number("5 1/16"), Y: in(9)}, at(0, 4)}},
		{"a corner in a straight edge is none", []cutout.Point{at(0, 0), at(10, 0), at(10, 4), {X: in(5), Y: number("6.515")}, {X: in(0), Y: number("9.03")}},
			[]cutout.Point{{X: in(0), Y: number("9.03")}}, []cutout.Point{at(0, 0), at(10, 0), at(10, 4), {X: in(0), Y: number("9.03")}}},
		// The end at (0, 8.01) goes to the notch's corner at (0, 8), where no edges met. Parted at x = 6, the part over the notch ends in
		// (6, 9.03) too and goes up there.
		{"a piece is parted where a corner goes to another", []cutout.Point{at(0, 0), at(10, 0), at(10, 20), at(0, 20), {X: in(0), Y: number("8.01")}, {X: in(6), Y: number("9.03")}, at(6, 8), at(0, 8)}, nil,
			[]cutout.Point{at(0, 0), at(10, 0), at(10, 20), at(0, 20), at(0, 8), {X: in(6), Y: number("9 1/16")}, at(6, 8), at(0, 8)}},
		// An end one mark high, where the bottom rises as much as the top falls, becomes a point. Either of
		// its corners gives up as much: the first goes.
		{"no end of one mark", []cutout.Point{at(0, 0), {X: in(10), Y: number("3.99")}, {X: in(10), Y: number("4 1/16")}, at(0, 8)}, nil,
			[]cutout.Point{at(0, 0), {X: in(10), Y: number("4 1/16")}, at(0, 8)}},
		{"but of two marks", []cutout.Point{at(0, 0), {X: in(10), Y: number("3.99")}, {X: in(10), Y: number("4 1/8")}, at(0, 8)}, nil,
			[]cutout.Point{at(0, 0), at(10, 4), {X: in(10), Y: number("4 1/8")}, at(0, 8)}},
		{"and of one that is taped", []cutout.Point{at(0, 0), {X: in(10), Y: number("3.99")}, {X: in(10), Y: number("4 1/16")}, at(0, 8)},
			[]cutout.Point{{X: in(10), Y: number("4 1/16")}}, []cutout.Point{at(0, 0), at(10, 4), {X: in(10), Y: number("4 1/16")}, at(0, 8)}},
		// A window open at the top: the other part of the top is on one line with the edge that moves.
		{"beside another edge on the same line", []cutout.Point{{X: of(5, 8), Y: in(0)}, at(14, 0), at(14, 25), at(9, 25), at(9, 10), at(3, 10), at(3, 25), {X: of(33, 256), Y: in(25)}},
			nil, []cutout.Point{{X: of(5, 8), Y: in(0)}, at(14, 0), at(14, 25), at(9, 25), at(9, 10), at(3, 10), at(3, 25), {X: of(1, 8), Y: in(25)}}},
		// The top bends down by next to nothing at a taped corner; it bends up there when its end goes up to
		// 8 1/16, and stays a top.
		{"whatever that does at a taped neighbor", []cutout.Point{at(0, 0), at(20, 0), {X: in(20), Y: number("8.06")}, {X: in(10), Y: number("8.031")}, at(0, 8)},
			[]cutout.Point{{X: in(10), Y: number("8.031")}}, []cutout.Point{at(0, 0), at(20, 0), {X: in(20), Y: number("8.0625")}, {X: in(10), Y: number("8.031")}, at(0, 8)}},
		{"beside a corner on the line of its own edge", []cutout.Point{at(0, 0), at(10, 0), at(10, 20), at(0, 20), {X: in(0), Y: number("15.02")}, at(4, 9), at(0, 11)},
			nil, []cutout.Point{at(0, 0), at(10, 0), at(10, 20), at(0, 20), {X: in(0), Y: number("15.0625")}, at(4, 9), at(0, 11)}},
		// From (0, 0.02) up to 1/16 is past the other end of the sloped edge, 3/64 up, as one looks along that.
		{"no farther than beside the far end of its slope", []cutout.Point{{Y: number("0.02")}, {X: of(1, 64), Y: of(3, 64)}, at(10, 1), at(10, 9), at(0, 9)}, []cutout.Point{{X: of(1, 64), Y: of(3, 64)}},
			[]cutout.Point{{Y: of(3, 64)}, {X: of(1, 64), Y: of(3, 64)}, at(10, 1), at(10, 9), at(0, 9)}},
		{"and sideways", []cutout.Point{{X: number("0.02")}, at(9, 0), at(9, 10), at(1, 10), {X: of(3, 64), Y: of(1, 64)}}, []cutout.Point{{X: of(3, 64), Y: of(1, 64)}},
			[]cutout.Point{{X: of(3, 64)}, at(9, 0), at(9, 10), at(1, 10), {X: of(3, 64), Y: of(1, 64)}}},
		{"and where it is level", []cutout.Point{at(0, 0), at(10, 0), {X: in(10), Y: of(1, 16)}, at(0, 8)}, nil,
			[]cutout.Point{at(0, 0), at(10, 0), {X: in(10), Y: of(1, 16)}, at(0, 8)}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got := must(cutout.Snap([]cutout.Shape{cutout.Raw(test.outline)}, of(1, 16), of(1, 64),
				func(p cutout.Point) bool { return slices.Contains(test.taped, p) }))
			if diff := cmp.Diff([]cutout.Shape{cutout.Raw(test.want)}, got, exactly); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// A step up to y = 7 ends at x = 6 under a top that falls from (0, 8) to (10, 6.5), 7.1 there. On whole marks the top's end
// goes down to 6, and its line passes the step's corner at 6.8. Parted there, both parts end in that corner.
func TestSnapPartsAPieceAtTheCornerInTheWay(t *testing.T) {
	step := []cutout.Point{at(0, 7), at(6, 7), at(6, 0), at(10, 0)}
	exact := cutout.Raw(append(slices.Clone(step), cutout.Point{X: in(10), Y: of(13, 2)}, at(0, 8)))
	got := snap([]cutout.Shape{exact}, in(1), append(step, at(0, 8))...)
	want := []cutout.Shape{cutout.Raw(ring(0, 7, 6, 7, 0, 8)), cutout.Raw(ring(6, 0, 10, 0, 10, 6, 6, 7))}
	if diff := cmp.Diff(want, got, exactly); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// Two slopes of any kind, on marks of an inch: their corner goes less than an inch off both lines, across and up, and beyond
// them by no more than the tolerance.
func TestSnappedCornersStayNearTheirLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		far := func(label string) cutout.Point {
			draw := rapid.Int64Range(20, 4000)
			end := cutout.Point{X: of(draw.Draw(t, label+" across"), 4), Y: of(draw.Draw(t, label+" up"), 4)}
			if rapid.Bool().Draw(t, label+" left") {
				end.X = end.X.Neg()
			}
			if rapid.Bool().Draw(t, label+" down") {
				end.Y = end.Y.Neg()
			}
			return end
		}
		ends := []cutout.Point{far("first"), far("second")}
		tolerance := of(rapid.Int64Range(0, 31).Draw(t, "tolerance"), 64)
		for k := range int64(64) {
			checkCorner(t, cutout.Point{X: of(k%8, 8), Y: of(k/8, 8)}, ends, tolerance)
		}
	})
}

// checkCorner does so for one corner and the far ends of its edges, which stay.
func checkCorner(t *rapid.T, corner cutout.Point, ends []cutout.Point, tolerance fraction.Length) {
	t.Helper()
	ring := []cutout.Point{corner, ends[0], ends[1]}
	switch slowSide(corner, ends[0], ends[1]) {
	case 0:
		return
	case -1:
		slices.Reverse(ring)
	}
	taped := func(p cutout.Point) bool { return slices.Contains(ends, p) }
	got := must(cutout.Snap([]cutout.Shape{cutout.Raw(ring)}, in(1), tolerance, taped))
	var outline []cutout.Point
	if len(got) > 0 {
		outline = got[0].Outline()
	}
	if len(outline) != 3 || !slices.Contains(outline, ends[0]) || !slices.Contains(outline, ends[1]) {
		return // it goes to a far end, or past it
	}
	to := outline[slices.IndexFunc(outline, func(p cutout.Point) bool { return !taped(p) })]
	for k, end := range ends {
		across, up := end.X.Sub(corner.X), end.Y.Sub(corner.Y)
		off := across.Times(to.Y.Sub(corner.Y)).Sub(up.Times(to.X.Sub(corner.X)))
		if k == 0 != (slowSide(corner, ends[0], ends[1]) > 0) {
			off = off.Neg()
		}
		reach := across.Abs().Add(up.Abs())
		if off.Compare(reach.Times(in(1))) >= 0 || off.Compare(reach.Times(tolerance.Neg())) < 0 {
			t.Fatalf("%v between %v goes to %v: off the line to %v by %v inches", corner, ends, to, end, off.Over(reach))
		}
	}
}

// Whatever is cut out of a wall, no snapped piece reaches beyond the exact ones by more than the
// tolerance, and none has an edge of a mark or less between two computed corners that could go.
func TestSnappedPiecesExceedTheSpaceByTheToleranceAtMost(t *testing.T) {
	over := 0
	rapid.Check(t, func(t *rapid.T) {
		defer skipOverflow(t)
		s, clip, mark := drawRegion(t), drawOpening(t), drawMark(t)
		tolerance := mark.Div(rapid.Int64Range(2, 8).Draw(t, "part of a mark"))
		left := drawLength(t, 0, 60, "left")
		var exact []cutout.Shape
		for _, p := range minus(s, clip, zero) {
			exact = append(exact, band(p, left, left.Add(drawLength(t, 3, 30, "width")), zero)...)
		}
		taped := slices.Concat(append(ringsOf(s), clip)...)
		snapped := must(cutout.Snap(exact, mark, tolerance, func(p cutout.Point) bool { return slices.Contains(taped, p) }))
		rest := snapped
		for _, e := range exact {
			for _, space := range must(cutout.Grow(e.Outline(), tolerance)) {
				var out []cutout.Shape
				for _, p := range rest {
					out = append(out, must(p.Minus(space))...)
				}
				rest = out
			}
		}
		if len(rest) > 0 {
			t.Fatalf("%v reaches beyond the space\nexact %v\nsnapped %v", rest, exact, snapped)
		}
		for _, p := range snapped {
			checkForm(t, p)
		}
		if outside(snapped, exact).Sign() > 0 {
			over++
		}
	})
	if over == 0 {
		t.Error("no piece ever reached beyond its exact one")
	}
}

// A sliver 1/50 wide and a triangle beside it are rounded each by itself, the one to 1/4 below and the other to 1/4 left
// of where they were: they would overlap. So both go into their space.
func TestSnappedPartsDoNotOverlap(t *testing.T) {
	ring := func(corner cutout.Point) []cutout.Point {
		return []cutout.Point{{X: of(260, 127)}, {X: of(390, 127)}, {X: of(390, 127), Y: of(1300, 127)}, {Y: of(1300, 127)}, {Y: of(35, 127)},
			{X: of(20, 889), Y: of(450, 1651)}, {X: of(130, 381), Y: of(525, 127)}, {X: of(260, 381), Y: of(525, 127)}, {X: of(130, 127), Y: of(525, 254)}, corner}
	}
	exact := ring(cutout.Point{X: of(65, 508), Y: of(525, 2032)})
	got := must(cutout.Snap([]cutout.Shape{shape(exact)}, of(1, 2), of(1, 4), func(p cutout.Point) bool { return slices.Contains(exact, p) && p != exact[5] && p != exact[9] }))
	want := []cutout.Shape{shape(slices.Delete(ring(cutout.Point{X: of(1, 2), Y: of(1, 2)}), 5, 6))}
	if !cmp.Equal(got, want, cmp.Comparer(func(a, b cutout.Shape) bool { return slices.Equal(a.Outline(), b.Outline()) })) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// A corner of a hole that a mark puts in line with its neighbors goes: the hole 3 wide whose top has a corner 1/128 lower
// is a rectangle.
func TestSnappedHolesHaveNoCornerWithinAnEdge(t *testing.T) {
	hole := []cutout.Point{at(3, 3), at(3, 6), {X: in(4), Y: of(6*128-1, 128)}, at(6, 6), at(6, 3)}
	got := must(cutout.Snap([]cutout.Shape{shape(rect(0, 0, 10, 10), hole)}, of(1, 16), of(1, 64), nil))
	want := shape(rect(0, 0, 10, 10), []cutout.Point{at(3, 3), at(3, 6), at(6, 6), at(6, 3)})
	if len(got) != 1 || !slices.EqualFunc(got[0].Holes(), want.Holes(), slices.Equal) {
		t.Errorf("holes %v, want %v", got, want.Holes())
	}
}

// Distances by hand: sides of 3, 4 and 5; the diagonal of a square, 1.41421…, is 1 7/16 on sixteenths, and 1 1/2 on
// halves, rounded up.
func TestDistance(t *testing.T) {
	for _, row := range []struct {
		to         cutout.Point
		unit, want fraction.Length
	}{
		{at(4, -2), of(1, 16), in(5)}, {at(4, -2), zero, in(5)}, {at(2, 3), of(1, 16), of(23, 16)}, {at(2, 3), of(1, 2), of(3, 2)}, {at(2, 3), in(2), in(2)}, {at(1, 2), of(1, 16), zero},
	} {
		if got, err := cutout.Distance(at(1, 2), row.to, row.unit); err != nil || got != row.want {
			t.Errorf("to %v in %v: %v, %v, want %v", row.to, row.unit, got, err, row.want)
		}
	}
	for _, unit := range []fraction.Length{zero, of(-1, 16)} {
		if got, err := cutout.Distance(at(1, 2), at(2, 3), unit); err == nil {
			t.Errorf("in %v: %v, want an error", unit, got)
		}
	}
}
