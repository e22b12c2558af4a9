package finish

import "example.com/groovewright/fraction"

// Defaults returns the materials of a job in these units that names none, with every field filled
// in. The caller may change them. Each figure in the code has its source; "from memory" and
// "judgment" mean that no text is behind it.
func Defaults(units fraction.Unit) Materials {
	metric := units != fraction.Inch
	taped := func(inch, otherwise Taped) Taped { return of(metric, inch, otherwise) }
	cartridge := func(inch, otherwise Volume) Container {
		size := of(metric, inch, otherwise)
		return Container{Name: string(size) + " cartridge", Size: size}
	}
	// within the 10 to 10.5 fl oz that a how-to article prints, which has 28 fl oz too; 300 and 600 mL
	// from memory
	usual, large := cartridge("10.1 fl oz", "300 mL"), cartridge("28 fl oz", "600 mL")
	coating := func(before, after Number, inch, otherwise Coverage) Coating {
		tins := of(metric, []Container{{Name: "quart", Size: "1 qt"}, {Name: "gallon", Size: "1 gal"}},
			[]Container{{Name: "0.75 L tin", Size: "0.75 L"}, {Name: "2.5 L tin", Size: "2.5 L"}}) // from memory
		return Coating{Before: before, After: after, Coverage: of(metric, inch, otherwise), Containers: tins}
	}
	fillet := Bead{Form: Fillet, Leg: taped(`1/8"`, "3 mm")} // painted, moves little; judgment
	strip := of(metric, Roll{Name: "8 ft strip", Length: "8'"}, Roll{Name: "2.4 m strip", Length: "2400 mm"})
	const waste = "0.1" // waste and partial packs; common practice, from memory
	size, spacing := usualGlue(GlueBeads, LightHold, metric)
	return Materials{
		House: House{
			Wall:  taped(`1/2"`, "12.5 mm"), // gypsum board; common practice, no source
			Studs: taped(`16"`, "400 mm"),   // at most: IRC R702.5, Ontario guidance on hardboard
			Datum: taped(`36"`, "900 mm"),   // of a counter; common practice, from memory
		},
		Paint: Paint{
			// Primer and a first top coat while the panels lie flat, the last coat when the joints
			// are sealed: judgment. Coverage is the middle of 200 to 300 ft2/gal printed for primer
			// in a how-to article, and the low end of 350 to 400 printed for interior paint.
			Primer:    coating("1", "0", "250 ft2/gal", "6 m2/L"),
			Top:       coating("1", "1", "350 ft2/gal", "8.5 m2/L"),
			Loss:      "0.1", // between the usual 5 and 15 percent; from memory
			EdgeCoats: "2",   // sawn edges of fiberboard drink more; judgment
		},
		Sealant: Sealant{
			// least contact where movement is expected: ASTM C1193, from memory
			CounterLine: Bead{Form: Fillet, Leg: taped(`1/4"`, "6 mm")},
			CabinetLine: fillet, InsideCorner: fillet, End: fillet, Step: fillet, Window: fillet,
			OutsideCorner: Bead{Form: NoBead, Leg: fillet.Leg},
			Seam:          Bead{Form: Butt, Leg: fillet.Leg},
			GrooveFill:    taped(`1/4"`, "6 mm"), // judgment
			Bridge:        taped(`1/4"`, "6 mm"), // the low end of 1/4 to 1/2 in: a general article
			Waste:         waste,
			Cartridges:    []Container{usual}, WetCartridges: []Container{usual},
			Backing: []Roll{of(metric, Roll{Name: "20 ft length", Length: "20'"}, Roll{Name: "6 m length", Length: "6000 mm"})},
		},
		Adhesive: Adhesive{Boards: NoGlue, Size: size, Spacing: spacing, Waste: waste, Cartridges: []Container{usual, large},
			Miter: []Container{of(metric, Container{Name: "8 fl oz bottle", Size: "8 fl oz"}, Container{Name: "250 mL bottle", Size: "250 mL"})}},
		Nails: Nails{
			Edge:        taped(`6"`, "150 mm"),  // Ontario guidance on hardboard; others: the maker decides
			Field:       taped(`12"`, "300 mm"), // Ontario guidance on hardboard; others: the maker decides
			Penetration: taped(`3/4"`, "20 mm"), // Ontario Building Code, for fiberboard finish
			// 2d to 10d: an open textbook of the University of Hawaii has 3d 1-1/4, 4d 1-1/2, 6d 2,
			// 8d 2-1/2, 10d 3 in; the others from memory.
			Lengths: of(metric, []Taped{`1"`, `1 1/4"`, `1 1/2"`, `2"`, `2 1/2"`, `3"`},
				[]Taped{"25 mm", "30 mm", "40 mm", "50 mm", "60 mm", "75 mm"}),
			Waste: waste,
			Packs: []Pack{{Name: "box of 1000", Count: 1000}},
		},
		Furring: Furring{Strips: []Roll{strip}, Waste: waste, Packs: []Pack{{Name: "box of 100", Count: 100}}},
		Extenders: of(metric, []Extender{{Depth: `1/4"`}, {Depth: `1/2"`}, {Depth: `3/4"`}, {Depth: `1"`}, {Depth: `1 1/2"`}},
			[]Extender{{Depth: "6 mm"}, {Depth: "12 mm"}, {Depth: "20 mm"}, {Depth: "25 mm"}, {Depth: "40 mm"}}),
		Screws: Screws{ // two hold a device; all from memory
			DevicePerGang: "2",
			DeviceUsual:   taped(`3/4"`, "20 mm"),
			Lengths: of(metric, []Taped{`1/2"`, `3/4"`, `1"`, `1 1/4"`, `1 1/2"`, `2"`, `2 1/2"`, `3"`},
				[]Taped{"12 mm", "20 mm", "25 mm", "30 mm", "40 mm", "50 mm", "60 mm", "75 mm"}),
			Packs:   []Pack{{Name: "pack of 10", Count: 10}},
			Spacers: []Pack{{Name: "pack of 10 spacers", Count: 10}},
		},
		Tape: Tape{ // on each side of a bead, and along what must stay bare; judgment
			SealLines: "2", PaintLines: "1", Waste: waste,
			Rolls: []Roll{of(metric, Roll{Name: "60 yd roll", Length: "180'"}, Roll{Name: "50 m roll", Length: "50000 mm"})},
		},
		Sheeting: Sheeting{
			Reach:  taped(`48"`, "1200 mm"), // a counter two feet deep and its front; judgment
			Sheets: []Cover{of(metric, Cover{Name: "9 x 12 ft sheet", Size: "108 ft2"}, Cover{Name: "4 x 5 m sheet", Size: "20 m2"})},
		},
		Trim: Trim{Stick: strip, Allow: taped(`1/2"`, "12 mm")}, // 1/4 in at each end; judgment
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
	full = full && form == GlueBeads
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
