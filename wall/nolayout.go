package wall

import (
	"errors"
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/fraction/fault"
)

// NoLayoutError says why no layout covers a run.
type NoLayoutError struct {
	Run    string // its name
	Reason Reason
	Over   fraction.Length // of TooTall: by how much at least; 0 where that is not known
	Path   fault.Path      // of what cannot be kept, or the installed panel; nil for other reasons
}

// Error names the run, the reason, and the path as the job file spells it.
func (e *NoLayoutError) Error() string {
	text := fmt.Sprintf("run %q cannot be panelled: %s", e.Run, e.Reason)
	if path, err := e.Path.MarshalText(); err == nil && len(path) > 0 {
		text += ": " + string(path)
	}
	return text
}

// Reason is why a run cannot be panelled.
type Reason uint8

// The reasons.
const (
	NoCombination    Reason = iota // every run can be panelled by itself, and not the whole room
	NoHeight                       // gaps take all of its height somewhere
	NoWidth                        // gaps and thickness take all of its width
	NothingLeft                    // fitted like that, gaps and openings take all of it
	BreakOutside                   // a break lies beyond the panels
	InstalledOutside               // an installed panel reaches beyond the panels
	InstalledApart                 // installed panels with no break between show different patterns
	TooTall                        // a panel is taller than the stock
	TooNarrow                      // the stock is narrower than a panel at its phase
	KeepUnmet                      // no layout keeps all that Run.Keep asks for
)

var reasons = enum.Of[Reason]("no choice of origins, corners and seams covers the whole room", "top and bottom meet after gaps",
	"gaps and thickness leave no width", "gaps and openings leave nothing to cover", "a break lies beyond the place where panels stop",
	"an installed panel reaches past the place where panels stop, a gap off an end or an opening, in a corner off the face of the panels there",
	"its installed panels do not show one unbroken pattern; name a break between them",
	"some panel would be taller than every sheet of the stock, squared, or wider",
	"no sheet of the stock is wide enough at the phase that is needed", "no layout keeps all that is to be kept")

// String returns the words of the reason.
func (r Reason) String() string { return reasons.String(r) }

// MarshalText returns the words of the reason.
func (r Reason) MarshalText() ([]byte, error) { return reasons.Marshal(r) }

// UnmarshalText reads the words of a reason.
func (r *Reason) UnmarshalText(text []byte) error { return reasons.Unmarshal(text, r) }

// leavesNothing reports whether an error says that gaps and openings take all of a run.
func leavesNothing(err error) bool {
	none := new(NoLayoutError)
	return errors.As(err, &none) && none.Reason == NothingLeft
}

// tooTall finds a run of which something that every layout covers is taller than all the stock: so
// that no seam is tried for it.
func (m *Model) tooTall() error {
	for r := range m.room.Runs {
		g, err := m.region(r, fitting{m.sharesInside(m.before(r)), m.sharesInside(r)})
		if err != nil {
			continue
		}
		tallest := fraction.Length{}
		for _, s := range m.room.stripsOf(r, g) {
			tallest = fraction.Max(tallest, s.Tallest)
		}
		if over := m.over(tallest); over.Sign() > 0 {
			return &NoLayoutError{Run: m.room.Runs[r].Name, Reason: TooTall, Over: over}
		}
	}
	return nil
}

// over returns by how much a panel of this height is taller than all the stock, 0 for one that is not.
func (m *Model) over(height fraction.Length) fraction.Length {
	longest := fraction.Length{}
	for _, sheet := range m.sheets {
		longest = fraction.Max(longest, sheet.Length)
	}
	return fraction.Max(height.Sub(longest), fraction.Length{})
}

// whyNone says why no layout covers the room.
func (s *search) whyNone() error {
	if err := s.unkept(); err != nil {
		return err
	}
	m := s.m
	for r := range m.room.Runs {
		run := &m.room.Runs[r]
		st, err := m.stretch(r, -1, len(run.Breaks), fitting{})
		if err != nil {
			return err
		}
		p := s.program(st)
		possible, agrees := false, false
		for i, o := range m.origins[r] {
			agrees = agrees || p.agrees(o)
			possible = possible || p.best(i).feasible()
		}
		switch {
		case possible:
			continue
		case !agrees && len(run.Breaks) == 0:
			return &NoLayoutError{Run: run.Name, Reason: InstalledApart}
		case p.short:
			return &NoLayoutError{Run: run.Name, Reason: TooTall, Over: m.over(st.most)}
		default:
			return &NoLayoutError{Run: run.Name, Reason: TooNarrow}
		}
	}
	return &NoLayoutError{Run: m.room.Runs[0].Name, Reason: NoCombination}
}
