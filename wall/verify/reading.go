package verify

import (
	"encoding/json"
	"fmt"
	"math/big"
	"strings"
)

// reading turns the strings of a job into numbers and keeps the first fault.
type reading struct {
	unit string
	err  error
}

func (r *reading) fail(path string, err error) {
	if r.err == nil {
		r.err = fmt.Errorf("%s: %w", path, err)
	}
}

// length reads an optional length; absent is 0.
func (r *reading) length(path, written string) rat {
	if written == "" {
		return zero()
	}
	n, err := readLength(written, r.unit)
	if err != nil {
		r.fail(path, err)
		return zero()
	}
	return n
}

// number reads a plain JSON number, exactly; nil where it is absent.
func (r *reading) number(path string, written json.Number) rat {
	if written == "" {
		return nil
	}
	n, ok := new(big.Rat).SetString(string(written))
	if !ok {
		r.fail(path, fmt.Errorf("%q is not a number", written))
		return zero()
	}
	return n
}

func (r *reading) prominence(path string, written json.Number) rat {
	if n := r.number(path, written); n != nil {
		return n
	}
	return whole(1)
}

// readJob reads a job that is taken to be valid: it refuses only what it cannot
// understand.
func readJob(data []byte) (*room, error) {
	var file fileJob
	if err := json.Unmarshal(data, &file); err != nil {
		return nil, err
	}
	r := &reading{unit: file.Units}
	j := &room{title: file.Title, closed: file.Closed, tape: ratio(1, 16)}
	switch {
	case file.Tape != "":
		j.tape = r.length("tape", file.Tape)
	case file.Units == "mm" || file.Units == "cm":
		j.tape = perUnit["mm"]
	}
	j.kerf, j.squareUp = r.length("saw.kerf", file.Saw.Kerf), r.length("saw.square_up", file.Saw.SquareUp)
	for i, s := range file.Stock {
		path := fmt.Sprintf("stock[%d]", i)
		next := stock{name: s.Name, count: s.Count, squareUp: j.squareUp}
		if s.Squared {
			next.squareUp = zero()
		}
		next.width, next.length = r.length(path+".width", s.Width), r.length(path+".length", s.Length)
		next.leftPhase = r.length(path+".left_phase", s.LeftPhase)
		next.price = r.number(path+".price", json.Number(s.Price))
		j.stock = append(j.stock, next)
	}
	g := file.Gaps
	j.gaps = gaps{
		top: r.length("gaps.top", g.Top), bottom: r.length("gaps.bottom", g.Bottom),
		side: r.length("gaps.side", g.Side), seam: r.length("gaps.seam", g.Seam),
		box: r.length("gaps.box", g.Box), window: r.length("gaps.window", g.Window),
	}
	for i, written := range file.Runs {
		j.runs = append(j.runs, r.run(fmt.Sprintf("runs[%d]", i), written))
	}
	for i, panel := range file.Installed {
		path := fmt.Sprintf("installed[%d]", i)
		j.installed = append(j.installed, installed{
			run: panel.Run, left: r.length(path+".left", panel.Left), right: r.length(path+".right", panel.Right),
			leftPhase: r.length(path+".left_phase", panel.LeftPhase),
		})
	}
	j.priorities = map[string]rat{}
	for name, value := range file.Priorities {
		j.priorities[name] = r.priority("priorities."+name, value)
	}
	r.profile(j, file.Profile)
	return j, r.err
}

// priority reads a weight (a number) or a least size (a length).
func (r *reading) priority(path string, value json.RawMessage) rat {
	var written string
	if json.Unmarshal(value, &written) == nil {
		return r.length(path, written)
	}
	return r.number(path, json.Number(strings.TrimSpace(string(value))))
}

func (r *reading) profile(j *room, raw json.RawMessage) {
	if json.Unmarshal(raw, &j.profile) == nil {
		return
	}
	var file fileProfile
	if err := json.Unmarshal(raw, &file); err != nil {
		r.fail("profile", err)
		return
	}
	j.profile = file.Name
	var features []feature
	for i, f := range file.Features {
		path := fmt.Sprintf("profile.features[%d]", i)
		features = append(features, feature{
			kind: f.Kind, width: r.length(path+".width", f.Width), depth: r.length(path+".depth", f.Depth),
		})
	}
	p, err := newPattern(features, r.length("profile.thickness", file.Thickness), file.WideFlats, file.Boards)
	if err != nil {
		r.fail("profile.features", err)
	}
	j.pattern = p
}

func (r *reading) run(path string, file fileRun) run {
	out := run{
		name: file.Name, width: r.length(path+".width", file.Width),
		left: r.end(path+".left", file.L), right: r.end(path+".right", file.R),
	}
	for i, h := range file.Heights {
		at := fmt.Sprintf("%s.heights[%d]", path, i)
		out.heights = append(out.heights, station{
			at: r.length(at+".at", h.At), bottom: r.length(at+".bottom", h.Bottom), top: r.length(at+".top", h.Top),
		})
	}
	for i, o := range file.Openings {
		out.openings = append(out.openings, r.opening(fmt.Sprintf("%s.openings[%d]", path, i), o))
	}
	for i, z := range file.Focal {
		at := fmt.Sprintf("%s.focal[%d]", path, i)
		out.focal = append(out.focal, zone{
			from: r.length(at+".from", z.From), to: r.length(at+".to", z.To),
			prominence: r.prominence(at+".prominence", z.Prominence),
		})
	}
	for i, b := range file.Breaks {
		at := fmt.Sprintf("%s.breaks[%d]", path, i)
		out.breaks = append(out.breaks, place{
			at: r.length(at+".at", b.At), prominence: r.prominence(at+".prominence", b.Prominence),
		})
	}
	if len(out.heights) < 2 {
		r.fail(path+".heights", fmt.Errorf("fewer than two"))
	}
	return out
}

func (r *reading) end(path string, file fileEnd) end {
	return end{
		kind: file.Kind, lean: r.length(path+".lean", file.Lean),
		prominence: r.number(path+".prominence", file.Prominence),
	}
}

func (r *reading) opening(path string, file fileOpening) opening {
	out := opening{name: file.Name, kind: file.Kind}
	left, bottom := r.length(path+".left", file.Left), r.length(path+".bottom", file.Bottom)
	switch {
	case len(file.Outline) > 0:
		for _, p := range file.Outline {
			out.outline = append(out.outline, point{
				sum(left, r.length(path+".outline", p[0])), sum(bottom, r.length(path+".outline", p[1])),
			})
		}
	case file.Width != "":
		out.outline = rectangle(left, bottom, r.length(path+".width", file.Width), r.length(path+".height", file.Height))
	}
	return out
}
