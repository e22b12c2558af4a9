package book

import (
	"testing"

	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// FuzzWild writes texts and books of wild plans and jobs: nothing panics.
func FuzzWild(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add([]byte{}, 0)
	for part := range 20 { // the plan and its 19 parts, see writeAll
		f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16}, part)
	}
	f.Fuzz(writeAll)
}

// writeAll writes the made-up kitchen with a part of it made wild, or a plan that is wild all over.
func writeAll(t *testing.T, data []byte, part int) {
	p := kitchen()
	fractiontest.FillPart(data, part, &p, &p.Profile, &p.Saw, &p.Tape, &p.Runs[1], &p.Pieces[3], &p.Pieces[0].Marks, &p.Sheets[0], &p.Stock, &p.Bound, &p.Blemishes,
		&p.Search, &p.Choices, &p.Priorities, &p.List, &p.Taped, &p.Warnings, &p.Order, &p.Cautions, &p.Units)
	if files, err := Files(p); err == nil && (len(files) == 0 || files[0].Name != "book.html") {
		t.Error("a book without its first page")
	}
	Headline(p)
	Search(p)
	if Text(p) == "" || Explained(p) == "" {
		t.Error("a plan without text")
	}
	var job plan.Job
	var doubts []warning.Warning
	var profiles []groove.Profile
	fractiontest.Fill(data, &doubts, &profiles, &job)
	Check(job, doubts)
	Profiles(profiles)
	if _, err := Survey(part); (err == nil) != (part >= 1 && part <= mostRuns) {
		t.Errorf("Survey(%d): %v", part, err)
	}
}
