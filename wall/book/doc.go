// Package book puts a plan into words: plain text, and the job book as files.
package book
