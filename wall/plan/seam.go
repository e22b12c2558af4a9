package plan

import (
	"slices"

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
	turned := map[int]bool{} // pieces by their number
	for _, s := range m.chosen.Nest.Sheets {
		for _, p := range s.Placements {
			turned[p.Part] = p.Turned
		}
	}
	alike := func(run string, at ...fraction.Length) bool { // of the pieces that end there all or none are turned
		up, down := false, false
		for _, p := range made.Pieces {
			if p.Run == run && (slices.Contains(at, p.At.X) || slices.Contains(at, p.At.X.Add(p.Width))) {
				up, down = up || !turned[p.Number], down || turned[p.Number]
			}
		}
		return !up || !down
	}
	for i, run := range made.Runs {
		var seams []Seam
		for left, right := range m.job.Neighbors(i, run.Panels) {
			if profile.Boards {
				break // their joints are the pattern
			}
			seam := Seam{At: left.Right.Add(right.Left).Div(2)}
			if laps {
				seam.LapKept = new(own[left.Number].Right && own[right.Number].Left && alike(run.Name, left.Right, right.Left))
			}
			seams = append(seams, seam)
		}
		all = append(all, seams)
	}
	return all
}
