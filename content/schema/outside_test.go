package schema

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"net/textproto"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"hussif/content/journal"
	"hussif/testdata/demo"
)

// An editor stands for one that talks to the YAML language server
// (github.com/redhat-developer/yaml-language-server) in the Language Server
// Protocol 3.17. Where the server is missing the test is skipped, or fails where
// HUSSIF_OUTSIDE is "required".
type editor struct {
	t     *testing.T
	dir   string
	to    io.Writer
	from  chan message
	asked int
}

type message struct {
	ID     json.RawMessage `json:"id,omitempty"`
	Method string          `json:"method,omitempty"`
	Params json.RawMessage `json:"params,omitempty"`
	Result json.RawMessage `json:"result,omitempty"`
}

func openEditor(t *testing.T) *editor {
	t.Helper()
	program, err := exec.LookPath("yaml-language-server")
	if err != nil {
		if os.Getenv("HUSSIF_OUTSIDE") == "required" {
			t.Fatal(err)
		}
		t.Skip("yaml-language-server is missing; set HUSSIF_OUTSIDE=required to make this a failure")
	}
	c := exec.CommandContext(t.Context(), program, "--stdio")
	in, err := c.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	e := &editor{t: t, dir: t.TempDir(), to: in, from: make(chan message, 100)}
	t.Cleanup(func() {
		in.Close()
		_ = c.Process.Kill()
		_ = c.Wait() // it was killed
	})
	go e.listen(bufio.NewReader(out))
	e.ask("initialize", map[string]any{
		"rootUri": "file://" + e.dir, "capabilities": map[string]any{"workspace": map[string]any{"configuration": true}},
	})
	e.send(map[string]any{"method": "initialized", "params": map[string]any{}})
	return e
}

func (e *editor) listen(r *bufio.Reader) {
	defer close(e.from)
	for {
		head, err := textproto.NewReader(r).ReadMIMEHeader()
		if err != nil {
			return
		}
		length, err := strconv.Atoi(head.Get("Content-Length"))
		if err != nil {
			return
		}
		data := make([]byte, length)
		if _, err := io.ReadFull(r, data); err != nil {
			return
		}
		var m message
		if json.Unmarshal(data, &m) == nil {
			e.from <- m
		}
	}
}

func (e *editor) send(m map[string]any) {
	m["jsonrpc"] = "2.0"
	data, err := json.Marshal(m)
	if err != nil {
		e.t.Fatal(err)
	}
	if _, err := fmt.Fprintf(e.to, "Content-Length: %d\r\n\r\n%s", len(data), data); err != nil {
		e.t.Fatal(err)
	}
}

// until reads what the server says until something is what is waited for. What the
// server asks is answered with its own defaults, but for its store of schemas on
// the web, which is not to be asked.
func (e *editor) until(wanted func(message) bool) message {
	e.t.Helper()
	late := time.After(time.Minute)
	for {
		select {
		case m, ok := <-e.from:
			switch {
			case !ok:
				e.t.Fatal("the language server has gone")
			case wanted(m):
				return m
			case m.ID != nil && m.Method == "workspace/configuration":
				store := map[string]any{"schemaStore": map[string]any{"enable": false}, "validate": true, "completion": true}
				e.send(map[string]any{"id": m.ID, "result": []any{store, nil, nil, nil, nil}})
			case m.ID != nil && m.Method != "":
				e.send(map[string]any{"id": m.ID, "result": nil})
			}
		case <-late:
			e.t.Fatal("the language server does not answer")
		}
	}
}

func (e *editor) ask(method string, params any) json.RawMessage {
	e.t.Helper()
	e.asked++
	id := strconv.Itoa(e.asked)
	e.send(map[string]any{"id": e.asked, "method": method, "params": params})
	return e.until(func(m message) bool { return string(m.ID) == id && m.Method == "" }).Result
}

// open opens a text under a name and returns what the server marks in it.
func (e *editor) open(name, text string) []string {
	e.t.Helper()
	uri := "file://" + filepath.Join(e.dir, name)
	e.send(map[string]any{"method": "textDocument/didOpen", "params": map[string]any{
		"textDocument": map[string]any{"uri": uri, "languageId": "yaml", "version": 1, "text": text},
	}})
	var said struct {
		URI         string `json:"uri"`
		Diagnostics []struct {
			Message string `json:"message"`
			Range   struct {
				Start struct{ Line int } `json:"start"`
			} `json:"range"`
		} `json:"diagnostics"`
	}
	e.until(func(m message) bool {
		return m.Method == "textDocument/publishDiagnostics" && json.Unmarshal(m.Params, &said) == nil && said.URI == uri
	})
	var out []string
	for _, d := range said.Diagnostics {
		out = append(out, fmt.Sprintf("%d: %s", d.Range.Start.Line+1, d.Message))
	}
	slices.Sort(out)
	return out
}

// complete returns what the server offers at a place of a text that is open.
func (e *editor) complete(name string, line, character int) []string {
	e.t.Helper()
	var list struct {
		Items []struct{ Label string } `json:"items"`
	}
	if err := json.Unmarshal(e.ask("textDocument/completion", map[string]any{
		"textDocument": map[string]any{"uri": "file://" + filepath.Join(e.dir, name)},
		"position":     map[string]any{"line": line - 1, "character": character - 1},
	}), &list); err != nil {
		e.t.Fatal(err)
	}
	var out []string
	for _, item := range list.Items {
		out = append(out, item.Label)
	}
	return out
}

func TestInAnEditor(t *testing.T) {
	if testing.Short() {
		t.Skip("opens every page of the demo, which takes half a minute")
	}
	e := openEditor(t)
	write := func(kind string, s *Schema) {
		data, err := s.JSON()
		if err == nil {
			err = os.WriteFile(filepath.Join(e.dir, kind+".schema.json"), data, 0o600)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	write("journal", Settings())
	for _, k := range journal.Kinds() {
		write(string(k), Of(k))
	}
	by := func(kind journal.Kind) string {
		if kind == "" {
			kind = "journal"
		}
		return "# yaml-language-server: $schema=" + string(kind) + ".schema.json\n"
	}

	marked := e.open("note.yaml", by(journal.KindNote)+"stgae: sewing\nstage: sowing\nhours: lots\naltered: [{seam: side, let out: 3/8 in}]\n")
	for i, want := range []string{"stgae is not allowed", `Valid values: "planning", "mock-up"`, "such as 3 h 20 min", "each edge"} {
		if len(marked) != 4 || !strings.HasPrefix(marked[i], strconv.Itoa(i+2)+":") || !strings.Contains(marked[i], want) {
			t.Errorf("marked %q, want %q in line %d", marked, want, i+2)
		}
	}
	e.open("half.yaml", by(journal.KindNote)+"stage: \nmeasured:\n  bu\naltered:\n  - se\n")
	for _, c := range []struct {
		line, column int
		want         string
	}{{2, 8, "fitting"}, {4, 5, "bust girth"}, {6, 7, "let out"}} {
		if offered := e.complete("half.yaml", c.line, c.column); !slices.Contains(offered, c.want) {
			t.Errorf("line %d offers %q, not %q", c.line, offered, c.want)
		}
	}
	looked := 0
	for name, p := range pages(t, demo.Journal()) {
		looked++
		if marked := e.open(strings.ReplaceAll(name, "/", "-")+".yaml", by(p.kind)+p.text); len(marked) > 0 {
			t.Errorf("%s: %q", name, marked)
		}
	}
	if looked < 80 {
		t.Errorf("only %d pages of the demo were opened", looked)
	}
}
