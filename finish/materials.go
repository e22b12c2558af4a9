package finish

// Materials is what is bought and how it is used: the object "finish" of a job file. Every field may be left out and
// then has the value that [Defaults] shows; the zero Materials is a whole set of defaults.
// Prices have no default: a row without a price is listed and stays out of the total.
//
// Materials holds texts as they were written. [Materials.Validate] reads them all.
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

	// Extras are bought as they are asked for: a brush, filler for nail holes, a respirator.
	Extras []Extra `json:"extras,omitzero"`
	// Tax is the share of the price that is added at the till: 0.0825 for 8.25 percent. Default 0.
	Tax Number `json:"tax,omitzero"`
	// LeftoverWorth is what the paint, sealant and the like that is left in an opened pack is worth to you, as a share of
	// the lowest price per volume among the packs offered: 0 (the default) nothing, 1 all of it. It decides which packs
	// are the least money. The total is always what is paid.
	LeftoverWorth Number `json:"leftover_worth,omitzero"`
}

// House is what the survey knows about the place, apart from its measurements.
type House struct {
	// Material of the panels: "mdf" (the default), "hardboard", "plywood", "solid wood", "plastic" or "noncombustible".
	Material string `json:"material,omitzero"`
	// Damp says that moisture reaches the panels: backs are coated too.
	Damp bool `json:"damp,omitzero"`
	// Wall is the thickness of what lies between panel and stud. [DefaultWall], but 0 where Backing is "studs".
	Wall Taped `json:"wall,omitzero"`
	// Backing is what the panels lie on: "gypsum" (the default), "plaster", "masonry", or "studs" where nothing covers them.
	Backing string `json:"backing,omitzero"`
	// Studs is the distance of the studs, centre to centre, or of the level furring strips behind boards. [DefaultStuds].
	Studs Taped `json:"studs,omitzero"`
	// Datum is the height of the line that the runs are measured from above the floor one stands on. [DefaultDatum],
	// but 0 where every run reaches more than [CounterReach] above it and nothing is cooked there.
	Datum Taped `json:"datum,omitzero"`
}

// Container is a pack that a thing measured by volume is sold in.
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
	Primer Coating `json:"primer,omitzero"`
	Top    Coating `json:"top,omitzero"`
	// Loss is the share that stays in brush, roller and tray. [DefaultLoss].
	Loss Number `json:"loss,omitzero"`
	// EdgeCoats is how often the sawn edges are coated before fitting; they drink more than the face. [DefaultEdgeCoats].
	EdgeCoats Number `json:"edge_coats,omitzero"`
	// Groove is the shape of the grooves: "square" (the default, the larger surface) or "v".
	Groove string `json:"groove,omitzero"`
}

// Coating is one kind of paint. Its coverage is told by the tin, or follows from the share of solids in the
// wet paint and the thickness of the dry film: give the one or the other two.
type Coating struct {
	Before     Number      `json:"before,omitzero"`   // coats before fitting: primer [DefaultPrimerBefore], top [DefaultTopBefore]
	After      Number      `json:"after,omitzero"`    // coats after sealing: primer [DefaultPrimerAfter], top [DefaultTopAfter]
	Coverage   Coverage    `json:"coverage,omitzero"` // [DefaultPrimerCoverage], [DefaultTopCoverage]
	Solids     Number      `json:"solids,omitzero"`   // share by volume
	DryFilm    Taped       `json:"dry_film,omitzero"` // one coat, dry: "0.0015" in is 1.5 mils
	Containers []Container `json:"containers,omitzero"`
}

// Bead is how one kind of joint is sealed.
type Bead struct {
	// Form is "fillet", a bead laid into the corner of two faces, "butt", a gap filled flush, or "none".
	Form string `json:"form,omitzero"`
	// Leg is the contact of a fillet on each face.
	Leg Taped `json:"leg,omitzero"`
	// Depth is how deep sealant enters the gap; by default the thickness of the panel, and never more than that.
	Depth Taped `json:"depth,omitzero"`
}

// Sealant says how each kind of joint is sealed and what sealant is sold in.
type Sealant struct {
	CounterLine   Bead `json:"counter_line,omitzero"`   // fillet, [DefaultCounterLeg]
	CabinetLine   Bead `json:"cabinet_line,omitzero"`   // fillet, [DefaultLeg]
	InsideCorner  Bead `json:"inside_corner,omitzero"`  // fillet, [DefaultLeg]
	OutsideCorner Bead `json:"outside_corner,omitzero"` // none: the mitre is glued
	Seam          Bead `json:"seam,omitzero"`           // butt
	End           Bead `json:"end,omitzero"`            // fillet, [DefaultLeg]
	Step          Bead `json:"step,omitzero"`           // fillet, [DefaultLeg]
	Window        Bead `json:"window,omitzero"`         // fillet, [DefaultLeg]
	// GrooveFill is how far the grooves that end open on the counter line are filled from their end. [DefaultGrooveFill].
	GrooveFill Taped `json:"groove_fill,omitzero"`
	// Bridge is the widest gap that a bead should close without a backing. [DefaultBridge].
	Bridge Taped `json:"bridge,omitzero"`
	// Waste is the share that is added for what is squeezed out, wiped off and left in the tubes. [DefaultWaste].
	Waste      Number      `json:"waste,omitzero"`
	Cartridges []Container `json:"cartridges,omitzero"` // [DefaultCartridge]
	Backing    []Roll      `json:"backing,omitzero"`    // rod behind wide gaps. [DefaultBacking]
}

// Adhesive says how panels are glued to the wall.
type Adhesive struct {
	// Form is "beads" (the default; upright lines), "dots" (a square grid) or "none".
	Form string `json:"form,omitzero"`
	// Boards is the form for tongue-and-groove boards, which nails hold: "none" (the default, unless Form is given), "dots", one where
	// a board crosses a support, or "beads", across the board there.
	Boards string `json:"boards,omitzero"`
	// Hold is "light" (the default) where nails hold too, or "full" where the glue holds alone.
	Hold string `json:"hold,omitzero"`
	// Size is the diameter of a bead or a dot. [DefaultBead], [DefaultDot].
	Size Taped `json:"size,omitzero"`
	// Spacing is the greatest distance of beads or dots. [DefaultLightBeads], [DefaultFullBeads], [DefaultLightDots], [DefaultFullDots].
	Spacing    Taped       `json:"spacing,omitzero"`
	Waste      Number      `json:"waste,omitzero"`      // [DefaultWaste]
	Cartridges []Container `json:"cartridges,omitzero"` // [DefaultCartridge]
}

// Nails says how panels are nailed to the studs. Boards take one nail where they cross a support, these being as far apart as
// [House].Studs says; Edge and Field are for sheets.
type Nails struct {
	None        bool    `json:"none,omitzero"`        // panels are glued only
	Edge        Taped   `json:"edge,omitzero"`        // greatest spacing along edges. [DefaultEdgeNails]
	Field       Taped   `json:"field,omitzero"`       // greatest spacing along studs between. [DefaultFieldNails]
	Penetration Taped   `json:"penetration,omitzero"` // into the stud, at least. [DefaultPenetration]
	Lengths     []Taped `json:"lengths,omitzero"`     // as sold, rising. [DefaultNailLengths]
	Waste       Number  `json:"waste,omitzero"`       // bent and lost. [DefaultWaste]
	Packs       []Pack  `json:"packs,omitzero"`       // [DefaultNailPack]
}

// Furring is the level strips across the studs that upright boards are nailed to, as far apart as [House].Studs says. They are told in
// the order of work and bought only where Thickness is given: the wall may have its supports already. The nails or screws that hold
// them are as long as [Nails].Penetration and [Nails].Lengths ask for.
type Furring struct {
	Thickness Taped  `json:"thickness,omitzero"` // of a strip; boxes are reckoned to lie so much further back. No default
	Strips    []Roll `json:"strips,omitzero"`    // [DefaultStrip]
	Waste     Number `json:"waste,omitzero"`     // [DefaultWaste]
	Packs     []Pack `json:"packs,omitzero"`     // of nails or screws. [DefaultStripPack]
}

// BoxNote tells more about an electrical box, which is found by the name of its opening.
type BoxNote struct {
	Name string `json:"name"`
	// Gangs is the number of devices side by side; 0, the default, takes that of [Box].
	Gangs int `json:"gangs,omitzero"`
	// SetBack is how far the front of the box lies behind the wall as it is now; negative where it stands proud. Default 0.
	SetBack Taped `json:"set_back,omitzero"`
}

// Extender is a ring that brings the front of a box forward.
type Extender struct {
	Gangs int    `json:"gangs,omitzero"` // devices side by side; 0 where it is sold for every number
	Depth Taped  `json:"depth"`          // how far it can bring the front forward
	Price Number `json:"price,omitzero"`
}

// Screws are the longer screws behind panels.
type Screws struct {
	DevicePerGang Number  `json:"device_per_gang,omitzero"` // [DefaultDeviceScrews]
	CoverPerGang  Number  `json:"cover_per_gang,omitzero"`  // [DefaultCoverScrews]
	DeviceUsual   Taped   `json:"device_usual,omitzero"`    // length without panels. [DefaultDeviceScrew]
	CoverUsual    Taped   `json:"cover_usual,omitzero"`     // length without panels. [DefaultCoverScrew]
	Lengths       []Taped `json:"lengths,omitzero"`         // as sold, rising. [DefaultScrewLengths]
	Packs         []Pack  `json:"packs,omitzero"`           // [DefaultScrewPack]
}

// Tape is the masking tape along joints.
type Tape struct {
	SealLines  Number `json:"seal_lines,omitzero"`  // lines of tape along a bead while it is laid. [DefaultSealLines]
	PaintLines Number `json:"paint_lines,omitzero"` // lines along what is not painted, for the last coat. [DefaultPaintLines]
	Waste      Number `json:"waste,omitzero"`       // [DefaultWaste]
	Rolls      []Roll `json:"rolls,omitzero"`       // [DefaultTapeRoll]
}

// Sheeting covers counter and floor along the runs.
type Sheeting struct {
	None   bool    `json:"none,omitzero"`
	Reach  Taped   `json:"reach,omitzero"`  // how far from the wall. [DefaultReach]
	Sheets []Cover `json:"sheets,omitzero"` // [DefaultSheeting]
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
	Stick Roll  `json:"stick,omitzero"` // as sold. [DefaultTrimStick]
	Allow Taped `json:"allow,omitzero"` // added to each length for its two cuts. [DefaultTrimAllowance]
}

// Extra is anything else to buy.
type Extra struct {
	Item  string `json:"item"`
	Buy   int    `json:"buy"`
	Price Number `json:"price,omitzero"` // of one
}
