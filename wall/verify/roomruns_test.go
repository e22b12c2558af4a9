package verify

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// stretch is a run as it is drawn.
type stretch struct {
	file      object
	installed object
	width     int
	leans     [2]int // of its ends
	stations  []taping
	taken     [][2]int // stretches where openings and the like stand
	doors     [][2]int // of them, those that part the run
}

// free says whether nothing stands within an inch of a stretch.
func (d *draft) free(r *stretch, left, right int) bool {
	return !slices.ContainsFunc(r.taken, func(t [2]int) bool { return left < t[1]+d.inches(1) && t[0]-d.inches(1) < right })
}

type taping struct{ at, bottom, top int }

// lowest and highest return the extremes of the lines over the whole run.
func (r *stretch) lowest() (bottom, top int) {
	bottom, top = r.stations[0].bottom, r.stations[0].top
	for _, s := range r.stations {
		bottom, top = min(bottom, s.bottom), min(top, s.top)
	}
	return bottom, top
}

func (r *stretch) highest() (bottom, top int) {
	bottom, top = r.stations[0].bottom, r.stations[0].top
	for _, s := range r.stations {
		bottom, top = max(bottom, s.bottom), max(top, s.top)
	}
	return bottom, top
}

func (d *draft) run(name, before, after string) *stretch {
	longest := 170
	if d.small {
		longest = 90
	}
	r := &stretch{width: d.number(d.inches(14), d.inches(longest), "width")}
	var left, right object
	left, r.leans[0] = d.end(before)
	right, r.leans[1] = d.end(after)
	d.heights(r)
	r.file = object{
		"name": name, "width": d.length(r.width), "left": left, "right": right, "heights": d.heightsFile(r),
	}
	if !d.small && before == "" && left["lean"] == nil && r.width >= d.inches(50) && d.chance(8, "installed") {
		end := d.side + d.number(d.inches(12), d.inches(24), "installed width")
		r.installed = object{
			"run": name, "left": d.length(d.side), "right": d.length(end),
			"left_phase": d.length(d.number(0, max(d.profile.pitch()-1, 0), "installed phase")),
		}
		r.taken = append(r.taken, [2]int{0, end})
	}
	if trims := d.trims(8); trims != nil {
		r.file["trim"] = trims
	}
	d.openings(r)
	d.zones(r)
	if !d.small && d.chance(20, "keep") {
		d.keep(r)
	}
	return r
}

// end draws one end of a run, and its lean; link is the corner it shares, or empty.
func (d *draft) end(link string) (out object, lean int) {
	kind := link
	if kind == "" {
		kind = d.one("end", "exposed", "exposed", "covered")
	}
	out = object{"kind": kind}
	if d.chance(15, "leans") {
		lean = d.number(1, d.inches(1)/2, "lean")
		if d.chance(50, "leans left") {
			lean = -lean
		}
		out["lean"] = d.length(lean)
	}
	if d.chance(15, "end's own prominence") {
		out["prominence"] = []float64{0, 1, 2.5, 6}[d.number(0, 3, "prominence")]
	}
	return out, lean
}

// heights draws the stations: up to three stretches, level, sloped or stepped.
func (d *draft) heights(r *stretch) {
	high := 60
	if d.small {
		high = 30
	}
	at, bottom, top := 0, 0, d.number(d.inches(12), d.inches(high), "top")
	if d.chance(20, "bottom off the datum") {
		bottom = d.number(-d.inches(1), d.inches(1), "bottom")
	}
	r.stations = []taping{{at, bottom, top}}
	slope := func(label string) int {
		if d.level || d.chance(60, label+" level") {
			return 0
		}
		return d.number(-d.inches(1), d.inches(1), label+" slope")
	}
	stretches := d.number(1, max(1, min(3, r.width/d.inches(16))), "stretches")
	for i := range stretches {
		at = r.width * (i + 1) / stretches
		bottom, top = bottom+slope("bottom"), top+slope("top")
		bottom = min(bottom, d.inches(6))
		top = max(min(top, d.inches(high+4)), bottom+d.inches(6))
		r.stations = append(r.stations, taping{at, bottom, top})
		if i == stretches-1 || !d.chance(50, "step") {
			continue
		}
		if d.chance(80, "step in the top") {
			top = max(bottom+d.inches(6), d.number(d.inches(12), d.inches(high), "stepped top"))
		}
		if d.chance(30, "step in the bottom") {
			bottom = min(top-d.inches(6), d.number(-d.inches(2), d.inches(5), "stepped bottom"))
		}
		if last := r.stations[len(r.stations)-1]; last.bottom != bottom || last.top != top {
			r.stations = append(r.stations, taping{at, bottom, top})
		}
	}
}

func (d *draft) heightsFile(r *stretch) []object {
	var out []object
	for _, s := range r.stations {
		file := object{"at": d.length(s.at), "top": d.length(s.top)}
		if s.bottom != 0 || d.chance(30, "bottom given") {
			file["bottom"] = d.length(s.bottom)
		}
		out = append(out, file)
	}
	return out
}

// openings draws boxes, windows and doors from left to right, an inch and more apart.
func (d *draft) openings(r *stretch) {
	low, top := r.lowest()
	floor, high := r.highest()
	at := d.inches(3)
	if len(r.taken) > 0 {
		at += r.taken[0][1]
	}
	out := d.atEnds(r)
	if len(out) == 0 && d.chance(10, "beside a step") {
		out = d.besideStep(r)
	}
	for i := range d.number(0, 4, "openings") {
		at += d.number(0, r.width/3, "to the opening")
		kinds := []string{"box", "box", "window", "window past the top", "door", "horned window"}
		if !d.small { // plain search knows no sloped edges
			kinds = append(kinds, "arched window", "taped window")
		}
		kind := d.one("kind", kinds...)
		if i == 0 && slices.Contains(d.always, "arch") {
			kind = "arched window"
		}
		var width, bottom int
		height := d.inches(4)
		switch kind {
		case "box":
			width = d.number(d.inches(2), d.inches(5), "box width")
			bottom = d.number(floor+d.inches(1), max(floor+d.inches(1), top-d.inches(5)), "box bottom")
		case "door":
			width = d.number(d.inches(20), d.inches(36), "door width")
			bottom, height = low-d.inches(1), high-low+d.inches(4)
		case "window past the top":
			width = d.number(d.inches(6), d.inches(30), "window width")
			bottom = d.number(floor+d.inches(1), max(floor+d.inches(1), top-d.inches(1)), "window bottom")
			height = high - bottom + d.inches(3)
		default:
			width = d.number(d.inches(6), d.inches(30), "window width")
			bottom = d.number(floor+d.inches(1), max(floor+d.inches(1), top-d.inches(6)), "window bottom")
			height = d.number(d.inches(3), d.inches(30), "window height")
		}
		if at+width > r.width-d.inches(3) {
			break
		}
		if !d.free(r, at, at+width) {
			continue
		}
		o := d.opening(fmt.Sprintf("opening %d", i+1), kind, at, bottom, width, height)
		if kind == "taped window" && bottom > d.inches(5) {
			for _, name := range []string{"left", "bottom", "width", "height"} {
				delete(o, name)
			}
			o["points"] = d.points(r.width, at, bottom, width, height)
		}
		out = append(out, o)
		if kind == "window" && bottom > floor+d.inches(6) && d.chance(15, "box under a window") {
			out = append(out, d.underWindow(i, at, bottom, width))
			width = max(width, d.inches(6))
		}
		r.taken = append(r.taken, [2]int{at, at + width})
		if kind == "door" {
			r.doors = append(r.doors, [2]int{at, at + width})
		}
		at += width + d.number(d.inches(1), d.inches(9), "after the opening")
	}
	if len(out) > 0 {
		r.file["openings"] = out
	}
}

// atEnds draws openings at the ends of a run: doors, and windows over a part of its height; to the end
// itself, or to a sliver from it. Where one leans, an opening takes it whole.
func (d *draft) atEnds(r *stretch) (out []object) {
	low, top := r.lowest()
	floor, high := r.highest()
	for side, end := range []string{"left", "right"} {
		if !d.chance(8, "opening at the "+end+" end") {
			continue
		}
		kind, width, off := "door", d.number(1, d.inches(36), "width at the "+end+" end"), 0
		bottom, height := low-d.inches(1), high-low+d.inches(4)
		if r.leans[side] == 0 && d.chance(30, "over a part of the "+end+" end") {
			kind, bottom = "window", d.number(floor-d.inches(1), top-d.inches(1), "bottom at the "+end+" end")
			height = d.number(d.inches(2), high-bottom+d.inches(3), "height at the "+end+" end")
		}
		if d.chance(30, "short of the "+end+" end") {
			off = d.number(1, 6, "sliver at the "+end+" end")
		}
		if lean := r.leans[side]; lean != 0 {
			if off, width = 0, width+d.inches(2); (lean > 0) != (side == 0) || r.file[end].(object)["kind"] == "outside corner" {
				continue // something is left past it
			}
		}
		left := off
		if side == 1 {
			left = r.width - off - width
		}
		if left < 0 || left+width > r.width || !d.free(r, left, left+width) || r.leans[1-side] != 0 && off+width > r.width-d.inches(2) {
			continue
		}
		out = append(out, d.opening("opening at the "+end+" end", kind, left, bottom, width, height))
		r.taken = append(r.taken, [2]int{left, left + width})
	}
	return out
}

// besideStep draws an opening in the lower part of a run, whose side once it is grown stands in one line
// with the side of a step in the top.
func (d *draft) besideStep(r *stretch) []object {
	for k := 1; k < len(r.stations); k++ {
		a, b := r.stations[k-1], r.stations[k]
		if a.at != b.at || a.top == b.top {
			continue
		}
		kind, gap, width, height := "box", d.box, d.inches(3), d.inches(4)
		if d.chance(50, "window beside the step") {
			kind, gap, width = "window", d.window, d.inches(8)
		}
		left := a.at + d.side - gap - width // the taller part is at the right
		if b.top < a.top {
			left = a.at - d.side + gap
		}
		bottom := min(a.top, b.top) - d.number(1, height+d.inches(1), "below the step")
		if left < d.inches(3) || left+width > r.width-d.inches(3) || !d.free(r, left, left+width) {
			continue
		}
		r.taken = append(r.taken, [2]int{left, left + width})
		return []object{d.opening("opening at the step", kind, left, bottom, width, height)}
	}
	return nil
}

// underWindow draws a box under a window, one side of both in line once they are grown.
func (d *draft) underWindow(i, left, bottom, width int) object {
	wide, high := d.inches(3), d.inches(3)
	at := left - d.window + d.box
	if d.chance(50, "in line at the right") {
		at = max(left+width+d.window-d.box-wide, left-d.window+d.box)
	}
	return d.opening(fmt.Sprintf("box under opening %d", i+1), "box", at, bottom-high-d.number(0, d.inches(1), "under the window"), wide, high)
}

// keep draws what the person insists on.
func (d *draft) keep(r *stretch) {
	out := object{}
	if r.installed == nil && d.profile.pitch() > 0 && d.chance(40, "keep an origin") {
		out["origin"] = d.length(d.number(-d.inches(2), d.inches(10), "origin"))
	}
	if d.chance(40, "keep a direction") {
		out["direction"] = d.one("direction", "left", "right")
		if d.profile.boards && d.profile.edges != "" {
			out["direction"] = cmp.Or(d.tongue, "right")
		}
	}
	at, seams, clear := d.inches(6), []string{}, []object{}
	for range d.number(0, 3, "kept places") {
		from := at + d.number(0, r.width/3, "to the kept place")
		to := from + d.number(1, d.inches(20), "clear width")
		if to > r.width-d.inches(6) {
			break
		}
		if at = to + d.inches(4); !d.free(r, from, to) {
			continue
		}
		if d.profile.boards || d.chance(50, "clear") {
			clear = append(clear, object{"from": d.length(from), "to": d.length(to)})
		} else {
			seams = append(seams, d.length(from))
		}
	}
	if len(seams) > 0 {
		out["seams"] = seams
	}
	if len(clear) > 0 {
		out["clear"] = clear
	}
	if len(out) > 0 {
		r.file["keep"] = out
	}
}

// points gives the corners of a rectangle by their distances, each to a mark, from both ends of the
// run's level line.
func (d *draft) points(run, left, bottom, width, height int) object {
	var corners []object
	for _, p := range [][2]int{{left, bottom}, {left + width, bottom}, {left + width, bottom + height}, {left, bottom + height}} {
		from := func(x int) string { return d.length(int(math.Round(math.Hypot(float64(p[0]-x), float64(p[1]))))) }
		corners = append(corners, object{"distances": []string{from(0), from(run)}})
	}
	return object{"bases": [][2]string{{"0", "0"}, {d.length(run), "0"}}, "side": "left", "corners": corners}
}

func (d *draft) opening(name, kind string, left, bottom, width, height int) object {
	out := object{"name": name, "left": d.length(left), "bottom": d.length(bottom)}
	switch kind {
	case "box":
		out["kind"] = "box"
	case "door":
		out["kind"] = "other"
	default:
		out["kind"] = "window"
	}
	if kind == "arched window" {
		out["rise"] = d.length(d.number(d.inches(1)/2, width/2, "rise"))
	}
	if kind != "horned window" {
		out["width"], out["height"] = d.length(width), d.length(height)
		return out
	}
	// A sill that stands out to both sides below the window itself.
	horn, sill := width/6, height/4
	var outline [][2]string
	for _, p := range [][2]int{
		{0, 0}, {width, 0}, {width, sill}, {width - horn, sill}, {width - horn, height}, {horn, height}, {horn, sill}, {0, sill},
	} {
		outline = append(outline, [2]string{d.length(p[0]), d.length(p[1])})
	}
	out["outline"] = outline
	return out
}

// zones draws focal zones and a break.
func (d *draft) zones(r *stretch) {
	var focal []object
	at := 0
	for range d.number(0, 2, "focal zones") {
		from := at + d.number(0, r.width/3, "to the zone")
		to := from + d.number(d.inches(4), d.inches(40), "zone width")
		if to > r.width {
			break
		}
		prominence := []float64{0.5, 2, 3, 0.25}[d.number(0, 3, "zone's prominence")]
		focal = append(focal, object{"from": d.length(from), "to": d.length(to), "prominence": prominence})
		at = to + 1
	}
	if len(focal) > 0 {
		r.file["focal"] = focal
	}
	if d.small || !d.chance(15, "break") || r.width < d.inches(30) {
		return
	}
	place := d.number(d.inches(12), r.width-d.inches(12), "break at")
	atDoor := len(r.doors) > 0 && d.chance(20, "break at a door")
	if atDoor {
		place = r.doors[0][d.number(0, 1, "side of the door")]
	}
	for _, taken := range r.taken {
		if !atDoor && taken[0]-d.inches(4) < place && place < taken[1]+d.inches(4) {
			return
		}
	}
	prominence := []float64{0.25, 1, 2}[d.number(0, 2, "break's prominence")]
	r.file["breaks"] = []object{{"at": d.length(place), "prominence": prominence}}
}
