package finish

import (
	"math/big"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
)

// What [TakeOff] doubts. Short means that nothing on the list is long enough.
const (
	// The profile has no thickness, so that nails, extenders, edges and filled gaps are those of a
	// skin.
	ThicknessUnknown warning.Kind = "thickness unknown"
	// Names: run, joint; Lengths: gap, widest for a bead.
	WideGap        warning.Kind = "wide gap"
	PanelNailShort warning.Kind = "panel nail short" // Lengths: needed, of this in the stud
	StripNailShort warning.Kind = "strip nail short" // Lengths: needed, of this in the stud
	BoardNailShort warning.Kind = "board nail short" // Lengths: in the support
	// Lengths: the nail, how deep it goes, how deep cables lie.
	NailNearCables warning.Kind = "nail near cables"
	// The strips bring faces forward at corners, but the runs are planned as taped. Lengths: their
	// thickness.
	StripsNotTakenOff warning.Kind = "strips not taken off"
	// Masonry takes no nails, and there is neither adhesive nor a strip.
	NothingHolds warning.Kind = "nothing holds"
	// Seams of fiberboard without the gap that its trade body asks for. Lengths: the gap, that gap.
	SeamTight warning.Kind = "seam tight"
	// Names: box; Lengths: how far its front lies behind the face.
	BoxTooDeep warning.Kind = "box too deep"
	ScrewShort warning.Kind = "screw short" // Names: box; Lengths: needed
	TrimJoint  warning.Kind = "trim joint"  // Names: run, end; longer than a strip
)

// warn adds a warning; path is that of the field in a job, or nil.
func (b *builder) warn(kind warning.Kind, path fault.Path, names []string, lengths ...*big.Rat) {
	w := warning.Warning{Path: path, Kind: kind, Names: names}
	for _, l := range lengths {
		w.Lengths = append(w.Lengths, b.length(l))
	}
	b.doubts = append(b.doubts, w)
}

// length returns x as a length: exactly where it fits, else rounded up as it is written.
func (b *builder) length(x *big.Rat) fraction.Length {
	if !x.Num().IsInt64() || !x.Denom().IsInt64() {
		x = roundUp(x, hundredths)
	}
	if !x.Num().IsInt64() {
		return maxLength
	}
	return fraction.Of(x.Num().Int64(), x.Denom().Int64())
}
