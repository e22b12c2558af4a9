package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/plan"
)

// TestBookFilesArePlain checks what the book hands to the command: plain names, each once, of the
// kinds that the next plan may take away again.
func TestBookFilesArePlain(t *testing.T) {
	data, err := os.ReadFile("../../testdata/kitchen.json")
	if err != nil {
		t.Fatal(err)
	}
	var p plan.Plan
	if err := json.Unmarshal(data, &p); err != nil {
		t.Fatal(err)
	}
	files, err := book.Files(p)
	if err != nil {
		t.Fatal(err)
	}
	if len(files) == 0 || files[0].Name != "book.html" {
		t.Fatal("the book is not the first file")
	}
	seen := map[string]bool{"plan.txt": true, "plan.json": true, listName: true}
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
	var out, errs bytes.Buffer
	if code := execute(context.Background(), []string{"survey", "2"}, strings.NewReader(""), &out, &errs); code != done {
		t.Fatalf("exit code %d: %s", code, &errs)
	}
	for _, want := range []string{"<!DOCTYPE html>", `name="runs[1].width"`} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the sheet lacks %s", want)
		}
	}
	if strings.Contains(out.String(), "runs[2]") {
		t.Error("the sheet has a third run")
	}
}
