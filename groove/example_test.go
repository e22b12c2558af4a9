package groove_test

import (
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// A new profile is a value. Where does the pattern stand at the right end of a wall of 61 in, set
// out from its left end?
func Example() {
	p := groove.Profile{
		Name: "beads at 1 5/8",
		Features: []groove.Feature{
			{Kind: groove.Flat, Width: fraction.MustParse("1 3/8")},
			{Kind: groove.Bead, Width: fraction.MustParse("1/4"), Depth: fraction.MustParse("1/16")},
		},
		Thickness: fraction.MustParse("1/4"),
	}
	if err := p.Validate(); err != nil {
		fmt.Println(err)
		return
	}
	end, err := p.Phase(fraction.MustParse("61"), fraction.MustParse("0"))
	fmt.Println("phase", end, "of", p.Pitch(), err)
	distance, err := p.CutDistance(end, groove.KeepLeft)
	fmt.Println(distance, "from a whole feature", err)
	fmt.Println("seams hide at", p.SeamLines())
	// Output:
	// phase 7/8 of 1 5/8 <nil>
	// 1/2 from a whole feature <nil>
	// seams hide at [0 1 3/8]
}

// A piece whose right edge shows the phase 1/4 can be sawn the other way up from a sheet that is
// its own mirror image: its left edge on the sheet is then where the sheet shows the turned phase.
func ExampleProfile_Turned() {
	p, _ := groove.Find("beadboard 1-1/2")
	axis, ok := p.Mirror()
	fmt.Println("axis", axis, ok)
	fmt.Println(p.Turned(fraction.MustParse("1/4")))
	// Output:
	// axis 5/8 true
	// 1 <nil>
}

func ExampleProfile_Validate() {
	p := groove.Profile{
		Features: []groove.Feature{
			{Kind: groove.Flat},
			{Kind: groove.Groove, Width: fraction.MustParse("1/8"), Depth: fraction.MustParse("1/2")},
		},
		Thickness: fraction.MustParse("1/4"),
	}
	fmt.Println(p.Validate())
	// Output:
	// Features[0].Width: 0: want a width above 0
	// Features[1].Depth: 1/2: want no more than the thickness of the sheet
}

// A repeat of two equal halves looks the same at twice as many phases.
func ExampleProfile_Primitive() {
	flat, bead := groove.Feature{Width: fraction.Inches(2)}, groove.Feature{Kind: groove.Bead, Width: fraction.Of(1, 4)}
	p := groove.Profile{Features: []groove.Feature{flat, bead, flat, bead}}
	fmt.Println(p.Pitch(), p.Primitive().Pitch())
	// Output: 4 1/2 2 1/4
}

// Which feature an edge shows: the end of a run of 61 in is the right edge of what stays, so that
// its left side is looked at.
func ExampleProfile_Shown() {
	p, _ := groove.Find("V-groove planking 6")
	end, err := p.Phase(fraction.Inches(61), fraction.Length{})
	if err != nil {
		fmt.Println(err)
		return
	}
	feature, width, err := p.Shown(end, groove.KeepLeft)
	fmt.Println("phase", end, "shows a", feature.Kind, "of", width, "in", err)
	distance, err := p.DistanceToSeamLine(end)
	fmt.Println("nearest seam line", distance, err)
	// Output:
	// phase 1 shows a flat of 1 in <nil>
	// nearest seam line 1 <nil>
}
