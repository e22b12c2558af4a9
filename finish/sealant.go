package finish

import (
	"math/big"

	"example.com/groovewright/fraction"
)

// sealing is Sealant, read.
type sealing struct {
	beads   map[JointKind]bead
	fill    *big.Rat
	bridge  *big.Rat
	waste   *big.Rat
	offers  []offer
	backing []offer // by length
}

// bead is a Bead, read; depth is nil for the thickness of the panel.
type bead struct {
	form  BeadForm
	leg   *big.Rat
	depth *big.Rat
}

func (r *reader) sealing(s, d Sealant) sealing {
	beads := map[JointKind]bead{}
	for _, k := range []struct {
		kind     JointKind
		name     string
		given, d Bead
	}{
		{CounterLine, "CounterLine", s.CounterLine, d.CounterLine},
		{CabinetLine, "CabinetLine", s.CabinetLine, d.CabinetLine},
		{InsideCorner, "InsideCorner", s.InsideCorner, d.InsideCorner},
		{OutsideCorner, "OutsideCorner", s.OutsideCorner, d.OutsideCorner},
		{Seam, "Seam", s.Seam, d.Seam},
		{EndJoint, "End", s.End, d.End},
		{StepJoint, "Step", s.Step, d.Step},
		{WindowJoint, "Window", s.Window, d.Window},
	} {
		beads[k.kind] = r.bead("Sealant."+k.name, k.given, k.d)
	}
	return sealing{
		beads:   beads,
		fill:    r.length("Sealant.GrooveFill", s.GrooveFill, d.GrooveFill, fraction.Length{}),
		bridge:  r.length("Sealant.Bridge", s.Bridge, d.Bridge, positive),
		waste:   r.share("Sealant.Waste", s.Waste, d.Waste),
		offers:  r.containers("Sealant.Cartridges", s.Cartridges, d.Cartridges),
		backing: r.rolls("Sealant.Backing", s.Backing, d.Backing),
	}
}

func (r *reader) bead(path string, b, d Bead) bead {
	read := bead{form: known(r, path+".Form", b.Form), leg: r.length(path+".Leg", b.Leg, d.Leg, positive)}
	if read.form == UsualBead {
		read.form = d.Form
	}
	if b.Depth != "" {
		read.depth = r.length(path+".Depth", b.Depth, "", positive)
	}
	return read
}

// section returns the cross-section of the bead in square inches, over a gap in panels so thick.
//
// The gap is filled as a rectangle, width times depth. A fillet adds the flat triangle between its legs, leg²/2; a
// hollow one has less (leg² × (1 - π/4)), so that this is never short.
func (b bead) section(gap, thickness *big.Rat) *big.Rat {
	if b.form == NoBead {
		return new(big.Rat)
	}
	depth := thickness
	if b.depth != nil {
		depth = least(b.depth, thickness)
	}
	area := mul(gap, depth)
	if b.form == Fillet {
		area = add(area, quo(mul(b.leg, b.leg), whole(2)))
	}
	return area
}

// sealed returns the length of all joints that are sealed.
func (s sealing) sealed(joints []Joint) *big.Rat {
	length := new(big.Rat)
	for _, j := range joints {
		if s.beads[j.Kind].form != NoBead {
			length = add(length, j.Length.Rat())
		}
	}
	return length
}

// seal lists the sealant of all joints, kind by kind, and the backing where a gap is too wide for a bead alone.
func (b *builder) seal() {
	s := b.settings.sealant
	row := Row{Item: ItemSealant, How: ByJoints}
	if p := b.settings.paint; p.primer.after+p.top.after > 0 {
		row.Item = ItemPaintableSealant
	}
	volume, wide := new(big.Rat), new(big.Rat)
	fill := func(v *big.Rat, terms []Term) {
		if v.Sign() > 0 {
			volume = add(volume, v)
			row.Terms = append(append(row.Terms, terms...), Term{Kind: TermVolume, Value: up(v, b.tube())})
		}
	}
	for _, kind := range JointKinds() {
		fill(b.sealKind(kind))
	}
	fill(b.fillGrooves())
	for _, j := range b.work.Joints {
		if gap := j.Gap.Rat(); gap.Cmp(s.bridge) > 0 && s.beads[j.Kind].form != NoBead && !j.Length.IsZero() {
			wide = add(wide, j.Length.Rat())
			b.warn(WideGap, "", []string{j.Run, j.Kind.String()}, gap, s.bridge)
		}
	}
	b.buyMore(row, volume, s.waste, b.tube(), s.offers)
	b.buyMore(Row{Item: ItemBackingRod, How: ByWideJoints, Terms: []Term{{Kind: TermBridge, Value: b.small(s.bridge)}, {Kind: TermLength, Value: up(wide, b.run())}}},
		wide, s.waste, b.run(), s.backing)
}

// sealKind returns the volume in all joints of one kind, and how it comes about.
func (b *builder) sealKind(kind JointKind) (*big.Rat, []Term) {
	bead := b.settings.sealant.beads[kind]
	volume, length := new(big.Rat), new(big.Rat)
	form := Term{Kind: TermGap}
	if bead.form == Fillet {
		form = Term{Kind: TermFillet, Value: b.small(bead.leg)}
	}
	for _, j := range b.work.Joints {
		if j.Kind == kind {
			if bead.form == Fillet && j.Gap.Sign() > 0 {
				form.Kind = TermGapFillet
			}
			length = add(length, j.Length.Rat())
			volume = add(volume, mul(j.Length.Rat(), bead.section(j.Gap.Rat(), b.thickness())))
		}
	}
	return volume, []Term{{Kind: TermJoint, Name: kind.String(), Value: up(length, b.run())}, form}
}

// fillGrooves returns the volume in the ends of grooves that stay open on a line, and how it comes about.
func (b *builder) fillGrooves() (*big.Rat, []Term) {
	pitch, section := b.work.Profile.Pitch().Rat(), hollow(b.work.Profile, b.settings.paint.groove)
	length, fill := new(big.Rat), b.settings.sealant.fill
	for _, j := range b.work.Joints {
		if j.Grooves {
			length = add(length, j.Length.Rat())
		}
	}
	if pitch.Sign() == 0 {
		return new(big.Rat), nil
	}
	repeats := quo(length, pitch)
	return mul(repeats, section, fill), []Term{
		{Kind: TermRepeats, Value: up(repeats, UnitRepeat)},
		{Kind: TermSection, Value: up(section, b.unit(UnitSquareInch, UnitSquareMillimetre))},
		{Kind: TermDepth, Value: b.small(fill)},
	}
}
