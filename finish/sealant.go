package finish

import (
	"cmp"
	"math/big"
	"slices"

	"example.com/groovewright/fraction/fault"
)

// bead returns how joints of a kind are sealed.
func (s Sealant) bead(kind JointKind) Bead {
	beads := []Bead{{Form: NoBead}, s.CounterLine, s.CabinetLine, s.InsideCorner, s.OutsideCorner, s.Seam, s.End, s.Step, s.Window}
	if int(kind) >= len(beads) {
		kind = NoJoint
	}
	return beads[kind]
}

// The least and the most depth of a bead on a backing rod: 1/4 and 1/2 in (6 and 13 mm), an
// architectural detailing text.
var rodLeast, rodMost = part(1, 4), part(1, 2)

// depth returns how deep a bead fills a gap in panels so thick: never deeper than the panel, nor
// than the gap is wide (a county building specification), and before a rod half the width, within
// bounds (an architectural detailing text).
func (s settings) depth(b Bead, gap, thickness *big.Rat) *big.Rat {
	depth := least(gap, thickness)
	if gap.Cmp(s.in(s.Sealant.Bridge)) > 0 {
		half := least(quo(gap, whole(2)), rodMost)
		if half.Cmp(rodLeast) < 0 {
			half = rodLeast
		}
		depth = least(depth, half)
	}
	if b.Depth != "" {
		depth = least(s.in(b.Depth), depth)
	}
	return depth
}

// section returns the cross-section of a bead: the gap as a rectangle, and for a fillet the flat
// triangle between its legs, leg²/2, which is never short: a hollow one has leg² × (1 - π/4).
func section(form BeadForm, leg, gap, depth *big.Rat) *big.Rat {
	switch form {
	case NoBead:
		return new(big.Rat)
	case Fillet:
		return add(mul(gap, depth), quo(mul(leg, leg), whole(2)))
	}
	return mul(gap, depth)
}

// seals reports whether a joint gets a bead: what a trim covers does not.
func (s settings) seals(j Joint) bool {
	return !j.Hidden && !j.Length.IsZero() && s.Sealant.bead(j.Kind).Form != NoBead
}

// wide reports whether the gap of a joint that is sealed wants a backing rod.
func (s settings) wide(j Joint) bool {
	return s.seals(j) && j.Gap.Rat().Cmp(s.in(s.Sealant.Bridge)) > 0
}

// wet reports whether a joint gets the sealant of kitchens and baths, which paint does not hold on:
// that on a counter, or at the floor of a damp room; judgment.
func (s settings) wet(j Joint) bool {
	return j.Kind == CounterLine && (s.House.Damp || s.in(s.House.Datum).Sign() > 0)
}

// bare reports whether a joint lies beside what is not painted, such as a counter, a jamb or the side
// of a cabinet at a step, or a wall without panels.
func (j Joint) bare() bool {
	return j.Alone || slices.Contains([]JointKind{CounterLine, CabinetLine, EndJoint, StepJoint, WindowJoint}, j.Kind)
}

// lengthOf returns the length of all joints of a sort.
func (s settings) lengthOf(sort func(Joint) bool) *big.Rat {
	length := new(big.Rat)
	for _, j := range s.Joints {
		if sort(j) {
			length = add(length, j.Length.Rat())
		}
	}
	return length
}

// grooved returns the length of joints with open ends of grooves that one sealant fills.
func (s settings) grooved(wet bool) *big.Rat {
	if hollow(s.Profile, s.Paint.Groove).Sign() == 0 || s.in(s.Sealant.GrooveFill).Sign() == 0 {
		return new(big.Rat)
	}
	return s.lengthOf(func(j Joint) bool { return j.Grooves && !j.Hidden && s.wet(j) == wet })
}

// seal lists the sealants of joints by kind and of open ends of grooves, and the backing of gaps
// too wide for a bead alone.
func (b *builder) seal() {
	bridge := b.in(b.Sealant.Bridge)
	b.sealWith(Row{Item: ItemWetSealant, How: ByJoints}, true, b.Sealant.WetCartridges)
	b.sealWith(Row{Item: of(b.lastCoat(), ItemSealant, ItemPaintableSealant), How: ByJoints}, false, b.Sealant.Cartridges)
	wide := b.lengthOf(func(j Joint) bool {
		if b.wide(j) {
			b.warn(WideGap, nil, []string{j.Run, cmp.Or(j.Opening, j.Kind.String())}, j.Gap.Rat(), bridge)
		}
		return b.wide(j)
	})
	b.seams()
	b.buyMore(Row{Item: ItemBackingRod, How: ByWideJoints, Terms: []Term{b.short(TermBridge, bridge), b.long(TermLength, wide)}},
		wide, ratio(b.Sealant.Waste), b.run(), offers(b.settings, b.Sealant.Backing))
}

// sealWith lists one sealant: that of wet joints or that of all others.
func (b *builder) sealWith(row Row, wet bool, cartridges []Container) {
	volume, parts := new(big.Rat), []*big.Rat{}
	fill := func(v *big.Rat, terms ...Term) {
		if v.Sign() > 0 {
			volume, parts = add(volume, v), append(parts, v)
			row.Terms = append(append(row.Terms, terms...), Term{Kind: TermVolume})
		}
	}
	for kind := CounterLine; kind <= WindowJoint; kind++ {
		var said []string
		for _, j := range b.Joints {
			if j.Kind == kind && !slices.Contains(said, j.Opening) {
				said = append(said, j.Opening)
				fill(b.sealKind(kind, j.Opening, wet))
			}
		}
	}
	if pitch := b.Profile.Pitch().Rat(); pitch.Sign() > 0 {
		repeats, open, deep := quo(b.grooved(wet), pitch), hollow(b.Profile, b.Paint.Groove), b.in(b.Sealant.GrooveFill)
		fill(mul(repeats, open, deep), Term{Kind: TermRepeats, Value: up(repeats, UnitRepeat)},
			Term{Kind: TermSection, Value: up(open, b.unit(UnitSquareInch, UnitSquareMillimetre))}, b.short(TermDepth, deep))
	}
	volumes := apportioned(parts, b.tube())
	for i, t := range row.Terms {
		if t.Kind == TermVolume {
			row.Terms[i].Value, volumes = volumes[0], volumes[1:]
		}
	}
	b.buyMore(row, volume, ratio(b.Sealant.Waste), b.tube(), offers(b.settings, cartridges))
}

// sealKind returns the volume in all joints of one kind, those round an opening by its name, and how it
// comes about.
func (b *builder) sealKind(kind JointKind, opening string, wet bool) (volume *big.Rat, joint, form Term) {
	bead, leg := b.Sealant.bead(kind), new(big.Rat)
	volume, form = new(big.Rat), Term{Kind: TermGap}
	if bead.Form == Fillet {
		leg = b.in(bead.Leg)
		form = b.short(TermFillet, leg)
	}
	length := b.lengthOf(func(j Joint) bool {
		if j.Kind != kind || j.Opening != opening || !b.seals(j) || b.wet(j) != wet {
			return false
		}
		gap := j.Gap.Rat()
		if bead.Form == Fillet && gap.Sign() > 0 {
			form.Kind = TermGapFillet
		}
		volume = add(volume, mul(j.Length.Rat(), section(bead.Form, leg, gap, b.depth(bead, gap, b.thickness()))))
		return true
	})
	return volume, Term{Kind: TermJoint, Name: cmp.Or(opening, kind.String()), Value: up(length, b.run())}, form
}

// seamGap is the gap that sheets of fiberboard want between them: up to 2.5 mm for each metre of
// width, as their trade body prints.
var seamGap = part(25, 10000)

// seams questions seams of fiberboard that are tighter than seamGap, as far as a tape tells: down to half a mark.
func (b *builder) seams() {
	if b.House.Material != MDF || b.Profile.Boards {
		return
	}
	widest := new(big.Rat)
	for _, p := range b.Pieces {
		if p.Width.Rat().Cmp(widest) > 0 {
			widest = p.Width.Rat()
		}
	}
	want := mul(widest, seamGap)
	if half := b.Mark.Div(2).Rat(); half.Sign() > 0 {
		marks := quo(want, half)
		want = mul(half, new(big.Rat).SetInt(new(big.Int).Quo(marks.Num(), marks.Denom())))
	}
	for _, j := range b.Joints {
		if j.Kind == Seam && !j.Length.IsZero() && j.Gap.Rat().Cmp(want) < 0 {
			b.warn(SeamTight, fault.Of("Gaps", "Seam"), nil, j.Gap.Rat(), want)
			return
		}
	}
}
