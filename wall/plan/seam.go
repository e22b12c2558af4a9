package plan

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/choice"
)

// Seam is a joint between two panels of a run that are both to be fitted.
type Seam struct {
	At fraction.Length `json:"at"` // the middle of its gap

	// LapKept says of sheets with lapped or tongued edges whether both edges at the seam are those of
	// their sheets that mate: a lap that is sawn off is lost. It is nil for other sheets.
	LapKept *bool `json:"lap_kept,omitempty"`
}

// seams returns the seams of each run of a plan whose runs and pieces are made.
func (m *maker) seams(made *Plan) (all [][]Seam) {
	profile := &m.job.Profile
	laps := !profile.Boards && (profile.Edges == groove.Lapped || profile.Edges == groove.Tongued)
	own := m.ownEdges(made)
	for _, run := range made.Runs {
		var seams []Seam
		for i := 1; i < len(run.Panels) && !profile.Boards; i++ {
			left, right := run.Panels[i-1], run.Panels[i]
			if right.Left.Sub(left.Right) != m.job.Gaps.Seam {
				continue // an opening or an installed panel lies between
			}
			seam := Seam{At: left.Right.Add(right.Left).Div(2)}
			if laps {
				seam.LapKept = new(own[left.Number].right && own[right.Number].left)
			}
			seams = append(seams, seam)
		}
		all = append(all, seams)
	}
	return all
}

// sides are two upright edges of a panel.
type sides struct{ left, right bool }

// ownEdges says of each panel, by its number, which of its edges are those of the sheet on the same
// side: of all its pieces that reach there, none of them turned.
func (m *maker) ownEdges(made *Plan) map[int]sides {
	cut := map[int]sides{} // pieces
	parts := fraction.Must(choice.Nesting(m.job.Room, &m.chosen.Layout)).Parts
	for _, sheet := range m.chosen.Nest.Sheets {
		width := m.job.Stock[sheet.Stock].Width
		for _, p := range sheet.Placements {
			part := parts[p.Part-1]
			cut[p.Part] = sides{!p.Turned && p.X.IsZero(), !p.Turned && p.X.Add(part.Width) == width}
		}
	}
	own := map[int]sides{}
	for _, run := range made.Runs {
		for _, panel := range run.Panels {
			all := sides{true, true}
			for _, n := range panel.Pieces {
				piece, _ := made.Piece(n)
				all.left = all.left && (piece.At.X != panel.Left || cut[n].left)
				all.right = all.right && (piece.At.X.Add(piece.Width) != panel.Right || cut[n].right)
			}
			own[panel.Number] = all
		}
	}
	return own
}
