package verify

import (
	"encoding/json"
	"math/big"
)

// number is a length or ratio of a plan. Reading never fails: the form of every
// number is judged apart, by forms.
type number struct{ value rat }

func (n *number) UnmarshalJSON(data []byte) error {
	var written string
	if json.Unmarshal(data, &written) == nil {
		n.value, _ = readExact(written)
	}
	return nil
}

// r returns the number, 0 where the plan has none.
func (n number) r() rat {
	if n.value == nil {
		return zero()
	}
	return n.value
}

// money is a decimal string.
type money struct{ value rat }

func (m *money) UnmarshalJSON(data []byte) error {
	var written string
	if json.Unmarshal(data, &written) == nil {
		m.value, _ = new(big.Rat).SetString(written)
	}
	return nil
}

func (m money) r() rat {
	if m.value == nil {
		return zero()
	}
	return m.value
}

// spot is a point of a plan, x before y.
type spot [2]number

func (s spot) point() point { return point{s[0].r(), s[1].r()} }

func loopOf(spots []spot) loop {
	out := make(loop, len(spots))
	for i, s := range spots {
		out[i] = s.point()
	}
	return out
}

// planFile is a plan as JSON holds it, as far as it is judged.
type planFile struct {
	Format       int             `json:"format"`
	Title        string          `json:"title"`
	Tape         number          `json:"tape"`
	Profile      planProfile     `json:"profile"`
	Runs         []planRun       `json:"runs"`
	Pieces       []planPiece     `json:"pieces"`
	Sheets       []planSheet     `json:"sheets"`
	Stock        []planStock     `json:"stock"`
	Bound        planBound       `json:"bound"`
	Blemishes    []planBlemish   `json:"blemishes"`
	BlemishTotal number          `json:"blemish_total"`
	Choices      []planChoice    `json:"choices"`
	Priorities   []planPriority  `json:"priorities"`
	Warnings     []planWarning   `json:"warnings"`
	Saw          json.RawMessage `json:"saw"`
	Gaps         json.RawMessage `json:"gaps"`
}

type planProfile struct {
	Name     string `json:"name"`
	Pitch    number `json:"pitch"`
	Features []struct {
		Kind  string `json:"kind"`
		Width number `json:"width"`
		Depth number `json:"depth"`
	} `json:"features"`
	Thickness number `json:"thickness"`
	Mirrored  bool   `json:"mirrored"`
	WideFlats bool   `json:"wide_flats"`
	Boards    bool   `json:"boards"`
}

type planStock struct {
	Name string `json:"name"`
	Used int    `json:"used"`
}

type planRun struct {
	Name   string `json:"name"`
	Limits spot   `json:"limits"`
	SetOut struct {
		Direction string `json:"direction"`
		Origin    number `json:"origin"`
	} `json:"set_out"`
	Restarts []struct {
		At       number `json:"at"`
		Origin   number `json:"origin"`
		Mismatch number `json:"mismatch"`
	} `json:"restarts"`
	CornerRight *struct {
		Passes   string `json:"passes"`
		Butts    string `json:"butts"`
		Mismatch number `json:"mismatch"`
	} `json:"corner_right"`
	Panels    []planPanel `json:"panels"`
	StoryPole []struct {
		At number `json:"at"`
	} `json:"story_pole"`
}

type planPanel struct {
	Number     int    `json:"number"`
	Left       number `json:"left"`
	Right      number `json:"right"`
	LeftPhase  number `json:"left_phase"`
	RightPhase number `json:"right_phase"`
	Pieces     []int  `json:"pieces"`
}

type planPiece struct {
	Number    int        `json:"number"`
	Run       string     `json:"run"`
	Panel     int        `json:"panel"`
	At        spot       `json:"at"`
	Width     number     `json:"width"`
	Height    number     `json:"height"`
	LeftPhase number     `json:"left_phase"`
	Outline   []spot     `json:"outline"`
	Holes     []planHole `json:"holes"`
	Closing   bool       `json:"closing"`
}

type planHole struct {
	Opening string `json:"opening"`
	Outline []spot `json:"outline"`
}

// shape returns the outline and holes of a piece, in piece coordinates.
func (p planPiece) shape() shape {
	out := shape{loopOf(p.Outline)}
	for _, hole := range p.Holes {
		out = append(out, loopOf(hole.Outline))
	}
	return out
}

type planSheet struct {
	Number     int             `json:"number"`
	Stock      string          `json:"stock"`
	Placements []planPlacement `json:"placements"`
	Cuts       []planCut       `json:"cuts"`
	Offcuts    []planOffcut    `json:"offcuts"`
}

type planPlacement struct {
	Piece  int    `json:"piece"`
	X      number `json:"x"`
	Y      number `json:"y"`
	Turned bool   `json:"turned"`
}

type planCut struct {
	Step int       `json:"step"`
	Rect [4]number `json:"rect"`
	Kind string    `json:"kind"`
	At   number    `json:"at"`
}

type planOffcut struct {
	X         number `json:"x"`
	Y         number `json:"y"`
	Width     number `json:"width"`
	Length    number `json:"length"`
	LeftPhase number `json:"left_phase"`
}

type planBound struct {
	SheetsAtLeast int  `json:"sheets_at_least"`
	Proved        bool `json:"proved"`
}

type planBlemish struct {
	Run    string `json:"run"`
	At     number `json:"at"`
	Kind   string `json:"kind"`
	Amount number `json:"amount"`
	Weight number `json:"weight"`
	Cost   number `json:"cost"`
}

type planChoice struct {
	Sheets       int    `json:"sheets"`
	Bought       *int   `json:"bought"`
	Cost         money  `json:"cost"`
	BlemishTotal number `json:"blemish_total"`
	Chosen       bool   `json:"chosen"`
}

type planPriority struct {
	Name    string `json:"name"`
	Value   number `json:"value"`
	Default number `json:"default"`
}

type planWarning struct {
	Path string `json:"path"`
}
