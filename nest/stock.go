package nest

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
)

// Stock is one kind of sheet (or board, or offcut) that parts may be cut from, as it comes: Width
// across the grooves and Length along them, with its factory ends. A Price that is not known counts
// as 0 in a nest. The saw's SquareUp is not taken off Squared stock.
type Stock struct {
	Name      string          `json:"name"`
	Width     fraction.Length `json:"width" doc:"Across the grooves."`
	Length    fraction.Length `json:"length" doc:"Along the grooves, as it is sold."`
	LeftPhase fraction.Length `json:"left_phase" file:"optional" doc:"How far the left edge lies to the right of the start of a repeat."`
	Count     *int            `json:"count,omitempty" doc:"How many there are, on hand unless they have a price; as many as needed unless given."`
	Price     money.Amount    `json:"price,omitzero" doc:"Of one."`
	Squared   bool            `json:"squared,omitzero" doc:"Whether both ends are square already and are not trimmed."`
}

// OnHand reports whether it is there already: it has a count, and no price or one of 0. What has both is bought, and there is no
// more of it.
func (s Stock) OnHand() bool {
	price, _ := s.Price.Ratio()
	return s.Count != nil && price.IsZero()
}

// Usable returns the length that is left when both ends have been squared up, at least 0.
func (s Stock) Usable(saw Saw) (left fraction.Length) {
	var fine error // the two lengths have no common mark
	defer fraction.Catch(&fine)
	return fraction.Max(s.Length.Sub(s.trim(saw)).Sub(s.trim(saw)), left)
}

// trim returns what is taken off each end.
func (s *Stock) trim(saw Saw) fraction.Length {
	if s.Squared {
		return fraction.Length{}
	}
	return saw.SquareUp
}

// price returns the price of one, 0 where it is not known or has not passed [Problem.Validate].
func (s *Stock) price() fraction.Ratio {
	price, _ := s.Price.Ratio()
	return price
}

// Pattern is what nest needs to know of a profile: how often it repeats and whether a part may be
// turned end for end.
type Pattern struct {
	Pitch    fraction.Length `json:"pitch"`    // one repeat; 0: nothing to match, no phase is read
	Mirrored bool            `json:"mirrored"` // the repeat is its own mirror image about Axis
	Axis     fraction.Length `json:"axis"`     // phase of an axis, read only if Mirrored
}

// PatternOf returns what nesting needs to know of a profile. A part may be turned where the profile
// allows it, see [groove.Profile.Turns].
func PatternOf(p groove.Profile) Pattern {
	pattern := Pattern{Pitch: p.Pitch()}
	if p.Turns() {
		pattern.Axis, pattern.Mirrored = p.Mirror()
	}
	return pattern
}

// Part is one rectangle to be cut, Width across the grooves and Height along them. Its left edge
// must lie where the sheet shows LeftPhase.
type Part struct {
	Number    int             `json:"number"` // how the caller knows it; no two parts share one
	Width     fraction.Length `json:"width"`
	Height    fraction.Length `json:"height"`
	LeftPhase fraction.Length `json:"left_phase"`
}

// Saw is the width of the blade's cut, what comes off both factory ends of a sheet's length before
// anything else, the blade included, and what a cut takes off less of, the blade included, is planed
// off. All default to 0.
type Saw struct {
	Kerf     fraction.Length `json:"kerf"`
	SquareUp fraction.Length `json:"square_up"`
	LeastRip fraction.Length `json:"least_rip"`
}

// Problem is a whole job of nesting.
type Problem struct {
	Stock   []Stock `json:"stock"`
	Parts   []Part  `json:"parts"`
	Pattern Pattern `json:"pattern"`
	Saw     Saw     `json:"saw"`
}
