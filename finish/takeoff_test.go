package finish_test

import (
	"encoding/json"
	"fmt"
	"math/big"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
)

// TestExtenderForItsGangs tells two rings of the same depth apart by their price.
func TestExtenderForItsGangs(t *testing.T) {
	m := bare()
	m.Extenders = []finish.Extender{{Depth: "3/8", Price: "3"}, {Gangs: 1, Depth: "1/4", Price: "1"}, {Gangs: 2, Depth: "3/8", Price: "5"}, {Gangs: 2, Depth: "3/8", Price: "2"}}
	w := finish.Work{Profile: plain, Boxes: []finish.Box{{Name: "a", Gangs: 2}}}
	if row := takeOff(t, w, m).Rows[0]; row.Price.String() != "5" {
		t.Errorf("%+v, want the first ring made for two gangs", row)
	}
}

func TestWarnings(t *testing.T) {
	in := fraction.MustParse
	piece := []finish.Piece{{Width: in("40"), Height: in("20")}}
	for _, c := range []struct {
		name   string
		work   finish.Work
		change func(m *finish.Materials)
		want   string // kind; names; lengths; path
	}{
		{"a gap at the limit", finish.Work{Joints: []finish.Joint{{Kind: finish.Seam, Run: "sink", Length: in("20"), Gap: in("1/4")}}}, nil, ""},
		{"a gap beyond it", finish.Work{Joints: []finish.Joint{{Kind: finish.Seam, Run: "sink", Length: in("20"), Gap: in("5/16")}}}, nil, "wide gap; [sink seam]; [5/16 1/4]; "},
		{"a wide gap that is not sealed", finish.Work{Joints: []finish.Joint{{Kind: finish.OutsideCorner, Length: in("20"), Gap: in("5/16")}}}, nil, ""},
		{"a nail short of the cables", finish.Work{Profile: plain, Pieces: piece}, func(m *finish.Materials) { m.Nails = finish.Nails{Lengths: []finish.Taped{"1 31/32"}} }, ""},
		{"a nail that reaches them", finish.Work{Profile: plain, Pieces: piece}, func(m *finish.Materials) { m.Nails = finish.Nails{Lengths: []finish.Taped{"2"}} }, "nail near cables; []; [2 1 1/4 1 1/4]; Finish.Nails"},
		{"no nail long enough", finish.Work{Profile: plain, Pieces: piece}, func(m *finish.Materials) { m.Nails = finish.Nails{Lengths: []finish.Taped{"1"}} }, "panel nail short; []; [1 1/2 3/4]; Finish.Nails"},
		{"no board nail long enough", finish.Work{Profile: boards, Pieces: piece}, func(m *finish.Materials) { m.Nails = finish.Nails{Lengths: []finish.Taped{"1"}} }, "board nail short; []; [3/4]; Finish.Nails"},
		{"no strip nail long enough", finish.Work{Profile: boards, Pieces: piece}, func(m *finish.Materials) { m.Nails.Lengths, m.Furring.Thickness = []finish.Taped{"1"}, "3/4" }, "strip nail short; []; [2 3/4]; Finish.Nails"},
		{"a box too deep", finish.Work{Profile: plain, Boxes: []finish.Box{{Name: "a"}}}, func(m *finish.Materials) {
			m.Boxes = []finish.BoxNote{{Name: "a", SetBack: "2"}}
		}, "box too deep; [a]; [2 1/4]; "},
		{"no screw long enough", finish.Work{Profile: plain, Boxes: []finish.Box{{Name: "a"}}}, func(m *finish.Materials) { m.Screws.Lengths = []finish.Taped{"1/2"} }, "screw short; [a]; [1]; "},
		{"a thickness that is not given", finish.Work{Pieces: piece}, nil, "thickness unknown; []; []; Profile.Thickness"},
		{"nothing that holds", finish.Work{Profile: plain, Pieces: piece}, func(m *finish.Materials) { m.Nails.None, m.House.Backing = false, finish.Masonry }, "nothing holds; []; []; Finish.Adhesive.Form"},
		{"strips", finish.Work{Profile: boards, Pieces: piece}, func(m *finish.Materials) { m.Furring.Thickness = "3/4" }, ""},
		{"strips at a corner", finish.Work{Profile: boards, Pieces: piece, Joints: []finish.Joint{{Kind: finish.InsideCorner, Length: in("20")}}},
			func(m *finish.Materials) { m.Furring.Thickness = "3/4" }, "strips not taken off; []; [3/4]; Finish.Furring.Thickness"},
		{"tight seams of fiberboard", finish.Work{Profile: plain, Pieces: piece, Joints: []finish.Joint{{Kind: finish.Seam, Length: in("20"), Gap: in("3/32")}}}, nil, "seam tight; []; [3/32 1/10]; Gaps.Seam"},
		{"seams as wide as proposed", finish.Work{Profile: plain, Pieces: piece, Joints: []finish.Joint{{Kind: finish.Seam, Length: in("20"), Gap: in("1/10")}}}, nil, ""},
		{"tight seams to half a mark, rounded down: 0.1 in", finish.Work{Mark: in("1/16"), Profile: plain, Pieces: piece, Joints: []finish.Joint{{Kind: finish.Seam, Length: in("20"), Gap: in("1/16")}}}, nil, "seam tight; []; [1/16 3/32]; Gaps.Seam"},
		{"seams as wide as a tape tells of 0.1 in", finish.Work{Mark: in("1/16"), Profile: plain, Pieces: piece, Joints: []finish.Joint{{Kind: finish.Seam, Length: in("20"), Gap: in("3/32")}}}, nil, ""},
		{"seams of a narrow sheet, which want less than half a mark", finish.Work{Mark: in("1/16"), Profile: plain, Pieces: []finish.Piece{{Width: in("11 3/4"), Height: in("20")}}, Joints: []finish.Joint{{Kind: finish.Seam, Length: in("20")}}}, nil, ""},
		{"tight seams in millimeters: 3.05", finish.Work{Units: fraction.Millimetre, Mark: in("1 mm"), Profile: plain, Pieces: []finish.Piece{{Width: in("1219 mm"), Height: in("20")}}, Joints: []finish.Joint{{Kind: finish.Seam, Length: in("20"), Gap: in("2.5 mm")}}}, nil, "seam tight; []; [25/254 15/127]; Gaps.Seam"},
		{"tight seams to half a millimeter", finish.Work{Units: fraction.Millimetre, Mark: in("1 mm"), Profile: plain, Pieces: []finish.Piece{{Width: in("1400 mm"), Height: in("20")}}, Joints: []finish.Joint{{Kind: finish.Seam, Length: in("20"), Gap: in("3 mm")}}}, nil, "seam tight; []; [15/127 35/254]; Gaps.Seam"},
		{"tight seams of plywood", finish.Work{Profile: plain, Pieces: piece, Joints: []finish.Joint{{Kind: finish.Seam, Length: in("20")}}}, func(m *finish.Materials) { m.House.Material = finish.Plywood }, ""},
		{"a nail at a slant that reaches the cables: 2 1/2 / √2 - 3/8 = 1.393 in", finish.Work{Profile: boards, Pieces: piece}, func(m *finish.Materials) { m.Nails = finish.Nails{Lengths: []finish.Taped{"2 1/2"}} }, "nail near cables; []; [2 1/2 1 13/32 1 1/4]; Finish.Nails"},
		{"a strip nail that reaches the cables", finish.Work{Profile: boards, Pieces: piece}, func(m *finish.Materials) {
			m.Furring.Thickness, m.Nails.Lengths = "3/4", []finish.Taped{"2 1/2"}
		}, "nail near cables; []; [2 1/2 1 1/4 1 1/4]; Finish.Nails"},
		{"a box too deep behind boards", finish.Work{Profile: boards, Boxes: []finish.Box{{Name: "a"}}}, func(m *finish.Materials) {
			m.Furring.Thickness = "1"
		}, "box too deep; [a]; [1 3/4]; "},
		{"a trim with a joint", finish.Work{Ends: []finish.End{{Run: "tall wall", Length: in("97")}}}, func(m *finish.Materials) { m.Trim.None = false }, "trim joint; [tall wall end]; []; "},
		{"one at a right end", finish.Work{Ends: []finish.End{{Run: "wall", Length: in("97"), Right: true}}}, func(m *finish.Materials) { m.Trim.None = false }, "trim joint; [wall right end]; []; "},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := bare()
			if c.change != nil {
				c.change(&m)
			}
			_, doubts, err := finish.TakeOff(c.work, m)
			if err != nil {
				t.Fatal(err)
			}
			var all []string
			for _, d := range doubts {
				all = append(all, fmt.Sprintf("%s; %v; %v; %s", d.Kind, d.Names, d.Lengths, d.Path))
			}
			if got := strings.Join(all, ", "); got != c.want {
				t.Errorf("warning %q, want %q", got, c.want)
			}
		})
	}
}

// TestMoneyIsRoundedOnceForEachRow has prices finer than the cent and a tax that ends on half a
// cent.
func TestMoneyIsRoundedOnceForEachRow(t *testing.T) {
	w := finish.Work{Sheets: []finish.Sheet{{Name: "a", Count: 3, Price: money.MustParse("0.335")}, {Name: "b", Count: 1, Price: money.MustParse("0.005")}, {Name: "c", Count: 2}}}
	m := bare()
	m.Tax = "0.05"
	l := takeOff(t, w, m)
	got := fmt.Sprint(l.Rows[0].Cost, l.Rows[1].Cost, l.Rows[2].Cost, len(l.Rows), l.Subtotal, l.Tax, l.Total, l.Unpriced)
	// 3 × 0.335 = 1.005 -> 1.01; 0.005 -> 0.01; 1.02 × 0.05 = 0.051 -> 0.05
	if want := "1.01 0.01  3 1.02 0.05 1.07 1"; got != want {
		t.Errorf("costs, subtotal, tax, total, unpriced = %s, want %s", got, want)
	}
}

func TestLeftoverHasItsWorth(t *testing.T) {
	w := finish.Work{Profile: plain, Face: fraction.Inches(144).Times(fraction.Inches(10))}
	m := bare()
	m.LeftoverWorth = "0.5"
	m.Paint.Top = finish.Coating{Before: "0", After: "1", Coverage: "10 ft2/gal", Containers: []finish.Container{{Name: "drum", Size: "5 gal", Price: "100"}}}
	l := takeOff(t, w, m) // a gallon needed, four left, each worth half of 20
	if l.Total.String() != "100" || l.Leftover.String() != "40" {
		t.Errorf("total %s, leftover %s, want 100 and 40", l.Total, l.Leftover)
	}
}

// What a can of a gallon leaves is told where that is less than a tenth of it: 0.099 gal are 0.396 qt.
func TestMarginIsToldBelowATenth(t *testing.T) {
	for face, want := range map[int64]string{900: "", 901: "margin 0.39 qt"} {
		m := bare()
		m.Paint.Top = finish.Coating{Before: "0", After: "1", Coverage: "100 ft2/gal", Containers: []finish.Container{{Name: "can", Size: "1 gal"}}}
		row := takeOff(t, finish.Work{Profile: plain, Face: fraction.Of(face*144, 10).Times(fraction.Inches(1))}, m).Rows[0]
		row.Terms = slices.DeleteFunc(row.Terms, func(x finish.Term) bool { return x.Kind != finish.TermMargin })
		if got := termsOf(row); got != want {
			t.Errorf("%d/10 ft2 at 100 ft2/gal: %q, want %q", face, got, want)
		}
	}
}

// A list whose quantity is null does not pass.
func TestNullIsNoNumber(t *testing.T) {
	var list finish.List
	if err := json.Unmarshal([]byte(`{"takeoff":[{"quantity":null}]}`), &list); err == nil {
		t.Errorf("read as %v", list.Rows)
	}
}

// TestBeadsAreArcs checks beads by shapes whose length is known: a half circle, a deep bead, a flat
// one.
func TestBeadsAreArcs(t *testing.T) {
	factor := func(w, d string) *big.Rat {
		p := groove.Profile{Features: []groove.Feature{{Kind: groove.Bead, Width: fraction.MustParse(w), Depth: fraction.MustParse(d)}}}
		return finish.Developed(p, finish.SquareGroove)
	}
	for _, c := range []struct{ w, d, want string }{
		{"2", "1", "1.570796"}, // π/2
		{"2", "2", "2.570796"}, // and two sides of 1 in over 2 in
		{"3", "0", "1.000000"},
	} {
		if got := factor(c.w, c.d).FloatString(6); got != c.want {
			t.Errorf("bead %s × %s: factor %s, want %s", c.w, c.d, got, c.want)
		}
	}
	half := groove.Profile{Features: []groove.Feature{{Kind: groove.Bead, Width: fraction.Inches(2), Depth: fraction.Inches(1)}}}
	open := new(big.Rat).Sub(rat("2"), quo(rat("3.14159265"), rat("2"))) // what a half circle leaves of its rectangle
	if got := finish.Hollow(half, finish.SquareGroove); got.Cmp(open) < 0 {
		t.Errorf("hollow beside a half circle %v, not less than %v is wanted", got, open)
	}
}

func TestSticksTakeTheFewest(t *testing.T) {
	for _, c := range []struct {
		lengths string
		want    int64
	}{
		{"96", 1}, {"48 48", 1}, {"48 49", 2}, {"60 40 36 56", 2},
		{"40 40 40 30 30 30 26 26 26", 3},      // the first that fits, longest first, would take 4
		{"32 32 32 32 32 32 32 32 32 32", 4},   // ten: packed exactly
		{"32 32 32 32 32 32 32 32 32 32 1", 4}, // eleven: as many as if all were 32
	} {
		var lengths []*big.Rat
		for l := range strings.FieldsSeq(c.lengths) {
			lengths = append(lengths, rat(l))
		}
		if got := finish.Sticks(lengths, rat("96")); got != c.want {
			t.Errorf("Sticks(%s) = %d, want %d", c.lengths, got, c.want)
		}
	}
}

// TestKitchenList is the whole list of the example kitchen in both systems of units, as golden JSON
// to be read line by line.
func TestKitchenList(t *testing.T) {
	for _, u := range []fraction.Unit{fraction.Inch, fraction.Millimetre} {
		w := kitchen()
		w.Units = u
		m := finish.Materials{Tax: "0.08"}
		var b strings.Builder
		write := func(v any) {
			line, err := json.Marshal(v)
			if err != nil {
				t.Fatal(err)
			}
			b.Write(append(line, '\n'))
		}
		list, doubts, err := finish.TakeOff(w, m)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range list.Rows {
			write(r)
		}
		list.Rows = nil
		for _, v := range []any{list, doubts, finish.Schedule(w, m), finish.Cautions(w, m)} {
			write(v)
		}
		fractiontest.Golden(t, "testdata/kitchen_"+u.String()+".txt", b.String())
	}
}

// Packs offered for one thing are limited, what a plan uses is not: a large room has more runs with a
// baseboard and more kinds of sheets.
func TestWorkMayHaveMoreItemsThanPacksAreOffered(t *testing.T) {
	var w finish.Work
	for i := range finish.MaxOffers + 1 {
		w.Covers = append(w.Covers, finish.Covering{Name: "baseboard", Length: fraction.Inches(48)})
		w.Sheets = append(w.Sheets, finish.Sheet{Name: fmt.Sprint(i), Count: 1})
	}
	if l := takeOff(t, w, bare()); len(l.Rows) < len(w.Sheets) {
		t.Errorf("%d rows for %d kinds of sheets", len(l.Rows), len(w.Sheets))
	}
}

// A list of packs is limited; lists of boxes and of extras are as long as they are.
func TestOnlyPacksAreLimited(t *testing.T) {
	var m finish.Materials
	var offers []finish.Container
	for i := range finish.MaxOffers + 1 {
		name := fmt.Sprint(i)
		offers = append(offers, finish.Container{Name: name, Size: "1 qt"})
		m.Boxes, m.Extras = append(m.Boxes, finish.BoxNote{Name: name}), append(m.Extras, finish.Extra{Item: name, Buy: 1})
	}
	m.Paint.Top.Containers = offers[:finish.MaxOffers]
	if err := m.Validate(fraction.Inch); err != nil {
		t.Errorf("%d packs, %d boxes and extras: %v", finish.MaxOffers, len(m.Boxes), err)
	}
	m.Paint.Top.Containers = offers
	if got := fmt.Sprint(paths(m.Validate(fraction.Inch))); got != "[Paint.Top.Containers]" {
		t.Errorf("%d packs: faults at %s", len(offers), got)
	}
}

// The thinnest dry film is a tenth of a mil.
func TestThinnestFilm(t *testing.T) {
	m, err := decode(`{"paint":{"top":{"solids":0.4,"dry_film":"0.0001"}}}`)
	if err == nil {
		err = m.Validate(fraction.Inch)
	}
	if err != nil {
		t.Error(err)
	}
}

// Each kind of nail has the word that the job file has for it.
func TestWordsOfNails(t *testing.T) {
	for kind, want := range map[finish.NailKind]string{finish.Brads: "brads", finish.FinishNails: "finish nails", finish.PanelScrews: "screws"} {
		if text, err := kind.MarshalText(); kind.String() != want || string(text) != want || err != nil {
			t.Errorf("%q, %q, %v, want %q", kind.String(), text, err, want)
		}
	}
}

// Trims that hide edges are cut whole from sticks of 96 where that takes no more sticks than to join them
// with 10 % of waste; each length has 1/2 for its cuts. Counted by hand.
func TestCoveringsAreCutWholeWhereThatTakesNoMoreSticks(t *testing.T) {
	for _, c := range []struct {
		lengths []int64
		buy     int
		how     finish.How
	}{
		{[]int64{88}, 1, finish.ByWholeLengths},          // 97.35 with waste, but there is no joint
		{[]int64{96}, 2, finish.ByCoverings},             // no room for its cuts: 106.15
		{[]int64{60, 60, 60}, 3, finish.ByWholeLengths},  // 199.65 with waste
		{[]int64{50, 50, 50, 50}, 3, finish.ByCoverings}, // 222.2, and 4 without a joint
		{[]int64{40, 30, 20, 5, 60}, 2, finish.ByWholeLengths},
		{slices.Repeat([]int64{30}, 12), 4, finish.ByWholeLengths}, // three of each; 402.6 with waste
	} {
		var w finish.Work
		for _, l := range c.lengths {
			w.Covers = append(w.Covers, finish.Covering{Name: "cap", Length: fraction.Inches(l)})
		}
		l := takeOff(t, w, bare())
		if len(l.Rows) != 1 || l.Rows[0].Buy != c.buy || l.Rows[0].How != c.how {
			t.Errorf("%v: %+v, want %d %v", c.lengths, l.Rows, c.buy, c.how)
		}
	}
}
