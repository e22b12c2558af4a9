package groove_test

import (
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
		if p.Source == "" || p.Thickness.Sign() <= 0 {
			t.Errorf("%s has no source or no thickness", p.Name)
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

// What is said of such goods elsewhere holds for the builtin profiles that claim it.
func TestBuiltinProfilesAgreeWithWhatIsPrinted(t *testing.T) {
	for _, test := range []struct {
		prefix, source string
		holds          func(groove.Profile) bool
	}{
		{"beadboard", "a tool glossary: beads 1-1/2 to 2-1/2 in centre to centre",
			func(p groove.Profile) bool { return !p.Pitch().Less(inch("1 1/2")) && !inch("2 1/2").Less(p.Pitch()) }},
		{"beadboard", "a how-to article on bead board: sheets usually no thicker than 5/16 in",
			func(p groove.Profile) bool { return !inch("5/16").Less(p.Thickness) }},
		{"V-groove planking", "a consumer guide: planks 1/4, 1/2 or 3/4 in thick", oneOf("1/4", "1/2", "3/4")},
		{"tongue and groove", "the same guide", oneOf("1/4", "1/2", "3/4")},
	} {
		n := 0
		for _, p := range groove.Builtin() {
			if strings.HasPrefix(p.Name, test.prefix) {
				n++
				if !test.holds(p) {
					t.Errorf("%s with the pitch %v and the thickness %v contradicts %s", p.Name, p.Pitch(), p.Thickness, test.source)
				}
			}
		}
		if n == 0 {
			t.Errorf("no builtin profile is named %s", test.prefix)
		}
	}
}

func oneOf(thicknesses ...string) func(groove.Profile) bool {
	return func(p groove.Profile) bool {
		for _, t := range thicknesses {
			if p.Thickness == inch(t) {
				return true
			}
		}
		return false
	}
}

// The names promise pitches.
func TestBuiltinPitches(t *testing.T) {
	for name, want := range map[string]fraction.Length{
		"beadboard 1-1/2": inch("1 1/2"), "beadboard 1-5/8": inch("1 5/8"), "beadboard 2": inch("2"),
		"V-groove planking 3-1/2": inch("3 1/2"), "V-groove planking 6": inch("6"), "tongue and groove 5-1/4": inch("5 1/4"),
		"shiplap 7-1/4": inch("7 1/4"), "metric board 100": fraction.Millimetres(100, 1),
	} {
		if p, ok := groove.Find(name); !ok || p.Pitch() != want {
			t.Errorf("%s: pitch %v, want %v", name, p.Pitch(), want)
		}
	}
}
