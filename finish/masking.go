package finish

import (
	"math/big"
	"slices"
)

// taped reports whether tape goes along a joint while it is sealed: not where the last coat covers
// the bead and both sides of it. Common practice, no source.
func (s settings) taped(j Joint) bool { return s.seals(j) && (j.bare() || !s.lastCoat()) }

// mask lists the masking tape: along what is sealed, and again for the last coat beside what of
// this stays bare.
func (b *builder) mask() {
	seal, paint := times(b.Tape.SealLines), times(b.Tape.PaintLines)
	sealed, along := new(big.Rat), up(new(big.Rat), b.run())
	for _, wet := range []bool{false, true} { // each as the order of work writes it
		length := b.lengthOf(func(j Joint) bool { return b.taped(j) && b.wet(j) == wet })
		sealed, along = add(sealed, length), along.plus(up(length, b.run()))
	}
	if !b.lastCoat() {
		paint = 0
	}
	lines := whole(seal + paint)
	beside, sum := along.times(whole(min(1, paint))), along.times(lines)
	b.buySum(Row{Item: ItemTape, How: ByTapeLines, Terms: []Term{{Kind: TermLength, Value: along}, number(TermTimes, seal, NoUnit),
		{Kind: TermBeside, Value: beside}, number(TermTimes, paint, NoUnit), {Kind: TermLength, Value: sum}}}, sum, mul(lines, sealed), ratio(b.Tape.Waste), b.run(), offers(b.settings, b.Tape.Rolls))
}

// cover lists the sheeting over counter and floor.
func (b *builder) cover() {
	if b.Sheeting.None {
		return
	}
	width, reach := b.Width.Rat(), b.in(b.Sheeting.Reach)
	b.buy(Row{Item: of(b.in(b.House.Datum).Sign() == 0, ItemCounterSheeting, ItemFloorSheeting), How: ByReach,
		Terms: []Term{b.long(TermLength, width), b.short(TermReach, reach)}}, mul(width, reach), b.area(), offers(b.settings, b.Sheeting.Sheets))
}

// trims lists the strips over panel edges that are seen: flat ends, then outside corners. A corner
// that is mitred is glued and gets none unless the job asks.
func (b *builder) trims() {
	if !b.Trim.None {
		b.trimsOf(ItemEdgeTrim, false)
		if b.cornered() {
			b.trimsOf(ItemCornerTrim, true)
		}
	}
}

// cornered reports whether outside corners get a strip, trimmed whether there is any trim.
func (s settings) cornered() bool { return s.Trim.Corners || !s.Mitred }
func (s settings) trimmed() bool {
	return slices.ContainsFunc(s.Covers, func(c Covering) bool { return !c.Length.IsZero() }) ||
		!s.Trim.None && slices.ContainsFunc(s.Ends, func(e End) bool { return !e.Length.IsZero() && (!e.Corner || s.cornered()) })
}

// coverings lists the trims that hide edges by their names, each length with its cuts, sold as the
// job says or as [Trim].Stick is. Each length is cut whole from a stick where that takes no more sticks
// than to join them end to end, with the waste that joints make: common practice, no source.
func (b *builder) coverings() {
	lengths, terms, sums, names := map[string][]*big.Rat{}, map[string][]Term{}, map[string]Figure{}, []string{}
	allow := b.in(b.Trim.Allow)
	for i, c := range b.Covers {
		if c.Length.IsZero() {
			continue
		}
		if lengths[c.Name] == nil {
			names, sums[c.Name] = append(names, c.Name), up(new(big.Rat), b.run())
		}
		length := add(c.Length.Rat(), allow)
		lengths[c.Name], sums[c.Name] = append(lengths[c.Name], length), sums[c.Name].plus(up(length, b.run()))
		term := Term{Kind: TermCovered, Name: c.Along, Value: up(length, b.run())}
		if i > 0 && b.Covers[i-1].Name == c.Name && b.Covers[i-1].Along == c.Along {
			term.Name = "" // goes on with that of the term before
		}
		terms[c.Name] = append(terms[c.Name], term)
	}
	for _, name := range names {
		stick := Roll{Name: b.Trim.Stick.Name, Length: b.Trim.Stick.Length}
		if i := slices.IndexFunc(b.Trim.Covers, func(r Roll) bool { return r.Name == name }); i >= 0 {
			stick = b.Trim.Covers[i]
		}
		size, all, waste := b.in(stick.Length), lengths[name], ratio(b.Trim.Waste)
		longer := slices.ContainsFunc(all, func(l *big.Rat) bool { return l.Cmp(size) > 0 })
		row := Row{Item: ItemCovering, Name: name, How: ByCoverings, Terms: append(terms[name], b.short(TermAllowance, allow))}
		if total := add(all...); !longer {
			if n := sticks(all, size); n <= count(quo(more(total, waste), size)) {
				row.How, row.Buy, row.Container, row.Price = ByWholeLengths, int(n), stick.Name, price(stick.Price)
				b.row(row, sums[name])
				continue
			}
		}
		b.buySum(row, sums[name], add(all...), waste, b.run(), offers(b.settings, []Roll{stick}))
	}
}

func (b *builder) trimsOf(item Item, corners bool) {
	stick, allow := b.in(b.Trim.Stick.Length), b.in(b.Trim.Allow)
	row := Row{Item: item, Container: b.Trim.Stick.Name, Price: price(b.Trim.Stick.Price), How: ByEnds}
	var lengths []*big.Rat
	total, joined := up(new(big.Rat), b.run()), int64(0)
	for _, e := range b.Ends {
		if e.Up || e.Length.IsZero() || e.Corner != corners {
			continue
		}
		l := add(e.Length.Rat(), allow)
		length := up(e.Length.Rat(), b.run())
		total = total.plus(length)
		row.Terms = append(row.Terms, Term{Kind: e.term(), Name: e.Run, Value: length})
		if l.Cmp(stick) > 0 {
			full := count(quo(l, stick)) - 1
			joined, l = joined+full, sub(l, mul(whole(full), stick))
			b.warn(TrimJoint, nil, []string{e.Run, e.term().String()})
		}
		lengths = append(lengths, l)
	}
	if len(lengths) == 0 {
		return
	}
	row.Terms = append(row.Terms, b.short(TermAllowance, allow))
	n := joined + sticks(lengths, stick)
	if b.refused(item, n) {
		return
	}
	row.Buy = int(n)
	b.row(row, total)
}

// mostLengths is for how many lengths the least number of sticks is searched.
const mostLengths = 10

// sticks returns how many sticks the lengths, none of them longer, are cut from: the least number
// for up to mostLengths, and beyond one after the other, a new stick where the last has no room.
func sticks(lengths []*big.Rat, stick *big.Rat) (n int64) {
	if rest := new(big.Rat); len(lengths) > mostLengths {
		for _, l := range lengths {
			if rest.Cmp(l) < 0 {
				n, rest = n+1, stick
			}
			rest = sub(rest, l)
		}
		return n
	}
	best := len(lengths)
	fill(slices.Clone(lengths), stick, nil, &best)
	return int64(best)
}

// fill puts the first length into each stick with room, or a new one, and goes on with the rest.
func fill(lengths []*big.Rat, stick *big.Rat, rests []*big.Rat, best *int) {
	if len(rests) >= *best {
		return
	}
	if len(lengths) == 0 {
		*best = len(rests)
		return
	}
	rests = append(slices.Clone(rests), stick)
	for i, rest := range rests {
		if rest.Cmp(lengths[0]) >= 0 {
			rests[i] = sub(rest, lengths[0])
			fill(lengths[1:], stick, rests[:max(i+1, len(rests)-1)], best)
			rests[i] = rest
		}
	}
}

// term says which end of its run an end is.
func (e End) term() TermKind {
	switch {
	case e.Corner:
		return TermCorner
	case e.Left:
		return TermLeftEnd
	case e.Right:
		return TermRightEnd
	}
	return TermEnd
}
