package book

import (
	"math"
	"math/big"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/plan"
)

var (
	product = regexp.MustCompile(`face (\S+) \S+ × (\S+) developed × (\d+) coats?(?: \+ edges (\S+) \S+ × (\d+))?(?: \+ backs \(damp\) (\S+) \S+ × (\d+))? = (\S+) `)
	lines   = regexp.MustCompile(`^(\S+) \S+ along beads × (\d+) \+ (\S+) \S+ beside what stays bare × (\d+) = (\S+) `)
)

// decimalOf reads a decimal number as it is printed.
func decimalOf(t *testing.T, text string) *big.Rat {
	x, ok := new(big.Rat).SetString(text)
	if !ok {
		t.Fatalf("%q is no number", text)
	}
	return x
}

// within is what of a quantity is for what comes off and goes up again: counted already.
var within = regexp.MustCompile(`; [^;]* of that for what [^;]*`)

// measured adds up all figures of a text that have this unit.
func measured(t *testing.T, text, unit string) *big.Rat {
	sum := new(big.Rat)
	for _, found := range regexp.MustCompile(`([\d.]+) `+regexp.QuoteMeta(strings.TrimSuffix(unit, "s"))+`s?\b`).FindAllStringSubmatch(text, -1) {
		sum.Add(sum, decimalOf(t, found[1]))
	}
	return sum
}

// trimmedJob is a room with trims behind which edges hide, some longer than a strip.
const trimmedJob = `{"profile": "beadboard 1-5/8", "stock": [{"name": "sheet", "width": "48", "length": "96"}], "gaps": {"seam": "1/8", "top": "1/16", "window": "1/8"},
	"trim": {"bottom": {"name": "baseboard", "covers": "3/4"}, "top": {"name": "cap", "covers": "1/2"}, "casing": {"name": "casing", "covers": "1/2"}},
	"runs": [{"name": "garden wall", "width": "132 1/2", "left": {"kind": "covered"}, "right": {"kind": "inside corner"},
	"heights": [{"at": "0", "bottom": "4", "top": "38"}, {"at": "44", "bottom": "4 1/8", "top": "38"}, {"at": "88", "bottom": "4", "top": "38"}, {"at": "132 1/2", "bottom": "4", "top": "38"}],
	"openings": [{"name": "garden window", "kind": "window", "left": "50", "bottom": "24", "width": "36", "height": "40"},
	{"name": "hatch", "kind": "other", "left": "100", "bottom": "4", "width": "14", "height": "20"},
	{"name": "drain", "kind": "other", "left": "120", "bottom": "10", "width": "3", "height": "3"}]},
	{"name": "chimney side", "width": "60", "left": {"kind": "inside corner"}, "right": {"kind": "exposed"},
	"heights": [{"at": "0", "bottom": "4", "top": "38"}, {"at": "30", "bottom": "4", "top": "38"}, {"at": "60", "bottom": "4", "top": "38"}]}]}`

// TestPrintedSumsFollowFromTheirParts adds up what the shopping lists of all plans print, as a reader with a pencil does:
// volumes of joints, nails and tape with their waste to what is needed, faces and edges by their coats to surfaces, and
// costs with tax to the total. All are equal as they are printed; of a surface its two places, rounded up.
func TestPrintedSumsFollowFromTheirParts(t *testing.T) {
	seen, mixed := map[finish.How]int{}, 0
	behindTrims, err := madePlan(strings.NewReader(trimmedJob))
	for _, n := range append(append([]named{{"trims", behindTrims, err}}, examples()...), hardJobs()...) {
		if n.err != nil {
			t.Fatal(n.name, n.err)
		}
		costs := new(big.Rat)
		for i, r := range n.plan.List.Rows {
			if r.Cost.Known() {
				costs.Add(costs, decimalOf(t, cents(r.Cost, "")))
			}
			needed := r.Quantity.Rat()
			for _, next := range n.plan.List.Rows[i+1:] {
				if next.How != finish.WithRowAbove {
					break
				}
				needed.Add(needed, next.Quantity.Rat())
			}
			says := How(r)
			before, inAll, several := strings.Cut(strings.Split(says, "; tight:")[0], "; in all ")
			if several {
				mixed++
				if got, _, _ := strings.Cut(inAll, " "); decimalOf(t, got).Cmp(needed) != 0 {
					t.Errorf("%s: %s for %s in all: %s", n.name, Item(r), needed.FloatString(2), says)
				}
			}
			before = within.ReplaceAllString(before, "")
			equal := func(parts, whole *big.Rat) {
				seen[r.How]++
				if parts.Cmp(whole) != 0 {
					t.Errorf("%s: %s %s, but the parts make %s: %s", n.name, Item(r), whole.FloatString(3), parts.FloatString(3), says)
				}
			}
			switch r.How {
			case finish.ByJoints, finish.ByNailSpacing, finish.ByCrossings, finish.ByFaceCrossings, finish.ByCoverings, finish.ByWholeLengths, finish.ByEnds:
				equal(measured(t, before, r.Unit.String()), needed)
			case finish.ByTapeLines:
				found := lines.FindStringSubmatch(says)
				if found == nil {
					t.Fatalf("%s: %q", n.name, says)
				}
				printed := new(big.Rat)
				for k := 1; k < 5; k += 2 {
					printed.Add(printed, new(big.Rat).Mul(decimalOf(t, found[k]), decimalOf(t, found[k+1])))
				}
				equal(printed, decimalOf(t, found[5]))
				_, waste, _ := strings.Cut(before, " = ")
				equal(measured(t, waste, r.Unit.String()), needed)
			case finish.ByArea:
				for _, found := range product.FindAllStringSubmatch(says, -1) {
					face := new(big.Rat).Mul(decimalOf(t, found[1]), decimalOf(t, found[2]))
					printed := face.Mul(face, decimalOf(t, found[3]))
					for k := 4; k < 8; k += 2 {
						if found[k] != "" {
							printed.Add(printed, new(big.Rat).Mul(decimalOf(t, found[k]), decimalOf(t, found[k+1])))
						}
					}
					hundredths := printed.Mul(printed, big.NewRat(100, 1))
					up := new(big.Int).Div(new(big.Int).Add(hundredths.Num(), new(big.Int).Sub(hundredths.Denom(), big.NewInt(1))), hundredths.Denom())
					equal(new(big.Rat).SetFrac(up, big.NewInt(100)), decimalOf(t, found[8]))
				}
			}
		}
		if tax := cents(n.plan.Tax, "0"); priced(n.plan) {
			if costs.Add(costs, decimalOf(t, tax)); costs.FloatString(2) != cents(n.plan.Total, "") {
				t.Errorf("%s: costs and tax make %s, the total is %s", n.name, costs.FloatString(2), cents(n.plan.Total, ""))
			}
		}
	}
	for _, how := range []finish.How{finish.ByJoints, finish.ByNailSpacing, finish.ByTapeLines, finish.ByArea, finish.ByCoverings, finish.ByWholeLengths, finish.ByEnds} {
		if seen[how] < 1 {
			t.Errorf("only %d sums of %v", seen[how], how)
		}
	}
	if mixed == 0 {
		t.Error("no packs of several sizes")
	}
}

// TestPenaltiesAddUp: what rounding to hundredths, a half away from zero, leaves of the sum goes to the largest remainders, so
// that no penalty is a hundredth or more off.
func TestPenaltiesAddUp(t *testing.T) {
	for _, row := range []struct{ costs, want string }{
		{"", ""},
		{"1/3 1/3", "0.34 0.33"},
		{"1/3 1/3 1/3", "0.34 0.33 0.33"},
		{"299/200 299/200 1 2", "1.49 1.5 1 2"},
		{"299/200 299/200 299/200 0 1", "1.49 1.5 1.5 0 1"},
		{"1/3 1/3 1/7", "0.34 0.33 0.14"},
		{"1/3 1/3 501/1000 1", "0.34 0.33 0.5 1"},
		{"1/2 1/4", "0.5 0.25"},
	} {
		var p plan.Plan
		for _, cost := range strings.Fields(row.costs) {
			ratio, err := fraction.ParseRatio(cost)
			if err != nil {
				t.Fatal(err)
			}
			p.Blemishes = append(p.Blemishes, plan.Blemish{Cost: ratio})
		}
		if got := strings.Join(counts(p), " "); got != row.want {
			t.Errorf("%s: %s, want %s", row.costs, got, row.want)
		}
	}
}

// TestPrintedPenaltiesAddUp adds up what the text and the book of each plan print of its flaws.
func TestPrintedPenaltiesAddUp(t *testing.T) {
	row, total := regexp.MustCompile(`<small>at [^<]*</small></td>(?:<td class="n">[^<]*</td>){3}<td class="n">([\d.]+)</td>`), regexp.MustCompile(`All together: <b>([\d.]+)</b>`)
	line, together := regexp.MustCompile(`(?m)^  ([\d.]+)  `), regexp.MustCompile(`Together ([\d.]+);`)
	forEachPlan(t, func(t *testing.T, p plan.Plan, files []File) {
		if p.Title == kitchen().Title || p.Title == hostile().Title {
			t.Skip("made up by hand: its flaws do not make its total")
		}
		_, looks, found := strings.Cut(Part(p, Result, true), "counts  ")
		for _, c := range []struct {
			text       string
			each, made *regexp.Regexp
		}{{string(files[0].Body), row, total}, {looks, line, together}} {
			if !found {
				continue // no flaw
			}
			parts := new(big.Rat)
			for _, m := range c.each.FindAllStringSubmatch(c.text, -1) {
				parts.Add(parts, decimalOf(t, m[1]))
			}
			if m := c.made.FindStringSubmatch(c.text); m == nil || parts.Cmp(decimalOf(t, m[1])) != 0 {
				t.Errorf("the parts make %s, printed is %q", parts.FloatString(2), m)
			}
		}
	})
}

// TestPrintedPenaltiesFollow calculates the penalties again from the weights, amounts and heights beside them, as the
// sentence under them has it, where all of these stand at marks of a tape in inches: 12 in make a foot.
func TestPrintedPenaltiesFollow(t *testing.T) {
	row := regexp.MustCompile(`<small>at [^<]*</small></td><td class="n">([\d.]+)</td><td class="n">([\d /\x{a0}]+)</td><td class="n">([\d /\x{a0}]+|–)</td><td class="n">([\d.]+)</td>`)
	inches := func(t *testing.T, s string) float64 {
		l, err := fraction.Parse(strings.ReplaceAll(s, "\u00a0", " "), fraction.Inch)
		if err != nil {
			t.Fatal(err)
		}
		return l.Float64()
	}
	seen := 0
	forEachPlan(t, func(t *testing.T, p plan.Plan, files []File) {
		if p.Title == kitchen().Title || p.Title == hostile().Title {
			t.Skip("made up by hand: its flaws do not make its total")
		}
		if p.Units != fraction.Inch {
			return
		}
		for _, m := range row.FindAllStringSubmatch(string(files[0].Body), -1) {
			weight, _ := decimalOf(t, m[1]).Float64()
			counted, _ := decimalOf(t, m[4]).Float64()
			feet := 1.0
			if m[3] != "–" {
				feet = inches(t, m[3]) / 12
			}
			const off = 1. / 16 / 10 // a tenth of a mark is not written
			want, near := weight*inches(t, m[2])*feet, .02+weight*off*(feet+inches(t, m[2])/12)
			if abs(want-counted) > near {
				t.Errorf("%s counts %s, want %.3f", m[0], m[4], want)
			}
			seen++
		}
	})
	if seen < 20 {
		t.Errorf("only %d penalties calculated", seen)
	}
}

// TestNailsOfTheListAreDrawn counts the nails on the backs of all pieces of all plans, and those of the list.
func TestNailsOfTheListAreDrawn(t *testing.T) {
	nailed := 0
	for _, n := range append(examples(), hardJobs()...) {
		if n.err != nil {
			t.Fatal(n.name, n.err)
		}
		drawn, listed := 0, 0
		for i := range n.plan.Pieces {
			back, err := drawing.Piece(n.plan, i, true, 250)
			if err != nil {
				t.Fatal(n.name, err)
			}
			drawn += strings.Count(string(back.Element()), `class="nail"`)
		}
		for _, r := range n.plan.List.Rows {
			for _, term := range r.Terms {
				if n := int(term.Value.Value.IntPart()); r.Item != finish.ItemPanelNails && r.Item != finish.ItemBoardNails {
					continue
				} else if term.Kind == finish.TermCount {
					listed += n
				} else if term.Kind == finish.TermAgain { // of a panel that is up
					listed -= n
				}
			}
		}
		if drawn != listed {
			t.Errorf("%s: %d nails are drawn, %d are on the list", n.name, drawn, listed)
		}
		nailed += drawn
	}
	least := 1000
	if testing.Short() {
		least = 400 // of the examples alone
	}
	if nailed < least {
		t.Errorf("only %d nails in all plans", nailed)
	}
}

// TestDepthBeforeARodIsAsPrinted: the sealant of a seam with a rod behind it is its length times its gap times the depth that
// the words of the row give: half the gap within the bounds that they name.
func TestDepthBeforeARodIsAsPrinted(t *testing.T) {
	bounds := regexp.MustCompile(`half as deep as wide, (\S+) in at least and (\S+) in at most`)
	for _, gap := range []string{"5/16", "3/8", "3/4", "1 1/4"} {
		work := finish.Work{Profile: groove.Profile{Thickness: fraction.Inches(1)}, Joints: []finish.Joint{{Kind: finish.Seam, Length: fraction.Inches(1200), Gap: fraction.MustParse(gap)}}}
		list, _, err := finish.TakeOff(work, finish.Materials{Sealant: finish.Sealant{Waste: "0"}})
		i := slices.IndexFunc(list.Rows, func(r finish.Row) bool { return r.How == finish.ByJoints })
		if err != nil || i < 0 {
			t.Fatalf("%s: no sealant: %v", gap, err)
		}
		row := list.Rows[i]
		found := bounds.FindStringSubmatch(How(row))
		if found == nil {
			t.Fatalf("%s: no depth in %q", gap, How(row))
		}
		wide := fraction.MustParse(gap)
		depth := fraction.Max(fraction.MustParse(found[1]), fraction.Min(fraction.MustParse(found[2]), wide.Div(2)))
		const cubic = 231. / 128 // inches to a fl oz
		if printed, _ := row.Quantity.Rat().Float64(); math.Abs(printed-1200*wide.Float64()*depth.Float64()/cubic) > .1 {
			t.Errorf("%s: %v of sealant, but %v deep by %q", gap, printed, depth, How(row))
		}
	}
}
