package book_test

import (
	"context"
	"fmt"
	"strings"

	"example.com/groovewright/groove"
	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

// wanted is the job of an invented wall.
func wanted() plan.Job {
	job, err := jobfile.Read(strings.NewReader(`{"title": "Bench wall", "profile": "beadboard 2", "stock": [{"name": "sheet", "width": "48", "length": "96", "price": "24.98"}],
		"runs": [{"name": "bench wall", "width": "60", "left": {"kind": "exposed"}, "right": {"kind": "inside corner"},
		"heights": [{"at": "0", "top": "36"}, {"at": "60", "top": "36 1/8"}]}]}`))
	if err != nil {
		panic(err)
	}
	return job
}

// made plans it.
func made() plan.Plan {
	p, err := plan.Make(context.Background(), wanted(), plan.Options{})
	if err != nil {
		panic(err)
	}
	return p
}

// The plan as plain text, to print and take to the workshop.
func ExampleText() {
	for _, line := range strings.SplitAfterN(book.Text(made()), "\n", 6)[:5] {
		fmt.Print(line)
	}
	// Output:
	// Bench wall
	// ==========
	// Buy 1 of "sheet", 48 x 96. Proved: no layout of this room needs fewer, and none
	// that needs as few looks better.
	// Taken: 1 sheet to buy, 2 panels. No flaw is seen but seams. One sheet more would
}

func ExampleHeadline() {
	fmt.Println(book.Headline(made()))
	// Output: Buy 1 of "sheet", 48 x 96. Proved: no layout of this room needs fewer (area of the walls with kerfs), and none that needs as few looks better.
}

// The job book: book.html, which the drawings and templates stand beside.
func ExampleFiles() {
	files, err := book.Files(made())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range files {
		fmt.Println(f.Name)
	}
	// Output:
	// book.html
	// unfolded.svg
	// preview.svg
	// room.svg
	// run-1.svg
	// run-1-section.svg
	// run-1-left-end.svg
	// run-1-right-end.svg
	// run-1-fitting.svg
	// sheet-1.svg
	// piece-2-face.svg
	// piece-2-back.svg
}

// A measuring sheet for two runs, which every job begins with.
func ExampleSurvey() {
	page, err := book.Survey(2)
	fmt.Println(strings.Contains(string(page), `name="runs[1].width"`), err)
	_, err = book.Survey(0)
	fmt.Println(err)
	// Output:
	// true <nil>
	// 0: want a number of runs from 1 to 99
}

func ExampleProfiles() {
	fmt.Print(book.Profiles(groove.Builtin()[:1]))
	// Output:
	// beadboard 1-1/2: repeats every 1 1/2, 1/4 thick
	//     1  flat  1 1/4 wide
	//     2  bead  1/4 wide    1/16 deep
	//     its own mirror image: a piece may be turned end for end
	//     covers 48, square edges, sold in lengths of 96
	//     common practice; figures: pitch: lower end of 1-1/2 to 2-1/2 in, a tool
	//     glossary; sheet 48 x 96 in: a tool glossary and a how-to article; thickness:
	//     1/8 to 1/4 in, the same articles; bead: common practice, no source
}

// What the command says of a job file that it can read.
func ExampleCheck() {
	job := wanted()
	doubts, err := job.Doubts()
	fmt.Print(book.Check(job, doubts), err)
	// Output:
	// Bench wall: 1 run, profile beadboard 2, 1 kind of stock; every field is sound.
	// 1 measurement to look at again:
	//   ! runs[0].heights[1].at: 60 from the one before (more than 48): tape one
	//     between
	// <nil>
}
