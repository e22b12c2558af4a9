package jobfile

import (
	"cmp"
	"errors"
	"slices"
	"strings"

	"example.com/groovewright/fraction"
)

// The kinds of fault; each [Fault] wraps one of them.
var (
	ErrSyntax  = errors.New("the file is not a job in JSON")
	ErrTwice   = errors.New("a field stands twice")
	ErrUnknown = errors.New("no such field")
	ErrMissing = errors.New("a field is missing")
	ErrType    = errors.New("the wrong kind of value")
	ErrValue   = errors.New("a value that cannot be")
	ErrRoom    = errors.New("measurements that do not fit together")
)

// Fault is one thing wrong with a job file. Its text reads
//
//	runs[1].heights[2].top: "63 1/0": zero denominator; expected a length such as "63 1/4"
type Fault struct {
	Path    string // complete, in the file's own spelling; empty for the file as a whole
	Value   string // as the file has it, texts in quotes; empty where nothing stands
	Problem string
	Want    string // what would be accepted instead
	Kind    error  // one of the kinds above
	Err     error  // the cause, if another package found it

	offset int64 // where it stands in the file
}

// Error returns the fault in one line.
func (f Fault) Error() string {
	var b strings.Builder
	for _, part := range []string{f.Path, f.Value} {
		if part != "" {
			b.WriteString(part)
			b.WriteString(": ")
		}
	}
	b.WriteString(f.Problem)
	if f.Want != "" {
		b.WriteString("; expected ")
		b.WriteString(f.Want)
	}
	return b.String()
}

// Unwrap returns the kind of the fault and its cause.
func (f Fault) Unwrap() []error {
	if f.Err == nil {
		return []error{f.Kind}
	}
	return []error{f.Kind, f.Err}
}

// Faults is everything that is wrong with a job file, in the order of the file.
type Faults []Fault

// Error returns one line for each fault.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the faults one by one.
func (fs Faults) Unwrap() []error {
	all := make([]error, len(fs))
	for i, f := range fs {
		all[i] = f
	}
	return all
}

// err returns the faults in the order of the file, or nil if there are none.
func (fs Faults) err() error {
	if len(fs) == 0 {
		return nil
	}
	slices.SortStableFunc(fs, func(a, b Fault) int { return cmp.Compare(a.offset, b.offset) })
	return fs
}

// reason returns why another package refused a value, without the value itself
// where that is known: the fault shows it already.
func reason(err error) string {
	var parse *fraction.ParseError
	if errors.As(err, &parse) {
		return parse.Reason
	}
	return err.Error()
}
