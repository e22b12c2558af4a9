package jobfile

import (
	"encoding"
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/wall"
)

// field is one field of an object: a row of the tables in tables.go.
type field struct {
	name, doc string
	index     int // of the field in its struct
	required  bool
}

// fieldsOf returns the fields of the object that a struct describes.
func fieldsOf(t reflect.Type) []field {
	if t == reflect.TypeFor[wall.Priorities]() {
		return priorityFields()
	}
	all := make([]field, t.NumField())
	for i := range all {
		tag := t.Field(i).Tag
		name, options, _ := strings.Cut(tag.Get("json"), ",")
		all[i] = field{name: name, doc: tag.Get("doc"), index: i, required: options == ""}
	}
	return all
}

// The types that the reader, the writer and the schema have rules of their own for.
var (
	lengthType = reflect.TypeFor[fraction.Length]()
	ratioType  = reflect.TypeFor[fraction.Ratio]()
	moneyType  = reflect.TypeFor[money.Amount]()
	numberType = reflect.TypeFor[finish.Number]()
	tapedType  = reflect.TypeFor[finish.Taped]()
	wordType   = reflect.TypeFor[encoding.TextUnmarshaler]()
)

// isEither reports whether a struct stands for one of two fields; see [either].
func isEither(t reflect.Type) bool {
	return t.Kind() == reflect.Struct && t.NumField() > 0 && t.Field(0).Type == reflect.TypeFor[either]()
}

// isWord reports whether a type is an enumeration.
func isWord(t reflect.Type) bool { return reflect.PointerTo(t).Implements(wordType) }

const wantLength = `a length in quotes, such as "63 1/4"`

// decoder turns nodes into values and collects what is wrong on the way; it never stops at the
// first fault.
type decoder struct {
	units  fraction.Unit // of a bare number
	faults []*fault.Fault
}

// fault records what is wrong at a path; its place and its value are looked up later.
func (d *decoder) fault(path fault.Path, cause error, want string) {
	d.faults = append(d.faults, &fault.Fault{Path: path, Cause: cause, Want: want})
}

// is reports whether n has the kind, and records a fault if it has another.
func (d *decoder) is(n *node, kind nodeKind, path fault.Path, want string) bool {
	if n.kind != kind {
		d.fault(path, &cause{ErrType, "this is " + n.kind.String(), nil}, want)
	}
	return n.kind == kind
}

// value reads n into v, which is settable. What is absent from an object stays as it was.
func (d *decoder) value(n *node, path fault.Path, v reflect.Value) {
	switch t := v.Type(); {
	case t == lengthType:
		if text, ok := d.length(n, path); ok {
			l, err := fraction.Parse(text, d.units)
			d.check(path, err, wantLength)
			v.Set(reflect.ValueOf(l))
		}
	case t == ratioType:
		if d.is(n, numberNode, path, wantOf(t)) {
			r, err := fraction.ParseRatio(n.text)
			d.check(path, err, wantOf(t))
			v.Set(reflect.ValueOf(r))
		}
	case t == moneyType:
		if d.is(n, stringNode, path, wantOf(t)) {
			a, err := money.Parse(n.text)
			d.check(path, err, wantOf(t))
			v.Set(reflect.ValueOf(a))
		}
	case t == tapedType:
		if text, ok := d.length(n, path); ok {
			v.SetString(text)
		}
	case t == numberType && n.kind == numberNode:
		v.SetString(n.text)
	case isEither(t):
		form := 2
		if n.kind == stringNode {
			form = 1
		}
		v.Field(0).SetInt(int64(form))
		d.value(n, path, v.Field(form))
	case isWord(t):
		if d.is(n, stringNode, path, wantOf(t)) {
			if v.Addr().Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(n.text)) != nil {
				d.fault(path, &cause{ErrValue, "no such word here", nil}, wantOf(t))
			}
		}
	default:
		d.plain(n, path, v)
	}
}

// plain reads the types that have no rule of their own.
func (d *decoder) plain(n *node, path fault.Path, v reflect.Value) {
	want := wantOf(v.Type())
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		d.value(n, path, v.Elem())
	case reflect.Struct:
		if d.is(n, objectNode, path, want) {
			d.object(n, path, v)
		}
	case reflect.Slice:
		if d.is(n, listNode, path, want) {
			v.Set(reflect.MakeSlice(v.Type(), len(n.items), len(n.items)))
			d.items(n, path, v)
		}
	case reflect.Array:
		switch {
		case !d.is(n, listNode, path, want):
		case len(n.items) != v.Len():
			d.fault(path, &cause{ErrValue, fmt.Sprintf("a list of %d", len(n.items)), nil}, want)
		default:
			d.items(n, path, v)
		}
	case reflect.String:
		if d.is(n, stringNode, path, want) {
			v.SetString(n.text)
		}
	case reflect.Bool:
		v.SetBool(d.is(n, boolNode, path, want) && n.text == "true")
	case reflect.Int:
		if d.is(n, numberNode, path, want) {
			i, err := strconv.ParseInt(n.text, 10, 32)
			if err != nil {
				d.fault(path, &cause{ErrValue, "not a whole number, or too great", nil}, want)
			}
			v.SetInt(i)
		}
	default:
		panic(fmt.Sprintf("jobfile: no rule to read a %s", v.Type()))
	}
}

// check records what another package refuses about a value.
func (d *decoder) check(path fault.Path, err error, want string) {
	if err != nil {
		d.fault(path, because(ErrValue, err), want)
	}
}

// length returns the text of a length. A JSON number is refused: most programs would round it
// on the way.
func (d *decoder) length(n *node, path fault.Path) (string, bool) {
	if n.kind == numberNode {
		d.fault(path, &cause{ErrType, "a JSON number is no exact length", nil}, fmt.Sprintf("a length in quotes, such as %q", n.text))
		return "", false
	}
	return n.text, d.is(n, stringNode, path, wantLength)
}

// items reads the items of a list into a slice or an array of as many.
func (d *decoder) items(n *node, path fault.Path, v reflect.Value) {
	for i, item := range n.items {
		d.value(item, step(path, fault.Step{Index: i}), v.Index(i))
	}
}

// object reads the fields of an object into a struct.
func (d *decoder) object(n *node, path fault.Path, v reflect.Value) {
	fields := fieldsOf(v.Type())
	known := make(map[string]bool, len(fields))
	for _, f := range fields {
		known[f.name] = true
		at := step(path, fault.Step{Name: f.name})
		if value := n.index[f.name]; value != nil {
			d.value(value, at, v.Field(f.index))
		} else if f.required {
			d.fault(at, ErrMissing, f.want(v.Type()))
		}
	}
	for _, m := range n.members {
		if !known[m.key] {
			d.faults = append(d.faults, &fault.Fault{Path: step(path, fault.Step{Name: named(m.key)}), Cause: ErrUnknown,
				Want: "one of " + namesOf(v.Type()), Line: m.value.line, Column: m.value.column})
		}
	}
}

// want says what is accepted as the field of a struct, and what it is for.
func (f *field) want(t reflect.Type) string {
	want := wantOf(t.Field(f.index).Type)
	if what, _, _ := strings.Cut(f.doc, "."); what != "" {
		want += ": " + strings.ToLower(what[:1]) + what[1:]
	}
	return want
}

// namesOf lists the fields of an object.
func namesOf(t reflect.Type) string {
	var names []string
	for _, f := range fieldsOf(t) {
		names = append(names, f.name)
	}
	return strings.Join(names, ", ")
}
