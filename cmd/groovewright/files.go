package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"

	"example.com/groovewright/wall/book"
)

// listName is the file in an output folder that lists what was written there, so that the next plan
// can take away the drawings of sheets and pieces that it no longer has.
const listName = "files.txt"

// writeFiles writes all the files into a folder, which is made if need be, and takes away what the
// plan before wrote there and this one has not.
func writeFiles(dir string, files []book.File) error {
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return fmt.Errorf("cannot make the output folder: %w", err)
	}
	before, list := listed(dir), "Written by groovewright; the next plan written here replaces these files.\n"
	for _, f := range files {
		list += f.Name + "\n"
	}
	files = append(slices.Clone(files), book.File{Name: listName, Body: []byte(list)})
	if err := replace(dir, files...); err != nil {
		return err
	}
	for _, name := range before {
		if !slices.ContainsFunc(files, func(f book.File) bool { return f.Name == name }) {
			os.Remove(filepath.Join(dir, name)) // a stale drawing that cannot be removed is no failure
		}
	}
	return nil
}

// replace writes files into a folder. Each is written whole under another name and only then
// renamed, after the last of them has been written: half a file is never left, and when one cannot
// be written, none is changed.
func replace(dir string, files ...book.File) error {
	temporary := make([]string, len(files))
	defer func() {
		for _, name := range temporary {
			os.Remove(name) // what was renamed is no longer there
		}
	}()
	for _, step := range []func(i int, f book.File) error{
		func(i int, f book.File) (err error) { temporary[i], err = writeTemporary(dir, f); return err },
		func(i int, f book.File) error { return os.Rename(temporary[i], filepath.Join(dir, f.Name)) },
	} {
		for i, f := range files {
			if err := step(i, f); err != nil {
				return fmt.Errorf("cannot write %s: %w", filepath.Join(dir, f.Name), err)
			}
		}
	}
	return nil
}

// writeTemporary writes the data of a file under a name that is not its own, which may stand there
// even when that fails.
func writeTemporary(dir string, f book.File) (name string, err error) {
	t, err := os.CreateTemp(dir, "."+f.Name+".*")
	if err != nil {
		return "", err
	}
	_, err = t.Write(f.Body)
	return t.Name(), errors.Join(err, t.Chmod(0o644), t.Close())
}

// plainName is a line of the list that names a file of the kinds that a plan writes.
var plainName = regexp.MustCompile(`(?m)^[\w-]+\.(svg|html|txt|json)$`)

// listed returns the names that an earlier plan wrote into a folder. Only plain ones are believed.
func listed(dir string) []string {
	data, _ := os.ReadFile(filepath.Join(dir, listName)) // where there is no list, nothing was written
	return plainName.FindAllString(string(data), -1)
}
