package jobfile_test

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/jobfile"
)

// Whatever the bytes, Read gives a job or faults, the same ones each time, and
// every fault is one line of text.
func FuzzRead(f *testing.F) {
	f.Add([]byte(sound))
	f.Add([]byte(`{"runs": [{"heights": [{}]}]}`))     // everything missing
	f.Add([]byte(`{"a": {"a": [[[[{"a": null}]]]]}}`)) // deep and unknown
	f.Add([]byte(strings.Replace(sound, boxOpening, `"rise": "2", "points": {"bases": [["0", "0"], ["24", "0"]], "side": "left", "corners": [{"distances": ["0", "24"]},
		{"distances": ["24", "0"]}, {"distances": ["26", "10"]}, {"bases": [["0", "0"], ["24", "10"]], "side": "left", "distances": ["10", "24"]}]}`, 1)))
	names, _ := filepath.Glob("../../examples/*.json")
	for _, name := range names {
		if data, err := os.ReadFile(name); err == nil {
			f.Add(data)
		}
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
