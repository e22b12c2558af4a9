package jobfile_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

// schemaOf returns the schema as decoded JSON.
func schemaOf(t *testing.T) map[string]any {
	t.Helper()
	var schema map[string]any
	if err := json.Unmarshal(jobfile.Schema(), &schema); err != nil {
		t.Fatal(err)
	}
	return schema
}

// checker validates JSON values by the words of JSON Schema 2020-12 that the schema of a job uses.
type checker struct{ root map[string]any }

// resolve follows a reference into the definitions.
func (c checker) resolve(schema map[string]any) map[string]any {
	name, ok := schema["$ref"].(string)
	if !ok {
		return schema
	}
	return c.root["$defs"].(map[string]any)[strings.TrimPrefix(name, "#/$defs/")].(map[string]any)
}

// faults returns what is wrong with a value by a schema.
func (c checker) faults(schema map[string]any, v any, path string) (all []string) {
	say := func(format string, args ...any) { all = append(all, path+": "+fmt.Sprintf(format, args...)) }
	for word, want := range c.resolve(schema) {
		switch word {
		case "type":
			if types, ok := want.([]any); ok && !slices.ContainsFunc(types, func(t any) bool { return isType(v, t) }) || !ok && !isType(v, want) {
				say("%v is no %v", v, want)
			}
		case "enum":
			if !slices.Contains(want.([]any), v) {
				say("%v is none of %v", v, want)
			}
		case "minimum":
			if n, ok := v.(float64); ok && n < want.(float64) {
				say("%v is below %v", n, want)
			}
		case "minLength":
			if s, ok := v.(string); ok && float64(utf8.RuneCountInString(s)) < want.(float64) {
				say("%q is too short", s)
			}
		case "pattern":
			if s, ok := v.(string); ok && !regexp.MustCompile(want.(string)).MatchString(s) {
				say("%q does not match %s", s, want)
			}
		case "anyOf", "oneOf":
			fit := 0
			for _, s := range want.([]any) {
				if len(c.faults(s.(map[string]any), v, path)) == 0 {
					fit++
				}
			}
			if fit == 0 || word == "oneOf" && fit > 1 {
				say("%d of %s fit", fit, word)
			}
		case "required":
			for _, name := range want.([]any) {
				if o, ok := v.(map[string]any); ok && o[name.(string)] == nil {
					say("no %s", name)
				}
			}
		case "properties":
			o, _ := v.(map[string]any)
			for name, value := range o {
				if s, ok := want.(map[string]any)[name].(map[string]any); ok {
					all = append(all, c.faults(s, value, path+"."+name)...)
				} else {
					say("unknown field %s", name) // additionalProperties is false everywhere
				}
			}
		case "items":
			list, _ := v.([]any)
			for i, item := range list {
				all = append(all, c.faults(want.(map[string]any), item, fmt.Sprintf("%s[%d]", path, i))...)
			}
		case "minItems", "maxItems":
			if list, ok := v.([]any); ok && (word == "minItems") == (float64(len(list)) < want.(float64)) && float64(len(list)) != want.(float64) {
				say("%d items", len(list))
			}
		case "additionalProperties", "description", "default", "examples", "title", "$schema", "$defs":
		default:
			say("the checker does not know the word %s", word)
		}
	}
	return all
}

func isType(v, t any) bool {
	switch v := v.(type) {
	case string:
		return t == "string"
	case bool:
		return t == "boolean"
	case float64:
		return t == "number" || t == "integer" && v == float64(int64(v))
	case []any:
		return t == "array"
	case map[string]any:
		return t == "object"
	}
	return false
}

// What is not stated has no word.
func TestSchemaHasNoEmptyWords(t *testing.T) {
	if text := string(jobfile.Schema()); strings.Contains(text, ` ""`) || !strings.Contains(text, `"circular"`) {
		t.Error(text)
	}
}

func TestSchemaTakesTheExamples(t *testing.T) {
	schema := schemaOf(t)
	for name, file := range examples(t) {
		j, err := jobfile.Read(strings.NewReader(file))
		if err != nil {
			t.Fatal(err)
		}
		again, _ := written(t, j)
		for _, text := range []string{file, again} {
			var v any
			if err := json.Unmarshal([]byte(text), &v); err != nil {
				t.Fatal(err)
			}
			if faults := (checker{schema}).faults(schema, v, ""); len(faults) > 0 {
				t.Errorf("%s: %s\n%s", name, strings.Join(faults, "\n"), text)
			}
		}
	}
}

// What the schema refuses, Read refuses too, and at the same place.
func TestSchemaRefuses(t *testing.T) {
	schema := schemaOf(t)
	for _, row := range []struct{ old, new, path string }{
		{`"title"`, `"titel"`, ""},
		{`"63 1/4"`, `63.25`, ".runs[0].heights[1].top"},
		{`"name": "north", `, ``, ".runs[0]"},
		{`"covered"`, `"hidden"`, ".runs[1].right.kind"},
		{`"count": 4`, `"count": 4.5`, ".stock[0].count"},
		{`"24.98"`, `"-1"`, ".stock[0].price"},
		{ownProfile, `"no such board"`, ".profile"},
		{`["20","60"]`, `["20"]`, ".runs[0].openings[1].outline[2]"},
		{`"width": "2 1/4", `, ``, ".runs[0].openings[0]"},
		{`"prominence": 5`, `"prominence": -5`, ".runs[0].left.prominence"},
	} {
		broken := strings.Replace(sound, row.old, row.new, 1)
		if broken == sound {
			t.Fatalf("the sound job has no %s", row.old)
		}
		var v any
		if err := json.Unmarshal([]byte(broken), &v); err != nil {
			t.Fatal(err)
		}
		faults := checker{schema}.faults(schema, v, "")
		if !slices.ContainsFunc(faults, func(f string) bool { return strings.HasPrefix(f, row.path+": ") }) {
			t.Errorf("%s: %q, want a fault at %q", row.new, faults, row.path)
		}
		if _, err := jobfile.Read(strings.NewReader(broken)); err == nil {
			t.Errorf("%s: Read takes it", row.new)
		}
	}
}

// The schema states what an absent field stands for, as the contract of the job file has it.
func TestSchemaStatesDefaults(t *testing.T) {
	c := checker{schemaOf(t)}
	for path, want := range map[string]any{
		"tape": "1/16", "scribe": "1/4", "saw.kerf": "1/8", "gaps.top": "0", "gaps.window": "0",
		"priorities.exposed_end": 8.0, "priorities.outside_corner": 4.0, "priorities.box_side": 0.0, "priorities.box_clear": "1",
	} {
		schema := c.root
		for name := range strings.SplitSeq(path, ".") {
			schema, _ = c.resolve(schema)["properties"].(map[string]any)[name].(map[string]any)
		}
		if schema["default"] != want {
			t.Errorf("%s: %v, want %v by default", path, schema["default"], want)
		}
	}
}

// In every object that the schema has, the reader knows the same fields.
func TestSchemaAndReaderHaveTheSameFields(t *testing.T) {
	c := checker{schemaOf(t)}
	objects := 0
	var walk func(schema map[string]any, wrap func(string) string)
	walk = func(schema map[string]any, wrap func(string) string) {
		schema = c.resolve(schema)
		if variants, ok := schema["anyOf"].([]any); ok {
			for _, v := range variants {
				walk(v.(map[string]any), wrap)
			}
		}
		if items, ok := schema["items"].(map[string]any); ok {
			walk(items, func(s string) string { return wrap("[" + s + "]") })
		}
		properties, ok := schema["properties"].(map[string]any)
		if !ok {
			return
		}
		objects++
		file := wrap(`{"?": 0}`)
		_, err := jobfile.Read(strings.NewReader(file))
		i := slices.IndexFunc(fault.All(err), func(f *fault.Fault) bool { return errors.Is(f, jobfile.ErrUnknown) })
		if i < 0 {
			t.Fatalf("%s: %v", file, err)
		}
		read := strings.Split(strings.TrimPrefix(fault.All(err)[i].Want, "one of "), ", ")
		slices.Sort(read)
		if names := slices.Sorted(maps.Keys(properties)); !slices.Equal(names, read) {
			t.Errorf("%s: the schema has %q, the reader %q", file, names, read)
		}
		for name, s := range properties {
			walk(s.(map[string]any), func(s string) string { return wrap(`{"` + name + `": ` + s + `}`) })
		}
	}
	walk(c.root, func(s string) string { return s })
	if objects < 30 {
		t.Errorf("%d objects in the schema", objects)
	}
}

// The schema and the README state the limits by which Read refuses a job that is too fine.
func TestSchemaAndReadmeStateTheLimits(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	defs := schemaOf(t)["$defs"].(map[string]any)
	for _, row := range []struct{ old, new, object, field string }{
		{`"name": "north", "width": "60"`, `"name": "north", "width": "99999"`, "run", "width"},
		{`"outline": [["0","0"],["20","0"],["20","60"],["0","60"]]`, `"rise": "1", "width": "1025", "height": "60"`, "opening", "rise"},
	} {
		broken := strings.Replace(sound, row.old, row.new, 1)
		_, err := jobfile.Read(strings.NewReader(broken))
		faults := fault.All(err)
		if len(faults) == 0 || !strings.Contains(faults[0].Want, "at most") {
			t.Fatalf("%s: %v", row.new, err)
		}
		field := defs[row.object].(map[string]any)["properties"].(map[string]any)[row.field].(map[string]any)
		for _, text := range []string{field["description"].(string), string(readme)} {
			if text = strings.Join(strings.Fields(strings.ToLower(text)), " "); !strings.Contains(text, faults[0].Want) {
				t.Errorf("%s is nowhere in %.200s", faults[0].Want, text)
			}
		}
	}
	list := schemaOf(t)["properties"].(map[string]any)["plates"].(map[string]any)
	if most := fmt.Sprint(plan.MaxItems); fmt.Sprint(list["maxItems"]) != most || !strings.Contains(string(readme), most+" items") {
		t.Errorf("not everywhere %s items of a list: %v", most, list["maxItems"])
	}
}
