package book

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"flag"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction/fractiontest/chromium"
	"example.com/groovewright/wall/drawing"
)

//go:embed testdata/look.js
var look string

var inBrowser = flag.Bool("browser", false, "open, look at and print the pages in Chromium, which takes minutes")

var onlyBook = flag.String("book", "", "with -browser, open the book of this plan alone")

var axe = flag.String("axe", "", "with -browser, the script of axe-core, a checker of accessibility, to judge the books by")

// TestBooksByAxe has every book judged by axe-core, in light on a laptop and in dark on a phone.
func TestBooksByAxe(t *testing.T) {
	needsBrowser(t)
	if *axe == "" {
		t.Skip("no axe-core given")
	}
	script, err := os.ReadFile(*axe)
	if err != nil {
		t.Fatal(err)
	}
	const run = `axe.run(document, {resultTypes: ["violations"]}).then(r => {
  const p = document.createElement("pre");
  p.id = "findings";
  p.textContent = JSON.stringify({Dark: matchMedia("(prefers-color-scheme: dark)").matches, Wide: innerWidth,
    Faults: r.violations.flatMap(v => v.nodes.map(n => v.id + ": " + v.help + ": " + n.html.slice(0, 160)))});
  document.body.append(p);
});`
	for _, n := range plans() {
		if n.err != nil || *onlyBook != "" && n.name != *onlyBook {
			continue
		}
		files := n.files(t)
		for _, dark := range []bool{false, true} {
			t.Run(fmt.Sprintf("%s dark %v", n.name, dark), func(t *testing.T) {
				file := filepath.Join(t.TempDir(), "axe.html")
				added := "<script>" + strings.ReplaceAll(string(script), "</script", `<\/script`) + "</script><script>" + run + "</script></body>"
				if err := os.WriteFile(file, bytes.Replace(files[0].Body, []byte("</body>"), []byte(added), 1), 0o600); err != nil {
					t.Fatal(err)
				}
				scheme, size := "1", fmt.Sprint(laptopWide)
				if dark {
					scheme, size = "0", "500" // no window is narrower
				}
				dom := dumped(t, "--dump-dom", "--virtual-time-budget=60000", "--blink-settings=preferredColorScheme="+scheme, "--window-size="+size+",900", "file://"+file)
				m := regexp.MustCompile(`(?s)<pre id="findings">(.*?)</pre>`).FindSubmatch(dom)
				var result struct {
					Dark   bool
					Wide   int
					Faults []string
				}
				if m == nil || json.Unmarshal([]byte(html.UnescapeString(string(m[1]))), &result) != nil {
					t.Fatal("axe-core wrote no findings")
				}
				if result.Dark != dark || result.Wide > laptopWide {
					t.Errorf("looked at in dark: %v, %d wide", result.Dark, result.Wide)
				}
				for _, f := range result.Faults {
					t.Error(f)
				}
			})
		}
	}
}

// needsBrowser skips a test that takes minutes unless it is asked for.
func needsBrowser(t *testing.T) {
	t.Helper()
	if !*inBrowser || testing.Short() {
		t.Skip("no page is opened, looked at or printed without -browser")
	}
	t.Parallel()
}

// dumped runs the browser and returns what it prints.
func dumped(t *testing.T, args ...string) []byte {
	t.Helper()
	command := chromium.Command(t.Context(), needsChromium(t), t.TempDir(), args...)
	out, err := command.Output()
	if err != nil {
		t.Fatalf("%s: %v", command.Path, err)
	}
	return out
}

// shown is a page to look at in a window of a width.
type shown struct {
	name string
	body []byte
	wide int
}

// Widths that the pages are looked at, in CSS pixels.
const (
	phoneWide  = 390
	laptopWide = 1280
	letterWide = 725 // 8 1/2 in at 96 to the inch, less 12 mm on both sides
	a4Wide     = 703 // 210 mm, less the same
	lyingWide  = 964 // 11 in, less the same: Letter in landscape, which A4 is wider than
)

// printed makes a page look on screen as it does on paper, and adds to its style.
func printed(body []byte, more string) []byte {
	body = bytes.ReplaceAll(bytes.ReplaceAll(body, []byte("@media print"), []byte("@media all")), []byte(",print{"), []byte(",all{"))
	return bytes.Replace(body, []byte("</style>"), []byte(more+"</style>"), 1)
}

// onPaper are the upright leaves of a page on both papers, and those in landscape, if it has any.
func onPaper(name string, body []byte) []shown {
	const upright, lying = ".land{display:none}", "header,section:not(#runs),#runs>:not(.land){display:none}"
	pages := []shown{{name + " on A4", printed(body, upright), a4Wide}, {name + " on Letter", printed(body, upright), letterWide}}
	if bytes.Contains(body, []byte(`run land"`)) {
		pages = append(pages, shown{name + " in landscape on Letter", printed(body, lying), lyingWide})
	}
	return pages
}

// faults opens all the pages at once and returns what is wrong with them, and how many texts of
// drawings were looked at.
func faults(t *testing.T, pages []shown) (found []string, texts int) {
	t.Helper()
	var all []map[string]any
	for _, p := range pages {
		all = append(all, map[string]any{"name": p.name, "wide": p.wide, "body": string(p.body)})
	}
	data, err := json.Marshal(all) // "<" is escaped, so that no page ends the script
	if err != nil {
		t.Fatal(err)
	}
	body := "<!DOCTYPE html><meta charset=utf-8><title>look</title><body><pre id=findings></pre><script>const pages = " + string(data) + ";\n" + look + "</script>"
	file := filepath.Join(t.TempDir(), "look.html")
	if err := os.WriteFile(file, []byte(body), 0o600); err != nil {
		t.Fatal(err)
	}
	dom := dumped(t, "--dump-dom", "--window-size=1400,1000", "file://"+file)
	m := regexp.MustCompile(`(?s)<pre id="findings">(.*?)</pre>`).FindSubmatch(dom)
	if m == nil || len(m[1]) == 0 {
		t.Fatalf("the browser wrote no findings; %d bytes in all", len(dom))
	}
	var result struct {
		Texts  int
		Faults []string
	}
	if err := json.Unmarshal([]byte(html.UnescapeString(string(m[1]))), &result); err != nil {
		t.Fatal(err)
	}
	return result.Faults, result.Texts
}

// TestBooksInABrowser opens every book at the width of a phone, of a laptop and of printed pages,
// and the templates and the measuring sheet, and looks for text or drawings that overlap or
// overflow, lines through text, pictures without a text alternative and headings out of order. A
// page that is bad on purpose shows that the look finds such things.
func TestBooksInABrowser(t *testing.T) {
	needsBrowser(t)
	pages := []shown{{badName, badPage(), phoneWide}}
	add := func(name string, body []byte) {
		pages = append(pages, shown{name + " on a phone", body, phoneWide}, shown{name + " on a laptop", body, laptopWide})
		pages = append(pages, onPaper(name, body)...)
	}
	for _, n := range plans() {
		if *onlyBook != "" && n.name != *onlyBook {
			continue
		}
		if n.err != nil {
			t.Errorf("%s: %v", n.name, n.err)
			continue
		}
		files := n.files(t)
		for _, f := range files {
			switch {
			case f.Name == "book.html" && n.name == "hostile":
				pages = append(pages, shown{n.name + " on a phone", f.Body, phoneWide})
			case f.Name == "book.html" && n.name == "stored boards":
				pages = append(append(pages, shown{n.name + " on a phone", f.Body, phoneWide}), onPaper(n.name, f.Body)[1:]...)
			case f.Name == "book.html":
				add(n.name, f.Body)
			case f.Name == "templates-letter.html" && n.name != "hostile":
				pages = append(pages, shown{n.name + " " + f.Name, f.Body, laptopWide}, shown{n.name + " " + f.Name + " on Letter", printed(f.Body, ""), 816})
			}
		}
	}
	sheet, err := Survey(2)
	if err != nil {
		t.Fatal(err)
	}
	add("measuring sheet", sheet)
	found, texts := faults(t, pages)
	if texts < 1000 && *onlyBook == "" {
		t.Errorf("only %d texts of drawings were looked at", texts)
	}
	var bad strings.Builder
	for _, f := range found {
		if strings.HasPrefix(f, badName) {
			bad.WriteString(f + "\n")
		} else {
			t.Error(f)
		}
	}
	for _, want := range []string{"the page is", "overlap", "text over text", "text past its drawing", "line through text", "text over a mark", "less than 2.5 mm", "without scope", "skips a level", "slides sideways"} {
		if !strings.Contains(bad.String(), want) {
			t.Errorf("the look misses a fault of the kind %q; found:\n%s", want, &bad)
		}
	}
}

const badName = "bad on purpose on A4"

// badPage has one fault of each kind that the look knows.
func badPage() []byte {
	const drawn = `<svg viewBox="0 0 200 60" width="200" height="60" role="img" aria-labelledby="bad" class="drawing"><title id="bad">Bad on purpose</title>
<text x="10" y="30" class="">one line of text</text><text x="20" y="34" class="">another line of text</text>
<text x="150" y="55" class="">a line far past the side of its drawing</text><text x="120" y="15" class="" style="font-size:9px">struck</text><path class="pole" d="M100 11H180"/><path class="nail" d="M20 24l5 5m0 -5l-5 5"/></svg>`
	return fmt.Appendf(nil, `<!DOCTYPE html><html lang="en"><style>%s</style><body><h1>Bad</h1><h3>Skipped</h3><div style="width:900px">wide</div>
<table><tr><th>no scope</th></tr></table><p style="margin-top:-3em">over it</p><div style="overflow-x:auto"><div style="width:800px">slid</div></div>%s</body></html>`, style(), drawn)
}

// TestTemplatesPrintAtFullSize prints templates to PDF in the browser and measures there, by the
// lines in the file and not by its pixels.
//
// Tolerance: 0.2 mm, the width of a sharp pencil line. A point of a PDF is 1/72 in (ISO 32000-1,
// 8.3.2.3).
func TestTemplatesPrintAtFullSize(t *testing.T) {
	needsBrowser(t)
	const tolerance = 0.2 / 25.4 * 72
	p := kitchen()
	files, err := Files(p)
	if err != nil {
		t.Fatal(err)
	}
	printer := newPrinter(t)
	for _, paper := range drawing.Papers() {
		t.Run(paper.Name, func(t *testing.T) {
			t.Parallel()
			at := slices.IndexFunc(files, func(f File) bool { return f.Name == "templates-"+paper.Size+".html" })
			pages, boxes, _ := printer.print(t, files[at].Body)
			if leaves := bytes.Count(files[at].Body, []byte(`class="leaf"`)); leaves == 0 || len(boxes) != leaves {
				t.Fatalf("the PDF has %d pages, want %d: none is blank", len(boxes), leaves)
			}
			for _, b := range boxes {
				if abs(b.w-paper.Width*72) > 1 || abs(b.h-paper.Height*72) > 1 {
					t.Errorf("a page of %.2f by %.2f points, want %s", b.w, b.h, paper.Name)
				}
			}
			const side = drawing.CheckSquare * 72.0
			nearest(t, "the check square", slices.Concat(pages...), side, side, tolerance)
			hole := p.Pieces[0].Holes[0].Outline
			lo, hi := hole[0], hole[2]
			nearest(t, "the hole of outlet A", slices.Concat(pages...), hi.X.Sub(lo.X).Float64()*72, hi.Y.Sub(lo.Y).Float64()*72, tolerance)
		})
	}
}

// linked names the beginning and the end of each block of a book's leaves, and where its labels begin, by links that a PDF
// has the pages of. It returns what each block begins with too.
func linked(body []byte) (named []byte, blocks []string) {
	var links strings.Builder
	link := func(id string) {
		fmt.Fprintf(&links, `<a href="#%s" style="position:absolute;left:0;top:0">.</a>`, id)
	}
	leaf := regexp.MustCompile(`(?s)(<article class="leaf.*?)</article>`)
	named = leaf.ReplaceAllFunc(body, func(article []byte) []byte {
		head := regexp.MustCompile(`<span class="no">(\w+)`).FindSubmatch(article)
		parts := strings.Split(strings.TrimSuffix(string(article), "</article>"), `<div class="block">`)
		for i := 1; i < len(parts); i++ {
			n := len(blocks)
			blocks = append(blocks, fmt.Sprintf("%s, %d", head[1], i))
			link(fmt.Sprint("from", n))
			link(fmt.Sprint("to", n))
			parts[i] = strings.TrimSuffix(strings.TrimRight(parts[i], "\n"), "</div>") + fmt.Sprintf("<a id=\"to%d\"></a></div>\n", n)
			parts[i] = fmt.Sprintf(`<div class="block" id="from%d">`, n) + parts[i]
		}
		return []byte(strings.Join(parts, "") + "</article>")
	})
	link("labels")
	link("before")
	named = bytes.Replace(named, []byte(`<section id="labels"`), []byte(`<div id="before"></div><section id="labels"`), 1)
	return bytes.Replace(named, []byte("</main>"), []byte(links.String()+"</main>"), 1), blocks
}

// print prints a page to PDF and returns what is painted there, the size of each sheet of
// paper, in points, and the page that each place that is linked to lies on.
func (p *printer) print(t *testing.T, body []byte) (painted [][]box, papers []box, at map[string]string) {
	t.Helper()
	data := p.pdf(t, body)
	painted, papers, err := readPDF(data)
	if err != nil {
		t.Fatal(err)
	}
	at = map[string]string{}
	for _, m := range regexp.MustCompile(`/(\w+) \[(\d+) 0 R /XYZ`).FindAllSubmatch(data, -1) {
		at[string(m[1])] = string(m[2])
	}
	return painted, papers, at
}

// TestBooksPrint prints the books on both papers: nothing is painted past the margins, the browser has
// not made the pages smaller to get them on the paper, no page but the last is less than a third full, no
// block of a leaf goes on on another page, and the labels have pages of their own.
func TestBooksPrint(t *testing.T) {
	needsBrowser(t)
	const (
		side  = 12 / 25.4 * 72 // white at both sides
		top   = 11 / 25.4 * 72
		foot  = 13 / 25.4 * 72
		pixel = .75 // points
	)
	printer := newPrinter(t)
	for _, n := range plans() {
		if n.err != nil || n.name == "hostile" || *onlyBook != "" && n.name != *onlyBook {
			continue // what is wrong with a plan is said elsewhere
		}
		files := n.files(t)
		for _, paper := range drawing.Papers() {
			t.Run(n.name+" on "+paper.Name, func(t *testing.T) {
				t.Parallel()
				sized := fmt.Sprintf("<style>@page{size:%s portrait}@page lying{size:%[1]s landscape}</style></head>", paper.Size)
				body, blocks := linked(bytes.Replace(files[0].Body, []byte("</head>"), []byte(sized), 1))
				pages, papers, at := printer.print(t, body)
				for i := range blocks {
					if from, to := at[fmt.Sprint("from", i)], at[fmt.Sprint("to", i)]; from == "" || from != to {
						t.Errorf("block %d of the leaves begins on page %q and ends on page %q: %s", i, from, to, blocks[i])
					}
				}
				if at["labels"] != "" && at["labels"] == at["before"] {
					t.Error("the labels share a page with what stands before them")
				}
				var full []float64
				for _, page := range pages {
					wide, high := paper.Width*72, paper.Height*72
					lowest, highest := high, 0.0
					for _, b := range page {
						highest = max(highest, b.y+b.h)
						if b.y > foot {
							lowest = min(lowest, b.y)
						}
					}
					if highest < foot || len(page) < 5 {
						continue // no page: a part of a drawing that is painted by itself
					}
					if highest < wide { // in landscape
						wide, high = high, wide
					}
					for _, b := range page {
						if b.x < side-1 || b.x+b.w > wide-side+1 {
							t.Errorf("painted from %.1f to %.1f points across, past the margins of a page of %.1f", b.x, b.x+b.w, wide)
						}
					}
					full = append(full, (high-top-lowest)/(high-top-foot))
				}
				for i, part := range full {
					if n.name == "stored fixture" && i == len(full)-2 {
						continue // made up by hand with a single weight; plans that are made have two dozen there
					}
					if part < 1./3 && i < len(full)-1 {
						t.Errorf("page %d of %d is %.0f %% full", i+1, len(papers), part*100)
					}
				}
				if len(full) != len(papers) {
					t.Errorf("%d of %d pages were looked at", len(full), len(papers))
				}
				// As tall and wide as its drawing makes it: a page too wide for the paper would come
				// out smaller.
				nearest(t, "the sign of a piece in the legend", slices.Concat(pages...), 32*pixel, 12*pixel, .3)
				// The title block of every drawing of half a page, such as those at 1 to 2: these keep to
				// their scale. What is for a phone is not printed.
				const framed = 338 * pixel
				onPaper := regexp.MustCompile(`(?s)<div class="onphone".*?</svg>`).ReplaceAll(files[0].Body, nil)
				want, found := len(regexp.MustCompile(`<rect class="frame"[^>]* width="338"`).FindAll(onPaper, -1)), 0
				for _, b := range slices.Concat(pages...) {
					if b.h > 20 && abs(b.w-framed) < .3 {
						found++
					}
				}
				if found < want {
					t.Errorf("%d title blocks are %.2f points wide, want %d: the others are not to their scale", found, framed, want)
				}
			})
		}
	}
}

// nearest checks that one of the lines has a size.
func nearest(t *testing.T, what string, lines []box, w, h, tolerance float64) {
	t.Helper()
	best, off := box{}, 1e9
	for _, b := range lines {
		if d := max(abs(b.w-w), abs(b.h-h)); d < off {
			best, off = b, d
		}
	}
	const mm = 25.4 / 72
	t.Logf("%s: %.3f by %.3f mm, want %.3f by %.3f", what, best.w*mm, best.h*mm, w*mm, h*mm)
	if off > tolerance {
		t.Errorf("%s measures %.2f by %.2f mm in the PDF, want %.2f by %.2f", what, best.w*mm, best.h*mm, w*mm, h*mm)
	}
}

func abs(x float64) float64 { return max(x, -x) }
