package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/wall/book"
)

// inFolder returns the names in a folder.
func inFolder(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

func TestOutWritesTheSamePlan(t *testing.T) {
	job := small(t)
	dir := filepath.Join(t.TempDir(), "new", "folder")
	said := must(t, "plan", job, "--out", dir)
	for name, args := range map[string][]string{"plan.txt": {"plan", job}, "plan.json": {"plan", job, "--json"}} {
		got, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil || string(got) != must(t, args...) {
			t.Errorf("%s is not what is printed: %v", name, err)
		}
		if !strings.Contains(said, name) {
			t.Errorf("%q does not name %s", said, name)
		}
	}
}

func TestFailedRunWritesNothing(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	if _, _, code := try(strings.NewReader("{}"), "plan", "-", "--out", dir); code != wrong {
		t.Fatalf("exit code %d, want %d", code, wrong)
	}
	if _, err := os.Stat(dir); !os.IsNotExist(err) {
		t.Errorf("the folder was made: %v", err)
	}
}

func TestWriteFilesLeavesNoHalf(t *testing.T) {
	dir := t.TempDir()
	first := []book.File{{Name: "a.txt", Body: []byte("old a")}, {Name: "b.txt", Body: []byte("old b")}}
	if err := writeFiles(dir, first); err != nil {
		t.Fatal(err)
	}
	// The second file of the new plan cannot even be begun: its name is too long.
	second := []book.File{{Name: "a.txt", Body: []byte("new a")}, {Name: strings.Repeat("b", 400) + ".txt"}}
	if err := writeFiles(dir, second); err == nil {
		t.Fatal("writeFiles wrote a file with a name of 400 letters")
	}
	if got, _ := os.ReadFile(filepath.Join(dir, "a.txt")); string(got) != "old a" {
		t.Errorf("a.txt = %q after a failed run, want it unchanged", got)
	}
	if got, want := inFolder(t, dir), []string{"a.txt", "b.txt", listName}; !slices.Equal(got, want) {
		t.Errorf("folder has %q, want %q: no temporary file stays", got, want)
	}
}

func TestOutputFolderInTheWayOfAFile(t *testing.T) {
	name := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(name, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	_, stderr, code := try(nil, "plan", small(t), "--out", name)
	if code != failed || !strings.Contains(stderr, "output folder") {
		t.Errorf("exit code %d, stderr %q", code, stderr)
	}
	if got, _ := os.ReadFile(name); string(got) != "mine" {
		t.Errorf("the file was changed to %q", got)
	}
}

// What an earlier plan wrote and this one no longer has is taken away; what somebody else put there
// stays.
func TestStaleDrawingsGo(t *testing.T) {
	dir := t.TempDir()
	if err := writeFiles(dir, []book.File{{Name: "sheet-1.svg"}, {Name: "sheet-2.svg"}}); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"photo.svg", "notes.txt"} {
		if err := os.WriteFile(filepath.Join(dir, name), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := writeFiles(dir, []book.File{{Name: "sheet-1.svg"}}); err != nil {
		t.Fatal(err)
	}
	if got, want := inFolder(t, dir), []string{listName, "notes.txt", "photo.svg", "sheet-1.svg"}; !slices.Equal(got, want) {
		t.Errorf("folder has %q, want %q", got, want)
	}
}

// A list that somebody changed can make nothing outside the folder go.
func TestListedNamesAreBelievedOnlyIfPlain(t *testing.T) {
	dir := t.TempDir()
	list := "x\n../other.txt\n/etc/x.txt\n.hidden.txt\nprogram.sh\nsub/a.svg\ngood.svg\n"
	if err := os.WriteFile(filepath.Join(dir, listName), []byte(list), 0o644); err != nil {
		t.Fatal(err)
	}
	if got := listed(dir); !slices.Equal(got, []string{"good.svg"}) {
		t.Errorf("listed = %q, want only good.svg", got)
	}
}
