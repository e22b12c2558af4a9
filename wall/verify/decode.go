package verify

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// What is read is bounded, so that no file makes the checker slow.
const (
	// MaxBytes is the most bytes of a job or a plan that are read.
	MaxBytes  = 16 << 20
	mostItems = 4096 // of one list
)

// decoder takes a JSON file apart into a struct. The JSON name of a field is its Go name in snake
// case. A list for a struct gives its fields in order, as a point is [x, y], and a text its name.
// Numbers are rats, 0 where the file has none, or else nil pointers to rats; read reads one, unless
// the tag `is` of its field says that it is "money", or a "weight" and may be a plain JSON number.
type decoder struct {
	read  func(written string) (rat, error)
	fault func(path, got, want string)
}

var (
	ratType  = reflect.TypeFor[rat]()
	jsonType = map[reflect.Kind]string{
		reflect.Struct: "an object", reflect.Map: "an object", reflect.Slice: "a list",
		reflect.String: "a text", reflect.Bool: "true or false", reflect.Int: "a whole number",
	}
)

// decode fills a struct with what a file says; ok is false if the file says nothing.
func (d decoder) decode(data []byte, into any) (ok bool) {
	if len(data) > MaxBytes {
		d.fault("", fmt.Sprint(len(data), " bytes"), fmt.Sprint("at most ", MaxBytes))
		return false
	}
	var whole json.RawMessage // unmarshalled first because a Decoder stops after one value
	if err := json.Unmarshal(data, &whole); err != nil {
		d.fault("", err.Error(), "JSON")
		return false
	}
	var tree any
	decoder := json.NewDecoder(bytes.NewReader(data))
	decoder.UseNumber()
	_ = decoder.Decode(&tree) // it is sound JSON
	d.value("", tree, reflect.ValueOf(into).Elem(), "")
	return true
}

// value fills v with what stands at a path of the file; node is nil where nothing does.
func (d decoder) value(path string, node any, v reflect.Value, is string) {
	if v.Type() == ratType {
		n, err := d.rat(node, is)
		if err != nil {
			d.fault(path, fmt.Sprintf("%.80v", node), err.Error())
		}
		v.Set(reflect.ValueOf(n))
		return
	}
	object, _ := node.(map[string]any)
	list, isList := node.([]any)
	if len(list) > mostItems {
		d.fault(path, fmt.Sprint(len(list), " items"), fmt.Sprint("at most ", mostItems))
		list = nil
	}
	ok := node == nil
	switch v.Kind() {
	case reflect.Pointer:
		if ok = true; node != nil {
			v.Set(reflect.New(v.Type().Elem()))
			d.value(path, node, v.Elem(), is)
		}
	case reflect.Struct:
		name, isName := node.(string)
		if isName = isName && v.FieldByName("Name").IsValid(); isName {
			v.FieldByName("Name").SetString(name)
		}
		ok = ok || isName || object != nil || isList && len(list) == v.NumField()
		for i := range v.NumField() {
			switch field := v.Type().Field(i); {
			case !field.IsExported() || isName && field.Name == "Name":
			case isList && i < len(list):
				d.value(fmt.Sprintf("%s[%d]", path, i), list[i], v.Field(i), field.Tag.Get("is"))
			default:
				name := snake(field.Name)
				d.value(strings.TrimPrefix(path+"."+name, "."), object[name], v.Field(i), field.Tag.Get("is"))
			}
		}
	case reflect.Slice:
		if ok = ok || isList; isList {
			v.Set(reflect.MakeSlice(v.Type(), len(list), len(list)))
		}
		for i, item := range list {
			d.value(fmt.Sprintf("%s[%d]", path, i), item, v.Index(i), is)
		}
	case reflect.Map: // of rats
		v.Set(reflect.MakeMap(v.Type()))
		ok = ok || object != nil
		for _, name := range slices.Sorted(maps.Keys(object)) {
			n := reflect.New(v.Type().Elem()).Elem()
			d.value(path+"."+name, object[name], n, is)
			v.SetMapIndex(reflect.ValueOf(name), n)
		}
	case reflect.String, reflect.Bool:
		if n := reflect.ValueOf(node); node != nil && n.Type() == v.Type() {
			ok = true
			v.Set(n)
		}
	case reflect.Int:
		n, isNumber := node.(json.Number)
		i, err := strconv.ParseInt(string(n), 10, 32)
		ok = ok || isNumber && err == nil
		v.SetInt(i)
	}
	if !ok {
		d.fault(path, fmt.Sprintf("%.40v", node), jsonType[v.Kind()])
	}
}

// rat reads a number.
func (d decoder) rat(node any, is string) (rat, error) {
	switch written := node.(type) {
	case nil:
		return zero(), nil
	case json.Number:
		if is == "weight" {
			return readDecimal(string(written))
		}
	case string:
		if is == "money" {
			return readDecimal(written)
		}
		return d.read(written)
	}
	return zero(), errors.New("a number in quotes")
}

// snake turns LeftPhase into left_phase.
func snake(name string) string {
	var out strings.Builder
	for i, r := range name {
		if unicode.IsUpper(r) && i > 0 {
			out.WriteByte('_')
		}
		out.WriteRune(unicode.ToLower(r))
	}
	return out.String()
}
