package finish

import (
	"math/big"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
)

// What the tests look at from outside the package.

// Offer is a pack, for tests.
type Offer struct {
	Size  *big.Rat
	Price money.Amount
}

// BestMix returns the counts of the best mix and whether it is proved.
func BestMix(need *big.Rat, offers []Offer, worth *big.Rat) (counts []int64, size *big.Rat, proved bool) {
	inner := make([]offer, len(offers))
	for i, o := range offers {
		inner[i] = offer{"pack", o.Size, o.Price}
	}
	m := leastMoney(need, inner, worth)
	return m.counts, m.size, m.proved
}

func Root(x *big.Rat) *big.Rat                           { return rootAbove(x) }
func Sticks(lengths []*big.Rat, s *big.Rat) int64        { return sticks(lengths, s) }
func Hollow(p groove.Profile, s GrooveShape) *big.Rat    { return hollow(p, s) }
func Developed(p groove.Profile, s GrooveShape) *big.Rat { return developed(p, s) }

// Sizes of units, in inches, square inches, cubic inches and square inches per cubic inch.
var Units = map[string]*big.Rat{"in3 in cm3": cubicInch}

func init() {
	for word, scale := range scales {
		Units[word] = scale.size
	}
}

// Limits of the judgments and codes.
func MaxLength() fraction.Length    { return maxLength }
func CounterReach() fraction.Length { return counterReach }

// NailsIn counts the nails of a piece.
func NailsIn(p Piece, edge, field, studs Taped) int64 {
	s, _ := read(Work{}, Materials{Nails: Nails{Edge: edge, Field: field}, House: House{Studs: studs}})
	b := &builder{settings: s}
	return b.nailsIn(p)
}
