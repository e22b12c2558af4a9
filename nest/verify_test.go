package nest_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/nest"
)

// patterned is a small job with a turned part and two kinds of stock.
func patterned() nest.Problem {
	return nest.Problem{
		Stock: []nest.Stock{
			{Name: "offcut", Width: inches("24"), Length: inches("20"), LeftPhase: inches("1/2"), Count: new(1)},
			{Name: "sheet", Width: inches("48"), Length: inches("50"), Price: money.MustParse("30")},
		},
		Parts: []nest.Part{
			{Number: 7, Width: inches("30-1/4"), Height: inches("40"), LeftPhase: inches("1")},
			{Number: 8, Width: inches("16"), Height: inches("40"), LeftPhase: inches("1/4")},
			{Number: 9, Width: inches("20"), Height: inches("18"), LeftPhase: inches("1/4")},
		},
		Pattern: nest.Pattern{Pitch: inches("1-1/2"), Mirrored: true, Axis: inches("3/4")},
		Saw:     nest.Saw{Kerf: inches("1/8"), SquareUp: inches("1/4")},
	}
}

// TestVerifyFindsFaults spoils a good nest in one way at a time. All that is said of it is kept.
func TestVerifyFindsFaults(t *testing.T) {
	tests := []struct {
		name  string
		spoil func(p *nest.Problem, r *nest.Result)
		want  string // beginning of the path of a fault
	}{
		{"part moved off its phase", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Placements[0].X = inches("1") }, "Sheets[0].Placements[0].X"},
		{"part moved up", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Placements[0].Y = inches("1") }, "Sheets[0].Placements[0]"},
		{"part past the edge", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Placements[0].X = inches("46") }, "Sheets[0].Placements[0].X"},
		{"part in the trim", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Placements[0].Y = inches("1/8") }, "Sheets[0].Placements[0].Y"},
		{"part lies upright instead of turned", func(_ *nest.Problem, r *nest.Result) {
			for s := range r.Sheets {
				for i := range r.Sheets[s].Placements {
					r.Sheets[s].Placements[i].Turned = !r.Sheets[s].Placements[i].Turned
				}
			}
		}, "Sheets[0].Placements[0].X"},
		{"turned although not mirrored", func(p *nest.Problem, r *nest.Result) {
			p.Pattern.Mirrored = false
			r.Sheets[0].Placements[0].Turned = true
		}, "Sheets[0].Placements[0].Turned"},
		{"part placed twice", func(_ *nest.Problem, r *nest.Result) {
			r.Sheets[0].Placements = append(r.Sheets[0].Placements, r.Sheets[0].Placements[0])
		}, "Sheets[0].Placements["},
		{"part lost", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Placements = r.Sheets[0].Placements[:1] }, "Parts["},
		{"unknown part", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Placements[0].Part = 99 }, "Sheets[0].Placements[0].Part"},
		{"placed and unplaced", func(_ *nest.Problem, r *nest.Result) { r.Unplaced = []nest.Unplaced{{Part: 7}} }, "Unplaced[0].Part"},
		{"part above the squared end", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Placements[0].Y = inches("9 7/8") }, "Sheets[0].Placements[0].Y"},
		{"part left of the sheet", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Placements[0].X = inches("-1/16") }, "Sheets[0].Placements[0].X"},
		{"one sheet too many", func(p *nest.Problem, r *nest.Result) { p.Stock[0].Count = new(0) }, "Sheets"},
		{"bound of money too high", func(_ *nest.Problem, r *nest.Result) { r.Bound.Cost = r.Cost.Add(fraction.NewRatio(1, 100)) }, "Bound"},
		{"cut of no kind", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Cuts[2].Kind = 7 }, "Sheets[0].Cuts[2].At"},
		{"nothing squared up", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Cuts = nil }, "Sheets[0].Cuts[0]"},
		{"cut left out", func(_ *nest.Problem, r *nest.Result) {
			r.Sheets[0].Cuts = r.Sheets[0].Cuts[:len(r.Sheets[0].Cuts)-1]
		}, "Sheets[0].Placements["},
		{"cuts in another order", func(_ *nest.Problem, r *nest.Result) {
			c := r.Sheets[0].Cuts
			c[2], c[3] = c[3], c[2]
		}, "Sheets[0].Cuts[2].Step"},
		{"cut out of reach", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Cuts[2].At = inches("-1/8") }, "Sheets[0].Cuts[2].At"},
		{"cut beyond the far edge", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Cuts[2].At = inches("96") }, "Sheets[0].Cuts[2].At"},
		{"cut elsewhere", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Cuts[3].Rect[0] = inches("3") }, "Sheets[0].Cuts[3].Rect"},
		{"no squared end", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Cuts[1].At = inches("95") }, "Sheets[0].Cuts[1]"},
		{"offcut too small", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Offcuts[0].Width = inches("7") }, "Sheets[0].Offcuts[0]"},
		{"offcut off phase", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Offcuts[0].LeftPhase = inches("1/8") }, "Sheets[0].Offcuts[0].LeftPhase"},
		{"offcut used twice", func(_ *nest.Problem, r *nest.Result) { r.Sheets = append(r.Sheets, r.Sheets[1]) }, "Sheets"},
		{"stock unknown", func(_ *nest.Problem, r *nest.Result) { r.Sheets[0].Stock = 2 }, "Sheets[0].Stock"},
		{"cost too low", func(_ *nest.Problem, r *nest.Result) { r.Cost = fraction.Ratio{} }, "Cost"},
		{"bound too high", func(_ *nest.Problem, r *nest.Result) { r.Bound.Sheets = 3 }, "Bound"},
		{"empty sheet", func(_ *nest.Problem, r *nest.Result) { r.Sheets = append(r.Sheets, nest.Sheet{Stock: 1}) }, "Sheets[2].Placements"},
	}
	var said strings.Builder
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := patterned()
			r, err := nest.FirstFit(p)
			if err != nil {
				t.Fatal(err)
			}
			// The full sheet first, whatever order it was found in.
			slices.SortFunc(r.Sheets, func(a, b nest.Sheet) int { return b.Stock - a.Stock })
			if err := nest.Verify(p, r); err != nil || len(r.Sheets) != 2 || len(r.Sheets[0].Placements) != 2 {
				t.Fatalf("%d sheets before, %v", len(r.Sheets), err)
			}
			test.spoil(&p, &r)
			err = nest.Verify(p, r)
			if !slices.ContainsFunc(paths(err), func(path string) bool { return strings.HasPrefix(path, test.want) }) || !errors.Is(err, nest.ErrResult) {
				t.Errorf("faults %v, want one at %s", err, test.want)
			}
			fmt.Fprintf(&said, "%s\n%v\n\n", test.name, err)
		})
	}
	fractiontest.Golden(t, "testdata/faults.txt", said.String())
}
