// Command groovewright plans grooved or beaded panelling on the walls of a room: from taped
// measurements to a layout, a numbered cut list, marked sheets and a shopping list. "groovewright
// help" says how to use it; the model and the words are those of the packages fraction, groove,
// cutout, wall, nest and finish.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"syscall"
	"unicode"
	"unicode/utf8"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// The exit codes.
const (
	done   = 0
	failed = 1 // the job cannot be done as given
	wrong  = 2 // the input is wrong: the job file or the command line
)

// spareMemory is how many bytes the program takes after Ctrl-C before it looks for what it no longer
// needs: a book takes about as many, and people wait for it.
const spareMemory = 256 << 20

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, func() { // the first Ctrl-C ends the search, a second one the program
		stop()
		var now runtime.MemStats
		runtime.ReadMemStats(&now)
		debug.SetMemoryLimit(int64(now.Sys) + spareMemory)
		debug.SetGCPercent(-1)
	})
	code := execute(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

// execute runs the command, writes what went wrong to stderr, one line each beginning with the
// program's name, and returns the exit code. No panic escapes it: one would be a fault of this
// program, and is said to be.
func execute(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) (code int) {
	defer func() {
		if caught := recover(); caught != nil {
			complain(stderr, fmt.Sprintf("internal error: %v\nthis is a fault of the program, not of your job; nothing was planned", caught))
			code = failed
		}
	}()
	err := run(ctx, args, stdin, stdout, stderr)
	if err == nil {
		return done
	}
	complain(stderr, err.Error())
	if errors.As(err, new(*fraction.OverflowError)) {
		complain(stderr, "the lengths of this job are too fine together to be calculated exactly: give sloping outlines, leans and taped points to a coarser mark, such as 1/8")
	}
	switch {
	case errors.As(err, new(usageError)):
		complain(stderr, `"groovewright help" says how it is used`)
		return wrong
	case errors.As(err, new(*fault.Fault)), errors.As(err, new(inputError)):
		return wrong
	}
	return failed
}

// complain writes a message, each of its lines after the program's name.
func complain(stderr io.Writer, message string) {
	for line := range strings.Lines(message) {
		fmt.Fprintf(stderr, "groovewright: %s\n", printable(strings.TrimSuffix(line, "\n")))
	}
}

// usageError is a wrong command line.
type usageError string

func (e usageError) Error() string { return string(e) }

// inputError says that a file, or standard input, cannot be read at all.
type inputError struct{ err error }

func (e inputError) Error() string { return "cannot read the input: " + e.err.Error() }
func (e inputError) Unwrap() error { return e.err }

// run does what the arguments say. Results go to stdout, and only when they are complete; progress
// goes to stderr.
func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) error {
	if len(args) == 0 {
		return usageError("no command given")
	}
	name, rest := args[0], args[1:]
	if slices.Contains([]string{"help", "-h", "-help", "--help"}, name) {
		if len(rest) == 0 {
			return show(stdout, helpText(commands()...))
		}
		name, rest = rest[0], []string{"--help"}
	}
	if built, ok := debug.ReadBuildInfo(); name == "--version" && ok {
		return show(stdout, fmt.Sprintf("groovewright %s, %s\n", built.Main.Version, built.GoVersion))
	}
	i := slices.IndexFunc(commands(), func(c command) bool { return c.name == name })
	if i < 0 {
		known, _ := vocabulary(commands()...)
		return usageError(fmt.Sprintf("%q: no such command%s", name, fault.DidYouMean(name, known...)))
	}
	c := commands()[i]
	opts, operands, err := parseArgs(c, rest)
	switch {
	case err != nil:
		return err
	case opts.has("help"):
		return show(stdout, helpText(c))
	case len(operands) < c.least || len(operands) > c.most:
		return usageError(fmt.Sprintf("%s: %d operands given; usage: %s", c.name, len(operands), c.usage()))
	}
	return c.do(call{ctx: ctx, options: opts, operands: operands, stdin: stdin, stdout: stdout, stderr: stderr})
}

// show writes a whole result at once.
func show(stdout io.Writer, text string) error {
	if _, err := io.WriteString(stdout, printable(text)); err != nil {
		return fmt.Errorf("cannot write the result: %w", err)
	}
	return nil
}

// printable returns a text without what could command a terminal, which names of files may have.
func printable(text string) string {
	return strings.Map(func(c rune) rune {
		if c != '\n' && unicode.IsControl(c) || c >= '\u202a' && c <= '\u202e' {
			return utf8.RuneError
		}
		return c
	}, text)
}
