package finish_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
)

// decode reads materials as a job file has them.
func decode(text string) (m finish.Materials, err error) {
	d := json.NewDecoder(strings.NewReader(text))
	d.DisallowUnknownFields()
	err = d.Decode(&m)
	return m, err
}

// paths are the paths of the faults in an error.
func paths(err error) []string {
	var all []string
	for _, f := range fault.All(err) {
		all = append(all, f.Path.String())
	}
	return all
}

func TestMaterialsNameTheFieldThatIsWrong(t *testing.T) {
	for _, c := range []struct{ name, json, path string }{
		{"no unit in a coverage", `{"paint":{"top":{"coverage":"350"}}}`, "Paint.Top.Coverage"},
		{"coverage of nothing", `{"paint":{"primer":{"coverage":"0 ft2/gal"}}}`, "Paint.Primer.Coverage"},
		{"coverage upside down", `{"paint":{"primer":{"coverage":"0.1 gal/ft2"}}}`, "Paint.Primer.Coverage"},
		{"coverage and solids", `{"paint":{"top":{"coverage":"350 ft2/gal","solids":0.4,"dry_film":"0.002"}}}`, "Paint.Top.Coverage"},
		{"solids without a film", `{"paint":{"top":{"solids":0.4}}}`, "Paint.Top"},
		{"film without solids", `{"paint":{"top":{"dry_film":"0.002"}}}`, "Paint.Top"},
		{"solids in percent", `{"paint":{"top":{"solids":40,"dry_film":"0.002"}}}`, "Paint.Top.Solids"},
		{"no solids", `{"paint":{"top":{"solids":0,"dry_film":"0.002"}}}`, "Paint.Top.Solids"},
		{"a film of nothing", `{"paint":{"top":{"solids":0.4,"dry_film":"0"}}}`, "Paint.Top.DryFilm"},
		{"a film under a tenth of a mil", `{"paint":{"top":{"solids":0.4,"dry_film":"0.00009"}}}`, "Paint.Top.DryFilm"},
		{"half a coat", `{"paint":{"top":{"after":1.5}}}`, "Paint.Top.After"},
		{"less than no coat", `{"paint":{"primer":{"before":-1}}}`, "Paint.Primer.Before"},
		{"all paint lost", `{"paint":{"loss":1}}`, "Paint.Loss"},
		{"loss in percent", `{"paint":{"loss":"10%"}}`, "Paint.Loss"},
		{"can without a size", `{"paint":{"top":{"containers":[{"name":"can"}]}}}`, "Paint.Top.Containers[0].Size"},
		{"can in ounces of weight", `{"paint":{"top":{"containers":[{"name":"can","size":"12 oz"}]}}}`, "Paint.Top.Containers[0].Size"},
		{"can without a name", `{"paint":{"top":{"containers":[{"name":" ","size":"1 qt"}]}}}`, "Paint.Top.Containers[0].Name"},
		{"second can with a wrong price", `{"paint":{"top":{"containers":[{"name":"a","size":"1 qt"},{"name":"b","size":"1 gal","price":"1,20"}]}}}`, "Paint.Top.Containers[1].Price"},
		{"a price to be paid back", `{"trim":{"stick":{"name":"strip","length":"8'","price":"-1"}}}`, "Trim.Stick.Price"},
		{"a price with an exponent", `{"extenders":[{"depth":"1/4","price":"1e3"}]}`, "Extenders[0].Price"},
		{"a price that is a list", `{"extenders":[{"depth":"1/4","price":[1]}]}`, "Extenders[0].Price"},
		{"a price too fine", `{"extenders":[{"depth":"1/4","price":"0.00001"}]}`, "Extenders[0].Price"},
		{"an extender of no depth", `{"extenders":[{"gangs":1}]}`, "Extenders[0].Depth"},
		{"an extender for eleven", `{"extenders":[{"gangs":11,"depth":"1/4"}]}`, "Extenders[0].Gangs"},
		{"a fillet without a leg", `{"sealant":{"counter_line":{"leg":"0"}}}`, "Sealant.CounterLine.Leg"},
		{"a depth of nothing", `{"sealant":{"window":{"depth":"0"}}}`, "Sealant.Window.Depth"},
		{"a negative fill", `{"sealant":{"groove_fill":"-1/4"}}`, "Sealant.GrooveFill"},
		{"words for a length", `{"sealant":{"bridge":"a quarter"}}`, "Sealant.Bridge"},
		{"waste above all", `{"sealant":{"waste":"2"}}`, "Sealant.Waste"},
		{"a tube in inches", `{"adhesive":{"cartridges":[{"name":"tube","size":"10 in"}]}}`, "Adhesive.Cartridges[0].Size"},
		{"beads on beads", `{"adhesive":{"spacing":"1/2"}}`, "Adhesive.Spacing"},
		{"nails without a spacing", `{"nails":{"edge":"0"}}`, "Nails.Edge"},
		{"nails that do not rise", `{"nails":{"lengths":["2","1"]}}`, "Nails.Lengths[1]"},
		{"a box of no nails", `{"nails":{"packs":[{"name":"box","count":0}]}}`, "Nails.Packs[0].Count"},
		{"a strip of no thickness", `{"furring":{"thickness":"0"}}`, "Furring.Thickness"},
		{"a strip without a name", `{"furring":{"strips":[{"length":"8'"}]}}`, "Furring.Strips[0].Name"},
		{"two cans of one name", `{"paint":{"top":{"containers":[{"name":"a","size":"1 qt"},{"name":"a","size":"1 gal"}]}}}`, "Paint.Top.Containers[1].Name"},
		{"an extra twice", `{"extras":[{"item":"brush","buy":1},{"item":"brush","buy":2}]}`, "Extras[1].Item"},
		{"a box named twice", `{"boxes":[{"name":"a"},{"name":"a"}]}`, "Boxes[1].Name"},
		{"a box without a name", `{"boxes":[{"gangs":2}]}`, "Boxes[0].Name"},
		{"a set-back in words", `{"boxes":[{"name":"a","set_back":"some"}]}`, "Boxes[0].SetBack"},
		{"screws by the hundred", `{"screws":{"device_per_gang":100}}`, "Screws.DevicePerGang"},
		{"a roll of no length", `{"tape":{"rolls":[{"name":"roll","length":"0"}]}}`, "Tape.Rolls[0].Length"},
		{"a cover in feet", `{"sheeting":{"sheets":[{"name":"cover","size":"9 ft"}]}}`, "Sheeting.Sheets[0].Size"},
		{"studs side by side", `{"house":{"studs":"1/2"}}`, "House.Studs"},
		{"tax in percent", `{"tax":8.25}`, "Tax"},
		{"leftovers worth more than new", `{"leftover_worth":1.1}`, "LeftoverWorth"},
		{"an extra without a name", `{"extras":[{"buy":1}]}`, "Extras[0].Item"},
		{"no extra at all", `{"extras":[{"item":"brush"}]}`, "Extras[0].Buy"},
	} {
		t.Run(c.name, func(t *testing.T) {
			m, err := decode(c.json)
			if err != nil {
				t.Fatal(err)
			}
			err = m.Validate(fraction.Inch)
			if diff := cmp.Diff([]string{c.path}, paths(err)); diff != "" {
				t.Errorf("Validate() = %v (-want +got)\n%s", err, diff)
			}
			if _, _, again := finish.TakeOff(finish.Work{}, m); again == nil || again.Error() != err.Error() {
				t.Errorf("TakeOff() = %v, want %v", again, err)
			}
		})
	}
}

// A word of no enumeration is refused where it is read, and a value of none by Validate.
func TestWordsOfNoEnumeration(t *testing.T) {
	for _, text := range []string{
		`{"paint":{"groove":"round"}}`, `{"sealant":{"seam":{"form":"round"}}}`, `{"adhesive":{"form":"lines"}}`, `{"adhesive":{"hold":"heavy"}}`,
		`{"house":{"material":"oak"}}`, `{"house":{"backing":"air"}}`,
	} {
		if _, err := decode(text); err == nil {
			t.Errorf("%s passed", text)
		}
	}
	m := finish.Materials{House: finish.House{Material: 200, Backing: 200}, Adhesive: finish.Adhesive{Form: 200, Boards: 200, Hold: 200}}
	m.Paint.Groove, m.Sealant.Step.Form = 200, 200
	want := []string{"House.Material", "House.Backing", "Paint.Groove", "Sealant.Step.Form", "Adhesive.Form", "Adhesive.Boards", "Adhesive.Hold"}
	got := paths(m.Validate(fraction.Inch))
	slices.Sort(got)
	slices.Sort(want)
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestAllFaultsAreReportedInTheOrderOfTheFields(t *testing.T) {
	m, err := decode(`{"tax": "much", "nails": {"edge": "x"}, "paint": {"loss": 7, "top": {"coverage": "?"}}}`)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"Paint.Top.Coverage", "Paint.Loss", "Nails.Edge", "Tax"}
	if diff := cmp.Diff(want, paths(m.Validate(fraction.Inch))); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestWorkThatNoPlanGives(t *testing.T) {
	minus := fraction.Inches(-1)
	for _, c := range []struct {
		path string
		work finish.Work
	}{
		{"Work.Face", finish.Work{Face: minus.Times(fraction.Inches(1))}},
		{"Work.Boxes[0].Name", finish.Work{Boxes: []finish.Box{{}}}},
		{"Work.Built", finish.Work{Built: -1}},
		{"Work.Edges", finish.Work{Edges: minus}},
		{"Work.Pieces[0].Height", finish.Work{Pieces: []finish.Piece{{Height: minus}}}},
		{"Work.Joints[0].Kind", finish.Work{Joints: []finish.Joint{{}}}},
		{"Work.Boxes[0].Gangs", finish.Work{Boxes: []finish.Box{{Name: "a", Gangs: 11}}}},
		{"Work.Fitting[0]", finish.Work{Fitting: []string{"1, 2"}}},
		{"Work.Sheets[0].Price", finish.Work{Sheets: []finish.Sheet{{Name: "a", Count: 1, Price: money.Of(decimal.NewFromInt(-1))}}}},
		{"Work.Joints[1].Kind", finish.Work{Joints: []finish.Joint{{Kind: finish.Seam}, {Kind: 200}}}},
		{"Work.Joints[0].Length", finish.Work{Joints: []finish.Joint{{Kind: finish.Seam, Length: finish.MaxLength().Add(fraction.Inches(1))}}}},
		{"Work.Ends[0].Length", finish.Work{Ends: []finish.End{{Length: minus}}}},
		{"Work.Pieces[0].Area", finish.Work{Pieces: []finish.Piece{{Width: fraction.Inches(2), Height: fraction.Inches(3), Area: fraction.Inches(7).Times(fraction.Inches(1))}}}},
		{"Work.Covers[0].Length", finish.Work{Covers: []finish.Covering{{Name: "cap", Length: minus}}}},
		{"Work.Up", finish.Work{Up: minus.Times(fraction.Inches(1))}},
		{"Work.Up", finish.Work{Up: finish.MaxLength().Times(finish.MaxLength().Add(fraction.Inches(1)))}},
		{"Work.Pieces[0].Width", finish.Work{Pieces: []finish.Piece{{Width: minus}}}},
		{"Work.Pieces[0].OpeningEdges", finish.Work{Pieces: []finish.Piece{{OpeningEdges: minus}}}},
		{"Work.Joints[0].Gap", finish.Work{Joints: []finish.Joint{{Kind: finish.Seam, Gap: minus}}}},
		{"Work.Width", finish.Work{Width: minus}},
		{"Work.Low", finish.Work{Low: minus}},
		{"Work.Sides", finish.Work{Sides: minus}},
		{"Work.Sheets[0].Width", finish.Work{Sheets: []finish.Sheet{{Name: "a", Count: 1, Width: minus}}}},
		{"Work.Sheets[0].Length", finish.Work{Sheets: []finish.Sheet{{Name: "a", Count: 1, Length: minus}}}},
		{"Work.Sheets[0].Count", finish.Work{Sheets: []finish.Sheet{{Name: "a", Count: -1}}}},
		{"Work.Profile.Features[0].Width", finish.Work{Profile: groove.Profile{Features: []groove.Feature{{Width: minus}}}}},
		{"Work", finish.Work{Pieces: make([]finish.Piece, finish.MaxCount+1)}},
		{"Work", finish.Work{Joints: make([]finish.Joint, finish.MaxCount+1)}},
		{"Work", finish.Work{Boxes: make([]finish.Box, finish.MaxCount+1)}},
		{"Work", finish.Work{Ends: make([]finish.End, finish.MaxCount+1)}},
		{"Work", finish.Work{Sheets: make([]finish.Sheet, finish.MaxCount+1)}},
		{"Work", finish.Work{Covers: make([]finish.Covering, finish.MaxCount+1)}},
		{"Work", finish.Work{Fitting: make([]string, finish.MaxCount+1)}},
		{"Work", finish.Work{Closing: make([]string, finish.MaxCount+1)}},
	} {
		_, _, err := finish.TakeOff(c.work, finish.Materials{})
		if diff := cmp.Diff([]string{c.path}, paths(err)); diff != "" {
			t.Errorf("%v (-want +got)\n%s", err, diff)
		}
	}
	if _, _, err := finish.TakeOff(finish.Work{Up: finish.MaxLength().Times(finish.MaxLength())}, finish.Materials{}); slices.Contains(paths(err), "Work.Up") {
		t.Errorf("as great an area as there may be: %v", err)
	}
	if _, _, err := finish.TakeOff(finish.Work{Fitting: slices.Repeat([]string{"1"}, finish.MaxCount)}, finish.Materials{}); err != nil {
		t.Errorf("as many labels as there may be: %v", err)
	}
}

func TestMorePacksThanAnyoneBuys(t *testing.T) {
	m := finish.Materials{Tape: finish.Tape{Rolls: []finish.Roll{{Name: "crumb", Length: "0.001"}}}}
	_, _, err := finish.TakeOff(finish.Work{Joints: []finish.Joint{{Kind: finish.EndJoint, Length: fraction.Inches(500), Gap: fraction.Of(1, 16)}}}, m)
	want := "masking tape, 1650000 packs: more than anyone buys; want at most 100000: check its quantities and sizes"
	if f := fault.All(err); !errors.Is(err, finish.ErrPacks) || len(f) != 1 || f[0].Error() != want {
		t.Errorf("TakeOff() = %v, want %s", err, want)
	}
}

func TestUnknownFieldsAreRefusedByTheDecoder(t *testing.T) {
	if _, err := decode(`{"paint":{"top":{"colour":"green"}}}`); err == nil {
		t.Error("an unknown field passed")
	}
}

func TestBareLengthsTakeTheUnitsOfTheJob(t *testing.T) {
	m, err := decode(`{"house":{"wall":"12.7"},"nails":{"penetration":"19.05"}}`)
	if err != nil {
		t.Fatal(err)
	}
	w := finish.Work{Units: fraction.Millimetre, Pieces: []finish.Piece{{Width: fraction.Inches(10), Height: fraction.Inches(10)}}}
	w.Profile = groove.Profile{Features: []groove.Feature{{Width: fraction.Inches(2)}}, Thickness: fraction.Of(1, 4)}
	list := takeOff(t, w, m)
	for _, row := range list.Rows {
		if row.Item == finish.ItemPanelNails {
			want := "thickness 6.35 mm; wall 12.7 mm; penetration 19.05 mm; needed 38.1 mm"
			if got := termsOf(row); !strings.Contains(got, want) {
				t.Errorf("terms %q, want %q in them", got, want)
			}
			return
		}
	}
	t.Error("no nails")
}

func TestDefaultsAreValidAndShareNothing(t *testing.T) {
	for _, u := range []fraction.Unit{fraction.Inch, fraction.Millimetre, fraction.Centimetre} {
		d := finish.Defaults(u)
		if err := d.Validate(u); err != nil {
			t.Errorf("defaults in %v: %v", u, err)
		}
		text, err := json.Marshal(d)
		if err != nil {
			t.Fatal(err)
		}
		again, err := decode(string(text))
		if diff := cmp.Diff(d, again); err != nil || diff != "" {
			t.Errorf("%v, JSON and back (-want +got)\n%s", err, diff)
		}
		for i := range d.Paint.Top.Containers {
			d.Paint.Top.Containers[i].Size = "changed"
		}
		for i := range d.Nails.Lengths {
			d.Nails.Lengths[i] = "changed"
		}
		for i := range d.Extenders {
			d.Extenders[i].Depth = "changed"
		}
		fresh, err := json.Marshal(finish.Defaults(u))
		if err != nil || !bytes.Equal(text, fresh) {
			t.Errorf("a change of one set of defaults in %v shows in the next: %v", u, err)
		}
	}
}

// FuzzMaterials gives any text as the materials of a kitchen: it is refused, or it makes a list,
// and never a panic.
func FuzzMaterials(once *testing.F) {
	f := fractiontest.F{F: once}
	for _, seed := range []string{
		`{}`,
		`{"tax":0.08,"paint":{"top":{"solids":"0.4","dry_film":"0.05 mm","containers":[{"name":"tin","size":"2.5 L","price":"30"}]}}}`, // a list
		`{"adhesive":{"form":"dots","hold":"full"},"nails":{"none":true}}`,                                                             // other branches
		`{"boxes":[{"name":"switches","gangs":2,"set_back":"-1/8"}],"house":{"material":"noncombustible"}}`,
		`{"tax":{"a":[1,2,"x"]},"leftover_worth":1}`, // a number that is none
		`{"tape":{"rolls":[{"name":"r","length":"0.0001"}]}}`,
	} {
		f.Add(seed)
	}
	w := kitchen()
	f.Fuzz(func(t *testing.T, text string) {
		m, err := decode(text)
		if err != nil {
			return
		}
		list, _, err := finish.TakeOff(w, m)
		if valid := m.Validate(w.Units); (valid != nil) != (len(paths(err)) > 0 && !errors.Is(err, finish.ErrPacks)) {
			t.Fatalf("Validate() = %v, TakeOff() = %v", valid, err)
		}
		if err != nil {
			return
		}
		for _, row := range list.Rows {
			if row.Buy < 1 || row.Container == "" {
				t.Fatalf("row %+v", row)
			}
		}
		finish.Cautions(w, m)
		finish.Schedule(w, m)
	})
}
