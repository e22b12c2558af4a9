package wall

import (
	"cmp"
	"reflect"
	"strings"

	"example.com/groovewright/fraction"
)

// Priorities are the weights and least sizes by which layouts are judged, each 0 or more. The zero
// value weighs nothing; [DefaultPriorities] is the usual start. Tags have each field's name in the
// job file, what it is, and the unit where it is not per foot of seen height and inch of flaw. One
// that is 1 or 0 is a hard rule or none.
type Priorities struct {
	ExposedEnd      fraction.Ratio  `json:"exposed_end,omitzero" doc:"a cut feature at an exposed end"`
	OutsideCorner   fraction.Ratio  `json:"outside_corner,omitzero" doc:"a cut feature at an outside corner"`
	StepSide        fraction.Ratio  `json:"step_side,omitzero" doc:"a cut feature at the side of a step"`
	OpeningSide     fraction.Ratio  `json:"opening_side,omitzero" doc:"a cut feature at the side of a window or other opening"`
	BoxSide         fraction.Ratio  `json:"box_side,omitzero" doc:"a cut feature at the side of a box"`
	CoveredEnd      fraction.Ratio  `json:"covered_end,omitzero" doc:"a cut feature at a covered end"`
	InsideCorner    fraction.Ratio  `json:"inside_corner,omitzero" doc:"pattern mismatch at an inside corner"`
	Seam            fraction.Length `json:"seam,omitzero" doc:"a seam counts as a cut feature that is off by so much"`
	SeamLine        fraction.Ratio  `json:"seam_line,omitzero" unit:"per in" doc:"distance from a seam to the nearest seam line"`
	WeakStrip       fraction.Ratio  `json:"weak_strip,omitzero" doc:"a weak strip between a seam and a cutout"`
	LeastStrip      fraction.Length `json:"least_strip,omitzero" doc:"a narrower strip beside a cutout is weak"`
	LeastCorner     fraction.Length `json:"least_corner,omitzero" doc:"a piece with less material behind a sharp inside corner is weak there"`
	LegRatio        fraction.Ratio  `json:"leg_ratio,omitzero" unit:"widths" doc:"a longer leg of a piece is weak"`
	LeastCover      fraction.Length `json:"least_cover,omitzero" doc:"a cover plate that overlaps its cutout by less is doubted"`
	WholeEnd        fraction.Ratio  `json:"whole_end,omitzero" unit:"1 or 0" doc:"1: a run's only exposed end stops on a whole feature, whatever else it costs"`
	BoxClear        fraction.Length `json:"box_clear,omitzero" doc:"least distance from a seam to a box's side"`
	LeastPanel      fraction.Ratio  `json:"least_panel,omitzero" unit:"pitches" doc:"a narrower panel is made only if forced; of plain sheets, times the least strip"`
	HeightJump      fraction.Length `json:"height_jump,omitzero" doc:"a height which is off by more is doubted"`
	TrimMargin      fraction.Length `json:"trim_margin,omitzero" doc:"how much of what a trim covers stays beyond the edge that is cut level behind it"`
	BoxDifference   fraction.Length `json:"box_difference,omitzero" doc:"boxes of one kind which differ by more are doubted"`
	OutOfPlumb      fraction.Length `json:"out_of_plumb,omitzero" doc:"an end which leans more is doubted"`
	StationDistance fraction.Length `json:"station_distance,omitzero" doc:"stations farther apart are doubted"`
}

// Priority describes one field of [Priorities] for reading and printing.
type Priority struct {
	Name        string // as in the job file
	Unit        string // of Value, such as "in" or "per ft and in"
	Description string // what it weighs or bounds
	Value       fraction.Ratio
}

// List returns every priority in the order in which it is printed.
func (p Priorities) List() []Priority {
	v := reflect.ValueOf(p)
	list := make([]Priority, v.NumField())
	for i := range list {
		tag := v.Type().Field(i).Tag
		name, _, _ := strings.Cut(tag.Get("json"), ",")
		list[i] = Priority{Name: name, Unit: cmp.Or(tag.Get("unit"), "per ft and in"), Description: tag.Get("doc")}
		switch x := v.Field(i).Interface().(type) {
		case fraction.Ratio:
			list[i].Value = x
		case fraction.Length:
			list[i].Value, list[i].Unit = x.Over(inch), "in"
		}
	}
	return list
}

// DefaultPriorities returns the usual weights and least sizes of a room that is taped in these
// units: common practice, no source. In mm and cm the sizes at which the survey and the pieces are
// doubted are round ones, near to those in inches; what a seam counts and how clear of a box it
// stays are the same, as they decide which layout is best.
func DefaultPriorities(units fraction.Unit) Priorities {
	p := Priorities{
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
		TrimMargin:      fraction.Of(1, 4),
		BoxDifference:   fraction.Of(1, 8),
		OutOfPlumb:      fraction.Of(1, 4),
		StationDistance: fraction.Inches(48),
	}
	if units != fraction.Inch {
		p.LeastStrip, p.LeastCorner, p.LeastCover = fraction.Millimetres(20, 1), fraction.Millimetres(40, 1), fraction.Millimetres(3, 1)
		p.TrimMargin = fraction.Millimetres(6, 1)
		p.HeightJump, p.BoxDifference = fraction.Millimetres(25, 1), fraction.Millimetres(3, 1)
		p.OutOfPlumb, p.StationDistance = fraction.Millimetres(6, 1), fraction.Millimetres(1200, 1)
	}
	return p
}

// Narrowest returns the least width of a panel that is not forced: least_panel times the pitch, or
// on plain sheets, which have none, times least_strip.
func (room *Room) Narrowest() fraction.Length {
	unit := room.Profile.Pitch()
	if unit.IsZero() {
		unit = room.Priorities.LeastStrip
	}
	return unit.Scale(room.Priorities.LeastPanel)
}
