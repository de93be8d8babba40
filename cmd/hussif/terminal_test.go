package main

import (
	"bytes"
	"errors"
	"image"
	"image/png"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"github.com/creack/pty"

	"hussif/content/fold"
	"hussif/testdata/demo"
)

// demoFolder writes the demo's journal, and returns its folder.
func demoFolder(t *testing.T) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "journal")
	if _, err := unpack(demo.Journal(), dir); err != nil {
		t.Fatal(err)
	}
	return dir
}

// faultyFolder writes a small journal with an error, and returns its folder.
func faultyFolder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := writeNew(filepath.Join(dir, "notes", "2026-03-01.md"), []byte("---\nstage: sowing\n---\n")); err != nil {
		t.Fatal(err)
	}
	return dir
}

// pictureFolder writes a small journal with some pictures, and returns its folder.
func pictureFolder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	note := "---\nphotos:\n"
	for _, name := range []string{"front.png", "side.png", "back.png"} {
		var b bytes.Buffer
		if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, 60, 80))); err != nil {
			t.Fatal(err)
		}
		if err := writeNew(filepath.Join(dir, "notes", name), b.Bytes()); err != nil {
			t.Fatal(err)
		}
		note += "  - {file: " + name + ", alt: A grey card}\n"
	}
	if err := writeNew(filepath.Join(dir, "notes", "2026-03-01.md"), []byte(note+"---\n")); err != nil {
		t.Fatal(err)
	}
	return dir
}

// typed is the command as a maker has it, in a plain environment with some more
// settings.
func typed(t *testing.T, env []string, args ...string) *exec.Cmd {
	t.Helper()
	c := exec.Command("hussif", args...)
	c.Env = append([]string{"PATH=" + os.Getenv("PATH"), "HOME=" + t.TempDir(), "TERM=xterm"}, env...)
	c.Dir = t.TempDir()
	return c
}

// onTerminal runs the program on a terminal and returns all that it showed.
func onTerminal(t *testing.T, columns int, env []string, args ...string) string {
	t.Helper()
	tty, err := pty.StartWithSize(typed(t, env, args...), &pty.Winsize{Rows: 24, Cols: uint16(columns)})
	if err != nil {
		t.Fatal(err)
	}
	defer tty.Close()
	var shown bytes.Buffer
	// A terminal whose program has ended gives an error instead of an end on Linux.
	if _, err := io.Copy(&shown, tty); err != nil && !errors.Is(err, syscall.EIO) {
		t.Fatal(err)
	}
	return strings.ReplaceAll(shown.String(), "\r\n", "\n")
}

// piped runs the program with its output read by another one.
func piped(t *testing.T, env []string, args ...string) (out, err string) {
	t.Helper()
	c := typed(t, env, args...)
	var stdout, stderr bytes.Buffer
	c.Stdout, c.Stderr = &stdout, &stderr
	var exit *exec.ExitError
	if err := c.Run(); err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return stdout.String(), stderr.String()
}

// commands are command lines that say much, for a journal in a folder.
func commands(dir string) [][]string {
	return [][]string{
		{"check", dir},
		{"check", "--rules"},
		{"fit", "-j", dir, "--on", "2026-11-25"},
		{"fit", "madder-jacket", "-j", dir, "--on", "2026-11-25"},
		{"takedown", "grey-wool-jacket", "armhole", "-j", dir},
		{"next", "-j", dir},
		{"next", "jacket", "-j", dir},
		{"table", "evidence", "--columns"},
		{"schema"},
		{"help"},
		{"help", "table"},
		{"fit", "--help"},
		{"completion", "--help"},
		{"fit", "nobody-at-all", "-j", dir},
		{"takedwon", dir},
	}
}

func TestLinesFitTheTerminal(t *testing.T) {
	dir := demoFolder(t)
	for _, columns := range []int{40, 80, 200} {
		for _, args := range commands(dir) {
			shown := onTerminal(t, columns, nil, args...)
			if strings.Count(shown, "\n") < 1 {
				t.Errorf("%v says nothing", args)
			}
			for line := range strings.SplitSeq(shown, "\n") {
				// A path or name is not broken, so that it can be followed or copied.
				if len(strings.Fields(line)) > 1 && fold.Width(line) > columns {
					t.Errorf("hussif %s on %d columns: %q takes %d", strings.Join(args, " "), columns, line, fold.Width(line))
				}
			}
		}
	}
}

// Where nobody sees a terminal, lines stay whole for other programs, and hold
// nothing that is drawn.
func TestPipedOutputIsPlain(t *testing.T) {
	dir := demoFolder(t)
	drawn := regexp.MustCompile(`[\x00-\x08\x0b-\x1f\x{2500}-\x{259f}]`)
	for _, args := range append(commands(dir), []string{"site", pictureFolder(t)}) {
		out, err := piped(t, nil, args...)
		if found := drawn.FindString(out + err); found != "" {
			t.Errorf("hussif %s writes %q", strings.Join(args, " "), found)
		}
	}
	out, _ := piped(t, nil, "fit", "madder-jacket", "-j", dir, "--on", "2026-11-25")
	if !strings.Contains(out, "too close to call (short by 1/2 in, error 5/8 in)\n") {
		t.Errorf("a line was broken:\n%s", out)
	}
}

// NO_COLOR is as no-color.org has it, CLICOLOR and CLICOLOR_FORCE are as
// bixense.com/clicolors has them.
func TestColour(t *testing.T) {
	dir := faultyFolder(t)
	for _, c := range []struct {
		env             []string
		terminal, piped bool
	}{
		{nil, true, false},
		{[]string{"NO_COLOR=1"}, false, false},
		{[]string{"NO_COLOR="}, true, false},
		{[]string{"TERM=dumb"}, false, false},
		{[]string{"CLICOLOR=1"}, true, false},
		{[]string{"CLICOLOR=0"}, false, false},
		{[]string{"CLICOLOR_FORCE=1"}, true, true},
		{[]string{"CLICOLOR_FORCE=0"}, true, false},
		{[]string{"CLICOLOR_FORCE=1", "NO_COLOR=1"}, false, false},
	} {
		for _, args := range [][]string{{"help"}, {"check", dir}} {
			if got := strings.Contains(onTerminal(t, 80, c.env, args...), "\x1b["); got != c.terminal {
				t.Errorf("%v %v: colour on a terminal is %t", c.env, args, got)
			}
			out, _ := piped(t, c.env, args...)
			if got := strings.Contains(out, "\x1b["); got != c.piped {
				t.Errorf("%v %v: colour in a pipe is %t", c.env, args, got)
			}
		}
	}
}

// A bar goes over its own line again and again, which is for terminals alone.
func TestProgress(t *testing.T) {
	dir := pictureFolder(t)
	bar := regexp.MustCompile(`pictures +\d+% \|[^|\n]*\|[^\r\n]*`)
	for _, columns := range []int{40, 100} {
		bars := bar.FindAllString(onTerminal(t, columns, nil, "site", dir, "-o", filepath.Join(t.TempDir(), "site")), -1)
		if len(bars) < 2 {
			t.Fatalf("%d bars on %d columns", len(bars), columns)
		}
		for _, b := range bars {
			if fold.Width(b) > columns {
				t.Errorf("the bar %q takes %d columns of %d", b, fold.Width(b), columns)
			}
		}
	}
	if shown := onTerminal(t, 80, []string{"TERM=dumb"}, "site", dir, "-o", filepath.Join(t.TempDir(), "site")); bar.MatchString(shown) {
		t.Errorf("a bar on a terminal that cannot take a line back: %q", shown)
	}
	if out, err := piped(t, nil, "site", dir, "-o", filepath.Join(t.TempDir(), "site")); bar.MatchString(out+err) || err != "" {
		t.Errorf("a bar where nobody sees it: %q %q", out, err)
	}
}

// A title may hold any character in YAML's quotes, those that clear a screen or
// turn the direction of the text too.
func TestWordsCannotSteerTheTerminal(t *testing.T) {
	dir := t.TempDir()
	title := "---\ntitle: \"Red \\e[2J\\a\\u202Ejacket \\x9b31m\"\nfit: {bust girth: 1 in}\n---\nNext time: sew it.\n"
	if err := writeNew(filepath.Join(dir, "builds", "red", "build.md"), []byte(title)); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"fit", "-j", dir}, {"next", "-j", dir}, {"takedown", "red", "-j", dir}} {
		for _, shown := range []string{onTerminal(t, 80, nil, args...), onTerminal(t, 40, []string{"NO_COLOR=1"}, args...)} {
			if !strings.Contains(shown, "\uFFFD[2J") || strings.Contains(shown, "\x1b[2J") || strings.ContainsAny(shown, "\a\u202e\u009b") {
				t.Errorf("hussif %s shows %q", strings.Join(args, " "), shown)
			}
		}
	}
}

// Statuses are as the help says: 0 done, 1 the journal has errors, 2 not carried out.
func TestExitStatus(t *testing.T) {
	sound := demoFolder(t)
	faulty := faultyFolder(t)
	for _, c := range []struct {
		args []string
		want int
	}{
		{[]string{"check", sound}, 0},
		{[]string{"check", faulty}, 1},
		{[]string{"check", faulty, "--json"}, 1},
		{[]string{"site", faulty}, 1},
		{[]string{"check", filepath.Join(sound, "nowhere")}, 2},
		{[]string{"check", sound, sound}, 2},
		{[]string{"check", "--jsno"}, 2},
		{[]string{"help", "nothing"}, 2},
		{[]string{"help", "site"}, 0},
		{[]string{"takedown"}, 2},
	} {
		cmd := typed(t, nil, c.args...)
		var stderr bytes.Buffer
		cmd.Stderr = &stderr
		_ = cmd.Run() // its status is looked at below
		if got := cmd.ProcessState.ExitCode(); got != c.want {
			t.Errorf("hussif %s ends with %d, want %s", strings.Join(c.args, " "), got, strconv.Itoa(c.want))
		}
		if said := stderr.Len() > 0; said != (c.want == 2 || c.args[0] == "site" && c.want == 1) {
			t.Errorf("hussif %s says %q on standard error", strings.Join(c.args, " "), stderr.String())
		}
	}
}
