package plan

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/wall"
)

// Trims are what hides edges of panels: strips along their bottom and their top, casings round
// windows and other openings. What they hide is not sealed; the take-off lists them by length.
type Trims struct {
	Bottom *EdgeTrim `json:"bottom,omitzero" doc:"Such as a baseboard."`
	Top    *EdgeTrim `json:"top,omitzero" doc:"Such as a cap rail."`
	Casing *EdgeTrim `json:"casing,omitzero" doc:"Round windows and other openings but boxes."`
}

// EdgeTrim is one such trim.
type EdgeTrim struct {
	Name   string          `json:"name"`
	Covers fraction.Length `json:"covers" doc:"How far it reaches over the gap and the edge of the panels."`
}

// coverMargin is how far a trim has to reach over the edge of a panel beyond its gap: 1/4 in, as
// the contract of the job file has it; judgment.
func coverMargin() fraction.Length { return fraction.Of(1, 4) }

// trimOf returns the trim over a kind of joint of a run, nil where there is none, with its path.
func (j *Job) trimOf(r int, kind wall.JointKind) (*EdgeTrim, fault.Path) {
	choose := func(t Trims) (*EdgeTrim, string) {
		switch kind {
		case wall.BottomJoint:
			return t.Bottom, "Bottom"
		case wall.TopJoint:
			return t.Top, "Top"
		case wall.OpeningJoint:
			return t.Casing, "Casing"
		}
		return nil, ""
	}
	if c, side := choose(j.RunTrim[r]); c != nil {
		return c, fault.Of("Runs", r, "Trim", side)
	}
	c, side := choose(j.Trim)
	return c, fault.Of("Trim", side)
}

// checkTrim checks the trims of the job or of a run.
func (f *faults) checkTrim(t Trims, steps ...any) {
	for i, c := range []*EdgeTrim{t.Bottom, t.Top, t.Casing} {
		if c == nil {
			continue
		}
		at := func(field string) []any {
			return append(steps[:len(steps):len(steps)], []string{"Bottom", "Top", "Casing"}[i], field)
		}
		if c.Name == "" {
			f.Add(c.Name, "a name, such as baseboard", at("Name")...)
		}
		f.positive(c.Covers, at("Covers")...)
	}
}

// doubtTrim questions trims that reach less than a margin over the gap that they hide.
func (j *Job) doubtTrim() (doubts []warning.Warning) {
	said := map[string]bool{}
	for r := range j.Runs {
		for kind, gap := range []fraction.Length{wall.BottomJoint: j.Gaps.Bottom, wall.TopJoint: j.Gaps.Top, wall.OpeningJoint: j.Gaps.Window} {
			c, path := j.trimOf(r, wall.JointKind(kind))
			if c == nil || said[path.String()] || !c.Covers.Less(gap.Add(coverMargin())) {
				continue
			}
			said[path.String()] = true
			doubts = append(doubts, warning.Warning{Path: path, Kind: TrimNarrow, Names: []string{c.Name}, Lengths: []fraction.Length{c.Covers, gap, coverMargin()}})
		}
	}
	return doubts
}
