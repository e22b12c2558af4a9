package jobfile_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"strings"
	"testing"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

type object = map[string]any

// withMany is the job of one run, 96 in wide and 30 in high, with so much of one thing along it.
func withMany(field string, n int, item func(i int) object) object {
	items := make([]object, n)
	for i := range items {
		items[i] = item(i)
	}
	run := object{"name": "hall", "width": "96", "left": object{"kind": "covered"}, "right": object{"kind": "covered"},
		"heights": []object{{"at": "0", "top": "30"}, {"at": "96", "top": "30"}}}
	job := object{"profile": "beadboard 1-1/2", "stock": []object{{"name": "sheet", "width": "48", "length": "96"}}, "runs": []object{run}}
	switch field {
	case "runs":
		job["tape"], job[field] = "1/2", items // or the marks of the tape along wide ones are too many
	case "stock", "installed":
		job[field] = items
	case "features": // of two halls
		other := maps.Clone(run)
		other["name"] = "other"
		job["profile"], job["runs"] = object{"name": "wide", "thickness": "1/4", "features": items}, []object{run, other}
	default:
		run[field] = items
	}
	return job
}

// along is a place on the hall, i of so many.
func along(i, of int) string { return fmt.Sprintf("%d/%d", 95*i+1, of) }

// What stands at a limit is read; what is beyond is refused at its place, with the limit as the
// README and the schema state it, and in no time.
func TestLimits(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	stated := func(text, want string) bool {
		return strings.Contains(strings.ToLower(strings.Join(strings.Fields(text), " ")), want)
	}
	level := object{"kind": "covered"}
	for _, row := range []struct {
		field, path string
		most        int
		want        string
		described   bool // in words, beside maxItems
		item        func(i int) object
	}{
		{"stock", "stock", 64, "at most 64 kinds of stock", false, func(i int) object {
			return object{"name": fmt.Sprint(i), "width": "48", "length": fmt.Sprint(40 + i)}
		}},
		{"runs", "runs", 100, "at most 100 runs", false, func(i int) object {
			return object{"name": fmt.Sprint(i), "width": "96", "left": level, "right": level, "heights": []object{{"at": "0", "top": "30"}, {"at": "96", "top": "30"}}}
		}},
		{"features", "profile.features", 150, "at most 300 features of the pattern times runs and breaks", false, func(i int) object {
			return object{"kind": []string{"flat", "bead"}[i%2], "width": "1/4"}
		}},
		{"runs", "runs[2].width", 2, "runs together at most as wide as 1000 of the widest stock", false, func(i int) object {
			return object{"name": fmt.Sprint(i), "width": "24000", "left": level, "right": level, "heights": []object{{"at": "0", "top": "30"}, {"at": "24000", "top": "30"}}}
		}},
		{"installed", "installed", 1000, "at most 1000 installed panels", false, func(i int) object {
			return object{"run": 0, "left": along(i, 1001), "right": along(i+1, 1001), "left_phase": "0"}
		}},
		{"heights", "runs[0].heights", 1000, "at most 1000 stations in all runs together", true, func(i int) object {
			at := along(i, 1001)
			switch i {
			case 0:
				at = "0"
			case 999:
				at = "96"
			}
			return object{"at": at, "top": "30"}
		}},
		{"openings", "runs[0].openings", 200, "at most 200 openings in all runs together", true, func(i int) object {
			return object{"name": fmt.Sprint(i), "kind": "box", "left": along(i, 201), "bottom": "10", "width": "1/4", "height": "1/4"}
		}},
		{"openings", "runs[0].openings", 50, "at most 5000 corners of openings in all runs together", true, func(i int) object {
			var outline [][2]string // a stair of 100 corners, 49 of them steps, within 1/2 in
			for n := range 50 {
				outline = append(outline, [2]string{fmt.Sprintf("%d/128", n), fmt.Sprintf("%d/128", n)}, [2]string{fmt.Sprintf("%d/128", n+1), fmt.Sprintf("%d/128", n)})
			}
			outline[99] = [2]string{"0", "49/128"}
			return object{"name": fmt.Sprint(i), "kind": "window", "left": along(i, 51), "bottom": "10", "outline": outline}
		}},
		{"breaks", "runs[0].breaks", 10, "at most 10 breaks in all runs together", true, func(i int) object {
			return object{"at": along(i, 51), "prominence": 1}
		}},
		{"focal", "runs[0].focal", 500, "at most 500 focal zones in all runs together", true, func(i int) object {
			return object{"from": along(i, 501), "to": along(i+1, 501), "prominence": 2}
		}},
	} {
		t.Run(row.want, func(t *testing.T) {
			for n, refused := range map[int]bool{row.most: false, row.most + 1: true} {
				data, err := json.Marshal(withMany(row.field, n, row.item))
				if err != nil {
					t.Fatal(err)
				}
				before := fractiontest.ProcessorTime(os.Getpid())
				_, err = jobfile.Read(strings.NewReader(string(data)))
				if took := fractiontest.ProcessorTime(os.Getpid()) - before; took.Seconds() > 1 {
					t.Errorf("%d: read in %v", n, took)
				}
				faults := fault.All(err)
				at := func(f *fault.Fault) bool { return f.Path.String() == row.path && f.Want == row.want }
				if refused != (len(faults) == 1 && at(faults[0])) || refused != (err != nil) {
					t.Errorf("%d: %v", n, err)
				}
			}
			if !stated(string(readme), row.want) {
				t.Error("not in the README")
			}
			schema := schemaOf(t)
			if row.field == "features" {
				return // the schema cannot say it in numbers
			}
			field, ok := schema["properties"].(object)[row.field].(object)
			if !ok {
				field = schema["$defs"].(object)["run"].(object)["properties"].(object)[row.field].(object)
			}
			if row.described && !stated(fmt.Sprint(field["description"]), row.want) {
				t.Errorf("not in the schema: %v", field["description"])
			}
			if strings.HasPrefix(row.want, "at most") && !strings.Contains(row.want, "corners") && field["maxItems"] != float64(row.most) {
				t.Errorf("maxItems %v, want %d", field["maxItems"], row.most)
			}
		})
	}
}

// A list that no other limit bounds has that of all lists.
func TestMostItems(t *testing.T) {
	for _, n := range []int{plan.MaxItems, plan.MaxItems + 1} {
		lengths := strings.TrimSuffix(strings.Repeat(`"96", `, n), ", ")
		_, err := jobfile.Read(strings.NewReader(strings.Replace(sound, `"thickness": "1/4"`, `"thickness": "1/4", "lengths": [`+lengths+`]`, 1)))
		if n == plan.MaxItems && err != nil || n > plan.MaxItems && (err == nil || !strings.Contains(err.Error(), "a list of 2501")) {
			t.Errorf("%d lengths: %v", n, err)
		}
	}
}
