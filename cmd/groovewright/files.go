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

// writeFiles writes all the files into a folder, which is made if need be. Each is written whole
// under another name and only then renamed, after the last of them has been written: half a file is
// never left, and when one cannot be written, none is changed.
func writeFiles(dir string, files []file) (err error) {
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return fmt.Errorf("cannot make the output folder: %w", err)
	}
	var list bytes.Buffer
	list.WriteString("Written by groovewright; the next plan written here replaces these files.\n")
	for _, f := range files {
		fmt.Fprintln(&list, f.name)
	}
	old := listed(dir)
	files = append(files[:len(files):len(files)], file{listName, list.Bytes()})

	temporary := make([]string, 0, len(files))
	defer func() {
		for _, name := range temporary {
			os.Remove(name) // what was renamed is no longer there
		}
	}()
	for _, f := range files {
		name, err := writeTemporary(dir, f)
		if err != nil {
			return fmt.Errorf("cannot write %s: %w", filepath.Join(dir, f.name), err)
		}
		temporary = append(temporary, name)
	}
	kept := make(map[string]bool)
	for i, f := range files {
		if err := os.Rename(temporary[i], filepath.Join(dir, f.name)); err != nil {
			return fmt.Errorf("cannot write %s: %w", filepath.Join(dir, f.name), err)
		}
		kept[f.name] = true
	}
	for _, name := range old {
		if !kept[name] {
			os.Remove(filepath.Join(dir, name)) // a stale drawing that cannot be removed is no failure
		}
	}
	return nil
}

// writeFile writes one file so that half of it is never left.
func writeFile(name string, data []byte) error {
	temporary, err := writeTemporary(filepath.Dir(name), file{filepath.Base(name), data})
	if err == nil {
		if err = os.Rename(temporary, name); err != nil {
			os.Remove(temporary)
		}
	}
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", name, err)
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
