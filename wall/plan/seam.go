package plan

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// Seam is a joint between two panels of a run that are both to be fitted.
type Seam struct {
	At fraction.Length `json:"at"` // the middle of its gap

	// LapKept says of sheets with lapped or tongued edges whether both edges at the seam are those of
	// their sheets that mate: a lap that is sawn off is lost, and one beside an edge of its like, where only one of both
	// sheets is turned. It is nil for other sheets.
	LapKept *bool `json:"lap_kept,omitempty"`
}

// seams returns the seams of each run of a plan whose runs and pieces are made.
func (m *maker) seams(made *Plan) (all [][]Seam) {
	profile := &m.job.Profile
	laps := !profile.Boards && (profile.Edges == groove.Lapped || profile.Edges == groove.Tongued)
	own := m.chosen.OwnEdges(m.job.Room)
	turned := map[bool]map[int]bool{true: {}, false: {}} // the panels with pieces that are turned, and those with others
	for _, s := range m.chosen.Nest.Sheets {
		for _, p := range s.Placements {
			turned[p.Turned][m.chosen.Layout.Pieces[p.Part-1].Panel] = true
		}
	}
	for i, run := range made.Runs {
		var seams []Seam
		for left, right := range m.job.Neighbors(i, run.Panels) {
			if profile.Boards {
				break // their joints are the pattern
			}
			seam := Seam{At: left.Right.Add(right.Left).Div(2)}
			if laps {
				l, r := left.Number, right.Number
				mixed := (turned[true][l] || turned[true][r]) && (turned[false][l] || turned[false][r])
				seam.LapKept = new(own[l].Right && own[r].Left && !mixed)
			}
			seams = append(seams, seam)
		}
		all = append(all, seams)
	}
	return all
}
