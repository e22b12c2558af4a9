package finish

import (
	"encoding/json"

	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/fraction/money"
)

// List is what to buy for a plan, and what it costs. It holds facts and no sentence.
type List struct {
	Rows     []Row        `json:"takeoff"`
	Subtotal money.Amount `json:"subtotal"` // the costs of the rows that have a price, added up
	Tax      money.Amount `json:"tax"`      // on the subtotal, rounded once to the cent, halves up
	Total    money.Amount `json:"total"`    // subtotal and tax: what is paid
	Unpriced int          `json:"unpriced"` // rows without a price, not in the total
	Leftover money.Amount `json:"leftover"` // worth of opened packs, not in the total
	AtHand   []Tool       `json:"at_hand,omitempty"`
	Spare    *Row         `json:"spare,omitempty"` // one more of what is sawn: a choice, not in the total
}

// Row is one line of the list. Quantity and Unit say what is needed, rounded up in the last place
// written; Buy follows from the exact quantity. Packs of several sizes have a row each, whose
// quantities add up to what is needed.
type Row struct {
	Item      Item         `json:"item"`
	Name      string       `json:"name,omitempty"` // of the stock, or of what the job asks for
	Size      []Figure     `json:"size,omitempty"` // of a sheet width, length, thickness if known
	Gangs     int          `json:"gangs,omitzero"` // of an extender: devices side by side
	Nail      NailKind     `json:"nail,omitzero"`  // of nails
	Quantity  Decimal      `json:"quantity"`
	Unit      Unit         `json:"unit"` // JSON has the singular after 1
	Buy       int          `json:"buy"`
	Container string       `json:"container"`
	Price     money.Amount `json:"price"` // of one container
	Cost      money.Amount `json:"cost"`  // Buy times Price, rounded once to the cent, halves up
	How       How          `json:"how"`
	Terms     []Term       `json:"terms,omitempty"` // of How, in its order
	Source    Source       `json:"source,omitzero"` // of the terms that have several
	Choice    Choice       `json:"choice,omitzero"`
}

// MarshalJSON writes the row with the word of its unit that belongs to its quantity.
func (r Row) MarshalJSON() ([]byte, error) {
	type row Row
	return json.Marshal(struct {
		row
		Unit string `json:"unit"`
	}{row(r), r.Unit.of(r.Quantity)})
}

// Term is one number that a quantity follows from. A few terms have only a name.
type Term struct {
	Kind  TermKind `json:"kind"`
	Name  string   `json:"name,omitempty"` // of a box, a run, or the word of a joint or hold
	Value Figure   `json:"value,omitzero"`
}

// Item is what a row of a list is for.
type Item uint8

// The items.
const (
	ItemSheet Item = iota // a sheet or a board that the plan is cut from
	ItemPrimer
	ItemTopCoat
	ItemSealant
	ItemPaintableSealant // where paint follows: it does not hold on silicone, from memory
	ItemWetSealant       // of kitchens and baths: on the counter, at the floor of a damp room
	ItemBackingRod
	ItemAdhesive
	ItemMiterGlue
	ItemPanelNails
	ItemBoardNails
	ItemFurringStrips
	ItemTreatedStrips // furring strips on masonry
	ItemStripNails    // nails or screws
	ItemStripAnchors  // screws for masonry
	ItemExtender
	ItemDeviceScrews
	ItemSpacers // between a box that stays back and its device
	ItemTape
	ItemCounterSheeting // for counter and floor
	ItemFloorSheeting
	ItemCovering // a trim that hides edges, by its name
	ItemEdgeTrim
	ItemCornerTrim
	ItemExtra // what the job asks for on top
)

var items = enum.Of[Item]("sheet", "primer", "top coat", "sealant", "paintable sealant", "kitchen and bath sealant", "backing rod", "panel adhesive", "miter glue",
	"panel nails", "board nails", "furring strips", "treated furring strips", "strip nails", "masonry screws", "box extender", "device screws", "device spacers",
	"masking tape", "sheeting for counter and floor", "sheeting for the floor", "covering trim", "edge trim", "corner trim", "extra")

// String returns the word of the item, or its number in brackets where it has none.
func (i Item) String() string { return items.String(i) }

// MarshalText writes the word of the item, and fails where it has none.
func (i Item) MarshalText() ([]byte, error) { return items.Marshal(i) }

// UnmarshalText reads the word of an item.
func (i *Item) UnmarshalText(t []byte) error { return items.Unmarshal(t, i) }

// How is the method by which a quantity was found.
type How uint8

// The methods. Each says which terms to expect, [TermWaste], [TermOnTop] and [TermMargin] left out, which stand
// last where there are any.
const (
	WithRowAbove How = iota // a further size of pack of the row above
	ByPlan                  // the sheets to saw, none to spare
	// ByArea has for each pass FaceBefore or FaceAfter, Developed, Times, maybe Edges and Times,
	// maybe Backs and Times; Surface; then Coverage, and Loss where that follows from solids.
	ByArea
	ByJoints           // per kind Joint, form, Volume; maybe Repeats, Section, Depth, Volume
	ByWideJoints       // Bridge, Length
	ByBeads            // Size, Spacing, Length, Hold, Compared
	ByDots             // Count, Size, Spacing, Hold
	ByBeadsAtCrossings // Size, Count, Length, Supports
	ByDotsAtCrossings  // Count, Size, Supports
	ByCustom           // Surface, Each, Per, Hold, Compared
	ByMiters           // Length, Size
	ByNailSpacing      // Count, EdgeSpacing, Spacing, as ByStripCrossings, Sides of the windows in pieces where there are any
	ByCrossings        // Count, Supports, Thickness, Penetration, Size: of boards, through their tongues
	ByFaceCrossings    // Count, Supports, Thickness, Wall, Penetration, Needed: of boards, through their faces
	ByStripLength      // Length, Supports, Sides
	ByStripCrossings   // Supports, Thickness, Wall, Penetration, Needed
	ByBoxDepth         // per box Box; Allowed, or NoneAllowed where the face can burn
	ByDeviceGangs      // PerGang, Usual: screws of devices that come out to the face
	BySpacers          // per box Box; PerGang
	ByTapeLines        // Length, Times, Beside, Times, Length of all lines
	ByReach            // Length, Reach
	ByEnds             // for each end or corner End or Corner; Allowance
	ByCoverings        // for each edge Covered; Allowance: joined end to end
	ByWholeLengths     // as ByCoverings: each cut whole
	ByRequest          // of the job
	AsSpare            // one more, where a piece goes wrong
)

var hows = enum.Of[How]("with the row above", "count", "area", "joints", "wide joints", "beads", "dots", "beads at crossings",
	"dots at crossings", "custom", "miters", "nail spacing", "crossings", "face crossings", "strip length", "strip crossings", "box depth", "device gangs", "spacers",
	"tape lines", "reach", "ends", "coverings", "whole lengths", "request", "spare")

// String returns the word of the method, or its number in brackets where it has none.
func (h How) String() string { return hows.String(h) }

// MarshalText writes the word of the method, and fails where it has none.
func (h How) MarshalText() ([]byte, error) { return hows.Marshal(h) }

// UnmarshalText reads the word of a method.
func (h *How) UnmarshalText(t []byte) error { return hows.Unmarshal(t, h) }

// TermKind says what a term is.
type TermKind uint8

// The kinds of terms.
const (
	TermCount       TermKind = iota // of nails, dots or crossings
	TermLength                      // of all together
	TermSize                        // of a bead, a dot or a nail
	TermSpacing                     // at most
	TermTimes                       // coats or lines
	TermFaceBefore                  // face coated before fitting
	TermFaceAfter                   // face coated after sealing
	TermDeveloped                   // how much wider the face is than it looks
	TermEdges                       // sawn edges
	TermBacks                       // backs, where it is damp
	TermSurface                     // all of a pass
	TermCoverage                    // of the paint
	TermLoss                        // share that stays in the tools
	TermJoint                       // length of the joints of a kind
	TermGap                         // the gap is filled
	TermFillet                      // leg of the fillet
	TermGapFillet                   // leg of the fillet, and the gap is filled
	TermVolume                      // of a joint or of grooves
	TermRepeats                     // with open grooves
	TermSection                     // open in each repeat
	TermDepth                       // filled from the end of a groove
	TermBridge                      // the widest gap that a bead closes
	TermHold                        // light or full
	TermEdgeSpacing                 // of nails along edges, at most
	TermSupports                    // distance of studs or strips, at most
	TermThickness                   // of the panel, the board or the strip
	TermWall                        // thickness of the wall before the studs
	TermPenetration                 // of a nail into its support
	TermNeeded                      // length that a nail needs
	TermSides                       // of openings
	TermBox                         // how far the front of a box lies behind the face
	TermAllowed                     // how far it may
	TermNoneAllowed                 // it may not
	TermPerGang                     // screws
	TermUsual                       // length of a screw without panels
	TermBeside                      // length beside what stays bare
	TermReach                       // from the wall
	TermEnd                         // length of an end that is seen, not known which of its run
	TermCorner                      // length of an outside corner
	TermAllowance                   // for the cuts of each
	TermWaste                       // share on top
	TermOnTop                       // what that is
	TermMargin                      // what the packs leave
	TermEach                        // adhesive by custom
	TermPer                         // area that this is for
	TermCompared                    // volume by the other usual method
	TermCovered                     // length of an edge that a trim hides, and for its cuts
	TermInset                       // of nails off the edges of a piece, at least
	TermClear                       // of nails off a box or a pipe's opening, at least
	TermAgain                       // what of it is for panels on the wall that come off and go up again
	TermLeftEnd                     // length of a left end that is seen
	TermRightEnd                    // length of a right end that is seen
	TermInAll                       // what rows of packs of several sizes are for together
)

var termKinds = enum.Of[TermKind]("count", "length", "size", "spacing", "times", "face before fitting", "face after sealing", "developed",
	"edges", "backs", "surface", "coverage", "loss", "joint", "gap", "fillet", "gap and fillet", "volume", "repeats", "section", "depth",
	"bridge", "hold", "edge spacing", "supports", "thickness", "wall", "penetration", "needed", "sides", "box", "allowed",
	"none allowed", "per gang", "usual", "beside", "reach", "end", "corner", "allowance", "waste", "on top", "margin", "each", "per", "compared", "covered", "inset", "clear", "again", "left end", "right end", "in all")

// String returns the word of the kind, or its number in brackets where it has none.
func (k TermKind) String() string { return termKinds.String(k) }

// MarshalText writes the word of the kind, and fails where it has none.
func (k TermKind) MarshalText() ([]byte, error) { return termKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *TermKind) UnmarshalText(t []byte) error { return termKinds.Unmarshal(t, k) }

// Choice is how packs were chosen where several are sold.
type Choice uint8

// The choices.
const (
	OnlyPack Choice = iota
	LeastMoney
	LeastLeft  // over, as prices are missing
	FirstMixes // the best of the first [MixSteps] mixes, not proved least
)

var choices = enum.Of[Choice]("", "least money", "least left over", "first mixes")

// String returns the word of the choice, or its number in brackets where it has none.
func (c Choice) String() string { return choices.String(c) }

// MarshalText writes the word of the choice, and fails where it has none.
func (c Choice) MarshalText() ([]byte, error) { return choices.Marshal(c) }

// UnmarshalText reads the word of a choice.
func (c *Choice) UnmarshalText(t []byte) error { return choices.Unmarshal(t, c) }

// Source is where a figure or a time comes from.
type Source uint8

// The sources.
const (
	NoSource      Source = iota
	Given                // by the job
	Planning             // a planning figure: judgment or common practice
	PlanningLabel        // a planning figure from how-to articles: the label of the paint decides
	FromSolids           // solids by volume over dry film
	NavyManual           // NAVEDTRA 14044, figure 5-8
	Hardboard612         // Ontario guidance on hardboard sheets: 6 and 12 in; they are cladding there
	MakerDecides         // common practice, no source: the maker's instructions decide
	Custom               // from memory: about a 10 oz cartridge for a sheet of 4 x 8 ft
	MakerText            // a maker's guide to beaded plywood, a trade body's to fiberboard
	HowTo                // a how-to article
	TradeLeaflet         // a leaflet of a lumber trade association
	TinLabel             // from memory: the label of the paint decides
	PaintText            // sheets of two paints: least times; the most from memory
	TubeText             // sheets of two sealants and two adhesives
)

var sources = enum.Of[Source]("", "given", "planning", "planning label", "solids", "navy manual", "hardboard guidance", "maker decides", "custom", "maker text",
	"how-to", "trade leaflet", "tin label", "paint text", "tube text")

// String returns the word of the source, or its number in brackets where it has none.
func (s Source) String() string { return sources.String(s) }

// MarshalText writes the word of the source, and fails where it has none.
func (s Source) MarshalText() ([]byte, error) { return sources.Marshal(s) }

// UnmarshalText reads the word of a source.
func (s *Source) UnmarshalText(t []byte) error { return sources.Unmarshal(t, s) }
