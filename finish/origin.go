package finish

import (
	"strconv"

	"example.com/groovewright/fraction/enum"
)

// Status says how far a figure or a sentence can be trusted.
type Status uint8

// The statuses, the firmest first.
const (
	Read     Status = iota // a text that has it was read
	PartRead               // a text that has a part of it, or of its range, was read
	Derived                // arithmetic from what was read
	Memory                 // no text was read
	Practice               // common practice, no source
	Judgment               // of this package
)

var statuses = enum.Of[Status]("read", "read in part", "derived", "from memory", "common practice, no source", "judgment")

// String returns the word of the status, or its number in brackets where it has none.
func (s Status) String() string { return statuses.String(s) }

// MarshalText writes the word of the status, and fails where it has none.
func (s Status) MarshalText() ([]byte, error) { return statuses.Marshal(s) }

// UnmarshalText reads the word of a status.
func (s *Status) UnmarshalText(t []byte) error { return statuses.Unmarshal(t, s) }

// Origin is where a figure or a sentence comes from. Of is the path of a default, which stands for
// all below it that has no origin of its own, or the word of a wait, a stage or a caution, or what
// another figure is for, which has its Value.
type Origin struct {
	Of     string
	Value  string
	Status Status
	Source string
}

// Origins returns the origins of all defaults by the fields of [Materials], of the other figures, of
// the waits, of the stages' words and of the cautions' words. What stands behind a semicolon has the
// status, but for parts whose own is said.
func Origins() (defaults, figures, times, steps, warnings []Origin) {
	defaults = []Origin{
		{"House.Material", "", Judgment, "the usual sheet"},
		{"House.Wall", "", Practice, "gypsum board"},
		{"House.Backing", "", Practice, "gypsum board"},
		{"House.Studs", "", Read, "at most: IRC R702.5 as quoted (framing for thin panelling)"},
		{"House.Datum", "", Memory, "of a counter"},
		{"Paint.Primer.Before", "", Judgment, "while the pieces lie flat"},
		{"Paint.Primer.After", "", Judgment, ""},
		{"Paint.Primer.Coverage", "", PartRead, "middle of 200 to 300 ft2/gal in a how-to article (a maker prints about 400); metric derived, rounded down"},
		{"Paint.Primer.Containers", "", Memory, ""},
		{"Paint.Top.Before", "", Judgment, "while the pieces lie flat"},
		{"Paint.Top.After", "", Judgment, "when the joints are sealed"},
		{"Paint.Top.Coverage", "", PartRead, "low end of 350 to 400 ft2/gal for interior paint in a how-to article; metric derived, rounded down"},
		{"Paint.Top.Containers", "", Memory, ""},
		{"Paint.Loss", "", Memory, "between the usual 5 and 15 percent; only where solids are given"},
		{"Paint.EdgeCoats", "", Judgment, "sawn edges of fiberboard drink more; of solid wood, plastic and what does not burn 1"},
		{"Paint.Groove", "", Judgment, "the larger surface"},
		{"Sealant", "", Judgment, "painted joints move little; 1/8 in on each face is in a sealant maker's calculation"},
		{"Sealant.CounterLine", "", PartRead, "least joint 6 mm in an architectural detailing text; ASTM C1193 on fillets from memory"},
		{"Sealant.GrooveFill", "", Judgment, ""},
		{"Sealant.Bridge", "", PartRead, "low end of 1/4 to 1/2 in in a general article"},
		{"Sealant.Waste", "", PartRead, "10 to 20 percent in a sealant maker's guide"},
		{"Sealant.Cartridges", "", Read, "10 to 10.5 fl oz in a how-to article; 300 mL from memory"},
		{"Sealant.WetCartridges", "", Read, "10 to 10.5 fl oz in a how-to article; 300 mL from memory"},
		{"Sealant.Backing", "", Memory, ""},
		{"Adhesive.Form", "", Memory, "custom for thin sheets: about a 10 oz cartridge for 4 x 8 ft"},
		{"Adhesive.Boards", "", Practice, "nails hold boards"},
		{"Adhesive.Hold", "", Practice, "nails hold too; where there are none, full"},
		{"Adhesive.Size", "", Read, "bead of stud adhesive in NAVEDTRA 14044, figure 5-8 (gypsum board); dots judgment"},
		{"Adhesive.Spacing", "", Read, "one for each stud in NAVEDTRA 14044, figure 5-8 (gypsum board); full hold and dots judgment"},
		{"Adhesive.Waste", "", Memory, ""},
		{"Adhesive.Cartridges", "", Read, "10 to 10.5 and 28 fl oz in a how-to article; 300 and 600 mL from memory"},
		{"Adhesive.Miter", "", Memory, ""},
		{"Nails.Kind", "", Memory, "18 gauge brads over glue, 15 or 16 gauge for what is thicker, screws where nothing burns"},
		{"Nails.Edge", "", PartRead, "6 in for hardboard in Ontario guidance (cladding); other materials common practice, the maker decides"},
		{"Nails.Field", "", PartRead, "12 in for hardboard in Ontario guidance (cladding); other materials common practice, the maker decides"},
		{"Nails.Inset", "", Practice, "nearer to an edge a nail splits it"},
		{"Nails.Clear", "", Judgment, "cables turn at a box"},
		{"Nails.Penetration", "", PartRead, "20 mm for fiberboard finish in the Ontario Building Code; other materials judgment"},
		{"Nails.Lengths", "", PartRead, "1-1/4, 1-1/2, 2, 2-1/2 and 3 in in an open textbook of the University of Hawaii; the others from memory"},
		{"Nails.Waste", "", Memory, ""},
		{"Nails.Packs", "", Memory, ""},
		{"Furring", "", Memory, ""},
		{"Extenders", "", Memory, ""},
		{"Screws", "", Memory, "two hold a device"},
		{"Tape.SealLines", "", Practice, "on each side of a bead"},
		{"Tape.PaintLines", "", Practice, "along what stays bare"},
		{"Tape.Waste", "", Memory, ""},
		{"Tape.Rolls", "", Memory, ""},
		{"Sheeting", "", Judgment, "a counter two feet deep and its front; sizes from memory"},
		{"Trim", "", Judgment, "1/4 in for each cut; lengths from memory"},
		{"Tax", "", Judgment, "none unless given"},
		{"LeftoverWorth", "", Judgment, "none unless given"},
	}
	figures = []Origin{
		{"theoretical coverage", "9625/6 ft2/gal at 1 mil of solids", Read, "a coatings bulletin and a paint consultant's column print 1604; exact from units"},
		{"practical coverage", "theoretical × (1 - loss)", Read, "a corrosion glossary; a printed coverage is practical already: judgment"},
		{"coats of backs where it is damp, but of plastic", "as many as of the face before fitting", Practice, ""},
		{"depth of a bead", "at most its width", Read, "a county building specification"},
		{"depth of a bead before a rod", "half its width, " + rodLeast.FloatString(2) + " to " + rodMost.FloatString(2) + " in", Read, "an architectural detailing text"},
		{"joints that get the sealant of kitchens and baths", "the lower line on a counter or in a damp room", Practice, ""},
		{"seam of fiberboard", "2.5 mm for each metre of width", Read, "a trade body of fiberboard makers"},
		{"adhesive by custom", "10 fl oz for 32 ft2; full hold twice", Memory, ""},
		{"sheet that counts as thin", thinSheet.FloatString(3) + " in", Judgment, ""},
		{"bead in a miter", miterBead.FloatString(3) + " in", Judgment, ""},
		{"supports behind a piece", "at both upright edges and between, nails nowhere else", PartRead, "a maker's guide: gypsum board is no nailable backing"},
		{"nail of a board", "one a crossing, through a tongue at 45 degrees", PartRead, "the angle in a how-to article; one a crossing, and through the face without a tongue: common practice, no source"},
		{"strips behind boards", "level, at most a stud's distance apart", Read, "a how-to article"},
		{"strips behind sheets", "level ones, and upright ones under edges", Read, "NAVEDTRA 14044"},
		{"how deep cables lie", plateDepth.String() + " in", Read, "NEC 300.4(A) and (D)"},
		{"how far a box lies behind a face that cannot burn", maxSetBack.String() + " in; else 0", Read, "NEC 314.20; its device 0: NEC 406.5, 404.10, IRC E3902.5"},
		{"small packs", "a margin is stated below a tenth of them", Judgment, ""},
		{"usual gun", "11 fl oz", Memory, ""},
		{"height that is no counter's", counterReach.String() + " in", Judgment, ""},
		{"year of lead paint", "before " + strconv.Itoa(LeadYear), Read, "40 CFR part 745"},
		{"years of aluminum wiring", strconv.Itoa(AluminumFrom) + " to " + strconv.Itoa(AluminumTo), PartRead, "as a second reading has them"},
		{"year of asbestos", "before " + strconv.Itoa(AsbestosYear), Memory, ""},
		{"height that wants a ladder", strconv.Itoa(ladderHeight) + " in", Judgment, ""},
	}
	times = []Origin{
		RestSheets:  {"rest of sheets", "", Read, "at least 48 h: a maker's guide to beaded plywood; 72 h of boards in a how-to article, fiberboard a few days: its trade body"},
		RestBoards:  {"rest of boards", "", Read, "a how-to article"},
		RestWood:    {"rest of solid wood", "", Read, "a leaflet of a lumber trade association"},
		DryPrimer:   {"primer", "", PartRead, "1 h on a maker's page; the most from memory"},
		DryCoat:     {"enamel", "", PartRead, "recoat after 4 h in a data sheet; the most from memory"},
		HardenCoat:  {"hardening", "", Memory, ""},
		HoldGlue:    {"adhesive", "", Read, "24 h in a manual; 2 to 7 days for another"},
		SkinSealant: {"skin of sealant", "", Read, "5 min in a data sheet; within 20 in an article"},
		CureSealant: {"paint on sealant", "", PartRead, "at least 4 h of one maker; 30 min to days of others"},
	}
	steps = []Origin{
		StageLook:       {"look", "", Practice, ""},
		StageRest:       {"rest", "", Read, "see the rests"},
		StageStrips:     {"strips", "", PartRead, "where they stand: a how-to article and NAVEDTRA 14044; taping again: judgment"},
		StageLines:      {"lines", "", Practice, ""},
		StageCut:        {"cut", "", Practice, "fine paper too"},
		StageMiter:      {"miter", "", Practice, ""},
		StageMainsOff:   {"mains off", "", PartRead, "29 CFR 1910.333; caps and covers, or boxes last: common practice"},
		StageDryFit:     {"dry fit", "", Practice, ""},
		StageFirstCoats: {"first coats", "", Practice, "grooves first, sanding lightly, backs as often as faces"},
		StageFit:        {"fit", "", PartRead, "nails where supports are: a maker's guide; the rest common practice"},
		StageTrim:       {"trim", "", Practice, ""},
		StageFill:       {"fill", "", Practice, ""},
		StageTape:       {"tape", "", Practice, ""},
		StageSeal:       {"seal", "", PartRead, "a hollow face: ASTM C1193 by a county specification; pulling tape while soft: common practice"},
		StageLastCoats:  {"last coats", "", Practice, ""},
		StageSealWet:    {"seal wet", "", Memory, "paint does not hold on silicone"},
		StageDevices:    {"devices", "", PartRead, "NEC 406.5 and 404.10"},
		StagePowerOn:    {"power on", "", Practice, "inspection and test"},
	}
	warnings = []Origin{
		Power:          {"power", "", PartRead, "29 CFR 1910.333 (de-energize, lock or tag); prove dead: NFPA 70E, from memory; caps, covers, two circuits in a box: common practice"},
		Aluminum:       {"aluminum wiring", "", Memory, "CPSC; the years as a second reading has them"},
		BoxFlush:       {"box flush", "", Read, "NEC 314.20, 2014 and 2017; over gypsum: an electrical trade magazine"},
		DeviceHeld:     {"device held", "", Read, "NEC 406.4(A), later 406.5(A), 404.10(B) and IRC E3902.5 as a trade forum quotes them"},
		BoxOpen:        {"box open", "", PartRead, "NEC 314.21 as inspectors quote it; NEC 314.29 from memory"},
		Protection:     {"protection", "", Read, "NEC 406.4(D)(3) to (5) as a second reading has them"},
		Heat:           {"heat", "", PartRead, "IRC M1901.1; manuals of ranges (36 in overhead, 12 in behind, 3 to 12 in at the sides); bracket and gas: common practice"},
		Lead:           {"lead", "", Read, "EPA answers on 40 CFR 745.83 and owners at home; its sheet on lead-safe renovation"},
		Asbestos:       {"asbestos", "", Read, "EPA dos and don'ts; EPA, CPSC and ALA brochure of 1990; the year from memory"},
		CablesAndPipes: {"cables and pipes", "", PartRead, "NEC 300.4(A) and (D); where they run, slants, glue alone: common practice"},
		Dust:           {"dust", "", PartRead, "OSHA and NIOSH limits; the respirator from memory"},
		Silica:         {"silica", "", Memory, "29 CFR 1926.1153"},
		Resin:          {"resin", "", PartRead, "Pub. L. 111-199 (MDF 0.11, plywood 0.05 ppm); MDF to 8 mm 0.13 ppm: ANSI A208.2; airing and coating: common practice"},
		Saws:           {"saws", "", PartRead, "NIOSH: 85 dBA over 8 hours; the rest common practice"},
		Nailer:         {"nailer", "", PartRead, "OSHA and NIOSH guide, a summary: contact triggers double the injuries; the rest common practice"},
		Ladder:         {"ladder", "", PartRead, "OSHA letter of 21 January 2010: fully open, not leaned; the rest common practice"},
		Children:       {"children", "", Practice, ""},
		FireSpread:     {"fire spread", "", Read, "IRC R302.9 in a study guide"},
		FireBlocking:   {"fire blocking", "", Memory, "IRC R302.11"},
		ThinPanel:      {"thin panel", "", PartRead, "IRC R702.5 as quoted: 3/8 in gypsum; why: common practice"},
		Fumes:          {"fumes", "", Practice, ""},
		Damp:           {"damp", "", Practice, ""},
		Splash:         {"splash", "", Practice, ""},
		MasonryWall:    {"masonry", "", Practice, ""},
	}
	return defaults, figures, times, steps, warnings
}
