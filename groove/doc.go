// Package groove knows one repeat of a pattern of grooves, beads and flats.
package groove
