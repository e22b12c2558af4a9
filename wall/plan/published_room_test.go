package plan_test

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

func (f *figures) boxes() {
	outlet := func(material finish.Material, thickness fraction.Length) (finish.Work, finish.Materials) {
		return finish.Work{Profile: groove.Profile{Thickness: thickness}, Boxes: []finish.Box{{Name: "outlet"}}},
			finish.Materials{House: finish.House{Material: material}}
	}
	extender := func(material finish.Material, thickness string) *big.Rat {
		w, m := outlet(material, in(thickness))
		return f.size(w, m, finish.ItemExtender)
	}
	f.add(byTakeOff, "flush box behind 1/4 in panel, wood", "1/4 in extender", "1/4", extender(finish.MDF, "1/4"), "0", magazineNEC, readOurs)
	f.add(byTakeOff, "flush box behind 3/4 in boards, wood", "3/4 in extender", "3/4", extender(finish.SolidWood, "3/4"), "0", cabin, read)
	f.add(byTakeOff, "flush box behind 1/4 in, not combustible", "none", "0", extender(finish.Noncombustible, "1/4"), "0", nec314, read)
	back := func(material finish.Material) *big.Rat {
		return mul(rat("25.4"), f.threshold(func(depth fraction.Length) bool {
			w, m := outlet(material, depth)
			return f.need(w, m, finish.ItemExtender).Sign() == 0
		}))
	}
	f.add(byTakeOff, "set-back in a face that cannot burn", "6 mm (1/4 in)", "6", back(finish.Noncombustible), "0.5", nec314, read)
	f.add(byTakeOff, "set-back in a face that can burn", "0", "0", back(finish.Plywood), "0", nec314, read)
	w, m := outlet(finish.MDF, in("3/4"))
	w.Boxes[0].Gangs = 3
	f.add(byTakeOff, "screws for three devices", "2 each: 6", "6", f.need(w, m, finish.ItemDeviceScrews), "0", hand, practice)
	f.add(byTakeOff, "their length through a 3/4 in extender", "3/4 + 3/4 = 1-1/2 in", "3/2", f.size(w, m, finish.ItemDeviceScrews), "0", hand, practice)

	w, m = outlet(finish.Noncombustible, in("1/4"))
	w.Boxes[0].Gangs = 3
	f.add(byTakeOff, "spacers under three devices that come out of a box 1/4 in back", "one a screw: 6", "6", f.need(w, m, finish.ItemSpacers), "0", hand, practice)

	_, doubts, err := finish.TakeOff(finish.Work{Profile: sheet("1/4"), Pieces: []finish.Piece{{Width: in("48"), Height: in("96")}}},
		finish.Materials{Nails: finish.Nails{Lengths: []finish.Taped{`3"`}}})
	for _, d := range doubts {
		if d.Kind == finish.NailNearCables {
			f.add(byTakeOff, "cable behind the face of a stud, doubted from there", "32 mm (1-1/4 in)", "32", mul(rat("25.4"), d.Lengths[2].Rat()), "0.5", nec300, read)
		}
	}
	if err != nil {
		f.Fatal(err)
	}

	// Ten boxes of 1 to 10 devices, and a plate that has to reach 20 in past each cutout.
	var boxes []string
	for n := 1; n <= 10; n++ {
		boxes = append(boxes, fmt.Sprintf(`{"name": "%d", "kind": "box", "left": "%d", "bottom": "10", "width": "2", "height": "3", "gangs": %d}`, n, 10*n, n))
	}
	p := makeFrom(f, `{"profile": "beadboard 2", "priorities": {"least_cover": "20"}, "stock": [{"name": "sheet", "width": "48", "length": "96"}],
		"runs": [{"name": "wall", "width": "120", "left": {"kind": "covered"}, "right": {"kind": "covered"},
		"heights": [{"at": "0", "top": "30"}, {"at": "120", "top": "30"}], "openings": [`+strings.Join(boxes, ", ")+`]}]}`)
	sizes := map[int][]fraction.Length{}
	for _, d := range p.Warnings {
		if d.Kind == plan.CoverTooSmall {
			sizes[d.Counts[0]] = d.Lengths
		}
	}
	if len(sizes) != 10 {
		f.Fatalf("%d plates of 10", len(sizes))
	}
	for n, width := range []string{"2 3/4", "", "6 3/8", "8 3/16", "10", "11 13/16", "13 5/8", "15 7/16", "17 1/4", "19 1/16"} {
		if ours := sizes[n+1][0].Rat(); width == "" {
			f.wrong(byMake, "plate of 2 gangs, width", "4-1/2 in", "4.5625", ours, "0", architects, "rounded: each gang adds 1-13/16 in")
			f.add(byMake, "plate of 2 gangs, width", "4.56 in", "4.56", ours, "0.005", plates, read)
		} else {
			f.add(byMake, fmt.Sprintf("plate for %d in a row, width", n+1), width+" in", in(width).Rat().RatString(), ours, "0", architects, read)
		}
	}
	metric := makeFrom(f, `{"units": "mm", "profile": "beadboard 2", "priorities": {"least_cover": "500"}, "stock": [{"name": "sheet", "width": "1220", "length": "2440"}],
		"runs": [{"name": "wall", "width": "1000", "left": {"kind": "covered"}, "right": {"kind": "covered"},
		"heights": [{"at": "0", "top": "700"}, {"at": "1000", "top": "700"}], "openings": [{"name": "two", "kind": "box", "left": "300", "bottom": "300", "width": "139", "height": "68"}]}]}`)
	for _, d := range metric.Warnings {
		if d.Kind == plan.CoverTooSmall {
			f.add(byMake, "metric: plate over a box for two, width", "80 + 71 = 151 mm", "151", mul(rat("25.4"), d.Lengths[0].Rat()), "0", hand, memory)
			f.add(byMake, "metric: plate over a box for two, height", "80 mm", "80", mul(rat("25.4"), d.Lengths[1].Rat()), "0", hand, memory)
		}
	}
	f.add(byMake, "plate of 2 gangs, height", "4.5 in", "4.5", sizes[2][1].Rat(), "0", plates, read)
	f.add(byMake, "plate of 1 gang, height", "4.490 in", "4.49", sizes[1][1].Rat(), "0.01", architects, read)
	f.add(byMake, "plate of 1 gang past a box 2 in wide, each side", "3/8 in", "3/8", sizes[1][2].Rat(), "0", hand, derived)
}

func (f *figures) fasteners() {
	big4x8 := finish.Piece{Width: in("48"), Height: in("96")}
	panel := func(thickness string, pieces ...finish.Piece) finish.Work {
		return finish.Work{Profile: sheet(thickness), Pieces: pieces}
	}
	for _, row := range []struct {
		penny, inches string
		into          finish.Taped
	}{{"3d", "1 1/4", `1/2"`}, {"4d", "1 1/2", `3/4"`}, {"6d", "2", `1 1/4"`}, {"8d", "2 1/2", `1 3/4"`}, {"10d", "3", `2 1/4"`}} {
		f.add(byTakeOff, "nail "+row.penny+", through 1/4 in of panel and 1/2 in of wall", row.inches+" in", in(row.inches).Rat().RatString(),
			f.size(panel("1/4", big4x8), finish.Materials{Nails: finish.Nails{Penetration: row.into}}, finish.ItemPanelNails), "0", textbook, read)
	}
	short := func(n finish.Nails, boards bool) *big.Rat { // the thickest panel that a 2 in nail holds
		return f.threshold(func(thickness fraction.Length) bool {
			w := finish.Work{Profile: groove.Profile{Features: []groove.Feature{{Width: in("5")}}, Boards: boards, Thickness: thickness}, Pieces: []finish.Piece{big4x8}}
			item := finish.ItemPanelNails
			if boards {
				item = finish.ItemBoardNails
			}
			return f.size(w, finish.Materials{Nails: n}, item).Cmp(rat("2")) <= 0
		})
	}
	two := finish.Nails{Lengths: []finish.Taped{`2"`}}
	f.add(byTakeOff, "nails into the support, at least", "20 mm", "20", mul(rat("25.4"), sub(rat("3/2"), short(two, false))), "1", ontario, read)

	count := func(w finish.Work, m finish.Materials, item finish.Item) *big.Rat {
		m.Nails.Waste = "0"
		return f.need(w, m, item)
	}
	spaced := func(edge, field finish.Taped) finish.Materials {
		return finish.Materials{Nails: finish.Nails{Edge: edge, Field: field}}
	}
	f.add(byTakeOff, "nails in a 4 × 8 ft sheet, 6 and 12 in", "on 4 supports: 2 × 17 + 2 × 9 = 52", "52", count(panel("1/4", big4x8), spaced(`6"`, `12"`), finish.ItemPanelNails), "0", hand, derived)
	f.add(byTakeOff, "nails in a 4 × 8 ft sheet, 4 and 8 in", "on 4 supports: 2 × 25 + 2 × 13 = 76", "76", count(panel("1/4", big4x8), spaced(`4"`, `8"`), finish.ItemPanelNails), "0", hand, derived)
	f.add(byTakeOff, "our allowance for nails lost", "10 %", "0.1", sub(quo(f.need(panel("1/4", big4x8), spaced(`6"`, `12"`), finish.ItemPanelNails), rat("52")), rat("1")), "0.02", hand, memory)

	narrow := finish.Piece{Width: in("16"), Height: in("96")} // on two supports, one at each edge
	along := func(nails *big.Rat) *big.Rat {
		return mul(rat("25.4"), quo(rat("96"), sub(quo(nails, rat("2")), rat("1"))))
	}
	f.add(byTakeOff, "nails at the edges of sheets, apart", "150 mm (6 in)", "150", along(count(panel("1/4", narrow), finish.Materials{}, finish.ItemPanelNails)), "5", hardboards, read)
	f.add(byTakeOff, "nails inside sheets, apart", "300 mm (12 in)", "300", along(sub(count(panel("1/4", big4x8), spaced(`96"`, ""), finish.ItemPanelNails), rat("4"))), "5", hardboards, read)
	gap := finish.Work{Profile: sheet("1/4"), Pieces: []finish.Piece{{Width: in("1000 mm"), Height: in("96")}}, Joints: []finish.Joint{{Kind: finish.Seam, Length: in("96")}}}
	if _, doubts, err := finish.TakeOff(gap, finish.Materials{}); err == nil {
		for _, d := range doubts {
			if d.Kind == finish.SeamTight {
				f.add(byTakeOff, "gap between MDF sheets a metre wide", "2.5 mm", "2.5", mul(rat("25.4"), d.Lengths[1].Rat()), "0.2", mdfBody, read)
			}
		}
	}

	// Adhesive.
	usual := f.need(panel("1/4", big4x8), finish.Materials{Adhesive: finish.Adhesive{Waste: "0"}}, finish.ItemAdhesive)
	f.add(byTakeOff, "adhesive for a 4 × 8 ft sheet", "about a cartridge of 10 fl oz", "10", usual, "0", hand, memory)
	bead := func(pieces ...finish.Piece) *big.Rat { // in3
		n := f.need(panel("1/4", pieces...), finish.Materials{Adhesive: finish.Adhesive{Form: finish.GlueBeads, Waste: "0"}}, finish.ItemAdhesive)
		return mul(n, rat("231/128"))
	}
	section := rat("0.11044662") // π (3/8)²/4
	one := finish.Piece{Width: in("16"), Height: fraction.Inches(96000)}
	f.add(byTakeOff, "bead of stud adhesive, across", "3/8 in", "3/8", root(quo(bead(one), rat("150796.4474"))), "0.0001", navy, read) // π/4 × 2 × 96,000
	f.add(byTakeOff, "beads of 3/8 in where two 4 ft sheets meet on studs 16 in apart", "2 of 8 lines of 8 ft", "8", quo(bead(big4x8, big4x8), mul(section, rat("96"))), "0.05", navy, readOurs)
	f.add(byTakeOff, "10.1 fl oz in a round bead of 3/8", "13.75 ft", "13.75", quo(mul(rat("10.1"), rat("231/128"), rat("3200")), bead(slices.Repeat([]finish.Piece{big4x8}, 100)...)), "0.05", hand, derived)

	large := f.list(panel("1/4", one), finish.Materials{})
	f.add(byTakeOff, "large cartridge of adhesive", "28 fl oz", "28", quo(f.packed(large, finish.ItemAdhesive)), "0", cartridges, read)
	mitre := finish.Work{Profile: sheet("3/4"), Mitred: true, Joints: []finish.Joint{{Kind: finish.OutsideCorner, Length: fraction.Inches(96000)}}}
	f.add(byTakeOff, "wood glue in 8000 ft of mitres, a bead of 1/8 in", "π/256 in2: 1178.1 in3", "1178.1",
		mul(rat("231/128"), f.need(mitre, finish.Materials{Adhesive: finish.Adhesive{Waste: "0"}}, finish.ItemMiterGlue)), "0.2", hand, practice)

	// Boards: 12 wide and 8 ft high.
	boards := finish.Work{Profile: groove.Profile{Features: []groove.Feature{{Width: in("12")}}, Boards: true, Edges: groove.Tongued, Thickness: in("3/4")}, Pieces: []finish.Piece{{Width: in("12"), Height: in("96")}}}
	crossings := count(boards, finish.Materials{}, finish.ItemBoardNails)
	f.add(byTakeOff, "strips behind upright boards, apart", "at most 16 in", "16", quo(rat("96"), sub(crossings, rat("1"))), "0", upright, read)
	f.add(byTakeOff, "strips behind a beaded ceiling, apart", "16 in", "16", quo(rat("96"), sub(crossings, rat("1"))), "0", porch, read)
	f.add(byTakeOff, "supports of hardboard sheets, apart", "400 mm (16 in)", "400", mul(rat("25.4"), quo(rat("96"), sub(crossings, rat("1")))), "10", hardboards, read)
	strips := finish.Materials{Furring: finish.Furring{Thickness: `3/4"`}, Nails: finish.Nails{Waste: "0"}}
	f.add(byTakeOff, "nails of those strips, one a stud and one a strip", "92.4/16 and 92.4/96: 6 + 1", "7", f.need(boards, strips, finish.ItemStripNails), "0", hand, practice)
	f.add(byTakeOff, "their length through 3/4 in of strip and 1/2 in of wall", "3/4 + 1/2 + 3/4 = 2 in", "2", f.size(boards, strips, finish.ItemStripNails), "0", ontario, readOurs)
	slanted := finish.Nails{Lengths: []finish.Taped{"1 37/64", "1 19/32", "1 39/64"}}
	f.add(byTakeOff, "nail at 45° through the root of a tongue, 3/4 in boards", "√2 × (3/8 + 3/4) = 1.591 in", "1.59375", f.size(boards, finish.Materials{Nails: slanted}, finish.ItemBoardNails), "0", tongueRoot, readOurs)
	square := boards
	square.Profile.Edges = groove.Square
	faced := finish.Nails{Lengths: []finish.Taped{"1 31/64", "1 1/2", "1 37/64"}}
	f.add(byTakeOff, "nail through the face of 3/4 in boards without a tongue", "3/4 + 3/4 = 1 1/2 in", "1.5", f.size(square, finish.Materials{Nails: faced}, finish.ItemBoardNails), "0", ontario, readOurs)
	f.add(byTakeOff, "level strips behind that board, six spaces of 16 in and 10 %", "7 × 1 ft × 1.1 = 7.7 ft", "7.7",
		f.need(boards, finish.Materials{Furring: finish.Furring{Thickness: `3/4"`}}, finish.ItemFurringStrips), "0", hand, practice)
}

// metric is a job in millimetres that gives nothing.
func (f *figures) metric() {
	panel := func(width string) finish.Work {
		return finish.Work{Units: fraction.Millimetre, Profile: sheet("6 mm"), Pieces: []finish.Piece{{Width: in(width), Height: in("2400 mm")}}}
	}
	nails := func(width string, n finish.Nails) *big.Rat {
		n.Waste = "0"
		return f.need(panel(width), finish.Materials{Nails: n}, finish.ItemPanelNails)
	}
	apart := func(nails *big.Rat) *big.Rat { return quo(rat("2400"), sub(quo(nails, rat("2")), rat("1"))) }
	f.add(byTakeOff, "metric: nails at the edges of sheets, apart", "150 mm", "150", apart(nails("400 mm", finish.Nails{})), "0", hardboards, read)
	f.add(byTakeOff, "metric: nails inside sheets, apart", "300 mm", "300", apart(sub(nails("1200 mm", finish.Nails{Edge: "2400"}), rat("4"))), "0", hardboards, read)
	boards := panel("100 mm")
	boards.Profile = groove.Profile{Features: []groove.Feature{{Width: in("100 mm")}}, Boards: true, Thickness: in("20 mm")}
	crossings := f.need(boards, finish.Materials{Nails: finish.Nails{Waste: "0"}}, finish.ItemBoardNails)
	f.add(byTakeOff, "metric: strips behind upright boards, apart", "400 mm", "400", quo(rat("2400"), sub(crossings, rat("1"))), "0", hardboards, read)
	f.add(byTakeOff, "metric: nail through 6 mm of panel and 12.5 mm of wall, 20 mm into the support", "38.5 mm: one of 40", "40",
		f.size(panel("1200 mm"), finish.Materials{}, finish.ItemPanelNails), "0", ontario, readOurs)
	joint := func(kind finish.JointKind, item finish.Item) *big.Rat { // leg of the fillet
		w := finish.Work{Units: fraction.Millimetre, Profile: sheet("6 mm"), Joints: []finish.Joint{{Kind: kind, Length: in("200000 mm")}}}
		return root(quo(f.need(w, finish.Materials{Sealant: finish.Sealant{Waste: "0"}}, item), rat("100")))
	}
	f.add(byTakeOff, "metric: least joint that moves, at the counter", "6 mm", "6", joint(finish.CounterLine, finish.ItemWetSealant), "0.001", detailing, read)
	f.add(byTakeOff, "metric: fillet under cabinets on each face", "1/8 in: 3 mm", "3", joint(finish.CabinetLine, finish.ItemPaintableSealant), "0.001", tips, readOurs)
	box := finish.Work{Units: fraction.Millimetre, Profile: sheet("20 mm"), Boxes: []finish.Box{{Name: "outlet"}}}
	f.add(byTakeOff, "metric: flush box behind 20 mm boards, wood", "20 mm extender", "20", f.size(box, finish.Materials{}, finish.ItemExtender), "0", cabin, readOurs)
	f.add(byTakeOff, "metric: screw through it", "20 + 20 = 40 mm", "40", f.size(box, finish.Materials{}, finish.ItemDeviceScrews), "0", hand, practice)
	run := finish.Work{Units: fraction.Millimetre, Profile: sheet("6 mm"), Width: in("100000 mm"), Joints: []finish.Joint{{Kind: finish.CounterLine, Length: in("500000 mm")}}}
	rows := f.list(run, finish.Materials{House: finish.House{Datum: "0"}, Tape: finish.Tape{Waste: "0", SealLines: "1", PaintLines: "0"}})
	f.add(byTakeOff, "metric: sheeting along 100 m of floor", "1.2 m wide: 120 m2", "120", f.need(run, finish.Materials{House: finish.House{Datum: "0"}}, finish.ItemFloorSheeting), "0", hand, practice)
	f.add(byTakeOff, "metric: sheet of 4 × 5 m", "20 m2", "20", quo(f.packed(rows, finish.ItemFloorSheeting)), "0", hand, derived)
	f.add(byTakeOff, "metric: roll of tape", "50 m", "50", quo(f.packed(rows, finish.ItemTape)), "0", hand, practice)
	filled, m := volumes(fraction.Millimetre)
	f.add(byTakeOff, "metric: cartridge of sealant, in fl oz", "10 to 10.5 fl oz", "10.25",
		quo(quo(f.packed(f.list(filled, m), finish.ItemPaintableSealant)), rat("29.5735")), "0.25", cartridges, read)
}

// packed returns the quantity and the packs of the first row of an item that fills its packs.
func (f *figures) packed(rows []finish.Row, item finish.Item) (quantity, packs *big.Rat) {
	for _, row := range rows {
		if row.Item == item {
			return row.Quantity.Rat(), big.NewRat(int64(row.Buy), 1)
		}
	}
	f.Fatalf("no %s on the list", item)
	return nil, nil
}

func (f *figures) covers() {
	joint := finish.Work{Profile: sheet("1/4"), Joints: []finish.Joint{{Kind: finish.CounterLine, Length: fraction.Inches(1200)}}}
	lines := func(seal, paint, waste finish.Number) *big.Rat {
		return quo(f.need(joint, finish.Materials{Tape: finish.Tape{SealLines: seal, PaintLines: paint, Waste: waste}}, finish.ItemTape), rat("100"))
	}
	f.add(byTakeOff, "tape along a bead", "on both sides: 2 lines", "2", lines("", "0", "0"), "0", hand, practice)
	f.add(byTakeOff, "tape beside the counter for the last coat", "1 line", "1", lines("0", "", "0"), "0", hand, practice)
	f.add(byTakeOff, "tape torn off and lost", "10 %", "0.1", sub(lines("1", "0", ""), rat("1")), "0", hand, practice)
	joint.Joints[0].Length = fraction.Inches(180 * 12 * 100)
	roll := f.list(joint, finish.Materials{Tape: finish.Tape{SealLines: "1", PaintLines: "0", Waste: "0"}})
	f.add(byTakeOff, "roll of 60 yd", "180 ft", "180", quo(rat("18000"), big.NewRat(int64(roll[len(roll)-1].Buy), 1)), "0", hand, derived)
	floor := func(width int64) []finish.Row {
		return f.list(finish.Work{Width: fraction.Inches(width)}, finish.Materials{House: finish.House{Datum: "0"}})
	}
	f.add(byTakeOff, "sheeting along 27 ft of floor, 4 ft wide", "108 ft2", "108", floor(27 * 12)[0].Quantity.Rat(), "0", hand, practice)
	f.add(byTakeOff, "sheets of 9 × 12 ft for 2700 ft", "100", "100", big.NewRat(int64(floor(2700 * 12)[0].Buy), 1), "0", hand, derived)
	trim := f.list(finish.Work{Ends: []finish.End{{Length: in("95 1/2")}, {Length: in("48")}, {Length: in("47 1/2")}}}, finish.Materials{})
	f.add(byTakeOff, "8 ft strips for ends of 95-1/2, 48 and 47-1/2 in, 1/2 in longer each", "3", "3", big.NewRat(int64(trim[0].Buy), 1), "0", hand, practice)
}

func (f *figures) waits() {
	const hour = 60
	wait := func(w finish.Wait) (least, most *big.Rat) {
		from, to, _ := w.Range()
		return big.NewRat(int64(from), hour), big.NewRat(int64(to), hour)
	}
	sheets, sheetsMost := wait(finish.RestSheets)
	boards, boardsMost := wait(finish.RestBoards)
	wood, woodMost := wait(finish.RestWood)
	primer, primerMost := wait(finish.DryPrimer)
	coat, coatMost := wait(finish.DryCoat)
	hard, hardMost := wait(finish.HardenCoat)
	glue, glueMost := wait(finish.HoldGlue)
	skin, skinMost := wait(finish.SkinSealant)
	cure, cureMost := wait(finish.CureSealant)
	f.add(byWait, "beaded plywood rests, at least", "48 h", "48", sheets, "0", beadedPly, read)
	f.add(byWait, "MDF rests, at most", "a few days: 3", "72", sheetsMost, "0", mdfBody, readOurs)
	f.add(byWait, "tongue and groove rests, at least", "48 h", "48", boards, "0", upright, read)
	f.add(byWait, "tongue and groove rests, at most", "72 h", "72", boardsMost, "0", upright, read)
	f.add(byWait, "solid wood rests, at least", "7 days", "168", wood, "0", leaflet, read)
	f.add(byWait, "solid wood rests, at most", "10 days", "240", woodMost, "0", leaflet, read)
	f.add(byWait, "primer before the next coat, at least", "1 h", "1", primer, "0", tin, read)
	f.add(byWait, "primer before the next coat, at most", "4 h", "4", primerMost, "0", hand, practice)
	f.add(byWait, "enamel before the next coat, at least", "4 h", "4", coat, "0", enamel, read)
	f.add(byWait, "enamel before the next coat, at most", "24 h", "24", coatMost, "0", hand, practice)
	f.add(byWait, "paint before pieces are stacked, at least", "12 h", "12", hard, "0", hand, practice)
	f.add(byWait, "paint before pieces are stacked, at most", "2 days", "48", hardMost, "0", hand, practice)
	f.add(byWait, "construction adhesive holds, at least", "24 h", "24", glue, "0", glueTube, read)
	f.add(byWait, "another construction adhesive holds, at most", "2 to 7 days", "168", glueMost, "0", gluePage, read)
	f.add(byWait, "sealant is tooled, in 5 min at least", "5 min", "5", mul(rat("60"), skin), "0", caulkSheet, read)
	f.add(byWait, "sealant is tooled, within", "20 min", "20", mul(rat("60"), skinMost), "0", caulkPage, read)
	f.add(byWait, "sealant before it is painted, at least", "4 h", "4", cure, "0", caulkTube, read)
	f.add(byWait, "sealant before it is painted, at most", "days: 2", "48", cureMost, "0", caulkFAQ, readOurs)
}

func (f *figures) cautions() {
	raised := func(w finish.Work, m finish.Materials, c finish.Caution) bool {
		w.Pieces, w.Boxes = []finish.Piece{{Width: in("48"), Height: in("96")}}, []finish.Box{{Name: "outlet"}}
		return slices.Contains(finish.Cautions(w, m), c)
	}
	years := func(c finish.Caution) (first, last *big.Rat) {
		for y := int64(1900); y < 2026; y++ {
			if raised(finish.Work{Built: int(y)}, finish.Materials{}, c) {
				if last = big.NewRat(y, 1); first == nil {
					first = last
				}
			}
		}
		return first, last
	}
	_, lead := years(finish.Lead)
	f.add(byCautions, "paint may hold lead, last year", "homes built before 1978", "1977", lead, "0", epa, read)
	from, to := years(finish.Aluminum)
	f.add(byCautions, "wiring of aluminum, first year", "1965", "1965", from, "0", hand, memory)
	f.add(byCautions, "wiring of aluminum, last year", "1973", "1973", to, "0", hand, memory)
	thin := f.threshold(func(thickness fraction.Length) bool {
		return raised(finish.Work{Profile: groove.Profile{Thickness: thickness}}, finish.Materials{House: finish.House{Backing: finish.BareStuds}}, finish.ThinPanel)
	})
	f.add(byCautions, "thickest panel on 32nds that wants gypsum board behind it", "thinner than 1/4 in: 7/32", "7/32", thin, "0", irc, readOurs)
}

func (f *figures) profiles() {
	for _, row := range []struct{ name, of, printed, value, source string }{
		{"tongue and groove 3-1/8", "shows", "3-1/8 in", "3 1/8", association}, {"tongue and groove 3-1/8", "is wide", "3-3/8 in", "3 3/8", association},
		{"tongue and groove 5-1/8", "shows", "5-1/8 in", "5 1/8", association}, {"tongue and groove 5-1/8", "is wide", "5-3/8 in", "5 3/8", association},
		{"shiplap 6-3/4", "shows", "6-3/4 in", "6 3/4", mill}, {"shiplap 6-3/4", "is wide", "7-1/8 in", "7 1/8", mill},
		{"nickel gap 4-7/8", "shows", "4-7/8 in", "4 7/8", dealer}, {"nickel gap 6-7/8", "shows", "6-7/8 in", "6 7/8", dealer},
		{"nickel gap 6-7/8", "is thick", "5/8 in", "5/8", dealer}, {"MDF strip 100 mm", "shows", "100 mm", "100 mm", mdfBody},
		{"MDF strip 100 mm", "is thick", "12 mm", "12 mm", mdfBody}, {"slat 40 mm", "is wide", "600 mm", "600 mm", slats},
	} {
		p, _ := groove.Find(row.name)
		ours := map[string]fraction.Length{"shows": p.Shows(), "is wide": p.Width, "is thick": p.Thickness}[row.of]
		status := read
		if row.name == "MDF strip 100 mm" && row.of == "shows" { // the text does not say of what its 100 mm are
			status = readOurs
		}
		f.add(byProfile, row.name+" "+row.of, row.printed, in(row.value).Rat().RatString(), ours.Rat(), "0", row.source, status)
	}
}

func (f *figures) rooms() {
	ends := func(unit, width string) plan.Run {
		p := makeFrom(f, `{"profile": {"features": [{"kind": "flat", "width": "`+unit+`"}], "thickness": "1/4", "wide_flats": true},
			"stock": [{"name": "sheet", "width": "300", "length": "96"}], "runs": [{"name": "wall", "width": "`+width+`", "left": {"kind": "exposed"}, "right": {"kind": "exposed"},
			"heights": [{"at": "0", "top": "30"}, {"at": "`+width+`", "top": "30"}]}]}`)
		return p.Runs[0]
	}
	r := ends("24", "49 1/2") // a whole unit, and 24 and 1-1/2 in beside it
	f.add(byMake, "units of 24 in, cuts of 24 and 1-1/2 balanced, left", "12-3/4 in", "12.75", r.Left.Cut.Width.Rat(), "0", tiles, read)
	f.add(byMake, "the same, right", "12-3/4 in", "12.75", r.Right.Cut.Width.Rat(), "0", tiles, read)
	r = ends("11 3/4", "26 1/2") // two units, and 1-3/4 and 1-1/4 in beside them
	f.add(byMake, "units of 11-3/4 in, cuts of 1-3/4 and 1-1/4 balanced, left", "7-3/8 in", "7.375", r.Left.Cut.Width.Rat(), "0", tiles, read)
	f.add(byMake, "the same, right", "7-3/8 in", "7.375", r.Right.Cut.Width.Rat(), "0", tiles, read)

	p := makeFrom(f, `{"profile": {"features": [{"kind": "flat", "width": "5"}], "thickness": "1/2", "boards": true}, "stock": [{"name": "board", "width": "5", "length": "96"}],
		"runs": [{"name": "wall", "width": "15", "left": {"kind": "exposed"}, "right": {"kind": "exposed"}, "heights": [{"at": "0", "top": "24"}, {"at": "15", "top": "24"}]}]}`)
	f.add(byMake, "96 in less three pieces of 24 and kerfs of 1/8", "about 3/8 short of 24: 23-5/8 in", "23.625", p.Sheets[0].Offcuts[0].Length.Rat(), "0", kerfs, read)

	for _, row := range []struct{ chord, rise, radius string }{{"48", "6", "51"}, {"36", "6", "30"}, {"60", "5", "185/2"}, {"24", "12", "12"}} {
		p := makeFrom(f, `{"profile": "beadboard 2", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
			"runs": [{"name": "wall", "width": "80", "left": {"kind": "covered"}, "right": {"kind": "covered"}, "heights": [{"at": "0", "top": "60"}, {"at": "80", "top": "60"}],
			"openings": [{"name": "niche", "kind": "other", "left": "10", "bottom": "10", "width": "`+row.chord+`", "height": "20", "rise": "`+row.rise+`"}]}]}`)
		radius := new(big.Rat)
		for _, piece := range p.Pieces {
			for _, arc := range piece.Marks.Arcs {
				radius = arc.Radius.Rat()
			}
		}
		f.add(byMake, "arc over "+row.chord+" in that rises "+row.rise, "c²/8h + h/2", row.radius, radius, "0", arcs, readOurs)
	}

	corner := func(side, down, across string) *big.Rat { // how far the far end of the rise is out of square
		p := makeFrom(f, `{"profile": "beadboard 2", "stock": [{"name": "sheet", "width": "48", "length": "400"}],
			"runs": [{"name": "wall", "width": "60", "left": {"kind": "covered"}, "right": {"kind": "covered"},
			"heights": [{"taped": {"bases": [["0", "0"], ["`+side+`", "0"]], "side": "left", "distances": ["`+down+`", "`+across+`"]}}, {"at": "60", "top": "`+down+`"}]}]}`)
		return p.Taped[0].At.X.Rat()
	}
	f.add(byMake, "6 and 8 ft with 10 ft across: out of square", "0", "0", corner("72", "96", "120"), "0", carpenters, read)
	f.add(byMake, "15 and 20 ft with 25 ft across: out of square", "0", "0", corner("180", "240", "300"), "0", framing, read)
}
