//go:build unix

package folder

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/groovewright/wall/book"
)

var kills = flag.Int("kills", 20, "writers to kill at random moments")

// child says to the test program that it is to write plan after plan into a folder, from a number on.
const child = "GROOVEWRIGHT_TEST_WRITES"

func TestMain(m *testing.M) {
	if where, from, ok := strings.Cut(os.Getenv(child), "\n"); ok {
		for n, _ := strconv.Atoi(from); ; n++ {
			if err := Write(where, version(n)); err != nil {
				fmt.Fprintln(os.Stderr, err)
				os.Exit(1)
			}
			fmt.Println(n)
		}
	}
	flag.Parse()
	os.Exit(m.Run())
}

// version is the plan of a number: a few pages and more or fewer drawings, each with the number.
func version(n int) []book.File {
	body := bytes.Repeat([]byte(fmt.Sprintf("plan %d\n", n)), 1000)
	files := []book.File{{Name: "plan.txt", Body: body}, {Name: "plan.json", Body: body}, {Name: "book.html", Body: body}}
	for i := range 1 + n%5 {
		files = append(files, book.File{Name: fmt.Sprintf("sheet-%d.svg", i+1), Body: body})
	}
	return files
}

// whole returns the number of the plan in a folder, or what is wrong with it.
func whole(dir string) (int, error) {
	text, err := os.ReadFile(filepath.Join(dir, "plan.txt"))
	if err != nil {
		return 0, err
	}
	first, _, _ := strings.Cut(string(text), "\n")
	n, err := strconv.Atoi(strings.TrimPrefix(first, "plan "))
	if err != nil {
		return 0, err
	}
	for _, f := range version(n) {
		if got, err := os.ReadFile(filepath.Join(dir, f.Name)); err != nil || !bytes.Equal(got, f.Body) {
			return n, fmt.Errorf("%s is not of plan %d: %w", f.Name, n, err)
		}
	}
	drawings, _ := filepath.Glob(filepath.Join(dir, "sheet-*.svg"))
	if len(drawings) != 1+n%5 {
		return n, fmt.Errorf("plan %d with %d drawings", n, len(drawings))
	}
	if note, err := os.ReadFile(filepath.Join(dir, "notes.txt")); err != nil || string(note) != "mine" {
		return n, fmt.Errorf("what was in the folder is gone: %w", err)
	}
	return n, nil
}

// Writers of plan after plan are killed at random moments: the folder has one whole plan each time,
// and in the end nothing lies beside it. For the long run use -kills 1000.
func TestKilledWriterLeavesOneWholePlan(t *testing.T) {
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	parent := t.TempDir()
	dir := filepath.Join(parent, "kitchen")
	if err := os.MkdirAll(filepath.Join(dir, "photos"), 0o755); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"notes.txt", "photos/one.jpg"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte("mine"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := Write(dir, version(0)); err != nil {
		t.Fatal(err)
	}
	r, next, left := rand.New(rand.NewPCG(1, 2)), 0, 0
	for range *kills {
		c := exec.Command(program, "-test.run", "^$")
		c.Env = append(os.Environ(), fmt.Sprintf("%s=%s\n%d", child, dir, next))
		var stderr bytes.Buffer
		c.Stderr = &stderr
		stdout, err := c.StdoutPipe()
		if err == nil {
			err = c.Start()
		}
		if err != nil {
			t.Fatal(err)
		}
		stdout.Read(make([]byte, 1)) // until it has written one
		time.Sleep(time.Duration(r.IntN(5000)) * time.Microsecond)
		c.Process.Kill()
		if c.Wait(); stderr.Len() > 0 {
			t.Fatal(stderr.String())
		}
		n, err := whole(dir)
		if err != nil {
			t.Fatalf("killed at plan %d or so: %v", next, err)
		}
		if n < next {
			t.Fatalf("plan %d came back after %d", n, next)
		}
		next = n + 1
		beside, _ := filepath.Glob(filepath.Join(parent, ".kitchen.*"))
		left = len(beside)
	}
	t.Logf("%d kills, %d plans written, %d left something beside", *kills, next, left)
	beside, _ := filepath.Glob(filepath.Join(parent, ".kitchen.*"))
	for _, name := range beside {
		if err := os.Chtimes(name, time.Time{}, time.Now().Add(-2*time.Hour)); err != nil {
			t.Fatal(err)
		}
	}
	if err := Write(dir, version(next)); err != nil {
		t.Fatal(err)
	}
	if _, err := whole(dir); err != nil {
		t.Error(err)
	}
	if photo, err := os.ReadFile(filepath.Join(dir, "photos", "one.jpg")); err != nil || string(photo) != "mine" {
		t.Errorf("a folder that was in the folder is gone: %v", err)
	}
	if got := inFolder(t, parent); !slices.Equal(got, []string{"kitchen"}) {
		t.Errorf("left beside: %q", got)
	}
}

// Two writers do not mix: whoever reads between finds one whole plan.
func TestTwoWriters(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "kitchen")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "notes.txt"), []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	var writers sync.WaitGroup
	for w := range 2 {
		writers.Go(func() {
			for n := range 50 {
				if err := Write(dir, version(2*n+w)); err != nil {
					t.Error(err)
				}
			}
		})
	}
	writers.Wait()
	if _, err := whole(dir); err != nil {
		t.Error(err)
	}
	if got := inFolder(t, filepath.Dir(dir)); !slices.Equal(got, []string{"kitchen"}) {
		t.Errorf("left beside: %q", got)
	}
}

// A link in the way is followed where it leads to a folder, and never written through where it leads
// to a file.
func TestLinksInTheWay(t *testing.T) {
	parent := t.TempDir()
	target, link, loose := filepath.Join(parent, "target"), filepath.Join(parent, "link"), filepath.Join(parent, "loose")
	secret := filepath.Join(parent, "secret.txt")
	err := errors.Join(os.Mkdir(target, 0o750), os.Symlink(target, link), os.Symlink(filepath.Join(parent, "nowhere"), loose),
		os.WriteFile(secret, []byte("mine"), 0o644), os.Symlink(secret, filepath.Join(target, "plan.txt")), os.WriteFile(filepath.Join(target, "notes.txt"), []byte("mine"), 0o644))
	if err != nil {
		t.Fatal(err)
	}
	if err := Write(link, version(3)); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is gone: %v", err)
	}
	if info, err := os.Stat(target); err != nil || info.Mode().Perm() != 0o750 {
		t.Errorf("the folder has other rights: %v", info.Mode())
	}
	if n, err := whole(target); n != 3 || err != nil {
		t.Errorf("plan %d: %v", n, err)
	}
	if got, _ := os.ReadFile(secret); string(got) != "mine" {
		t.Error("a file was written through a link")
	}
	for name, write := range map[string]func(string) error{
		"loose": func(name string) error { return Write(name, version(1)) }, "target": func(name string) error { return WriteFile(name, nil) },
		"secret.txt": func(name string) error { return Write(name, version(1)) },
	} {
		if err := write(filepath.Join(parent, name)); err == nil {
			t.Errorf("%s was written", name)
		}
	}
	if err := WriteFile("/dev/full", nil); err == nil {
		t.Error("a device was replaced")
	}
}
