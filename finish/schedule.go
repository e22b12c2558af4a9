package finish

import (
	"fmt"
	"math/big"
	"strings"
)

// Step is one step of the work, with what to wait for after it.
type Step struct {
	Title string   `json:"title"`
	Do    []string `json:"do"`
	Wait  Wait     `json:"wait,omitzero"`
}

// Wait is a time as a range: after the least one may go on if the label and a touch agree, after the most one may
// count on it in a dry, warm room.
type Wait struct {
	Least int    `json:"least"` // minutes
	Most  int    `json:"most"`
	For   string `json:"for"`
	Says  string `json:"says"` // where the range comes from
}

// How long things take. The label of the product decides.
var (
	// RestSheets: 24 h in the room by a sample specification for finish carpentry, up to 72 h by a how-to article.
	RestSheets = Wait{24 * 60, 72 * 60, "the sheets to take on the moisture of the room", "a sample specification and a how-to article"}
	// RestBoards: 48 to 72 h for tongue-and-groove boards by a how-to article.
	RestBoards = Wait{48 * 60, 72 * 60, "the boards to take on the moisture of the room", "a how-to article"}
	// RestWood: a week to ten days with stickers between, by a leaflet of a lumber trade association.
	RestWood = Wait{7 * 24 * 60, 10 * 24 * 60, "the wood to take on the moisture of the room", "a leaflet of a lumber trade association"}
	// DryCoat: between coats of waterborne paint; from memory.
	DryCoat = Wait{60, 4 * 60, "each coat to dry before the next", "from memory, the tin decides"}
	// CureCoat: before painted pieces are stacked or leaned on; from memory.
	CureCoat = Wait{12 * 60, 48 * 60, "the paint to harden before the pieces are handled", "from memory, the tin decides"}
	// HoldGlue: before anything pulls at glued panels; from memory.
	HoldGlue = Wait{24 * 60, 48 * 60, "the adhesive to hold", "from memory, the tube decides"}
	// SkinSealant: the time in which a bead of painter's sealant can be tooled; from memory.
	SkinSealant = Wait{5, 15, "a skin: tool the bead and pull the tape before it", "from memory, the tube decides"}
	// PaintSealant: before a bead takes paint; from memory.
	PaintSealant = Wait{60, 24 * 60, "the sealant to take paint", "from memory, the tube decides"}
)

// String reads "24 to 72 hours" or "5 to 15 minutes".
func (w Wait) String() string {
	switch {
	case w.Most == 0:
		return ""
	case w.Most%(24*60) == 0 && w.Least%(24*60) == 0 && w.Least > 4*24*60:
		return fmt.Sprintf("%d to %d days", w.Least/24/60, w.Most/24/60)
	case w.Most%60 == 0 && w.Least%60 == 0:
		return fmt.Sprintf("%d to %d hours", w.Least/60, w.Most/60)
	}
	return fmt.Sprintf("%d to %d minutes", w.Least, w.Most)
}

// String is the step in one paragraph.
func (s Step) String() string {
	text := s.Title + ": " + strings.Join(s.Do, " ")
	if s.Wait.Most > 0 {
		text += fmt.Sprintf(" Allow %s for %s (%s).", s.Wait, s.Wait.For, s.Wait.Says)
	}
	return text
}

// Schedule returns the steps of the work in their order. Steps that the work does not need are left out: no mains without
// boxes, no sealing without joints. A field of m that [Materials.Validate] refuses counts as its default.
func Schedule(w Work, m Materials) []Step {
	s := scheduler{site{w, readFor(w).read(m)}, writer{w.Units}}
	if !s.pieces() {
		return nil
	}
	var steps []Step
	for _, step := range []Step{
		s.look(), s.rest(), s.strips(), s.cut(), s.mitre(), s.coat(), s.mains(), s.dryFit(), s.fit(), s.close(), s.tapeOff(), s.seal(), s.lastCoat(), s.powerOn(),
	} {
		if len(step.Do) > 0 {
			steps = append(steps, step)
		}
	}
	return steps
}

// scheduler writes the steps.
type scheduler struct {
	site
	writer
}

func (s scheduler) look() Step {
	do := []string{"Check that the wall is sound, dry and flat; find studs, cables and pipes and mark them on the wall."}
	if s.old(LeadYear) {
		do = append(do, "Have old paint tested before any of it is sanded or scraped.")
	}
	if s.old(AsbestosYear) {
		do = append(do, "Find out about asbestos before old boards or textures are cut.")
	}
	if s.house.guessed {
		do = append(do, "The line that the runs are measured from is taken to be the floor, as every run reaches more than "+s.small(CounterReach.Rat())+" above it (judgement); where it is a counter, give its height as finish.house.datum.")
	}
	return Step{Title: "Look first", Do: do}
}

func (s scheduler) rest() Step {
	wait, what := RestSheets, "the sheets"
	switch {
	case s.house.material == "solid wood":
		wait, what = RestWood, "the boards"
	case s.Profile.Boards:
		wait, what = RestBoards, "the boards"
	}
	return Step{"Let the " + s.board("panels", "boards") + " rest", []string{"Stand or stack " + what + " in the room where they will hang, with strips between so that air reaches both faces."}, wait}
}

// strips prepares the wall for upright boards.
func (s scheduler) strips() Step {
	counted := s.furring.thickness != nil
	if !s.Profile.Boards || s.nails.none && !counted {
		return Step{}
	}
	do := []string{fmt.Sprintf("Upright boards run the same way as the studs: fix level strips across these, at most %s apart, with one at the foot, one at the top and one along each side of every opening.", s.small(s.house.studs))}
	if counted {
		do = append(do, "The list has them, and their thickness is reckoned with at the boxes.")
	} else {
		do = append(do, "The strips are not on the shopping list: give their thickness as finish.furring.thickness to have them counted.")
		if len(s.Boxes) > 0 {
			do = append(do, "They bring the face forward too: where boxes are, add their thickness to the set_back of each box.")
		}
	}
	return Step{Title: "Strips behind the boards", Do: append(do, "Tape the runs again on the strips before a board is cut: inside corners come closer and outside corners go further by their thickness.")}
}

// mitre is the cutting of edges at outside corners.
func (s scheduler) mitre() Step {
	if len(s.Mitred) == 0 {
		return Step{}
	}
	return Step{Title: "Mitre the outside corners", Do: []string{
		"At " + strings.Join(s.Mitred, "; ") + ": saw both edges at half the angle of the corner, 45 degrees at a square one. Measures reach to the long point, on the face.",
		"Measure the angle on the wall and try it on two offcuts first; mitre after all other marks and cuts of a piece, and a closing piece only when it has been measured again. Glue the mitre when its second piece is fitted, and ease the edge.",
	}}
}

func (s scheduler) cut() Step {
	do := []string{fmt.Sprintf("Cut the %d %s in the sawing order of each %s and write the number on the back of each.", len(s.Pieces), plural(len(s.Pieces), "piece"), s.board("sheet", "board"))}
	if len(s.Closing) > 0 {
		do = append(do, "Saw these last, after their space has been measured again on the wall: "+strings.Join(s.Closing, ", ")+"; the plan has them as the survey gives them.")
	}
	return Step{Title: "Cut", Do: append(do, "Ease the sawn edges with fine paper.")}
}

func (s scheduler) coat() Step {
	p := s.paint
	if p.primer.before+p.top.before == 0 {
		return Step{}
	}
	var coats []string
	for _, c := range []coating{p.primer, p.top} {
		if c.before > 0 {
			coats = append(coats, fmt.Sprintf("%d × %s", c.before, c.name))
		}
	}
	do := []string{"Lay the pieces flat and coat the faces: " + strings.Join(coats, ", then ") + ". Brush the grooves first, then roll the flats; sand lightly between coats."}
	if p.edgeCoats > 0 {
		do = append(do, fmt.Sprintf("Coat sawn edges and the rims of holes %d ×.", p.edgeCoats))
	}
	if s.house.damp {
		do = append(do, "Coat the backs as often as the faces.")
	}
	wait := CureCoat
	return Step{"First coats, before fitting", append(do, "Between coats allow "+DryCoat.String()+" ("+DryCoat.Says+")."), wait}
}

func (s scheduler) mains() Step {
	if len(s.Boxes) == 0 {
		return Step{}
	}
	return Step{Title: "Mains off", Do: []string{
		"Switch off the circuits of all boxes in the work and secure the switches, prove each box dead with a tester, then take covers off and hang devices out of the way.",
		"Stay with the local code, and call a licensed electrician where anything is not as you expected.",
	}}
}

func (s scheduler) dryFit() Step {
	do := []string{"Hold every piece in place without glue or nails, in the order of fitting; try the boxes in their holes and the pattern across seams and corners; trim now."}
	if len(s.Boxes) > 0 {
		do = append(do, "Try the extenders: each has to come out to the face of the "+s.board("panel", "board")+"s.")
	}
	return Step{Title: "Dry-fit", Do: do}
}

func (s scheduler) fit() Step {
	how := "Fit one piece after the other, each pressed home before the next"
	switch {
	case s.Profile.Boards:
		how = s.fitBoards()
	case s.adhesive.form == "none":
	case s.nails.none:
		how = fmt.Sprintf("Lay %s of adhesive on the back and press each piece home before the next", s.adhesive.form)
	default:
		how = fmt.Sprintf("Lay %s of adhesive on the back, press each piece home and nail it before the next", s.adhesive.form)
	}
	do := []string{how + "; keep the gaps of the plan with spacers, and check the first piece of each run for plumb."}
	if len(s.Closing) > 0 {
		do = append(do, "Leave out what closes a run ("+strings.Join(s.Closing, ", ")+"): it is fitted as soon as the rest of its run is up, by the next step.")
	}
	if len(s.Fitting) > 0 {
		do = append(do, strings.TrimSuffix(strings.Join(s.Fitting, "; "), ".")+".")
	}
	step := Step{Title: "Fit in order", Do: do}
	if s.adhesive.form != "none" {
		step.Wait = HoldGlue
	}
	return step
}

// fitBoards says how boards go up.
func (s scheduler) fitBoards() string {
	var how []string
	switch s.adhesive.form {
	case "dots":
		how = append(how, "Put a dot of adhesive where each board crosses a strip")
	case "beads":
		how = append(how, "Lay a bead of adhesive across each board where it crosses a strip")
	}
	if len(how) == 0 {
		how = append(how, "Work with the tongue ahead")
	}
	how = append(how, "knock each board home over the tongue before it")
	if !s.nails.none {
		how = append(how, "nail it at 45 degrees through the root of its tongue, once at each strip; the first and the last board are nailed through the face along the hidden edge")
	}
	return strings.Join(how, ", ")
}

func (s scheduler) close() Step {
	if len(s.Closing) == 0 {
		return Step{}
	}
	do := "Measure the space of " + strings.Join(s.Closing, ", ") + " on the wall, at the foot, in the middle and at the top, cut to what is there, coat the new edges, dry-fit and fit. Close a run before one that butts against it is begun."
	return Step{Title: "Closing pieces", Do: []string{do}}
}

// sealed returns the length of all joints that are sealed.
func (s scheduler) sealed() *big.Rat {
	length := new(big.Rat)
	for _, j := range s.Joints {
		if s.sealant.beads[j.Kind].form != "none" {
			length = add(length, j.Length.Rat())
		}
	}
	return length
}

func (s scheduler) tapeOff() Step {
	length := s.sealed()
	if length.Sign() == 0 || s.tape.seal == 0 {
		return Step{}
	}
	return Step{Title: "Tape off", Do: []string{s.house.beneath("Cover counter and floor", "Cover the floor") + fmt.Sprintf(", and tape along %s of joints, %d %s, leaving the width of the bead free.", s.run(length), s.tape.seal, plural(int(s.tape.seal), "line"))}}
}

func (s scheduler) seal() Step {
	if s.sealed().Sign() == 0 {
		return Step{}
	}
	do := []string{
		"Lay as much bead at a time as you can tool before it skins: " + SkinSealant.String() + " (" + SkinSealant.Says + "). Tool it hollow, and pull the tape at once, away from the bead.",
		"Fill the open ends of grooves on the lower line first. Leave the boxes unsealed.",
	}
	return Step{"Seal", do, PaintSealant}
}

func (s scheduler) lastCoat() Step {
	p := s.paint
	var coats []string
	for _, c := range []coating{p.primer, p.top} {
		if c.after > 0 {
			coats = append(coats, fmt.Sprintf("%d × %s", c.after, c.name))
		}
	}
	if len(coats) == 0 {
		return Step{}
	}
	wait := DryCoat
	wait.For = "each coat to dry before it is touched"
	return Step{"Last coat, after sealing", []string{
		"Fill nail holes, sand, dust off, tape along what stays bare, and coat the faces: " + strings.Join(coats, ", then ") + ". Pull the tape while the paint is soft.",
	}, wait}
}

func (s scheduler) powerOn() Step {
	if len(s.Boxes) == 0 {
		return Step{}
	}
	return Step{Title: "Power on again", Do: []string{
		"Fix extenders, devices and covers, have the work inspected where the local code asks for it, and only then switch on and test each device.",
	}}
}
