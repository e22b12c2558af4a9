package jobfile_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"maps"
	"slices"
	"strconv"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/jobfile"
)

// A place is one value of a decoded file: its path, and a way to replace it.
type place struct {
	path string
	set  func(any)
}

// places returns every value below v, in a fixed order.
func places(v any, path string) []place {
	var all []place
	switch v := v.(type) {
	case map[string]any:
		for _, key := range slices.Sorted(maps.Keys(v)) {
			below := key
			if path != "" {
				below = path + "." + key
			}
			all = append(all, place{below, func(to any) { v[key] = to }})
			all = append(all, places(v[key], below)...)
		}
	case []any:
		for i := range v {
			below := path + "[" + strconv.Itoa(i) + "]"
			all = append(all, place{below, func(to any) { v[i] = to }})
			all = append(all, places(v[i], below)...)
		}
	}
	return all
}

// Whatever value is put in whatever place, the file is a job still or every
// fault has a path.
func TestEveryFaultOfAChangedFileHasAPath(t *testing.T) {
	values := []any{nil, true, 0, 1, -1, 2.5, 1e300, "", "0", "1", "-1", "1/0", "48", "9999", "1e9", "60 mm", "x",
		[]any{}, []any{"0", "1"}, map[string]any{}, map[string]any{"kind": "exposed"}}
	rapid.Check(t, func(t *rapid.T) {
		var file any
		if err := json.Unmarshal([]byte(sound), &file); err != nil {
			t.Fatal(err)
		}
		where := rapid.SampledFrom(places(file, "")).Draw(t, "place")
		where.set(rapid.SampledFrom(values).Draw(t, "value"))
		data, err := json.Marshal(file)
		if err != nil {
			t.Fatal(err)
		}
		_, err = jobfile.Read(bytes.NewReader(data))
		if err == nil {
			return
		}
		if len(fault.All(err)) == 0 {
			t.Fatalf("%T: %v", err, err)
		}
		for _, f := range fault.All(err) {
			if len(f.Path) == 0 || f.Line == 0 || f.Column == 0 {
				t.Fatalf("after a change at %s: a fault without a path or a place: %v", where.path, f)
			}
		}
	})
}

// A value of the wrong JSON type is found at exactly its own place.
func TestAValueOfTheWrongTypeIsFoundAtItsPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var file any
		if err := json.Unmarshal([]byte(sound), &file); err != nil {
			t.Fatal(err)
		}
		where := rapid.SampledFrom(places(file, "")).Draw(t, "place")
		where.set(nil) // no field takes null
		data, err := json.Marshal(file)
		if err != nil {
			t.Fatal(err)
		}
		_, err = jobfile.Read(bytes.NewReader(data))
		if !slices.ContainsFunc(fault.All(err), func(f *fault.Fault) bool {
			return f.Path.String() == where.path && errors.Is(f, jobfile.ErrType)
		}) {
			t.Fatalf("null at %s: %v", where.path, err)
		}
	})
}

// Any valid job is written as a file that gives the same job, and always the same file.
func TestEveryJobIsReadAsItWasWritten(t *testing.T) {
	schema := checker{schemaOf(t)}
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t)
		text, again := written(t, j)
		if diff := cmp.Diff(j, again, sameLengths, cmpopts.EquateEmpty()); diff != "" {
			t.Fatalf("(-written +read):\n%s\n%s", diff, text)
		}
		if twice, _ := written(t, again); twice != text {
			t.Fatalf("first\n%s\nthen\n%s", text, twice)
		}
		var v any
		if err := json.Unmarshal([]byte(text), &v); err != nil {
			t.Fatal(err)
		}
		if faults := schema.faults(schema.root, v, ""); len(faults) > 0 {
			t.Fatalf("the schema refuses it: %q\n%s", faults, text)
		}
	})
}
