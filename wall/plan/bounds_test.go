package plan_test

import (
	"encoding"
	"math/big"
	"slices"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// The limits of lists and texts that users are given: 200 bytes, 2500 items, 100,000 sheets, 8 distances.
func TestLimitsOfAJob(t *testing.T) {
	if got := [...]int{plan.MaxText, plan.MaxItems, plan.MaxCount, plan.MaxBases}; got != [...]int{200, 2500, 100_000, 8} {
		t.Errorf("limits %v", got)
	}
}

// Each place of an appliance is doubted by itself.
func TestEachApplianceIsDoubted(t *testing.T) {
	in := fraction.Inches
	j := backsplash()
	j.Runs[0].Openings = nil
	j.Cooking = []plan.Cooking{{From: in(12), To: in(24), Manual: "p. 6"}, {From: in(30), To: in(40)}, {From: in(42), To: in(50)}}
	if got := fractiontest.Doubts(t, j, plan.BurnsAtCooking); len(got) != 2 || got[0] != "Cooking[1]" || got[1] != "Cooking[2]" {
		t.Errorf("doubts at %q", got)
	}
}

// A corner stands for an arc where it lies less than 1/4 in off it and not 1/4 in or more below its springing.
func TestCornersOnAnArc(t *testing.T) {
	arcs := []plan.Arc{{Opening: "arch", Centre: cutout.Point{X: fraction.Inches(20), Y: fraction.Inches(10)}, Radius: fraction.Inches(5), Springs: fraction.Inches(10)}}
	length := func(text string) fraction.Length {
		x, _ := new(big.Rat).SetString(text)
		return fraction.Of(x.Num().Int64(), x.Denom().Int64())
	}
	for _, row := range []struct {
		x, y string
		want bool
	}{
		{"20", "15", true}, {"25", "10", true}, {"15", "10", true}, {"23", "14", true},
		{"20", "15.24", true}, {"20", "15.25", false}, {"20", "14.76", true}, {"20", "14.75", false}, {"20", "10", false},
		{"25", "9.76", true}, {"25", "9.75", false}, {"20", "5", false},
	} {
		got := plan.ArcAt(arcs, cutout.Point{X: length(row.x), Y: length(row.y)})
		if (got != nil) != row.want || got != nil && got != &arcs[0] {
			t.Errorf("%s, %s: %v", row.x, row.y, got)
		}
	}
	small := []plan.Arc{{Centre: cutout.Point{X: fraction.Inches(20), Y: fraction.Inches(10)}, Radius: fraction.Of(1, 8), Springs: fraction.Inches(10)}}
	if plan.ArcAt(small, small[0].Centre) == nil {
		t.Error("the centre of an arc of 1/8 in lies not near it")
	}
}

// A place that was taped on a run that there is not is refused.
func TestTapedOnNoRun(t *testing.T) {
	for _, run := range []int{-1, 1} {
		j := backsplash()
		j.Taped = []plan.TapedPoint{taped(run, -1, 0, 50, 40)}
		if err := j.Validate(); err == nil {
			t.Errorf("run %d: no error", run)
		}
	}
}

// A list of 2500 items is taken, one more is not.
func TestLongestList(t *testing.T) {
	for n, valid := range map[int]bool{2500: true, 2501: false} {
		j := backsplash()
		j.Profile.Lengths = slices.Repeat([]fraction.Length{fraction.Inches(96)}, n)
		if err := j.Validate(); (err == nil) != valid {
			t.Errorf("%d lengths: %v", n, err)
		}
	}
}

// Where a repeat starts goes without saying on boards where two of them meet, and nowhere else.
func TestRepeatsOnAPole(t *testing.T) {
	in := fraction.Inches
	for _, row := range []struct {
		boards bool
		start  int64
		said   bool
	}{{true, 10, false}, {true, 12, true}, {false, 10, true}, {false, 12, true}} {
		p := plan.Plan{Profile: plan.Profile{Profile: groove.Profile{Boards: row.boards}}}
		pole := []plan.Mark{{At: in(0), Kind: plan.PanelsStart}, {At: in(10), Kind: plan.PanelsMeet, Panel: 1, Next: 2}, {At: in(row.start), Kind: plan.RepeatStarts}, {At: in(20), Kind: plan.PanelsStop}}
		said := false
		for _, e := range p.PoleEntries(plan.Run{StoryPole: pole}) {
			said = said || slices.ContainsFunc(e.Marks, func(m plan.Mark) bool { return m.Kind == plan.RepeatStarts })
		}
		if said != row.said {
			t.Errorf("%+v: not so", row)
		}
	}
}

// Each enumeration is read and written by its words; a value or a word that it lacks is an error.
func TestWords(t *testing.T) {
	words(t, func(w plan.Why) (string, int) { return w.String(), int(w) }, "neither end is seen", "left end is seen", "right end is seen", "both ends are seen")
	words(t, func(p plan.Preference) (string, int) { return p.String(), int(p) }, "sheets", "looks")
	words(t, func(s plan.Trim) (string, int) { return s.String(), int(s) }, "none", "near", "beyond")
	words(t, func(k plan.SawKind) (string, int) { return k.String(), int(k) }, "", "table", "track", "circular", "hand")
	words(t, func(f plan.Face) (string, int) { return f.String(), int(f) }, "", "up", "down")
	words(t, func(k plan.EdgeKind) (string, int) { return k.String(), int(k) }, "any edge", "factory edge", "sawn edge")
	words(t, func(k plan.MarkKind) (string, int) { return k.String(), int(k) }, "panels start", "panels stop", "repeat starts", "panel left", "panel right",
		"panels meet", "installed left", "installed right", "installed meet", "opening left", "opening right", "step")
}

// words checks an enumeration against the words of its values from 0 on.
func words[E encoding.TextMarshaler, P interface {
	*E
	encoding.TextUnmarshaler
}](t *testing.T, of func(E) (string, int), want ...string) {
	t.Helper()
	for i, word := range want {
		var e E
		if err := P(&e).UnmarshalText([]byte(word)); err != nil {
			t.Errorf("%q: %v", word, err)
		}
		text, err := e.MarshalText()
		if said, value := of(e); err != nil || string(text) != word || said != word || value != i {
			t.Errorf("%q, read as %d, is written as %q and said as %q, %v", word, value, text, said, err)
		}
	}
	if err := P(new(E)).UnmarshalText([]byte("nobody knows")); err == nil {
		t.Errorf("an unknown word is one beside %q", want)
	}
}
