package engine

import (
	"encoding/json"
	"slices"
	"strings"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/jobfile"
)

// walls draws each wall of a job file as far as it is measured, "" where that is not far enough. The
// rest of the job does not matter: each wall is drawn alone, between ends that need no neighbor.
func walls(text string) (all []string) {
	var file struct {
		Units, Tape json.RawMessage
		Runs        []map[string]any
	}
	if json.Unmarshal(jobfile.Standard([]byte(text)), &file) != nil {
		return nil
	}
	for _, run := range file.Runs {
		all = append(all, drawn(file.Units, file.Tape, run))
	}
	return all
}

// drawn draws one wall. Openings that are wrong are left out, one after the other, until it can be
// drawn.
func drawn(units, tape json.RawMessage, run map[string]any) string {
	wall := map[string]any{"name": run["name"], "width": run["width"], "heights": run["heights"]}
	if name, _ := run["name"].(string); name == "" {
		wall["name"] = "wall"
	}
	for _, side := range []string{"left", "right"} {
		end, _ := run[side].(map[string]any)
		wall[side] = map[string]any{"kind": end["kind"], "lean": end["lean"]}
		if end["lean"] == nil {
			wall[side] = map[string]any{"kind": end["kind"]}
		}
	}
	given, _ := run["openings"].([]any)
	openings := append([]any{}, given...)
	for {
		wall["openings"] = openings
		file := map[string]any{"profile": "beadboard 1-1/2", "runs": []any{wall}, // any will do: no panel is drawn
			"stock": []any{map[string]string{"name": "sheet", "width": "48 in", "length": "96 in"}}}
		for name, value := range map[string]json.RawMessage{"units": units, "tape": tape} {
			if value != nil {
				file[name] = value
			}
		}
		data, err := json.Marshal(file)
		if err != nil {
			return ""
		}
		j, err := jobfile.Read(strings.NewReader(string(data)))
		if err == nil {
			p, err := j.Walls()
			if err != nil {
				return ""
			}
			picture, err := drawing.Elevation(p, 0)
			if err != nil {
				return ""
			}
			if narrow, ok := picture.Narrow(); ok {
				picture = narrow
			}
			return string(picture.Element())
		}
		left, dropped := openings[:0], 0
		for i, o := range openings {
			if slices.ContainsFunc(fault.All(err), func(f *fault.Fault) bool { return about(f.Path, i) }) {
				dropped++
			} else {
				left = append(left, o)
			}
		}
		if openings = left; dropped == 0 {
			return ""
		}
	}
}

// about reports whether a path leads to opening i of the only run.
func about(path fault.Path, i int) bool {
	text, _ := path.MarshalText()
	at, _ := fault.Of("runs", 0, "openings", i).MarshalText()
	return string(text) == string(at) || strings.HasPrefix(string(text), string(at)+".")
}
