package groove_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"github.com/google/go-cmp/cmp"
)

var inch = fraction.MustParse

// repeat makes a profile of "flat 1 1/4, bead 1/4 1/16" and the like: kind, width and perhaps a depth after an @.
func repeat(t *testing.T, text string) groove.Profile {
	t.Helper()
	var p groove.Profile
	for part := range strings.SplitSeq(text, ", ") {
		var f groove.Feature
		kind, width, _ := strings.Cut(part, " ")
		width, depth, deep := strings.Cut(width, " @ ")
		if err := f.Kind.UnmarshalText([]byte(kind)); err != nil {
			t.Fatal(err)
		}
		f.Width = inch(width)
		if deep {
			f.Depth = inch(depth)
		}
		p.Features = append(p.Features, f)
	}
	return p
}

func TestValidate(t *testing.T) {
	flat := groove.Feature{Width: inch("1")}
	with := func(features ...groove.Feature) groove.Profile {
		return groove.Profile{Features: features, Thickness: inch("1/4")}
	}
	for _, test := range []struct {
		name    string
		profile groove.Profile
		paths   []string // of the faults, in order; none: valid
	}{
		{"one flat", with(flat), nil},
		{"no thickness known", groove.Profile{Features: []groove.Feature{{Kind: groove.Groove, Width: inch("1"), Depth: inch("9")}}}, nil},
		{"as deep as the sheet", with(groove.Feature{Kind: groove.Groove, Width: inch("1/8"), Depth: inch("1/4")}), nil},
		{"zero value", groove.Profile{}, []string{"features"}},
		{"zero width", with(flat, groove.Feature{}), []string{"features[1].width"}},
		{"negative width", with(groove.Feature{Width: inch("-1")}), []string{"features[0].width"}},
		{"unknown kind", with(groove.Feature{Kind: 3, Width: inch("1")}), []string{"features[0].kind"}},
		{"negative kind", with(groove.Feature{Kind: -1, Width: inch("1")}), []string{"features[0].kind"}},
		{"negative depth", with(groove.Feature{Kind: groove.Bead, Width: inch("1"), Depth: inch("-1/8")}), []string{"features[0].depth"}},
		{"deep flat", with(groove.Feature{Width: inch("1"), Depth: inch("1/8")}), []string{"features[0].depth"}},
		{"too deep", with(flat, groove.Feature{Kind: groove.Groove, Width: inch("1/8"), Depth: inch("5/16")}), []string{"features[1].depth"}},
		{"negative thickness", groove.Profile{Features: []groove.Feature{flat}, Thickness: inch("-1/4")}, []string{"thickness"}},
		{"too many", groove.Profile{Features: make([]groove.Feature, groove.MaxFeatures+1)}, []string{"features", "features[0].width"}},
		{"all at once", groove.Profile{Features: []groove.Feature{{Kind: 9, Width: inch("-1"), Depth: inch("-1")}}, Thickness: inch("-1")},
			[]string{"features[0].kind", "features[0].width", "features[0].depth", "thickness"}},
	} {
		err := test.profile.Validate()
		if test.paths == nil {
			if err != nil {
				t.Errorf("%s: %v", test.name, err)
			}
			continue
		}
		var faults groove.Faults
		if !errors.As(err, &faults) {
			t.Errorf("%s: err = %v, want Faults", test.name, err)
			continue
		}
		var paths []string
		for _, f := range faults {
			paths = append(paths, f.Path)
			if f.Reason == "" || !strings.Contains(err.Error(), f.Path+": ") {
				t.Errorf("%s: fault %+v in %v", test.name, f, err)
			}
		}
		if len(paths) > len(test.paths) && test.name == "too many" {
			paths = paths[:len(test.paths)] // one more for each of them
		}
		if diff := cmp.Diff(test.paths, paths); diff != "" {
			t.Errorf("%s: paths (-want +got)\n%s", test.name, diff)
		}
	}
}

func TestValidateReportsOverflow(t *testing.T) {
	p := groove.Profile{Features: []groove.Feature{{Width: fraction.Of(1, 1<<40)}, {Width: fraction.Of(1, 1<<40-1)}}}
	var overflow *fraction.OverflowError
	if err := p.Validate(); !errors.As(err, &overflow) {
		t.Errorf("Validate = %v, want a *fraction.OverflowError", err)
	}
}

func TestLines(t *testing.T) {
	for _, test := range []struct{ repeat, pitch, boundaries, seams string }{
		{"flat 1 1/4, bead 1/4", "1 1/2", "0 1 1/4", "0 1 1/4"},
		{"flat 1 5/8, groove 1/16, bead 1/4, groove 1/16", "2", "0 1 5/8 1 11/16 1 15/16", "0 1 5/8 1 11/16 1 15/16"},
		{"flat 2, flat 3, groove 1/4", "5 1/4", "0 2 5", "0 5"}, // two flats meet at 2: to be seen, but no shadow
		{"flat 2, flat 3", "5", "0 2", ""},                      // nowhere to hide
		{"flat 5", "5", "0", ""},                                // plain boards
		{"groove 1/4", "1/4", "0", "0"},                         // all grooves
		{"flat 94 mm, groove 6 mm", "3 119/127", "0 3 89/127", "0 3 89/127"},
	} {
		p := repeat(t, test.repeat)
		if got := p.Pitch().String(); got != test.pitch {
			t.Errorf("%s: pitch %s, want %s", test.repeat, got, test.pitch)
		}
		if got := join(p.Boundaries()); got != test.boundaries {
			t.Errorf("%s: boundaries %s, want %s", test.repeat, got, test.boundaries)
		}
		if got := join(p.SeamLines()); got != test.seams {
			t.Errorf("%s: seam lines %s, want %s", test.repeat, got, test.seams)
		}
	}
}

func join(lengths []fraction.Length) string {
	texts := make([]string, len(lengths))
	for i, l := range lengths {
		texts[i] = l.String()
	}
	return strings.Join(texts, " ")
}

func TestMirror(t *testing.T) {
	for _, test := range []struct {
		repeat, axis string // "" where there is none
	}{
		{"flat 1", "0"}, // every boundary, and every middle
		{"flat 1 1/4, bead 1/4", "5/8"},
		{"bead 1/4, flat 1 1/4", "1/8"},
		{"flat 1, bead 1, groove 1", ""},
		{"flat 1, bead 1/4, flat 1, groove 1/8", "1 1/8"}, // the middle of the bead; that of the groove is half a repeat on
		{"flat 1, flat 1", "0"},                           // a repeat that is two repeats has four axes
		{"flat 1, bead 1/4, flat 1, bead 1/4", "1/2"},
		{"flat 1, bead 1/4 @ 1/16, flat 1, bead 1/4 @ 1/8", "1 1/8"}, // the depth counts: not the middle of a flat, 1/2
		{"flat 1, bead 1/4 @ 1/16, flat 2, bead 1/4 @ 1/8", ""},
		{"flat 1, flat 2, flat 3", ""},
		{"flat 1, flat 2, flat 2", "1/2"},
		{"flat 2, flat 1, flat 2", "0"},
	} {
		axis, ok := repeat(t, test.repeat).Mirror()
		if ok != (test.axis != "") || ok && axis != inch(test.axis) {
			t.Errorf("%s: Mirror = %v, %t, want %q", test.repeat, axis, ok, test.axis)
		}
	}
}

func TestBoardsDoNotTurn(t *testing.T) {
	p := repeat(t, "flat 5, groove 1/4")
	if !p.Turns() {
		t.Error("a sheet with a symmetrical pattern turns")
	}
	p.Boards = true
	if _, ok := p.Mirror(); !ok || p.Turns() {
		t.Error("a board has a symmetrical pattern, but its tongue is on one side")
	}
	if repeat(t, "flat 1, bead 1, groove 1").Turns() {
		t.Error("a pattern without an axis does not turn")
	}
}

func TestDescribe(t *testing.T) {
	bead := repeat(t, "flat 1 1/4, bead 1/4")
	for _, test := range []struct {
		phase string
		keep  groove.Side
		want  string
	}{
		{"0", groove.KeepLeft, "whole bead"},
		{"0", groove.KeepRight, "whole flat"},
		{"1 1/4", groove.KeepLeft, "whole flat"},
		{"1 1/4", groove.KeepRight, "whole bead"},
		{"3/8", groove.KeepLeft, "flat cut to 3/8 of 1 1/4"},
		{"3/8", groove.KeepRight, "flat cut to 7/8 of 1 1/4"},
		{"1 5/16", groove.KeepRight, "bead cut to 3/16 of 1/4"},
		{"-1/16", groove.KeepLeft, "bead cut to 3/16 of 1/4"}, // any phase is taken modulo the pitch
		{"3", groove.KeepRight, "whole flat"},
	} {
		if got := bead.Describe(inch(test.phase), test.keep); got != test.want {
			t.Errorf("Describe(%s, %v) = %q, want %q", test.phase, test.keep, got, test.want)
		}
	}
}

func TestCutDistance(t *testing.T) {
	narrow := repeat(t, "flat 1 1/4, bead 1/4")
	wide := repeat(t, "flat 6, groove 1/4")
	wide.WideFlats = true
	for _, test := range []struct {
		name    string
		profile groove.Profile
		phase   string
		keep    groove.Side
		want    string
	}{
		{"on a boundary", narrow, "0", groove.KeepLeft, "0"},
		{"nearer to the left", narrow, "3/8", groove.KeepLeft, "3/8"},
		{"nearer to the right", narrow, "1", groove.KeepLeft, "1/4"},
		{"the side does not matter", narrow, "1", groove.KeepRight, "1/4"},
		{"through a bead", narrow, "1 5/16", groove.KeepLeft, "1/16"},
		{"wide: a sliver to the left", wide, "1", groove.KeepLeft, "2"},
		{"wide: all but a sliver to the right", wide, "1", groove.KeepRight, "0"},
		{"wide: half", wide, "3", groove.KeepLeft, "0"},
		{"wide: less than half to the right", wide, "4", groove.KeepRight, "1"},
		{"wide: on a boundary", wide, "6", groove.KeepRight, "0"},
		{"wide: through a groove", wide, "6 1/16", groove.KeepLeft, "1/16"},
	} {
		if got := test.profile.CutDistance(inch(test.phase), test.keep); got != inch(test.want) {
			t.Errorf("%s: CutDistance = %v, want %s", test.name, got, test.want)
		}
	}
}

func TestJSON(t *testing.T) {
	p := repeat(t, "flat 1 1/4, bead 1/4 @ 1/16, groove 1/8")
	p.Name, p.Thickness, p.WideFlats = "own", inch("1/4"), true
	text, err := json.Marshal(p)
	const want = `{"name":"own","features":[{"kind":"flat","width":"1 1/4"},{"kind":"bead","width":"1/4","depth":"1/16"},` +
		`{"kind":"groove","width":"1/8"}],"thickness":"1/4","wide_flats":true}`
	if err != nil || string(text) != want {
		t.Fatalf("Marshal = %s, %v, want %s", text, err, want)
	}
	var back groove.Profile
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(p, back, cmp.Comparer(func(a, b fraction.Length) bool { return a == b })); diff != "" {
		t.Errorf("read back (-want +got)\n%s", diff)
	}
	if err := json.Unmarshal([]byte(`{"features":[{"kind":"ridge","width":"1"}]}`), &back); err == nil || !strings.Contains(err.Error(), `"ridge"`) {
		t.Errorf("an unknown kind: %v", err)
	}
	if _, err := json.Marshal(groove.Feature{Kind: 7}); err == nil {
		t.Error("an unknown kind can be written")
	}
}

func TestSidesHaveNames(t *testing.T) {
	if groove.KeepLeft.String() != "keep left" || groove.KeepRight.String() != "keep right" {
		t.Errorf("%v, %v", groove.KeepLeft, groove.KeepRight)
	}
}

// TestAtNamesAFeatureWhateverTheWidths: profiles that Validate refuses get an answer too, if no useful one.
func TestAtNamesAFeatureWhateverTheWidths(t *testing.T) {
	for _, widths := range [][]string{{"-1"}, {"1", "-3"}, {"-3", "1"}, {"0", "1", "0"}} {
		var p groove.Profile
		for _, w := range widths {
			p.Features = append(p.Features, groove.Feature{Width: inch(w)})
		}
		if i, _ := p.At(inch("1/2")); i < 0 || i >= len(widths) {
			t.Errorf("%v: feature %d", widths, i)
		}
	}
}

// The zero profile has no features and no pitch: what needs a repeat says so in the package's own way, the rest is empty.
func TestZeroProfile(t *testing.T) {
	var p groove.Profile
	if !p.Pitch().IsZero() || len(p.Boundaries()) != 0 || len(p.SeamLines()) != 0 || p.Turns() || len(p.Least().Features) != 0 {
		t.Error("the zero profile has something")
	}
	if _, ok := p.DistanceToSeamLine(inch("1")); ok {
		t.Error("the zero profile has a seam line")
	}
	for name, f := range map[string]func(){
		"Phase":              func() { p.Phase(inch("1"), inch("0")) },
		"At":                 func() { p.At(inch("1")) },
		"DistanceToBoundary": func() { p.DistanceToBoundary(inch("1")) },
		"CutDistance":        func() { p.CutDistance(inch("1"), groove.KeepLeft) },
		"Turned":             func() { p.Turned(inch("1")) },
	} {
		var err error
		func() {
			defer fraction.Catch(&err)
			f()
		}()
		var divisor *fraction.ZeroDivisorError
		if !errors.As(err, &divisor) {
			t.Errorf("%s: %v, want a *fraction.ZeroDivisorError", name, err)
		}
	}
}
