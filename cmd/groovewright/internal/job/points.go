package job

import (
	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// Taped is a point that the file gives by distances from known points.
type Taped struct {
	Path    string // of the point in the file
	Run     int    // index of the run
	At      cutout.Point
	Closing fraction.Length // how far the distances fail to meet in one point
}

// point reads a corner.
func (r *reader) point(n *node, j *Job) cutout.Point { return r.pair(n) }
