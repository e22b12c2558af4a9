package finish

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
)

// Caution is one thing that can hurt someone, or later the house. It is advice and never a
// permission: the local code, the maker's instructions and licensed practice decide.
type Caution uint8

// The cautions, the most pressing first, each with what it goes back to.
const (
	// 29 CFR 1910.333 (de-energize, lock or tag); prove dead: NFPA 70E, from memory; caps, covers
	// and the two circuits of one box: common practice, no source.
	Power Caution = iota
	// CPSC on aluminum wiring: its title from memory, the years as a second reading has them.
	Aluminum
	// NEC 314.20, 2014 and 2017, in a renewal course; a trade magazine: over gypsum.
	BoxFlush
	// NEC 406.4(A), later 406.5(A), 404.10(B) and IRC E3902.5 as a trade forum quotes them.
	DeviceHeld
	BoxOpen    // NEC 314.21 as quoted by inspectors; NEC 314.29 from memory
	Protection // NEC 406.4(D)(3) to (5) as a second reading has them
	// IRC M1901.1, 2018 text of Ohio; manuals of ranges (36 in overhead, 12 in behind, 3 to 12 in at
	// the sides, a backguard); the bracket that keeps a range from tipping: from memory.
	Heat
	// EPA answers on 40 CFR 745.83 and owners at home; its sheet on lead-safe renovation.
	Lead
	// EPA dos and don'ts; EPA, CPSC and ALA brochure of 1990; the year from memory.
	Asbestos
	// NEC 300.4(A) and (D) with the exception for fished cables; where cables and pipes run, glue
	// alone beside them: common practice, no source.
	CablesAndPipes
	// OSHA: 15 mg/m3 total, 5 respirable; NIOSH: 1 mg/m3; the respirator from memory.
	Dust
	// 29 CFR 1926.1153 on silica, from memory: boards of cement and stone.
	Silica
	// Pub. L. 111-199: MDF 0.11 ppm, hardwood plywood 0.05 ppm; MDF to 8 mm 0.13 ppm: ANSI A208.2.
	// Airing and coating: common practice, no source.
	Resin
	// NIOSH: 85 dBA over 8 hours, in an article; the rest common practice, no source.
	Saws
	// OSHA and NIOSH guide, a summary: contact triggers about double the injuries; the rest common
	// practice, no source.
	Nailer
	// OSHA letter of 21 January 2010 on 29 CFR 1926.1053(b)(4): fully open, not leaned; the rest
	// common practice, no source.
	Ladder
	Children     // common practice, no source
	FireSpread   // IRC R302.9 in a study guide
	FireBlocking // IRC R302.11, from memory
	ThinPanel    // IRC R702.5 as quoted: 3/8 in gypsum; why: common practice, no source
	Fumes        // common practice, no source
	Damp         // common practice, no source
	Splash       // common practice, no source
	MasonryWall  // common practice, no source
)

var cautions = enum.Of[Caution]("power", "aluminum wiring", "box flush", "device held", "box open", "protection", "heat", "lead", "asbestos",
	"cables and pipes", "dust", "silica", "resin", "saws", "nailer", "ladder", "children", "fire spread", "fire blocking", "thin panel", "fumes", "damp",
	"splash", "masonry")

// String returns the word of the caution, or its number in brackets where it has none.
func (c Caution) String() string { return cautions.String(c) }

// MarshalText writes the word of the caution, and fails where it has none.
func (c Caution) MarshalText() ([]byte, error) { return cautions.Marshal(c) }

// UnmarshalText reads the word of a caution.
func (c *Caution) UnmarshalText(t []byte) error { return cautions.Unmarshal(t, c) }

// Cautions returns those that the work raises, the most pressing first. A field that
// [Materials.Validate] refuses counts as its default.
func Cautions(w Work, m Materials) []Caution {
	s, _ := read(w, m)
	h, boxes, pieces := s.House, len(w.Boxes) > 0, len(w.Pieces) > 0
	nails, strips, burns := pieces && s.nailed(), pieces && s.stripped(), h.Material != Noncombustible
	fiber := pieces && burns && h.Material != Plastic // sawing makes wood dust
	raised := []Caution{}
	for c, raises := range [...]bool{
		Power:          boxes,
		Aluminum:       boxes && (w.Built == 0 || w.Built >= AluminumFrom && w.Built <= AluminumTo),
		BoxFlush:       boxes && burns,
		DeviceHeld:     boxes,
		BoxOpen:        boxes,
		Protection:     boxes,
		Heat:           pieces && w.Cooking,
		Lead:           pieces && w.Built < LeadYear,
		Asbestos:       pieces && w.Built < AsbestosYear,
		CablesAndPipes: nails || strips,
		Dust:           fiber,
		Silica:         pieces && !burns,
		Resin:          pieces && (h.Material == MDF || h.Material == Plywood),
		Saws:           pieces,
		Nailer:         nails,
		// 72 in is what most people reach from the floor with a tool in hand; judgment.
		Ladder:       pieces && add(w.Highest.Rat(), s.in(h.Datum)).Cmp(whole(72)) > 0,
		Children:     pieces,
		FireSpread:   pieces && burns,
		FireBlocking: strips,
		// Wood veneer and hardboard below 1/4 in want gypsum behind them: IRC R702.5.
		ThinPanel: fiber && h.Backing == BareStuds && w.Profile.Thickness.Less(fraction.Of(1, 4)),
		Fumes:     pieces && (s.Adhesive.Form != NoGlue || s.firstCoat() || s.lastCoat()),
		Damp:      pieces && h.Damp,
		// Sinks and basins stand at counters and in damp rooms; judgment.
		Splash:      fiber && (h.Damp || s.in(h.Datum).Sign() > 0),
		MasonryWall: pieces && h.Backing == Masonry,
	} {
		if raises {
			raised = append(raised, Caution(c))
		}
	}
	return raised
}

const (
	// LeadYear is the year before which paint in US houses may hold lead: 40 CFR part 745.
	LeadYear = 1978
	// AluminumFrom and AluminumTo are the years in which many US houses were wired in aluminum.
	AluminumFrom, AluminumTo = 1965, 1973
	// AsbestosYear is a year before which boards, textures, flooring glue and insulation may well
	// hold asbestos, and some held it later; from memory.
	AsbestosYear = 1990
)

// stripped reports whether furring strips are fixed to the wall, from the list or as the order of
// work asks; nailed, whether panels are nailed: masonry without strips takes no nails.
func (s settings) stripped() bool {
	return s.Furring.Thickness != "" || s.Profile.Boards && !s.Nails.None
}
func (s settings) nailed() bool {
	return !s.Nails.None && (s.House.Backing != Masonry || s.stripped())
}

// firstCoat and lastCoat report whether anything is painted before fitting and after sealing.
func (s settings) firstCoat() bool { return times(s.Paint.Primer.Before)+times(s.Paint.Top.Before) > 0 }
func (s settings) lastCoat() bool  { return times(s.Paint.Primer.After)+times(s.Paint.Top.After) > 0 }
