package main

import (
	"flag"
	"os"
	"path/filepath"
	"testing"
)

var look = flag.String("look", "", "a folder to write pictures of the page to")

// stepped is a wall that looks better with one sheet more.
const stepped = `{"profile": "beadboard 1-5/8", "stock": [{"name": "sheet", "width": "48", "length": "96", "price": "40.00"}],
	"saw": {"kerf": "1/8", "square_up": "1/4"}, "gaps": {"side": "1/16"},
	"runs": [{"name": "wall", "width": "95 1/16", "left": {"kind": "exposed"}, "right": {"kind": "covered"},
		"heights": [{"at": "0", "top": "37 1/16"}, {"at": "49 3/16", "top": "37 1/16"}, {"at": "49 3/16", "top": "46 3/16"}, {"at": "95 1/16", "top": "46 3/16"}]}]}`

// TestLook writes what the page looks like, on a phone and a laptop, light and dark.
func TestLook(t *testing.T) {
	if *look == "" {
		t.Skip("no pictures without -look")
	}
	if err := os.MkdirAll(*look, 0o755); err != nil {
		t.Fatal(err)
	}
	page := written(t)
	for _, w := range []window{phone, laptop} {
		b := openBrowser(t, w)
		b.load(page)
		shot := func(name string, whole bool) { b.picture(filepath.Join(*look, w.name+"-"+name+".png"), whole) }
		shot("empty", false)
		b.eval(nil, "localStorage.setItem('groovewright job', $1)", string(kitchen(t)))
		b.eval(nil, "location.reload()")
		b.load(page)
		b.until("document.querySelector('#wall-2 svg')")
		for _, scheme := range []string{"light", "dark"} {
			b.call(nil, "Emulation.setEmulatedMedia", map[string]any{"features": []map[string]string{{"name": "prefers-color-scheme", "value": scheme}}})
			b.eval(nil, "location.hash = '#measure'")
			b.until("!document.getElementById('measure').hidden")
			shot(scheme+"-measure", true)
			b.click(`[id="runs[0].width"]`)
			shot(scheme+"-keypad", false)
			b.eval(nil, "location.hash = '#plan'")
			b.until("document.getElementById('start')")
			if scheme == "light" {
				b.click("#start")
			}
			b.until("document.querySelector('.planned svg')")
			shot(scheme+"-plan", true)
			b.eval(nil, "location.hash = '#take'")
			b.until("document.querySelector('[data-file=\"plan.json\"]')")
			shot(scheme+"-take", true)
		}
		b.openJob(page, stepped)
		b.step("plan")
		b.click("#start")
		b.until("document.querySelector('.planned svg')")
		b.eval(nil, "document.querySelector('.planned details').open = true")
		b.eval(nil, "[...document.querySelectorAll('.insist button')].find((e) => e.textContent.startsWith('Lock at')).click()")
		b.until("document.querySelector('.compared') && document.querySelector('.planned svg')")
		shot("choices", true)
		b.quiet()
	}
}
