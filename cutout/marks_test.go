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

func TestMarksOfAPieceWithANotchAndAHole(t *testing.T) {
	s := must(mustShape(t, ring(0, 0, 20, 0, 20, 15, 16, 15, 16, 18, 0, 18), rect(3, 4, 2, 3)).Move(in(100), in(7)))
	got := must(s.Marks())
	want := cutout.Marks{
		Outline: cutout.Corners{
			Face: ring(0, 0, 20, 0, 20, 15, 16, 15, 16, 18, 0, 18),
			Back: ring(20, 0, 0, 0, 0, 15, 4, 15, 4, 18, 20, 18)},
		Holes: []cutout.Corners{{Face: ring(3, 4, 3, 7, 5, 7, 5, 4), Back: ring(17, 4, 17, 7, 15, 7, 15, 4)}}}
	if diff := cmp.Diff(want, got, exactly); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestBackMarksMirrorTheFaceExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		if s.IsEmpty() {
			return
		}
		lo, hi := s.Bounds()
		width := hi.X.Sub(lo.X)
		m := must(s.Marks())
		for _, c := range append([]cutout.Corners{m.Outline}, m.Holes...) {
			for i, p := range c.Face {
				q := c.Back[i]
				if new(big.Rat).Add(p.X.Rat(), q.X.Rat()).Cmp(width.Rat()) != 0 || p.Y != q.Y {
					t.Fatalf("%v on the face, %v on the back of %v", p, q, width)
				}
			}
		}
		// The back as a whole is the mirrored shape, corner for corner.
		back := mirror(must(s.Move(lo.X.Neg(), lo.Y.Neg())), width)
		marked := slices.Clone(m.Outline.Back)
		for _, c := range m.Holes {
			marked = append(marked, c.Back...)
		}
		corners := pointsOf(back)
		for _, p := range marked {
			if !slices.Contains(corners, p) {
				t.Fatalf("back %v lacks %v", back, p)
			}
		}
		if len(marked) != len(corners) {
			t.Fatalf("%d corners marked on the back of %d", len(marked), len(corners))
		}
		for _, st := range drawStarters(t, s) {
			if st.At.X.Add(st.Back.X) != width || st.At.Y != st.Back.Y {
				t.Fatalf("starter %+v on a width of %v", st, width)
			}
		}
	})
}

func startersOf(cuttings []cutout.Cutting) (starters []cutout.Starter, tight []cutout.Point) {
	for _, c := range cuttings {
		starters, tight = append(starters, c.Starters...), append(tight, c.Tight...)
	}
	return starters, tight
}

func drawStarters(t *rapid.T, s cutout.Shape) []cutout.Starter {
	diameter := of(rapid.Int64Range(1, 16).Draw(t, "diameter"), 16)
	mark := rapid.SampledFrom([]fraction.Length{zero, of(1, 16), of(1, 32)}).Draw(t, "starter mark")
	starters, _ := startersOf(must(s.Cuttings(diameter, mark)))
	return starters
}

// The disc of a starter hole has no point inside the material: no edge comes
// nearer to its centre than its radius, and the centre is not in the shape. Both
// are checked without the package's own distance.
func TestStarterHolesLieInTheWaste(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		if s.IsEmpty() {
			return
		}
		lo, hi := s.Bounds()
		s = must(s.Move(lo.X.Neg(), lo.Y.Neg()))
		for _, st := range drawStarters(t, s) {
			found++
			r := st.Diameter.Div(2)
			if s.Contains(st.At) && !onEdge(s, st.At) {
				t.Fatalf("centre %v lies in the material of %v", st.At, s)
			}
			if st.At.X.Less(r) || st.At.Y.Less(r) || hi.X.Sub(lo.X).Sub(st.At.X).Less(r) || hi.Y.Sub(lo.Y).Sub(st.At.Y).Less(r) {
				t.Fatalf("starter %+v leaves the rectangle", st)
			}
			for _, ring := range ringsOf(s) {
				for i, a := range ring {
					if slowNear(a, ring[(i+1)%len(ring)], st.At, r) {
						t.Fatalf("starter %+v runs past the edge %v %v", st, a, ring[(i+1)%len(ring)])
					}
				}
			}
		}
	})
	if found == 0 {
		t.Error("no starter hole was ever drawn")
	}
}

// slowNear reports whether the edge ab comes nearer to p than r: an end does, or
// p lies between the two upright-to-the-edge lines and too near to the line.
func slowNear(a, b, p cutout.Point, r fraction.Length) bool {
	sub := func(p, q fraction.Length) *big.Rat { return new(big.Rat).Sub(p.Rat(), q.Rat()) }
	mul := func(p, q *big.Rat) *big.Rat { return new(big.Rat).Mul(p, q) }
	add := func(p, q *big.Rat) *big.Rat { return new(big.Rat).Add(p, q) }
	r2 := mul(r.Rat(), r.Rat())
	dx, dy := sub(b.X, a.X), sub(b.Y, a.Y)
	px, py := sub(p.X, a.X), sub(p.Y, a.Y)
	qx, qy := sub(p.X, b.X), sub(p.Y, b.Y)
	if add(mul(px, px), mul(py, py)).Cmp(r2) < 0 || add(mul(qx, qx), mul(qy, qy)).Cmp(r2) < 0 {
		return true
	}
	if add(mul(px, dx), mul(py, dy)).Sign() <= 0 || add(mul(qx, dx), mul(qy, dy)).Sign() >= 0 {
		return false
	}
	cross := new(big.Rat).Sub(mul(dx, py), mul(dy, px))
	return mul(cross, cross).Cmp(mul(r2, add(mul(dx, dx), mul(dy, dy)))) < 0
}

func TestStarters(t *testing.T) {
	tests := []struct {
		name     string
		s        cutout.Shape
		diameter fraction.Length
		mark     fraction.Length
		want     []cutout.Point
		tight    []cutout.Point
	}{
		{name: "box", s: mustShape(t, rect(0, 0, 20, 20), rect(3, 4, 2, 3)), diameter: of(3, 8), mark: of(1, 16),
			want: []cutout.Point{{X: of(51, 16), Y: of(67, 16)}, {X: of(51, 16), Y: of(109, 16)}, {X: of(77, 16), Y: of(109, 16)}, {X: of(77, 16), Y: of(67, 16)}}},
		{name: "just fits", s: mustShape(t, rect(0, 0, 20, 20), rect(3, 4, 1, 1)), diameter: in(1), mark: of(1, 16),
			want: []cutout.Point{{X: of(7, 2), Y: of(9, 2)}, {X: of(7, 2), Y: of(9, 2)}, {X: of(7, 2), Y: of(9, 2)}, {X: of(7, 2), Y: of(9, 2)}}},
		{name: "too big", s: mustShape(t, rect(0, 0, 20, 20), rect(3, 4, 1, 1)), diameter: of(17, 16), mark: of(1, 16), tight: ring(3, 4, 3, 5, 4, 5, 4, 4)},
		{name: "no bit", s: mustShape(t, rect(0, 0, 20, 20), rect(3, 4, 1, 1)), tight: ring(3, 4, 3, 5, 4, 5, 4, 4)},
		{name: "corner notch", s: mustShape(t, ring(0, 0, 20, 0, 20, 15, 16, 15, 16, 18, 0, 18)), diameter: in(1), want: []cutout.Point{{X: of(33, 2), Y: of(31, 2)}}},
		{name: "notch shallower than the bit", s: mustShape(t, ring(0, 0, 20, 0, 20, 15, 16, 15, 16, 18, 0, 18)), diameter: in(4), tight: ring(16, 15)},
		{name: "not into the next cutout", s: mustShape(t, rect(0, 0, 20, 20), cutout.Rectangle(in(3), in(4), of(1, 8), of(1, 8)),
			cutout.Rectangle(of(13, 4), in(3), in(12), in(12))), diameter: of(1, 4), mark: of(1, 2),
			want:  []cutout.Point{{X: of(7, 2), Y: of(7, 2)}, {X: of(7, 2), Y: of(29, 2)}, {X: in(15), Y: of(29, 2)}, {X: in(15), Y: of(7, 2)}},
			tight: []cutout.Point{at(3, 4), {X: in(3), Y: of(33, 8)}, {X: of(25, 8), Y: of(33, 8)}, {X: of(25, 8), Y: in(4)}}},
		{name: "no inside corner", s: mustShape(t, rect(0, 0, 5, 5)), diameter: in(1)},
		{name: "3-4-5 notch: the centre clears both edges by the inscribed circle's radius",
			s: mustShape(t, ring(0, 0, 20, 0, 20, 20, 16, 20, 8, 14, 8, 20, 0, 20)), diameter: in(2), want: []cutout.Point{at(9, 16)}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			starters, tight := startersOf(must(test.s.Cuttings(test.diameter, test.mark)))
			var got []cutout.Point
			for _, st := range starters {
				got = append(got, st.At)
			}
			if diff := cmp.Diff(test.want, got, exactly); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
			if diff := cmp.Diff(test.tight, tight, exactly); diff != "" {
				t.Errorf("tight (-want +got)\n%s", diff)
			}
		})
	}
}

func TestCuttings(t *testing.T) {
	s := mustShape(t, ring(0, 0, 20, 0, 20, 15, 16, 15, 16, 18, 9, 18, 9, 12, 6, 12, 6, 18, 0, 17), rect(3, 4, 2, 3))
	var got []string
	for _, c := range must(s.Cuttings(of(3, 8), of(1, 16))) {
		for _, s := range c.Starters {
			got = append(got, fmt.Sprintf("%v: drill %v at %v, %v", c.Kind, s.Diameter, s.At.X, s.At.Y))
		}
		for _, w := range c.Ways {
			got = append(got, fmt.Sprintf("%v: saw %v", c.Kind, w))
		}
	}
	want := []string{
		"hole: drill 3/8 at 3 3/16, 4 3/16",
		"hole: drill 3/8 at 3 3/16, 6 13/16",
		"hole: drill 3/8 at 4 13/16, 6 13/16",
		"hole: drill 3/8 at 4 13/16, 4 3/16",
		"hole: saw [{3 4} {3 7}]",
		"hole: saw [{5 7} {5 4}]",
		"hole: saw [{3 7} {5 7}]",
		"hole: saw [{5 4} {3 4}]",
		"edge: saw [{6 18} {0 17}]",
		"notch: drill 3/8 at 16 3/16, 15 3/16",
		"notch: saw [{20 15} {16 15}]",
		"notch: saw [{16 18} {16 15}]",
		"notch: drill 3/8 at 8 13/16, 12 3/16",
		"notch: drill 3/8 at 6 3/16, 12 3/16",
		"notch: saw [{9 18} {9 12}]",
		"notch: saw [{6 18} {6 12}]",
		"notch: saw [{9 12} {6 12}]",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// Every edge that is not on the bounding rectangle is sawn once, no other is.
func TestEveryInnerEdgeIsSawnOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		if s.IsEmpty() {
			return
		}
		lo, hi := s.Bounds()
		s = must(s.Move(lo.X.Neg(), lo.Y.Neg()))
		_, hi = s.Bounds()
		edge := func(p, q cutout.Point) string {
			if p.X.Compare(q.X) > 0 || p.X == q.X && p.Y.Compare(q.Y) > 0 {
				p, q = q, p
			}
			return fmt.Sprint(p, q)
		}
		sawn := map[string]int{}
		for _, c := range must(s.Cuttings(of(3, 8), of(1, 16))) {
			for _, w := range c.Ways {
				for i := 1; i < len(w); i++ {
					sawn[edge(w[i-1], w[i])]++
				}
			}
		}
		edges := 0
		for _, ring := range ringsOf(s) {
			for i, p := range ring {
				q := ring[(i+1)%len(ring)]
				onRectangle := p.X == q.X && (p.X.IsZero() || p.X == hi.X) || p.Y == q.Y && (p.Y.IsZero() || p.Y == hi.Y)
				if onRectangle {
					continue
				}
				edges++
				if sawn[edge(p, q)] != 1 {
					t.Fatalf("edge %v %v is sawn %d times", p, q, sawn[edge(p, q)])
				}
			}
		}
		if edges != len(sawn) {
			t.Fatalf("%d edges sawn, %d to saw", len(sawn), edges)
		}
	})
}

// A round hole of 16 corners, each of which turns by 1 in 2 or 1 in 3, has no sharp one: it is started once, at the lowest.
func TestRoundHoleIsStartedOnce(t *testing.T) {
	hole := ring(10, 10, 12, 10, 14, 11, 15, 12, 16, 14, 16, 16, 15, 18, 14, 19, 12, 20, 10, 20, 8, 19, 7, 18, 6, 16, 6, 14, 7, 12, 8, 11)
	starters, tight := startersOf(must(mustShape(t, rect(0, 0, 30, 30), hole).Cuttings(of(3, 8), of(1, 16))))
	if len(starters) != 1 || starters[0].Corner != at(10, 10) || starters[0].Hole != 0 || len(tight) > 0 {
		t.Errorf("starters %+v, too tight %v, want one at the lowest corner", starters, tight)
	}
}

func TestCuttingOfACurve(t *testing.T) {
	cuttings := must(mustShape(t, rect(0, 0, 60, 60), archedOpening(t)).Cuttings(of(3, 8), of(1, 16)))
	if len(cuttings) != 1 || cuttings[0].Kind != cutout.HoleCut {
		t.Fatalf("cuttings %+v", cuttings)
	}
	// The head turns by 37 degrees at the springing: four starters, four ways.
	if len(cuttings[0].Starters) != 4 || len(cuttings[0].Ways) != 4 {
		t.Errorf("%d starters, %d ways", len(cuttings[0].Starters), len(cuttings[0].Ways))
	}
}
