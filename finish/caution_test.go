package finish_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"

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
	m := finish.Materials{House: finish.House{Material: finish.Plastic}, Nails: finish.Nails{None: true}, Adhesive: finish.Adhesive{Form: finish.NoGlue}}
	m.Paint.Primer = finish.Coating{Before: "0"}
	m.Paint.Top = finish.Coating{Before: "0", After: "0"}
	return w, m
}

func names(cautions []finish.Caution) []string {
	var all []string
	for _, c := range cautions {
		all = append(all, c.String())
	}
	return all
}

// TestEachConditionRaisesItsCautions flips one condition at a time.
func TestEachConditionRaisesItsCautions(t *testing.T) {
	raised := map[string]bool{}
	const boxed = "power, box flush, device held, box open, protection"
	for _, c := range []struct {
		name        string
		change      func(w *finish.Work, m *finish.Materials)
		adds, lacks string // to and of what pieces alone raise
	}{
		{"pieces alone", func(*finish.Work, *finish.Materials) {}, "", ""},
		{"nothing", func(w *finish.Work, _ *finish.Materials) { *w = finish.Work{} }, "", "saws, children, fire spread"},
		{"a box", func(w *finish.Work, _ *finish.Materials) { w.Boxes = []finish.Box{{Name: "a"}} }, boxed, ""},
		{"a box behind what cannot burn", func(w *finish.Work, m *finish.Materials) {
			w.Boxes, m.House.Material = []finish.Box{{Name: "a"}}, finish.Noncombustible
		}, "power, device held, box open, protection, silica", "fire spread"},
		{"cooking", func(w *finish.Work, _ *finish.Materials) { w.Cooking = true }, "heat", ""},
		{"built in 1989", func(w *finish.Work, _ *finish.Materials) { w.Built = 1989 }, "asbestos", ""},
		{"built in 1978", func(w *finish.Work, _ *finish.Materials) { w.Built = 1978 }, "asbestos", ""},
		{"built in 1977", func(w *finish.Work, _ *finish.Materials) { w.Built = 1977 }, "lead, asbestos", ""},
		{"built nobody knows when", func(w *finish.Work, _ *finish.Materials) { w.Built = 0 }, "lead, asbestos", ""},
		{"nails", func(_ *finish.Work, m *finish.Materials) { m.Nails.None = false }, "cables and pipes, nailer", ""},
		{"screws through what cannot burn", func(_ *finish.Work, m *finish.Materials) {
			m.Nails.None, m.House.Material = false, finish.Noncombustible
		}, "cables and pipes, silica", "fire spread"},
		{"a trim is nailed", func(w *finish.Work, _ *finish.Materials) {
			w.Covers = []finish.Covering{{Name: "cap", Length: fraction.Inches(40)}}
		}, "cables and pipes, nailer", ""},
		{"fibreboard", func(_ *finish.Work, m *finish.Materials) { m.House.Material = finish.MDF }, "dust, resin, splash", ""},
		{"solid wood", func(_ *finish.Work, m *finish.Materials) { m.House.Material = finish.SolidWood }, "dust, splash", ""},
		{"at 6 ft", func(w *finish.Work, _ *finish.Materials) { w.Highest = fraction.Inches(36) }, "", ""},
		{"above 6 ft", func(w *finish.Work, _ *finish.Materials) { w.Highest = fraction.MustParse("36 1/16") }, "ladder", ""},
		{"1/4 in hardboard on studs", func(_ *finish.Work, m *finish.Materials) {
			m.House.Material, m.House.Backing = finish.Hardboard, finish.BareStuds
		}, "dust, splash", ""},
		{"3/16 in hardboard on studs", func(w *finish.Work, m *finish.Materials) {
			m.House.Material, m.House.Backing, w.Profile.Thickness = finish.Hardboard, finish.BareStuds, fraction.Of(3, 16)
		}, "dust, thin panel, splash", ""},
		{"6 mm hardboard on studs, 0.236 in", func(w *finish.Work, m *finish.Materials) {
			m.House.Material, m.House.Backing, w.Profile.Thickness = finish.Hardboard, finish.BareStuds, fraction.Millimetres(6, 1)
		}, "dust, thin panel, splash", ""},
		{"glue", func(_ *finish.Work, m *finish.Materials) { m.Adhesive.Form = finish.GlueBeads }, "fumes", ""},
		{"paint", func(_ *finish.Work, m *finish.Materials) { m.Paint.Top.After = "1" }, "fumes", ""},
		{"a box in a house of 1965", func(w *finish.Work, _ *finish.Materials) { w.Boxes, w.Built = []finish.Box{{Name: "a"}}, 1965 }, boxed + ", aluminum wiring, lead, asbestos", ""},
		{"a box in a house of 1964", func(w *finish.Work, _ *finish.Materials) { w.Boxes, w.Built = []finish.Box{{Name: "a"}}, 1964 }, boxed + ", lead, asbestos", ""},
		{"a box in a house of 1973", func(w *finish.Work, _ *finish.Materials) { w.Boxes, w.Built = []finish.Box{{Name: "a"}}, 1973 }, boxed + ", aluminum wiring, lead, asbestos", ""},
		{"a box in a house of 1974", func(w *finish.Work, _ *finish.Materials) { w.Boxes, w.Built = []finish.Box{{Name: "a"}}, 1974 }, boxed + ", lead, asbestos", ""},
		{"a box in a house of no known year", func(w *finish.Work, _ *finish.Materials) { w.Boxes, w.Built = []finish.Box{{Name: "a"}}, 0 }, boxed + ", aluminum wiring, lead, asbestos", ""},
		{"strips", func(_ *finish.Work, m *finish.Materials) { m.Furring.Thickness = "3/4" }, "cables and pipes, fire blocking", ""},
		{"masonry, to which nothing is nailed", func(_ *finish.Work, m *finish.Materials) { m.House.Backing, m.Nails.None = finish.Masonry, false }, "masonry", ""},
		{"wood on the floor of a dry room", func(_ *finish.Work, m *finish.Materials) { m.House.Material, m.House.Datum = finish.SolidWood, "0" }, "dust", ""},
		{"damp", func(_ *finish.Work, m *finish.Materials) { m.House.Damp = true }, "damp", ""},
	} {
		w, m := quiet()
		c.change(&w, &m)
		got := names(finish.Cautions(w, m))
		want := append(strings.Split(c.adds, ", "), "saws", "children", "fire spread")
		want = slices.DeleteFunc(want, func(word string) bool { return word == "" || slices.Contains(strings.Split(c.lacks, ", "), word) })
		if !slices.Equal(slices.Sorted(slices.Values(got)), slices.Sorted(slices.Values(want))) {
			t.Errorf("%s: %q, want %q", c.name, got, want)
		}
		if !slices.IsSorted(finish.Cautions(w, m)) {
			t.Errorf("%s: %q are not in their order", c.name, got)
		}
		for _, n := range got {
			raised[n] = true
		}
	}
	for c := finish.Power; c <= finish.MasonryWall; c++ {
		if !raised[c.String()] {
			t.Errorf("no condition of this table raises %q", c)
		}
	}
}

// order is the schedule of a work, a step in each text.
func order(w finish.Work, m finish.Materials) []string {
	all := []string{}
	for _, s := range finish.Schedule(w, m) {
		all = append(all, s.String())
	}
	return all
}

func TestScheduleOrder(t *testing.T) {
	quietWork, quietMaterials := quiet()
	boarded, nailed := quiet()
	boarded.Profile.Boards, boarded.Boxes, nailed.Nails.None = true, []finish.Box{{Name: "a"}}, false
	listed := nailed
	listed.Furring.Thickness, listed.Nails.None, listed.Adhesive.Boards = "3/4", true, finish.GlueDots
	closed := quietWork
	closed.Fitting, closed.Closing, closed.Mitred = []string{"1", "3a", "2", "3", "4", "5"}, []string{"2", "4", "5"}, true
	damp := finish.Materials{House: finish.House{Damp: true, Material: finish.SolidWood, Datum: "0"}, Paint: finish.Paint{Primer: finish.Coating{Before: "2", After: "1"}}, Tape: finish.Tape{PaintLines: "0"}}
	for _, c := range []struct {
		name string
		work finish.Work
		m    finish.Materials
		want []string
	}{
		{"the kitchen", kitchen(), finish.Materials{}, []string{
			"look: test paint; find asbestos", "rest: rest sheets", "lines", "cut: pieces 5; closing 5", "mains off", "dry fit: extenders",
			"first coats: primer 1; edges 2; top coat 1", "fit: adhesive 32 ft2; nails; fitting 1, 2, 3, 4; closing 5", "trim", "fill",
			"tape: counter; joints 19.84 ft; lines 2", "seal", "last coats: lines 1; top coat 1", "seal wet: after paint; joints 19.84 ft; lines 2; grooves", "devices", "power on",
		}},
		{"a damp kitchen of solid wood on the floor, no tape for paint", kitchen(), damp, []string{
			"look: test paint; find asbestos", "rest: rest wood", "lines", "cut: pieces 5; closing 5", "mains off", "dry fit: extenders",
			"first coats: primer 2; edges 1; top coat 1; backs", "fit: adhesive 32 ft2; nails; fitting 1, 2, 3, 4; closing 5", "trim", "fill",
			"tape: floor; joints 19.84 ft; lines 2", "seal", "last coats: primer 1; top coat 1", "seal wet: after paint; joints 19.84 ft; lines 2; grooves", "devices", "power on",
		}},
		{"no ends of grooves are filled", kitchen(), finish.Materials{Sealant: finish.Sealant{GrooveFill: "0"}}, []string{
			"look: test paint; find asbestos", "rest: rest sheets", "lines", "cut: pieces 5; closing 5", "mains off", "dry fit: extenders",
			"first coats: primer 1; edges 2; top coat 1", "fit: adhesive 32 ft2; nails; fitting 1, 2, 3, 4; closing 5", "trim", "fill",
			"tape: counter; joints 19.84 ft; lines 2", "seal", "last coats: lines 1; top coat 1", "seal wet: after paint; joints 19.84 ft; lines 2", "devices", "power on",
		}},
		{"what is not needed is left out", quietWork, quietMaterials, []string{"look", "rest: rest sheets", "lines", "cut: pieces 1", "dry fit", "fit"}},
		{"glue alone holds: a cartridge goes half as far", quietWork, finish.Materials{House: quietMaterials.House, Paint: quietMaterials.Paint,
			Nails: quietMaterials.Nails}, []string{"look", "rest: rest sheets", "lines", "cut: pieces 1", "dry fit", "fit: adhesive 16 ft2"}},
		{"what cannot burn is screwed", quietWork, finish.Materials{House: finish.House{Material: finish.Noncombustible}, Paint: quietMaterials.Paint,
			Adhesive: quietMaterials.Adhesive}, []string{"look", "rest: rest sheets", "lines", "cut: pieces 1", "dry fit", "fit: screws"}},
		{"no pieces", finish.Work{}, quietMaterials, []string{}},
		{"closing pieces, each measured when those before it are up, and a mitered corner", closed, quietMaterials, []string{
			"look", "rest: rest sheets", "lines", "cut: pieces 1; closing 2, 4, 5", "miter", "dry fit", "fit: fitting 1, 3a; closing 2; fitting 3; closing 4; closing 5",
		}},
		{"boards on strips that are not on the list", boarded, nailed, []string{
			"look", "rest: rest boards", "strips: strips 16 in; strips unlisted; set boxes back", "lines", "cut: pieces 1", "mains off", "dry fit: extenders", "fit: nails", "devices", "power on",
		}},
		{"boards that are glued only, on strips that are", boarded, listed, []string{
			"look", "rest: rest boards", "strips: strips 16 in; strips listed", "lines", "cut: pieces 1", "mains off", "dry fit: extenders", "fit: dots", "devices", "power on",
		}},
		{"boards that are glued only, no strips", boarded, quietMaterials, []string{
			"look", "rest: rest boards", "lines", "cut: pieces 1", "mains off", "dry fit: extenders", "fit", "devices", "power on",
		}},
	} {
		if diff := cmp.Diff(c.want, order(c.work, c.m)); diff != "" {
			t.Errorf("%s (-want +got)\n%s", c.name, diff)
		}
	}
}

// TestStepsReadBack writes and reads every step of every stage with every kind of act.
func TestStepsReadBack(t *testing.T) {
	var steps []finish.Step
	for stage := finish.StageLook; stage <= finish.StagePowerOn; stage++ {
		step := finish.Step{Stage: stage}
		for kind := finish.ActTestPaint; kind <= finish.ActLines; kind++ {
			a := finish.Act{Kind: kind}
			switch {
			case kind == finish.ActClosing || kind == finish.ActFitting:
				a.Labels = []string{"1", "3a"}
			case kind%2 == 0:
				a.Figure = finish.Figure{Value: finish.Decimal{Decimal: decimal.New(605, -1)}, Unit: finish.UnitFluidOunce}
			}
			step.Acts = append(step.Acts, a)
		}
		steps = append(steps, step, finish.Step{Stage: stage})
	}
	text, err := json.Marshal(steps)
	if err != nil {
		t.Fatal(err)
	}
	var again []finish.Step
	if err := json.Unmarshal(text, &again); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(steps, again); diff != "" {
		t.Errorf("(-written +read)\n%s", diff)
	}
	for _, wrong := range []string{"", "sing", "cut: sing", "cut: pieces many", "cut: ", "cut: pieces 1 yard", "cut:"} {
		if err := new(finish.Step).UnmarshalText([]byte(wrong)); err == nil {
			t.Errorf("%q was read", wrong)
		}
	}
	for _, wrong := range []finish.Step{{Stage: 200}, {Acts: []finish.Act{{Kind: 200}}}} {
		if _, err := wrong.MarshalText(); err == nil {
			t.Errorf("%v was written", wrong)
		}
	}
}

// TestDatumIsGuessedOnlyWhereTheJobIsSilent: a wainscot of 66 in on the floor needs no ladder,
// panels as high above a counter do.
func TestDatumIsGuessedOnlyWhereTheJobIsSilent(t *testing.T) {
	for _, c := range []struct {
		name          string
		change        func(w *finish.Work, m *finish.Materials)
		ladder, guess bool
	}{
		{"every run reaches 66 in", func(*finish.Work, *finish.Materials) {}, false, true},
		{"one run reaches 30 in", func(w *finish.Work, _ *finish.Materials) { w.Low = finish.CounterReach() }, true, false},
		{"a range stands there", func(w *finish.Work, _ *finish.Materials) { w.Cooking = true }, true, false},
		{"the job gives a counter", func(_ *finish.Work, m *finish.Materials) { m.House.Datum = "36" }, true, false},
		{"the job gives the floor", func(_ *finish.Work, m *finish.Materials) { m.House.Datum = "0" }, false, false},
		{"73 in are too high from the floor too", func(w *finish.Work, _ *finish.Materials) { w.Highest = fraction.Inches(73) }, true, true},
	} {
		w, m := quiet()
		w.Highest, w.Low = fraction.Inches(66), fraction.Inches(66)
		c.change(&w, &m)
		raised := slices.Contains(finish.Cautions(w, m), finish.Ladder)
		said := order(w, m)[0] == "look: assume floor 30 in"
		if raised != c.ladder || said != c.guess {
			t.Errorf("%s: ladder %v, want %v; guess said %v, want %v", c.name, raised, c.ladder, said, c.guess)
		}
	}
}

func TestWaits(t *testing.T) {
	for w := finish.RestSheets; w <= finish.CureSealant; w++ {
		if least, most, source := w.Range(); least <= 0 || most <= least || source == finish.NoSource {
			t.Errorf("wait %d: %d to %d, %s", w, least, most, source)
		}
	}
	if least, most, source := finish.Wait(200).Range(); least != 0 || most != 0 || source != finish.NoSource {
		t.Errorf("no wait: %d to %d, %s", least, most, source)
	}
}
