package jobfile_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

const boxOpening = `"left": "10", "bottom": "5", "width": "2 1/4", "height": "3 3/4"`

// withOpening returns the sound job with another first opening, and the window
// out of its way.
func withOpening(t *testing.T, fields string) string {
	t.Helper()
	if !strings.Contains(sound, boxOpening) {
		t.Fatal("the sound job has another opening now")
	}
	return strings.NewReplacer(boxOpening, fields, `"left": "30", "bottom": "8"`, `"left": "38", "bottom": "8"`).Replace(sound)
}

// A right triangle of sides 3, 4 and 5: Euclid, Elements, book I, proposition 47.
// The corner above the base at 30 in is 40 in up, and 50 in from the other base.
func TestTapedCorners(t *testing.T) {
	file := withOpening(t, `"points": {"bases": [["0", "0"], ["30", "0"]], "side": "left", "corners": [
		{"distances": ["50", "40"]}, {"distances": ["40", "50"]}, {"distances": ["0", "30"]}]}`)
	j, err := jobfile.Read(strings.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	if text, _ := written(t, j); strings.Count(text, `"bases"`) != 1 {
		t.Errorf("what corners share is not written once:\n%s", text)
	}
	taped, err := j.Located()
	if err != nil {
		t.Fatal(err)
	}
	inch := fraction.MustParse
	want := []cutout.Point{{X: inch("30"), Y: inch("40")}, {X: inch("0"), Y: inch("40")}, {}}
	for i, p := range j.Room.Runs[0].Openings[0].Outline {
		if p != want[i] {
			t.Errorf("corner %d = %v, want %v", i, p, want[i])
		}
		if !taped[i].Exact || taped[i].At != want[i] {
			t.Errorf("taped[%d] = %+v, want exactly %v", i, taped[i], want[i])
		}
	}
	if got, want := taped[1].Path.String(), "Runs[0].Openings[0].Points.Corners[1]"; got != want {
		t.Errorf("path %s, want %s", got, want)
	}
}

// A corner that one of the bases does not see names bases of its own: (30, 40) from (0, 0) and from (30, 80), which it lies to
// the right of when one looks from the first to the second.
func TestTapedCornerWithBasesOfItsOwn(t *testing.T) {
	own := `{"bases": [["0", "0"], ["30", "80"]], "side": "right", "distances": ["50", "40"]}`
	rest := `{"distances": ["40", "50"]}, {"distances": ["0", "30"]}]}`
	for name, file := range map[string]string{
		"beside bases of all": `"points": {"bases": [["0", "0"], ["30", "0"]], "side": "left", "corners": [` + own + `, ` + rest,
		"all on their own": `"points": {"corners": [` + own + `, {"bases": [["0", "0"], ["30", "0"]], "side": "left", "distances": ["40", "50"]},
			{"bases": [["0", "0"], ["30", "0"]], "side": "left", "distances": ["0", "30"]}]}`,
	} {
		j, err := jobfile.Read(strings.NewReader(withOpening(t, file)))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if text, _ := written(t, j); strings.Count(text, `"bases"`) != 3 { // the first corner's stand for all
			t.Errorf("%s: what corners share is not written once:\n%s", name, text)
		}
		want := []cutout.Point{{X: fraction.Inches(30), Y: fraction.Inches(40)}, {Y: fraction.Inches(40)}, {}}
		if got := j.Room.Runs[0].Openings[0].Outline; !slices.Equal(got, want) {
			t.Errorf("%s: corners %v, want %v", name, got, want)
		}
	}
}

// An arched head on four taped corners has the arc of the same opening by its sizes: the radius of 13 of the test below. Springings
// that differ by more than 1/8 in are doubted, and the higher one counts.
func TestArchOnTapedCorners(t *testing.T) {
	plain, err := jobfile.Read(strings.NewReader(withOpening(t, `"left": "0", "bottom": "0", "width": "24", "height": "10", "rise": "8"`)))
	if err != nil {
		t.Fatal(err)
	}
	const whole = `"rise": "8", "points": {"bases": [["0", "0"], ["24", "0"]], "side": "left", "corners": [
		{"distances": ["0", "24"]}, {"distances": ["24", "0"]}, {"distances": ["26", "10"]}, {"distances": ["10", "26"]}]}`
	for name, c := range map[string]struct {
		old, new string
		doubts   int
		springs  string
	}{
		"level":                   {`["10", "26"]`, `["10", "26"]`, 0, "10"},
		"the head first":          {`{"distances": ["0", "24"]}, {"distances": ["24", "0"]}, {"distances": ["26", "10"]}, {"distances": ["10", "26"]}`, `{"distances": ["10", "26"]}, {"distances": ["0", "24"]}, {"distances": ["24", "0"]}, {"distances": ["26", "10"]}`, 0, "10"},
		"the other way round":     {`{"distances": ["0", "24"]}, {"distances": ["24", "0"]}, {"distances": ["26", "10"]}, {"distances": ["10", "26"]}`, `{"distances": ["24", "0"]}, {"distances": ["0", "24"]}, {"distances": ["10", "26"]}, {"distances": ["26", "10"]}`, 0, "10"},
		"a side a little lower":   {`["10", "26"]`, `["9 15/16", "25 31/32"]`, 0, "10"},
		"a side higher than that": {`["10", "26"]`, `["18", "30"]`, 1, "18"},
	} {
		if !strings.Contains(whole, c.old) {
			t.Fatalf("no %s", c.old)
		}
		j, err := jobfile.Read(strings.NewReader(withOpening(t, strings.Replace(whole, c.old, c.new, 1))))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		springs := fraction.MustParse(c.springs)
		want := wall.Arch{Springing: cutout.Point{Y: springs}, Chord: fraction.Inches(24), Rise: fraction.Inches(8)}
		if arch := j.Runs[0].Openings[0].Arch; arch == nil || *arch != want || len(fractiontest.Doubts(t, j, plan.ArchUneven)) != c.doubts {
			t.Errorf("%s: arch %+v, want %+v and %d doubts", name, arch, want, c.doubts)
		}
		centre, radius, err := want.Circle()
		if err != nil || radius != fraction.Inches(13) || centre != (cutout.Point{X: fraction.Inches(12), Y: springs.Sub(fraction.Inches(5))}) {
			t.Errorf("%s: circle of %s about %v, %v", name, radius, centre, err)
		}
		if name != "level" && name != "the head first" && name != "the other way round" {
			continue
		}
		taped, err := cutout.NewShape(j.Room.Runs[0].Openings[0].Outline)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		sized, err := cutout.NewShape(plain.Room.Runs[0].Openings[0].Outline)
		if err != nil {
			t.Fatal(err)
		}
		if !taped.Equal(sized) {
			t.Errorf("%s: %v, want %v", name, taped, sized)
		}
	}
}

// A third distance that does not meet the others is doubted, not refused.
func TestTapedCornerThatDoesNotClose(t *testing.T) {
	for third, want := range map[string]int{"40": 0, "40 1/16": 0, "41": 1} {
		file := withOpening(t, `"points": {"bases": [["0", "0"], ["30", "0"], ["30", "80"]], "side": "left", "corners": [
			{"distances": ["50", "40", "`+third+`"]}, {"distances": ["40", "50", "50"]}, {"distances": ["0", "30", "85 7/16"]}]}`)
		j, err := jobfile.Read(strings.NewReader(file))
		if err != nil {
			t.Fatal(err)
		}
		if got := fractiontest.Doubts(t, j, plan.PointsApart); len(got) != want {
			t.Errorf("third distance %s: doubts at %q, want %d", third, got, want)
		}
	}
}

func TestTapedHeight(t *testing.T) {
	file := strings.Replace(sound, `{"at": "30", "bottom": "0", "top": "63 1/4"}`,
		`{"bottom": "0", "taped": {"bases": [["0", "0"], ["30", "0"]], "distances": ["50", "40"], "side": "left"}}`, 1)
	j, err := jobfile.Read(strings.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	if h := j.Room.Runs[0].Heights[1]; h.At != fraction.Inches(30) || h.Top != fraction.Inches(40) {
		t.Errorf("height = %v, want 40 at 30", h)
	}
}

// An arch over a chord of 24 with a rise of 8 has a radius of 13 (5, 12 and 13
// are the sides of a right triangle): its top lies 8 above the springing.
func TestArchedOpening(t *testing.T) {
	j, err := jobfile.Read(strings.NewReader(withOpening(t, `"left": "2", "bottom": "5", "width": "24", "height": "10", "rise": "8"`)))
	if err != nil {
		t.Fatal(err)
	}
	outline := j.Room.Runs[0].Openings[0].Outline
	highest := fraction.Length{}
	centre := cutout.Point{X: fraction.Inches(14), Y: fraction.Inches(10)}
	for _, p := range outline {
		highest = fraction.Max(highest, p.Y)
		if p.Y.Less(fraction.Inches(15)) || p.Y == fraction.Inches(15) {
			continue
		}
		dx, dy := p.X.Sub(centre.X), p.Y.Sub(centre.Y)
		if square := dx.Times(dx).Add(dy.Times(dy)); square.Compare(fraction.Inches(13).Times(fraction.Inches(13))) < 0 {
			t.Errorf("corner %v lies inside the true arc", p)
		}
	}
	if least, most := fraction.Inches(23), fraction.MustParse("23 1/8"); highest.Less(least) || most.Less(highest) {
		t.Errorf("top of the arch at %s, want %s to %s", highest, least, most)
	}
}

func TestTapedFaults(t *testing.T) {
	const whole = `"points": {"bases": [["0", "0"], ["30", "0"]], "side": "left", "corners": [{"distances": ["50", "40"]}, {"distances": ["40", "50"]}, {"distances": ["0", "30"]}]}`
	for _, row := range []struct{ name, old, new, path string }{
		{"one base", `["0", "0"], ["30", "0"]`, `["0", "0"]`, "runs[0].openings[0].points.corners[0].distances"},
		{"bases at one place", `["30", "0"]`, `["0", "0"]`, "runs[0].openings[0].points.corners[0].distances[0]"},
		{"no side", `"side": "left", `, ``, "runs[0].openings[0].points.corners[0].side"},
		{"no bases", `"bases": [["0", "0"], ["30", "0"]], `, ``, "runs[0].openings[0].points.corners[0].bases"},
		{"bases of its own without a side", `{"distances": ["0", "30"]}`, `{"bases": [["0", "0"], ["30", "0"]], "distances": ["0", "30"]}`, "runs[0].openings[0].points.corners[2].side"},
		{"one base of its own", `{"distances": ["0", "30"]}`, `{"bases": [["0", "0"]], "side": "left", "distances": ["0"]}`, "runs[0].openings[0].points.corners[2].bases"},
		{"a rise that is too great", `"points"`, `"rise": "100", "points"`, "runs[0].openings[0].rise"},
		{"a rise of nothing", `"points"`, `"rise": "0", "points"`, "runs[0].openings[0].rise"},
		{"an arch on two corners", whole, `"rise": "1", "points": {"bases": [["0", "0"], ["30", "0"]], "side": "left", "corners": [{"distances": ["50", "40"]}, {"distances": ["40", "50"]}]}`,
			"runs[0].openings[0].points"},
		{"two corners", `, {"distances": ["0", "30"]}`, ``, "runs[0].openings[0].points.corners[0]"},
		{"another side", `"left"`, `"above"`, "runs[0].openings[0].points.side"},
		{"no distances", `{"distances": ["0", "30"]}`, `{}`, "runs[0].openings[0].points.corners[2].distances"},
		{"a distance too many", `["0", "30"]`, `["0", "30", "1"]`, "runs[0].openings[0].points.corners[2].distances"},
		{"below zero", `["0", "30"]`, `["-1", "30"]`, "runs[0].openings[0].points.corners[2].distances[0]"},
		{"too short to meet", `["0", "30"]`, `["1", "2"]`, "runs[0].openings[0].points.corners[2].distances[0]"},
		{"width as well", `"points"`, `"width": "3", "points"`, "runs[0].openings[0].width"},
		{"unknown field", `"side"`, `"edge": "left", "side"`, "runs[0].openings[0].points.edge"},
	} {
		t.Run(row.name, func(t *testing.T) {
			if !strings.Contains(whole, row.old) {
				t.Fatalf("no %s", row.old)
			}
			_, err := jobfile.Read(strings.NewReader(withOpening(t, strings.Replace(whole, row.old, row.new, 1))))
			if err == nil || !strings.Contains("\n"+err.Error(), "\n"+row.path+" (line ") {
				t.Errorf("Read: %v\nwant a fault at %s", err, row.path)
			}
		})
	}
	_, err := jobfile.Read(strings.NewReader(withOpening(t, boxOpening+`, "rise": "2"`)))
	if err == nil || !strings.HasPrefix(err.Error(), "runs[0].openings[0].rise (line ") {
		t.Errorf("rise beyond a half circle: %v", err)
	}
}
