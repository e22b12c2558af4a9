// Package book puts a plan into words: plain text, and the job book as files: one page to read, a
// picture of each run, sheet and odd piece, and full-size templates.
//
// The pages need neither network nor script, follow the reader's choice of light or dark, and print
// on Letter and A4. Nothing slides sideways on a phone. Each table has its headings. They go
// through html/template, which escapes every name.
package book
