package drawing

import (
	"slices"
	"strings"

	"example.com/groovewright/fraction"
)

// poleMark is one place on the story pole and all that is marked there, in one or more upright
// lines; the last ends with the distance from the start.
type poleMark struct {
	at    fraction.Length
	lines []line
}

// marks draws the ticks of the story pole on a line at base, each with what it marks, and returns
// the length of the longest label.
func (e *elevation) marks(base float64) float64 {
	all := e.poleMarks()
	from := e.x(e.run.SetOut.From)
	ticks := pen("M", min(e.x(all[0].at), from), base, "H", max(e.x(all[len(all)-1].at), from))
	var stops []stop // one for each line
	for _, n := range all {
		ticks += pen("M", e.x(n.at), base-5, "v10")
		for _, text := range n.lines {
			stops = append(stops, stop{text: text, ink: e.x(n.at)})
		}
	}
	e.stroke("pole", ticks)
	e.dot("startmark", from, base, 4)
	deepest := 0.0
	stops = spreadStops(stops, poleGap, 8, e.Width-8)
	for _, n := range all {
		for i := range n.lines {
			s := stops[0]
			if i == len(n.lines)-1 {
				e.stroke("lead", "M", s.ink, base+5, "L", s.spot, base+markLead-8, "v4")
			}
			s.text.upright(&e.node, "", s.spot, base+markLead, "end")
			deepest = max(deepest, s.text.width(typeSize))
			stops = stops[1:]
		}
	}
	return deepest
}

// poleLines are the lengths of an upright line that are tried, in order of liking: a longer one takes
// fewer lines. The last stands for the distances alone.
var poleLines = []float64{215, 290, 350, 410, 0}

// poleMarks are the places of the story pole from left to right. Where there is no room for all words
// the distances stand alone, and where there is none for every distance only each second, third … is
// written: the table has them all.
func (e *elevation) poleMarks() []poleMark {
	at := func(i int) fraction.Length { return e.run.StoryPole[i].At }
	places := make([]int, len(e.run.StoryPole))
	for i := range places {
		places[i] = i
	}
	slices.SortStableFunc(places, func(a, b int) int { return at(a).Compare(at(b)) })
	var groups [][]int // of places in the plan's story pole
	for _, i := range places {
		if last := len(groups) - 1; last >= 0 && at(groups[last][0]) == at(i) {
			groups[last] = append(groups[last], i)
		} else {
			groups = append(groups, []int{i})
		}
	}
	most := int((e.Width-16)/poleGap) + 1
	var all []poleMark
	count := 0
	for _, long := range poleLines {
		all, count = nil, 0
		for _, group := range groups {
			n := poleMark{at(group[0]), e.written(group, long)}
			all, count = append(all, n), count+len(n.lines)
		}
		if count <= most {
			return all
		}
	}
	every := (count + most - 2) / (most - 1)
	for i := range all {
		if i%every != 0 && i != len(all)-1 {
			all[i].lines = nil
		}
	}
	return all
}

// written is what stands at one place of the story pole: what is marked there and then its distance
// from the start, in lines of at most that length.
func (e *elevation) written(group []int, long float64) []line {
	if long == 0 {
		return []line{{e.fromStart(group[0])}}
	}
	var all []line
	var text line
	add := func(space string, f figure) {
		switch longer := append(slices.Clone(text), space, f); {
		case len(text) == 0:
			text = line{f}
		case longer.width(typeSize) > long:
			all, text = append(all, text), line{f}
		default:
			if last, ok := text[len(text)-1].(figure); ok && last.from == f.from {
				longer = append(slices.Clone(text[:len(text)-1]), word(last.text+space+f.text, f.from))
			}
			text = longer
		}
	}
	for n, i := range group {
		space := " "
		if n > 0 {
			space = "; "
		}
		for _, one := range strings.Fields(MarkName(e.plan.Profile, e.run.StoryPole[i])) {
			add(space, word(clip(one, long, typeSize), e.path+ref("story_pole[%d]", i)))
			space = " "
		}
	}
	add(": ", e.fromStart(group[0]))
	return append(all, text)
}

// fromStart is the distance of a story-pole mark from the start.
func (e *elevation) fromStart(i int) figure {
	mark, from := e.run.StoryPole[i], e.run.SetOut.From
	at, start := plus(mark.At, e.path+ref("story_pole[%d].at", i)), plus(from, e.path+"set_out.from")
	if mark.At.Less(from) {
		at, start = start, at
	}
	start.minus = true
	return e.sum(at, start)
}
