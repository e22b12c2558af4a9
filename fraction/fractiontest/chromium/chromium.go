// Package chromium drives a Chromium without a window, for the tests that look at pages.
package chromium

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"
)

// Path returns where Chromium is, empty where there is none.
func Path() string {
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}

// Command runs it with arguments, and with a folder of its own for what it keeps.
func Command(ctx context.Context, path, profile string, args ...string) *exec.Cmd {
	command := exec.CommandContext(ctx, path, append([]string{"--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars", "--user-data-dir=" + profile}, args...)...)
	command.WaitDelay = 5 * time.Second
	return command
}

// Browser is a Chromium with one page, driven over two pipes by its DevTools protocol: each message is
// JSON and ends with a zero byte.
type Browser struct {
	patience time.Duration
	in       io.Writer
	session  string
	lock     sync.Mutex
	number   int
	waiting  map[int]chan reply
}

type reply struct {
	Result json.RawMessage
	Error  *struct{ Message string }
}

// Event is what happened in the browser.
type Event struct {
	Method string
	Params json.RawMessage
}

// Open starts a browser, which ends with the test. It may take as long as patience for anything. Each
// event is given to heard, which must not call the browser.
func Open(t *testing.T, path string, patience time.Duration, heard func(Event)) *Browser {
	t.Helper()
	profile, err := os.MkdirTemp("", "chromium")
	if err != nil {
		t.Fatal(err)
	}
	toBrowser, in, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	out, fromBrowser, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	run := Command(t.Context(), path, profile, "--remote-debugging-pipe", "about:blank")
	run.ExtraFiles = []*os.File{toBrowser, fromBrowser}
	if err := run.Start(); err != nil {
		t.Fatal(err)
	}
	toBrowser.Close()
	fromBrowser.Close()
	b := &Browser{patience: patience, in: in, waiting: map[int]chan reply{}}
	go b.listen(out, heard)
	t.Cleanup(func() {
		b.send("Browser.close", nil)
		in.Close()
		run.Wait()                                                                                             // it was asked to end
		for end := time.Now().Add(20 * time.Second); os.RemoveAll(profile) != nil && time.Now().Before(end); { // its child processes end a little later
			time.Sleep(50 * time.Millisecond)
		}
	})
	var target struct{ TargetID string }
	var attached struct{ SessionID string }
	err = b.Call(&target, "Target.createTarget", map[string]any{"url": "about:blank"})
	if err == nil {
		err = b.Call(&attached, "Target.attachToTarget", map[string]any{"targetId": target.TargetID, "flatten": true})
	}
	if b.session = attached.SessionID; err == nil {
		err = b.Call(nil, "Page.enable", nil)
	}
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// listen takes what the browser says.
func (b *Browser) listen(out io.ReadCloser, heard func(Event)) {
	defer out.Close()
	r := bufio.NewReaderSize(out, 1<<20)
	for {
		data, err := r.ReadBytes(0)
		if err != nil {
			return
		}
		var m struct {
			ID int
			Event
			reply
		}
		switch {
		case json.Unmarshal(bytes.TrimSuffix(data, []byte{0}), &m) != nil:
		case m.ID == 0:
			heard(m.Event)
		default:
			b.lock.Lock()
			b.waiting[m.ID] <- m.reply
			delete(b.waiting, m.ID)
			b.lock.Unlock()
		}
	}
}

// send sends a command and returns where its answer comes.
func (b *Browser) send(method string, params any) chan reply {
	b.lock.Lock()
	defer b.lock.Unlock()
	b.number++
	answer := make(chan reply, 1)
	b.waiting[b.number] = answer
	command := map[string]any{"id": b.number, "method": method}
	if params != nil {
		command["params"] = params
	}
	if b.session != "" && !strings.HasPrefix(method, "Browser.") {
		command["sessionId"] = b.session
	}
	data, err := json.Marshal(command)
	if err != nil {
		panic(err) // no test sends what is no JSON
	}
	b.in.Write(append(data, 0)) // a browser that is gone does not answer, which is seen
	return answer
}

// Call sends a command and reads its answer into result, if that is not nil.
func (b *Browser) Call(result any, method string, params any) error {
	select {
	case r := <-b.send(method, params):
		if r.Error != nil {
			return fmt.Errorf("%s: %s", method, r.Error.Message)
		}
		if result == nil {
			return nil
		}
		return json.Unmarshal(r.Result, result)
	case <-time.After(b.patience):
		return fmt.Errorf("%s: no answer", method)
	}
}
