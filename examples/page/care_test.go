package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
)

var axe = flag.String("axe", "", "the script of axe-core, a checker of accessibility, to judge the page by")

// open loads the page with a job that was kept, and waits for what is said of it.
func (b *browser) openJob(page, job string) {
	b.t.Helper()
	b.load(page)
	b.eval(nil, "localStorage.setItem('groovewright job', $1)", job)
	b.load(page)
	b.until("!document.body.dataset.checking")
}

// step goes to a step by its number on the tape.
func (b *browser) step(name string) {
	b.t.Helper()
	b.click(fmt.Sprintf("nav a[href=%q]", "#"+name))
	b.until("!document.getElementById($1).hidden", name)
}

// care finds what is too small for a glove, too faint, or without a name. Targets: WCAG 2.2, success
// criterion 2.5.5, 44 by 44 CSS pixels. Contrast: criterion 1.4.3, 4.5 to 1 and 3 to 1 for large text,
// with the relative luminance that its glossary defines.
const care = `(() => {
  const found = [], seen = (e) => e.checkVisibility({opacityProperty: true, visibilityProperty: true}) && e.getClientRects().length;
  const says = (e) => e.outerHTML.slice(0, 120);
  for (const e of document.querySelectorAll("button, input, select, summary, .button, nav a, label.word span")) {
    if (!seen(e) || e.matches(".word input, .skip")) continue;
    const box = e.closest("label") ?? e, r = box.getBoundingClientRect();
    if (r.width < 44 || r.height < 44) found.push("target of " + Math.round(r.width) + " by " + Math.round(r.height) + ": " + says(e));
    if (e.matches("input, select") && !e.labels.length) found.push("no label: " + says(e));
    if (e.matches("button") && !e.textContent.trim() && !e.ariaLabel) found.push("no name: " + says(e));
  }
  const part = (v) => (v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  const rgb = (s) => (s.match(/[\d.]+/g) ?? []).map(Number);
  const light = ([r, g, b]) => 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
  const behind = (e) => { for (; e; e = e.parentElement) { const c = rgb(getComputedStyle(e).backgroundColor); if (c.length && (c[3] ?? 1) > 0) return c; } return [255, 255, 255]; };
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  let looked = 0;
  for (let n; (n = texts.nextNode());) {
    const e = n.parentElement, style = getComputedStyle(e);
    if (!n.data.trim() || !seen(e) || e.closest("svg, script, noscript, :disabled")) continue;
    looked++;
    const [a, c] = [light(rgb(style.color)), light(behind(e))].sort((x, y) => y - x), size = parseFloat(style.fontSize);
    const least = size >= 24 || size >= 18.66 && style.fontWeight >= 700 ? 3 : 4.5;
    if ((a + 0.05) / (c + 0.05) < least) found.push("contrast " + ((a + 0.05) / (c + 0.05)).toFixed(2) + ": " + says(e));
  }
  if (document.documentElement.scrollWidth > innerWidth) found.push("the page slides sideways: " + document.documentElement.scrollWidth);
  if (looked < 10) found.push("only " + looked + " texts were looked at");
  return found;
})()`

// judge judges the page as it is seen.
func (b *browser) judge(where string) {
	b.t.Helper()
	var found []string
	b.eval(&found, care)
	for _, f := range found {
		b.t.Errorf("%s: %s", where, f)
	}
	if *axe == "" {
		return
	}
	script, err := os.ReadFile(*axe)
	if err != nil {
		b.t.Fatal(err)
	}
	b.eval(nil, string(script)+";0")
	var judged []struct {
		ID, Help string
		Nodes    []struct{ HTML string }
	}
	b.eval(&judged, "axe.run(document, {resultTypes: ['violations']}).then((r) => r.violations.map((v) => ({ID: v.id, Help: v.help, Nodes: v.nodes.slice(0, 3).map((n) => ({HTML: n.html.slice(0, 200)}))})))")
	for _, v := range judged {
		b.t.Errorf("%s: axe-core: %s, %s: %+v", where, v.ID, v.Help, v.Nodes)
	}
}

// The check itself must be able to fail.
func TestCareFindsFaults(t *testing.T) {
	long(t)
	b := openBrowser(t, laptop)
	b.load(written(t))
	b.eval(nil, `document.body.append(Object.assign(document.createElement("button"), {style: "min-height:0;height:20px;padding:0;width:200px;background:#fff;color:#999"}), document.createElement("input"))`)
	b.eval(nil, `document.body.lastChild.previousSibling.textContent = "faint"`)
	var found []string
	b.eval(&found, care)
	for _, want := range []string{"target of 200 by 20", "contrast 2.85", "no label"} {
		if !strings.Contains(strings.Join(found, "\n"), want) {
			t.Errorf("it does not find %q: %q", want, found)
		}
	}
}

// Every step is right for gloves, for eyes and for ears, light and dark, on a phone and a laptop; and
// a job with HTML in its names shows text.
func TestCare(t *testing.T) {
	long(t)
	const hostile = `<img src=x onerror=alert(1)>`
	job := strings.NewReplacer(`"over the counter"`, `"`+hostile+`"`, `"box"`, `"box"`, `"name": "sheet"`, `"name": "<b>sheet</b>"`, `{
  "profile"`, `{"title": "</script>`+hostile+`", "profile"`).Replace(backsplash)
	page := written(t)
	for _, w := range []window{phone, laptop} {
		b := openBrowser(t, w)
		b.openJob(page, job)
		b.judge(w.name + ", measure")
		b.step("plan")
		b.click("#start")
		b.until("document.querySelector('.planned svg')")
		for _, scheme := range []string{"light", "dark"} {
			b.call(nil, "Emulation.setEmulatedMedia", map[string]any{"features": []map[string]string{{"name": "prefers-color-scheme", "value": scheme}}})
			b.step("measure")
			b.eval(nil, "document.querySelectorAll('details').forEach((d) => { d.open = true; })")
			b.eval(nil, "document.getElementById('runs[0].width').focus()")
			b.judge(w.name + ", measure, " + scheme)
			b.step("plan")
			b.judge(w.name + ", plan, " + scheme)
			b.step("take")
			b.until(`document.querySelector('[data-file="book.html"]')`)
			b.judge(w.name + ", take, " + scheme)
		}
		var images int
		var text bool
		b.eval(&images, "document.querySelectorAll('img').length")
		b.eval(&text, "document.querySelector('.planned h3').textContent === $1 && document.getElementById('run-0').textContent.includes($1)", hostile)
		if images != 0 || !text {
			t.Errorf("%d images, names shown as text: %v", images, text)
		}
		b.quiet()
	}
}

// free are fields that take any text.
var free = regexp.MustCompile(`(^|\.)(title|name|source|manual|item|run)$`)

// A wrong value in any field, all of them at once, is said at that field, and nothing that was typed
// is lost. Every list of the form has an item, and every part is open.
func TestWrongValues(t *testing.T) {
	long(t)
	b := openBrowser(t, laptop)
	page := written(t)
	b.openJob(page, backsplash)
	const more = `(() => {
		for (let d; (d = document.querySelector("#form details:not([open])"));) d.fill ? d.fill() : d.open = true;
		const profile = document.getElementById("profile"), own = " ";
		if (profile.value !== own) { profile.value = own; profile.dispatchEvent(new Event("change")); return true; }
		const empty = [...document.querySelectorAll("#form [data-add]")].find((a) => !document.getElementById(a.dataset.add)?.querySelector(":scope > .items > *"));
		empty?.click();
		return !!empty;
	})()`
	for yes := true; yes; {
		b.eval(&yes, more)
	}
	write := func(fields []string, text string) {
		t.Helper()
		b.eval(nil, `$1.forEach((id) => { const e = document.getElementById(id); e.value = $2; e.dispatchEvent(new Event("input", {bubbles: true})); e.dispatchEvent(new Event("change", {bubbles: true})); })`, fields, text)
		b.until("!document.body.dataset.checking")
	}
	silent := func(fields []string) (all []string) {
		t.Helper()
		b.eval(&all, `$1.filter((id) => !document.getElementById(id + "!")?.textContent || document.getElementById(id).getAttribute("aria-invalid") !== "true")`, fields)
		return all
	}
	var fields []string
	b.eval(&fields, `[...document.querySelectorAll("#form input[type=text]")].map((e) => e.id)`)
	if len(fields) < 200 {
		t.Fatalf("only %d fields", len(fields))
	}
	write(fields, "seven")
	var coverages []string
	for _, id := range silent(fields) {
		switch {
		case free.MatchString(id):
		case strings.HasSuffix(id, ".solids"): // the paint's coverage stands in place of these
			coverages = append(coverages, strings.TrimSuffix(id, "solids")+"coverage")
		case strings.HasSuffix(id, ".dry_film"):
		default:
			t.Errorf("nothing is said at %q", id)
		}
	}
	write(coverages, "")
	for _, id := range silent(fields) {
		if !free.MatchString(id) && !slices.Contains(coverages, id) {
			t.Errorf("without a coverage nothing is said at %q", id)
		}
	}
	b.load(page)
	var job string
	b.eval(&job, "localStorage.getItem('groovewright job')")
	if got, want := strings.Count(job, `"seven"`), len(fields)-len(coverages); got != want {
		t.Errorf("%d values of %d are kept", got, want)
	}
	b.quiet()

	// What one of a few words is cannot be typed wrongly, but a file may have it.
	words := strings.NewReplacer(`"kind": "exposed"`, `"kind": "exposd"`, `"kind": "box"`, `"kind": "bocks"`).Replace(backsplash)
	b.openJob(page, strings.Replace(words, `"runs"`, `"units": "feet", "saw": {"kind": "chain"}, "runs"`, 1))
	for path, hidden := range map[string]bool{"runs[0].left.kind": false, "runs[0].openings[0].kind": false, "units": false, "saw.kind": true} {
		if hidden {
			b.eval(nil, `document.querySelector("[data-part=saw]").fill()`)
		}
		b.until(`document.getElementById($1 + "!").textContent`, path)
	}
	b.eval(&job, "localStorage.getItem('groovewright job')")
	for _, word := range []string{"exposd", "bocks", "feet", "chain"} {
		if !strings.Contains(job, word) {
			t.Errorf("%q is lost", word)
		}
	}
	b.quiet()
}

// large is a job whose search goes on for minutes.
func large() string {
	var runs []string
	for i := range 9 {
		left, right := "inside corner", "inside corner"
		if i == 0 {
			left = "exposed"
		} else if i == 8 {
			right = "exposed"
		}
		wide, high := 47+i*17%140, 25+i*31%70
		runs = append(runs, fmt.Sprintf(`{"name": "run %d", "width": "%d 3/8", "left": {"kind": %q}, "right": {"kind": %q},
			"heights": [{"at": "0", "top": "%d"}, {"at": "20", "top": "%d"}, {"at": "20", "top": "%d"}, {"at": "%d 3/8", "top": "%d"}]}`,
			i+1, wide, left, right, high, high, high-9, wide, high-9))
	}
	return `{"profile": "beadboard 1-5/8", "stock": [{"name": "a", "width": "48", "length": "96", "price": "40"}, {"name": "b", "width": "48", "length": "120", "price": "52"},
		{"name": "on hand", "width": "30", "length": "60", "count": 3}], "saw": {"kerf": "1/8", "square_up": "1/4"}, "gaps": {"side": "1/16"}, "runs": [` + strings.Join(runs, ",") + `]}`
}

// While a long search goes on, the page draws as many frames as while nothing goes on, 60 a second
// where the machine is not busy with other things, and answers; stopped, it has a plan.
func TestStopTakesTheBestSoFar(t *testing.T) {
	long(t)
	for _, w := range []window{phone, laptop} {
		b := openBrowser(t, w)
		b.openJob(written(t), large())
		b.until("document.body.dataset.warm")
		b.step("plan")
		gaps := func(when string) (frames int) {
			var all []float64
			b.eval(&all, `new Promise((done) => { const gaps = [], end = performance.now() + 2000; let last; const next = (t) => { if (last) gaps.push(t - last); last = t; t < end ? requestAnimationFrame(next) : done(gaps); }; requestAnimationFrame(next); })`)
			t.Logf("%s: %d frames in 2 s of %s, the longest after %.0f ms", w.name, len(all), when, slices.Max(all))
			return len(all)
		}
		idle := gaps("rest")
		b.click("#start")
		b.until("document.getElementById('stop')")
		b.until("document.getElementById('search').textContent.includes('3 s')")
		if busy := gaps("planning"); busy < idle*9/10 {
			t.Errorf("%s: %d frames while it plans, %d at rest", w.name, busy, idle)
		}
		b.eval(nil, "document.getElementById('stop').dataset.seen = 'yes'") // the same button all the time
		for end := time.Now().Add(patience); ; time.Sleep(time.Second) {    // as soon as there is a layout
			var done bool
			b.eval(&done, "document.querySelector('.planned svg') !== null")
			if done {
				break
			} else if time.Now().After(end) {
				t.Fatal("it does not stop")
			}
			b.eval(nil, "document.getElementById('stop')?.click()")
		}
		var says string
		b.eval(&says, "document.getElementById('search').textContent")
		if !strings.Contains(says, "best so far") {
			t.Errorf("it says %q", says)
		}
		b.quiet()
	}
}

// What the person insists on is planned at once and can be taken back: where the pattern starts, which
// way to work, a seam.
func TestWishesShowTheirPrice(t *testing.T) {
	long(t)
	b := openBrowser(t, laptop)
	b.openJob(written(t), string(kitchen(t)))
	b.step("plan")
	b.click("#start")
	b.until("document.querySelector('.planned svg')")
	var before string
	b.eval(&before, "document.querySelector('.choice').innerText")
	for _, wish := range []string{
		"document.getElementById('origin-0').stepUp(5); document.getElementById('origin-0').dispatchEvent(new Event('input')); document.getElementById('keep-0').click()",
		"[...document.querySelectorAll('.insist button')].find((e) => e.textContent.startsWith('Lock at')).click()",
		"[...document.querySelectorAll('.insist button')].find((e) => e.textContent === 'To the left').click()",
	} {
		b.eval(nil, wish)
		b.until("document.querySelector('.compared') && document.querySelector('.planned svg')")
		b.eval(nil, "document.querySelector('.compared').classList.replace('compared', 'seen')")
	}
	var job string
	b.eval(&job, "localStorage.getItem('groovewright job')")
	var kept struct {
		Runs []struct {
			Keep struct {
				Origin, Direction string
				Seams             []string
			}
		}
	}
	if err := json.Unmarshal([]byte(job), &kept); err != nil || kept.Runs[0].Keep.Origin == "" || len(kept.Runs[0].Keep.Seams) != 1 || kept.Runs[0].Keep.Direction != "left" {
		t.Errorf("kept %+v: %v", kept, err)
	}
	b.judge("wishes")
	b.click("#back")
	b.until("!document.querySelector('.seen, .compared') && document.querySelector('.planned svg')")
	var after string
	b.eval(&after, "document.querySelector('.choice').innerText")
	if before != after {
		t.Errorf("taken back, the plan is\n%s\nbefore it was\n%s", after, before)
	}
	b.quiet()
}

// The pattern is dragged by a mouse, by a finger and by keys; where it is let go it is planned, and its
// price is seen without sliding the page. A finger that slides the page moves no pattern.
func TestDragging(t *testing.T) {
	long(t)
	page := written(t)
	kept := func(b *browser) string {
		var job string
		b.eval(&job, "localStorage.getItem('groovewright job')")
		var j struct {
			Runs []struct{ Keep struct{ Origin string } }
		}
		if err := json.Unmarshal([]byte(job), &j); err != nil {
			t.Fatal(err)
		}
		return j.Runs[0].Keep.Origin
	}
	planned := func(w window) *browser {
		b := openBrowser(t, w)
		b.openJob(page, string(kitchen(t)))
		b.step("plan")
		b.click("#start")
		b.until("document.querySelector('.planned svg')")
		var origin string
		if b.eval(&origin, "document.getElementById('origin-0').ariaValueText"); origin != "5/16" {
			t.Fatalf("the first repeat starts at %q, not where the ways below begin", origin)
		}
		return b
	}
	priced := func(b *browser, who, want string) {
		t.Helper()
		b.until("document.querySelector('.compared') && document.querySelector('.planned svg')")
		if got := kept(b); got != want {
			t.Errorf("%s: the pattern is kept at %q, want %q", who, got, want)
		}
		b.until(`(() => { const r = document.querySelector(".compared").getBoundingClientRect(); return r.top >= document.querySelector("header").offsetHeight && r.bottom <= innerHeight; })()`)
		var origin string
		if b.eval(&origin, "document.getElementById('origin-0').ariaValueText"); origin != "1/16" {
			t.Errorf("%s: planned at %q, want 1/16, a repeat before what is kept", who, origin)
		}
		b.quiet()
	}
	// a place on the drawing and how many pixels 20 marks are
	const place = `(() => { const d = [...document.querySelectorAll(".drag")].find((e) => e.checkVisibility()); d.scrollIntoView({block: "center", behavior: "instant"});
		const r = d.querySelector(".wall").getBoundingClientRect(); return {x: r.x + r.width / 3, y: r.y + r.height - 9, by: 20 * r.width / (96.5 * 16)}; })()`
	const shifted = `[...document.querySelectorAll("g[clip-path] > .bead")].some((e) => !["translate(0)", null].includes(e.getAttribute("transform")))`
	var at struct{ X, Y, By float64 }
	var seen bool

	mouse := planned(laptop)
	mouse.eval(&at, place)
	point := func(kind string, by float64, buttons int) {
		mouse.call(nil, "Input.dispatchMouseEvent", map[string]any{"type": kind, "x": at.X + by, "y": at.Y, "button": "left", "buttons": buttons, "clickCount": 1})
	}
	point("mousePressed", 0, 1)
	point("mouseMoved", at.By/2, 1)
	point("mouseMoved", at.By, 1)
	if mouse.eval(&seen, shifted); !seen {
		t.Error("the pattern does not move under the mouse")
	}
	point("mouseReleased", at.By, 0)
	priced(mouse, "mouse", "1 9/16")

	finger := planned(phone)
	finger.call(nil, "Emulation.setTouchEmulationEnabled", map[string]any{"enabled": true})
	touch := func(kind string, points ...map[string]any) {
		finger.call(nil, "Input.dispatchTouchEvent", map[string]any{"type": kind, "touchPoints": append([]map[string]any{}, points...)})
	}
	finger.eval(&at, place)
	touch("touchStart", map[string]any{"x": at.X, "y": at.Y})
	for step := range 8 { // down the page
		touch("touchMove", map[string]any{"x": at.X + 2, "y": at.Y - 20*float64(step)})
	}
	touch("touchEnd")
	if got := kept(finger); got != "" {
		t.Errorf("sliding the page keeps the pattern at %q", got)
	}
	const turns = 5 // as a finger must go some way before a browser takes it for a drag
	finger.eval(&at, place)
	touch("touchStart", map[string]any{"x": at.X, "y": at.Y})
	way := at.By * (24*turns + 20) / 20 // so many repeats of 24 marks and 20 marks
	for step := range 20 {
		touch("touchMove", map[string]any{"x": at.X + way*float64(step+1)/20, "y": at.Y})
	}
	touch("touchEnd")
	priced(finger, "finger", "1 9/16")

	keys := planned(laptop)
	keys.eval(nil, "document.getElementById('main').focus()")
	keys.tabTo("e.id === 'insist-0'")
	keys.enter()
	keys.tabTo("e.id === 'origin-0'")
	for range 20 {
		keys.key("ArrowRight", "ArrowRight", 39)
	}
	keys.enter()
	priced(keys, "keys", "1 9/16")
	if keys.eval(&seen, "document.activeElement.id === 'origin-0'"); !seen {
		t.Error("the keyboard has lost its place")
	}
	keys.tabTo("e.id.startsWith('lock-0-')")
	keys.enter()
	keys.until("document.activeElement.ariaPressed === 'true' && document.activeElement.id.startsWith('lock-0-')")
	keys.tabBack("e.id === 'back'")
	keys.enter()
	keys.until("!document.querySelector('.compared') && document.activeElement.id === 'insist-0'")
	if got := kept(keys); got != "" {
		t.Errorf("taken back, the pattern is kept at %q", got)
	}
	keys.quiet()
}

// The first screen is quick, and so is a plan.
func TestQuick(t *testing.T) {
	long(t)
	page := written(t)
	info, err := os.Stat(page)
	if err != nil {
		t.Fatal(err)
	}
	b := openBrowser(t, phone)
	b.openJob(page, string(kitchen(t)))
	var painted, ready float64
	b.eval(&painted, "performance.getEntriesByName('first-contentful-paint')[0].startTime")
	b.eval(&ready, "performance.getEntriesByType('navigation')[0].domContentLoadedEventEnd")
	plan := func() (took float64) {
		b.eval(nil, "delete document.body.dataset.took")
		b.click("#start")
		b.until("document.body.dataset.took && document.querySelector('.planned svg')")
		b.eval(&took, "Number(document.body.dataset.took)")
		return took
	}
	b.step("plan")
	hasty := plan() // at once
	dir := t.TempDir()
	run := commandIn(t, dir, kitchen(t))
	var first, again, printed, written []float64
	for i := range 9 { // page and command by turns, as what else the machine does slows both
		b.openJob(page, string(kitchen(t)))
		b.until("document.body.dataset.warm")
		b.step("plan")
		first, again = append(first, plan()), append(again, plan())
		printed = append(printed, milliseconds(func() { run("plan", "job.json") }))
		written = append(written, milliseconds(func() { run("plan", "job.json", "--out", fmt.Sprint("plan", i)) }))
	}
	t.Logf("%d bytes; first screen after %.0f ms, form after %.0f ms", info.Size(), painted, ready)
	t.Logf("plan at once after loading %.0f ms; medians of 9: first plan %.0f ms, next plan %.0f ms; command with its book %.0f ms, text alone %.0f ms",
		hasty, median(first), median(again), median(written), median(printed))
	if painted > 1000 || ready > 1000 {
		t.Error("the first screen takes more than a second")
	}
	if median(first) > 3*median(written) {
		t.Error("a plan takes more than three times as long as by the command")
	}
}

func milliseconds(do func()) float64 {
	start := time.Now()
	do()
	return time.Since(start).Seconds() * 1000
}

func median(of []float64) float64 {
	slices.Sort(of)
	return of[len(of)/2]
}
