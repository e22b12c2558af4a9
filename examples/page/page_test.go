package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
)

// kitchen returns the job file of the kitchen.
func kitchen(t *testing.T) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "kitchen.json"))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

var command = sync.OnceValues(func() ([]byte, error) {
	dir, err := os.MkdirTemp("", "page")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "groovewright")
	if said, err := exec.Command("go", "build", "-o", file, "example.com/groovewright/cmd/groovewright").CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w: %s", err, said)
	}
	return os.ReadFile(file)
})

// commandIn writes the command, built as a person builds it, into a folder, beside a job file, and
// returns what runs it there.
func commandIn(t *testing.T, dir string, job []byte) (run func(arguments ...string) []byte) {
	t.Helper()
	binary, err := command()
	if err == nil {
		err = errors.Join(os.WriteFile(filepath.Join(dir, "groovewright.exe"), binary, 0o755), os.WriteFile(filepath.Join(dir, "job.json"), job, 0o644))
	}
	if err != nil {
		t.Fatal(err)
	}
	return func(arguments ...string) []byte {
		t.Helper()
		said := exec.Command(filepath.Join(dir, "groovewright.exe"), arguments...)
		said.Dir = dir
		printed, err := said.Output()
		if err != nil {
			t.Fatalf("groovewright %q: %v", arguments, err)
		}
		return printed
	}
}

// commandFiles returns the files that the command writes for a job.
func commandFiles(t *testing.T, job []byte) map[string][]byte {
	t.Helper()
	dir := t.TempDir()
	run := commandIn(t, dir, job)
	run("plan", "job.json", "--out", "plan")
	all := map[string][]byte{"buy.csv": run("plan", "job.json", "--csv", "buy"), "cuts.csv": run("plan", "job.json", "--csv", "cuts")}
	names, err := os.ReadDir(filepath.Join(dir, "plan"))
	for _, n := range names {
		if n.Name() == "files.txt" { // what the folder has, which a page that saves into no folder needs not
			continue
		}
		data, readErr := os.ReadFile(filepath.Join(dir, "plan", n.Name()))
		all[n.Name()], err = data, errors.Join(err, readErr)
	}
	if err != nil || len(all["book.html"]) == 0 || len(all["plan.json"]) == 0 {
		t.Fatalf("%d files: %v", len(all), err)
	}
	return all
}

// fill types a value into the form at a path: it opens what hides the field, adds what is not there
// yet, and clicks or types.
func (b *browser) fill(path string, value any) {
	b.t.Helper()
	switch v := value.(type) {
	case map[string]any:
		for _, name := range inOrder(v) {
			b.fill(strings.TrimPrefix(path+"."+name, "."), v[name])
		}
		return
	case []any:
		b.open(path + "[0]")
		const there = `document.getElementById($1).querySelector(":scope > .items").children.length > $2`
		for i := range v {
			var yes bool
			if b.eval(&yes, there, path, i); !yes {
				b.clickUntil(fmt.Sprintf("[data-add=%q]", path), there, path, i)
			}
		}
		for i, item := range v {
			b.fill(fmt.Sprintf("%s[%d]", path, i), item)
		}
		return
	}
	b.open(path)
	text := fmt.Sprint(value)
	var kind string
	b.eval(&kind, `(() => { const e = document.getElementById($1); return e ? e.localName + " " + (e.type ?? "") : ""; })()`, path)
	switch kind {
	case "input text":
		b.clickUntil(fmt.Sprintf("[id=%q]", path), "document.activeElement.id === $1", path)
		b.write(text)
	case "input checkbox":
		if value == true {
			b.clickUntil(fmt.Sprintf("[id=%q]", path), "document.getElementById($1).checked", path)
		}
	case "fieldset fieldset":
		b.clickUntil(fmt.Sprintf("[id=%q] input[value=%q] + span", path, text), "document.getElementById($1).querySelector('input:checked')?.value === $2", path, text)
	case "select select-one": // its list opens outside the page; the keyboard chooses without it
		b.eval(nil, "document.getElementById($1).focus()", path)
		b.keys(text)
		b.until("document.getElementById($1).value === $2", path, text)
	default:
		b.t.Fatalf("there is no field %s (%q)", path, kind)
	}
}

// inOrder returns the fields of an object as one measures: what others depend on first.
func inOrder(v map[string]any) []string {
	first := []string{"title", "units", "tape", "profile", "stock", "name", "width"}
	return slices.SortedFunc(maps.Keys(v), func(a, b string) int {
		rank := func(s string) int {
			if i := slices.Index(first, s); i >= 0 {
				return i
			}
			return len(first)
		}
		if d := rank(a) - rank(b); d != 0 {
			return d
		}
		return strings.Compare(a, b)
	})
}

// open clicks on each part that is closed and hides the field at a path.
func (b *browser) open(path string) {
	b.t.Helper()
	for range 9 {
		var closed string
		b.eval(&closed, `(() => { const path = $1, at = [...document.querySelectorAll("details[data-part]")].find((d) => !d.open && !document.getElementById(path) &&
			(path === d.dataset.part || path.startsWith(d.dataset.part + ".") || path.startsWith(d.dataset.part + "[") || d.dataset.part.endsWith(".more") && path.startsWith(d.dataset.part.slice(0, -4)) || d.dataset.part.endsWith(".shape") && path.startsWith(d.dataset.part.slice(0, -5))));
			return at ? at.dataset.part : ""; })()`, path)
		if closed == "" {
			return
		}
		part := fmt.Sprintf("details[data-part=%q]", closed)
		b.clickUntil(part+" > summary", "document.querySelector($1).open", part)
		b.until("document.querySelector($1).childElementCount > 3", part)
	}
}

var inBrowser = flag.Bool("browser", false, "all that is looked at in a browser, which takes minutes; with -short one small job")

// long skips a test that takes long unless it is asked for.
func long(t *testing.T) {
	t.Helper()
	if !*inBrowser || testing.Short() {
		t.Skip("only with -browser")
	}
}

// backsplash is the smallest job of the README.
const backsplash = `{
  "profile": "beadboard 1-1/2",
  "stock": [{"name": "sheet", "width": "48", "length": "96"}],
  "runs": [{
    "name": "over the counter", "width": "95 1/4",
    "left": {"kind": "exposed"}, "right": {"kind": "covered"},
    "heights": [{"at": "0", "top": "18"}, {"at": "95 1/4", "top": "18 1/8"}],
    "openings": [{"name": "box", "kind": "box", "left": "20", "bottom": "5", "width": "2 1/4", "height": "3 3/4"}]
  }]
}`

// A person types and clicks a job from an empty page to its book, without a network. What is taken
// away is what the built command writes for the job that was saved there, byte by byte, as it does for
// the job that was typed; the job is kept when the page is loaded again.
func TestFromTheTapeToTheBook(t *testing.T) {
	if !*inBrowser {
		t.Skip("only with -browser")
	}
	if testing.Short() {
		fromTheTape(t, openBrowser(t, phone), []byte(backsplash))
		return
	}
	fromTheTape(t, openBrowser(t, laptop), kitchen(t))
	fromTheTape(t, openBrowser(t, phone), kitchen(t))
}

func fromTheTape(t *testing.T, b *browser, file []byte) {
	t.Helper()
	page := written(t)
	b.load(page)
	var job map[string]any
	if err := json.Unmarshal(file, &job); err != nil {
		t.Fatal(err)
	}
	b.fill("", job)
	want := commandFiles(t, file)

	b.until("!document.body.dataset.checking")
	b.until("document.querySelector('#wall-0 svg')")
	b.judge("measure")
	const form = "Object.fromEntries([...document.querySelectorAll('#form input, #form select')].map((e) => [e.id || e.name + e.value, e.value + e.checked]))"
	var before, after map[string]string
	b.eval(&before, form)
	b.load(page) // again: all is kept
	b.eval(&after, form)
	for field, value := range after { // what is in parts that are closed again is in the job, which is planned below
		if before[field] != value {
			t.Errorf("loaded again, %s is %q, before it was %q", field, value, before[field])
		}
	}
	if len(after) < 20 {
		t.Errorf("only %d fields", len(after))
	}
	b.click(`nav a[href="#plan"]`)
	b.until("document.getElementById('start')")
	b.click("#start")
	b.until("document.querySelector('.planned svg')")
	b.judge("plan")
	b.click(`nav a[href="#take"]`)
	b.until(`document.querySelector('[data-file="book.html"]')`)
	b.click(`[data-file="job.json"]`)
	if kept := commandFiles(t, b.download("job.json")); !maps.EqualFunc(kept, want, bytes.Equal) {
		t.Error("the command plans the job that was saved in another way than the job that was typed")
	}
	for _, name := range slices.Sorted(maps.Keys(want)) {
		if !strings.HasSuffix(name, ".svg") { // the book has the drawings
			b.click(fmt.Sprintf("[data-file=%q]", name))
			if !bytes.Equal(b.download(name), want[name]) {
				t.Errorf("%s is not what the command writes", name)
			}
		}
	}
	b.quiet()
}

// choose gives the page a file to open, as the browser's own dialog does.
func (b *browser) choose(name, text string) {
	b.t.Helper()
	file := filepath.Join(b.t.TempDir(), name)
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		b.t.Fatal(err)
	}
	var input struct{ Result struct{ ObjectID string } }
	b.call(&input, "Runtime.evaluate", map[string]any{"expression": "document.getElementById('opened')"})
	b.call(nil, "DOM.setFileInputFiles", map[string]any{"files": []string{file}, "objectId": input.Result.ObjectID})
}

// A job file opens as people write it, whatever is wrong with the job in it; what is no job file is
// said by line and column, and the job that stood there can be taken back.
func TestOpensJobFiles(t *testing.T) {
	long(t)
	b := openBrowser(t, phone)
	b.openJob(written(t), backsplash)
	b.step("take")
	b.choose("odd.json", "{ // mine\n \"title\": \"opened\",\n \"runs\": [{\"name\": \"only a name\",},],\n}")
	b.until(`document.getElementById("title")?.value === "opened" && document.getElementById("runs[0].name").value === "only a name"`)
	b.click("#toast button")
	b.until(`document.getElementById("runs[0].name").value === "over the counter"`)
	b.step("take")
	b.choose("no.json", "{\n \"title\" \"opened\"}")
	b.until(`document.getElementById("toast").textContent.includes("line 2, column 10")`)
	b.step("measure")
	b.until(`document.getElementById("runs[0].name").value === "over the counter"`)
	b.quiet()
}
