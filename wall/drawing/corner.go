package drawing

import (
	"fmt"
	"slices"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

const (
	cornerScale = perInch / 2 // ink to the inch: 1 to 2
	cornerLeg   = 150.0       // ink of either wall that is shown
	endLeg      = 250.0       // of the wall at an end, and
	endPast     = 44.0        // of what lies past it
)

// leg is a wall with the section of its panels, seen from above.
type leg struct {
	course
	tip
	from, to float64         // ink of the wall, from the corner
	corner   fraction.Length // where that lies on the run
}

// legs draws walls that meet, and their panels, broken off where they go on.
func (c *canvas) legs(all ...leg) {
	thick := c.plan.Profile.Thickness.Float64() * c.scale
	for _, l := range all {
		c.add("path", "fill", c.hatch("wall", "hatch", 5, 45), "d", l.band(l.from, l.to, -2*wallInk, l.from, l.to))
	}
	for _, l := range all {
		if len(l.shown) > 0 {
			c.section(l.tip, thick, func(x fraction.Length) float64 { return x.Sub(l.corner).Float64() * c.scale },
				func(along, deep float64) point { return l.course.at(along, thick-deep) })
		}
		if l.cut {
			x, low := either(l.right, l.tip.from, l.tip.to).Sub(l.corner).Float64()*c.scale, -2*wallInk
			c.stroke("pole", l.line(complex(x, low-4), complex(x, low/2-3), complex(x-4, low/2-1), complex(x+4, low/2+1), complex(x, low/2+3), complex(x, thick+5)))
		}
	}
}

// shownLength is what of a run so much ink shows at [cornerScale].
func shownLength(long float64) fraction.Length { return fraction.Of(int64(long*64/cornerScale), 64) }

// seen says what is seen of the pattern at an end of run i, if it is not out of sight.
func (c *canvas) seen(i int, right bool) []line {
	run := c.plan.Runs[i]
	end, other := run.End(right), either(right, plan.LeftSeen, plan.RightSeen)
	if c.plan.Passes(i, right) || end.Kind == wall.Covered || end.Kind != wall.InsideCorner && run.SetOut.Why == other {
		return nil
	}
	return line{"seen: ", figure{end.Cut.Name(c.tape), ref("runs[%d].%s.cut", i, either(right, "right", "left"))}}.wrap(c.Width-16, c.Width-16)
}

// Corner draws the corner at the right end of run i of a plan from above, at half its size: both
// walls with the section of their panels, which one passes, how far each stays from the corner and
// what is seen beside it. A run without a shared corner there has none.
func Corner(p plan.Plan, i int) (Picture, error) {
	return draw(halfInk, fault.Of("Runs"), i, len(p.Runs), func(float64) *Picture {
		run, letter := p.Runs[i], p.CornerLetter(i)
		if letter == "" {
			return nil
		}
		c := run.CornerRight
		n := (i + 1) % len(p.Runs)
		next := p.Runs[n]
		d := newCanvas(p, halfInk, ref("corner-%d", i+1), fmt.Sprintf("Corner %s, between %s and %s, from above", letter, run.Name, next.Name))
		d.scale = cornerScale
		bend, at := 1.0, complex(d.Width/2+cornerLeg/2, 40)
		if c.Kind == wall.OutsideCorner {
			bend, at = -1, complex(d.Width/2+cornerLeg/2-p.Profile.Thickness.Float64()*d.scale, 34+cornerLeg)
		}
		most := shownLength(cornerLeg - 12 - p.Profile.Thickness.Float64()*d.scale)
		legs := []leg{
			{course{along: 1, start: at}, d.tip(i, true, most), -cornerLeg, max(0, bend) * 2 * wallInk, run.Width},
			{course{along: complex(0, bend), start: at}, d.tip(n, false, most), -max(0, bend) * 2 * wallInk, cornerLeg, zero},
		}
		for k, l := range legs {
			d.stroke("edge", l.line(complex([]float64{l.from, 0}[k], 0), complex([]float64{0, l.to}[k], 0)))
		}
		d.legs(legs...)
		line{"Corner ", counted(letter), ", from above: ", figure{c.Kind.String(), ref("runs[%d].corner_right.kind", i)}}.write(&d.node, "bold", d.Width/2, 15, "middle")
		gaps := []figure{d.sum(plus(run.Width, ref("runs[%d].width", i)), minus(run.Limits[1], ref("runs[%d].limits[1]", i))), d.length(next.Limits[0], ref("runs[%d].limits[0]", n))}
		cuts := [][]line{d.seen(i, true), d.seen(n, false)}
		ways := []string{"left: ", either(bend > 0, "downward: ", "upward: ")}
		y := 52 + cornerLeg + max(0, -bend)*p.Profile.Thickness.Float64()*d.scale
		for k, l := range legs {
			fit := line{"butts, stays off the corner by ", gaps[k]}
			if c.Mitred() {
				fit = line{"mitered"}
			} else if c.Passes == l.tip.run.Name {
				fit = line{"passes, stays off the corner by ", gaps[k]}
			}
			name := line{ways[k], figure{clip(l.tip.run.Name, d.Width-120, typeSize), ref("runs[%d].name", []int{i, n}[k])}}
			y = d.under(1, 8, y, "start", append([]line{name, fit}, cuts[k]...)...)
		}
		if !c.Mismatch.IsZero() {
			y = d.under(0, 8, y, "start", line{"the pattern is out of step by ", d.length(c.Mismatch, ref("runs[%d].corner_right.mismatch", i))})
		}
		d.desc("%s and %s; %s passes.", run.Name, next.Name, c.Passes)
		d.Height = d.block(d.bar(y), line{counted(ref("D%d", i+1)), ": Corner ", counted(letter)})
		return d.Picture
	})
}

// End draws one end of run i of a plan from above, at half its size: the section of the panels where they reach
// farthest, how far they stay from the end of the wall, and what is seen. An end that stays bare has none.
func End(p plan.Plan, i int, right bool) (Picture, error) {
	return draw(halfInk, fault.Of("Runs"), i, len(p.Runs), func(float64) *Picture {
		run, path := p.Runs[i], ref("runs[%d].", i)
		side, end, out, corner, off := "left", run.Left, -1.0, fraction.Min(zero, run.Left.Lean), []term{plus(run.Limits[0], path+"limits[0]")}
		if right {
			side, end, out, corner = "right", run.Right, 1, run.Width.Add(fraction.Max(zero, run.Right.Lean))
			off = []term{plus(run.Width, path+"width"), minus(run.Limits[1], path+"limits[1]")}
		}
		d := newCanvas(p, halfInk, ref("run-%d-%s-end", i+1, side), fmt.Sprintf("The %s end of %s, from above", side, run.Name))
		d.scale = cornerScale
		t := d.tip(i, right, shownLength(endLeg-12))
		if len(t.shown) == 0 || end.Bare {
			return nil
		}
		reach := "" // where the wall leans out beyond its foot, its top
		if lean := end.Lean; out*lean.Float64() > 0 {
			off, reach = append(off, term{lean.Abs(), either(right, " + ", " - ") + path + side + ".lean"}), ", at its top"
		} else if !lean.IsZero() {
			reach = ", at its foot"
		}
		inner, outer, inside := -out*endLeg, out*endPast, end.Kind == wall.InsideCorner // where the wall ends as shown
		if end.Mitred() {
			outer = 0
		} else if inside {
			outer = out * 2 * wallInk
		}
		l := leg{course{along: 1, start: complex(d.Width/2-(inner+outer)/2, 42)}, t, min(inner, outer), max(inner, outer), corner}
		d.legs(l)
		if inside {
			deep := p.Profile.Thickness.Float64()*d.scale + 14
			d.add("path", "fill", d.hatch("wall", "hatch", 5, 45), "d", l.line(0, complex(outer, 0), complex(outer, deep), complex(0, deep))+"Z")
			d.stroke("edge", l.line(0, complex(0, deep)))
			outer = 0
		}
		d.stroke("edge", l.line(complex(inner, 0), complex(outer, 0)))
		trimmed := end.Kind == wall.Exposed && slices.ContainsFunc(p.Rows, func(r finish.Row) bool {
			return r.Item == finish.ItemEdgeTrim && slices.ContainsFunc(r.Terms, func(t finish.Term) bool { return t.Kind == finish.TermEnd && t.Name == run.Name })
		})
		if trimmed {
			x := real(l.at(either(right, t.to, t.from).Sub(corner).Float64()*d.scale, 0))
			d.rect(spanned(x, 42, x+out*trimInk, 45+p.Profile.Thickness.Float64()*d.scale), "class", "tag")
		}
		d.stroke("start", l.line(complex(0, -2*wallInk-3), complex(0, p.Profile.Thickness.Float64()*d.scale+10)))
		line{"The " + side + " end, from above: ", figure{end.Kind.String(), path + side + ".kind"}}.write(&d.node, "bold", d.Width/2, 15, "middle")
		lines := append([]line{{"upright line: end of the wall" + reach}}, d.seen(i, right)...)
		if !end.Mitred() {
			lines = append(lines, line{p.Profile.Word("panels", "boards") + " stay off it by ", d.sum(off...)})
		}
		if trimmed {
			lines = append(lines, line{"over the edge: edge trim, not to scale"})
		}
		d.desc("Section from above. %s: %s.", end.Kind, end.Cut.Name(d.tape))
		y := d.under(1, 8, 42+p.Profile.Thickness.Float64()*d.scale+34, "start", lines...)
		d.Height = d.block(d.bar(y), line{counted(ref("D%d", i+1)), ": End of ", figure{run.Name, path + "name"}})
		return d.Picture
	})
}

// tip is what is shown of the panelling at one end of a run.
type tip struct {
	run      plan.Run
	right    bool
	from, to fraction.Length // what is shown of it, on the run
	cut      bool            // the panel goes on
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
	span := fraction.Min(most, either(profile.Boards, run.Limits[1].Sub(run.Limits[0]), panel.Right.Sub(panel.Left)))
	t.from = either(right, panel.Right.Sub(span), panel.Left)
	t.to = t.from.Add(span)
	t.cut = span.Less(panel.Right.Sub(panel.Left)) || profile.Boards
	t.shown = profile.Stripes(t.from, t.to, panel.LeftPhase.Add(t.from.Sub(panel.Left)).Mod(profile.Pitch))
	return t
}

// section draws the section of what is shown, a thickness of ink deep: put places what lies so far
// along the run, in ink, and so deep behind the face. A mitred end is narrower at the back. The
// joints of tongued boards show it on the side toward which one works; its size is none of the plan's.
func (c *canvas) section(t tip, thick float64, along func(fraction.Length) float64, put func(along, deep float64) point) {
	path := ""
	to := func(command string, along, deep float64) { path += pen(command, put(along, deep)) }
	first, last := along(t.from), along(t.to)
	back := [2]float64{first, last}
	if mitred := t.run.End(t.right).Mitred(); mitred && t.right {
		back[1] -= thick
	} else if mitred {
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
	way := thick / 3 * either(t.run.SetOut.Direction == wall.Left, -1.0, 1)
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
