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
	lengths := func(all ...string) (sold []fraction.Length) {
		for _, l := range all {
			sold = append(sold, in(l))
		}
		return sold
	}
	sheet := func(name, thickness, width, length string, status Status, source string, features ...Feature) Profile {
		return Profile{Name: name, Features: features, Thickness: in(thickness), Cover: in(width), Width: in(width),
			Edges: Square, Lengths: lengths(length), Status: status, Source: source}
	}
	// A board shows its repeat. It is as wide as that and its lap; "0" where that is not known.
	board := func(name, thickness, width string, status Status, source string, sold []fraction.Length, features ...Feature) Profile {
		p := Profile{Name: name, Features: features, Thickness: in(thickness), WideFlats: true, Boards: true, Width: in(width),
			Edges: Tongued, Tongue: TongueRight, Lengths: sold, Status: status, Source: source}
		if p.Cover = p.Pitch(); !p.Width.IsZero() {
			p.Lap = p.Width.Sub(p.Cover)
		}
		return p
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
	random, primed := lengths("96", "120", "144", "192"), lengths("144", "192")
	vee, half := groove("1/4", "1/8"), bead("1/4", "1/16")
	return []Profile{
		sheet("beadboard 1-1/2", "1/4", "48", "96", CommonPractice, "pitch: lower end of 1-1/2 to 2-1/2 in, a tool glossary"+common+beads,
			flat("1 1/4"), half),
		sheet("beadboard 1-5/8", "1/4", "48", "96", CommonPractice, "pitch: a size that is sold, from memory"+common+beads,
			flat("1 3/8"), half),
		sheet("beadboard 2", "1/4", "48", "96", CommonPractice, "pitch: within 1-1/2 to 2-1/2 in, a tool glossary"+common+beads,
			flat("1 5/8"), groove("1/16", "1/16"), half, groove("1/16", "1/16")),
		wide(sheet("V-groove planking 3-1/2", "1/4", "48", "96", Invented, invented, flat("3 1/4"), vee)),
		wide(sheet("V-groove planking 6", "1/2", "48", "96", Invented, invented, flat("5 3/4"), vee)),
		wide(sheet("V-groove sheet 4", "11/32", "48", "96", CommonPractice, practice, flat("3 3/4"), vee)),
		wide(sheet("V-groove sheet 8", "11/32", "48", "96", CommonPractice, practice, flat("7 3/4"), vee)),
		board("tongue and groove 3-1/8", "11/16", "3 3/8", Published, faces+"groove: "+practice, random, flat("2 7/8"), vee),
		board("tongue and groove 5-1/8", "11/16", "5 3/8", Published, faces+"groove: "+practice, random, flat("4 7/8"), vee),
		board("edge-and-center bead 3-1/8", "11/16", "3 3/8", Published, faces+"beads: "+practice, random,
			flat("1 5/16"), half, flat("1 5/16"), half),
		board("edge-and-center bead 5-1/8", "11/16", "5 3/8", Published, faces+"beads: "+practice, random,
			flat("2 5/16"), half, flat("2 5/16"), half),
		board("nickel gap 4-7/8", "5/8", "0", Published, nickel, primed, flat("4 3/4"), groove("1/8", "1/4")),
		board("nickel gap 6-7/8", "5/8", "0", Published, nickel, primed, flat("6 3/4"), groove("1/8", "1/4")),
		lapped(board("shiplap 6-3/4", "11/16", "7 1/8", Published,
			"face and dressed width: a mill's table of coverage, of 8 in; thickness, lengths and groove: "+practice, random,
			flat("6 5/8"), groove("1/8", "3/8"))),
		wide(sheet("MDF sheet 100 mm", "9 mm", "1220 mm", "2440 mm", CommonPractice,
			"sheet, and 6 to 12 mm thick: a trade body for MDF; pitch: of its strips; groove: "+practice, flat("94 mm"), groove("6 mm", "3 mm"))),
		board("MDF strip 100 mm", "12 mm", "0", Published, strips, lengths("2440 mm"),
			flat("94 mm"), groove("6 mm", "3 mm")),
		sheet("slat 40 mm", "21 mm", "600 mm", "600 mm", Published,
			"tile, slat, gap and thickness: a maker's drawing, 0.48 in of lath on 0.35 in of felt", flat("26 mm"), groove("14 mm", "12 mm")),
		sheet("reeded 1/2", "1/2", "48", "96", Invented, invented, bead("1/2", "1/4")),
		sheet("plain sheet", "1/4", "48", "96", Published, "hardboard of 48 x 96 in, 1/8 to 3/8 in thick: NAVEDTRA 14069", []Feature{}...),
	}
}

// wide has the cut flats of a profile judged by how much of them is left.
func wide(p Profile) Profile {
	p.WideFlats = true
	return p
}

// lapped makes shiplap of boards with tongues.
func lapped(p Profile) Profile {
	p.Edges, p.Tongue = Lapped, TongueUnknown
	return p
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
