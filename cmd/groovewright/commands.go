package main

import (
	"bytes"
	"cmp"
	"encoding"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
	"sync"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/book/folder"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
	"example.com/groovewright/wall/verify"
)

// readJob reads a job file, or standard input.
func (c call) readJob(name string) (plan.Job, error) {
	data, err := c.readFile(name, jobfile.MaxBytes)
	if err != nil {
		return plan.Job{}, err
	}
	profiles, err := c.profiles()
	if err != nil {
		return plan.Job{}, err
	}
	return jobfile.Read(bytes.NewReader(data), profiles...)
}

// profiles reads the profiles of a file of its own, if the call names one.
func (c call) profiles() ([]groove.Profile, error) {
	name, given := c.options["profiles"]
	if !given {
		return nil, nil
	}
	data, err := c.readFile(name, jobfile.MaxBytes)
	if err != nil {
		return nil, err
	}
	profiles, err := jobfile.ReadProfiles(bytes.NewReader(data))
	return profiles, fault.Under(err, name)
}

// profile finds a profile by its name, one of a file first.
func (c call) profile(name string) (groove.Profile, error) {
	own, err := c.profiles()
	for _, p := range slices.Concat(own, groove.Builtin()) {
		if p.Name == name {
			return p, err
		}
	}
	return groove.Profile{}, cmp.Or(err, error(usageError("there is no such profile; groovewright profiles lists them")))
}

// profilesCommand lists the ready profiles, and those of a file.
func profilesCommand(c call) error {
	own, err := c.profiles()
	if err != nil {
		return err
	}
	return show(c.stdout, book.Profiles(append(groove.Builtin(), own...)))
}

// compareCommand plans several jobs, or jobs on several profiles and stocks, and sets the plans side
// by side. Where there are several of both, the first stock is that of the first profile, and so on.
func compareCommand(c call) error {
	profiles, stocks := strings.Split(c.options["profile"], ","), strings.Split(c.options["stock"], ",")
	each := max(len(profiles), len(stocks))
	if len(c.operands) < 2 && c.options["profile"]+c.options["stock"] == "" {
		return usageError("compare: two jobs at least, or a job and --profile or --stock")
	}
	if len(profiles) != each && len(profiles) > 1 || len(stocks) != each && len(stocks) > 1 {
		return usageError("compare: as many of --stock as of --profile, or one for all")
	}
	var names []string
	var plans []plan.Plan
	var without []error // what keeps jobs from having a plan
	for _, file := range c.operands {
		for i := range each {
			name, profile, stock := file, profiles[i%len(profiles)], stocks[i%len(stocks)]
			j, err := c.readJob(file)
			if profile != "" && err == nil {
				name += ", " + profile
				j.Profile, err = c.profile(profile)
			}
			if stock != "" && err == nil {
				name += ", " + stock
				j.Room.Stock, err = jobfile.ParseStock(stock, j.Units)
			}
			if err == nil {
				plans = append(plans, plan.Plan{})
				plans[len(plans)-1], err = c.search(j, plan.Options{})
			}
			for _, f := range fault.All(err) { // found in a job, not in its file
				if path, _ := f.Path.MarshalText(); len(path) > 0 { // it writes any path
					f.Path = fault.Of(string(path))
				}
			}
			if err == nil {
				names = append(names, name)
				continue
			}
			err = fmt.Errorf("%s: %w", name, err)
			if len(plans) == len(names) || c.ctx.Err() != nil { // it is wrong, or there is no time
				return err
			}
			plans, without = plans[:len(names)], append(without, err)
		}
	}
	if len(plans) > 0 {
		without = append(without, show(c.stdout, book.Compare(names, plans)))
	}
	return errors.Join(without...)
}

// readFile reads a file, or standard input for "-", up to one byte more than most: so that whoever
// reads the data sees that it is too long. It waits no longer than the call goes on.
func (c call) readFile(name string, most int64) ([]byte, error) {
	type answer struct {
		data   []byte
		err    error
		caught any // a panic
	}
	read := make(chan answer, 1)
	go func() {
		var a answer
		defer func() {
			a.caught = recover()
			read <- a
		}()
		from, err := io.NopCloser(c.stdin), error(nil)
		if name != "-" {
			from, err = os.Open(name)
		}
		if a.err = err; err == nil {
			defer from.Close()
			a.data, a.err = io.ReadAll(io.LimitReader(from, most+1))
		}
	}()
	select {
	case a := <-read:
		if a.caught != nil {
			panic(a.caught)
		}
		if a.err != nil {
			return nil, inputError{a.err}
		}
		return a.data, nil
	case <-c.ctx.Done():
		return nil, errStopped
	}
}

// word reads the value of an option that is one of a few words; one that is not given stays as it is.
func (c call) word(option string, to encoding.TextUnmarshaler) error {
	word, given := c.options[option]
	if err := to.UnmarshalText([]byte(word)); given && err != nil {
		return usageError("plan: option --" + option + ": " + err.Error())
	}
	return nil
}

// planCommand plans a job and writes the plan.
func planCommand(c call) error {
	var prefer plan.Preference
	var only book.Section
	var table book.Table
	if err := errors.Join(c.word("prefer", &prefer), c.word("only", &only), c.word("csv", &table)); err != nil {
		return err
	}
	json, section, csv, explain := c.options.has("json"), c.options.has("only"), c.options.has("csv"), c.options.has("explain")
	if json && section || json && csv || section && csv || explain && (json || csv) || c.options.has("date") && !c.options.has("out") {
		return usageError("plan: of --json, --csv and --only one at a time; --explain goes with the text or --only, --date with --out")
	}
	var budget choice.Budget
	if word, given := c.options["effort"]; given {
		var err error
		if budget.Effort, err = strconv.Atoi(word); err != nil || budget.Effort < 1 || budget.Effort > 1000 {
			return usageError(fmt.Sprintf("plan: option --effort: %q is not a whole number from 1 to 1000", word))
		}
	}
	j, err := c.readJob(c.operands[0])
	if err != nil {
		return err
	}
	p, err := c.search(j, plan.Options{Prefer: prefer, Budget: budget})
	if err != nil {
		return err
	}
	text := sync.OnceValue(func() string { return book.Text(p) })
	if explain {
		text = sync.OnceValue(func() string { return book.Explained(p) })
	}
	data, err := p.JSON()
	if err != nil {
		return err
	}
	var shown string
	if dir, ok := c.options["out"]; ok {
		go func() { // beside the book
			defer func() { _ = recover() }() // what panics here panics below too
			text()
		}()
		pages, err := book.Dated(p, c.options["date"])
		if err != nil {
			return err
		}
		files := append([]book.File{{Name: "plan.txt", Body: []byte(text())}, {Name: "plan.json", Body: data}}, pages...)
		if err := folder.Write(dir, files); err != nil {
			return err
		}
		shown = book.Written(p, dir, files)
	}
	switch {
	case json:
		shown = string(data)
	case section:
		shown = book.Part(p, only, explain)
	case csv:
		shown = book.CSV(p, table)
	case shown == "":
		shown = text()
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

// checkCommand checks a job file and prints what the survey makes doubtful.
func checkCommand(c call) error {
	j, err := c.readJob(c.operands[0])
	if err != nil {
		return err
	}
	doubts, err := j.Doubts()
	if err != nil {
		return err
	}
	return show(c.stdout, book.Check(j, doubts))
}

// surveyCommand writes an empty measuring sheet, or a starter job.
func surveyCommand(c call) error {
	runs := 3
	if len(c.operands) > 0 {
		n, err := strconv.Atoi(c.operands[0])
		if err != nil || n < 1 || n > 99 {
			return usageError(fmt.Sprintf("survey: %q: not a number of runs; expected 1 to 99", c.operands[0]))
		}
		runs = n
	}
	write, name := book.Survey, c.options["out"]
	if c.options.has("job") && name != "" {
		return usageError("survey: of --out and --job one at a time")
	}
	if c.options.has("job") {
		write, name = book.Starter, c.options["job"]
		if _, err := os.Stat(name); err == nil {
			return usageError("survey: " + name + " is there already, and a starter job takes the place of no file")
		}
	}
	data, err := write(runs)
	switch {
	case err != nil:
		return err
	case name != "" && name != "-":
		return folder.WriteFile(name, data)
	}
	return show(c.stdout, string(data))
}

// verifyCommand judges a plan against its job.
func verifyCommand(c call) error {
	var data [3][]byte
	for i, name := range append(c.operands, c.options["profiles"]) {
		var err error
		if name == "" {
			break
		}
		if data[i], err = c.readFile(name, verify.MaxBytes); err != nil {
			return err
		}
	}
	faults := verify.Plan(jobfile.Standard(jobfile.WithProfile(data[0], data[2])), data[1])
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
