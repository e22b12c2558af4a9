package plan

import (
	"bytes"
	"context"
	"encoding/json"
	"testing"

	"example.com/groovewright/cmd/groovewright/internal/job"
)

// A wall whose only panel is up leaves nothing to cut: every list of the plan is
// still a list. Its left end leans outward, so the panel reaches past the foot.
func TestNothingLeftToPanel(t *testing.T) {
	j, err := job.Read([]byte(`{"profile": "beadboard 1-1/2", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
		"runs": [{"name": "wall", "width": "36", "left": {"kind": "exposed", "lean": "-1/2"}, "right": {"kind": "exposed"},
			"heights": [{"at": "0", "top": "18"}, {"at": "36", "top": "18"}]}],
		"installed": [{"run": "wall", "left": "-1/2", "right": "36", "left_phase": "3/4"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	p, err := Make(context.Background(), j, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Pieces) != 0 {
		t.Errorf("%d pieces, want none", len(p.Pieces))
	}
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	if at := bytes.Index(text, []byte("null")); at >= 0 {
		t.Errorf("a list is null: …%s", text[max(0, at-20):at+4])
	}
}
