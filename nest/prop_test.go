package nest_test

import (
	"context"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// few is a budget that ends before many of the drawn jobs are proved, so that both ends of a search
// are met.
var few = nest.Budget{Nodes: 30_000}

func searched(t *rapid.T, most int) (nest.Problem, nest.Result) {
	p := drawProblem(t, most)
	r, err := nest.Search(context.Background(), p, few)
	if err != nil {
		t.Fatal(err)
	}
	return p, r
}

// TestCutsFreeEveryPart: Verify replays the cuts; every part must come free, show the pattern it
// needs, and be placed once or be unplaced.
func TestCutsFreeEveryPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, r := searched(t, 16)
		if err := nest.Verify(p, r); err != nil {
			t.Fatal(err)
		}
		first, err := nest.FirstFit(p)
		if err != nil {
			t.Fatal(err)
		}
		if err := nest.Verify(p, first); err != nil {
			t.Fatal(err)
		}
	})
}

// TestPhaseFollows calculates the phase of every placement from what the contract says, apart from
// Verify.
func TestPhaseFollows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, r := searched(t, 12)
		for _, s := range r.Sheets {
			for _, pl := range s.Placements {
				part := p.Parts[pl.Part-1]
				left := p.Stock[s.Stock].LeftPhase.Add(pl.X)
				if pl.Turned {
					right := left.Add(part.Width)
					left = p.Pattern.Axis.Add(p.Pattern.Axis).Sub(right)
				}
				if off := left.Sub(part.LeftPhase); !p.Pattern.Pitch.IsZero() && !off.Mod(p.Pattern.Pitch).IsZero() {
					t.Fatalf("part %d at %v (turned %v) is off the pattern by %v", pl.Part, pl.X, pl.Turned, off)
				}
			}
		}
	})
}

// TestNothingLostNothingDouble counts the parts.
func TestNothingLostNothingDouble(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, r := searched(t, 16)
		met := map[int]int{}
		for _, s := range r.Sheets {
			for _, pl := range s.Placements {
				met[pl.Part]++
			}
		}
		for _, u := range r.Unplaced {
			met[u.Part]++
		}
		for _, part := range p.Parts {
			if met[part.Number] != 1 {
				t.Fatalf("part %d was met %d times", part.Number, met[part.Number])
			}
		}
	})
}

// TestNeverBelowTheBound: no nest that places all parts takes fewer sheets, or less money, than
// Lower says.
func TestNeverBelowTheBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, r := searched(t, 16)
		b, err := nest.LowerBound(p)
		if err != nil {
			t.Fatal(err)
		}
		if len(r.Unplaced) == 0 && (len(r.Sheets) < b.Sheets || r.Cost.Compare(b.Cost) < 0) {
			t.Fatalf("%d sheets for %v, bound %+v", len(r.Sheets), r.Cost, b)
		}
	})
}

// TestNeverWorseThanFirstFit compares in the order of objective.
func TestNeverWorseThanFirstFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, r := searched(t, 20)
		first, err := nest.FirstFit(p)
		if err != nil {
			t.Fatal(err)
		}
		if a, b := meritOf(p, r), meritOf(p, first); b.less(a) {
			t.Fatalf("search %v, first fit %v", a, b)
		}
	})
}

// TestPostOptimizeKeepsTheObjective: of a draft it makes a nest that is as good, and leaves no
// smaller rectangle: no cut of these problems is too thin for a saw.
func TestPostOptimizeKeepsTheObjective(t *testing.T) {
	largest := func(r nest.Result) (most fraction.Area) {
		for _, s := range r.Sheets {
			for _, o := range s.Offcuts {
				if a := o.Width.Times(o.Length); most.Compare(a) < 0 {
					most = a
				}
			}
		}
		return most
	}
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 16)
		draft, err := nest.Search(context.Background(), p, nest.Budget{Nodes: few.Nodes, Draft: true})
		if err != nil {
			t.Fatal(err)
		}
		r, err := nest.PostOptimize(p, draft)
		if err != nil {
			t.Fatal(err)
		}
		if err := nest.Verify(p, r); err != nil {
			t.Fatal(err)
		}
		if meritOf(p, r) != meritOf(p, draft) || r.Bound != draft.Bound || r.Status != draft.Status || largest(r).Compare(largest(draft)) < 0 {
			t.Fatalf("%+v\nof the draft %+v", r, draft)
		}
	})
}

// TestSameInputSameResult searches twice.
func TestSameInputSameResult(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, r := searched(t, 14)
		again, err := nest.Search(context.Background(), p, few)
		if err != nil || !reflect.DeepEqual(r, again) {
			t.Fatalf("the same problem gave another nest (%v)", err)
		}
	})
}

// TestMoreStockNeverHurts: one more kind of stock cannot make the best nest worse.
func TestMoreStockNeverHurts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 6)
		with, err := nest.Search(context.Background(), p, nest.Budget{})
		if err != nil {
			t.Fatal(err)
		}
		less := p
		less.Stock = p.Stock[:1]
		without, err := nest.Search(context.Background(), less, nest.Budget{})
		if err != nil {
			t.Fatal(err)
		}
		if with.Bound.Proved && meritOf(less, without).less(meritOf(p, with)) {
			t.Fatalf("with more stock %v, with less %v", meritOf(p, with), meritOf(less, without))
		}
	})
}

// A bound that is enough ends the search, which then claims no more than is so; one that is never met
// changes nothing.
func TestEnoughEndsTheSearch(t *testing.T) {
	ended := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 8)
		search := func(enough func(nest.Bound) bool) nest.Result {
			r, err := nest.Search(context.Background(), p, nest.Budget{Nodes: 20_000, Draft: true, Enough: enough})
			if err != nil {
				t.Fatal(err)
			}
			return r
		}
		whole := search(nil)
		for sheets := range len(whole.Sheets) + 2 {
			enough := func(b nest.Bound) bool { return b.Sheets >= sheets }
			got := search(enough)
			switch {
			case !enough(got.Bound):
				if !reflect.DeepEqual(whole, got) {
					t.Fatalf("%d sheets were not enough: %+v, not %+v", sheets, got, whole)
				}
			case len(got.Sheets) > 0 || got.Status != nest.Spent:
				t.Fatalf("%d sheets were enough: %+v", sheets, got)
			case len(whole.Unplaced) == 0 && len(whole.Sheets) < got.Bound.Sheets && len(p.Stock) == 1:
				t.Fatalf("bound %+v, and %d sheets do", got.Bound, len(whole.Sheets))
			default:
				ended++
			}
		}
	})
	if ended == 0 {
		t.Error("no search ended")
	}
}
