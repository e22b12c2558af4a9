package plan_test

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

func ExampleMake() {
	inch := fraction.Inches
	profile, _ := groove.Find("beadboard 2")
	j := plan.NewJob(fraction.Inch, profile)
	j.Stock = []nest.Stock{{Name: "sheet", Width: inch(48), Length: inch(96)}}
	j.Runs = []wall.Run{{Name: "hall", Width: inch(84), Left: wall.End{Kind: wall.Exposed}, Right: wall.End{Kind: wall.Covered},
		Heights: []wall.Height{{Top: inch(36)}, {At: inch(84), Top: inch(36)}}}}
	p, err := plan.Make(context.Background(), j, plan.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(p.Pieces), "pieces from", len(p.Sheets), "sheet")
	// Output: 2 pieces from 1 sheet
}

func ExamplePlan_JSON() {
	p, err := plan.Make(context.Background(), backsplash(), plan.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	data, err := p.JSON()
	fmt.Println(strings.Join(strings.Split(string(data), "\n")[:5], "\n"), err)
	var back plan.Plan
	fmt.Println(json.Unmarshal(data, &back), back.Pieces[0].Width == p.Pieces[0].Width)
	// Output:
	// {
	//   "format": 1,
	//   "title": "",
	//   "units": "in",
	//   "tape": "1/16", <nil>
	// <nil> true
}

func ExampleNewJob() {
	profile, _ := groove.Find("beadboard 2")
	j := plan.NewJob(fraction.Millimetre, profile)
	fmt.Println("mark", j.Tape().Format(j.Mark), "bit", j.Tape().Format(j.Bit), "kerf", j.Saw.Kerf, "in")
	// Output: mark 1 mm bit 10 mm kerf 1/8 in
}

func ExampleJob_Validate() {
	profile, _ := groove.Find("beadboard 2")
	j := plan.NewJob(fraction.Inch, profile)
	j.Stock = []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}}
	j.Bit = fraction.Inches(-1)
	fmt.Println(j.Validate())
	// Output:
	// Bit: -1: want a length above 0
	// Runs: want at least one run
}

func ExampleJob_Doubts() {
	j := backsplash()
	j.Gaps.Box = fraction.Inches(1)
	doubts, err := j.Doubts()
	for _, d := range doubts {
		fmt.Println(d.Path, d.Kind, d.Names, d.Lengths, d.Counts)
	}
	fmt.Println(err)
	// Output:
	// Runs[0].Openings[0] cover too small [socket] [2 3/4 4 1/2 -3/4 -5/8 1/8] [1]
	// <nil>
}

// A height that no level reaches: its top is 50 in from the run's left end and 40 in from a point
// 30 in along the level line.
func ExampleJob_Locate() {
	j := backsplash()
	j.Taped = []plan.TapedPoint{{Opening: -1, Index: 1, Side: cutout.Left, From: []cutout.Taped{
		{Distance: fraction.Inches(50)}, {From: cutout.Point{X: fraction.Inches(30)}, Distance: fraction.Inches(40)},
	}}}
	err := j.Locate()
	fmt.Println(j.Runs[0].Heights[1].At, j.Runs[0].Heights[1].Top, err)
	// Output: 30 40 <nil>
}
