package jobfile

import (
	"encoding"
	"errors"
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/money"
)

// scalar is how values of a type stand in a file where they have no parts.
type scalar struct {
	kind, also nodeKind // the kinds of JSON values that are accepted; it is written as the first
	want       string   // what a fault says of them
	schema     map[string]any
	read       func(text string, units fraction.Unit) (any, error)
	write      func(v any, units fraction.Unit) string
}

// jsonMap is a part of a JSON Schema.
type jsonMap = map[string]any

var (
	lengthType, ratioType = reflect.TypeFor[fraction.Length](), reflect.TypeFor[fraction.Ratio]()

	length = scalar{stringNode, stringNode, `a length in quotes, such as "63 1/4"`, ref("length"),
		func(text string, units fraction.Unit) (any, error) { return fraction.Parse(text, units) },
		func(v any, units fraction.Unit) string { // bare, in the units of the job
			return strings.TrimSuffix(fraction.Tape{Unit: units}.Format(v.(fraction.Length)), " "+units.String())
		}}
	scalars = map[reflect.Type]scalar{
		lengthType:                       length,
		reflect.TypeFor[finish.Taped]():  {stringNode, stringNode, length.want, length.schema, asIs, written},
		reflect.TypeFor[finish.Number](): {stringNode, numberNode, `a number, such as 0.1 or "24.98"`, jsonMap{"type": []string{"number", "string"}}, asIs, written},
		ratioType: {numberNode, numberNode, "a plain number, such as 2.5", jsonMap{"type": "number", "minimum": 0},
			func(text string, _ fraction.Unit) (any, error) { return fraction.ParseRatio(text) },
			func(v any, _ fraction.Unit) string {
				r := v.(fraction.Ratio).Rat()
				places, _ := r.FloatPrec()
				return r.FloatString(places)
			}},
		reflect.TypeFor[money.Amount](): {stringNode, stringNode, `an amount in quotes, such as "24.98"`, jsonMap{"type": "string", "pattern": `^[0-9]{1,9}(\.[0-9]{1,9})?$`},
			func(text string, _ fraction.Unit) (any, error) { return money.Parse(text) }, written},
	}
	kinds = map[reflect.Kind]scalar{
		reflect.String: {stringNode, stringNode, "a text in quotes", jsonMap{"type": "string"}, asIs, written},
		reflect.Bool: {boolNode, boolNode, "true or false", jsonMap{"type": "boolean"},
			func(text string, _ fraction.Unit) (any, error) { return text == "true", nil }, written},
		reflect.Int: {numberNode, numberNode, "a whole number", jsonMap{"type": "integer", "minimum": 0},
			func(text string, _ fraction.Unit) (any, error) {
				i, err := strconv.ParseInt(text, 10, 32)
				if err != nil {
					err = errors.New("not a whole number, or too great")
				}
				return int(i), err
			}, written},
	}
)

func asIs(text string, _ fraction.Unit) (any, error) { return text, nil }

func written(v any, _ fraction.Unit) string { return fmt.Sprint(v) }

// scalarOf returns how values of a type stand in a file, and false where they have parts.
func scalarOf(t reflect.Type) (s scalar, ok bool) {
	if s, ok = scalars[t]; ok {
		return s, true
	}
	if words := wordsOf(t); words != nil {
		return scalar{stringNode, stringNode, "one of " + strings.Join(words, ", "), jsonMap{"enum": words},
			func(text string, _ fraction.Unit) (any, error) {
				v := reflect.New(t)
				if text == "" || v.Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(text)) != nil {
					return v.Elem().Interface(), errors.New("no such word here" + fault.DidYouMean(text, words...))
				}
				return v.Elem().Interface(), nil
			}, written}, true
	}
	s, ok = kinds[t.Kind()]
	return s, ok
}

// wordsOf returns the words of an enumeration, nil for any other type. What is not stated has none.
func wordsOf(t reflect.Type) (words []string) {
	v := reflect.New(t)
	marshal, _ := v.Interface().(encoding.TextMarshaler)
	unmarshal, ok := v.Interface().(encoding.TextUnmarshaler)
	for e := v.Elem(); ok; {
		text, err := marshal.MarshalText()
		if err != nil || unmarshal.UnmarshalText(text) != nil {
			break
		}
		if len(text) > 0 {
			words = append(words, string(text))
		}
		e.SetUint(e.Uint() + 1)
	}
	return words
}

// isEither reports whether a struct stands for one of two fields; see [either].
func isEither(t reflect.Type) bool {
	return t.Kind() == reflect.Struct && t.NumField() > 0 && t.Field(0).Type == reflect.TypeFor[either]()
}

// wantOf says what is accepted as a value of a type.
func wantOf(t reflect.Type) string {
	if s, ok := scalarOf(t); ok {
		return s.want
	}
	switch {
	case isEither(t):
		return wantOf(t.Field(1).Type) + ", or " + wantOf(t.Field(2).Type)
	case t.Kind() == reflect.Pointer:
		return wantOf(t.Elem())
	case t.Kind() == reflect.Struct:
		return "an object with the fields " + namesOf(t)
	case t == reflect.TypeFor[pair]():
		return `two lengths, such as ["1 1/2", "0"]`
	}
	return "a list"
}
