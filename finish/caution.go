package finish

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
)

// Caution is one thing that can hurt someone, or later the house. It is advice and never a
// permission: the local code, the maker's instructions and licensed practice decide.
type Caution uint8

// The cautions, the most pressing first. [Origins] has what each goes back to.
const (
	Power Caution = iota
	Aluminum
	BoxFlush
	DeviceHeld
	BoxOpen
	Protection
	Heat
	Lead
	Asbestos
	CablesAndPipes
	Dust
	Silica
	Resin
	Saws
	Nailer
	Ladder
	Children
	FireSpread
	FireBlocking
	ThinPanel
	Fumes
	Damp
	Splash
	MasonryWall
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
	fixed, strips, burns := pieces && (s.nailed() || s.trimmed()), pieces && s.stripped(), h.Material != Noncombustible
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
		CablesAndPipes: fixed || strips,
		Dust:           fiber,
		Silica:         pieces && !burns,
		Resin:          pieces && (h.Material == MDF || h.Material == Plywood),
		Saws:           pieces,
		Nailer:         fixed && (!s.screwed() || s.trimmed()),
		Ladder:         pieces && add(w.Highest.Rat(), s.in(h.Datum)).Cmp(whole(ladderHeight)) > 0,
		Children:       pieces,
		FireSpread:     pieces && burns,
		FireBlocking:   strips,
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
	// ladderHeight is what most people reach from the floor with a tool in hand, in inches; judgment.
	ladderHeight = 72
	// AluminumFrom and AluminumTo are the years in which many US houses were wired in aluminum.
	AluminumFrom, AluminumTo = 1965, 1973
	// AsbestosYear is a year before which boards, textures, flooring glue and insulation may well
	// hold asbestos, and some held it later; from memory.
	AsbestosYear = 1990
)

// stripped reports whether furring strips are fixed to the wall, from the list or as the order of
// work asks; nailed, whether panels are nailed or screwed: masonry without strips takes no nails;
// screwed, whether screws hold them.
func (s settings) stripped() bool {
	return s.Furring.Thickness != "" || s.Profile.Boards && !s.Nails.None
}
func (s settings) nailed() bool {
	return !s.Nails.None && (s.House.Backing != Masonry || s.stripped())
}
func (s settings) screwed() bool { return s.nailed() && s.Nails.Kind == PanelScrews }

// firstCoat and lastCoat report whether anything is painted before fitting and after sealing.
func (s settings) firstCoat() bool { return times(s.Paint.Primer.Before)+times(s.Paint.Top.Before) > 0 }
func (s settings) lastCoat() bool  { return times(s.Paint.Primer.After)+times(s.Paint.Top.After) > 0 }
