package wall_test

import (
	"context"
	"fmt"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// steppedWall is 95 in wide, 37 in high as far as 49 in and 46 in high beyond.
func steppedWall() wall.Room {
	profile, _ := groove.Find("beadboard 1-5/8")
	in := fraction.Inches
	return wall.Room{
		Profile: profile, Mark: fraction.Of(1, 16), Priorities: wall.DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96)}},
		Runs: []wall.Run{{
			Name: "stepped wall", Width: in(95), Left: wall.End{Kind: wall.Exposed}, Right: wall.End{Kind: wall.Covered},
			Heights: []wall.Height{{Top: in(37)}, {At: in(49), Top: in(37)}, {At: in(49), Top: in(46)}, {At: in(95), Top: in(46)}},
		}},
	}
}

// show prints a layout's blemish, where it starts and what panels it has.
func show(l wall.Layout) {
	fmt.Printf("blemish %v, a repeat starts at %v:", l.Total, l.Runs[0].SetOut.Origin)
	for _, p := range l.Runs[0].Panels {
		fmt.Printf(" %v to %v", p.Left, p.Right)
	}
	fmt.Println()
}

func ExampleLayouts() {
	n := 0
	for layout, err := range wall.Layouts(context.Background(), steppedWall()) {
		if err != nil {
			fmt.Println(err)
			return
		}
		show(layout)
		if n++; n == 2 {
			break
		}
	}
	// Output:
	// blemish 37/48, a repeat starts at 1/4: 0 to 24 3/8 24 3/8 to 49 49 to 95
	// blemish 37/48, a repeat starts at 1/4: 0 to 24 5/8 24 5/8 to 49 49 to 95
}

// An inch of width costs as much as it is high: the layout that comes first takes the least area, cut
// as rectangles with a kerf beside each.
func ExampleLayoutsByCost() {
	area := wall.Objective{Measure: nest.Measure{Extra: fraction.Of(1, 8)}, Of: func(height fraction.Length) int64 {
		sixteenths, _ := height.DivMod(fraction.Of(1, 16))
		return sixteenths
	}}
	for layout, err := range wall.LayoutsByCost(context.Background(), steppedWall(), area) {
		if err != nil {
			fmt.Println(err)
			return
		}
		show(layout)
		fmt.Println("square inches:", layout.Cost.Div(16))
		break
	}
	// Output:
	// blemish 37/48, a repeat starts at 1/4: 0 to 24 3/8 24 3/8 to 49 49 to 95
	// square inches: 3944
}

func ExampleRoom_Validate() {
	room := steppedWall()
	room.Runs[0].Heights[3].At = fraction.Inches(90)
	room.Gaps.Seam = fraction.Of(-1, 16)
	fmt.Println(room.Validate())
	// Output:
	// Gaps.Seam: -1/16: want 0 or more
	// Runs[0].Heights[3].At: 90: want the width of the run for the last station
}

func ExampleRoom_Survey() {
	room := steppedWall()
	room.Runs[0].Left.Lean = fraction.Of(1, 2)
	doubts, err := room.Survey()
	for _, d := range doubts {
		fmt.Println(d.Path, d.Kind, d.Lengths)
	}
	fmt.Println(err)
	// Output:
	// Runs[0].Heights[1].At stations apart [49 48]
	// Runs[0].Left.Lean out of plumb [1/2 1/4]
	// <nil>
}

// Whatever the layout, the lower part of the wall and the higher one are covered.
func ExampleRoom_Strips() {
	room := steppedWall()
	strips, err := room.Strips()
	for _, s := range strips {
		fmt.Printf("%v x %v\n", s.Width, s.Height)
	}
	fmt.Println(err)
	// Output:
	// 49 x 37
	// 46 x 46
	// <nil>
}

func ExampleArched() {
	in := fraction.Inches
	outline, arch, err := wall.Arched(cutout.Rectangle(in(10), in(0), in(30), in(60)), in(6), fraction.Of(1, 16))
	if err != nil {
		fmt.Println(err)
		return
	}
	centre, radius, err := arch.Circle()
	fmt.Println(len(outline) > 10, centre.X, centre.Y, radius, err)
	// Output: true 25 44 1/4 21 3/4 <nil>
}
