package finish

import (
	"slices"

	"example.com/groovewright/fraction"
)

// Fixing is what panels are fixed to and by, every default filled in: what the list counts by, for a
// drawing of the section and of the backs.
type Fixing struct {
	Wall     fraction.Length `json:"wall"`            // thickness of what lies before the studs
	Strips   fraction.Length `json:"strips,omitzero"` // thickness of furring on the list
	Supports fraction.Length `json:"supports"`        // of studs or strips, center to center, at most
	Level    bool            `json:"level,omitzero"`  // the supports are level strips: the panelling is boards

	Glue        GlueForm        `json:"glue"`                  // never UsualGlue
	GlueSize    fraction.Length `json:"glue_size,omitzero"`    // diameter of a bead or a dot; zero for NoGlue and GlueCustom
	GlueSpacing fraction.Length `json:"glue_spacing,omitzero"` // of upright beads or dots, at most

	Nails NailKind        `json:"nails,omitzero"` // UsualNails where there is none
	Edge  fraction.Length `json:"edge,omitzero"`  // distance of nails on the outer supports of a sheet and along openings, at most
	Field fraction.Length `json:"field,omitzero"` // on supports between
	Inset fraction.Length `json:"inset,omitzero"` // of nails from the edges of a piece, at least
	Clear fraction.Length `json:"clear,omitzero"` // of nails from electrical boxes and other openings where pipes may lie in the wall, at least

	Boxes []BoxFixing `json:"boxes,omitempty"` // those that the panels cover
}

// BoxFixing is how far the front of an electrical box lies behind the face of the panels, and what
// brings it forward: Extender is the depth of the ring, zero where none is needed or none reaches.
type BoxFixing struct {
	Name     string          `json:"name"`
	Behind   fraction.Length `json:"behind"`
	Extender fraction.Length `json:"extender,omitzero"`
}

// Fix returns how the panels of a work are fixed. A field of m that [Materials.Validate] refuses
// counts as its default.
func Fix(w Work, m Materials) (f Fixing, err error) {
	defer fraction.Catch(&err)
	s, _ := read(w, m)
	in := func(text Taped) fraction.Length {
		l, _ := fraction.Parse(string(text), s.Units)
		return l
	}
	f = Fixing{Wall: in(s.House.Wall), Supports: in(s.House.Studs), Level: s.Profile.Boards, Glue: s.Adhesive.Form}
	if s.Furring.Thickness != "" {
		f.Strips = in(s.Furring.Thickness)
	}
	if f.Glue == GlueBeads || f.Glue == GlueDots {
		f.GlueSize, f.GlueSpacing = in(s.Adhesive.Size), in(s.Adhesive.Spacing)
	}
	if s.nailed() {
		n := s.Nails
		f.Nails, f.Edge, f.Field, f.Inset, f.Clear = n.Kind, in(n.Edge), in(n.Field), in(n.Inset), in(n.Clear)
	}
	deep, back := s.behind()
	for i, x := range slices.Concat(deep, back) {
		front, err := fraction.Parse(x.depth.RatString(), fraction.Inch)
		box := BoxFixing{Name: x.name, Behind: fraction.Must(front, err)}
		if e := s.fitting(x); e != nil && i < len(deep) {
			box.Extender = in(e.Depth)
		}
		f.Boxes = append(f.Boxes, box)
	}
	return f, nil
}
