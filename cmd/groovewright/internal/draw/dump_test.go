package draw

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"example.com/groovewright/cmd/groovewright/internal/job"
	"example.com/groovewright/cmd/groovewright/internal/plan"
)

func TestDump(t *testing.T) {
	dir := os.Getenv("DUMP")
	if dir == "" {
		t.Skip()
	}
	dump := func(sub string, p plan.Plan) {
		files, err := Book(p)
		if err != nil {
			t.Fatal(err)
		}
		os.MkdirAll(filepath.Join(dir, sub), 0o755)
		for _, f := range files {
			os.WriteFile(filepath.Join(dir, sub, f.Name), f.Body, 0o644)
		}
	}
	dump("fixture", kitchen())
	dump("hostile", hostile())
	b, err := Survey(2)
	if err != nil {
		t.Fatal(err)
	}
	os.WriteFile(dir+"/survey.html", b, 0o644)
	names, _ := filepath.Glob("../../../../examples/*.json")
	for _, name := range names {
		data, _ := os.ReadFile(name)
		j, err := job.Read(data)
		if err != nil {
			t.Error(err)
			continue
		}
		p, err := plan.Make(context.Background(), j, plan.Options{})
		if err != nil {
			t.Error(err)
			continue
		}
		dump(filepath.Base(name[:len(name)-5]), p)
	}
}
