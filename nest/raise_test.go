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
