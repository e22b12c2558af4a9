// Package folder writes the files of a plan so that they always belong together on disk.
package folder

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"syscall"
	"time"

	"example.com/groovewright/wall/book"
)

// listName is the file in an output folder that lists what was written there, so that the next plan
// can take away the drawings of sheets and pieces that it no longer has.
const listName = "files.txt"

// Write makes a folder hold exactly these files, beside what somebody else put there. They are
// written into a new folder beside it, which then takes its place at once: whenever the program is
// killed, the folder has the whole of one plan or the whole of the other. Where the system cannot
// swap two folders at once, as only Linux can, there is a moment without any; then the one before
// lies beside it. What a killed program left beside is taken away by a later Write, an hour after.
//
// The folder must not be the current one or hold it. Programs that write at once do not mix: the
// last one wins.
func Write(dir string, files []book.File) error {
	target, err := outputFolder(dir)
	if err != nil {
		return err
	}
	parent, prefix := filepath.Dir(target), "."+filepath.Base(target)+".groovewright-"
	beside, err := os.MkdirTemp(parent, prefix+"*")
	if err != nil {
		return fmt.Errorf("cannot make the output folder: %w", err)
	}
	fresh := filepath.Join(beside, "new")
	err = fill(fresh, target, files)
	if err == nil {
		syncFolder(fresh)
		err = swap(fresh, target)
		syncFolder(parent)
	}
	tidy(beside, target, files)
	entries, _ := os.ReadDir(parent)
	for _, e := range entries { // what a run left here that was killed
		if info, err := e.Info(); err == nil && strings.HasPrefix(e.Name(), prefix) && time.Since(info.ModTime()) > time.Hour {
			tidy(filepath.Join(parent, e.Name()), target, files)
		}
	}
	return err
}

// outputFolder returns where a folder is or will be, links followed, and makes the one around it.
func outputFolder(dir string) (target string, err error) {
	if target, err = filepath.Abs(dir); err != nil {
		return "", err
	}
	if _, err := os.Lstat(target); err == nil {
		if target, err = filepath.EvalSymlinks(target); err != nil {
			return "", fmt.Errorf("cannot use the output folder: %w", err)
		}
		if info, err := os.Stat(target); err != nil || !info.IsDir() {
			return "", fmt.Errorf("the output folder %s is a file: give another name", dir)
		}
	}
	here, err := os.Getwd()
	if err == nil {
		here, err = filepath.EvalSymlinks(here)
	}
	if way, wrong := filepath.Rel(target, here); err == nil && wrong == nil && filepath.IsLocal(way) {
		return "", fmt.Errorf("the output folder %s is or holds the current folder: give a folder of its own", dir)
	}
	if err := os.MkdirAll(filepath.Dir(target), 0o777); err != nil {
		return "", fmt.Errorf("cannot make the output folder: %w", err)
	}
	return target, nil
}

// fill makes a folder with the files and with what is not the plan's in the folder whose place it takes.
func fill(fresh, target string, files []book.File) error {
	list := "Written by groovewright; the next plan written here replaces these files.\n"
	for _, f := range files {
		list += f.Name + "\n"
	}
	if err := os.Mkdir(fresh, 0o777); err != nil {
		return fmt.Errorf("cannot make the output folder: %w", err)
	}
	for _, some := range [][]book.File{{{Name: listName, Body: []byte(list)}}, files} { // the list first: tidy goes by it
		if err := write(fresh, target, some); err != nil {
			return err
		}
	}
	others, err := os.ReadDir(target)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	} else if err != nil {
		return err
	}
	info, err := os.Stat(target)
	if err == nil {
		err = os.Chmod(fresh, info.Mode().Perm())
	}
	ours := listed(target)
	for _, e := range others {
		if !slices.Contains(ours, e.Name()) {
			os.Link(filepath.Join(target, e.Name()), filepath.Join(fresh, e.Name())) // what cannot be linked is moved by tidy
		}
	}
	return err
}

// write writes files into a new folder and waits until they are on the disk, so that a power cut after
// the swap loses nothing. Many wait at once: one by one they take ten times as long.
func write(fresh, target string, files []book.File) error {
	const atOnce = 16
	faults := make([]error, len(files))
	var writers sync.WaitGroup
	for first := range atOnce {
		writers.Go(func() {
			for i := first; i < len(files); i += atOnce {
				if err := writeSynced(filepath.Join(fresh, files[i].Name), files[i].Body); err != nil {
					faults[i] = fmt.Errorf("cannot write %s: %w", filepath.Join(target, files[i].Name), err)
				}
			}
		})
	}
	writers.Wait()
	return cmp.Or(faults...)
}

func writeSynced(name string, body []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o666)
	if err == nil {
		_, err = f.Write(body)
		if wrong := f.Sync(); err == nil && !errors.Is(wrong, syscall.EINVAL) { // not every file system can
			err = wrong
		}
		err = cmp.Or(err, f.Close())
	}
	if inner := errors.Unwrap(err); inner != nil {
		return inner // the name that people know is said beside it
	}
	return err
}

// syncFolder writes the names in a folder to the disk, where the system can do that.
func syncFolder(name string) {
	if f, err := os.Open(name); err == nil {
		_ = f.Sync()
		f.Close()
	}
}

// swap puts a folder in the place of another, which may stand there or not, and that in its own.
func swap(fresh, target string) error {
	err := os.Rename(fresh, target)
	if err == nil {
		return nil // there was none, or it was empty
	}
	if err = exchange(fresh, target); !errors.Is(err, errors.ErrUnsupported) {
		return err
	}
	return swapInSteps(fresh, target)
}

// swapInSteps does what swap does, with a moment in which neither stands in its place.
func swapInSteps(fresh, target string) error {
	old := fresh + ".old"
	if err := os.Rename(target, old); err != nil {
		return err
	}
	if err := os.Rename(fresh, target); err != nil {
		return errors.Join(err, os.Rename(old, target))
	}
	return nil
}

// tidy takes away a folder beside the target: a plan that was replaced, or was not finished. What is
// somebody else's goes to the target unless it is there.
func tidy(beside, target string, files []book.File) {
	folders, _ := filepath.Glob(filepath.Join(beside, "new*"))
	for _, folder := range folders {
		ours := listed(folder)
		for _, f := range files {
			ours = append(ours, f.Name)
		}
		entries, _ := os.ReadDir(folder)
		for _, e := range entries {
			from, to := filepath.Join(folder, e.Name()), filepath.Join(target, e.Name())
			a, wrong := os.Lstat(from)
			b, err := os.Lstat(to)
			switch {
			case e.Name() == listName: // the last, as it says what else is the plan's
			case slices.Contains(ours, e.Name()) || wrong == nil && err == nil && os.SameFile(a, b):
				os.Remove(from)
			case errors.Is(err, fs.ErrNotExist):
				os.Rename(from, to)
			}
		}
		os.Remove(filepath.Join(folder, listName))
		os.Remove(folder) // where anything is left in it, it stays
	}
	os.Remove(beside)
}

// WriteFile writes one file, whole or not at all. It replaces plain files and links alone.
func WriteFile(name string, body []byte) error {
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		return fmt.Errorf("%s is no plain file: give another name", name)
	}
	beside, err := os.MkdirTemp(filepath.Dir(name), ".groovewright-*")
	if err != nil {
		return err
	}
	defer os.RemoveAll(beside)
	fresh := filepath.Join(beside, "new")
	if err := writeSynced(fresh, body); err != nil {
		return fmt.Errorf("cannot write %s: %w", name, err)
	}
	return os.Rename(fresh, name)
}

// plainName is a line of the list that names a file of the kinds that a plan writes.
var plainName = regexp.MustCompile(`(?m)^[\w-]+\.(svg|html|txt|json)$`)

// listed returns the names that an earlier plan wrote into a folder. Only plain ones are believed.
func listed(dir string) []string {
	data, _ := os.ReadFile(filepath.Join(dir, listName)) // where there is no list, nothing was written
	return plainName.FindAllString(string(data), -1)
}
