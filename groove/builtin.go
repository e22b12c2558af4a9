package groove

import (
	"strings"

	"example.com/groovewright/fraction"
)

// Builtin returns the profiles that come with the package, in a fixed order. They are starting
// points: measure the sheet in hand. The caller may change what it gets.
func Builtin() []Profile {
	in := fraction.MustParse
	flat := func(width string) Feature { return Feature{Kind: Flat, Width: in(width)} }
	bead := func(width, depth string) Feature { return Feature{Bead, in(width), in(depth)} }
	groove := func(width, depth string) Feature { return Feature{Groove, in(width), in(depth)} }
	const (
		article  = "; thickness: not above the 5/16 in of a how-to article; "
		guide    = "thickness: one of the 1/4, 1/2 and 3/4 in of a consumer guide"
		practice = "common practice, no source"
	)
	return []Profile{
		{
			Name: "beadboard 1-1/2", Thickness: in("1/4"),
			Features: []Feature{flat("1 1/4"), bead("1/4", "1/16")},
			Source:   "pitch: lower end of 1-1/2 to 2-1/2 in centre to centre, a tool glossary" + article + "bead: " + practice,
		},
		{
			Name: "beadboard 1-5/8", Thickness: in("1/4"),
			Features: []Feature{flat("1 3/8"), bead("1/4", "1/16")},
			Source:   "pitch: a size that is sold, from memory" + article + "bead: " + practice,
		},
		{
			Name: "beadboard 2", Thickness: in("1/4"),
			Features: []Feature{flat("1 5/8"), groove("1/16", "1/16"), bead("1/4", "1/16"), groove("1/16", "1/16")},
			Source:   "pitch: within 1-1/2 to 2-1/2 in centre to centre, a tool glossary" + article + "bead between two quirks: " + practice,
		},
		{
			Name: "V-groove planking 3-1/2", Thickness: in("1/4"), WideFlats: true,
			Features: []Feature{flat("3 1/4"), groove("1/4", "1/8")},
			Source:   practice,
		},
		{
			Name: "V-groove planking 6", Thickness: in("1/2"), WideFlats: true,
			Features: []Feature{flat("5 3/4"), groove("1/4", "1/8")},
			Source:   guide + "; the rest: " + practice,
		},
		{
			Name: "tongue and groove 5-1/4", Thickness: in("3/4"), WideFlats: true, Boards: true,
			Features: []Feature{flat("5"), groove("1/4", "1/8")},
			Source:   guide + " (which has boards of 3 to 5 in); covering width and groove: " + practice,
		},
		{
			Name: "shiplap 7-1/4", Thickness: in("3/4"), WideFlats: true, Boards: true,
			Features: []Feature{flat("7 1/8"), groove("1/8", "3/8")},
			Source:   practice,
		},
		{
			Name: "metric board 100", Thickness: in("9 mm"), WideFlats: true,
			Features: []Feature{flat("94 mm"), groove("6 mm", "3 mm")},
			Source:   practice,
		},
	}
}

// Find returns the builtin profile of that name; case does not matter.
func Find(name string) (Profile, bool) {
	for _, p := range Builtin() {
		if strings.EqualFold(p.Name, name) {
			return p, true
		}
	}
	return Profile{}, false
}
