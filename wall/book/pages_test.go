package book

import (
	"bytes"
	"encoding/xml"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

var keep = flag.String("keep", "", "folder to write the books of the tests into, to look at")

// plans are the made-up kitchen, one with names that try to be markup, the plans of the examples and
// of the hard jobs. The last is the example's kitchen in boards "tongue and groove 5-1/8" of 96 in, as the
// command plans it with --json: many narrow panels, many narrow sheets.
var plans = sync.OnceValue(func() []named {
	all := slices.Concat([]named{{"hostile", hostile(), nil}}, examples(), hardJobs())
	for _, file := range []string{"../drawing/testdata/fixture.json", "../drawing/testdata/boards.json"} {
		p, err := storedPlan(file)
		all = append(all, named{"stored " + strings.TrimSuffix(filepath.Base(file), ".json"), p, err})
	}
	return all
})

// hostile is a plan whose names try to be markup.
func hostile() plan.Plan {
	p := kitchen()
	name := `<script>alert("x")</script> & "wall"`
	p.Title = name
	for i := range p.Runs {
		old := p.Runs[i].Name
		p.Runs[i].Name = fmt.Sprintf("%s %d", name, i)
		for n := range p.Pieces {
			if p.Pieces[n].Run == old {
				p.Pieces[n].Run = p.Runs[i].Name
			}
		}
		for n := range p.Runs[i].Openings {
			p.Runs[i].Openings[n].Name = name
		}
	}
	p.Stock[0].Name = name
	for i := range p.Sheets {
		p.Sheets[i].Stock = name
	}
	for i := range p.List.Rows {
		p.List.Rows[i].Name, p.List.Rows[i].Container = name, name
	}
	return p
}

// forEachPlan runs a test on the book of every plan.
func forEachPlan(t *testing.T, test func(t *testing.T, p plan.Plan, files []File)) {
	t.Helper()
	for _, n := range plans() {
		t.Run(n.name, func(t *testing.T) {
			files := n.files(t)
			if *keep != "" {
				dir := filepath.Join(*keep, n.name)
				if err := os.MkdirAll(dir, 0o755); err != nil {
					t.Fatal(err)
				}
				for _, f := range files {
					if err := os.WriteFile(filepath.Join(dir, f.Name), f.Body, 0o644); err != nil {
						t.Fatal(err)
					}
				}
			}
			test(t, n.plan, files)
		})
	}
}

// TestSamePlanGivesSameBytes makes a book twice. That others stay the same from run to run is what
// TestTextsStayTheSame holds.
func TestSamePlanGivesSameBytes(t *testing.T) {
	n := examples()[0]
	files := n.files(t)
	again, err := Files(n.plan)
	if err != nil {
		t.Fatal(err)
	}
	if len(again) != len(files) {
		t.Fatalf("the second book has %d files, the first %d", len(again), len(files))
	}
	for i, f := range files {
		if again[i].Name != f.Name || !bytes.Equal(again[i].Body, f.Body) {
			t.Errorf("%s differs in the second book", f.Name)
		}
	}
}

// TestDrawingsAreWellFormed parses every drawing strictly, and finds a title and a description in
// it.
func TestDrawingsAreWellFormed(t *testing.T) {
	forEachPlan(t, func(t *testing.T, _ plan.Plan, files []File) {
		for _, f := range files {
			if !strings.HasSuffix(f.Name, ".svg") {
				continue
			}
			found := map[string]string{}
			ids := map[string]bool{}
			d := xml.NewDecoder(bytes.NewReader(f.Body))
			inside := ""
			for {
				token, err := d.Token()
				if err == io.EOF {
					break
				}
				if err != nil {
					t.Fatalf("%s: %v", f.Name, err)
				}
				switch v := token.(type) {
				case xml.StartElement:
					inside = v.Name.Local
					for _, a := range v.Attr {
						if a.Name.Local == "id" && ids[a.Value] {
							t.Errorf("%s: id %q stands twice", f.Name, a.Value)
						} else if a.Name.Local == "id" {
							ids[a.Value] = true
						}
					}
				case xml.CharData:
					found[inside] += string(v)
				case xml.EndElement:
					inside = ""
				}
			}
			if found["title"] == "" || found["desc"] == "" {
				t.Errorf("%s: title %q, description %q: neither may be empty", f.Name, found["title"], found["desc"])
			}
		}
	})
}

// TestNamesAreShownAsText looks for names that turned into markup. What a browser makes of them is
// checked in TestBooksInABrowser.
func TestNamesAreShownAsText(t *testing.T) {
	files, err := Files(hostile())
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if bytes.Contains(bytes.ToLower(f.Body), []byte("<script")) {
			t.Errorf("%s holds a script element", f.Name)
		}
		if f.Name == "book.html" && !bytes.Contains(f.Body, []byte("&lt;script&gt;alert(")) {
			t.Errorf("%s does not show the name", f.Name)
		}
	}
}

// TestBookNeedsNoNetworkAndNoScript looks for anything that would be fetched.
func TestBookNeedsNoNetworkAndNoScript(t *testing.T) {
	fetched := regexp.MustCompile(`(?i)<(script|link|img|iframe|object|embed)\b|\bsrc=|@import|url\(\s*['"]?(https?:|//)`)
	forEachPlan(t, func(t *testing.T, _ plan.Plan, files []File) {
		if files[0].Name != "book.html" {
			t.Errorf("the first file is %s, want book.html", files[0].Name)
		}
		for _, f := range files {
			if found := fetched.Find(f.Body); found != nil {
				t.Errorf("%s: %q", f.Name, found)
			}
		}
	})
}

// TestBookHasTheDateGiven: the date, and no other, stands in the book and at the foot of its pages.
func TestBookHasTheDateGiven(t *testing.T) {
	files, err := Dated(kitchen(), `2026-03-01 </style>`)
	if err != nil {
		t.Fatal(err)
	}
	if body := string(files[0].Body); !strings.Contains(body, "2026-03-01 &lt;/style&gt;") || !strings.Contains(body, `\000032\000030\000032\000036`) {
		t.Error("the date is not in the book, or not at the foot of its pages")
	}
}

// TestEmptyPlanHasABook draws a plan with nothing in it.
func TestEmptyPlanHasABook(t *testing.T) {
	files, err := Files(plan.Plan{})
	if err != nil || len(files) != 1 {
		t.Errorf("Book of the zero plan: %d files, error %v; want the book alone", len(files), err)
	}
}

// TestTrimsAreNotMeasuredOffTheSheet: a cut that only takes something off says how much, in the
// table, and one whose blade overhangs the edge has no figure beside the sheet.
func TestTrimsAreNotMeasuredOffTheSheet(t *testing.T) {
	p := kitchen()
	cut := &p.Sheets[0].Cuts[0]
	cut.At = fraction.Of(-1, 16)
	cut.Trim, cut.Off = plan.TrimNear, cut.At.Add(p.Saw.Kerf)
	files, err := Files(p)
	if err != nil {
		t.Fatal(err)
	}
	takes := regexp.MustCompile(`>take \S+ off<|\(trims \S+ off\)<`)
	var want []string // one for each trim, in the order of sawing
	for _, sheet := range p.Sheets {
		for _, c := range sheet.Cuts {
			switch off := p.TapeMeasure().Format(c.Off); c.Trim {
			case plan.TrimNear:
				want = append(want, ">take "+off+" off<")
			case plan.TrimBeyond:
				want = append(want, "(trims "+off+" off)<")
			}
		}
	}
	below := regexp.MustCompile(`>-\d`)
	for _, f := range files {
		switch f.Name {
		case "book.html":
			if diff := cmp.Diff(want, takes.FindAllString(string(f.Body), -1)); diff != "" {
				t.Errorf("trims in the tables of cuts (-want +got):\n%s", diff)
			}
		case "sheet-1.svg":
			if found := below.Find(f.Body); found != nil {
				t.Errorf("a figure below nought beside the sheet: %q", found)
			}
		}
	}
}

// TestLeavesExplainTheirSigns looks in the legend of each leaf for every kind of ink in its drawings but what their own
// words explain: outlines, leads, dimensions, and what belongs to a sign that has its place in the legend.
func TestLeavesExplainTheirSigns(t *testing.T) {
	plain := map[string]bool{}
	for _, class := range strings.Fields("drawing paper board wall edge lead ext pole frame bar hatch dots soft big bold halo starttext cutdot cutlead cuttext flawdot flawlead flawtext taped unglued") {
		plain[class] = true
	}
	leaf, picture, key := regexp.MustCompile(`(?s)<article class="leaf.*?</article>`), regexp.MustCompile(`(?s)<svg[^>]*role="img".*?</svg>`), regexp.MustCompile(`(?s)<ul class="key">.*?</ul>`)
	class, label := regexp.MustCompile(`class="([^"]*)"`), regexp.MustCompile(`aria-labelledby="(\w+)"`)
	said := regexp.MustCompile(`"(run-\d+-section|run-\d+-(left|right)-end|corner-\d+|joint)`) // with words at every line
	seen := map[string]bool{}
	forEachPlan(t, func(t *testing.T, _ plan.Plan, files []File) {
		for _, article := range leaf.FindAll(files[0].Body, -1) {
			legend, name := "", label.FindSubmatch(article)[1]
			for _, list := range key.FindAll(article, -1) {
				legend += string(list)
			}
			for _, svg := range picture.FindAll(article, -1) {
				if said.Match(svg) {
					continue
				}
				for _, m := range class.FindAllSubmatch(svg, -1) {
					for _, one := range strings.Fields(string(m[1])) {
						if seen[one] = true; !plain[one] && !regexp.MustCompile(`class="[^"]*\b`+one+`\b`).MatchString(legend) {
							t.Errorf("leaf %s has ink of class %s, and its legend no sign of it", name, one)
						}
					}
				}
				if strings.Contains(string(svg), "halo taped") { // whose dots have a sign of their own
					svg = bytes.ReplaceAll(svg, []byte(`r="1.9"`), nil)
				}
				for ink, words := range map[string]string{`r="1.9"`: "corner, by its letter", "l4 6h-8z": "piece is up", "l4 -6h-8z": "lies turned", "-now)": "fitted in this step", "halo taped": "points from taped distances"} {
					if seen[ink] = seen[ink] || strings.Contains(string(svg), ink); strings.Contains(string(svg), ink) && !strings.Contains(legend, words) {
						t.Errorf("leaf %s has no sign for what is %q", name, words)
					}
				}
			}
		}
	})
	for _, want := range []string{"cut", "startmark", "seam", "datum", "drill", "nail", `r="1.9"`, "l4 6h-8z", "l4 -6h-8z", "-now)"} {
		if !seen[want] {
			t.Errorf("no leaf has ink of the kind %q: the test looks for nothing", want)
		}
	}
}

// TestBesideManyParts: two columns of many parts are found at once, keep their order and end about as high as each other.
func TestBesideManyParts(t *testing.T) {
	var parts []part
	for i := range 60 {
		parts = append(parts, part{Name: fmt.Sprintf("%02d", i), high: float64(100 + i%7*30)})
	}
	b, total, count := beside(parts...), 0.0, 0
	for _, column := range b.Sides {
		if !slices.IsSortedFunc(column, func(a, b part) int { return strings.Compare(a.Name, b.Name) }) {
			t.Errorf("out of order: %v", column)
		}
		for _, p := range column {
			total, count = total+p.high, count+1
		}
	}
	if count != len(parts) || b.high < total/2 || b.high > total/2+280 {
		t.Errorf("%d parts of %d, the higher column is %v of %v", count, len(parts), b.high, total)
	}
}
