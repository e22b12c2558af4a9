package fractiontest

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"time"
)

// ProcessorTime returns how long a process has had a processor, 0 where the system has no /proc to
// say so.
func ProcessorTime(pid int) time.Duration {
	data, _ := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	var user, system int64
	if at := bytes.LastIndexByte(data, ')'); at >= 0 { // the name before it may hold spaces
		fmt.Sscan(strings.Join(strings.Fields(string(data[at+1:]))[11:13], " "), &user, &system)
	}
	return time.Duration(user+system) * (time.Second / 100) // Linux gives hundredths, see proc(5)
}
