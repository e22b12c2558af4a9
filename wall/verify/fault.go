package verify

import (
	"fmt"
	"reflect"
	"strings"
)

// Kind says what a fault concerns.
type Kind uint8

// The kinds of faults.
const (
	NotJudged  Kind = iota // the checker could not go on
	Form                   // how the file and its numbers are written
	Job                    // the plan is not about this job
	Profile                // nor about its pattern
	Taped                  // points by distances from known ones, and arched heads
	Corner                 // who passes at a corner
	Limits                 // where panels may reach
	Phase                  // the pattern on the wall
	Restart                // where the pattern starts afresh
	Keep                   // what the job insists on
	Exposed                // a run's only exposed end that is seen shows no whole feature
	Panels                 // panels in order, within limits and sheets
	SeamGap                // what lies between them
	Narrow                 // a hard rule that may give way, with a warning
	Box                    // a seam too near to a box
	Outline                // a piece by itself
	Hole                   // an opening in a piece
	Marks                  // what is drawn on a piece or a story pole
	Cover                  // the pieces of a run cover its region exactly once
	Order                  // numbers
	Closing                // the pieces fitted last and at doors
	Stock                  // sheets
	Placement              // pieces on them
	Cuts                   // the sawing, replayed
	Offcut                 // what is left over
	Bound                  // what is proved about the number of sheets
	Choices                // the trade-off
	Takeoff                // money
	Priorities             // the weights of what is best
	Blemish                // its terms
	Mark                   // corners that no tape shows or no saw makes
	Warning                // what must be warned of
)

var kinds = [...]string{
	"not judged", "form", "job", "profile", "taped", "corner", "limits", "phase", "restart", "keep", "exposed",
	"panels", "seam gap", "narrow", "box", "outline", "hole", "marks", "cover", "order", "closing", "stock", "placement",
	"cuts", "offcut", "bound", "choices", "takeoff", "priorities", "blemish", "mark", "warning",
}

// String returns the word of a kind, or its number in brackets where it has none.
func (k Kind) String() string {
	if int(k) < len(kinds) {
		return kinds[k]
	}
	return fmt.Sprintf("(%d)", uint8(k))
}

// MarshalText writes the word of a kind.
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// Fault is one place where a plan breaks the contract. Kind groups faults that belong together,
// Path names the place in the plan's JSON, Got and Want are the two figures that disagree, and Text
// says in words what they are.
type Fault struct {
	Kind Kind   `json:"kind"`
	Path string `json:"path"`
	Got  string `json:"got"`
	Want string `json:"want"`
	Text string `json:"text"`
}

// String writes the fault on one line.
func (f Fault) String() string {
	line := fmt.Sprintf("%s: %s: %s (got %s, want %s)", f.Kind, f.Path, f.Text, f.Got, f.Want)
	return strings.Join(strings.Fields(line), " ")
}

// fault reports a disagreement.
func (c *checker) fault(kind Kind, path string, got, want any, note string, args ...any) {
	c.faults = append(c.faults, Fault{kind, path, show(got), show(want), fmt.Sprintf(note, args...)})
}

// require reports a disagreement unless ok.
func (c *checker) require(ok bool, kind Kind, path string, got, want any, note string, args ...any) {
	if !ok {
		c.fault(kind, path, got, want, note, args...)
	}
}

// equal reports two things that should be the same: of one length there is but one text.
func (c *checker) equal(kind Kind, path string, got, want any, note string, args ...any) {
	if show(got) != show(want) {
		c.fault(kind, path, got, want, note, args...)
	}
}

// between reports a length outside of two others; a limit that is nil is none.
func (c *checker) between(kind Kind, path string, got, low, high rat, note string, args ...any) {
	switch {
	case low != nil && less(got, low):
		c.fault(kind, path, got, "at least "+text(low), note, args...)
	case high != nil && less(high, got):
		c.fault(kind, path, got, "at most "+text(high), note, args...)
	}
}

// given reports a number that should be the same as another, if the plan states it.
func (c *checker) given(kind Kind, path string, got *rat, want rat, note string) {
	if got != nil {
		c.equal(kind, path, *got, want, "%s", note)
	}
}

// show writes one side of a disagreement.
func show(v any) string {
	switch v := v.(type) {
	case rat:
		return text(v)
	case *rat, *int:
		if p := reflect.ValueOf(v); !p.IsNil() {
			return show(p.Elem().Interface())
		}
		return "none"
	case point:
		return show([]any{v.X, v.Y})
	case []any:
		var all []string
		for _, item := range v {
			all = append(all, show(item))
		}
		return "[" + strings.Join(all, ", ") + "]"
	}
	return fmt.Sprint(v)
}

// item returns the path of an item of a list.
func item(list string, i int) string { return fmt.Sprintf("%s[%d]", list, i) }
