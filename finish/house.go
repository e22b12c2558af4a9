package finish

import (
	"math/big"

	"example.com/groovewright/fraction"
)

// house is House, read.
type house struct {
	material string
	damp     bool
	backing  string
	wall     *big.Rat
	studs    *big.Rat
	datum    *big.Rat
	guessed  bool // the datum is taken to be the floor; see [Work.onFloor]
}

func (r *reader) house(h, d House) house {
	const path = "house."
	datum, guessed := d.Datum, h.Datum == "" && r.floor
	if guessed {
		datum = "0"
	}
	wall, backing := d.Wall, r.word(path+"backing", h.Backing, backings...)
	if backing == "studs" {
		wall = "0"
	}
	return house{
		guessed:  guessed,
		material: r.word(path+"material", h.Material, materials...),
		damp:     h.Damp,
		backing:  backing,
		wall:     r.length(path+"wall", h.Wall, wall, fraction.Length{}),
		studs:    r.length(path+"studs", h.Studs, d.Studs, fraction.Inches(1)),
		datum:    r.length(path+"datum", h.Datum, datum, fraction.Length{}),
	}
}

var (
	materials = []string{"mdf", "hardboard", "plywood", "solid wood", "plastic", "noncombustible"}
	backings  = []string{"gypsum", "plaster", "studs", "masonry"}
)

// floor says whether the runs stand on the floor and not on a counter.
func (h house) floor() bool { return h.datum.Sign() == 0 }

// beneath returns the words for work over a counter or over the floor.
func (h house) beneath(counter, floor string) string {
	if h.floor() {
		return floor
	}
	return counter
}

// combustible says whether a box behind the panels has to come out to their face.
func (h house) combustible() bool { return h.material != "noncombustible" }

// woodFibre says whether sawing the panels makes wood dust.
func (h house) woodFibre() bool { return h.combustible() && h.material != "plastic" }

// CounterReach is the most that panels above a counter reach up as a rule, since wall cabinets hang about 18 in above it
// and a hood about 30 in; judgement.
var CounterReach = fraction.Inches(30)

// onFloor guesses whether the line that the runs are measured from is the floor: every run reaches higher than [CounterReach]
// above it, and nothing is cooked at them. Judgement; a job that gives the datum is not guessed at.
func (w Work) onFloor() bool { return CounterReach.Less(w.Low) && !w.Cooking }

// readFor returns a reader of the materials of this work.
func readFor(w Work) *reader {
	return &reader{units: w.Units, boards: w.Profile.Boards, floor: w.onFloor()}
}
