package jobfile

import (
	"encoding"
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/money"
)

// encoder turns values into JSON text and collects what cannot be written.
type encoder struct {
	units  fraction.Unit
	faults []*fault.Fault
}

// item is a JSON value before it is laid out in lines: a text, or parts between brackets.
type item struct {
	text  string
	ends  string // "[]" or "{}"; empty for a text
	parts []part
}

// part is an item of a list, or a field of an object with its key.
type part struct {
	key string
	item
}

// value writes v. Fields that may be absent are left out where they are as in otherwise, which
// is what an absent field stands for.
func (e *encoder) value(v, otherwise reflect.Value, path fault.Path) item {
	switch t := v.Type(); {
	case t == lengthType:
		return e.length(v.Interface().(fraction.Length), path)
	case t == ratioType:
		r := v.Interface().(fraction.Ratio)
		places, _ := r.Rat().FloatPrec()
		text := r.Rat().FloatString(places)
		if back, err := fraction.ParseRatio(text); err != nil || back != r {
			e.refuse(path, r.String(), "a number of at most 100,000 that ends as a decimal")
		}
		return item{text: text}
	case t == moneyType:
		text := v.Interface().(money.Amount).String()
		if _, err := money.Parse(text); err != nil {
			e.refuse(path, text, wantOf(t))
		}
		return item{text: strconv.Quote(text)}
	case isEither(t):
		form := int(v.Field(0).Int())
		return e.value(v.Field(form), otherwise.Field(form), path)
	case isWord(t):
		text, err := v.Interface().(encoding.TextMarshaler).MarshalText()
		if err != nil {
			e.refuse(path, fmt.Sprint(v), wantOf(t))
		}
		return item{text: quote(string(text))}
	case t.Kind() == reflect.Pointer:
		return e.value(v.Elem(), reflect.Zero(t.Elem()), path)
	case t.Kind() == reflect.Struct:
		return e.object(v, otherwise, path)
	case t.Kind() == reflect.Slice || t.Kind() == reflect.Array:
		list := item{ends: "[]"}
		for i := range v.Len() {
			list.parts = append(list.parts, part{item: e.value(v.Index(i), reflect.Zero(t.Elem()), step(path, fault.Step{Index: i}))})
		}
		return list
	case t.Kind() == reflect.String:
		return item{text: quote(v.String())}
	}
	return item{text: fmt.Sprint(v)} // a truth or a whole number
}

// object writes a struct as the object that it describes.
func (e *encoder) object(v, otherwise reflect.Value, path fault.Path) item {
	o := item{ends: "{}"}
	for _, f := range fieldsOf(v.Type()) {
		value, def := v.Field(f.index), otherwise.Field(f.index)
		empty := value.Kind() == reflect.Slice && value.Len() == 0
		if f.required || !empty && !reflect.DeepEqual(value.Interface(), def.Interface()) {
			o.parts = append(o.parts, part{f.name, e.value(value, def, step(path, fault.Step{Name: f.name}))})
		}
	}
	return o
}

// length writes a length as a bare number in the units of the job.
func (e *encoder) length(l fraction.Length, path fault.Path) item {
	text := fraction.Tape{Unit: e.units}.Format(l)
	text = strings.TrimSuffix(text, " "+e.units.String())
	if back, err := fraction.Parse(text, e.units); err != nil || back != l {
		e.refuse(path, text, "a length that a file can have: at most 100,000 in, with a denominator of at most 1,000,000")
	}
	return item{text: quote(text)}
}

// refuse records a value that a file cannot have.
func (e *encoder) refuse(path fault.Path, value, want string) {
	e.faults = append(e.faults, &fault.Fault{Path: path, Value: value, Cause: ErrValue, Want: want})
}

// quote returns s as a JSON text.
func quote(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range s {
		switch {
		case c == '"' || c == '\\':
			b.WriteByte('\\')
			b.WriteRune(c)
		case c < ' ':
			fmt.Fprintf(&b, `\u%04x`, c)
		default:
			b.WriteRune(c)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// maxLine is how long a line of a written file may get, if the value on it has parts.
const maxLine = 120

// layout returns the value as text; lines after the first are indented by indent. A value
// stands on one line where it fits into room characters.
func (it item) layout(indent string, room int) string {
	if it.ends == "" {
		return it.text
	}
	if line := it.line(); len(it.parts) == 0 || utf8.RuneCountInString(line) <= room {
		return line
	}
	var b strings.Builder
	inner := indent + "  "
	b.WriteString(it.ends[:1])
	for i, p := range it.parts {
		if i > 0 {
			b.WriteByte(',')
		}
		label := p.label()
		b.WriteString("\n" + inner + label + p.layout(inner, maxLine-len(inner)-utf8.RuneCountInString(label)))
	}
	b.WriteString("\n" + indent + it.ends[1:])
	return b.String()
}

// line returns the value on one line.
func (it item) line() string {
	if it.ends == "" {
		return it.text
	}
	lines := make([]string, len(it.parts))
	for i, p := range it.parts {
		lines[i] = p.label() + p.line()
	}
	return it.ends[:1] + strings.Join(lines, ", ") + it.ends[1:]
}

// label returns what stands before a part.
func (p part) label() string {
	if p.key == "" {
		return ""
	}
	return quote(p.key) + ": "
}
