package plan_test

import (
	"math"
	"math/big"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// The texts. None is a maker's name.
const (
	handbook    = "NIST Handbook 44, Appendix C"
	cfr         = "16 CFR 500.19, conversion chart"
	bulletin    = "a coatings bulletin on spreading rates"
	guide       = "an estimating guide, table of coverage"
	column      = "a paint consultant's column"
	glossary    = "a corrosion glossary, practical coverage"
	magazine    = "a magazine how-to on house painting"
	primers     = "a how-to article on primer"
	interior    = "a how-to article on interior paint"
	army        = "US Army TM 43-0139, table 3-2"
	cartridges  = "a how-to article on sealant sizes"
	painters    = "a general article on painter's sealant"
	county      = "a county building specification, 3.06 joint design"
	detailing   = "a text on architectural detailing, joints"
	tips        = "a sealant maker's tips on quantities"
	silicone    = "a sealant maker's guide to coverage"
	magazineNEC = "NEC 314.20 and a trade magazine's case of panelling over gypsum"
	cabin       = "a how-to magazine on boards"
	nec314      = "NEC 314.20"
	nec300      = "NEC 300.4"
	ontario     = "Ontario Building Code, nails for fibreboard finish"
	hardboards  = "Ontario guidance on hardboard sheets"
	textbook    = "an open textbook of the University of Hawaii, nail lengths"
	navy        = "NAVEDTRA 14044, figure 5-8"
	porch       = "a how-to magazine on a beaded porch ceiling"
	upright     = "a how-to article on upright boards"
	tongueRoot  = "a how-to article on tongue and groove, at 45 degrees; 3/4 in into the support: the Ontario code"
	beadedPly   = "a maker's guide to beaded plywood"
	leaflet     = "a leaflet of a lumber trade association"
	tin         = "a paint maker's page on primer"
	enamel      = "a paint maker's sheet on enamel"
	glueTube    = "a maker's manual of a construction adhesive"
	gluePage    = "a how-to article on a construction adhesive"
	caulkTube   = "a caulk maker's tips"
	caulkSheet  = "a caulk maker's data sheet"
	caulkPage   = "a page on painter's caulk"
	caulkFAQ    = "a sealant supplier's questions and answers"
	architects  = "NEMA WD 6 in an architects' reference"
	plates      = "an article on two-gang plates"
	association = "a lumber association's table of coverage"
	mill        = "a mill's table of coverage"
	dealer      = "a lumber dealer's article on nickel gap"
	mdfBody     = "a trade body for MDF, wall panelling"
	epa         = "EPA, to owners of older homes"
	irc         = "IRC R702.5, 2018"
	slats       = "a maker's drawing of slat tiles"
	kerfs       = "tool articles on kerf"
	arcs        = "a woodworkers' knowledge base, radius of an arc"
	carpenters  = "a carpenters' guide on square corners"
	framing     = "a framing text on square corners"
	tiles       = "ANSI A108.02 in tile-training columns"
	hand        = "by hand"
)

// addresses are where the texts were read.
var addresses = [][2]string{
	{handbook, "https://yumpu.com/en/document/view/67962081/vdoc/461 (pages 381 and 382)"},
	{cfr, "https://www.law.cornell.edu/cfr/text/16/500.19"},
	{bulletin, "https://www.scribd.com/document/343849341/Spreading-Rate-pdf"},
	{guide, "https://www.scribd.com/document/104802451/Calculation-DFT-WFT-Measurement"},
	{column, "http://www.paintcenter.org/rj/dec09a.cfm (coverage) and http://www.paintcenter.org/rj/oct03e.cfm (transfer)"},
	{glossary, "https://www.corrosionpedia.com/definition/2294/practical-coverage"},
	{magazine, "http://www.motherearthnews.com/print.aspx?id=%7BADE63D3C-9D4E-456C-A1B6-736054F0C84B%7D"},
	{primers, "https://housepainter.pro/how-many-gallons-of-paint-for-a-2000-sq-ft-house-interior"},
	{interior, "https://homesteady.com/how-6087766-calculate-number-gallons-paint.html"},
	{army, "https://automotiveaccessories.tpub.com/TM-43-0139/css/TM-43-0139_43.htm"},
	{cartridges, "https://engineerfix.com/what-are-the-standard-caulk-sizes-and-coverage"},
	{painters, "https://woodnbits.com/blog/mastering-the-art-of-painter-s-caulk-for-seamless-trim-installation"},
	{county, "http://server3.co.orange.nc.us:8088/WebLink/0/doc/43886/Page162.aspx"},
	{detailing, "https://www.northernarchitecture.us/architectural-detailing-2/j-jze.html"},
	{tips, unnamed}, {silicone, unnamed}, {tin, unnamed}, {enamel, unnamed}, {glueTube, unnamed}, {gluePage, unnamed}, {caulkTube, unnamed}, {caulkSheet, unnamed},
	{caulkPage, "https://zddhouse.com (painter's caulk)"},
	{caulkFAQ, unnamed}, {slats, unnamed}, {mill, unnamed}, {dealer, unnamed}, {association, unnamed},
	{mdfBody, "https://mdf-info.eu/applications/building-applications/wall-panelling"},
	{magazineNEC, "https://www.ecmweb.com/whats-wrong-here/what-s-wrong-here-hint-matter-depth"},
	{cabin, "https://cabinlife.com/articles/diy-dress-up-your-place-with-tongue-and-groove-woodwork"},
	{nec314, "https://www.electricallicenserenewal.com/Electrical-Continuing-Education-Courses/NEC-Content.php?sectionID=285.0"},
	{nec300, "http://www.naffainc.com/x/CB2/Elect/300-4.HTM and http://ecmweb.com/whats-wrong-here/whats-wrong-here-66?page=2"},
	{architects, "https://archtoolbox.com/electrical-faceplate-types-and-dimensions"},
	{plates, "https://www.worldsrichpeople.com/how-wide-is-a-2-gang-cover-plate/"},
	{epa, "https://19january2021snapshot.epa.gov/lead/how-can-homeowners-protect-themselves-and-their-families-exposure-lead-dust-if-they-plan-doing_.html"},
	{irc, "http://online.flipbuilder.com/mewf/mima/files/basic-html/page388.html"},
	{ontario, "https://www.buildingcode.online/2096.html"},
	{hardboards, "https://www.oncodes.ca/exterior-finishes/hardboard-panels-as-exterior-cladding/ (of cladding)"},
	{textbook, "https://pressbooks.oer.hawaii.edu/buildingmaint/chapter/hammers"},
	{navy, "https://constructionmanuals.tpub.com/14044/css/Figure-5-8-Dimpling-of-gypsum-drywall-164.htm"},
	{porch, "https://extremehowto.com/install-a-beadboard-porch-ceiling/"},
	{upright, "https://engineerfix.com/how-to-install-vertical-tongue-and-groove-paneling/"},
	{tongueRoot, "https://engineerfix.com/do-you-start-with-the-tongue-or-groove-against-the-wall/ and https://www.buildingcode.online/2096.html"},
	{beadedPly, unnamed},
	{leaflet, "https://docslib.org/doc/9145555/paneling-basics-pattern-selection-and-installation-information"},
	{tiles, "https://www.fcimag.com/articles/95138-ctef-tile-tip-is-a-balanced-tile-layout-really-difficult-to-achieve and " +
		"https://www.floortrendsmag.com/articles/111279-substandard-to-tile-installation-standards"},
	{kerfs, "https://www.slashgear.com/1866963/kerf-cut-woodworking-meaning/ and https://sawhubs.com/how-wide-is-a-table-saw-kerf"},
	{arcs, "http://www.woodweb.com/knowledge_base/Radius_of_an_arc.html?vm=r"},
	{carpenters, "https://chestofbooks.com/home-improvement/woodworking/Carpenters-Guide/How-To-Square-A-Foundation.html"},
	{framing, "http://boulderlibrary.net/framing/checking-reference.html"},
}

const unnamed = "address left out, as it names a maker or a dealer"

// volumes is a seam 1/4 in wide filled 1/4 in deep that takes 462,000 cubic inches, 2000 gallons.
func volumes(u fraction.Unit) (finish.Work, finish.Materials) {
	w := finish.Work{Units: u, Profile: sheet("3/4"), Joints: []finish.Joint{{Kind: finish.Seam, Length: fraction.Inches(16 * 462000), Gap: in("1/4")}}}
	return w, finish.Materials{Sealant: finish.Sealant{Waste: "0", Seam: finish.Bead{Form: finish.Butt, Depth: `1/4"`}}}
}

func (f *figures) units() {
	filled := rat("462000") // in3
	in3, mm3 := func(item finish.Item) (*big.Rat, *big.Rat) {
		w, m := volumes(fraction.Inch)
		metric, same := volumes(fraction.Millimetre)
		return f.need(w, m, item), f.need(metric, same, item)
	}(finish.ItemPaintableSealant)
	packs := func(size finish.Volume) *big.Rat {
		w, m := volumes(fraction.Inch)
		m.Sealant.Cartridges = []finish.Container{{Name: "pack", Size: size}}
		return quo(filled, big.NewRat(int64(f.list(w, m)[0].Buy), 1))
	}
	f.add(byTakeOff, "gallon", "231 in3 exactly", "231", packs("1 gal"), "0", handbook, read)
	f.add(byTakeOff, "pint", "28.875 in3", "28.875", packs("1 pt"), "0", handbook, read)
	f.add(byTakeOff, "litre", "61.024 in3", "61.024", quo(filled, quo(mm3, rat("1000"))), "0.0005", handbook, read)
	f.add(byTakeOff, "cubic inch", "16.3871 cm3", "16.3871", quo(mm3, filled), "0.00005", cfr, read)
	f.add(byTakeOff, "fluid ounce", "29.5735 mL", "29.5735", quo(mm3, in3), "0.00005", cfr, read)

	coats := func(u fraction.Unit) *big.Rat { // of 100 times the volume
		w := finish.Work{Units: u, Face: fraction.Inches(4 * 462000).Times(fraction.Inches(100))}
		return f.need(w, finish.Materials{Paint: finish.Paint{Loss: "0", Primer: finish.Coating{Before: "1", Solids: "1", DryFilm: `1/4"`,
			Containers: []finish.Container{{Name: "tank", Size: "1000 gal"}}}, Top: finish.Coating{Before: "0", After: "0"}}}, finish.ItemPrimer)
	}
	quarts, litres := coats(fraction.Inch), coats(fraction.Millimetre)
	f.add(byTakeOff, "quart", "0.946353 L", "0.946353", quo(litres, quarts), "0.0000005", cfr, read)
	f.add(byTakeOff, "gallon", "3.78541 L", "3.78541", mul(rat("4"), quo(litres, quarts)), "0.000005", cfr, read)
	f.wrong(byTakeOff, "pint", "473.177 mL", "473.176473", mul(rat("500"), quo(litres, quarts)), "0.000005", cfr, "the exact value rounds to 473.176")

	strip := func(u fraction.Unit) *big.Rat {
		return f.need(finish.Work{Units: u, Ends: []finish.End{{Length: fraction.Inches(120000)}}}, finish.Materials{}, finish.ItemEdgeTrim)
	}
	f.add(byTakeOff, "foot", "304.8 mm", "304.8", mul(rat("1000"), quo(strip(fraction.Millimetre), strip(fraction.Inch))), "0", cfr, read)
	cover := func(u fraction.Unit) *big.Rat {
		w := finish.Work{Units: u, Width: fraction.Inches(9600000)}
		return f.need(w, finish.Materials{House: finish.House{Datum: "0"}, Sheeting: finish.Sheeting{Reach: `12"`}}, finish.ItemFloorSheeting)
	}
	feet, metres := cover(fraction.Inch), cover(fraction.Millimetre)
	f.add(byTakeOff, "square foot", "929.0304 cm2", "929.0304", mul(rat("10000"), quo(metres, feet)), "0.0002", cfr, read)
	f.add(byTakeOff, "square metre", "10.7639 ft2", "10.7639", quo(feet, metres), "0.00005", cfr, read)
}

// coated is the quarts or litres of one coat of primer over 1,000,000 ft2 or 100,000 m2.
func (f *figures) coated(u fraction.Unit, p groove.Profile, c finish.Paint) *big.Rat {
	face := fraction.Inches(12000).Times(fraction.Inches(12000))
	if u != fraction.Inch {
		face = fraction.Millimetres(1000000, 1).Times(fraction.Millimetres(100000, 1))
	}
	c.Primer.Before, c.Top = "1", finish.Coating{Before: "0", After: "0"}
	c.Primer.Containers = []finish.Container{{Name: "tank", Size: "1000 gal"}}
	return f.need(finish.Work{Units: u, Face: face, Profile: p}, finish.Materials{Paint: c}, finish.ItemPrimer)
}

// spread is the coverage of paint in ft2 per US gallon, or m2 per litre, as the list uses it.
func (f *figures) spread(u fraction.Unit, c finish.Paint) *big.Rat {
	if u != fraction.Inch {
		return quo(rat("100000"), f.coated(u, groove.Profile{}, c))
	}
	return quo(rat("4000000"), f.coated(u, groove.Profile{}, c))
}

// solids is the coverage at a share of solids and a dry film.
func (f *figures) solids(u fraction.Unit, solids finish.Number, film finish.Taped, loss finish.Number) *big.Rat {
	return f.spread(u, finish.Paint{Loss: loss, Primer: finish.Coating{Solids: solids, DryFilm: film}})
}

func (f *figures) paint() {
	inch, metric := fraction.Inch, fraction.Millimetre
	f.add(byTakeOff, "1 gal of solids, 1 mil", "1604 ft2", "1604", f.solids(inch, "1", "0.001", "0"), "0.5", bulletin, read)
	f.add(byTakeOff, "1 gal of solids, 1 mil", "1604 ft2", "1604", f.solids(inch, "1", "0.001", "0"), "0.5", column, read)
	f.add(byTakeOff, "1 L of solids, 1 µm (ours: 10 µm, ten times)", "1000 m2", "1000", mul(rat("10"), f.solids(metric, "1", "0.01", "0")), "0.5", bulletin, read)
	for _, row := range []struct {
		percent string
		solids  finish.Number
		mils    string
		film    finish.Taped
		printed string
	}{
		{"35", "0.35", "1", "0.001", "561"}, {"35", "0.35", "2", "0.002", "281"}, {"40", "0.40", "1", "0.001", "642"}, {"40", "0.40", "2", "0.002", "321"},
		{"45", "0.45", "2", "0.002", "361"}, {"50", "0.50", "3", "0.003", "267"}, {"50", "0.50", "4", "0.004", "201"}, {"100", "1", "10", "0.010", "160"},
	} {
		f.add(byTakeOff, row.percent+" % solids, "+row.mils+" mil dry", row.printed+" ft2/gal", row.printed, f.solids(inch, row.solids, row.film, "0"), "1", guide, read)
	}
	f.wrong(byTakeOff, "72 % solids, 2 mil dry", "527 ft2/gal", "577.5", f.solids(inch, "0.72", "0.002", "0"), "0.01", guide, "one misprint among 192 cells")
	f.add(byTakeOff, "65 % solids, 5 mil dry", "208.52 ft2/gal", "208.52", f.solids(inch, "0.65", "0.005", "0"), "0.05", bulletin, read)
	f.add(byTakeOff, "65 % solids, 125 µm dry", "5.2 m2/L", "5.2", f.solids(metric, "0.65", "0.125", "0"), "0.0005", bulletin, read)
	f.add(byTakeOff, "the same, given as its coverage", "5.2 m2/L", "5.2", f.spread(metric, finish.Paint{Loss: "0", Primer: finish.Coating{Coverage: "5.2 m2/L"}}), "0.0005", bulletin, read)
	f.add(byTakeOff, "100 ft2/gal less 30 %", "70 ft2/gal", "70", f.solids(inch, "0.6", "0.009625", "0.3"), "0.001", glossary, read)
	f.add(byTakeOff, "52 % solids, 1.5 mil, 30 % reach the wall", "167 ft2/gal", "167", f.solids(inch, "0.52", "0.0015", "0.7"), "0.5", column, read)

	// A plan 20 by 40 ft, 13 + 2 ft high: the gallons of each coat.
	house := finish.Work{Face: fraction.Inches(120 * 12).Times(fraction.Inches(15 * 12))}
	m := finish.Materials{Paint: finish.Paint{Loss: "0", Primer: finish.Coating{Before: "1", Coverage: "450 ft2/gal"},
		Top: finish.Coating{Before: "0", After: "1", Coverage: "500 ft2/gal"}}}
	under, top := quo(f.need(house, m, finish.ItemPrimer), rat("4")), quo(f.need(house, m, finish.ItemTopCoat), rat("4"))
	f.add(byTakeOff, "house of 1800 ft2, undercoat at 450", "4 gal", "4", under, "0", magazine, read)
	f.add(byTakeOff, "house of 1800 ft2, top coat at 500", "3.6 gal", "3.6", top, "0", magazine, readOurs)
	f.wrong(byTakeOff, "house of 1800 ft2, top coat at 500", "three and a half gal", "18/5", top, "0", magazine, "1800/500 is 3.6")

	// The planning figures of a job that gives none, without loss.
	usual := func(u fraction.Unit, perUnit string) (primer, top *big.Rat) {
		w := finish.Work{Units: u, Face: fraction.Inches(12000).Times(fraction.Inches(1200))}
		m := finish.Materials{Paint: finish.Paint{Loss: "0", Top: finish.Coating{Before: "0", After: "1"}}}
		return quo(rat(perUnit), f.need(w, m, finish.ItemPrimer)), quo(rat(perUnit), f.need(w, m, finish.ItemTopCoat))
	}
	primer, coat := usual(inch, "400000") // 100,000 ft2 in quarts to the gallon
	f.add(byTakeOff, "our planning figure for primer", "200 to 300 ft2/gal", "250", primer, "50", primers, read)
	f.wrong(byTakeOff, "the same", "about 400 ft2/gal", "250", primer, "0.01", tin, "one paint maker's; ours buys more, and the can decides")
	f.add(byTakeOff, "our planning figure for top coat", "350 to 400 ft2/gal", "375", coat, "25.1", interior, read)
	f.add(byTakeOff, "the same against oil paint on plaster, second coat", "300 to 400 ft2/gal", "350", coat, "50", army, read)
	f.add(byTakeOff, "the same against oil paint on weathered wood, prime", "300 to 400 ft2/gal", "350", coat, "50", army, read)
	primer, coat = usual(metric, "378541.1784") // the same face, in litres to the gallon
	f.add(byTakeOff, "our metric planning figure for primer, in ft2/gal", "200 to 300 ft2/gal", "250", primer, "50", primers, read)
	f.add(byTakeOff, "our metric planning figure for top coat, in ft2/gal", "350 to 400 ft2/gal, less 1 %", "375", coat, "29", interior, read)

	// What is coated besides the face, on a sheet of 4 by 8 ft, 1/4 in thick, at 1 ft2 a quart.
	extra := func(change func(*finish.Materials)) *big.Rat {
		w := finish.Work{Profile: sheet("1/4"), Face: fraction.Inches(48).Times(fraction.Inches(96)), Edges: fraction.Inches(288)}
		m := finish.Materials{Paint: finish.Paint{Loss: "0", EdgeCoats: "0", Primer: finish.Coating{Coverage: "4 ft2/gal"}, Top: finish.Coating{Before: "0", After: "0"}}}
		bare := f.need(w, m, finish.ItemPrimer)
		change(&m)
		return sub(f.need(w, m, finish.ItemPrimer), bare)
	}
	f.add(byTakeOff, "sawn edges of a 4 × 8 ft sheet 1/4 in thick, coats by default", "24 ft × 1/4 in × 2 = 1 ft2", "1",
		extra(func(m *finish.Materials) { m.Paint.EdgeCoats = "" }), "0", hand, practice)
	f.add(byTakeOff, "its back where it is damp, one coat", "32 ft2", "32", extra(func(m *finish.Materials) { m.House.Damp = true }), "0", hand, practice)
	loss := finish.Work{Face: fraction.Inches(12000).Times(fraction.Inches(1200))}
	full := finish.Paint{Loss: "0", Primer: finish.Coating{Solids: "0.4", DryFilm: "0.001"}}
	less := full
	less.Loss = ""
	f.add(byTakeOff, "our loss by brush and roller", "5 to 15 %", "0.1", sub(rat("1"), quo(f.need(loss, finish.Materials{Paint: full}, finish.ItemPrimer),
		f.need(loss, finish.Materials{Paint: less}, finish.ItemPrimer))), "0.05", hand, memory)
	vee := func(w, d, pitch string) *big.Rat {
		p := groove.Profile{Features: []groove.Feature{{Width: in(pitch).Sub(in(w))}, {Kind: groove.Groove, Width: in(w), Depth: in(d)}}}
		c := finish.Paint{Groove: finish.VGroove, Loss: "0", Primer: finish.Coating{Coverage: "400 ft2/gal"}}
		return quo(f.coated(inch, p, c), f.coated(inch, groove.Profile{}, c))
	}
	face := func(feature groove.Feature) *big.Rat { // beside as much flat
		p := groove.Profile{Features: []groove.Feature{{Width: feature.Width}, feature}}
		c := finish.Paint{Loss: "0", Primer: finish.Coating{Coverage: "400 ft2/gal"}}
		return quo(f.coated(inch, p, c), f.coated(inch, groove.Profile{}, c))
	}
	f.add(byTakeOff, "face half of half-round beads 1/2 × 1/4", "(1 + π/2)/2 = 1.2854", "1.2854", face(groove.Feature{Kind: groove.Bead, Width: in("1/2"), Depth: in("1/4")}), "0.00005", hand, derived)
	f.add(byTakeOff, "face half of beads 24 in wide that rise 6 in", "arc 27.8188: 1.0796", "1.0796", face(groove.Feature{Kind: groove.Bead, Width: in("24"), Depth: in("6")}), "0.00005", hand, derived)
	f.add(byTakeOff, "face half of square grooves 1/4 × 1/8", "(1 + 2)/2 = 1.5", "1.5", face(groove.Feature{Kind: groove.Groove, Width: in("1/4"), Depth: in("1/8")}), "0.00005", hand, derived)
	f.add(byTakeOff, "face with V-grooves 1/8 × 1/16 at 2 in", "1.0259", "1.0259", vee("1/8", "1/16", "2"), "0.00005", hand, derived)
	f.add(byTakeOff, "face with V-grooves 3/16 × 1/8 at 1-5/8 in", "1.0769", "1.0769", vee("3/16", "1/8", "1 5/8"), "0.00005", hand, derived)
}

// root is a square root, to show a diameter.
func root(x *big.Rat) *big.Rat {
	v, _ := x.Float64()
	return new(big.Rat).SetFloat64(math.Sqrt(v))
}

// joint returns the cubic inches of sealant in a foot of a joint, by the fluid ounces of 100,000 ft.
func (f *figures) joint(kind finish.JointKind, gap, thickness string, s finish.Sealant) *big.Rat {
	w := finish.Work{Profile: sheet(thickness), Joints: []finish.Joint{{Kind: kind, Length: fraction.Inches(1200000), Gap: in(gap)}}}
	if s.Waste == "" {
		s.Waste = "0"
	}
	for _, item := range []finish.Item{finish.ItemPaintableSealant, finish.ItemWetSealant} {
		if n := f.need(w, finish.Materials{Sealant: s}, item); n.Sign() > 0 {
			return mul(n, rat("231/128"), rat("1/100000"))
		}
	}
	return new(big.Rat)
}

func (f *figures) sealant() {
	butt := func(depth finish.Taped) finish.Sealant {
		return finish.Sealant{Bridge: `1"`, Seam: finish.Bead{Form: finish.Butt, Depth: depth}}
	}
	feet := func(ounces, width, depth string) *big.Rat {
		return quo(mul(rat(ounces), rat("231/128")), f.joint(finish.Seam, width, "3/4", butt(finish.Taped(depth+`"`))))
	}
	f.add(byTakeOff, "10 fl oz in a joint 1/4 × 1/4, low end", "24 ft", "24", feet("10", "1/4", "1/4"), "0.5", cartridges, read)
	f.wrong(byTakeOff, "10.5 fl oz in a joint 1/4 × 1/4, high end", "27 ft", "25.265625", feet("10.5", "1/4", "1/4"), "0.001", cartridges, "27 ft would need 11.2 fl oz")
	for _, row := range []struct{ width, depth, printed string }{{"1/4", "1/4", "308"}, {"3/8", "1/4", "205"}, {"1/2", "1/4", "154"}, {"1/2", "1/2", "77"}} {
		f.add(byTakeOff, "1 gal in a joint "+row.width+" × "+row.depth, row.printed+" ft", row.printed, feet("128", row.width, row.depth), "0.5", "many sealant tables", memory)
	}
	for _, row := range []struct{ width, depth, feet string }{
		{"1/8", "1/8", "97.21"}, {"3/8", "3/8", "10.80"}, {"1/4", "1/8", "48.61"}, {"3/8", "1/4", "16.20"}, {"1/2", "3/8", "8.10"},
	} {
		f.add(byTakeOff, "10.1 fl oz in a joint "+row.width+" × "+row.depth, row.feet+" ft", row.feet, feet("10.1", row.width, row.depth), "0.005", hand, derived)
	}
	deep := func(gap string) *big.Rat {
		return quo(quo(f.joint(finish.Seam, gap, "2", finish.Sealant{}), rat("12")), in(gap).Rat())
	}
	for _, row := range []struct{ gap, printed, value, within string }{
		{"1/8", "never more than the width", "1/8", "0.001"}, {"1/4", "1/4 in", "1/4", "0.001"}, {"1/2", "1/4 in", "1/4", "0.001"},
		{"3/4", "3/8 to 1/2 in", "7/16", "0.063"}, {"1", "3/8 to 1/2 in", "7/16", "0.063"}, {"1 1/2", "1/2 in", "1/2", "0.001"},
	} {
		f.add(byTakeOff, "depth of a joint "+row.gap+" in wide", row.printed, row.value, deep(row.gap), row.within, county, read)
	}
	f.add(byTakeOff, "depth of a joint 3/4 in wide before a rod", "half the width", "3/8", deep("3/4"), "0.001", detailing, read)
	f.add(byTakeOff, "depth of a joint 1-1/2 in wide, at most", "13 mm", "13", mul(rat("25.4"), deep("1 1/2")), "0.5", detailing, read)
	fillet := func(kind finish.JointKind) *big.Rat { return f.joint(kind, "0", "3/4", finish.Sealant{}) }
	f.add(byTakeOff, "fillet under cabinets on each face", "1/8 in", "1/8", root(mul(rat("2/12"), fillet(finish.CabinetLine))), "0.0005", tips, read)
	f.add(byTakeOff, "least joint that moves, at the counter", "6 mm", "6", mul(rat("25.4"), root(mul(rat("2/12"), fillet(finish.CounterLine)))), "0.5", detailing, read)
	f.add(byTakeOff, "10.1 fl oz in a flat fillet 1/4", "48.61 ft", "48.61", quo(mul(rat("10.1"), rat("231/128")), fillet(finish.CounterLine)), "0.01", hand, derived)

	w, m := volumes(fraction.Inch)
	m.Sealant.Waste = ""
	f.add(byTakeOff, "our allowance for waste", "10 to 20 %", "15", mul(rat("100"), sub(quo(f.need(w, m, finish.ItemPaintableSealant), rat("256000")), rat("1"))), "5", silicone, read)
	row := f.list(w, m)[0]
	f.add(byTakeOff, "our cartridge", "10 to 10.5 fl oz", "10.25", quo(row.Quantity.Rat(), big.NewRat(int64(row.Buy), 1)), "0.25", cartridges, read)
	f.add(byTakeOff, "widest joint without a backing", "1/4 to 1/2 in, low end", "1/4", f.threshold(func(gap fraction.Length) bool {
		w := finish.Work{Profile: sheet("3/4"), Joints: []finish.Joint{{Kind: finish.Seam, Length: fraction.Inches(120), Gap: gap}}}
		return f.need(w, finish.Materials{}, finish.ItemBackingRod).Sign() == 0
	}), "0", painters, read)

	rods := finish.Work{Profile: sheet("3/4"), Joints: []finish.Joint{{Kind: finish.Seam, Length: fraction.Inches(24000), Gap: in("1/2")}}}
	for _, row := range f.list(rods, finish.Materials{Sealant: finish.Sealant{Waste: "0"}}) {
		if row.Item == finish.ItemBackingRod {
			f.add(byTakeOff, "backing rod behind 2000 ft, in lengths of 20 ft", "100", "100", big.NewRat(int64(row.Buy), 1), "0", hand, practice)
		}
	}

	// The open ends of V-grooves 1/4 by 1/8, 1600 of them: 1/64 in2 each, so deep as by default.
	p := groove.Profile{Thickness: in("1/4"), Features: []groove.Feature{{Width: in("3/4")}, {Kind: groove.Groove, Width: in("1/4"), Depth: in("1/8")}}}
	ends := finish.Work{Profile: p, Joints: []finish.Joint{{Kind: finish.CounterLine, Length: fraction.Inches(160000), Grooves: true}}}
	open := finish.Materials{Paint: finish.Paint{Groove: finish.VGroove}, Sealant: finish.Sealant{Waste: "0", CounterLine: finish.Bead{Form: finish.NoBead}}}
	filled := new(big.Rat)
	for _, item := range []finish.Item{finish.ItemPaintableSealant, finish.ItemWetSealant} {
		filled.Add(filled, f.need(ends, open, item))
	}
	f.add(byTakeOff, "160,000 open ends of V-grooves 1/4 × 1/8", "filled 1/4 in: 625 in3", "625", mul(filled, rat("231/128")), "0.2", hand, practice)
}

// threshold returns the greatest length on 32nds up to 4 in for which something holds.
func (f *figures) threshold(holds func(fraction.Length) bool) *big.Rat {
	most := fraction.Length{}
	for n := int64(1); n <= 128 && holds(fraction.Of(n, 32)); n++ {
		most = fraction.Of(n, 32)
	}
	return most.Rat()
}
