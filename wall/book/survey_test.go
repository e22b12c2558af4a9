package book

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/groovewright/wall/jobfile"
)

// TestSurveyFieldsAreTheJobFiles fills every box of a measuring sheet and reads the result as a job
// file: no field may be unknown to it.
func TestSurveyFieldsAreTheJobFiles(t *testing.T) {
	sheet, err := Survey(2)
	if err != nil {
		t.Fatal(err)
	}
	input := regexp.MustCompile(`<input type="(text|radio)" name="([^"]*)"`)
	root := map[string]any{}
	boxes := 0
	for _, m := range input.FindAllSubmatch(sheet, -1) {
		for _, path := range numbered(string(m[2])) {
			if value := filled(path); value != nil {
				plant(root, path, value)
			}
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
	if _, err := jobfile.Read(bytes.NewReader(data)); err != nil {
		t.Errorf("the filled sheet is not a job file:\n%v\n%s", err, data)
	}
}

// Where the test's two odd openings stand: after the others of their runs.
var (
	byCorners = fmt.Sprintf("runs[0].openings[%d].", 5)
	byTape    = fmt.Sprintf("runs[1].openings[%d].", 5)
)

// numbered is a box's path with the numbers that the page of an odd opening leaves to the reader;
// that page is filled in twice, once in each of its ways.
func numbered(path string) []string {
	rest, odd := strings.CutPrefix(path, "runs[ ].openings[ ].")
	switch {
	case !odd:
		return []string{path}
	case strings.HasPrefix(rest, "points"):
		return []string{byTape + rest}
	case rest == "name", rest == "kind":
		return []string{byCorners + rest, byTape + rest}
	}
	return []string{byCorners + rest}
}

// octagon is the outline of the odd openings, on their runs.
var octagon = [...][2]float64{{20, 15}, {30, 13}, {40, 15}, {44, 18}, {40, 22}, {30, 24}, {20, 22}, {16, 18}}

// oddly is what someone might write into a box of an odd opening, "" for a path that is no such
// box: [16, 13] is where the outline's corners are taken from, [0, 0], [60, 0] and [30, 0] are the
// bases that the tape was held at.
func oddly(path string) string {
	path, ok := strings.CutPrefix(strings.Replace(path, byTape, byCorners, 1), byCorners)
	var at, member int
	decimal := func(v float64) string { return strconv.FormatFloat(v, 'f', 3, 64) }
	bases := [...]float64{0, 60, 30}
	switch n, _ := fmt.Sscanf(strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return r
		}
		return ' '
	}, path), "%d %d", &at, &member); {
	case !ok:
		return ""
	case path == "kind":
		return "other"
	case path == "points.side":
		return "left"
	case path == "left":
		return "16"
	case path == "bottom":
		return "13"
	case n == 2 && strings.HasPrefix(path, "outline"):
		return decimal(octagon[at][member] - []float64{16, 13}[member])
	case n == 2 && strings.HasPrefix(path, "points.bases"):
		return decimal([]float64{bases[at], 0}[member])
	case n == 2 && strings.HasPrefix(path, "points.corners"):
		return decimal(math.Hypot(octagon[at][0]-bases[member], octagon[at][1]))
	}
	return ""
}

// filled is what someone might write into a box.
func filled(path string) any {
	index := 0
	if m := regexp.MustCompile(`\[(\d+)\][^\[]*$`).FindStringSubmatch(path); m != nil {
		index, _ = strconv.Atoi(m[1])
	}
	last := path[strings.LastIndexAny(path, ".")+1:]
	if odd := oddly(path); odd != "" {
		return odd
	}
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
	case last == "rise":
		return "1"
	case inList("openings") && last == "left":
		return strconv.Itoa(5 + 10*index)
	case inList("openings"):
		return "4"
	case last == "width":
		return strconv.Itoa(10 * (8 - 1))
	case last == "at", last == "from", last == "left":
		return "10"
	}
	return "20"
}

// plant puts a value at its path into a tree of objects and lists.
func plant(root map[string]any, path string, value any) {
	steps := strings.FieldsFunc(path, func(r rune) bool { return strings.ContainsRune(".[]", r) })
	grow(root, steps, value)
}

// grow returns a tree with a value planted in it, the steps to it from the root: names of an
// object, numbers of a list.
func grow(tree any, steps []string, value any) any {
	if len(steps) == 0 {
		return value
	}
	i, err := strconv.Atoi(steps[0])
	if err != nil {
		object, _ := tree.(map[string]any)
		if object == nil {
			object = map[string]any{}
		}
		object[steps[0]] = grow(object[steps[0]], steps[1:], value)
		return object
	}
	list, _ := tree.([]any)
	for len(list) <= i {
		list = append(list, nil)
	}
	list[i] = grow(list[i], steps[1:], value)
	return list
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
