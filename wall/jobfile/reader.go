package jobfile

import (
	"encoding"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
)

// wantLength is what a fault says of every length.
const wantLength = `a length such as "63 1/4"`

// A reader turns nodes into values and collects what is wrong on the way; it
// never stops at the first fault.
type reader struct {
	units  fraction.Unit   // of a bare number
	mark   fraction.Length // of the tape, for lengths that a fault shows
	faults Faults
}

// fault records what is wrong with a node.
func (r *reader) fault(n *node, kind error, problem, want string) {
	r.faults = append(r.faults, Fault{Path: n.path, Value: n.quoted(), Problem: problem, Want: want, Kind: kind, offset: n.offset})
}

// room records measurements that do not fit together; n is the one to look at
// first. Lengths among the arguments are shown as the job's tape reads.
func (r *reader) room(n *node, want, format string, args ...any) {
	for i, arg := range args {
		if x, ok := arg.(fraction.Length); ok {
			args[i] = fraction.Tape{Mark: r.mark, Unit: r.units}.Format(x)
		}
	}
	r.fault(n, ErrRoom, fmt.Sprintf(format, args...), want)
}

// is reports whether n has the kind, and records a fault if it has another.
func (r *reader) is(n *node, kind nodeKind, want string) bool {
	if n.kind == kind {
		return true
	}
	f := Fault{Path: n.path, Problem: "this is " + n.kind.String(), Want: want, Kind: ErrType, offset: n.offset}
	if n.scalar() {
		f.Value = n.quoted()
	}
	r.faults = append(r.faults, f)
	return false
}

// length reads an exact length; a bare number takes the job's units.
func (r *reader) length(n *node) fraction.Length {
	if n.kind == numberNode {
		r.fault(n, ErrType, "a JSON number is no exact length", fmt.Sprintf("a length in quotes, such as %q", n.text))
		return fraction.Length{}
	}
	if !r.is(n, stringNode, wantLength) {
		return fraction.Length{}
	}
	x, err := fraction.Parse(n.text, r.units)
	if err != nil {
		r.faults = append(r.faults, Fault{
			Path: n.path, Value: n.quoted(), Problem: reason(err), Want: wantLength, Kind: ErrValue, Err: err, offset: n.offset,
		})
	}
	return x
}

// positive reads a length above zero.
func (r *reader) positive(n *node) fraction.Length {
	before := len(r.faults)
	x := r.length(n)
	if len(r.faults) == before && x.Sign() <= 0 {
		r.fault(n, ErrValue, "not above zero", "a length above zero, such as \"48\"")
	}
	return x
}

// nonNegative reads a length that may be zero.
func (r *reader) nonNegative(n *node) fraction.Length {
	before := len(r.faults)
	x := r.length(n)
	if len(r.faults) == before && x.Sign() < 0 {
		r.fault(n, ErrValue, "below zero", `a length of "0" or more`)
	}
	return x
}

// weight reads a prominence or a weight: a plain JSON number, zero or more.
func (r *reader) weight(n *node) fraction.Ratio {
	const want = "a plain number of 0 or more, such as 2.5"
	if n.kind != numberNode {
		r.is(n, numberNode, want)
		return fraction.Ratio{}
	}
	x, err := fraction.ParseRatio(n.text)
	switch {
	case err != nil:
		r.faults = append(r.faults, Fault{
			Path: n.path, Value: n.quoted(), Problem: reason(err), Want: want, Kind: ErrValue, Err: err, offset: n.offset,
		})
	case x.Sign() < 0:
		r.fault(n, ErrValue, "below zero", want)
	}
	return x
}

// integer reads a whole number from least to most.
func (r *reader) integer(n *node, least, most int) int {
	want := fmt.Sprintf("a whole number from %d to %d", least, most)
	if !r.is(n, numberNode, want) {
		return least
	}
	i, err := strconv.Atoi(n.text)
	if err != nil || i < least || i > most {
		r.fault(n, ErrValue, "out of range or not whole", want)
		return least
	}
	return i
}

// decimal reads an amount of money or a quantity written as a decimal string.
func (r *reader) decimal(n *node) decimal.Decimal {
	const want = `a decimal in quotes of 0 or more, such as "24.98"`
	if !r.is(n, stringNode, want) {
		return decimal.Decimal{}
	}
	if !plainDecimal(n.text) {
		r.fault(n, ErrValue, "not a decimal number", want)
		return decimal.Decimal{}
	}
	d, err := decimal.NewFromString(n.text)
	if err != nil {
		r.fault(n, ErrValue, "not a decimal number", want)
	}
	return d
}

// plainDecimal reports whether s is digits, at most one point, and not so many
// of them that arithmetic on it could take long. No sign, no exponent.
func plainDecimal(s string) bool {
	whole, part, point := strings.Cut(s, ".")
	return digits(whole, 9) && (!point || digits(part, 9))
}

// digits reports whether s is one to most decimal digits.
func digits(s string, most int) bool {
	if s == "" || len(s) > most {
		return false
	}
	return !strings.ContainsFunc(s, func(c rune) bool { return c < '0' || c > '9' })
}

// text reads a text that is to be shown in one line.
func (r *reader) text(n *node) string {
	if !r.is(n, stringNode, "a text in quotes") {
		return ""
	}
	if strings.ContainsFunc(n.text, hidden) {
		r.fault(n, ErrValue, "a line break or an invisible character in it", "one line of text that can be printed")
	}
	if len(n.text) > maxText {
		r.fault(n, ErrValue, fmt.Sprintf("longer than %d bytes", maxText), "a short text")
	}
	return n.text
}

// hidden reports whether a character cannot be printed or would turn the text
// around it. The joiners that some scripts need are let through.
func hidden(c rune) bool {
	return !unicode.IsPrint(c) && c != '\u200c' && c != '\u200d'
}

// maxText is the longest title or name, in bytes.
const maxText = 200

// yes reads true or false.
func (r *reader) yes(n *node) bool {
	return r.is(n, boolNode, "true or false") && n.text == "true"
}

// word reads one of the words that parse knows.
func word[T any](r *reader, n *node, want string, parse func(string) (T, bool)) T {
	var none T
	if !r.is(n, stringNode, want) {
		return none
	}
	v, ok := parse(n.text)
	if !ok {
		r.fault(n, ErrValue, "no such word here", want)
		return none
	}
	return v
}

// maxItems is how long a list may be; see [MaxBytes].
const maxItems = 2000

// list returns the items of a list.
func (r *reader) list(n *node, want string) []*node {
	if !r.is(n, listNode, want) {
		return nil
	}
	if len(n.items) > maxItems {
		r.fault(n, ErrValue, fmt.Sprintf("a list of %d", len(n.items)), fmt.Sprintf("at most %d of them", maxItems))
		return nil
	}
	return n.items
}

// An object reads the fields of one JSON object and knows which were asked for.
type object struct {
	r     *reader
	node  *node
	known []string
}

// object begins to read n; what says in a word what it describes. The result
// is usable even if n is no object: then every field is absent.
func (r *reader) object(n *node, what string) *object {
	if !r.is(n, objectNode, "an object that describes "+what) {
		return &object{r: r, node: &node{path: n.path, offset: n.offset, kind: n.kind}}
	}
	return &object{r: r, node: n}
}

// get returns a field, nil if it is absent.
func (o *object) get(key string) *node {
	o.known = append(o.known, key)
	return o.node.member(key)
}

// need returns a field that must be there, nil (and a fault) if it is not.
func (o *object) need(key, want string) *node {
	n := o.get(key)
	if n == nil {
		o.missing(key, want)
	}
	return n
}

// missing records that a field is absent, unless the whole object is no object.
func (o *object) missing(key, want string) {
	if o.node.kind == objectNode {
		o.r.faults = append(o.r.faults, Fault{
			Path: join(o.node.path, key), Problem: "missing", Want: want, Kind: ErrMissing, offset: o.node.offset,
		})
	}
}

// done reports the fields that nobody asked for.
func (o *object) done() {
	for _, m := range o.node.members {
		if !slices.Contains(o.known, m.key) {
			o.r.faults = append(o.r.faults, Fault{
				Path: m.value.path, Problem: "no such field", Want: "one of " + strings.Join(o.known, ", "), Kind: ErrUnknown, offset: m.value.offset,
			})
		}
	}
}

// read sets into from the field of that name, if it is there.
func read[T any](o *object, key string, into *T, as func(*node) T) {
	if n := o.get(key); n != nil {
		*into = as(n)
	}
}

// needed sets into from the field of that name, which must be there.
func needed[T any](o *object, key, want string, into *T, as func(*node) T) {
	if n := o.need(key, want); n != nil {
		*into = as(n)
	}
}

// named reads the word of an enumeration.
func named[T any, P interface {
	*T
	encoding.TextUnmarshaler
}](s string) (v T, ok bool) {
	err := P(&v).UnmarshalText([]byte(s))
	return v, err == nil
}
