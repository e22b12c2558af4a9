package main

import (
	"encoding/json"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/wall/jobfile"
)

// root is the folder of the module.
var root = filepath.Join("..", "..")

// filesThat returns the contents of all files of the module whose name ends so.
func filesThat(t *testing.T, ending string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ending) {
			return err
		}
		data, err := os.ReadFile(path)
		all[path] = string(data)
		return err
	})
	if err != nil || len(all) == 0 {
		t.Fatalf("%d files end with %s: %v", len(all), ending, err)
	}
	return all
}

// readme returns the text of the README.
func readme(t testing.TB) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// Package documents and guides name the tests that hold what they promise. Each such test is there.
func TestTestsThatAreNamedExist(t *testing.T) {
	defined := map[string]bool{}
	define := regexp.MustCompile(`(?m)^func ((?:Test|Fuzz|Benchmark)\w+)\(`)
	for _, text := range filesThat(t, "_test.go") {
		for _, found := range define.FindAllStringSubmatch(text, -1) {
			defined[found[1]] = true
		}
	}
	named := regexp.MustCompile(`\b(?:Test|Fuzz|Benchmark)[A-Z]\w+`)
	count := 0
	for _, ending := range []string{"doc.go", ".md"} {
		for path, text := range filesThat(t, ending) {
			for _, name := range named.FindAllString(text, -1) {
				if count++; !defined[name] {
					t.Errorf("%s names %s, which no test is called", path, name)
				}
			}
		}
	}
	if count < 20 {
		t.Errorf("only %d tests are named", count)
	}
}

// The README's table of commands is the commands that there are, with options that they have.
func TestReadmeNamesTheCommands(t *testing.T) {
	readme := readme(t)
	shown := map[string]bool{"help": true}
	for _, row := range regexp.MustCompile("(?m)^\\| `groovewright (\\w+)([^`]*)`").FindAllStringSubmatch(readme, -1) {
		name, rest := row[1], row[2]
		shown[name] = true
		for _, c := range commands() {
			if c.name != name {
				continue
			}
			for _, option := range regexp.MustCompile(`--(\w+)`).FindAllStringSubmatch(rest, -1) {
				if _, known := vocabulary(c); !slices.Contains(known, option[0]) {
					t.Errorf("the README has groovewright %s --%s, which there is not", name, option[1])
				}
			}
		}
	}
	for _, c := range commands() {
		if !shown[c.name] {
			t.Errorf("the README's table lacks groovewright %s", c.name)
		}
		for _, o := range c.options {
			if !strings.Contains(readme, "--"+o.name) {
				t.Errorf("the README lacks --%s of groovewright %s", o.name, c.name)
			}
		}
		delete(shown, c.name)
	}
	delete(shown, "help")
	for name := range shown {
		t.Errorf("the README's table has groovewright %s, which there is not", name)
	}
}

// Every field that a job file may have stands in the README, as it is spelt.
func TestReadmeNamesEveryField(t *testing.T) {
	readme := readme(t)
	type object struct{ Properties map[string]any }
	var schema struct {
		object
		Defs map[string]object `json:"$defs"`
	}
	if err := json.Unmarshal(jobfile.Schema(), &schema); err != nil {
		t.Fatal(err)
	}
	objects := maps.Clone(schema.Defs)
	objects["file"] = schema.object
	if len(objects) < 20 {
		t.Fatalf("%d objects in the schema", len(objects))
	}
	for name, o := range objects {
		for field := range o.Properties {
			if !regexp.MustCompile(`(^|\W)` + regexp.QuoteMeta(field) + `\b`).MatchString(readme) {
				t.Errorf("the README lacks the field %s of %s", field, name)
			}
		}
	}
}

// What README and DEVELOPERS name of a package, as in plan.Make, is there: but for the changes, which
// name what is gone.
func TestGuidesNameWhatPackagesExport(t *testing.T) {
	sources := map[string]string{}
	for path, text := range filesThat(t, ".go") {
		if !strings.HasSuffix(path, "_test.go") {
			sources[filepath.Base(filepath.Dir(path))] += text
		}
	}
	count := 0
	for path, text := range filesThat(t, ".md") {
		text = regexp.MustCompile(`(?s)\n## Changes\n.*?\n## `).ReplaceAllString(text, "")
		for _, found := range regexp.MustCompile(`\b([a-z]+)\.([A-Z]\w*)`).FindAllStringSubmatch(text, -1) {
			source, ok := sources[found[1]]
			if !ok {
				continue // a method of a variable
			}
			count++
			declared := regexp.MustCompile(`(?m)^(func |type |var |const |\t)` + found[2] + `\b`)
			if !declared.MatchString(source) {
				t.Errorf("%s names %s, which package %s does not export", path, found[0], found[1])
			}
		}
	}
	if count < 15 {
		t.Errorf("only %d names are found", count)
	}
}

// The tests that DEVELOPERS names are there.
func TestGuideNamesTests(t *testing.T) {
	tests := ""
	for path, text := range filesThat(t, ".go") {
		if strings.HasSuffix(path, "_test.go") {
			tests += text
		}
	}
	guide, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	names := regexp.MustCompile("`((?:Test|Fuzz)[A-Z]\\w+)`").FindAllSubmatch(guide, -1)
	for _, name := range names {
		if !strings.Contains(tests, "\nfunc "+string(name[1])+"(") {
			t.Errorf("there is no %s", name[1])
		}
	}
	if len(names) < 30 {
		t.Errorf("only %d names are found", len(names))
	}
}

// The program that joins the packages is as short as the README says.
func TestJoiningProgramIsShort(t *testing.T) {
	data, err := os.ReadFile(filepath.Join(root, "examples", "join", "main.go"))
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(string(data), "\n"); n >= 60 {
		t.Errorf("examples/join/main.go has %d lines, want under sixty", n)
	}
}
