package book

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

// What is bought and what is used of what is on hand is said with its number, name and size; what is not used is not said.
func TestBuying(t *testing.T) {
	in := fraction.Inches
	of := func(name string, used int, count *int) plan.Stock {
		return plan.Stock{Stock: nest.Stock{Name: name, Width: in(48), Length: in(96), Count: count}, Used: used}
	}
	three := 3
	for want, stock := range map[string][]plan.Stock{
		`Buy 2 of "new", 48 in x 96 in.`:                                                                                  {of("new", 2, nil), of("old", 0, &three)},
		`Buy 2 of "new", 48 in x 96 in; 1 of "other", 48 in x 96 in.`:                                                     {of("new", 2, nil), of("none", 0, nil), of("other", 1, nil)},
		`No sheet to buy. Use from what is on hand 2 of "old", 48 in x 96 in.`:                                            {of("new", 0, nil), of("old", 2, &three)},
		`Buy 1 of "new", 48 in x 96 in. Use from what is on hand 3 of "old", 48 in x 96 in; 1 of "older", 48 in x 96 in.`: {of("old", 3, &three), of("new", 1, nil), of("older", 1, &three)},
		`No sheet to buy.`: nil,
	} {
		p := plan.Plan{Tape: fraction.Of(1, 16), Stock: stock}
		if got := Headline(p); !strings.HasPrefix(got, strings.ReplaceAll(want, " in", "")) && !strings.HasPrefix(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Boards that are only sawn across are rows by their lengths from the lower end up, in whatever order the plan has them;
// those that are ripped or planed are none.
func TestLengthsOfBoards(t *testing.T) {
	in := fraction.Inches
	p := plan.Plan{Profile: plan.Profile{Profile: groove.Profile{Boards: true}}}
	for i, height := range []int64{30, 20, 30, 20, 40, 20} {
		p.Pieces = append(p.Pieces, plan.Piece{Number: i + 1, Label: []string{"1", "2", "3", "4", "5", "6"}[i], Height: in(height)})
	}
	cut := func(kind nest.CutKind, trim plan.Trim, plane bool) []plan.Cut {
		return []plan.Cut{{Cut: nest.Cut{Kind: kind}, Trim: trim, Off: in(1), Plane: plane}}
	}
	at := func(y int64, part int) nest.Placement { return nest.Placement{Part: part, Y: in(y)} }
	p.Sheets = []plan.Sheet{
		{Number: 1, Stock: "board", Cuts: cut(nest.Crosscut, plan.TrimNear, false), Placements: []nest.Placement{at(22, 2), at(0, 1)}},
		{Number: 2, Stock: "board", Cuts: cut(nest.Crosscut, plan.TrimNear, false), Placements: []nest.Placement{at(0, 3), at(31, 4)}},
		{Number: 3, Stock: "board", Cuts: cut(nest.Crosscut, plan.NoTrim, false), Placements: []nest.Placement{at(0, 5)}},
		{Number: 4, Stock: "board", Cuts: cut(nest.Rip, plan.NoTrim, false), Placements: []nest.Placement{at(0, 6)}},
		{Number: 5, Stock: "board", Cuts: cut(nest.Crosscut, plan.TrimNear, true), Placements: []nest.Placement{at(0, 6)}},
		{Number: 6, Stock: "board", Placements: []nest.Placement{at(0, 6)}},
		{Number: 7, Stock: "board", Cuts: cut(nest.Crosscut, plan.NoTrim, false)},
	}
	rows := lengths(p)
	if len(rows) != 2 {
		t.Fatalf("%d rows, want 2", len(rows))
	}
	if r := rows[0]; r.Labels != "1, 2" || r.Off != in(1) || len(r.Parts) != 2 || r.Parts[0].Height != in(30) || r.Parts[0].Labels != "1, 3" || r.Parts[1].Height != in(20) || r.Parts[1].Labels != "2, 4" {
		t.Errorf("the first row is %+v", r)
	}
	if r := rows[1]; r.Labels != "3" || !r.Off.IsZero() || len(r.Parts) != 1 || r.Parts[0].Labels != "5" {
		t.Errorf("the second row is %+v", r)
	}
	p.Profile.Boards = false
	if rows := lengths(p); len(rows) != 0 {
		t.Errorf("%d rows of sheets", len(rows))
	}
}

// Boxes one after the other that lie equally far behind share their words, more than a few of them; the row keeps its terms.
func TestBoxesTogether(t *testing.T) {
	box := func(name string, deep float64) finish.Term {
		return finish.Term{Kind: finish.TermBox, Name: name, Value: finish.Figure{Value: finish.Decimal{Decimal: decimal.NewFromFloat(deep)}, Unit: finish.UnitInch}}
	}
	row := finish.Row{How: finish.ByBoxDepth, Terms: []finish.Term{box("a", .25), box("b", .25), box("c", .25), box("d", .25), box("e", .5)}}
	for range 2 {
		if got, want := How(row), "4 boxes (1/4 in behind), e (1/2 in behind) (NEC 314.20); listed for the box"; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got := How(finish.Row{How: finish.ByTapeLines}); got != "" {
		t.Errorf("a row without its figures says %q", got)
	}
}
