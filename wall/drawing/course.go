package drawing

import "example.com/groovewright/wall/plan"

// heading is a direction on the plan view, x to the right and y down.
type heading struct{ x, y float64 }

// turn turns to the right, or for an outside corner to the left, by a right angle. The survey has no
// angles of corners.
func (h heading) turn(outside bool) heading {
	if outside {
		return heading{h.y, -h.x}
	}
	return heading{-h.y, h.x}
}

// course is where one run lies on the plan view.
type course struct {
	run   plan.Run
	x, y  float64 // its left end
	along heading
	long  float64 // in the same unit as x and y
}

// at is the point so far along the run and so far into the room, which is the side of the wall that
// one stands on.
func (c course) at(along, into float64) (x, y float64) {
	room := c.along.turn(false)
	return c.x + c.along.x*along + room.x*into, c.y + c.along.y*along + room.y*into
}

// line is the path through some points, each so far along the run and into the room.
func (c course) line(points ...[2]float64) string {
	path := ""
	for i, p := range points {
		command := "L"
		if i == 0 {
			command = "M"
		}
		x, y := c.at(p[0], p[1])
		path += pen(command, x, y)
	}
	return path
}

// band is the path round a strip along the wall: from and to at the wall, and as far into the room
// as deep from where it starts to where it ends there.
func (c course) band(from, to, deep, deepFrom, deepTo float64) string {
	return c.line([2]float64{from, 0}, [2]float64{to, 0}, [2]float64{deepTo, deep}, [2]float64{deepFrom, deep}) + "Z"
}

// before is the box of a size that stands before a run: its near side into the room by so much,
// centered so far along it.
func (c course) before(along, into, w, h float64) box {
	room := c.along.turn(false)
	x, y := c.at(along, into-10)
	return centered(x+room.x*w/2, y+room.y*h/2, w, h)
}
