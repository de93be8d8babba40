//go:build unix

package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/creack/pty"
	"github.com/rogpeppe/go-internal/txtar"
)

// patience is how long a terminal may stay silent before a test gives up.
const patience = 20 * time.Second

// A session is the program at a terminal, with somebody typing.
type session struct {
	t    *testing.T
	cmd  *exec.Cmd
	tty  *os.File
	mu   sync.Mutex
	text bytes.Buffer  // all that was shown
	read int           // how much of it was waited for
	done chan struct{} // closed when the terminal is gone with the program
}

// atTerminal starts the program in a folder that is also its user's home.
func atTerminal(t *testing.T, home string, env []string, args ...string) *session {
	t.Helper()
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	// The test program is hussif where it is called so, see TestMain.
	cmd := exec.Command(program)
	cmd.Args = append([]string{"hussif"}, args...)
	cmd.Dir = home
	cmd.Env = append([]string{"HOME=" + home, "PATH=" + os.Getenv("PATH"), "TERM=xterm"}, env...)
	tty, err := pty.StartWithSize(cmd, &pty.Winsize{Rows: 40, Cols: 100})
	if err != nil {
		t.Skipf("no terminal can be had here: %v", err)
	}
	s := &session{t: t, cmd: cmd, tty: tty, done: make(chan struct{})}
	go func() {
		defer close(s.done)
		buf := make([]byte, 4096)
		for {
			n, err := tty.Read(buf)
			s.mu.Lock()
			s.text.Write(buf[:n])
			s.mu.Unlock()
			if err != nil {
				return
			}
		}
	}()
	t.Cleanup(func() {
		if cmd.ProcessState == nil {
			cmd.Process.Kill()
			cmd.Wait()
		}
		<-s.done
		tty.Close()
	})
	return s
}

// sees waits until some words are shown.
func (s *session) sees(words string) {
	s.t.Helper()
	for begun := time.Now(); time.Since(begun) < patience; time.Sleep(5 * time.Millisecond) {
		if at := strings.Index(s.shown()[s.read:], words); at >= 0 {
			s.read += at + len(words)
			return
		}
	}
	s.t.Fatalf("never shown: %q, but\n%s", words, s.shown()[s.read:])
}

// shown returns all that was shown so far.
func (s *session) shown() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.text.String()
}

// types types some keys; a line ends with \r, as the key for it does.
func (s *session) types(keys string) {
	s.t.Helper()
	if _, err := s.tty.WriteString(keys); err != nil {
		s.t.Fatal(err)
	}
}

// ends waits for the program to end, and returns all that it showed.
func (s *session) ends(status int) string {
	s.t.Helper()
	select {
	case <-s.done:
	case <-time.After(patience):
		s.t.Fatalf("does not end:\n%s", s.shown())
	}
	s.cmd.Wait() // its error is the status that is looked at below
	if got := s.cmd.ProcessState.ExitCode(); got != status {
		s.t.Errorf("status %d, want %d:\n%s", got, status, s.shown())
	}
	return s.shown()
}

// laid lays out files in a new folder and returns it.
func laid(t *testing.T, archive string) string {
	t.Helper()
	dir := t.TempDir()
	for _, f := range txtar.Parse([]byte(archive)).Files {
		if err := writeNew(filepath.Join(dir, f.Name), f.Data); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}
