package plan

import (
	"cmp"

	"example.com/groovewright/fraction"
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
	Kind     SawKind         `json:"kind,omitzero"` // what sheets are sawn with
	Face     Face            `json:"face,omitzero"` // where the good face lies
	LeastRip fraction.Length `json:"least_rip"`     // what a cut takes off less of, the blade included, is planed off; 0 or more
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
	FaceDown             // the back is seen: left and right change sides
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

// Bench returns sheet i as it lies on the bench, and is sawn by measures from its left edge as it lies.
// With the good face down that is the other edge; else it is Sheets[i]. The zero Sheet where there is no
// sheet i. Numbers that fit no Length leave the sheet as it is.
func (p Plan) Bench(i int) (s Sheet) {
	if i < 0 || i >= len(p.Sheets) {
		return s
	}
	if s = p.Sheets[i]; p.Saw.Face != FaceDown {
		return s
	}
	turned, err := p.turnedOver(s)
	if err != nil {
		return s
	}
	return turned
}

// turnedOver returns a sheet with its left and right changed.
func (p Plan) turnedOver(s Sheet) (t Sheet, err error) {
	defer fraction.Catch(&err)
	stock, _ := p.StockNamed(s.Stock)
	over := func(x, width fraction.Length) fraction.Length { return stock.Width.Sub(x).Sub(width) }
	t = Sheet{Number: s.Number, Stock: s.Stock}
	for _, pl := range s.Placements {
		pl.X = over(pl.X, p.part(pl)[2])
		t.Placements = append(t.Placements, pl)
	}
	for _, o := range s.Offcuts {
		o.X = over(o.X, o.Width)
		t.Offcuts = append(t.Offcuts, o)
	}
	var cuts []nest.Cut
	for _, c := range s.Cuts {
		cut := c.Cut
		cut.Rect[0] = over(cut.Rect[0], cut.Rect[2])
		if cut.Kind == nest.Rip {
			cut.At = cut.Rect[2].Sub(cut.At).Sub(p.Saw.Kerf)
		}
		cuts = append(cuts, cut)
	}
	t.Cuts = cutList(cuts, p.parts(t.Placements), p.Saw)
	return t, nil
}

// part returns the rectangle that a piece is sawn as.
func (p Plan) part(pl nest.Placement) rect {
	piece, _ := p.Piece(pl.Part)
	return rect{pl.X, pl.Y, piece.Width, piece.Height}
}

// parts returns the rectangles of placements, by the number of the piece.
func (p Plan) parts(placements []nest.Placement) map[int]rect {
	all := map[int]rect{}
	for _, pl := range placements {
		all[pl.Part] = p.part(pl)
	}
	return all
}
