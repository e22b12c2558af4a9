package finish

import "math/big"

// bead returns how joints of a kind are sealed.
func (s Sealant) bead(kind JointKind) Bead {
	beads := []Bead{{Form: NoBead}, s.CounterLine, s.CabinetLine, s.InsideCorner, s.OutsideCorner, s.Seam, s.End, s.Step, s.Window}
	if int(kind) >= len(beads) {
		kind = NoJoint
	}
	return beads[kind]
}

// section returns the cross-section of the bead in square inches, over a gap in panels so thick:
// the gap as a rectangle, and for a fillet the flat triangle between its legs, leg²/2, which is
// never short: a hollow one has leg² × (1 - π/4).
func (s settings) section(b Bead, gap, thickness *big.Rat) *big.Rat {
	if b.Form == NoBead {
		return new(big.Rat)
	}
	depth := thickness
	if b.Depth != "" {
		depth = least(s.in(b.Depth), thickness)
	}
	area := mul(gap, depth)
	if b.Form == Fillet {
		area = add(area, quo(mul(s.in(b.Leg), s.in(b.Leg)), whole(2)))
	}
	return area
}

// sealed returns the length of all joints that are sealed.
func (s Sealant) sealed(joints []Joint) *big.Rat {
	length := new(big.Rat)
	for _, j := range joints {
		if s.bead(j.Kind).Form != NoBead {
			length = add(length, j.Length.Rat())
		}
	}
	return length
}

// seal lists the sealant of all joints by kind and of open ends of grooves, and the backing of gaps
// too wide for a bead alone.
func (b *builder) seal() {
	s, bridge, waste := b.Sealant, b.in(b.Sealant.Bridge), ratio(b.Sealant.Waste)
	row := Row{Item: of(b.lastCoat(), ItemSealant, ItemPaintableSealant), How: ByJoints}
	volume, wide, grooved := new(big.Rat), new(big.Rat), new(big.Rat)
	fill := func(v *big.Rat, terms ...Term) {
		if v.Sign() > 0 {
			volume = add(volume, v)
			row.Terms = append(append(row.Terms, terms...), Term{Kind: TermVolume, Value: up(v, b.tube())})
		}
	}
	for kind := CounterLine; kind <= WindowJoint; kind++ {
		fill(b.sealKind(kind))
	}
	for _, j := range b.Joints {
		if j.Grooves {
			grooved = add(grooved, j.Length.Rat())
		}
		if gap := j.Gap.Rat(); gap.Cmp(bridge) > 0 && s.bead(j.Kind).Form != NoBead && !j.Length.IsZero() {
			wide = add(wide, j.Length.Rat())
			b.warn(WideGap, nil, []string{j.Run, j.Kind.String()}, gap, bridge)
		}
	}
	if pitch := b.Profile.Pitch().Rat(); pitch.Sign() > 0 {
		repeats, section, deep := quo(grooved, pitch), hollow(b.Profile, b.Paint.Groove), b.in(s.GrooveFill)
		fill(mul(repeats, section, deep), Term{Kind: TermRepeats, Value: up(repeats, UnitRepeat)},
			Term{Kind: TermSection, Value: up(section, b.unit(UnitSquareInch, UnitSquareMillimetre))}, b.short(TermDepth, deep))
	}
	b.buyMore(row, volume, waste, b.tube(), offers(b.settings, s.Cartridges))
	b.buyMore(Row{Item: ItemBackingRod, How: ByWideJoints, Terms: []Term{b.short(TermBridge, bridge), b.long(TermLength, wide)}},
		wide, waste, b.run(), offers(b.settings, s.Backing))
}

// sealKind returns the volume in all joints of one kind, and how it comes about.
func (b *builder) sealKind(kind JointKind) (volume *big.Rat, joint, form Term) {
	bead, length := b.Sealant.bead(kind), new(big.Rat)
	volume, form = new(big.Rat), Term{Kind: TermGap}
	if bead.Form == Fillet {
		form = b.short(TermFillet, b.in(bead.Leg))
	}
	for _, j := range b.Joints {
		if j.Kind == kind {
			if bead.Form == Fillet && j.Gap.Sign() > 0 {
				form.Kind = TermGapFillet
			}
			length = add(length, j.Length.Rat())
			volume = add(volume, mul(j.Length.Rat(), b.section(bead, j.Gap.Rat(), b.thickness())))
		}
	}
	return volume, Term{Kind: TermJoint, Name: kind.String(), Value: up(length, b.run())}, form
}
