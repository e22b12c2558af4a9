package drawing

import "example.com/groovewright/wall/plan"

// course is where one run lies on the plan view. Places and directions there are complex numbers, x to
// the right and y down, so that a right angle to the right is a product with i.
type course struct {
	run   plan.Run
	start complex128 // its left end
	along complex128 // its direction, of length 1
	long  float64    // in the same unit as start
}

// at is the place that lies so far along the run and so far into the room, which is the side of the
// wall that one stands on.
func (c course) at(along, into float64) complex128 { return c.start + c.along*complex(along, into) }

// line is the path through some places, each along the run and into the room.
func (c course) line(points ...complex128) string {
	path, command := "", "M"
	for _, p := range points {
		place := c.at(real(p), imag(p))
		path += pen(command, real(place), imag(place))
		command = "L"
	}
	return path
}

// band is the path round a strip along the wall: from and to at the wall, and as far into the room
// as deep from where it starts to where it ends there.
func (c course) band(from, to, deep, deepFrom, deepTo float64) string {
	return c.line(complex(from, 0), complex(to, 0), complex(deepTo, deep), complex(deepFrom, deep)) + "Z"
}

// before is the box of a size that stands before a run: its near side into the room by so much,
// centered so far along it; behind, with the sign of into, beyond the wall.
func (c course) before(along, into, w, h float64) box {
	p, room := c.at(along, into), c.along*1i
	if into < 0 {
		room = -room
	}
	return centered(real(p)+real(room)*w/2, imag(p)+imag(room)*h/2, w, h)
}
