package finish_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction/fractiontest"
)

// TestListsStayTheSame holds the lists of drawn works: what is needed and bought, the warnings, cautions and steps. After a
// change read what differs, and use -update.
func TestListsStayTheSame(t *testing.T) {
	type drawn struct {
		work      finish.Work
		materials finish.Materials
	}
	jobs := rapid.Custom(func(t *rapid.T) (d drawn) {
		d.work, d.materials = drawWork(t, drawProfile(t)), drawMaterials(t)
		for i := range d.work.Pieces {
			d.work.Fitting = append(d.work.Fitting, fmt.Sprint(i+1))
			if rapid.Bool().Draw(t, "closing") {
				d.work.Closing = append(d.work.Closing, fmt.Sprint(i+1))
			}
		}
		if rapid.Bool().Draw(t, "notes") {
			d.materials.Boxes = []finish.BoxNote{{Name: "box 0", SetBack: `3/8"`}, {Name: "box 1", SetBack: `1/8"`}}
		}
		return d
	})
	var b strings.Builder
	b.WriteString("Lists of drawn works: rows, tools at hand; warnings; cautions and steps; of each the beginning of its hash.\n")
	hash := func(x any) string { return fractiontest.HashJSON(t, x) }
	for i := range 40 {
		d := jobs.Example(i)
		list, doubts, err := finish.TakeOff(d.work, d.materials)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&b, "\n%d: %v, list %s\n", i, list.AtHand, hash(list))
		for _, r := range list.Rows {
			fmt.Fprintf(&b, "  %v, %v, buy %d %s, %v, %v\n", r.Item, r.Quantity, r.Buy, r.Container, r.Price, r.How)
		}
		cautions, steps := finish.Cautions(d.work, d.materials), finish.Schedule(d.work, d.materials)
		fmt.Fprintf(&b, "  %d warnings %s, %d cautions %s, %d steps %s\n", len(doubts), hash(doubts), len(cautions), hash(cautions), len(steps), hash(steps))
	}
	fractiontest.Golden(t, "testdata/same.txt", b.String())
}
