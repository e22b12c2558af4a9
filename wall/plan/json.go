package plan

import (
	"bytes"
	"encoding/json"
)

// JSON returns the plan as JSON with one field a line, as the command prints it. It reads back with
// encoding/json to an equal plan.
func (p Plan) JSON() ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(p); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
