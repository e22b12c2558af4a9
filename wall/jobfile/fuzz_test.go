package jobfile_test

import (
	"bytes"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

// Whatever the bytes, Read gives a job or faults, the same ones each time, and
// every fault is one line of text.
func FuzzRead(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add([]byte(`{"runs": [{"heights": [{}]}]}`))     // everything missing
	f.Add([]byte(`{"a": {"a": [[[[{"a": null}]]]]}}`)) // deep and unknown
	f.Add([]byte(strings.Replace(sound, boxOpening, `"rise": "2", "points": {"bases": [["0", "0"], ["24", "0"]], "side": "left", "corners": [{"distances": ["0", "24"]},
		{"distances": ["24", "0"]}, {"distances": ["26", "10"]}, {"bases": [["0", "0"], ["24", "10"]], "side": "left", "distances": ["10", "24"]}]}`, 1)))
	for _, file := range slices.Sorted(maps.Values(examples(f))) {
		f.Add([]byte(file))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		j, err := jobfile.Read(bytes.NewReader(data))
		again, errAgain := jobfile.Read(bytes.NewReader(data))
		if err == nil {
			if !reflect.DeepEqual(j, again) || len(j.Room.Runs) == 0 {
				t.Fatal("two readings differ, or the job has no run")
			}
			return
		}
		if len(fault.All(err)) == 0 {
			t.Fatalf("%T: %v, want faults", err, err)
		}
		if err.Error() != errAgain.Error() {
			t.Fatalf("first %v\nthen %v", err, errAgain)
		}
		for _, f := range fault.All(err) {
			if strings.Contains(f.Error(), "\n") || f.Cause == nil {
				t.Fatalf("%#v: want one line and a kind", f)
			}
		}
	})
}

// Whatever the bytes, ReadProfiles gives valid profiles or faults.
func FuzzReadProfiles(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add([]byte("[" + ownProfile + "]"))
	f.Add([]byte(`[{}, {"features": null}, 7]`))
	f.Fuzz(func(t *testing.T, data []byte) {
		profiles, err := jobfile.ReadProfiles(bytes.NewReader(data))
		if err != nil && (profiles != nil || len(fault.All(err)) == 0) {
			t.Fatalf("%v, %v", profiles, err)
		}
		for _, p := range profiles {
			if err := p.Validate(); err != nil {
				t.Fatal(err)
			}
		}
	})
}

// A job of wild values is written so that it reads back, or refused with nothing written.
func FuzzWrite(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add([]byte{}, true)
	f.Add([]byte{3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8, 9, 7, 9, 3, 2, 3, 8, 4, 6, 2, 6, 4, 3, 3, 8, 3, 2, 7, 9, 5}, true)
	f.Add([]byte{3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8, 9, 7, 9, 3, 2, 3, 8, 4, 6, 2, 6, 4, 3, 3, 8, 3, 2, 7, 9, 5}, false)
	f.Fuzz(func(t *testing.T, data []byte, known bool) {
		var j plan.Job
		if known { // parts of a sound job are made wild
			var err error
			if j, err = jobfile.Read(strings.NewReader(sound)); err != nil {
				t.Fatal(err)
			}
			fractiontest.Fill(data, &j.Units, &j.Title, &j.Priorities, &j.Plates, &j.Built, &j.Gaps, &j.Cooking, &j.Bit, &j.Runs[0].Openings[1], &j.Finish)
		} else {
			fractiontest.Fill(data, &j)
		}
		var b bytes.Buffer
		if err := jobfile.Write(&b, j); err != nil {
			if b.Len() > 0 {
				t.Fatalf("%v, but %d bytes written", err, b.Len())
			}
			return
		}
		again, err := jobfile.Read(bytes.NewReader(b.Bytes()))
		if diff := cmp.Diff(j, again, sameLengths, cmpopts.EquateEmpty()); err != nil || diff != "" {
			t.Fatalf("%v (-written +read):\n%s\n%s", err, diff, b.String())
		}
	})
}
