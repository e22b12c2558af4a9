package finish

import (
	"cmp"
	"math/big"
	"slices"

	"example.com/groovewright/fraction"
)

// maxGangs is the most devices side by side.
const maxGangs = 10

// maxSetBack is how far the front of a box may lie behind a finished face that cannot burn: 1/4 in (6 mm); behind one that
// can burn, nothing: NEC 314.20.
var maxSetBack = fraction.Of(1, 4)

// behind is a box with how far its front lies behind the panels.
type behind struct {
	name  string
	gangs int
	depth *big.Rat
}

// boxes lists the extenders of boxes behind the panels, and the longer screws.
func (b *builder) boxes() {
	allowed := new(big.Rat)
	if !b.House.combustible() {
		allowed = maxSetBack.Rat()
	}
	notes := map[string]BoxNote{}
	for _, n := range b.Materials.Boxes {
		notes[n.Name] = n
	}
	var deep, back []behind
	for _, x := range b.Boxes {
		n := notes[x.Name]
		x := behind{x.Name, cmp.Or(n.Gangs, x.Gangs, 1), add(b.in(n.SetBack), b.forward(), b.thickness())}
		switch {
		case x.depth.Cmp(allowed) > 0:
			deep = append(deep, x)
		case x.depth.Sign() > 0:
			back = append(back, x)
		}
	}
	slices.SortStableFunc(deep, func(x, y behind) int { return cmp.Or(cmp.Compare(x.gangs, y.gangs), x.depth.Cmp(y.depth)) })
	// A device that an extender brings out to the face needs longer screws, and its cover keeps the usual ones; where the
	// device stays back it is the other way round.
	b.screws(Row{Item: ItemDeviceScrews, How: ByExtendedGangs}, b.extend(deep, allowed), b.Screws.DeviceUsual, b.Screws.DevicePerGang)
	b.screws(Row{Item: ItemCoverScrews, How: BySetBackGangs}, back, b.Screws.CoverUsual, b.Screws.CoverPerGang)
}

// extend adds a row for each kind of extender that is needed and returns the boxes that get one.
func (b *builder) extend(deep []behind, allowed *big.Rat) (extended []behind) {
	type kind struct{ index, gangs int }
	var order []kind
	boxes := map[kind][]Term{}
	for _, x := range deep {
		i := b.fitting(x)
		if i < 0 {
			b.warn(BoxTooDeep, "", []string{x.name}, x.depth)
			continue
		}
		extended = append(extended, x)
		k := kind{i, x.gangs}
		if boxes[k] == nil {
			order = append(order, k)
		}
		boxes[k] = append(boxes[k], Term{Kind: TermBox, Name: x.name, Value: b.small(x.depth)})
	}
	for _, k := range order {
		e, terms := b.Extenders[k.index], boxes[k]
		row := Row{Item: ItemExtender, Size: []Figure{b.small(b.in(e.Depth))}, Gangs: k.gangs, Buy: len(terms), Container: "extender",
			Price: price(e.Price), How: ByBoxDepth}
		if allowed.Sign() > 0 {
			row.Terms = append(terms, Term{Kind: TermAllowed, Value: b.small(allowed)})
		} else {
			row.Terms = append(terms, Term{Kind: TermNoneAllowed})
		}
		b.row(row, counted(int64(len(terms)), UnitExtender))
	}
	return extended
}

// fitting returns the index of the extender with the least depth that reaches, so that nothing stands further proud than it
// must; of two as deep, the one made for this number of gangs. It returns -1 if none reaches.
func (b *builder) fitting(x behind) int {
	found := -1
	all := b.Extenders
	for i, e := range all {
		depth := b.in(e.Depth)
		if e.Gangs != 0 && e.Gangs != x.gangs || depth.Cmp(x.depth) < 0 {
			continue
		}
		if found < 0 || cmp.Or(depth.Cmp(b.in(all[found].Depth)), cmp.Compare(all[found].Gangs, e.Gangs)) < 0 {
			found = i
		}
	}
	return found
}

// screws adds the longer screws of one item, by length. usual is their length without panels.
func (b *builder) screws(row Row, boxes []behind, short Taped, number Number) {
	usual, perGang := b.in(short), times(number)
	row.Terms = []Term{{Kind: TermPerGang, Value: counted(perGang, NoUnit)}, {Kind: TermUsual, Value: b.small(usual)}}
	needs := map[string]int64{}
	var lengths []Figure
	for _, x := range boxes {
		wanted := add(usual, x.depth)
		length := b.sold(b.Screws.Lengths, wanted)
		if length == nil {
			b.warn(ScrewShort, "", []string{x.name}, wanted)
			length = wanted
		}
		figure := b.small(length)
		if _, listed := needs[figure.String()]; !listed {
			lengths = append(lengths, figure)
		}
		needs[figure.String()] += perGang * int64(x.gangs)
	}
	for _, l := range lengths {
		row.Size = []Figure{l}
		b.buy(row, whole(needs[l.String()]), UnitScrew, b.packs(b.Screws.Packs))
	}
}
