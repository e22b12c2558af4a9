package finish

import (
	"fmt"
	"math/big"
	"strings"

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
	form  string
	leg   *big.Rat
	depth *big.Rat
}

func (r *reader) sealing(s, d Sealant) sealing {
	const path = "sealant."
	beads := map[JointKind]bead{}
	for _, k := range []struct {
		kind     JointKind
		name     string
		given, d Bead
	}{
		{CounterLine, "counter_line", s.CounterLine, d.CounterLine},
		{CabinetLine, "cabinet_line", s.CabinetLine, d.CabinetLine},
		{InsideCorner, "inside_corner", s.InsideCorner, d.InsideCorner},
		{OutsideCorner, "outside_corner", s.OutsideCorner, d.OutsideCorner},
		{Seam, "seam", s.Seam, d.Seam},
		{EndJoint, "end", s.End, d.End},
		{StepJoint, "step", s.Step, d.Step},
		{WindowJoint, "window", s.Window, d.Window},
	} {
		beads[k.kind] = r.bead(path+k.name, k.given, k.d)
	}
	return sealing{
		beads:   beads,
		fill:    r.length(path+"groove_fill", s.GrooveFill, d.GrooveFill, fraction.Length{}),
		bridge:  r.length(path+"bridge", s.Bridge, d.Bridge, positive),
		waste:   r.share(path+"waste", s.Waste, d.Waste),
		offers:  r.containers(path+"cartridges", s.Cartridges, d.Cartridges),
		backing: r.rolls(path+"backing", s.Backing, d.Backing),
	}
}

func (r *reader) bead(path string, b, d Bead) bead {
	form := b.Form
	if form == "" {
		form = d.Form
	}
	read := bead{form: r.word(path+".form", form, "fillet", "butt", "none"), leg: r.length(path+".leg", b.Leg, d.Leg, positive)}
	if b.Depth != "" {
		read.depth = r.length(path+".depth", b.Depth, "", positive)
	}
	return read
}

// section returns the cross-section of the bead in square inches, over a gap in panels so thick.
//
// The gap is filled as a rectangle, width times depth. A fillet adds the flat triangle between its legs, leg²/2; a
// hollow one has less (leg² × (1 - π/4)), so that this is never short.
func (b bead) section(gap, thickness *big.Rat) *big.Rat {
	if b.form == "none" {
		return new(big.Rat)
	}
	depth := thickness
	if b.depth != nil {
		depth = least(b.depth, thickness)
	}
	area := mul(gap, depth)
	if b.form == "fillet" {
		area = add(area, fillet(b.leg))
	}
	return area
}

// fillet is the section of a flat fillet with equal legs.
func fillet(leg *big.Rat) *big.Rat { return quo(mul(leg, leg), whole(2)) }

// seal lists the sealant of all joints, kind by kind, and the backing where a gap is too wide for a bead alone.
func (b *builder) seal() {
	s := b.settings.sealant
	volume, wide := new(big.Rat), new(big.Rat)
	var parts []string
	for _, kind := range JointKinds() {
		v, how := b.sealKind(kind)
		if v.Sign() > 0 {
			volume = add(volume, v)
			parts = append(parts, how)
		}
	}
	for _, j := range b.work.Joints {
		if gap := j.Gap.Rat(); gap.Cmp(s.bridge) > 0 && s.beads[j.Kind].form != "none" && !j.Length.IsZero() {
			wide = add(wide, j.Length.Rat())
			b.warn(place(j), "the gap of %s is wider than the %s that a bead should close: lay a backing rod, scribe the %s closer or cover the joint with a strip",
				b.small(gap), b.small(s.bridge), b.work.board("panel", "board"))
		}
	}
	if v, how := b.fillGrooves(); v.Sign() > 0 {
		volume = add(volume, v)
		parts = append(parts, how)
	}
	item := "sealant"
	if p := b.settings.paint; p.primer.after+p.top.after > 0 {
		item = "paintable sealant" // paint does not hold on silicone: from memory
	}
	need := more(volume, s.waste)
	b.buy(item, need, b.tube, s.offers, strings.Join(parts, " + ")+wasted(s.waste))
	rod := more(wide, s.waste)
	b.buy("backing rod, a little thicker than its gap", rod, b.run, s.backing, "joints wider than "+b.small(s.bridge)+": "+b.run(wide)+wasted(s.waste))
}

// sealKind reckons all joints of one kind.
func (b *builder) sealKind(kind JointKind) (volume *big.Rat, how string) {
	bead := b.settings.sealant.beads[kind]
	volume, length := new(big.Rat), new(big.Rat)
	form := "gap filled"
	if bead.form == "fillet" {
		form = "fillet " + b.small(bead.leg)
	}
	for _, j := range b.work.Joints {
		if j.Kind == kind {
			if bead.form == "fillet" && j.Gap.Sign() > 0 {
				form = "gap filled and fillet " + b.small(bead.leg)
			}
			length = add(length, j.Length.Rat())
			volume = add(volume, mul(j.Length.Rat(), bead.section(j.Gap.Rat(), b.thickness())))
		}
	}
	return volume, fmt.Sprintf("%s %s (%s) %s", kind, b.run(length), form, b.tube(volume))
}

// fillGrooves reckons the ends of grooves that stay open on a line.
func (b *builder) fillGrooves() (volume *big.Rat, how string) {
	pitch, section := b.work.Profile.Pitch().Rat(), hollow(b.work.Profile, b.settings.paint.groove)
	length := new(big.Rat)
	for _, j := range b.work.Joints {
		if j.Grooves {
			length = add(length, j.Length.Rat())
		}
	}
	if pitch.Sign() == 0 || length.Sign() == 0 || section.Sign() == 0 {
		return new(big.Rat), ""
	}
	repeats := quo(length, pitch)
	volume = mul(repeats, section, b.settings.sealant.fill)
	return volume, fmt.Sprintf("open grooves of %s repeats × %s × %s deep %s", text(repeats, 1), b.section(section), b.small(b.settings.sealant.fill), b.tube(volume))
}

// place names a joint in a warning.
func place(j Joint) string {
	if j.Where == "" {
		return string(j.Kind)
	}
	return j.Where + ", " + string(j.Kind)
}
