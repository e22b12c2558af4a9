package finish

import (
	"math/big"
	"slices"

	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/fraction/money"
)

// Tool is a thing to have at hand that a list has no price for.
type Tool uint8

// The tools, in the order of the work.
const (
	ToolTester     Tool = iota // of voltage
	ToolCapsCovers             // wire connectors and blank covers for open boxes
	ToolStudFinder             // for studs, cables and pipes
	ToolLevel                  // and a story pole
	ToolSpacers                // as thick as the gaps
	ToolBlade                  // fine, for the saw
	ToolBit                    // for the starter holes, and a jigsaw
	ToolNailer                 // for brads or finish nails
	ToolDriver                 // for screws, with bits
	ToolGun                    // for cartridges up to 11 fl oz (310 mL)
	ToolLargeGun               // for larger ones
	ToolRoller                 // roller, brush, tray
	ToolFiller                 // for the holes of nails and screws
	ToolPaper                  // fine, for sawn edges and between coats
	ToolEyesEars               // glasses, ear muffs, gloves
	ToolRespirator             // against dust; against solvents with cartridges
)

var tools = enum.Of[Tool]("tester", "caps and covers", "stud finder", "level", "spacers", "blade", "bit", "nailer", "driver", "gun", "large gun", "roller",
	"filler", "fine paper", "eyes and ears", "respirator")

// String returns the word of the tool, or its number in brackets where it has none.
func (t Tool) String() string { return tools.String(t) }

// MarshalText writes the word of the tool, and fails where it has none.
func (t Tool) MarshalText() ([]byte, error) { return tools.Marshal(t) }

// UnmarshalText reads the word of a tool.
func (t *Tool) UnmarshalText(text []byte) error { return tools.Unmarshal(text, t) }

// usualGun is the most that the usual gun takes: 11 fl oz; from memory.
var usualGun = mul(whole(11), scales["fl oz"].size)

// atHand returns the tools that the rows of the list and the work ask for.
func (b *builder) atHand() (at []Tool) {
	usual, large := false, false
	for _, c := range slices.Concat(b.Sealant.Cartridges, b.Sealant.WetCartridges, b.Adhesive.Cartridges) {
		bought := slices.ContainsFunc(b.rows, func(r Row) bool {
			return r.Container == c.Name && slices.Contains([]Item{ItemAdhesive, ItemSealant, ItemPaintableSealant, ItemWetSealant}, r.Item)
		})
		over := measured(string(c.Size), volumes).Cmp(usualGun) > 0
		usual, large = usual || bought && !over, large || bought && over
	}
	boxes, pieces, paint := len(b.Work.Boxes) > 0, len(b.Pieces) > 0, b.firstCoat() || b.lastCoat()
	gap := new(big.Rat)
	for _, j := range b.Joints {
		gap = add(gap, j.Gap.Rat())
	}
	for t, needed := range [...]bool{
		ToolTester: boxes, ToolCapsCovers: boxes, ToolStudFinder: pieces, ToolLevel: pieces, ToolSpacers: pieces && gap.Sign() > 0, ToolBlade: pieces,
		ToolBit: pieces, ToolNailer: pieces && (b.nailed() && !b.screwed() || b.trimmed()),
		ToolDriver: pieces && (b.screwed() || b.stripped()), ToolGun: usual, ToolLargeGun: large, ToolRoller: pieces && paint,
		ToolFiller: pieces && b.nailed() && b.lastCoat(), ToolPaper: pieces, ToolEyesEars: pieces, ToolRespirator: pieces,
	} {
		if needed {
			at = append(at, Tool(t))
		}
	}
	return at
}

// spare returns a row for one more of the first kind that can be bought, which is not in the
// totals: a choice. It is nil where all is on hand.
func (b *builder) spare() *Row {
	for _, row := range b.rows {
		for _, s := range b.Sheets {
			if row.Item == ItemSheet && row.Name == s.Name && !s.OnHand {
				row.Buy, row.Quantity, row.Cost, row.How = 1, counted(1, row.Unit).Value, money.Amount{}, AsSpare
				if row.Price.Known() {
					row.Cost = row.Price
				}
				return &row
			}
		}
	}
	return nil
}
