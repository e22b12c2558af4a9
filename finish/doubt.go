package finish

import (
	"math/big"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
)

// What [TakeOff] doubts. Lengths are rounded up to a 64th of an inch or a hundredth of a millimetre
// where they are not exact.
const (
	// ThicknessUnknown: the profile has no thickness, so that nails, extenders, edges and filled gaps are those of a skin.
	ThicknessUnknown warning.Kind = "thickness unknown"
	// WideGap: a bead should not close so wide a gap. Names: run, kind of joint. Lengths: gap, widest that a bead closes.
	WideGap warning.Kind = "wide gap"
	// PanelNailShort: no nail on the list is long enough for panels. Lengths: needed, of this in the stud.
	PanelNailShort warning.Kind = "panel nail short"
	// StripNailShort: no nail on the list is long enough for furring strips. Lengths: needed, of this in the stud.
	StripNailShort warning.Kind = "strip nail short"
	// BoardNailShort: no nail on the list is long enough for boards. Lengths: in the support.
	BoardNailShort warning.Kind = "board nail short"
	// NailNearCables: a nail goes as deep as a cable may lie. Lengths: nail, its depth in the stud, depth of cables.
	NailNearCables warning.Kind = "nail near cables"
	// StripsBehindSheets: furring strips are counted behind boards only.
	StripsBehindSheets warning.Kind = "strips behind sheets"
	// BoxTooDeep: no extender on the list reaches so far. Names: box. Lengths: how far its front lies behind the face.
	BoxTooDeep warning.Kind = "box too deep"
	// ScrewShort: no screw on the list is long enough. Names: box. Lengths: needed.
	ScrewShort warning.Kind = "screw short"
	// TrimJoint: a trim is longer than a strip and gets a joint. Names: run.
	TrimJoint warning.Kind = "trim joint"
)

// Doubts returns every kind of warning that TakeOff raises.
func Doubts() []warning.Kind {
	return []warning.Kind{ThicknessUnknown, WideGap, PanelNailShort, StripNailShort, BoardNailShort, NailNearCables, StripsBehindSheets,
		BoxTooDeep, ScrewShort, TrimJoint}
}

// warn adds a warning; path is that of the field in a job, or empty.
func (b *builder) warn(kind warning.Kind, path string, names []string, lengths ...*big.Rat) {
	w := warning.Warning{Path: steps(path), Kind: kind, Names: names}
	for _, l := range lengths {
		w.Lengths = append(w.Lengths, b.length(l))
	}
	b.doubts = append(b.doubts, w)
}

// length returns x as a length: exactly where it fits, else rounded up as it is written.
func (b *builder) length(x *big.Rat) fraction.Length {
	if !x.Num().IsInt64() || !x.Denom().IsInt64() {
		x = roundUp(x, 2)
	}
	if !x.Num().IsInt64() {
		return maxLength
	}
	return fraction.Of(x.Num().Int64(), x.Denom().Int64())
}
