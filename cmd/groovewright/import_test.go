package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// importer is a program of another module: ten lines plan a job, draw its first run and print the
// list.
const importer = `package main

import (
	"context"
	"os"

	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

func main() {
	job, err := jobfile.Read(os.Stdin)
	check(err)
	p, err := plan.Make(context.Background(), job, plan.Options{})
	check(err)
	picture, err := drawing.Elevation(p, 0)
	check(err)
	data, err := p.JSON()
	check(err)
	check(os.WriteFile("plan.json", data, 0o644))
	check(os.WriteFile("run-1.svg", picture.SVG(), 0o644))
	check(os.WriteFile("plan.txt", []byte(book.Text(p)), 0o644))
}

func check(err error) {
	if err != nil {
		panic(err)
	}
}
`

// Another module that imports the packages gets the very bytes that the command writes.
func TestAnotherModuleGetsTheSameBytes(t *testing.T) {
	if testing.Short() {
		t.Skip("builds a module")
	}
	module, err := filepath.Abs(root)
	if err != nil {
		t.Fatal(err)
	}
	dir, out := t.TempDir(), t.TempDir()
	kitchen := examples(t)["kitchen"]
	must(t, "plan", kitchen, "--out", out)
	sums, err := os.ReadFile(filepath.Join(module, "go.sum"))
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"main.go": importer, "go.sum": string(sums),
		"go.mod": "module example.org/importer\n\ngo 1.26\n\nrequire example.com/groovewright v0.0.0\n\nreplace example.com/groovewright => " + module + "\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	job, err := os.ReadFile(kitchen)
	if err != nil {
		t.Fatal(err)
	}
	run := exec.Command("go", "run", ".")
	run.Dir, run.Stdin = dir, bytes.NewReader(job)
	run.Env = append(os.Environ(), "GOFLAGS=-mod=mod", "GOPROXY=off")
	if said, err := run.CombinedOutput(); err != nil {
		t.Fatalf("go run: %v\n%s", err, said)
	}
	for _, name := range []string{"plan.json", "plan.txt", "run-1.svg"} {
		want, err := os.ReadFile(filepath.Join(out, name))
		if err != nil {
			t.Fatal(err)
		}
		if got, err := os.ReadFile(filepath.Join(dir, name)); err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not what the command writes: %v", name, err)
		}
	}
}
