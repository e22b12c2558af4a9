package plan

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/wall"
)

// doubtTrim questions trims that reach less than a margin over the gap that they hide.
func (j *Job) doubtTrim() (doubts []warning.Warning) {
	said := map[string]bool{}
	for r := range j.Runs {
		for kind, gap := range []fraction.Length{wall.BottomJoint: j.Gaps.Bottom, wall.TopJoint: j.Gaps.Top, wall.OpeningJoint: j.Gaps.Window} {
			c, path := j.TrimOf(r, wall.JointKind(kind))
			if c == nil || said[path.String()] || !c.Covers.Less(gap.Add(j.Priorities.TrimMargin)) {
				continue
			}
			said[path.String()] = true
			doubts = append(doubts, warning.Warning{Path: path, Kind: TrimNarrow, Names: []string{c.Name}, Lengths: []fraction.Length{c.Covers, gap, j.Priorities.TrimMargin}})
		}
	}
	return doubts
}
