package main

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/groovewright/wall/plan"
)

// post sends a body to the handler.
func post(body string) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	serve(w, httptest.NewRequest(http.MethodPost, "/plan", strings.NewReader(body)))
	return w
}

func TestServeAnswersWithAPlan(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "kitchen.json"))
	if err != nil {
		t.Fatal(err)
	}
	w := post(string(data))
	var p plan.Plan
	if err := json.Unmarshal(w.Body.Bytes(), &p); w.Code != http.StatusOK || err != nil || len(p.Pieces) == 0 {
		t.Errorf("status %d, %v, %d pieces", w.Code, err, len(p.Pieces))
	}
}

func TestServeNamesWhatIsWrong(t *testing.T) {
	if w := post(`{"runs": [{"width": 5}]}`); w.Code != http.StatusBadRequest || !strings.Contains(w.Body.String(), "runs[0].width (line 1, column 21): ") {
		t.Errorf("status %d: %s", w.Code, w.Body)
	}
}
