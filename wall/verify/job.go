package verify

import (
	"encoding/json"
	"errors"
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
	Runs         []run
	Installed    []installed
	Priorities   map[string]rat `is:"weight"`

	tape    rat
	pattern *pattern // nil until a ready profile is known
	sweep   *sweep
}

type profile struct {
	Name              string
	Features          []feature
	Pitch, Thickness  rat
	Mirrored          bool
	WideFlats, Boards bool
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

type saw struct{ Kerf, SquareUp rat }

type gaps struct{ Top, Bottom, Side, Seam, Box, Window rat }

type run struct {
	Name        string
	Width       rat
	Left, Right end
	Heights     []station
	Openings    []opening
	Focal       []zone
	Breaks      []place
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

	taped loop // in run coordinates; nil if it cannot be known
}

// bearing gives a point by its distances from known ones.
type bearing struct {
	Bases     []point
	Distances []rat
	Side      string
}

type zone struct {
	From, To   rat
	Prominence *rat `is:"weight"`
}

type place struct {
	At         rat
	Prominence *rat `is:"weight"`
}

type installed struct {
	Run                    string
	Left, Right, LeftPhase rat
}

const (
	exposed       = "exposed"
	insideCorner  = "inside corner"
	outsideCorner = "outside corner"
	covered       = "covered"
)

// or returns a number that may be absent, or else another.
func or(n *rat, other rat) rat {
	if n == nil {
		return other
	}
	return *n
}

// corner returns the run that shares a corner with the right end of run i, and whether there is one.
func (j *room) corner(i int) (next int, ok bool) {
	kind := j.Runs[i].Right.Kind
	if kind != insideCorner && kind != outsideCorner {
		return 0, false
	}
	next = i + 1
	if next == len(j.Runs) {
		if !j.Closed {
			return 0, false
		}
		next = 0
	}
	return next, j.Runs[next].Left.Kind == kind
}

// readJob reads a job that is taken to be valid: it refuses only what cannot be judged.
func readJob(data []byte) (*room, error) {
	j := &room{sweep: &sweep{left: mostSteps}}
	var units struct{ Units string }
	_ = json.Unmarshal(data, &units) // what is wrong comes to light below
	var faults []error
	refuse := func(path, got, want string) { faults = append(faults, fmt.Errorf("%s: %s, %s", path, got, want)) }
	decoder{fault: refuse, number: func(is, path string, written any) (rat, error) {
		switch s := written.(type) {
		case json.Number:
			if is == "weight" {
				return readDecimal(string(s))
			}
		case string:
			if is == "money" {
				return readDecimal(s)
			}
			return readLength(s, units.Units)
		}
		return zero(), errors.New("want a number in quotes")
	}}.decode(data, j)
	if len(faults) == 0 {
		j.complete(refuse)
	}
	return j, errors.Join(faults...)
}

// complete derives what the file leaves to its defaults, and refuses what no region can be built of.
func (j *room) complete(refuse func(path, got, want string)) {
	j.tape = ratio(1, 16)
	if j.Units == "mm" || j.Units == "cm" {
		j.tape = perUnit["mm"]
	}
	if j.tape = or(j.Tape, j.tape); j.tape.Sign() <= 0 {
		refuse("tape", text(j.tape), "want more than 0")
	}
	for i := range j.Stock {
		if !j.Stock[i].Squared {
			j.Stock[i].trim = j.Saw.SquareUp
		} else {
			j.Stock[i].trim = zero()
		}
	}
	if len(j.Profile.Features) > 0 {
		var err error
		if j.pattern, err = newPattern(j.Profile); err != nil {
			refuse("profile.features", err.Error(), "want a repeat")
		}
	}
	for i := range j.Runs {
		r := &j.Runs[i]
		if len(r.Heights) < 2 {
			refuse(item("runs", i)+".heights", fmt.Sprint(len(r.Heights)), "want two or more")
		}
		for k := range r.Openings {
			r.Openings[k].place()
		}
	}
}

// place finds the outline of an opening as taped, but for its arched head and corners that are taped
// from known points.
func (o *opening) place() {
	switch {
	case o.Points != nil:
	case len(o.Outline) > 0:
		o.taped = o.Outline.moved(o.Left, o.Bottom)
	case o.Width.Sign() > 0:
		o.taped = rectangle(o.Left, o.Bottom, o.Width, o.Height)
	}
}
