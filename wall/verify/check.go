package verify

import (
	"encoding/json"
	"fmt"
	"slices"
)

// Fault is one place where a plan breaks the contract. Kind groups faults that
// belong together, Path names the place in the plan's JSON, and Got and Want are
// the two figures that disagree.
type Fault struct {
	Kind, Path, Got, Want, Text string
}

// String writes the fault on one line.
func (f Fault) String() string {
	return fmt.Sprintf("%s: %s: %s (got %s, want %s)", f.Kind, f.Path, f.Text, f.Got, f.Want)
}

// checker holds a job, its plan and what has been found wrong so far.
type checker struct {
	job     *room
	plan    planFile
	regions []*region
	weights weights
	stock   map[string]int // index in job.stock, by name
	pieces  map[int]int    // index in plan.Pieces, by number
	faults  []Fault
}

func (c *checker) fault(kind, path, got, want, note string, args ...any) {
	c.faults = append(c.faults, Fault{kind, path, got, want, fmt.Sprintf(note, args...)})
}

// equal reports two lengths or ratios that should be the same.
func (c *checker) equal(kind, path string, got, want rat, note string, args ...any) {
	if !same(got, want) {
		c.fault(kind, path, text(got), text(want), note, args...)
	}
}

// MaxBytes is the longest job or plan that is judged.
const MaxBytes = 64 << 20

// Check reports every violation of the contract that it finds in a plan for a
// job, both as the JSON files hold them. The job is taken to be valid. No
// faults means that none was found. It never panics; its cost grows with the
// square of the number of edges in a run.
func Check(job, plan []byte) []Fault {
	c := &checker{}
	c.run(job, plan)
	return c.faults
}

// run reads both files and makes every check that can still be made.
func (c *checker) run(job, plan []byte) {
	defer func() {
		if r := recover(); r != nil {
			c.fault("checker", "", fmt.Sprint(r), "", "the checker could not go on")
		}
	}()
	var err error
	if c.job, err = readJob(job); err != nil {
		c.fault("job", "", err.Error(), "a valid job", "the job cannot be read")
		return
	}
	if err := json.Unmarshal(plan, &c.plan); err != nil {
		c.fault("form", "", err.Error(), "a plan", "the plan cannot be read")
		return
	}
	c.forms(plan)
	if c.plan.Format != 1 {
		c.fault("form", "format", fmt.Sprint(c.plan.Format), "1", "unknown format")
	}
	if c.plan.Title != c.job.title {
		c.fault("job", "title", c.plan.Title, c.job.title, "not the job's title")
	}
	if !c.profile() || !c.matching() {
		return
	}
	c.weigh()
	c.corners()
	c.setOut()
	c.panels()
	c.outlines()
	c.coverage()
	c.numbering()
	c.exposedEnds()
	c.sheets()
	c.boundAndChoices()
	c.blemishes()
}

// profile compares the profile with the job's, or takes a ready one from the
// plan, and says whether there is one to go on with.
func (c *checker) profile() bool {
	file := c.plan.Profile
	var features []feature
	for _, f := range file.Features {
		features = append(features, feature{f.Kind, f.Width.r(), f.Depth.r()})
	}
	told, err := newPattern(features, file.Thickness.r(), file.WideFlats, file.Boards)
	if err != nil {
		c.fault("profile", "profile.features", err.Error(), "at least one feature", "no profile")
		return c.job.pattern != nil
	}
	want := c.job.pattern
	if want == nil {
		want = told
		c.job.pattern = told
	}
	c.equal("profile", "profile.pitch", file.Pitch.r(), want.pitch, "pitch is not the sum of the features")
	c.equal("profile", "profile.thickness", told.thickness, want.thickness, "not the job's thickness")
	if mirrored := len(want.turns) > 0; file.Mirrored != mirrored {
		c.fault("profile", "profile.mirrored", fmt.Sprint(file.Mirrored), fmt.Sprint(mirrored), "mirror image judged wrongly")
	}
	if file.Name != c.job.profile {
		c.fault("profile", "profile.name", file.Name, c.job.profile, "not the job's profile")
	}
	alike := slices.EqualFunc(told.features, want.features, func(a, b feature) bool {
		return a.kind == b.kind && same(a.width, b.width) && same(a.depth, b.depth)
	})
	if !alike || told.wideFlats != want.wideFlats || told.boards != want.boards {
		c.fault("profile", "profile.features", fmt.Sprint(len(told.features)), fmt.Sprint(len(want.features)), "not the job's profile")
	}
	return true
}

// matching finds the runs, the stock and the pieces that belong together.
func (c *checker) matching() bool {
	if len(c.plan.Runs) != len(c.job.runs) {
		c.fault("job", "runs", fmt.Sprint(len(c.plan.Runs)), fmt.Sprint(len(c.job.runs)), "not as many runs as in the job")
		return false
	}
	for i, r := range c.plan.Runs {
		if r.Name != c.job.runs[i].name {
			c.fault("job", fmt.Sprintf("runs[%d].name", i), r.Name, c.job.runs[i].name, "not the job's run")
			return false
		}
	}
	if c.plan.Tape.value != nil {
		c.equal("job", "tape", c.plan.Tape.r(), c.job.tape, "not the job's tape")
	}
	c.given("saw", c.plan.Saw, map[string]rat{"kerf": c.job.kerf, "square_up": c.job.squareUp})
	g := c.job.gaps
	c.given("gaps", c.plan.Gaps, map[string]rat{
		"top": g.top, "bottom": g.bottom, "side": g.side, "seam": g.seam, "box": g.box, "window": g.window,
	})
	c.stock = map[string]int{}
	for i, s := range c.job.stock {
		c.stock[s.name] = i
	}
	c.pieces = map[int]int{}
	for i, p := range c.plan.Pieces {
		c.pieces[p.Number] = i
	}
	return true
}

// given compares a group of lengths that the plan repeats from the job.
func (c *checker) given(path string, raw json.RawMessage, want map[string]rat) {
	if raw == nil {
		return
	}
	var got map[string]number
	if json.Unmarshal(raw, &got) != nil {
		return
	}
	for _, name := range []string{"kerf", "square_up", "top", "bottom", "side", "seam", "box", "window"} {
		if wanted, ok := want[name]; ok {
			c.equal("job", path+"."+name, got[name].r(), wanted, "not the job's")
		}
	}
}

// corners checks which run passes and which butts, and builds the regions.
func (c *checker) corners() {
	n := len(c.job.runs)
	atLeft, atRight := make([]role, n), make([]role, n)
	for i := range c.job.runs {
		next, ok := c.job.corner(i)
		path := fmt.Sprintf("runs[%d].corner_right", i)
		told := c.plan.Runs[i].CornerRight
		if !ok {
			if told != nil && (told.Passes != "" || told.Butts != "") {
				c.fault("corner", path, told.Passes+"/"+told.Butts, "nothing", "no corner is shared here")
			}
			continue
		}
		if c.job.runs[i].right.kind == outsideCorner {
			if told != nil && (told.Passes != "" || told.Butts != "") {
				c.fault("corner", path, told.Passes+"/"+told.Butts, "nothing", "an outside corner is mitred")
			}
			continue
		}
		here, there := c.job.runs[i].name, c.job.runs[next].name
		switch {
		case told == nil:
			c.fault("corner", path, "nothing", here+" or "+there, "who passes is not told")
			atRight[i], atLeft[next] = passes, butts
		case told.Passes == here && told.Butts == there:
			atRight[i], atLeft[next] = passes, butts
		case told.Passes == there && told.Butts == here:
			atRight[i], atLeft[next] = butts, passes
		default:
			c.fault("corner", path, told.Passes+"/"+told.Butts, here+" and "+there, "not the two runs of the corner")
			atRight[i], atLeft[next] = passes, butts
		}
	}
	for i := range c.job.runs {
		c.regions = append(c.regions, c.job.region(i, atLeft[i], atRight[i]))
	}
}
