// Package fraction holds exact lengths, reads and writes them as a tape does, and rounds them by name.
package fraction
