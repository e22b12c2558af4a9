package plan_test

import (
	"testing"

	"example.com/groovewright/nest"
	"example.com/groovewright/wall/choice"
)

// steppedWall is nearly as wide as two whole sheets. The layouts that look best have three panels
// and take two sheets; parted near the step its two panels lie one above the other on one: 37 1/16
// and 46 3/16 are less than 95 1/2.
const steppedWall = `{"profile": "beadboard 1-5/8", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
	"saw": {"kerf": "1/8", "square_up": "1/4"}, "gaps": {"side": "1/16"},
	"runs": [{"name": "wall", "width": "95 1/16", "left": {"kind": "exposed"}, "right": {"kind": "covered"},
		"heights": [{"at": "0", "top": "37 1/16"}, {"at": "49 3/16", "top": "37 1/16"}, {"at": "49 3/16", "top": "46 3/16"}, {"at": "95 1/16", "top": "46 3/16"}]}]}`

func TestLayoutsByCostSaveASheet(t *testing.T) {
	p := makeFrom(t, steppedWall)
	if len(p.Sheets) != 1 || len(p.Choices) < 2 || !p.Choices[0].BlemishTotal.Less(p.BlemishTotal) {
		t.Errorf("%d sheets, choices %+v; want 1 sheet and a better-looking choice of 2", len(p.Sheets), p.Choices)
	}
	if p.Search.Proved || p.Search.Status != choice.NeedProved || p.Search.End != choice.BoundMet {
		t.Errorf("search %+v; want least need proved and no more", p.Search)
	}
}

// Two walls too high for one sheet to give two panels one above the other. Their widths add up to a
// little more than five sheets only with a kerf for each of six panels, which the strips of the
// walls alone do not tell.
func TestWorthOfPanelsRaisesTheBound(t *testing.T) {
	p := makeFrom(t, `{"profile": "beadboard 1-1/2", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
		"saw": {"kerf": "1/8", "square_up": "1/4"}, "gaps": {"side": "1/16"},
		"runs": [
			{"name": "left", "width": "137 5/16", "left": {"kind": "exposed"}, "right": {"kind": "inside corner"},
				"heights": [{"at": "0", "top": "56"}, {"at": "137 5/16", "top": "56"}]},
			{"name": "right", "width": "103 1/8", "left": {"kind": "inside corner"}, "right": {"kind": "exposed"},
				"heights": [{"at": "0", "top": "64"}, {"at": "103 1/8", "top": "64"}]}]}`)
	if len(p.Sheets) != 6 || !p.Search.Proved || p.Search.How != nest.PartHeights {
		t.Errorf("%d sheets, proved %v: %s; want 6, proved by the heights of the pieces", len(p.Sheets), p.Search.Proved, p.Search.How)
	}
}
