package book

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"time"
)

// printer is one browser that prints page after page, driven over two pipes by its DevTools protocol:
// each message is JSON and ends with a zero byte. To start one takes as long as to print a page.
type printer struct {
	lock   sync.Mutex
	in     io.Writer
	out    *bufio.Reader
	page   string // the session of the page
	number int
}

func newPrinter(t *testing.T) *printer {
	t.Helper()
	toBrowser, in, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	out, fromBrowser, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	profile, err := os.MkdirTemp("", "printer")
	if err != nil {
		t.Fatal(err)
	}
	command := browser(t, profile, "--remote-debugging-pipe", "about:blank")
	command.ExtraFiles = []*os.File{toBrowser, fromBrowser}
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	toBrowser.Close()
	fromBrowser.Close()
	p := &printer{in: in, out: bufio.NewReaderSize(out, 1<<20)}
	t.Cleanup(func() {
		p.call("Browser.close", nil, nil)
		in.Close()
		command.Wait() // it was asked to end
		out.Close()
		for range 200 { // its child processes end a little later
			if os.RemoveAll(profile) == nil {
				break
			}
			time.Sleep(50 * time.Millisecond)
		}
	})
	var target struct{ TargetID string }
	var attached struct{ SessionID string }
	if err := p.call("Target.createTarget", map[string]any{"url": "about:blank"}, &target); err != nil {
		t.Fatal(err)
	}
	if err := p.call("Target.attachToTarget", map[string]any{"targetId": target.TargetID, "flatten": true}, &attached); err != nil {
		t.Fatal(err)
	}
	p.page = attached.SessionID
	if err := p.call("Page.enable", nil, nil); err != nil {
		t.Fatal(err)
	}
	return p
}

// pdf prints a page on the paper that its style asks for.
func (p *printer) pdf(t *testing.T, body []byte) []byte {
	t.Helper()
	file := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(file, body, 0o600); err != nil {
		t.Fatal(err)
	}
	p.lock.Lock()
	defer p.lock.Unlock()
	err := p.call("Page.navigate", map[string]any{"url": "file://" + file}, nil)
	if err == nil {
		err = p.await("Page.loadEventFired")
	}
	var printed struct{ Data []byte }
	if err == nil {
		err = p.call("Page.printToPDF", map[string]any{"preferCSSPageSize": true, "printBackground": true}, &printed)
	}
	if err != nil {
		t.Fatal(err)
	}
	return printed.Data
}

// said is what the browser says: the answer to a command, or what happened.
type said struct {
	ID     int
	Method string
	Result json.RawMessage
	Error  *struct{ Message string }
}

// call sends a command and takes its answer.
func (p *printer) call(method string, params map[string]any, result any) error {
	p.number++
	command := map[string]any{"id": p.number, "method": method, "params": params}
	if p.page != "" && method != "Browser.close" {
		command["sessionId"] = p.page
	}
	data, err := json.Marshal(command)
	if err != nil {
		return err
	}
	if _, err := p.in.Write(append(data, 0)); err != nil {
		return err
	}
	answer, err := p.next(func(s said) bool { return s.ID == p.number })
	switch {
	case err != nil:
		return err
	case answer.Error != nil:
		return fmt.Errorf("%s: %s", method, answer.Error.Message)
	case result == nil:
		return nil
	}
	return json.Unmarshal(answer.Result, result)
}

// await waits until something happens.
func (p *printer) await(method string) error {
	_, err := p.next(func(s said) bool { return s.Method == method })
	return err
}

// next returns the next that the browser says of a kind.
func (p *printer) next(is func(said) bool) (said, error) {
	for {
		data, err := p.out.ReadBytes(0)
		if err != nil {
			return said{}, err
		}
		var s said
		if err := json.Unmarshal(bytes.TrimSuffix(data, []byte{0}), &s); err != nil {
			return said{}, err
		}
		if is(s) {
			return s, nil
		}
	}
}

// browser is the command that runs the browser without a window, with a folder of its own.
func browser(t *testing.T, profile string, args ...string) *exec.Cmd {
	t.Helper()
	var found string
	for _, name := range []string{"chromium", "chromium-browser"} {
		if path, err := exec.LookPath(name); err == nil {
			found = path
			break
		}
	}
	if found == "" {
		t.Fatal("no Chromium here to open, look at and print the pages; install chromium")
	}
	args = append([]string{"--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
		"--disable-component-update", "--disable-sync", "--hide-scrollbars", "--user-data-dir=" + profile}, args...)
	command := exec.CommandContext(t.Context(), found, args...)
	command.WaitDelay = 5 * time.Second
	return command
}
