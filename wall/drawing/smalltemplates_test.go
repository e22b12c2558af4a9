package drawing

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/wall/plan"
)

// TestSmallTemplatesShareWithoutOverlap: each small template is on one page, wholly within what the
// page has to draw on, and off its neighbours.
func TestSmallTemplatesShareWithoutOverlap(t *testing.T) {
	profile := kitchen().Profile
	rapid.Check(t, func(t *rapid.T) {
		paper := Papers()[rapid.IntRange(0, 1).Draw(t, "paper")]
		var all []tiling
		for n := range rapid.IntRange(1, 12).Draw(t, "lines") {
			c := drawnCut(t)
			c.piece = plan.Piece{Width: in("96"), Height: in("96")}
			if one, ok := c.small(paper, profile, n+1); ok {
				all = append(all, one)
			}
		}
		w, h := paper.page(sharedFoot)
		var found []int
		for _, page := range share(all, paper) {
			for i, c := range page {
				found = append(found, c.number)
				spot := box{c.left, c.top, c.w, c.height()}
				if c.left < 0 || c.top < 0 || c.left+c.w > w+1e-9 || c.top+c.height() > h+1e-9 {
					t.Errorf("template %d lies at %v, past a page of %v by %v", c.number, spot, w, h)
				}
				for _, other := range page[:i] {
					if spot.overlaps(box{other.left, other.top, other.w, other.height()}) {
						t.Errorf("templates %d and %d overlap", c.number, other.number)
					}
				}
				for _, p := range c.cut.points {
					if x, y := p.X.Float64(), p.Y.Float64(); x < c.tiles[0].x || x > c.tiles[0].x+c.tiles[0].w || y < c.tiles[0].y || y > c.tiles[0].y+c.tiles[0].h {
						t.Errorf("corner %v is past its template %+v", p, c.tiles[0])
					}
				}
			}
		}
		slices.Sort(found)
		for i, c := range all {
			if i >= len(found) || found[i] != c.number {
				t.Fatalf("templates %v on the pages, want each of %d once", found, len(all))
			}
		}
	})
}

// TestTwoBoxesShareAPage: a box of one gang with its gap is not worth a page.
func TestTwoBoxesShareAPage(t *testing.T) {
	c := cutLine{closed: true, piece: plan.Piece{Width: in("48"), Height: in("48")}}
	c.points = ring("10", "10", "12 3/8", "10", "12 3/8", "13 7/8", "10", "13 7/8")
	for _, paper := range Papers() {
		one, ok := c.small(paper, kitchen().Profile, 1)
		if !ok {
			t.Fatalf("%s: too large to share", paper.Name)
		}
		if pages := share([]tiling{one, one, one, one}, paper); len(pages) != 1 {
			t.Errorf("%s: four boxes take %d pages, want 1", paper.Name, len(pages))
		}
	}
}
