package verify

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction/fractiontest"

	"pgregory.net/rapid"
)

// FuzzPlan holds that no bytes make the checker stumble: of what it cannot judge it says that there
// is too much.
func FuzzPlan(once *testing.F) {
	f := fractiontest.F{F: once}
	for _, name := range byHand {
		job, plan := fixture(f, name)
		f.Add([]byte(job), []byte(plan))
	}
	f.Add([]byte(`{}`), []byte(`[]`))
	f.Fuzz(func(t *testing.T, job, plan []byte) {
		judged(t, job, plan)
	})
}

// judged fails if the checker stumbled, or has a fault of more than one line.
func judged(t interface{ Fatalf(string, ...any) }, job, plan []byte) {
	for _, f := range Plan(job, plan) {
		if f.Kind == NotJudged && f.Text != "too many edges" || strings.Contains(f.String(), "\n") {
			t.Fatalf("%q\njob: %s\nplan: %s", f, job, plan)
		}
	}
}

// places collects every value of a JSON tree with a way to put another in its place.
func places(node any, put func(any), into *[]func(any)) {
	*into = append(*into, put)
	switch node := node.(type) {
	case map[string]any:
		for _, name := range slices.Sorted(maps.Keys(node)) {
			places(node[name], func(v any) { node[name] = v }, into)
		}
	case []any:
		for i := range node {
			places(node[i], func(v any) { node[i] = v }, into)
		}
	}
}

// spoilt draws a few changes to a JSON file: values of any kind, or a part of the file elsewhere in
// it.
func spoilt(t *rapid.T, data []byte) []byte {
	var tree any
	if err := json.Unmarshal(data, &tree); err != nil {
		t.Fatal(err)
	}
	for range rapid.IntRange(0, 4).Draw(t, "changes") {
		var all []func(any)
		places(tree, func(v any) { tree = v }, &all)
		value := rapid.SampledFrom([]any{
			"0", "-1", "1/3", "96", "123456789012345678901234567890", "1/99999999999999999999999", "north", "left", "", "40", "10", "1/16", "-40",
			nil, true, 0, -7, 3.5, 1e99, []any{}, map[string]any{}, []any{"0", "0"}, []any{[]any{"0", "0"}, []any{"5", "5"}},
		}).Draw(t, "value")
		all[rapid.IntRange(0, len(all)-1).Draw(t, "place")](value)
	}
	out, err := json.Marshal(tree)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// Files that are sound JSON and yet hold anything are judged, too.
func TestSpoiltFilesAreJudged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job, plan := fixture(t, rapid.SampledFrom(byHand).Draw(t, "fixture"))
		judged(t, spoilt(t, []byte(job)), spoilt(t, []byte(plan)))
	})
}
