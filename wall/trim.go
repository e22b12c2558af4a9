package wall

import (
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// Trims are what hides edges of panels: strips along their bottom and their top, casings round
// windows and doors. A hidden bottom or top is cut level where it may be, see [EdgeTrim], and
// hidden sides of openings weigh nothing.
type Trims struct {
	Bottom *EdgeTrim `json:"bottom,omitzero" doc:"Such as a baseboard."`
	Top    *EdgeTrim `json:"top,omitzero" doc:"Such as a cap rail."`
	Casing *EdgeTrim `json:"casing,omitzero" doc:"Round windows and doors: not round boxes, and what else is cut out within the wall."`
}

// EdgeTrim is one such trim. Between two steps or ends of a run, panels are cut level behind it, a top
// at the lowest place of its line and a bottom at the highest, where the line varies by no more than
// it covers beyond the gap, less a margin (Priorities.TrimMargin).
type EdgeTrim struct {
	Name   string          `json:"name"`
	Covers fraction.Length `json:"covers" doc:"How far it reaches over the gap and the edge of the panels."`
}

// TrimOf returns the trim over a kind of joint of run r, nil where there is none, with its path. What
// a run has takes the place of the room's.
func (room *Room) TrimOf(r int, kind JointKind) (*EdgeTrim, fault.Path) {
	choose := func(t *Trims) (*EdgeTrim, string) {
		switch kind {
		case BottomJoint:
			return t.Bottom, "Bottom"
		case TopJoint:
			return t.Top, "Top"
		case OpeningJoint:
			return t.Casing, "Casing"
		}
		return nil, ""
	}
	if room == nil || r < 0 || r >= len(room.Runs) {
		return nil, nil
	}
	if c, side := choose(&room.Runs[r].Trim); c != nil {
		return c, fault.Of("Runs", r, "Trim", side)
	}
	c, side := choose(&room.Trim)
	return c, fault.Of("Trim", side)
}

// checkTrim checks the trims of the room or of a run.
func (f *faults) checkTrim(t *Trims, steps ...any) {
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
		if c.Covers.Sign() <= 0 {
			f.Add(c.Covers, "a length above 0", at("Covers")...)
		}
	}
}

// level moves the steps of a top line that was taped, and cuts it level behind a trim, each part between
// steps by itself, where the trim hides it. A lowest place that has no taped height goes to a mark.
func (g *region) level(room *Room, taped []cutout.Point, trim *EdgeTrim, gap fraction.Length) (line []cutout.Point) {
	line = moveSteps(taped, room.Gaps.Side)
	if trim == nil {
		return line
	}
	hidden := trim.Covers.Sub(gap).Sub(room.Priorities.TrimMargin)
	for from, to := 0, 0; from < len(line); from = to {
		low, high := line[from], line[from]
		for to = from; to < len(line) && (to == from || line[to].X != line[to-1].X); to++ {
			if line[to].Y.Less(low.Y) {
				low = line[to]
			}
			if high.Y.Less(line[to].Y) {
				high = line[to]
			}
		}
		if hidden.Less(high.Y.Sub(low.Y)) {
			continue
		}
		if !slices.ContainsFunc(taped, func(p cutout.Point) bool { return p.Y == low.Y }) {
			low.Y = g.snapped(low.Y, room.Mark, fraction.Down)
		}
		for i := range line[from:to] {
			line[from+i].Y = low.Y
		}
	}
	return line
}
