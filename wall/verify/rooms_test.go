package verify

import (
	"encoding/json"
	"fmt"
	"slices"

	"pgregory.net/rapid"
)

// The rooms that tests draw: one to four runs, open or closed, with every kind of end, leaning
// ends, slopes, steps in the top and the bottom line, boxes, windows within and past the top line,
// doors, openings of odd outline, focal zones, breaks and panels already on the wall; profiles with
// and without a mirror image, with wide flats and of single boards; inches and millimetres, in
// several notations; stock with a pattern that starts anywhere, limited and unlimited. A drawn
// length is a whole number of marks: sixteenths of an inch, or millimetres. All names are invented.
//
// Every drawn room keeps the rules for a job (TestDrawnRoomsAreSound), but one that odd openings
// leave a spot in which no sheet can fill cannot be panelled; such rooms are rare.

// RandomRoom draws the JSON of a job, in which all that is said to happen always does where it can.
func RandomRoom(always ...string) *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string { return draw(t, false, always) })
}

// SmallRoom draws the JSON of a job of at most three short runs, without breaks and installed
// panels, and with no weight on weak strips, so that its blemish is that of the contract alone. Its
// profile has no repeat within the repeat.
func SmallRoom(always ...string) *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string { return draw(t, true, always) })
}

// draft is a room as it is drawn. Lengths are whole marks.
type draft struct {
	t       *rapid.T
	small   bool
	level   bool // no line slopes
	metric  bool
	profile repeat
	always  []string // labels of chances that come true

	tongue string

	side, box, window int // gaps
}

type object = map[string]any

func (d *draft) number(low, high int, label string) int {
	return rapid.IntRange(low, high).Draw(d.t, label)
}

// chance is true in about percent of 100 draws, or always. It shrinks to false.
func (d *draft) chance(percent int, label string) bool {
	return d.number(0, 99, label) >= 100-percent || slices.Contains(d.always, label)
}

func (d *draft) one(label string, of ...string) string {
	return rapid.SampledFrom(of).Draw(d.t, label)
}

// inches returns n inches, or nearly n, in marks.
func (d *draft) inches(n int) int {
	if d.metric {
		return 25 * n
	}
	return 16 * n
}

// length writes a number of marks in one of the notations of a tape.
func (d *draft) length(marks int) string {
	style := d.number(0, 9, "notation")
	if d.metric {
		switch {
		case style < 7:
			return fmt.Sprint(marks)
		case style < 9:
			return fmt.Sprintf("%d mm", marks)
		}
		sign := ""
		if marks < 0 {
			sign, marks = "-", -marks
		}
		return fmt.Sprintf("%s%d.%d cm", sign, marks/10, marks%10)
	}
	sign := ""
	if marks < 0 {
		sign, marks = "-", -marks
	}
	n, sixteenths := marks/16, marks%16
	switch {
	case style == 9:
		return fmt.Sprintf("%s%d.%04d", sign, n, sixteenths*625)
	case sixteenths == 0:
		return fmt.Sprintf("%s%d", sign, n)
	case n == 0:
		return fmt.Sprintf("%s%d/16", sign, sixteenths)
	case style == 8:
		return fmt.Sprintf("%s%d' %d %d/16\"", sign, n/12, n%12, sixteenths)
	case style == 7:
		return fmt.Sprintf("%s%d-%d/16", sign, n, sixteenths)
	}
	return fmt.Sprintf("%s%d %d/16", sign, n, sixteenths)
}

func draw(t *rapid.T, small bool, always []string) string {
	d := &draft{t: t, small: small, always: always}
	d.metric = d.chance(25, "metric")
	d.level = d.chance(50, "level lines")
	d.profile = d.drawProfile()
	d.side, d.box, d.window = d.gap("side"), d.gap("box"), d.gap("window")
	seam := d.gap("seam")
	if d.profile.boards {
		seam = 0
	}
	job := object{
		"title":   fmt.Sprintf("Room %d (invented)", d.number(1, 999, "title")),
		"profile": d.profile.file(d),
		"stock":   d.stock(),
		"saw":     object{"kerf": d.length(d.number(0, 3, "kerf")), "square_up": d.length(d.gap("square up"))},
		"gaps": object{
			"top": d.length(d.gap("top")), "bottom": d.length(d.gap("bottom")), "side": d.length(d.side),
			"seam": d.length(min(seam, 2)), "box": d.length(d.box), "window": d.length(d.window),
		},
	}
	if d.metric {
		job["units"] = "mm"
		job["tape"] = d.one("tape", "1 mm", "0.5", "1")
	} else if d.chance(50, "tape given") {
		job["tape"] = d.one("tape", "1/16", "1/32", "1/8") // coarser than the room is drawn, too
	}
	if d.chance(30, "snap") {
		most := "1/32" // half a mark of the tape
		switch job["tape"] {
		case "1/32":
			most = "1/64"
		case "1 mm":
			most = "0.5 mm"
		case "0.5":
			most = "0.25"
		case "1":
			most = "0.5"
		}
		job["snap"] = d.one("snap", "0", "0", most)
	}
	if d.chance(50, "scribe") {
		job["scribe"] = d.one("scribe", "0", "1/8", "1/4", "1/2")
	}
	if d.chance(30, "saw") {
		saw := job["saw"].(object)
		saw["kind"] = d.one("saw kind", "table", "track", "circular", "hand")
		if d.chance(50, "face") {
			saw["face"] = d.one("face", "up", "down")
		}
		if d.chance(50, "least rip") {
			saw["least_rip"] = d.length(d.number(0, 8, "least rip"))
		}
	}
	if trims := d.trims(25); trims != nil {
		job["trim"] = trims
	}
	d.runs(job)
	if small {
		job["priorities"] = object{"weak_strip": 0, "whole_end": d.number(0, 1, "whole end")}
	} else if d.chance(10, "priorities") {
		job["priorities"] = object{"box_side": 1, "seam": d.one("seam weight", "1/4", "1/16"), "whole_end": d.number(0, 1, "whole end")}
	}
	if !small && d.chance(5, "strips are wide") { // and little to be avoided
		job["priorities"] = object{"weak_strip": 0.01, "least_strip": d.length(d.number(d.inches(1), d.inches(12), "least strip"))}
	}
	data, err := json.Marshal(job)
	if err != nil {
		panic(err) // strings, numbers and bools only
	}
	return string(data)
}

// gap draws a small gap: none, or up to a quarter of an inch.
func (d *draft) gap(label string) int {
	if d.metric {
		return rapid.SampledFrom([]int{0, 1, 2, 3, 6}).Draw(d.t, label+" gap")
	}
	return rapid.SampledFrom([]int{0, 1, 2, 4}).Draw(d.t, label+" gap")
}

// trims draws what hides edges, or nil.
func (d *draft) trims(percent int) object {
	out := object{}
	for _, part := range []string{"bottom", "top", "casing"} {
		if d.chance(percent, "trim at the "+part) {
			out[part] = object{"name": part + " trim", "covers": d.length(d.number(d.inches(1)/8, d.inches(1), part+" covers"))}
		}
	}
	if len(out) == 0 {
		return nil
	}
	return out
}

// runs draws the runs and what hangs on them.
func (d *draft) runs(job object) {
	most := 4
	if d.small {
		most = 3
	}
	least := 1
	if slices.Contains(d.always, "closed") {
		least = 3
	}
	n := d.number(least, most, "runs")
	closed := n >= 3 && d.chance(25, "closed")
	job["closed"] = closed
	var links []string // what joins each run to the next; empty: nothing
	for i := range n {
		link := ""
		if closed || i < n-1 {
			link = d.one("link", "inside corner", "inside corner", "inside corner", "outside corner", "")
			if link == "" && closed {
				link = "inside corner"
			}
		}
		links = append(links, link)
	}
	var runs, installed []object
	for i := range n {
		before := ""
		if i > 0 || closed {
			before = links[(i+n-1)%n]
		}
		if before == "" && d.chance(10, "corner with a bare wall at the left") {
			before = "inside corner"
		}
		after := links[i]
		if after == "" && d.chance(10, "corner with a bare wall at the right") {
			after = "inside corner"
		}
		name := fmt.Sprintf("run %c", 'A'+i)
		r := d.run(name, before, after)
		runs = append(runs, r.file)
		if r.installed != nil {
			installed = append(installed, r.installed)
		}
	}
	job["runs"] = runs
	if len(installed) > 0 {
		job["installed"] = installed
	}
}

// stock draws the sheets: one kind without limit, and perhaps some offcuts.
func (d *draft) stock() []object {
	width, length := 48*16, 96*16
	if d.metric {
		width, length = 1220, 2440
	}
	if d.small {
		width = d.number(width/3, width, "sheet width")
	}
	if d.profile.boards {
		width = d.profile.pitch()
	}
	phase := func(label string) int {
		if d.profile.boards || d.profile.pitch() == 0 || d.chance(50, label+" from a repeat") {
			return 0
		}
		return d.number(0, d.profile.pitch()-1, label+" phase")
	}
	sheet := object{"name": "sheet", "width": d.length(width), "length": d.length(length)}
	if p := phase("sheet"); p > 0 {
		sheet["left_phase"] = d.length(p)
	}
	if d.chance(50, "price") {
		sheet["price"] = d.one("price", "31.50", "48", "19.99")
	}
	out := []object{sheet}
	if d.profile.boards {
		return out
	}
	for i := range d.number(0, 2, "offcuts") {
		w := d.number(max(2*d.profile.pitch(), 16), width, "offcut width")
		offcut := object{
			"name": fmt.Sprintf("offcut %d", i+1), "width": d.length(w),
			"length": d.length(d.number(d.inches(10), length, "offcut length")), "count": d.number(1, 3, "offcut count"),
		}
		if p := phase("offcut"); p > 0 {
			offcut["left_phase"] = d.length(p)
		}
		if d.chance(25, "squared") {
			offcut["squared"] = true
		}
		out = append(out, offcut)
	}
	return out
}

// AllBare reports whether openings and gaps leave nothing of any run to panel, or no more than a mark.
func AllBare(job []byte) bool {
	j, err := readJob(job)
	if err != nil || len(j.Runs) == 0 {
		return false
	}
	j.findBare(func(int) bool { return false })
	return !slices.Contains(j.bare, false)
}
