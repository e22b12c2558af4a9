package jobfile

import (
	"fmt"
	"reflect"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/plan"
)

// field is one field of an object: a row of the tables in tables.go.
type field struct {
	name, doc string
	index     int // of the field in its struct
	most      int // items of a list, where the room has a limit of its own
	required  bool
}

// fieldsOf returns the fields of the object that a struct describes.
func fieldsOf(t reflect.Type) []field {
	all := make([]field, t.NumField())
	for i := range all {
		tag := t.Field(i).Tag
		name, options, _ := strings.Cut(tag.Get("json"), ",")
		all[i] = field{name, tag.Get("doc"), i, mostItems[t.Field(i).Name], options == "" && tag.Get("file") != "optional"}
	}
	return all
}

// namesOf lists the fields of an object.
func namesOf(t reflect.Type) string {
	return strings.Join(each(fieldsOf(t), func(f field) string { return f.name }), ", ")
}

// decoder turns nodes into values and collects all that is wrong on the way.
type decoder struct {
	units  fraction.Unit // of a bare number
	faults []*fault.Fault
}

// fault records what is wrong at a path; its place and its value are looked up later.
func (d *decoder) fault(path fault.Path, cause error, want string) {
	d.faults = append(d.faults, &fault.Fault{Path: path, Cause: cause, Want: want})
}

// is reports whether n has one of two kinds, and records a fault if it has another.
func (d *decoder) is(n *node, kind, also nodeKind, path fault.Path, t reflect.Type) bool {
	if n.kind == kind || n.kind == also {
		return true
	}
	d.fault(path, &cause{ErrType, "this is " + n.kind.String(), nil}, wantOf(t))
	return false
}

// value reads n into v, which is settable. What is absent from an object stays as it was.
func (d *decoder) value(n *node, path fault.Path, v reflect.Value) {
	t := v.Type()
	if s, ok := scalarOf(t); ok {
		if n.kind == numberNode && s.want == length.want { // most programs would round it on the way
			d.fault(path, &cause{ErrType, "a JSON number is no exact length", nil}, fmt.Sprintf("a length in quotes, such as %q", n.text))
		} else if d.is(n, s.kind, s.also, path, t) {
			x, err := s.read(n.text, d.units)
			if err != nil {
				d.fault(path, because(ErrValue, err), s.want)
			}
			v.Set(reflect.ValueOf(x).Convert(t))
		}
		return
	}
	switch {
	case isEither(t):
		form := 2
		if n.kind == stringNode {
			form = 1
		}
		v.Field(0).SetInt(int64(form))
		d.value(n, path, v.Field(form))
	case t.Kind() == reflect.Pointer:
		v.Set(reflect.New(t.Elem()))
		d.value(n, path, v.Elem())
	case t.Kind() == reflect.Struct:
		if d.is(n, objectNode, objectNode, path, t) {
			d.object(n, path, v)
		}
	case !d.is(n, listNode, listNode, path, t):
	case t.Kind() == reflect.Slice && len(n.items) > plan.MaxItems, t.Kind() == reflect.Array && len(n.items) != t.Len():
		d.fault(path, &cause{ErrValue, fmt.Sprintf("a list of %d", len(n.items)), nil}, wantOf(t))
	default:
		if t.Kind() == reflect.Slice {
			v.Set(reflect.MakeSlice(t, len(n.items), len(n.items)))
		}
		for i, item := range n.items {
			d.value(item, under(path, i), v.Index(i))
		}
	}
}

// under returns the path with steps after it.
func under(path fault.Path, steps ...any) fault.Path {
	return append(path[:len(path):len(path)], fault.Of(steps...)...)
}

// object reads the fields of an object into a struct.
func (d *decoder) object(n *node, path fault.Path, v reflect.Value) {
	known := map[string]bool{}
	for _, f := range fieldsOf(v.Type()) {
		known[f.name] = true
		if value := n.fields[f.name]; value != nil {
			d.value(value, under(path, f.name), v.Field(f.index))
		} else if f.required {
			want := wantOf(v.Type().Field(f.index).Type)
			if what, _, _ := strings.Cut(f.doc, "."); what != "" {
				want += ": " + strings.ToLower(what[:1]) + what[1:]
			}
			d.fault(under(path, f.name), ErrMissing, want)
		}
	}
	for key, value := range n.fields {
		if !known[key] {
			near := fault.DidYouMean(key, each(fieldsOf(v.Type()), func(f field) string { return f.name })...)
			d.faults = append(d.faults, &fault.Fault{Path: under(path, named(key)), Cause: &cause{ErrUnknown, ErrUnknown.Error() + near, nil},
				Want: "one of " + namesOf(v.Type()), Line: value.line, Column: value.column})
		}
	}
}
