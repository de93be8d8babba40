package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"hussif": func() { os.Exit(run()) }})
}

// TestScript runs the program as a maker would type it, one behaviour a script.
func TestScript(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:  "testdata/script",
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"await": await},
		Setup: func(e *testscript.Env) error {
			e.Setenv("XDG_CACHE_HOME", filepath.Join(e.WorkDir, ".cache"))
			e.Setenv("HOME", e.WorkDir)
			return nil
		},
	})
}
