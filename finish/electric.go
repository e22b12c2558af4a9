package finish

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
)

// electric is what is known of boxes, extenders and screws.
type electric struct {
	notes         map[string]note
	extenders     []extender
	device, cover int64    // screws a gang
	deviceUsual   *big.Rat // length without panels
	coverUsual    *big.Rat
	lengths       []*big.Rat
	offers        []offer
}

// note is a BoxNote, read.
type note struct {
	gangs   int
	setBack *big.Rat
}

// extender is an Extender, read.
type extender struct {
	gangs int
	depth *big.Rat
	price money.Amount
}

func (r *reader) electric(m, d Materials) electric {
	s := m.Screws
	return electric{
		notes:       r.notes(m.Boxes),
		extenders:   r.extenders(m.Extenders, d.Extenders),
		device:      r.times("Screws.DevicePerGang", s.DevicePerGang, d.Screws.DevicePerGang),
		cover:       r.times("Screws.CoverPerGang", s.CoverPerGang, d.Screws.CoverPerGang),
		deviceUsual: r.length("Screws.DeviceUsual", s.DeviceUsual, d.Screws.DeviceUsual, positive),
		coverUsual:  r.length("Screws.CoverUsual", s.CoverUsual, d.Screws.CoverUsual, positive),
		lengths:     r.lengths("Screws.Lengths", s.Lengths, d.Screws.Lengths),
		offers:      r.packs("Screws.Packs", s.Packs, d.Screws.Packs),
	}
}

// maxGangs is the most devices side by side.
const maxGangs = 10

func (r *reader) notes(boxes []BoxNote) map[string]note {
	notes := map[string]note{}
	for i, n := range boxes {
		path := fmt.Sprintf("Boxes[%d]", i)
		if _, twice := notes[n.Name]; twice || n.Name == "" {
			r.fault(path+".Name", n.Name, "the name of an opening, each once")
		}
		r.gangs(path, n.Gangs)
		back := new(big.Rat)
		if n.SetBack != "" {
			back = r.length(path+".SetBack", n.SetBack, "", fraction.Inches(-fraction.MaxInput))
		}
		notes[n.Name] = note{n.Gangs, back}
	}
	return notes
}

func (r *reader) gangs(path string, n int) {
	if n < 0 || n > maxGangs {
		r.fault(path+".Gangs", fmt.Sprint(n), fmt.Sprintf("0 to %d", maxGangs))
	}
}

func (r *reader) extenders(given, otherwise []Extender) []extender {
	if len(given) == 0 {
		given = otherwise
	}
	var all []extender
	for i, e := range given {
		path := fmt.Sprintf("Extenders[%d]", i)
		r.gangs(path, e.Gangs)
		all = append(all, extender{e.Gangs, r.length(path+".Depth", e.Depth, "", positive), r.price(path+".Price", e.Price)})
	}
	return all
}

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
	if !b.settings.house.combustible() {
		allowed = maxSetBack.Rat()
	}
	e := b.settings.electric
	var deep, back []behind
	for _, x := range b.work.Boxes {
		n, noted := e.notes[x.Name]
		if !noted {
			n.setBack = new(big.Rat)
		}
		if n.gangs == 0 {
			n.gangs = max(1, x.Gangs)
		}
		x := behind{x.Name, n.gangs, add(n.setBack, b.forward(), b.thickness())}
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
	b.screws(Row{Item: ItemDeviceScrews, How: ByExtendedGangs}, b.extend(deep, allowed), e.deviceUsual, e.device)
	b.screws(Row{Item: ItemCoverScrews, How: BySetBackGangs}, back, e.coverUsual, e.cover)
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
		e, terms := b.settings.electric.extenders[k.index], boxes[k]
		row := Row{Item: ItemExtender, Size: []Figure{b.small(e.depth)}, Gangs: k.gangs, Buy: len(terms), Container: "extender", Price: e.price, How: ByBoxDepth}
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
	all := b.settings.electric.extenders
	for i, e := range all {
		if e.gangs != 0 && e.gangs != x.gangs || e.depth.Cmp(x.depth) < 0 {
			continue
		}
		if found < 0 || cmp.Or(e.depth.Cmp(all[found].depth), cmp.Compare(all[found].gangs, e.gangs)) < 0 {
			found = i
		}
	}
	return found
}

// screws adds the longer screws of one item, by length. usual is their length without panels.
func (b *builder) screws(row Row, boxes []behind, usual *big.Rat, perGang int64) {
	e := b.settings.electric
	row.Terms = []Term{{Kind: TermPerGang, Value: counted(perGang, NoUnit)}, {Kind: TermUsual, Value: b.small(usual)}}
	needs := map[string]int64{}
	var lengths []Figure
	for _, x := range boxes {
		wanted := add(usual, x.depth)
		length := sold(e.lengths, wanted)
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
		b.buy(row, whole(needs[l.String()]), UnitScrew, e.offers)
	}
}
