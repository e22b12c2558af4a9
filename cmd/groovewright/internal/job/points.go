package job

import "example.com/groovewright/cutout"

// point reads a corner.
func (r *reader) point(n *node, j *Job) cutout.Point { return r.pair(n) }
