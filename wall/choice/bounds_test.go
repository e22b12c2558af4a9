package choice

import (
	"fmt"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// That the stock is too little for every layout is proved where it is too little for the least, or every layout was looked
// at and the nest of none is open.
func TestTooLittleIsProved(t *testing.T) {
	for _, row := range []struct {
		least, onHand int
		end           EndCause
		open, want    bool
	}{
		{5, 4, BudgetSpent, true, true}, {5, 5, BudgetSpent, false, false}, {5, 5, LayoutsSpent, false, true}, {5, 5, LayoutsSpent, true, false},
	} {
		e := explorer{ctx: t.Context(), endless: row.least, onHand: row.onHand, end: row.end}
		if row.open {
			e.open = []openNest{{}}
		}
		if got := e.short(); got.(*ShortError).Proved != row.want {
			t.Errorf("%+v: not so", row)
		}
	}
}

// An error of the bounds of a layout ends the search.
func TestErrorOfABound(t *testing.T) {
	e := explorer{ctx: t.Context(), room: Problem{Saw: nest.Saw{Kerf: fraction.Inches(-1)}}, found: []Choice{small(1, 5, 5, 5, 0)}, nested: map[string]nested{}}
	if err := e.look(wall.Layout{Total: blemish(2)}); err == nil {
		t.Error("no error with a blade of -1 in")
	}
}

// The panels of all bases are counted, each base once.
func TestBasesAreCounted(t *testing.T) {
	profile, _ := groove.Find("beadboard 1-1/2")
	in := fraction.Inches
	run := wall.Run{Name: "wall", Width: in(80), Left: wall.End{Kind: wall.Exposed}, Right: wall.End{Kind: wall.Exposed}, Heights: []wall.Height{{Top: in(30)}, {At: in(80), Top: in(30)}}}
	room := wall.Room{Profile: profile, Mark: fraction.Of(1, 16), Priorities: wall.DefaultPriorities(fraction.Inch), Runs: []wall.Run{run},
		Stock: []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96)}}}
	m, err := wall.NewModel(t.Context(), room)
	if err != nil {
		t.Fatal(err)
	}
	o := offcuts{explorer: &explorer{ctx: t.Context(), model: m, room: room}, known: map[string]bool{}}
	looked := 0
	for l, err := range m.Layouts(t.Context()) {
		if err != nil {
			t.Fatal(err)
		}
		for range 2 {
			if err := o.add(&l); err != nil {
				t.Fatal(err)
			}
		}
		if looked++; looked == 30 {
			break
		}
	}
	sum := 0
	for _, b := range o.bases {
		sum += b.seams.Panels()
	}
	if len(o.bases) < 2 || len(o.bases) == looked || o.panels != sum || sum < 4 {
		t.Errorf("%d bases of %d panels, counted as %d", len(o.bases), sum, o.panels)
	}
}

// The words of what ends a search are read back, others are not read.
func TestWordsOfEnds(t *testing.T) {
	for e := BudgetSpent; e <= GapsClosed; e++ {
		text, err := e.MarshalText()
		var got EndCause
		if err != nil || got.UnmarshalText(text) != nil || got != e || string(text) != fmt.Sprint(e) {
			t.Errorf("%q is read as %v: %v", text, got, err)
		}
	}
	if new(EndCause).UnmarshalText([]byte("tired")) == nil {
		t.Error("an unknown cause is read")
	}
}
