package cutout_test

import (
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

var (
	exactly = cmp.Options{cmpopts.EquateComparable(fraction.Length{}), cmpopts.EquateEmpty()}
	zero    fraction.Length
)

func in(n int64) fraction.Length    { return fraction.Inches(n) }
func of(n, d int64) fraction.Length { return fraction.Of(n, d) }
func at(x, y int64) cutout.Point    { return cutout.Point{X: in(x), Y: in(y)} }

// ring makes an outline of whole inches from x, y, x, y, …
func ring(xy ...int64) []cutout.Point {
	var points []cutout.Point
	for i := 0; i+1 < len(xy); i += 2 {
		points = append(points, at(xy[i], xy[i+1]))
	}
	return points
}

func rect(left, bottom, width, height int64) []cutout.Point {
	return cutout.Rectangle(in(left), in(bottom), in(width), in(height))
}

func mustShape(t testing.TB, outline []cutout.Point, holes ...[]cutout.Point) cutout.Shape {
	t.Helper()
	s, err := cutout.NewShape(outline, holes...)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func shape(outline []cutout.Point, holes ...[]cutout.Point) cutout.Shape {
	return cutout.Raw(outline, holes...)
}

// must returns a result and panics with the error where there is one, as arithmetic does.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// snap, band, minus, within and clipLine return what is cut off a shape with its corners on marks,
// those of the shape and of the cut taken as taped.
func snap(pieces []cutout.Shape, mark fraction.Length, taped ...cutout.Point) []cutout.Shape {
	return must(cutout.Snap(pieces, mark, zero, func(p cutout.Point) bool { return slices.Contains(taped, p) }))
}

func band(s cutout.Shape, left, right, mark fraction.Length) []cutout.Shape {
	return snap(must(s.Band(left, right)), mark, pointsOf(s)...)
}

func minus(s cutout.Shape, clip []cutout.Point, mark fraction.Length) []cutout.Shape {
	return snap(must(s.Minus(clip)), mark, append(pointsOf(s), clip...)...)
}

func within(s cutout.Shape, clip []cutout.Point, mark fraction.Length) []cutout.Shape {
	return snap(must(s.Within(clip)), mark, append(pointsOf(s), clip...)...)
}

func clipLine(s cutout.Shape, p, q cutout.Point, mark fraction.Length) []cutout.Shape {
	return snap(must(s.ClipLine(p, q)), mark, append(pointsOf(s), p, q)...)
}

// mirror returns the shape as it is seen from behind: every x becomes axis - x.
func mirror(s cutout.Shape, axis fraction.Length) cutout.Shape {
	rings := ringsOf(s)
	for i, ring := range rings {
		for j, p := range ring {
			rings[i][j].X = axis.Sub(p.X)
		}
		slices.Reverse(ring)
	}
	return cutout.Raw(rings[0], rings[1:]...)
}

func TestNewShape(t *testing.T) {
	square := rect(0, 0, 10, 10)
	tests := []struct {
		name    string
		outline []cutout.Point
		holes   [][]cutout.Point
		want    cutout.Shape
		err     error
		text    string
	}{
		{name: "square", outline: square, want: shape(square)},
		{name: "clockwise from the top", outline: ring(10, 10, 10, 0, 0, 0, 0, 10), want: shape(square)},
		{name: "corners within a line and twice", outline: ring(0, 0, 5, 0, 10, 0, 10, 0, 10, 10, 0, 10, 0, 0), want: shape(square)},
		{name: "hole made clockwise", outline: square, holes: [][]cutout.Point{rect(2, 3, 4, 5)},
			want: shape(square, ring(2, 3, 2, 8, 6, 8, 6, 3))},
		{name: "holes sorted", outline: square, holes: [][]cutout.Point{rect(7, 1, 1, 1), rect(2, 3, 1, 1)},
			want: shape(square, ring(2, 3, 2, 4, 3, 4, 3, 3), ring(7, 1, 7, 2, 8, 2, 8, 1))},
		{name: "nothing", err: cutout.ErrTooFew, text: "Outline[0]: fewer than three corners that are not in one line"},
		{name: "no corners", outline: []cutout.Point{}, err: cutout.ErrTooFew},
		{name: "one corner", outline: ring(1, 1), err: cutout.ErrTooFew},
		{name: "hole of nothing", outline: square, holes: [][]cutout.Point{{}}, err: cutout.ErrTooFew},
		{name: "a line", outline: ring(0, 0, 5, 5, 9, 9), err: cutout.ErrTooFew},
		{name: "there and back", outline: ring(0, 0, 5, 5, 0, 0), err: cutout.ErrTooFew},
		{name: "bow tie", outline: ring(0, 0, 10, 10, 10, 0, 0, 10), err: cutout.ErrCrossing},
		{name: "spike", outline: ring(0, 0, 10, 0, 10, 10, 10, 15, 10, 10, 0, 10), err: cutout.ErrCrossing},
		{name: "corner on an edge", outline: ring(0, 0, 10, 0, 10, 10, 5, 0, 0, 10), err: cutout.ErrCrossing, text: "Outline[3]: (5, 0): edges cross or touch"},
		{name: "hole outside", outline: square, holes: [][]cutout.Point{rect(20, 0, 1, 1)}, err: cutout.ErrOutside},
		{name: "hole touching", outline: square, holes: [][]cutout.Point{rect(0, 1, 1, 1)}, err: cutout.ErrOutside, text: "Holes[0][0]: (0, 1): hole is not wholly inside the outline"},
		{name: "hole round the outline", outline: square, holes: [][]cutout.Point{rect(-1, -1, 20, 20)}, err: cutout.ErrOutside},
		{name: "holes touching", outline: square, holes: [][]cutout.Point{rect(1, 1, 1, 1), rect(2, 1, 1, 1)}, err: cutout.ErrOverlap},
		{name: "hole in a hole", outline: square, holes: [][]cutout.Point{rect(1, 1, 5, 5), rect(2, 2, 1, 1)}, err: cutout.ErrOverlap},
		{name: "triangle round a hole", outline: square, holes: [][]cutout.Point{ring(1, 1, 9, 1, 1, 9), rect(2, 2, 1, 1)}, err: cutout.ErrOverlap},
		{name: "hole round a hole", outline: square, holes: [][]cutout.Point{rect(2, 2, 1, 1), rect(1, 1, 5, 5)}, err: cutout.ErrOverlap},
		{name: "thin hole", outline: square, holes: [][]cutout.Point{ring(1, 1, 2, 2)}, err: cutout.ErrTooFew},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got, err := cutout.NewShape(test.outline, test.holes...)
			if !errors.Is(err, test.err) {
				t.Fatalf("error = %v, want %v", err, test.err)
			}
			if test.text != "" && err.Error() != test.text {
				t.Errorf("error = %q, want %q", err, test.text)
			}
			if diff := cmp.Diff(test.want, got, exactly); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

func TestNewShapeReportsEveryRing(t *testing.T) {
	_, err := cutout.NewShape(rect(0, 0, 10, 10), rect(20, 0, 1, 1), ring(1, 1, 2, 2), rect(3, 3, 2, 2), rect(4, 4, 3, 3))
	if !errors.Is(err, cutout.ErrOutside) || !errors.Is(err, cutout.ErrTooFew) || !errors.Is(err, cutout.ErrOverlap) {
		t.Errorf("error = %v, want the faults of three holes", err)
	}
}

// A convex outline grows to one polygon, whichever way round it goes and wherever a corner lies within an edge. One with a
// notch does not, as its notch would be filled.
func TestGrow(t *testing.T) {
	grown := []cutout.Point{at(-1, -1), at(11, -1), at(11, 11), at(-1, 11)}
	for name, outline := range map[string][]cutout.Point{
		"counterclockwise": rect(0, 0, 10, 10), "clockwise": ring(0, 10, 10, 10, 10, 0, 0, 0),
		"a corner within an edge": ring(0, 0, 5, 0, 10, 0, 10, 10, 0, 10), "and clockwise": ring(0, 10, 10, 10, 10, 0, 5, 0, 0, 0),
	} {
		if got, err := cutout.Grow(outline, in(1)); err != nil || len(got) != 1 || !slices.Equal(got[0], grown) {
			t.Errorf("%s: %v, %v, want %v", name, got, err, grown)
		}
	}
	free := []cutout.Shape{mustShape(t, rect(-1, -1, 12, 12))}
	for _, part := range must(cutout.Grow(ring(0, 0, 10, 0, 10, 4, 4, 4, 4, 10, 0, 10), in(1))) {
		var rest []cutout.Shape
		for _, s := range free {
			rest = append(rest, must(s.Minus(part))...)
		}
		free = rest
	}
	if want := rect(5, 5, 6, 6); len(free) != 1 || !slices.Equal(free[0].Outline(), want) {
		t.Errorf("a notch of 6 by 6 in leaves %v, want %v", free, want)
	}
}

// Whether rings cross is answered even where the numbers hardly fit; an area
// beyond the range is an overflow.
func TestHugeShape(t *testing.T) {
	far := in(1 << 62)
	s := mustShape(t, []cutout.Point{{}, {X: far}, {X: far.Sub(in(1)), Y: far}, {X: of(1, 3), Y: far.Sub(in(5))}},
		rect(1<<60, 1<<60, 1, 1))
	var over *fraction.OverflowError
	if _, err := s.Area(); !errors.As(err, &over) {
		t.Errorf("Area: error = %v, want an overflow", err)
	}
	// A side that rises by 1 in 3 is 1/(3·2^62) high there, and 3·2^62 is beyond 2^63.
	if got, err := mustShape(t, ring(0, 0, 3, 0, 3, 1)).Band(of(1, 1<<62), in(2)); !errors.As(err, &over) {
		t.Errorf("Band: %v, error = %v, want an overflow", got, err)
	}
}

func TestZeroShapeIsEmpty(t *testing.T) {
	var s cutout.Shape
	lo, hi := s.Bounds()
	if !s.IsEmpty() || !must(s.Area()).IsZero() || lo != hi || s.Contains(lo) {
		t.Error("the zero Shape holds something")
	}
	if got := must(s.Move(in(1), in(1))); !got.IsEmpty() {
		t.Errorf("Move = %v", got)
	}
	if n := len(band(s, in(-1), in(1), zero)) + len(minus(s, rect(0, 0, 1, 1), zero)) + len(within(s, rect(0, 0, 1, 1), zero)) +
		len(clipLine(s, at(0, 0), at(1, 1), zero)) + len(clipLine(s, at(0, 0), at(0, 1), zero)) +
		len(must(s.Cells())) + len(s.Uprights()); n != 0 {
		t.Errorf("%d parts of nothing", n)
	}
}

// window is a wall piece 20 by 10 with a sloped top, a hole and a notch from below.
func window(t testing.TB) cutout.Shape {
	return mustShape(t, ring(0, 0, 12, 0, 12, 3, 15, 3, 15, 0, 20, 0, 20, 14, 0, 10), rect(3, 4, 4, 3))
}

func TestBand(t *testing.T) {
	s := window(t)
	tests := []struct {
		name              string
		left, right, mark fraction.Length
		want              []cutout.Shape
	}{
		{name: "all", left: in(-1), right: in(21), want: []cutout.Shape{s}},
		{name: "outside", left: in(20), right: in(21)},
		{name: "nothing", left: in(5), right: in(5)},
		{name: "left of the hole, exact", left: zero, right: in(3),
			want: []cutout.Shape{shape([]cutout.Point{at(0, 0), at(3, 0), {X: in(3), Y: of(53, 5)}, at(0, 10)})}},
		{name: "left of the hole, to sixteenths: the top comes down", left: zero, right: in(3), mark: of(1, 16),
			want: []cutout.Shape{shape([]cutout.Point{at(0, 0), at(3, 0), {X: in(3), Y: of(169, 16)}, at(0, 10)})}},
		{name: "through the hole: above and below", left: in(4), right: in(6), mark: of(1, 16),
			want: []cutout.Shape{
				shape(rect(4, 0, 2, 4)),
				shape([]cutout.Point{at(4, 7), at(6, 7), {X: in(6), Y: of(179, 16)}, {X: in(4), Y: of(172, 16)}})}},
		{name: "half the hole: a notch", left: in(5), right: in(8), mark: in(1),
			want: []cutout.Shape{shape(ring(5, 0, 8, 0, 8, 11, 5, 11, 5, 7, 7, 7, 7, 4, 5, 4))}},
		{name: "over the notch", left: in(12), right: in(15), mark: in(1),
			want: []cutout.Shape{shape(ring(12, 3, 15, 3, 15, 13, 12, 12))}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got := band(s, test.left, test.right, test.mark)
			if diff := cmp.Diff(test.want, got, exactly); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// A wedge over a level line at 1/64 is 1/48 high where it is cut: no sixteenth
// lies between, so that it has no height there.
func TestBandEndsInAPointWhereNoMarkFits(t *testing.T) {
	low := of(1, 64)
	wedge := mustShape(t, []cutout.Point{{Y: low}, {X: in(48), Y: low}, {X: in(48), Y: low.Add(in(1))}})
	got := band(wedge, in(1), in(48), of(1, 16))
	want := []cutout.Shape{shape([]cutout.Point{{X: in(1), Y: low}, {X: in(48), Y: low}, {X: in(48), Y: low.Add(in(1))}})}
	if diff := cmp.Diff(want, got, exactly); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestMinus(t *testing.T) {
	s := mustShape(t, rect(0, 0, 10, 10))
	tests := []struct {
		name, reason string
		clip         []cutout.Point
		want         []cutout.Shape
	}{
		{name: "hole", clip: rect(2, 2, 3, 3), want: []cutout.Shape{shape(s.Outline(), ring(2, 2, 2, 5, 5, 5, 5, 2))}},
		{name: "clockwise hole", clip: ring(2, 2, 2, 5, 5, 5, 5, 2), want: []cutout.Shape{shape(s.Outline(), ring(2, 2, 2, 5, 5, 5, 5, 2))}},
		{name: "notch", clip: rect(8, 4, 5, 2), want: []cutout.Shape{shape(ring(0, 0, 10, 0, 10, 4, 8, 4, 8, 6, 10, 6, 10, 10, 0, 10))}},
		{name: "edge on the outline", reason: "an opening whose edge coincides with the outline is a notch", clip: rect(8, 4, 2, 2),
			want: []cutout.Shape{shape(ring(0, 0, 10, 0, 10, 4, 8, 4, 8, 6, 10, 6, 10, 10, 0, 10))}},
		{name: "corner", clip: rect(7, 7, 9, 9), want: []cutout.Shape{shape(ring(0, 0, 10, 0, 10, 7, 7, 7, 7, 10, 0, 10))}},
		{name: "across", clip: rect(4, -1, 2, 12), want: []cutout.Shape{shape(rect(0, 0, 4, 10)), shape(rect(6, 0, 4, 10))}},
		{name: "across level", clip: rect(0, 4, 10, 2), want: []cutout.Shape{shape(rect(0, 0, 10, 4)), shape(rect(0, 6, 10, 4))}},
		{name: "all", clip: rect(-1, -1, 20, 20)},
		{name: "itself", clip: rect(0, 0, 10, 10)},
		{name: "outside", clip: rect(11, 0, 2, 2), want: []cutout.Shape{s}},
		{name: "touching from outside", clip: rect(10, 2, 3, 3), want: []cutout.Shape{s}},
		{name: "touching from outside at a corner", clip: ring(10, 5, 14, 1, 14, 9), want: []cutout.Shape{s}},
		{name: "point on the edge from inside", reason: "reaches the edge: part of the outline, which touches itself there", clip: ring(10, 5, 8, 6, 8, 4),
			want: []cutout.Shape{shape(ring(0, 0, 10, 0, 10, 5, 8, 4, 8, 6, 10, 5, 10, 10, 0, 10))}},
		{name: "two corners touch", reason: "pieces that only touch at a point are apart", clip: ring(5, 0, 10, 5, 5, 10, 0, 5),
			want: []cutout.Shape{shape(ring(0, 0, 5, 0, 0, 5)), shape(ring(0, 5, 5, 10, 0, 10)), shape(ring(5, 0, 10, 0, 10, 5)), shape(ring(10, 5, 10, 10, 5, 10))}},
		{name: "arrow", clip: ring(5, 5, 12, 3, 12, 7),
			want: []cutout.Shape{shape([]cutout.Point{at(0, 0), at(10, 0), {X: in(10), Y: of(25, 7)}, at(5, 5), {X: in(10), Y: of(45, 7)}, at(10, 10), at(0, 10)})}},
		{name: "four arrows to one point", reason: "four pieces touch there; each goes round its own wedge",
			clip: ring(5, 5, 15, 0, 15, 10, 5, 5, 10, 15, 0, 15, 5, 5, -5, 10, -5, 0, 5, 5, 0, -5, 10, -5),
			want: []cutout.Shape{
				shape([]cutout.Point{at(0, 0), {X: of(5, 2)}, at(5, 5), {Y: of(5, 2)}}),
				shape([]cutout.Point{at(5, 5), {X: of(5, 2), Y: in(10)}, at(0, 10), {Y: of(15, 2)}}),
				shape([]cutout.Point{{X: of(15, 2)}, at(10, 0), {X: in(10), Y: of(5, 2)}, at(5, 5)}),
				shape([]cutout.Point{at(5, 5), {X: in(10), Y: of(15, 2)}, at(10, 10), {X: of(15, 2), Y: in(10)}})}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got := minus(s, test.clip, zero)
			if diff := cmp.Diff(test.want, got, exactly); diff != "" {
				t.Errorf("%s (-want +got)\n%s", test.reason, diff)
			}
		})
	}
}

func TestMinusOfNoOutline(t *testing.T) {
	s := mustShape(t, rect(0, 0, 10, 10))
	if _, err := s.Minus(ring(1, 1, 2, 2)); !errors.Is(err, cutout.ErrTooFew) {
		t.Errorf("Minus: %v", err)
	}
	if _, err := s.Within(nil); !errors.Is(err, cutout.ErrTooFew) {
		t.Errorf("Within: %v", err)
	}
}

func TestMinusJoinsHoles(t *testing.T) {
	s := mustShape(t, rect(0, 0, 10, 10), rect(2, 2, 2, 2))
	tests := []struct {
		name string
		clip []cutout.Point
		want []cutout.Shape
	}{
		{"overlapping", rect(3, 3, 3, 3), []cutout.Shape{shape(s.Outline(), ring(2, 2, 2, 4, 3, 4, 3, 6, 6, 6, 6, 3, 4, 3, 4, 2))}},
		{"side by side", rect(4, 2, 3, 2), []cutout.Shape{shape(s.Outline(), ring(2, 2, 2, 4, 7, 4, 7, 2))}},
		{"corner to corner: two holes", rect(4, 4, 2, 2), []cutout.Shape{shape(s.Outline(), ring(2, 2, 2, 4, 4, 4, 4, 2), ring(4, 4, 4, 6, 6, 6, 6, 4))}},
		{"round the hole, out to the edge", rect(0, 1, 5, 4), []cutout.Shape{shape(ring(0, 0, 10, 0, 10, 10, 0, 10, 0, 5, 5, 5, 5, 1, 0, 1))}},
		{"within the hole", rect(2, 2, 1, 1), []cutout.Shape{s}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if diff := cmp.Diff(test.want, minus(s, test.clip, zero), exactly); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

func TestMinusLeavesAnIslandWithItsHole(t *testing.T) {
	frame := ring(2, 2, 18, 2, 18, 18, 2, 18)
	s := mustShape(t, rect(0, 0, 20, 20), rect(9, 9, 2, 2))
	// A ring-shaped cut, made of four bars, frees the middle.
	pieces := []cutout.Shape{s}
	for _, bar := range [][]cutout.Point{rect(2, 2, 16, 1), rect(2, 17, 16, 1), rect(2, 2, 1, 16), rect(17, 2, 1, 16)} {
		var next []cutout.Shape
		for _, p := range pieces {
			next = append(next, minus(p, bar, zero)...)
		}
		pieces = next
	}
	want := []cutout.Shape{
		mustShape(t, rect(0, 0, 20, 20), frame),
		mustShape(t, rect(3, 3, 14, 14), rect(9, 9, 2, 2)),
	}
	if diff := cmp.Diff(want, pieces, exactly); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestClipLine(t *testing.T) {
	s := mustShape(t, rect(0, 0, 10, 96))
	tests := []struct {
		name string
		p, q cutout.Point
		mark fraction.Length
		want []cutout.Shape
	}{
		{name: "right end leaning in by 3/8 over 96", p: at(10, 0), q: cutout.Point{X: of(77, 8), Y: in(96)},
			want: []cutout.Shape{shape([]cutout.Point{at(0, 0), at(10, 0), {X: of(77, 8), Y: in(96)}, at(0, 96)})}},
		{name: "left end leaning, taped beyond the piece; sixteenths", p: at(2, 100), q: at(0, -1), mark: of(1, 16),
			want: []cutout.Shape{shape([]cutout.Point{{X: of(1, 16), Y: zero}, at(10, 0), at(10, 96), {X: of(31, 16), Y: in(96)}})}},
		{name: "upright, keep the left", p: at(4, 0), q: at(4, 1), want: []cutout.Shape{shape(rect(0, 0, 4, 96))}},
		{name: "upright, keep the right", p: at(4, 1), q: at(4, 0), want: []cutout.Shape{shape(rect(4, 0, 6, 96))}},
		{name: "level, keep above", p: at(0, 4), q: at(1, 4), want: []cutout.Shape{shape(rect(0, 4, 10, 92))}},
		{name: "level, keep below", p: at(1, 4), q: at(0, 4), want: []cutout.Shape{shape(rect(0, 0, 10, 4))}},
		{name: "all of it", p: at(0, -4), q: at(1, -4), want: []cutout.Shape{s}},
		{name: "nothing of it", p: at(1, -4), q: at(0, -4)},
		{name: "no line", p: at(1, 1), q: at(1, 1), want: []cutout.Shape{s}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if diff := cmp.Diff(test.want, clipLine(s, test.p, test.q, test.mark), exactly); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// What lies in a hole, in any of several, is not in a shape; its edge is.
func TestContains(t *testing.T) {
	s := shape(rect(0, 0, 10, 10), rect(1, 1, 2, 2), rect(5, 5, 2, 2))
	for p, want := range map[cutout.Point]bool{at(4, 4): true, at(2, 2): false, at(6, 6): false, at(1, 2): true, at(7, 7): true, at(0, 5): true, at(10, 10): true, at(11, 5): false, at(-1, -1): false} {
		if got := s.Contains(p); got != want {
			t.Errorf("%v is in the shape: %v", p, got)
		}
	}
}

func TestUprights(t *testing.T) {
	want := []cutout.Upright{
		{X: in(0), Bottom: in(0), Top: in(10), MaterialRight: true},
		{X: in(3), Bottom: in(4), Top: in(7)},
		{X: in(7), Bottom: in(4), Top: in(7), MaterialRight: true},
		{X: in(12), Bottom: in(0), Top: in(3)},
		{X: in(15), Bottom: in(0), Top: in(3), MaterialRight: true},
		{X: in(20), Bottom: in(0), Top: in(14)},
	}
	if diff := cmp.Diff(want, window(t).Uprights(), exactly); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestCells(t *testing.T) {
	s := mustShape(t, ring(0, 0, 8, 0, 4, 8), rect(3, 1, 2, 2))
	if area := must(s.Area()); area != in(28).Times(in(1)) {
		t.Errorf("area %v, want 28", area)
	}
	got := must(s.Cells())
	want := []cutout.Cell{
		{Left: in(3), Right: in(4), BottomLeft: zero, BottomRight: zero, TopLeft: in(1), TopRight: in(1)},
		{Left: in(3), Right: in(4), BottomLeft: in(3), BottomRight: in(3), TopLeft: in(6), TopRight: in(8)}}
	if len(got) != 6 {
		t.Fatalf("%d cells, want 6: %v", len(got), got)
	}
	if diff := cmp.Diff(want, got[1:3], exactly); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// A shape reads back from its JSON; rings that run the wrong way are turned, and what is no shape
// is refused.
func TestShapeAsJSON(t *testing.T) {
	for _, s := range []cutout.Shape{{}, window(t)} {
		data, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		var back cutout.Shape
		if err := json.Unmarshal(data, &back); err != nil || !back.Equal(s) {
			t.Errorf("%s reads back as %v, %v", data, back, err)
		}
	}
	var s cutout.Shape
	clockwise := `{"outline": [["0", "0"], ["0", "9"], ["9", "9"], ["9", "0"]]}`
	if err := json.Unmarshal([]byte(clockwise), &s); err != nil || !s.Equal(shape(rect(0, 0, 9, 9))) {
		t.Errorf("clockwise: %v, %v", s, err)
	}
	for _, bad := range []string{
		`{"outline": [["0", "0"], ["9", "9"], ["9", "0"], ["0", "9"]]}`,
		`{"outline": []}`, `{"outline": [["0", "0"], ["9", "0"], ["9"]]}`, `{"holes": [[["0", "0"]]]}`, `[]`,
	} {
		before := s
		if err := json.Unmarshal([]byte(bad), &s); err == nil || !s.Equal(before) {
			t.Errorf("%s: %v, %v", bad, s, err)
		}
	}
}

// What is given and what is returned may be changed without changing the shape.
func TestShapeIsImmutable(t *testing.T) {
	outline, hole := rect(0, 0, 10, 10), rect(2, 2, 3, 3)
	s := mustShape(t, outline, hole)
	want := mustShape(t, rect(0, 0, 10, 10), rect(2, 2, 3, 3))
	outline[0], hole[0] = at(5, 5), at(5, 5)
	s.Outline()[0], s.Holes()[0][0] = at(5, 5), at(5, 5)
	s.Holes()[0] = nil
	must(s.Marks()).Outline.Face[0] = at(5, 5)
	must(cutout.Snap([]cutout.Shape{s}, in(3), zero, nil))
	if !s.Equal(want) {
		t.Errorf("%v, want %v", s, want)
	}
	for p := range s.Edges() {
		if p != at(0, 0) {
			t.Errorf("the first edge starts at %v", p)
		}
		break
	}
}

func TestWordsOfEnumerations(t *testing.T) {
	for _, v := range []interface {
		encoding.TextMarshaler
		fmt.Stringer
	}{cutout.EdgeCut, cutout.Corner, cutout.WidenStrip, cutout.Right} {
		text, err := v.MarshalText()
		if err != nil || string(text) != v.String() {
			t.Errorf("%v: %q, %v", v, text, err)
		}
		back := reflect.New(reflect.TypeOf(v))
		if err := back.Interface().(encoding.TextUnmarshaler).UnmarshalText(text); err != nil || back.Elem().Interface() != v {
			t.Errorf("%q reads back as %v, %v", text, back.Elem(), err)
		}
		if err := back.Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte("?")); err == nil {
			t.Errorf("%T reads a question mark", v)
		}
	}
	if _, err := cutout.Side(9).MarshalText(); err == nil {
		t.Error("side 9 has a word")
	}
}

// A hole goes with the part that is round it, whichever that is.
func TestPartsKeepTheirHoles(t *testing.T) {
	square := func(x int64) []cutout.Point { return []cutout.Point{at(x, 4), at(x, 6), at(x+2, 6), at(x+2, 4)} }
	s := mustShape(t, rect(0, 0, 60, 10), square(5), square(50))
	for _, row := range []struct {
		name string
		cut  []cutout.Point
		want []cutout.Shape
	}{
		{"a band without a hole between", rect(20, -1, 10, 12), []cutout.Shape{shape(rect(0, 0, 20, 10), square(5)), shape(rect(30, 0, 30, 10), square(50))}},
		{"the left hole cut away", rect(4, -1, 6, 12), []cutout.Shape{shape(rect(0, 0, 4, 10)), shape(rect(10, 0, 50, 10), square(50))}},
		{"the right hole cut away", rect(49, -1, 6, 12), []cutout.Shape{shape(rect(0, 0, 49, 10), square(5)), shape(rect(55, 0, 5, 10))}},
	} {
		if diff := cmp.Diff(row.want, must(s.Minus(row.cut)), exactly); diff != "" {
			t.Errorf("%s (-want +got)\n%s", row.name, diff)
		}
	}
}

// A corner in the middle of a straight edge is none, wherever the list begins.
func TestStraightCornersAreDropped(t *testing.T) {
	given := ring(5, 0, 10, 0, 10, 10, 0, 10, 0, 0)
	for i := range given {
		turned := append(slices.Clone(given[i:]), given[:i]...)
		if got := mustShape(t, turned).Outline(); len(got) != 4 || slices.Contains(got, at(5, 0)) {
			t.Errorf("from %v: %v", turned[0], got)
		}
	}
}
