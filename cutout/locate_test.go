package cutout_test

import (
	"errors"
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

func taped(x, y, distance int64) cutout.Taped {
	return cutout.Taped{From: at(x, y), Distance: in(distance)}
}

// The method is that of setting a point from two tapes with their zero ends on
// two known points: US Navy training manual NAVEDTRA 14069, "Setting adjacent
// points". The figures follow from the cosine rule, x = (d²+a²-b²)/2d, and are
// worked by hand.
func TestLocateWorkedExamples(t *testing.T) {
	sixteenth := of(1, 16)
	tests := []struct {
		name  string
		taped []cutout.Taped
		side  cutout.Side
		want  cutout.Point
	}{
		{"3-4-5 on its long side", []cutout.Taped{taped(0, 0, 3), taped(5, 0, 4)}, cutout.Left, cutout.Point{X: of(9, 5), Y: of(12, 5)}},
		{"3-4-5 on its short side", []cutout.Taped{taped(0, 0, 4), taped(3, 0, 5)}, cutout.Left, at(0, 4)},
		{"the other side", []cutout.Taped{taped(0, 0, 4), taped(3, 0, 5)}, cutout.Right, at(0, -4)},
		{"a wall's corner from 120 in", []cutout.Taped{taped(0, 0, 72), taped(120, 0, 96)}, cutout.Left, cutout.Point{X: of(216, 5), Y: of(288, 5)}},
		{"base line upright", []cutout.Taped{taped(10, 0, 3), taped(10, 5, 4)}, cutout.Right, cutout.Point{X: of(62, 5), Y: of(9, 5)}},
		{"slanting base line of irrational length", []cutout.Taped{taped(0, 0, 5), taped(1, 1, 5)}, cutout.Left, cutout.Point{X: of(-3, 1), Y: of(4, 1)}},
		{"on the base line", []cutout.Taped{taped(0, 0, 4), taped(10, 0, 6)}, cutout.Left, at(4, 0)},
		{"at a known point", []cutout.Taped{taped(0, 0, 0), taped(10, 0, 10)}, cutout.Left, at(0, 0)},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got, err := cutout.Locate(test.taped, test.side, sixteenth)
			if err != nil {
				t.Fatal(err)
			}
			if got.At != test.want || !got.Exact || !got.Within.IsZero() {
				t.Errorf("Locate = %+v, want exactly %v", got, test.want)
			}
			if _, off := got.Worst(); !off.IsZero() {
				t.Errorf("closing errors %v, want none", got.Closing)
			}
		})
	}
}

// Squaring by 3-4-5 and its multiples: carpenters' rule, 6-8-10 and 15-20-25 ft.
// The diagonal of a 36 x 48 sheet is 60; that of 48 x 96 is 107.3313 (by hand).
func TestLocateSquareCorners(t *testing.T) {
	for _, triple := range [][3]int64{{3, 4, 5}, {72, 96, 120}, {180, 240, 300}, {36, 48, 60}} {
		a, b, c := triple[0], triple[1], triple[2]
		got, err := cutout.Locate([]cutout.Taped{taped(0, 0, b), taped(a, 0, c)}, cutout.Left, zero)
		if err != nil || got.At != at(0, b) {
			t.Errorf("%v: %+v, %v", triple, got, err)
		}
	}
	// Two corners of a 48 x 96 sheet are 96 and sqrt(11520) from a third. The tape
	// reads 107 21/64 at best, so the corner comes out near (48, 96), not at it.
	got, err := cutout.Locate([]cutout.Taped{taped(48, 0, 96), {From: at(0, 0), Distance: of(107*64+21, 64)}}, cutout.Right, of(1, 16))
	if err != nil {
		t.Fatal(err)
	}
	if want := at(48, 96); got.At != want || got.Exact {
		t.Errorf("Locate = %+v, want about %v", got, want)
	}
}

func TestLocateFaults(t *testing.T) {
	tests := []struct {
		name  string
		taped []cutout.Taped
		mark  fraction.Length
		want  error
		text  string
	}{
		{name: "none", want: cutout.ErrTooFewTaped},
		{name: "one", taped: []cutout.Taped{taped(0, 0, 3)}, want: cutout.ErrTooFewTaped},
		// The published case of no point: base 10, distances 4 and 5.
		{name: "too short", taped: []cutout.Taped{taped(0, 0, 4), taped(10, 0, 5)}, want: cutout.ErrTooShort,
			text: "[0].Distance: the two distances together do not reach from one point to the other; want distances that meet in a point"},
		{name: "too long", taped: []cutout.Taped{taped(0, 0, 40), taped(10, 0, 5)}, want: cutout.ErrTooLong},
		{name: "same point", taped: []cutout.Taped{taped(1, 1, 4), taped(1, 1, 5)}, want: cutout.ErrSamePoint},
		{name: "below zero", taped: []cutout.Taped{taped(0, 0, 4), taped(10, 0, -7)}, want: cutout.ErrNegative, text: "[1].Distance: a taped distance is below zero; want distances that meet in a point"},
		{name: "no mark", taped: []cutout.Taped{taped(0, 0, 4), taped(5, 0, 4)}, want: cutout.ErrNoMark},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := cutout.Locate(test.taped, cutout.Left, test.mark)
			if !errors.Is(err, test.want) || test.text != "" && err.Error() != test.text {
				t.Errorf("error = %v, want %v", err, test.want)
			}
		})
	}
}

// A misread distance is outvoted by the two others, on whichever side of their own base line the
// point lies: (30, 40) is left of the base line, 50 from its start (3-4-5), and 40 from (30, 80),
// on the right of the line there. The one from (30, 0) is 39 short.
func TestLocateFindsTheMisreadDistance(t *testing.T) {
	got, err := cutout.Locate([]cutout.Taped{taped(0, 0, 50), taped(30, 0, 1), taped(30, 80, 40)}, cutout.Left, of(1, 16))
	if err != nil || got.At != at(30, 40) || !got.Exact {
		t.Fatalf("%+v, %v", got, err)
	}
	if i, off := got.Worst(); i != 1 || off != in(39) {
		t.Errorf("distance %d is off by %v, want the one from (30, 0) by 39", i, off)
	}
}

func TestLocateOverflowIsAnError(t *testing.T) {
	far := cutout.Taped{From: cutout.Point{X: in(1 << 62)}, Distance: in(1 << 62)}
	_, err := cutout.Locate([]cutout.Taped{{From: cutout.Point{Y: of(1, 1<<61)}, Distance: in(1 << 62)}, far}, cutout.Left, of(1, 16))
	var over *fraction.OverflowError
	if !errors.As(err, &over) {
		t.Errorf("error = %v, want an overflow", err)
	}
}

// Three tapes, one of them misread by half an inch: the closing errors show it.
func TestLocateClosingErrors(t *testing.T) {
	ties := []cutout.Taped{taped(0, 0, 50), taped(80, 0, 50), {From: at(40, -10), Distance: of(81, 2)}}
	got, err := cutout.Locate(ties, cutout.Left, of(1, 16))
	if err != nil {
		t.Fatal(err)
	}
	index, off := got.Worst()
	if off.Compare(of(1, 8)) <= 0 {
		t.Errorf("Worst = %d, %v: half an inch went unseen in %+v", index, off, got)
	}
	ties[2].Distance = in(40)
	got, err = cutout.Locate(ties, cutout.Left, of(1, 16))
	if err != nil || got.At != at(40, 30) || !got.Exact {
		t.Fatalf("Locate = %+v, %v, want exactly (40, 30)", got, err)
	}
	if _, off := got.Worst(); !off.IsZero() {
		t.Errorf("closing errors %v, want none", got.Closing)
	}
}

// A third known point off the base line: the pairs with it have points on both
// sides of their own lines, and the given side of the base line holds for all.
func TestLocateKeepsToTheGivenSide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.SampledFrom([]cutout.Side{cutout.Left, cutout.Right}).Draw(t, "side")
		ties := make([]cutout.Taped, rapid.IntRange(2, 4).Draw(t, "n"))
		for i := range ties {
			ties[i] = cutout.Taped{From: cutout.Point{X: drawLength(t, 0, 60, "x"), Y: drawLength(t, 0, 60, "y")}, Distance: drawLength(t, 30, 90, "distance")}
		}
		got, err := cutout.Locate(ties, side, of(1, 16))
		if err != nil {
			return
		}
		// Rounding may carry a point that lies on the line across it.
		where := slowSide(ties[0].From, ties[1].From, got.At)
		if got.Exact && (where < 0 && side == cutout.Left || where > 0 && side == cutout.Right) {
			t.Fatalf("%+v lies on the wrong side", got)
		}
	})
}

// The point is at the taped distances from both known points, up to the bound:
// |P-A| differs from a by no more than Within, checked on squares.
func TestLocatedPointIsWithinItsBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mark := drawMark(t)
		ties := []cutout.Taped{
			{From: cutout.Point{X: drawLength(t, 0, 60, "x"), Y: drawLength(t, 0, 60, "y")}, Distance: drawLength(t, 20, 90, "a")},
			{From: cutout.Point{X: drawLength(t, 0, 60, "x"), Y: drawLength(t, 0, 60, "y")}, Distance: drawLength(t, 20, 90, "b")},
		}
		got, err := cutout.Locate(ties, cutout.Left, mark)
		if err != nil {
			return
		}
		if mark.Less(got.Within) || got.Exact != got.Within.IsZero() {
			t.Fatalf("Within = %v with a mark of %v", got.Within, mark)
		}
		for i, tie := range ties {
			square := func(l fraction.Length) *big.Rat { return new(big.Rat).Mul(l.Rat(), l.Rat()) }
			d := square(got.At.X.Sub(tie.From.X))
			d.Add(d, square(got.At.Y.Sub(tie.From.Y)))
			low, high := tie.Distance.Sub(got.Within), tie.Distance.Add(got.Within)
			if d.Cmp(square(high)) > 0 || low.Sign() > 0 && d.Cmp(square(low)) < 0 {
				t.Fatalf("distance %d is off by more than %v: %+v", i, got.Within, got)
			}
			if got.Closing[i].Abs().Compare(got.Within.Add(mark.Div(1024))) > 0 {
				t.Fatalf("closing error %v beyond the bound %v", got.Closing[i], got.Within)
			}
		}
	})
}

func ratio(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic(s)
	}
	return r
}

// Radius from chord and rise, r = c²/8h + h/2, as woodworkers' references give
// it; the four arcs are worked by hand.
func TestRadiusWorkedExamples(t *testing.T) {
	tests := []struct{ chord, rise, want fraction.Length }{
		{in(48), in(6), in(51)},
		{in(36), in(6), in(30)},
		{in(60), in(5), of(185, 2)},
		{in(24), in(12), in(12)},
	}
	for _, test := range tests {
		if got, err := cutout.Radius(test.chord, test.rise); err != nil || got != test.want {
			t.Errorf("Radius(%v, %v) = %v, %v, want %v", test.chord, test.rise, got, err, test.want)
		}
	}
	for _, bad := range [][2]int64{{0, 1}, {10, 0}, {10, -1}, {10, 6}} {
		if r, err := cutout.Radius(in(bad[0]), in(bad[1])); !errors.Is(err, cutout.ErrNoArc) {
			t.Errorf("Radius(%d, %d) = %v, %v", bad[0], bad[1], r, err)
		}
	}
}

// pathLength sums the edges; a float will do to compare with printed figures.
func pathLength(line []cutout.Point) *big.Float {
	sum := new(big.Float).SetPrec(100)
	for i := 1; i < len(line); i++ {
		dx, dy := new(big.Rat).Sub(line[i].X.Rat(), line[i-1].X.Rat()), new(big.Rat).Sub(line[i].Y.Rat(), line[i-1].Y.Rat())
		square := new(big.Rat).Add(new(big.Rat).Mul(dx, dx), new(big.Rat).Mul(dy, dy))
		f := new(big.Float).SetPrec(100).SetRat(square)
		sum.Add(sum, f.Sqrt(f))
	}
	return sum
}

// The polyline is longer than its arc, by little: the arc's length 2r·asin(c/2r) is by hand 38.6101
// for a chord of 36 and a rise of 6, and 37.6991 for the half circle over 24.
func TestArcLengthIsNeared(t *testing.T) {
	for _, test := range []struct {
		chord, rise int64
		want        string
	}{{36, 6, "38.6101"}, {24, 12, "37.6991"}} {
		line, err := cutout.Arc(at(0, 0), in(test.chord), in(test.rise), of(1, 1000), of(1, 1<<20))
		if err != nil {
			t.Fatal(err)
		}
		length, want := pathLength(line), new(big.Float).SetRat(ratio(test.want))
		if over := new(big.Float).Sub(length, want); over.Sign() < 0 || over.Cmp(big.NewFloat(0.01)) > 0 {
			t.Errorf("arc over %d rising %d: %.5f, want %s", test.chord, test.rise, length, test.want)
		}
	}
}

// Every corner and every edge keeps to its side and to the tolerance; and each
// corner lies on a mark. Checked from the circle's equation.
func TestArcKeepsItsSideAndTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		chord := drawLength(t, 4, 100, "chord")
		rise := drawLength(t, 1, 50, "rise")
		if chord.Less(rise.Mul(2)) {
			rise = chord.Div(2)
		}
		mark := rapid.SampledFrom([]fraction.Length{of(1, 1024), of(1, 16), of(1, 32), fraction.Millimetres(1, 1)}).Draw(t, "mark")
		tolerance := of(rapid.Int64Range(1, 8).Draw(t, "tolerance"), 32).Add(mark.Mul(2))
		start := cutout.Point{X: drawLength(t, -5, 50, "x"), Y: drawLength(t, -5, 50, "y")}
		line, err := cutout.Arc(start, chord, rise, tolerance, mark)
		var over *fraction.OverflowError
		if errors.As(err, &over) {
			t.Skip(err)
		}
		if err != nil {
			t.Fatal(err)
		}
		r := new(big.Rat).Mul(chord.Rat(), chord.Rat())
		r.Quo(r, new(big.Rat).Mul(rise.Rat(), big.NewRat(8, 1)))
		r.Add(r, rise.Div(2).Rat())
		cx := start.X.Add(chord.Div(2)).Rat()
		cy := new(big.Rat).Sub(start.Y.Add(rise).Rat(), r)
		least, greatest := r, new(big.Rat).Add(r, tolerance.Rat())
		square := func(x *big.Rat) *big.Rat { return new(big.Rat).Mul(x, x) }
		if line[0] != start || line[len(line)-1] != (cutout.Point{X: start.X.Add(chord), Y: start.Y}) {
			t.Fatalf("ends %v and %v", line[0], line[len(line)-1])
		}
		for i, p := range line {
			dx, dy := new(big.Rat).Sub(p.X.Rat(), cx), new(big.Rat).Sub(p.Y.Rat(), cy)
			if new(big.Rat).Add(square(dx), square(dy)).Cmp(square(greatest)) > 0 {
				t.Fatalf("corner %v beyond the tolerance", p)
			}
			if mark.Sign() > 0 && i > 0 && i < len(line)-1 && p.Y != start.Y && !p.Y.Mod(mark).IsZero() {
				t.Fatalf("corner %v off the mark", p)
			}
			if i == 0 || least.Sign() <= 0 {
				continue
			}
			// Along the edge the squared distance is a parabola; its least value lies
			// at an end, checked with the corners, or where it is flat.
			ex, ey := new(big.Rat).Sub(p.X.Rat(), line[i-1].X.Rat()), new(big.Rat).Sub(p.Y.Rat(), line[i-1].Y.Rat())
			length := new(big.Rat).Add(square(ex), square(ey))
			back := new(big.Rat).Add(new(big.Rat).Mul(dx, ex), new(big.Rat).Mul(dy, ey))
			if new(big.Rat).Add(square(dx), square(dy)).Cmp(square(least)) < 0 {
				t.Fatalf("corner %v nearer to the centre than allowed", p)
			}
			if back.Sign() <= 0 || back.Cmp(length) >= 0 {
				continue
			}
			cross := new(big.Rat).Sub(new(big.Rat).Mul(dx, ey), new(big.Rat).Mul(dy, ex))
			if square(cross).Cmp(length.Mul(length, square(least))) < 0 {
				t.Fatalf("edge %v %v nearer to the centre than allowed", line[i-1], p)
			}
		}
	})
}

// A half circle over 36 in: from the top the tangents at tan φ/2 = 0 and 1/n meet √(1+1/n²) radii from the centre, 2.12 in
// beyond the circle for n = 2, 0.97 for 3 and 0.55 for 4. So three steps on either side keep to 1 1/4 in: six corners and
// the ends.
func TestArcTakesTheFewestSteps(t *testing.T) {
	line, err := cutout.Arc(at(0, 0), in(36), in(18), of(5, 4), of(1, 16))
	if err != nil || len(line) != 6+2 {
		t.Errorf("%d points, %v, want 8: %v", len(line), err, line)
	}
}

func TestArcFaults(t *testing.T) {
	if _, err := cutout.Arc(at(0, 0), in(10), in(6), of(1, 8), of(1, 16)); !errors.Is(err, cutout.ErrNoArc) {
		t.Errorf("beyond a half circle: %v", err)
	}
	for _, bad := range [][2]fraction.Length{{zero, zero}, {of(1, 16), of(1, 16)}, {of(1, 8), of(-1, 16)}, {of(1, 1<<40), of(1, 1<<42)}, {of(1, 8), zero}} {
		if _, err := cutout.Arc(at(0, 0), in(40), in(6), bad[0], bad[1]); !errors.Is(err, cutout.ErrTolerance) {
			t.Errorf("tolerance %v, mark %v: %v", bad[0], bad[1], err)
		}
	}
}

// TestArcHeadsARectangle: rectangle and segment, 36*30 + r²·asin(18/30) - 18*24 with r = 30, is
// 1227.15.
func TestArcHeadsARectangle(t *testing.T) {
	s := mustShape(t, archedOpening(t))
	lo, hi := s.Bounds()
	if lo != at(10, 10) || hi.X != in(46) || hi.Y != in(46) || s.Outline()[1] != at(46, 10) {
		t.Errorf("bounds %v, %v", lo, hi)
	}
	if a := must(s.Area()).Float64(); a < 1227.15 || a > 1227.15+38.7/8 {
		t.Errorf("area %v", a)
	}
}

// archedOpening is 36 wide and 30 high below a head that rises by 6.
func archedOpening(t *testing.T) []cutout.Point {
	t.Helper()
	head, err := cutout.Arc(at(10, 40), in(36), in(6), of(1, 8), of(1, 16))
	if err != nil {
		t.Fatal(err)
	}
	slices.Reverse(head)
	return append([]cutout.Point{at(10, 10), at(46, 10)}, head...)
}

// The height on a circle is at most snap below the true one, and less than a unit above that: the circle's
// equation, right triangles of whole sides, and the arch of the odd-arch example worked by hand:
// 13 1/8² - 12 1/8² = 25 1/4, whose root is 5.025, more than 1/64 over a sixteenth.
func TestHeightOnCircle(t *testing.T) {
	for _, test := range []struct {
		centre            cutout.Point
		radius, x, height fraction.Length
	}{
		{at(0, 0), in(5), in(3), in(4)},
		{at(2, -1), in(13), in(-3), in(11)},
		{at(0, 0), in(5), in(5), zero},
		{cutout.Point{Y: of(1, 32)}, in(5), in(3), of(65, 16)}, // 4 1/32 is 1/32 over 4
		{cutout.Point{Y: of(1, 64)}, in(5), in(3), in(4)},
		{cutout.Point{X: of(-15, 8), Y: of(13, 2)}, of(105, 8), of(41, 4), of(185, 16)},
	} {
		if got, err := cutout.HeightOnCircle(test.centre, test.radius, test.x, of(1, 16), of(1, 64)); err != nil || got != test.height {
			t.Errorf("round %v, radius %v, at %v: %v, %v, want %v", test.centre, test.radius, test.x, got, err, test.height)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		radius, y0 := drawLength(t, 1, 50, "radius"), drawLength(t, -5, 50, "y")
		x := radius.Scale(fraction.NewRatio(rapid.Int64Range(-64, 64).Draw(t, "64ths of the radius"), 64))
		unit := rapid.SampledFrom([]fraction.Length{of(1, 16), of(1, 32), fraction.Millimetres(1, 1), in(3)}).Draw(t, "unit")
		snap := unit.Scale(fraction.NewRatio(rapid.Int64Range(0, 4).Draw(t, "quarters of the unit"), 4))
		y, err := cutout.HeightOnCircle(cutout.Point{Y: y0}, radius, x, unit, snap)
		if err != nil {
			t.Fatal(err)
		}
		over := func(y fraction.Length) int { // beside the circle: 1 above it, -1 below
			up := new(big.Rat).Sub(y.Rat(), y0.Rat())
			square := new(big.Rat).Mul(x.Rat(), x.Rat())
			square.Add(square, new(big.Rat).Mul(up, up))
			if up.Sign() < 0 {
				return -1
			}
			return square.Cmp(new(big.Rat).Mul(radius.Rat(), radius.Rat()))
		}
		if _, rest := y.DivMod(unit); !rest.IsZero() || over(y.Sub(unit).Add(snap)) >= 0 || over(y.Add(snap)) < 0 {
			t.Fatalf("at %v of radius %v over %v: %v", x, radius, y0, y)
		}
	})
	if _, err := cutout.HeightOnCircle(at(0, 0), in(5), in(6), of(1, 16), zero); !errors.Is(err, cutout.ErrNoArc) {
		t.Errorf("beyond the circle: %v", err)
	}
	if _, err := cutout.HeightOnCircle(at(0, 0), in(5), in(3), zero, zero); err == nil {
		t.Error("without a unit")
	}
}
