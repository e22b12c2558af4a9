package book

import (
	"encoding"
	"encoding/json"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// every returns all values of an enumeration.
func every[T interface {
	~uint8
	encoding.TextMarshaler
}]() (all []T) {
	for v := T(0); ; v++ {
		if _, err := v.MarshalText(); err != nil {
			return all
		}
		all = append(all, v)
	}
}

// permits holds what reads as a permission.
var permits = regexp.MustCompile(`(?i)you may |is safe|it is fine|complies|compliant|is allowed|permitted|approved|may stay|stays back|can stay back|no need to|legal`)

// TestNothingReadsAsPermission looks at the words of steps, methods, doubts and tools.
func TestNothingReadsAsPermission(t *testing.T) {
	var all []string
	for _, s := range stageWords {
		all = append(append(all, s.first, s.last), slices.Collect(maps.Values(s.acts))...)
	}
	for _, m := range methodWords {
		all = append(append(all, m.text, m.last), slices.Collect(maps.Values(m.terms))...)
	}
	all = slices.Concat(all, slices.Collect(maps.Values(doubtWords)), slices.Collect(maps.Values(toolWords)))
	if len(all) < 150 {
		t.Fatalf("only %d texts", len(all))
	}
	for _, text := range all {
		if found := permits.FindString(text); found != "" {
			t.Errorf("%q reads as a permission: %q", found, text)
		}
	}
}

// TestCautionsDeferAndPermitNothing holds the words of every caution to the rule that nothing reads
// as permission.
func TestCautionsDeferAndPermitNothing(t *testing.T) {
	for _, c := range every[finish.Caution]() {
		words := cautioned(plan.Plan{}, c)
		if words.When == "" || words.First == "" || words.Defers == "" {
			t.Errorf("%v: a part is missing", c)
		}
		if found := permits.FindString(words.First + words.Rest); found != "" {
			t.Errorf("%v reads as a permission: %q", c, found)
		}
	}
}

func TestEveryFactOfTheFinishHasWords(t *testing.T) {
	acts, terms := map[finish.ActKind]bool{}, map[finish.TermKind]bool{finish.TermWaste: true, finish.TermOnTop: true, finish.TermMargin: true}
	for _, s := range every[finish.Stage]() {
		if stageWords[s].title == "" {
			t.Errorf("stage %v has no title", s)
		}
		for a := range stageWords[s].acts {
			acts[a] = true
		}
	}
	for _, h := range every[finish.How]() {
		words := methodWords[h]
		if words.text == "" && len(words.terms) == 0 {
			t.Errorf("method %v has no words", h)
		}
		for _, word := range slot.FindAllString(words.text, -1) {
			var k finish.TermKind
			if err := k.UnmarshalText([]byte(strings.Trim(word, "{}"))); err == nil {
				terms[k] = true
			} else if word != "{source}" && word != "{units}" && word != "{cartridge}" {
				t.Errorf("method %v: %v", h, err)
			}
		}
		for k := range methodWords[h].terms {
			terms[k] = true
		}
	}
	terms[finish.TermAgain] = strings.Contains(How(finish.Row{Terms: []finish.Term{{Kind: finish.TermAgain}}}), "goes up again")
	terms[finish.TermInAll] = strings.Contains(How(finish.Row{Terms: []finish.Term{{Kind: finish.TermInAll}}}), "in all")
	for _, a := range every[finish.ActKind]() {
		if !acts[a] {
			t.Errorf("act %v has no words", a)
		}
	}
	for _, k := range every[finish.TermKind]() {
		if !terms[k] {
			t.Errorf("term %v has no words", k)
		}
	}
	for _, s := range every[finish.Source]()[1:] {
		if sourceWords[s] == "" {
			t.Errorf("source %v has no words", s)
		}
	}
	for _, c := range every[finish.Choice]()[1:] {
		if choiceWords[c] == "" {
			t.Errorf("choice %v has no words", c)
		}
	}
}

// busy is a kitchen in which much is to do and to buy.
func busy(t *testing.T, boards bool) (p plan.Plan, missing func(string)) {
	in := fraction.MustParse
	w := finish.Work{Built: 1970, Highest: in("80"), Width: in("240"), Cooking: true, Mitred: true, Face: in("238").Times(in("18")), Edges: in("500"), Sides: in("40"),
		Boxes:  []finish.Box{{Name: "switches", Gangs: 2}, {Name: "socket"}},
		Ends:   []finish.End{{Run: "left wall", Length: in("18")}, {Run: "pier", Length: in("18"), Corner: true}},
		Sheets: []finish.Sheet{{Name: "stock", Count: 2, Width: in("48"), Length: in("96")}}, Fitting: []string{"1", "2", "3"}, Closing: []string{"3"},
		Pieces: []finish.Piece{{Width: in("47 1/2"), Height: in("17 3/4")}, {Width: in("47 1/2"), Height: in("17 3/4")}}}
	w.Profile.Boards, w.Profile.Thickness = boards, in("1/8")
	for _, k := range every[finish.JointKind]()[1:] {
		w.Joints = append(w.Joints, finish.Joint{Kind: k, Run: "left wall", Length: in("71"), Gap: in("5/16"), Grooves: true})
	}
	m := finish.Materials{House: finish.House{Damp: true, Backing: finish.BareStuds}, Adhesive: finish.Adhesive{Boards: finish.GlueDots}}
	m.Furring.Thickness, m.Extras = "3/4", []finish.Extra{{Item: "brush", Buy: 2, Price: "3.20"}}
	var err error
	if p.List, p.Warnings, err = finish.TakeOff(w, m); err != nil {
		t.Fatal(err)
	}
	p.Order, p.Cautions = finish.Schedule(w, m), finish.Cautions(w, m)
	for _, c := range every[finish.Caution]() {
		other := c == finish.Silica || c == finish.MasonryWall // of another material, on another wall
		if slices.Contains(p.Cautions, c) == other {
			t.Errorf("caution %v: raised %v", c, other)
		}
	}
	p.Profile.Boards, p.Profile.Edges = boards, groove.Tongued
	text := strings.Join(strings.Fields(Explained(p)), " ")
	return p, func(want string) {
		if !strings.Contains(text, want) {
			t.Errorf("the text lacks %q", want)
		}
	}
}

func TestWordsOfTheFinish(t *testing.T) {
	_, has := busy(t, false)
	for _, want := range []string{
		"brush: asked for by the job",
		"stock, 48 x 96 x 1/8 in: counted from the sheets to saw, none to spare",
		"backing rod, a little thicker than its gap: joints wider than 1/4 in: 41.42 ft; + 0.1 of it for waste",
		"primer: before fitting: face 29.75 ft2 × 1 developed × 1 coat + edges 0.44 ft2 × 2 + backs (damp) 29.75 ft2 × 1 = 60.38 ft2; ÷ 250 ft2/gal",
		"kitchen and bath sealant: lower line 5.92 ft (gap filled and fillet 1/4 in) 2.8 fl oz; + 0.1 of it for waste", "upper line 5.92 ft",
		"box extender 1 in, 2 gang: switches (7/8 in behind); a face that can burn allows none (NEC 314.20); listed for the box",
		"device screws 2 in: 6-32 (metric M3.5, from memory), 2 a gang, the usual 3/4 in longer by what the device comes forward; they pass through the extender",
		"edge trim: end of left wall: 1.5 ft, each from one strip with 1/2 in for its cuts",
		"miter glue: 5.92 ft of miters, a bead of 1/8 in (judgment); wood glue,", "Have at hand: a voltage tester;", "A spare stock is not in the total.",
		"Lay adhesive on each back first, as its tube says, about a cartridge of 10 fl oz on 32 ft2.",
		"Allow 1 to 7 days (data of such products, the tube decides) for the adhesive to hold,",
		"Give the faces 1 coat of primer. Give sawn edges 2 coats of primer. Give the faces 1 top coat.", "Rest: Stack the sheets", "Saw the 2 pieces by the cut list", "Leave the closing edge of 3 unsawn until the space there is measured on the wall",
		"Fit 1, 2; measure, saw, fit 3.", "Saw outdoors or with extraction at the blade",
		"left wall, seam: the gap of 5/16 is wider than the 1/4 that a bead should close",
		"! strips behind the panels: the strips bring each face 3/4 forward",
	} {
		has(want)
	}
}

// Where nothing is coated, nothing that is said of coats stands in the order; what follows a closing piece is a part of its own.
func TestOrderWithoutCoats(t *testing.T) {
	p, _ := busy(t, false)
	coat := func(s finish.Step) bool { return s.Stage == finish.StageFirstCoats || s.Stage == finish.StageLastCoats }
	for _, coated := range []bool{true, false} {
		if !coated {
			p.Order = slices.DeleteFunc(slices.Clone(p.Order), coat)
		}
		text := strings.Join(strings.Fields(Part(p, Order, true)), " ")
		for _, words := range []string{"coat the sawn edge and try", "coat its back and its cuts, dry-fit", "before paint."} {
			if strings.Contains(text, words) != coated {
				t.Errorf("coated %v: %q in %s", coated, words, text)
			}
		}
	}
	q, _ := busy(t, false)
	for i, s := range q.Order { // coats of faces alone
		q.Order[i].Acts = slices.DeleteFunc(slices.Clone(s.Acts), func(a finish.Act) bool { return a.Kind == finish.ActEdges })
	}
	if text := Part(q, Order, true); strings.Contains(text, "coat the sawn") || !strings.Contains(text, "coat its back") {
		t.Errorf("edges without a coat: %s", text)
	}
	if got, want := fitting(plan.Plan{}, []finish.Act{{Kind: finish.ActClosing, Labels: []string{"1"}}, {Kind: finish.ActFitting, Labels: []string{"2"}}}), "Measure, saw, fit 1; fit 2."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestBoardsAreNotCalledPanels has a work that raises every caution and needs every step: its words
// are those of boards.
func TestBoardsAreNotCalledPanels(t *testing.T) {
	p, has := busy(t, true)
	for _, want := range []string{
		"Rest: Stack the boards", "knock each board home", "at most 16 in apart, at the heights that each run has with its marks",
		"nails or screws for the strips 1 1/2 in: one for each 16 in of strip", "counted from the boards to saw", "6 dots of 1 in, one a crossing",
	} {
		has(want)
	}
	x := &text{tape: p.TapeMeasure()}
	var said []string
	for _, c := range p.Cautions {
		said = append(said, Caution(p, c))
	}
	for _, s := range p.Order {
		said = append(said, Step(p, s))
	}
	for _, r := range p.List.Rows {
		if r.Item != finish.ItemAdhesive && r.Item != finish.ItemCounterSheeting { // what they are sold as
			said = append(said, Item(r), How(r))
		}
	}
	for _, d := range p.Warnings {
		said = append(said, x.doubt(d))
	}
	for _, text := range said {
		words := strings.NewReplacer("plastic sheet", "", "safety sheet", "", "fiberboard sheets", "", "manual on sheets", "").Replace(text)
		if strings.Contains(words, "panel") || strings.Contains(words, "sheet") || strings.ContainsAny(words, "{}") {
			t.Errorf("boards are called panels or sheets, or a fact is left open: %q", text)
		}
	}
}

// The caution on cables says how far off boxes and pipes nails stay in the plan, where it has any; a caution that begins with
// the word for the panels begins large.
func TestCautionsOfAPlan(t *testing.T) {
	sheets, boxed := plan.Plan{}, plan.Plan{Runs: []plan.Run{{Openings: []plan.Opening{{Kind: wall.Box}}}}}
	boxed.Fixing.Clear, boxed.Tape = fraction.Inches(3), fraction.Of(1, 16)
	metric, given := boxed, boxed
	given.Fixing.Clear = fraction.Inches(2)
	metric.Fixing.Clear, metric.Units, metric.Tape = fraction.MustParse("75 mm"), fraction.Millimetre, fraction.MustParse("1 mm")
	for _, row := range []struct {
		plan    plan.Plan
		caution finish.Caution
		want    string
	}{
		{sheets, finish.CablesAndPipes, "Use glue alone beside pipes. ("},
		{boxed, finish.CablesAndPipes, "Use glue alone beside boxes and pipes: the plan has no nail or screw within 3 in of an opening for cables or pipes (judgment). ("},
		{metric, finish.CablesAndPipes, "Use glue alone beside boxes and pipes: the plan has no nail or screw within 75 mm of an opening for cables or pipes (judgment). ("},
		{given, finish.CablesAndPipes, "Use glue alone beside boxes and pipes: the plan has no nail or screw within 2 in of an opening for cables or pipes. ("},
		{sheets, finish.Damp, "covered. Panels over a damp wall swell"},
		{plan.Plan{Profile: plan.Profile{Profile: groove.Profile{Boards: true}}}, finish.Damp, "covered. Boards over a damp wall swell"},
	} {
		if got := Caution(row.plan, row.caution); !strings.Contains(got, row.want) {
			t.Errorf("%q lacks %q", got, row.want)
		}
	}
}

// What another package does to the decimals of all programs does not change ours.
func TestMoneyIsTextWhateverTheSettings(t *testing.T) {
	p, _ := busy(t, false)
	want, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	decimal.MarshalJSONWithoutQuotes = true
	defer func() { decimal.MarshalJSONWithoutQuotes = false }()
	got, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	var again plan.Plan
	if err := json.Unmarshal(got, &again); err != nil {
		t.Fatal(err)
	}
	for _, pair := range [][2]any{{p.List, again.List}, {p.Order, again.Order}, {p.Cautions, again.Cautions}, {p.Warnings, again.Warnings}} {
		if diff := cmp.Diff(pair[0], pair[1], cmp.Comparer(func(a, b fraction.Length) bool { return a == b })); diff != "" {
			t.Errorf("(-written +read)\n%s", diff)
		}
	}
}

// TestTonguesAreOfTheProfile: work with the tongue ahead is asked for where the profile has one; where it says
// nothing of edges the cut list asks for them.
func TestTonguesAreOfTheProfile(t *testing.T) {
	for edges, want := range map[groove.Edges][2]bool{groove.Tongued: {true, false}, groove.Square: {false, false}, groove.EdgesUnknown: {false, true}} {
		p, _ := busy(t, true)
		p.Profile.Edges, p.Sheets = edges, []plan.Sheet{{}}
		text := strings.Join(strings.Fields(Explained(p)), " ")
		if got := [2]bool{strings.Contains(text, "tongue ahead"), strings.Contains(text, "give edges and tongue")}; got != want {
			t.Errorf("edges %q: %v, want %v", edges, got, want)
		}
	}
}
