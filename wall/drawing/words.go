package drawing

import (
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// MarkName names a mark of a story pole, such as "panel 3, left".
func MarkName(profile plan.Profile, m plan.Mark) string {
	panel := profile.Word("panel", "board")
	switch m.Kind {
	case plan.PanelsStart:
		return panel + "s start"
	case plan.PanelsStop:
		return panel + "s stop"
	case plan.RepeatStarts:
		return "a repeat starts"
	case plan.PanelLeft:
		return fmt.Sprintf("%s %d, left", panel, m.Panel)
	case plan.PanelRight:
		return fmt.Sprintf("%s %d, right", panel, m.Panel)
	case plan.PanelsMeet:
		return fmt.Sprintf("%s %d and %d", profile.Word("seam of panels", "joint of"), m.Panel, m.Next)
	case plan.InstalledLeft:
		return panel + " on the wall, left"
	case plan.InstalledRight:
		return panel + " on the wall, right"
	case plan.OpeningLeft:
		return m.Opening + ", left"
	case plan.OpeningRight:
		return m.Opening + ", right"
	}
	return m.Kind.String()
}

// CutName names what is seen at an end, such as "whole flat"; nothing where no feature is.
func CutName(tape fraction.Tape, s plan.Shown) string {
	switch s.Width {
	case fraction.Length{}:
		return ""
	case s.Of:
		return "whole " + s.Feature.String()
	}
	return fmt.Sprintf("%s cut to %s of %s", s.Feature, tape.Format(s.Width), tape.Format(s.Of))
}
