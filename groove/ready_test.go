package groove_test

import (
	"testing"

	"example.com/groovewright/groove"
)

func TestReadyProfilesAreValid(t *testing.T) {
	for _, p := range groove.Ready() {
		if err := p.Validate(); err != nil {
			t.Error(p.Name, err)
		}
		axis, ok := p.Mirror()
		t.Log(p.Name, p.Pitch(), axis, ok)
	}
}
