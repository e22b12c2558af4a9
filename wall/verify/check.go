package verify

import (
	"cmp"
	"slices"
)

// checker holds a job, its plan and its faults so far. A list of lists has one for each run.
type checker struct {
	job     *room
	plan    planFile
	regions []*region
	boards  [][]board
	joints  [][]joint
	weights map[string]rat
	stock   map[string]int  // index in job.Stock, by name
	pieces  map[int]int     // index in plan.Pieces, by number
	owner   map[int]string  // path of the panel that lists a piece, by number
	due     map[notice]bool // true: the plan must have it; false: it may
	faults  []Fault
}

// Plan reports every violation of the contract that it finds in a plan for a job, both as the JSON
// files hold them. The job is taken to be valid. No faults means that none was found.
//
// Any bytes will do: what is no job and no plan has faults too. The time grows as the square of the
// corners of a run; a file of more than 16 MiB, a list of more than 4096 items, a number of more
// than 64 characters, and a plan that would take minutes are faults, [NotJudged] or [Form].
func Plan(job, plan []byte) []Fault {
	c := newChecker()
	c.judge(job, plan)
	return c.faults
}

func newChecker() *checker {
	return &checker{stock: map[string]int{}, pieces: map[int]int{}, owner: map[int]string{}, due: map[notice]bool{}}
}

// judge reads both files and makes every check that can still be made.
func (c *checker) judge(job, plan []byte) {
	defer func() {
		switch r := recover(); r {
		case nil:
		case tooMuch{}:
			c.fault(NotJudged, "", "more than can be looked at", "a wall", "too many edges")
		default:
			c.fault(NotJudged, "", r, "a valid job", "the checker could not go on")
		}
	}()
	c.job, c.faults = readJob(job)
	if len(c.faults) > 0 || !c.readPlan(plan) || !c.profile() || !c.matching() {
		return
	}
	c.weigh()
	c.taped()
	c.corners()
	c.repeats()
	for i := range c.job.Runs {
		c.boards = append(c.boards, c.boardsOf(i))
		c.joints = append(c.joints, c.jointsOf(i))
	}
	for i := range c.job.Runs {
		c.setOut(i)
		c.panels(i)
		c.coverage(i)
		c.numbering(i)
		c.closing(i)
		c.kept(i)
		c.seamsAtBoxes(i)
		c.laps(i)
		c.exposedEnd(i)
	}
	c.cornerHeights()
	c.warnings()
	c.outlines()
	c.workOrder()
	c.sheets()
	c.bound()
	c.choices()
	c.takeoff()
	c.blemishes()
}

// readPlan reads the plan and says whether there is one to go on with.
func (c *checker) readPlan(data []byte) bool {
	wrong := func(path, got, want string) { c.fault(Form, path, got, want, "written wrongly") }
	if !(decoder{readExact, wrong}).decode(data, &c.plan) {
		return false
	}
	c.equal(Form, "format", c.plan.Format, 1, "unknown format")
	return true
}

// profile compares the profile with the job's, or takes a builtin one; false where there is none.
func (c *checker) profile() bool {
	got := c.plan.Profile
	pattern, err := newPattern(got)
	if err != nil {
		c.fault(Profile, "profile.features", err, "a repeat", "no profile")
		return false
	}
	if c.job.pattern == nil {
		c.job.pattern = pattern
	}
	want := c.job.pattern
	c.equal(Profile, "profile.name", got.Name, cmp.Or(c.job.Profile.Name, got.Name), "not the job's profile")
	c.equal(Profile, "profile.pitch", got.Pitch, want.pitch, "pitch is not the sum of the features")
	c.equal(Profile, "profile.mirrored", got.Mirrored, len(want.turns) > 0, "mirror image judged wrongly")
	c.equal(Profile, "profile", []any{got.Thickness, got.WideFlats, got.Boards, got.Features},
		[]any{want.Thickness, want.WideFlats, want.Boards, want.Features}, "not the job's: thickness, wide flats, boards, features")
	c.equal(Profile, "profile", []any{got.Cover, got.Width, got.Lap, got.Edges, got.Tongue},
		[]any{want.Cover, want.Width, want.Lap, want.Edges, want.Tongue}, "not the job's: cover, width, lap, edges, tongue")
	return true
}

// matching finds the runs, the stock and the pieces that belong together.
func (c *checker) matching() bool {
	if !slices.EqualFunc(c.plan.Runs, c.job.Runs, func(got planRun, want run) bool { return got.Name == want.Name }) {
		c.fault(Job, "runs", len(c.plan.Runs), len(c.job.Runs), "not the job's runs by name")
		return false
	}
	for i, s := range c.job.Stock {
		c.stock[s.Name] = i
	}
	for i, p := range c.plan.Pieces {
		c.pieces[p.Number] = i
	}
	return true
}

// corners checks which run passes and which butts, and builds the regions.
func (c *checker) corners() {
	n := len(c.job.Runs)
	c.job.findBare(func(i int) bool { return len(c.plan.Runs[i].Panels) > 0 })
	atLeft, atRight := make([]role, n), make([]role, n)
	for i, r := range c.job.Runs {
		next, shared := c.job.corner(i)
		path := item("runs", i) + ".corner_right"
		got := ""
		if corner := c.plan.Runs[i].CornerRight; corner != nil {
			got = corner.Passes + "/" + corner.Butts
		}
		if !shared || r.Right.Kind == outsideCorner {
			c.require(got == "" || got == "/", Corner, path, got, "nothing", "no inside corner is shared here")
			continue
		}
		here, there := r.Name+"/"+c.job.Runs[next].Name, c.job.Runs[next].Name+"/"+r.Name
		atRight[i], atLeft[next] = passes, butts
		switch got {
		case here:
		case there:
			atRight[i], atLeft[next] = butts, passes
		default:
			c.fault(Corner, path, got, here+" or "+there, "not the two runs of the corner: which passes, which butts")
		}
	}
	c.require(!c.job.endless(atLeft), Corner, "runs", "each run butts against the next, all round", "a run that butts against none", "no run can be fitted first")
	for i := range c.job.Runs {
		c.regions = append(c.regions, c.job.region(i, atLeft[i], atRight[i]))
	}
}

// endless says whether the runs of a closed room, in these roles at their left ends, butt against each other all round, with
// no panels on the wall that would say which came first.
func (j *room) endless(atLeft []role) bool {
	return len(atLeft) > 1 && len(j.Installed) == 0 && atLeft[0] != alone && !slices.ContainsFunc(atLeft, func(r role) bool { return r != atLeft[0] })
}

// repeats compares what the plan repeats from the job.
func (c *checker) repeats() {
	c.equal(Job, "title", c.plan.Title, c.job.Title, "not the job's title")
	c.given(Job, "tape", c.plan.Tape, c.job.tape, "not the job's tape")
	if got := c.plan.Saw; got != nil {
		c.given(Job, "saw.kerf", got.Kerf, c.job.kerf, "not the job's kerf")
		c.equal(Job, "saw.square_up", got.SquareUp, c.job.Saw.SquareUp, "not what the job squares up")
		c.equal(Job, "saw.kind", got.Kind, c.job.Saw.Kind, "not the job's saw")
		face := cmp.Or(c.job.Saw.Face, map[string]string{"circular": "down"}[c.job.Saw.Kind], "up")
		c.equal(Job, "saw.face", cmp.Or(got.Face, "up"), face, "not the side that lies up")
		c.given(Job, "saw.least_rip", got.LeastRip, c.job.leastRip(), "not the job's least rip")
	}
	if got := c.plan.Gaps; got != nil {
		c.equal(Job, "gaps", *got, c.job.Gaps, "not the job's gaps")
	}
	for i, got := range c.plan.Stock {
		path := item("stock", i)
		k, known := c.stock[got.Name]
		if !known {
			c.fault(Stock, path+".name", got.Name, "a stock of the job", "unknown stock")
			continue
		}
		want := c.job.Stock[k]
		c.equal(Stock, path, []any{got.Width, got.Length, got.LeftPhase, got.Price, got.Squared, got.Count},
			[]any{want.Width, want.Length, want.LeftPhase, want.Price, want.Squared, want.Count},
			"not the job's: width, length, phase, price, squared, count")
	}
	for i, got := range c.plan.Runs {
		c.repeatedRun(item("runs", i), got, c.job.Runs[i])
	}
}

// repeatedRun compares a run of the plan with the job's.
func (c *checker) repeatedRun(path string, got planRun, want run) {
	c.given(Job, path+".width", got.Width, want.Width, "not the job's width")
	for k, e := range []*planEnd{got.Left, got.Right} {
		if of := []end{want.Left, want.Right}[k]; e != nil {
			c.equal(Job, path+[]string{".left", ".right"}[k], []any{e.Kind, e.Lean}, []any{of.Kind, of.Lean},
				"not the job's end")
		}
	}
	var bottom, top loop
	for _, h := range want.Heights {
		bottom, top = append(bottom, point{h.At, h.Bottom}), append(top, point{h.At, h.Top})
	}
	top[0].X, top[len(top)-1].X = sum(top[0].X, want.Left.Lean), sum(top[len(top)-1].X, want.Right.Lean)
	slices.Reverse(top)
	c.alike(path+".outline", got.Outline, append(bottom, top...), "not the wall as taped")
	laid := slices.DeleteFunc(slices.Clone(c.job.Installed), func(p installed) bool { return p.Run != want.Name })
	for k, p := range got.Installed {
		if k < len(laid) {
			c.equal(Job, item(path+".installed", k), []any{p.Left, p.Right, p.LeftPhase},
				[]any{laid[k].Left, laid[k].Right, laid[k].LeftPhase}, "not the job's")
		}
	}
	for k, o := range got.Openings {
		at := item(path+".openings", k)
		if k >= len(want.Openings) || o.Name != want.Openings[k].Name || o.Kind != want.Openings[k].Kind {
			c.fault(Job, at, o.Name+", "+o.Kind, "as in the job", "not the job's opening")
			continue
		}
		c.alike(at+".outline", o.Outline, want.Openings[k].taped, "not the opening as taped")
	}
}

// alike reports two shapes that are not the same, where there are both.
func (c *checker) alike(path string, got, want loop, note string) {
	if len(got) > 0 && len(want) > 0 {
		c.equal(Job, path, c.job.sweep.area(shape{got, want}.edges()), zero(), "%s (square inches that differ)", note)
	}
}
