package main

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// The two examples of odd shapes, held against figures worked out by hand. What is worked out
// stands beside each figure; lengths are inches, and corners are those of the run, from its left
// end and up from the datum. Every corner that no tape gave is rounded to 1/16 into the space:
// bottoms up, tops down.

// oddPlan plans one of the two examples.
func oddPlan(t *testing.T, name string) plan.Plan {
	t.Helper()
	return planOf(t, examples(t)[name])
}

// forOdd runs a test on every piece of both examples.
func forOdd(t *testing.T, do func(t *testing.T, p plan.Plan, piece plan.Piece)) {
	for _, name := range []string{"odd-window", "odd-arch"} {
		p := oddPlan(t, name)
		for _, piece := range p.Pieces {
			t.Run(name+" piece "+piece.Label, func(t *testing.T) { do(t, p, piece) })
		}
	}
}

// spots reads corners such as "38, 1/4; 58, 1/4".
func spots(s string) []plan.Point {
	var all []plan.Point
	for one := range strings.SplitSeq(s, ";") {
		x, y, _ := strings.Cut(one, ",")
		all = append(all, plan.Point{X: fraction.MustParse(strings.TrimSpace(x)), Y: fraction.MustParse(strings.TrimSpace(y))})
	}
	return all
}

// onRun moves a ring of a piece to its place on the run.
func onRun(piece plan.Piece, ring []plan.Point) []plan.Point {
	var moved []plan.Point
	for _, c := range ring {
		moved = append(moved, plan.Point{X: c.X.Add(piece.At.X), Y: c.Y.Add(piece.At.Y)})
	}
	return moved
}

// area is what a ring encloses, by the corners' formula.
func area(ring []plan.Point) (twice float64) {
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		twice += p.X.Float64()*q.Y.Float64() - q.X.Float64()*p.Y.Float64()
	}
	return math.Abs(twice) / 2
}

// covered is the area of a piece less its holes.
func covered(piece plan.Piece) float64 {
	sum := area(piece.Outline)
	for _, hole := range piece.Holes {
		sum -= area(hole.Outline)
	}
	return sum
}

func sameRing(t *testing.T, what string, want, got []plan.Point) {
	t.Helper()
	if diff := cmp.Diff(want, got, cmp.Comparer(func(a, b fraction.Length) bool { return a == b })); diff != "" {
		t.Errorf("%s (-want +got)\n%s", what, diff)
	}
}

// The window is taped from three crosses on the datum, at 0, 55 and 27. Two distances a and b from
// the first two cross at x = 55/2 + (a² - b²)/110 and y = √(a² - x²). The corners 0 and 1 are whole
// triples: 10-24-26, 45-24-51, and from the third cross 18-24-30. The others come to
//
//	2: x 45.0089, y 25.2851   3: x 42.9937, y 25.2792
//	4: x 43.0095, y 61.9761   and 5 to 7 their mirror images, 55 - x
func TestOddWindowTapedCorners(t *testing.T) {
	crosses := []float64{0, 55, 27}
	rows := []struct {
		taped []float64 // as the job file has them
		at    string
		exact bool
	}{
		{[]float64{26, 51, 29.4375}, "10, 24", true},
		{[]float64{51, 26, 30}, "45, 24", true},
		{[]float64{51.625, 27.1875, 31}, "45, 25 5/16", false},
		{[]float64{49.875, 27.9375, 29.875}, "43, 25 1/4", false},
		{[]float64{75.4375, 63.125, 64}, "43, 62", false},
		{[]float64{63.125, 75.4375, 63.8125}, "12, 62", false},
		{[]float64{27.9375, 49.875, 29.375}, "12, 25 1/4", false},
		{[]float64{27.1875, 51.625, 30.4375}, "10, 25 5/16", false},
	}
	p := oddPlan(t, "odd-window")
	if len(p.Taped) != len(rows) {
		t.Fatalf("%d taped corners in the plan, want %d", len(p.Taped), len(rows))
	}
	const fine = 1.0 / 16384 // closing errors are given to 1/1024 of the mark
	for i, row := range rows {
		got := p.Taped[i]
		if want := spots(row.at)[0]; got.At != want || got.Exact != row.exact || got.Within.IsZero() != row.exact {
			t.Errorf("corner %d: at %v, exact %v, want %v, %v", i, got.At, got.Exact, want, row.exact)
		}
		off := 0.0
		for k, d := range row.taped {
			off = max(off, math.Abs(math.Hypot(got.At.X.Float64()-crosses[k], got.At.Y.Float64())-d))
		}
		if math.Abs(got.Closing.Float64()-off) > fine || off > 1.0/8 {
			t.Errorf("corner %d: closes to %v, by hand to %v", i, got.Closing.Float64(), off)
		}
		if p.Runs[0].Openings[0].Outline[i] != got.At {
			t.Errorf("corner %d of the window is not where it was taped", i)
		}
	}
	for _, w := range p.Warnings {
		if strings.Contains(w.Path.String(), "Points") {
			t.Errorf("a good set of distances is questioned: %v", w)
		}
	}
}

// A third distance read 1/8 in long is borne, one read 1/4 in long is questioned at its place: the
// first two still meet exactly, so that all is off by the third.
func TestMisreadDistanceIsQuestioned(t *testing.T) {
	good, err := os.ReadFile(examples(t)["odd-window"])
	if err != nil {
		t.Fatal(err)
	}
	for read, questioned := range map[string]bool{"30": false, "30 1/8": false, "30 1/4": true} {
		path := filepath.Join(t.TempDir(), "job.json")
		job := strings.Replace(string(good), `"51", "26", "30"`, `"51", "26", "`+read+`"`, 1)
		if err := os.WriteFile(path, []byte(job), 0o600); err != nil {
			t.Fatal(err)
		}
		found := false
		for _, w := range planOf(t, path).Warnings {
			found = found || w.Path.String() == "Runs[0].Openings[0].Points.Corners[1].Distances" && w.Kind == plan.PointsApart
		}
		if found != questioned {
			t.Errorf("third distance %s: questioned %v, want %v", read, found, questioned)
		}
	}
}

func TestOddWindowPieces(t *testing.T) {
	p := oddPlan(t, "odd-window")
	if len(p.Pieces) != 2 {
		t.Fatalf("%d pieces, want 2", len(p.Pieces))
	}
	// Places within 1/64 of a mark go to it, others into the space.
	// Piece 1, right of the seam gap from 37 15/16 to 38 1/16. The floor rises 1/464 in an inch up to
	// 58: .0820 at 38 1/16, with the gap of 1/8 .2070, up to 1/4; 1/4 at 58. The end leans from 75 15/16
	// at its foot to 75 3/8 at 50, and meets the floor at 75.9359 and .3123: 75 15/16, 5/16. The step's
	// side stands 1/16 right of 58; window and sill are 1/16 larger: jamb 43 1/16, horn 45 1/16, its
	// underside 23 15/16. The horn's top rises 1/16 in 2 from the jamb; with the gap upward and across
	// it is at 25.3164 beside the jamb, 25 5/16, and at 25 3/8 from 44 15/16 on.
	right := spots("38 1/16, 1/4; 58, 1/4; 75 15/16, 5/16; 75 3/8, 50; 58 1/16, 50; 58 1/16, 36; 43 1/16, 36; 43 1/16, 25 5/16; 44 15/16, 25 3/8; 45 1/16, 25 3/8; 45 1/16, 23 15/16; 38 1/16, 23 15/16")
	sameRing(t, "piece 1", right, onRun(p.Pieces[0], p.Pieces[0].Marks.Face))
	// Piece 2. The floor with its gap: .1251 at 1/16, 1/8; .2068 at 37 15/16, up to 1/4. The other horn
	// is like the first. The socket's cutout is 1/8 larger all round.
	left := spots("1/16, 1/8; 37 15/16, 1/4; 37 15/16, 23 15/16; 9 15/16, 23 15/16; 9 15/16, 25 3/8; 10 1/16, 25 3/8; 11 15/16, 25 5/16; 11 15/16, 36; 1/16, 36")
	sameRing(t, "piece 2", left, onRun(p.Pieces[1], p.Pieces[1].Marks.Face))
	socket := spots("19 7/8, 19 3/8; 19 7/8, 23 3/8; 22 3/8, 23 3/8; 22 3/8, 19 3/8")
	if holes := p.Pieces[1].Marks.Holes; len(holes) != 1 || holes[0].Opening != "socket" {
		t.Fatalf("holes of piece 2: %+v", holes)
	}
	sameRing(t, "socket", socket, onRun(p.Pieces[1], p.Pieces[1].Marks.Holes[0].Face))

	// Areas in upright parts over the lowest corner, less the wedge under the floor.
	byHand := []float64{
		5*23.6875 + 2*23.6875 + 1.875*10.65625 + .125*10.625 + 13*35.75 + 17.3125*49.75 + .5625*(49.75+.0625)/2 - 17.9375*.0625/2,
		11.875*35.875 - .125*1.4375 - 1.875*1.40625 + 26*23.8125 - 37.875*.125/2 - 2.5*4,
	}
	for i, want := range byHand {
		if got := covered(p.Pieces[i]); math.Abs(got-want) > 1e-9 {
			t.Errorf("piece %d has %v in², by hand %v", i+1, got, want)
		}
	}
}

func TestOddArchPieces(t *testing.T) {
	p := oddPlan(t, "odd-arch")
	if len(p.Pieces) != 2 {
		t.Fatalf("%d pieces, want 2", len(p.Pieces))
	}
	// The counter falls 1/4 in 40 and 3/8 in the next 48; with the gap of 1/8 its line is .1246 at
	// 1/16, up to 1/8; -1/8 at 40; -.1543 at 43 3/4 and -.1553 at 43 7/8, up to -1/8; -.4995 at 87
	// 15/16, within 1/64 of -1/2. Of the hatch, 1/8 larger all round, the sill is at 1 1/8 and the crown at
	// 19 1/8, level to 43 5/8; from there its straight edge falls .2338 in an inch, as a tangent of the
	// circle of 13 does that meets the crown's 1 1/2 from the middle: 19.0958 at 43 3/4, up to 19 1/8;
	// 19.0665 at 43 7/8, within 1/64 of 19 1/16.
	outer := []string{"1/16, 1/8; 40, -1/8; 43 3/4, -1/8; 43 3/4, 24; 1/16, 24", "43 7/8, -1/8; 87 15/16, -1/2; 87 15/16, 24; 43 7/8, 24"}
	removed := 0.0
	for i, piece := range p.Pieces {
		whole := spots(outer[i])
		removed += area(whole) - covered(piece)
		for _, want := range append(whole, spots([]string{
			"43 3/4, 1 1/8; 29 7/8, 1 1/8; 43 3/4, 19 1/8", "43 7/8, 1 1/8; 54 1/8, 1 1/8; 43 7/8, 19 1/16"}[i])...) {
			found := false
			for _, got := range onRun(piece, piece.Marks.Face) {
				found = found || got == want
			}
			if !found {
				t.Errorf("piece %d has no corner at %v", i+1, want)
			}
		}
	}
	// Taken out: niche, hatch and socket (2 1/2 by 4); the seam gap takes 1/8 by 18 of the hatch.
	// The true openings, 1/8 larger: a rectangle up to the springing at 11 and over it the segment
	// of a circle, niche r = 6 1/8 round (14, 11), hatch r = 13 1/8 round (42, 6). The polylines
	// lie up to 1/8 outside the true arc and grow squarely, by √2/8 at most where they slant;
	// rounding adds 1/16.
	opening := func(width, below, r, up float64) float64 {
		half := math.Sqrt(r*r - up*up)
		return width*below + r*r*math.Atan2(half, up) - up*half
	}
	slack := 1.0/8 + (math.Sqrt2-1)/8 + 1.0/16
	least := opening(12.25, 11-5.875, 6.125, 0) + opening(24.25, 11-1.125, 13.125, 5) + 10
	most := opening(12.25+2*slack, 11-5.875, 6.125+slack, 0) + opening(24.25+2*slack, 11-1.125, 13.125+slack, 5) + 10
	if got := removed + 18.0/8; got < least || got > most {
		t.Errorf("openings take %v in², by hand %v to %v", got, least, most)
	}
}

// A taped head lies on marks and outside its circle by no more than 1/8 (two marks), and so does
// every edge of it. Chord 24 and rise 8 give r = 24²/64 + 4 = 13, a 5-12-13 circle round (42, 6);
// chord 12 and rise 6 the half circle round (14, 11). The pieces keep the gap of 1/8 from the
// circle as well.
func TestArchedHeadsStayOutsideTheirArcs(t *testing.T) {
	p := oddPlan(t, "odd-arch")
	circles := map[string][3]float64{"niche": {14, 11, 6}, "hatch": {42, 6, 13}}
	const springing, gap, tolerance, mark = 11, 1.0 / 8, 1.0 / 8, 1.0 / 16
	keeps := func(what string, line []plan.Point, circle [3]float64, least, most float64) (edges int) {
		for i, c := range line[:len(line)-1] {
			q := line[i+1]
			if c.Y.Float64() < springing || q.Y.Float64() < springing {
				continue
			}
			edges++
			far := max(math.Hypot(c.X.Float64()-circle[0], c.Y.Float64()-circle[1]), math.Hypot(q.X.Float64()-circle[0], q.Y.Float64()-circle[1]))
			if near := fromSegment(circle[0], circle[1], c, q); near < circle[2]+least-1e-9 || far > circle[2]+most+1e-9 {
				t.Errorf("%s: edge %v %v is %v from the centre, its farther end %v; want %v to %v", what, c, q, near, far, circle[2]+least, circle[2]+most)
			}
		}
		return edges
	}
	for _, o := range p.Runs[0].Openings {
		circle, arched := circles[o.Name]
		if arched && keeps(o.Name, closed(o.Outline), circle, 0, tolerance) < 8 {
			t.Errorf("%s has no curve", o.Name)
		}
	}
	most := tolerance + math.Sqrt2*gap
	niche := onRun(p.Pieces[0], p.Pieces[0].Marks.Holes[0].Face)
	if keeps("niche in piece 1", closed(niche), circles["niche"], gap, most) < 8 {
		t.Error("the niche in piece 1 has no curve")
	}
	for i, piece := range p.Pieces {
		var head []plan.Point
		for _, c := range onRun(piece, piece.Marks.Face) {
			if y := c.Y.Float64(); y > springing && y < 24 {
				head = append(head, c)
			}
		}
		if len(head) < 6 {
			t.Fatalf("piece %d has %d corners on the hatch's head", i+1, len(head))
		}
		keeps("hatch in piece "+piece.Label, head, circles["hatch"], gap, most+mark)
	}
}

// closed returns a ring as a line that ends where it starts.
func closed(ring []plan.Point) []plan.Point { return append(slices.Clone(ring), ring[0]) }

// fromSegment is the distance of (x, y) from the edge pq.
func fromSegment(x, y float64, p, q plan.Point) float64 {
	px, py := p.X.Float64(), p.Y.Float64()
	dx, dy := q.X.Float64()-px, q.Y.Float64()-py
	along := 0.0
	if square := dx*dx + dy*dy; square > 0 {
		along = min(1, max(0, ((x-px)*dx+(y-py)*dy)/square))
	}
	return math.Hypot(x-px-along*dx, y-py-along*dy)
}
