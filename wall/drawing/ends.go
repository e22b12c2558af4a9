package drawing

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// tip is what is shown of the panelling at one end of a run.
type tip struct {
	run      plan.Run
	right    bool
	from, to fraction.Length // what is shown of it, on the run
	shown    []plan.Stripe
}

// tip returns the panels within a length of one end of run i, if any; boards are shown over joints.
func (c *canvas) tip(i int, right bool, most fraction.Length) tip {
	run, profile := c.plan.Runs[i], c.plan.Profile
	t := tip{run: run, right: right}
	panel, ok := run.EndPanel(right)
	if !ok || profile.Pitch.Sign() <= 0 {
		return t
	}
	span := fraction.Min(most, panel.Right.Sub(panel.Left))
	if profile.Boards {
		span = fraction.Min(most, run.Limits[1].Sub(run.Limits[0]))
	}
	t.from, t.to = panel.Left, panel.Left.Add(span)
	if right {
		t.from, t.to = panel.Right.Sub(span), panel.Right
	}
	t.shown = profile.Stripes(t.from, t.to, panel.LeftPhase.Add(t.from.Sub(panel.Left)).Mod(profile.Pitch))
	return t
}

// mitred reports whether the end of the run at the left or the right is an outside corner.
func mitred(run plan.Run, right bool) bool {
	return !right && run.Left.Mitred() || right && run.Right.Mitred()
}

// section draws the section of what is shown, a thickness of ink deep: put places what lies so far
// along the run, in ink, and so deep behind the face. A mitred end is narrower at the back. The
// joints of tongued boards show it on the side toward which one works; its size is none of the plan's.
func (c *canvas) section(t tip, thick float64, along func(fraction.Length) float64, put func(along, deep float64) complex128) {
	path := ""
	to := func(command string, along, deep float64) {
		p := put(along, deep)
		path += pen(command, real(p), imag(p))
	}
	first, last := along(t.from), along(t.to)
	back := [2]float64{first, last}
	if mitred(t.run, t.right) && t.right {
		back[1] -= thick
	} else if mitred(t.run, t.right) {
		back[0] += thick
	}
	deep := func(s plan.Stripe) float64 {
		if of := c.plan.Profile.Thickness.Float64(); of > 0 && s.Kind != groove.Flat {
			return max(min(3, thick/3), min(.8, s.Depth.Float64()/of)*thick)
		}
		return 0
	}
	to("M", back[0], thick)
	for _, s := range t.shown {
		x0, x1, d := along(fraction.Max(s.Left, t.from)), along(fraction.Min(s.Right, t.to)), deep(s)
		to("L", x0, 0)
		to("L", x0, d)
		if s.Kind == groove.Bead { // a round between two quirks
			quirk := min(1.5, (x1-x0)/4)
			to("L", x0+quirk, d)
			to("Q", (x0+x1)/2, -d)
			to(" ", x1-quirk, d)
		}
		to("L", x1, d)
		to("L", x1, 0)
	}
	to("L", back[1], thick)
	c.stroke("tag", path, "Z")
	way := thick / 3 * map[bool]float64{false: 1, true: -1}[t.run.SetOut.Direction == wall.Left]
	for n, s := range t.shown {
		if n > 0 && s.Index == 0 && c.plan.Profile.Boards && c.plan.Profile.Edges == groove.Tongued {
			x := along(s.Left)
			path = ""
			to("M", x, deep(s))
			for _, p := range [][2]float64{{0, thick / 3}, {way, thick / 3}, {way, thick * 2 / 3}, {0, thick * 2 / 3}, {0, thick}} {
				to("L", x+p[0], p[1])
			}
			c.stroke("edge", path)
		}
	}
}
