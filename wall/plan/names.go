package plan

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// markWords are the words for the marks of a story pole.
var markWords = map[MarkKind]string{
	PanelsStart:    "left end of {panel}s",
	PanelsStop:     "right end of {panel}s",
	RepeatStarts:   "a repeat starts",
	PanelLeft:      "{panel} {number}, left",
	PanelRight:     "{panel} {number}, right",
	PanelsMeet:     "{seam} {number} and {next}",
	InstalledLeft:  "{panel} on the wall, left",
	InstalledRight: "{panel} on the wall, right",
	InstalledMeet:  " of {panel} {number} and one on the wall",
	OpeningLeft:    "{opening}, left",
	OpeningRight:   "{opening}, right",
}

// Name names a mark of a story pole for reading, such as "panel 3, left".
func (m Mark) Name(profile Profile) string {
	words := cmp.Or(markWords[m.Kind], m.Kind.String())
	if m.Kind == InstalledMeet {
		if m.Panel == 0 {
			words = " of two on the wall"
		}
		words = profile.Word("seam", "joint") + words
	}
	for _, fact := range [][2]string{{"{panel}", profile.Word("panel", "board")}, {"{seam}", profile.Word("seam of panels", "joint of")},
		{"{number}", strconv.Itoa(m.Panel)}, {"{next}", strconv.Itoa(m.Next)}, {"{opening}", m.Opening}} { // what has braces itself is the last
		words = strings.ReplaceAll(words, fact[0], fact[1])
	}
	return words
}

// Name names what is seen at an end for reading, such as "whole flat", its lengths as a tape writes them; nothing
// where no feature is.
func (s Shown) Name(tape fraction.Tape) string {
	var across []string
	for _, k := range s.Across {
		across = append(across, k.String())
	}
	cut := fmt.Sprintf("to %s of %s", tape.Format(s.Width), tape.Format(s.Of))
	switch n := len(across); {
	case n == 1 && s.Feature == groove.Flat:
		return "flat cut aslant, " + cut + " at its narrowest"
	case n == 1:
		return across[0] + " cut aslant"
	case n > 1:
		return strings.Join(across[:n-1], ", ") + " and " + across[n-1] + " cut aslant"
	case s.Width.IsZero():
		return ""
	case s.Width == s.Of && s.Feature == groove.Groove:
		return "open groove"
	case s.Width == s.Of:
		return "whole " + s.Feature.String()
	}
	return s.Feature.String() + " cut " + cut
}
