package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/plan"
)

// TestBookFilesArePlain checks what the book hands to the command: plain names, each once, of the
// kinds that the next plan may take away again.
func TestBookFilesArePlain(t *testing.T) {
	files, err := book.Files(planOf(t, examples(t)["kitchen"]))
	if err != nil {
		t.Fatal(err)
	}
	if len(files) == 0 || files[0].Name != "book.html" {
		t.Fatal("the book is not the first file")
	}
	seen := map[string]bool{"plan.txt": true, "plan.json": true, "files.txt": true}
	for _, f := range files {
		if ext := filepath.Ext(f.Name); seen[f.Name] || filepath.Base(f.Name) != f.Name || ext != ".svg" && ext != ".html" || len(f.Body) == 0 {
			t.Errorf("file %q of %d bytes: want a plain name of its own and content", f.Name, len(f.Body))
		}
		seen[f.Name] = true
	}
	for _, name := range []string{"room.svg", "run-1.svg", "sheet-1.svg", "templates-letter.html", "templates-a4.html"} {
		if !seen[name] {
			t.Errorf("no file %s", name)
		}
	}
}

// TestSurveyCommand writes a measuring sheet for two runs.
func TestSurveyCommand(t *testing.T) {
	sheet := must(t, "survey", "2")
	for _, want := range []string{"<!DOCTYPE html>", `name="runs[1].width"`} {
		if !strings.Contains(sheet, want) {
			t.Errorf("the sheet lacks %s", want)
		}
	}
	if strings.Contains(sheet, "runs[2]") {
		t.Error("the sheet has a third run")
	}
}

// The starter job of any number of runs can be planned as it is, looks sound, and is never written
// over a file.
func TestSurveyWritesAStarterJob(t *testing.T) {
	for _, runs := range []string{"1", "2", "5"} {
		job := filepath.Join(t.TempDir(), "start.json")
		must(t, "survey", runs, "--job", job)
		if said := must(t, "check", job); !strings.Contains(said, runs+" run") || !strings.Contains(said, "Nothing in the measurements looks doubtful") {
			t.Errorf("%s runs: %s", runs, said)
		}
		if said := planned(t, job); !strings.Contains(said, "Buy ") {
			t.Errorf("%s runs: %s", runs, said)
		}
		if _, says, code := try(nil, "survey", runs, "--job", job); code != wrong || !strings.Contains(says, "is there already") {
			t.Errorf("exit %d: %s", code, says)
		}
	}
}

// A job is compared with itself on other profiles: a row for each, with the figures of its plan.
func TestCompareCommand(t *testing.T) {
	profiles, other := filepath.Join(t.TempDir(), "profiles.json"), filepath.Join(t.TempDir(), "other.json")
	kitchen, err := os.ReadFile(examples(t)["kitchen"])
	if err == nil {
		err = os.WriteFile(other, []byte(strings.Replace(string(kitchen), "beadboard 1-1/2", "my planks", 1)), 0o644)
	}
	if err == nil {
		err = os.WriteFile(profiles, []byte(`[{"name": "my planks", "features": [{"kind": "flat", "width": "2 7/8"}, {"kind": "groove", "width": "1/8"}], "thickness": "1/4"}] // mine`), 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
	said := must(t, "compare", examples(t)["kitchen"], other, "--profiles", profiles)
	for _, job := range [][]string{{examples(t)["kitchen"]}, {other, "--profiles", profiles}} {
		p := plan.Plan{}
		if err := json.Unmarshal([]byte(must(t, append([]string{"plan", "--json"}, job...)...)), &p); err != nil {
			t.Fatal(err)
		}
		total, _ := p.Total.Decimal()
		row := regexp.MustCompile(fmt.Sprintf(`(?m)^ +%d +%s +\S+ +%d +\d+ +`, len(p.Sheets), regexp.QuoteMeta(total.StringFixed(2)), len(p.Pieces)))
		if !row.MatchString(said) {
			t.Errorf("no row of %s in\n%s", row, said)
		}
	}
	made := filepath.Join(t.TempDir(), "plan.json")
	if err := os.WriteFile(made, []byte(must(t, "plan", "--json", other, "--profiles", profiles)), 0o644); err != nil {
		t.Fatal(err)
	}
	if said := must(t, "verify", other, made, "--profiles", profiles); !strings.Contains(said, "keeps to the job") {
		t.Error(said)
	}
	thicker := filepath.Join(t.TempDir(), "thicker.json")
	if err := os.WriteFile(thicker, []byte(`[{"name": "my planks", "features": [{"kind": "flat", "width": "2 7/8"}, {"kind": "groove", "width": "1/8"}], "thickness": "3/8"}]`), 0o644); err != nil {
		t.Fatal(err)
	}
	if said, _, code := try(nil, "verify", other, made, "--profiles", thicker); code != failed || !strings.Contains(said, "profile") {
		t.Errorf("judged with other profiles: exit %d: %s", code, said)
	}
	if _, says, code := try(nil, "plan", other); code != wrong || !strings.Contains(says, "my planks") {
		t.Errorf("without its profiles: exit %d: %s", code, says)
	}
}
