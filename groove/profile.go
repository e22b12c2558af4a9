package groove

import (
	"strconv"
	"strings"

	"example.com/groovewright/fraction"
)

// Kind is what a feature looks like across the grain of the pattern. The zero value is a flat.
type Kind int

const (
	Flat   Kind = iota // lies in the face
	Bead               // half-round moulding
	Groove             // cut into the face
)

var kinds = [...]string{Flat: "flat", Bead: "bead", Groove: "groove"}

// String returns "flat", "bead" or "groove".
func (k Kind) String() string {
	if k < 0 || int(k) >= len(kinds) {
		return "kind " + strconv.Itoa(int(k))
	}
	return kinds[k]
}

// MarshalText writes [Kind.String]. It fails for an unknown kind.
func (k Kind) MarshalText() ([]byte, error) {
	if k < 0 || int(k) >= len(kinds) {
		return nil, Fault{Value: k.String(), Reason: unknownKind}
	}
	return []byte(kinds[k]), nil
}

const unknownKind = "not a kind of feature; write flat, bead or groove"

// UnmarshalText reads "flat", "bead" or "groove".
func (k *Kind) UnmarshalText(text []byte) error {
	for kind, name := range kinds {
		if name == string(text) {
			*k = Kind(kind)
			return nil
		}
	}
	return Fault{Value: string(text), Reason: unknownKind}
}

// Feature is one flat, bead or groove of a repeat.
type Feature struct {
	Kind  Kind            `json:"kind"`
	Width fraction.Length `json:"width"`          // across the grooves, above 0
	Depth fraction.Length `json:"depth,omitzero"` // of a groove below the face, of a bead from its quirk to its crown; 0 if not known
}

// Profile is one repeat of a pattern of upright features, from left to right, which a sheet repeats across its width.
//
// The zero value has no features; it is not valid, and its pitch is 0.
type Profile struct {
	Name      string          `json:"name,omitempty"`
	Features  []Feature       `json:"features"`
	Thickness fraction.Length `json:"thickness"`            // of the sheet, 0 if it does not matter
	WideFlats bool            `json:"wide_flats,omitempty"` // a cut flat is judged by how much of it is left, as of a plank
	Boards    bool            `json:"boards,omitempty"`     // each repeat is a board of its own, and its joints are the pattern
	Source    string          `json:"source,omitempty"`     // where the figures come from
}

// MaxFeatures is the greatest number of features in a repeat.
const MaxFeatures = 200

// Fault is one thing that is wrong with a profile.
type Fault struct {
	Path   string // of the field within the profile, such as features[1].width
	Value  string // what stands there
	Reason string // what is wrong, and what would be accepted
}

func (f Fault) Error() string {
	if f.Path == "" {
		return strconv.Quote(f.Value) + ": " + f.Reason
	}
	return f.Path + ": " + strconv.Quote(f.Value) + ": " + f.Reason
}

// Faults are all the faults of a profile, in the order of its fields.
type Faults []Fault

func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i, fault := range f {
		lines[i] = fault.Error()
	}
	return strings.Join(lines, "\n")
}

// Validate returns nil, or [Faults] with everything that is wrong: no features or too many, an unknown kind, a width that is
// not positive, a negative depth or thickness, a depth beyond a known thickness, a flat with a depth.
func (p Profile) Validate() (err error) {
	defer fraction.Catch(&err)
	var faults Faults
	fault := func(path, value, reason string) { faults = append(faults, Fault{path, value, reason}) }
	if n := len(p.Features); n == 0 || n > MaxFeatures {
		fault("features", strconv.Itoa(n), "a repeat has 1 to "+strconv.Itoa(MaxFeatures)+" features")
	}
	for i, f := range p.Features {
		path := "features[" + strconv.Itoa(i) + "]."
		if f.Kind < 0 || int(f.Kind) >= len(kinds) {
			fault(path+"kind", f.Kind.String(), unknownKind)
		}
		if f.Width.Sign() <= 0 {
			fault(path+"width", f.Width.String(), "a width is above 0")
		}
		switch {
		case f.Depth.Sign() < 0:
			fault(path+"depth", f.Depth.String(), "a depth is 0 or more")
		case f.Kind == Flat && f.Depth.Sign() > 0:
			fault(path+"depth", f.Depth.String(), "a flat has no depth; leave it out or make it a groove")
		case p.Thickness.Sign() > 0 && p.Thickness.Less(f.Depth):
			fault(path+"depth", f.Depth.String(), "deeper than the thickness "+p.Thickness.String())
		}
	}
	if p.Thickness.Sign() < 0 {
		fault("thickness", p.Thickness.String(), "a thickness is 0 or more")
	}
	if faults != nil {
		return faults
	}
	p.Pitch() // overflows here, or never
	return nil
}

// Pitch returns the width of one repeat: the sum of its features.
func (p Profile) Pitch() fraction.Length {
	var pitch fraction.Length
	for _, f := range p.Features {
		pitch = pitch.Add(f.Width)
	}
	return pitch
}

// Boundaries returns where the features of a repeat start, in increasing order from 0, all below the pitch:
// one for each feature, where it meets the feature before it.
func (p Profile) Boundaries() []fraction.Length {
	starts := make([]fraction.Length, len(p.Features))
	for i := 1; i < len(starts); i++ {
		starts[i] = starts[i-1].Add(p.Features[i-1].Width)
	}
	return starts
}

// SeamLines returns the boundaries beside a groove or a bead, in increasing order: where a seam hides in the shadow.
// There are none on a profile that is all flats.
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
