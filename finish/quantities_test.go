package finish_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// plain sheets are flat and 1/4 in thick with a pitch of 2 in, boards 4 in wide and 3/4 in thick.
var (
	plain  = groove.Profile{Features: []groove.Feature{{Width: fraction.Inches(2)}}, Thickness: fraction.Of(1, 4)}
	boards = groove.Profile{Boards: true, Edges: groove.Tongued, Features: []groove.Feature{{Width: fraction.Inches(4)}}, Thickness: fraction.Of(3, 4)}
)

// bare materials: no loss, no waste, nothing but what a test asks for.
func bare() finish.Materials {
	m := finish.Materials{Nails: finish.Nails{None: true, Waste: "0"}, Adhesive: finish.Adhesive{Form: finish.NoGlue, Waste: "0"}}
	m.Paint = finish.Paint{Loss: "0", EdgeCoats: "0", Primer: finish.Coating{Before: "0"}, Top: finish.Coating{Before: "0", After: "0"}}
	m.Sealant.Waste, m.Tape = "0", finish.Tape{SealLines: "0", PaintLines: "0", Waste: "0"}
	m.Sheeting.None, m.Trim.None = true, true
	return m
}

// TestQuantitiesWorkedByHand checks each kind of quantity against arithmetic that fits in the
// margin.
func TestQuantitiesWorkedByHand(t *testing.T) {
	in := fraction.MustParse
	ten := in("144").Times(in("10")) // 10 ft2
	for _, c := range []struct {
		name   string
		work   finish.Work
		change func(m *finish.Materials)
		want   string // item, quantity, unit, buy, container
	}{
		{
			"one coat on 10 ft2 at 100 ft2/gal is a tenth of a gallon",
			finish.Work{Profile: plain, Face: ten},
			func(m *finish.Materials) { m.Paint.Top.After, m.Paint.Top.Coverage = "1", "100 ft2/gal" },
			"top coat, 0.4 qt, 1 quart",
		},
		{
			"40 % solids at 1 mil: 9625/6 × 0.4 = 641.67 ft2/gal, so 1925/3 ft2 take 4 qt",
			finish.Work{Profile: plain, Face: in("2310").Times(in("40"))}, // 641 2/3 ft2
			func(m *finish.Materials) {
				m.Paint.Top.After, m.Paint.Top.Solids, m.Paint.Top.DryFilm = "1", "0.4", "0.001"
			},
			"top coat, 4 qt, 1 gallon",
		},
		{
			"two edge coats on 288 in of 1/4 in edge are 1 ft2",
			finish.Work{Profile: plain, Edges: in("288")},
			func(m *finish.Materials) {
				m.Paint.Primer.Before, m.Paint.Primer.Coverage, m.Paint.EdgeCoats = "1", "4 ft2/gal", "2"
			},
			"primer, 1 qt, 1 quart",
		},
		{
			"damp: backs as well",
			finish.Work{Profile: plain, Face: ten},
			func(m *finish.Materials) {
				m.Paint.Primer.Before, m.Paint.Primer.Coverage, m.House.Damp = "1", "20 ft2/gal", true
			},
			"primer, 4 qt, 1 gallon",
		},
		{
			"without primer, edges get the top coat that goes on before fitting",
			finish.Work{Profile: plain, Edges: in("288")},
			func(m *finish.Materials) {
				m.Paint.Top.Before, m.Paint.Top.Coverage, m.Paint.EdgeCoats = "1", "4 ft2/gal", "2"
			},
			"top coat, 1 qt, 1 quart",
		},
		{
			"a square groove 1 by 1/2 in at 2 in doubles half the face: factor 3/2",
			finish.Work{Face: ten, Profile: groove.Profile{Features: []groove.Feature{{Width: in("1")}, {Kind: groove.Groove, Width: in("1"), Depth: in("1/2")}}}},
			func(m *finish.Materials) { m.Paint.Top.After, m.Paint.Top.Coverage = "1", "60 ft2/gal" },
			"top coat, 1 qt, 1 quart",
		},
		{
			"loss of a fifth where solids are given: 4 qt become 5",
			finish.Work{Profile: plain, Face: in("2310").Times(in("40"))}, // 641 2/3 ft2
			func(m *finish.Materials) {
				m.Paint.Top.After, m.Paint.Top.Solids, m.Paint.Top.DryFilm, m.Paint.Loss = "1", "0.4", "0.001", "0.2"
			},
			"top coat, 4 qt, 1 gallon; top coat, 1 qt, 1 quart",
		},
		{
			"a coverage as printed is practical already: no loss",
			finish.Work{Profile: plain, Face: ten},
			func(m *finish.Materials) {
				m.Paint.Top.After, m.Paint.Top.Coverage, m.Paint.Loss = "1", "10 ft2/gal", "0.2"
			},
			"top coat, 4 qt, 1 gallon",
		},
		{
			"damp: primer and top coat on the backs, the last coat on the face alone: 2 and 3 times 10 ft2",
			finish.Work{Profile: plain, Face: ten},
			func(m *finish.Materials) {
				m.House.Damp, m.Paint.Primer.Before, m.Paint.Top.Before, m.Paint.Top.After = true, "1", "1", "1"
				m.Paint.Primer.Coverage, m.Paint.Top.Coverage = "80 ft2/gal", "40 ft2/gal"
			},
			"primer, 1 qt, 1 quart; top coat, 3 qt, 3 quart",
		},
		{
			"damp: no backs of plastic",
			finish.Work{Profile: plain, Face: ten},
			func(m *finish.Materials) {
				m.House.Material, m.House.Damp, m.Paint.Primer.Before, m.Paint.Primer.Coverage = finish.Plastic, true, "1", "40 ft2/gal"
			},
			"primer, 1 qt, 1 quart",
		},
		{
			"the last coat covers the panels that are up, the first does not",
			finish.Work{Profile: plain, Face: ten, Up: ten},
			func(m *finish.Materials) {
				m.Paint.Top.Before, m.Paint.Top.After, m.Paint.Top.Coverage = "1", "1", "40 ft2/gal"
			},
			"top coat, 3 qt, 3 quart",
		},
		{
			"231 in of gap 1/4 by 1/4 are 14.4375 in3 = 8 fl oz",
			finish.Work{Profile: plain, Joints: []finish.Joint{{Kind: finish.Seam, Length: in("231"), Gap: in("1/4")}}},
			func(m *finish.Materials) {},
			"sealant, 8 fl oz, 1 10.1 fl oz cartridge",
		},
		{
			"462 in of fillet 1/4 without a gap are as much",
			finish.Work{Profile: plain, Joints: []finish.Joint{{Kind: finish.CounterLine, Length: in("462")}}},
			func(m *finish.Materials) {},
			"kitchen and bath sealant, 8 fl oz, 1 10.1 fl oz cartridge",
		},
		{
			"on the floor of a dry room it is the other sealant",
			finish.Work{Profile: plain, Joints: []finish.Joint{{Kind: finish.CounterLine, Length: in("462")}}},
			func(m *finish.Materials) { m.House.Datum = "0" },
			"sealant, 8 fl oz, 1 10.1 fl oz cartridge",
		},
		{
			"what a trim covers is not sealed, taped or filled",
			finish.Work{Profile: boards, Joints: []finish.Joint{{Kind: finish.CounterLine, Length: in("462"), Gap: in("5/16"), Grooves: true, Hidden: true}}},
			func(m *finish.Materials) { m.Tape.SealLines, m.Tape.PaintLines = "2", "1" },
			"",
		},
		{
			"231 in of gap 1/4 in boards of 3/4 are filled 1/4 deep, not 3/4",
			finish.Work{Profile: boards, Joints: []finish.Joint{{Kind: finish.StepJoint, Length: in("231"), Gap: in("1/4")}}},
			func(m *finish.Materials) { m.Sealant.Step.Form = finish.Butt },
			"sealant, 8 fl oz, 1 10.1 fl oz cartridge",
		},
		{
			"before a rod a gap of 3/4 is filled half as deep: 77 in × 3/4 × 3/8 = 12 fl oz",
			finish.Work{Profile: boards, Joints: []finish.Joint{{Kind: finish.StepJoint, Length: in("77"), Gap: in("3/4")}}},
			func(m *finish.Materials) { m.Sealant.Step.Form = finish.Butt },
			"sealant, 12 fl oz, 2 10.1 fl oz cartridge; backing rod, 6.42 ft, 1 20 ft length",
		},
		{
			"waste of a quarter: 8 fl oz become 10",
			finish.Work{Profile: plain, Joints: []finish.Joint{{Kind: finish.CounterLine, Length: in("462")}}},
			func(m *finish.Materials) { m.Sealant.Waste = "1/4" },
			"kitchen and bath sealant, 10 fl oz, 1 10.1 fl oz cartridge",
		},
		{
			"an outside corner is mitred and not sealed",
			finish.Work{Profile: plain, Joints: []finish.Joint{{Kind: finish.OutsideCorner, Length: in("462"), Gap: in("1/8")}}},
			func(m *finish.Materials) {},
			"",
		},
		{
			"a depth beyond the panel ends at the panel",
			finish.Work{Profile: plain, Joints: []finish.Joint{{Kind: finish.Seam, Length: in("231"), Gap: in("1/4")}}},
			func(m *finish.Materials) { m.Sealant.Seam.Depth = "3" },
			"sealant, 8 fl oz, 1 10.1 fl oz cartridge",
		},
		{
			"77 grooves 1/2 by 3/8 filled 1 in deep are 231/16 in3 = 8 fl oz",
			finish.Work{
				Profile: groove.Profile{Features: []groove.Feature{{Width: in("1 1/2")}, {Kind: groove.Groove, Width: in("1/2"), Depth: in("3/8")}}},
				Joints:  []finish.Joint{{Kind: finish.OutsideCorner, Length: in("154"), Grooves: true}},
			},
			func(m *finish.Materials) { m.Sealant.GrooveFill = "1" },
			"sealant, 8 fl oz, 1 10.1 fl oz cartridge",
		},
		{
			"a gap wider than its limit gets a rod: 30 ft in lengths of 20",
			finish.Work{Joints: []finish.Joint{{Kind: finish.Seam, Length: in("360"), Gap: in("3/8")}}},
			func(m *finish.Materials) {},
			"backing rod, 30 ft, 2 20 ft length",
		},
		{
			"a bead on both edges and every 16 in of 48: 4 lines of 96 in, 3/8 in thick: π × 9/256 × 384 = 42.41 in3 = 23.501 fl oz",
			finish.Work{Profile: plain, Pieces: []finish.Piece{{Width: in("48"), Height: in("96")}}},
			func(m *finish.Materials) { m.Adhesive.Form, m.Nails.None = finish.GlueBeads, false },
			"panel adhesive, 23.6 fl oz, 1 28 fl oz cartridge; panel nails 1 1/2 in, 52 nails, 1 box of 1000",
		},
		{
			"by the shape of a stair's piece: half of 48 by 96 takes half of that",
			finish.Work{Profile: plain, Pieces: []finish.Piece{{Width: in("48"), Height: in("96"), Area: in("48").Times(in("48"))}}},
			func(m *finish.Materials) { m.Adhesive.Form, m.Nails.None = finish.GlueBeads, false },
			"panel adhesive, 11.8 fl oz, 2 10.1 fl oz cartridge; panel nails 1 1/2 in, 28 nails, 1 box of 1000",
		},
		{
			"by custom a cartridge of 10 fl oz for a sheet",
			finish.Work{Profile: plain, Pieces: []finish.Piece{{Width: in("48"), Height: in("96")}}},
			func(m *finish.Materials) { m.Adhesive.Form, m.Nails.None = finish.UsualGlue, false },
			"panel adhesive, 10 fl oz, 1 10.1 fl oz cartridge; panel nails 1 1/2 in, 52 nails, 1 box of 1000",
		},
		{
			"and two where glue alone holds it; behind masonry it does",
			finish.Work{Profile: plain, Pieces: []finish.Piece{{Width: in("48"), Height: in("96")}}},
			func(m *finish.Materials) {
				m.Adhesive.Form, m.Nails.None, m.House.Backing = finish.UsualGlue, false, finish.Masonry
			},
			"panel adhesive, 20 fl oz, 2 10.1 fl oz cartridge",
		},
		{
			"a mitre of 8 ft: a bead of 1/8 in, π/256 × 96 = 1.178 in3 = 0.653 fl oz; no trim on it",
			finish.Work{Profile: plain, Mitred: true, Ends: []finish.End{{Length: in("96"), Corner: true}}, Joints: []finish.Joint{{Kind: finish.OutsideCorner, Length: in("96")}}},
			func(m *finish.Materials) { m.Trim.None = false },
			"miter glue, 0.7 fl oz, 1 8 fl oz bottle",
		},
		{
			"but where the job asks",
			finish.Work{Profile: plain, Mitred: true, Ends: []finish.End{{Length: in("84"), Corner: true}}},
			func(m *finish.Materials) { m.Trim.None, m.Trim.Corners = false, true },
			"corner trim, 7 ft, 1 8 ft strip",
		},
		{
			"dots of 1 in every 12 in: 4 × 8 dots of π/12 in3 = 8.378 in3 = 4.64 fl oz",
			finish.Work{Pieces: []finish.Piece{{Width: in("48"), Height: in("96")}}},
			func(m *finish.Materials) { m.Adhesive.Form, m.Nails.None = finish.GlueDots, false },
			"panel adhesive, 4.7 fl oz, 1 10.1 fl oz cartridge; panel nails 1 1/4 in, 52 nails, 1 box of 1000",
		},
		{
			"full hold, as nothing is nailed: 8 × 16 dots",
			finish.Work{Pieces: []finish.Piece{{Width: in("48"), Height: in("96")}}},
			func(m *finish.Materials) { m.Adhesive.Form = finish.GlueDots },
			"panel adhesive, 18.6 fl oz, 2 10.1 fl oz cartridge",
		},
		{
			"1/4 panel + 1/2 wall + 3/4 in the stud = 1 1/2; 2 × 17 + 2 × 9 nails, and 7 round a window of 40 in",
			finish.Work{Profile: plain, Pieces: []finish.Piece{{Width: in("48"), Height: in("96"), OpeningEdges: in("40")}}},
			func(m *finish.Materials) { m.Nails.None = false },
			"panel nails 1 1/2 in, 59 nails, 1 box of 1000",
		},
		{
			"on open studs there is no wall to go through: 1/4 panel + 3/4 in the stud = 1",
			finish.Work{Profile: plain, Pieces: []finish.Piece{{Width: in("48"), Height: in("96")}}},
			func(m *finish.Materials) { m.Nails.None, m.House.Backing = false, finish.BareStuds },
			"panel nails 1 in, 52 nails, 1 box of 1000",
		},
		{
			"a tenth more nails",
			finish.Work{Profile: plain, Pieces: []finish.Piece{{Width: in("48"), Height: in("96")}}},
			func(m *finish.Materials) {
				m.Nails = finish.Nails{Packs: []finish.Pack{{Name: "hundred", Count: 100}}}
			},
			"panel nails 1 1/2 in, 58 nails, 1 hundred",
		},
		{
			"10 boards of 96 in cross supports 16 in apart 7 times each: 70 nails; (3/8 + 3/4) × √2 = 1.59 in long; no glue",
			finish.Work{Profile: boards, Pieces: slices.Repeat([]finish.Piece{{Width: in("4"), Height: in("96")}}, 10)},
			func(m *finish.Materials) { m.Nails.None = false },
			"board nails 2 in, 70 nails, 1 box of 1000",
		},
		{
			"supports 12 in apart: 9 crossings, and 3 nails more along 30 in of an opening's edges",
			finish.Work{Profile: boards, Pieces: []finish.Piece{{Width: in("4"), Height: in("96"), OpeningEdges: in("30")}}},
			func(m *finish.Materials) { m.Nails = finish.Nails{Waste: "0"}; m.House.Studs = "12" },
			"board nails 2 in, 12 nails, 1 box of 1000",
		},
		{
			"a dot of 1 in a crossing: 70 × π/12 in3 = 18.33 in3 = 10.155 fl oz",
			finish.Work{Profile: boards, Pieces: slices.Repeat([]finish.Piece{{Width: in("4"), Height: in("96")}}, 10)},
			func(m *finish.Materials) { m.Adhesive.Form, m.Adhesive.Boards = finish.GlueBeads, finish.GlueDots },
			"panel adhesive, 10.2 fl oz, 2 10.1 fl oz cartridge",
		},
		{
			"a bead across the board: 7 × 4 in of π × 9/256 in2 = 3.093 in3 = 1.714 fl oz",
			finish.Work{Profile: boards, Pieces: []finish.Piece{{Width: in("4"), Height: in("96")}}},
			func(m *finish.Materials) { m.Adhesive.Form, m.Adhesive.Boards = finish.GlueBeads, finish.GlueBeads },
			"panel adhesive, 1.8 fl oz, 1 10.1 fl oz cartridge",
		},
		{
			"tape on both sides of 90 ft",
			finish.Work{Joints: []finish.Joint{{Kind: finish.CounterLine, Length: in("1080")}}},
			func(m *finish.Materials) { m.Tape.SealLines = "2"; m.Sealant.CounterLine.Leg = "0.001" },
			"kitchen and bath sealant, 0.1 fl oz, 1 10.1 fl oz cartridge; masking tape, 180 ft, 1 60 yd roll",
		},
		{
			"a tape along what stays bare, at a step too, for the last coat only; none in a corner that is painted over",
			finish.Work{Joints: []finish.Joint{{Kind: finish.InsideCorner, Length: in("144")}, {Kind: finish.CabinetLine, Length: in("540")},
				{Kind: finish.StepJoint, Length: in("540")}}},
			func(m *finish.Materials) {
				m.Tape.PaintLines, m.Paint.Top.After, m.Sealant.CabinetLine.Leg, m.Sealant.InsideCorner.Leg = "1", "1", "0.001", "0.001"
				m.Sealant.Step.Leg = "0.001"
			},
			"paintable sealant, 0.1 fl oz, 1 10.1 fl oz cartridge; masking tape, 90 ft, 1 60 yd roll",
		},
		{
			"a tape in the corner of a wall without panels",
			finish.Work{Joints: []finish.Joint{{Kind: finish.InsideCorner, Length: in("144"), Alone: true}, {Kind: finish.InsideCorner, Length: in("1080")}}},
			func(m *finish.Materials) {
				m.Tape.PaintLines, m.Paint.Top.After, m.Sealant.InsideCorner.Leg = "1", "1", "0.001"
			},
			"paintable sealant, 0.1 fl oz, 1 10.1 fl oz cartridge; masking tape, 12 ft, 1 60 yd roll",
		},
		{
			"no last coat, no tape for it",
			finish.Work{Joints: []finish.Joint{{Kind: finish.CabinetLine, Length: in("1080")}}},
			func(m *finish.Materials) { m.Tape.PaintLines, m.Sealant.CabinetLine.Leg = "1", "0.001" },
			"sealant, 0.1 fl oz, 1 10.1 fl oz cartridge",
		},
		{
			"a joint without a bead gets no tape",
			finish.Work{Joints: []finish.Joint{{Kind: finish.CabinetLine, Length: in("1080")}}},
			func(m *finish.Materials) { m.Tape.SealLines, m.Sealant.CabinetLine.Form = "2", finish.NoBead },
			"",
		},
		{
			"a cover 4 ft wide along 27 ft is one of 108 ft2",
			finish.Work{Width: in("324")},
			func(m *finish.Materials) { m.Sheeting.None = false },
			"sheeting for counter and floor, 108 ft2, 1 9 x 12 ft sheet",
		},
		{
			"ends of 60, 40, 36 and 56 in from strips of 96 in: two strips",
			finish.Work{Ends: []finish.End{{Length: in("60")}, {Length: in("40")}, {Length: in("36")}, {Length: in("56")}}},
			func(m *finish.Materials) { m.Trim.None, m.Trim.Allow = false, "0" },
			"edge trim, 16.01 ft, 2 8 ft strip", // as they are written: 5 + 3.34 + 3 + 4.67,
		},
		{
			"with their cuts they take three",
			finish.Work{Ends: []finish.End{{Length: in("60")}, {Length: in("40")}, {Length: in("36")}, {Length: in("56")}}},
			func(m *finish.Materials) { m.Trim.None = false },
			"edge trim, 16.01 ft, 3 8 ft strip",
		},
		{
			"an end longer than a strip is joined",
			finish.Work{Ends: []finish.End{{Run: "tall end", Length: in("100")}}},
			func(m *finish.Materials) { m.Trim.None, m.Trim.Allow = false, "0" },
			"edge trim, 8.34 ft, 2 8 ft strip",
		},
		{
			"two flush boxes, one of two gangs, behind 1/4 in of wood",
			finish.Work{Profile: plain, Boxes: []finish.Box{{Name: "a"}, {Name: "b", Gangs: 2}}},
			func(m *finish.Materials) {},
			"box extender 1/4 in, 1 gang, 1 extender, 1 extender; box extender 1/4 in, 2 gang, 1 extender, 1 extender; device screws 1 in, 6 screws, 1 pack of 10",
		},
		{
			"a box that stands back needs a deeper one, and a longer screw",
			finish.Work{Profile: plain, Boxes: []finish.Box{{Name: "a"}}},
			func(m *finish.Materials) {
				m.Boxes = []finish.BoxNote{{Name: "a", SetBack: "1/8"}}
			},
			"box extender 1/2 in, 1 gang, 1 extender, 1 extender; device screws 1 1/4 in, 2 screws, 1 pack of 10",
		},
		{
			"the least depth that reaches comes before the ring made for two gangs, which comes first at the same depth",
			finish.Work{Profile: plain, Boxes: []finish.Box{{Name: "a", Gangs: 2}, {Name: "b"}}},
			func(m *finish.Materials) {
				m.Extenders = []finish.Extender{{Gangs: 2, Depth: "1", Price: "9"}, {Depth: "3/8", Price: "3"}, {Gangs: 2, Depth: "3/8", Price: "5"}, {Gangs: 1, Depth: "1/8"}}
				m.Screws.DevicePerGang = "0"
			},
			"box extender 3/8 in, 1 gang, 1 extender, 1 extender; box extender 3/8 in, 2 gang, 1 extender, 1 extender",
		},
		{
			"a box that stands proud by the panel needs none",
			finish.Work{Profile: plain, Boxes: []finish.Box{{Name: "a"}}},
			func(m *finish.Materials) { m.Boxes = []finish.BoxNote{{Name: "a", SetBack: "-1/4"}} },
			"",
		},
		{
			"a box 1/4 in behind what cannot burn needs no extender, but its devices come out: spacers and longer screws",
			finish.Work{Profile: plain, Boxes: []finish.Box{{Name: "a", Gangs: 2}}},
			func(m *finish.Materials) { m.House.Material = finish.Noncombustible },
			"device spacers, 4 pieces, 1 pack of 10 spacers; device screws 1 in, 4 screws, 1 pack of 10",
		},
		{
			"behind what burns the extender brings it out: longer device screws, no spacers",
			finish.Work{Profile: plain, Boxes: []finish.Box{{Name: "a", Gangs: 2}}},
			func(m *finish.Materials) {},
			"box extender 1/4 in, 2 gang, 1 extender, 1 extender; device screws 1 in, 4 screws, 1 pack of 10",
		},
		{
			"a box that no extender reaches is moved, and needs no screws",
			finish.Work{Profile: plain, Boxes: []finish.Box{{Name: "a"}}},
			func(m *finish.Materials) { m.Boxes = []finish.BoxNote{{Name: "a", SetBack: "2"}} },
			"",
		},
		{
			"a corner takes another trim than an end",
			finish.Work{Ends: []finish.End{{Length: in("40")}, {Length: in("40"), Corner: true}}},
			func(m *finish.Materials) { m.Trim.None = false },
			"edge trim, 3.34 ft, 1 8 ft strip; corner trim, 3.34 ft, 1 8 ft strip",
		},
		{
			"behind 10 boards 4 in wide and 32 in high 3 strips of 40 in, 2 of 20 beside a window: 160 in; a nail each 16 in, 2 more for 2 strips; " +
				"3/4 strip + 1/2 wall + 3/4 in the stud = 2 in",
			finish.Work{Profile: boards, Sides: in("40"), Pieces: slices.Repeat([]finish.Piece{{Width: in("4"), Height: in("32")}}, 10)},
			func(m *finish.Materials) { m.Furring = finish.Furring{Thickness: "3/4", Waste: "0"} },
			"furring strips 3/4 in, 13.34 ft, 2 8 ft strip; strip nails 2 in, 12 pieces, 1 box of 100",
		},
		{
			"strips of 8 and of 4 ft: an end more for each 4 ft, 10 + 4 nails",
			finish.Work{Profile: boards, Sides: in("40"), Pieces: slices.Repeat([]finish.Piece{{Width: in("4"), Height: in("32")}}, 10)},
			func(m *finish.Materials) {
				m.Furring = finish.Furring{Thickness: "3/4", Waste: "0", Strips: []finish.Roll{{Name: "short", Length: "4'", Price: "1"}, {Name: "long", Length: "8'", Price: "2"}}}
			},
			"furring strips 3/4 in, 13.34 ft, 2 long; strip nails 2 in, 14 pieces, 1 box of 100",
		},
		{
			"a box behind boards of 3/4 on strips of 3/4 lies 1 1/2 in back",
			finish.Work{Profile: boards, Boxes: []finish.Box{{Name: "a"}}},
			func(m *finish.Materials) { m.Furring.Thickness = "3/4"; m.Screws.DevicePerGang = "0" },
			"box extender 1 1/2 in, 1 gang, 1 extender, 1 extender",
		},
		{
			"behind a sheet of 48 by 32 in: 3 level strips of 48, upright ones under both ends and a seam, 2 at an inside corner: 144 + 5 × 32 in",
			finish.Work{Profile: plain, Pieces: []finish.Piece{{Width: in("48"), Height: in("32")}}, Joints: []finish.Joint{
				{Kind: finish.EndJoint, Length: in("64")}, {Kind: finish.Seam, Length: in("32")}, {Kind: finish.InsideCorner, Length: in("32")}}},
			func(m *finish.Materials) {
				m.Furring, m.Sealant.End.Form, m.Sealant.InsideCorner.Form = finish.Furring{Thickness: "3/4", Waste: "0"}, finish.NoBead, finish.NoBead
			},
			"furring strips 3/4 in, 25.34 ft, 4 8 ft strip; strip nails 2 in, 23 pieces, 1 box of 100",
		},
		{
			"1 at an inside corner whose other wall stays bare: 144 + 3 × 32 in",
			finish.Work{Profile: plain, Pieces: []finish.Piece{{Width: in("48"), Height: in("32")}}, Joints: []finish.Joint{
				{Kind: finish.EndJoint, Length: in("64")}, {Kind: finish.InsideCorner, Length: in("32"), Alone: true}}},
			func(m *finish.Materials) {
				m.Furring, m.Sealant.End.Form, m.Sealant.InsideCorner.Form = finish.Furring{Thickness: "3/4", Waste: "0"}, finish.NoBead, finish.NoBead
			},
			"furring strips 3/4 in, 20 ft, 3 8 ft strip; strip nails 2 in, 18 pieces, 1 box of 100",
		},
		{
			"strips are not counted unless the job gives their thickness",
			finish.Work{Profile: boards, Sides: in("40"), Pieces: []finish.Piece{{Width: in("4"), Height: in("32")}}},
			func(m *finish.Materials) {},
			"",
		},
		{
			"sheets by their size and thickness",
			finish.Work{Profile: plain, Sheets: []finish.Sheet{{Name: "sheet", Count: 2, Width: in("48"), Length: in("96")}}},
			func(m *finish.Materials) {},
			"sheet 48 x 96 x 1/4 in, 2 sheets, 2 sheet",
		},
		{
			"what the job asks for on top",
			finish.Work{},
			func(m *finish.Materials) { m.Extras = []finish.Extra{{Item: "brush", Buy: 2}} },
			"brush, 2 pieces, 2 piece",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := bare()
			c.change(&m)
			var rows []string
			for _, r := range takeOff(t, c.work, m).Rows {
				rows = append(rows, fmt.Sprintf("%s, %s, %d %s", named(r), finish.Figure{Value: r.Quantity, Unit: r.Unit}, r.Buy, r.Container))
			}
			if diff := cmp.Diff(c.want, strings.Join(rows, "; ")); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// named is the item of a row with its name, its sizes (inches as fractions) and its gangs.
func named(r finish.Row) string {
	name := r.Item.String()
	if r.Name != "" {
		name = r.Name
	}
	var sizes []string
	for _, s := range r.Size {
		text := s.Value.String()
		if l, err := fraction.Parse(text, fraction.Inch); err == nil && s.Unit == finish.UnitInch {
			text = l.String()
		}
		sizes = append(sizes, text)
	}
	if len(sizes) > 0 {
		name += " " + strings.Join(sizes, " x ") + " " + r.Size[0].Unit.String()
	}
	if r.Gangs > 0 {
		name += fmt.Sprintf(", %d gang", r.Gangs)
	}
	return name
}

// termsOf are the terms of a row in one line.
func termsOf(r finish.Row) string {
	var all []string
	for _, x := range r.Terms {
		all = append(all, strings.TrimSpace(fmt.Sprintf("%s %s %s", x.Kind, x.Name, x.Value)))
	}
	return strings.ReplaceAll(strings.Join(all, "; "), "  ", " ")
}
