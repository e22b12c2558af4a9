package jobfile

import (
	"fmt"
	"reflect"
	"strings"

	"example.com/groovewright/finish"
)

// finish reads the materials. Their fields are texts of many kinds which the
// package finish reads itself; here they are only taken from the file, each
// under the name in its json tag, so that a new field needs no line here.
func (r *reader) finish(n *node) finish.Materials {
	var m finish.Materials
	r.tagged(n, reflect.ValueOf(&m).Elem(), "what is bought and how it is used")
	return m
}

// tagged reads n into a value of strings, whole numbers, truths, lists and
// structs of these. A type of any other kind is a mistake in this program.
func (r *reader) tagged(n *node, into reflect.Value, what string) {
	switch into.Kind() {
	case reflect.Struct:
		o := r.object(n, what)
		for i := range into.NumField() {
			name, options, _ := strings.Cut(into.Type().Field(i).Tag.Get("json"), ",")
			field := o.get(name)
			if field != nil {
				r.tagged(field, into.Field(i), name)
			} else if options == "" { // no omitzero: it must be there
				o.missing(name, "a value")
			}
		}
		o.done()
	case reflect.Slice:
		items := r.list(n, "a list of "+what)
		into.Set(reflect.MakeSlice(into.Type(), len(items), len(items)))
		for i, item := range items {
			r.tagged(item, into.Index(i), "one of "+what)
		}
	case reflect.String:
		if into.Type() == reflect.TypeFor[finish.Number]() && n.kind == numberNode {
			into.SetString(n.text)
			return
		}
		if into.Type() == reflect.TypeFor[finish.Taped]() && n.kind == numberNode {
			r.length(n) // a length is refused as everywhere else
			return
		}
		into.SetString(r.text(n))
	case reflect.Int:
		into.SetInt(int64(r.integer(n, 0, maxCount)))
	case reflect.Bool:
		into.SetBool(r.yes(n))
	default:
		panic(fmt.Sprintf("job: no rule to read a %s", into.Type()))
	}
}
