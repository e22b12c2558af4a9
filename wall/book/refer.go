package book

import (
	"slices"
	"strconv"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// openGap is a gap that is left open, where, and what trims cover it.
type openGap struct {
	Where, Cover string
	Gap          fraction.Length
}

// gaps lists the gaps of what a job has.
func gaps(p plan.Plan) (all []openGap) {
	some := func(is func(plan.Run) bool) bool { return slices.ContainsFunc(p.Runs, is) }
	opens := func(box bool) bool {
		return some(func(r plan.Run) bool {
			return slices.ContainsFunc(r.Openings, func(o plan.Opening) bool { return box == (o.Kind == wall.Box) })
		})
	}
	covers := func(of func(wall.Trims) *wall.EdgeTrim) string {
		var names []string
		for _, run := range p.Runs {
			if t := of(run.Trim); t != nil && !slices.Contains(names, t.Name) {
				names = append(names, t.Name)
			}
		}
		return strings.Join(names, ", ")
	}
	stepped := some(func(r plan.Run) bool {
		return slices.ContainsFunc(r.StoryPole, func(m plan.Mark) bool { return m.Kind == plan.StepSide })
	})
	cornered := some(func(r plan.Run) bool { return r.CornerRight != nil && !r.CornerRight.Mitred() })
	all = []openGap{
		{"under the line of the top", covers(func(t wall.Trims) *wall.EdgeTrim { return t.Top }), p.Gaps.Top},
		{"over the line of the bottom: floor, counter" + either(stepped, " or tread", ""), covers(func(t wall.Trims) *wall.EdgeTrim { return t.Bottom }), p.Gaps.Bottom},
		{"at the ends of a wall" + either(cornered, ", in an inside corner off the face of the wall that passes", "") + either(stepped, ", at the upright sides of steps", ""), "", p.Gaps.Side},
	}
	if !p.Profile.Boards && some(func(r plan.Run) bool { return len(r.Panels)+len(r.Installed) > 1 }) {
		all = append(all, openGap{"between two panels", "", p.Gaps.Seam})
	}
	if opens(true) {
		all = append(all, openGap{"round boxes", "", p.Gaps.Box})
	}
	if opens(false) {
		all = append(all, openGap{"round windows and other openings", covers(func(t wall.Trims) *wall.EdgeTrim { return t.Casing }), p.Gaps.Window})
	}
	return all
}

// sawnOn are the leaves of sheets that some pieces are cut from, and the table of those that are only sawn across.
func (b *page) sawnOn(pieces ...plan.Piece) string {
	on := map[string]bool{}
	for _, piece := range pieces {
		on[b.sawnFrom(piece)] = true
	}
	var numbers []string
	for _, number := range b.sheets {
		if on["S"+number] {
			numbers = append(numbers, number)
		}
	}
	var from []string
	if len(numbers) > 0 {
		from = append(from, leaves("S", numbers))
	}
	if word := sheetWord(b.Plan); len(numbers) < len(on) {
		from = append(from, either(len(pieces) == 1, b.sawnFrom(pieces[0])+" in ", "")+"the table of "+word+"s")
	}
	return strings.Join(from, " and ")
}

// sawnFrom names the leaf of the sheet that a piece is cut from, or the sheet itself where it is only sawn across.
func (b *page) sawnFrom(piece plan.Piece) string {
	number := strconv.Itoa(b.Plan.SheetOf(piece.Number))
	return either(slices.Contains(b.sheets, number), "S", sheetWord(b.Plan)+" ") + number
}

// seeRun names the other leaves of run i.
func (b *page) seeRun(i int) string {
	if b.Plan.Runs[i].Bare() {
		return ""
	}
	var own []plan.Piece
	var odd []string
	for _, piece := range b.Plan.Pieces {
		if piece.Run != b.Plan.Runs[i].Name {
			continue
		}
		if own = append(own, piece); slices.Contains(b.odd, piece.Label) {
			odd = append(odd, piece.Label)
		}
	}
	says := "Ends and pole: leaf D" + strconv.Itoa(i+1) + either(len(own) > 0, "; cutting: "+b.sawnOn(own...), "; all its "+panelWord(b.Plan)+"s are up")
	if slices.ContainsFunc(b.Plan.Warnings, func(w warning.Warning) bool {
		return w.Kind == plan.ComesOff && len(w.Names) > 0 && w.Names[0] == b.Plan.Runs[i].Name
	}) {
		says += ", but one comes off first: leaf " + b.chapter("order").Leaves
	}
	return says + either(len(odd) > 0, "; marks: "+leaves("P", odd), "") + "."
}

// seePiece names the other leaves of a piece.
func (b *page) seePiece(piece plan.Piece) string {
	_, i := b.Plan.Run(piece.Run)
	return "Wall: leaf E" + strconv.Itoa(i+1) + "; cutting: " + b.sawnOn(piece) + "."
}
