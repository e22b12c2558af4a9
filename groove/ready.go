package groove

import (
	"strings"

	"example.com/groovewright/fraction"
)

// Ready returns the profiles that come with the package, in a fixed order. They are starting points: measure the
// sheet in hand. The caller may change what it gets.
func Ready() []Profile {
	inch := fraction.MustParse
	mm := func(n int64) fraction.Length { return fraction.Millimetres(n, 1) }
	return []Profile{
		{
			Name: "beadboard 1-1/2",
			Features: []Feature{
				{Kind: Flat, Width: inch("1 1/4")},
				{Kind: Bead, Width: inch("1/4"), Depth: inch("1/16")},
			},
			Thickness: inch("1/4"),
			Source: "pitch: lower end of 1-1/2 to 2-1/2 in centre to centre, a tool glossary; " +
				"thickness: not above the 5/16 in of a how-to article; bead: common practice, no source",
		},
		{
			Name: "beadboard 1-5/8",
			Features: []Feature{
				{Kind: Flat, Width: inch("1 3/8")},
				{Kind: Bead, Width: inch("1/4"), Depth: inch("1/16")},
			},
			Thickness: inch("1/4"),
			Source: "pitch: a size that is sold, from memory; thickness: not above the 5/16 in of a how-to article; " +
				"bead: common practice, no source",
		},
		{
			Name: "beadboard 2",
			Features: []Feature{
				{Kind: Flat, Width: inch("1 5/8")},
				{Kind: Groove, Width: inch("1/16"), Depth: inch("1/16")},
				{Kind: Bead, Width: inch("1/4"), Depth: inch("1/16")},
				{Kind: Groove, Width: inch("1/16"), Depth: inch("1/16")},
			},
			Thickness: inch("1/4"),
			Source: "pitch: within 1-1/2 to 2-1/2 in centre to centre, a tool glossary; " +
				"thickness: not above the 5/16 in of a how-to article; bead between two quirks: common practice, no source",
		},
		{
			Name: "V-groove planking 3-1/2",
			Features: []Feature{
				{Kind: Flat, Width: inch("3 1/4")},
				{Kind: Groove, Width: inch("1/4"), Depth: inch("1/8")},
			},
			Thickness: inch("1/4"),
			WideFlats: true,
			Source:    "common practice, no source",
		},
		{
			Name: "V-groove planking 6",
			Features: []Feature{
				{Kind: Flat, Width: inch("5 3/4")},
				{Kind: Groove, Width: inch("1/4"), Depth: inch("1/8")},
			},
			Thickness: inch("1/2"),
			WideFlats: true,
			Source:    "thickness: one of the 1/4, 1/2 and 3/4 in of a consumer guide; the rest: common practice, no source",
		},
		{
			Name: "tongue and groove 5-1/4",
			Features: []Feature{
				{Kind: Flat, Width: inch("5")},
				{Kind: Groove, Width: inch("1/4"), Depth: inch("1/8")},
			},
			Thickness: inch("3/4"),
			WideFlats: true,
			Boards:    true,
			Source: "thickness: one of the 1/4, 1/2 and 3/4 in of a consumer guide (which has boards of 3 to 5 in); " +
				"covering width and groove: common practice, no source",
		},
		{
			Name: "shiplap 7-1/4",
			Features: []Feature{
				{Kind: Flat, Width: inch("7 1/8")},
				{Kind: Groove, Width: inch("1/8"), Depth: inch("3/8")},
			},
			Thickness: inch("3/4"),
			WideFlats: true,
			Boards:    true,
			Source:    "common practice, no source",
		},
		{
			Name: "metric board 100",
			Features: []Feature{
				{Kind: Flat, Width: mm(94)},
				{Kind: Groove, Width: mm(6), Depth: mm(3)},
			},
			Thickness: mm(9),
			WideFlats: true,
			Source:    "common practice, no source",
		},
	}
}

// Find returns the ready profile of that name, in capitals or small letters.
func Find(name string) (Profile, bool) {
	for _, p := range Ready() {
		if strings.EqualFold(p.Name, name) {
			return p, true
		}
	}
	return Profile{}, false
}
