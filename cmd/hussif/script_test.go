package main

import (
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"hussif/build/photo/phototest"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"hussif": func() { os.Exit(run()) }})
}

// TestScript runs the program as a maker would type it, one behaviour a script.
func TestScript(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(e *testscript.Env) error {
			e.Setenv("XDG_CACHE_HOME", filepath.Join(e.WorkDir, ".cache"))
			e.Setenv("HOME", e.WorkDir)
			heic, err := filepath.Abs("../../build/develop/testdata/phone.heic")
			e.Setenv("HEIC", heic) // a picture from a phone, of 2026-03-01
			return err
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"await": await, "picture": picture},
	})
}

// picture is a command of scripts: it makes a camera's picture. Pictures of another
// number look different.
//
//	picture file number ['2026:03:01 18:22:03' [+01:00]]
func picture(ts *testscript.TestScript, _ bool, args []string) {
	args = append(args, "", "")
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	name := ts.MkAbs(args[0])
	ts.Check(os.MkdirAll(filepath.Dir(name), 0o777))
	ts.Check(os.WriteFile(name, phototest.JPEG(n, args[2], args[3]), 0o666))
	day := time.Date(2026, 5, 17, 12, 0, 0, 0, time.Local)
	ts.Check(os.Chtimes(name, day, day))
}
