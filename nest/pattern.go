package nest

import "example.com/groovewright/groove"

// PatternOf returns what nesting needs to know of a profile. A part may be
// turned where the profile allows it, see [groove.Profile.Turns].
func PatternOf(p groove.Profile) Pattern {
	pattern := Pattern{Pitch: p.Pitch()}
	if p.Turns() {
		pattern.Axis, pattern.Mirrored = p.Mirror()
	}
	return pattern
}
