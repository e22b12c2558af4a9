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
		{"Finish.Boxes[1].Name", func(j *plan.Job) {
			j.Finish.Boxes = []finish.BoxNote{{Name: j.Runs[0].Openings[0].Name}, {Name: j.Runs[0].Openings[1].Name}}
		}},
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
func FuzzJob(once *testing.F) {
	f := fractiontest.F{F: once}
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
		}, []string{"lower line", "end"}, "cap 6.34 ft, casing 3.47 ft"},
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

// Values at the very limits are valid, and those beyond are not.
func TestValuesAtTheirLimits(t *testing.T) {
	inch := fraction.Inches
	for _, row := range []struct {
		name   string
		valid  bool
		change func(*plan.Job)
	}{
		{"the longest title", true, func(j *plan.Job) { j.Title = strings.Repeat("x", plan.MaxText) }},
		{"a title with the joiners of some scripts", true, func(j *plan.Job) { j.Title = "क्\u200dष क्\u200cष" }},
		{"a title that turns its text", false, func(j *plan.Job) { j.Title = "a\u202eb" }},
		{"the first year", true, func(j *plan.Job) { j.Built = 1000 }},
		{"the year before", false, func(j *plan.Job) { j.Built = 999 }},
		{"the last year", true, func(j *plan.Job) { j.Built = 9999 }},
		{"the year after", false, func(j *plan.Job) { j.Built = 10000 }},
		{"no sheet left", true, func(j *plan.Job) {
			j.Stock = append(j.Stock, nest.Stock{Name: "offcut", Width: inch(9), Length: inch(9), Count: new(0)})
		}},
		{"fewer than none", false, func(j *plan.Job) { j.Stock[0].Count = new(-1) }},
		{"the most sheets on hand", true, func(j *plan.Job) { j.Stock[0].Count = new(plan.MaxCount) }},
		{"centimetres", true, func(j *plan.Job) { j.Units = fraction.Centimetre }},
		{"the last kind of saw", true, func(j *plan.Job) { j.Sawing = plan.Sawing{Kind: plan.Hand, Face: plan.FaceDown} }},
		{"one kind more", false, func(j *plan.Job) { j.Sawing.Kind = plan.Hand + 1 }},
		{"one face more", false, func(j *plan.Job) { j.Sawing.Face = plan.FaceDown + 1 }},
		{"a plate for one device", true, func(j *plan.Job) { j.Plates = map[int]wall.Plate{1: {Width: inch(9), Height: inch(9)}} }},
		{"a plate for none", false, func(j *plan.Job) { j.Plates = map[int]wall.Plate{0: {Width: inch(9), Height: inch(9)}} }},
		{"a plate for the most", true, func(j *plan.Job) { j.Plates = map[int]wall.Plate{wall.MaxGangs: {Width: inch(9), Height: inch(9)}} }},
		{"a plate without a width", false, func(j *plan.Job) { j.Plates = map[int]wall.Plate{1: {Height: inch(9)}} }},
		{"a nameless stock", false, func(j *plan.Job) { j.Stock[0].Name = " " }},
		{"a focal zone of the whole run", true, func(j *plan.Job) { j.Runs[0].Focal = []wall.Focal{{To: inch(95)}} }},
		{"one that begins before it", false, func(j *plan.Job) { j.Runs[0].Focal = []wall.Focal{{From: inch(-1), To: inch(95)}} }},
		{"one of no width", false, func(j *plan.Job) { j.Runs[0].Focal = []wall.Focal{{From: inch(9), To: inch(9)}} }},
		{"two that touch", true, func(j *plan.Job) { j.Runs[0].Focal = []wall.Focal{{To: inch(9)}, {From: inch(9), To: inch(10)}} }},
		{"two that overlap", false, func(j *plan.Job) { j.Runs[0].Focal = []wall.Focal{{To: inch(9)}, {From: inch(8), To: inch(10)}} }},
		{"two that touch the other way", true, func(j *plan.Job) { j.Runs[0].Focal = []wall.Focal{{From: inch(9), To: inch(10)}, {To: inch(9)}} }},
		{"cooking before the run", false, func(j *plan.Job) { j.Cooking = []plan.Cooking{{From: inch(-1), To: inch(9)}} }},
		{"cooking beyond the run", false, func(j *plan.Job) { j.Cooking = []plan.Cooking{{From: inch(9), To: inch(96)}} }},
		{"cooking at two places of a run", true, func(j *plan.Job) { j.Cooking = []plan.Cooking{{From: inch(9), To: inch(12)}, {To: inch(3)}} }},
		{"cooking on no run", false, func(j *plan.Job) { j.Cooking = []plan.Cooking{{Run: -1, To: inch(3)}} }},
		{"an opening to both ends", true, func(j *plan.Job) {
			j.Runs[0].Openings = []wall.Opening{{Name: "door", Outline: cutout.Rectangle(inch(0), inch(-1), inch(95), inch(9))}}
		}},
		{"an opening above the wall", false, func(j *plan.Job) {
			j.Runs[0].Openings[1].Outline = cutout.Rectangle(inch(40), inch(18), inch(9), inch(9))
		}},
		{"an opening below the wall", false, func(j *plan.Job) {
			j.Runs[0].Openings[1].Outline = cutout.Rectangle(inch(40), inch(-9), inch(9), inch(9))
		}},
		{"an opening that reaches a little into the wall", true, func(j *plan.Job) {
			j.Runs[0].Openings[1].Outline = cutout.Rectangle(inch(40), inch(17), inch(9), inch(9))
		}},
		{"a window over a box", false, func(j *plan.Job) {
			j.Runs[0].Openings[1].Outline = cutout.Rectangle(inch(9), inch(4), inch(9), inch(9))
		}},
		{"a window beside a box", true, func(j *plan.Job) {
			j.Runs[0].Openings[1].Outline = cutout.Rectangle(fraction.Of(49, 4), inch(4), inch(9), inch(9))
		}},
		{"a slanted window beside a box in its bounds", true, func(j *plan.Job) {
			at := func(x, y int64) cutout.Point { return cutout.Point{X: inch(x), Y: inch(y)} }
			j.Runs[0].Openings[1].Outline = []cutout.Point{at(5, 20), at(20, 1), at(20, 20)}
		}},
		{"a panel of the whole run", true, func(j *plan.Job) { j.Installed = []wall.Installed{{Right: inch(95)}} }},
		{"one to within the snap of a run's end", true, func(j *plan.Job) { j.Installed = []wall.Installed{{Right: inch(95).Add(j.Snap)}} }},
		{"one beyond that", false, func(j *plan.Job) { j.Installed = []wall.Installed{{Right: inch(95).Add(j.Snap.Mul(2))}} }},
		{"one from within the snap of its other end", true, func(j *plan.Job) { j.Installed = []wall.Installed{{Left: j.Snap.Neg(), Right: inch(9)}} }},
		{"one before that", false, func(j *plan.Job) { j.Installed = []wall.Installed{{Left: j.Snap.Mul(-2), Right: inch(9)}} }},
		{"as far as the ends lean", true, func(j *plan.Job) {
			j.Runs[0].Left.Lean, j.Runs[0].Right.Lean = inch(-1), inch(2)
			j.Installed = []wall.Installed{{Left: inch(-1), Right: inch(97)}}
		}},
		{"where the left end leans in", false, func(j *plan.Job) {
			j.Runs[0].Left.Lean = inch(1)
			j.Installed = []wall.Installed{{Left: inch(-1), Right: inch(9)}}
		}},
		{"where the right end leans in", false, func(j *plan.Job) {
			j.Runs[0].Right.Lean = inch(-1)
			j.Installed = []wall.Installed{{Right: inch(96)}}
		}},
		{"a panel's thickness past outside corners", true, func(j *plan.Job) {
			j.Runs[0].Left.Kind, j.Runs[0].Right.Kind = wall.OutsideCorner, wall.OutsideCorner
			j.Installed = []wall.Installed{{Left: j.Profile.Thickness.Neg(), Right: inch(95).Add(j.Profile.Thickness)}}
		}},
		{"as far past an end that is none", false, func(j *plan.Job) {
			j.Installed = []wall.Installed{{Right: inch(95).Add(j.Profile.Thickness)}}
		}},
		{"a closed room of two runs with corners", true, func(j *plan.Job) {
			j.Closed = true
			j.Runs[0].Left.Kind, j.Runs[0].Right.Kind = wall.InsideCorner, wall.InsideCorner
			j.Runs = append(j.Runs, j.Runs[0])
			j.Runs[1].Name = "other"
		}},
		{"the most distances", true, func(j *plan.Job) {
			j.Runs[0].Heights[1] = wall.Height{At: inch(30), Top: inch(40)}
			j.Taped = tapedFrom(plan.MaxBases)
		}},
		{"one more", false, func(j *plan.Job) {
			j.Runs[0].Heights[1] = wall.Height{At: inch(30), Top: inch(40)}
			j.Taped = tapedFrom(plan.MaxBases + 1)
		}},
	} {
		j := backsplash()
		row.change(&j)
		if err := j.Validate(); err == nil != row.valid {
			t.Errorf("%s: %v", row.name, err)
		}
	}
}

// tapedFrom returns the second height, 40 up at 30, by n distances: 40 from (30, 0), then 50 from (0, 0).
func tapedFrom(n int) []plan.TapedPoint {
	p := taped(0, -1, 1, 50, 40)
	for len(p.From) < n {
		p.From = append(p.From, p.From[0])
	}
	return []plan.TapedPoint{p}
}

// A new job has the defaults of its units: what a sixteenth and an eighth of an inch are there, round.
func TestDefaultsOfAJob(t *testing.T) {
	for unit, want := range map[fraction.Unit][5]string{
		fraction.Inch:       {"1/16", "1/8", "1/4", "3/8", "1/64"},
		fraction.Millimetre: {"1 mm", "3 mm", "6 mm", "10 mm", "0.25 mm"},
		fraction.Centimetre: {"1 mm", "3 mm", "6 mm", "10 mm", "0.25 mm"},
	} {
		j := plan.NewJob(unit, groove.Profile{Thickness: fraction.Inches(3)})
		for i, got := range []fraction.Length{j.Mark, j.Saw.LeastRip, j.Scribe, j.Bit, j.Snap} {
			if got != fraction.MustParse(want[i]) {
				t.Errorf("%v: %v, want %s", unit, got, want[i])
			}
		}
		if j.Units != unit || j.Saw.Kerf != fraction.Of(1, 8) || j.Profile.Thickness != fraction.Inches(3) || j.Priorities != wall.DefaultPriorities(unit) {
			t.Errorf("%v: kerf %v, %+v", unit, j.Saw.Kerf, j.Priorities)
		}
		if j.Tape() != (fraction.Tape{Mark: j.Mark, Unit: unit}) {
			t.Errorf("%v: tape %+v", unit, j.Tape())
		}
	}
	if got := plan.DefaultSnap(fraction.Of(1, 1<<62)); !got.IsZero() {
		t.Errorf("a mark that is too fine for a snap has %v", got)
	}
}

// Taped places by sides of 30, 40 and 50: Locate puts them into the room, Located lists them with what they are
// named by how much distances miss each other.
func TestLocate(t *testing.T) {
	at := func(x, y int64) cutout.Point { return cutout.Point{X: fraction.Inches(x), Y: fraction.Inches(y)} }
	j := backsplash()
	j.Runs = append(j.Runs, j.Runs[0])
	j.Runs[1].Name, j.Runs[1].Openings, j.Runs[1].Heights = "other", slices.Clone(j.Runs[1].Openings), slices.Clone(j.Runs[1].Heights)
	j.Runs[1].Openings[1].Arch = &wall.Arch{}
	j.Taped = []plan.TapedPoint{taped(1, -1, 1, 50, 40), taped(1, 1, 0, 50, 40), taped(1, 1, 1, 40, 50), taped(1, 1, 2, 24, 18)}
	j.Taped[0].From = append(j.Taped[0].From, cutout.Taped{From: at(30, 80), Distance: fraction.Inches(40)})
	all, err := j.Located()
	if err != nil {
		t.Fatal(err)
	}
	if err := j.Locate(); err != nil {
		t.Fatal(err)
	}
	if h := j.Runs[1].Heights[1]; h.At != fraction.Inches(30) || h.Top != fraction.Inches(40) {
		t.Errorf("the height is %v", h)
	}
	if h := j.Runs[0].Heights[1]; h.At != fraction.Inches(48) {
		t.Errorf("that of another run is %v", h)
	}
	want := []cutout.Point{at(30, 40), at(0, 40), {X: fraction.MustParse("19.2"), Y: fraction.MustParse("14.4")}} // 24² = 19.2² + 14.4², 18² = 10.8² + 14.4²
	if o := j.Runs[1].Openings[1]; !slices.Equal(o.Outline, want) || o.Arch != nil {
		t.Errorf("the opening is %v, %v, want %v", o.Outline, o.Arch, want)
	}
	for i, path := range []string{"Runs[1].Heights[1].Taped", "Runs[1].Openings[1].Points.Corners[0]", "Runs[1].Openings[1].Points.Corners[1]", "Runs[1].Openings[1].Points.Corners[2]"} {
		got := all[i]
		opening := map[bool]string{true: "window"}[i > 0]
		if got.Path.String() != path || got.Run != "other" || got.Opening != opening || got.Number != max(i, 2-i) {
			t.Errorf("place %d: %+v, want %s", i, got, path)
		}
		if place := append([]cutout.Point{at(30, 40)}, want...)[i]; !got.Exact || got.At != place || !got.Closing.IsZero() || !got.Within.IsZero() {
			t.Errorf("place %d: %+v, want exactly %v", i, got, place)
		}
	}
	j.Taped[0].From[2].Distance = fraction.Inches(41) // between the three circles lies a place that is less than 1 off them
	if all, err = j.Located(); err != nil || all[0].Exact || all[0].Closing.Less(fraction.Of(1, 2)) || !all[0].Closing.Less(fraction.Inches(1)) {
		t.Errorf("a third distance that is 1 too long: %+v, %v", all, err)
	}
	for _, wrong := range []plan.TapedPoint{taped(-1, -1, 1, 50, 40), taped(0, -1, 3, 50, 40), taped(0, -1, -1, 50, 40), taped(0, -2, 0, 50, 40), taped(0, 2, 0, 50, 40), taped(0, 1, 1, 50, 40)} {
		j := backsplash()
		j.Taped = []plan.TapedPoint{wrong}
		if _, err := j.Located(); err == nil {
			t.Errorf("%v is listed", wrong.Path())
		}
		if err := j.Locate(); err == nil {
			t.Errorf("%v is located", wrong.Path())
		}
	}
}
