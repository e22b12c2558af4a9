// Package book puts a plan into words: plain text, in short for the workshop ([Text]) or with what
// stands behind it ([Explained]), tables as CSV, and the job book as files: one page to read, a picture
// of each run, each sheet and each piece that is no plain rectangle, and full-size templates.
//
// The pages need neither network nor script, follow the reader's choice of light or dark, and print
// on Letter and A4. No page scrolls sideways on a phone. Each table has its headings. They go
// through html/template, which escapes every name.
package book
