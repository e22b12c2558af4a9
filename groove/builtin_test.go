package groove_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

func TestBuiltinProfilesAreValidAndSayWhereTheyComeFrom(t *testing.T) {
	names := map[string]bool{}
	for _, p := range groove.Builtin() {
		if err := p.Validate(); err != nil {
			t.Errorf("%s: %v", p.Name, err)
		}
		if p.Source == "" || p.Status == groove.StatusUnknown || p.Thickness.Sign() <= 0 || p.Cover.Sign() <= 0 || p.Edges == groove.EdgesUnknown || len(p.Lengths) == 0 ||
			(p.Tongue != groove.TongueUnknown) != (p.Edges == groove.Tongued) {
			t.Errorf("%s lacks something: %+v", p.Name, p)
		}
		if _, ok := p.Mirror(); !ok {
			t.Errorf("%s is not its own mirror image", p.Name)
		}
		if names[strings.ToLower(p.Name)] {
			t.Errorf("there are two profiles %q", p.Name)
		}
		names[strings.ToLower(p.Name)] = true
		found, ok := groove.Find(strings.ToUpper(p.Name))
		if !ok || found.Name != p.Name || found.Pitch() != p.Pitch() {
			t.Errorf("Find(%q) = %v, %t", p.Name, found, ok)
		}
	}
	if p, ok := groove.Find("egg and dart"); ok || p.Name != "" {
		t.Errorf("Find finds %v", p)
	}
}

func TestBuiltinProfilesAreCopies(t *testing.T) {
	groove.Builtin()[0].Features[0].Width = inch("99")
	if got := groove.Builtin()[0].Features[0].Width; got == inch("99") {
		t.Error("who changes a builtin profile changes it for everybody")
	}
}

// The published sizes of the builtin profiles that have any. From left to right: pitch, overall
// width (0: not printed), a feature beside the first flat, thickness (0: not printed), one length.
func TestBuiltinProfilesHavePublishedSizes(t *testing.T) {
	const (
		association = "a lumber association's table of coverage: 1x4 shows 3-1/8 of 3-3/8, 1x6 shows 5-1/8 of 5-3/8"
		mill        = "a mill's table of coverage: shiplap of 8 in shows 6-3/4 of 7-1/8"
		dealer      = "a lumber dealer's article: primed nickel gap 1x6 and 1x8 show 4-7/8 and 6-7/8, gap 1/8, 5/8 thick, 12 and 16 ft"
		mdf         = "a trade body for MDF: strips of 100 mm, 12 mm thick"
		slats       = "a maker's drawing: slats of 1.02 in, 0.55 in apart, 0.48 in on 0.35 in, tiles of 600 mm"
	)
	published := 0
	for _, test := range []struct{ name, pitch, width, second, thickness, length, source string }{
		{"tongue and groove 3-1/8", "3 1/8", "3 3/8", "", "0", "0", association},
		{"tongue and groove 5-1/8", "5 1/8", "5 3/8", "", "0", "0", association},
		{"edge-and-center bead 3-1/8", "3 1/8", "3 3/8", "", "0", "0", association},
		{"edge-and-center bead 5-1/8", "5 1/8", "5 3/8", "", "0", "0", association},
		{"shiplap 6-3/4", "6 3/4", "7 1/8", "", "0", "0", mill},
		{"nickel gap 4-7/8", "4 7/8", "0", "1/8", "5/8", "144", dealer},
		{"nickel gap 6-7/8", "6 7/8", "0", "1/8", "5/8", "192", dealer},
		{"MDF strip 100 mm", "100 mm", "0", "", "12 mm", "0", mdf},
		{"slat 40 mm", "40 mm", "600 mm", "14 mm", "21 mm", "600 mm", slats},
		{"plain sheet", "0", "48", "", "1/4", "96", "NAVEDTRA 14069: hardboard of 1/8 to 3/8 in, 4 x 8 ft"},
	} {
		p, ok := groove.Find(test.name)
		if published++; !ok || p.Status != groove.Published || p.Pitch() != inch(test.pitch) {
			t.Errorf("%s: %s, pitch %v, want %s (%s)", test.name, p.Status, p.Pitch(), test.pitch, test.source)
		}
		if width := inch(test.width); !width.IsZero() && p.Width != width {
			t.Errorf("%s: %v wide, want %v (%s)", test.name, p.Width, width, test.source)
		}
		if test.second != "" && p.Features[1].Width != inch(test.second) {
			t.Errorf("%s: gap %v, want %s (%s)", test.name, p.Features[1].Width, test.second, test.source)
		}
		if thick := inch(test.thickness); !thick.IsZero() && p.Thickness != thick {
			t.Errorf("%s: %v thick, want %v (%s)", test.name, p.Thickness, thick, test.source)
		}
		if l := inch(test.length); !l.IsZero() && !slices.Contains(p.Lengths, l) {
			t.Errorf("%s: lengths %v, want %v among them (%s)", test.name, p.Lengths, l, test.source)
		}
	}
	for _, p := range groove.Builtin() {
		if p.Status == groove.Published {
			published--
		}
		if low, high := inch("1 1/2"), inch("2 1/2"); strings.HasPrefix(p.Name, "beadboard") && (p.Pitch().Less(low) || high.Less(p.Pitch())) {
			t.Errorf("%s: pitch %v, want 1-1/2 to 2-1/2 in, a tool glossary", p.Name, p.Pitch())
		}
	}
	if published != 0 {
		t.Error("another profile counts as published")
	}
}

// The names of sheets promise pitches.
func TestBuiltinPitches(t *testing.T) {
	for name, want := range map[string]fraction.Length{
		"beadboard 1-1/2": inch("1 1/2"), "beadboard 1-5/8": inch("1 5/8"), "beadboard 2": inch("2"),
		"V-groove planking 3-1/2": inch("3 1/2"), "V-groove planking 6": inch("6"), "V-groove sheet 4": inch("4"), "V-groove sheet 8": inch("8"),
		"MDF sheet 100 mm": fraction.Millimetres(100, 1), "reeded 1/2": inch("1/2"),
	} {
		if p, ok := groove.Find(name); !ok || p.Pitch() != want {
			t.Errorf("%s: pitch %v, want %v", name, p.Pitch(), want)
		}
	}
}

// A name that is builtin no more leads to one that is.
func TestRenamedProfilesAreBuiltin(t *testing.T) {
	for _, was := range []string{"Tongue and groove 5-1/4", "shiplap 7-1/4", "metric board 100"} {
		now, ok := groove.Renamed(was)
		if _, builtin := groove.Find(now); !ok || !builtin {
			t.Errorf("%s is now %q", was, now)
		}
		if _, still := groove.Find(was); still {
			t.Errorf("%s is still builtin", was)
		}
	}
	if now, ok := groove.Renamed("beadboard 2"); ok {
		t.Errorf("beadboard 2 is now %s", now)
	}
}
