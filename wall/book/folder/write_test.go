package folder

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

func TestWriteLeavesNoHalf(t *testing.T) {
	dir := t.TempDir()
	first := []book.File{{Name: "a.txt", Body: []byte("old a")}, {Name: "b.txt", Body: []byte("old b")}}
	if err := Write(dir, first); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(filepath.Join(dir, "a.txt")); err != nil || info.Mode().Perm()&0o111 != 0 || info.Mode().Perm()&0o600 != 0o600 {
		t.Errorf("a.txt has the mode %v, %v: it is to be read and written, and no program", info.Mode(), err)
	}
	// The second file of the new plan cannot even be begun: its name is too long.
	second := []book.File{{Name: "a.txt", Body: []byte("new a")}, {Name: strings.Repeat("b", 400) + ".txt"}}
	if err := Write(dir, second); err == nil {
		t.Fatal("Write wrote a file with a name of 400 letters")
	}
	if got, _ := os.ReadFile(filepath.Join(dir, "a.txt")); string(got) != "old a" {
		t.Errorf("a.txt = %q after a failed run, want it unchanged", got)
	}
	if got, want := inFolder(t, dir), []string{"a.txt", "b.txt", listName}; !slices.Equal(got, want) {
		t.Errorf("folder has %q, want %q: no temporary file stays", got, want)
	}
}

// What an earlier plan wrote and this one no longer has is taken away; what somebody else put there
// stays.
func TestStaleDrawingsGo(t *testing.T) {
	dir := t.TempDir()
	if err := Write(dir, []book.File{{Name: "sheet-1.svg"}, {Name: "sheet-2.svg"}}); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"photo.svg", "notes.txt"} {
		if err := os.WriteFile(filepath.Join(dir, name), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := Write(dir, []book.File{{Name: "sheet-1.svg"}}); err != nil {
		t.Fatal(err)
	}
	if got, want := inFolder(t, dir), []string{listName, "notes.txt", "photo.svg", "sheet-1.svg"}; !slices.Equal(got, want) {
		t.Errorf("folder has %q, want %q", got, want)
	}
}

// Where folders cannot be swapped at once they are swapped one after the other.
func TestSwapInSteps(t *testing.T) {
	beside, target := t.TempDir(), filepath.Join(t.TempDir(), "kitchen")
	fresh, files := filepath.Join(beside, "new"), []book.File{{Name: "b.svg"}}
	if err := Write(target, []book.File{{Name: "a.svg"}}); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(target, "notes.txt"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := fill(fresh, target, files); err != nil {
		t.Fatal(err)
	}
	if err := swapInSteps(fresh, target); err != nil {
		t.Fatal(err)
	}
	tidy(beside, target, files)
	if got, want := inFolder(t, target), []string{"b.svg", listName, "notes.txt"}; !slices.Equal(got, want) {
		t.Errorf("folder has %q, want %q", got, want)
	}
	if _, err := os.Stat(beside); !os.IsNotExist(err) {
		t.Errorf("what was beside is still there: %v", err)
	}
	if err := swapInSteps(fresh, target); err == nil {
		t.Error("a folder that is not there was swapped")
	}
	if got := inFolder(t, target); len(got) != 3 {
		t.Errorf("after a failed swap the folder has %q", got)
	}
}

// The folder in which somebody stands is not taken away from under them.
func TestCurrentFolderIsRefused(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	for _, name := range []string{".", dir, filepath.Dir(dir)} {
		if err := Write(name, nil); err == nil || !strings.Contains(err.Error(), "current folder") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := Write("plan", nil); err != nil {
		t.Error(err)
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

// A folder that is named from the current one is written and swapped as any other.
func TestRelativeFolder(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, text := range []string{"old", "new"} {
		if err := Write("out", []book.File{{Name: "a.txt", Body: []byte(text)}}); err != nil {
			t.Fatal(err)
		}
		if got, err := os.ReadFile("out/a.txt"); err != nil || string(got) != text {
			t.Errorf("a.txt has %q, %v, want %q", got, err, text)
		}
		if got := inFolder(t, "."); !slices.Equal(got, []string{"out"}) {
			t.Errorf("beside it are %q", got)
		}
	}
}
