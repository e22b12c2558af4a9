package plan_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// backsplash returns a sound job of one run with a box and a window.
func backsplash() plan.Job {
	inch := fraction.Inches
	profile, _ := groove.Find("beadboard 1-1/2")
	j := plan.NewJob(fraction.Inch, profile)
	j.Stock = []nest.Stock{{Name: "sheet", Width: inch(48), Length: inch(96)}}
	j.Runs = []wall.Run{{
		Name: "sink wall", Width: inch(95), Left: wall.End{Kind: wall.Exposed}, Right: wall.End{Kind: wall.Covered},
		Heights: []wall.Height{{Top: inch(18)}, {At: inch(48), Top: inch(18)}, {At: inch(95), Top: inch(18)}},
		Openings: []wall.Opening{
			{Name: "socket", Kind: wall.Box, Outline: cutout.Rectangle(inch(10), inch(5), fraction.Of(9, 4), fraction.Of(15, 4))},
			{Name: "window", Kind: wall.Window, Outline: cutout.Rectangle(inch(40), inch(8), inch(20), inch(30))},
		},
	}}
	return j
}

func TestSoundJobIsValid(t *testing.T) {
	j := backsplash()
	if err := j.Validate(); err != nil {
		t.Fatal(err)
	}
	if doubts, err := j.Doubts(); err != nil || len(doubts) > 0 {
		t.Errorf("doubts %v, %v", doubts, err)
	}
}

// Each row makes one thing wrong; the fault names it as Go does.
func TestValidateNamesTheField(t *testing.T) {
	inch := fraction.Inches
	for _, row := range []struct {
		path  string
		wrong func(*plan.Job)
	}{
		{"Title", func(j *plan.Job) { j.Title = "two\nlines" }},
		{"Title", func(j *plan.Job) { j.Title = strings.Repeat("x", plan.MaxText+1) }},
		{"Title", func(j *plan.Job) { j.Title = "\xff" }},
		{"Units", func(j *plan.Job) { j.Units = 7 }},
		{"Mark", func(j *plan.Job) { j.Mark = fraction.Length{} }},
		{"Bit", func(j *plan.Job) { j.Bit = inch(-1) }},
		{"Built", func(j *plan.Job) { j.Built = 62 }},
		{"Profile.Thickness", func(j *plan.Job) { j.Profile.Thickness = fraction.Length{} }},
		{"Saw.Kerf", func(j *plan.Job) { j.Saw.Kerf = inch(-1) }},
		{"Plates[11]", func(j *plan.Job) { j.Plates = map[int]wall.Plate{11: {Width: inch(1), Height: inch(1)}} }},
		{"Plates[2].Height", func(j *plan.Job) { j.Plates = map[int]wall.Plate{2: {Width: inch(1)}} }},
		{"Stock[1].Name", func(j *plan.Job) { j.Stock = append(j.Stock, j.Stock[0]) }},
		{"Stock[0].Count", func(j *plan.Job) { j.Stock[0].Count = new(plan.MaxCount + 1) }},
		{"Stock[0].Length", func(j *plan.Job) { j.Saw.SquareUp = inch(48) }},
		{"Runs", func(j *plan.Job) { j.Runs = nil }},
		{"Runs", func(j *plan.Job) { j.Runs = make([]wall.Run, plan.MaxItems+1) }},
		{"Runs[0].Name", func(j *plan.Job) { j.Runs[0].Name = " " }},
		{"Runs[0].Heights[1].Top", func(j *plan.Job) { j.Runs[0].Heights[1].Top = inch(-1) }},
		{"Runs[0].Right.Kind", func(j *plan.Job) { j.Closed = true }},
		{"Runs[0].Openings[1].Name", func(j *plan.Job) { j.Runs[0].Openings[1].Name = "socket" }},
		{"Runs[0].Openings[1].Gangs", func(j *plan.Job) { j.Runs[0].Openings[1].Gangs = 2 }},
		{"Runs[0].Openings[1].Outline[0]", func(j *plan.Job) { j.Runs[0].Openings[1].Outline = nil }},
		{"Runs[0].Openings[1].Outline[1].X", func(j *plan.Job) { j.Runs[0].Openings[1].Outline[1].X = inch(96) }},
		{"Runs[0].Openings[1].Outline[0].X", func(j *plan.Job) { j.Runs[0].Openings[1].Outline[0].X = inch(-1) }},
		{"Runs[0].Openings[1].Outline[0].Y", func(j *plan.Job) {
			j.Runs[0].Openings[1].Outline = cutout.Rectangle(inch(9), inch(18), inch(1), inch(1))
		}},
		{"Runs[0].Openings[1]", func(j *plan.Job) {
			j.Runs[0].Openings[1].Outline = cutout.Rectangle(inch(9), inch(4), inch(9), inch(9))
		}},
		{"Runs[0].Focal[0].To", func(j *plan.Job) { j.Runs[0].Focal = []wall.Focal{{To: inch(96)}} }},
		{"Runs[0].Focal[1]", func(j *plan.Job) { j.Runs[0].Focal = []wall.Focal{{To: inch(9)}, {From: inch(8), To: inch(10)}} }},
		{"Cooking[0].Run", func(j *plan.Job) { j.Cooking = []plan.Cooking{{Run: 1, To: inch(1)}} }},
		{"Cooking[1].Run", func(j *plan.Job) {
			j.Runs = append(j.Runs, j.Runs[0])
			j.Cooking = []plan.Cooking{{Run: 1, To: inch(1)}, {Run: 0, To: inch(1)}}
		}},
		{"Cooking[0].From", func(j *plan.Job) { j.Cooking = []plan.Cooking{{From: inch(-1), To: inch(1)}} }},
		{"Installed[0].Right", func(j *plan.Job) { j.Installed = []wall.Installed{{Right: inch(96)}} }},
		{"Finish.House.Material", func(j *plan.Job) { j.Finish.House.Material = 200 }},
		{"Taped[0].From", func(j *plan.Job) { j.Taped = []plan.TapedPoint{{Opening: -1}} }},
		{"Taped[0]", func(j *plan.Job) { j.Taped = []plan.TapedPoint{taped(7, -1, 0, 30, 40)} }},
		{"Taped[1]", func(j *plan.Job) { j.Taped = []plan.TapedPoint{taped(0, -1, 1, 30, 40), taped(0, -1, 0, 30, 40)} }},
		{"Taped[0].From[0].Distance", func(j *plan.Job) { j.Taped = []plan.TapedPoint{taped(0, -1, 1, -30, 40)} }},
		{"Runs[0].Heights[1].At", func(j *plan.Job) { j.Taped = []plan.TapedPoint{taped(0, -1, 1, 50, 40)} }},
		{"Runs[0].Openings[1].Outline", func(j *plan.Job) {
			j.Taped = []plan.TapedPoint{taped(0, 1, 0, 50, 40), taped(0, 1, 1, 40, 50), taped(0, 1, 2, 26, 34)}
		}},
	} {
		j := backsplash()
		row.wrong(&j)
		err := j.Validate()
		if !slices.ContainsFunc(fault.All(err), func(f *fault.Fault) bool { return f.Path.String() == row.path && (f.Want != "" || f.Cause != nil) }) {
			t.Errorf("%v\nwant a fault at %s", err, row.path)
		}
		if _, err := j.Doubts(); err == nil {
			t.Errorf("%s: doubts of a job that is not valid", row.path)
		}
	}
}

// taped returns a place by its distances from the points (0, 0) and (30, 0).
func taped(run, opening, index int, a, b int64) plan.TapedPoint {
	return plan.TapedPoint{Run: run, Opening: opening, Index: index, From: []cutout.Taped{
		{Distance: fraction.Inches(a)}, {From: cutout.Point{X: fraction.Inches(30)}, Distance: fraction.Inches(b)}}}
}

func TestZeroJobIsNotValid(t *testing.T) {
	if err := (plan.Job{}).Validate(); len(fault.All(err)) == 0 {
		t.Errorf("Validate of the zero job: %v", err)
	}
}

// FuzzJob calls every method of a job of wild values: none panics.
func FuzzJob(f *testing.F) {
	f.Add([]byte{}, true)
	f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25}, true)
	f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25}, false)
	f.Fuzz(func(t *testing.T, data []byte, sound bool) {
		var j plan.Job
		if sound { // parts of a sound job are made wild
			j = backsplash()
			fractiontest.Fill(data, &j.Taped, &j.Cooking, &j.Plates, &j.Installed, &j.Runs[0].Openings[1], &j.Bit, &j.Priorities)
		} else {
			fractiontest.Fill(data, &j)
		}
		doubts, err := j.Doubts()
		if valid := j.Validate(); valid != nil && (err == nil || doubts != nil) {
			t.Fatalf("%v, but doubts %v, %v", valid, doubts, err)
		}
		_, _ = j.Located()
		_ = j.Locate()
		for _, p := range j.Taped {
			_ = fmt.Sprint(p.Path())
		}
	})
}

// TestPanelsThatBurnAtCookingAreQuestioned: until the place is left free, the panels do not burn or
// the appliance's manual is noted.
func TestPanelsThatBurnAtCookingAreQuestioned(t *testing.T) {
	steel := func(from, width int64) wall.Opening {
		in := fraction.Inches
		return wall.Opening{Name: "steel sheet", Outline: cutout.Rectangle(in(from), in(-1), in(width), in(40))}
	}
	for _, c := range []struct {
		name   string
		change func(j *plan.Job)
		want   int
	}{
		{"no appliance", func(j *plan.Job) { j.Cooking = nil }, 0},
		{"panels behind it", func(*plan.Job) {}, 1},
		{"the manual is noted", func(j *plan.Job) { j.Cooking[0].Manual = "p. 6: backguard" }, 0},
		{"panels that do not burn", func(j *plan.Job) { j.Finish.House.Material = finish.Noncombustible }, 0},
		{"the place is left free", func(j *plan.Job) { j.Runs[0].Openings = []wall.Opening{steel(12, 12)} }, 0},
		{"half of it is", func(j *plan.Job) { j.Runs[0].Openings = []wall.Opening{steel(12, 6)} }, 1},
	} {
		j := backsplash()
		j.Runs[0].Openings = nil
		j.Cooking = []plan.Cooking{{From: fraction.Inches(12), To: fraction.Inches(24)}}
		c.change(&j)
		doubts, err := j.Doubts()
		if err != nil {
			t.Fatal(c.name, err)
		}
		n := 0
		for _, d := range doubts {
			if d.Kind == plan.BurnsAtCooking {
				n++
			}
		}
		if n != c.want {
			t.Errorf("%s: %d such doubts, want %d: %v", c.name, n, c.want, doubts)
		}
	}
}

// TestTrimsHideWhatIsNotSealed plans a run with a baseboard and a cap, and one with a casing of its
// own: what they hide is listed and gets no sealant.
func TestTrimsHideWhatIsNotSealed(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(j *plan.Job)
		sealed []string // joints of the sealants
		listed string
	}{
		{"none", func(*plan.Job) {}, []string{"lower line", "upper line", "end", "window"}, ""},
		{"a baseboard", func(j *plan.Job) { j.Trim.Bottom = &wall.EdgeTrim{Name: "baseboard", Covers: fraction.Inches(3)} }, []string{"upper line", "end", "window"}, "baseboard 7.96 ft"},
		{"a cap and a casing of the run", func(j *plan.Job) {
			j.Runs[0].Trim = wall.Trims{Top: &wall.EdgeTrim{Name: "cap", Covers: fraction.Inches(1)}, Casing: &wall.EdgeTrim{Name: "casing", Covers: fraction.Inches(2)}}
		}, []string{"lower line", "end"}, "cap 6.3 ft, casing 3.38 ft"},
	} {
		j := backsplash()
		c.change(&j)
		p, err := plan.Make(t.Context(), j, plan.Options{})
		if err != nil {
			t.Fatal(c.name, err)
		}
		var sealed, listed []string
		for _, r := range p.List.Rows {
			for _, term := range r.Terms {
				if term.Kind == finish.TermJoint {
					sealed = append(sealed, term.Name)
				}
			}
			if r.Item == finish.ItemCovering {
				listed = append(listed, fmt.Sprint(r.Name, " ", r.Quantity, " ", r.Unit))
			}
		}
		if !slices.Equal(sealed, c.sealed) || strings.Join(listed, ", ") != c.listed {
			t.Errorf("%s: sealed %q, listed %q; want %q, %q", c.name, sealed, listed, c.sealed, c.listed)
		}
	}
}

// TestNothingIsBoughtAgainForPanelsThatAreUp installs the first panel of a plan and plans the rest.
func TestNothingIsBoughtAgainForPanelsThatAreUp(t *testing.T) {
	j := backsplash()
	before, err := plan.Make(t.Context(), j, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	up := before.Runs[0].Panels[0]
	j.Installed = []wall.Installed{{Left: up.Left, Right: up.Right, LeftPhase: up.LeftPhase}}
	after, err := plan.Make(t.Context(), j, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	face := func(p plan.Plan, item finish.Item, kind finish.TermKind) (faces []string) {
		for _, r := range p.List.Rows {
			for _, term := range r.Terms {
				if r.Item == item && term.Kind == kind {
					faces = append(faces, term.Value.String())
				}
			}
		}
		return faces
	}
	// The wall less its window, 95 x 18 - 20 x 10 in, is 10.49 ft2 before and after; the last coat covers it all.
	if got := face(after, finish.ItemTopCoat, finish.TermFaceAfter); !slices.Equal(got, face(before, finish.ItemTopCoat, finish.TermFaceAfter)) {
		t.Errorf("last coat on %v, before on %v", got, face(before, finish.ItemTopCoat, finish.TermFaceAfter))
	}
	if got := face(after, finish.ItemPrimer, finish.TermFaceBefore); slices.Equal(got, face(before, finish.ItemPrimer, finish.TermFaceBefore)) {
		t.Errorf("primer on all of it again: %v", got)
	}
	for _, r := range after.List.Rows {
		if r.Item == finish.ItemExtender {
			t.Errorf("an extender again for a box behind a panel that is up: %+v", r)
		}
	}
}
