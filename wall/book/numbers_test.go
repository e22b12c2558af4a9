package book

import (
	"encoding/json"
	"fmt"
	"html"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

var (
	inPlan    = regexp.MustCompile(`<tspan data-plan="([^"]*)">([^<]*)</tspan>`)
	unplanned = regexp.MustCompile(`(?s)<title.*?</title>|<desc.*?</desc>|<style.*?</style>|<tspan data-plan.*?</tspan>`)
	drawn     = regexp.MustCompile(`(?s)<svg.*?</svg>`)
	onPhone   = regexp.MustCompile(`id="[a-z0-9-]+-small-title"`)
	numeral   = regexp.MustCompile(`>[^<]*\d[^<]*<`)
)

// TestNumbersOnDrawingsAreThePlans reads every text of every drawing and holds it against the
// plan's JSON, read anew, at the path that the text names. A number without a path is a fault.
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
		tape := p.TapeMeasure()
		checked := 0
		for _, f := range files {
			for _, svg := range drawn.FindAll(f.Body, -1) {
				if f.Name == "book.html" && !onPhone.Match(svg) {
					continue // an SVG file too, or a sign of the key
				}
				for _, m := range inPlan.FindAllSubmatch(svg, -1) {
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
		if _, err := strconv.Atoi(text); err != nil && !regexp.MustCompile(`^([A-Z]{1,2}|[a-z]{1,2}|1:\d+|[EDRSP]\d+)$`).MatchString(text) {
			return "neither a count nor letters nor a leaf"
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
		if parts, ok := value.(map[string]any); ok {
			said = nameOf(parts, tape)
		}
		var l fraction.Length
		if isWord.MatchString(field) || said != fmt.Sprint(value) {
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
	// The unit stands in the title block of a drawing.
	if want := tape.Format(sum); text != want && text != strings.ReplaceAll(want, " "+tape.Unit.String(), "") {
		return "the plan says " + want
	}
	return ""
}

// nameOf returns the words for a cut or for a mark of a story pole, of panels or of boards.
func nameOf(parts map[string]any, tape fraction.Tape) string {
	data, _ := json.Marshal(parts) // it was read from JSON
	var cut plan.Shown
	if _, ok := parts["feature"]; ok && json.Unmarshal(data, &cut) == nil {
		return cut.Name(tape)
	}
	var mark plan.Mark
	if err := json.Unmarshal(data, &mark); err != nil {
		return err.Error()
	}
	return mark.Name(plan.Profile{}) + " " + mark.Name(plan.Profile{Profile: groove.Profile{Boards: true}})
}

// isWord are the fields of the plan that hold words.
var isWord = regexp.MustCompile(`^title$|\.(name|label|kind|direction|opening|run|stock)$`)

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
