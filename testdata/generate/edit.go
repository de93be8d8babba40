package generate

import (
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// An Editor changes a journal on disk as a maker might, at random: words, numbers,
// whole lines, names, folders, and what is no longer YAML, or is again.
type Editor struct {
	dir    string
	random *rand.Rand
	spoilt map[string]string // as they were, by path
}

// NewEditor returns an editor of the journal in a folder. The same seed and journal
// give the same edits.
func NewEditor(dir string, seed uint64) *Editor {
	return &Editor{dir: dir, random: rand.New(rand.NewPCG(seed, 5)), spoilt: make(map[string]string)}
}

// Edit makes one change. It returns what was changed, in words, and the folders of the
// journal in which something is no longer as it was.
func (e *Editor) Edit() (what string, folders []string, err error) {
	names, err := e.texts()
	if err != nil {
		return "", nil, err
	}
	name := names[e.random.IntN(len(names))]
	data, err := os.ReadFile(e.path(name))
	if err != nil {
		return "", nil, err
	}
	text, folder := string(data), []string{path.Dir(name)}
	change := func(what, text string) (string, []string, error) {
		return what + " in " + name, folder, e.write(name, text)
	}
	switch e.random.IntN(13) {
	case 0:
		return change("words at the end", text+"\nMore words.\n")
	case 1:
		return change("a comment", strings.Replace(text, "---\n", "---\n# as it was\n", 1))
	case 2:
		return change("a number", e.otherNumber(text))
	case 3:
		return change("a line less", e.withoutLine(text))
	case 4:
		return change("a broken link", fmt.Sprintf("%s\n[[nobody-%d]]\n", text, e.random.IntN(3)))
	case 5:
		return change("a link", fmt.Sprintf("%s\n[[%s]]\n", text, strings.TrimSuffix(names[e.random.IntN(len(names))], ".md")))
	case 6:
		return change("a next-time note", text+"\n\nNext time: sew it by hand.\n")
	case 7:
		return change("a title", strings.Replace(text, "---\n", fmt.Sprintf("---\ntitle: Title %d\n", e.random.IntN(9)), 1))
	case 8:
		if _, ok := e.spoilt[name]; !ok {
			e.spoilt[name] = text
		}
		return change("what is no YAML", "---\n{: [\n---\n"+text)
	case 9:
		return "removed " + name, folder, os.Remove(e.path(name))
	case 10:
		to := path.Join(path.Dir(name), fmt.Sprintf("2020-02-0%d.md", 1+e.random.IntN(9)))
		return "renamed " + name + " to " + to, folder, os.Rename(e.path(name), e.path(to))
	case 11:
		from := path.Dir(name)
		if !strings.HasPrefix(from, "builds/") {
			return "nothing", nil, nil
		}
		to := fmt.Sprintf("builds/moved-%d", e.random.IntN(1e6))
		return "moved " + from + " to " + to, []string{"builds"}, os.Rename(e.path(from), e.path(to))
	}
	to := fmt.Sprintf("builds/new-%d/2021-03-0%d.md", e.random.IntN(4), 1+e.random.IntN(9))
	return "added " + to, []string{path.Dir(to)}, e.write(to, "---\nstage: sewing\nhours: 2\n---\nIt is [[jacket-0]].\n")
}

// Mend makes YAML again of what the editor spoilt, where it is still there.
func (e *Editor) Mend() (folders []string, err error) {
	for name, text := range e.spoilt {
		delete(e.spoilt, name)
		if _, err := os.Stat(e.path(name)); err != nil {
			continue
		}
		if err := e.write(name, text); err != nil {
			return nil, err
		}
		folders = append(folders, path.Dir(name))
	}
	slices.Sort(folders)
	return folders, nil
}

func (e *Editor) path(name string) string { return filepath.Join(e.dir, filepath.FromSlash(name)) }

func (e *Editor) write(name, text string) error {
	if err := os.MkdirAll(filepath.Dir(e.path(name)), 0o777); err != nil {
		return err
	}
	return os.WriteFile(e.path(name), []byte(text), 0o666)
}

// texts lists the notes and other pages of the journal.
func (e *Editor) texts() ([]string, error) {
	var names []string
	err := fs.WalkDir(os.DirFS(e.dir), ".", func(name string, d fs.DirEntry, err error) error {
		if path.Ext(name) == ".md" {
			names = append(names, name)
		}
		return err
	})
	return names, err
}

var number = regexp.MustCompile(`[1-9]`)

// otherNumber changes one digit.
func (e *Editor) otherNumber(text string) string {
	all := number.FindAllStringIndex(text, -1)
	if len(all) == 0 {
		return text
	}
	at := all[e.random.IntN(len(all))]
	return fmt.Sprint(text[:at[0]], 1+e.random.IntN(9), text[at[1]:])
}

// withoutLine takes one line out that is no fence of the front matter.
func (e *Editor) withoutLine(text string) string {
	lines := strings.SplitAfter(text, "\n")
	at := e.random.IntN(len(lines))
	if strings.HasPrefix(lines[at], "---") {
		return text
	}
	return strings.Join(slices.Delete(lines, at, at+1), "")
}
