package drawing

import (
	"fmt"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
	amount "example.com/groovewright/fraction/money"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

// in reads a length in inches.
func in(s string) fraction.Length { return fraction.MustParse(s) }

// ring reads the corners of an outline, x and y in turn.
func ring(at ...string) []plan.Point {
	var points []plan.Point
	for i := 0; i+1 < len(at); i += 2 {
		points = append(points, plan.Point{in(at[i]), in(at[i+1])})
	}
	return points
}

// block is the outline of a rectangle.
func block(left, bottom, width, height string) []plan.Point {
	l, b := in(left), in(bottom)
	r, t := l.Add(in(width)), b.Add(in(height))
	return []plan.Point{{l, b}, {r, b}, {r, t}, {l, t}}
}

// mirror is an outline as marked on the back of a piece of a width.
func mirror(points []plan.Point, width fraction.Length) []plan.Point {
	var back []plan.Point
	for _, p := range points {
		back = append(back, plan.Point{width.Sub(p[0]), p[1]})
	}
	return back
}

// piece is a piece with its marks.
func piece(number int, label, run string, panel int, at plan.Point, width, height, phase string, outline []plan.Point, holes ...plan.Hole) plan.Piece {
	p := plan.Piece{Number: number, Label: label, Run: run, Panel: panel, At: at, Width: in(width), Height: in(height),
		LeftPhase: in(phase), Outline: outline, Holes: holes}
	if outline == nil {
		p.Outline = block("0", "0", width, height)
	}
	p.Marks = plan.Marks{From: "From the left edge and the lower edge.", Face: p.Outline, Back: mirror(p.Outline, p.Width)}
	for _, h := range holes {
		p.Marks.Holes = append(p.Marks.Holes, plan.HoleMarks{Opening: h.Opening, Face: h.Outline, Back: mirror(h.Outline, p.Width)})
		drill := plan.Point{h.Outline[0][0].Add(in("1/4")), h.Outline[0][1].Add(in("1/4"))}
		p.Marks.Drill = append(p.Marks.Drill, plan.Drill{Opening: h.Opening, At: drill,
			Back: plan.Point{p.Width.Sub(drill[0]), drill[1]}, Diameter: in("3/8")})
	}
	return p
}

// kitchen is an invented kitchen of three runs, made by hand: every name and
// figure in it is made up, and it only serves to draw.
func kitchen() plan.Plan {
	left, sink, stove := "Left wall", "Sink wall", "Stove wall"
	price, cost := decimal.RequireFromString("24.50"), decimal.RequireFromString("49.00")
	p := plan.Plan{
		Format: plan.Format, Title: "Kitchen on the hill", Units: "in", Tape: in("1/16"),
		Profile: plan.Profile{Name: "bead at 1-1/2", Pitch: in("1 1/2"), Thickness: in("1/4"), Mirrored: true,
			Features: []plan.Feature{{Kind: "flat", Width: in("5/8")}, {Kind: "bead", Width: in("1/4")}, {Kind: "groove", Width: in("1/16")}, {Kind: "flat", Width: in("9/16")}}},
		Saw:   plan.Saw{Kerf: in("1/8"), SquareUp: in("1/4")},
		Gaps:  plan.Gaps{Top: in("1/8"), Bottom: in("1/8"), Side: in("1/8"), Seam: in("1/16"), Box: in("1/8"), Window: in("1/8")},
		Stock: []plan.Stock{{Stock: nest.Stock{Name: "beaded sheet 4 x 8", Width: in("48"), Length: in("96"), Price: amount.Of(price)}, Used: 2}},
		Runs: []plan.Run{
			{Name: left, Width: in("62 1/2"), Left: plan.End{Kind: "exposed", Cut: "whole flat"}, Right: plan.End{Kind: "inside corner", Cut: "flat cut at 3/8"},
				Limits: [2]fraction.Length{in("0"), in("62 3/8")}, SetOut: plan.SetOut{From: in("0"), Direction: "right", Origin: in("0"), Why: "The exposed left end shows a whole flat."},
				CornerRight: &plan.Corner{Kind: "inside corner", Next: sink, Passes: left, Butts: sink, Mismatch: in("3/8")},
				Outline:     ring("0", "0", "62 1/2", "0", "62 1/2", "18 1/4", "0", "18"),
				Openings:    []plan.Opening{{Name: "outlet A", Kind: "box", Outline: block("20", "7", "2 1/4", "3 7/8")}},
				Panels:      []plan.Panel{{Number: 1, Left: in("0"), Right: in("47 15/16"), LeftPhase: in("0"), RightPhase: in("1 7/16"), Pieces: []int{1}}, {Number: 2, Left: in("48"), Right: in("62 3/8"), LeftPhase: in("0"), RightPhase: in("7/8"), Pieces: []int{2}}},
				StoryPole:   []plan.Mark{{At: in("0"), What: "panel 1, left edge"}, {At: in("19 7/8"), What: "outlet A"}, {At: in("22 3/8"), What: "outlet A"}, {At: in("47 15/16"), What: "panel 1, right edge"}, {At: in("48"), What: "panel 2, left edge"}, {At: in("62 3/8"), What: "panel 2, right edge"}}},
			{Name: sink, Width: in("120 3/8"), Left: plan.End{Kind: "inside corner", Lean: in("3/16"), Cut: "bead cut at 1/16"}, Right: plan.End{Kind: "inside corner", Cut: "whole flat"},
				Limits: [2]fraction.Length{in("3/8"), in("120 1/4")}, SetOut: plan.SetOut{From: in("60 3/16"), Direction: "right", Origin: in("59 7/16"), Why: "A seam in the middle of the window leaves equal cuts at both ends."},
				CornerRight: &plan.Corner{Kind: "inside corner", Next: stove, Passes: stove, Butts: sink, Mismatch: in("1/8")},
				Outline:     ring("0", "0", "120 3/8", "0", "120 3/8", "18 3/16", "84", "18 3/16", "84", "34 1/2", "36", "34 1/2", "36", "18", "3/16", "18"),
				Openings: []plan.Opening{{Name: "window over the sink", Kind: "window", Outline: block("44", "6", "32", "30")},
					{Name: "outlet B", Kind: "box", Outline: block("12", "7", "2 1/4", "3 7/8")}, {Name: "switch", Kind: "box", Outline: block("100", "7", "4", "3 7/8")}},
				Panels: []plan.Panel{{Number: 3, Left: in("3/8"), Right: in("35 15/16"), LeftPhase: in("15/16"), RightPhase: in("0"), Pieces: []int{3}},
					{Number: 4, Left: in("36"), Right: in("83 15/16"), LeftPhase: in("1/16"), RightPhase: in("0"), Pieces: []int{4}}, {Number: 5, Left: in("84"), Right: in("120 1/4"), LeftPhase: in("1/16"), RightPhase: in("13/16"), Pieces: []int{5}}},
				StoryPole: []plan.Mark{{At: in("3/8"), What: "panel 3, left edge"}, {At: in("11 7/8"), What: "outlet B"}, {At: in("14 3/8"), What: "outlet B"}, {At: in("35 15/16"), What: "panel 3, right edge"}, {At: in("36"), What: "panel 4, left edge"},
					{At: in("43 7/8"), What: "window over the sink"}, {At: in("76 1/8"), What: "window over the sink"}, {At: in("83 15/16"), What: "panel 4, right edge"}, {At: in("84"), What: "panel 5, left edge"}, {At: in("99 7/8"), What: "switch"}, {At: in("104 1/8"), What: "switch"}, {At: in("120 1/4"), What: "panel 5, right edge"}}},
			{Name: stove, Width: in("40 33/64"), Left: plan.End{Kind: "inside corner", Cut: "whole flat"}, Right: plan.End{Kind: "exposed", Cut: "whole flat"},
				Limits: [2]fraction.Length{in("1/8"), in("40 33/64")}, SetOut: plan.SetOut{From: in("40 33/64"), Direction: "left", Origin: in("33/64"), Why: "The exposed right end shows a whole flat."},
				Outline:   ring("0", "0", "40 33/64", "0", "40 33/64", "18 3/8", "0", "18 3/16"),
				Panels:    []plan.Panel{{Number: 6, Left: in("1/8"), Right: in("40 33/64"), LeftPhase: in("71/64"), RightPhase: in("1"), Pieces: []int{6}}},
				StoryPole: []plan.Mark{{At: in("1/8"), What: "panel 6, left edge"}, {At: in("40 33/64"), What: "panel 6, right edge"}}},
		},
		Bound:        plan.Bound{SheetsAtLeast: 2, Proved: true, How: "By area: the pieces cover more than one sheet."},
		BlemishTotal: fraction.NewRatio(47, 16),
		Blemishes: []plan.Blemish{
			{Run: left, Where: "corner to Sink wall", At: in("62 1/4"), Kind: "mismatch in the corner", Amount: in("3/8"), Weight: fraction.NewRatio(1, 1), Cost: fraction.NewRatio(9, 16)},
			{Run: left, Where: "seam of panels 1 and 2", At: in("47 31/32"), Kind: "seam", Amount: in("1/8"), Weight: fraction.NewRatio(1, 1), Cost: fraction.NewRatio(3, 16)},
			{Run: sink, Where: "seam of panels 3 and 4", At: in("35 31/32"), Kind: "seam", Amount: in("1/8"), Weight: fraction.NewRatio(1, 1), Cost: fraction.NewRatio(3, 16)},
			{Run: sink, Where: "right side of the step", At: in("84"), Kind: "side of a step", Amount: in("1/4"), Weight: fraction.NewRatio(3, 1), Cost: fraction.NewRatio(33, 32)},
			{Run: sink, Where: "seam of panels 4 and 5", At: in("83 31/32"), Kind: "seam", Amount: in("1/8"), Weight: fraction.NewRatio(1, 1), Cost: fraction.NewRatio(1, 3)},
		},
		Search:     plan.Search{Layouts: 214, Proved: true, How: "The bound of two sheets is met."},
		Choices:    []plan.Choice{{Sheets: 2, Cost: cost, BlemishTotal: fraction.NewRatio(47, 16), Chosen: true, Proved: true, Says: "Fewest sheets."}, {Sheets: 3, Cost: cost, BlemishTotal: fraction.NewRatio(2, 1), Says: "One sheet more moves the seam behind the range."}},
		Priorities: []plan.Priority{{Name: "exposed_end", Value: fraction.NewRatio(8, 1), Default: fraction.NewRatio(8, 1), Unit: "per foot and inch", Says: "a cut feature at an exposed end"}},
		Takeoff: []plan.TakeoffRow{{Item: "beaded sheet 4 x 8", Quantity: "2", Unit: "sheets", Buy: 2, Container: "sheet", Price: &price, Cost: &cost, How: "the nest"},
			{Item: "paint, first coat", Quantity: "0.11", Unit: "gal", Buy: 1, Container: "quart", How: "42 ft² at 400 ft² a gallon"}},
		Total:    decimal.RequireFromString("49.00"),
		Warnings: []plan.Warning{{Path: "runs[1].heights[2].top", Text: "the height jumps without a step"}},
		Order:    []string{"Fit piece 1 on the left wall.", "Fit piece 2.", "Fit piece 6 on the stove wall.", "Dry-fit piece 3, 4 and 5.", "Measure for piece 5 on the wall as it is, then cut it."},
		Cautions: []string{"Turn the mains off and prove it dead before you work at a box.", "Wear a dust mask; saw outside if you can."},
	}
	p.Pieces = []plan.Piece{
		piece(1, "1", left, 1, plan.Point{in("0"), in("1/8")}, "47 15/16", "17 15/16", "0", ring("0", "0", "47 15/16", "0", "47 15/16", "17 15/16", "0", "17 3/4"), plan.Hole{Opening: "outlet A", Outline: block("19 7/8", "6 3/4", "2 1/2", "4 1/8")}),
		piece(2, "2", left, 2, plan.Point{in("48"), in("1/8")}, "14 3/8", "18", "0", nil),
		piece(3, "3", sink, 3, plan.Point{in("3/8"), in("1/8")}, "35 9/16", "17 3/4", "15/16", nil, plan.Hole{Opening: "outlet B", Outline: block("11 1/2", "6 3/4", "2 1/2", "4 1/8")}),
		piece(4, "4", sink, 4, plan.Point{in("36"), in("1/8")}, "47 15/16", "34 1/4", "1/16", ring("0", "0", "47 15/16", "0", "47 15/16", "34 1/4", "40 1/8", "34 1/4", "40 1/8", "5 3/4", "7 7/8", "5 3/4", "7 7/8", "34 1/4", "0", "34 1/4")),
		piece(5, "5", sink, 5, plan.Point{in("84"), in("1/8")}, "36 1/4", "17 15/16", "1/16", nil, plan.Hole{Opening: "switch", Outline: block("15 7/8", "6 3/4", "4 1/4", "4 1/8")}),
		piece(6, "6", stove, 6, plan.Point{in("1/8"), in("1/8")}, "40 25/64", "18 1/8", "71/64", ring("0", "0", "40 25/64", "0", "40 25/64", "18 1/8", "0", "17 15/16")),
	}
	p.Pieces[4].Closing = true
	p.Pieces[3].Weak = []plan.Weak{{Kind: "long thin leg", At: plan.Point{in("44"), in("20")}, Width: in("7 13/16"), WayOut: "Saw it as two pieces: the legs come off with the window's apron in one."}}
	rect := func(x, y, w, h string) [4]fraction.Length {
		return [4]fraction.Length{in(x), in(y), in(w), in(h)}
	}
	p.Sheets = []plan.Sheet{
		{Number: 1, Stock: "beaded sheet 4 x 8", Placements: []plan.Placement{{Piece: 4, X: in("1/16"), Y: in("1/4")}, {Piece: 1, X: in("0"), Y: in("34 5/8")}, {Piece: 6, X: in("71/64"), Y: in("52 11/16"), Turned: true}, {Piece: 2, X: in("0"), Y: in("71")}},
			Cuts: []plan.Cut{{Step: 1, Rect: rect("0", "0", "48", "96"), Kind: "crosscut", At: in("1/8")}, {Step: 2, Rect: rect("0", "1/4", "48", "95 3/4"), Kind: "crosscut", At: in("95 1/2")}, {Step: 3, Rect: rect("0", "1/4", "48", "95 1/2"), Kind: "crosscut", At: in("34 1/4")},
				{Step: 4, Rect: rect("0", "1/4", "48", "34 1/4"), Kind: "rip", At: in("-1/16")}, {Step: 5, Rect: rect("0", "34 5/8", "48", "61 1/8"), Kind: "crosscut", At: in("17 15/16")}, {Step: 6, Rect: rect("0", "34 5/8", "48", "17 15/16"), Kind: "rip", At: in("47 15/16")},
				{Step: 7, Rect: rect("0", "52 11/16", "48", "43 1/16"), Kind: "crosscut", At: in("18 1/8")}, {Step: 8, Rect: rect("0", "52 11/16", "48", "18 1/8"), Kind: "rip", At: in("63/64")}, {Step: 9, Rect: rect("71/64", "52 11/16", "46 57/64", "18 1/8"), Kind: "rip", At: in("40 25/64")},
				{Step: 10, Rect: rect("0", "70 15/16", "48", "24 13/16"), Kind: "crosscut", At: in("18 1/16")}, {Step: 11, Rect: rect("0", "70 15/16", "48", "18 1/16"), Kind: "rip", At: in("14 3/8")}},
			Offcuts: []plan.Offcut{{X: in("14 1/2"), Y: in("71"), Width: in("33 1/2"), Length: in("18"), LeftPhase: in("1")}, {X: in("0"), Y: in("89 1/8"), Width: in("48"), Length: in("6 5/8")}, {X: in("41 5/8"), Y: in("52 11/16"), Width: in("6 3/8"), Length: in("18 1/8"), LeftPhase: in("1 1/8")}}},
		{Number: 2, Stock: "beaded sheet 4 x 8", Placements: []plan.Placement{{Piece: 3, X: in("15/16"), Y: in("1/4")}, {Piece: 5, X: in("1/16"), Y: in("18 1/4")}},
			Cuts:    []plan.Cut{{Step: 1, Rect: rect("0", "0", "48", "96"), Kind: "crosscut", At: in("1/8")}, {Step: 2, Rect: rect("0", "1/4", "48", "95 3/4"), Kind: "crosscut", At: in("17 3/4")}, {Step: 3, Rect: rect("0", "18 1/4", "48", "77 3/4"), Kind: "crosscut", At: in("17 15/16")}},
			Offcuts: []plan.Offcut{{X: in("0"), Y: in("36 5/16"), Width: in("48"), Length: in("59 11/16")}}},
	}
	return p
}

// hostile is a plan whose names try to be markup.
func hostile() plan.Plan {
	p := kitchen()
	name := `<script>alert("x")</script> & "wall"`
	p.Title = name
	for i := range p.Runs {
		old := p.Runs[i].Name
		p.Runs[i].Name = fmt.Sprintf("%s %d", name, i)
		for n := range p.Pieces {
			if p.Pieces[n].Run == old {
				p.Pieces[n].Run = p.Runs[i].Name
			}
		}
		for n := range p.Runs[i].Openings {
			p.Runs[i].Openings[n].Name = name
		}
	}
	p.Stock[0].Name = name
	for i := range p.Sheets {
		p.Sheets[i].Stock = name
	}
	p.Order, p.Cautions = []string{name}, []string{name}
	return p
}
