package finish

import (
	"cmp"
	"math/big"
	"slices"
	"sort"

	"example.com/groovewright/fraction"
)

// maxSetBack is how far a box may lie behind a finished face that cannot burn: 1/4 in (6 mm), NEC
// 314.20; behind one that can, nothing.
var maxSetBack = fraction.Of(1, 4)

// behind is a box with how far its front lies behind the panels.
type behind struct {
	name  string
	gangs int
	depth *big.Rat
}

// boxes lists what brings boxes and devices out to the face: extenders, spacers, longer screws. A
// box behind a face that cannot burn may stay back a little, but its device never does: a
// receptacle's yoke is held rigidly at the face (NEC 406.4(A), now 406.5(A); IRC E3902.5), the ears
// of a switch are seated (404.10(B)).
func (b *builder) boxes() {
	deep, back := b.behind()
	out := append(b.extend(deep, b.allowed()), back...)
	b.space(back)
	b.screws(out)
}

// allowed is how far a box may lie behind the face.
func (s settings) allowed() *big.Rat {
	if s.House.Material == Noncombustible {
		return maxSetBack.Rat()
	}
	return new(big.Rat)
}

// behind returns the boxes that lie too far behind the panels, by gangs and depth, and those that may
// stay back.
func (s settings) behind() (deep, back []behind) {
	forward := new(big.Rat) // of the wall: the backs of the panels
	if s.Furring.Thickness != "" {
		forward = s.in(s.Furring.Thickness)
	}
	notes := map[string]BoxNote{}
	for _, n := range s.Materials.Boxes {
		notes[n.Name] = n
	}
	for _, x := range s.Work.Boxes {
		if x.Up {
			continue
		}
		n := notes[x.Name]
		x := behind{x.Name, cmp.Or(n.Gangs, x.Gangs, 1), add(s.in(n.SetBack), forward, s.Profile.Thickness.Rat())}
		switch {
		case x.depth.Cmp(s.allowed()) > 0:
			deep = append(deep, x)
		case x.depth.Sign() > 0:
			back = append(back, x)
		}
	}
	sort.SliceStable(deep, func(i, j int) bool {
		return cmp.Or(cmp.Compare(deep[i].gangs, deep[j].gangs), deep[i].depth.Cmp(deep[j].depth)) < 0
	})
	return deep, back
}

// space adds the spacers between boxes that stay back and their devices, one for each screw.
func (b *builder) space(back []behind) {
	row, perGang, n := Row{Item: ItemSpacers, How: BySpacers}, times(b.Screws.DevicePerGang), int64(0)
	for _, x := range back {
		n += perGang * int64(x.gangs)
		row.Terms = append(row.Terms, Term{Kind: TermBox, Name: x.name, Value: b.small(x.depth)})
	}
	row.Terms = append(row.Terms, number(TermPerGang, perGang, NoUnit))
	b.buy(row, whole(n), UnitPiece, offers(b.settings, b.Screws.Spacers))
}

// extend adds a row for each kind of extender and returns the boxes that get one. Boxes come by
// gangs and depth, so that those of one kind stand together.
func (b *builder) extend(deep []behind, allowed *big.Rat) (extended []behind) {
	var rows []Row
	var last *Extender
	for _, x := range deep {
		e := b.fitting(x)
		if e == nil {
			b.warn(BoxTooDeep, nil, []string{x.name}, x.depth)
			continue
		}
		extended = append(extended, x)
		if e != last || rows[len(rows)-1].Gangs != x.gangs {
			last = e
			rows = append(rows, Row{Item: ItemExtender, Size: []Figure{b.small(b.in(e.Depth))}, Gangs: x.gangs, Container: "extender",
				Price: price(e.Price), How: ByBoxDepth})
		}
		row := &rows[len(rows)-1]
		row.Buy++
		row.Terms = append(row.Terms, Term{Kind: TermBox, Name: x.name, Value: b.small(x.depth)})
	}
	limit := Term{Kind: TermNoneAllowed}
	if allowed.Sign() > 0 {
		limit = b.short(TermAllowed, allowed)
	}
	for _, row := range rows {
		row.Terms = append(row.Terms, limit)
		b.row(row, counted(int64(row.Buy), UnitExtender))
	}
	return extended
}

// extended reports whether some box gets an extender.
func (s settings) extended() bool {
	deep, _ := s.behind()
	return slices.ContainsFunc(deep, func(x behind) bool { return s.fitting(x) != nil })
}

// fitting returns the extender with the least depth that reaches, so that nothing stands too proud;
// of two as deep, the one for this number of gangs. It is nil if none reaches.
func (s settings) fitting(x behind) (found *Extender) {
	for i := range s.Extenders {
		e := &s.Extenders[i]
		depth, suits := s.in(e.Depth), e.Gangs == 0 || e.Gangs == x.gangs
		if suits && depth.Cmp(x.depth) >= 0 &&
			(found == nil || cmp.Or(depth.Cmp(s.in(found.Depth)), cmp.Compare(found.Gangs, e.Gangs)) < 0) {
			found = e
		}
	}
	return found
}

// screws adds the longer screws of devices that come out to the face, by length.
func (b *builder) screws(boxes []behind) {
	usual, perGang := b.in(b.Screws.DeviceUsual), times(b.Screws.DevicePerGang)
	row := Row{Item: ItemDeviceScrews, How: ByDeviceGangs}
	row.Terms = []Term{number(TermPerGang, perGang, NoUnit), b.short(TermUsual, usual)}
	needs := map[string]int64{}
	var lengths []Figure
	for _, x := range boxes {
		wanted := add(usual, x.depth)
		length := b.sold(b.Screws.Lengths, wanted)
		if length == nil {
			b.warn(ScrewShort, nil, []string{x.name}, wanted)
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
		b.buy(row, whole(needs[l.String()]), UnitScrew, offers(b.settings, b.Screws.Packs))
	}
}
