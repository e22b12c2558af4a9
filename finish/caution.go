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
	// 29 CFR 1910.333 (de-energize, lock or tag); prove dead: NFPA 70E, from memory.
	Power Caution = iota
	// NEC 314.20, 2014 and 2017, in a renewal course; a trade magazine: over gypsum.
	BoxFlush
	BoxOpen // NEC 314.21 as quoted by inspectors; NEC 314.29 from memory
	Heat    // IRC M1901.1, 2018 text of Ohio
	// EPA answers on 40 CFR 745.83 and owners at home; its sheet on lead-safe renovation.
	Lead
	// EPA dos and don'ts; EPA, CPSC and ALA brochure of 1990; the year from memory.
	Asbestos
	CablesAndPipes // NEC 300.4(A) and (D) with the exception for fished cables
	// OSHA: 15 mg/m3 total, 5 respirable; NIOSH: 1 mg/m3; the respirator from memory.
	Dust
	Resin // Pub. L. 111-199: MDF 0.11 ppm, hardwood plywood 0.05 ppm
	// NIOSH: 85 dBA over 8 hours, in an article; the rest common practice, no source.
	Saws
	// OSHA and NIOSH guide, a summary: contact triggers about double the injuries.
	Nailer
	Ladder     // OSHA letter of 21 January 2010 on 29 CFR 1926.1053(b)(4)
	FireSpread // IRC R302.9 in a study guide
	ThinPanel  // IRC R702.5 as quoted
	Fumes      // common practice, no source
	Damp       // common practice, no source
)

var cautions = enum.Of[Caution]("power", "box flush", "box open", "heat", "lead", "asbestos", "cables and pipes", "dust", "resin", "saws",
	"nailer", "ladder", "fire spread", "thin panel", "fumes", "damp")

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
	nails, burns := pieces && !s.Nails.None, h.Material != Noncombustible
	fiber := pieces && burns && h.Material != Plastic // sawing makes wood dust
	raised := []Caution{}
	for c, raises := range [...]bool{
		Power:          boxes,
		BoxFlush:       boxes && burns,
		BoxOpen:        boxes,
		Heat:           pieces && w.Cooking,
		Lead:           pieces && w.Built < LeadYear,
		Asbestos:       pieces && w.Built < AsbestosYear,
		CablesAndPipes: nails,
		Dust:           fiber,
		Resin:          pieces && (h.Material == MDF || h.Material == Plywood),
		Saws:           pieces,
		Nailer:         nails,
		// 72 in is what most people reach from the floor with a tool in hand; judgment.
		Ladder:     pieces && add(w.Highest.Rat(), s.in(h.Datum)).Cmp(whole(72)) > 0,
		FireSpread: fiber,
		// Wood veneer and hardboard below 1/4 in want gypsum behind them: IRC R702.5.
		ThinPanel: fiber && h.Backing == BareStuds && w.Profile.Thickness.Less(fraction.Of(1, 4)),
		Fumes:     pieces && (s.Adhesive.Form != NoGlue || s.firstCoat() || s.lastCoat()),
		Damp:      pieces && h.Damp,
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
	// AsbestosYear is a year before which boards, textures, flooring glue and insulation may well
	// hold asbestos, and some held it later; from memory.
	AsbestosYear = 1990
)

// firstCoat and lastCoat report whether anything is painted before fitting and after sealing.
func (s settings) firstCoat() bool { return times(s.Paint.Primer.Before)+times(s.Paint.Top.Before) > 0 }
func (s settings) lastCoat() bool  { return times(s.Paint.Primer.After)+times(s.Paint.Top.After) > 0 }
