package book

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"example.com/groovewright/fraction/fractiontest"
)

// TestTextsStayTheSame holds every section, table and file of the plans that are stored for it, byte for byte. After a
// change read what it names, and use -update.
func TestTextsStayTheSame(t *testing.T) {
	stored, err := filepath.Glob("../drawing/testdata/plans/*.json")
	if err != nil || len(stored) < 5 {
		t.Fatal(stored, err)
	}
	var b strings.Builder
	b.WriteString("Sections, tables and files of stored plans: lines, bytes, and the beginning of the hash.\n")
	keep := func(name, text string) {
		fmt.Fprintf(&b, "%s: %d, %d, %s\n", name, strings.Count(text, "\n"), len(text), fractiontest.Hash([]byte(text)))
	}
	for _, file := range append(stored, "../drawing/testdata/fixture.json") {
		p, err := storedPlan(file)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&b, "\n%s\n", filepath.Base(file))
		for s := Result; s <= Cautions; s++ {
			keep(s.String(), Part(p, s, false))
			keep(s.String()+" explained", Part(p, s, true))
		}
		for table := BuyTable; table <= CutsTable; table++ {
			keep(table.String()+" as CSV", CSV(p, table))
		}
		keep("search", Headline(p)+Search(p))
		files, err := Dated(p, "a day")
		if err != nil {
			t.Fatal(err)
		}
		keep("written", Written(p, "folder", files))
		for _, f := range files {
			keep(f.Name, string(f.Body))
		}
	}
	for runs := range 4 {
		survey, err := Survey(runs)
		starter, wrong := Starter(runs)
		keep(fmt.Sprint("survey of ", runs), fmt.Sprint(string(survey), err, string(starter), wrong))
	}
	fractiontest.Golden(t, "testdata/same.txt", b.String())
}
