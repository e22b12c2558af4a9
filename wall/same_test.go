package wall

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
)

// TestLayoutsStayTheSame holds the first layouts of rooms that the test draws, by blemish and by cost, and those
// from offcuts, down to the last corner of a piece. After a change that is meant read what got better and what worse,
// and use -update.
func TestLayoutsStayTheSame(t *testing.T) {
	type drawn struct {
		room      Room
		objective Objective
		offcuts   Offcuts
	}
	rooms := rapid.Custom(func(t *rapid.T) (d drawn) {
		d.room = drawRoom(t)
		keepSome(t, &d.room)
		if rapid.Bool().Draw(t, "steep") {
			d.room = steep(t, d.room)
		}
		d.room.Scribe = rapid.SampledFrom([]fraction.Length{{}, fraction.Of(3, 8)}).Draw(t, "scribe")
		if rapid.Bool().Draw(t, "trimmed") {
			d.room.Trim.Bottom = trim("1/2")
		}
		if rapid.IntRange(0, 3).Draw(t, "door at the end") == 0 {
			run := &d.room.Runs[len(d.room.Runs)-1]
			run.Openings = append(run.Openings, Opening{Name: "last door", Kind: Other,
				Outline: cutout.Rectangle(run.Width.Sub(fraction.Inches(3)), fraction.Inches(-4), fraction.Inches(3), fraction.Inches(60))})
		}
		d.objective = drawObjective(t, d.room)
		d.offcuts = Offcuts{Stock: d.room.Stock[0], Sheet: 40, Weight: fraction.NewRatio(rapid.Int64Range(0, 64).Draw(t, "weight"), 4),
			Of:    func(h fraction.Length) int64 { n, _ := h.DivMod(inch); return n },
			Order: OffcutOrder(rapid.IntRange(0, 2).Draw(t, "order")), Leftward: rapid.Bool().Draw(t, "leftward")}
		return d
	})
	var b strings.Builder
	b.WriteString("Layouts of rooms that the test draws: those by blemish, those by cost, one from offcuts; of each the rules broken,\n" +
		"blemish, cost, pieces and the beginning of its hash; doubts; strips.\n")
	hash := func(x any) string { return fractiontest.HashJSON(t, x) }
	show := func(l Layout, err error) {
		if err != nil {
			fmt.Fprintf(&b, "  %v\n", err)
			return
		}
		fmt.Fprintf(&b, "  %d %.4f %s %d %s\n", l.Broken, l.Total.Float64(), l.Cost, len(l.Pieces), hash(l))
	}
	for i := range 60 {
		d, n := rooms.Example(i), 0
		fmt.Fprintf(&b, "\nroom %d\n", i)
		m, err := NewModel(context.Background(), d.room)
		if err != nil {
			show(Layout{}, err)
			continue
		}
		for l, err := range m.Layouts(context.Background()) {
			if show(l, err); n == 0 && err == nil {
				seams, err := m.Seams(context.Background(), &l)
				if err != nil {
					t.Fatal(err)
				}
				if l, found, err := seams.FromOffcuts(context.Background(), d.offcuts); found {
					show(l, err)
				}
			}
			if n++; n == 4 {
				break
			}
		}
		for l, err := range m.LayoutsByCost(context.Background(), d.objective) {
			if show(l, err); n >= 6 {
				break
			}
			n++
		}
		doubts, err := d.room.Survey()
		if err != nil {
			t.Fatal(err)
		}
		strips, err := d.room.Strips()
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&b, "  %d doubts %s, %d strips %s\n", len(doubts), hash(doubts), len(strips), hash(strips))
	}
	fractiontest.Golden(t, "testdata/same.txt", b.String())
}
