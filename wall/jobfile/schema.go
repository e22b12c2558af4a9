package jobfile

import (
	"bytes"
	"encoding"
	"encoding/json"
	"reflect"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// Schema returns the JSON Schema, draft 2020-12, of the job file, for editors and other programs.
// It is made from the tables that [Read] reads by. What it takes can still be no job: it does not
// know how a length is written, nor what measurements fit together.
func Schema() []byte {
	s := schema{defs: map[string]any{}}
	job := s.object(reflect.TypeFor[file](), reflect.ValueOf(fileOf(plan.NewJob(fraction.Inch, groove.Profile{}))))
	job["$schema"], job["$defs"] = "https://json-schema.org/draft/2020-12/schema", s.defs
	job["title"] = "A job of groovewright: one room to be panelled"
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(job); err != nil {
		panic(err) // maps of texts and numbers can be written
	}
	return b.Bytes()
}

// schema gathers the definitions of the objects on the way.
type schema struct{ defs map[string]any }

// of returns the schema of a type. The value is what stands for an absent one, if there is such.
func (s schema) of(t reflect.Type, otherwise reflect.Value) map[string]any {
	switch {
	case t == lengthType, t == tapedType:
		s.defs["length"] = map[string]any{"type": "string", "minLength": 1, "examples": []string{"63 1/4", `5' 3 1/4"`, "1606.5 mm"},
			"description": "A length as a tape reads, exact; a bare number is in the units of the job."}
		return ref("length")
	case t == ratioType:
		return map[string]any{"type": "number", "minimum": 0}
	case t == moneyType:
		return map[string]any{"type": "string", "pattern": `^[0-9]{1,9}(\.[0-9]{1,9})?$`}
	case t == numberType:
		return map[string]any{"type": []string{"number", "string"}}
	case isEither(t):
		text := s.of(t.Field(1).Type, reflect.Value{})
		if t == reflect.TypeFor[profile]() {
			text["enum"] = readyNames()
		}
		return map[string]any{"anyOf": []any{text, s.of(t.Field(2).Type, reflect.Value{})}}
	case isWord(t):
		return map[string]any{"enum": wordsOf(t)}
	}
	switch t.Kind() {
	case reflect.Pointer:
		return s.of(t.Elem(), reflect.Value{})
	case reflect.Struct:
		name := t.Name()
		if _, ok := s.defs[name]; !ok {
			s.defs[name] = nil // it may lie within itself
			s.defs[name] = s.object(t, otherwise)
		}
		return ref(name)
	case reflect.Slice:
		return map[string]any{"type": "array", "items": s.of(t.Elem(), reflect.Value{})}
	case reflect.Array:
		return map[string]any{"type": "array", "items": s.of(t.Elem(), reflect.Value{}), "minItems": t.Len(), "maxItems": t.Len()}
	case reflect.Bool:
		return map[string]any{"type": "boolean"}
	case reflect.Int:
		return map[string]any{"type": "integer", "minimum": 0}
	}
	return map[string]any{"type": "string"}
}

// ref returns the schema that stands among the definitions.
func ref(name string) map[string]any { return map[string]any{"$ref": "#/$defs/" + name} }

// object returns the schema of an object; otherwise is what an absent one stands for, if known.
func (s schema) object(t reflect.Type, otherwise reflect.Value) map[string]any {
	properties, required := map[string]any{}, []string{}
	for _, f := range fieldsOf(t) {
		def := reflect.Value{}
		if otherwise.IsValid() {
			def = otherwise.Field(f.index)
		}
		p := s.of(t.Field(f.index).Type, def)
		if f.doc != "" {
			p["description"] = f.doc
		}
		if f.required {
			required = append(required, f.name)
		} else if def.IsValid() && (def.Type() == lengthType || def.Type() == ratioType) {
			p["default"] = json.RawMessage((&encoder{}).value(def, def, nil).text)
		}
		properties[f.name] = p
	}
	o := map[string]any{"type": "object", "properties": properties, "required": required, "additionalProperties": false}
	either := func(fields ...string) any { return map[string]any{"required": fields} }
	switch t {
	case reflect.TypeFor[opening]():
		o["oneOf"] = []any{either("left", "bottom", "width", "height"), either("left", "bottom", "outline"), either("points")}
	case reflect.TypeFor[height]():
		o["oneOf"] = []any{either("at", "top"), either("taped")}
	}
	return o
}

// wordsOf returns the words of an enumeration.
func wordsOf(t reflect.Type) (words []string) {
	for v := reflect.New(t); ; {
		text, err := v.Interface().(encoding.TextMarshaler).MarshalText()
		if err != nil || v.Interface().(encoding.TextUnmarshaler).UnmarshalText(text) != nil {
			return words
		}
		words = append(words, string(text))
		if e := v.Elem(); e.CanInt() {
			e.SetInt(e.Int() + 1)
		} else {
			e.SetUint(e.Uint() + 1)
		}
	}
}

// readyNames returns the names of the ready profiles.
func readyNames() []string {
	return each(groove.Builtin(), func(p groove.Profile) string { return p.Name })
}

// wantOf says what is accepted as a value of a type.
func wantOf(t reflect.Type) string {
	switch {
	case t == lengthType, t == tapedType:
		return wantLength
	case t == ratioType:
		return "a plain number, such as 2.5"
	case t == moneyType:
		return `an amount in quotes, such as "24.98"`
	case t == numberType:
		return `a number, such as 0.1 or "24.98"`
	case isEither(t):
		return wantOf(t.Field(1).Type) + ", or " + wantOf(t.Field(2).Type)
	case isWord(t):
		return "one of " + strings.Join(wordsOf(t), ", ")
	case t == reflect.TypeFor[pair]():
		return `two lengths, such as ["1 1/2", "0"]`
	}
	switch t.Kind() {
	case reflect.Pointer:
		return wantOf(t.Elem())
	case reflect.Struct:
		return "an object with the fields " + namesOf(t)
	case reflect.Slice:
		return "a list"
	case reflect.Bool:
		return "true or false"
	case reflect.Int:
		return "a whole number"
	}
	return "a text in quotes"
}

// priorityFields are the fields of the priorities, which their own package describes.
func priorityFields() []field {
	t := reflect.TypeFor[wall.Priorities]()
	described := map[string]string{}
	for _, p := range wall.PriorityList() {
		described[p.Name] = p.Says
	}
	all := make([]field, t.NumField())
	for i := range all {
		name, _ := fault.Of(t.Field(i).Name).MarshalText() // it writes any name
		all[i] = field{name: string(name), doc: described[string(name)], index: i}
	}
	return all
}
