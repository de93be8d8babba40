package main

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"golang.org/x/sync/errgroup"

	"hussif/content/edtf"
	"hussif/testdata/generate"
)

// BenchmarkSite makes the site of a large journal without photos as the command
// does, beside the bare cost of reading, converting and writing the same files on
// as many workers: "cold" into a new folder, "warm" with nothing changed, "edit"
// after a change of one note. The metric x-floor is what cold takes in floors.
func BenchmarkSite(b *testing.B) {
	for _, notes := range []int{1000, 10000} {
		dir := unpackJournal(b, generate.Journal(notes, 1))
		var floor, cold float64
		b.Run(fmt.Sprintf("notes=%d/floor", notes), func(b *testing.B) {
			for b.Loop() {
				if err := bareSite(dir, b.TempDir()); err != nil {
					b.Fatal(err)
				}
			}
			floor = float64(b.Elapsed()) / float64(b.N)
		})
		b.Run(fmt.Sprintf("notes=%d/cold", notes), func(b *testing.B) {
			for b.Loop() {
				b.Setenv("XDG_CACHE_HOME", b.TempDir())
				makeSiteOnce(b, dir, filepath.Join(b.TempDir(), "site"))
			}
			cold = float64(b.Elapsed()) / float64(b.N)
			if floor > 0 {
				b.ReportMetric(cold/floor, "x-floor")
			}
		})
		b.Run(fmt.Sprintf("notes=%d/warm", notes), func(b *testing.B) {
			b.Setenv("XDG_CACHE_HOME", b.TempDir())
			out := filepath.Join(b.TempDir(), "site")
			makeSiteOnce(b, dir, out)
			for b.Loop() {
				makeSiteOnce(b, dir, out)
			}
			if cold > 0 {
				b.ReportMetric(float64(b.Elapsed())/float64(b.N)/cold, "x-cold")
			}
		})
		b.Run(fmt.Sprintf("notes=%d/edit", notes), func(b *testing.B) {
			b.Setenv("XDG_CACHE_HOME", b.TempDir())
			out := filepath.Join(b.TempDir(), "site")
			makeSiteOnce(b, dir, out)
			name := aNote(b, dir)
			for b.Loop() {
				f, err := os.OpenFile(name, os.O_APPEND|os.O_WRONLY, 0)
				if err != nil {
					b.Fatal(err)
				}
				_, err = f.WriteString("\nOne word more.\n")
				if err := f.Close(); err != nil {
					b.Fatal(err)
				}
				if err != nil {
					b.Fatal(err)
				}
				makeSiteOnce(b, dir, out)
			}
			if cold > 0 {
				b.ReportMetric(float64(b.Elapsed())/float64(b.N)/cold, "x-cold")
			}
		})
	}
}

func makeSiteOnce(b *testing.B, dir, out string) {
	say := newVoice(Streams{Out: io.Discard, Err: io.Discard})
	if err := makeSite(b.Context(), say, siteOrder{dir: dir, out: out, day: edtf.DayOf(2026, 11, 25)}); err != nil {
		b.Fatal(err)
	}
}

func unpackJournal(b *testing.B, files fs.FS) string {
	dir := b.TempDir()
	if err := os.CopyFS(dir, files); err != nil {
		b.Fatal(err)
	}
	return dir
}

func aNote(b *testing.B, dir string) string {
	names, err := filepath.Glob(filepath.Join(dir, "builds", "*", "2*.md"))
	if err != nil || len(names) == 0 {
		b.Fatal("no notes: ", err)
	}
	return names[0]
}

// bareSite reads every Markdown file, converts it and writes it, with nothing
// known of journals.
func bareSite(dir, out string) error {
	md := goldmark.New(goldmark.WithExtensions(extension.GFM, extension.Footnote))
	var names []string
	err := filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if err == nil && filepath.Ext(name) == ".md" {
			names = append(names, name)
		}
		return err
	})
	if err != nil {
		return err
	}
	var g errgroup.Group
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		g.Go(func() error {
			var html bytes.Buffer
			for i := w; i < len(names); i += workers {
				data, err := os.ReadFile(names[i])
				if err != nil {
					return err
				}
				html.Reset()
				if err := md.Convert(data, &html); err != nil {
					return err
				}
				rel, err := filepath.Rel(dir, names[i])
				if err != nil {
					return err
				}
				name := filepath.Join(out, rel) + ".html"
				if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
					return err
				}
				if err := os.WriteFile(name, html.Bytes(), 0o666); err != nil {
					return err
				}
			}
			return nil
		})
	}
	return g.Wait()
}
