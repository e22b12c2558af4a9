// Command profile plans a wall with a profile of its own and a job that is built in Go, without a
// job file. The profile, the wall and the price are invented.
package main

import (
	"context"
	"fmt"
	"log"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/plan"
)

func main() {
	inch := fraction.MustParse
	reeded := groove.Profile{
		Name: "reeded, with a flat between", Thickness: inch("3/8"),
		Features: []groove.Feature{
			{Kind: groove.Flat, Width: inch("2")},
			{Kind: groove.Bead, Width: inch("1/2"), Depth: inch("3/16")},
			{Kind: groove.Bead, Width: inch("1/2"), Depth: inch("3/16")},
		},
	}
	job := plan.NewJob(fraction.Inch, reeded)
	job.Stock = []nest.Stock{{Name: "sheet", Width: inch("48"), Length: inch("96"), Price: money.MustParse("52.00")}}
	job.Runs = []wall.Run{{
		Name: "behind the bench", Width: inch("90"), Left: wall.End{Kind: wall.Exposed}, Right: wall.End{Kind: wall.Covered},
		Heights: []wall.Height{{At: inch("0"), Top: inch("40")}, {At: inch("90"), Top: inch("40 1/4")}},
	}}
	p, err := plan.Make(context.Background(), job, plan.Options{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(book.Headline(p))
}
