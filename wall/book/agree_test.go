package book

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/plan"
	"example.com/groovewright/wall/verify"
)

// squeezed is the full text of a plan on one line.
func squeezed(p plan.Plan) string { return strings.Join(strings.Fields(Explained(p)), " ") }

// bookOf is the job book of a plan.
func bookOf(t *testing.T, p plan.Plan) string {
	t.Helper()
	files, err := Files(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(files[0].Body)
}

// TestTrimsAgree: what the list has is fitted, by its name, and nothing that the list has not, but what came with panels
// on the wall; only joints behind trims of the job stay without sealant, and the sealant of an exposed end goes along its trim.
func TestTrimsAgree(t *testing.T) {
	words := map[finish.Item]string{finish.ItemEdgeTrim: "edge trim over the cut edges of exposed ends", finish.ItemCornerTrim: "corner trim over the outside corners"}
	edged := 0
	for _, n := range append(append([]named{}, examples()...), hardJobs()...) {
		if n.err != nil {
			t.Fatal(n.name, n.err)
		}
		text := squeezed(n.plan)
		_, order, _ := strings.Cut(text, "ORDER OF WORK")
		for item, says := range words {
			listed := slices.ContainsFunc(n.plan.List.Rows, func(r finish.Row) bool { return r.Item == item })
			if strings.Contains(order, says) != listed {
				t.Errorf("%s: %v on the list %v, in the order of work not so", n.name, item, listed)
			}
			if listed && item == finish.ItemEdgeTrim {
				edged++
				exposed := slices.ContainsFunc(n.plan.Runs, func(r plan.Run) bool { return r.Left.Kind == wall.Exposed || r.Right.Kind == wall.Exposed })
				if !exposed || !strings.Contains(text, "the sealant of an end goes along it") {
					t.Errorf("%s: edge trim, exposed end %v", n.name, exposed)
				}
			}
		}
		hides := slices.ContainsFunc(n.plan.Runs, func(r plan.Run) bool { return r.Trim != wall.Trims{} })
		if strings.Contains(order, "No bead behind") != hides || strings.Contains(text, "eave unsealed what a trim") {
			t.Errorf("%s: trims hide joints %v, and the text does not say so", n.name, hides)
		}
	}
	if edged < 3 {
		t.Errorf("%d plans with edge trim", edged)
	}
}

// TestCasingsHideWindowsAndDoors: what the list has a casing for is sealed nowhere and its sides are no flaw, for this planner
// and for the checker; a pipe's hole has none.
func TestCasingsHideWindowsAndDoors(t *testing.T) {
	p, err := madePlan(strings.NewReader(trimmedJob))
	if err != nil {
		t.Fatal(err)
	}
	data, err := p.JSON()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range verify.Plan([]byte(trimmedJob), data) {
		t.Error(f)
	}
	bare, err := madePlan(strings.NewReader(strings.Replace(trimmedJob, `, "casing": {"name": "casing", "covers": "1/2"}`, "", 1)))
	if err != nil {
		t.Fatal(err)
	}
	sides := func(p plan.Plan, opening string) bool {
		return slices.ContainsFunc(p.Blemishes, func(b plan.Blemish) bool { return b.Opening == opening })
	}
	if sides(p, "hatch") || !sides(bare, "hatch") || !sides(p, "drain") {
		t.Errorf("the sides of the hatch count: %v, without a casing %v; those of the drain %v", sides(p, "hatch"), sides(bare, "hatch"), sides(p, "drain"))
	}
	if text := squeezed(p); !strings.Contains(text, "casing: garden window 1.22 ft + 1.22 ft + 3.07 ft + hatch 1.71 ft + 1.71 ft + 1.23 ft, ") || !strings.Contains(text, "+ drain 1.09 ft") { // 4 times 3 1/4 in are sealed
		t.Error(text)
	}
}

// TestReplanAgrees holds the plan of a spoiled panel against that of the whole kitchen.
func TestReplanAgrees(t *testing.T) {
	all := examplePlans(t)
	last := func(p plan.Plan) (face string) {
		for _, r := range p.List.Rows {
			for _, term := range r.Terms {
				if r.Item == finish.ItemTopCoat && term.Kind == finish.TermFaceAfter {
					face = term.Value.String()
				}
			}
		}
		return face
	}
	before, after := all["kitchen"], all["kitchen-replan"]
	if last(before) == "" || last(before) != last(after) {
		t.Errorf("the last coat covers %q, before the replan %q", last(after), last(before))
	}
	text, page := squeezed(after), bookOf(t, after)
	for _, want := range []string{"Trims: Fit the trims that were bought with panels which are up", "pieces are numbered anew",
		"range wall butts, and is up: take its panel off first, as there is no room to slide",
		"Before anything is bought or cut, take off the panel that is up at the left end of range wall, in the corner with sink wall, 22 1/8 wide, from 5/16 to 22 7/16; cut its joints",
		"Fit the panel that came off range wall again"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	for _, want := range []string{"is up: take its panel off first, as there is no room to slide", `<td class="n">1 on hand</td>`, "anew: panels on the wall have no number"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q in the book", want)
		}
	}
	for _, wrong := range []string{"Close a run before", "Rows without a price", "itted first", "edge trim"} {
		if strings.Contains(text, wrong) || strings.Contains(page, wrong) {
			t.Errorf("%q of panels that are up", wrong)
		}
	}
	if off, rest := strings.Index(text, "take off the panel"), strings.Index(text, " Rest:"); off < 0 || off > rest {
		t.Error("it comes off after the sheets are stacked")
	}
	if p := all["kitchen"]; strings.Contains(squeezed(p), "take off the panel") || p.Behind(0) || p.Behind(-1) || p.Behind(9) || !p.ClosesBefore() || !strings.Contains(squeezed(p), "Close a run before") {
		t.Error("in the whole kitchen nothing is up")
	}
}

// TestWhatComesOffGoesUpAgain: adhesive and nails of the panel that comes off first are on the list, and a doubt says that it may
// not come off whole. It is 22 1/8 wide and 17 15/16 to 18 high, no box in it: 398 in2 or 2.76 ft2; nails on two supports every 6,
// three spaces, and every 12 on one between, two: 8 and 3.
func TestWhatComesOffGoesUpAgain(t *testing.T) {
	p := examplePlans(t)["kitchen-replan"]
	count := map[finish.Item]string{}
	for _, r := range p.List.Rows {
		for _, term := range r.Terms {
			if term.Kind == finish.TermSurface && r.Item == finish.ItemAdhesive || term.Kind == finish.TermCount && r.Item == finish.ItemPanelNails {
				count[r.Item] = term.Value.String()
			}
		}
	}
	nails, _, err := p.Nails(p.Pieces[0])
	area := (27.125*17.8 - 1.0625*13.5625 - 4.3125*4) / 144 // of the piece, about
	if surface, _ := strconv.ParseFloat(strings.TrimSuffix(count[finish.ItemAdhesive], " ft2"), 64); math.Abs(surface-area-2.76) > .02 {
		t.Errorf("%s of backs, of which %.2f are of the piece", count[finish.ItemAdhesive], area)
	}
	if want := fmt.Sprint(len(nails)+11, " nails"); err != nil || count[finish.ItemPanelNails] != want {
		t.Errorf("%s, %v; want %s", count[finish.ItemPanelNails], err, want)
	}
	text := squeezed(p)
	for _, want := range []string{"2.76 ft2 of that for what comes off the wall first and goes up again", "11 nails of that for what", "may not come off whole"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	if strings.Contains(squeezed(examplePlans(t)["kitchen"]), "goes up again") {
		t.Error("in the whole kitchen nothing is up")
	}
}

// TestSealedOpeningsHaveTheirNames: what is sealed round an opening is called by its name, a hatch no window.
func TestSealedOpeningsHaveTheirNames(t *testing.T) {
	found := 0
	for name, p := range examplePlans(t) {
		openings := map[string]bool{}
		for _, run := range p.Runs {
			for _, o := range run.Openings {
				openings[o.Name] = o.Kind != wall.Box
			}
		}
		for _, r := range p.List.Rows {
			for _, term := range r.Terms {
				var kind finish.JointKind
				switch {
				case term.Kind != finish.TermJoint:
				case openings[term.Name]:
					found++
				case kind.UnmarshalText([]byte(term.Name)) != nil || kind == finish.WindowJoint:
					t.Errorf("%s: %q is sealed", name, term.Name)
				}
			}
		}
	}
	if found < 4 {
		t.Errorf("%d openings are sealed", found)
	}
}

// TestMitersAreSaid: a piece with an edge at an outside corner has it in the cut list of the text, in the book's and in the
// table of its sheet, and on its own leaf with angle, long side and glue; no other piece has.
func TestMitersAreSaid(t *testing.T) {
	mitred := 0
	for _, n := range examples() {
		name, p, page := n.name, n.plan, string(n.files(t)[0].Body)
		cuts := strings.Join(strings.Fields(Part(p, Cuts, false)), " ")
		_, list, _ := strings.Cut(page, `<section id="cutlist"`)
		list, sheets, _ := strings.Cut(list, `<section id="sheets"`)
		sheets, odd, _ := strings.Cut(sheets, `<section id="odd"`)
		for _, piece := range p.Pieces {
			run, _ := p.Run(piece.Run)
			edges, err := run.MitredEdges(piece)
			if err != nil {
				t.Fatal(err)
			}
			want := edges != [2]bool{}
			if want {
				mitred++
			}
			then := "then miter the "
			if piece.Closing { // it is sawn once more
				then = "later miter the "
			}
			for where, pattern := range map[string]string{"the cut list": `piece ` + piece.Label + `( turned)? \(` + then + `[a-z ]* of its face\)`,
				"its sheet's table": `<th scope="row">` + piece.Label + `<small>` + then + `(left|right)[a-z ]* of its face<`} {
				if got := regexp.MustCompile(pattern).MatchString(cuts + sheets); got != want {
					t.Errorf("%s, piece %s: mitred %v, said in %s %v", name, piece.Label, want, where, got)
				}
			}
			for _, row := range strings.Split(list, "<tr>") {
				if strings.HasPrefix(row, `<th scope="row">`+piece.Label+`</th>`) && strings.Contains(row, "miter its") != want {
					t.Errorf("%s, piece %s: %s", name, piece.Label, row)
				}
			}
			if _, leaf, ok := strings.Cut(odd, `<span class="no">P`+piece.Label+`</span>`); ok {
				leaf, _, _ = strings.Cut(leaf, "<figure")
				for _, part := range []string{"Miter its", "45 degrees", "long point, on the face", "wood glue"} {
					if strings.Contains(leaf, part) != want {
						t.Errorf("%s, leaf of piece %s: %q not so", name, piece.Label, part)
					}
				}
			}
		}
	}
	if mitred < 2 {
		t.Errorf("%d mitred pieces", mitred)
	}
}

// TestWaysOutLeaveTheOrderToTheList: the order of sawing stands in the list alone.
func TestWaysOutLeaveTheOrderToTheList(t *testing.T) {
	for _, way := range every[cutout.WayOut]() {
		if found := regexp.MustCompile(`\b(saw[^,]* (last|first)|this cutout)\b`).FindString(wayOutWords[way]); found != "" {
			t.Errorf("%v: %q", way, found)
		}
	}
}

// TestNothingBeyondTheProof: the words of what is proved claim of no status more than it says, whatever the choice and the
// end of the search; so do those of the book, which has no words of the search.
func TestNothingBeyondTheProof(t *testing.T) {
	one := []plan.Stock{{Used: 2}}
	for _, status := range every[choice.Status]() {
		for _, end := range every[choice.EndCause]() {
			for n := range 4 {
				taken, least := n%2, n/2 == 1
				p := plan.Plan{Choices: []plan.Choice{{Bought: 2, Proved: true, Status: status}, {Bought: 2, Proved: true, Status: status}}, Stock: one, Search: plan.Search{Status: status, Least: least, End: end, Layouts: 1}}
				p.Choices[taken].Chosen, p.Search.Proved = true, status == choice.BothProved
				says, shop := Headline(p), (&text{shop: true}).headline(p)
				if found := regexp.MustCompile(`(?i)prove|looked at`).FindString(shop); found != "" {
					t.Errorf("%q in %s", found, shop)
				}
				open := taken == 1 && !least // a layout that looks worse might need less
				least, need, looks := taken == 1 && least, status&choice.NeedProved != 0, status&choice.LooksProved != 0
				for words, want := range map[string]bool{
					"no layout of this room needs fewer":     least,
					"no layout that looks as good needs":     need && !least,
					"these pieces need as many":              !need && !least,
					"none that needs as few looks better":    looks && (need || least),
					"that needs as few might look better":    !looks && (need || least),
					"another layout might need fewer sheets": !need && !least,
					", or look better":                       !looks && !need && !least,
					"which looks worse, might need fewer":    open && need && looks,
					"one that looks worse might need fewer":  open && need && !looks,
					"1 layout looked at":                     !looks || !need && !least || open,
					"stopped early, after 1 layout looked":   (!looks || !need && !least || open) && end == choice.ContextStopped,
					"each that might was looked at":          least && end != choice.BoundMet && end != choice.ContextStopped,
				} {
					if strings.Contains(strings.ToLower(says), words) != want {
						t.Errorf("%v, %v, choice %d: %q is %v in %s", status, end, taken, words, !want, says)
					}
					if words, _, _ = strings.Cut(words, ", after 1 layout"); !strings.Contains(words, "looked") && strings.Contains(strings.ToLower(shop), words) != want {
						t.Errorf("%v, %v, choice %d: %q is %v in the book: %s", status, end, taken, words, !want, shop)
					}
				}
			}
		}
	}
}

// A carpenter's pages have no words of proofs and no names of a job's fields.
func TestPagesHaveNoFieldNames(t *testing.T) {
	proofs := regexp.MustCompile(`(?i)dual|Pareto|linear program|lower bound|\b[a-z]+_[a-z]+\b|\b(finish|gaps|house|runs\[|stock\[|priorities|installed)\.[a-z]|set_back`)
	for _, n := range append(append([]named{}, examples()...), hardJobs()...) {
		page := regexp.MustCompile(`(?s)<style.*?</style>|<svg.*?</svg>|<[^>]*>`).ReplaceAllString(string(n.files(t)[0].Body), " ")
		for where, text := range map[string]string{"book": page, "text": Text(n.plan), "explained": Explained(n.plan)} {
			if found := proofs.FindString(text); found != "" {
				t.Errorf("%s, %s: %q", n.name, where, found)
			}
		}
	}
}

// A book has the units of its job alone.
func TestUnitsAreTheJobs(t *testing.T) {
	inches := regexp.MustCompile(`\b(ft2?|in2?|inch(es)?|fl oz|qt|gal)\b`)
	found := 0
	for _, n := range append(append([]named{}, examples()...), hardJobs()...) {
		if n.plan.Units == fraction.Inch {
			continue
		}
		found++
		page := regexp.MustCompile(`(?s)<section id="(full|cautions)".*?</section>|<style.*?</style>|<[^>]*>`).ReplaceAllString(string(n.files(t)[0].Body), " ")
		for _, at := range inches.FindAllStringIndex(page, -1) {
			if near := page[max(0, at[0]-30):min(len(page), at[1]+20)]; regexp.MustCompile(`\d\)? (ft|in|fl|qt|gal)\b( [^a]|[^ ])|per (ft|in)\b`).MatchString(near) {
				t.Errorf("%s: %q", n.name, near)
			}
		}
	}
	if found < 1 {
		t.Errorf("%d metric plans", found)
	}
}

// TestContentsHaveLeaves: each part of a book stands in its contents with its leaves, each of which is in the book once,
// and no leaf is missing; every leaf that a sentence names is there too.
func TestContentsHaveLeaves(t *testing.T) {
	for _, n := range append(append([]named{}, examples()...), hardJobs()...) {
		page := string(n.files(t)[0].Body)
		head, _, _ := strings.Cut(page, "</nav>")
		listed := map[string]bool{}
		for _, entry := range regexp.MustCompile(`<li><a href="#([a-z]+)">[^<]+</a>: ([^<]*)</li>`).FindAllStringSubmatch(head, -1) {
			if !strings.Contains(page, `<section id="`+entry[1]+`"`) {
				t.Errorf("%s: no part %s", n.name, entry[1])
			}
			for _, part := range strings.Split(entry[2], ", ") {
				first, last, _ := strings.Cut(part, " to ")
				listed[first], listed[cmp.Or(last, first)] = true, true
				from, _ := strconv.Atoi(first[1:])
				for to, _ := strconv.Atoi(cmp.Or(last, first)[1:]); from < to; from++ {
					listed[first[:1]+strconv.Itoa(from)] = true
				}
			}
		}
		found := map[string]bool{}
		for _, leaf := range regexp.MustCompile(`<span class="no">([A-Z][^<]*)</span>`).FindAllStringSubmatch(page, -1) {
			if found[leaf[1]] || !listed[leaf[1]] {
				t.Errorf("%s: leaf %s twice %v, in the contents %v", n.name, leaf[1], found[leaf[1]], listed[leaf[1]])
			}
			found[leaf[1]] = true
		}
		for leaf := range listed {
			if !found[leaf] {
				t.Errorf("%s: no leaf %s", n.name, leaf)
			}
		}
		for _, named := range regexp.MustCompile(`leaf ([A-Z]\w+)`).FindAllStringSubmatch(page, -1) {
			if !found[named[1]] {
				t.Errorf("%s: %s is named, and is none", n.name, named[0])
			}
		}
		if parts := strings.Count(page, "<section id="); len(found) == 0 || parts != strings.Count(head, "<li>") {
			t.Errorf("%s: %d parts, %d in the contents", n.name, parts, strings.Count(head, "<li>"))
		}
	}
}

// TestBooksOfDoorsAtEnds: a door that takes an end leaves no section of that end to draw, and the
// book has the other.
func TestBooksOfDoorsAtEnds(t *testing.T) {
	for left, want := range map[string][2]bool{"0": {false, true}, "63": {true, false}} {
		p, err := madePlan(strings.NewReader(`{"profile": "beadboard 1-1/2", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
			"runs": [{"name": "wall", "width": "95", "left": {"kind": "exposed"}, "right": {"kind": "exposed"}, "heights": [{"at": "0", "top": "40"}, {"at": "95", "top": "40"}],
			"openings": [{"name": "door", "kind": "other", "left": "` + left + `", "bottom": "-1", "width": "32", "height": "80"}]}]}`))
		if err != nil {
			t.Fatal(err)
		}
		files, err := Files(p)
		if err != nil {
			t.Fatalf("door from %s: %v", left, err)
		}
		for i, name := range []string{"run-1-left-end.svg", "run-1-right-end.svg"} {
			if slices.ContainsFunc(files, func(f File) bool { return f.Name == name }) != want[i] {
				t.Errorf("door from %s: %s is there %v, want %v", left, name, !want[i], want[i])
			}
		}
	}
}

// TestStripsHaveTheirHeights: the text, the leaf and the elevation of a run say how high the strips behind its boards are
// fixed, on both sides, and draw each as far as an opening leaves it; sheets have none.
func TestStripsHaveTheirHeights(t *testing.T) {
	strip := regexp.MustCompile(`class="strip"`)
	looked := 0
	for _, n := range plans() {
		if n.err != nil {
			t.Fatal(n.name, n.err)
		}
		p, text, files := n.plan, squeezed(n.plan), n.files(t)
		for i, run := range p.Runs {
			at := run.Supports
			svg := ""
			for _, f := range files {
				if f.Name == "run-"+strconv.Itoa(i+1)+".svg" {
					svg = string(f.Body)
				}
			}
			if drawn := len(strip.FindAllString(svg, -1)); drawn != len(at) || len(at) > 0 && !p.Profile.Boards {
				t.Errorf("%s, %s: %d strips drawn, want %v", n.name, run.Name, drawn, at)
			}
			for _, y := range at {
				looked++
				says := p.TapeMeasure().Format(y)
				if strings.Count(svg, ">"+says+"<") < 2 || !regexp.MustCompile(`iddles? of the level strips? between foot and top [^.]*\b`+says+`\b`).MatchString(text) ||
					!regexp.MustCompile(`iddles? of the level strips? between foot and top [^.]*\b`+says+`\b`).Match(files[0].Body) {
					t.Errorf("%s, %s: the strip at %s is not said or not drawn", n.name, run.Name, says)
				}
			}
			if first := strings.Index(svg, `class="strip"`); len(at) > 0 && len(run.Openings) > 0 && first > strings.Index(svg, `class="opening"`) {
				t.Errorf("%s, %s: strips run over the openings", n.name, run.Name)
			}
		}
	}
	if looked < 4 && !testing.Short() {
		t.Errorf("%d strips", looked)
	}
}

// TestCheckedSupports: the checker takes the supports of the plan of boards and none that are spoilt.
func TestCheckedSupports(t *testing.T) {
	job, err := os.ReadFile("testdata/hard/boards.json")
	if err != nil {
		t.Fatal(err)
	}
	p, err := madePlan(bytes.NewReader(job))
	if err != nil {
		t.Fatal(err)
	}
	right := string(fraction.Must(p.JSON()))
	for _, row := range []struct{ to, want string }{
		{"13 3/8|26 13/16", ""},
		{"", ""}, // the plan need not say it
		{"13 3/8", "farther"},
		{"26 13/16", "farther"},
		{"13 3/8|26 51/64", "no mark"},
		{"26 13/16|13 3/8", "not between"},
		{"13 3/8|26 13/16|40 5/16", "not between"},
	} {
		list, _ := json.Marshal(strings.Split(row.to, "|"))
		spoilt := regexp.MustCompile(`"supports":\s*\[[^\]]*\]`).ReplaceAllString(right, `"supports":`+strings.Replace(string(list), `""`, "", 1))
		faults := fmt.Sprint(verify.Plan(job, []byte(spoilt)))
		if row.want == "" && faults != "[]" || !strings.Contains(faults, row.want) {
			t.Errorf("%q: %.300s, want %q", row.to, faults, row.want)
		}
	}
}

// TestNailsFollowTheTongue: boards are nailed aslant where the profile has a tongue alone, on the list as in the order of work.
func TestNailsFollowTheTongue(t *testing.T) {
	job, err := os.ReadFile("testdata/hard/boards.json")
	if err != nil {
		t.Fatal(err)
	}
	own := regexp.MustCompile(`(?s)"boards": true,.*?"tongue": "right"`)
	for edges, want := range map[string]struct {
		aslant bool
		long   string
	}{
		"":                    {false, "1 1/2"}, // 3/4 and 3/4 into the strip
		`"edges": "square", `: {false, "1 1/2"},
		`"edges": "tongued", "tongue": "right", `: {true, "2"}, // (3/8 + 3/4) × √2 = 1.59
	} {
		p, err := madePlan(strings.NewReader(own.ReplaceAllString(string(job), edges+`"boards": true`)))
		if err != nil {
			t.Fatal(edges, err)
		}
		list, order, _ := strings.Cut(squeezed(p), "ORDER OF WORK")
		for where, text := range map[string]string{"list": list, "order": order} {
			if got := strings.Contains(text, "degrees through the root of"); got != want.aslant {
				t.Errorf("%q, %s: aslant %v, want %v", edges, where, got, want.aslant)
			}
		}
		if !strings.Contains(list, "finish nails, 15 or 16 gauge, "+want.long+" in") || strings.Contains(order, "through the middle of its face") == want.aslant {
			t.Errorf("%q: not nails of %s, or not as the tongue is", edges, want.long)
		}
	}
}

// TestHeightsWithinOpenings: of a level edge that an opening covers in part, as a window does the top of a wall, both stations have
// their height.
func TestHeightsWithinOpenings(t *testing.T) {
	all := examplePlans(t)
	for _, name := range []string{"kitchen", "kitchen-replan"} {
		p := all[name]
		svg := string(fraction.Must(drawing.Elevation(p, 0)).SVG())
		for i, at := range p.Runs[0].Outline {
			if at.X == fraction.Inches(33) || at.X == fraction.Inches(66) {
				if want := `data-plan="runs[0].outline[` + strconv.Itoa(i) + `][1]">18<`; at.Y.Sign() > 0 && !strings.Contains(svg, want) {
					t.Errorf("%s: the height at %v is not shown", name, at.X)
				}
			}
		}
	}
}

// TestBooksOfBoards: the cut list points from boards with a slanted end to the table of their corners, and what is said of the nails
// is of boards; a book of sheets has neither.
func TestBooksOfBoards(t *testing.T) {
	for _, n := range plans() {
		if n.err != nil {
			t.Fatal(n.name, n.err)
		}
		page := strings.Join(strings.Fields(string(n.files(t)[0].Body)), " ")
		if points := strings.Contains(page, "table of such boards"); points != (len(slanted(n.plan)) > 0) {
			t.Errorf("%s: the cut list points to slanted boards: %v", n.name, points)
		}
		if n.plan.Profile.Boards && strings.Contains(page, "behind both upright edges") || !n.plan.Profile.Boards && strings.Contains(page, "a board crosses its supports: at its foot") {
			t.Errorf("%s: nails of the wrong panelling", n.name)
		}
	}
}

// TestNoChainTwice: where a wall has a step at a seam, the chain of its corners is that of its panels, and stands once.
func TestNoChainTwice(t *testing.T) {
	p, err := madePlan(strings.NewReader(`{"profile": "beadboard 1-5/8", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
		"runs": [{"name": "hall", "width": "80", "left": {"kind": "covered"}, "right": {"kind": "covered"}, "keep": {"seams": ["40"]},
		"heights": [{"at": "0", "top": "30"}, {"at": "40", "top": "30"}, {"at": "40", "top": "36"}, {"at": "80", "top": "36"}]}]}`))
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(string(fraction.Must(drawing.Elevation(p, 0)).SVG()), ">40<"); n == 0 {
		t.Fatal("no length of 40 in the chains")
	}
	seen := map[string]bool{}
	chains := regexp.MustCompile(`<path class="pole" d="(M[-\d. ]+l8 -8M[^"]*)"`).FindAllStringSubmatch(string(fraction.Must(drawing.Elevation(p, 0)).SVG()), -1)
	for _, m := range chains {
		numbers := strings.Fields(regexp.MustCompile(`M([-\d.]+) [-\d.]+l8 -8`).ReplaceAllString(m[1], "$1 "))
		ends := strings.Join(numbers[:2], " to ") // of one length, across
		if seen[ends] {
			t.Errorf("a length %s stands twice", ends)
		}
		seen[ends] = true
	}
	if len(seen) < 3 {
		t.Errorf("%d lengths", len(seen))
	}
}
