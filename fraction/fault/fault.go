// Package fault has the one kind of error by which every package says which of the values it was
// given cannot be used.
//
// A [Fault] names the place by a structured [Path], shows the value, says what was wanted, and
// wraps the cause. A package that checks a part knows only its own steps; whoever holds the part
// adds the steps before it with [Under]:
//
//	Runs[1].Heights[2].Top: "63 1/0": zero denominator; want a length such as "63 1/4"
//
// Several faults are joined by errors.Join; errors.Is and errors.As reach through, and [All] lists
// them.
package fault

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Fault is one value that cannot be used.
type Fault struct {
	Path  Path   // where it stands, in the caller's own spelling; empty for the whole
	Value string // what stands there, as the caller wrote it; empty where nothing does
	Want  string // what would be accepted
	Cause error  // why it cannot be used; nil where Want says it all

	// Line and Column say where it stands in a file, counted from 1; 0 where there is no file.
	Line, Column int
}

// Error returns the fault in one line, with its place in the file if it has one:
//
//	runs[1].heights[2].top (line 12, column 40): "63 1/0": zero denominator; want a length
func (f *Fault) Error() string {
	var parts []string
	if at := f.place(); at != "" {
		parts = append(parts, at)
	}
	if f.Value != "" {
		parts = append(parts, f.Value)
	}
	if f.Cause != nil {
		parts = append(parts, f.Cause.Error())
	}
	if f.Want == "" {
		return strings.Join(parts, ": ")
	}
	if f.Cause == nil {
		return strings.Join(append(parts, "want "+f.Want), ": ")
	}
	return strings.Join(parts, ": ") + "; want " + f.Want
}

// place says where the value stands: by its path, its line and column, or both.
func (f *Fault) place() string {
	path := f.Path.String()
	if f.Line == 0 {
		return path
	}
	at := fmt.Sprintf("line %d, column %d", f.Line, f.Column)
	if path == "" {
		return at
	}
	return path + " (" + at + ")"
}

// Unwrap returns the cause.
func (f *Fault) Unwrap() error { return f.Cause }

// Path leads to a value: the steps from the whole to the part.
type Path []Step

// Step is one step of a path: the field of that name, or where Name is empty the item at Index of a
// list.
type Step struct {
	Name  string
	Index int
}

// Of returns the path of these steps: an int is an item's index, all else a field's name as fmt
// prints it.
func Of(steps ...any) Path {
	path := make(Path, len(steps))
	for i, s := range steps {
		switch s := s.(type) {
		case int:
			path[i] = Step{Index: s}
		default:
			path[i] = Step{Name: fmt.Sprint(s)}
		}
	}
	return path
}

// String writes the path as Go and JSON do, such as Runs[1].Heights[2].Top.
func (p Path) String() string {
	var b strings.Builder
	for i, s := range p {
		switch {
		case s.Name == "":
			b.WriteString("[" + strconv.Itoa(s.Index) + "]")
		case i > 0:
			b.WriteString("." + s.Name)
		default:
			b.WriteString(s.Name)
		}
	}
	return b.String()
}

// MarshalText writes the path as JSON names its fields: runs[1].left_phase for Runs[1].LeftPhase.
func (p Path) MarshalText() ([]byte, error) {
	named := slices.Clone(p)
	for i := range named {
		named[i].Name = snake(named[i].Name)
	}
	return []byte(named.String()), nil
}

// UnmarshalText reads what MarshalText writes. It takes any text: what is no index is a name.
func (p *Path) UnmarshalText(text []byte) error {
	*p = nil
	for part := range strings.FieldsFuncSeq(string(text), func(c rune) bool { return c == '.' || c == '[' }) {
		number, isIndex := strings.CutSuffix(part, "]")
		if i, err := strconv.Atoi(number); isIndex && err == nil {
			*p = append(*p, Step{Index: i})
		} else {
			*p = append(*p, Step{Name: camel(part)})
		}
	}
	return nil
}

// snake writes LeftPhase as left_phase.
func snake(name string) string {
	var b strings.Builder
	for i, c := range name {
		if unicode.IsUpper(c) && i > 0 {
			b.WriteByte('_')
		}
		b.WriteRune(unicode.ToLower(c))
	}
	return b.String()
}

// camel writes left_phase as LeftPhase.
func camel(name string) string {
	var b strings.Builder
	for word := range strings.SplitSeq(name, "_") {
		first, size := utf8.DecodeRuneInString(word)
		if size > 0 {
			b.WriteRune(unicode.ToUpper(first))
		}
		b.WriteString(word[size:])
	}
	return b.String()
}

// Under returns err with the steps put before the path of each of its faults. An error that holds
// no fault becomes the cause of one with these steps as its path; nil stays nil.
func Under(err error, steps ...any) error {
	if err == nil {
		return nil
	}
	prefix := Of(steps...)
	faults := All(err)
	if len(faults) == 0 {
		return &Fault{Path: prefix, Cause: err}
	}
	under := make([]error, len(faults))
	for i, f := range faults {
		moved := *f
		moved.Path = slices.Concat(prefix, f.Path)
		under[i] = &moved
	}
	return errors.Join(under...)
}

// List collects faults in the order in which they are found. The zero List is empty.
type List struct {
	Cause error // of each fault that Add appends
	all   []error
}

// Add appends a fault of a value, with its path and what would be accepted; nil is no value. A
// text is shown in quotes.
func (l *List) Add(value any, want string, steps ...any) {
	f := &Fault{Path: Of(steps...), Want: want, Cause: l.Cause}
	if text, ok := value.(string); ok {
		f.Value = strconv.Quote(text)
	} else if value != nil {
		f.Value = fmt.Sprint(value)
	}
	l.all = append(l.all, f)
}

// Join appends the faults of err, with the steps put before their paths; nil adds nothing.
func (l *List) Join(err error, steps ...any) {
	if err != nil {
		l.all = append(l.all, Under(err, steps...))
	}
}

// Err returns the faults joined, or nil where there are none.
func (l *List) Err() error { return errors.Join(l.all...) }

// All returns every fault that err joins or wraps, in their order. The causes of a fault are not
// looked into.
func All(err error) []*Fault {
	switch e := err.(type) {
	case nil:
		return nil
	case *Fault:
		return []*Fault{e}
	case interface{ Unwrap() []error }:
		var all []*Fault
		for _, part := range e.Unwrap() {
			all = append(all, All(part)...)
		}
		return all
	}
	return All(errors.Unwrap(err))
}
