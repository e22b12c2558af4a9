package finish_test

import (
	"encoding"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
)

// leaves calls found with the path and the text of each default in a value of [finish.Materials]:
// what is filled in, and the enumerations.
func leaves(path string, v reflect.Value, found func(path, text string)) {
	_, word := v.Interface().(encoding.TextMarshaler)
	switch {
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			leaves(strings.TrimPrefix(path+"."+v.Type().Field(i).Name, "."), v.Field(i), found)
		}
	case v.Kind() == reflect.Bool || v.IsZero() && !word: // no default
	case v.Kind() == reflect.Slice:
		var all []string
		for i := range v.Len() {
			item := v.Index(i)
			for _, field := range []string{"Name", "Depth"} {
				if item.Kind() == reflect.Struct && item.FieldByName(field).IsValid() {
					item = item.FieldByName(field)
				}
			}
			all = append(all, fmt.Sprint(item))
		}
		found(path, strings.Join(all, ", "))
	case v.Kind() == reflect.Uint8 && v.IsZero():
		found(path, strings.TrimSpace(fmt.Sprint(v)+" (the zero value)"))
	default:
		found(path, fmt.Sprint(v))
	}
}

// TestOriginOfEveryDefault writes every default in both systems of units with its status and its
// source, and so the other figures, the waits, and the words of the stages and the cautions. Each
// has an origin, and no origin is of nothing.
func TestOriginOfEveryDefault(t *testing.T) {
	defaults, figures, times, steps, warnings := finish.Origins()
	metric := map[string]string{}
	leaves("", reflect.ValueOf(finish.Defaults(fraction.Millimetre)), func(path, text string) { metric[path] = text })
	var b strings.Builder
	b.WriteString("# Every default, its status and its source\n\nRewritten by `go test ./finish -run Origin -update`.\n")
	heading := func(title, head string) {
		fmt.Fprintf(&b, "\n## %s\n\n| %s | status | source |\n|%s --- | --- |\n", title, head, strings.Repeat(" --- |", strings.Count(head, "|")+1))
	}
	heading("Defaults", "field | in inches | metric")
	used := map[string]bool{}
	leaves("", reflect.ValueOf(finish.Defaults(fraction.Inch)), func(path, text string) {
		var of *finish.Origin
		for i, o := range defaults {
			if (path == o.Of || strings.HasPrefix(path, o.Of+".")) && (of == nil || len(o.Of) > len(of.Of)) {
				of = &defaults[i]
			}
		}
		if of == nil || metric[path] == "" {
			t.Errorf("%s: no origin, or no metric value %q", path, metric[path])
			return
		}
		used[of.Of] = true
		fmt.Fprintf(&b, "| %s | %s | %s | %s | %s |\n", path, text, metric[path], of.Status, of.Source)
	})
	for _, o := range defaults {
		if !used[o.Of] {
			t.Errorf("%s: an origin of no default", o.Of)
		}
	}
	heading("Other figures", "of | value")
	for _, o := range figures {
		fmt.Fprintf(&b, "| %s | %s | %s | %s |\n", o.Of, o.Value, o.Status, o.Source)
	}
	heading("Times", "of | least | most")
	for w, o := range times {
		least, most, _ := finish.Wait(w).Range()
		fmt.Fprintf(&b, "| %s | %s | %s | %s | %s |\n", o.Of, hours(least), hours(most), o.Status, o.Source)
	}
	for _, words := range []struct {
		title   string
		origins []finish.Origin
		word    func(int) fmt.Stringer
	}{
		{"Words of the order of work", steps, func(i int) fmt.Stringer { return finish.Stage(i) }},
		{"Words of the cautions", warnings, func(i int) fmt.Stringer { return finish.Caution(i) }},
	} {
		heading(words.title, "of")
		for i, o := range words.origins {
			if o.Of != words.word(i).String() {
				t.Errorf("%s: origin %q of %q", words.title, o.Of, words.word(i))
			}
			fmt.Fprintf(&b, "| %s | %s | %s |\n", o.Of, o.Status, o.Source)
		}
		if next := words.word(len(words.origins)).String(); !strings.HasPrefix(next, "Value") && !strings.ContainsAny(next, "()0123456789") {
			t.Errorf("%s: %q has no origin", words.title, next)
		}
	}
	if least, _, _ := finish.Wait(len(times)).Range(); least != 0 {
		t.Error("a wait has no origin")
	}
	fractiontest.Golden(t, "testdata/defaults.md", b.String())
}

// hours is a time in minutes or hours.
func hours(minutes int) string {
	if minutes%60 != 0 {
		return fmt.Sprint(minutes, " min")
	}
	return fmt.Sprint(minutes/60, " h")
}
