package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
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

// commandFiles returns the files that the command writes for a job.
func commandFiles(t *testing.T, job []byte) map[string][]byte {
	t.Helper()
	j, err := jobfile.Read(bytes.NewReader(job))
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(t.Context(), j, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	files, err := book.Files(p)
	if err != nil {
		t.Fatal(err)
	}
	data, err := p.JSON()
	if err != nil {
		t.Fatal(err)
	}
	all := map[string][]byte{"plan.txt": []byte(book.Text(p)), "plan.json": data,
		"buy.csv": []byte(book.CSV(p, book.BuyTable)), "cuts.csv": []byte(book.CSV(p, book.CutsTable))}
	for _, f := range files {
		all[f.Name] = f.Body
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

var inBrowser = flag.Bool("browser", false, "all that is looked at in a browser, which takes minutes; without it one short job")

// long skips a test that takes long unless it is asked for.
func long(t *testing.T) {
	t.Helper()
	if !*inBrowser {
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
// away is what the command writes, byte by byte; the job is kept when the page is loaded again.
func TestFromTheTapeToTheBook(t *testing.T) {
	if *inBrowser {
		fromTheTape(t, openBrowser(t, laptop), kitchen(t))
		fromTheTape(t, openBrowser(t, phone), kitchen(t))
	} else {
		fromTheTape(t, openBrowser(t, phone), []byte(backsplash))
	}
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
	b.load(page) // again: all is kept
	b.click(`nav a[href="#plan"]`)
	b.until("document.getElementById('start')")
	b.click("#start")
	b.until("document.querySelector('.planned svg')")
	b.judge("plan")
	b.click(`nav a[href="#take"]`)
	b.until(`document.querySelector('[data-file="book.html"]')`)
	for _, name := range slices.Sorted(maps.Keys(want)) {
		if !strings.HasSuffix(name, ".svg") { // the book has the drawings
			b.click(fmt.Sprintf("[data-file=%q]", name))
			if !bytes.Equal(b.download(name), want[name]) {
				t.Errorf("%s is not what the command writes", name)
			}
		}
	}
	b.click(`[data-file="job.json"]`)
	for name, data := range commandFiles(t, b.download("job.json")) {
		if !bytes.Equal(data, want[name]) {
			t.Errorf("the job that was saved gives another %s", name)
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
