package main

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"hussif/content/journal"
)

// keptVersion is raised when what is kept changes its meaning.
const keptVersion = 1

// A kept sitting is what was answered before the measuring was stopped. It lies in
// the user's state folder and not in the journal, of which it is no part yet, and
// can be read by nobody else: it holds the measures of a body.
type kept struct {
	Version int        `json:"version"`
	Journal string     `json:"journal"`
	Person  journal.ID `json:"person"`
	Day     string     `json:"day"`
	Over    []string   `json:"over"`
	By      string     `json:"by,omitempty"`
	Answers []answer   `json:"answers"`
	LeftOut []string   `json:"left_out,omitempty"` // measures that were asked for and passed over
}

// An answer is one measure with its value, both as they are to be written.
type answer struct {
	Measure string `json:"measure"` // its name, as the catalogue finds it
	Name    string `json:"name"`    // as the page has it
	Value   string `json:"value"`
}

// keptFile returns where the sitting of a person of a journal is kept.
func keptFile(dir string, person journal.ID) (string, error) {
	state, err := stateDir()
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256([]byte(absolute(dir) + "\x00" + string(person)))
	return filepath.Join(state, "hussif", "measuring", hex.EncodeToString(sum[:12])+".json"), nil
}

// absolute returns the one name of a folder by which it is told from all others, as
// far as the system tells it.
func absolute(dir string) string {
	if place, err := filepath.Abs(dir); err == nil {
		dir = place
	}
	if real, err := filepath.EvalSymlinks(dir); err == nil {
		dir = real
	}
	return dir
}

// stateDir returns the folder in which a user's programs keep what they were about:
// that of the XDG Base Directory Specification, or where the system has none like
// it the one for what is no cache.
func stateDir() (string, error) {
	if dir := os.Getenv("XDG_STATE_HOME"); filepath.IsAbs(dir) {
		return dir, nil
	}
	switch runtime.GOOS {
	case "windows":
		return os.UserCacheDir() // which is what is local to the machine, and no cache
	case "darwin", "ios", "plan9":
		return os.UserConfigDir()
	}
	home, err := os.UserHomeDir()
	return filepath.Join(home, ".local", "state"), err
}

// loadKept reads a kept sitting; nil where there is none, or none that can be read.
func loadKept(name string) *kept {
	data, err := os.ReadFile(name)
	if err != nil {
		return nil
	}
	var k kept
	if json.Unmarshal(data, &k) != nil || k.Version != keptVersion {
		return nil
	}
	return &k
}

// save writes the sitting whole or not at all.
func (k kept) save(name string) error {
	data, err := json.MarshalIndent(k, "", "  ")
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(name), 0o700); err != nil {
		return fmt.Errorf("keeping the answers: %w", err)
	}
	f, err := os.CreateTemp(filepath.Dir(name), "unfinished-*")
	if err != nil {
		return fmt.Errorf("keeping the answers: %w", err)
	}
	_, err = f.Write(append(data, '\n'))
	if err = errors.Join(err, f.Close()); err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		os.Remove(f.Name())
		return fmt.Errorf("keeping the answers: %w", err)
	}
	return nil
}

// forget takes a kept sitting away.
func forget(name string) error {
	if err := os.Remove(name); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}
