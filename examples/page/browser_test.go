package main

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/groovewright/fraction/fractiontest/chromium"
)

// browser is a Chromium with the page in a window.
type browser struct {
	*chromium.Browser
	t      *testing.T
	mu     sync.Mutex
	errors []string // what the page said was wrong
	saved  string   // the folder of downloads
}

// patience is how long the page may take for anything.
const patience = 20 * time.Second

// window is what the page is seen in, in CSS pixels.
type window struct {
	name       string
	wide, high int
	mobile     bool
}

var phone, laptop = window{"phone", 390, 844, true}, window{"laptop", 1280, 800, false}

// openBrowser starts Chromium with a page in a window and no network, or skips the test where there
// is no Chromium.
func openBrowser(t *testing.T, w window) *browser {
	t.Helper()
	path := chromium.Path()
	if path == "" {
		t.Skip("no Chromium here to open the page")
	}
	b := &browser{t: t, saved: t.TempDir()}
	b.Browser = chromium.Open(t, path, patience, b.hear)
	for _, domain := range []string{"Runtime.enable", "Log.enable", "Network.enable"} {
		b.call(nil, domain, nil)
	}
	b.call(nil, "Browser.setDownloadBehavior", map[string]any{"behavior": "allow", "downloadPath": b.saved})
	b.call(nil, "Emulation.setDeviceMetricsOverride", map[string]any{"width": w.wide, "height": w.high, "deviceScaleFactor": 1, "mobile": w.mobile})
	b.call(nil, "Network.emulateNetworkConditions", map[string]any{"offline": true, "latency": 0, "downloadThroughput": 0, "uploadThroughput": 0})
	return b
}

// local is a request that no network sees.
var local = regexp.MustCompile(`"url":"(file|data|blob|about):`)

// hear keeps what goes wrong in the page.
func (b *browser) hear(e chromium.Event) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch {
	case e.Method == "Runtime.exceptionThrown",
		e.Method == "Runtime.consoleAPICalled" && !bytes.Contains(e.Params, []byte(`"type":"log"`)),
		e.Method == "Log.entryAdded":
		said := regexp.MustCompile(`data:text/javascript[^:)]*`).ReplaceAllString(string(e.Params), "(module)")
		b.errors = append(b.errors, e.Method+": "+said[:min(len(said), 900)])
	case e.Method == "Network.requestWillBeSent" && !local.Match(e.Params):
		b.errors = append(b.errors, "it asks the network: "+string(e.Params[:min(len(e.Params), 900)]))
	}
}

// call sends a command and waits for its answer.
func (b *browser) call(result any, method string, params any) {
	b.t.Helper()
	if err := b.Call(result, method, params); err != nil {
		b.t.Fatal(err)
	}
}

// eval runs a script in the page, which may be a promise, and reads its value. $1 in it stands for
// the first of the arguments.
func (b *browser) eval(value any, script string, args ...any) {
	b.t.Helper()
	for i, a := range args {
		data, err := json.Marshal(a)
		if err != nil {
			b.t.Fatal(err)
		}
		script = strings.ReplaceAll(script, fmt.Sprintf("$%d", i+1), string(data))
	}
	var r struct {
		Result           struct{ Value json.RawMessage }
		ExceptionDetails *struct {
			Text      string
			Exception struct{ Description string }
		}
	}
	b.call(&r, "Runtime.evaluate", map[string]any{"expression": script, "awaitPromise": true, "returnByValue": true, "userGesture": true})
	if e := r.ExceptionDetails; e != nil {
		b.t.Fatalf("%s: %s %s", script, e.Text, e.Exception.Description)
	}
	if value != nil && r.Result.Value != nil {
		if err := json.Unmarshal(r.Result.Value, value); err != nil {
			b.t.Fatal(err)
		}
	}
}

// until waits until a script is true.
func (b *browser) until(script string, args ...any) {
	b.t.Helper()
	for end := time.Now().Add(patience); ; time.Sleep(20 * time.Millisecond) {
		var yes bool
		if b.eval(&yes, "!!("+script+")", args...); yes {
			return
		}
		if time.Now().After(end) {
			var body string
			b.eval(&body, "document.body.innerText.slice(0, 1500)")
			b.t.Fatalf("it never came to %s %v; the page says:\n%s\n%s", script, args, body, strings.Join(b.errors, "\n"))
		}
	}
}

// load opens a file and waits until the page has asked its planner about the job.
func (b *browser) load(file string) {
	b.t.Helper()
	b.call(nil, "Page.navigate", map[string]any{"url": "file://" + file})
	b.until("document.readyState === 'complete' && document.getElementById('form').childElementCount")
}

// click clicks in the middle of an element, as a hand does.
func (b *browser) click(selector string) {
	b.t.Helper()
	var at struct{ X, Y float64 }
	b.eval(&at, `(() => { const e = document.querySelector($1); if (!e) throw new Error("no such element");
		e.scrollIntoView({block: "center", behavior: "instant"}); const r = e.getBoundingClientRect();
		const x = r.x + r.width / 2, y = r.y + r.height / 2, on = document.elementFromPoint(x, y);
		if (!on || !(e.contains(on) || on.contains(e) || on.closest("label")?.contains(e))) throw new Error("covered by " + (on?.outerHTML.slice(0, 200) ?? "nothing") + " at " + x + " " + y);
		return {x, y}; })()`, selector)
	for _, kind := range []string{"mousePressed", "mouseReleased"} {
		b.call(nil, "Input.dispatchMouseEvent", map[string]any{"type": kind, "x": at.X, "y": at.Y, "button": "left", "clickCount": 1})
	}
}

// clickUntil clicks until a script is true: messages that come in the meantime move what is below
// them, and a click may go beside it.
func (b *browser) clickUntil(selector, script string, args ...any) {
	b.t.Helper()
	for range 5 {
		b.click(selector)
		var yes bool
		if b.eval(&yes, script, args...); yes {
			return
		}
		b.until("!document.body.dataset.checking")
	}
	b.t.Fatalf("a click on %s does nothing", selector)
}

// write types a text into the field that has the focus, in place of what stands there.
func (b *browser) write(text string) {
	b.t.Helper()
	b.eval(nil, "document.activeElement.select?.()")
	if text == "" {
		b.key("Delete", "Delete", 46)
	} else {
		b.call(nil, "Input.insertText", map[string]any{"text": text})
	}
}

// keys types a text key by key, as into a list that is chosen from.
func (b *browser) keys(text string) {
	b.t.Helper()
	for _, c := range text {
		b.call(nil, "Input.dispatchKeyEvent", map[string]any{"type": "keyDown", "key": string(c), "text": string(c)})
		b.call(nil, "Input.dispatchKeyEvent", map[string]any{"type": "keyUp", "key": string(c)})
	}
}

// key presses a key.
func (b *browser) key(key, code string, number int) {
	for _, kind := range []string{"rawKeyDown", "keyUp"} {
		b.call(nil, "Input.dispatchKeyEvent", map[string]any{"type": kind, "key": key, "code": code, "windowsVirtualKeyCode": number})
	}
}

// download waits for a file that was saved.
func (b *browser) download(name string) []byte {
	b.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		if data, err := os.ReadFile(filepath.Join(b.saved, name)); err == nil && len(data) > 0 {
			return data
		}
	}
	b.t.Fatalf("%s was not saved", name)
	return nil
}

// picture writes what is seen into a PNG file, the whole page or what the window shows of it.
func (b *browser) picture(file string, whole bool) {
	b.t.Helper()
	var shot struct{ Data string }
	b.call(&shot, "Page.captureScreenshot", map[string]any{"captureBeyondViewport": whole})
	data, err := base64.StdEncoding.DecodeString(shot.Data)
	if err != nil {
		b.t.Fatal(err)
	}
	if err := os.WriteFile(file, data, 0o644); err != nil {
		b.t.Fatal(err)
	}
}

// quiet fails where the page said that something was wrong.
func (b *browser) quiet() {
	b.t.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, e := range b.errors {
		b.t.Error(e)
	}
}
