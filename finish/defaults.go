package finish

import (
	"slices"

	"example.com/groovewright/fraction"
)

// What is reckoned where a job says nothing. Each says where the figure comes from; a plain "from memory" or
// "judgement" means that no text is behind it. The names that end in Metric hold where a job is taped in mm or cm.
const (
	// DefaultWall is half-inch gypsum board; common practice, no source.
	DefaultWall, DefaultWallMetric Taped = `1/2"`, "12.5 mm"
	// DefaultStuds is the usual distance of studs, at most 16 in (400 mm) for panelling: IRC R702.5, Ontario guidance on hardboard sheets.
	DefaultStuds, DefaultStudsMetric Taped = `16"`, "400 mm"
	// DefaultDatum is the usual height of a counter above the floor; common practice, from memory.
	DefaultDatum, DefaultDatumMetric Taped = `36"`, "900 mm"

	// DefaultPrimerBefore and the others are a coat of primer and a first top coat while the panels lie flat,
	// and the last coat when the joints are sealed; judgement.
	DefaultPrimerBefore, DefaultPrimerAfter Number = "1", "0"
	DefaultTopBefore, DefaultTopAfter       Number = "1", "1"
	// DefaultPrimerCoverage is the middle of 200 to 300 ft2/gal printed for primer in a how-to article.
	DefaultPrimerCoverage, DefaultPrimerCoverageMetric Coverage = "250 ft2/gal", "6 m2/L"
	// DefaultTopCoverage is the low end of 350 to 400 ft2/gal printed for interior paint in how-to articles. No standard gives a
	// range for trim enamel: trust the tin.
	DefaultTopCoverage, DefaultTopCoverageMetric Coverage = "350 ft2/gal", "8.5 m2/L"
	// DefaultLoss lies between the 5 and 15 percent usual for brush and roller; from memory.
	DefaultLoss Number = "0.1"
	// DefaultEdgeCoats: sawn edges of fibreboard drink an extra coat; judgement.
	DefaultEdgeCoats Number = "2"

	// DefaultCounterLeg is the least contact of a fillet on each face where movement is expected: about 1/4 in (6 mm),
	// ASTM C1193, from memory.
	DefaultCounterLeg, DefaultCounterLegMetric Taped = `1/4"`, "6 mm"
	// DefaultLeg is the leg of a painted fillet that moves little; judgement.
	DefaultLeg, DefaultLegMetric Taped = `1/8"`, "3 mm"
	// DefaultGrooveFill is how far the open end of a groove is stopped; judgement.
	DefaultGrooveFill, DefaultGrooveFillMetric Taped = `1/4"`, "6 mm"
	// DefaultBridge is the low end of the 1/4 to 1/2 in that a general article prints for painter's sealant.
	DefaultBridge, DefaultBridgeMetric Taped = `1/4"`, "6 mm"
	// DefaultWaste is the allowance for waste and partial packs; common practice, from memory.
	DefaultWaste Number = "0.1"

	// DefaultBead is the bead of stud adhesive in NAVEDTRA 14044, figure 5-8 (gypsum board).
	DefaultBead, DefaultBeadMetric Taped = `3/8"`, "10 mm"
	// DefaultDot is a half ball of adhesive before it is pressed; judgement.
	DefaultDot, DefaultDotMetric Taped = `1"`, "25 mm"
	// DefaultLightBeads is a bead for each stud, as in NAVEDTRA 14044, figure 5-8. DefaultFullBeads halves it; judgement.
	DefaultLightBeads, DefaultLightBeadsMetric Taped = `16"`, "400 mm"
	DefaultFullBeads, DefaultFullBeadsMetric   Taped = `8"`, "200 mm"
	// DefaultLightDots and DefaultFullDots are grids of dots; judgement.
	DefaultLightDots, DefaultLightDotsMetric Taped = `12"`, "300 mm"
	DefaultFullDots, DefaultFullDotsMetric   Taped = `6"`, "150 mm"

	// DefaultEdgeNails and DefaultFieldNails are 100 and 200 mm (4 and 8 in) for fibreboard wall sheets: Ontario Building Code.
	DefaultEdgeNails, DefaultEdgeNailsMetric   Taped = `4"`, "100 mm"
	DefaultFieldNails, DefaultFieldNailsMetric Taped = `8"`, "200 mm"
	// DefaultPenetration is 20 mm (3/4 in) into the support: Ontario Building Code, nails for fibreboard finish.
	DefaultPenetration, DefaultPenetrationMetric Taped = `3/4"`, "20 mm"

	// DefaultDeviceScrews and DefaultCoverScrews: two screws hold a device; a cover has one or two a gang. From memory.
	DefaultDeviceScrews, DefaultCoverScrews Number = "2", "2"
	// DefaultDeviceScrew and DefaultCoverScrew are usual lengths; from memory.
	DefaultDeviceScrew, DefaultDeviceScrewMetric Taped = `3/4"`, "20 mm"
	DefaultCoverScrew, DefaultCoverScrewMetric   Taped = `1/2"`, "12 mm"

	// DefaultSealLines is a tape on each side of a bead, DefaultPaintLines one along what must stay bare; judgement.
	DefaultSealLines, DefaultPaintLines Number = "2", "1"
	// DefaultReach covers a counter two feet deep and its front; judgement.
	DefaultReach, DefaultReachMetric Taped = `48"`, "1200 mm"
	// DefaultTrimAllowance leaves a quarter of an inch at each end of a strip; judgement.
	DefaultTrimAllowance, DefaultTrimAllowanceMetric Taped = `1/2"`, "12 mm"
)

// Packs in which things are sold, without prices. From memory, but for the cartridge of 10.1 fl oz, which lies within the 10 to
// 10.5 fl oz that a how-to article prints.
var (
	DefaultTins, DefaultTinsMetric           = []Container{{Name: "quart", Size: "1 qt"}, {Name: "gallon", Size: "1 gal"}}, []Container{{Name: "0.75 L tin", Size: "0.75 L"}, {Name: "2.5 L tin", Size: "2.5 L"}}
	DefaultCartridge, DefaultCartridgeMetric = Container{Name: "10.1 fl oz cartridge", Size: "10.1 fl oz"}, Container{Name: "300 mL cartridge", Size: "300 mL"}
	DefaultNailPack                          = Pack{Name: "box of 1000", Count: 1000}
	DefaultScrewPack                         = Pack{Name: "pack of 10", Count: 10}
	DefaultStripPack                         = Pack{Name: "box of 100", Count: 100}
	DefaultStrip, DefaultStripMetric         = Roll{Name: "8 ft strip", Length: "8'"}, Roll{Name: "2.4 m strip", Length: "2400 mm"}
	DefaultTapeRoll, DefaultTapeRollMetric   = Roll{Name: "60 yd roll", Length: "180'"}, Roll{Name: "50 m roll", Length: "50000 mm"}
	DefaultSheeting, DefaultSheetingMetric   = Cover{Name: "9 x 12 ft sheet", Size: "108 ft2"}, Cover{Name: "4 x 5 m sheet", Size: "20 m2"}
	DefaultBacking, DefaultBackingMetric     = Roll{Name: "20 ft length", Length: "20'"}, Roll{Name: "6 m length", Length: "6000 mm"}
	DefaultTrimStick, DefaultTrimStickMetric = Roll{Name: "8 ft strip", Length: "8'"}, Roll{Name: "2.4 m strip", Length: "2400 mm"}
)

// Lengths and depths as sold. The nails are 2d to 10d, of which an open textbook of the University of Hawaii gives
// 3d 1-1/4, 4d 1-1/2, 6d 2, 8d 2-1/2 and 10d 3 in; the others are from memory.
var (
	DefaultNailLengths, DefaultNailLengthsMetric   = []Taped{`1"`, `1 1/4"`, `1 1/2"`, `2"`, `2 1/2"`, `3"`}, []Taped{"25 mm", "30 mm", "40 mm", "50 mm", "60 mm", "75 mm"}
	DefaultScrewLengths, DefaultScrewLengthsMetric = []Taped{`1/2"`, `3/4"`, `1"`, `1 1/4"`, `1 1/2"`, `2"`, `2 1/2"`, `3"`}, []Taped{"12 mm", "20 mm", "25 mm", "30 mm", "40 mm", "50 mm", "60 mm", "75 mm"}
	DefaultExtenders, DefaultExtendersMetric       = []Extender{{Depth: `1/4"`}, {Depth: `1/2"`}, {Depth: `3/4"`}, {Depth: `1"`}, {Depth: `1 1/2"`}}, []Extender{{Depth: "6 mm"}, {Depth: "12 mm"}, {Depth: "20 mm"}, {Depth: "25 mm"}, {Depth: "40 mm"}}
)

// Defaults returns what is reckoned in a job that is taped in these units and says nothing else, with every field filled in.
// It shares no list with a later call.
func Defaults(units fraction.Unit) Materials {
	metric := units != fraction.Inch
	tins, cartridge := slices.Clone(of(metric, DefaultTins, DefaultTinsMetric)), of(metric, DefaultCartridge, DefaultCartridgeMetric)
	m := Materials{Tax: "0", LeftoverWorth: "0"}
	m.House = House{
		Material: "mdf", Backing: "gypsum", Wall: of(metric, DefaultWall, DefaultWallMetric),
		Studs: of(metric, DefaultStuds, DefaultStudsMetric), Datum: of(metric, DefaultDatum, DefaultDatumMetric),
	}
	m.Paint = Paint{
		Primer: Coating{Before: DefaultPrimerBefore, After: DefaultPrimerAfter, Coverage: of(metric, DefaultPrimerCoverage, DefaultPrimerCoverageMetric), Containers: tins},
		Top:    Coating{Before: DefaultTopBefore, After: DefaultTopAfter, Coverage: of(metric, DefaultTopCoverage, DefaultTopCoverageMetric), Containers: slices.Clone(tins)},
		Loss:   DefaultLoss, EdgeCoats: DefaultEdgeCoats, Groove: SquareGroove,
	}
	m.Sealant = Sealant{
		GrooveFill: of(metric, DefaultGrooveFill, DefaultGrooveFillMetric), Bridge: of(metric, DefaultBridge, DefaultBridgeMetric), Waste: DefaultWaste,
		Cartridges: []Container{cartridge}, Backing: []Roll{of(metric, DefaultBacking, DefaultBackingMetric)},
	}
	m.Sealant.legs(of(metric, DefaultCounterLeg, DefaultCounterLegMetric), of(metric, DefaultLeg, DefaultLegMetric))
	m.Adhesive = Adhesive{
		Form: "beads", Boards: "none", Hold: "light", Size: of(metric, DefaultBead, DefaultBeadMetric),
		Spacing: of(metric, DefaultLightBeads, DefaultLightBeadsMetric), Waste: DefaultWaste, Cartridges: []Container{cartridge},
	}
	m.Nails = Nails{
		Edge: of(metric, DefaultEdgeNails, DefaultEdgeNailsMetric), Field: of(metric, DefaultFieldNails, DefaultFieldNailsMetric),
		Penetration: of(metric, DefaultPenetration, DefaultPenetrationMetric), Lengths: slices.Clone(of(metric, DefaultNailLengths, DefaultNailLengthsMetric)),
		Waste: DefaultWaste, Packs: []Pack{DefaultNailPack},
	}
	m.Furring = Furring{Strips: []Roll{of(metric, DefaultStrip, DefaultStripMetric)}, Waste: DefaultWaste, Packs: []Pack{DefaultStripPack}}
	m.Extenders = slices.Clone(of(metric, DefaultExtenders, DefaultExtendersMetric))
	m.Screws = Screws{
		DevicePerGang: DefaultDeviceScrews, CoverPerGang: DefaultCoverScrews,
		DeviceUsual: of(metric, DefaultDeviceScrew, DefaultDeviceScrewMetric), CoverUsual: of(metric, DefaultCoverScrew, DefaultCoverScrewMetric),
		Lengths: slices.Clone(of(metric, DefaultScrewLengths, DefaultScrewLengthsMetric)), Packs: []Pack{DefaultScrewPack},
	}
	m.Tape = Tape{SealLines: DefaultSealLines, PaintLines: DefaultPaintLines, Waste: DefaultWaste, Rolls: []Roll{of(metric, DefaultTapeRoll, DefaultTapeRollMetric)}}
	m.Sheeting = Sheeting{Reach: of(metric, DefaultReach, DefaultReachMetric), Sheets: []Cover{of(metric, DefaultSheeting, DefaultSheetingMetric)}}
	m.Trim = Trim{Stick: of(metric, DefaultTrimStick, DefaultTrimStickMetric), Allow: of(metric, DefaultTrimAllowance, DefaultTrimAllowanceMetric)}
	return m
}

// of returns the one of two values that holds in the units of a job.
func of[T any](metric bool, inch, otherwise T) T {
	if metric {
		return otherwise
	}
	return inch
}

// legs sets every joint of the sealant to its usual form.
func (s *Sealant) legs(counter, other Taped) {
	s.CounterLine = Bead{Form: "fillet", Leg: counter}
	for _, b := range []*Bead{&s.CabinetLine, &s.InsideCorner, &s.End, &s.Step, &s.Window} {
		*b = Bead{Form: "fillet", Leg: other}
	}
	s.OutsideCorner, s.Seam = Bead{Form: "none", Leg: other}, Bead{Form: "butt", Leg: other}
}
