package nest_test

import (
	"context"
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/nest"
)

// Five widths of panelling, 18 in high, come from one sheet: ends squared first,
// then row by row.
func ExampleFirstFit() {
	p := nest.Problem{
		Stock:   []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}},
		Pattern: nest.Pattern{Pitch: fraction.Of(3, 2)},
		Saw:     nest.Saw{Kerf: fraction.Of(1, 8), SquareUp: fraction.Of(1, 4)},
	}
	for n := range 5 {
		p.Parts = append(p.Parts, nest.Part{Number: n + 1, Width: fraction.Inches(48), Height: fraction.Inches(18)})
	}
	r, err := nest.FirstFit(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(r.Sheets), "sheet,", r.Bound.How)
	for _, c := range r.Sheets[0].Cuts {
		fmt.Printf("%d: %v at %v of the %v x %v at %v,%v\n", c.Step, c.Kind, c.At, c.Rect[2], c.Rect[3], c.Rect[0], c.Rect[1])
	}
	// Output:
	// 1 sheet, part area
	// 1: crosscut at 1/8 of the 48 x 96 at 0,0
	// 2: crosscut at 95 1/2 of the 48 x 95 3/4 at 0,1/4
	// 3: crosscut at 18 of the 48 x 95 1/2 at 0,1/4
	// 4: crosscut at 18 of the 48 x 77 3/8 at 0,18 3/8
	// 5: crosscut at 18 of the 48 x 59 1/4 at 0,36 1/2
	// 6: crosscut at 18 of the 48 x 41 1/8 at 0,54 5/8
	// 7: crosscut at 18 of the 48 x 23 at 0,72 3/4
}

// Where rows waste a sheet, the search finds the nest without it and proves that
// no better one exists.
func ExampleSearch() {
	p := nest.Problem{Stock: []nest.Stock{{Name: "board", Width: fraction.Of(11, 2), Length: fraction.Inches(10)}}}
	for n, length := range []int64{4, 4, 3, 3, 3, 3} {
		p.Parts = append(p.Parts, nest.Part{Number: n + 1, Width: fraction.Of(11, 2), Height: fraction.Inches(length)})
	}
	first, err := nest.FirstFit(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	best, err := nest.Search(context.Background(), p, nest.Budget{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("first fit:", len(first.Sheets), "boards")
	fmt.Println("search:", len(best.Sheets), "boards,", best.Status)
	fmt.Println("replayed:", nest.Verify(p, best))
	// Output:
	// first fit: 3 boards
	// search: 2 boards, proved best
	// replayed: <nil>
}

// Walls 49 in high cannot lie twice one above the other on a sheet of 96 in. Six
// panels of 40 1/8 in, with a kerf each, are worth more than five sheets allow.
func ExampleDualWeights() {
	p := nest.Problem{
		Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}},
		Saw:   nest.Saw{Kerf: fraction.Of(1, 8)},
	}
	height := fraction.Inches(49)
	walls := []nest.Strip{{Width: fraction.Of(963, 4), Height: height, Tallest: height}}
	weights, err := nest.DualWeights(p, walls, nil, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	panel := fraction.Of(321, 8).Add(p.Saw.Kerf).Mul(weights[0].Of(height))
	least := weights[0].LowerBound(panel.Mul(6))
	fmt.Println(least.Sheets, "sheets:", least.How)
	// Output:
	// 6 sheets: part heights
}

// A panel of 40 by 49 in goes on a sheet of 48 by 96 for 30, and not on one of 48 by 48 for 20. Five
// sixths of the sheet would cost 25, but none is sold in parts.
func ExampleDualWeight_Least() {
	p := nest.Problem{Stock: []nest.Stock{
		{Name: "long", Width: fraction.Inches(48), Length: fraction.Inches(96), Price: money.MustParse("30")},
		{Name: "short", Width: fraction.Inches(48), Length: fraction.Inches(48), Price: money.MustParse("20")},
	}}
	height := fraction.Inches(49)
	weights, err := nest.DualWeights(p, []nest.Strip{{Width: fraction.Inches(40), Height: height, Tallest: height}}, nil, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	total := fraction.Inches(40).Mul(weights[0].Of(height))
	cost, bought, sheets := weights[0].Least(total)
	fmt.Println("parts of sheets:", weights[0].LowerBound(total).Cost)
	fmt.Println("whole sheets:", cost, "for", sheets, "of which are bought", bought)
	// Output:
	// parts of sheets: 25
	// whole sheets: 30 for 1 of which are bought 1
}

// Five parts of 48 x 18 in fill 90 in of a sheet's length, kerfs aside: one sheet might do, eleven
// need three.
func ExampleLowerBound() {
	p := nest.Problem{Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}}}
	for n := range 11 {
		p.Parts = append(p.Parts, nest.Part{Number: n + 1, Width: fraction.Inches(48), Height: fraction.Inches(18)})
		if n == 4 || n == 10 {
			b, err := nest.LowerBound(p)
			fmt.Println(len(p.Parts), "parts:", b.Sheets, "sheets by", b.How, err)
		}
	}
	// Output:
	// 5 parts: 1 sheets by part area <nil>
	// 11 parts: 3 sheets by part area <nil>
}

// A wall 20 ft wide and 50 in high takes five sheets however it is parted: on one sheet of 96 in no
// part of 50 in lies above another, though the area alone would fit on three.
func ExampleStripBound() {
	p := nest.Problem{
		Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}},
		Saw:   nest.Saw{Kerf: fraction.Of(1, 8)},
	}
	wall := nest.Strip{Width: fraction.Inches(240), Height: fraction.Inches(50), Tallest: fraction.Inches(50)}
	b, err := nest.StripBound(p, fraction.Of(1, 16), []nest.Strip{wall})
	fmt.Println(b.Sheets, "sheets by", b.How, err)
	// Output:
	// 5 sheets by strip heights <nil>
}

// A nest that was changed by hand is replayed: the part no longer lies where the cuts free it.
func ExampleVerify() {
	p := nest.Problem{
		Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}},
		Parts: []nest.Part{{Number: 1, Width: fraction.Inches(30), Height: fraction.Inches(20)}},
	}
	r, err := nest.FirstFit(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(nest.Verify(p, r))
	r.Sheets[0].Placements[0].X = fraction.Inches(1)
	fmt.Println(nest.Verify(p, r))
	// Output:
	// <nil>
	// Sheets[0].Placements[0]: 1,0 30 x 20: nest not valid; want a rectangle that stands free when all cuts are made
}

// What is left of a sheet when both factory ends are squared up.
func ExampleStock_Usable() {
	sheet := nest.Stock{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}
	fmt.Println(sheet.Usable(nest.Saw{SquareUp: fraction.Of(1, 4)}))
	// Output: 95 1/2
}
