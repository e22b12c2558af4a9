package draw

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/groovewright/cmd/groovewright/internal/job"
)

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
