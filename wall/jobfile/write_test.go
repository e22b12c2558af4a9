package jobfile_test

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

var sameLengths = cmpopts.EquateComparable(fraction.Length{}, fraction.Ratio{})

// written writes a job and reads it again.
func written(t interface {
	Helper()
	Fatalf(string, ...any)
}, j plan.Job) (string, plan.Job) {
	t.Helper()
	var b bytes.Buffer
	if err := jobfile.Write(&b, j); err != nil {
		t.Fatalf("Write: %v", err)
	}
	text := b.String()
	again, err := jobfile.Read(&b)
	if err != nil {
		t.Fatalf("Read of what was written: %v\n%s", err, text)
	}
	return text, again
}

// examples returns the job files of the examples and others that have each field.
func examples(t testing.TB) map[string]string {
	t.Helper()
	names, err := filepath.Glob("../../examples/*.json")
	if err != nil || len(names) < 6 {
		t.Fatalf("examples: %v, %v", names, err)
	}
	files := map[string]string{"sound": sound}
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = string(data)
	}
	return files
}

func TestJobsAreWrittenAsTheyWereRead(t *testing.T) {
	for name, file := range examples(t) {
		j, err := jobfile.Read(strings.NewReader(file))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		text, again := written(t, j)
		if diff := cmp.Diff(j, again, sameLengths); diff != "" {
			t.Errorf("%s (-read +again):\n%s\n%s", name, diff, text)
		}
		if twice, _ := written(t, again); twice != text {
			t.Errorf("%s is written in two ways:\n%s\n%s", name, text, twice)
		}
	}
}

// A value with parts stands on one line as long as that has no more than 120 characters; its last brace may have a comma behind it.
func TestLinesOfParts(t *testing.T) {
	j, err := jobfile.Read(strings.NewReader(sound))
	if err != nil {
		t.Fatal(err)
	}
	longest := 0
	for n := range 100 {
		j.Stock[0].Name = strings.Repeat("é", n+1)
		text, _ := written(t, j)
		for line := range strings.Lines(text) {
			if line = strings.TrimRight(line, ",\n"); strings.Contains(line, "é") && strings.HasSuffix(line, "}") {
				longest = max(longest, utf8.RuneCountInString(line))
			}
		}
	}
	if longest != 120 {
		t.Errorf("the longest line of a sheet has %d characters", longest)
	}
}

func TestWriteRefuses(t *testing.T) {
	for path, change := range map[string]func(j *plan.Job){
		"Runs[0].Width":          func(j *plan.Job) { j.Runs[0].Width = fraction.Length{} },
		"priorities.exposed_end": func(j *plan.Job) { j.Priorities.ExposedEnd = fraction.NewRatio(1, 3) },
		"scribe":                 func(j *plan.Job) { j.Scribe = fraction.Of(1, 1<<40) },
	} {
		j, err := jobfile.Read(strings.NewReader(sound))
		if err != nil {
			t.Fatal(err)
		}
		change(&j)
		var b bytes.Buffer
		err = jobfile.Write(&b, j)
		if all := fault.All(err); len(all) != 1 || all[0].Path.String() != path || b.Len() > 0 {
			t.Errorf("%s: Write: %v, %d bytes written", path, err, b.Len())
		}
	}
}

// failing is a writer that is full.
type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestWriteReturnsWhatTheWriterSays(t *testing.T) {
	j, err := jobfile.Read(strings.NewReader(sound))
	if err != nil {
		t.Fatal(err)
	}
	if err := jobfile.Write(failing{}, j); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("Write: %v", err)
	}
}
