package finish

import (
	"math/big"
	"slices"

	"example.com/groovewright/fraction"
)

// masking is Tape, read.
type masking struct {
	seal, paint int64 // lines
	waste       *big.Rat
	offers      []offer
}

func (r *reader) masking(t, d Tape) masking {
	return masking{
		seal:   r.times("Tape.SealLines", t.SealLines, d.SealLines),
		paint:  r.times("Tape.PaintLines", t.PaintLines, d.PaintLines),
		waste:  r.share("Tape.Waste", t.Waste, d.Waste),
		offers: r.rolls("Tape.Rolls", t.Rolls, d.Rolls),
	}
}

// mask lists the masking tape: along what is sealed, and for the last coat beside what stays bare, which is the counter or
// floor, what hangs above, bare wall and windows.
func (b *builder) mask() {
	t := b.settings.tape
	sealed, beside := b.settings.sealant.sealed(b.work.Joints), new(big.Rat)
	for _, j := range b.work.Joints {
		last := b.settings.paint.top.after+b.settings.paint.primer.after > 0
		if bare := j.Kind == CounterLine || j.Kind == CabinetLine || j.Kind == EndJoint || j.Kind == WindowJoint; bare && last {
			beside = add(beside, j.Length.Rat())
		}
	}
	b.buyMore(Row{Item: ItemTape, How: ByTapeLines, Terms: []Term{
		{Kind: TermLength, Value: up(sealed, b.run())}, {Kind: TermTimes, Value: counted(t.seal, NoUnit)},
		{Kind: TermBeside, Value: up(beside, b.run())}, {Kind: TermTimes, Value: counted(t.paint, NoUnit)},
	}}, add(mul(whole(t.seal), sealed), mul(whole(t.paint), beside)), t.waste, b.run(), t.offers)
}

// covering is Sheeting, read.
type covering struct {
	none   bool
	reach  *big.Rat
	offers []offer
}

func (r *reader) covering(s, d Sheeting) covering {
	return covering{
		none:  s.None,
		reach: r.length("Sheeting.Reach", s.Reach, d.Reach, fraction.Length{}),
		offers: offers(r, "Sheeting.Sheets", s.Sheets, d.Sheets, func(path string, c Cover) offer {
			return offer{c.Name, r.quantity(path+".Size", string(c.Size), "an area such as 108 ft2 or 20 m2", surfaces), r.price(path+".Price", c.Price)}
		}),
	}
}

// cover lists the sheeting over counter and floor.
func (b *builder) cover() {
	c := b.settings.sheeting
	if c.none {
		return
	}
	width := b.work.Width.Rat()
	b.buy(Row{Item: of(b.settings.house.datum.Sign() == 0, ItemCounterSheeting, ItemFloorSheeting), How: ByReach, Terms: []Term{
		{Kind: TermLength, Value: up(width, b.run())}, {Kind: TermReach, Value: b.small(c.reach)},
	}}, mul(width, c.reach), b.area(), c.offers)
}

// trimming is Trim, read.
type trimming struct {
	none  bool
	stick offer
	allow *big.Rat
}

func (r *reader) trimming(t, d Trim) trimming {
	stick := t.Stick
	if stick == (Roll{}) {
		stick = d.Stick
	}
	r.named("Trim.Stick", stick.Name)
	return trimming{none: t.None, stick: r.roll("Trim.Stick", stick), allow: r.length("Trim.Allow", t.Allow, d.Allow, fraction.Length{})}
}

// trims lists the strips over panel edges that are seen, those of flat ends apart from those of outside corners.
func (b *builder) trims() {
	if !b.settings.trim.none {
		b.trimsOf(ItemEdgeTrim, TermEnd)
		b.trimsOf(ItemCornerTrim, TermCorner)
	}
}

func (b *builder) trimsOf(item Item, kind TermKind) {
	t := b.settings.trim
	row := Row{Item: item, Container: t.stick.name, Price: t.stick.price, How: ByEnds}
	var lengths []*big.Rat
	total, joined := new(big.Rat), int64(0)
	for _, e := range b.work.Ends {
		if e.Length.IsZero() || e.Corner != (kind == TermCorner) {
			continue
		}
		l := add(e.Length.Rat(), t.allow)
		total = add(total, e.Length.Rat())
		row.Terms = append(row.Terms, Term{Kind: kind, Name: e.Run, Value: b.small(e.Length.Rat())})
		if l.Cmp(t.stick.size) > 0 {
			full := count(quo(l, t.stick.size)) - 1
			joined += full
			l = sub(l, mul(whole(full), t.stick.size))
			b.warn(TrimJoint, "", []string{e.Run})
		}
		lengths = append(lengths, l)
	}
	if len(lengths) == 0 {
		return
	}
	row.Terms = append(row.Terms, Term{Kind: TermAllowance, Value: b.small(t.allow)})
	n := joined + sticks(lengths, t.stick.size)
	if n > MaxPacks {
		b.fail(item, n)
		return
	}
	row.Buy = int(n)
	b.row(row, up(total, b.run()))
}

// exactSticks is the greatest number of strips that are packed exactly.
const exactSticks = 10

// sticks returns how many sticks the lengths are cut from, none of them longer than a stick: the least number up to
// exactSticks lengths, and beyond as many as if each were as long as the longest.
func sticks(lengths []*big.Rat, stick *big.Rat) int64 {
	if len(lengths) > exactSticks {
		longest := slices.MaxFunc(lengths, func(a, b *big.Rat) int { return a.Cmp(b) })
		each := new(big.Int).Quo(quo(stick, longest).Num(), quo(stick, longest).Denom()).Int64()
		return count(quo(whole(int64(len(lengths))), whole(each)))
	}
	best := len(lengths)
	fill(slices.Clone(lengths), stick, nil, &best)
	return int64(best)
}

// fill puts the first length into each stick that has room, or into a new one, and goes on with the others.
func fill(lengths []*big.Rat, stick *big.Rat, rests []*big.Rat, best *int) {
	if len(rests) >= *best {
		return
	}
	if len(lengths) == 0 {
		*best = len(rests)
		return
	}
	l := lengths[0]
	for i, rest := range rests {
		if rest.Cmp(l) >= 0 {
			next := slices.Clone(rests)
			next[i] = sub(rest, l)
			fill(lengths[1:], stick, next, best)
		}
	}
	fill(lengths[1:], stick, append(slices.Clone(rests), sub(stick, l)), best)
}
