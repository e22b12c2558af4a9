package book

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// The order of cuts has each line once, in words that need no drawing.
func TestOrderOfCutsOfTheHornedSill(t *testing.T) {
	p := examplePlans(t)["odd-window"]
	got := (&text{tape: p.TapeMeasure(), full: true}).sawing(p, p.Pieces[0], fromLeft)
	want := []string{
		"edge: plane from 19 15/16 across, 0 up, to 37 7/8 across, 1/16 up (B–C)",
		"edge: saw from 37 7/8 across, 1/16 up, to 37 5/16 across, 49 3/4 up (C–D)",
		"notch: drill 3/8 at 19 13/16 across, 35 15/16 up and at 6 13/16 across, 24 7/8 up and at 6 13/16 across, 23 7/8 up; " +
			"saw down at 20 across, 49 3/4 to 35 3/4 (E–F); right at 23 11/16 up, 0 to 7 across (M–K); " +
			"left at 35 3/4 up, 20 to 5 across (F–G); down at 5 across, 35 3/4 to 25 1/16 (G–H); " +
			"from 5 across, 25 1/16 up, to 7 across, 25 1/8 up (H–J); last down at 7 across, 25 1/8 to 23 11/16 (J–K)",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestSawingOfOddThings(t *testing.T) {
	point := func(x, y int64) plan.Point { return plan.Point{X: fraction.Inches(x), Y: fraction.Inches(y)} }
	var curve plan.SawCut
	for i := range int64(9) {
		curve.Points, curve.Corners = append(curve.Points, point(i, i*i)), append(curve.Corners, int(i))
	}
	got := (&text{full: true}).sawing(plan.Plan{}, plan.Piece{Marks: plan.Marks{
		Corners: cutout.Corners{Face: curve.Points, Back: curve.Points},
		Drill:   []plan.Drill{{At: point(1, 2), Diameter: fraction.Of(3, 8)}},
		Order: []plan.Cutting{
			{Waste: plan.Waste{Opening: "box"}, Drill: []int{0, 1, -1}, Tight: []plan.Point{point(5, 6)}, Saw: []plan.SawCut{curve}},
			{Waste: plan.Waste{Kind: cutout.NotchCut, Number: 2}, Saw: []plan.SawCut{{}, {Points: []plan.Point{point(3, 4), point(3, 1)}}}},
		},
	}}, fromLeft)
	want := []string{
		"box: drill 3/8 at 1 across, 2 up; no starter hole fits at 5 across, 6 up, use a smaller bit or cut in from both sides; " +
			"saw along the curve from 0 across, 0 up, by 4 across, 16 up, to 8 across, 64 up (A–…–J)",
		"notch 2: saw ; last down at 3 across, 4 to 1",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// No two strokes of a piece are named alike: the corners between their ends, and an arc, tell those
// with the same ends apart. A list of corners that the piece does not have names nothing.
func TestStrokesAreToldApart(t *testing.T) {
	named := 0
	for name, p := range examplePlans(t) {
		for _, piece := range p.Pieces {
			seen := map[string]bool{}
			for _, way := range piece.Marks.Strokes() {
				says := wayName(p, piece.Marks, way)
				if letters := strings.Split(says, "–"); len(way.Corners) > 0 && says != "" { // which the sides of a level hole are
					named++
					slices.Reverse(letters)
					if len(letters) < 2 || letters[0] == "arc" || letters[len(letters)-1] == "arc" || seen[says] || seen[strings.Join(letters, "–")] {
						t.Errorf("%s, piece %s: a stroke is named %q", name, piece.Label, says)
					}
				}
				seen[says] = true
			}
		}
	}
	if named < 20 {
		t.Errorf("only %d strokes have names", named)
	}
	var niche []string
	for _, way := range examplePlans(t)["odd-arch"].Pieces[0].Marks.Strokes() {
		niche = append(niche, wayName(plan.Plan{}, examplePlans(t)["odd-arch"].Pieces[0].Marks, way))
	}
	if diff := cmp.Diff([]string{"K–M–arc–N–P", "P–K", "J–A", "F–arc–E–D", "C–D"}, niche); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if got := wayName(plan.Plan{}, plan.Marks{}, plan.SawCut{Corners: []int{0, 27}}); got != "" {
		t.Errorf("corners that are not there are named %q", got)
	}
}

func TestEveryWayOutHasWords(t *testing.T) {
	for _, way := range every[cutout.WayOut]() {
		if wayOutWords[way] == "" {
			t.Errorf("no words for %q", way)
		}
	}
}

func TestMeasuredFrom(t *testing.T) {
	edges := plan.MarkEdges{Left: plan.FactoryEdge, Lower: plan.SawnEdge}
	quarter := fraction.Of(1, 4)
	for _, row := range []struct {
		edges  plan.MarkEdges
		scribe *wall.Scribe
		want   string
	}{
		{plan.MarkEdges{}, nil, "left edge and lower edge"},
		{edges, nil, "left edge (factory edge) and lower edge (sawn edge)"},
		{edges, &wall.Scribe{Edge: wall.Left, Width: quarter}, "the finish line, 1/4 in from the left edge (factory edge), and lower edge (sawn edge)"},
		{edges, &wall.Scribe{Edge: wall.Right, Width: quarter}, "left edge (factory edge) and lower edge (sawn edge); on the back from the finish line, 1/4 in from its left edge"},
	} {
		piece := plan.Piece{Scribe: row.scribe, Marks: plan.Marks{From: row.edges}}
		if got := measuredFrom(plan.Plan{}, piece, fraction.Length.String); got != row.want {
			t.Errorf("%q, want %q", got, row.want)
		}
	}
	boards := plan.Plan{Profile: plan.Profile{Profile: groove.Profile{Boards: true, Edges: groove.Tongued}}}
	for edge, want := range map[plan.EdgeKind]string{plan.FactoryEdge: " of its face (factory edge)", plan.AnyEdge: " of its face", plan.SawnEdge: " (sawn edge)"} {
		if got := measuredFrom(boards, plan.Piece{Marks: plan.Marks{From: plan.MarkEdges{Left: edge}}}, fraction.Length.String); got != "left edge"+want+" and lower edge" {
			t.Errorf("a tongued board: %q, want %q", got, want)
		}
	}
}

// A line to saw that ends at a corner without a letter is said as far as the one whose letter stands behind it.
func TestLinesEndAtTheirLetters(t *testing.T) {
	at := func(x string, y string) plan.Point {
		return plan.Point{X: fraction.MustParse(x), Y: fraction.MustParse(y)}
	}
	ring := []plan.Point{at("6 1/8", "0"), at("6 3/4", "0"), at("6 3/4", "95"), at("0", "95"), at("0", "1/16")}
	piece := plan.Piece{Width: fraction.MustParse("6 3/4"), Height: fraction.Inches(95), Outline: ring, Marks: plan.Marks{Corners: cutout.Corners{Face: ring, Back: ring}}}
	cut := plan.SawCut{Points: []plan.Point{ring[4], ring[0]}, Corners: []int{4, 0}}
	got := (&text{full: true, tape: fraction.Tape{Mark: fraction.Of(1, 16)}}).sawCut(plan.Plan{Snap: fraction.Of(1, 64)}, piece, cut, fromLeft)
	if want := "from 0 across, 1/16 up, to 6 3/4 across, 0 up (D–A)"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// The back of a piece comes out narrower at each edge that is mitered.
func TestBackOfAMiteredPiece(t *testing.T) {
	out, quarter := plan.End{Kind: wall.OutsideCorner}, fraction.Of(1, 4)
	limits := [2]fraction.Length{{}, fraction.Inches(20)}
	for _, row := range []struct {
		run  plan.Run
		want string
	}{
		{plan.Run{Left: out, Limits: limits}, "miter its left edge after all other cuts of the piece, at half the angle of the corner, 45 degrees where it is square; measures reach to the long point, " +
			"on the face; the back comes out narrower by the thickness, 1/4; "},
		{plan.Run{Left: out, Right: out, Limits: limits}, "narrower by the thickness at each mitered edge, 1/4; "},
		{plan.Run{Limits: limits}, ""},
	} {
		p := plan.Plan{Runs: []plan.Run{row.run}}
		p.Profile.Thickness = quarter
		if got := (&text{}).miter(p, plan.Piece{Width: fraction.Inches(20)}); !strings.Contains(got, row.want) || (got == "") != (row.want == "") {
			t.Errorf("%+v: %q, want %q", row.run, got, row.want)
		}
	}
}

// A closing piece on which something is left to scribe is sawn from its sheet; one on which nothing is left waits, as the cut
// list says too, or is as planned where no cut waits for it. One that the plan does not have counts as the first kind.
func TestClosingPiecesOfTheCuts(t *testing.T) {
	in := fraction.Inches
	cut := plan.Cut{Cut: nest.Cut{Step: 1, Kind: nest.Rip, At: in(9), Rect: [4]fraction.Length{{}, {}, in(30), in(20)}}, Waits: plan.Wait{Piece: 2}}
	p := plan.Plan{Pieces: []plan.Piece{{Number: 1, Label: "1", Scribe: &wall.Scribe{}}, {Number: 2, Label: "2", Width: in(9), Height: in(20), Closing: true}, {Number: 3, Label: "3", Scribe: &wall.Scribe{}},
		{Number: 4, Label: "4"}}, Sheets: []plan.Sheet{{Placements: []nest.Placement{{Part: 2}}, Cuts: []plan.Cut{cut}}}}
	const leave, wait, as = "Leave the closing edge", "Saw the closing edge", "will be as planned"
	for _, row := range []struct{ labels, left, waits, planned string }{
		{"1", leave + " of 1 unsawn until", "", ""},
		{"2", "", wait + " of 2 only when the space there is measured on the wall: nothing is left on to scribe", ""},
		{"1 2 3 5", leave + "s of 1, 3 and 5 unsawn until", wait + " of 2 only", ""},
		{"1 2 4", leave + " of 1 unsawn until", wait + " of 2 only", "The closing edge of 4 " + as},
	} {
		step := finish.Step{Stage: finish.StageCut, Acts: []finish.Act{{Kind: finish.ActClosing, Labels: strings.Fields(row.labels)}}}
		got := Step(p, step)
		for word, want := range map[string]string{leave: row.left, wait: row.waits, as: row.planned} {
			if !strings.Contains(got, want) || strings.Contains(got, word) != (want != "") {
				t.Errorf("%s: %s", row.labels, got)
			}
		}
	}
	if got := Part(p, Cuts, false); !strings.Contains(got, "WAIT until the space of piece 2 is measured on the wall: rip") {
		t.Errorf("the cut list: %s", got)
	}
}

// A piece that has its run for itself is measured for before it is sawn; one beside another is not, nor one that closes.
func TestPieceByItself(t *testing.T) {
	in := fraction.Inches
	run := plan.Run{Name: "pier", Panels: []wall.Panel{{Number: 1, Right: in(8)}}}
	pair := plan.Run{Name: "wall", Panels: []wall.Panel{{Number: 2, Right: in(30)}, {Number: 3, Left: in(30), Right: in(60)}, {Number: 4, Left: in(90), Right: in(99)}}}
	p := plan.Plan{Runs: []plan.Run{run, pair}, Pieces: []plan.Piece{{Label: "1", Run: "pier", Panel: 1}, {Label: "2", Run: "wall", Panel: 2}, {Label: "3", Run: "wall", Panel: 3, Closing: true},
		{Label: "4", Run: "wall", Panel: 4, Closing: true}}}
	lines := finish.Step{Stage: finish.StageLines}
	if got := Step(p, lines); !strings.Contains(got, "Measure the space of piece 1 at foot, middle and top before sawing; where") {
		t.Error(got)
	}
	p.Pieces[3].Closing = false
	if got := Step(p, lines); !strings.Contains(got, "Measure the spaces of pieces 1 and 4 at") {
		t.Error(got)
	}
	p.Pieces = p.Pieces[1:3]
	if got := Step(p, lines); strings.Contains(got, "Measure the space") {
		t.Error(got)
	}
}

// TestScribeStandsAtItsEdge: what is left on to scribe is said nearer to the scribed edge of a piece than to the other, or with a
// lead, and never off the piece on the other side.
func TestScribeStandsAtItsEdge(t *testing.T) {
	said := regexp.MustCompile(`transform="translate\(([-\d.]+) [-\d.]+\) rotate\(-90\)"><tspan[^>]*>[^<]+</tspan>[^<]* to scribe<`)
	finish := regexp.MustCompile(`<path class="finish" d="M([-\d.]+) [-\d.]+L([-\d.]+)`)
	board := regexp.MustCompile(`<path class="board" d="([^"]*)"`)
	number := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	looked := 0
	forEachPlan(t, func(t *testing.T, p plan.Plan, files []File) {
		for _, f := range files {
			edge, at, shape := finish.FindSubmatch(f.Body), said.FindSubmatch(f.Body), board.FindSubmatch(f.Body)
			if edge == nil || at == nil || shape == nil || f.Name == "book.html" { // which has many pieces
				continue
			}
			rings, err := strokesOf(string(shape[1]))
			if err != nil {
				t.Fatal(err)
			}
			lo, hi := math.Inf(1), math.Inf(-1)
			for _, s := range rings[0] {
				lo, hi = min(lo, s.to.x), max(hi, s.to.x)
			}
			x, scribed := number(string(at[1])), (number(string(edge[1]))+number(string(edge[2])))/2
			other := lo + hi - scribed
			off := math.Abs(x - scribed)
			if looked++; off > math.Abs(x-other) && off > 60 || (x-other)*(other-scribed) > 0 {
				t.Errorf("%s: the scribe is said at %.1f, its edge is at %.1f, the other at %.1f", f.Name, x, scribed, other)
			}
		}
	})
	if looked < 10 {
		t.Errorf("only %d pieces to scribe", looked)
	}
}

// TestSlopesSayTheirRounding: the leaf of a piece with a sloped edge says how its corners are rounded, no other leaf does.
func TestSlopesSayTheirRounding(t *testing.T) {
	p := examplePlans(t)["kitchen"]
	page, sloped := bookOf(t, p), 0
	for _, piece := range p.Pieces {
		_, leaf, found := strings.Cut(page, `<h3 id="piece`+strconv.Itoa(piece.Number)+`"`)
		if !found {
			continue
		}
		leaf, _, _ = strings.Cut(leaf, "</article>")
		slopes := slices.ContainsFunc(slices.Collect(func(yield func(bool) bool) {
			for i, a := range piece.Outline {
				b := piece.Outline[(i+1)%len(piece.Outline)]
				if !yield(a.X != b.X && a.Y != b.Y) {
					return
				}
			}
		}), func(is bool) bool { return is })
		if slopes {
			sloped++
		}
		if strings.Contains(leaf, "on a slope or an arc is on the nearest mark where that is within 1/64") != slopes {
			t.Errorf("piece %s, sloped %v: its leaf does not say so", piece.Label, slopes)
		}
	}
	if sloped == 0 {
		t.Error("no piece has a slope")
	}
}

// The straight cuts of an arched opening end where its arc does, 34 1/8 up and 15 1/8 across from the center with a radius
// of 21 7/8: 49.93 up.
func TestStraightCutsEndAtTheArc(t *testing.T) {
	p := hardJob(t, "arches")
	for _, full := range []bool{false, true} {
		text := strings.Join(strings.Fields(Part(p, Pieces, full)), " ")
		for _, want := range []string{"up at 36 3/4 across, 29 3/4 to 49 15/16", "down at 19 across, 49 15/16 to 29 3/4"} {
			if !strings.Contains(text, want) {
				t.Errorf("no %q in %s", want, text)
			}
		}
	}
}
