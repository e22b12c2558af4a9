package draw

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"flag"
	"fmt"
	"html"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/cmd/groovewright/internal/job"
	"example.com/groovewright/cmd/groovewright/internal/plan"
	"example.com/groovewright/fraction"
)

var (
	update = flag.Bool("update", false, "write the golden drawings anew")
	keep   = flag.String("keep", "", "folder to write the books of the tests into, to look at")
)

// named is a plan, or why there is none, and what the tests call it.
type named struct {
	name string
	plan plan.Plan
	err  error
}

// plans are the made-up kitchen, one with names that try to be markup, and the
// plans of the examples as the command's own golden files hold them.
var plans = sync.OnceValue(func() []named {
	all := []named{{"fixture", kitchen(), nil}, {"hostile", hostile(), nil}}
	files, err := filepath.Glob("../../../../testdata/*.json")
	if err != nil || len(files) == 0 {
		return append(all, named{name: "examples", err: fmt.Errorf("no golden plans found: %v", err)})
	}
	for _, file := range files {
		n := named{name: strings.TrimSuffix(filepath.Base(file), ".json")}
		data, err := os.ReadFile(file)
		if err == nil {
			err = json.Unmarshal(data, &n.plan)
		}
		n.err = err
		all = append(all, n)
	}
	return all
})

// forEachPlan runs a test on the book of every plan.
func forEachPlan(t *testing.T, test func(t *testing.T, p plan.Plan, files []File)) {
	t.Helper()
	for _, n := range plans() {
		t.Run(n.name, func(t *testing.T) {
			if n.err != nil {
				t.Fatal(n.err)
			}
			files, err := Book(n.plan)
			if err != nil {
				t.Fatal(err)
			}
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

// TestDrawingsAreGolden holds some drawings of the made-up kitchen, byte for
// byte. After a change that is meant, look at the drawings and use -update.
func TestDrawingsAreGolden(t *testing.T) {
	files, err := Book(kitchen())
	if err != nil {
		t.Fatal(err)
	}
	s := newScribe(kitchen())
	cuts := cutLines(kitchen())
	tiles := cuts[2].tile(Papers()[0])
	files = append(files,
		File{"survey.svg", drawSurvey(0).SVG()},
		File{"template.svg", drawTile(s, tiles, tiles.tiles[0], 3).SVG()},
		File{"map.svg", drawMap(tiles, 3).SVG()})
	for _, f := range files {
		switch f.Name {
		case "room.svg", "run-1.svg", "run-2.svg", "sheet-1.svg", "piece-4-face.svg", "piece-1-back.svg", "survey.svg", "template.svg", "map.svg":
		default:
			continue
		}
		name := filepath.Join("testdata", f.Name)
		if *update {
			if err := os.MkdirAll("testdata", 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(name, f.Body, 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), string(f.Body)); diff != "" {
			t.Errorf("%s (-want +got)\n%s", f.Name, diff)
		}
	}
}

// TestSamePlanGivesSameBytes makes every book twice.
func TestSamePlanGivesSameBytes(t *testing.T) {
	forEachPlan(t, func(t *testing.T, p plan.Plan, files []File) {
		again, err := Book(p)
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
	})
}

// TestDrawingsAreWellFormed parses every drawing strictly, and finds a title
// and a description in it.
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

// TestNamesAreShownAsText looks for names that turned into markup. What a
// browser makes of them is checked in TestBooksInABrowser.
func TestNamesAreShownAsText(t *testing.T) {
	files, err := Book(hostile())
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

// TestEmptyPlanHasABook draws a plan with nothing in it.
func TestEmptyPlanHasABook(t *testing.T) {
	files, err := Book(plan.Plan{})
	if err != nil || len(files) != 1 {
		t.Errorf("Book of the zero plan: %d files, error %v; want the book alone", len(files), err)
	}
}

var (
	planned   = regexp.MustCompile(`<tspan data-plan="([^"]*)">([^<]*)</tspan>`)
	unplanned = regexp.MustCompile(`(?s)<title.*?</title>|<desc.*?</desc>|<style.*?</style>|<tspan data-plan.*?</tspan>`)
	drawing   = regexp.MustCompile(`(?s)<svg.*?</svg>`)
	numeral   = regexp.MustCompile(`>[^<]*\d[^<]*<`)
)

// TestNumbersOnDrawingsAreThePlans reads every text of every drawing and holds
// it against the plan's JSON, read anew, at the path that the text names. A
// number without a path is a fault.
func TestNumbersOnDrawingsAreThePlans(t *testing.T) {
	forEachPlan(t, func(t *testing.T, p plan.Plan, files []File) {
		data, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		var tree any
		if err := json.Unmarshal(data, &tree); err != nil {
			t.Fatal(err)
		}
		unit, err := fraction.ParseUnit(p.Units)
		if err != nil {
			t.Fatal(err)
		}
		tape := fraction.Tape{Mark: p.Tape, Unit: unit}
		checked := 0
		for _, f := range files {
			if f.Name == "book.html" {
				continue // its drawings are the SVG files; its tables are not drawings
			}
			for _, svg := range drawing.FindAll(f.Body, -1) {
				for _, m := range planned.FindAllSubmatch(svg, -1) {
					path, text := html.UnescapeString(string(m[1])), html.UnescapeString(string(m[2]))
					if fault := judge(tree, tape, path, text); fault != "" {
						t.Errorf("%s: %q from %s: %s", f.Name, text, path, fault)
					}
					checked++
				}
				if strings.Contains(string(svg), `id="check-square-title"`) {
					continue // its one number is the size it is printed for; the browser's PDF is measured
				}
				if n := numeral.FindString(html.UnescapeString(string(unplanned.ReplaceAll(svg, nil)))); n != "" {
					t.Errorf("%s: the number %q names no place in the plan", f.Name, n)
				}
			}
		}
		if checked < 20 {
			t.Errorf("only %d texts name a place in the plan", checked)
		}
	})
}

// judge says what is wrong with a text that is said to come from a path.
func judge(tree any, tape fraction.Tape, path, text string) string {
	if path == "count" {
		if _, err := strconv.Atoi(text); err != nil && !regexp.MustCompile(`^[A-Z]\d*$`).MatchString(text) {
			return "neither a count nor a letter"
		}
		return ""
	}
	var sum fraction.Length
	sign := int64(1)
	fields := strings.Fields(path)
	for _, field := range fields {
		switch field {
		case "+":
			sign = 1
			continue
		case "-":
			sign = -1
			continue
		}
		value, err := lookUp(tree, field)
		if err != nil {
			return err.Error()
		}
		if number, ok := value.(float64); ok {
			if text != fmt.Sprint(number) {
				return fmt.Sprintf("the plan says %v", number)
			}
			return ""
		}
		said := fmt.Sprint(value)
		var l fraction.Length
		if isWord.MatchString(field) {
			if !strings.Contains(said, strings.TrimSuffix(text, "…")) {
				return fmt.Sprintf("the plan says %q", said)
			}
			return ""
		}
		if err := l.UnmarshalText([]byte(said)); err != nil {
			return err.Error()
		}
		sum = sum.Add(l.Mul(sign))
	}
	if want := tape.Format(sum); text != want {
		return "the plan says " + want
	}
	return ""
}

// isWord are the fields of the plan that hold words.
var isWord = regexp.MustCompile(`\.(name|label|kind|cut|what|direction)$`)

// lookUp finds a value of decoded JSON by its path.
func lookUp(tree any, path string) (any, error) {
	for _, step := range strings.FieldsFunc(path, func(r rune) bool { return r == '.' || r == '[' || r == ']' }) {
		switch v := tree.(type) {
		case map[string]any:
			tree = v[step]
		case []any:
			i, err := strconv.Atoi(step)
			if err != nil || i < 0 || i >= len(v) {
				return nil, fmt.Errorf("no element %q of %d", step, len(v))
			}
			tree = v[i]
		default:
			return nil, fmt.Errorf("no field %q", step)
		}
	}
	if tree == nil {
		return nil, fmt.Errorf("nothing there")
	}
	return tree, nil
}

// TestJudgeFindsWrongNumbers shows that the check above can fail.
func TestJudgeFindsWrongNumbers(t *testing.T) {
	var tree any
	if err := json.Unmarshal([]byte(`{"runs":[{"name":"hall","width":"48 1/2","panels":[{"left":"1/2","right":"12"}]}],"sheets":[{"step":3}]}`), &tree); err != nil {
		t.Fatal(err)
	}
	tape := fraction.Tape{Mark: fraction.Of(1, 16)}
	for _, row := range []struct {
		path, text string
		right      bool
	}{
		{"runs[0].width", "48 1/2", true},
		{"runs[0].width", "48 9/16", false},
		{"runs[0].panels[0].right - runs[0].panels[0].left", "11 1/2", true},
		{"runs[0].panels[0].right - runs[0].panels[0].left", "12 1/2", false},
		{"runs[0].panels[1].right", "12", false},
		{"runs[0].name", "ha…", true},
		{"runs[0].name", "barn", false},
		{"sheets[0].step", "3", true},
		{"sheets[0].step", "4", false},
		{"count", "48 1/2", false},
	} {
		if fault := judge(tree, tape, row.path, row.text); (fault == "") != row.right {
			t.Errorf("judge(%s, %q) = %q, want right = %v", row.path, row.text, fault, row.right)
		}
	}
}

// TestSurveyFieldsAreTheJobFiles fills every box of a measuring sheet and reads
// the result as a job file: no field may be unknown to it.
func TestSurveyFieldsAreTheJobFiles(t *testing.T) {
	sheet, err := Survey(2)
	if err != nil {
		t.Fatal(err)
	}
	input := regexp.MustCompile(`<input type="(text|radio)" name="([^"]*)"`)
	root := map[string]any{}
	boxes := 0
	for _, m := range input.FindAllSubmatch(sheet, -1) {
		if value := filled(string(m[2])); value != nil {
			plant(root, string(m[2]), value)
		}
		boxes++
	}
	if boxes < 100 {
		t.Fatalf("only %d boxes on the sheet", boxes)
	}
	data, err := json.Marshal(root)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := job.Read(data); err != nil {
		t.Errorf("the filled sheet is not a job file:\n%v\n%s", err, data)
	}
}

// filled is what someone might write into a box.
func filled(path string) any {
	index := 0
	if m := regexp.MustCompile(`\[(\d+)\][^\[]*$`).FindStringSubmatch(path); m != nil {
		index, _ = strconv.Atoi(m[1])
	}
	last := path[strings.LastIndexAny(path, ".")+1:]
	inList := func(list string) bool { return strings.Contains(path, list+"[") }
	switch {
	case path == "closed", last == "boards":
		return false
	case path == "built":
		return 1964
	case path == "units":
		return "in"
	case path == "title":
		return "An invented hall"
	case last == "run":
		return "wall 0"
	case last == "name" && path == "runs[0].name", last == "name" && path == "runs[1].name":
		return fmt.Sprintf("wall %c", path[len("runs[")])
	case last == "name":
		return fmt.Sprintf("thing %d", index)
	case last == "count", last == "gangs":
		return 1
	case last == "price":
		return "20.00"
	case last == "prominence":
		return 1
	case last == "kind" && inList("features"):
		return []string{"flat", "bead", "flat", "groove"}[index]
	case last == "kind" && inList("openings"):
		return "box"
	case last == "kind":
		return "exposed"
	case last == "depth" && index%2 == 0:
		return nil // a flat has no depth
	case last == "lean", last == "tape", last == "depth", last == "kerf", strings.HasPrefix(path, "gaps."):
		return "1/16"
	case last == "thickness":
		return "1/2"
	case inList("features"):
		return "1/2"
	case last == "left_phase", last == "square_up":
		return "1/4"
	case inList("stock"):
		return "96"
	case inList("heights") && last == "at":
		return strconv.Itoa(10 * index)
	case inList("heights") && last == "bottom":
		return "0"
	case last == "top":
		return "30"
	case inList("openings") && last == "left":
		return strconv.Itoa(5 + 10*index)
	case inList("openings"):
		return "4"
	case last == "width":
		return strconv.Itoa(10 * (surveyHeights - 1))
	case last == "at", last == "from", last == "left":
		return "10"
	}
	return "20"
}

// plant puts a value at its path into a tree of objects and lists.
func plant(at map[string]any, path string, value any) {
	step, rest, deeper := strings.Cut(path, ".")
	name, place, listed := strings.Cut(strings.TrimSuffix(step, "]"), "[")
	if !listed && !deeper {
		at[name] = value
		return
	}
	if !listed {
		if at[name] == nil {
			at[name] = map[string]any{}
		}
		plant(at[name].(map[string]any), rest, value)
		return
	}
	i, _ := strconv.Atoi(place)
	list, _ := at[name].([]any)
	for len(list) <= i {
		list = append(list, map[string]any{})
	}
	at[name] = list
	plant(list[i].(map[string]any), rest, value)
}

// TestSurveyRefusesSillyNumbers checks the bounds.
func TestSurveyRefusesSillyNumbers(t *testing.T) {
	for _, runs := range []int{-1, 0, mostRuns + 1} {
		if _, err := Survey(runs); err == nil {
			t.Errorf("Survey(%d) gave a sheet", runs)
		}
	}
	if _, err := Survey(mostRuns); err != nil {
		t.Errorf("Survey(%d): %v", mostRuns, err)
	}
}
