package jobfile

import (
	"cmp"
	"errors"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// The kinds of fault; each *fault.Fault of this package has one of them as its cause.
var (
	ErrSyntax  = errors.New("the file is not JSON")
	ErrTwice   = errors.New("this field stands twice")
	ErrUnknown = errors.New("no such field")
	ErrMissing = errors.New("missing")
	ErrType    = errors.New("the wrong kind of value")
	ErrValue   = errors.New("no such value here")
	// ErrRoom is the kind of what plan.Job.Validate refuses: values that make no job together.
	ErrRoom = errors.New("not accepted")
)

// cause is why a value cannot be used, of one of the kinds above.
type cause struct {
	kind error
	text string
	err  error // what another package found, nil if none did
}

func (c *cause) Error() string { return c.text }

// Unwrap returns the kind and the cause below it.
func (c *cause) Unwrap() []error {
	if c.err == nil {
		return []error{c.kind}
	}
	return []error{c.kind, c.err}
}

// because returns the cause of another package's error without the value, which the fault shows.
func because(kind, err error) error {
	var parse *fraction.ParseError
	if errors.As(err, &parse) {
		return &cause{kind, parse.Reason, err}
	}
	if err == nil {
		return kind
	}
	return &cause{kind, err.Error(), err}
}

// err returns the faults as one error in the order of the file, with their places and values.
func (c *converter) err() error {
	for _, f := range c.faults {
		if f.Line > 0 {
			continue
		}
		n, exact := c.root.find(f.Path)
		f.Line, f.Column, f.Value = n.line, n.column, ""
		if exact {
			f.Value = n.shown()
		}
	}
	sort.SliceStable(c.faults, func(i, j int) bool {
		a, b := c.faults[i], c.faults[j]
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column)) < 0
	})
	return errors.Join(each(c.faults, func(f *fault.Fault) error { return f })...)
}
