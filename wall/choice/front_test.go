package choice

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

func blemish(n int) fraction.Ratio { return fraction.NewRatio(int64(n), 1) }

// small returns a choice by its blemish, its need and how many pieces are left over.
func small(looks, cost, bought, sheets, left int) Choice {
	return Choice{Layout: wall.Layout{Total: blemish(looks)}, Need: Need{blemish(cost), bought, sheets}, Nest: nest.Result{Unplaced: make([]nest.Unplaced, left)}}
}

// said returns what small takes.
func said(c Choice) string {
	return fmt.Sprint(c.Layout.Total, c.Need.Cost, c.Need.Bought, c.Need.Sheets, len(c.Nest.Unplaced))
}

// The choices that are kept are the front by definition, whatever the order in which they come: those of which no
// other looks as good or better and leaves and needs as little.
func TestKeepGivesTheFront(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 0))
		var e explorer
		var all []Choice
		for range r.IntN(9) {
			c := small(r.IntN(4), r.IntN(3), r.IntN(2), 1+r.IntN(3), r.IntN(2))
			c.Nest.Bound.Proved = r.IntN(2) == 0
			all = append(all, c)
			e.keep(c)
		}
		want := map[string]bool{}
		for _, c := range all {
			if !slices.ContainsFunc(all, func(d Choice) bool {
				looks, need := d.Layout.Total.Compare(c.Layout.Total), d.compare(&c)
				return looks <= 0 && need <= 0 && looks+need < 0
			}) {
				want[said(c)] = true
			}
		}
		got := map[string]bool{}
		for i, c := range e.found {
			got[said(c)] = true
			if i > 0 && !e.found[i-1].Layout.Total.Less(c.Layout.Total) {
				t.Errorf("seed %d: choice %d looks no worse than the one before", seed, i)
			}
		}
		if len(got) != len(e.found) || fmt.Sprint(got) != fmt.Sprint(want) {
			t.Fatalf("seed %d: front %v of %v, want %v", seed, got, all, want)
		}
		open := 0
		for _, c := range all {
			if !c.Nest.Bound.Proved {
				open++
			}
		}
		if len(e.open) != open {
			t.Errorf("seed %d: %d nests are open, want %d", seed, len(e.open), open)
		}
	}
}

// Needs and choices are compared field by field; what is left over comes first.
func TestCompare(t *testing.T) {
	for _, row := range []struct {
		a, b Choice
		want int
	}{
		{small(9, 1, 1, 1, 0), small(0, 1, 1, 1, 0), 0},
		{small(0, 9, 9, 9, 0), small(0, 1, 1, 1, 1), -1},
		{small(0, 1, 9, 9, 0), small(0, 2, 1, 1, 0), -1},
		{small(0, 1, 1, 9, 0), small(0, 1, 2, 1, 0), -1},
		{small(0, 1, 1, 1, 0), small(0, 1, 1, 2, 0), -1},
	} {
		if got, back := row.a.compare(&row.b), row.b.compare(&row.a); got != row.want || back != -row.want {
			t.Errorf("%s beside %s: %d and %d, want %d", said(row.a), said(row.b), got, back, row.want)
		}
	}
}

// A nest that is bounded so might need less than 30 for 3 sheets, 2 of them bought.
func TestAtLeast(t *testing.T) {
	need := Need{blemish(30), 2, 3}
	for _, row := range []struct {
		name         string
		cost, sheets int
		need         Need
		onHand       int
		less, same   bool
	}{
		{"for less", 29, 5, need, 1, true, true},
		{"for more", 31, 1, need, 1, false, false},
		{"for as much, fewer sheets", 30, 2, need, 1, true, true},
		{"for as much, as many", 30, 3, need, 1, false, true},
		{"for as much, as many, of which two may be on hand", 30, 3, need, 2, true, true},
		{"for as much, more", 30, 4, need, 1, false, false},
		{"for as much, more, of which three may be on hand", 30, 4, need, 3, true, true},
		{"and none is bought", 30, 4, Need{blemish(30), 0, 3}, 4, false, false},
	} {
		e := explorer{onHand: row.onHand}
		least := e.atLeast(nest.Bound{Cost: blemish(row.cost), Sheets: row.sheets})
		if less, same := least.Compare(row.need) < 0, least.Compare(row.need) <= 0; less != row.less || same != row.same {
			t.Errorf("%s: less %v, no more %v", row.name, less, same)
		}
	}
}

// Sheets on hand are counted, those beyond all numbers as the most; other stock is bought.
func TestCountStock(t *testing.T) {
	for _, row := range []struct {
		counts []int // -1: bought
		onHand int
		buys   bool
	}{
		{[]int{2, 3}, 5, false}, {[]int{2, -1, 3}, 5, true}, {[]int{-1}, 0, true}, {[]int{0}, 0, false},
		{[]int{math.MaxInt, 1}, math.MaxInt, false}, {[]int{math.MaxInt, math.MaxInt, 7}, math.MaxInt, false},
	} {
		var e explorer
		for _, n := range row.counts {
			s := nest.Stock{}
			if n >= 0 {
				s.Count = &n
			}
			e.room.Stock = append(e.room.Stock, s)
		}
		if e.countStock(); e.onHand != row.onHand || e.buys != row.buys {
			t.Errorf("%v: %d on hand, buys %v", row.counts, e.onHand, e.buys)
		}
		for endless, want := range map[int]bool{row.onHand: false, max(1, row.onHand-1): row.onHand == 0} {
			if e.endless = endless; endless > 0 && e.tooLittle() != (want && !row.buys) {
				t.Errorf("%v: too little for %d sheets: %v", row.counts, endless, e.tooLittle())
			}
		}
	}
	e := explorer{onHand: 3, endless: 4}
	if !e.tooLittle() {
		t.Error("3 sheets are enough for 4")
	}
	if e.buys = true; e.tooLittle() {
		t.Error("there is too little stock where more is bought")
	}
}

// The bound of the room is raised by what another one says more, with the argument of that.
func TestRaise(t *testing.T) {
	e := explorer{least: Need{blemish(20), 2, 3}, how: nest.PartHeights}
	e.raise(nest.Bound{Cost: blemish(20), Bought: 1, Sheets: 3, How: nest.PartHeights + 1})
	if e.least != (Need{blemish(20), 2, 3}) || e.how != nest.PartHeights {
		t.Errorf("a lower bound makes it %+v, %v", e.least, e.how)
	}
	e.raise(nest.Bound{Cost: blemish(10), Bought: 1, Sheets: 4, How: nest.PartHeights + 1})
	if e.least != (Need{blemish(20), 2, 4}) || e.how != nest.PartHeights+1 {
		t.Errorf("a bound of more sheets makes it %+v, %v", e.least, e.how)
	}
	e.raise(nest.Bound{Cost: blemish(25), Bought: 3})
	if e.least != (Need{blemish(25), 3, 4}) {
		t.Errorf("a dearer one makes it %+v", e.least)
	}
}

// What orders say of layouts that were not met. In the order of blemish they have no less of it than the last one's
// floor; nothing is left where all were met.
func TestOrdersSayWhatWasNotMet(t *testing.T) {
	two, three, four := blemish(2), blemish(3), blemish(4)
	looks := order{byLook: true, last: wall.Layout{Floor: three}}
	spent := order{byLook: true, spent: true}
	for _, row := range []struct {
		name    string
		o       order
		blemish *fraction.Ratio
		some    bool
	}{
		{"any blemish", looks, nil, true}, {"a lower one", looks, &two, false}, {"that of the floor", looks, &three, true}, {"a higher one", looks, &four, true},
		{"when all were met", spent, &four, false}, {"any, when all were met", spent, nil, false},
		{"in an order of both", order{weight: two}, nil, true}, {"in one of price", order{}, &two, true},
	} {
		if _, some := row.o.unmet(row.blemish); some != row.some {
			t.Errorf("%s: some are left: %v", row.name, some)
		}
	}
	for total, want := range map[int]bool{2: true, 3: true, 4: false} {
		c := small(total, 0, 0, 1, 0)
		if got := looks.noneBetter(&c); got != want {
			t.Errorf("none looks better than %d with a floor of 3: %v", total, got)
		}
		if !spent.noneBetter(&c) {
			t.Error("one looks better where all were met")
		}
	}
	// With a weight of 2 and a floor of 12 a layout of blemish 3 has a price of (12 - 3) / 2, in whole parts.
	o := order{weight: two, last: wall.Layout{Floor: blemish(12)}}
	if got := o.leastPrice(three); got != fraction.Of(9, 2) {
		t.Errorf("least price %v, want 4 1/2", got)
	}
	o.weight = three
	if got := o.leastPrice(fraction.NewRatio(2, 1)); got != fraction.Of(10*65536/3, 65536) {
		t.Errorf("least price %v, want 3 1/3 rounded down", got)
	}
	if o.weight = fraction.NewRatio(1, math.MaxInt64); !o.leastPrice(three).IsZero() {
		t.Error("a price beyond all numbers says something")
	}
}

// A front is closed at a blemish where some order has no layout left there, and open at a step between two choices where
// none has.
func TestClosed(t *testing.T) {
	e := explorer{found: []Choice{small(1, 5, 0, 5, 0), small(3, 4, 0, 4, 0), small(6, 3, 0, 3, 0)},
		orders: []*order{{byLook: true, last: wall.Layout{Floor: blemish(4)}}}}
	if got := e.openStep(); got != 1 { // at a blemish of 6 layouts are left, which may need less than 4
		t.Errorf("the open step is %d, want 1", got)
	}
	if e.nothingOpen() {
		t.Error("nothing is open, though layouts are left that may need less than the last choice")
	}
	e.orders[0].last.Floor = blemish(7)
	if got := e.openStep(); got != -1 {
		t.Errorf("the open step is %d, want none", got)
	}
	if e.orders[0].spent = true; !e.nothingOpen() {
		t.Error("something is open where all were met")
	}
	if alone := (&explorer{found: e.found[:1], orders: e.orders}); !alone.nothingOpen() {
		t.Error("something is open beside one choice where all were met")
	}
	if got := e.after(blemish(3)); got != 2 {
		t.Errorf("%d choices look as good as 3, want 2", got)
	}
	if got := e.after(blemish(0)); got != 0 {
		t.Errorf("%d choices look as good as 0, want none", got)
	}
}

// Of three choices the last meets the bound of the room; what is proved of the others by hand.
func TestProved(t *testing.T) {
	proved := func(c Choice, lower nest.Bound) Choice {
		c.Nest.Bound, c.Nest.Bound.Proved = lower, true
		return c
	}
	first, second := proved(small(1, 50, 5, 5, 0), nest.Bound{}), proved(small(3, 40, 4, 4, 0), nest.Bound{})
	open := func(looks, cost, sheets int) []openNest {
		return []openNest{{blemish(looks), nest.Bound{Cost: blemish(cost), Bought: sheets, Sheets: sheets}}}
	}
	for _, row := range []struct {
		name         string
		c            Choice
		floor        int // of the order of blemish
		open         []openNest
		least        Need
		want         Status
		leastNeed    Need
		leastBlemish int
	}{
		{"its need is that of the room", second, 0, nil, second.Need, NeedProved, second.Need, 0},
		{"and no layout looks better", second, 3, nil, second.Need, BothProved, second.Need, 3},
		{"no layout looks better, but one as good may need less", second, 3, nil, Need{}, LooksProved, Need{}, 3},
		{"none is left that looks as good", second, 4, nil, Need{}, BothProved, second.Need, 3},
		{"its own nest is open", small(3, 40, 4, 4, 0), 4, open(3, 30, 3), Need{}, LooksProved, Need{blemish(30), 3, 3}, 3},
		{"an open nest that looks worse", second, 4, open(4, 10, 1), Need{}, BothProved, second.Need, 3},
		{"an open nest that looks as good and may need less", second, 4, open(3, 30, 3), Need{}, LooksProved, Need{blemish(30), 3, 3}, 3},
		{"but no less than the room", second, 4, open(3, 30, 3), Need{blemish(35), 4, 4}, LooksProved, Need{blemish(35), 4, 4}, 3},
		{"an open nest that looks as good and needs as much", second, 4, open(3, 40, 4), Need{}, BothProved, second.Need, 3},
		{"an open nest that looks better and may need as little", second, 4, open(2, 40, 4), Need{}, NeedProved, second.Need, 2},
		{"an open nest that looks better and needs more", second, 4, open(2, 41, 5), Need{}, BothProved, second.Need, 3},
		{"two that look better, of which the best needs more", second, 4, slices.Concat(open(1, 41, 5), open(2, 40, 4)), Need{}, NeedProved, second.Need, 2},
		{"nothing is known", first, 0, nil, Need{blemish(20), 2, 2}, Open, Need{blemish(20), 2, 2}, 0},
	} {
		e := explorer{least: row.least, open: row.open, orders: []*order{{byLook: true, last: wall.Layout{Floor: blemish(row.floor)}}}}
		c := row.c
		if c.Status = e.proved(&c); c.Status != row.want {
			t.Errorf("%s: proved %v, want %v", row.name, c.Status, row.want)
		}
		if got := e.leastNeed(&c); got != row.leastNeed {
			t.Errorf("%s: least need %+v, want %+v", row.name, got, row.leastNeed)
		}
		if got := e.leastBlemish(&c); got != blemish(row.leastBlemish) {
			t.Errorf("%s: least blemish %v, want %d", row.name, got, row.leastBlemish)
		}
	}
}

// The error for too little stock names the pieces that are left over, five at most.
func TestShortError(t *testing.T) {
	left := LeftOver{Piece: "3a", Run: "north", Why: nest.TooLong}
	for want, e := range map[string]ShortError{
		"the stock is not enough for any layout; at least 4 needed, 2 on hand; pieces left over: 0":                                                                            {Least: 4, OnHand: 2, Proved: true},
		"the stock is not enough for any layout; 0 on hand, as many as needed to buy; pieces left over: 0":                                                                     {Buys: true, Proved: true},
		"no plan was found: the stock was not enough for any of 7 layouts that were looked at, and others were not; 0 on hand; pieces left over: 0":                            {Layouts: 7},
		"no plan was found: the stock was not enough for any of 7 layouts that were looked at, and others were not, as the search was stopped; 0 on hand; pieces left over: 0": {Layouts: 7, Stopped: true},
	} {
		if got := e.Error(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	e := ShortError{Proved: true, Left: []LeftOver{left, left, left, left, left}}
	if got := e.Error(); strings.Count(got, `piece 3a on "north" (`+left.Why.String()+")") != 5 || strings.HasSuffix(got, "...") {
		t.Errorf("five pieces: %q", got)
	}
	e.Left = append(e.Left, left)
	if got := e.Error(); strings.Count(got, "piece 3a") != 5 || !strings.HasSuffix(got, ", ...") || !strings.Contains(got, "left over: 6") {
		t.Errorf("six pieces: %q", got)
	}
	e.Left = []LeftOver{{Piece: "1", Run: "a", Why: left.Why, Needs: fraction.Inches(50)}}
	if got := e.Error(); !strings.Contains(got, ": 50 in)") {
		t.Errorf("a size that is needed: %q", got)
	}
}

// The steps of a nest grow with the effort, to the most that there is.
func TestNodes(t *testing.T) {
	for _, row := range []struct{ effort, nodes, want int }{
		{1, 400, 400}, {3, 400, 1200}, {math.MaxInt, 1, math.MaxInt}, {math.MaxInt, 2, math.MaxInt}, {math.MaxInt / 2, 2, math.MaxInt - 1}, {1, math.MaxInt, math.MaxInt},
	} {
		e := explorer{budget: Budget{Effort: row.effort, Nodes: row.nodes}}
		if got := e.nodes(); got != row.want {
			t.Errorf("%d rounds of %d: %d", row.effort, row.nodes, got)
		}
	}
}

// A sheet of 96 less a kerf at each cut gives so many strips: of 31 three (3 x 31 1/8 + 1/8 is less than 96 1/8), of 32
// two. So a strip is worth a third or half of the sheet.
func TestStacked(t *testing.T) {
	in := fraction.Inches
	e := explorer{room: Problem{Saw: nest.Saw{Kerf: fraction.Of(1, 8)}}}
	of := e.stacked(nest.Stock{Width: in(48), Length: in(96)})
	for height, want := range map[int64]int64{31: 720720 / 3, 32: 720720 / 2, 48: 720720, 96: 720720, 200: 720720, 1: 720720 / 85} {
		if got := of(in(height)); got != want {
			t.Errorf("a strip of %d is worth %d, want %d", height, got, want)
		}
	}
}

// Kinds that another can take the place of are left out: as many as needed of it, for no more, as large and with the same
// pattern.
func TestUsefulKinds(t *testing.T) {
	in := fraction.Inches
	two := 2
	stock := func(width, length int64, price string, count *int) nest.Stock {
		s := nest.Stock{Width: in(width), Length: in(length), Count: count}
		if price != "" {
			s.Price = money.MustParse(price)
		}
		return s
	}
	shifted := stock(48, 96, "20", nil)
	shifted.LeftPhase = in(1)
	squared := stock(48, 96, "20", nil)
	squared.Squared = true
	for _, row := range []struct {
		name string
		a, b nest.Stock
		want uint
	}{
		{"two alike", stock(48, 96, "30", nil), stock(48, 96, "30", nil), 0b01},
		{"a shorter one for as much", stock(48, 48, "30", nil), stock(48, 96, "30", nil), 0b10},
		{"a narrower one for as much", stock(24, 96, "30", nil), stock(48, 96, "30", nil), 0b10},
		{"a larger one for less", stock(48, 48, "30", nil), stock(48, 96, "20", nil), 0b10},
		{"as large for less", stock(48, 96, "30", nil), stock(48, 96, "20", nil), 0b10},
		{"a larger one for more", stock(48, 48, "20", nil), stock(48, 96, "30", nil), 0b11},
		{"a shorter one for less", stock(48, 96, "30", nil), stock(48, 48, "20", nil), 0b11},
		{"wider and shorter", stock(48, 96, "30", nil), stock(60, 48, "20", nil), 0b11},
		{"another phase", stock(48, 96, "30", nil), shifted, 0b11},
		{"squared", stock(48, 96, "30", nil), squared, 0b11},
		{"on hand without a price", stock(48, 48, "", &two), stock(48, 96, "30", nil), 0b11},
		{"on hand and dearer", stock(48, 48, "40", &two), stock(48, 96, "30", nil), 0b10},
		{"on hand for as much", stock(48, 48, "30", &two), stock(48, 96, "30", nil), 0b11},
		{"in place of it only some on hand", stock(48, 48, "30", nil), stock(48, 96, "20", &two), 0b11},
		{"both without a price", stock(48, 48, "", nil), stock(48, 96, "", nil), 0b10},
		{"one without a price", stock(48, 48, "", nil), stock(48, 96, "20", nil), 0b11},
		{"a larger one without a price", stock(48, 48, "20", nil), stock(48, 96, "", nil), 0b10},
		{"on hand with a price, a larger one without", stock(48, 48, "20", &two), stock(48, 96, "", nil), 0b10},
	} {
		k := kinds{room: Problem{Stock: []nest.Stock{row.a, row.b}}}
		if got := k.useful(); got != row.want {
			t.Errorf("%s: %02b, want %02b", row.name, got, row.want)
		}
		k.room.Stock[0], k.room.Stock[1] = k.room.Stock[1], k.room.Stock[0]
		swapped := row.want>>1 | row.want&1<<1
		if row.name == "two alike" {
			swapped = row.want // the first of two alike
		}
		if got := k.useful(); got != swapped {
			t.Errorf("%s, the other way round: %02b, want %02b", row.name, got, swapped)
		}
	}
	if got := fmt.Sprint(of(0b1011), of(0)); got != "[0 1 3] []" {
		t.Errorf("kinds %s", got)
	}
	c := Choice{Nest: nest.Result{Sheets: []nest.Sheet{{Stock: 0}, {Stock: 1}}}}
	moved := c.restocked([]int{1, 3}, []int{0, 1, 3})
	if moved.Nest.Sheets[0].Stock != 1 || moved.Nest.Sheets[1].Stock != 2 || c.Nest.Sheets[1].Stock != 1 {
		t.Errorf("sheets of stock %+v, before %+v", moved.Nest.Sheets, c.Nest.Sheets)
	}
}

// The ends of an empty front are no choice; those of a front are its first and its last.
func TestEndsOfAFront(t *testing.T) {
	if got := (Choices{}); said(got.Looks()) != "0 0 0 0 0" || said(got.Sheets()) != "0 0 0 0 0" {
		t.Error("an empty front has a choice")
	}
	c := Choices{Front: []Choice{small(1, 9, 0, 9, 0), small(2, 5, 0, 5, 0), small(3, 1, 0, 1, 0)}}
	if c.Looks().Need.Sheets != 9 || c.Sheets().Need.Sheets != 1 {
		t.Errorf("the ends need %d and %d", c.Looks().Need.Sheets, c.Sheets().Need.Sheets)
	}
	e := explorer{room: Problem{Stock: []nest.Stock{{}, {Count: new(1)}}}}
	made := e.choice(wall.Layout{}, nest.Result{Cost: blemish(7), Sheets: []nest.Sheet{{Stock: 0}, {Stock: 1}, {Stock: 0}}})
	if made.Need != (Need{blemish(7), 2, 3}) {
		t.Errorf("two bought sheets and one on hand for 7 need %+v", made.Need)
	}
	n, err := Nesting(Problem{Profile: groove.Profile{}}, nil)
	if err != nil || len(n.Parts) != 0 {
		t.Errorf("the pieces of no layout: %v, %v", n.Parts, err)
	}
}

// Variants of layouts from offcuts for each weight, order and direction, by the price and by stacked strips; none for boards
// or without a price.
func TestVariantsOfOffcuts(t *testing.T) {
	in := fraction.Inches
	e := explorer{room: Problem{Stock: []nest.Stock{{Width: in(48), Length: in(96)}}}}
	if got := newOffcuts(&e); len(got.variants) != 0 {
		t.Errorf("%d variants without a price", len(got.variants))
	}
	e.prices = []*order{{}} // its price says nothing, so that only those by stacked strips are left
	got := newOffcuts(&e)
	if want := len(sheetBlemish) * 3 * 2; len(got.variants) != want {
		t.Fatalf("%d variants, want %d", len(got.variants), want)
	}
	kinds := map[string]bool{}
	for i, v := range got.variants {
		kinds[fmt.Sprint(v.Weight, v.Order, v.Leftward)] = true
		if v.Sheet != 720720 || v.Of(in(48)) != v.Sheet/2 && v.Of(in(48)) != v.Sheet || v.Weight != sheetBlemish[i/6] {
			t.Errorf("variant %d: %+v", i, v)
		}
	}
	if len(kinds) != len(got.variants) {
		t.Errorf("%d of %d variants differ", len(kinds), len(got.variants))
	}
	e.room.Profile.Boards = true
	if got := newOffcuts(&e); len(got.variants) != 0 {
		t.Errorf("%d variants of boards", len(got.variants))
	}
}
