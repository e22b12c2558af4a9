package groove_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/groove"

	"github.com/google/go-cmp/cmp"
)

var inch = fraction.MustParse

// repeat makes a profile of "flat 1 1/4, bead 1/4 1/16" and the like: kind, width and perhaps a
// depth after an @.
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
		{"zero value", groove.Profile{}, nil},
		{"boards without features", groove.Profile{Boards: true}, []string{"Features"}},
		{"a board", groove.Profile{Features: []groove.Feature{flat}, Boards: true, Cover: inch("1"), Width: inch("1 1/4"), Edges: groove.Tongued,
			Tongue: groove.TongueLeft, Lap: inch("1/4")}, nil},
		{"a board of which only the repeat is known", groove.Profile{Features: []groove.Feature{flat}, Boards: true}, nil},
		{"a sheet of which only the cover is known", groove.Profile{Cover: inch("48"), Edges: groove.Square}, nil},
		{"the last of each word", groove.Profile{Edges: groove.Tongued, Tongue: groove.TongueRight, Status: 3}, nil},
		{"the first that is no word", groove.Profile{Edges: 4, Tongue: 3, Status: 4}, []string{"Edges", "Tongue", "Status"}},
		{"sizes below 0", groove.Profile{Cover: inch("-1"), Width: inch("-1"), Lap: inch("-1"), Lengths: []fraction.Length{inch("96"), inch("0")}},
			[]string{"Cover", "Width", "Lap", "Lengths[1]"}},
		{"no word for a tongue", groove.Profile{Edges: groove.Tongued, Tongue: groove.TongueRight + 1}, []string{"Tongue"}},
		{"words that are none", groove.Profile{Edges: 9, Tongue: 9, Status: 9}, []string{"Edges", "Tongue", "Status"}},
		{"a board that shows more than its repeat", groove.Profile{Features: []groove.Feature{flat}, Boards: true, Cover: inch("2")}, []string{"Cover"}},
		{"wider than square edges show", groove.Profile{Cover: inch("48"), Width: inch("49"), Edges: groove.Square}, []string{"Width"}},
		{"narrower than it shows", groove.Profile{Cover: inch("48"), Width: inch("47"), Edges: groove.Lapped, Lap: inch("1")}, []string{"Width", "Lap"}},
		{"a tongue and a lap without their edges", groove.Profile{Tongue: groove.TongueRight, Lap: inch("1/4")}, []string{"Tongue", "Lap"}},
		{"a lap that does not add up", groove.Profile{Cover: inch("48"), Width: inch("49"), Edges: groove.Lapped, Lap: inch("1/2")}, []string{"Lap"}},
		{"zero width", with(flat, groove.Feature{}), []string{"Features[1].Width"}},
		{"negative width", with(groove.Feature{Width: inch("-1")}), []string{"Features[0].Width"}},
		{"unknown kind", with(groove.Feature{Kind: 3, Width: inch("1")}), []string{"Features[0].Kind"}},
		{"negative depth", with(groove.Feature{Kind: groove.Bead, Width: inch("1"), Depth: inch("-1/8")}), []string{"Features[0].Depth"}},
		{"deep flat", with(groove.Feature{Width: inch("1"), Depth: inch("1/8")}), []string{"Features[0].Depth"}},
		{"too deep", with(flat, groove.Feature{Kind: groove.Groove, Width: inch("1/8"), Depth: inch("5/16")}), []string{"Features[1].Depth"}},
		{"negative thickness", groove.Profile{Features: []groove.Feature{flat}, Thickness: inch("-1/4")}, []string{"Thickness"}},
		{"as many as there may be", with(slices.Repeat([]groove.Feature{flat}, groove.MaxFeatures)...), nil},
		{"too many", groove.Profile{Features: make([]groove.Feature, groove.MaxFeatures+1)}, []string{"Features", "Features[0].Width"}},
		{"all at once", groove.Profile{Features: []groove.Feature{{Kind: 9, Width: inch("-1"), Depth: inch("-1")}}, Thickness: inch("-1")},
			[]string{"Features[0].Kind", "Features[0].Width", "Features[0].Depth", "Thickness"}},
	} {
		err := test.profile.Validate()
		if test.paths == nil {
			if err != nil {
				t.Errorf("%s: %v", test.name, err)
			}
			continue
		}
		var paths []string
		for _, f := range fault.All(err) {
			paths = append(paths, f.Path.String())
			if f.Want == "" || f.Value == "" || !strings.Contains(err.Error(), f.Path.String()+": ") {
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

// A phase whose sum with the widths no number holds is an error, not a distance of 0.
func TestPhasesTooFine(t *testing.T) {
	p := groove.Profile{Features: []groove.Feature{{Width: fraction.Of(1, 3)}, {Kind: groove.Bead, Width: inch("1")}}}
	fine := fraction.Of(1, math.MaxInt64)
	for name, call := range map[string]func(phase fraction.Length) error{
		"Phase":              func(x fraction.Length) error { _, err := p.Phase(x, fraction.Of(1, 3)); return err },
		"DistanceToBoundary": func(x fraction.Length) error { _, err := p.DistanceToBoundary(x); return err },
		"DistanceToSeamLine": func(x fraction.Length) error { _, err := p.DistanceToSeamLine(x); return err },
		"Shown":              func(x fraction.Length) error { _, _, err := p.Shown(x, groove.KeepRight); return err },
		"CutDistance":        func(x fraction.Length) error { _, err := p.CutDistance(x, groove.KeepRight); return err },
		"Crossed":            func(x fraction.Length) error { _, err := p.Crossed(x, inch("1"), groove.KeepRight); return err },
		"SlantDistance":      func(x fraction.Length) error { _, err := p.SlantDistance(x, inch("1"), groove.KeepRight); return err },
		"Turned":             func(x fraction.Length) error { _, err := p.Turned(x); return err },
	} {
		var overflow *fraction.OverflowError
		if err := call(fine); !errors.As(err, &overflow) {
			t.Errorf("%s: %v", name, err)
		}
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

func TestShown(t *testing.T) {
	bead := repeat(t, "flat 1 1/4, bead 1/4")
	for _, test := range []struct {
		phase string
		keep  groove.Side
		want  string
	}{
		{"0", groove.KeepLeft, "1/4 of a bead of 1/4"},
		{"0", groove.KeepRight, "1 1/4 of a flat of 1 1/4"},
		{"1 1/4", groove.KeepLeft, "1 1/4 of a flat of 1 1/4"},
		{"1 1/4", groove.KeepRight, "1/4 of a bead of 1/4"},
		{"3/8", groove.KeepLeft, "3/8 of a flat of 1 1/4"},
		{"3/8", groove.KeepRight, "7/8 of a flat of 1 1/4"},
		{"1 5/16", groove.KeepRight, "3/16 of a bead of 1/4"},
		{"-1/16", groove.KeepLeft, "3/16 of a bead of 1/4"}, // any phase is taken modulo the pitch
		{"3", groove.KeepRight, "1 1/4 of a flat of 1 1/4"},
	} {
		f, width, err := bead.Shown(inch(test.phase), test.keep)
		if got := fmt.Sprintf("%v of a %v of %v", width, f.Kind, f.Width); got != test.want || err != nil {
			t.Errorf("Shown(%s, %v) = %q, %v, want %q", test.phase, test.keep, got, err, test.want)
		}
	}
}

// The distances were worked out by hand from the definition: a boundary is sound where the feature
// on the side that stays is no groove.
func TestCutDistance(t *testing.T) {
	narrow := repeat(t, "flat 1 1/4, bead 1/4")
	board := repeat(t, "flat 4, groove 1/4")
	quirked := repeat(t, "flat 1 5/8, groove 1/16, bead 1/4, groove 1/16")
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
		{"the side does not matter beside a bead", narrow, "1", groove.KeepRight, "1/4"},
		{"through a bead", narrow, "1 5/16", groove.KeepLeft, "1/16"},
		{"a whole flat", board, "0", groove.KeepRight, "0"},
		{"a whole flat to the left", board, "4", groove.KeepLeft, "0"},
		{"a groove stands open at the left end: its flat starts 1/4 on", board, "4", groove.KeepRight, "1/4"},
		{"a groove stands open at the right end", board, "0", groove.KeepLeft, "1/4"},
		{"a strip of 1/4 in before the groove is 1/2 from the next flat", board, "3 3/4", groove.KeepRight, "1/2"},
		{"nearer to the start of its own flat", board, "1 7/8", groove.KeepRight, "1 7/8"},
		{"the middle of a groove", board, "4 1/8", groove.KeepLeft, "1/8"},
		{"the middle of a groove, the other side", board, "4 1/8", groove.KeepRight, "1/8"},
		{"a quirk stands open", quirked, "1 5/8", groove.KeepRight, "1/16"},
		{"a bead beside its quirk is whole", quirked, "1 11/16", groove.KeepRight, "0"},
		{"a bead is whole on its other side", quirked, "1 15/16", groove.KeepLeft, "0"},
		{"the quirk beyond it is not", quirked, "0", groove.KeepLeft, "1/16"},
		{"all grooves: any boundary", repeat(t, "groove 1/4, groove 1/8"), "5/16", groove.KeepLeft, "1/16"},
		{"wide: a sliver to the left", wide, "1", groove.KeepLeft, "2"},
		{"wide: all but a sliver to the right", wide, "1", groove.KeepRight, "0"},
		{"wide: half", wide, "3", groove.KeepLeft, "0"},
		{"wide: less than half to the right", wide, "4", groove.KeepRight, "1"},
		{"wide: a whole flat", wide, "6", groove.KeepLeft, "0"},
		{"wide: a groove stands open", wide, "6", groove.KeepRight, "1/4"},
		{"wide: through a groove", wide, "6 1/16", groove.KeepLeft, "1/16"},
		{"wide: through a groove, nearer to the flat that is lost", wide, "6 1/16", groove.KeepRight, "3/16"},
	} {
		if got, err := test.profile.CutDistance(inch(test.phase), test.keep); got != inch(test.want) || err != nil {
			t.Errorf("%s: CutDistance = %v, %v, want %s", test.name, got, err, test.want)
		}
	}
}

// Worked out by hand as well: the greatest of the distances at foot, top and the boundaries between,
// or the width of a bead or groove that the edge crosses.
func TestSlantDistance(t *testing.T) {
	narrow := repeat(t, "flat 1 1/4, bead 1/4")
	wide := repeat(t, "flat 6, groove 1/4")
	wide.WideFlats = true
	for _, test := range []struct {
		name        string
		profile     groove.Profile
		phase, lean string
		keep        groove.Side
		want        string
		crossed     string
	}{
		{"upright", narrow, "3/8", "0", groove.KeepLeft, "3/8", ""},
		{"from a boundary into the flat", narrow, "0", "1/8", groove.KeepRight, "1/8", "flat 1 1/8"},
		{"back to it", narrow, "1/8", "-1/8", groove.KeepRight, "1/8", "flat 1 1/8"},
		{"from a boundary to the next", narrow, "0", "1 1/4", groove.KeepRight, "0", "flat 0"},
		{"into the bead by 1/16", narrow, "1 3/16", "1/8", groove.KeepLeft, "1/4", "flat 1 3/16, bead 0"},
		{"out of it leaning left", narrow, "1 5/16", "-1/8", groove.KeepLeft, "1/4", "bead 0, flat 1 3/16"},
		{"up to the bead", narrow, "1 1/8", "1/8", groove.KeepLeft, "1/8", "flat 1 1/8"},
		{"over a boundary with an open groove between", repeat(t, "flat 1, groove 1/16"), "7/8", "1/4", groove.KeepRight, "3/16", "flat 0, groove 0, flat 15/16"},
		{"over the boundaries of an open groove in steps", repeat(t, "flat 2, groove 1/8, groove 1/8, groove 1/8, groove 1/8, bead 1/8"), "2 3/16", "1/4",
			groove.KeepLeft, "1/4", "groove 1/16, groove 0, groove 0"},
		{"between two flats", repeat(t, "flat 1, flat 1/2"), "15/16", "1/8", groove.KeepRight, "1/16", "flat 0, flat 7/16"},
		{"wide: half at the top", wide, "4", "-1", groove.KeepRight, "1", "flat 2"},
		{"wide: more than half all along", wide, "2 1/2", "1/2", groove.KeepRight, "0", "flat 3"},
		{"wide: over the groove", wide, "5 15/16", "3/8", groove.KeepLeft, "2 15/16", "flat 5 15/16, groove 0, flat 0"},
		{"over more than a repeat", narrow, "1", "5", groove.KeepLeft, "1/4", "flat 1, bead 0, flat 0"},
	} {
		got, err := test.profile.SlantDistance(inch(test.phase), inch(test.lean), test.keep)
		if got != inch(test.want) || err != nil {
			t.Errorf("%s: SlantDistance = %v, %v, want %s", test.name, got, err, test.want)
		}
		crossings, err := test.profile.Crossed(inch(test.phase), inch(test.lean), test.keep)
		var crossed []string
		for _, c := range crossings {
			crossed = append(crossed, c.Feature.Kind.String()+" "+c.Width.String())
		}
		if strings.Join(crossed, ", ") != test.crossed || err != nil {
			t.Errorf("%s: Crossed = %v, %v, want %s", test.name, crossed, err, test.crossed)
		}
	}
}

func TestJSON(t *testing.T) {
	p := repeat(t, "flat 1 1/4, bead 1/4 @ 1/16, groove 1/8")
	p.Name, p.Thickness, p.WideFlats, p.Cover, p.Width = "own", inch("1/4"), true, inch("5"), inch("5 1/4")
	p.Edges, p.Tongue, p.Lap, p.Lengths, p.Status = groove.Tongued, groove.TongueLeft, inch("1/4"), []fraction.Length{inch("96")}, groove.Published
	text, err := json.Marshal(p)
	const want = `{"name":"own","features":[{"kind":"flat","width":"1 1/4"},{"kind":"bead","width":"1/4","depth":"1/16"},` +
		`{"kind":"groove","width":"1/8"}],"thickness":"1/4","wide_flats":true,"cover":"5","width":"5 1/4","edges":"tongued","tongue":"left","lap":"1/4",` +
		`"lengths":["96"],"status":"published"}`
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

// Each board is a repeat, however often its features repeat.
func TestPrimitiveLeavesBoards(t *testing.T) {
	flat, bead := groove.Feature{Width: inch("2")}, groove.Feature{Kind: groove.Bead, Width: inch("1/4")}
	p := groove.Profile{Boards: true, Features: []groove.Feature{flat, bead, flat, bead}}
	if got := p.Primitive(); !got.Boards || got.Pitch() != inch("4 1/2") {
		t.Errorf("Primitive has the pitch %v, boards %t; want 4 1/2 of boards", got.Pitch(), got.Boards)
	}
}

// A plain sheet, such as the zero profile, looks the same at every place, however it is turned.
func TestPlainSheet(t *testing.T) {
	var p groove.Profile
	if !p.Pitch().IsZero() || len(p.Boundaries()) != 0 || len(p.SeamLines()) != 0 || !p.Turns() || len(p.Primitive().Features) != 0 {
		t.Error("a plain sheet has a pattern")
	}
	for _, x := range []fraction.Length{inch("0"), inch("-7/16"), inch("61")} {
		phase, err := p.Phase(x, inch("1/32"))
		boundary, err2 := p.DistanceToBoundary(x)
		line, err3 := p.DistanceToSeamLine(x)
		f, width, err4 := p.Shown(x, groove.KeepLeft)
		cut, err5 := p.CutDistance(x, groove.KeepRight)
		turned, err6 := p.Turned(x)
		if err := errors.Join(err, err2, err3, err4, err5, err6); err != nil || f != (groove.Feature{}) {
			t.Errorf("at %v: %v, shown %v", x, err, f)
		}
		for i, l := range []fraction.Length{phase, boundary, line, width, cut, turned} {
			if !l.IsZero() {
				t.Errorf("method %d at %v: %v, want 0", i, x, l)
			}
		}
	}
}

func TestSideAsText(t *testing.T) {
	for side, want := range map[groove.Side]string{groove.KeepLeft: "keep left", groove.KeepRight: "keep right"} {
		text, err := side.MarshalText()
		var back groove.Side
		if err != nil || string(text) != want || side.String() != want || back.UnmarshalText(text) != nil || back != side {
			t.Errorf("%q, %v, back %v", text, err, back)
		}
	}
}

// FuzzProfile calls everything with any profile and any places: nothing may panic, and what
// Validate accepts has a pitch and a boundary for each feature.
func FuzzProfile(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add(int64(5), int64(4), int64(1), int64(4), uint8(0), uint8(1), int64(61), int64(7), true)
	f.Add(int64(1), int64(1<<40), int64(1), int64(1<<40-1), uint8(0), uint8(1), int64(61), int64(7), false)
	f.Add(int64(1), int64(math.MaxInt64), int64(1), int64(math.MaxInt64), uint8(2), uint8(2), int64(math.MaxInt64), int64(1), false)
	f.Add(int64(-5), int64(4), int64(5), int64(4), uint8(9), uint8(1), int64(math.MinInt64), int64(0), true)
	f.Add(int64(-71), int64(53), int64(1), int64(4), uint8(0), uint8(1), int64(2), int64(7), true) // a pitch below 0 has no end
	f.Fuzz(func(t *testing.T, a, b, c, d int64, one, other uint8, x, y int64, wide bool) {
		length := func(num, den int64) fraction.Length {
			if num == math.MinInt64 || den == math.MinInt64 {
				num, den = math.MaxInt64, 1
			}
			return fraction.Of(num, max(den, 1))
		}
		p := groove.Profile{WideFlats: wide, Thickness: length(x, y), Features: []groove.Feature{
			{Kind: groove.Kind(one), Width: length(a, b), Depth: length(y, x)}, {Kind: groove.Kind(other), Width: length(c, d)},
			{Kind: groove.Kind(one), Width: length(a, b)},
		}}
		for _, p := range []groove.Profile{{}, p, {Features: p.Features[:1]}} {
			valid := p.Validate() == nil
			if valid && (p.Pitch().Sign() <= 0 && len(p.Features) > 0 || len(p.Boundaries()) != len(p.Features)) {
				t.Fatalf("%v is valid, with the pitch %v", p, p.Pitch())
			}
			p.SeamLines()
			p.Primitive()
			p.Mirror()
			p.Turns()
			for _, keep := range []groove.Side{groove.KeepLeft, groove.KeepRight, 7} {
				at := length(x, d)
				phase, err := p.Phase(at, length(y, b))
				if err == nil && valid && (phase.Sign() < 0 || !phase.IsZero() && !phase.Less(p.Pitch())) {
					t.Fatalf("phase %v of the pitch %v", phase, p.Pitch())
				}
				_, _ = p.DistanceToBoundary(at)
				_, _ = p.DistanceToSeamLine(at)
				_, _, _ = p.Shown(at, keep)
				_, _ = p.CutDistance(at, keep)
				_, _ = p.SlantDistance(at, length(a, d), keep)
				_, _ = p.Crossed(at, length(c, b), keep)
				_, _ = p.Turned(at)
			}
		}
	})
}
