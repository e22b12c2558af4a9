package book

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// stage is what a stage of the work says: its first and last sentences and, between them, those of
// its acts in their order. {} stands for the labels or the figure of an act; see [Step] for the
// other facts in braces. What stands in double square brackets is for the full text alone.
type stage struct {
	title string
	first string
	acts  map[finish.ActKind]string
	last  string
}

const (
	coated    = "[[Give the ]]faces{colon} {}."
	rest      = " in the room[[ where they will hang]], [[with ]]strips between[[ so that air reaches both faces]], for "
	settle    = "[[, until they have taken on its moisture]]."
	rods      = "Push backing rod into gaps wider than {}[[, so far that the bead before it is half as deep as wide, {rod}]]."
	fill      = "Fill open ends of {grooves} first."
	hold      = "Allow {glue} for the adhesive to hold[[, and prop a piece meanwhile where no nail or screw holds it]]."
	onTheWall = "Saw {} only when the space there is measured on the wall[[: nothing is left on to scribe, so in the cut list that cut waits]]."
	comesOff  = "Before anything is bought or cut, take off {}[[; cut its joints through first, adhesive and nails hold it]]. Where it breaks, plan again without it."
	upAgain   = "Fit the {panel} that came off {} again[[, as the others are]]."
	unscribed = "{} will be as planned when the space there is measured[[: nothing is left on to scribe, and the cut does not wait]]."
	toWall    = "Measure[[ the space of a closing piece on the wall]] at foot, middle and top{net}[[; saw its closing edge to that]]{coat}[[ try the piece before it is fixed]].[[ {first}]]"
)

// stageWords has the words of each stage.
var stageWords = map[finish.Stage]stage{
	finish.StageLook: {
		title: "Look first",
		first: "[[Check that the wall is sound, dry and flat; where it has to be furred out, tape the runs again on what is fixed there and plan again. ]]Mark studs, cables and pipes on the wall.",
		acts: map[finish.ActKind]string{
			finish.ActTestPaint:    "Have old paint tested[[ before any of it is sanded or scraped]].",
			finish.ActFindAsbestos: "Find out about asbestos[[ before old boards or textures are cut]].",
			finish.ActAssumeFloor: "The line that the runs are measured from is taken to be the floor[[, as every run reaches more than {} above it (judgment)]]; " +
				"where it is a counter, give its height above the floor in the job.",
		},
		last: "Clear the wall[[: take off old trims and what hangs there, wash off grease{roughen}. Water is turned " +
			"off before a basin or tap is loosened; a gas line is left to a licensed fitter]].",
	},
	finish.StageRest: {
		title: "Rest",
		acts: map[finish.ActKind]string{
			finish.ActRestSheets: "Stack the sheets" + rest + "{rest sheets}" + settle,
			finish.ActRestBoards: "Stack the boards" + rest + "{rest boards}" + settle,
			finish.ActRestWood:   "Stack the boards" + rest + "{rest wood}" + settle,
		},
	},
	finish.StageStrips: {
		title: "Strips behind the {panel}s",
		acts: map[finish.ActKind]string{
			finish.ActStrips: "[[Upright boards run the same way as the studs: ]]fix level strips across the studs, one at the foot, one at the top " +
				"and others between, at most {} apart, at the heights that each run has with its marks, cut off at openings{sides, boards}.",
			finish.ActSheetStrips: "Fix level strips[[, across the studs where there are any]], at most {} apart, one at the foot and one at the top, and upright ones under " +
				"every edge of a sheet{sides}.",
			finish.ActStripsListed:   "[[The list has them{deep}.]]",
			finish.ActStripsUnlisted: "The strips are not on the shopping list: give their thickness in the job to have them counted.",
			finish.ActSetBoxesBack:   "They bring the face forward too: in the job, add their thickness to how far each box sits back.",
		},
		last: "Shim them into one plane. Unless the runs were taped on them, tape them again there and plan again before a {panel} is cut[[: strips and shims move every " +
			"corner and end, and the figures of this plan no longer hold]].",
	},
	finish.StageLines: {
		title: "Lines",
		first: "Plumb each run's start, level a line across, mark the poles[[ on the wall, all marks of a pole from the same end so that errors do not add up]]. " +
			"{see}{by itself}",
	},
	finish.StageCut: {
		title: "Cut",
		acts: map[finish.ActKind]string{
			finish.ActPieces:  "Saw {} by the cut list, then what is marked there[[; write the number on the back of each]].",
			finish.ActClosing: "Leave {} unsawn[[ until the space there is measured on the wall; the plan has it as the survey gives it]].",
		},
		last: "[[Ease the sawn edges with fine paper.]]",
	},
	finish.StageMiter: {
		title: "Miter the outside corners",
		first: "Measure on the wall the angle of {corners}. Try half of {it} on two offcuts, 45 degrees at a square one[[: measures reach to the long " +
			"point, on the face]]. {miters} [[Glue the miter when its second piece is fitted, and ease the edge. {alone}]]",
	},
	finish.StageMainsOff: {
		title: "Power off",
		first: "[[Switch off the circuits of all boxes and secure the switches, ]]prove each box dead, take covers off. Then choose: devices out, wires " +
			"capped[[ and folded in]], a blank cover on each box; or boxes last, each opened on the day its piece goes up and closed the same day. [[A circuit is on only " +
			"while each of its boxes is closed, and goes off again, proved dead, before one is opened. Stay with the local code, and call a licensed electrician " +
			"where anything is not as you expected.]]",
	},
	finish.StageDryFit: {
		title: "Dry-fit",
		first: "[[Hold {the pieces} in place without glue or nails{in order}{try}. ]]Mark what is in the way and trim it now.",
		acts:  map[finish.ActKind]string{finish.ActExtenders: "Try the extenders[[: each has to come out to the face of the {panel}s]]."},
	},
	finish.StageFirstCoats: {
		title: "First coats",
		first: "[[Lay {the pieces} flat. {roll}; sand lightly between coats.]]",
		acts: map[finish.ActKind]string{
			finish.ActPrimer:  coated,
			finish.ActTopCoat: coated,
			finish.ActEdges:   "[[Give sawn ]]edges{rims}{colon} {}.",
			finish.ActBacks:   "Coat the backs as often as the faces, and roughen them where adhesive goes[[: it holds only as well as the paint under it]].",
		},
		last: "Allow {dries}.",
	},
	finish.StageFit: {
		title: "Fit",
		first: "[[{press}; keep the gaps with spacers, and ]]plumb {starter}.",
		acts: map[finish.ActKind]string{
			finish.ActBeads:    "Lay beads of adhesive on {back}[[ first]].",
			finish.ActDots:     "Lay dots of adhesive on {back}[[ first]].",
			finish.ActAdhesive: "Lay adhesive on {back}[[ first, as its tube says, about a cartridge of {tube} on {}]].",
			finish.ActNails: "Nail[[ {before}]] where studs, strips or blocking are[[: gypsum board holds no nail. Where an upright edge has none behind " +
				"it, fix blocking first or trust it to the adhesive]].",
			finish.ActScrews: "Screw[[ {before}]] where studs, strips or blocking are, through holes drilled as its maker asks[[: gypsum board holds no " +
				"screw. Where an upright edge has none behind it, fix blocking first or trust it to the adhesive]].",
			finish.ActFitting: "{}",
			finish.ActClosing: toWall,
		},
	},
	finish.StageTrim: {
		title: "Trims",
		first: "{trims}",
		acts:  map[finish.ActKind]string{finish.ActTrimsUp: "Fit the trims that were bought with {panel}s which are up, where they are missing."},
		last:  "[[Cut each to the wall, {coat its}dry-fit it, and nail it where studs, strips or blocking are.]]",
	},
	finish.StageFill: {
		title: "Fill",
		first: "Fill the holes of {nails}, sand, dust off.",
	},
	finish.StageTape: {
		title: "Cover and tape",
		acts: map[finish.ActKind]string{
			finish.ActCounter: "Cover counter and floor.",
			finish.ActFloor:   "Cover the floor.",
			finish.ActJoints:  "Tape along {} of joints{bare}[[, leaving the width of the bead free]].",
			finish.ActLines:   "[[Lay {} of tape along each.]]",
		},
	},
	finish.StageSeal: {
		title: "Seal",
		acts: map[finish.ActKind]string{
			finish.ActRod:     rods,
			finish.ActGrooves: fill,
		},
		last: "[[Lay as much bead at a time as you can tool hollow. ]]Tool the bead before it skins, in {skin}{pull}. " +
			"{boxes}[[ {hidden}]] {cure}",
	},
	finish.StageLastCoats: {
		title: "Last coat",
		acts:  map[finish.ActKind]string{finish.ActLines: "[[Tape along what stays bare.]]", finish.ActPrimer: coated, finish.ActTopCoat: coated},
		last:  "{peel}Allow {dry} to dry[[ before it is touched]].",
	},
	finish.StageSealWet: {
		title: "Lower line",
		first: "Use kitchen and bath sealant[[, which paint does not hold on]].",
		acts: map[finish.ActKind]string{
			finish.ActAfterPaint: "[[It comes after the last coat; let that dry first.]]",
			finish.ActJoints:     "Tape along its {}[[, leaving the width of the bead free]].",
			finish.ActLines:      "[[Lay {} of tape along it.]]",
			finish.ActRod:        rods,
			finish.ActGrooves:    fill,
		},
		last: "[[Lay as much bead at a time as you can tool hollow before it skins, in {skin}{pull}. ]]Keep water off as long as the tube says.",
	},
	finish.StageDevices: {
		title: "Devices",
		first: "Put back devices and covers[[{brought}: each yoke is held rigidly at the new face, none hangs or sits back]].",
	},
	finish.StagePowerOn: {
		title: "Power on",
		first: "[[Have the work inspected where the local code asks for it, and only then ]]switch on and test each device.",
	},
}

// fitBoards is the stage in which boards go up, in place of that for pieces of sheets.
var fitBoards = stage{
	title: "Fit",
	first: "{ahead}; keep the gaps with spacers, and check the first board of each run for plumb.",
	acts: map[finish.ActKind]string{
		finish.ActBeads:   "First lay a bead of adhesive across each board where it crosses a strip.",
		finish.ActDots:    "First put a dot of adhesive where each board crosses a strip.",
		finish.ActNails:   "Nail it {root}.",
		finish.ActScrews:  "Screw it at each strip through a drilled hole, as its maker asks.",
		finish.ActClosing: toWall,
		finish.ActFitting: stageWords[finish.StageFit].acts[finish.ActFitting],
	},
}

// aside is what only the full text says.
var aside = regexp.MustCompile(`\[\[(.*?)\]\]`)

// Step says what to do in a step of the work, in one paragraph.
func Step(p plan.Plan, s finish.Step) string { return step(p, s, true) }

// step says it in full, or without what stands in double brackets in the words of the stage.
func step(p plan.Plan, s finish.Step, full bool) string {
	words := stageWords[s.Stage]
	if s.Stage == finish.StageFit && p.Profile.Boards {
		words = fitBoards
	}
	wait := func(w finish.Wait) string {
		says, source := waiting(w)
		return says + either(full, " ("+source+")", "")
	}
	primed, tops := counted(s, finish.ActPrimer), counted(s, finish.ActTopCoat)
	dries := list(either(primed > 0, wait(finish.DryPrimer)+" after each coat of primer", ""), either(tops > 1, wait(finish.DryCoat)+" between top coats", ""),
		wait(finish.HardenCoat)+" before pieces are handled")
	fit, hidden := trims(p)
	met, alone := corners(p)
	several, less := len(met)+len(alone) > 1, net(p)
	in := func(stage finish.Stage) bool {
		return slices.ContainsFunc(p.Order, func(s finish.Step) bool { return s.Stage == stage })
	}
	painted := in(finish.StageLastCoats)
	coated := painted || in(finish.StageFirstCoats)
	edged := slices.ContainsFunc(p.Order, func(s finish.Step) bool { return counted(s, finish.ActEdges) > 0 })
	tongued := p.Profile.Edges == groove.Tongued
	facts := strings.NewReplacer(append(has(p), "{panel}", panelWord(p), "{ahead}", either(tongued, "Work with the tongue ahead and knock each board home over the tongue before it", "Push each board against the one before it"),
		"{root}", either(tongued, "at 45 degrees through the root of its tongue, once at each strip; besides, the board that starts a run or goes on from a door through the face along the edge there, and the one that ends it or stops at a door through the face alone, along its far edge"+
			either(full, ", where a corner, the boards of the next wall or a trim hides it; an edge mitered at an outside corner is hidden by none: nail beside the miter and fill the holes", ""), "once at each strip, through the middle of its face"), "{tube}", either(p.Units == fraction.Inch, "10 fl oz", "300 mL"), "{rod}", beforeRod(p.Units != fraction.Inch), "{sheet}", sheetWord(p), "{corners}", either(several, "each of these: ", "")+strings.Join(append(met, alone...), "; "), "{it}", either(several, "each", "it"), "{miters}", miters(p), "{net}", less, "{coat its}", either(coated, "coat its back and its cuts, ", ""), "{coat}", either(edged, either(less != "", ";", ",")+" coat the sawn edge"+either(full, " and", ""), either(full, ",", "")), "{alone}", either(len(alone) > 0, "No run of the plan meets "+strings.Join(alone, "; ")+
			": miter what comes round it to match, or ask in the job for a strip on the corners.", ""), "{hidden}", hidden, "{bare}", either(full && painted, " beside what stays bare", ""), "{trims}", fit,
		"{first}", either(p.ClosesBefore(), "Close a run before one that butts against it is begun.", ""), "{by itself}", byItself(p), "{brought}", brought(p), "{pull}", either(masked(p, s.Stage), ", and pull the tape at once"+either(full, ", away from the bead", ""), ""), "{peel}", either(full && counted(s, finish.ActLines) > 0, "Pull the tape while the paint is soft. ", ""), "{rest sheets}", wait(finish.RestSheets),
		"{rest boards}", wait(finish.RestBoards), "{rest wood}", wait(finish.RestWood), "{dries}", dries, "{dry}", wait(finish.DryCoat), "{colon}", either(full, "", ":"),
		"{glue}", wait(finish.HoldGlue), "{skin}", wait(finish.SkinSealant), "{cure}", either(painted, "Allow "+wait(finish.CureSealant)+" before paint.", ""))...)
	var says []string
	say := func(words, operand string) {
		words = aside.ReplaceAllString(words, either(full, "$1", ""))
		if words = strings.TrimSpace(strings.ReplaceAll(facts.Replace(words), "{}", operand)); words != "" {
			says = append(says, capital(words))
		}
	}
	say(words.title+":", "")
	say(words.first, "")
	closing, glued := false, false
	for _, a := range s.Acts {
		glued = glued || a.Kind == finish.ActBeads || a.Kind == finish.ActDots || a.Kind == finish.ActAdhesive
		switch {
		case s.Stage == finish.StageFit && len(a.Labels) > 0:
			closing = closing || a.Kind == finish.ActClosing
		case s.Stage == finish.StageCut && a.Kind == finish.ActClosing:
			for says, labels := range closingEdges(p, a.Labels) {
				if len(labels) > 0 {
					say([]string{words.acts[a.Kind], onTheWall, unscribed}[says], closingEdge(labels))
				}
			}
		case a.Kind == finish.ActPieces:
			n := counted(s, a.Kind)
			say(words.acts[a.Kind], either(n == 1, "the piece", "the "+count(n, "piece")))
		case a.Kind == finish.ActLines:
			say(words.acts[a.Kind], count(counted(s, a.Kind), "line"))
		case len(a.Labels) > 0:
			say(words.acts[a.Kind], strings.Join(a.Labels, ", "))
		case a.Kind == finish.ActPrimer, a.Kind == finish.ActEdges && primed > 0:
			say(words.acts[a.Kind], count(counted(s, a.Kind), "coat")+" of primer")
		case a.Kind == finish.ActTopCoat, a.Kind == finish.ActEdges:
			say(words.acts[a.Kind], count(counted(s, a.Kind), "top coat"))
		default:
			say(words.acts[a.Kind], figure(a.Figure))
		}
	}
	if s.Stage == finish.StageLook {
		for i := range p.Runs {
			if p.Behind(i) {
				say(comesOff, offFirst(p, i))
			}
		}
	}
	if s.Stage == finish.StageFit {
		say(words.acts[finish.ActFitting], fitting(p, s.Acts))
		if closing {
			say(words.acts[finish.ActClosing], "")
		}
		for i, run := range p.Runs {
			if p.Behind(i) {
				say(upAgain, run.CornerRight.Butts)
			}
		}
		if glued {
			say(hold, "")
		}
	}
	say(words.last, "")
	return strings.Join(strings.Fields(strings.Join(says, " ")), " ")
}

// counted returns the whole number that a step says of a kind of act, such as how many coats.
func counted(s finish.Step, kind finish.ActKind) (n int) {
	for _, a := range s.Acts {
		if a.Kind == kind {
			n += int(a.Figure.Value.IntPart())
		}
	}
	return n
}

// closingEdge names the closing edge of one piece or of several.
func closingEdge(labels []string) string {
	return "the closing edge" + either(len(labels) > 1, "s", "") + " of " + list(labels...)
}

// closingEdges returns which of the closing pieces have something left on to scribe, of which others a cut waits, and which
// have neither.
func closingEdges(p plan.Plan, labels []string) (all [3][]string) {
	for _, label := range labels {
		i := slices.IndexFunc(p.Pieces, func(piece plan.Piece) bool { return piece.Label == label })
		switch {
		case i < 0 || p.Pieces[i].Scribe != nil:
			all[0] = append(all[0], label)
		case fraction.Must(p.Waits(p.Pieces[i])):
			all[1] = append(all[1], label)
		default:
			all[2] = append(all[2], label)
		}
	}
	return all
}

// offFirst names the panel that is up and comes off before a piece is fitted behind it, into the corner at the right end of run i.
func offFirst(p plan.Plan, i int) string {
	c, t := p.Runs[i].CornerRight, &text{tape: p.TapeMeasure()}
	right := c.Butts == p.Runs[i].Name
	run, _ := p.Run(c.Butts)
	panel, _ := run.EndPanel(right)
	return "the " + panelWord(p) + " that is up at the " + either(right, "right", "left") + " end of " + run.Name + ", in the corner with " + c.Passes + ", " + t.length(panel.Right.Sub(panel.Left)) +
		" wide, from " + t.length(panel.Left) + " to " + t.length(panel.Right) + either(p.Locked(i), "", ", unless there is room to slide the piece behind it in from the side")
}

// brought names what of the list brings devices out to the face.
func brought(p plan.Plan) string {
	bought := func(item finish.Item) bool {
		return slices.ContainsFunc(p.List.Rows, func(r finish.Row) bool { return r.Item == item })
	}
	with := list(either(bought(finish.ItemExtender), "extenders", ""), either(bought(finish.ItemSpacers), "spacers", ""))
	return either(with == "", "", ", with their "+with)
}

// byItself names the pieces whose space is the wall's own: no cut waits for them.
func byItself(p plan.Plan) string {
	var labels []string
	for _, piece := range p.Pieces {
		if p.Alone(piece) {
			labels = append(labels, piece.Label)
		}
	}
	return either(len(labels) > 0, " Measure the "+either(len(labels) > 1, "spaces of pieces ", "space of piece ")+list(labels...)+" at foot, middle and top before sawing; where one is not as planned, change the job and plan again.", "")
}

// fitting says in a sentence for each run which pieces are fitted, one after the other, and which of
// them are measured on the wall and sawn before that.
func fitting(p plan.Plan, acts []finish.Act) string {
	runs, miter := map[string]string{}, map[string]string{} // by the labels of pieces
	for _, piece := range p.Pieces {
		runs[piece.Label] = piece.Run
		if run, i := p.Run(piece.Run); i >= 0 && fraction.Must(run.MitredEdges(piece)) != [2]bool{} {
			miter[piece.Label] = "miter, "
		}
	}
	var says, alike []string
	sentence, at := "", ""
	end := func() {
		if len(alike) > 0 {
			sentence += either(sentence == "", "fit ", "; fit ") + ranges(alike)
		}
		alike = nil
	}
	stop := func() {
		if end(); sentence != "" {
			says = append(says, capital(either(at == "", "", "on "+at+" ")+sentence)+".")
		}
		sentence = ""
	}
	for _, a := range acts {
		for _, label := range a.Labels {
			if runs[label] != at {
				stop()
				at = runs[label]
			}
			if a.Kind == finish.ActFitting {
				alike = append(alike, label)
				continue
			}
			end()
			sentence += either(sentence == "", "", "; ") + "measure, saw, " + miter[label] + "fit " + label
		}
	}
	stop()
	return strings.Join(says, " ")
}

// masked reports whether tape lies along what is sealed in a stage: that of the last one has it put on
// itself.
func masked(p plan.Plan, sealing finish.Stage) bool {
	if sealing == finish.StageSeal {
		sealing = finish.StageTape
	}
	return slices.ContainsFunc(p.Order, func(s finish.Step) bool {
		return s.Stage == sealing && slices.ContainsFunc(s.Acts, func(a finish.Act) bool { return a.Kind == finish.ActJoints })
	})
}

// trims says which trims of the list are fitted, and behind which joints are not sealed.
func trims(p plan.Plan) (fit, hidden string) {
	var behind, over []string
	for _, r := range p.List.Rows {
		switch r.Item {
		case finish.ItemCovering:
			behind = append(behind, r.Name)
		case finish.ItemEdgeTrim:
			over = append(over, "edge trim over the cut edges of exposed ends")
		case finish.ItemCornerTrim:
			over = append(over, "corner trim over the outside corners")
		}
	}
	cased := len(behind) > 1 && slices.ContainsFunc(p.Runs, func(run plan.Run) bool {
		return run.Trim.Casing != nil && slices.Contains(behind, run.Trim.Casing.Name)
	})
	if len(behind) > 0 {
		fit = "Fit " + list(behind...) + either(cased, ", casings first, as the others butt against them", "") + "."
		hidden = "No bead behind " + list(behind...) + "."
	}
	return strings.TrimSpace(fit + either(len(over) > 0, " Fit "+list(over...)+".", "")), hidden
}

// corners names the outside corners that are mitered: those where two runs meet, and the ends that no
// run of the plan meets.
func corners(p plan.Plan) (met, alone []string) {
	for i, run := range p.Runs {
		before := p.Runs[(i+len(p.Runs)-1)%len(p.Runs)].CornerRight
		if run.Left.Mitred() && before == nil {
			alone = append(alone, "the corner at the left end of "+run.Name)
		}
		switch c := run.CornerRight; {
		case c != nil && c.Mitred():
			met = append(met, "the corner of "+run.Name+" and "+c.Next)
		case c == nil && run.Right.Mitred():
			alone = append(alone, "the corner at the right end of "+run.Name)
		}
	}
	return met, alone
}

// miters says which pieces are mitered once they are sawn, and which when their space is measured.
func miters(p plan.Plan) string {
	var now, later []string
	for _, piece := range p.Pieces {
		switch {
		case mitered(p, piece) == "":
		case piece.Closing:
			later = append(later, piece.Label)
		default:
			now = append(now, piece.Label)
		}
	}
	return strings.TrimSpace(either(len(now) > 0, "Miter "+list(now...)+" after all other cuts.", "") +
		either(len(later) > 0, " Miter "+list(later...)+" only when measured on the wall and sawn to that.", ""))
}

// net says what the widths of closing pieces are less than the spaces measured for them, and what more, and to where these are
// measured of a piece that goes up before the one beside it.
func net(p plan.Plan) string {
	var gaps []string
	past, ahead := false, false
	for _, piece := range p.Pieces {
		run, _ := p.Run(piece.Run)
		for _, next := range run.Panels {
			beside := next.Left.Sub(p.Gaps.Seam) == piece.At.X.Add(piece.Width) || next.Right.Add(p.Gaps.Seam) == piece.At.X
			ahead = ahead || piece.Closing && beside && next.Number > piece.Panel
		}
		for side, mitred := range fraction.Must(run.MitredEdges(piece)) {
			gap, where := p.Gaps.Seam, "at a seam"
			x := piece.At.X.Add(piece.Width.Mul(int64(side)))
			if x == run.Limits[side] {
				gap, where = p.Gaps.Side, "at an end of a run"
			}
			for _, o := range run.Openings {
				lo, hi := cutout.Bounds(o.Outline)
				if around := p.Gaps.Around(o.Kind); x == [2]fraction.Length{hi.X.Add(around), lo.X.Sub(around)}[side] {
					gap, where = around, "beside an opening"
				}
			}
			says := (&text{tape: p.TapeMeasure()}).given(gap) + " " + where
			switch {
			case !piece.Closing:
			case mitred:
				past = true
			case !gap.IsZero() && !slices.Contains(gaps, says):
				gaps = append(gaps, says)
			}
		}
	}
	return either(len(gaps) > 0, ", less a gap of "+list(gaps...), "") +
		either(ahead, "; where the next "+panelWord(p)+" is not up yet, to the pole's mark of its own edge", "") + either(past, "; at an outside corner measure to the corner of the wall and add the thickness, "+
		(&text{tape: p.TapeMeasure()}).given(p.Profile.Thickness), "")
}

// waiting says how long to wait, and by whose word.
func waiting(w finish.Wait) (says, by string) {
	const hour, day = 60, 24 * 60
	least, most, source := w.Range()
	unit, name := 1, "minutes"
	switch {
	case least%day == 0 && most%day == 0 && most > 3*day:
		unit, name = day, "days"
	case least%hour == 0 && most%hour == 0:
		unit, name = hour, "hours"
	}
	return fmt.Sprintf("%d to %d %s", least/unit, most/unit, name), sourceWords[source]
}
