package book

import (
	"bytes"
	"fmt"
	"html/template"
	"slices"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/plan"
)

// funcs are what the texts of the pages call.
func (b *page) funcs() template.FuncMap {
	return template.FuncMap{
		"face": func() string { return faceWords[b.Plan.Saw.Face] }, "ripEdge": func() string { return ripEdge(b.Plan) },
		"length": b.unbroken, "picture": b.picture, "starters": b.starters, "add": func(a, b int) int { return a + b }, "alike": alike, "lengths": lengths, "fitted": fitted, "priced": priced,
		"leaf": b.leaf, "details": b.details, "elsewhere": b.elsewhere, "cutting": b.cutting, "marked": func(i int) []block { return b.leaves[i].blocks }, "oddPieces": b.oddPieces, "howMeasured": b.howMeasured, "gaps": gaps, "seeRun": b.seeRun, "seePiece": b.seePiece, "sawn": b.sawnFrom, "small": b.small, "plan": func() plan.Plan { return b.Plan }, "drawn": drawing.PieceName, "buying": func() string { return b.buying(b.Plan) }, "doubts": func() []doubt { return b.doubts(b.Plan) }, "choice": b.choice, "why": b.why, "slant": func(p plan.Piece) bool { return slant(b.Plan, p) }, "strips": b.strips, "where": b.whereAndWhat,
		"plane": func(c plan.Cut) string {
			near, far := cutEdges(b.Plan, c.Kind)
			return "plane " + b.unbroken(c.Off) + " off its " + either(c.Trim == plan.TrimNear, near, far)
		},
		"manuals": func(c finish.Caution) []string { return b.manuals(b.Plan, c) }, "asTaped": asTaped, "meeting": b.meeting, "waits": func(c plan.Cut) string { return waits(b.Plan, c) }, "boxed": func() bool { return boxed(b.Plan) }, "hyphened": hyphened, "item": Item, "quantity": Quantity, "how": How, "step": Step, "caution": cautioned, "taxed": taxed, "besides": besides,
		"sheet": sheetWord, "panel": panelWord, "pieces": labels,
		"letter": plan.Plan.CornerLetter, "flaw": plan.Plan.BlemishNumber, "corner": plan.CornerName, "ratio": rounded, "counts": counts, "counting": func() string { return b.counting(b.Plan) }, "describe": describe, "setting": b.setting, "halves": func(all []plan.Priority) [][]plan.Priority { return slices.Collect(slices.Chunk(all, (len(all)+1)/2)) },
		"sentence": sentence, "whole": whole, "capital": capital, "clip": clip, "counted": count, "place": func(w warning.Warning) string { return placeName(b.Plan, w) }, "point": pointName, "text": fmt.Sprintf,
		"title": func() string { return b.Plan.Title + " · lengths in " + b.tape.Unit.Plural() }, "within": b.within, "headline": func() string { return b.headline(b.Plan) }, "behind": b.Plan.Behind, "up": b.Plan.Up,
		"mitered": func(p plan.Piece) string { return mitered(b.Plan, p) }, "thenMiter": func(p plan.Piece) string { return thenMiter(b.Plan, p) },
		"money": func(a money.Amount) string { return cents(a, "–") },
		"count": func(i int) int { return i + 1 },
		"has":   func(name string) bool { _, ok := b.drawn[name]; return ok },
		"piece": func(number int) plan.Piece { piece, _ := b.Plan.Piece(number); return piece },
		"along": func(x, width fraction.Length) string {
			return whole(b.along(x, width))
		},
		"at": func(found plan.Blemish) string {
			return whole(b.at(b.Plan, found))
		}, "offcuts": b.Plan.Leftovers, "byNumber": byNumber, "number": plan.Sheet.OffcutNumber, "unpriced": unpriced, "rounding": func() string { return rounding },
		"weakSpots": func(p plan.Piece) (all []string) {
			for _, says := range b.weakSpots(b.Plan, p, fromLeft, true) {
				all = append(all, whole(says))
			}
			return all
		},
		"between": (&text{tape: b.tape, full: true}).between, "fromCut": b.fromCut, "given": b.given, "signs": b.signs, "slanted": slanted,
		"chapter": b.chapter, "heading": b.heading, "odd": func() bool { return len(b.odd) > 0 },
		"land":     func(name string) bool { return b.drawn[name].Lying() },
		"start":    startOf,
		"behindIt": behindIt,
		"blank":    func(p plan.Piece) (fraction.Length, error) { width, _, err := p.Blank(); return width, err },
		"element":  func(p drawing.Picture) template.HTML { return template.HTML(p.Element()) },
	}
}

// execute fills one of the embedded texts.
func execute(name string, funcs template.FuncMap, data any) ([]byte, error) {
	parsed, err := template.New(name).Funcs(funcs).ParseFS(texts, name)
	if err != nil {
		return nil, err
	}
	var w bytes.Buffer
	err = parsed.Execute(&w, data)
	return w.Bytes(), err
}
