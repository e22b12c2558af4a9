package drawing

import "example.com/groovewright/wall/plan"

// heading is a direction on the plan view, x to the right and y down.
type heading struct{ x, y float64 }

// turn turns to the right, or for an outside corner to the left, by a right
// angle. The survey has no angles of corners.
func (h heading) turn(outside bool) heading {
	if outside {
		return heading{h.y, -h.x}
	}
	return heading{-h.y, h.x}
}

// room is the side of the wall that one stands on.
func (h heading) room() heading { return heading{-h.y, h.x} }

// course is where one run lies on the plan view.
type course struct {
	run    plan.Run
	index  int
	x, y   float64 // its left end
	along  heading
	length float64 // in the same unit as x and y
}

// at is the point so far along the run and so far into the room.
func (c course) at(along, into float64) (x, y float64) {
	room := c.along.room()
	return c.x + c.along.x*along + room.x*into, c.y + c.along.y*along + room.y*into
}

// ring adds a four-sided shape to a path, its corners so far along the run and
// into the room.
func (c course) ring(p *path, corners [4][2]float64) {
	for i, at := range corners {
		x, y := c.at(at[0], at[1])
		if i == 0 {
			p.move(x, y)
		} else {
			p.line(x, y)
		}
	}
	p.shut()
}

// before is the box of a size that stands before a run: its near side into the
// room by so much, centred so far along it.
func (c course) before(along, into, w, h float64) box {
	room := c.along.room()
	x, y := c.at(along, into-10)
	return around(x+room.x*w/2, y+room.y*h/2, w, h)
}
