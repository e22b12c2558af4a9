package wall

import (
	"context"
	"slices"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// No layout has less blemish than the floor of one before it, also where terms are too fine for
// whole grains.
func TestFloorBoundsWhatFollows(t *testing.T) {
	below := 0
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		if rapid.Bool().Draw(t, "fine weights") {
			weight := func(label string) fraction.Ratio {
				return fraction.NewRatio(rapid.Int64Range(1, 1000).Draw(t, label), rapid.Int64Range(1, 99_991).Draw(t, label+" parts"))
			}
			room.Priorities.InsideCorner, room.Priorities.OpeningSide = weight("corner"), weight("opening")
		}
		var floor fraction.Ratio
		for n, l := range firstLayouts(t, Layouts(context.Background(), room), 40) {
			if l.Total.Less(l.Floor) || l.Floor.Less(floor) {
				t.Fatalf("layout %d has blemish %v and floor %v, after %v", n, l.Total, l.Floor, floor)
			}
			floor = l.Floor
			if l.Floor != l.Total {
				below++
			}
		}
	})
	if below == 0 {
		t.Error("no room was too fine")
	}
}

// One model serves searches on several goroutines, which find what each finds alone.
func TestModelServesManySearches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		objective := drawObjective(t, room)
		m, err := NewModel(context.Background(), room)
		if err != nil {
			t.Skip("no layout")
		}
		alone := [2][]Layout{firstLayouts(t, Layouts(context.Background(), room), 10), firstLayouts(t, LayoutsByCost(context.Background(), room, objective), 10)}
		var together [4][]Layout
		var group sync.WaitGroup
		for i := range together {
			group.Go(func() {
				layouts := m.Layouts(context.Background())
				if i%2 == 1 {
					layouts = m.LayoutsByCost(context.Background(), objective)
				}
				for l, err := range layouts {
					if together[i] = append(together[i], l); err != nil || len(together[i]) == 10 {
						break
					}
				}
			})
		}
		group.Wait()
		for i, got := range together {
			for n, want := range alone[i%2] {
				if n >= len(got) || layoutKey(&got[n]) != layoutKey(&want) || got[n].Total != want.Total || len(got[n].Pieces) != len(want.Pieces) {
					t.Fatalf("search %d: layout %d is not %s", i, n, layoutKey(&want))
				}
			}
		}
	})
}

// A model with other stock is that of the room with other stock.
func TestModelWithOtherStock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		m, err := NewModel(context.Background(), room)
		if err != nil {
			t.Skip("no layout")
		}
		room.Stock = []nest.Stock{{Name: "narrow", Width: quarters(t, "other width", 8, 16), Length: fraction.Inches(40)}}
		other, err := m.WithStock(room.Stock)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := m.WithStock([]nest.Stock{{Name: "of no width", Length: fraction.Inches(40)}}); err == nil {
			t.Fatal("stock of no width")
		}
		want, got := firstLayouts(t, Layouts(context.Background(), room), 5), firstLayouts(t, other.Layouts(context.Background()), 5)
		for i := range max(len(want), len(got)) {
			if layoutKey(&want[i]) != layoutKey(&got[i]) {
				t.Fatalf("layout %d is %s, want %s", i, layoutKey(&got[i]), layoutKey(&want[i]))
			}
		}
	})
	if _, err := (&Model{}).WithStock(nil); err == nil {
		t.Error("no error for a model of nothing")
	}
	for _, err := range (*Model)(nil).Layouts(t.Context()) {
		if err == nil {
			t.Error("a layout of no model")
		}
	}
}

// What a stretch takes over from one that is alike is what it would find itself.
func TestStretchesShareWhatIsAlike(t *testing.T) {
	shorn, kept := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		m, err := NewModel(context.Background(), room)
		if err != nil {
			t.Skip("no layout")
		}
		search := &search{ctx: context.Background(), m: m, programs: map[*stretch]*program{}}
		if rapid.Bool().Draw(t, "by cost") {
			objective := drawObjective(t, room)
			search.setObjective(&objective)
		}
		for _, made := range m.stretches {
			if made.err != nil {
				continue
			}
			p := search.program(made.value)
			for i, o := range m.origins[p.run] {
				if p.keeper != p.stretch {
					kept++
					for _, b := range p.bays {
						lines, seams := p.seamsOn(i, b)
						if own := p.lines(o, b); !slices.Equal(lines, own) {
							t.Fatalf("seam lines %v, taken over %v", own, lines)
						}
						for n, seam := range seams {
							if seam != p.seamAt(o, lines[n], true) {
								t.Fatalf("a seam at %v costs %+v, taken over %+v", lines[n], p.seamAt(o, lines[n], true), seam)
							}
						}
					}
				}
				if p.whole != nil {
					if search.program(p.whole).best(i); p.known[i] {
						shorn++
					}
					if best, own := *p.best(i), p.solve(i, nil); best != own && (best.feasible() || own.feasible()) {
						t.Fatalf("residue %d costs %+v, taken over %+v", i, own, best)
					}
				}
			}
		}
	})
	if shorn == 0 || kept == 0 {
		t.Errorf("%d shorn, %d kept", shorn, kept)
	}
}

// A seam beside a window at a corner costs as a tab does only while the window's edge is there: a run that butts begins
// beyond it. So what seams cost is not taken over, whether the other end of the run leans or not.
func TestStretchesDoNotShareWhatDiffers(t *testing.T) {
	for _, leans := range [][2]string{{"0", "0"}, {"0", "1/2"}} {
		window := Opening{Name: "window", Kind: Window, Outline: cutout.Rectangle(inches("1/8"), inches("5"), inches("6"), inches("5"))}
		room := Room{Profile: profiles[0], Mark: inches("1/16"), Priorities: DefaultPriorities(fraction.Inch),
			Stock: []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("96")}},
			Runs: []Run{
				{Name: "a", Width: inches("60"), Left: End{Kind: Exposed}, Right: End{Kind: InsideCorner}, Heights: heights("0,0,18; 60,0,18")},
				{Name: "b", Width: inches("60"), Left: End{Kind: InsideCorner, Lean: inches(leans[0])}, Right: End{Kind: Exposed, Lean: inches(leans[1])},
					Heights: heights("0,0,18; 60,0,18"), Openings: []Opening{window}}}}
		m, err := NewModel(t.Context(), room)
		if err != nil {
			t.Fatal(err)
		}
		search := &search{ctx: t.Context(), m: m, programs: map[*stretch]*program{}}
		fits := 0
		for _, made := range m.stretches {
			if made.err != nil || made.value.run != 1 {
				continue
			}
			fits++
			p := search.program(made.value)
			for i, o := range m.origins[p.run] {
				lines, seams := p.seamsOn(i, span{p.left, inches("6")})
				for n, seam := range seams {
					if own := p.seamAt(o, lines[n], true); seam != own {
						t.Errorf("ends that lean by %v: a seam at %v costs %+v, taken over %+v", leans, lines[n], own, seam)
					}
				}
			}
		}
		if fits < 2 {
			t.Errorf("%d ways to fit the run", fits)
		}
	}
}
