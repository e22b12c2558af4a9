package drawing

import (
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

const (
	cornerScale = perInch / 2 // ink to the inch: 1 to 2
	cornerLeg   = 150.0       // ink of either wall that is shown
)

// Corner draws the corner at the right end of run i of a plan from above, at half its size: both
// walls with the section of their panels, which one passes, how far each stays from the corner and
// what is seen beside it. A run without a shared corner there has none.
func Corner(p plan.Plan, i int) (Picture, error) {
	return draw(halfInk, fault.Of("Runs"), i, len(p.Runs), func(float64) *Picture {
		run, letter := p.Runs[i], CornerLetter(p, i)
		if letter == "" {
			return nil
		}
		c := run.CornerRight
		n := (i + 1) % len(p.Runs)
		next := p.Runs[n]
		d := newCanvas(p, halfInk, ref("corner-%d", i+1), fmt.Sprintf("Corner %s, between %s and %s, from above", letter, run.Name, next.Name))
		d.scale = cornerScale
		thick := p.Profile.Thickness.Float64() * d.scale
		bend, at := 1.0, complex(d.Width/2+cornerLeg/2, 40)
		if c.Kind == wall.OutsideCorner {
			bend, at = -1, complex(d.Width/2+cornerLeg/2-thick, 34+cornerLeg)
		}
		most := fraction.Of((cornerLeg-30)*64/cornerScale, 64)
		legs := []struct {
			course
			tip
			from, to float64 // ink of the wall, from the corner
		}{
			{course{along: 1, start: at}, d.tip(i, true, most), -cornerLeg, max(0, bend) * 2 * wallInk},
			{course{along: complex(0, bend), start: at}, d.tip(n, false, most), -max(0, bend) * 2 * wallInk, cornerLeg},
		}
		for n, leg := range legs {
			d.add("path", "fill", d.hatch("wall", "hatch", 5, 45), "d", leg.band(leg.from, leg.to, -2*wallInk, leg.from, leg.to))
			d.stroke("edge", leg.line(complex([]float64{leg.from, 0}[n], 0), complex([]float64{0, leg.to}[n], 0)))
		}
		for n, leg := range legs {
			if len(leg.shown) == 0 {
				continue
			}
			corner := []fraction.Length{run.Width, {}}[n]
			d.section(leg.tip, thick, func(x fraction.Length) float64 { return x.Sub(corner).Float64() * d.scale },
				func(along, deep float64) complex128 { return leg.course.at(along, thick-deep) })
		}
		y := 52 + cornerLeg
		line{"Corner ", counted(letter), ", from above: ", figure{c.Kind.String(), ref("runs[%d].corner_right.kind", i)}}.write(&d.node, "bold", d.Width/2, 15, "middle")
		write := func(class string, lines ...line) {
			for _, l := range lines {
				l.write(&d.node, class, 8, y, "start")
				y += laneHigh
			}
		}
		gaps := []figure{d.sum(plus(run.Width, ref("runs[%d].width", i)), minus(run.Limits[1], ref("runs[%d].limits[1]", i))), d.length(next.Limits[0], ref("runs[%d].limits[0]", n))}
		cuts := []figure{{CutName(d.tape, run.Right.Cut), ref("runs[%d].right.cut", i)}, {CutName(d.tape, next.Left.Cut), ref("runs[%d].left.cut", n)}}
		ways := map[bool][]string{false: {"left: ", "upward: "}, true: {"left: ", "downward: "}}[bend > 0]
		for k, leg := range legs {
			said := line{"butts, starts off the corner by ", gaps[k]}
			if c.Mitred() {
				said = line{"mitered"}
			} else if c.Passes == leg.tip.run.Name {
				said = line{"passes, stays off the corner by ", gaps[k]}
			}
			write("bold", line{ways[k], figure{clip(leg.tip.run.Name, d.Width-120, typeSize), ref("runs[%d].name", []int{i, n}[k])}})
			write("", said)
			if cuts[k].text != "" {
				write("", line{"seen: ", cuts[k]})
			}
		}
		if !c.Mismatch.IsZero() {
			write("", line{"the pattern is out of step by ", d.length(c.Mismatch, ref("runs[%d].corner_right.mismatch", i))})
		}
		d.desc("%s and %s; %s passes.", run.Name, next.Name, c.Passes)
		d.Height = d.block(d.bar(y), line{"Corner ", counted(letter)})
		return d.Picture
	})
}
