package verify

import "encoding/json"

// room is a job as this package understands it; every length in inches.
type room struct {
	title      string
	tape       rat
	closed     bool
	profile    string   // its name
	pattern    *pattern // nil until a ready profile is known
	stock      []stock
	kerf       rat
	squareUp   rat
	gaps       gaps
	runs       []run
	installed  []installed
	priorities map[string]rat // numbers of the job's priorities, by name
}

type stock struct {
	name          string
	width, length rat
	leftPhase     rat
	squareUp      rat // off each end: the saw's, or 0 for stock that is square already
	count         *int
	price         rat // nil: none
}

type gaps struct{ top, bottom, side, seam, box, window rat }

type run struct {
	name        string
	width       rat
	left, right end
	heights     []station
	openings    []opening
	focal       []zone
	breaks      []place
}

type end struct {
	kind       string
	lean       rat
	prominence rat // nil: that of its kind
}

type station struct{ at, bottom, top rat }

type opening struct {
	name, kind string
	outline    []point // as taped, in run coordinates; nil if this package cannot tell
}

type zone struct{ from, to, prominence rat }
type place struct{ at, prominence rat }

type installed struct {
	run                    string
	left, right, leftPhase rat
}

const (
	exposed       = "exposed"
	insideCorner  = "inside corner"
	outsideCorner = "outside corner"
	covered       = "covered"
)

type fileEnd struct {
	Kind       string      `json:"kind"`
	Lean       string      `json:"lean"`
	Prominence json.Number `json:"prominence"`
}

type fileOpening struct {
	Name    string      `json:"name"`
	Kind    string      `json:"kind"`
	Left    string      `json:"left"`
	Bottom  string      `json:"bottom"`
	Width   string      `json:"width"`
	Height  string      `json:"height"`
	Outline [][2]string `json:"outline"`
}

type fileRun struct {
	Name    string  `json:"name"`
	Width   string  `json:"width"`
	L       fileEnd `json:"left"`
	R       fileEnd `json:"right"`
	Heights []struct {
		At     string `json:"at"`
		Bottom string `json:"bottom"`
		Top    string `json:"top"`
	} `json:"heights"`
	Openings []fileOpening `json:"openings"`
	Focal    []struct {
		From       string      `json:"from"`
		To         string      `json:"to"`
		Prominence json.Number `json:"prominence"`
	} `json:"focal"`
	Breaks []struct {
		At         string      `json:"at"`
		Prominence json.Number `json:"prominence"`
	} `json:"breaks"`
}

type fileProfile struct {
	Name     string `json:"name"`
	Features []struct {
		Kind  string `json:"kind"`
		Width string `json:"width"`
		Depth string `json:"depth"`
	} `json:"features"`
	Thickness string `json:"thickness"`
	WideFlats bool   `json:"wide_flats"`
	Boards    bool   `json:"boards"`
}

type fileJob struct {
	Title   string          `json:"title"`
	Units   string          `json:"units"`
	Tape    string          `json:"tape"`
	Closed  bool            `json:"closed"`
	Profile json.RawMessage `json:"profile"`
	Stock   []struct {
		Name      string `json:"name"`
		Width     string `json:"width"`
		Length    string `json:"length"`
		LeftPhase string `json:"left_phase"`
		Count     *int   `json:"count"`
		Price     string `json:"price"`
		Squared   bool   `json:"squared"`
	} `json:"stock"`
	Saw struct {
		Kerf     string `json:"kerf"`
		SquareUp string `json:"square_up"`
	} `json:"saw"`
	Gaps struct {
		Top    string `json:"top"`
		Bottom string `json:"bottom"`
		Side   string `json:"side"`
		Seam   string `json:"seam"`
		Box    string `json:"box"`
		Window string `json:"window"`
	} `json:"gaps"`
	Runs      []fileRun `json:"runs"`
	Installed []struct {
		Run       string `json:"run"`
		Left      string `json:"left"`
		Right     string `json:"right"`
		LeftPhase string `json:"left_phase"`
	} `json:"installed"`
	Priorities map[string]json.RawMessage `json:"priorities"`
}

// corner returns the run that shares a corner with the right end of run i, and
// whether there is one.
func (j *room) corner(i int) (next int, ok bool) {
	kind := j.runs[i].right.kind
	if kind != insideCorner && kind != outsideCorner {
		return 0, false
	}
	next = i + 1
	if next == len(j.runs) {
		if !j.closed {
			return 0, false
		}
		next = 0
	}
	return next, j.runs[next].left.kind == kind
}
