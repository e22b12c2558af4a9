package jobfile

import (
	"bytes"
	"encoding/json"
	"maps"
	"reflect"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// Schema returns the JSON Schema, draft 2020-12, of the job file, for editors and other programs.
// It is made from the tables that [Read] reads by. What it takes can still be no job: it does not
// know how a length is written, nor what measurements fit together.
func Schema() []byte {
	s := schema{defs: jsonMap{"length": jsonMap{"type": "string", "minLength": 1, "examples": []string{"63 1/4", `5' 3 1/4"`, "1606.5 mm"},
		"description": "A length as a tape reads, exact; a bare number is in the units of the job."}}}
	job := s.object(reflect.TypeFor[file](), reflect.ValueOf(defaults(fraction.Inch)))
	job["$schema"], job["$defs"] = "https://json-schema.org/draft/2020-12/schema", s.defs
	job["title"] = "A job of groovewright: one room to be panelled"
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	_ = e.Encode(job) // maps of texts and numbers can be written
	return b.Bytes()
}

// schema gathers the definitions of the objects on the way.
type schema struct{ defs jsonMap }

// of returns the schema of a type. The value is what stands for an absent one, if there is such.
func (s schema) of(t reflect.Type, otherwise reflect.Value) jsonMap {
	if scalar, ok := scalarOf(t); ok {
		return maps.Clone(scalar.schema)
	}
	none := reflect.Value{}
	switch {
	case isEither(t):
		text := s.of(t.Field(1).Type, none)
		if t == reflect.TypeFor[profile]() {
			text["enum"] = readyNames()
		}
		return jsonMap{"anyOf": []any{text, s.of(t.Field(2).Type, none)}}
	case t.Kind() == reflect.Pointer:
		return s.of(t.Elem(), none)
	case t.Kind() == reflect.Struct:
		if _, ok := s.defs[t.Name()]; !ok {
			s.defs[t.Name()] = s.object(t, otherwise)
		}
		return ref(t.Name())
	}
	list := jsonMap{"type": "array", "items": s.of(t.Elem(), none), "maxItems": plan.MaxItems}
	if t.Kind() == reflect.Array {
		list["minItems"], list["maxItems"] = t.Len(), t.Len()
	}
	return list
}

// ref returns the schema that stands among the definitions.
func ref(name string) jsonMap { return jsonMap{"$ref": "#/$defs/" + name} }

// object returns the schema of an object; otherwise is what an absent one stands for, if known.
func (s schema) object(t reflect.Type, otherwise reflect.Value) jsonMap {
	properties, required := jsonMap{}, []string{}
	for _, f := range fieldsOf(t) {
		def := reflect.Value{}
		if otherwise.IsValid() {
			def = otherwise.Field(f.index)
		}
		p := s.of(t.Field(f.index).Type, def)
		if f.doc != "" {
			p["description"] = f.doc
		}
		if f.most > 0 {
			p["maxItems"] = f.most
		}
		if f.required {
			required = append(required, f.name)
		} else if def.IsValid() && (def.Type() == lengthType || def.Type() == ratioType) {
			p["default"] = json.RawMessage((&encoder{}).value(def, def, nil).text)
		}
		properties[f.name] = p
	}
	o := jsonMap{"type": "object", "properties": properties, "required": required, "additionalProperties": false}
	either := func(fields ...string) any { return jsonMap{"required": fields} }
	switch t {
	case reflect.TypeFor[opening]():
		o["oneOf"] = []any{either("left", "bottom", "width", "height"), either("left", "bottom", "outline"), either("points")}
	case reflect.TypeFor[height]():
		o["oneOf"] = []any{either("at", "top"), either("taped")}
	}
	return o
}

// readyNames returns the names of the builtin profiles.
func readyNames() []string {
	return each(groove.Builtin(), func(p groove.Profile) string { return p.Name })
}
