package finish_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// quiet is a work that raises the fewest cautions: plastic in a new house, no boxes, no nails.
func quiet() (finish.Work, finish.Materials) {
	w := finish.Work{
		Built: 2015, Pieces: []finish.Piece{{Width: fraction.Inches(40), Height: fraction.Inches(20)}}, Highest: fraction.Inches(20),
		Profile: groove.Profile{Features: []groove.Feature{{Width: fraction.Inches(2)}}, Thickness: fraction.Of(1, 4)},
	}
	m := finish.Materials{House: finish.House{Material: "plastic"}, Nails: finish.Nails{None: true}, Adhesive: finish.Adhesive{Form: "none"}}
	m.Paint.Primer = finish.Coating{Before: "0"}
	m.Paint.Top = finish.Coating{Before: "0", After: "0"}
	return w, m
}

func names(cautions []finish.Caution) []string {
	var all []string
	for _, c := range cautions {
		all = append(all, c.Name)
	}
	return all
}

// TestEachConditionRaisesItsCautions flips one condition at a time.
func TestEachConditionRaisesItsCautions(t *testing.T) {
	raised := map[string]bool{}
	for _, c := range []struct {
		name   string
		change func(w *finish.Work, m *finish.Materials)
		want   []string
	}{
		{"pieces alone", func(*finish.Work, *finish.Materials) {}, []string{"saws"}},
		{"nothing", func(w *finish.Work, _ *finish.Materials) { *w = finish.Work{} }, nil},
		{"a box", func(w *finish.Work, _ *finish.Materials) { w.Boxes = []finish.Box{{Name: "a"}} }, []string{"power", "box flush", "box open", "saws"}},
		{"a box behind what cannot burn", func(w *finish.Work, m *finish.Materials) {
			w.Boxes, m.House.Material = []finish.Box{{Name: "a"}}, "noncombustible"
		}, []string{"power", "box open", "saws"}},
		{"cooking", func(w *finish.Work, _ *finish.Materials) { w.Cooking = true }, []string{"heat", "saws"}},
		{"built in 1989", func(w *finish.Work, _ *finish.Materials) { w.Built = 1989 }, []string{"asbestos", "saws"}},
		{"built in 1978", func(w *finish.Work, _ *finish.Materials) { w.Built = 1978 }, []string{"asbestos", "saws"}},
		{"built in 1977", func(w *finish.Work, _ *finish.Materials) { w.Built = 1977 }, []string{"lead", "asbestos", "saws"}},
		{"built nobody knows when", func(w *finish.Work, _ *finish.Materials) { w.Built = 0 }, []string{"lead", "asbestos", "saws"}},
		{"nails", func(_ *finish.Work, m *finish.Materials) { m.Nails.None = false }, []string{"cables and pipes", "saws", "nailer"}},
		{"fibreboard", func(_ *finish.Work, m *finish.Materials) { m.House.Material = "mdf" }, []string{"dust", "resin", "saws", "fire spread"}},
		{"solid wood", func(_ *finish.Work, m *finish.Materials) { m.House.Material = "solid wood" }, []string{"dust", "saws", "fire spread"}},
		{"at 6 ft", func(w *finish.Work, _ *finish.Materials) { w.Highest = fraction.Inches(36) }, []string{"saws"}},
		{"above 6 ft", func(w *finish.Work, _ *finish.Materials) { w.Highest = fraction.MustParse("36 1/16") }, []string{"saws", "ladder"}},
		{"1/4 in hardboard on studs", func(_ *finish.Work, m *finish.Materials) {
			m.House.Material, m.House.Backing = "hardboard", "studs"
		}, []string{"dust", "saws", "fire spread"}},
		{"3/16 in hardboard on studs", func(w *finish.Work, m *finish.Materials) {
			m.House.Material, m.House.Backing, w.Profile.Thickness = "hardboard", "studs", fraction.Of(3, 16)
		}, []string{"dust", "saws", "fire spread", "thin panel"}},
		{"glue", func(_ *finish.Work, m *finish.Materials) { m.Adhesive.Form = "beads" }, []string{"saws", "fumes"}},
		{"paint", func(_ *finish.Work, m *finish.Materials) { m.Paint.Top.After = "1" }, []string{"saws", "fumes"}},
		{"damp", func(_ *finish.Work, m *finish.Materials) { m.House.Damp = true }, []string{"saws", "damp"}},
	} {
		w, m := quiet()
		c.change(&w, &m)
		got := names(finish.Cautions(w, m))
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
		for _, n := range got {
			raised[n] = true
		}
	}
	for _, c := range finish.AllCautions() {
		if !raised[c.Name] {
			t.Errorf("no condition of this table raises %q", c.Name)
		}
	}
}

// TestCautionsDeferAndPermitNothing holds the words of every caution to the rule that nothing reads as permission.
func TestCautionsDeferAndPermitNothing(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range finish.AllCautions() {
		if seen[c.Name] || c.Name == "" || c.When == "" || c.Advice == "" || c.Defers == "" || c.Source == "" {
			t.Errorf("%q: twice, or a part is missing", c.Name)
		}
		seen[c.Name] = true
		for _, word := range []string{"you may ", "is safe", "it is fine", "complies", "compliant", "is allowed", "permitted", "approved"} {
			if strings.Contains(strings.ToLower(c.Advice), word) {
				t.Errorf("%q reads as a permission: %q", c.Name, word)
			}
		}
	}
}

func TestScheduleOrder(t *testing.T) {
	w, m := kitchen(), finish.Materials{}
	var got []string
	for _, s := range finish.Schedule(w, m) {
		got = append(got, s.Title)
	}
	want := []string{
		"Look first", "Let the panels rest", "Cut", "First coats, before fitting", "Mains off", "Dry-fit", "Fit in order",
		"Closing pieces", "Tape off", "Seal", "Last coat, after sealing", "Power on again",
	}
	if !slices.Equal(got, want) {
		t.Errorf("steps %q, want %q", got, want)
	}
}

func TestScheduleLeavesOutWhatIsNotNeeded(t *testing.T) {
	w, m := quiet()
	var got []string
	for _, s := range finish.Schedule(w, m) {
		got = append(got, s.Title)
	}
	if want := []string{"Look first", "Let the panels rest", "Cut", "Dry-fit", "Fit in order"}; !slices.Equal(got, want) {
		t.Errorf("steps %q, want %q", got, want)
	}
	if steps := finish.Schedule(finish.Work{}, m); steps != nil {
		t.Errorf("no pieces: %v", steps)
	}
}

// titled returns the text of the step with that title, or "".
func titled(w finish.Work, m finish.Materials, title string) string {
	for _, s := range finish.Schedule(w, m) {
		if s.Title == title {
			return s.String()
		}
	}
	return ""
}

func TestScheduleMitresOutsideCorners(t *testing.T) {
	w, m := quiet()
	w.Mitred = []string{"the corner of the pier and the niche"}
	text := titled(w, m, "Mitre the outside corners")
	for _, want := range []string{"the corner of the pier and the niche", "45 degrees", "long point"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q lacks %q", text, want)
		}
	}
}

// TestScheduleFitsClosingPiecesOnTheirOwn: what closes a run is not fitted with the rest.
func TestScheduleFitsClosingPiecesOnTheirOwn(t *testing.T) {
	w, m := quiet()
	w.Fitting, w.Closing = []string{"piece 1 on the left"}, []string{"2"}
	if text := titled(w, m, "Fit in order"); !strings.Contains(text, "Leave out what closes a run (2)") || !strings.Contains(text, "piece 1 on the left.") {
		t.Errorf("fit: %q", text)
	}
	if text := titled(w, m, "Closing pieces"); !strings.Contains(text, "Measure the space of 2 on the wall") {
		t.Errorf("close: %q", text)
	}
}

func TestScheduleOfBoards(t *testing.T) {
	w, m := quiet()
	w.Profile.Boards, m.Nails.None = true, false
	for thickness, want := range map[finish.Taped]string{"": "not on the shopping list", "3/4": "The list has them"} {
		m.Furring.Thickness = thickness
		if text := titled(w, m, "Strips behind the boards"); !strings.Contains(text, "at most 16 in apart") || !strings.Contains(text, want) {
			t.Errorf("strips of %q: %q, want %q", thickness, text, want)
		}
	}
	m.Nails.None, m.Furring.Thickness = true, "3/4"
	if text := titled(w, m, "Strips behind the boards"); text == "" {
		t.Error("strips that the job counts are not told")
	}
	m.Furring.Thickness = ""
	if text := titled(w, m, "Strips behind the boards"); text != "" {
		t.Errorf("strips behind boards that are glued only: %q", text)
	}
}

// TestBoardsAreNotCalledPanels has a work that raises every caution and needs every step: its words are those of boards.
func TestBoardsAreNotCalledPanels(t *testing.T) {
	w := kitchen()
	w.Profile.Boards, w.Profile.Thickness, w.Built, w.Highest = true, fraction.Of(1, 8), 1900, fraction.Inches(80)
	w.Mitred = []string{"the pier"}
	w.Joints[1].Gap = fraction.Inches(1)
	m := finish.Materials{House: finish.House{Damp: true, Backing: "studs"}, Adhesive: finish.Adhesive{Boards: "dots"}}
	m.Boxes = []finish.BoxNote{{Name: "switches", SetBack: "3"}}
	if raised, all := len(finish.Cautions(w, m)), len(finish.AllCautions()); raised != all {
		t.Errorf("%d of %d cautions raised", raised, all)
	}
	var said []string
	for _, c := range finish.Cautions(w, m) {
		said = append(said, c.When, c.Advice)
	}
	for _, s := range finish.Schedule(w, m) {
		said = append(said, s.String())
	}
	list := takeOff(t, w, m)
	for _, r := range list.Rows {
		if r.Item != "panel adhesive" && !strings.HasPrefix(r.Item, "sheeting") { // what they are sold as
			said = append(said, r.Item, r.How)
		}
	}
	for _, x := range list.Warnings {
		said = append(said, x.Text)
	}
	for _, text := range said {
		if words := strings.ReplaceAll(text, "plastic sheet", ""); strings.Contains(words, "panel") || strings.Contains(words, "sheet") {
			t.Errorf("boards are told as panels or sheets: %q", text)
		}
	}
	for _, c := range finish.AllCautions() {
		if strings.Contains(c.String(), "{") || strings.Contains(c.String(), "board that") {
			t.Errorf("%q has a word left open", c)
		}
	}
}

// TestDatumIsGuessedOnlyWhereTheJobIsSilent: a wainscot of 66 in on the floor needs no ladder, panels as high above a counter do.
func TestDatumIsGuessedOnlyWhereTheJobIsSilent(t *testing.T) {
	for _, c := range []struct {
		name          string
		change        func(w *finish.Work, m *finish.Materials)
		ladder, guess bool
	}{
		{"every run reaches 66 in", func(*finish.Work, *finish.Materials) {}, false, true},
		{"one run reaches 30 in", func(w *finish.Work, _ *finish.Materials) { w.Low = finish.CounterReach }, true, false},
		{"a range stands there", func(w *finish.Work, _ *finish.Materials) { w.Cooking = true }, true, false},
		{"the job gives a counter", func(_ *finish.Work, m *finish.Materials) { m.House.Datum = "36" }, true, false},
		{"the job gives the floor", func(_ *finish.Work, m *finish.Materials) { m.House.Datum = "0" }, false, false},
		{"73 in are too high from the floor too", func(w *finish.Work, _ *finish.Materials) { w.Highest = fraction.Inches(73) }, true, true},
	} {
		w, m := quiet()
		w.Highest, w.Low = fraction.Inches(66), fraction.Inches(66)
		c.change(&w, &m)
		raised := slices.ContainsFunc(finish.Cautions(w, m), func(c finish.Caution) bool { return c.Name == "ladder" })
		said := strings.Contains(titled(w, m, "Look first"), "taken to be the floor")
		if raised != c.ladder || said != c.guess {
			t.Errorf("%s: ladder %v, want %v; guess told %v, want %v", c.name, raised, c.ladder, said, c.guess)
		}
	}
}

func TestScheduleRestsByMaterial(t *testing.T) {
	w, m := quiet()
	rest := func() string { return finish.Schedule(w, m)[1].Wait.String() }
	if got := rest(); got != "24 to 72 hours" {
		t.Errorf("sheets rest %s", got)
	}
	w.Profile.Boards = true
	if got := rest(); got != "48 to 72 hours" {
		t.Errorf("boards rest %s", got)
	}
	m.House.Material = "solid wood"
	if got := rest(); got != "7 to 10 days" {
		t.Errorf("solid wood rests %s", got)
	}
	if got := finish.SkinSealant.String(); got != "5 to 15 minutes" {
		t.Errorf("sealant skins in %s", got)
	}
}
