package cutout_test

import (
	"errors"
	"fmt"
	"math/big"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

func TestMarksOfAPieceWithANotchAndAHole(t *testing.T) {
	s := mustShape(t, ring(0, 0, 20, 0, 20, 15, 16, 15, 16, 18, 0, 18), rect(3, 4, 2, 3)).Move(in(100), in(7))
	got := s.Marks()
	want := cutout.Marks{Width: in(20), Height: in(18),
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
		lo, _ := s.Bounds()
		m := s.Marks()
		for _, c := range append([]cutout.Corners{m.Outline}, m.Holes...) {
			for i, p := range c.Face {
				q := c.Back[i]
				if new(big.Rat).Add(p.X.Rat(), q.X.Rat()).Cmp(m.Width.Rat()) != 0 || p.Y != q.Y {
					t.Fatalf("%v on the face, %v on the back of %v", p, q, m.Width)
				}
			}
		}
		// The back as a whole is the mirrored shape, corner for corner.
		back := s.Move(lo.X.Neg(), lo.Y.Neg()).Mirror(m.Width)
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
			if st.At.X.Add(st.Back.X) != m.Width || st.At.Y != st.Back.Y {
				t.Fatalf("starter %+v on a width of %v", st, m.Width)
			}
		}
	})
}

func drawStarters(t *rapid.T, s cutout.Shape) []cutout.Starter {
	diameter := of(rapid.Int64Range(1, 16).Draw(t, "diameter"), 16)
	mark := rapid.SampledFrom([]fraction.Length{zero, of(1, 16), of(1, 32)}).Draw(t, "starter mark")
	starters, _ := s.Starters(diameter, mark)
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
		s = s.Move(lo.X.Neg(), lo.Y.Neg())
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
			starters, tight := test.s.Starters(test.diameter, test.mark)
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
	for _, c := range s.Cuttings(of(3, 8), of(1, 16)) {
		got = append(got, c.Words("", fraction.Tape{Mark: of(1, 16)})...)
	}
	want := []string{
		"hole: drill 3/8, centre 3 3/16 across, 4 3/16 up",
		"hole: drill 3/8, centre 3 3/16 across, 6 13/16 up",
		"hole: drill 3/8, centre 4 13/16 across, 6 13/16 up",
		"hole: drill 3/8, centre 4 13/16 across, 4 3/16 up",
		"hole: saw up at 3 across, from 4 to 7",
		"hole: saw down at 5 across, from 7 to 4",
		"hole: saw right at 7 up, from 3 to 5",
		"hole: hold the waste and last saw left at 4 up, from 5 to 3",
		"notch: drill 3/8, centre 16 3/16 across, 15 3/16 up",
		"notch: saw left at 15 up, from 20 to 16",
		"notch: hold the waste and last saw down at 16 across, from 18 to 15",
		"notch: drill 3/8, centre 8 13/16 across, 12 3/16 up",
		"notch: drill 3/8, centre 6 3/16 across, 12 3/16 up",
		"notch: saw down at 9 across, from 18 to 12",
		"notch: saw down at 6 across, from 18 to 12",
		"notch: hold the waste and last saw left at 12 up, from 9 to 6",
		"edge: saw from 6 across, 18 up, to 0 across, 17 up",
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
		s = s.Move(lo.X.Neg(), lo.Y.Neg())
		_, hi = s.Bounds()
		edge := func(p, q cutout.Point) string {
			if p.X.Compare(q.X) > 0 || p.X == q.X && p.Y.Compare(q.Y) > 0 {
				p, q = q, p
			}
			return fmt.Sprint(p, q)
		}
		sawn := map[string]int{}
		for _, c := range s.Cuttings(of(3, 8), of(1, 16)) {
			for _, w := range c.Ways {
				for i := 1; i < len(w.Points); i++ {
					sawn[edge(w.Points[i-1], w.Points[i])]++
				}
			}
			if len(c.Words("", fraction.Tape{Mark: of(1, 16)})) < len(c.Ways) {
				t.Fatalf("%+v has too few words", c)
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

func TestCuttingOfACurve(t *testing.T) {
	cuttings := mustShape(t, rect(0, 0, 60, 60), archedOpening(t)).Cuttings(of(3, 8), of(1, 16))
	if len(cuttings) != 1 || cuttings[0].Kind != cutout.HoleCut {
		t.Fatalf("cuttings %+v", cuttings)
	}
	words := strings.Join(cuttings[0].Words("", fraction.Tape{Mark: of(1, 16)}), "\n")
	if !strings.Contains(words, "saw along the curve from ") {
		t.Errorf("no curve in\n%s", words)
	}
	// The head turns by 37 degrees at the springing: four starters, four ways.
	if len(cuttings[0].Starters) != 4 || len(cuttings[0].Ways) != 4 {
		t.Errorf("%d starters, %d ways\n%s", len(cuttings[0].Starters), len(cuttings[0].Ways), words)
	}
}

// Plate sizes of one to ten gangs as printed in an architects' reference to NEMA
// WD 6, which rounds the second to 4-1/2; another article gives it as 4.56.
func TestStandardPlate(t *testing.T) {
	want := []string{"2 3/4", "4 9/16", "6 3/8", "8 3/16", "10", "11 13/16", "13 5/8", "15 7/16", "17 1/4", "19 1/16"}
	for i, width := range want {
		plate, err := cutout.StandardPlate(i + 1)
		if err != nil || plate.Width.String() != width || plate.Height != of(9, 2) {
			t.Errorf("StandardPlate(%d) = %v, %v, want %s wide", i+1, plate, err, width)
		}
	}
	for _, gangs := range []int{-1, 0, 11} {
		if _, err := cutout.StandardPlate(gangs); !errors.Is(err, cutout.ErrGangs) {
			t.Errorf("StandardPlate(%d): %v", gangs, err)
		}
	}
}

// A plate of 2-3/4 by 4-1/2 over a box of 2 by 3 in, cut to the box and 1/8 and
// 1/4 larger on each side; two gangs with their opening of 3-13/16. Sizes from a
// home-repair article, the cover worked by hand.
func TestCoverWorkedExamples(t *testing.T) {
	one, _ := cutout.StandardPlate(1)
	two, _ := cutout.StandardPlate(2)
	tests := []struct {
		name     string
		box      fraction.Length // width of the box
		larger   fraction.Length // the hole, on each side
		plate    cutout.Plate
		side, up fraction.Length
	}{
		{"cut to the box", in(2), zero, one, of(3, 8), of(3, 4)},
		{"1/8 larger", in(2), of(1, 8), one, of(1, 4), of(5, 8)},
		{"1/8 larger, plate 4.490 high", in(2), of(1, 8), cutout.Plate{Width: of(11, 4), Height: of(449, 100)}, of(1, 4), of(62, 100)},
		{"1/4 larger", in(2), of(1, 4), one, of(1, 8), of(1, 2)},
		{"two gangs", of(61, 16), zero, two, of(3, 8), of(3, 4)},
		{"too big: seen at the sides", in(2), of(1, 2), one, of(-1, 8), of(1, 4)},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			hole := cutout.Rectangle(in(10).Sub(test.larger), in(20).Sub(test.larger),
				test.box.Add(test.larger.Mul(2)), in(3).Add(test.larger.Mul(2)))
			got := cutout.Cover(hole, test.plate, cutout.Point{X: in(10).Add(test.box.Div(2)), Y: of(43, 2)})
			want := cutout.Overlap{Left: test.side, Right: test.side, Bottom: test.up, Top: test.up}
			if got != want || got.Least() != test.side {
				t.Errorf("Cover = %+v, want %+v", got, want)
			}
		})
	}
	// Edges measured 14-3/4 and 17-1/2 from the corner, as a drywall guide has it,
	// are 2-3/4 apart, no wider than a plate; off-centre by 1/8 one side is seen.
	hole := cutout.Rectangle(of(59, 4), in(0), of(11, 4), in(3))
	got := cutout.Cover(hole, one, cutout.Point{X: of(65, 4), Y: of(3, 2)})
	if want := (cutout.Overlap{Left: of(-1, 8), Right: of(1, 8), Bottom: of(3, 4), Top: of(3, 4)}); got != want {
		t.Errorf("Cover = %+v, want %+v", got, want)
	}
}
