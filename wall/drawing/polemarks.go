package drawing

import (
	"fmt"
	"slices"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// poleMark is one place on the story pole and all that is marked there, in one or
// more upright lines; the last ends with the distance from the start.
type poleMark struct {
	at    fraction.Length
	lines []line
}

// marks draws the ticks of the story pole on a line at base, each with what it
// marks, and returns the length of the longest label.
func (e *elevation) marks(base float64) float64 {
	all := e.poleMarks()
	from := e.x(e.run.SetOut.From)
	lo, hi := min(e.x(all[0].at), from), max(e.x(all[len(all)-1].at), from)
	ticks := fmt.Sprintf("M%s %sH%s", ink(lo), ink(base), ink(hi))
	var wanted []float64 // one for each line
	for _, n := range all {
		ticks += fmt.Sprintf("M%s %sv10", ink(e.x(n.at)), ink(base-5))
		for range n.lines {
			wanted = append(wanted, e.x(n.at))
		}
	}
	e.add("path", "class", "pole", "d", ticks)
	e.add("circle", "class", "startmark", "cx", from, "cy", base, "r", 4)
	spots, deepest := spread(wanted, poleGap, 8, e.Width-8), 0.0
	for _, n := range all {
		for i, text := range n.lines {
			if i == len(n.lines)-1 {
				e.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sL%s %sv4", ink(e.x(n.at)), ink(base+5), ink(spots[0]), ink(base+markLead-8)))
			}
			text.upright(&e.root, "", spots[0], base+markLead, "end")
			deepest = max(deepest, text.width(typeSize))
			spots = spots[1:]
		}
	}
	return deepest
}

// poleLines are the lengths of an upright line that are tried, in order of
// liking: a longer one takes fewer lines.
var poleLines = []float64{215, 290, 350, 410}

// poleMarks are the places of the story pole from left to right. Where there is
// no room for all words the distances stand alone, and where there is none for
// every distance only each second, third … is written: the table has them all.
func (e *elevation) poleMarks() []poleMark {
	var groups [][]int // places in the plan's story pole
	places := make([]int, len(e.run.StoryPole))
	for i := range places {
		places[i] = i
	}
	mark := func(i int) plan.Mark { return e.run.StoryPole[i] }
	slices.SortStableFunc(places, func(a, b int) int { return mark(a).At.Compare(mark(b).At) })
	for _, i := range places {
		if last := len(groups) - 1; last >= 0 && mark(groups[last][0]).At == mark(i).At {
			groups[last] = append(groups[last], i)
		} else {
			groups = append(groups, []int{i})
		}
	}
	most := int((e.Width-16)/poleGap) + 1
	for _, long := range append(poleLines, 0) {
		var all []poleMark
		count := 0
		for _, group := range groups {
			n := poleMark{mark(group[0]).At, e.written(group, long)}
			all, count = append(all, n), count+len(n.lines)
		}
		if count <= most {
			return all
		}
		if long == 0 {
			every := (count + most - 2) / (most - 1)
			for i := range all {
				if i%every != 0 && i != len(all)-1 {
					all[i].lines = nil
				}
			}
			return all
		}
	}
	return nil
}

// written is what stands at one place of the story pole: what is marked there
// and then its distance from the start, in lines of at most that length.
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
			add(space, word(clip(one, long, typeSize), ref("runs[%d].story_pole[%d]", e.index, i)))
			space = " "
		}
	}
	add(": ", e.fromStart(group[0]))
	return append(all, text)
}

// fromStart is the distance of a story-pole mark from the start.
func (e *elevation) fromStart(i int) figure {
	mark, from := e.run.StoryPole[i], e.run.SetOut.From
	path := fmt.Sprintf("runs[%d].", e.index)
	at, start := plus(mark.At, path+ref("story_pole[%d].at", i)), plus(from, path+"set_out.from")
	if mark.At.Less(from) {
		at, start = start, at
	}
	start.minus = true
	return e.sum(at, start)
}
