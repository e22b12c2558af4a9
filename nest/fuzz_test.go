package nest_test

import (
	"context"
	"encoding/json"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

// FuzzSearch is TestCutsFreeEveryPart under the fuzzer.
func FuzzSearch(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Fuzz(rapid.MakeFuzz(func(t *rapid.T) {
		p, r := searched(t, 10)
		if err := nest.Verify(p, r); err != nil {
			t.Fatal(err)
		}
	}))
}

// FuzzWild calls what the package exports with wild values: nothing panics, and a nest that comes
// of a problem however wild is a good one.
func FuzzWild(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add([]byte{}, byte(0))
	f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16}, byte(1))
	f.Add([]byte{3, 200, 40, 8, 9, 10, 0, 1, 2, 3, 17, 18}, byte(2))
	f.Fuzz(func(t *testing.T, data []byte, sound byte) {
		var p nest.Problem
		var r nest.Result
		var budget nest.Budget
		var strips []nest.Strip
		var lengths []fraction.Length
		var length fraction.Length
		var weight nest.DualWeight
		var profile groove.Profile
		var most int
		if sound%3 > 0 { // a sound problem, of which something is made wild
			p = patterned()
			var err error
			if r, err = nest.FirstFit(p); err != nil {
				t.Fatal(err)
			}
		}
		switch sound % 3 {
		case 0:
			fractiontest.Fill(data, &p, &r, &strips, &lengths, &length, &most, &profile)
		case 1:
			fractiontest.Fill(data, &r.Sheets[0], &r.Cost, &strips, &lengths, &length, &most)
		case 2:
			fractiontest.Fill(data, &p.Parts[1], &p.Stock[0], &p.Pattern, &p.Saw, &strips, &lengths, &length, &most, &budget)
		}
		if budget.Nodes = min(budget.Nodes, 3000); budget.Nodes <= 0 {
			budget.Nodes = 3000
		}
		ctx, cancel := context.WithTimeout(t.Context(), 200*time.Millisecond)
		defer cancel()
		for _, find := range []func() (nest.Result, error){
			func() (nest.Result, error) { return nest.Search(ctx, p, budget) },
			func() (nest.Result, error) { return nest.FirstFit(p) },
		} {
			if found, err := find(); err == nil {
				if err := nest.Verify(p, found); err != nil {
					t.Errorf("%+v: %v", p, err)
				}
			}
		}
		nest.Verify(p, r)
		nest.PostOptimize(p, r)
		nest.LowerBound(p)
		nest.StripBound(p, length, strips)
		weights, _ := nest.DualWeights(p, strips, lengths, most)
		for _, w := range append(weights, weight) {
			w.Of(length)
			w.LowerBound(length)
			w.Least(length)
		}
		for _, s := range p.Stock {
			s.Usable(p.Saw)
		}
		nest.PatternOf(profile)
		kind, why, how, status := nest.CutKind(sound), nest.Reason(sound), nest.Argument(sound), nest.Status(sound)
		for _, v := range []interface {
			String() string
			MarshalText() ([]byte, error)
			UnmarshalText([]byte) error
		}{&kind, &why, &how, &status} {
			_ = v.String()
			if text, err := v.MarshalText(); err == nil && v.UnmarshalText(text) != nil {
				t.Errorf("%q is written and not read", text)
			}
			v.UnmarshalText(data)
		}
	})
}

// TestResultReadsBack writes nests as JSON and reads them.
func TestResultReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, r := searched(t, 12)
		for _, v := range []struct{ value, read any }{{r, new(nest.Result)}, {p, new(nest.Problem)}} {
			data, err := json.Marshal(v.value)
			if err != nil {
				t.Fatal(err)
			}
			if err := json.Unmarshal(data, v.read); err != nil {
				t.Fatal(err)
			}
			var got any
			switch read := v.read.(type) {
			case *nest.Result:
				got = *read
			case *nest.Problem:
				got = *read
			}
			if diff := cmp.Diff(v.value, got, cmpopts.EquateComparable(fraction.Length{}, fraction.Ratio{})); diff != "" {
				t.Fatalf("(-written +read)\n%s", diff)
			}
		}
	})
}

// TestZeroValues: what is there without any field set says so, and nothing panics.
func TestZeroValues(t *testing.T) {
	var p nest.Problem
	var none context.Context
	if r, err := nest.Search(none, p, nest.Budget{}); err != nil || r.Status != nest.Proved || r.Bound.How != nest.NothingToCut {
		t.Errorf("Search: %+v, %v", r, err)
	}
	if err := nest.Verify(p, nest.Result{}); err != nil {
		t.Errorf("Verify: %v", err)
	}
	strips := []nest.Strip{{Width: inches("48"), Height: inches("9"), Tallest: inches("9")}}
	if b, err := nest.StripBound(p, fraction.Length{}, strips); err != nil || b.Sheets != 1 || b.How != nest.SomethingToCut {
		t.Errorf("StripBound without stock: %+v, %v", b, err)
	}
	if w, err := nest.DualWeights(patterned(), strips, nil, -3); err != nil || len(w) != 0 {
		t.Errorf("DualWeights: %d of at most -3, %v", len(w), err)
	}
	var w nest.DualWeight
	if b := w.LowerBound(inches("9")); w.Of(inches("9")) != 0 || b != (nest.Bound{}) {
		t.Errorf("the zero weight values 9 in at %d and asks for %+v", w.Of(inches("9")), b)
	}
}
