package finish

import "example.com/groovewright/fraction/enum"

// Material is what panels are made of: "mdf" (the zero value), "hardboard", "plywood", "solid
// wood", "plastic" or "noncombustible".
type Material uint8

// The materials.
const (
	MDF Material = iota
	Hardboard
	Plywood
	SolidWood
	Plastic
	Noncombustible // anything that does not burn
)

var materials = enum.Of[Material]("mdf", "hardboard", "plywood", "solid wood", "plastic", "noncombustible")

// String returns the word of the material, or its number in brackets where it has none.
func (m Material) String() string { return materials.String(m) }

// MarshalText writes the word of the material, and fails where it has none.
func (m Material) MarshalText() ([]byte, error) { return materials.Marshal(m) }

// UnmarshalText reads the word of a material.
func (m *Material) UnmarshalText(t []byte) error { return materials.Unmarshal(t, m) }

// Backing is what panels lie on: "gypsum" (the zero value), "plaster", "studs" (bare) or "masonry".
type Backing uint8

// The backings.
const (
	Gypsum Backing = iota
	Plaster
	BareStuds
	Masonry
)

var backings = enum.Of[Backing]("gypsum", "plaster", "studs", "masonry")

// String returns the word of the backing, or its number in brackets where it has none.
func (b Backing) String() string { return backings.String(b) }

// MarshalText writes the word of the backing, and fails where it has none.
func (b Backing) MarshalText() ([]byte, error) { return backings.Marshal(b) }

// UnmarshalText reads the word of a backing.
func (b *Backing) UnmarshalText(t []byte) error { return backings.Unmarshal(t, b) }

// GrooveShape is the section of a groove: "square" (the zero value) or "v". A profile lacks it.
type GrooveShape uint8

// The shapes of a groove w wide and d deep.
const (
	SquareGroove GrooveShape = iota // upright sides: developed width w + 2d, section w*d
	VGroove                         // slopes: developed width 2*sqrt((w/2)² + d²), section w*d/2
)

var grooveShapes = enum.Of[GrooveShape]("square", "v")

// String returns the word of the shape, or its number in brackets where it has none.
func (s GrooveShape) String() string { return grooveShapes.String(s) }

// MarshalText writes the word of the shape, and fails where it has none.
func (s GrooveShape) MarshalText() ([]byte, error) { return grooveShapes.Marshal(s) }

// UnmarshalText reads the word of a shape.
func (s *GrooveShape) UnmarshalText(t []byte) error { return grooveShapes.Unmarshal(t, s) }

// BeadForm is how a joint is sealed: "" (the zero value: as is usual), "fillet", "butt" or "none".
type BeadForm uint8

// The forms of a bead of sealant.
const (
	UsualBead BeadForm = iota
	Fillet             // in the corner of two faces
	Butt               // a gap filled flush
	NoBead
)

var beadForms = enum.Of[BeadForm]("", "fillet", "butt", "none")

// String returns the word of the form, or its number in brackets where it has none.
func (f BeadForm) String() string { return beadForms.String(f) }

// MarshalText writes the word of the form, and fails where it has none.
func (f BeadForm) MarshalText() ([]byte, error) { return beadForms.Marshal(f) }

// UnmarshalText reads the word of a form.
func (f *BeadForm) UnmarshalText(t []byte) error { return beadForms.Unmarshal(t, f) }

// GlueForm is how adhesive is laid: "" (the zero value: as is usual), "beads", "dots", "none" or
// "custom".
type GlueForm uint8

// The forms of adhesive.
const (
	UsualGlue GlueForm = iota
	GlueBeads
	GlueDots
	NoGlue
	GlueCustom // as much as is customary, the tube says how
)

var glueForms = enum.Of[GlueForm]("", "beads", "dots", "none", "custom")

// String returns the word of the form, or its number in brackets where it has none.
func (f GlueForm) String() string { return glueForms.String(f) }

// MarshalText writes the word of the form, and fails where it has none.
func (f GlueForm) MarshalText() ([]byte, error) { return glueForms.Marshal(f) }

// UnmarshalText reads the word of a form.
func (f *GlueForm) UnmarshalText(t []byte) error { return glueForms.Unmarshal(t, f) }

// NailKind is what panels are nailed with: "" (the zero value: as is usual), "brads" of gauge 18,
// "finish nails" of gauge 15 or 16, or "screws"; the gauges from memory.
type NailKind uint8

// The kinds of nails.
const (
	UsualNails NailKind = iota
	Brads
	FinishNails
	PanelScrews // as the maker of the panels asks
)

var nailKinds = enum.Of[NailKind]("", "brads", "finish nails", "screws")

// String returns the word of the kind, or its number in brackets where it has none.
func (k NailKind) String() string { return nailKinds.String(k) }

// MarshalText writes the word of the kind, and fails where it has none.
func (k NailKind) MarshalText() ([]byte, error) { return nailKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *NailKind) UnmarshalText(t []byte) error { return nailKinds.Unmarshal(t, k) }

// Hold is what adhesive does: "light" (the zero value), as nails hold too, or "full", alone.
type Hold uint8

// The two holds.
const (
	LightHold Hold = iota
	FullHold
)

var holds = enum.Of[Hold]("light", "full")

// String returns the word of the hold, or its number in brackets where it has none.
func (h Hold) String() string { return holds.String(h) }

// MarshalText writes the word of the hold, and fails where it has none.
func (h Hold) MarshalText() ([]byte, error) { return holds.Marshal(h) }

// UnmarshalText reads the word of a hold.
func (h *Hold) UnmarshalText(t []byte) error { return holds.Unmarshal(t, h) }
