package finish

// Materials is what is bought and how it is used: the object "finish" of a job file, as texts that
// [Materials.Validate] reads. A field left out has the value that [Defaults] shows; but prices have
// no default, and a row without a price is listed and stays out of the total.
type Materials struct {
	House     House      `json:"house,omitzero"`
	Paint     Paint      `json:"paint,omitzero"`
	Sealant   Sealant    `json:"sealant,omitzero"`
	Adhesive  Adhesive   `json:"adhesive,omitzero"`
	Nails     Nails      `json:"nails,omitzero"`
	Furring   Furring    `json:"furring,omitzero"`
	Boxes     []BoxNote  `json:"boxes,omitzero"`
	Extenders []Extender `json:"extenders,omitzero"`
	Screws    Screws     `json:"screws,omitzero"`
	Tape      Tape       `json:"tape,omitzero"`
	Sheeting  Sheeting   `json:"sheeting,omitzero"`
	Trim      Trim       `json:"trim,omitzero"`
	Extras    []Extra    `json:"extras,omitzero"` // a brush, filler for nail holes, a respirator
	// Tax is the share added at the till: 0.0825 is 8.25 percent; 0 by default.
	Tax Number `json:"tax,omitzero"`
	// LeftoverWorth is what the rest in an opened pack is worth to you, as a share of the lowest
	// price per volume of the packs offered: 0 (the default) nothing, 1 all of it. It decides which
	// packs are the least money; the total is what is paid.
	LeftoverWorth Number `json:"leftover_worth,omitzero"`
}

// House is what the survey knows about the place, apart from its measurements.
type House struct {
	Material Material `json:"material,omitzero"` // of the panels; MDF by default
	Damp     bool     `json:"damp,omitzero"`     // moisture gets in: backs are coated too, but of plastic
	// Wall is what lies between panel and stud: 1/2 in (12.5 mm); 0 for [BareStuds] and [Masonry].
	Wall    Taped   `json:"wall,omitzero"`
	Backing Backing `json:"backing,omitzero"` // what the panels lie on; gypsum board by default
	Studs   Taped   `json:"studs,omitzero"`   // or strips, center to center: 16 in (400 mm)
	// Datum is the height of the line that runs are measured from above the floor: 36 in (900 mm),
	// but 0 where every run reaches more than 30 in above it and nothing is cooked there.
	Datum Taped `json:"datum,omitzero"`
}

// backs reports whether backs are coated: plastic takes up no moisture.
func (h House) backs() bool { return h.Damp && h.Material != Plastic }

// Container is a pack that a thing measured by volume is sold in. Price is that of one, here and of
// every other pack.
type Container struct {
	Name  string `json:"name"`
	Size  Volume `json:"size"`
	Price Number `json:"price,omitzero"`
}

// Pack is a pack that a thing is sold in by the piece.
type Pack struct {
	Name  string `json:"name"`
	Count int    `json:"count"`
	Price Number `json:"price,omitzero"`
}

// Roll is a pack that a thing is sold in by its length.
type Roll struct {
	Name   string `json:"name"`
	Length Taped  `json:"length"`
	Price  Number `json:"price,omitzero"`
}

// Paint says how the faces are coated.
type Paint struct {
	Primer    Coating     `json:"primer,omitzero"`
	Top       Coating     `json:"top,omitzero"`
	Loss      Number      `json:"loss,omitzero"`       // in the tools, where solids are given: 0.1
	EdgeCoats Number      `json:"edge_coats,omitzero"` // of edges before fitting: 2, of solid wood, plastic … 1
	Groove    GrooveShape `json:"groove,omitzero"`     // square, the larger surface, by default
}

// Coating is one kind of paint. Give its coverage, or the share of solids in the wet paint and the
// thickness of the dry film.
type Coating struct {
	Before     Number      `json:"before,omitzero"`   // coats before fitting: 1
	After      Number      `json:"after,omitzero"`    // coats after sealing: primer 0, top 1
	Coverage   Coverage    `json:"coverage,omitzero"` // primer 250 ft2/gal (6 m2/L), top 350 (8.5)
	Solids     Number      `json:"solids,omitzero"`   // share by volume
	DryFilm    Taped       `json:"dry_film,omitzero"` // one coat, dry: "0.0015" in is 1.5 mils
	Containers []Container `json:"containers,omitzero"`
}

// Bead is how one kind of joint is sealed.
type Bead struct {
	Form BeadForm `json:"form,omitzero"`
	Leg  Taped    `json:"leg,omitzero"` // contact of a fillet on each face
	// Depth in the gap: at most that of the panel and the width of the gap, before a backing rod half
	// the width, 1/4 to 1/2 in. These are the default.
	Depth Taped `json:"depth,omitzero"`
}

// Sealant says how each kind of joint is sealed and what sealant is sold in.
type Sealant struct {
	CounterLine   Bead `json:"counter_line,omitzero"`   // fillet, leg 1/4 in (6 mm)
	CabinetLine   Bead `json:"cabinet_line,omitzero"`   // fillet, leg 1/8 in (3 mm)
	InsideCorner  Bead `json:"inside_corner,omitzero"`  // fillet, leg 1/8 in (3 mm)
	OutsideCorner Bead `json:"outside_corner,omitzero"` // none: the mitre is glued
	Seam          Bead `json:"seam,omitzero"`           // butt
	End           Bead `json:"end,omitzero"`            // fillet, leg 1/8 in (3 mm)
	Step          Bead `json:"step,omitzero"`           // fillet, leg 1/8 in (3 mm)
	Window        Bead `json:"window,omitzero"`         // fillet, leg 1/8 in (3 mm)

	GrooveFill Taped       `json:"groove_fill,omitzero"` // at open ends of grooves: 1/4 in (6 mm)
	Bridge     Taped       `json:"bridge,omitzero"`      // widest gap without rod: 1/4 in (6 mm)
	Waste      Number      `json:"waste,omitzero"`       // wiped off and left in the tubes: 0.1
	Cartridges []Container `json:"cartridges,omitzero"`  // 10.1 fl oz (300 mL)
	// WetCartridges are of the sealant for kitchens and baths, which goes on the counter and at the
	// floor of a damp room: 10.1 fl oz (300 mL).
	WetCartridges []Container `json:"wet_cartridges,omitzero"`
	Backing       []Roll      `json:"backing,omitzero"` // rod behind wide gaps: 20 ft (6 m)
}

// Adhesive says how panels are glued to the wall.
type Adhesive struct {
	// Form is that of sheets: by custom, about a cartridge of 10 fl oz for 32 ft2, the default for
	// sheets of up to 3/8 in; upright beads, that for thicker ones; or a grid of dots.
	Form GlueForm `json:"form,omitzero"`
	// Boards is the form for tongue-and-groove boards, which nails hold: none (the default, unless
	// Form is given), or where a board crosses a support a dot, or a bead across the board.
	Boards GlueForm `json:"boards,omitzero"`
	Hold   Hold     `json:"hold,omitzero"`
	Size   Taped    `json:"size,omitzero"` // diameter: bead 3/8 in (10 mm), dot 1 in (25 mm)
	// Spacing is the greatest distance: beads 16 in (400 mm), for a full hold 8 in (200 mm), dots
	// 12 in (300 mm) or 6 in (150 mm).
	Spacing    Taped       `json:"spacing,omitzero"`
	Waste      Number      `json:"waste,omitzero"`      // 0.1
	Cartridges []Container `json:"cartridges,omitzero"` // 10.1 and 28 fl oz (300 and 600 mL)
	Miter      []Container `json:"miter,omitzero"`      // wood glue for miters: 8 fl oz (250 mL)
}

// Nails says how panels are nailed to the studs. Boards take one nail where they cross a support
// (see [House].Studs); Edge and Field are for sheets.
type Nails struct {
	None bool `json:"none,omitzero"` // panels are glued only
	// Kind is that of the nails: brads for glued sheets up to 3/8 in, screws for what does not burn,
	// else finish nails.
	Kind        NailKind `json:"kind,omitzero"`
	Edge        Taped    `json:"edge,omitzero"`        // at most, on outer supports: 6 in (150 mm)
	Field       Taped    `json:"field,omitzero"`       // on supports between: 12 in (300 mm)
	Inset       Taped    `json:"inset,omitzero"`       // off the edges of a piece, at least: 3/8 in (10 mm)
	Clear       Taped    `json:"clear,omitzero"`       // off a box or a pipe's opening, at least, as cables turn there: 3 in (75 mm)
	Penetration Taped    `json:"penetration,omitzero"` // into the stud, at least: 3/4 in (20 mm)
	Lengths     []Taped  `json:"lengths,omitzero"`     // as sold, rising: 1 to 3 in (25 to 75 mm)
	Waste       Number   `json:"waste,omitzero"`       // bent and lost: 0.1
	Packs       []Pack   `json:"packs,omitzero"`       // of 1000
}

// Furring is the strips that panels are nailed to: level ones as far apart as [House].Studs says,
// for sheets upright ones under their edges too. Behind boards they are in the order of work, but
// they are bought only where Thickness is given: the wall may have supports. Their nails or screws
// are as long as [Nails].Penetration and [Nails].Lengths ask for.
type Furring struct {
	Thickness Taped  `json:"thickness,omitzero"` // boxes lie so much further back. No default
	Strips    []Roll `json:"strips,omitzero"`    // of 8 ft (2.4 m)
	Waste     Number `json:"waste,omitzero"`     // 0.1
	Packs     []Pack `json:"packs,omitzero"`     // of nails or screws: of 100
}

// BoxNote says more about an electrical box, which is found by the name of its opening.
type BoxNote struct {
	Name  string `json:"name"`
	Gangs int    `json:"gangs,omitzero"` // devices side by side; 0: as many as its [Box] has
	// SetBack is how far its front lies behind the wall as it is now, below 0 where proud.
	SetBack Taped `json:"set_back,omitzero"`
}

// Extender is a ring that brings the front of a box forward.
type Extender struct {
	Gangs int    `json:"gangs,omitzero"` // devices side by side; 0 where it fits all
	Depth Taped  `json:"depth"`          // how far it can bring the front forward
	Price Number `json:"price,omitzero"`
}

// Screws are the longer screws of devices behind panels, and the spacers that hold a device at the
// face where its box stays back.
type Screws struct {
	DevicePerGang Number  `json:"device_per_gang,omitzero"` // 2
	DeviceUsual   Taped   `json:"device_usual,omitzero"`    // length without panels: 3/4 in (20 mm)
	Lengths       []Taped `json:"lengths,omitzero"`         // rising: 1/2 to 3 in (12 to 75 mm)
	Packs         []Pack  `json:"packs,omitzero"`           // of 10
	Spacers       []Pack  `json:"spacers,omitzero"`         // of 10
}

// Tape is the masking tape along joints.
type Tape struct {
	SealLines  Number `json:"seal_lines,omitzero"`  // along a bead while it is laid: 2
	PaintLines Number `json:"paint_lines,omitzero"` // along what stays bare: 1
	Waste      Number `json:"waste,omitzero"`       // 0.1
	Rolls      []Roll `json:"rolls,omitzero"`       // of 60 yd (50 m)
}

// Sheeting covers counter and floor along the runs.
type Sheeting struct {
	None   bool    `json:"none,omitzero"`
	Reach  Taped   `json:"reach,omitzero"`  // how far from the wall: 48 in (1200 mm)
	Sheets []Cover `json:"sheets,omitzero"` // of 9 x 12 ft (4 x 5 m)
}

// Cover is a sheet that things are covered with.
type Cover struct {
	Name  string  `json:"name"`
	Size  Surface `json:"size"`
	Price Number  `json:"price,omitzero"`
}

// Trim is the strip over the edge of the panels at ends that are seen.
type Trim struct {
	None  bool  `json:"none,omitzero"`
	Stick Roll  `json:"stick,omitzero"` // as sold: 8 ft (2.4 m)
	Allow Taped `json:"allow,omitzero"` // added to each length for its two cuts: 1/2 in (12 mm)
	// Covers are how trims that hide edges are sold, by their names; else as Stick is, without a
	// price. No default.
	Covers []Roll `json:"covers,omitzero"`
	Waste  Number `json:"waste,omitzero"` // of Covers that are joined end to end: 0.1
	// Corners asks for a strip on mitred outside corners too.
	Corners bool `json:"corners,omitzero"`
}

// Extra is anything else to buy: Buy of Item.
type Extra struct {
	Item  string `json:"item"`
	Buy   int    `json:"buy"`
	Price Number `json:"price,omitzero"` // of one
}
