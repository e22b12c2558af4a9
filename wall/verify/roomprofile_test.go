package verify

import (
	"slices"

	"pgregory.net/rapid"
)

// repeat is a pattern in marks.
type repeat struct {
	name      string
	features  []stripe
	wideFlats bool
	boards    bool
	edges     string
}

type stripe struct {
	kind  string
	width int
}

func (p repeat) pitch() int {
	sum := 0
	for _, f := range p.features {
		sum += f.width
	}
	return sum
}

// The figures are invented, but of usual sizes.
var (
	inInches = []repeat{
		{name: "bead and flat", features: []stripe{{"flat", 18}, {"bead", 6}}},
		{name: "bead first", features: []stripe{{"bead", 5}, {"flat", 21}}},
		{name: "one-handed", features: []stripe{{"flat", 22}, {"groove", 3}, {"bead", 4}}},
		{name: "V-grooved planks", features: []stripe{{"flat", 52}, {"groove", 4}}},
		{name: "wide planks", features: []stripe{{"flat", 92}, {"groove", 4}}, wideFlats: true},
		{name: "one-handed wide planks", features: []stripe{{"flat", 70}, {"bead", 4}, {"groove", 3}}, wideFlats: true},
		{name: "two flats", features: []stripe{{"flat", 30}, {"bead", 5}, {"flat", 14}, {"groove", 3}}},
		{name: "twice the same", features: []stripe{{"flat", 16}, {"groove", 2}, {"flat", 16}, {"groove", 2}}},
		{name: "boards", features: []stripe{{"flat", 60}, {"groove", 4}}, boards: true},
		{name: "tongued boards", features: []stripe{{"groove", 3}, {"flat", 66}, {"groove", 3}}, boards: true, edges: "tongued"},
		{name: "lapped sheets", features: []stripe{{"flat", 28}, {"bead", 4}}, edges: "lapped"},
		{name: "tongued wide sheets", features: []stripe{{"flat", 90}, {"groove", 6}}, wideFlats: true, edges: "tongued"},
		{name: "plain"},
	}
	inMillimetres = []repeat{
		{name: "bead and flat", features: []stripe{{"flat", 28}, {"bead", 10}}},
		{name: "one-handed", features: []stripe{{"flat", 35}, {"groove", 5}, {"bead", 7}}},
		{name: "wide planks", features: []stripe{{"flat", 146}, {"groove", 6}}, wideFlats: true},
		{name: "boards", features: []stripe{{"groove", 4}, {"flat", 91}}, boards: true},
		{name: "tongued boards", features: []stripe{{"flat", 100}, {"groove", 5}}, boards: true, edges: "tongued"},
		{name: "lapped sheets", features: []stripe{{"flat", 70}, {"groove", 10}}, edges: "lapped"},
	}
)

func (d *draft) drawProfile() repeat {
	from := inInches
	if d.metric {
		from = inMillimetres
	}
	if d.small {
		// Boards have no seams to judge. A pattern that repeats within its own repeat can be turned
		// in more ways than its phase says.
		from = slices.DeleteFunc(slices.Clone(from), func(p repeat) bool { return p.boards || p.name == "twice the same" })
	}
	for label, has := range map[string]func(repeat) bool{
		"wide flats": func(p repeat) bool { return p.wideFlats }, "tongued boards": func(p repeat) bool { return p.boards && p.edges != "" },
		"lapped sheets": func(p repeat) bool { return !p.boards && p.edges != "" }, "sheets": func(p repeat) bool { return !p.boards },
	} {
		if slices.Contains(d.always, label) {
			from = slices.DeleteFunc(slices.Clone(from), func(p repeat) bool { return !has(p) })
		}
	}
	return rapid.SampledFrom(from).Draw(d.t, "profile")
}

func (p repeat) file(d *draft) object {
	features := []object{}
	for _, f := range p.features {
		file := object{"kind": f.kind, "width": d.length(f.width)}
		if f.kind == "groove" && d.chance(50, "depth given") {
			file["depth"] = d.length(2)
		}
		features = append(features, file)
	}
	out := object{"name": p.name, "features": features, "thickness": d.length(d.number(3, 8, "thickness"))}
	if p.wideFlats {
		out["wide_flats"] = true
	}
	if p.boards {
		out["boards"] = true
	}
	if p.edges != "" {
		out["edges"] = p.edges
		if p.edges == "tongued" && d.chance(60, "tongue") {
			out["tongue"] = d.one("tongue", "left", "right")
			d.tongue = out["tongue"].(string)
		}
	}
	return out
}
