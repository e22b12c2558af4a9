package finish

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"example.com/groovewright/fraction"
)

// masking is Tape, read.
type masking struct {
	seal, paint int64 // lines
	waste       *big.Rat
	offers      []offer
}

func (r *reader) masking(t, d Tape) masking {
	const path = "tape."
	return masking{
		seal:   r.times(path+"seal_lines", t.SealLines, d.SealLines),
		paint:  r.times(path+"paint_lines", t.PaintLines, d.PaintLines),
		waste:  r.share(path+"waste", t.Waste, d.Waste),
		offers: r.rolls(path+"rolls", t.Rolls, d.Rolls),
	}
}

// rolls reads packs of a length.
func (r *reader) rolls(path string, given, otherwise []Roll) []offer {
	return offers(r, path, given, otherwise, r.roll)
}

func (r *reader) roll(path string, roll Roll) offer {
	return offer{roll.Name, r.length(path+".length", roll.Length, "", positive), r.price(path+".price", roll.Price)}
}

// bare says at which joints something stays bare beside the panels, and is taped off for the last coat.
var bare = []JointKind{CounterLine, CabinetLine, EndJoint, WindowJoint}

// mask lists the masking tape.
func (b *builder) mask() {
	t := b.settings.tape
	sealed, beside := new(big.Rat), new(big.Rat)
	for _, j := range b.work.Joints {
		if b.settings.sealant.beads[j.Kind].form != "none" {
			sealed = add(sealed, j.Length.Rat())
		}
		if slices.Contains(bare, j.Kind) {
			beside = add(beside, j.Length.Rat())
		}
	}
	if b.settings.paint.top.after+b.settings.paint.primer.after == 0 {
		beside = new(big.Rat)
	}
	need := more(add(mul(whole(t.seal), sealed), mul(whole(t.paint), beside)), t.waste)
	how := fmt.Sprintf("%s sealed × %d + %s beside what stays bare × %d%s", b.run(sealed), t.seal, b.run(beside), t.paint, wasted(t.waste))
	b.buy("masking tape", need, b.run, t.offers, how)
}

// covering is Sheeting, read.
type covering struct {
	none   bool
	reach  *big.Rat
	offers []offer
}

func (r *reader) covering(s, d Sheeting) covering {
	const path = "sheeting."
	return covering{
		none:  s.None,
		reach: r.length(path+"reach", s.Reach, d.Reach, fraction.Length{}),
		offers: offers(r, path+"sheets", s.Sheets, d.Sheets, func(path string, sheet Cover) offer {
			return offer{sheet.Name, r.surface(path+".size", sheet.Size), r.price(path+".price", sheet.Price)}
		}),
	}
}

// cover lists the sheeting over counter and floor.
func (b *builder) cover() {
	c := b.settings.sheeting
	if c.none {
		return
	}
	need := mul(b.work.Width.Rat(), c.reach)
	b.buy(b.settings.house.beneath("sheeting for counter and floor", "sheeting for the floor"), need, b.area, c.offers, fmt.Sprintf("runs %s × %s from the wall", b.run(b.work.Width.Rat()), b.small(c.reach)))
}

// trimming is Trim, read.
type trimming struct {
	none  bool
	stick offer
	allow *big.Rat
}

func (r *reader) trimming(t, d Trim) trimming {
	const path = "trim."
	stick := t.Stick
	if stick == (Roll{}) {
		stick = d.Stick
	}
	r.named(path+"stick", stick.Name)
	return trimming{
		none:  t.None,
		stick: r.roll(path+"stick", stick),
		allow: r.length(path+"allow", t.Allow, d.Allow, fraction.Length{}),
	}
}

// trims lists the strips over panel edges that are seen, those of flat ends apart from those of outside corners.
func (b *builder) trims() {
	if b.settings.trim.none {
		return
	}
	b.trimsOf("edge trim", false)
	b.trimsOf("corner trim", true)
}

func (b *builder) trimsOf(item string, corner bool) {
	t := b.settings.trim
	var lengths []*big.Rat
	var ends []string
	total, joined := new(big.Rat), int64(0)
	for _, e := range b.work.Ends {
		if e.Length.IsZero() || e.Corner != corner {
			continue
		}
		l := add(e.Length.Rat(), t.allow)
		total = add(total, e.Length.Rat())
		ends = append(ends, strings.TrimSpace(e.Name+" "+b.small(e.Length.Rat())))
		if l.Cmp(t.stick.size) > 0 {
			full := count(quo(l, t.stick.size)) - 1
			joined += full
			l = sub(l, mul(whole(full), t.stick.size))
			b.warn(e.Name, "its trim is longer than a strip and gets a joint")
		}
		lengths = append(lengths, l)
	}
	if len(lengths) == 0 {
		return
	}
	n := joined + sticks(lengths, t.stick.size)
	number, unit, _ := strings.Cut(b.run(total), " ")
	how := fmt.Sprintf("%s, each from one strip with %s for its cuts", strings.Join(ends, ", "), b.small(t.allow))
	b.row(Row{item, number, unit, int(n), t.stick.name, t.stick.price, nil, how})
}

// exactSticks is the greatest number of strips that are packed exactly.
const exactSticks = 10

// sticks returns how many sticks the lengths are cut from, none of them longer than a stick: the least number up to
// exactSticks lengths, and beyond as many as if each were as long as the longest.
func sticks(lengths []*big.Rat, stick *big.Rat) int64 {
	if len(lengths) > exactSticks {
		longest := slices.MaxFunc(lengths, func(a, b *big.Rat) int { return a.Cmp(b) })
		each := new(big.Int).Quo(quo(stick, longest).Num(), quo(stick, longest).Denom()).Int64()
		return count(quo(whole(int64(len(lengths))), whole(each)))
	}
	best := len(lengths)
	fill(slices.Clone(lengths), stick, nil, &best)
	return int64(best)
}

// fill puts the first length into each stick that has room, or into a new one, and goes on with the others.
func fill(lengths []*big.Rat, stick *big.Rat, rests []*big.Rat, best *int) {
	if len(rests) >= *best {
		return
	}
	if len(lengths) == 0 {
		*best = len(rests)
		return
	}
	l := lengths[0]
	for i, rest := range rests {
		if rest.Cmp(l) >= 0 {
			next := slices.Clone(rests)
			next[i] = sub(rest, l)
			fill(lengths[1:], stick, next, best)
		}
	}
	fill(lengths[1:], stick, append(slices.Clone(rests), sub(stick, l)), best)
}
