package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestJoinPrintsAndDraws(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "kitchen.json"))
	if err != nil {
		t.Fatal(err)
	}
	var text bytes.Buffer
	dir := t.TempDir()
	if err := join(bytes.NewReader(data), &text, dir); err != nil {
		t.Fatal(err)
	}
	svg, err := os.ReadFile(filepath.Join(dir, "run-1.svg"))
	if err != nil || !strings.Contains(text.String(), "sink wall") || !strings.Contains(string(svg), "</svg>") {
		t.Errorf("%v, text %.60q, drawing %.60q", err, text.String(), svg)
	}
}
