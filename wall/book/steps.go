package book

import (
	"fmt"
	"strings"

	"example.com/groovewright/finish"
	"example.com/groovewright/wall/plan"
)

// stage is what a stage of the work says: its first and last sentences and, between them, those of
// its acts in their order. {} stands for the labels or the figure of an act; see [Step] for the
// other facts in braces.
type stage struct {
	title string
	first string
	acts  map[finish.ActKind]string
	last  string
}

const (
	coated = "Coat the faces {} × with "
	stand  = " in the room where they will hang, with strips between so that air reaches both faces. Allow "
	settle = " to take on the moisture of the room."
	rods   = "Push backing rod into gaps wider than {}, so far that the bead before it is half as deep as wide."
	fill   = "Fill the open ends of grooves first."
	hold   = " Allow {glue} for the adhesive to hold, and prop a piece meanwhile where no nail or screw holds it."
)

// stageWords has the words of each stage.
var stageWords = map[finish.Stage]stage{
	finish.StageLook: {
		title: "Look first",
		first: "Check that the wall is sound, dry and flat; find studs, cables and pipes and mark them on the wall.",
		acts: map[finish.ActKind]string{
			finish.ActTestPaint:    "Have old paint tested before any of it is sanded or scraped.",
			finish.ActFindAsbestos: "Find out about asbestos before old boards or textures are cut.",
			finish.ActAssumeFloor: "The line that the runs are measured from is taken to be the floor, as every run reaches more than {} above it (judgment); " +
				"where it is a counter, give its height as finish.house.datum.",
		},
		last: "Then clear the wall: take off old trims and what hangs there, wash off grease, and roughen glossy paint where adhesive goes. Water is turned " +
			"off before a basin or tap is loosened; a gas line is left to a licensed fitter.",
	},
	finish.StageRest: {
		title: "Let the {panel}s rest",
		acts: map[finish.ActKind]string{
			finish.ActRestSheets: "Stand or stack the sheets" + stand + "{rest sheets} for them" + settle,
			finish.ActRestBoards: "Stand or stack the boards" + stand + "{rest boards} for them" + settle,
			finish.ActRestWood:   "Stand or stack the boards" + stand + "{rest wood} for the wood" + settle,
		},
	},
	finish.StageStrips: {
		title: "Strips behind the {panel}s",
		acts: map[finish.ActKind]string{
			finish.ActStrips: "Upright boards run the same way as the studs: fix level strips across these, at most {} apart, with one at the foot, " +
				"one at the top and one along each side of every opening.",
			finish.ActSheetStrips: "Fix level strips, across the studs where there are any, at most {} apart, with one at the foot and one at the top, and upright ones under " +
				"every edge of a sheet and along each side of every opening.",
			finish.ActStripsListed:   "The list has them, and the boxes allow for their thickness.",
			finish.ActStripsUnlisted: "The strips are not on the shopping list: give their thickness as finish.furring.thickness to have them counted.",
			finish.ActSetBoxesBack:   "They bring the face forward too: where boxes are, add their thickness to the set_back of each box.",
		},
		last: "Tape the runs again on the strips before a {panel} is cut: inside corners come closer and outside corners go further by their thickness.",
	},
	finish.StageCut: {
		title: "Cut",
		acts: map[finish.ActKind]string{
			finish.ActPieces: "Cut all pieces ({}) in the sawing order of each {sheet} and write the number on the back of each.",
			finish.ActClosing: "Saw these last, after their space has been measured again on the wall: {}; the plan has them as the survey " +
				"gives them.",
		},
		last: "Ease the sawn edges with fine paper.",
	},
	finish.StageMiter: {
		title: "Miter the outside corners",
		first: "At {corners}: saw both edges at half the angle of the corner, 45 degrees at a square one. Measures reach to the long point, on the " +
			"face. Measure the angle on the wall and try it on two offcuts first; miter after all other marks and cuts of a piece, and a closing " +
			"piece only when it has been measured again. Glue the miter when its second piece is fitted, and ease the edge.",
	},
	finish.StageFirstCoats: {
		title: "First coats, before fitting",
		first: "Lay the pieces flat. Brush the grooves first, then roll the flats; sand lightly between coats.",
		acts: map[finish.ActKind]string{
			finish.ActPrimer:  coated + "primer.",
			finish.ActTopCoat: coated + "top coat.",
			finish.ActEdges:   "Coat sawn edges and the rims of holes {} ×.",
			finish.ActBacks:   "Coat the backs as often as the faces, and roughen them where adhesive goes: it holds only as well as the paint under it.",
		},
		last: "After primer allow {dry primer}, between top coats {dry}. Allow {harden} for the paint to harden before the pieces are handled.",
	},
	finish.StageMainsOff: {
		title: "Power off",
		first: "Switch off the circuits of all boxes in the work and secure the switches, prove each box dead with a tester, then take covers and " +
			"devices off. Cap every wire end, fold the wires in and close each box with a blank cover whenever nobody works at it; days pass before " +
			"the power is on again, and no circuit is switched on in between with a device hanging or a box open. Where light or a refrigerator is needed " +
			"meanwhile, an electrician makes the circuit safe first. Stay with the local code, and call a licensed electrician where anything is not as " +
			"you expected.",
	},
	finish.StageDryFit: {
		title: "Dry-fit",
		first: "Hold every piece in place without glue or nails, in the order of fitting; try the boxes in their holes and the pattern across seams " +
			"and corners; trim now.",
		acts: map[finish.ActKind]string{finish.ActExtenders: "Try the extenders: each has to come out to the face of the {panel}s."},
	},
	finish.StageFit: {
		title: "Fit in order",
		first: "Fit one piece after the other, each pressed home before the next; keep the gaps of the plan with spacers, and check the first piece of " +
			"each run for plumb.",
		acts: map[finish.ActKind]string{
			finish.ActBeads:    "Lay beads of adhesive on the back of each first." + hold,
			finish.ActDots:     "Lay dots of adhesive on the back of each first." + hold,
			finish.ActAdhesive: "Lay adhesive on the back of each first as its tube says, about a cartridge of 10 fl oz (300 mL) on {}." + hold,
			finish.ActNails: "Nail each piece before the next, where studs, strips or blocking are: gypsum board holds no nail. Where an upright edge has none behind " +
				"it, fix blocking first or trust it to the adhesive.",
			finish.ActScrews: "Screw each piece before the next, where studs, strips or blocking are, through holes drilled as its maker asks: gypsum board holds no " +
				"screw. Where an upright edge has none behind it, fix blocking first or trust it to the adhesive.",
			finish.ActClosing: "Leave out what closes a run ({}): it is fitted as soon as the rest of its run is up, by the next step.",
			finish.ActFitting: "In this order: {}.",
		},
	},
	finish.StageClose: {
		title: "Closing pieces",
		acts: map[finish.ActKind]string{
			finish.ActClosing: "Measure the space of {} on the wall, at the foot, in the middle and at the top, cut to what is there, coat the new edges, " +
				"dry-fit and fit. Close a run before one that butts against it is begun.",
		},
	},
	finish.StageTrim: {
		title: "Trims",
		first: "Fit the trims of the list: cut each to the wall, coat its back and its cuts, dry-fit it, and nail it where studs, strips or blocking are.",
	},
	finish.StageTape: {
		title: "Cover and tape off",
		acts: map[finish.ActKind]string{
			finish.ActCounter: "Cover counter and floor.",
			finish.ActFloor:   "Cover the floor.",
			finish.ActJoints:  "Tape along {} of joints, leaving the width of the bead free.",
			finish.ActLines:   "Lines of tape along each: {}.",
		},
	},
	finish.StageSeal: {
		title: "Seal",
		acts: map[finish.ActKind]string{
			finish.ActRod:     rods,
			finish.ActGrooves: fill,
		},
		last: "Lay as much bead at a time as you can tool before it skins: {skin}. Tool it hollow, and pull the tape at once, away from the bead. " +
			"Leave the boxes unsealed, and what a trim will cover. Allow {cure} for the sealant to take paint.",
	},
	finish.StageLastCoats: {
		title: "Last coat, after sealing",
		first: "Fill the holes of nails and screws, sand, dust off, and tape along what stays bare.",
		acts:  map[finish.ActKind]string{finish.ActPrimer: coated + "primer.", finish.ActTopCoat: coated + "top coat."},
		last:  "Pull the tape while the paint is soft. Allow {dry} for each coat to dry before it is touched.",
	},
	finish.StageSealWet: {
		title: "Seal the lower line",
		first: "This line gets the sealant for kitchens and baths, which paint does not hold on.",
		acts: map[finish.ActKind]string{
			finish.ActAfterPaint: "It comes after the last coat; let that dry first.",
			finish.ActJoints:     "Tape along its {}, leaving the width of the bead free.",
			finish.ActLines:      "Lines of tape along it: {}.",
			finish.ActRod:        rods,
			finish.ActGrooves:    fill,
		},
		last: "Lay as much bead at a time as you can tool before it skins: {skin}. Tool it hollow, pull the tape at once, and keep water off it as long as " +
			"the tube says.",
	},
	finish.StagePowerOn: {
		title: "Power on again",
		first: "Fix extenders, spacers, devices and covers: each yoke is held rigidly at the new face, none hangs or sits back. Have the work inspected where the " +
			"local code asks for it, and only then switch on and test each device.",
	},
}

// fitBoards is the stage in which boards go up, in place of that for pieces of sheets.
var fitBoards = stage{
	title: "Fit in order",
	first: "Work with the tongue ahead and knock each board home over the tongue before it; keep the gaps of the plan with spacers, and check the " +
		"first board of each run for plumb.",
	acts: map[finish.ActKind]string{
		finish.ActBeads: "First lay a bead of adhesive across each board where it crosses a strip." + hold,
		finish.ActDots:  "First put a dot of adhesive where each board crosses a strip." + hold,
		finish.ActNails: "Nail it at 45 degrees through the root of its tongue, once at each strip; the first and the last board are nailed through the " +
			"face along the hidden edge.",
		finish.ActScrews:  "Screw it at each strip through a drilled hole, as its maker asks.",
		finish.ActClosing: stageWords[finish.StageFit].acts[finish.ActClosing],
		finish.ActFitting: stageWords[finish.StageFit].acts[finish.ActFitting],
	},
}

// Step says what to do in a step of the work, in one paragraph.
func Step(p plan.Plan, s finish.Step) string {
	words := stageWords[s.Stage]
	if s.Stage == finish.StageFit && p.Profile.Boards {
		words = fitBoards
	}
	facts := strings.NewReplacer("{panel}", panelWord(p), "{sheet}", sheetWord(p), "{corners}", corners(p), "{rest sheets}", waiting(finish.RestSheets),
		"{rest boards}", waiting(finish.RestBoards), "{rest wood}", waiting(finish.RestWood), "{dry primer}", waiting(finish.DryPrimer), "{dry}", waiting(finish.DryCoat),
		"{harden}", waiting(finish.HardenCoat), "{glue}", waiting(finish.HoldGlue), "{skin}", waiting(finish.SkinSealant), "{cure}", waiting(finish.CureSealant))
	says := []string{facts.Replace(words.title) + ":", facts.Replace(words.first)}
	for _, a := range s.Acts {
		operand := figure(a.Figure)
		switch {
		case a.Kind == finish.ActFitting:
			operand = fitting(p, a.Labels)
		case len(a.Labels) > 0:
			operand = strings.Join(a.Labels, ", ")
		}
		says = append(says, strings.ReplaceAll(facts.Replace(words.acts[a.Kind]), "{}", operand))
	}
	return strings.Join(strings.Fields(strings.Join(append(says, facts.Replace(words.last)), " ")), " ")
}

// fitting lists pieces with the places of their panels.
func fitting(p plan.Plan, labels []string) string {
	tape, places := p.TapeMeasure(), map[string]string{}
	for _, piece := range p.Pieces {
		run, _ := p.Run(piece.Run)
		for _, panel := range run.Panels {
			if panel.Number == piece.Panel {
				places[piece.Label] = fmt.Sprintf(" on %s, %s to %s", run.Name, tape.Format(panel.Left), tape.Format(panel.Right))
			}
		}
	}
	var all []string
	for _, label := range labels {
		all = append(all, "piece "+label+places[label])
	}
	return strings.Join(all, "; ")
}

// corners names the outside corners that are mitered.
func corners(p plan.Plan) string {
	var all []string
	for _, run := range p.Runs {
		if c := run.CornerRight; c != nil && c.Mitred() {
			all = append(all, "the corner of "+run.Name+" and "+c.Next)
		}
	}
	return strings.Join(all, "; ")
}

// waiting says how long to wait, and by whose word.
func waiting(w finish.Wait) string {
	const hour, day = 60, 24 * 60
	least, most, source := w.Range()
	unit, name := 1, "minutes"
	switch {
	case least%day == 0 && most%day == 0 && most > 3*day:
		unit, name = day, "days"
	case least%hour == 0 && most%hour == 0:
		unit, name = hour, "hours"
	}
	return fmt.Sprintf("%d to %d %s (%s)", least/unit, most/unit, name, sourceWords[source])
}
