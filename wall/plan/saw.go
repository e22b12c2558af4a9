package plan

import (
	"cmp"

	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/nest"
)

// Saw is what a plan is sawn with. Face is never [AnyFace].
type Saw struct {
	nest.Saw
	Sawing
}

// Sawing says how sheets are sawn.
type Sawing struct {
	Kind SawKind `json:"kind,omitzero"` // what sheets are sawn with
	Face Face    `json:"face,omitzero"` // where the good face lies
}

// SawKind says what sheets are sawn with.
type SawKind uint8

// The kinds of saw.
const (
	AnySaw   SawKind = iota // not said
	Table                   // a bench with the blade from below
	Track                   // a circular saw on a rail that holds the fibers down
	Circular                // held in the hands
	Hand                    // without a motor
)

var sawKinds = enum.Of[SawKind]("", "table", "track", "circular", "hand")

// String returns the word of the kind, none where it is not said.
func (k SawKind) String() string { return sawKinds.String(k) }

// MarshalText returns the word of the kind.
func (k SawKind) MarshalText() ([]byte, error) { return sawKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *SawKind) UnmarshalText(text []byte) error { return sawKinds.Unmarshal(text, k) }

// Face says where the good face of a sheet lies while it is sawn.
type Face uint8

// The faces.
const (
	AnyFace  Face = iota // what the kind of saw asks for
	FaceUp               // the good face is seen
	FaceDown             // the back is seen, and the left edge of the face is at the right
)

var faces = enum.Of[Face]("", "up", "down")

// String returns the word of the face, none where it is not said.
func (f Face) String() string { return faces.String(f) }

// MarshalText returns the word of the face.
func (f Face) MarshalText() ([]byte, error) { return faces.Marshal(f) }

// UnmarshalText reads the word of a face.
func (f *Face) UnmarshalText(text []byte) error { return faces.Unmarshal(text, f) }

// face returns where the good face lies. A saw splinters the side where its teeth leave, so a portable
// circular saw cuts from the back (NAVEDTRA 14044); for the others the face lies up (common practice,
// no source).
func (s Sawing) face() Face {
	if s.Kind == Circular {
		return cmp.Or(s.Face, FaceDown)
	}
	return cmp.Or(s.Face, FaceUp)
}
