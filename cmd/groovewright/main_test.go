package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall/plan"
)

// examples returns the example jobs by name, without their folder and ending.
func examples(t testing.TB) map[string]string {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(root, "examples", "*.json"))
	if err != nil || len(paths) < 3 {
		t.Fatalf("examples: %v, %v", paths, err)
	}
	all := make(map[string]string)
	for _, path := range paths {
		all[strings.TrimSuffix(filepath.Base(path), ".json")] = path
	}
	return all
}

// try runs the whole command in process.
func try(stdin io.Reader, args ...string) (stdout, stderr string, code int) {
	var out, errs bytes.Buffer
	code = execute(context.Background(), args, stdin, &out, &errs)
	return out.String(), errs.String(), code
}

// must runs the command and fails the test if it fails.
func must(t testing.TB, args ...string) string {
	t.Helper()
	stdout, stderr, code := try(nil, args...)
	if code != done {
		t.Fatalf("groovewright %s: exit code %d\n%s", strings.Join(args, " "), code, stderr)
	}
	return stdout
}

// once remembers what a command on an example printed: many tests look at the same plans, and each
// plan takes a search.
var once = make(map[string]string)

// planned returns what plan prints for an example.
func planned(t testing.TB, path string, options ...string) string {
	t.Helper()
	args := append([]string{"plan", path}, options...)
	key := strings.Join(args, " ")
	if _, ok := once[key]; !ok {
		once[key] = must(t, args...)
	}
	return once[key]
}

// small writes the small job of the README into a folder, for tests to which it does not matter
// what is planned.
func small(t testing.TB) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "small.json")
	if err := os.WriteFile(path, []byte(readmeJobs(t)[0]), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// Two plans are kept whole. The plans of the other examples are held by laws: by the independent
// checker, by the width of their text, by figures worked out by hand.
func TestGoldenPlans(t *testing.T) {
	for _, name := range []string{"kitchen", "mudroom-metric"} {
		path := examples(t)[name]
		t.Run(name, func(t *testing.T) {
			for ending, options := range map[string][]string{".txt": nil, ".json": {"--json"}} {
				fractiontest.Golden(t, filepath.Join(root, "testdata", name+ending), planned(t, path, options...))
			}
		})
	}
}

// tooWide fails if a line has more than 80 characters or ends in a space.
func tooWide(t *testing.T, s string) {
	t.Helper()
	for line := range strings.Lines(s) {
		line = strings.TrimSuffix(line, "\n")
		if utf8.RuneCountInString(line) > 80 || strings.HasSuffix(line, " ") {
			t.Errorf("line of %d characters: %q", utf8.RuneCountInString(line), line)
		}
	}
}

func TestTextFitsTheLine(t *testing.T) {
	for _, path := range examples(t) {
		tooWide(t, planned(t, path))
		tooWide(t, must(t, "check", path))
	}
	tooWide(t, must(t, "profiles"))
	tooWide(t, must(t, "help"))
}

// What is printed as JSON is the plan: it reads back to the same bytes.
func TestPlanReadsBack(t *testing.T) {
	for name, path := range examples(t) {
		text := planned(t, path, "--json")
		var p plan.Plan
		decoder := json.NewDecoder(strings.NewReader(text))
		decoder.DisallowUnknownFields()
		if err := decoder.Decode(&p); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		again, err := p.JSON()
		if err != nil || string(again) != text {
			t.Errorf("%s: the plan does not read back to the same bytes: %v", name, err)
		}
	}
}

func TestOptionsStandBeforeOrAfterTheJob(t *testing.T) {
	path := small(t)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	want := must(t, "plan", path, "--json", "--prefer", "looks")
	for _, args := range [][]string{
		{"plan", "--json", "--prefer", "looks", path},
		{"plan", "--json", path, "--prefer=looks"},
		{"plan", "--prefer=looks", "--json", "--", path},
	} {
		if got := must(t, args...); got != want {
			t.Errorf("%v: another plan than with the options after the job", args)
		}
	}
	got, stderr, code := try(bytes.NewReader(data), "plan", "-", "--json", "--prefer", "looks")
	if got != want || code != done {
		t.Errorf("from standard input: exit code %d, another plan; %s", code, stderr)
	}
}

func TestUsage(t *testing.T) {
	kitchen := examples(t)["kitchen"]
	for _, row := range []struct {
		name string
		args []string
		code int
		says string // on standard output if the code is 0, else on standard error
	}{
		{"nothing", nil, wrong, "no command given"},
		{"help", []string{"help"}, done, "groovewright plan JOB"},
		{"help as an option", []string{"--help"}, done, "groovewright plan JOB"},
		{"help of a command", []string{"help", "check"}, done, "groovewright check JOB"},
		{"help of no command", []string{"help", "plam"}, wrong, `"plam": no such command`},
		{"help option of a command", []string{"plan", "--help"}, done, "--prefer looks|sheets"},
		{"unknown command", []string{"plam", kitchen}, wrong, `"plam": no such command`},
		{"no job", []string{"plan"}, wrong, "0 operands"},
		{"two jobs", []string{"plan", kitchen, kitchen}, wrong, "2 operands"},
		{"unknown option", []string{"plan", kitchen, "--jason"}, wrong, `no option "--jason"`},
		{"option of another command", []string{"check", kitchen, "--json"}, wrong, `no option "--json"`},
		{"short option", []string{"plan", "-json", kitchen}, wrong, `no option "-json"`},
		{"option twice", []string{"plan", "--json", "--json", kitchen}, wrong, "given twice"},
		{"option without its value", []string{"plan", kitchen, "--out"}, wrong, "needs a value"},
		{"option with an empty value", []string{"plan", kitchen, "--out="}, wrong, "empty value"},
		{"switch with a value", []string{"plan", kitchen, "--json=yes"}, wrong, "takes no value"},
		{"preference", []string{"plan", kitchen, "--prefer", "speed"}, wrong, "--prefer"},
		{"effort of none", []string{"plan", kitchen, "--effort", "0"}, wrong, "not a whole number from 1 to 1000"},
		{"effort", []string{"plan", kitchen, "--effort", "2"}, done, "Proved"},
		{"a date of no book", []string{"plan", kitchen, "--date", "today"}, wrong, "--date with --out"},
		{"no such file", []string{"plan", "no-such-job.json"}, wrong, "cannot read the input"},
		{"a folder", []string{"check", "."}, wrong, "cannot read the input"},
		{"no such profiles", []string{"plan", "../../examples/kitchen.json", "--profiles", "no-such.json"}, wrong, "cannot read the input: open no-such.json"},
		{"sheet and job at once", []string{"survey", "--out", "a", "--job", "b"}, wrong, "one at a time"},
		{"a starter to standard output", []string{"survey", "--job", "-"}, done, "\"runs\""},
		{"number of runs", []string{"survey", "many"}, wrong, "not a number of runs"},
		{"check", []string{"check", kitchen}, done, "every field is sound"},
		{"profiles", []string{"profiles"}, done, "beadboard 1-1/2"},
		{"schema", []string{"schema"}, done, "https://json-schema.org/draft/2020-12/schema"},
		{"version", []string{"--version"}, done, "groovewright "},
		{"command that is nearly one", []string{"chekc", kitchen}, wrong, `did you mean "check"?`},
		{"option that is nearly one", []string{"plan", "--jsno", kitchen}, wrong, `did you mean "--json"?`},
		{"completion", []string{"completion", "bash"}, done, "complete -o default -W \"plan check"},
		{"completion of no shell", []string{"completion", "ksh"}, wrong, "expected bash, zsh or fish"},
		{"one job to compare", []string{"compare", kitchen}, wrong, "two jobs at least"},
		{"profile to compare", []string{"compare", kitchen, "--profile", "beadboard 1-1/2,beadboard 2"}, done, "kitchen.json, beadboard"},
		{"profile that the stock does not show", []string{"compare", kitchen, "--profile", "reeded 1/2"}, wrong, "kitchen.json, reeded 1/2: stock[0].left_phase: 3/4: want 0 or more"},
		{"no such profile to compare", []string{"compare", kitchen, "--profile", "beadboard 1"}, wrong, "no such profile"},
		{"stock to compare", []string{"compare", kitchen, "--stock", "48x96=24.98,48x120"}, done, "kitchen.json, 48x120"},
		{"stock of each profile", []string{"compare", kitchen, "--profile", "beadboard 1-1/2,beadboard 2", "--stock", "48x96,48x120"}, done, "2, 48x120\n"},
		{"stock of no profile", []string{"compare", kitchen, "--profile", "beadboard 1-1/2,beadboard 2", "--stock", "48x96,48x120,48x144"}, wrong, "as many of --stock"},
		{"no stock to compare", []string{"compare", kitchen, "--stock", "48"}, wrong, "kitchen.json, 48: 48: no such value here; want a width, x and a length, and = and a price if you like, such as \"48x96=24.98\""},
		{"no profiles", []string{"check", kitchen, "--profiles", "no-such-file.json"}, wrong, "no-such-file.json"},
	} {
		t.Run(row.name, func(t *testing.T) {
			stdout, stderr, code := try(strings.NewReader(""), row.args...)
			said, quiet := stderr, stdout
			if row.code == done {
				said, quiet = stdout, stderr
			}
			if code != row.code || !strings.Contains(said, row.says) || quiet != "" {
				t.Errorf("exit code %d, want %d\nstdout: %s\nstderr: %s\nwant %q", code, row.code, stdout, stderr, row.says)
			}
			for line := range strings.Lines(stderr) {
				if !strings.HasPrefix(line, "groovewright: ") {
					t.Errorf("message %q does not begin with the program's name", line)
				}
			}
		})
	}
}

// Jobs that have a plan are set side by side also where another has none.
func TestCompareWithoutOne(t *testing.T) {
	stdout, stderr, code := try(strings.NewReader(""), "compare", "../../examples/kitchen.json", "--stock", "12x12,48x96,11x11")
	if code != failed || strings.Count(stdout, "kitchen.json") != 1 || !strings.Contains(stdout, ", 48x96\n") || !strings.Contains(stderr, "12x12: run ") || !strings.Contains(stderr, "11x11: run ") {
		t.Errorf("exit code %d, want %d; stdout %q, stderr %q", code, failed, stdout, stderr)
	}
}

// A job that cannot be done is another answer than one that is wrong.
func TestTooFewSheets(t *testing.T) {
	const few = `{"profile": "beadboard 1-1/2", "stock": [{"name": "sheet", "width": "48", "length": "96", "count": 1}],
		"runs": [{"name": "long", "width": "480", "left": {"kind": "exposed"}, "right": {"kind": "exposed"},
		"heights": [{"at": "0", "top": "40"}, {"at": "480", "top": "40"}]}]}`
	stdout, stderr, code := try(strings.NewReader(few), "plan", "-")
	if code != failed || stdout != "" || !strings.HasPrefix(stderr, "groovewright: ") {
		t.Errorf("exit code %d, want %d; stdout %q, stderr %q", code, failed, stdout, stderr)
	}
}

// Lengths that no tape gives can be too fine for exact arithmetic; the message tells what to do.
func TestTooFine(t *testing.T) {
	const fine = `{"profile": "beadboard 1-1/2", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
		"runs": [{"name": "a", "width": "100 1/999961", "left": {"kind": "exposed", "lean": "1/999907"}, "right": {"kind": "covered"},
		"heights": [{"at": "0", "top": "18 1/999983"}, {"at": "100 1/999961", "top": "17 1/999979"}]}]}`
	stdout, stderr, code := try(strings.NewReader(fine), "plan", "-")
	if code != failed || stdout != "" || !strings.Contains(stderr, "beyond 64 bits") || !strings.Contains(stderr, "to a coarser mark") {
		t.Errorf("exit code %d, want %d; stdout %q, stderr %q", code, failed, stdout, stderr)
	}
}

// brokenReader stands for a fault of the program.
type brokenReader struct{}

func (brokenReader) Read([]byte) (int, error) { panic("the reader broke") }

func TestNoPanicEscapes(t *testing.T) {
	stdout, stderr, code := try(brokenReader{}, "plan", "-")
	if code != failed || stdout != "" || !strings.Contains(stderr, "internal error: the reader broke") {
		t.Errorf("exit code %d, stdout %q, stderr %q", code, stdout, stderr)
	}
}

// failingWriter stands for a full disk or a closed pipe.
type failingWriter struct{}

func (failingWriter) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestOutputThatCannotBeWrittenIsAFailure(t *testing.T) {
	var stderr bytes.Buffer
	code := execute(context.Background(), []string{"profiles"}, nil, failingWriter{}, &stderr)
	if code != failed || !strings.Contains(stderr.String(), "no space left") {
		t.Errorf("exit code %d, stderr %q", code, stderr.String())
	}
}

// readmeJobs returns the jobs of the README.
func readmeJobs(t testing.TB) []string {
	t.Helper()
	var jobs []string
	for i, part := range strings.Split(readme(t), "```json\n") {
		if job, _, found := strings.Cut(part, "```"); found && i > 0 {
			jobs = append(jobs, job)
		}
	}
	if len(jobs) < 4 {
		t.Fatalf("README.md has %d jobs", len(jobs))
	}
	return jobs
}

// The README's jobs plan, and raise no doubt.
func TestReadmeJobs(t *testing.T) {
	for _, job := range readmeJobs(t) {
		if doubts, stderr, code := try(strings.NewReader(job), "plan", "-", "--only", "doubts"); code != done || doubts != "" {
			t.Errorf("exit code %d: %s%s\n%s", code, stderr, doubts, job)
		}
	}
}

// The README's picture is the drawing of the kitchen's first wall.
func TestReadmePicture(t *testing.T) {
	dir := t.TempDir()
	must(t, "plan", examples(t)["kitchen"], "--out", dir)
	drawn, err := os.ReadFile(filepath.Join(dir, "run-1.svg"))
	if err != nil {
		t.Fatal(err)
	}
	fractiontest.Golden(t, filepath.Join(root, "examples", "kitchen-run-1.svg"), string(drawn))
}

// The same job gives the same bytes.
func TestPlanIsTheSameEachTime(t *testing.T) {
	path := examples(t)["kitchen"]
	if again := must(t, "plan", path, "--json"); again != planned(t, path, "--json") {
		t.Error("two plans of the kitchen differ")
	}
}

// The whole command in process: read, plan, print.
func BenchmarkPlan(b *testing.B) {
	for name, path := range examples(b) {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				must(b, "plan", path)
			}
		})
	}
}
