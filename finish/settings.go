package finish

import (
	"errors"
	"fmt"
	"math/big"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
)

// settings are the Materials, read.
type settings struct {
	house     house
	paint     painting
	sealant   sealing
	adhesive  gluing
	nails     nailing
	furring   stripping
	electric  electric
	tape      masking
	sheeting  covering
	trim      trimming
	extras    []money.Amount // prices
	tax       *big.Rat
	remainder *big.Rat // LeftoverWorth
}

// read reads every field of m.
func (r *reader) read(m Materials) settings {
	d := Defaults(r.units)
	var s settings
	s.house = r.house(m.House, d.House)
	s.paint = r.painting(m.Paint, d.Paint)
	s.sealant = r.sealing(m.Sealant, d.Sealant)
	s.adhesive = r.gluing(m.Adhesive, d.Adhesive)
	s.nails = r.nailing(m.Nails, d.Nails)
	s.furring = r.stripping(m.Furring, d.Furring)
	s.electric = r.electric(m, d)
	s.tape = r.masking(m.Tape, d.Tape)
	s.sheeting = r.covering(m.Sheeting, d.Sheeting)
	s.trim = r.trimming(m.Trim, d.Trim)
	s.extras = r.extras(m.Extras)
	s.tax = r.share("Tax", m.Tax, d.Tax)
	s.remainder = r.number("LeftoverWorth", m.LeftoverWorth, d.LeftoverWorth, 0, 1)
	return s
}

// Validate returns nil, or everything that is wrong with the fields in a job with these units: an error that wraps one
// *fault.Fault for each, in the order of the fields.
func (m Materials) Validate(units fraction.Unit) error {
	r := &reader{units: units}
	r.read(m)
	return errors.Join(r.faults...)
}

// house is House, read.
type house struct {
	material Material
	damp     bool
	backing  Backing
	wall     *big.Rat
	studs    *big.Rat
	datum    *big.Rat
	guessed  bool // the datum is taken to be the floor; see [Work.onFloor]
}

func (r *reader) house(h, d House) house {
	read := house{damp: h.Damp, guessed: h.Datum == "" && r.floor}
	read.material = known(r, "House.Material", h.Material)
	read.backing = known(r, "House.Backing", h.Backing)
	if read.guessed {
		d.Datum = "0"
	}
	if read.backing == BareStuds {
		d.Wall = "0"
	}
	read.wall = r.length("House.Wall", h.Wall, d.Wall, fraction.Length{})
	read.studs = r.length("House.Studs", h.Studs, d.Studs, fraction.Inches(1))
	read.datum = r.length("House.Datum", h.Datum, d.Datum, fraction.Length{})
	return read
}

// combustible reports whether a box behind the panels has to come out to their face.
func (h house) combustible() bool { return h.material != Noncombustible }

// woodFiber reports whether sawing the panels makes wood dust.
func (h house) woodFiber() bool { return h.combustible() && h.material != Plastic }

// extras reads the prices of what the job asks for on top.
func (r *reader) extras(given []Extra) []money.Amount {
	var prices []money.Amount
	seen := map[string]bool{}
	for i, e := range given {
		path := fmt.Sprintf("Extras[%d]", i)
		if strings.TrimSpace(e.Item) == "" || seen[e.Item] {
			r.fault(path+".Item", e.Item, "what to buy, such as brush, each once")
		}
		seen[e.Item] = true
		if e.Buy < 1 || e.Buy > MaxPacks {
			r.fault(path+".Buy", fmt.Sprint(e.Buy), fmt.Sprintf("1 to %d", MaxPacks))
		}
		prices = append(prices, r.price(path+".Price", e.Price))
	}
	return prices
}
