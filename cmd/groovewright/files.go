package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// A file is a complete result; name is a plain file name.
type file struct {
	name string
	data []byte
}

// listName is the file in an output folder that lists what was written there, so that the next plan
// can take away the drawings of sheets and pieces that it no longer has.
const listName = "files.txt"

// writeFiles writes all the files into a folder, which is made if need be, and takes away what the
// plan before wrote there and this one has not.
func writeFiles(dir string, files []file) error {
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return fmt.Errorf("cannot make the output folder: %w", err)
	}
	stale := map[string]bool{}
	for _, name := range listed(dir) {
		stale[name] = true
	}
	var list bytes.Buffer
	list.WriteString("Written by groovewright; the next plan written here replaces these files.\n")
	for _, f := range files {
		fmt.Fprintln(&list, f.name)
		delete(stale, f.name)
	}
	delete(stale, listName)
	if err := replace(dir, append(files[:len(files):len(files)], file{listName, list.Bytes()})...); err != nil {
		return err
	}
	for name := range stale {
		os.Remove(filepath.Join(dir, name)) // a stale drawing that cannot be removed is no failure
	}
	return nil
}

// replace writes files into a folder. Each is written whole under another name and only then
// renamed, after the last of them has been written: half a file is never left, and when one cannot
// be written, none is changed.
func replace(dir string, files ...file) error {
	temporary := make([]string, len(files))
	defer func() {
		for _, name := range temporary {
			os.Remove(name) // what was renamed is no longer there
		}
	}()
	for _, step := range []func(i int, f file) error{
		func(i int, f file) (err error) { temporary[i], err = writeTemporary(dir, f); return err },
		func(i int, f file) error { return os.Rename(temporary[i], filepath.Join(dir, f.name)) },
	} {
		for i, f := range files {
			if err := step(i, f); err != nil {
				return fmt.Errorf("cannot write %s: %w", filepath.Join(dir, f.name), err)
			}
		}
	}
	return nil
}

// writeTemporary writes the data of a file under a name that is not its own.
func writeTemporary(dir string, f file) (name string, err error) {
	t, err := os.CreateTemp(dir, "."+f.name+".*")
	if err != nil {
		return "", err
	}
	_, err = t.Write(f.data)
	err = errors.Join(err, t.Chmod(0o644), t.Close())
	if err != nil {
		os.Remove(t.Name())
		return "", err
	}
	return t.Name(), nil
}

// listed returns the names that an earlier plan wrote into a folder. Only plain names of the kinds
// that a plan writes are believed.
func listed(dir string) []string {
	data, err := fs.ReadFile(os.DirFS(dir), listName)
	if err != nil {
		return nil
	}
	var names []string
	for lines := bufio.NewScanner(bytes.NewReader(data)); lines.Scan(); {
		name := lines.Text()
		switch filepath.Ext(name) {
		case ".svg", ".html", ".txt", ".json":
			if filepath.Base(name) == name && !strings.HasPrefix(name, ".") {
				names = append(names, name)
			}
		}
	}
	return names
}
