package main

import (
	"path/filepath"
	"strings"
	"testing"

	"example.com/groovewright/wall/book"
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
