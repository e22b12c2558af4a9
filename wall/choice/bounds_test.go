package choice

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
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
	e.nested[partsKey(fraction.Must(Nesting(e.room, &wall.Layout{})))] = nested{blemish: blemish(1)} // was looked at before
	e.found, e.fewer = nil, func(ruling) ([]Choice, error) { return []Choice{small(2, 5, 5, 5, 0)}, nil }
	if err := e.takeOver(); err == nil {
		t.Error("no error for a layout that was found with fewer kinds of stock")
	}
}

// What was open because of a nest that was not searched to its end is open no more once it was; what other nests leave open
// stays.
func TestNestSearchedAgainIsOpenNoMore(t *testing.T) {
	e, l := oneWall(t)
	e.budget = Budget{Effort: 1, Nodes: 1000}
	r, err := nest.Search(t.Context(), fraction.Must(Nesting(e.room, &l)), nest.Budget{Nodes: 1000, Draft: true})
	if err != nil || !r.Bound.Proved {
		t.Fatalf("%+v, %v", r.Bound, err)
	}
	if e.keep(e.choice(l, r)); len(e.open) != 0 {
		t.Errorf("a proved nest leaves open %+v", e.open)
	}
	e.found, r.Bound = nil, nest.Bound{Sheets: 0}
	e.keep(e.choice(l, r))
	others := []openNest{{l.Total.Add(blemish(1)), r.Bound}, {l.Total, nest.Bound{Sheets: 7}}}
	e.open = slices.Concat(others[:1], e.open, others[1:])
	if err := e.searchAgain(0); err != nil || !e.found[0].Nest.Bound.Proved || len(e.found) != 1 {
		t.Errorf("%d choices, the first with the bound %+v, %v", len(e.found), e.found[0].Nest.Bound, err)
	}
	if !slices.Equal(e.open, others) {
		t.Errorf("open are %+v, want %+v", e.open, others)
	}
	better := e.choice(l, r) // one that no search finds again is kept
	better.Need = Need{}
	if e.found = []Choice{better}; e.searchAgain(0) != nil || len(e.found) != 1 || e.found[0].Need != (Need{}) {
		t.Errorf("a nest that needs more took the place of one that needs nothing: %+v", e.found[0].Need)
	}
}

// A layout that was nested before and looks better now is kept with that nest, once.
func TestNestIsKeptForALayoutThatLooksBetter(t *testing.T) {
	e, l := oneWall(t)
	r := nest.Result{Sheets: make([]nest.Sheet, 1)}
	e.nested[partsKey(fraction.Must(Nesting(e.room, &l)))] = nested{l.Total.Add(blemish(1)), &r}
	for range 2 {
		if err := e.look(l); err != nil || len(e.found) != 1 || len(e.open) != 1 {
			t.Errorf("%d choices, %d open nests, %v", len(e.found), len(e.open), err)
		}
	}
}

// priced is the explorer of [oneWall] with its orders by look and by price begun.
func priced(t *testing.T) (*explorer, wall.Layout) {
	e, l := oneWall(t)
	e.budget = Budget{Effort: 1, Layouts: 10, Nodes: 1000}
	t.Cleanup(e.close)
	for _, start := range []func() error{e.bound, e.startLooks, e.startPrices} {
		if err := start(); err != nil {
			t.Fatal(err)
		}
	}
	if len(e.prices) == 0 {
		t.Fatal("no prices")
	}
	return e, l
}

// The prices of pieces say that two panels need a sheet.
func TestPricesSayWhatALayoutNeeds(t *testing.T) {
	e, l := priced(t)
	for sheets, want := range map[int]bool{1: true, 9: false} {
		if got, err := e.priceSaysAsMuch(&l, Need{Bought: sheets, Sheets: sheets}); err != nil || got != want {
			t.Errorf("the layout needs %d sheets or more: %v, %v", sheets, got, err)
		}
	}
}

// Where a little price would count as more blemish than sums hold there is no order of both.
func TestSumThatDoesNotFit(t *testing.T) {
	e, l := priced(t)
	orders := len(e.orders)
	if o, err := e.startSum(e.prices[0].price, fraction.NewRatio(1<<40, 1), &l, &wall.Layout{}); o != nil || err != nil || len(e.orders) != orders {
		t.Errorf("%v, %v, and %d orders more", o, err, len(e.orders)-orders)
	}
	if o, err := e.startSum(e.prices[0].price, blemish(1), &l, &wall.Layout{}); o == nil || err != nil || len(e.orders) != orders+1 {
		t.Errorf("%v, %v, and %d orders more, want one", o, err, len(e.orders)-orders)
	}
}

// oneWall is a wall of 80 in between exposed ends, and a layout of it.
func oneWall(t *testing.T) (*explorer, wall.Layout) {
	profile, _ := groove.Find("beadboard 1-1/2")
	in := fraction.Inches
	run := wall.Run{Name: "wall", Width: in(80), Left: wall.End{Kind: wall.Exposed}, Right: wall.End{Kind: wall.Exposed}, Heights: []wall.Height{{Top: in(30)}, {At: in(80), Top: in(30)}}}
	room := wall.Room{Profile: profile, Mark: fraction.Of(1, 16), Priorities: wall.DefaultPriorities(fraction.Inch), Runs: []wall.Run{run},
		Stock: []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96)}}}
	m, err := wall.NewModel(t.Context(), room)
	if err != nil {
		t.Fatal(err)
	}
	for l, err := range m.Layouts(t.Context()) {
		if err != nil {
			t.Fatal(err)
		}
		return &explorer{ctx: t.Context(), model: m, room: room, nested: map[string]nested{}}, l
	}
	t.Fatal("no layout")
	return nil, wall.Layout{}
}

// The panels of all bases are counted, each base once.
func TestBasesAreCounted(t *testing.T) {
	e, _ := oneWall(t)
	o := offcuts{explorer: e, known: map[string]*base{}}
	looked := 0
	for l, err := range e.model.Layouts(t.Context()) {
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

// What was found with a set of kinds, an error too, is not looked for again.
func TestSetsOfKindsAreExploredOnce(t *testing.T) {
	k := kinds{ctx: t.Context(), known: map[uint]explored{3: {Choices{Front: []Choice{small(1, 2, 3, 4, 0)}}, nil, false}, 5: {Choices{}, errors.New("none fits"), false}}}
	if c, err := k.explore(3, nil); err != nil || len(c.Front) != 1 {
		t.Errorf("%v, %v", c, err)
	}
	if _, err := k.explore(5, nil); err == nil || err.Error() != "none fits" {
		t.Errorf("error %v", err)
	}
	k.room.Stock = make([]nest.Stock, 1)
	if _, err := k.explore(1, nil); err == nil || k.known[1].err != err {
		t.Errorf("a set of kinds for no model: %v, remembered as %v", err, k.known[1].err)
	}
	k.room.Stock = make([]nest.Stock, 3)
	k.known[6] = explored{Choices{Least: Need{Sheets: 4}}, nil, true} // a search that ended where the rest was of no use
	for most, known := range map[int]bool{3: true, 4: true, 5: false} {
		if _, err := k.explore(6, func(least Need) bool { return least.Sheets >= most }); (err == nil) != known {
			t.Errorf("of no use from %d sheets on: error %v", most, err)
		}
		k.known[6] = explored{Choices{Least: Need{Sheets: 4}}, nil, true}
	}
}

// A step of the front is open where a layout between its two choices may need less than the better looking one, the first
// step too.
func TestFirstStepIsOpen(t *testing.T) {
	for floor, open := range map[int]bool{2: true, 3: true, 4: false} {
		e := explorer{found: []Choice{small(1, 5, 0, 5, 0), small(3, 0, 0, 0, 0)}, orders: []*order{{byLook: true, last: wall.Layout{Floor: blemish(floor)}}}}
		if got := e.openStep(); (got == 0) != open || e.nothingOpen() == open {
			t.Errorf("floor %d: open step %d, nothing open: %v", floor, got, e.nothingOpen())
		}
		e.ctx, e.buys = t.Context(), true
		if ended := e.ended(); ended == open || (e.end == GapsClosed) == open {
			t.Errorf("floor %d: ended %v by %v", floor, ended, e.end)
		}
	}
}

// As long as the need is open so many shuffled variants are looked at in a round, of layouts of many pieces fewer.
func TestShuffledVariantsOfARound(t *testing.T) {
	for _, row := range []struct{ pieces, layouts, least, weight, want int }{
		{12, DefaultLayouts, 0, 4, 300}, {24, DefaultLayouts, 0, 4, 300}, {32, DefaultLayouts, 0, 4, 225}, {32, DefaultLayouts / 2, 0, 4, 113}, {24, DefaultLayouts, 1, 4, 0},
		{24, DefaultLayouts, 0, 3, 0},
	} {
		e, l := oneWall(t)
		e.budget, e.orders, e.dice = Budget{Effort: 1, Layouts: row.layouts, Nodes: 10}, []*order{{byLook: true, last: l}}, rand.New(rand.NewPCG(1, 0))
		e.found, e.least = []Choice{small(0, 0, 1, 1, 0)}, Need{Bought: row.least, Sheets: row.least}
		e.found[0].Layout.Runs, e.found[0].Layout.Pieces = l.Runs, make([]wall.Piece, row.pieces)
		o := offcuts{explorer: e, known: map[string]*base{},
			variants: []wall.Offcuts{{Stock: e.room.Stock[0], Of: func(fraction.Length) int64 { return 1 }, Sheet: 4, Weight: blemish(row.weight)}}}
		if err := o.shuffle(); err != nil || e.layouts != row.want {
			t.Errorf("%+v: %d variants, %v", row, e.layouts, err)
		}
	}
}

// Layouts of many pieces get fewer variants in a round: of twice 48 half as many.
func TestVariantsOfARound(t *testing.T) {
	for _, row := range []struct{ pieces, layouts, variants, first, more int }{
		{10, DefaultLayouts, 100, 36, 42}, {48, DefaultLayouts, 100, 36, 42}, {96, DefaultLayouts, 100, 18, 21}, {960, DefaultLayouts, 100, 2, 4}, {96, DefaultLayouts / 2, 100, 9, 11},
		{10, DefaultLayouts, 38, 36, 38},
	} {
		e, l := oneWall(t)
		e.budget = Budget{Effort: 1, Layouts: row.layouts, Nodes: 10}
		e.found = []Choice{small(1, 5, 5, 5, 0)}
		e.found[0].Layout.Pieces = make([]wall.Piece, row.pieces)
		e.orders = []*order{{byLook: true, last: l}}
		seams, err := e.model.Seams(t.Context(), &l)
		if err != nil {
			t.Fatal(err)
		}
		b := &base{seams: seams}
		o := offcuts{explorer: e, known: map[string]*base{originsKey(&l): b}, bases: []*base{b}}
		for range row.variants {
			o.variants = append(o.variants, wall.Offcuts{Stock: e.room.Stock[0], Of: func(fraction.Length) int64 { return 1 }, Sheet: 4, Weight: blemish(1)})
		}
		for _, want := range []int{row.first, row.more} {
			if err := o.look(); err != nil {
				t.Fatal(err)
			}
			if got := o.bases[0].tried; got != want {
				t.Errorf("%+v: %d variants tried, want %d", row, got, want)
			}
		}
	}
}

// A layout that looks as good and needs as much takes the place of one of more pieces, the first four times that one is looked
// at.
func TestTiesAreLookedAt(t *testing.T) {
	for tied := range 6 {
		e, l := oneWall(t)
		e.budget.Nodes, e.tied = 1000*draftShare, tied
		problem := fraction.Must(Nesting(e.room, &l))
		r, err := nest.Search(t.Context(), problem, nest.Budget{Nodes: 1000, Draft: true})
		if err != nil {
			t.Fatal(err)
		}
		worse := e.choice(l, r)
		worse.Layout.Pieces = slices.Concat(l.Pieces, l.Pieces)
		e.found = []Choice{worse}
		if err := e.lookAtTie(l, problem, 0); err != nil {
			t.Fatal(err)
		}
		if got, taken := len(e.found[0].Layout.Pieces), tied < 4; (got == len(l.Pieces)) != taken {
			t.Errorf("looked at %d before: %d pieces of %d", tied, got, len(l.Pieces))
		}
		problem.Saw.Kerf = fraction.Inches(-1)
		if err := e.lookAtTie(l, problem, 0); (err == nil) != (tied >= 3) {
			t.Errorf("looked at %d before, then with a blade of -1 in: %v", tied, err)
		}
	}
}

// So it is when a layout is looked at that bounds leave no better than the choice that looks the same.
func TestLookTakesTies(t *testing.T) {
	e, l := oneWall(t)
	e.budget.Nodes = 1000 * draftShare
	r, err := nest.Search(t.Context(), fraction.Must(Nesting(e.room, &l)), nest.Budget{Nodes: 1000, Draft: true})
	if err != nil {
		t.Fatal(err)
	}
	worse := e.choice(l, r)
	worse.Layout.Pieces = slices.Concat(l.Pieces, l.Pieces)
	e.found = []Choice{worse}
	if err := e.look(l); err != nil || len(e.found) != 1 || len(e.found[0].Layout.Pieces) != len(l.Pieces) || e.tied != 1 {
		t.Errorf("%d pieces of %d, %d ties, %v", len(e.found[0].Layout.Pieces), len(l.Pieces), e.tied, err)
	}
}

// A variant that is none ends a round with an error.
func TestVariantThatIsNone(t *testing.T) {
	e, l := oneWall(t)
	seams, err := e.model.Seams(t.Context(), &l)
	if err != nil {
		t.Fatal(err)
	}
	e.budget, e.found, e.orders = Budget{Effort: 1, Layouts: DefaultLayouts, Nodes: 10}, []Choice{small(1, 5, 5, 5, 1)}, []*order{{byLook: true, last: l}}
	b := &base{seams: seams}
	o := offcuts{explorer: e, known: map[string]*base{originsKey(&l): b}, bases: []*base{b}, variants: make([]wall.Offcuts, 1)}
	if err := o.look(); err == nil {
		t.Error("no error")
	}
}
