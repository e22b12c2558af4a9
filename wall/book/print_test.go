package book

import (
	"bytes"
	"strings"
	"testing"

	"example.com/groovewright/wall/plan"
	"example.com/groovewright/wall/verify"
)

// Two small sheets for 20 do what one large one does for 100: they are the cheapest, not the fewest.
func TestCheapestIsNotCalledFewest(t *testing.T) {
	const job = `{"profile": "beadboard 1-1/2", "runs": [{"name": "hall", "width": "90", "left": {"kind": "exposed"}, "right": {"kind": "covered"},
		"heights": [{"at": "0", "top": "36"}, {"at": "90", "top": "36"}]}], "stock": [{"name": "large", "width": "48", "length": "96", "price": "100"},
		{"name": "small", "width": "48", "length": "48", "price": "10"}]}`
	p, err := madePlan(strings.NewReader(job))
	if err != nil {
		t.Fatal(err)
	}
	data, err := p.JSON()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range verify.Plan([]byte(job), data) {
		t.Error(f)
	}
	if headline := Headline(p); len(p.Sheets) != 2 || !strings.Contains(headline, "Proved: no layout of this room has cheaper sheets") {
		t.Errorf("%d sheets: %s", len(p.Sheets), headline)
	}
	files, err := Files(p)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if bytes.Contains(f.Body, []byte("fewer sheets")) {
			t.Errorf("%s speaks of fewer sheets", f.Name)
		}
	}
}

// What the search leaves open is said in plain sentences, and what is proved of the fewest sheets in one of its own.
func TestWhatTheSearchLeavesOpen(t *testing.T) {
	sheets := make([]plan.Sheet, 3)
	p := plan.Plan{Sheets: sheets, Choices: []plan.Choice{{Chosen: true, Bought: 3, SheetsAtLeast: 2}}, Search: plan.Search{Layouts: 631}}
	if got, want := Search(p), "another layout might need fewer sheets, or look better (631 layouts looked at). One that looks as good takes at least 2 sheets"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
