package finish

import "example.com/groovewright/fraction"

// Defaults returns the materials of a job in these units that names none, with every field filled
// in, but for the forms that depend on the thickness of the sheets. The caller may change them.
// [Origins] has where each comes from.
func Defaults(units fraction.Unit) Materials {
	metric := units != fraction.Inch
	taped := func(inch, otherwise Taped) Taped { return of(metric, inch, otherwise) }
	cartridge := func(inch, otherwise Volume) Container {
		size := of(metric, inch, otherwise)
		return Container{Name: string(size) + " cartridge", Size: size}
	}
	usual, large := cartridge("10.1 fl oz", "300 mL"), cartridge("28 fl oz", "600 mL")
	coating := func(before, after Number, inch, otherwise Coverage) Coating {
		tins := of(metric, []Container{{Name: "quart", Size: "1 qt"}, {Name: "gallon", Size: "1 gal"}},
			[]Container{{Name: "0.75 L tin", Size: "0.75 L"}, {Name: "2.5 L tin", Size: "2.5 L"}})
		return Coating{Before: before, After: after, Coverage: of(metric, inch, otherwise), Containers: tins}
	}
	fillet := Bead{Form: Fillet, Leg: taped(`1/8"`, "3 mm")}
	strip := of(metric, Roll{Name: "8 ft strip", Length: "8'"}, Roll{Name: "2.4 m strip", Length: "2400 mm"})
	const waste = "0.1"
	size, spacing := usualGlue(GlueBeads, LightHold, metric)
	return Materials{
		House: House{
			Wall:  taped(`1/2"`, "12.5 mm"),
			Studs: taped(`16"`, "400 mm"),
			Datum: taped(`36"`, "900 mm"),
		},
		Paint: Paint{
			Primer:    coating("1", "0", "250 ft2/gal", "6 m2/L"),
			Top:       coating("1", "1", "350 ft2/gal", "8.5 m2/L"),
			Loss:      "0.1",
			EdgeCoats: "2",
		},
		Sealant: Sealant{
			CounterLine: Bead{Form: Fillet, Leg: taped(`1/4"`, "6 mm")},
			CabinetLine: fillet, InsideCorner: fillet, End: fillet, Step: fillet, Window: fillet,
			OutsideCorner: Bead{Form: NoBead, Leg: fillet.Leg},
			Seam:          Bead{Form: Butt, Leg: fillet.Leg},
			GrooveFill:    taped(`1/4"`, "6 mm"),
			Bridge:        taped(`1/4"`, "6 mm"),
			Waste:         waste,
			Cartridges:    []Container{usual}, WetCartridges: []Container{usual},
			Backing: []Roll{of(metric, Roll{Name: "20 ft length", Length: "20'"}, Roll{Name: "6 m length", Length: "6000 mm"})},
		},
		Adhesive: Adhesive{Boards: NoGlue, Size: size, Spacing: spacing, Waste: waste, Cartridges: []Container{usual, large},
			Miter: []Container{of(metric, Container{Name: "8 fl oz bottle", Size: "8 fl oz"}, Container{Name: "250 mL bottle", Size: "250 mL"})}},
		Nails: Nails{
			Edge:        taped(`6"`, "150 mm"),
			Field:       taped(`12"`, "300 mm"),
			Inset:       taped(`3/8"`, "10 mm"),
			Clear:       taped(`3"`, "75 mm"),
			Penetration: taped(`3/4"`, "20 mm"),
			Lengths: of(metric, []Taped{`1"`, `1 1/4"`, `1 1/2"`, `2"`, `2 1/2"`, `3"`},
				[]Taped{"25 mm", "30 mm", "40 mm", "50 mm", "60 mm", "75 mm"}),
			Waste: waste,
			Packs: []Pack{{Name: "box of 1000", Count: 1000}},
		},
		Furring: Furring{Strips: []Roll{strip}, Waste: waste, Packs: []Pack{{Name: "box of 100", Count: 100}}},
		Extenders: of(metric, []Extender{{Depth: `1/4"`}, {Depth: `1/2"`}, {Depth: `3/4"`}, {Depth: `1"`}, {Depth: `1 1/2"`}},
			[]Extender{{Depth: "6 mm"}, {Depth: "12 mm"}, {Depth: "20 mm"}, {Depth: "25 mm"}, {Depth: "40 mm"}}),
		Screws: Screws{
			DevicePerGang: "2",
			DeviceUsual:   taped(`3/4"`, "20 mm"),
			Lengths: of(metric, []Taped{`1/2"`, `3/4"`, `1"`, `1 1/4"`, `1 1/2"`, `2"`, `2 1/2"`, `3"`},
				[]Taped{"12 mm", "20 mm", "25 mm", "30 mm", "40 mm", "50 mm", "60 mm", "75 mm"}),
			Packs:   []Pack{{Name: "pack of 10", Count: 10}},
			Spacers: []Pack{{Name: "pack of 10 spacers", Count: 10}},
		},
		Tape: Tape{
			SealLines: "2", PaintLines: "1", Waste: waste,
			Rolls: []Roll{of(metric, Roll{Name: "60 yd roll", Length: "180'"}, Roll{Name: "50 m roll", Length: "50000 mm"})},
		},
		Sheeting: Sheeting{
			Reach:  taped(`48"`, "1200 mm"),
			Sheets: []Cover{of(metric, Cover{Name: "9 x 12 ft sheet", Size: "108 ft2"}, Cover{Name: "4 x 5 m sheet", Size: "20 m2"})},
		},
		Trim: Trim{Stick: strip, Allow: taped(`1/2"`, "12 mm"), Waste: waste},
		Tax:  "0", LeftoverWorth: "0",
	}
}

// usualGlue returns the usual size and spacing of beads or dots. The bead, one for each stud, is
// that of stud adhesive in NAVEDTRA 14044, figure 5-8 (gypsum board); a full hold halves the
// spacing. Dots, half balls before they are pressed, and their grids are judgment.
func usualGlue(form GlueForm, hold Hold, metric bool) (size, spacing Taped) {
	full := hold == FullHold
	if form == GlueDots {
		return of[Taped](metric, `1"`, "25 mm"), of(metric, of[Taped](full, `12"`, `6"`), of[Taped](full, "300 mm", "150 mm"))
	}
	full = full && (form == GlueBeads || form == GlueCustom)
	return of[Taped](metric, `3/8"`, "10 mm"), of(metric, of[Taped](full, `16"`, `8"`), of[Taped](full, "400 mm", "200 mm"))
}

// of returns the second value where something holds, else the first: inches come before what is
// metric.
func of[T any](holds bool, no, yes T) T {
	if holds {
		return yes
	}
	return no
}
