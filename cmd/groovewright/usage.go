package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"example.com/groovewright/groove"
	"example.com/groovewright/wall/book"
)

// A command is one word after the program's name.
type command struct {
	name        string
	operands    string // as the usage line shows them
	least, most int    // how many operands
	says        string
	options     []option
	do          func(call) error
}

// An option begins with two dashes and may stand before or after the operands.
type option struct {
	name  string
	value string // what follows it, as the usage line shows it; empty for a switch
	says  string
}

// A call is one use of a command.
type call struct {
	ctx            context.Context
	options        options
	operands       []string
	stdin          io.Reader
	stdout, stderr io.Writer
}

// options holds the options that were given, a switch with an empty value.
type options map[string]string

func (o options) has(name string) bool {
	_, given := o[name]
	return given
}

// commands is every command, in the order in which help lists them.
func commands() []command {
	return []command{
		{
			name: "plan", operands: "JOB", least: 1, most: 1, do: planCommand,
			says: "Plan a job: layout, cut list, marks, shopping list, order of work.",
			options: []option{
				{"explain", "", "say how each figure was found; cautions in full"},
				{"only", "SECTION", "print one section: result, doubts, buy, setout,\n                             sheets, pieces, order, cautions"},
				{"csv", "buy|cuts", "print the shopping list or the cut list as CSV"},
				{"json", "", "print the plan as JSON, lengths exact, in inches"},
				{"out", "DIR", "write text, JSON and job book to a folder"},
				{"date", "TEXT", "with --out, the date of the job book"},
				{"prefer", "looks|sheets", "the best looks, or (default) the fewest sheets"},
				{"effort", "N", "search up to N times as long (1)"},
			},
		},
		{
			name: "check", operands: "JOB", least: 1, most: 1, do: checkCommand,
			says: "Check a job file and question doubtful measurements; nothing is planned.",
		},
		{
			name: "verify", operands: "JOB PLAN", least: 2, most: 2, do: verifyCommand,
			says: "Judge a plan in JSON against its job, as a second opinion.",
		},
		{
			name: "profiles", do: func(c call) error { return show(c.stdout, book.Profiles(groove.Builtin())) },
			says: "List the ready profiles with their figures and where those come from.",
		},
		{
			name: "survey", operands: "[RUNS]", most: 1, do: surveyCommand,
			says: "Write a measuring sheet, a page to print and fill in, for some runs (3).",
			options: []option{
				{"out", "FILE", "write it into a file instead of to standard output"},
			},
		},
	}
}

// usage returns the command's usage line.
func (c command) usage() string {
	words := strings.Fields("groovewright " + c.name + " " + c.operands)
	for _, o := range c.options {
		words = append(words, "["+o.usage()+"]")
	}
	return strings.Join(words, " ")
}

func (o option) usage() string { return strings.TrimSpace("--" + o.name + " " + o.value) }

// helpText returns what help prints of some commands.
func helpText(about ...command) string {
	var t strings.Builder
	for _, c := range about {
		line, options, _ := strings.Cut(c.usage(), " [")
		for option := range strings.SplitSeq(options, " [") {
			if len(line)+len(option) > 78 {
				fmt.Fprintln(&t, line)
				line = "   "
			}
			line = strings.TrimSuffix(line+" ["+option, " [")
		}
		fmt.Fprintln(&t, line)
		fmt.Fprintln(&t, "    "+c.says)
		for _, o := range c.options {
			fmt.Fprintf(&t, "      %-22s %s\n", o.usage(), o.says)
		}
		fmt.Fprintln(&t)
	}
	return t.String() + `JOB is a job file in JSON, or - for standard input. Options may stand before or
after it; after -- nothing is an option.

Results go to standard output, messages to standard error. The exit code is
0 when it is done, 1 when the job cannot be done as given (too few sheets, say),
2 when the job file or the command line is wrong: then each message names the
field, such as runs[1].heights[2].top, and what was expected there.
`
}

// parseArgs separates options from operands. Options are written --name, --name VALUE or
// --name=VALUE; each may be given once.
func parseArgs(c command, args []string) (options, []string, error) {
	given := options{}
	var operands []string
	fail := func(format string, facts ...any) (options, []string, error) {
		return nil, nil, usageError(c.name + ": " + fmt.Sprintf(format, facts...))
	}
	for i := 0; i < len(args); i++ {
		arg := args[i]
		if arg == "--" {
			return given, append(operands, args[i+1:]...), nil
		}
		if arg == "-" || !strings.HasPrefix(arg, "-") {
			operands = append(operands, arg)
			continue
		}
		name, value, joined := strings.Cut(strings.TrimLeft(arg, "-"), "=")
		if (name == "help" || name == "h") && !joined {
			given["help"] = ""
			continue
		}
		o, ok := c.option(name)
		switch {
		case !ok || !strings.HasPrefix(arg, "--"):
			return fail("no option %q; usage: %s", arg, c.usage())
		case given.has(name):
			return fail("option --%s given twice", name)
		case o.value == "" && joined:
			return fail("option --%s takes no value", name)
		case o.value != "" && !joined:
			if i++; i == len(args) {
				return fail("option --%s needs a value: %s", name, o.usage())
			}
			value = args[i]
		}
		if o.value != "" && value == "" {
			return fail("option --%s has an empty value; expected %s", name, o.value)
		}
		given[name] = value
	}
	return given, operands, nil
}

// option returns the option of that name.
func (c command) option(name string) (option, bool) {
	for _, o := range c.options {
		if o.name == name {
			return o, true
		}
	}
	return option{}, false
}
