package verify

import (
	"encoding/json"
	"fmt"
)

// room is a job as this package understands it; every length in inches.
type room struct {
	Title, Units string
	Tape         *rat
	Closed       bool
	Profile      profile
	Stock        []stock
	Saw          saw
	Gaps         gaps
	Trim         trims
	Snap, Scribe *rat
	Runs         []run
	Installed    []installed
	Priorities   map[string]rat `is:"weight"`

	tape, snap, kerf, scribe rat
	margin                   rat       // of what trim hides
	pattern                  *pattern  // nil until a builtin profile is known
	bare                     []bool    // runs of which gaps and openings leave nothing; nil until that is known
	takenEnds                [][2]bool // their left and right ends that no panel reaches, however they are fitted
	sweep                    *sweep
}

type profile struct {
	Name              string
	Features          []feature
	Pitch, Thickness  rat
	Mirrored          bool
	WideFlats, Boards bool
	Cover, Width, Lap rat
	Edges, Tongue     string
}

type stock struct {
	Name                     string
	Width, Length, LeftPhase rat
	Count                    *int
	Price                    *rat `is:"money"`
	Squared                  bool
	Used                     int // of a plan

	trim rat // off each end
}

// usable is what is left of the length when both ends are squared.
func (s stock) usable() rat { return diff(s.Length, times(whole(2), s.trim)) }

type saw struct {
	Kerf, LeastRip *rat
	SquareUp       rat
	Kind, Face     string
}

// trim hides an edge of the panels.
type trim struct {
	Name   string
	Covers rat
}

type trims struct{ Bottom, Top, Casing *trim }

// keep is what a run must keep to.
type keep struct {
	Origin    *rat
	Direction string
	Seams     []rat
	Clear     []zone
}

type gaps struct{ Top, Bottom, Side, Seam, Box, Window rat }

type run struct {
	Name        string
	Width       rat
	Left, Right end
	Heights     []station
	Openings    []opening
	Focal       []zone
	Breaks      []place
	Trim        trims
	Keep        keep
}

type end struct {
	Kind       string
	Lean       rat
	Prominence *rat `is:"weight"` // nil: that of its kind
}

type station struct {
	At, Bottom, Top rat
	Taped           *bearing // in place of At and Top
}

type opening struct {
	Name, Kind                        string
	Left, Bottom, Width, Height, Rise rat
	Outline                           loop // as the job has it, from left and bottom
	Points                            *struct {
		Bases   []point
		Side    string
		Corners []bearing
	}

	taped  loop  // in run coordinates; nil if it cannot be known
	centre point // of the arc of an arched head
	radius rat
}

// bearing gives a point by its distances from known ones.
type bearing struct {
	Bases     []point
	Distances []rat
	Side      string
}

type (
	zone struct {
		From, To   rat
		Prominence *rat `is:"weight"`
	}
	place struct {
		At         rat
		Prominence *rat `is:"weight"`
	}
	installed struct {
		Run                    string
		Left, Right, LeftPhase rat
	}
)

const (
	exposed       = "exposed"
	insideCorner  = "inside corner"
	outsideCorner = "outside corner"
	covered       = "covered"
)

// leastRip is the least that a saw takes off: the job's, 1/8 in or 3 mm.
func (j *room) leastRip() rat {
	if j.Units != "" && j.Units != "in" {
		return or(j.Saw.LeastRip, times(whole(3), perUnit["mm"]))
	}
	return or(j.Saw.LeastRip, ratio(1, 8))
}

// binds says whether origins cannot be chosen freely.
func (k keep) binds() bool { return k.Origin != nil || len(k.Seams)+len(k.Clear) > 0 }

// or returns what may be absent, or else another.
func or[T any](n *T, other T) T {
	if n == nil {
		return other
	}
	return *n
}

// meet returns the run whose wall shares a corner with the right end of run i, if there is one.
func (j *room) meet(i int) (next int, ok bool) {
	kind := j.Runs[i].Right.Kind
	next = (i + 1) % len(j.Runs)
	shared := (kind == insideCorner || kind == outsideCorner) && kind == j.Runs[next].Left.Kind
	return next, shared && (next > 0 || j.Closed)
}

// corner returns the run that shares a corner with the right end of run i, if there is one: both are
// panelled there.
func (j *room) corner(i int) (next int, ok bool) {
	next, ok = j.meet(i)
	return next, ok && (j.bare == nil || !j.bare[i] && !j.bare[next] && !j.takenEnds[i][1] && !j.takenEnds[next][0])
}

// readJob reads a job that is taken to be valid: it refuses only what cannot be judged.
func readJob(data []byte) (*room, []Fault) {
	j := &room{sweep: &sweep{left: mostSteps}}
	var units struct{ Units string }
	_ = json.Unmarshal(data, &units) // what is wrong comes to light below
	var faults []Fault
	refuse := func(path, got, want string) { faults = append(faults, Fault{Job, path, got, want, "cannot be judged"}) }
	read := func(written string) (rat, error) { return readLength(written, units.Units) }
	if (decoder{read, refuse}).decode(data, j) {
		j.complete(refuse)
	}
	return j, faults
}

// complete fills in the defaults and refuses what no region can be built of.
func (j *room) complete(refuse func(path, got, want string)) {
	scribe := ratio(1, 4)
	j.tape = ratio(1, 16)
	if j.Units == "mm" || j.Units == "cm" {
		j.tape, scribe = perUnit["mm"], times(whole(6), perUnit["mm"])
	}
	if j.tape = or(j.Tape, j.tape); j.tape.Sign() <= 0 {
		refuse("tape", text(j.tape), "more than 0")
	}
	j.snap, j.scribe, j.kerf = or(j.Snap, over(j.tape, whole(4))), or(j.Scribe, scribe), or(j.Saw.Kerf, ratio(1, 8))
	j.margin = j.weights()["trim_margin"]
	for i := range j.Stock {
		if j.Stock[i].trim = j.Saw.SquareUp; j.Stock[i].Squared {
			j.Stock[i].trim = zero()
		}
	}
	if j.Profile.Features != nil {
		var err error
		if j.pattern, err = newPattern(j.Profile); err != nil {
			refuse("profile.features", err.Error(), "a repeat")
		}
	}
	for i := range j.Runs {
		r := &j.Runs[i]
		if len(r.Heights) < 2 {
			refuse(item("runs", i)+".heights", fmt.Sprint(len(r.Heights)), "two or more")
		}
		for k := range r.Openings {
			switch o := &r.Openings[k]; {
			case o.Points != nil: // not known yet
			case len(o.Outline) > 0:
				o.taped = o.Outline.moved(o.Left, o.Bottom)
			case o.Width.Sign() > 0:
				o.taped = rectangle(point{o.Left, o.Bottom}, point{sum(o.Left, o.Width), sum(o.Bottom, o.Height)})
			}
		}
	}
}
