package finish_test

import (
	"encoding/json"
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
)

// sixteenths draws a length of up to most inches on a sixteenth, often a whole number and sometimes
// nothing.
func sixteenths(t *rapid.T, most int64, label string) fraction.Length {
	inch := rapid.Custom(func(t *rapid.T) int64 { return 16 * rapid.Int64Range(0, most).Draw(t, "inches") })
	n := rapid.OneOf(rapid.Just(int64(0)), inch, rapid.Int64Range(0, most*16)).Draw(t, label)
	return fraction.Of(n, 16)
}

// drawWork draws the finishing of a room of one profile, which the caller gives.
func drawWork(t *rapid.T, profile groove.Profile) finish.Work {
	w := finish.Work{
		Units:   rapid.SampledFrom([]fraction.Unit{fraction.Inch, fraction.Millimetre, fraction.Centimetre}).Draw(t, "units"),
		Profile: profile,
		Face:    sixteenths(t, 400, "face width").Times(sixteenths(t, 96, "face height")),
		Edges:   sixteenths(t, 2000, "edges"),
		Up:      sixteenths(t, 40, "width of what is up").Times(sixteenths(t, 96, "height of what is up")),
		Mitred:  rapid.Bool().Draw(t, "mitred"),
		Width:   sixteenths(t, 400, "width"),
		Sides:   sixteenths(t, 200, "sides of openings"),
		Highest: sixteenths(t, 96, "highest"),
		Cooking: rapid.Bool().Draw(t, "cooking"),
		Built:   rapid.SampledFrom([]int{0, 1920, 1977, 1978, 1989, 1990, 2020}).Draw(t, "built"),
	}
	for range rapid.IntRange(0, 6).Draw(t, "pieces") {
		w.Pieces = append(w.Pieces, finish.Piece{
			Width: sixteenths(t, 48, "piece width"), Height: sixteenths(t, 96, "piece height"), OpeningEdges: sixteenths(t, 40, "opening edges"),
		})
	}
	for range rapid.IntRange(0, 6).Draw(t, "joints") {
		w.Joints = append(w.Joints, finish.Joint{
			Kind:   finish.JointKind(rapid.IntRange(int(finish.CounterLine), int(finish.WindowJoint)).Draw(t, "kind")),
			Length: sixteenths(t, 300, "joint"), Gap: sixteenths(t, 1, "gap"), Grooves: rapid.Bool().Draw(t, "grooves"),
			Hidden: rapid.Float64().Draw(t, "hidden") < 0.2,
		})
	}
	for i := range rapid.IntRange(0, 4).Draw(t, "boxes") {
		w.Boxes = append(w.Boxes, finish.Box{Name: fmt.Sprint("box ", i), Gangs: rapid.IntRange(0, 4).Draw(t, "gangs"), Up: rapid.Float64().Draw(t, "up") < 0.2})
	}
	for range rapid.IntRange(0, 4).Draw(t, "ends") {
		w.Ends = append(w.Ends, finish.End{Run: "wall", Length: sixteenths(t, 120, "end"), Corner: rapid.Bool().Draw(t, "corner")})
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "trims") {
		w.Covers = append(w.Covers, finish.Covering{Name: fmt.Sprint("trim ", i), Length: sixteenths(t, 200, "trim")})
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "sheets") {
		s := finish.Sheet{Name: fmt.Sprint("sheet ", i), Count: rapid.IntRange(1, 9).Draw(t, "count"), Width: sixteenths(t, 48, "sheet width"), Length: sixteenths(t, 96, "sheet length")}
		if rapid.Bool().Draw(t, "priced") {
			s.Price = money.Of(decimal.New(rapid.Int64Range(0, 9999).Draw(t, "cents"), -2))
		}
		w.Sheets = append(w.Sheets, s)
	}
	return w
}

func drawProfile(t *rapid.T) groove.Profile {
	return rapid.SampledFrom(groove.Builtin()).Draw(t, "profile")
}

func price(t *rapid.T, label string) finish.Number {
	return finish.Number(decimal.New(rapid.Int64Range(1, 9999).Draw(t, label), -2).String())
}

// drawMaterials draws materials that all have a price.
func drawMaterials(t *rapid.T) finish.Materials {
	tins := []finish.Container{{Name: "quart", Size: "1 qt", Price: price(t, "quart")}, {Name: "gallon", Size: "1 gal", Price: price(t, "gallon")}, {Name: "litre", Size: "1 L", Price: price(t, "litre")}}
	tubes := []finish.Container{{Name: "tube", Size: "10.1 fl oz", Price: price(t, "tube")}, {Name: "large tube", Size: "28 fl oz", Price: price(t, "large tube")}}
	m := finish.Materials{
		Paint:    finish.Paint{Primer: finish.Coating{Containers: tins}, Top: finish.Coating{Containers: tins[:2]}, Groove: rapid.SampledFrom([]finish.GrooveShape{finish.SquareGroove, finish.VGroove}).Draw(t, "groove")},
		Sealant:  finish.Sealant{Cartridges: tubes, Backing: []finish.Roll{{Name: "rod", Length: "20'", Price: price(t, "rod")}}},
		Adhesive: finish.Adhesive{Form: rapid.SampledFrom([]finish.GlueForm{finish.GlueBeads, finish.GlueDots, finish.NoGlue, finish.GlueCustom}).Draw(t, "form"), Hold: rapid.SampledFrom([]finish.Hold{finish.LightHold, finish.FullHold}).Draw(t, "hold"), Cartridges: tubes},
		Nails:    finish.Nails{None: rapid.Bool().Draw(t, "no nails"), Packs: []finish.Pack{{Name: "hundred", Count: 100, Price: price(t, "hundred")}, {Name: "thousand", Count: 1000, Price: price(t, "thousand")}}},
		Furring: finish.Furring{
			Thickness: rapid.SampledFrom([]finish.Taped{"", `1/4"`, `3/4"`}).Draw(t, "furring"),
			Strips:    []finish.Roll{{Name: "lath", Length: "8'", Price: price(t, "lath")}, {Name: "long lath", Length: "12'", Price: price(t, "long lath")}},
			Packs:     []finish.Pack{{Name: "hundred", Count: 100, Price: price(t, "hundred screws")}},
		},
		Extenders: []finish.Extender{{Depth: `1/4"`, Price: price(t, "extender")}, {Depth: `1"`, Price: price(t, "deep extender")}, {Gangs: 2, Depth: `1"`, Price: price(t, "wide extender")}},
		Screws:    finish.Screws{Packs: []finish.Pack{{Name: "ten", Count: 10, Price: price(t, "ten")}}},
		Tape:      finish.Tape{Rolls: []finish.Roll{{Name: "roll", Length: "60'", Price: price(t, "roll")}, {Name: "long roll", Length: "180'", Price: price(t, "long roll")}}},
		Sheeting:  finish.Sheeting{Sheets: []finish.Cover{{Name: "cover", Size: "108 ft2", Price: price(t, "cover")}}},
		Trim:      finish.Trim{Stick: finish.Roll{Name: "strip", Length: "8'", Price: price(t, "strip")}},
		Tax:       finish.Number(decimal.New(rapid.Int64Range(0, 2500).Draw(t, "tax"), -4).String()),
		House: finish.House{Damp: rapid.Bool().Draw(t, "damp"), Material: rapid.SampledFrom([]finish.Material{finish.MDF, finish.SolidWood, finish.Noncombustible}).Draw(t, "material"),
			Backing: rapid.SampledFrom([]finish.Backing{finish.Gypsum, finish.Masonry, finish.BareStuds}).Draw(t, "backing")},
	}
	m.LeftoverWorth = finish.Number(rapid.SampledFrom([]string{"0", "0.5", "1"}).Draw(t, "leftover"))
	return m
}

func takeOff(t interface{ Fatal(...any) }, w finish.Work, m finish.Materials) finish.List {
	list, _, err := finish.TakeOff(w, m)
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// sizes of the packs of drawMaterials, in a unit of its own for each kind of thing.
var sizes = map[string]*big.Rat{
	"quart": unit("qt"), "gallon": unit("gal"), "litre": unit("L"), "tube": ounces("10.1"), "large tube": ounces("28"),
	"hundred": rat("100"), "thousand": rat("1000"), "ten": rat("10"), "roll": rat("60"), "long roll": rat("180"),
	"lath": rat("8"), "long lath": rat("12"), "rod": rat("20"), "cover": rat("108"), "strip": rat("1"), "extender": rat("1"),
}

// bought is how much of each item a list buys.
func bought(l finish.List) map[string]*big.Rat {
	total := map[string]*big.Rat{}
	for _, row := range l.Rows {
		item := named(row)
		if total[item] == nil {
			total[item] = new(big.Rat)
		}
		size := sizes[row.Container]
		if size == nil {
			size = rat("1")
		}
		total[item].Add(total[item], mul(size, big.NewRat(int64(row.Buy), 1)))
	}
	return total
}

func TestMoreWallNeverNeedsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		profile, m := drawProfile(t), drawMaterials(t)
		less, extra := drawWork(t, profile), drawWork(t, profile)
		more := less
		more.Face = less.Face.Add(extra.Face)
		more.Up = less.Up.Add(extra.Up)
		more.Mitred = less.Mitred // a mitre has no trim on it
		more.Covers = slices.Concat(less.Covers, extra.Covers)
		more.Edges = less.Edges.Add(extra.Edges)
		more.Width = less.Width.Add(extra.Width)
		more.Sides = less.Sides.Add(extra.Sides)
		more.Joints = slices.Concat(less.Joints, extra.Joints)
		more.Ends = slices.Concat(less.Ends, extra.Ends)
		more.Pieces = slices.Concat(less.Pieces, extra.Pieces)
		more.Boxes = slices.Concat(less.Boxes, extra.Boxes)
		for i := range min(len(less.Pieces), len(extra.Pieces)) { // and the pieces there are grow
			more.Pieces[i].Width = less.Pieces[i].Width.Add(extra.Pieces[i].Width)
			more.Pieces[i].Height = less.Pieces[i].Height.Add(extra.Pieces[i].Height)
		}
		a, b := takeOff(t, less, m), takeOff(t, more, m)
		grown := bought(b)
		for item, n := range bought(a) {
			if grown[item] == nil || grown[item].Cmp(n) < 0 {
				t.Fatalf("%s: %v for less wall, %v for more", item, n, grown[item])
			}
		}
		// Where leftovers keep a worth one may pay more now to have more left, so money is compared
		// where they have none.
		if m.LeftoverWorth == "0" && cents(b.Total) < cents(a.Total) {
			t.Fatalf("total %s for less wall, %s for more", a.Total, b.Total)
		}
	})
}

func TestTotalsAddUpToTheCent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawMaterials(t)
		l := takeOff(t, drawWork(t, drawProfile(t)), m)
		sum := int64(0)
		unpriced := 0
		for _, row := range l.Rows {
			if !row.Price.Known() {
				unpriced++
				continue
			}
			cost := cents(row.Price) * int64(row.Buy)
			if cents(row.Cost) != cost {
				t.Fatalf("%d × %s = %s", row.Buy, row.Price, row.Cost)
			}
			sum += cost
		}
		if cents(l.Subtotal) != sum {
			t.Fatalf("subtotal %s, the rows make %d cents", l.Subtotal, sum)
		}
		rate := rat(string(m.Tax)) // in ten-thousandths
		tax := new(big.Int).Add(new(big.Int).Mul(big.NewInt(sum*2), mul(rate, rat("10000")).Num()), big.NewInt(10000))
		tax.Quo(tax, big.NewInt(20000)) // halves up
		if cents(l.Tax) != tax.Int64() {
			t.Fatalf("tax %s on %s at %s, want %s cents", l.Tax, l.Subtotal, m.Tax, tax)
		}
		if cents(l.Total) != cents(l.Subtotal)+cents(l.Tax) || l.Unpriced != unpriced {
			t.Fatalf("total %s = %s + %s, %d unpriced, want %d", l.Total, l.Subtotal, l.Tax, l.Unpriced, unpriced)
		}
	})
}

// cents is an amount in whole cents, or -1 where it is finer: no decimal arithmetic of the
// package's own.
func cents(a money.Amount) int64 {
	whole, part, _ := strings.Cut(a.String(), ".")
	n, err := strconv.ParseInt(whole+(part + "00")[:2], 10, 64)
	if err != nil || len(part) > 2 {
		return -1
	}
	return n
}

func TestSameInputSameBytes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, m := drawWork(t, drawProfile(t)), drawMaterials(t)
		all := func() string {
			b, err := json.Marshal([]any{takeOff(t, w, m), finish.Cautions(w, m), finish.Schedule(w, m)})
			if err != nil {
				t.Fatal(err)
			}
			return string(b)
		}
		if first, second := all(), all(); first != second {
			t.Fatal(cmp.Diff(first, second))
		}
	})
}

func TestZeroMaterialsAreTheDefaults(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWork(t, drawProfile(t))
		if diff := cmp.Diff(takeOff(t, w, finish.Defaults(w.Units)), takeOff(t, w, finish.Materials{})); diff != "" {
			t.Fatalf("(-defaults +zero)\n%s", diff)
		}
	})
}

func TestUnitsChangeOnlyTheWriting(t *testing.T) {
	plain := cmpopts.IgnoreFields(finish.Row{}, "Size", "Quantity", "Unit", "Terms", "Source")
	rapid.Check(t, func(t *rapid.T) {
		w := drawWork(t, drawProfile(t))
		m := finish.Defaults(fraction.Inch) // every length with its unit, so that the job's units do not touch them
		w.Units = fraction.Inch
		inch := takeOff(t, w, m)
		w.Units = fraction.Millimetre
		metric := takeOff(t, w, m)
		if diff := cmp.Diff(inch.Rows, metric.Rows, plain); diff != "" {
			t.Fatalf("(-inch +metric)\n%s", diff)
		}
	})
}

func TestBoundsLieAboveByALittle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		chord := rapid.Int64Range(1, 2000).Draw(t, "chord")
		rise := rapid.Int64Range(1, 1000).Draw(t, "rise")
		if 2*rise > chord {
			chord = 2 * rise
		}
		c, h := big.NewRat(chord, 64), big.NewRat(rise, 64)
		x := new(big.Rat).Mul(c, h)
		root := finish.Root(x)
		below := new(big.Rat).Sub(root, rat("1/1000000000"))
		if new(big.Rat).Mul(root, root).Cmp(x) < 0 || below.Sign() > 0 && new(big.Rat).Mul(below, below).Cmp(x) >= 0 {
			t.Fatalf("root of %v: %v", x, root)
		}
	})
}

// TestNailsStandNoFurtherApartThanTheSpacing places the nails one by one and counts them.
func TestNailsStandNoFurtherApartThanTheSpacing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(1, 96).Draw(t, "width"), rapid.IntRange(1, 120).Draw(t, "height")
		edge, field, studs := rapid.IntRange(1, 12).Draw(t, "edge"), rapid.IntRange(1, 24).Draw(t, "field"), rapid.IntRange(4, 24).Draw(t, "studs")
		type place struct{ x, y string }
		nails := map[place]bool{}
		// even places from 0 to length, no further apart than spacing
		even := func(length, spacing int) []string {
			steps := 1
			for length > steps*spacing {
				steps++
			}
			var at []string
			for i := range steps + 1 {
				at = append(at, big.NewRat(int64(i*length), int64(steps)).String())
			}
			return at
		}
		// a support at either edge, and at studs, 2 studs ... from the left one between
		for x := 0; x < w; x += studs {
			along := field
			if x == 0 {
				along = edge
			}
			for _, y := range even(h, along) {
				nails[place{big.NewRat(int64(x), 1).String(), y}] = true
			}
		}
		for _, y := range even(h, edge) {
			nails[place{big.NewRat(int64(w), 1).String(), y}] = true
		}
		got := finish.NailsIn(finish.Piece{Width: fraction.Inches(int64(w)), Height: fraction.Inches(int64(h))},
			inches(edge), inches(field), inches(studs))
		if got != int64(len(nails)) {
			t.Fatalf("%d × %d, %d/%d on %d: %d nails, placed %d", w, h, edge, field, studs, got, len(nails))
		}
	})
}

func inches(n int) finish.Taped { return finish.Taped(fmt.Sprintf(`%d"`, n)) }

// TestWhatTheOrderAsksIsBought looks for each thing that the order of work names in the list or at
// hand, or for the doubt that says why it is not there.
func TestWhatTheOrderAsksIsBought(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, m := drawWork(t, drawProfile(t)), drawMaterials(t)
		list, _, err := finish.TakeOff(w, m)
		if err != nil {
			t.Fatal(err)
		}
		rows, terms := map[finish.Item]bool{}, map[finish.Item]map[finish.TermKind]int{}
		for _, r := range list.Rows {
			rows[r.Item] = true
			if terms[r.Item] == nil {
				terms[r.Item] = map[finish.TermKind]int{}
			}
			for _, term := range r.Terms {
				terms[r.Item][term.Kind]++
			}
		}
		solid, edged := false, w.Edges.Sign() > 0 && w.Profile.Thickness.Sign() > 0
		for _, p := range w.Pieces {
			solid = solid || p.Width.Sign() > 0 && p.Height.Sign() > 0
		}
		face := w.Face.Rat().Sign() > 0
		ask := func(needed bool, what string, is bool) {
			if needed && !is {
				t.Fatalf("the order asks for %s, the list has none: %v", what, finish.Schedule(w, m))
			}
		}
		asked, staged := map[finish.ActKind]bool{}, map[finish.Stage]bool{}
		for _, s := range finish.Schedule(w, m) {
			first := s.Stage == finish.StageFirstCoats
			switch s.Stage {
			case finish.StageMainsOff:
				ask(true, "a tester", slices.Contains(list.AtHand, finish.ToolTester) && slices.Contains(list.AtHand, finish.ToolCapsCovers))
			case finish.StageCut:
				ask(true, "fine paper", slices.Contains(list.AtHand, finish.ToolPaper))
			case finish.StageMiter:
				length := fraction.Length{}
				for _, j := range w.Joints {
					if j.Kind == finish.OutsideCorner {
						length = length.Add(j.Length)
					}
				}
				ask(length.Sign() > 0, "glue of miters", rows[finish.ItemMiterGlue])
			case finish.StageTrim:
				ask(true, "trims", rows[finish.ItemCovering] || rows[finish.ItemEdgeTrim] || rows[finish.ItemCornerTrim])
			case finish.StageSealWet:
				ask(true, "sealant of kitchens", rows[finish.ItemWetSealant])
			}
			for _, a := range s.Acts {
				switch a.Kind {
				case finish.ActPrimer:
					ask(face, "primer", rows[finish.ItemPrimer])
				case finish.ActTopCoat:
					ask(face, "top coat", rows[finish.ItemTopCoat])
				case finish.ActEdges:
					ask(first && edged, "paint for edges", terms[finish.ItemPrimer][finish.TermEdges]+terms[finish.ItemTopCoat][finish.TermEdges] == 1)
				case finish.ActBacks:
					coats := 0
					for _, c := range s.Acts {
						if c.Kind == finish.ActPrimer || c.Kind == finish.ActTopCoat {
							coats++
						}
					}
					ask(face, "paint for backs", terms[finish.ItemPrimer][finish.TermBacks]+terms[finish.ItemTopCoat][finish.TermBacks] == coats)
				case finish.ActRod:
					ask(true, "backing rod", rows[finish.ItemBackingRod])
				case finish.ActGrooves:
					item := finish.ItemWetSealant
					if s.Stage == finish.StageSeal {
						item = of(rows[finish.ItemSealant], finish.ItemSealant, finish.ItemPaintableSealant)
					}
					ask(true, "sealant for grooves", terms[item][finish.TermRepeats] == 1)
				case finish.ActBeads, finish.ActDots, finish.ActAdhesive:
					ask(solid, "adhesive", rows[finish.ItemAdhesive])
				case finish.ActCounter:
					ask(true, "sheeting", rows[finish.ItemCounterSheeting])
				case finish.ActFloor:
					ask(true, "sheeting", rows[finish.ItemFloorSheeting])
				case finish.ActJoints:
					ask(true, "tape", rows[finish.ItemTape])
				case finish.ActNails, finish.ActScrews:
					ask(solid, "nails or screws", rows[finish.ItemPanelNails] || rows[finish.ItemBoardNails])
				case finish.ActStripsListed:
					ask(solid, "strips", (rows[finish.ItemFurringStrips] && rows[finish.ItemStripNails] || rows[finish.ItemTreatedStrips] && rows[finish.ItemStripAnchors]))
				case finish.ActExtenders:
					ask(true, "extenders", rows[finish.ItemExtender])
				}
				asked[a.Kind] = true
			}
			staged[s.Stage] = true
		}
		// and the other way round
		for item, is := range map[finish.Item]bool{
			finish.ItemExtender: asked[finish.ActExtenders], finish.ItemBackingRod: asked[finish.ActRod], finish.ItemTape: asked[finish.ActJoints] || staged[finish.StageLastCoats],
			finish.ItemWetSealant: staged[finish.StageSealWet], finish.ItemPaintableSealant: staged[finish.StageSeal],
			finish.ItemSealant: staged[finish.StageSeal], finish.ItemMiterGlue: staged[finish.StageMiter],
			finish.ItemEdgeTrim: staged[finish.StageTrim], finish.ItemCovering: staged[finish.StageTrim], finish.ItemFurringStrips: staged[finish.StageStrips],
			finish.ItemPanelNails: asked[finish.ActNails] || asked[finish.ActScrews], finish.ItemBoardNails: asked[finish.ActNails] || asked[finish.ActScrews],
			finish.ItemCounterSheeting: asked[finish.ActCounter], finish.ItemFloorSheeting: asked[finish.ActFloor],
			finish.ItemAdhesive: asked[finish.ActBeads] || asked[finish.ActDots] || asked[finish.ActAdhesive],
		} {
			if rows[item] && !is && len(w.Pieces) > 0 {
				t.Fatalf("the list has %s, the order has no use for it: %v", item, finish.Schedule(w, m))
			}
		}
	})
}

func of[T any](holds bool, yes, no T) T {
	if holds {
		return yes
	}
	return no
}

// TestNothingHiddenIsSealed leaves out the joints that a trim covers: sealants, rod and tape stay.
func TestNothingHiddenIsSealed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, m := drawWork(t, drawProfile(t)), drawMaterials(t)
		sealing := func(w finish.Work) (rows []finish.Row) {
			for _, r := range takeOff(t, w, m).Rows {
				switch r.Item {
				case finish.ItemSealant, finish.ItemPaintableSealant, finish.ItemWetSealant, finish.ItemBackingRod, finish.ItemTape:
					rows = append(rows, r)
				}
			}
			return rows
		}
		seen := w
		seen.Joints = slices.DeleteFunc(slices.Clone(w.Joints), func(j finish.Joint) bool { return j.Hidden })
		if diff := cmp.Diff(sealing(seen), sealing(w)); diff != "" {
			t.Fatalf("(-without hidden joints +with them)\n%s", diff)
		}
	})
}

// TestWorkIsInTheOrderOfHands: the steps come in the order of the stages, the survey is checked by the lines on
// the wall before anything is sawn, the wires are dead and the pieces
// tried before they are painted, and every piece is fitted once, in its order, one that closes a run by
// itself.
func TestWorkIsInTheOrderOfHands(t *testing.T) {
	hands := []finish.Stage{finish.StageLines, finish.StageMainsOff, finish.StageDryFit, finish.StageFirstCoats, finish.StageFit, finish.StageFill,
		finish.StageSeal, finish.StageLastCoats, finish.StageDevices, finish.StagePowerOn}
	if !slices.IsSorted(hands) {
		t.Errorf("the stages are not in the order of hands: %v", hands)
	}
	rapid.Check(t, func(t *rapid.T) {
		w, m := drawWork(t, drawProfile(t)), drawMaterials(t)
		w.Fitting, w.Closing = nil, nil
		for i := range rapid.IntRange(0, 9).Draw(t, "pieces") {
			w.Fitting = append(w.Fitting, strconv.Itoa(i))
			if rapid.Bool().Draw(t, "closing") {
				w.Closing = append(w.Closing, strconv.Itoa(i))
			}
		}
		var fitted, closing []string
		steps := finish.Schedule(w, m)
		for i, s := range steps {
			if i > 0 && s.Stage <= steps[i-1].Stage {
				t.Fatalf("%v comes after %v", s.Stage, steps[i-1].Stage)
			}
			for _, a := range s.Acts {
				if s.Stage != finish.StageFit || len(a.Labels) == 0 {
					continue
				}
				fitted = append(fitted, a.Labels...)
				if a.Kind == finish.ActClosing {
					if closing = append(closing, a.Labels...); len(a.Labels) != 1 {
						t.Fatalf("closed together: %v", a.Labels)
					}
				}
			}
		}
		if len(steps) > 0 && (!slices.Equal(fitted, w.Fitting) || !slices.Equal(closing, w.Closing)) {
			t.Fatalf("fitted %v, closing %v, want %v and %v", fitted, closing, w.Fitting, w.Closing)
		}
	})
}
