// Command join plans one invented wall by calling the packages itself, in their order.
package main

import (
	"context"
	"fmt"
	"log"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

func main() {
	profile, _ := groove.Find("beadboard 1-1/2")
	inch := fraction.MustParse
	room := wall.Room{
		Profile: profile, Mark: inch("1/16"), Priorities: wall.DefaultPriorities(),
		Stock: []nest.Stock{{Name: "sheet", Width: inch("48"), Length: inch("96")}},
		Saw:   nest.Saw{Kerf: inch("1/8"), SquareUp: inch("1/4")},
		Runs: []wall.Run{{
			Name: "over the desk", Width: inch("100 1/4"), Right: wall.End{Kind: wall.Covered},
			Heights: []wall.Height{{At: inch("0"), Top: inch("30")}, {At: inch("100 1/4"), Top: inch("30 1/8")}},
		}},
	}
	problem := nest.Problem{Stock: room.Stock, Saw: room.Saw, Pattern: nest.PatternOf(profile)}
	work := finish.Work{Profile: profile, Width: room.Runs[0].Width}
	for layout, err := range wall.Layouts(context.Background(), room) {
		if err != nil {
			log.Fatal(err)
		}
		out := layout.Runs[0].SetOut
		fmt.Printf("set out from %v to the %s; a repeat starts at %v\n", out.From, out.Direction, out.Origin)
		for _, p := range layout.Pieces {
			lo, hi := p.Shape.Bounds()
			part := nest.Part{Number: p.Number, Width: hi.X.Sub(lo.X), Height: hi.Y.Sub(lo.Y), LeftPhase: p.LeftPhase}
			problem.Parts = append(problem.Parts, part)
			work.Face = work.Face.Add(p.Shape.Area())
			fmt.Printf("piece %s: %s x %s at %s\n", p.Label, part.Width, part.Height, p.At.X)
		}
		break // the first layout has the least blemish
	}
	result, err := nest.Search(context.Background(), problem, nest.Budget{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("sheets: %d, %s\n", len(result.Sheets), result.Status)
	list, err := finish.TakeOff(work, finish.Materials{})
	if err != nil {
		log.Fatal(err)
	}
	for _, row := range list.Rows {
		fmt.Printf("buy %d %s for %s\n", row.Buy, row.Container, row.Item)
	}
}
