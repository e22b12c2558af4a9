package plan_test

import (
	"context"
	"encoding/json"
	"testing"
	"time"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/plan"
)

// FuzzWild calls what the package exports with wild values: nothing panics, and a result comes without an error.
func FuzzWild(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add([]byte{}, true)
	f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16}, false)
	f.Fuzz(func(t *testing.T, data []byte, fresh bool) {
		var job plan.Job
		var p plan.Plan
		var options plan.Options
		var unit fraction.Unit
		var profile groove.Profile
		fractiontest.Fill(data, &job, &unit, &profile, &options)
		fractiontest.Fill(data, &p)
		if fresh {
			job = plan.NewJob(unit, profile)
			fractiontest.Fill(data, &job.Room.Runs, &job.Room.Stock)
		}
		defer time.AfterFunc(20*time.Second, func() { panic("no end") }).Stop()
		ctx, cancel := context.WithTimeout(t.Context(), 50*time.Millisecond)
		defer cancel()
		options.Budget = choice.Budget{Layouts: 1, Nodes: 2000}
		valid := job.Validate()
		_, doubts := job.Doubts()
		made, err := plan.Make(ctx, job, options)
		if valid != nil && (doubts == nil || err == nil) || (err == nil) != (made.Format == plan.Format) {
			t.Errorf("Validate: %v, Doubts: %v, Make: format %d, %v", valid, doubts, made.Format, err)
		}
		if data, err := p.JSON(); err == nil {
			json.Unmarshal(data, &plan.Plan{})
		}
		_ = options.Prefer.String()
		plan.CornerName(len(data) - 5)
		for _, run := range p.Runs {
			run.PolePlaces()
			run.Extent()
			run.EndPanel(true)
			p.Uprights(run)
			for _, o := range run.Openings {
				p.ArcsOf(run, o)
			}
			for _, at := range run.Outline {
				run.AtEnd(at)
			}
			run.LeansOut(wall.Left)
			p.PoleEntries(run)
		}
		for _, s := range p.Sheets {
			for _, at := range s.Placements {
				p.Placed(at)
			}
			for _, c := range s.Cuts {
				p.Ambiguous(s, c)
				c.Measure(p.Saw.Kerf, p.Tape)
				c.Leaves()
				c.Line(p.Saw.Kerf)
			}
		}
		for _, piece := range p.Pieces {
			p.ClosingEdge(piece)
			piece.Notches()
			piece.Marks.Named(fraction.Length{})
			p.Nails(piece)
			p.Profile.Stripes(piece.Width.Neg(), piece.Width, piece.LeftPhase)
			for _, c := range piece.Marks.Order {
				for _, cut := range c.Saw {
					p.Planed(piece, cut)
					piece.Stretches(cut, p.Tape, p.Snap)
				}
			}
			for _, a := range piece.Marks.Arcs {
				top, _ := a.Top()
				piece.Holds(top)
			}
			p.SheetOf(piece.Number)
			p.Run(piece.Run)
			for _, run := range p.Runs {
				run.MitredEdges(piece)
			}
		}
		for _, row := range p.List.Rows {
			p.OnHand(row)
		}
		for i := range len(p.Runs) + 2 {
			p.Passes(i-1, i%2 == 0)
			p.CornerLetter(i - 1)
		}
		for i := range len(p.Blemishes) + 2 {
			p.BlemishNumber(i - 1)
		}
		p.ByPrice()
		p.LeastOfAll()
		p.ClosesBefore()
		p.Behind(0)
		for _, c := range p.Choices {
			p.LooksBetter(c)
		}
	})
}
