package verify

// planFile is a plan as JSON holds it, as far as it is judged. A pointer is to what the contract
// leaves to the planner: it is judged where it is there.
type planFile struct {
	Format       int
	Title, Units string
	Tape         *rat
	Profile      profile
	Saw          *saw
	Gaps         *gaps
	Stock        []stock
	Runs         []planRun
	Pieces       []planPiece
	Sheets       []planSheet
	Bound        struct {
		SheetsAtLeast int
		Proved        bool
	}
	Blemishes    []planBlemish
	BlemishTotal rat
	Choices      []planChoice
	Priorities   []struct {
		Name           string
		Value, Default rat
	}
	Takeoff []struct {
		Buy         int
		Price, Cost *rat `is:"money"`
	}
	Subtotal, Tax, Total *rat `is:"money"`
	Unpriced             *int
	Taped                []taped
	Warnings             []planWarning
	Order                []string
	Fixing               struct{ Supports rat }
}

type planWarning struct {
	Path, Kind string
	Names      []string
	Lengths    []rat
	Counts     []int
}

type taped struct {
	Path            string
	Run, Opening    string
	Number          int
	At              point
	Closing, Within rat
}

type planRun struct {
	Name        string
	Width       *rat
	Left, Right *planEnd
	Limits      struct{ Left, Right rat }
	SetOut      struct {
		From      rat
		Direction string
		Origin    rat
		Why       *string
	}
	Restarts    []restart
	CornerRight *struct {
		Kind, Next, Passes, Butts string
		Mismatch                  rat
	}
	Outline   loop
	Openings  []opening
	Panels    []planPanel
	Installed []installed
	StoryPole []place
	Supports  []rat // behind boards
}

type planEnd struct {
	Kind string
	Lean rat
	Bare bool
	Cut  *struct {
		Feature   string
		Width, Of rat
	}
}

type restart struct{ At, Origin, Mismatch rat }

type planPanel struct {
	Number                             int
	Left, Right, LeftPhase, RightPhase rat
	Pieces                             []int
}

type planPiece struct {
	Number                   int
	Label                    *string
	Run                      string
	Panel                    int
	At                       point
	Width, Height, LeftPhase rat
	Outline                  loop
	Holes                    []planHole
	Closing                  bool
	Scribe                   *struct {
		Edge  string
		Width rat
	}
	Weak  []struct{ Width rat }
	Marks struct {
		Face, Back loop
		Holes      []struct{ Face, Back loop }
		Arcs       []struct {
			Opening         string
			Centre, Back    point
			Radius, Springs rat
		}
		Drill []struct {
			At, Back point
			Diameter rat
		}
		Order []struct{ Drill []int }
	}
}

type planHole struct {
	Opening string
	Outline loop
}

// shape returns the outline and holes of a piece, in piece coordinates.
func (p planPiece) shape() shape {
	out := shape{p.Outline}
	for _, hole := range p.Holes {
		out = append(out, hole.Outline)
	}
	return out
}

type planSheet struct {
	Number     int
	Stock      string
	Placements []struct {
		Piece  int
		X, Y   rat
		Turned bool
	}
	Cuts []struct {
		Step int
		Rect rect
		Kind string
		At   rat
		From struct {
			Step   int
			Beyond bool
		}
		Alike bool
		Trim  string
		Off   rat
		Frees struct{ Near, Beyond int }
		Waits struct{ Piece, Step int }
	}
	Offcuts []struct{ X, Y, Width, Length, LeftPhase rat }
}

type planBlemish struct {
	Run          string
	At           rat
	Kind         string
	Amount       rat
	Height       *rat
	Weight, Cost rat

	path string
}

type planChoice struct {
	Sheets       int
	Bought       *int
	Cost         rat `is:"money"`
	BlemishTotal rat
	Chosen       bool
}
