package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
	"example.com/groovewright/wall/verify"
)

// readJob reads the job file that the call names, or standard input.
func (c call) readJob() (plan.Job, error) {
	data, err := c.readFile(c.operands[0], jobfile.MaxBytes)
	if err != nil {
		return plan.Job{}, inputError{err}
	}
	return jobfile.Read(bytes.NewReader(data))
}

// readFile reads a file, or standard input for "-", up to one byte more than most: so that whoever
// reads the data sees that it is too long.
func (c call) readFile(name string, most int64) ([]byte, error) {
	if name == "-" {
		return io.ReadAll(io.LimitReader(c.stdin, most+1))
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, most+1))
}

// planCommand plans a job and writes the plan.
func planCommand(c call) error {
	var prefer plan.Preference
	if word, given := c.options["prefer"]; given {
		if err := prefer.UnmarshalText([]byte(word)); err != nil {
			return usageError("plan: option --prefer: " + err.Error())
		}
	}
	var budget choice.Budget
	if word, given := c.options["effort"]; given {
		var err error
		if budget.Effort, err = strconv.Atoi(word); err != nil || budget.Effort < 1 {
			return usageError(fmt.Sprintf("plan: option --effort: %q is not a whole number above 0", word))
		}
	}
	j, err := c.readJob()
	if err != nil {
		return err
	}
	p, err := c.search(j, plan.Options{Prefer: prefer, Budget: budget})
	if err != nil {
		return err
	}
	text := book.Text(p)
	data, err := p.JSON()
	if err != nil {
		return err
	}
	shown := text
	if dir, ok := c.options["out"]; ok {
		pages, err := book.Dated(p, c.options["date"])
		if err != nil {
			return err
		}
		files := append([]book.File{{Name: "plan.txt", Body: []byte(text)}, {Name: "plan.json", Body: data}}, pages...)
		if err := writeFiles(dir, files); err != nil {
			return err
		}
		shown = fmt.Sprintf("%s\nwritten to %s: %s\n", book.Headline(p), dir, names(files))
	}
	if c.options.has("json") {
		shown = string(data)
	}
	return show(c.stdout, shown)
}

// search makes the plan, which may take a while.
func (c call) search(j plan.Job, o plan.Options) (plan.Plan, error) {
	defer progress(c.stderr, "searching for a better layout")()
	p, err := plan.Make(c.ctx, j, o)
	if stopped := c.ctx.Err(); stopped != nil && errors.Is(err, stopped) {
		err = errStopped
	}
	return p, err
}

var errStopped = errors.New("stopped before there was a plan; nothing was written")

// names lists the files that a person opens.
func names(files []book.File) string {
	var all []string
	for _, f := range files {
		if !strings.HasSuffix(f.Name, ".svg") {
			all = append(all, f.Name)
		}
	}
	if n := len(files) - len(all); n > 0 {
		all = append(all, strconv.Itoa(n)+" drawings")
	}
	return strings.Join(all, ", ")
}

// checkCommand checks a job file and prints what the survey makes doubtful.
func checkCommand(c call) error {
	j, err := c.readJob()
	if err != nil {
		return err
	}
	doubts, err := j.Doubts()
	if err != nil {
		return err
	}
	return show(c.stdout, book.Check(j, doubts))
}

// surveyCommand writes an empty measuring sheet.
func surveyCommand(c call) error {
	runs := 3
	if len(c.operands) > 0 {
		n, err := strconv.Atoi(c.operands[0])
		if err != nil || n < 1 || n > 99 {
			return usageError(fmt.Sprintf("survey: %q: not a number of runs; expected 1 to 99", c.operands[0]))
		}
		runs = n
	}
	data, err := book.Survey(runs)
	if err != nil {
		return err
	}
	if name, ok := c.options["out"]; ok {
		return replace(filepath.Dir(name), book.File{Name: filepath.Base(name), Body: data})
	}
	return show(c.stdout, string(data))
}

// verifyCommand judges a plan against its job.
func verifyCommand(c call) error {
	var data [2][]byte
	for i, name := range c.operands {
		var err error
		if data[i], err = c.readFile(name, verify.MaxBytes); err != nil {
			return inputError{err}
		}
	}
	faults := verify.Plan(jobfile.Standard(data[0]), data[1])
	for _, f := range faults {
		if err := show(c.stdout, f.String()+"\n"); err != nil {
			return err
		}
	}
	if len(faults) > 0 {
		return fmt.Errorf("the plan does not keep to the job; faults found: %d", len(faults))
	}
	return show(c.stdout, "The plan keeps to the job.\n")
}
