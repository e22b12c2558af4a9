package book

import (
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"example.com/groovewright/fraction/fractiontest/chromium"
)

// printer is one browser that prints page after page: to start one takes as long as to print a page.
type printer struct {
	lock    sync.Mutex
	browser *chromium.Browser
	loaded  chan bool
}

func newPrinter(t *testing.T) *printer {
	t.Helper()
	p := &printer{loaded: make(chan bool, 1)}
	p.browser = chromium.Open(t, needsChromium(t), 5*time.Minute, func(e chromium.Event) {
		if e.Method == "Page.loadEventFired" {
			select {
			case p.loaded <- true:
			default: // known
			}
		}
	})
	return p
}

// pdf prints a page on the paper that its style asks for.
func (p *printer) pdf(t *testing.T, body []byte) []byte {
	t.Helper()
	file := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(file, body, 0o600); err != nil {
		t.Fatal(err)
	}
	p.lock.Lock()
	defer p.lock.Unlock()
	select {
	case <-p.loaded: // of a page before
	default:
	}
	if err := p.browser.Call(nil, "Page.navigate", map[string]any{"url": "file://" + file}); err != nil {
		t.Fatal(err)
	}
	select {
	case <-p.loaded:
	case <-t.Context().Done():
		t.Fatal("the page does not load")
	}
	var printed struct{ Data []byte }
	if err := p.browser.Call(&printed, "Page.printToPDF", map[string]any{"preferCSSPageSize": true, "printBackground": true}); err != nil {
		t.Fatal(err)
	}
	return printed.Data
}

// needsChromium returns where the browser is.
func needsChromium(t *testing.T) string {
	t.Helper()
	path := chromium.Path()
	if path == "" {
		t.Fatal("no Chromium here to open, look at and print the pages; install chromium")
	}
	return path
}
