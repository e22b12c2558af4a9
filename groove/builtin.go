package groove

import (
	"strings"

	"example.com/groovewright/fraction"
)

// builtin is a profile as its source gives it.
type builtin struct {
	name, thickness, width string // of boards overall, "0" where that is not known; of sheets also what they cover
	sold                   []string
	edges                  Edges
	boards, wideFlats      bool
	status                 Status
	source                 string
	features               []size
}

// size is a feature as its source gives it.
type size struct {
	kind         Kind
	width, depth string
}

const (
	practice = "common practice, no source"
	invented = "invented for examples: no text has such a size"
	common   = "; sheet 48 x 96 in: a tool glossary and a how-to article"
	beads    = "; thickness: 1/8 to 1/4 in, the same articles; bead: " + practice
	faces    = "face and dressed width: a lumber association's table of coverage; thickness, lengths, tongue and "
	nickel   = "face, gap, thickness and lengths: a lumber dealer's article; depth of the gap and tongue: " + practice
	strips   = "strips of 100 mm with tongue and groove, 12 mm thick: a trade body for MDF; the 100 mm taken as what shows, " +
		"length, side of the tongue and groove: " + practice
)

var (
	eight, random, primed = []string{"96"}, []string{"96", "120", "144", "192"}, []string{"144", "192"}

	vee, half, strip = size{Groove, "1/4", "1/8"}, size{Bead, "1/4", "1/16"}, size{Groove, "6 mm", "3 mm"}
	side, gap        = size{Groove, "1/16", "1/16"}, size{Groove, "1/8", "1/4"}
)

var builtins = []builtin{
	{"beadboard 1-1/2", "1/4", "48", eight, Square, false, false, CommonPractice,
		"pitch: lower end of 1-1/2 to 2-1/2 in, a tool glossary" + common + beads, []size{{Flat, "1 1/4", "0"}, half}},
	{"beadboard 1-5/8", "1/4", "48", eight, Square, false, false, CommonPractice,
		"pitch: a size that is sold, from memory" + common + beads, []size{{Flat, "1 3/8", "0"}, half}},
	{"beadboard 2", "1/4", "48", eight, Square, false, false, CommonPractice,
		"pitch: within 1-1/2 to 2-1/2 in, a tool glossary" + common + beads, []size{{Flat, "1 5/8", "0"}, side, half, side}},
	{"V-groove planking 3-1/2", "1/4", "48", eight, Square, false, true, Invented, invented, []size{{Flat, "3 1/4", "0"}, vee}},
	{"V-groove planking 6", "1/2", "48", eight, Square, false, true, Invented, invented, []size{{Flat, "5 3/4", "0"}, vee}},
	{"V-groove sheet 4", "11/32", "48", eight, Square, false, true, CommonPractice, practice, []size{{Flat, "3 3/4", "0"}, vee}},
	{"V-groove sheet 8", "11/32", "48", eight, Square, false, true, CommonPractice, practice, []size{{Flat, "7 3/4", "0"}, vee}},
	{"tongue and groove 3-1/8", "11/16", "3 3/8", random, Tongued, true, true, Published, faces + "groove: " + practice, []size{{Flat, "2 7/8", "0"}, vee}},
	{"tongue and groove 5-1/8", "11/16", "5 3/8", random, Tongued, true, true, Published, faces + "groove: " + practice, []size{{Flat, "4 7/8", "0"}, vee}},
	{"edge-and-center bead 3-1/8", "11/16", "3 3/8", random, Tongued, true, true, Published, faces + "beads: " + practice,
		[]size{{Flat, "1 5/16", "0"}, half, {Flat, "1 5/16", "0"}, half}},
	{"edge-and-center bead 5-1/8", "11/16", "5 3/8", random, Tongued, true, true, Published, faces + "beads: " + practice,
		[]size{{Flat, "2 5/16", "0"}, half, {Flat, "2 5/16", "0"}, half}},
	{"nickel gap 4-7/8", "5/8", "0", primed, Tongued, true, true, Published, nickel, []size{{Flat, "4 3/4", "0"}, gap}},
	{"nickel gap 6-7/8", "5/8", "0", primed, Tongued, true, true, Published, nickel, []size{{Flat, "6 3/4", "0"}, gap}},
	{"shiplap 6-3/4", "11/16", "7 1/8", random, Lapped, true, true, Published,
		"face and dressed width: a mill's table of coverage, of 8 in; thickness, lengths and groove: " + practice,
		[]size{{Flat, "6 5/8", "0"}, {Groove, "1/8", "3/8"}}},
	{"MDF sheet 100 mm", "9 mm", "1220 mm", []string{"2440 mm"}, Square, false, true, CommonPractice,
		"sheet, and 6 to 12 mm thick: a trade body for MDF; pitch: of its strips; groove: " + practice, []size{{Flat, "94 mm", "0"}, strip}},
	{"MDF strip 100 mm", "12 mm", "0", []string{"2440 mm"}, Tongued, true, true, Published, strips, []size{{Flat, "94 mm", "0"}, strip}},
	{"slat 40 mm", "21 mm", "600 mm", []string{"600 mm"}, Square, false, false, Published,
		"tile, slat, gap and thickness: a maker's drawing, 0.48 in of lath on 0.35 in of felt", []size{{Flat, "26 mm", "0"}, {Groove, "14 mm", "12 mm"}}},
	{"reeded 1/2", "1/2", "48", eight, Square, false, false, Invented, invented, []size{{Bead, "1/2", "1/4"}}},
	{"plain sheet", "1/4", "48", eight, Square, false, false, Published, "hardboard of 48 x 96 in, 1/8 to 3/8 in thick: NAVEDTRA 14069", nil},
}

// Builtin returns the profiles that come with the package, in a fixed order. They are starting
// points: measure the sheet in hand. The caller may change what it gets.
func Builtin() (all []Profile) {
	in := fraction.MustParse
	for _, b := range builtins {
		p := Profile{Name: b.name, Features: []Feature{}, Thickness: in(b.thickness), WideFlats: b.wideFlats, Boards: b.boards, Width: in(b.width), Cover: in(b.width),
			Edges: b.edges, Status: b.status, Source: b.source}
		for _, f := range b.features {
			p.Features = append(p.Features, Feature{f.kind, in(f.width), in(f.depth)})
		}
		for _, l := range b.sold {
			p.Lengths = append(p.Lengths, in(l))
		}
		if b.edges == Tongued {
			p.Tongue = TongueRight
		}
		if b.boards { // which shows its repeat, and is as wide as that and its lap
			if p.Cover = p.Pitch(); !p.Width.IsZero() {
				p.Lap = p.Width.Sub(p.Cover)
			}
		}
		all = append(all, p)
	}
	return all
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

// Renamed returns what a profile is called now that was builtin under another name, whose sizes no
// text has: 5-1/4 and 7-1/4 are no faces of boards, and a metric board was a sheet.
func Renamed(was string) (now string, ok bool) {
	now, ok = map[string]string{
		"tongue and groove 5-1/4": "tongue and groove 5-1/8",
		"shiplap 7-1/4":           "shiplap 6-3/4",
		"metric board 100":        "MDF sheet 100 mm",
	}[strings.ToLower(was)]
	return now, ok
}
