package wall

import "example.com/groovewright/fraction"

// Priorities are the weights and least sizes by which layouts are judged. The zero value weighs
// nothing; [DefaultPriorities] is the usual start.
//
// The weights of upright edges count per foot of height and inch of cut.
type Priorities struct {
	ExposedEnd    fraction.Ratio // an exposed end
	OutsideCorner fraction.Ratio // an outside corner
	StepSide      fraction.Ratio // the upright side of a step
	OpeningSide   fraction.Ratio // the side of a window or another opening
	BoxSide       fraction.Ratio // the side of a box, under its cover plate
	CoveredEnd    fraction.Ratio // an end hidden by trim
	InsideCorner  fraction.Ratio // pattern mismatch at an inside corner, per foot and inch

	Seam     fraction.Length // what a seam counts as, per foot of seen height
	SeamLine fraction.Ratio  // per inch between a seam and the nearest seam line

	WeakStrip  fraction.Ratio  // per foot of height and inch that a strip beside a seam is too narrow
	LeastStrip fraction.Length // the least width of a strip that does not count as weak

	LeastCorner fraction.Length // least material behind a sharp inside corner of a piece
	LegRatio    fraction.Ratio  // greatest length of a leg of a piece, in widths
	LeastCover  fraction.Length // least overlap of a cover plate on each side of its cutout

	// WholeEnd makes it a hard rule, unless it is zero, that an exposed end which is the only one
	// of its run stops on a whole feature.
	WholeEnd fraction.Ratio

	BoxClear   fraction.Length // least distance from a seam to a box's side
	LeastPanel fraction.Ratio  // least width of a panel, in pitches

	HeightJump      fraction.Length // survey: heights which differ by more without a step are doubted
	BoxDifference   fraction.Length // survey: like boxes which differ by more are doubted
	OutOfPlumb      fraction.Length // survey: an end which leans more is doubted
	StationDistance fraction.Length // survey: stations farther apart are doubted
}

// Priority describes one field of [Priorities] for reading and printing. One of Weight and Size
// returns a pointer to the field, the other is nil.
type Priority struct {
	Name   string // as in the job file
	Unit   string
	Says   string
	Weight func(*Priorities) *fraction.Ratio
	Size   func(*Priorities) *fraction.Length
}

// PriorityList returns every priority in the order in which it is printed.
func PriorityList() []Priority {
	weight := func(name, unit, says string, f func(*Priorities) *fraction.Ratio) Priority {
		return Priority{Name: name, Unit: unit, Says: says, Weight: f}
	}
	size := func(name, says string, f func(*Priorities) *fraction.Length) Priority {
		return Priority{Name: name, Unit: "in", Says: says, Size: f}
	}
	const cut = "per ft and in"
	return []Priority{
		weight("exposed_end", cut, "a cut feature at an exposed end", func(p *Priorities) *fraction.Ratio { return &p.ExposedEnd }),
		weight("outside_corner", cut, "a cut feature at an outside corner", func(p *Priorities) *fraction.Ratio { return &p.OutsideCorner }),
		weight("step_side", cut, "a cut feature at the side of a step", func(p *Priorities) *fraction.Ratio { return &p.StepSide }),
		weight("opening_side", cut, "a cut feature at the side of a window or other opening", func(p *Priorities) *fraction.Ratio { return &p.OpeningSide }),
		weight("box_side", cut, "a cut feature at the side of a box", func(p *Priorities) *fraction.Ratio { return &p.BoxSide }),
		weight("covered_end", cut, "a cut feature at a covered end", func(p *Priorities) *fraction.Ratio { return &p.CoveredEnd }),
		weight("inside_corner", cut, "pattern mismatch at an inside corner", func(p *Priorities) *fraction.Ratio { return &p.InsideCorner }),
		size("seam", "what a seam counts as, per ft of seen height", func(p *Priorities) *fraction.Length { return &p.Seam }),
		weight("seam_line", "per in", "distance from a seam to the nearest seam line", func(p *Priorities) *fraction.Ratio { return &p.SeamLine }),
		weight("weak_strip", cut, "a strip beside a seam narrower than least_strip", func(p *Priorities) *fraction.Ratio { return &p.WeakStrip }),
		size("least_strip", "a narrower strip beside a cutout is weak", func(p *Priorities) *fraction.Length { return &p.LeastStrip }),
		size("least_corner", "a piece with less material behind a sharp inside corner is weak there", func(p *Priorities) *fraction.Length { return &p.LeastCorner }),
		weight("leg_ratio", "widths", "a longer leg of a piece is weak", func(p *Priorities) *fraction.Ratio { return &p.LegRatio }),
		size("least_cover", "a cover plate that overlaps its cutout by less is doubted", func(p *Priorities) *fraction.Length { return &p.LeastCover }),
		weight("whole_end", "1 or 0", "1: a run's only exposed end stops on a whole feature, whatever else it costs", func(p *Priorities) *fraction.Ratio { return &p.WholeEnd }),
		size("box_clear", "least distance from a seam to a box's side", func(p *Priorities) *fraction.Length { return &p.BoxClear }),
		weight("least_panel", "pitches", "a narrower panel is made only if forced", func(p *Priorities) *fraction.Ratio { return &p.LeastPanel }),
		size("height_jump", "heights which differ by more without a step are doubted", func(p *Priorities) *fraction.Length { return &p.HeightJump }),
		size("box_difference", "boxes of one kind which differ by more are doubted", func(p *Priorities) *fraction.Length { return &p.BoxDifference }),
		size("out_of_plumb", "an end which leans more is doubted", func(p *Priorities) *fraction.Length { return &p.OutOfPlumb }),
		size("station_distance", "stations farther apart are doubted", func(p *Priorities) *fraction.Length { return &p.StationDistance }),
	}
}

// DefaultPriorities returns the usual weights and least sizes. Where no other source is named they
// are common practice, no source.
func DefaultPriorities() Priorities {
	return Priorities{
		ExposedEnd:      fraction.NewRatio(8, 1),
		OutsideCorner:   fraction.NewRatio(4, 1),
		StepSide:        fraction.NewRatio(3, 1),
		OpeningSide:     fraction.NewRatio(2, 1),
		InsideCorner:    fraction.NewRatio(1, 1),
		Seam:            fraction.Of(1, 8),
		SeamLine:        fraction.NewRatio(8, 1),
		WeakStrip:       fraction.NewRatio(1, 1),
		LeastStrip:      fraction.Of(3, 4),
		LeastCorner:     fraction.Of(3, 2),
		LegRatio:        fraction.NewRatio(8, 1),
		LeastCover:      fraction.Of(1, 8),
		WholeEnd:        fraction.NewRatio(1, 1),
		BoxClear:        fraction.Inches(1),
		LeastPanel:      fraction.NewRatio(2, 1),
		HeightJump:      fraction.Inches(1),
		BoxDifference:   fraction.Of(1, 8),
		OutOfPlumb:      fraction.Of(1, 4),
		StationDistance: fraction.Inches(48),
	}
}
