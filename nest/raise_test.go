package nest

import (
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
)

// A bound rests on what raised it last, be it the sheets, those that are bought or the money alone; on what raised none of them
// it does not rest.
func TestBoundRestsOnWhatRaisedIt(t *testing.T) {
	in := fraction.Inches
	p := Problem{Stock: []Stock{{Name: "sheet", Width: in(48), Length: in(96), Price: money.MustParse("7")}}}
	all, err := DualWeights(p, []Strip{{Width: in(100), Height: in(90), Tallest: in(90)}}, nil, 1)
	if err != nil || len(all) == 0 {
		t.Fatal(all, err)
	}
	w := &all[0]
	need := w.marks(in(100).Mul(w.Of(in(90))))
	most := w.raise(Bound{}, need)
	if most.Sheets != 3 || most.Bought != 3 || most.Cost != fraction.Must(fraction.ParseRatio("21")) || most.How != w.how {
		t.Fatalf("%+v", most)
	}
	for name, row := range map[string]struct {
		less  func(*Bound)
		rests Argument
	}{
		"nothing": {func(*Bound) {}, ExactSearch},
		"sheets":  {func(b *Bound) { b.Sheets-- }, w.how},
		"bought":  {func(b *Bound) { b.Bought-- }, w.how},
		"money":   {func(b *Bound) { b.Cost = fraction.Ratio{} }, w.how},
	} {
		b := most
		b.How = ExactSearch
		row.less(&b)
		got := w.raise(b, need)
		if got.How != row.rests {
			t.Errorf("less %s: the bound rests on %v, want %v", name, got.How, row.rests)
		}
		if got.How = most.How; got != most {
			t.Errorf("less %s: raised to %+v, want %+v", name, got, most)
		}
	}
	more := most
	more.Sheets, more.Bought, more.Cost, more.How = 4, 4, fraction.Must(fraction.ParseRatio("22")), ExactSearch
	if got := w.raise(more, need); got != more {
		t.Errorf("a higher bound becomes %+v, want %+v", got, more)
	}
}

// Boxes are kept from narrow and high to wide and low, none larger than the sheet and none that another makes needless.
func TestBoxesThatAreKept(t *testing.T) {
	o := &oneSheet{w: 10, h: 10}
	var all []box
	for _, row := range []struct{ w, h int64 }{{11, 1}, {1, 11}, {11, 11}, {10, 2}, {5, 5}, {6, 6}, {5, 5}, {3, 10}, {5, 4}, {3, 9}} {
		all = o.keep(all, box{w: row.w, h: row.h})
	}
	want := [][2]int64{{3, 9}, {5, 4}, {10, 2}}
	for i, b := range all {
		if i >= len(want) || [2]int64{b.w, b.h} != want[i] {
			t.Fatalf("kept are %+v, want %v", all, want)
		}
	}
	if len(all) != len(want) {
		t.Errorf("kept are %+v, want %v", all, want)
	}
}

// Where parts of 26 in stand alone on short sheets at 1 and three high on long ones at 3, each costs 1, which the area does not
// say: of each kind of stock is known what a stack on it is worth at most.
func TestStacksOfEachKindBoundTheCost(t *testing.T) {
	in := fraction.Inches
	p := Problem{Stock: []Stock{{Name: "short", Width: in(48), Length: in(50), Price: money.MustParse("1")}, {Name: "long", Width: in(48), Length: in(96), Price: money.MustParse("3")}}}
	for i := range 4 {
		p.Parts = append(p.Parts, Part{Number: i + 1, Width: in(48), Height: in(26)})
	}
	j, err := prepare(&p)
	if err != nil {
		t.Fatal(err)
	}
	_, relax := j.lower(never)
	groups := j.groups(relax.pieces)
	_, coins, _ := newWeights(j, groups, relax).atLeast(groups)
	if got := j.money(coins); got != fraction.NewRatio(4, 1) {
		t.Errorf("at least %v, want 4", got)
	}
}

// The fuller of two sheets comes first, though the other holds more.
func TestFullerSheetsComeFirst(t *testing.T) {
	in := fraction.Inches
	one := 1
	p := Problem{Saw: Saw{Kerf: fraction.Of(1, 16)}, Stock: []Stock{{Name: "large", Width: in(48), Length: in(96), Price: money.MustParse("9")}, {Name: "small", Width: in(10), Length: in(10), Price: money.MustParse("1"), Count: &one}},
		Parts: []Part{{Number: 1, Width: in(40), Height: in(90)}, {Number: 2, Width: in(10), Height: in(10)}}}
	r, err := Search(t.Context(), p, Budget{Nodes: 1000})
	if err != nil || len(r.Sheets) != 2 || r.Sheets[0].Stock != 1 || r.Sheets[1].Stock != 0 {
		t.Errorf("%+v, %v", r.Sheets, err)
	}
}
