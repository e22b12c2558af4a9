package finish_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
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
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		for _, err := range joined.Unwrap() {
			all = append(all, paths(err)...)
		}
		return all
	}
	if field, ok := errors.AsType[*finish.FieldError](err); ok {
		all = append(all, field.Path)
	}
	return all
}

func TestMaterialsNameTheFieldThatIsWrong(t *testing.T) {
	for _, c := range []struct{ name, json, path string }{
		{"no unit in a coverage", `{"paint":{"top":{"coverage":"350"}}}`, "finish.paint.top.coverage"},
		{"coverage of nothing", `{"paint":{"primer":{"coverage":"0 ft2/gal"}}}`, "finish.paint.primer.coverage"},
		{"coverage upside down", `{"paint":{"primer":{"coverage":"0.1 gal/ft2"}}}`, "finish.paint.primer.coverage"},
		{"coverage and solids", `{"paint":{"top":{"coverage":"350 ft2/gal","solids":0.4,"dry_film":"0.002"}}}`, "finish.paint.top.coverage"},
		{"solids without a film", `{"paint":{"top":{"solids":0.4}}}`, "finish.paint.top"},
		{"film without solids", `{"paint":{"top":{"dry_film":"0.002"}}}`, "finish.paint.top"},
		{"solids in percent", `{"paint":{"top":{"solids":40,"dry_film":"0.002"}}}`, "finish.paint.top.solids"},
		{"no solids", `{"paint":{"top":{"solids":0,"dry_film":"0.002"}}}`, "finish.paint.top.solids"},
		{"a film of nothing", `{"paint":{"top":{"solids":0.4,"dry_film":"0"}}}`, "finish.paint.top.dry_film"},
		{"half a coat", `{"paint":{"top":{"after":1.5}}}`, "finish.paint.top.after"},
		{"less than no coat", `{"paint":{"primer":{"before":-1}}}`, "finish.paint.primer.before"},
		{"all paint lost", `{"paint":{"loss":1}}`, "finish.paint.loss"},
		{"loss in percent", `{"paint":{"loss":"10%"}}`, "finish.paint.loss"},
		{"a round groove", `{"paint":{"groove":"round"}}`, "finish.paint.groove"},
		{"can without a size", `{"paint":{"top":{"containers":[{"name":"can"}]}}}`, "finish.paint.top.containers[0].size"},
		{"can in ounces of weight", `{"paint":{"top":{"containers":[{"name":"can","size":"12 oz"}]}}}`, "finish.paint.top.containers[0].size"},
		{"can without a name", `{"paint":{"top":{"containers":[{"name":" ","size":"1 qt"}]}}}`, "finish.paint.top.containers[0].name"},
		{"second can with a wrong price", `{"paint":{"top":{"containers":[{"name":"a","size":"1 qt"},{"name":"b","size":"1 gal","price":"1,20"}]}}}`, "finish.paint.top.containers[1].price"},
		{"a price to be paid back", `{"trim":{"stick":{"name":"strip","length":"8'","price":"-1"}}}`, "finish.trim.stick.price"},
		{"a price with an exponent", `{"extenders":[{"depth":"1/4","price":"1e3"}]}`, "finish.extenders[0].price"},
		{"a price that is a list", `{"extenders":[{"depth":"1/4","price":[1]}]}`, "finish.extenders[0].price"},
		{"a price too fine", `{"extenders":[{"depth":"1/4","price":"0.00001"}]}`, "finish.extenders[0].price"},
		{"an extender of no depth", `{"extenders":[{"gangs":1}]}`, "finish.extenders[0].depth"},
		{"an extender for eleven", `{"extenders":[{"gangs":11,"depth":"1/4"}]}`, "finish.extenders[0].gangs"},
		{"an unknown bead", `{"sealant":{"seam":{"form":"round"}}}`, "finish.sealant.seam.form"},
		{"a fillet without a leg", `{"sealant":{"counter_line":{"leg":"0"}}}`, "finish.sealant.counter_line.leg"},
		{"a depth of nothing", `{"sealant":{"window":{"depth":"0"}}}`, "finish.sealant.window.depth"},
		{"a negative fill", `{"sealant":{"groove_fill":"-1/4"}}`, "finish.sealant.groove_fill"},
		{"words for a length", `{"sealant":{"bridge":"a quarter"}}`, "finish.sealant.bridge"},
		{"waste above all", `{"sealant":{"waste":"2"}}`, "finish.sealant.waste"},
		{"a tube in inches", `{"adhesive":{"cartridges":[{"name":"tube","size":"10 in"}]}}`, "finish.adhesive.cartridges[0].size"},
		{"an unknown form of glue", `{"adhesive":{"form":"lines"}}`, "finish.adhesive.form"},
		{"an unknown hold", `{"adhesive":{"hold":"heavy"}}`, "finish.adhesive.hold"},
		{"beads on beads", `{"adhesive":{"spacing":"1/2"}}`, "finish.adhesive.spacing"},
		{"nails without a spacing", `{"nails":{"edge":"0"}}`, "finish.nails.edge"},
		{"nails that do not rise", `{"nails":{"lengths":["2","1"]}}`, "finish.nails.lengths[1]"},
		{"a box of no nails", `{"nails":{"packs":[{"name":"box","count":0}]}}`, "finish.nails.packs[0].count"},
		{"a strip of no thickness", `{"furring":{"thickness":"0"}}`, "finish.furring.thickness"},
		{"a strip without a name", `{"furring":{"strips":[{"length":"8'"}]}}`, "finish.furring.strips[0].name"},
		{"a box named twice", `{"boxes":[{"name":"a"},{"name":"a"}]}`, "finish.boxes[1].name"},
		{"a box without a name", `{"boxes":[{"gangs":2}]}`, "finish.boxes[0].name"},
		{"a set-back in words", `{"boxes":[{"name":"a","set_back":"some"}]}`, "finish.boxes[0].set_back"},
		{"screws by the hundred", `{"screws":{"device_per_gang":100}}`, "finish.screws.device_per_gang"},
		{"a roll of no length", `{"tape":{"rolls":[{"name":"roll","length":"0"}]}}`, "finish.tape.rolls[0].length"},
		{"a cover in feet", `{"sheeting":{"sheets":[{"name":"cover","size":"9 ft"}]}}`, "finish.sheeting.sheets[0].size"},
		{"an unknown material", `{"house":{"material":"oak"}}`, "finish.house.material"},
		{"an unknown backing", `{"house":{"backing":"air"}}`, "finish.house.backing"},
		{"studs side by side", `{"house":{"studs":"1/2"}}`, "finish.house.studs"},
		{"tax in percent", `{"tax":8.25}`, "finish.tax"},
		{"leftovers worth more than new", `{"leftover_worth":1.1}`, "finish.leftover_worth"},
		{"an extra without a name", `{"extras":[{"buy":1}]}`, "finish.extras[0].item"},
		{"no extra at all", `{"extras":[{"item":"brush"}]}`, "finish.extras[0].buy"},
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
			if _, again := finish.TakeOff(finish.Work{}, m); again == nil || again.Error() != err.Error() {
				t.Errorf("TakeOff() = %v, want %v", again, err)
			}
		})
	}
}

func TestAllFaultsAreReportedInTheOrderOfTheFields(t *testing.T) {
	m, err := decode(`{"tax": "much", "nails": {"edge": "x"}, "paint": {"loss": 7, "top": {"coverage": "?"}}}`)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"finish.paint.top.coverage", "finish.paint.loss", "finish.nails.edge", "finish.tax"}
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
		{"work.face", finish.Work{Face: minus.Times(fraction.Inches(1))}},
		{"work.built", finish.Work{Built: -1}},
		{"work.edges", finish.Work{Edges: minus}},
		{"work.pieces[0].height", finish.Work{Pieces: []finish.Piece{{Height: minus}}}},
		{"work.joints[1].kind", finish.Work{Joints: []finish.Joint{{Kind: finish.Seam}, {Kind: "corner"}}}},
		{"work.joints[0].length", finish.Work{Joints: []finish.Joint{{Kind: finish.Seam, Length: finish.MaxLength.Add(fraction.Inches(1))}}}},
		{"work.ends[0].length", finish.Work{Ends: []finish.End{{Length: minus}}}},
		{"work.pieces[0].width", finish.Work{Pieces: []finish.Piece{{Width: minus}}}},
		{"work.pieces[0].opening_edges", finish.Work{Pieces: []finish.Piece{{OpeningEdges: minus}}}},
		{"work.joints[0].gap", finish.Work{Joints: []finish.Joint{{Kind: finish.Seam, Gap: minus}}}},
		{"work.width", finish.Work{Width: minus}},
		{"work.low", finish.Work{Low: minus}},
		{"work.sides", finish.Work{Sides: minus}},
		{"work.sheets[0].width", finish.Work{Sheets: []finish.SheetRow{{Width: minus}}}},
		{"work.sheets[0].length", finish.Work{Sheets: []finish.SheetRow{{Length: minus}}}},
		{"work.sheets[0].count", finish.Work{Sheets: []finish.SheetRow{{Count: -1}}}},
		{"work.profile", finish.Work{Profile: groove.Profile{Features: []groove.Feature{{Width: minus}}}}},
		{"work", finish.Work{Boxes: make([]finish.Box, finish.MaxCount+1)}},
	} {
		_, err := finish.TakeOff(c.work, finish.Materials{})
		if diff := cmp.Diff([]string{c.path}, paths(err)); diff != "" {
			t.Errorf("%v (-want +got)\n%s", err, diff)
		}
	}
}

func TestMorePacksThanAnyoneBuys(t *testing.T) {
	m := finish.Materials{Tape: finish.Tape{Rolls: []finish.Roll{{Name: "crumb", Length: "0.001"}}}}
	_, err := finish.TakeOff(finish.Work{Joints: []finish.Joint{{Kind: finish.Seam, Length: fraction.Inches(500), Gap: fraction.Of(1, 16)}}}, m)
	if packs, ok := errors.AsType[*finish.MixError](err); !ok || packs.Item != "masking tape" {
		t.Errorf("TakeOff() = %v, want a MixError about the masking tape", err)
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
		if strings.HasPrefix(row.Item, "panel nails") {
			if want := "panel 6.35 mm + wall 12.7 mm + 19.05 mm into the stud = 38.1 mm"; !strings.Contains(row.How, want) {
				t.Errorf("How = %q, want %q in it", row.How, want)
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

// FuzzMaterials gives any text as the materials of a kitchen: it is refused, or it makes a list, and never a panic.
func FuzzMaterials(f *testing.F) {
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
		list, err := finish.TakeOff(w, m)
		if valid := m.Validate(w.Units); (valid != nil) != (len(paths(err)) > 0) {
			t.Fatalf("Validate() = %v, TakeOff() = %v", valid, err)
		}
		if err != nil {
			return
		}
		for _, row := range list.Rows {
			if row.Buy < 1 || row.Item == "" || row.Container == "" || row.How == "" {
				t.Fatalf("row %+v", row)
			}
		}
		finish.Cautions(w, m)
		finish.Schedule(w, m)
	})
}
