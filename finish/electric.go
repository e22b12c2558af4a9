package finish

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"
	"strings"

	"example.com/groovewright/fraction"
	"github.com/shopspring/decimal"
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
	price *decimal.Decimal
}

func (r *reader) electric(m, d Materials) electric {
	const path = "screws."
	return electric{
		notes:       r.notes(m.Boxes),
		extenders:   r.extenders(m.Extenders, d.Extenders),
		device:      r.times(path+"device_per_gang", m.Screws.DevicePerGang, d.Screws.DevicePerGang),
		cover:       r.times(path+"cover_per_gang", m.Screws.CoverPerGang, d.Screws.CoverPerGang),
		deviceUsual: r.length(path+"device_usual", m.Screws.DeviceUsual, d.Screws.DeviceUsual, positive),
		coverUsual:  r.length(path+"cover_usual", m.Screws.CoverUsual, d.Screws.CoverUsual, positive),
		lengths:     r.lengths(path+"lengths", m.Screws.Lengths, d.Screws.Lengths),
		offers:      r.packs(path+"packs", m.Screws.Packs, d.Screws.Packs),
	}
}

// maxGangs is the most devices side by side.
const maxGangs = 10

func (r *reader) notes(boxes []BoxNote) map[string]note {
	notes := map[string]note{}
	for i, n := range boxes {
		path := fmt.Sprintf("boxes[%d]", i)
		if _, twice := notes[n.Name]; twice || n.Name == "" {
			r.fault(path+".name", n.Name, "want the name of an opening, each once")
		}
		r.gangs(path, n.Gangs)
		back := new(big.Rat)
		if n.SetBack != "" {
			back = r.length(path+".set_back", n.SetBack, "", fraction.Inches(-fraction.MaxInput))
		}
		notes[n.Name] = note{n.Gangs, back}
	}
	return notes
}

func (r *reader) gangs(path string, n int) {
	if n < 0 || n > maxGangs {
		r.fault(path+".gangs", fmt.Sprint(n), fmt.Sprintf("want 0 to %d", maxGangs))
	}
}

func (r *reader) extenders(given, otherwise []Extender) []extender {
	path := "extenders"
	if len(given) == 0 {
		given = otherwise
	}
	var all []extender
	for i, e := range given {
		path := fmt.Sprintf("%s[%d]", path, i)
		r.gangs(path, e.Gangs)
		all = append(all, extender{e.Gangs, r.length(path+".depth", e.Depth, "", positive), r.price(path+".price", e.Price)})
	}
	return all
}

// SetBack is how far the front of a box may lie behind a finished face that cannot burn: 1/4 in (6 mm); behind one that
// can burn, nothing: NEC 314.20.
var SetBack = fraction.Of(1, 4)

// behind is a box with how far its front lies behind the panels.
type behind struct {
	name  string
	gangs int
	depth *big.Rat
}

// boxes lists the extenders of boxes behind the panels, and the longer screws.
func (b *builder) boxes() {
	allowed := new(big.Rat)
	why := "a face that can burn allows none"
	if !b.settings.house.combustible() {
		allowed, why = SetBack.Rat(), "a face that cannot burn allows "+b.small(SetBack.Rat())
	}
	var deep, back []behind
	for _, x := range b.work.Boxes {
		n, told := b.settings.electric.notes[x.Name]
		if !told {
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
	e := b.settings.electric
	b.screws("device screws", b.extend(deep, why), e.deviceUsual, e.device, "they pass through the extender into the box; take an old one along for its thread")
	b.screws("cover screws", back, e.coverUsual, e.cover, "the device stays back; where a spacer brings it out, the usual ones do")
}

// extend adds a row for each kind of extender that is needed and returns the boxes that get one. Their devices come out to the face, so
// that covers keep their usual screws.
func (b *builder) extend(deep []behind, why string) (extended []behind) {
	type kind struct {
		index, gangs int
	}
	var order []kind
	names := map[kind][]string{}
	for _, x := range deep {
		i := b.fitting(x)
		if i < 0 {
			b.warn(x.name, "its front lies %s behind the %s and no extender on the list reaches so far: have an electrician move the box", b.small(x.depth), b.work.board("panels", "boards"))
			continue
		}
		extended = append(extended, x)
		k := kind{i, x.gangs}
		if names[k] == nil {
			order = append(order, k)
		}
		names[k] = append(names[k], fmt.Sprintf("%s (%s behind)", x.name, b.small(x.depth)))
	}
	for _, k := range order {
		e := b.settings.electric.extenders[k.index]
		n := len(names[k])
		item := fmt.Sprintf("box extender %s, %d gang", b.small(e.depth), k.gangs)
		b.row(Row{item, fmt.Sprint(n), plural(n, "extender"), n, "extender", e.price, nil, strings.Join(names[k], ", ") + "; " + why + " (NEC 314.20); listed for the box"})
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
func (b *builder) screws(item string, boxes []behind, usual *big.Rat, perGang int64, why string) {
	e := b.settings.electric
	needs := map[string]int64{}
	var order []string
	for _, x := range boxes {
		wanted := add(usual, x.depth)
		length := sold(e.lengths, wanted)
		if length == nil {
			b.warn(x.name, "no screw on the list is %s long", b.small(wanted))
			length = wanted
		}
		name := item + " " + b.small(length)
		if _, listed := needs[name]; !listed {
			order = append(order, name)
		}
		needs[name] += perGang * int64(x.gangs)
	}
	for _, name := range order {
		how := fmt.Sprintf("%d a gang, the usual %s longer by what the face comes forward; %s", perGang, b.small(usual), why)
		b.buy(name, whole(needs[name]), counted("screws"), e.offers, how)
	}
}
