package jobfile

import (
	"math"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// encoder turns values into JSON text and collects what cannot be written.
type encoder struct {
	units  fraction.Unit
	faults fault.List
}

// item is a JSON value before it is laid out in lines: a text, or parts between brackets.
type item struct {
	label string // the name before the value of a field
	text  string
	ends  string // "[]" or "{}"; empty for a text
	parts []item
}

// value writes v, without the optional fields that are as in otherwise, the meaning of absent ones.
func (e *encoder) value(v, otherwise reflect.Value, path fault.Path) item {
	t := v.Type()
	if s, ok := scalarOf(t); ok {
		text := s.write(v.Interface(), e.units)
		if back, err := s.read(text, e.units); err != nil || t == ratioType && back != v.Interface() {
			e.faults.Join(&fault.Fault{Path: path, Value: text, Cause: because(ErrValue, err), Want: "a value that a file can have: " + s.want})
		}
		if s.kind == stringNode { // a valid job has only texts that Go and JSON quote alike
			text = strconv.Quote(text)
		}
		return item{text: text}
	}
	switch t.Kind() {
	case reflect.Pointer:
		return e.value(v.Elem(), reflect.Zero(t.Elem()), path)
	case reflect.Struct:
		if isEither(t) {
			form := int(v.Field(0).Int())
			return e.value(v.Field(form), otherwise.Field(form), path)
		}
		return e.object(v, otherwise, path)
	}
	list := item{ends: "[]"}
	for i := range v.Len() {
		list.parts = append(list.parts, e.value(v.Index(i), reflect.Zero(t.Elem()), under(path, i)))
	}
	return list
}

// object writes a struct as the object that it describes.
func (e *encoder) object(v, otherwise reflect.Value, path fault.Path) item {
	o := item{ends: "{}"}
	for _, f := range fieldsOf(v.Type()) {
		value, def := v.Field(f.index), otherwise.Field(f.index)
		empty := value.Kind() == reflect.Slice && value.Len() == 0
		if f.required || !empty && !reflect.DeepEqual(value.Interface(), def.Interface()) {
			part := e.value(value, def, under(path, f.name))
			part.label = strconv.Quote(f.name) + ": "
			o.parts = append(o.parts, part)
		}
	}
	return o
}

// maxLine is how long a line of a written file may get, if the value on it has parts.
const maxLine = 120

// layout returns the value as text; lines after the first are indented by indent. A value stands on
// one line where it fits into room characters.
func (it item) layout(indent string, room int) string {
	if it.ends == "" {
		return it.text
	}
	line := it.joined(", ", "", "", func(p item) string { return p.layout("", math.MaxInt) })
	if len(it.parts) == 0 || utf8.RuneCountInString(line) <= room {
		return line
	}
	inner := indent + "  "
	return it.joined(",\n"+inner, "\n"+inner, "\n"+indent, func(p item) string {
		return p.layout(inner, maxLine-utf8.RuneCountInString(inner+p.label))
	})
}

// joined returns the parts between their brackets, with what stands between them, before and after.
func (it item) joined(between, before, after string, text func(item) string) string {
	parts := each(it.parts, func(p item) string { return p.label + text(p) })
	return it.ends[:1] + before + strings.Join(parts, between) + after + it.ends[1:]
}
