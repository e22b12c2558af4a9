// Package engine answers what the page asks: what is wrong with a job, how its walls look, its plan,
// and the files to take away. It knows no browser; package wasm joins it to one.
package engine

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"strings"
	"time"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

// Engine keeps the plans that were made last. Its zero value is ready.
type Engine struct {
	plans []plan.Plan
	stop  context.CancelFunc // of the search that is going on
}

// Request is what the page asks. Do says what for:
//
//	check   what is wrong with Job, what is doubtful, and how its walls look
//	open    Job as strict JSON
//	plan    a plan for each choice of Job
//	stop    that the search ends with the best so far
//	walls   the walls of plan Choice
//	files   the files of plan Choice
//	sheet   the measuring sheet for so many Runs
//	warm    nothing: it plans an invented job, after which a browser has the planner compiled
type Request struct {
	Do     string `json:"do"`
	Job    string `json:"job"`
	Effort int    `json:"effort"`
	Choice int    `json:"choice"`
	Runs   int    `json:"runs"`
}

// Answer is what the engine answers; each field is empty where it was not asked for.
type Answer struct {
	Faults  []Note          `json:"faults,omitempty"`
	Doubts  []Note          `json:"doubts,omitempty"`
	Walls   []string        `json:"walls,omitempty"` // drawings, "" of a wall that cannot be drawn yet
	Job     json.RawMessage `json:"job,omitempty"`
	Choices []Choice        `json:"choices,omitempty"`
	Runs    []Run           `json:"runs,omitempty"`
	Stopped bool            `json:"stopped,omitempty"` // the search was
	Files   []File          `json:"files,omitempty"`
}

// Note is what is said of a field of the job file.
type Note struct {
	Path    string `json:"path"`
	Text    string `json:"text"`
	Missing bool   `json:"missing,omitempty"` // the field only lacks a value
	Line    int    `json:"line,omitempty"`
	Column  int    `json:"column,omitempty"`
}

// Choice is one plan, as much of it as the page shows.
type Choice struct {
	Sheets  int      `json:"sheets"`
	Bought  int      `json:"bought"`
	Panels  int      `json:"panels"`
	Cost    string   `json:"cost"`  // "" where it is not known
	Flaws   string   `json:"flaws"` // the blemish, to two places
	Unit    string   `json:"unit"`  // sheet or board
	Says    string   `json:"says"`
	Head    string   `json:"head"`
	Search  string   `json:"search"`
	Preview string   `json:"preview"` // the finished walls
	Look    []string `json:"look"`    // to look at before one buys
}

// Run is one wall of a plan. Lengths are in the job's units, as a job file has them.
type Run struct {
	Name      string   `json:"name"`
	Drawing   string   `json:"drawing"`
	Narrow    string   `json:"narrow"`  // the drawing for a phone
	Marks     float64  `json:"marks"`   // of the tape along the run, for dragging alone
	Origins   []string `json:"origins"` // where a repeat may start, mark by mark, the planned one first
	Direction string   `json:"direction"`
	Seams     []string `json:"seams"` // middles of the gaps between panels
}

// File is a file to take away.
type File struct {
	Name string `json:"name"`
	Body string `json:"body"`
}

// mostOrigins is how many places a pattern may be dragged to.
const mostOrigins = 1000

// slice is how long a search goes on before others have their turn.
const slice = 100 * time.Millisecond

// sliced is a context that lets others have their turn whenever a search asks whether to stop: where
// there is one thread, nothing else would be answered until the search ends.
type sliced struct {
	context.Context
	began, next time.Time
	progress    func(time.Duration)
}

// Err pauses where a slice is over.
func (s *sliced) Err() error {
	if now := time.Now(); now.After(s.next) {
		s.progress(now.Sub(s.began))
		time.Sleep(time.Millisecond)
		s.next = time.Now().Add(slice)
	}
	return s.Context.Err()
}

// Answer answers a request. Progress is called from time to time while a plan is searched.
func (e *Engine) Answer(r Request, progress func(time.Duration)) (a Answer) {
	var err error
	switch r.Do {
	case "check":
		a = check(r.Job)
	case "open":
		err = open(&a, r.Job)
	case "plan":
		err = e.plan(&a, r, progress)
	case "stop":
		if e.stop != nil {
			e.stop()
		}
	case "walls":
		err = e.walls(&a, r.Choice)
	case "files":
		err = e.files(&a, r.Choice)
	case "sheet":
		var page []byte
		page, err = book.Survey(r.Runs)
		a.Files = []File{{"measuring-sheet.html", string(page)}}
	case "warm":
		err = e.warm()
	default:
		err = errors.New("no such request: " + r.Do)
	}
	if err != nil {
		a.Faults = notes(err)
	}
	return a
}

// notes returns what an error says of each field; of none where it is no fault of a field.
func notes(err error) (all []Note) {
	faults := fault.All(err)
	for _, f := range faults {
		path, _ := f.Path.MarshalText() // writes any path
		text := f.Want
		if f.Cause != nil && text != "" {
			text = f.Cause.Error() + "; expected " + text
		} else if f.Cause != nil {
			text = f.Cause.Error()
		}
		text = strings.ReplaceAll(text, " in quotes", "") // a form has none
		all = append(all, Note{string(path), text, errors.Is(f, jobfile.ErrMissing), f.Line, f.Column})
	}
	if len(faults) == 0 {
		all = []Note{{Text: err.Error()}}
	}
	return all
}

// check says what is wrong with a job, or else what is doubtful.
func check(text string) (a Answer) {
	a.Walls = walls(text)
	j, err := jobfile.Read(strings.NewReader(text))
	if err == nil {
		found, doubtErr := j.Doubts()
		for _, w := range found {
			path, _ := w.Path.MarshalText()
			a.Doubts = append(a.Doubts, Note{Path: string(path), Text: book.Doubt(j.Tape(), w)})
		}
		err = doubtErr
	}
	if err != nil {
		a.Faults = notes(err)
	}
	return a
}

// open reads a job file as strict JSON, without judging the job in it.
func open(a *Answer, text string) error {
	data := jobfile.Standard(bytes.TrimPrefix([]byte(text), []byte("\ufeff")))
	var whole map[string]any
	if json.Unmarshal(data, &whole) == nil && whole != nil {
		a.Job = data
		return nil
	}
	_, err := jobfile.Read(strings.NewReader(text)) // says where
	return err
}

// search plans a job until it is stopped, as is a search that still goes on.
func (e *Engine) search(r Request, progress func(time.Duration)) (plans []plan.Plan, stopped bool, err error) {
	j, err := jobfile.Read(strings.NewReader(r.Job))
	if err != nil {
		return nil, false, err
	}
	if e.stop != nil {
		e.stop()
	}
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	e.stop = stop
	now := time.Now()
	plans, err = plan.MakeEach(&sliced{ctx, now, now.Add(slice), progress}, j, plan.Options{Budget: choice.Budget{Effort: r.Effort}})
	return plans, ctx.Err() != nil, err
}

// warm plans and draws an invented job, and again, as a browser compiles well what runs often.
func (e *Engine) warm() error {
	job, err := book.Starter(2)
	if err != nil {
		return err
	}
	for range 2 {
		plans, stopped, err := e.search(Request{Job: string(job)}, func(time.Duration) {})
		if stopped || err != nil {
			return err
		}
		if _, err := shown(plans[0], 0); err != nil {
			return err
		}
		if err := (&Engine{plans: plans}).walls(new(Answer), 0); err != nil {
			return err
		}
	}
	return nil
}

// plan plans a job and keeps its plans.
func (e *Engine) plan(a *Answer, r Request, progress func(time.Duration)) error {
	plans, stopped, err := e.search(r, progress)
	if err != nil {
		return err
	}
	e.plans, a.Stopped = plans, stopped
	for i, p := range plans {
		c, err := shown(p, i)
		if err != nil {
			return err
		}
		a.Choices = append(a.Choices, c)
	}
	return nil
}

// shown returns what the page shows of a plan, which takes choice i.
func shown(p plan.Plan, i int) (c Choice, err error) {
	defer fraction.Catch(&err)
	taken := p.Choices[i]
	c = Choice{Sheets: taken.Sheets, Bought: taken.Bought, Panels: taken.Panels, Unit: p.Profile.Word("sheet", "board"),
		Flaws: taken.BlemishTotal.Rat().FloatString(2), Says: book.SeenMost(p, i), Head: book.Headline(p), Search: book.Search(p),
		Preview: string(fraction.Must(drawing.Preview(p)).Element())}
	if cost, known := taken.Cost.Decimal(); known {
		c.Cost = cost.StringFixed(2)
	}
	for _, w := range p.Warnings {
		c.Look = append(c.Look, book.Warning(p, w))
	}
	return c, nil
}

// errNoPlan says that a plan was asked for that was not made.
var errNoPlan = errors.New("there is no such plan yet")

// walls draws the walls of a plan that was made.
func (e *Engine) walls(a *Answer, i int) (err error) {
	defer fraction.Catch(&err)
	if i < 0 || i >= len(e.plans) {
		return errNoPlan
	}
	p := e.plans[i]
	bare := func(l fraction.Length) string {
		return strings.TrimSuffix(fraction.Tape{Unit: p.Units}.Format(l), " "+p.Units.String())
	}
	for n, run := range p.Runs {
		picture := fraction.Must(drawing.Elevation(p, n))
		r := Run{Name: run.Name, Drawing: string(picture.Element()), Marks: run.Width.Float64() / p.Tape.Float64(), Direction: run.SetOut.Direction.String()}
		for by := (fraction.Length{}); by.Less(p.Profile.Pitch) && len(r.Origins) < mostOrigins || by.IsZero(); by = by.Add(p.Tape) {
			r.Origins = append(r.Origins, bare(run.SetOut.Origin.Add(by)))
		}
		if narrow, ok := picture.Narrow(); ok {
			r.Narrow = string(narrow.Element())
		}
		for _, seam := range run.Seams {
			r.Seams = append(r.Seams, bare(seam.At))
		}
		a.Runs = append(a.Runs, r)
	}
	return nil
}

// files returns the files of a plan that was made, those that the command writes.
func (e *Engine) files(a *Answer, i int) error {
	if i < 0 || i >= len(e.plans) {
		return errNoPlan
	}
	p := e.plans[i]
	files, err := book.Files(p)
	if err != nil {
		return err
	}
	data, err := p.JSON()
	if err != nil {
		return err
	}
	files = append(files, book.File{Name: "plan.txt", Body: []byte(book.Text(p))}, book.File{Name: "plan.json", Body: data})
	for _, table := range []book.Table{book.BuyTable, book.CutsTable} {
		files = append(files, book.File{Name: table.String() + ".csv", Body: []byte(book.CSV(p, table))})
	}
	for _, f := range files {
		a.Files = append(a.Files, File{f.Name, string(f.Body)})
	}
	return nil
}
