package choice_test

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/shopspring/decimal"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
)

// rooms calls f with invented small rooms, the same at each run of the test.
func rooms(n int, f func(seed uint64, p wall.Room)) {
	for seed := range uint64(n) {
		f(seed, room(rand.New(rand.NewPCG(seed, 1))))
	}
}

// room draws up to three stepped walls with windows, joined by corners.
func room(r *rand.Rand) wall.Room {
	eighths := func(low, high int) fraction.Length { return fraction.Of(int64(8*low+r.IntN(8*(high-low))), 8) }
	profile, _ := groove.Find("beadboard 1-1/2")
	p := wall.Room{Profile: profile, Mark: fraction.Of(1, 16), Priorities: wall.DefaultPriorities(fraction.Inch), Gaps: wall.Gaps{Side: fraction.Of(1, 16)},
		Saw: nest.Saw{Kerf: fraction.Of(1, 8)}}
	ends := []wall.EndKind{wall.Exposed, wall.Covered, wall.OutsideCorner}
	runs := 1 + r.IntN(3)
	for i := range runs {
		run := wall.Run{Name: fmt.Sprintf("wall %d", i+1), Width: eighths(20, 110)}
		run.Left.Kind, run.Right.Kind = wall.InsideCorner, wall.InsideCorner
		if i == 0 {
			run.Left.Kind = ends[r.IntN(2)]
		}
		if i == runs-1 {
			run.Right.Kind = ends[r.IntN(2)]
		}
		low, step := eighths(14, 40), eighths(5, 15)
		high := eighths(14, 60)
		run.Heights = []wall.Height{{Top: low}, {At: step, Top: low}, {At: step, Top: high}, {At: run.Width, Top: high}}
		if r.IntN(2) == 0 {
			run.Openings = []wall.Opening{{Name: "window", Kind: wall.Window, Outline: cutout.Rectangle(step.Add(fraction.Inches(2)), fraction.Inches(4), eighths(1, 3), fraction.Inches(8))}}
		}
		p.Runs = append(p.Runs, run)
	}
	p.Stock = []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}}
	return p
}

// explore fails the test on any error but one that says that the room cannot be done.
func explore(t *testing.T, seed uint64, p wall.Room, b choice.Budget) (choice.Choices, bool) {
	t.Helper()
	c, err := choice.Explore(t.Context(), p, b)
	var none *wall.NoLayoutError
	if errors.As(err, &none) {
		return c, false
	}
	if err != nil {
		t.Fatalf("room %d: %v", seed, err)
	}
	return c, true
}

var small = choice.Budget{Layouts: 6, Nodes: 20_000}

func TestFrontIsNotDominated(t *testing.T) {
	points := 0
	rooms(24, func(seed uint64, p wall.Room) {
		c, ok := explore(t, seed, p, small)
		if !ok {
			return
		}
		points += len(c.Front)
		for i := 1; i < len(c.Front); i++ {
			a, b := c.Front[i-1], c.Front[i]
			if !a.Layout.Total.Less(b.Layout.Total) || a.Need.Compare(b.Need) <= 0 {
				t.Errorf("room %d: choice %d needs %+v at %s, the next %+v at %s", seed, i-1, a.Need, a.Layout.Total, b.Need, b.Layout.Total)
			}
		}
		for i, f := range c.Front {
			nesting, err := choice.Nesting(p, &f.Layout)
			if err == nil {
				err = nest.Verify(nesting, f.Nest)
			}
			if err != nil {
				t.Errorf("room %d, choice %d: %v", seed, i, err)
			}
			if f.Need.Compare(c.Least) < 0 {
				t.Errorf("room %d: choice %d needs %+v, below the bound %+v", seed, i, f.Need, c.Least)
			}
		}
	})
	if points < 20 {
		t.Errorf("only %d choices were looked at", points)
	}
}

// A search with ten times the effort finds nothing that a proof of the short one excludes.
func TestProofsHoldAgainstMoreEffort(t *testing.T) {
	proofs := map[choice.Status]int{}
	rooms(16, func(seed uint64, p wall.Room) {
		short, ok := explore(t, seed, p, small)
		if !ok {
			return
		}
		long, _ := explore(t, seed, p, choice.Budget{Layouts: 40, Nodes: 100_000})
		for _, a := range short.Front {
			proofs[a.Status]++
			for _, b := range long.Front {
				looks, need := b.Layout.Total.Compare(a.Layout.Total), b.Need.Compare(a.Need)
				if a.Status&choice.NeedProved != 0 && looks <= 0 && need < 0 {
					t.Errorf("room %d: %+v at %s is said to need least, but %+v does at %s", seed, a.Need, a.Layout.Total, b.Need, b.Layout.Total)
				}
				if a.Status&choice.LooksProved != 0 && need <= 0 && looks < 0 {
					t.Errorf("room %d: %+v is said to look best at %s, but %+v does at %s", seed, a.Need, a.Layout.Total, b.Need, b.Layout.Total)
				}
			}
		}
	})
	if proofs[choice.BothProved] == 0 || proofs[choice.LooksProved]+proofs[choice.NeedProved]+proofs[choice.Open] == 0 {
		t.Errorf("the rooms test nothing: %v", proofs)
	}
}

func TestSameRoomSameFront(t *testing.T) {
	rooms(3, func(seed uint64, p wall.Room) {
		a, _ := explore(t, seed, p, small)
		b, _ := explore(t, seed, p, small)
		if diff := cmp.Diff(a, b, cmpopts.EquateComparable(fraction.Length{}, fraction.Ratio{}, fraction.Area{})); diff != "" {
			t.Errorf("room %d (-first +second):\n%s", seed, diff)
		}
	})
}

func TestNoStockIsProvedTooLittle(t *testing.T) {
	p := room(rand.New(rand.NewPCG(3, 1)))
	p.Stock[0].Count = new(int)
	_, err := choice.Explore(t.Context(), p, small)
	var short *choice.ShortError
	if !errors.As(err, &short) || len(short.Left) == 0 || short.OnHand != 0 || short.Buys || !short.Proved {
		t.Errorf("got %v", err)
	}
}

// A context that ends before the first layout is an error, one that ends later stops the search
// with what was found, which then is not proved best in need and looks.
func TestContextEndsTheSearch(t *testing.T) {
	before, within := 0, 0
	for n := 0; n <= 1<<13; n = max(1, 2*n) {
		c, err := choice.Explore(fractiontest.Ending(t.Context(), n), room(rand.New(rand.NewPCG(7, 1))), choice.Budget{})
		switch {
		case errors.Is(err, context.Canceled) && len(c.Front) == 0:
			before++
		case err == nil && len(c.Front) > 0 && c.End == choice.ContextStopped && c.Sheets().Status != choice.BothProved:
			within++
		default:
			t.Errorf("after %d steps: %v, %d choices, end %v", n, err, len(c.Front), c.End)
		}
	}
	if before == 0 || within == 0 {
		t.Errorf("%d searches were stopped before the first layout, %d after it", before, within)
	}
}

// A nil context never ends.
func TestNilContextNeverEnds(t *testing.T) {
	var none context.Context
	c, err := choice.Explore(none, room(rand.New(rand.NewPCG(7, 1))), small)
	if err != nil || c.Layouts < 2 || c.End != choice.BudgetSpent {
		t.Errorf("%d layouts, end %v, %v; want the budget spent", c.Layouts, c.End, err)
	}
}

func TestZeroRoomIsAnError(t *testing.T) {
	if _, err := choice.Explore(t.Context(), wall.Room{}, choice.Budget{}); err == nil {
		t.Error("no error")
	}
}

func ExampleExplore() {
	profile, _ := groove.Find("beadboard 1-1/2")
	p := wall.Room{
		Profile: profile, Mark: fraction.Of(1, 16), Priorities: wall.DefaultPriorities(fraction.Inch),
		Runs: []wall.Run{{
			Name: "hall", Width: fraction.Inches(94), Left: wall.End{Kind: wall.Exposed}, Right: wall.End{Kind: wall.Covered},
			Heights: []wall.Height{{Top: fraction.Inches(40)}, {At: fraction.Inches(94), Top: fraction.Inches(40)}},
		}},
		Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}},
		Saw:   nest.Saw{Kerf: fraction.Of(1, 8)},
	}
	c, err := choice.Explore(context.Background(), p, choice.Budget{})
	if err != nil {
		fmt.Println(err)
		return
	}
	looks, least := c.Looks(), c.Sheets()
	fmt.Println(looks.Need.Sheets, "sheet,", len(looks.Layout.Pieces), "pieces, proved:", looks.Status)
	fmt.Println("fewer sheets for less looks:", least.Need.Compare(looks.Need) < 0)
	// Output:
	// 1 sheet, 2 pieces, proved: both
	// fewer sheets for less looks: false
}

// The pieces of the best-looking layout, nested in one pass.
func ExampleNesting() {
	profile, _ := groove.Find("beadboard 1-1/2")
	room := wall.Room{
		Profile: profile, Priorities: wall.DefaultPriorities(fraction.Inch),
		Runs: []wall.Run{{Name: "hall", Width: fraction.Inches(60), Left: wall.End{Kind: wall.Exposed}, Right: wall.End{Kind: wall.Covered},
			Heights: []wall.Height{{Top: fraction.Inches(30)}, {At: fraction.Inches(60), Top: fraction.Inches(30)}}}},
		Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}},
	}
	for layout := range wall.Layouts(context.Background(), room) {
		problem, err := choice.Nesting(room, &layout)
		if err != nil {
			fmt.Println(err)
			return
		}
		result, err := nest.FirstFit(problem)
		fmt.Println(len(problem.Parts), "parts,", len(result.Sheets), "sheet,", err)
		break
	}
	// Output: 2 parts, 1 sheet, <nil>
}

// One sheet where the walls alone ask for two is proved to be too little, before other layouts are
// looked at.
func TestTooLittleStockIsProved(t *testing.T) {
	p := room(rand.New(rand.NewPCG(3, 1)))
	for i := range p.Runs { // 3 walls of 110 in by 90 in are more than a sheet of 48 in by 96 in
		p.Runs[i].Openings, p.Runs[i].Width = nil, fraction.Inches(110)
		p.Runs[i].Heights = []wall.Height{{Top: fraction.Inches(90)}, {At: fraction.Inches(110), Top: fraction.Inches(90)}}
	}
	one := 1
	p.Stock[0].Count = &one
	_, err := choice.Explore(t.Context(), p, choice.Budget{})
	var short *choice.ShortError
	if !errors.As(err, &short) || !short.Proved || short.Least < 2 || short.OnHand != 1 || short.Layouts > 1 {
		t.Errorf("got %v", err)
	}
}

// A sheet on hand saves buying one of the same kind: no other kind takes its place. One that is dearer
// than what can be bought does not.
func TestSheetsOnHandAreUsed(t *testing.T) {
	one := 1
	for _, row := range []struct {
		bought, onHand string
		want           choice.Need
	}{
		{"", "", choice.Need{Bought: 1, Sheets: 2}},
		{"10", "10", choice.Need{Cost: fraction.NewRatio(20, 1), Bought: 1, Sheets: 2}},
		{"10", "12", choice.Need{Cost: fraction.NewRatio(20, 1), Bought: 2, Sheets: 2}},
	} {
		p := wall.Room{
			Profile: groove.Profile{Thickness: fraction.Of(1, 4), Features: []groove.Feature{{Kind: groove.Flat, Width: fraction.Inches(2)}, {Kind: groove.Bead, Width: fraction.Of(1, 2)}}},
			Mark:    fraction.Of(1, 16), Priorities: wall.DefaultPriorities(fraction.Inch),
			Runs: []wall.Run{{Name: "hall", Width: fraction.Inches(90), Left: wall.End{Kind: wall.Exposed}, Right: wall.End{Kind: wall.Covered},
				Heights: []wall.Height{{Top: fraction.Inches(60)}, {At: fraction.Inches(90), Top: fraction.Inches(60)}}}},
		}
		for _, kind := range []struct {
			name, price string
			count       *int
		}{{"bought", row.bought, nil}, {"on hand", row.onHand, &one}} {
			s := nest.Stock{Name: kind.name, Width: fraction.Inches(48), Length: fraction.Inches(96), Count: kind.count}
			if kind.price != "" {
				s.Price = money.Of(decimal.RequireFromString(kind.price))
			}
			p.Stock = append(p.Stock, s)
		}
		c, err := choice.Explore(t.Context(), p, choice.Budget{})
		if got := c.Sheets().Need; err != nil || got != row.want {
			t.Errorf("bought for %q, on hand for %q: %+v, %v; want %+v", row.bought, row.onHand, got, err, row.want)
		}
	}
}
