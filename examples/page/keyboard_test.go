package main

import (
	"bytes"
	"testing"
)

// tabTo presses Tab until a script about e, the element with the focus, is true. The focus must be
// seen on each element on the way.
func (b *browser) tabTo(script string, args ...any) {
	b.t.Helper()
	for range 400 {
		var there bool
		if b.eval(&there, "((e) => "+script+")(document.activeElement)", args...); there {
			return
		}
		b.key("Tab", "Tab", 9)
		var hidden string
		b.eval(&hidden, `((e) => { const s = getComputedStyle(e.matches(".word input") ? e.nextElementSibling : e); return e !== document.body && s.outlineStyle === "none" && e.id !== "main" ? e.outerHTML.slice(0, 200) : ""; })(document.activeElement)`)
		if hidden != "" {
			b.t.Fatalf("the focus cannot be seen at %s", hidden)
		}
	}
	b.t.Fatalf("Tab never comes to %s %v", script, args)
}

// tabBack presses Shift and Tab until a script about e, the element with the focus, is true.
func (b *browser) tabBack(script string) {
	b.t.Helper()
	for range 100 {
		var there bool
		if b.eval(&there, "((e) => "+script+")(document.activeElement)"); there {
			return
		}
		for _, kind := range []string{"rawKeyDown", "keyUp"} {
			b.call(nil, "Input.dispatchKeyEvent", map[string]any{"type": kind, "key": "Tab", "code": "Tab", "windowsVirtualKeyCode": 9, "modifiers": 8})
		}
	}
	b.t.Fatalf("Shift and Tab never come to %s", script)
}

// enter presses the button with the focus.
func (b *browser) enter() {
	b.call(nil, "Input.dispatchKeyEvent", map[string]any{"type": "keyDown", "key": "Enter", "code": "Enter", "windowsVirtualKeyCode": 13, "text": "\r"})
	b.call(nil, "Input.dispatchKeyEvent", map[string]any{"type": "keyUp", "key": "Enter", "code": "Enter", "windowsVirtualKeyCode": 13})
}

// The keyboard alone leads from an empty page to the book.
func TestByKeyboardAlone(t *testing.T) {
	long(t)
	b := openBrowser(t, laptop)
	b.load(written(t))
	field := func(path, text string) {
		t.Helper()
		b.tabTo("e.id === $1", path)
		b.keys(text)
	}
	press := func(script string, args ...any) {
		t.Helper()
		b.tabTo(script, args...)
		b.enter()
	}
	field("profile", "beadboard 1-1/2")
	press("e.dataset.add === $1", "stock")
	field("stock[0].name", "sheet")
	field("stock[0].width", "48")
	field("stock[0].length", "96")
	field("runs[0].name", "over the counter")
	field("runs[0].width", "95 1/4")
	b.tabTo("e.name === $1", "runs[0].right.kind")
	for range 3 { // to the last of four
		b.key("ArrowDown", "ArrowDown", 40)
	}
	field("runs[0].heights[0].top", "18")
	field("runs[0].heights[1].top", "18 1/8")
	press("e.dataset.add === $1", "runs[0].openings")
	b.eval(nil, "document.activeElement.select()")
	b.keys("box")
	field("runs[0].openings[0].left", "20")
	field("runs[0].openings[0].bottom", "5")
	field("runs[0].openings[0].width", "2 1/4")
	field("runs[0].openings[0].height", "3 3/4")
	press("e.hash === '#plan' && e.matches('.button')")
	b.until("!document.getElementById('plan').hidden")
	press("e.id === 'start'")
	b.until("document.querySelector('.planned svg')")
	press("e.hash === '#take' && e.matches('.button')")
	b.until(`document.querySelector('[data-file="book.html"]')`)
	press("e.dataset.file === 'book.html'")
	if !bytes.Equal(b.download("book.html"), commandFiles(t, []byte(backsplash))["book.html"]) {
		t.Error("the book is not what the command writes")
	}
	b.quiet()
}

// The keypad types what a tape says: whole inches and sixteenths, or millimeters.
func TestKeypad(t *testing.T) {
	long(t)
	b := openBrowser(t, phone)
	b.load(written(t))
	press := func(keys ...string) {
		t.Helper()
		for _, key := range keys {
			var found bool
			b.eval(&found, `(() => { for (const e of document.querySelectorAll("#keypad button")) e.dataset.now = [e.textContent, e.ariaLabel].includes($1) ? "yes" : ""; return !!document.querySelector("#keypad [data-now=yes]"); })()`, key)
			if !found {
				t.Fatalf("the keypad has no %s", key)
			}
			b.click("#keypad [data-now=yes]")
		}
	}
	is := func(path, want string) {
		t.Helper()
		var got string
		if b.eval(&got, "document.getElementById($1).value", path); got != want {
			t.Errorf("%s is %q, want %q", path, got, want)
		}
	}
	const width = "runs[0].width"
	b.click(`[id="` + width + `"]`)
	press("9", "6", "1/2")
	is(width, "96 1/2")
	press("3/16", "5") // another fraction, and one more figure of the whole inches
	is(width, "965 3/16")
	press("⌫", "⌫")
	is(width, "96")
	press("0 sixteenths", "⌫", "⌫", "7/8")
	is(width, "7/8")
	press("±")
	is(width, "-7/8")
	press("±", "1", "Next")
	is(width, "1 7/8")
	var at string
	if b.eval(&at, "document.activeElement.id"); at != "runs[0].left.lean" && at != "runs[0].left.kind" {
		t.Errorf("the next field is %q", at)
	}
	b.clickUntil(`[id="`+width+`"]`, "document.activeElement.id === $1", width)
	b.write("5' 3\"")
	press("4")
	is(width, "5' 3\"") // nothing is lost at the first key
	press("4", "1/4")
	is(width, "4 1/4")
	b.clickUntil(`[id="units"] input[value="mm"] + span`, "document.querySelector('[id=units] input:checked').value === 'mm'") // the page slides to the next field first
	b.clickUntil(`[id="`+width+`"]`, "document.getElementById('keypad').textContent.includes('.')")
	press("⌫", "⌫", "⌫", "2", "4", ".", "5")
	is(width, "24.5")
	b.quiet()
}
