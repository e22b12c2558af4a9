package drawing

import (
	"slices"
	"strings"

	"example.com/groovewright/fraction"
)

// marks draws the ticks of the story pole on a line at base, each with what it marks, and returns the
// length of the longest label.
func (e *elevation) marks(base float64) float64 {
	groups := e.places()
	texts := e.texts(groups)
	at := func(group []int) float64 { return e.x(e.run.StoryPole[group[0]].At) }
	from := e.x(e.run.SetOut.From)
	ticks := pen("M", min(at(groups[0]), from), base, "H", max(at(groups[len(groups)-1]), from))
	var stops []stop // one for each line
	for i, group := range groups {
		ticks += pen("M", at(group), base-5, "v10")
		for n, text := range texts[i] {
			stops = append(stops, stop{text: text, ink: at(group), last: n == len(texts[i])-1})
		}
	}
	e.stroke("pole", ticks)
	e.dot("startmark", from, base, 4)
	return e.hang(stops, "", typeSize, 8, e.Width-8, base+markLead, func(s stop) {
		if s.last {
			e.stroke("lead", "M", s.ink, base+5, "L", s.spot, base+markLead-8, "v4")
		}
	})
}

// places are the places on the story pole from left to right: the marks of the plan at each of them.
func (e *elevation) places() (groups [][]int) {
	at := func(i int) fraction.Length { return e.run.StoryPole[i].At }
	var all []int
	for i := range e.run.StoryPole {
		all = append(all, i)
	}
	slices.SortStableFunc(all, func(a, b int) int { return at(a).Compare(at(b)) })
	for _, i := range all {
		if last := len(groups) - 1; last >= 0 && at(groups[last][0]) == at(i) {
			groups[last] = append(groups[last], i)
		} else {
			groups = append(groups, []int{i})
		}
	}
	return groups
}

// poleLines are the lengths of an upright line that are tried, in order of liking: a longer one takes
// fewer lines. The last stands for the distances alone.
var poleLines = []float64{215, 290, 350, 410, 0}

// texts are the upright lines at each place. Where there is no room for all words the distances stand
// alone, and where there is none for every distance only each second, third … is written: the table
// has them all.
func (e *elevation) texts(groups [][]int) [][]line {
	most := int((e.Width-16)/poleGap) + 1
	texts, count := make([][]line, len(groups)), 0
	for _, long := range poleLines {
		count = 0
		for i, group := range groups {
			texts[i] = e.written(group, long)
			count += len(texts[i])
		}
		if count <= most {
			return texts
		}
	}
	every := (count + most - 2) / (most - 1)
	for i := range texts {
		if i%every != 0 && i != len(texts)-1 {
			texts[i] = nil
		}
	}
	return texts
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
	at, start := e.path+ref("story_pole[%d].at", i), e.path+"set_out.from"
	if mark.At.Less(from) {
		return e.sum(plus(from, start), minus(mark.At, at))
	}
	return e.sum(plus(mark.At, at), minus(from, start))
}
