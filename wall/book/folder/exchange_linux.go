package folder

import (
	"errors"
	"runtime"
	"syscall"
	"unsafe"
)

// exchange swaps two folders at once with renameat2(2), which package syscall does not have.
func exchange(a, b string) error {
	number := map[string]uintptr{"amd64": 316, "386": 353, "arm": 382, "arm64": 276, "riscv64": 276}[runtime.GOARCH]
	from, err := syscall.BytePtrFromString(a)
	to, wrong := syscall.BytePtrFromString(b)
	if number == 0 || err != nil || wrong != nil {
		return errors.ErrUnsupported
	}
	const currentFolder, renameExchange = ^uintptr(99), 2 // AT_FDCWD is -100
	_, _, code := syscall.Syscall6(number, currentFolder, uintptr(unsafe.Pointer(from)), currentFolder, uintptr(unsafe.Pointer(to)), renameExchange, 0)
	switch code {
	case 0:
		return nil
	case syscall.EINVAL: // the file system cannot do it
		return errors.ErrUnsupported
	}
	return code
}
