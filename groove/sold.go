package groove

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/fraction/fault"
)

// Edges says how the long edges of a sheet or board meet those of the next.
type Edges uint8

// The forms of edges.
const (
	EdgesUnknown Edges = iota // not stated
	Square                    // butt against the next
	Lapped                    // lie half over the next, half under the one before
	Tongued                   // a tongue in the groove of the next
)

var edges = enum.Of[Edges]("", "square", "lapped", "tongued")

// String returns the word of the edges, none where they are not stated.
func (e Edges) String() string { return edges.String(e) }

// MarshalText writes the word of the edges, and fails for a value that is none.
func (e Edges) MarshalText() ([]byte, error) { return edges.Marshal(e) }

// UnmarshalText reads "square", "lapped" or "tongued".
func (e *Edges) UnmarshalText(text []byte) error { return edges.Unmarshal(text, e) }

// Tongue is the side of a board on which its tongue is, as one looks at its face with the first
// feature of the repeat at the left.
type Tongue uint8

// The sides of the tongue.
const (
	TongueUnknown Tongue = iota // not stated, or there is no tongue
	TongueLeft
	TongueRight
)

var tongues = enum.Of[Tongue]("", "left", "right")

// String returns "left" or "right", nothing where the side is not stated.
func (t Tongue) String() string { return tongues.String(t) }

// MarshalText writes the word of the side, and fails for a value that is none.
func (t Tongue) MarshalText() ([]byte, error) { return tongues.Marshal(t) }

// UnmarshalText reads "left" or "right".
func (t *Tongue) UnmarshalText(text []byte) error { return tongues.Unmarshal(text, t) }

// Status says what stands behind the pitch and the cover of a profile; [Profile].Source says it of
// each figure.
type Status uint8

// The statuses.
const (
	StatusUnknown  Status = iota // not stated
	Published                    // a text that prints them was read
	CommonPractice               // sold like this as far as is known; no text prints them
	Invented                     // for examples; no text and no practice is known
)

var statuses = enum.Of[Status]("", "published", "common practice", "invented")

// String returns the word of the status, none where it is not stated.
func (s Status) String() string { return statuses.String(s) }

// MarshalText writes the word of the status, and fails for a value that is none.
func (s Status) MarshalText() ([]byte, error) { return statuses.Marshal(s) }

// UnmarshalText reads "published", "common practice" or "invented".
func (s *Status) UnmarshalText(text []byte) error { return statuses.Unmarshal(text, s) }

// Shows returns what one sheet or board covers of the wall: Cover, of boards the pitch, 0 where it
// is not known.
func (p Profile) Shows() fraction.Length {
	if p.Boards {
		return p.Pitch()
	}
	return p.Cover
}

// sold adds what is wrong with how sheets or boards are sold and meet. A 0 is not known and agrees
// with anything; the width is what shows and the lap together.
func (p Profile) sold(faults *fault.List) {
	shows, beyond := p.Shows(), p.beyond()
	both := p.Width.Sign() > 0 && shows.Sign() > 0
	switch {
	case p.Cover.Sign() < 0:
		faults.Add(p.Cover, "0 or more", "Cover")
	case p.Boards && p.Cover.Sign() > 0 && p.Cover != shows:
		faults.Add(p.Cover, "the width of the repeat, which is what a board shows", "Cover")
	}
	switch {
	case p.Width.Sign() < 0:
		faults.Add(p.Width, "0 or more", "Width")
	case both && p.Width.Less(shows):
		faults.Add(p.Width, "no less than what shows", "Width")
	case both && p.Edges == Square && p.Width != shows:
		faults.Add(p.Width, "what shows, as square edges do not lap", "Width")
	}
	if int(p.Edges) >= len(edges) {
		faults.Add(p.Edges, edges.Want(), "Edges")
	}
	switch {
	case int(p.Tongue) >= len(tongues):
		faults.Add(p.Tongue, tongues.Want(), "Tongue")
	case p.Tongue != TongueUnknown && p.Edges != Tongued:
		faults.Add(p.Tongue, "no tongue but of tongued edges", "Tongue")
	}
	switch {
	case p.Lap.Sign() < 0:
		faults.Add(p.Lap, "0 or more", "Lap")
	case p.Lap.Sign() > 0 && p.Edges != Lapped && p.Edges != Tongued:
		faults.Add(p.Lap, "no lap but of lapped or tongued edges", "Lap")
	case p.Lap.Sign() > 0 && both && p.Lap != beyond:
		faults.Add(p.Lap, "the width less what shows", "Lap")
	}
	for i, l := range p.Lengths {
		if l.Sign() <= 0 {
			faults.Add(l, "a length above 0", "Lengths", i)
		}
	}
	if int(p.Status) >= len(statuses) {
		faults.Add(p.Status, statuses.Want(), "Status")
	}
}

// beyond returns how much wider a sheet or board is than what shows, 0 where that fits no Length.
func (p Profile) beyond() (lap fraction.Length) {
	var err error
	defer fraction.Catch(&err)
	return p.Width.Sub(p.Shows())
}
