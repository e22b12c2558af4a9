package book_test

import (
	"fmt"
	"log"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/plan"
)

// A list that was made without a plan is put into words row by row.
func ExampleItem() {
	list, _, err := finish.TakeOff(finish.Work{Width: fraction.Inches(120), Built: 1950}, finish.Materials{})
	if err != nil {
		log.Fatal(err)
	}
	for _, row := range list.Rows {
		fmt.Printf("%s: %s, %s\n", book.Item(row), book.Quantity(row), book.How(row))
	}
	// Output:
	// sheeting for counter and floor: 40 ft2, runs 10 ft × 48 in from the wall
}

func ExampleCaution() {
	fmt.Println(book.Caution(plan.Plan{}, finish.ThinPanel))
	// Output:
	// Put 3/8 in gypsum board or thicker behind them first: thin panels on open studs burn through quickly and dent. (Raised because panels thinner than 1/4 in (6 mm) go straight onto studs. Decided by the building code in force (model text: IRC R702.5).)
}

func ExampleStep() {
	var step finish.Step
	if err := step.UnmarshalText([]byte("cut: pieces 7; closing 3, 6")); err != nil {
		log.Fatal(err)
	}
	fmt.Println(book.Step(plan.Plan{}, step))
	// Output:
	// Cut: Saw the 7 pieces by the cut list, then what is marked there; write the number on the back of each. Leave the closing edges of 3 and 6 unsawn until the space there is measured on the wall; the plan has it as the survey gives it. Ease the sawn edges with fine paper.
}
