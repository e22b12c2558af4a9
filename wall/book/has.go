package book

import (
	"slices"
	"strings"

	"example.com/groovewright/finish"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// boxed reports whether a wall has a box.
func boxed(p plan.Plan) bool {
	return opened(p, func(o plan.Opening) bool { return o.Kind == wall.Box })
}

// opened reports whether a wall has an opening of a sort.
func opened(p plan.Plan, sort func(o plan.Opening) bool) bool {
	return slices.ContainsFunc(p.Runs, func(run plan.Run) bool { return slices.ContainsFunc(run.Openings, sort) })
}

// has returns words in braces, each before what stands there in its place: of what a job does not have the texts
// say nothing.
func has(p plan.Plan) []string {
	boxes, glued := boxed(p), p.Fixing.Glue != finish.NoGlue
	others := opened(p, func(o plan.Opening) bool { return o.Kind != wall.Box })
	holes := slices.ContainsFunc(p.Pieces, func(piece plan.Piece) bool { return len(piece.Holes) > 0 })
	seams := slices.ContainsFunc(p.Runs, func(run plan.Run) bool { return len(run.Seams) > 0 })
	corners := slices.ContainsFunc(p.Runs, func(run plan.Run) bool { return run.CornerRight != nil })
	nailed, screwed := p.Fixing.Nails != finish.UsualNails, p.Fixing.Nails == finish.PanelScrews
	single := len(p.Pieces) == 1
	only := func(holds bool, words string) string { return either(holds, words, "") }

	stand := list(only(boxes, "boxes"), only(others, "openings"))
	across := list(only(seams, "seams"), only(corners, "corners"))
	try := list(only(boxes, "the boxes in their holes"), only(across != "" && p.Profile.Pitch.Sign() > 0, "the pattern across "+across))
	dangers := list(only(boxes, "open boxes"), "blades", only(nailed && !screwed, "nail guns"), only(glued, "wet adhesive"), "dust")
	cuts := func(kind groove.Kind) bool {
		return slices.ContainsFunc(p.Profile.Features, func(f groove.Feature) bool { return f.Kind == kind })
	}
	hollows := list(only(cuts(groove.Bead), "beads"), only(cuts(groove.Groove) || !cuts(groove.Bead), "grooves"))
	sides := only(others, " along each side of every opening"+only(boxes, " but boxes"))
	return []string{
		"{sides, boards}", only(others, "; and one"+sides), "{sides}", only(others, " and"+sides),
		"{grooves}", hollows, "{roll}", either(cuts(groove.Bead) || cuts(groove.Groove), "Brush the "+hollows+" first, then roll the flats", "Roll the faces"),
		"{see}", only(stand != "", "See that "+stand+" stand where the poles say before a "+panelWord(p)+" is sawn."),
		"{try}", only(try != "", "; try "+try),
		"{the pieces}", either(single, "the piece", "the pieces"), "{back}", either(single, "its back", "each back"), "{starter}", either(single, "the piece", "each run's first piece"),
		"{press}", either(single, "Press the piece home", "Press each piece home before the next"), "{before}", either(single, "it", "each piece before the next,"),
		"{in order}", only(!single, ", in the order of fitting, closing ones not yet"),
		"{rims}", only(holes, " and rims of holes"),
		"{nails}", either(screwed, "screws and nails", "nails"),
		"{roughen}", only(glued, ", and roughen glossy paint where adhesive goes"),
		"{boxes}", only(boxes, "Leave the boxes unsealed."),
		"{deep}", only(boxes, ", and the boxes allow for their thickness"),
		"{beside}", list(only(boxes, "boxes"), "pipes"),
		"{dangers}", dangers,
		"{done}", either(boxes, "the last cover is on", "the last tool is cleared away"),
	}
}

// list joins words, without the empty ones, as a sentence does.
func list(words ...string) string {
	words = slices.DeleteFunc(slices.Clone(words), func(w string) bool { return w == "" })
	if n := len(words); n > 1 {
		words = append(words[:n-2:n-2], words[n-2]+" and "+words[n-1])
	}
	return strings.Join(words, ", ")
}
