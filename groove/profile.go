package groove

import (
	"strconv"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/fraction/fault"
)

// Kind is what a feature looks like across the grain of the pattern. The zero value is a flat.
type Kind uint8

// The kinds of features.
const (
	Flat   Kind = iota // lies in the face
	Bead               // half-round moulding
	Groove             // cut into the face
)

var kinds = enum.Of[Kind]("flat", "bead", "groove")

// String returns "flat", "bead" or "groove".
func (k Kind) String() string { return kinds.String(k) }

// MarshalText writes the word of the kind, and fails where it has none.
func (k Kind) MarshalText() ([]byte, error) { return kinds.Marshal(k) }

// UnmarshalText reads "flat", "bead" or "groove".
func (k *Kind) UnmarshalText(text []byte) error { return kinds.Unmarshal(text, k) }

// Feature is one flat, bead or groove of a repeat. Width is above 0. Depth is 0 where it is not
// known, and for a flat.
type Feature struct {
	Kind  Kind            `json:"kind"`
	Width fraction.Length `json:"width" doc:"Across the grooves."`
	Depth fraction.Length `json:"depth,omitzero" doc:"Of a groove below the face, of a bead from its quirk to its crown."`
}

// Profile is one repeat, left to right, of the features that a sheet repeats across its width. One
// without features is plain: its pitch is 0, and so is every phase. The zero value is that.
type Profile struct {
	Name      string          `json:"name,omitempty"`
	Features  []Feature       `json:"features" doc:"One repeat, left to right; none: a plain sheet."`
	Thickness fraction.Length `json:"thickness" doc:"Of the sheet."` // 0 if it does not matter
	WideFlats bool            `json:"wide_flats,omitempty" doc:"Whether a cut flat is judged by how much of it is left, as of a plank."`
	Boards    bool            `json:"boards,omitempty" doc:"Whether each repeat is a board of its own, whose joints are the pattern."`

	// What it is as a thing that is sold. The planner lays out what shows; a stock of boards is as
	// wide as that.
	Cover   fraction.Length   `json:"cover,omitzero" doc:"How much of the wall one sheet or board covers; of boards the repeat."`
	Width   fraction.Length   `json:"width,omitzero" doc:"Overall width as bought, with its tongue or lap."`
	Edges   Edges             `json:"edges,omitzero" doc:"How the long edges meet those of the next."`
	Tongue  Tongue            `json:"tongue,omitzero" doc:"The side of the tongue, face up and the first feature at the left."`
	Lap     fraction.Length   `json:"lap,omitzero" doc:"How far it lies behind or over the next: the width less the cover."`
	Lengths []fraction.Length `json:"lengths,omitempty" doc:"As it is usually sold."`
	Status  Status            `json:"status,omitzero" doc:"What stands behind pitch and cover."`
	Source  string            `json:"source,omitempty" doc:"Where the figures come from."`
}

// MaxFeatures is the greatest number of features in a repeat.
const MaxFeatures = 200

// Validate returns nil, or everything that is wrong as *fault.Fault values, joined in the order of
// the fields: too many features, or none of boards, an unknown kind, a width that is not positive, a
// negative depth or thickness, a depth beyond a known thickness, a flat with a depth, sizes, edges
// and tongue that do not go together; else widths whose sum, or half of it, does not fit a Length.
func (p Profile) Validate() error {
	var faults fault.List
	if n := len(p.Features); n > MaxFeatures {
		faults.Add(n, "at most "+strconv.Itoa(MaxFeatures)+" features", "Features")
	} else if n == 0 && p.Boards {
		faults.Add(n, "the features of a board", "Features")
	}
	for i, f := range p.Features {
		if int(f.Kind) >= len(kinds) {
			faults.Add(f.Kind, kinds.Want(), "Features", i, "Kind")
		}
		if f.Width.Sign() <= 0 {
			faults.Add(f.Width, "a width above 0", "Features", i, "Width")
		}
		switch {
		case f.Depth.Sign() < 0:
			faults.Add(f.Depth, "a depth of 0 or more", "Features", i, "Depth")
		case f.Kind == Flat && f.Depth.Sign() > 0:
			faults.Add(f.Depth, "no depth of a flat; leave it out or make it a groove", "Features", i, "Depth")
		case p.Thickness.Sign() > 0 && p.Thickness.Less(f.Depth):
			faults.Add(f.Depth, "no more than the thickness of the sheet", "Features", i, "Depth")
		}
	}
	if p.Thickness.Sign() < 0 {
		faults.Add(p.Thickness, "a thickness of 0 or more", "Thickness")
	}
	p.sold(&faults)
	if err := faults.Err(); err != nil {
		return err
	}
	return fault.Under(p.fits(), "Features")
}

// fits returns the overflow of the sums that the methods take for granted.
func (p Profile) fits() (err error) {
	defer fraction.Catch(&err)
	p.mirror()
	return nil
}

// Pitch returns the width of one repeat: the sum of its features. It is 0 of a plain sheet, and
// where that does not fit a Length, which [Profile.Validate] refuses.
func (p Profile) Pitch() (pitch fraction.Length) {
	var err error
	defer fraction.Catch(&err)
	return p.pitch()
}

func (p Profile) pitch() (pitch fraction.Length) {
	for _, f := range p.Features {
		pitch = pitch.Add(f.Width)
	}
	return pitch
}

// Boundaries returns where the features of a repeat start, in increasing order from 0. There are
// none where they do not fit a Length, which [Profile.Validate] refuses.
func (p Profile) Boundaries() (starts []fraction.Length) {
	var err error
	defer fraction.Catch(&err)
	at := make([]fraction.Length, len(p.Features))
	for i := 1; i < len(at); i++ {
		at[i] = at[i-1].Add(p.Features[i-1].Width)
	}
	return at
}

// SeamLines returns the boundaries beside a groove or a bead, in increasing order: where a seam
// hides in the shadow. There are none on a profile that is all flats.
func (p Profile) SeamLines() []fraction.Length {
	var lines []fraction.Length
	for i, start := range p.Boundaries() {
		if p.hides(i) {
			lines = append(lines, start)
		}
	}
	return lines
}

// hides reports whether the boundary at the start of feature i lies beside a groove or a bead.
func (p Profile) hides(i int) bool { return p.Features[i].Kind != Flat || p.before(i).Kind != Flat }

// before returns the feature to the left of feature i, going round the repeat.
func (p Profile) before(i int) Feature { return p.Features[(i+len(p.Features)-1)%len(p.Features)] }
