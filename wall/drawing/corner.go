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
	jointLong   = 200.0       // most ink that a board takes, beside half of another
)

// leg is a wall with the section of its panels, seen from above.
type leg struct {
	course
	tip
	from, to float64 // ink of the wall, from the corner
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
			c.broken(l.course, either(l.right, l.tip.from, l.tip.to).Sub(l.corner).Float64()*c.scale, -2*wallInk, thick+5)
		}
	}
}

// broken breaks a section off at a place along its wall, across some ink.
func (c *canvas) broken(on course, x, from, to float64) {
	c.stroke("pole", on.line(complex(x, from-4), complex(x, from/2-3), complex(x-4, from/2-1), complex(x+4, from/2+1), complex(x, from/2+3), complex(x, to)))
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
		thick, outside := p.Profile.Thickness.Float64()*d.scale, c.Kind == wall.OutsideCorner
		bend, at := either(outside, -1.0, 1), complex(d.Width/2+cornerLeg/2-either(outside, thick, 0), either(outside, 34+cornerLeg, 46))
		most := shownLength(cornerLeg - 12 - thick)
		legs := []leg{
			{course{along: 1, start: at}, d.tip(i, true, most), -cornerLeg, max(0, bend) * 2 * wallInk},
			{course{along: complex(0, bend), start: at}, d.tip(n, false, most), -max(0, bend) * 2 * wallInk, cornerLeg},
		}
		for k, l := range legs {
			d.stroke("edge", l.line(complex([]float64{l.from, 0}[k], 0), complex([]float64{0, l.to}[k], 0)))
		}
		d.legs(legs...)
		line{"Corner ", counted(letter), ", from above: ", figure{c.Kind.String(), ref("runs[%d].corner_right.kind", i)}}.write(&d.node, "bold", d.Width/2, 15, "middle")
		y := 58 + cornerLeg + max(0, -bend)*thick
		for k, l := range legs {
			fit := line{either(c.Passes == l.tip.run.Name, "passes", "butts") + ", stays off the corner by ", l.off, l.where}
			if c.Mitred() {
				fit = line{"mitered"}
			}
			name := line{either(k == 0, "left: ", either(outside, "upward: ", "downward: ")), figure{clip(l.tip.run.Name, d.Width-120, typeSize), ref("runs[%d].name", []int{i, n}[k])}}
			y = d.under(1, 8, y, "start", append([]line{name, fit}, d.seen([]int{i, n}[k], k == 0)...)...)
		}
		if !c.Mismatch.IsZero() && !c.Mitred() { // of a miter both edges are cut there
			y = d.under(0, 8, y, "start", line{"the pattern is out of step by ", d.length(c.Mismatch, ref("runs[%d].corner_right.mismatch", i))})
		}
		d.desc("%s and %s; %s passes.", run.Name, next.Name, c.Passes)
		d.Height = d.block(y, true, line{counted(ref("D%d", i+1)), ": Corner ", counted(letter)})
		return d.Picture
	})
}

// End draws one end of run i of a plan from above, at half its size: the section of the panels where they reach
// farthest, how far they stay from the end of the wall, and what is seen. An end that stays bare has none.
func End(p plan.Plan, i int, right bool) (Picture, error) {
	return draw(halfInk, fault.Of("Runs"), i, len(p.Runs), func(float64) *Picture {
		run, path := p.Runs[i], ref("runs[%d].", i)
		side, end, out := either(right, "right", "left"), run.End(right), either(right, 1.0, -1)
		d := newCanvas(p, halfInk, ref("run-%d-%s-end", i+1, side), fmt.Sprintf("The %s end of %s, from above", side, run.Name))
		d.scale = cornerScale
		t := d.tip(i, right, shownLength(endLeg-12))
		if len(t.shown) == 0 || end.Bare {
			return nil
		}
		inside := end.Kind == wall.InsideCorner
		inner, outer := -out*endLeg, out*either(inside, 2*wallInk, either(end.Mitred(), 0, endPast)) // where the wall ends as shown
		l := leg{course{along: 1, start: complex(d.Width/2-(inner+outer)/2, 42)}, t, min(inner, outer), max(inner, outer)}
		d.legs(l)
		if inside {
			deep := p.Profile.Thickness.Float64()*d.scale + 14
			d.add("path", "fill", d.hatch("wall", "hatch", 5, 45), "d", l.line(0, complex(outer, 0), complex(outer, deep), complex(0, deep))+"Z")
			d.stroke("edge", l.line(0, complex(0, deep)))
			outer = 0
		}
		d.stroke("edge", l.line(complex(inner, 0), complex(outer, 0)))
		trimmed := end.Kind == wall.Exposed && slices.ContainsFunc(p.Rows, func(r finish.Row) bool {
			return r.Item == finish.ItemEdgeTrim && slices.ContainsFunc(r.Terms, func(t finish.Term) bool {
				return t.Name == run.Name && (t.Kind == finish.TermEnd || t.Kind == either(right, finish.TermRightEnd, finish.TermLeftEnd))
			})
		})
		if trimmed {
			x := real(l.at(either(right, t.to, t.from).Sub(t.corner).Float64()*d.scale, 0))
			d.rect(spanned(x, 42, x+out*trimInk, 45+p.Profile.Thickness.Float64()*d.scale), "class", "tag")
		}
		d.stroke("start", l.line(complex(0, -2*wallInk-3), complex(0, p.Profile.Thickness.Float64()*d.scale+10)))
		line{"The " + side + " end, from above: ", figure{end.Kind.String(), path + side + ".kind"}}.write(&d.node, "bold", d.Width/2, 15, "middle")
		lines := append([]line{{"upright line: end of the " + either(end.Kind == wall.Exposed || end.Kind == wall.Covered, "run", "wall") + either(t.where == "", "", ",") + t.where}}, d.seen(i, right)...)
		if !end.Mitred() {
			lines = append(lines, line{p.Profile.Word("panels", "boards") + " stay off it by ", t.off})
		}
		if trimmed {
			lines = append(lines, line{"over the edge: edge trim, not to scale"})
		}
		d.desc("Section from above. %s: %s.", end.Kind, end.Cut.Name(d.tape))
		y := d.under(1, 8, 42+p.Profile.Thickness.Float64()*d.scale+34, "start", lines...)
		d.Height = d.block(y, true, line{counted(ref("D%d", i+1)), either(right, ": Right", ": Left"), " end of ", figure{run.Name, path + "name"}})
		return d.Picture
	})
}

// Joint draws a board of a plan from above with its joints to the next: on which side its tongue is, or what lies behind
// the next, and what of it shows. Boards of which that is not known have none.
func Joint(p plan.Plan) (Picture, error) {
	i := slices.IndexFunc(p.Runs, func(r plan.Run) bool { return !r.Bare() })
	return draw(halfInk, fault.Of("Runs"), i, len(p.Runs), func(float64) *Picture {
		d, run, pitch := newCanvas(p, halfInk, "joint", "Joint of two boards, from above"), p.Runs[i], p.Profile.Pitch
		d.scale = whole(jointLong / pitch.Float64())
		thick, long, beside := p.Profile.Thickness.Float64()*d.scale, pitch.Float64()*d.scale, pitch.Div(4)
		meets := d.joint(thick, run.SetOut.Direction)
		if len(meets) == 0 || thick == 0 {
			return nil
		}
		run.Left, run.Right = plan.End{}, plan.End{} // not mitred
		on := course{along: 1, start: complex((d.Width-long)/2, 46)}
		t := tip{run: run, from: zero.Sub(beside), to: pitch.Add(beside), shown: p.Profile.Stripes(zero.Sub(beside), pitch.Add(beside), pitch.Sub(beside))}
		along := func(x fraction.Length) float64 { return x.Float64() * d.scale }
		d.section(t, thick, along, func(along, deep float64) point { return on.at(along, thick-deep) })
		d.broken(on, along(t.from), -4, thick+5)
		d.broken(on, along(t.to), -4, thick+5)
		way, words := real(meets[1]), either(p.Profile.Edges == groove.Tongued, []string{"tongue", "groove"}, []string{"behind the next", "over it"})
		ahead, side := either(way < 0, 0, long), either(way < 0, "left", "right")
		line{"A board from above, the wall behind it"}.write(&d.node, "bold", d.Width/2, 15, "middle")
		for k, x := range []float64{ahead, long - ahead} {
			at := on.at(x+way/2, thick/2)
			d.stroke("lead", "M", real(at), 40.0, "V", imag(at))
			line{words[k]}.write(&d.node, "", real(at), 36, "middle")
		}
		y := 46 + thick + 18
		measure := func(from, to float64, text line) {
			d.stroke("pole", ticks(real(on.start)+from, real(on.start)+to, y), real(on.start)+to)
			y = d.under(0, real(on.start)+(from+to)/2, y+15, "middle", text) + 2
		}
		measure(0, long, line{d.length(pitch, "profile.pitch"), " shows: its face"})
		if !p.Profile.Width.IsZero() {
			measure(min(0, ahead+way), max(long, ahead+way), line{d.length(p.Profile.Width, "profile.width"), " in all, as bought"})
		}
		says := line{words[0] + " to the " + side + ", the way that one works; its thickness is not to scale" + either(p.Profile.Lap.IsZero() && p.Profile.Width.IsZero(), ", nor is its length", "")}
		d.desc("%s.", says)
		d.Height = d.block(d.under(0, 8, y+6, "start", says.wrap(d.Width-16, d.Width-16)...), true, line{"Joint of two boards"})
		return d.Picture
	})
}

// tip is what is shown of the panelling at one end of a run.
type tip struct {
	run      plan.Run
	right    bool
	corner   fraction.Length // the end of the wall on the run, where the panels reach farthest,
	off      figure          // how far they stay off it there,
	where    string          // and where that is, if it leans
	from, to fraction.Length // what is shown of it, on the run
	cut      bool            // the panel goes on
	shown    []plan.Stripe
}

// tip returns one end of run i with the panels within a length of it, if any; boards are shown over joints.
func (c *canvas) tip(i int, right bool, most fraction.Length) tip {
	run, profile := c.plan.Runs[i], c.plan.Profile
	lean, path, off := run.End(right).Lean, ref("runs[%d].", i), []term{plus(run.Limits[0], ref("runs[%d].limits[0]", i))}
	t := tip{run: run, right: right, where: either(lean.IsZero(), "", " at its foot")}
	if right {
		t.corner, off = run.Width, []term{plus(run.Width, path+"width"), minus(run.Limits[1], path+"limits[1]")}
	}
	if lean.Sign() == either(right, 1, -1) { // out, beyond its foot
		t.corner, t.where, off = t.corner.Add(lean), " at its top", append(off, term{lean.Abs(), either(right, " + "+path+"right", " - "+path+"left") + ".lean"})
	}
	t.off = c.sum(off...)
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

// section draws the section of what is shown, a thickness of ink deep: put places what lies so far along the run, in ink, and
// so deep behind the face. A mitred end is narrower at the back. The edges of boards show how they meet.
func (c *canvas) section(t tip, thick float64, along func(fraction.Length) float64, put func(along, deep float64) point) {
	path, meets := "", c.joint(thick, t.run.SetOut.Direction)
	through := func(x float64, points ...point) {
		for _, p := range points {
			path += pen(either(path == "", "M", "L"), put(x+real(p), imag(p)))
		}
	}
	edge := func(joint bool, right bool) []point { // from the face to the back
		atEnd := right == t.right
		mitred := t.run.End(t.right).Mitred() && atEnd
		if joint && !mitred && len(meets) > 0 && !(atEnd && (real(meets[1]) > 0) == right) {
			return slices.Clone(meets)
		}
		return []point{complex(either(mitred, either(right, -thick, thick), 0), thick)}
	}
	deep := func(s plan.Stripe) float64 {
		if of := c.plan.Profile.Thickness.Float64(); of > 0 && s.Kind != groove.Flat {
			return max(min(3, thick/3), min(.8, s.Depth.Float64()/of)*thick)
		}
		return 0
	}
	first, last := t.shown[0], t.shown[len(t.shown)-1]
	start := edge(first.Index == 0 && first.Left == t.from, false)
	slices.Reverse(start)
	through(along(t.from), start...)
	for _, s := range t.shown {
		x0, x1, d := along(fraction.Max(s.Left, t.from)), along(fraction.Min(s.Right, t.to)), deep(s)
		through(x0, complex(0, d))
		if s.Kind == groove.Bead { // a round between two quirks
			quirk := min(1.5, (x1-x0)/4)
			path += pen("L", put(x0+quirk, d), "Q", put((x0+x1)/2, -d), " ", put(x1-quirk, d))
		}
		through(x1, complex(0, d))
	}
	through(along(t.to), edge(last.Index == len(c.plan.Profile.Features)-1 && last.Right == t.to, true)...)
	c.stroke("tag", path, "Z")
	for _, s := range t.shown[1:] {
		if path = ""; s.Index == 0 && len(meets) > 0 {
			through(along(s.Left), append([]point{complex(0, deep(s))}, meets...)...)
			c.stroke("edge", path)
		}
	}
}

// joint is the way from the face to the back where two tongued or lapped boards meet, toward the side to which one
// works. A tongue or lap whose length is not known is as long as a third of the thickness; how thick it is no plan says.
func (c *canvas) joint(thick float64, work wall.Direction) []point {
	p, way := c.plan.Profile, thick/3
	if lap := either(p.Lap.IsZero() && !p.Width.IsZero(), p.Width.Sub(p.Pitch), p.Lap); lap.Sign() > 0 && p.Thickness.Sign() > 0 {
		way = lap.Float64() * thick / p.Thickness.Float64()
	}
	switch way = either(work == wall.Left, -way, way); {
	case p.Boards && p.Edges == groove.Tongued:
		return []point{complex(0, thick/3), complex(way, thick/3), complex(way, thick*2/3), complex(0, thick*2/3), complex(0, thick)}
	case p.Boards && p.Edges == groove.Lapped:
		return []point{complex(0, thick/2), complex(way, thick/2), complex(way, thick)}
	}
	return nil
}
