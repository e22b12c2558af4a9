package wall

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
)

// Layouts from offcuts are layouts of the room, with the origins of the one that they are made from:
// where all of those can be listed, each is among them.
func TestFromOffcutsGivesLayoutsOfTheRoom(t *testing.T) {
	const most = 400
	listed, given := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		room := steep(t, drawRoom(t))
		all := firstLayouts(t, Layouts(context.Background(), room), most)
		m, err := NewModel(context.Background(), room)
		if err != nil {
			t.Fatal(err)
		}
		from := &all[rapid.IntRange(0, len(all)-1).Draw(t, "from")]
		seams, err := m.Seams(context.Background(), from)
		if err != nil {
			t.Fatal(err)
		}
		o := Offcuts{Stock: room.Stock[0], Sheet: 40, Weight: fraction.NewRatio(rapid.Int64Range(0, 64).Draw(t, "weight"), 4),
			Of:    func(h fraction.Length) int64 { n, _ := h.DivMod(inch); return n },
			Order: OffcutOrder(rapid.IntRange(0, 2).Draw(t, "order")), Leftward: rapid.Bool().Draw(t, "leftward"),
			Shuffle: rapid.Uint64Range(0, 9).Draw(t, "shuffle")}
		l, found, err := seams.FromOffcuts(context.Background(), o)
		if err != nil {
			t.Fatal(err)
		}
		if !found {
			return
		}
		given++
		for r := range l.Runs {
			if l.Runs[r].EndPhases != from.Runs[r].EndPhases || l.Runs[r].Limits != from.Runs[r].Limits {
				t.Fatalf("run %d starts at phases %v in %v, not %v in %v", r, l.Runs[r].EndPhases, l.Runs[r].Limits, from.Runs[r].EndPhases, from.Runs[r].Limits)
			}
		}
		if l.Broken > all[0].Broken || len(all) == most {
			return
		}
		listed++
		if !slices.ContainsFunc(all, func(a Layout) bool { return layoutKey(&a) == layoutKey(&l) }) {
			t.Fatalf("no layout of the room: %s", layoutKey(&l))
		}
	})
	if given == 0 || listed == 0 {
		t.Errorf("%d layouts, %d of them held against all", given, listed)
	}
}

func TestSeamsOfAnotherRoom(t *testing.T) {
	var none *Model
	if _, err := none.Seams(context.Background(), &Layout{}); err == nil {
		t.Error("no model: no error")
	}
	rapid.Check(t, func(t *rapid.T) {
		m, err := NewModel(context.Background(), drawRoom(t))
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range []*Layout{nil, {}, {Runs: make([]RunLayout, len(m.room.Runs)+1)}} {
			if _, err := m.Seams(context.Background(), l); err == nil {
				t.Errorf("%+v: no error", l)
			}
		}
		m.Seams(context.Background(), &Layout{Runs: make([]RunLayout, len(m.room.Runs))}) // whatever comes of it
	})
	if _, _, err := (&Seams{}).FromOffcuts(context.Background(), Offcuts{}); err == nil {
		t.Error("no seams: no error")
	}
}

// Shuffles take all bays, each in an order of its own, and strips are worth less or more by no more than varied.
func TestShuffle(t *testing.T) {
	room := keptRoom(Keep{})
	for x := range int64(6) {
		o := Opening{Name: fmt.Sprint("door ", x), Kind: Other, Outline: cutout.Rectangle(fraction.Inches(20+20*x), inches("-1"), inches("8"), inches("90"))}
		room.Runs[0].Openings = append(room.Runs[0].Openings[:x], o)
	}
	m, err := NewModel(t.Context(), room)
	if err != nil {
		t.Fatal(err)
	}
	l := firstOf(t, room)
	x, err := m.Seams(t.Context(), &l)
	if err != nil {
		t.Fatal(err)
	}
	orders, worths := map[string]bool{}, map[int64]bool{}
	for seed := range uint64(20) {
		tk := &taking{Seams: x, Offcuts: Offcuts{Shuffle: seed + 1}, dice: rand.New(rand.NewPCG(seed, 0))}
		order := tk.order()
		orders[fmt.Sprint(order)] = true
		if slices.Sort(order); len(order) != len(x.bays) || order[0] != 0 || len(slices.Compact(order)) != len(x.bays) {
			t.Errorf("seed %d: not all bays: %v", seed, order)
		}
		worth := tk.worth(1000)
		if worths[worth] = true; worth < 1000-varied || 1000+varied < worth {
			t.Errorf("seed %d: %d in place of 1000", seed, worth)
		}
	}
	if len(orders) < 15 || len(worths) < 15 {
		t.Errorf("of 20 shuffles only %d orders of %d bays and %d worths", len(orders), len(x.bays), len(worths))
	}
	if tk := (&taking{Seams: x}); tk.worth(1000) != 1000 || !slices.IsSorted(tk.order()) {
		t.Error("no shuffle is one")
	}
}

// The context is asked before each of the three bays beside two doors, and before a layout is built: it may end the search
// at each.
func TestFromOffcutsStopsWithTheContext(t *testing.T) {
	room := keptRoom(Keep{})
	room.Runs[0].Openings[0] = Opening{Name: "first door", Kind: Other, Outline: cutout.Rectangle(inches("30"), inches("-1"), inches("8"), inches("30"))}
	room.Runs[0].Breaks = nil
	m, err := NewModel(t.Context(), room)
	if err != nil {
		t.Fatal(err)
	}
	l := firstOf(t, room)
	seams, err := m.Seams(t.Context(), &l)
	if err != nil {
		t.Fatal(err)
	}
	o := Offcuts{Stock: room.Stock[0], Sheet: 40, Of: func(fraction.Length) int64 { return 1 }}
	asked := 0
	for {
		_, found, err := seams.FromOffcuts(fractiontest.Ending(t.Context(), asked), o)
		if err == nil {
			if !found {
				t.Error("no layout where the context does not end")
			}
			break
		}
		if !errors.Is(err, context.Canceled) || found {
			t.Fatalf("found %v: %v", found, err)
		}
		asked++
	}
	if panels := len(l.Pieces); asked < 3+panels {
		t.Errorf("asked %d times for 3 bays and %d panels", asked, panels)
	}
}

// Labels at a node are those that no other beats in all, and of too many the dearest goes.
func TestLabelsAtANode(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		taking := taking{Seams: &Seams{}}
		var stop stop
		stop.clear()
		var want []label
		for _, penalty := range rapid.SliceOfNDistinct(rapid.Int64Range(0, 99), 30, 60, rapid.ID).Draw(t, "penalties") {
			used := rapid.Int64Range(0, 9).Draw(t, "used") - penalty // most are better in something
			l := label{penalty: penalty, used: used, high: used + rapid.Int64Range(-9, 9).Draw(t, "higher")}
			taking.add(&stop, new(uint8), penalty, used, l.high, &step{node: int32(penalty)})
			if slices.ContainsFunc(want, func(q label) bool { return q.asGood(penalty, used, l.high) }) {
				continue
			}
			want = append(slices.DeleteFunc(want, func(q label) bool { return l.asGood(q.penalty, q.used, q.high) }), l)
			slices.SortFunc(want, func(a, b label) int { return cmp.Compare(a.penalty, b.penalty) })
			want = want[:min(len(want), mostLabels)]
		}
		got := slices.SortedFunc(slices.Values(stop.labels[:stop.n]), func(a, b label) int { return cmp.Compare(a.penalty, b.penalty) })
		for i := range got {
			if n := got[i].step; taking.steps[n].node != int32(got[i].penalty) {
				t.Fatalf("label %+v came by step %+v", got[i], taking.steps[n])
			}
			got[i].step = 0
		}
		if !slices.Equal(got, want) {
			t.Fatalf("labels %+v, want %+v", got, want)
		}
	})
}
