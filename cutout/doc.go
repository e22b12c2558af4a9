// Package cutout holds exact shapes with holes, and cuts them.
package cutout
