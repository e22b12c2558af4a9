package main

import (
	"context"
	_ "embed"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/jobfile"
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
	profiles := option{"profiles", "FILE", "profiles besides the ready ones, a list in JSON"}
	return []command{
		{
			name: "plan", operands: "JOB", least: 1, most: 1, do: planCommand,
			says: "Plan a job: layout, cut list, marks, shopping list, order of work.",
			options: []option{
				{"explain", "", "say how each figure was found; cautions in full"},
				{"only", "SECTION", "print one section: result, doubts, buy, setout,\n                             cuts, pieces, order, cautions"},
				{"csv", "buy|cuts", "print the shopping list or the cut list as CSV"},
				{"json", "", "print the plan as JSON, lengths exact, in inches"},
				{"out", "DIR", "write text, JSON and job book to a folder"},
				{"date", "TEXT", "with --out, the date of the job book"},
				{"prefer", "looks|sheets", "the best looks, or (default) the fewest sheets"},
				{"effort", "N", "search up to N times as long, 1 to 1000 (1)"},
				profiles,
			},
		},
		{
			name: "check", operands: "JOB", least: 1, most: 1, do: checkCommand,
			says:    "Check a job file and question doubtful measurements; nothing is planned.",
			options: []option{profiles},
		},
		{
			name: "verify", operands: "JOB PLAN", least: 2, most: 2, do: verifyCommand,
			says:    "Judge a plan in JSON against its job, as a second opinion.",
			options: []option{profiles},
		},
		{
			name: "compare", operands: "JOB...", least: 1, most: 99, do: compareCommand,
			says: "Plan several jobs and set them side by side: sheets, money, flaws, work.",
			options: []option{{"profile", "A,B", "plan each job with each of these profiles instead"},
				{"stock", "SIZES", "from each of these, as 48x96,48x120=52.00 with or\n                             without a price, + between sizes used together;\n                             one for all profiles, or one for each"}, profiles},
		},
		{
			name: "profiles", do: profilesCommand,
			says:    "List the ready profiles with their figures and where those come from.",
			options: []option{profiles},
		},
		{
			name: "survey", operands: "[RUNS]", most: 1, do: surveyCommand,
			says: "Write a measuring sheet, a page to print and fill in, for some runs (3).",
			options: []option{
				{"out", "FILE", "write it into a file instead of to standard output"},
				{"job", "FILE", "write a starter job file to change instead"},
			},
		},
		{
			name: "schema", do: func(c call) error { return show(c.stdout, string(jobfile.Schema())) },
			says: "Print the JSON Schema of the job file; \"$schema\" in a job names its place.",
		},
		{
			name: "completion", operands: "bash|zsh|fish", least: 1, most: 1, do: completionCommand,
			says: "Print a script with which a shell completes commands and options.",
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

//go:embed help.txt
var conventions string

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
	return t.String() + conventions
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
		at, o := slices.IndexFunc(c.options, func(o option) bool { return o.name == name }), option{}
		if at >= 0 {
			o = c.options[at]
		}
		switch {
		case at < 0 || !strings.HasPrefix(arg, "--"):
			_, known := vocabulary(c)
			return fail("no option %q%s; usage: %s", arg, fault.DidYouMean(arg, known...), c.usage())
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

// vocabulary lists the names of commands, and their options, each once.
func vocabulary(of ...command) (names, options []string) {
	for _, c := range of {
		names = append(names, c.name)
		for _, o := range c.options {
			options = append(options, "--"+o.name)
		}
	}
	slices.Sort(options)
	return names, slices.Compact(options)
}

// completionCommand prints the script with which a shell completes words.
func completionCommand(c call) error {
	script, known := map[string]string{
		"bash": "complete -o default -W %q groovewright\n", "fish": "complete -c groovewright -a %q\n",
		"zsh": "autoload -U +X bashcompinit && bashcompinit\ncomplete -o default -W %q groovewright\n",
	}[c.operands[0]]
	if !known {
		return usageError(fmt.Sprintf("completion: %q: expected bash, zsh or fish", c.operands[0]))
	}
	names, options := vocabulary(commands()...)
	return show(c.stdout, fmt.Sprintf(script, strings.Join(append(names, options...), " ")))
}
