package book

import (
	"fmt"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// meeting says how boards meet: what of them is measured, which of them lose the edge that no other meets, and how the
// last one is got in, and of sheets with laps or tongues where these are. It says nothing of square edges.
func (t *text) meeting(p plan.Plan) string {
	ahead, behind := "tongue", "groove"
	switch p.Profile.Edges {
	case groove.EdgesUnknown:
		if !p.Profile.Boards {
			return ""
		}
		return "Whether the boards have tongues or laps is not in the plan, and no drawing shows any: give edges, width and tongue in the profile before you saw."
	case groove.Square:
		return ""
	case groove.Lapped:
		ahead, behind = "lap behind the next", "lap over the one before"
	}
	if !p.Profile.Boards {
		left := p.Profile.Tongue == groove.TongueLeft
		return fmt.Sprintf("All widths are those of the face of a sheet, without its %s, which no drawing shows: it stands out at the %s of the face, of a turned panel at its %s.", ahead, either(left, "left", "right"), either(left, "right", "left")) +
			either(p.Profile.Edges == groove.Lapped, " Where a panel that is up laps over the next, slip that in before its edge there is nailed.", "")
	}
	says := fmt.Sprintf("A board shows %s, its face: all widths, holes and notches are measured on that, without its %s; what is sawn goes on through it. "+
		"Set each with its %s ahead, the way the run is worked.", t.unbroken(p.Profile.Pitch), ahead, ahead)
	var bare [2][]string // of the edge behind, and of the one ahead
	for _, piece := range p.Pieces {
		run, _ := p.Run(piece.Run)
		for side, at := range []fraction.Length{piece.LeftPhase, piece.LeftPhase.Add(piece.Width)} {
			right := side == 1
			if run.SetOut.Direction == wall.Left {
				side = 1 - side
			}
			if !at.Mod(p.Profile.Pitch).IsZero() || side == 1 && !p.Meets(piece, right) {
				bare[side] = append(bare[side], piece.Label)
			}
		}
	}
	for side, edge := range []string{behind, ahead} {
		if len(bare[side]) > 0 {
			says += fmt.Sprintf(" The %s is sawn off %s.", edge, ranges(bare[side]))
		}
	}
	into := slices.ContainsFunc(p.Runs, func(r plan.Run) bool {
		return !r.Bare() && r.End(r.SetOut.Direction == wall.Right).Kind == wall.InsideCorner
	})
	if into && p.Profile.Edges == groove.Tongued { // how it is got in: common practice, no source
		says += " To get the last board of a run into a corner, saw the back lip off its groove and press it in from the front, or set it and the one before it in together, tilted, and press them flat."
	}
	return says
}
