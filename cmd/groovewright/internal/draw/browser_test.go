package draw

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
)

//go:embed testdata/look.js
var look string

// chromium runs the browser without a window and returns what it prints. Where
// there is none the test is skipped.
func chromium(t *testing.T, args ...string) []byte {
	t.Helper()
	var found string
	for _, name := range []string{"chromium", "chromium-browser"} {
		if path, err := exec.LookPath(name); err == nil {
			found = path
			break
		}
	}
	if found == "" {
		t.Skip("SKIPPED: no Chromium here, so no page was opened, looked at or printed; install chromium to run this test")
	}
	args = append([]string{"--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
		"--disable-component-update", "--disable-sync", "--hide-scrollbars", "--user-data-dir=" + t.TempDir()}, args...)
	command := exec.CommandContext(t.Context(), found, args...)
	command.WaitDelay = 5 * time.Second
	out, err := command.Output()
	if err != nil {
		t.Fatalf("%s: %v", found, err)
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
)

// printed makes a page look on screen as it does on paper.
func printed(body []byte) []byte {
	return bytes.ReplaceAll(bytes.ReplaceAll(body, []byte("@media print"), []byte("@media all")), []byte(",print{"), []byte(",all{"))
}

// faults opens all the pages at once and returns what is wrong with them, and
// how many texts of drawings were looked at.
func faults(t *testing.T, pages []shown) (found []string, texts int) {
	t.Helper()
	var b strings.Builder
	b.WriteString("<!DOCTYPE html><meta charset=utf-8><title>look</title>")
	for _, p := range pages {
		fmt.Fprintf(&b, `<iframe title="%s" style="width:%dpx;height:900px;border:0;display:block" srcdoc="%s"></iframe>`,
			html.EscapeString(p.name), p.wide, html.EscapeString(string(p.body)))
	}
	b.WriteString("<pre id=findings></pre><script>" + look + "</script>")
	file := filepath.Join(t.TempDir(), "look.html")
	if err := os.WriteFile(file, []byte(b.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	dom := chromium(t, "--dump-dom", "--virtual-time-budget=20000", "--window-size=1400,1000", "file://"+file)
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

// TestBooksInABrowser opens every book at the width of a phone, of a laptop and
// of printed pages, and the templates and the measuring sheet, and looks for
// text or drawings that overlap or overflow, lines through text, pictures
// without a text alternative and headings out of order. A page that is bad on
// purpose shows that the look finds such things.
func TestBooksInABrowser(t *testing.T) {
	pages := []shown{{badName, badPage(), phoneWide}}
	add := func(name string, body []byte) {
		pages = append(pages, shown{name + " on a phone", body, phoneWide}, shown{name + " on a laptop", body, laptopWide},
			shown{name + " on Letter", printed(body), letterWide}, shown{name + " on A4", printed(body), a4Wide})
	}
	for _, n := range plans() {
		if n.err != nil {
			t.Errorf("%s: %v", n.name, n.err)
			continue
		}
		files, err := Book(n.plan)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			switch {
			case f.Name == "book.html" && n.name == "hostile":
				pages = append(pages, shown{n.name + " on a phone", f.Body, phoneWide})
			case f.Name == "book.html" && n.name == "boards":
				pages = append(pages, shown{n.name + " on a phone", f.Body, phoneWide}, shown{n.name + " on Letter", printed(f.Body), letterWide})
			case f.Name == "book.html":
				add(n.name, f.Body)
			case f.Name == "templates-letter.html" && n.name != "hostile":
				pages = append(pages, shown{n.name + " " + f.Name, f.Body, laptopWide})
			}
		}
	}
	sheet, err := Survey(2)
	if err != nil {
		t.Fatal(err)
	}
	add("measuring sheet", sheet)
	found, texts := faults(t, pages)
	if texts < 1000 {
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
	for _, want := range []string{"the page is", "overlap", "text over text", "text past its drawing", "line through text", "without scope", "skips a level"} {
		if !strings.Contains(bad.String(), want) {
			t.Errorf("the look misses a fault of the kind %q; found:\n%s", want, &bad)
		}
	}
}

const badName = "bad on purpose"

// badPage has one fault of each kind that the look knows.
func badPage() []byte {
	pic := newPicture("bad", "Bad on purpose")
	pic.Desc, pic.Width, pic.Height = "Texts over each other.", 200, 60
	line{"one line of text"}.write(&pic.root, "", 10, 30, "start")
	line{"another line of text"}.write(&pic.root, "", 20, 34, "start")
	line{"a line far past the side of its drawing"}.write(&pic.root, "", 150, 55, "start")
	line{"struck"}.write(&pic.root, "", 120, 15, "start")
	pic.add("path", "class", "pole", "d", "M100 11H180")
	return fmt.Appendf(nil, `<!DOCTYPE html><html lang="en"><style>%s</style><body><h1>Bad</h1><h3>Skipped</h3><div style="width:900px">wide</div>
<table><tr><th>no scope</th></tr></table><p style="margin-top:-3em">over it</p>%s</body></html>`, style(), pic.markup(false))
}

// TestTemplatesPrintAtFullSize prints templates to PDF in the browser and
// measures there, by the lines in the file and not by its pixels.
//
// Tolerance: 0.2 mm, the width of a sharp pencil line. A point of a PDF is
// 1/72 in (ISO 32000-1, 8.3.2.3).
func TestTemplatesPrintAtFullSize(t *testing.T) {
	const tolerance = 0.2 / 25.4 * 72
	p := kitchen()
	files, err := Book(p)
	if err != nil {
		t.Fatal(err)
	}
	for _, paper := range Papers() {
		t.Run(paper.Name, func(t *testing.T) {
			dir := t.TempDir()
			for _, f := range files {
				if f.Name == "templates-"+paper.Size+".html" {
					if err := os.WriteFile(filepath.Join(dir, f.Name), f.Body, 0o600); err != nil {
						t.Fatal(err)
					}
				}
			}
			pdf := filepath.Join(dir, "templates.pdf")
			chromium(t, "--no-pdf-header-footer", "--print-to-pdf="+pdf, "file://"+filepath.Join(dir, "templates-"+paper.Size+".html"))
			data, err := os.ReadFile(pdf)
			if err != nil {
				t.Fatal(err)
			}
			pages, boxes, err := readPDF(data)
			if err != nil {
				t.Fatal(err)
			}
			if len(boxes) == 0 {
				t.Fatal("the PDF has no pages")
			}
			for _, b := range boxes {
				if abs(b.w-paper.Width*72) > 1 || abs(b.h-paper.Height*72) > 1 {
					t.Errorf("a page of %.2f by %.2f points, want %s", b.w, b.h, paper.Name)
				}
			}
			const side = CheckSquare * 72.0
			nearest(t, "the check square", pages, side, side, tolerance)
			hole := p.Pieces[0].Holes[0].Outline
			lo, hi := bounds(hole)
			nearest(t, "the hole of outlet A", pages, hi[0].Sub(lo[0]).Float64()*72, hi[1].Sub(lo[1]).Float64()*72, tolerance)
		})
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
