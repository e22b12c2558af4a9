package folder

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"syscall"
	"testing"

	"example.com/groovewright/wall/book"
)

// On a full disk and on one that is read-only there is an error, nothing changes and nothing is left.
// Only root may mount such disks.
func TestNoRoom(t *testing.T) {
	for name, readOnly := range map[string]uintptr{"full": 0, "read-only": syscall.MS_RDONLY} {
		t.Run(name, func(t *testing.T) {
			disk := t.TempDir()
			if err := syscall.Mount("none", disk, "tmpfs", 0, "size=128k"); err != nil {
				t.Skip(err)
			}
			defer syscall.Unmount(disk, 0)
			dir := filepath.Join(disk, "kitchen")
			err := errors.Join(os.Mkdir(dir, 0o755), os.WriteFile(filepath.Join(dir, "notes.txt"), []byte("mine"), 0o644), Write(dir, version(0)))
			if err == nil && readOnly != 0 {
				err = syscall.Mount("none", disk, "tmpfs", syscall.MS_REMOUNT|readOnly, "")
			}
			if err != nil {
				t.Fatal(err)
			}
			large := append(version(4), book.File{Name: "room.svg", Body: bytes.Repeat([]byte("x"), 128<<10)})
			want := map[uintptr]error{0: syscall.ENOSPC, syscall.MS_RDONLY: syscall.EROFS}[readOnly]
			for what, err := range map[string]error{"the folder": Write(dir, large), "a new one": Write(filepath.Join(disk, "new"), large),
				"a file": WriteFile(filepath.Join(dir, "notes.txt"), large[len(large)-1].Body)} {
				if !errors.Is(err, want) {
					t.Errorf("%s: %v, want %v", what, err, want)
				}
			}
			if n, err := whole(dir); n != 0 || err != nil {
				t.Errorf("plan %d: %v", n, err)
			}
			if got := inFolder(t, disk); !slices.Equal(got, []string{"kitchen"}) {
				t.Errorf("the disk has %q", got)
			}
		})
	}
}
