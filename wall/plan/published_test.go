package plan_test

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/groove"
)

// What stands behind the printed column.
const (
	read     = "read"                       // a text with the figure was read
	readOurs = "read, ours"                 // the rule or the inputs were read, the figure follows from them by hand
	derived  = "derived"                    // worked by hand from geometry and exact units
	memory   = "from memory"                // no text was read
	practice = "common practice, no source" // of the trade, or our judgment
)

// Which call gave our figure, as a person would get it.
const (
	byTakeOff  = "finish.TakeOff"
	byMake     = "plan.Make"
	byWait     = "finish.Wait.Range"
	byCautions = "finish.Cautions"
	byProfile  = "groove.Find"
)

// figure is one printed figure beside ours.
type figure struct {
	what    string
	printed string   // as printed, with its unit
	value   string   // the printed number, or the right one where the printed one is wrong
	ours    *big.Rat // what the call makes of it
	within  string   // how far they may differ: usually half of the last printed place
	through string
	source  string
	status  string
	wrong   string // why the printed figure is not asserted; empty where it is
}

// figures gathers the rows of the table.
type figures struct {
	*testing.T
	rows []figure
}

// add adds a row; within 0 asks for the same number.
func (f *figures) add(through, what, printed, value string, ours *big.Rat, within, source, status string) {
	f.rows = append(f.rows, figure{what, printed, value, ours, within, through, source, status, ""})
}

// wrong adds a printed figure that is not asserted, but what is right in its place.
func (f *figures) wrong(through, what, printed, right string, ours *big.Rat, within, source, why string) {
	f.rows = append(f.rows, figure{what, printed, right, ours, within, through, source, read, why})
}

func rat(text string) *big.Rat {
	x, ok := new(big.Rat).SetString(text)
	if !ok {
		panic(text)
	}
	return x
}

func mul(a ...*big.Rat) *big.Rat {
	p := rat("1")
	for _, x := range a {
		p.Mul(p, x)
	}
	return p
}

func quo(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }
func sub(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }

// list returns the take-off.
func (f *figures) list(w finish.Work, m finish.Materials) []finish.Row {
	f.Helper()
	list, _, err := finish.TakeOff(w, m)
	if err != nil {
		f.Fatal(err)
	}
	return list.Rows
}

// need returns how much of an item the list asks for, 0 if it is not on it.
func (f *figures) need(w finish.Work, m finish.Materials, item finish.Item) *big.Rat {
	f.Helper()
	total := new(big.Rat)
	for _, row := range f.list(w, m) {
		if row.Item == item {
			total.Add(total, row.Quantity.Rat())
		}
	}
	return total
}

// size returns the first size of an item on the list, 0 if it is not on it.
func (f *figures) size(w finish.Work, m finish.Materials, item finish.Item) *big.Rat {
	f.Helper()
	for _, row := range f.list(w, m) {
		if row.Item == item {
			return row.Size[0].Value.Rat()
		}
	}
	return new(big.Rat)
}

// sheet is a plain profile so thick.
func sheet(thickness string) groove.Profile {
	return groove.Profile{Thickness: fraction.MustParse(thickness)}
}

// in is a length in inches.
func in(text string) fraction.Length { return fraction.MustParse(text) }

// published returns all rows.
func published(t *testing.T) *figures {
	f := &figures{T: t}
	f.units()
	f.paint()
	f.sealant()
	f.boxes()
	f.fasteners()
	f.metric()
	f.covers()
	f.waits()
	f.cautions()
	f.profiles()
	f.rooms()
	return f
}

// TestPublishedFigures holds each printed figure against ours, and the table in the tree against
// both. go test ./wall/plan -run Published -update rewrites the table.
func TestPublishedFigures(t *testing.T) {
	f := published(t)

	var rows strings.Builder
	outside, seen := 0, 0
	for _, row := range f.rows {
		off := sub(rat(row.value), row.ours)
		if off.Abs(off).Cmp(rat(row.within)) > 0 {
			t.Errorf("%s: want %s, ours %s, further apart than %s (%s)", row.what, row.value, row.ours.FloatString(6), row.within, row.source)
		}
		asserted := "within " + row.within
		switch {
		case row.wrong != "":
			asserted = "not the printed one, but " + row.value + ": " + row.wrong
		case row.within == "0":
			asserted = "exactly"
		}
		if row.wrong == "" && (row.status == read || row.status == readOurs) {
			outside++
			if row.through == byTakeOff || row.through == byMake {
				seen++
			}
		}
		fmt.Fprintf(&rows, "| %s | %s | %s | %s | %s | %s | %s |\n", row.what, row.printed, decimal.NewFromBigRat(row.ours, 6), row.through, row.source, row.status, asserted)
	}
	if outside < 60 || seen < 40 {
		t.Errorf("%d figures from outside, %d of them through TakeOff or Make, want 60 and 40", outside, seen)
	}
	var table strings.Builder
	fmt.Fprintf(&table, "# Published figures and ours\n\n"+
		"Rewritten by `go test ./wall/plan -run Published -update`; the same test asserts every row but those that say why not.\n\n"+
		"Through: which call gave our figure; %s and %s are what a person sees on a list or a plan.\n\n"+
		"Status: *read*: a text that prints the figure was read; *read, ours*: the rule or its inputs were read and the figure follows by hand;\n"+
		"*derived*: worked by hand from geometry and exact units; *from memory*: no text was read; *common practice, no source*: of the trade, or\n"+
		"our judgment, with the figure worked by hand.\n\n"+
		"%d figures, %d of them from outside, %d of these through `finish.TakeOff` or `plan.Make`.\n\n"+
		"| figure | printed | ours | through | source | status | asserted |\n| --- | --- | --- | --- | --- | --- | --- |\n",
		"`finish.TakeOff`", "`plan.Make`", len(f.rows), outside, seen)
	table.WriteString(rows.String() + "\nWhere the texts were read, mostly as excerpts:\n\n")
	for _, a := range addresses {
		fmt.Fprintf(&table, "- %s: %s\n", a[0], a[1])
	}
	fractiontest.Golden(t, "testdata/published.md", table.String())
	f.addresses()
}

// addresses checks that every source that a row names has an address, and no address is without a row.
func (f *figures) addresses() {
	t := f.T
	used := map[string]bool{}
	for _, row := range f.rows {
		if row.status == read || row.status == readOurs {
			used[row.source] = true
		}
	}
	for _, a := range addresses {
		if !used[a[0]] {
			t.Errorf("%s has an address and no row", a[0])
		}
		delete(used, a[0])
	}
	for source := range used {
		t.Errorf("%s has no address", source)
	}
}
