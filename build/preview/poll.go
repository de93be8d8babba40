package preview

import (
	"context"
	"fmt"
	"hash/maphash"
	"io/fs"
	"os"
	"path"
	"time"

	"hussif/content/source"
)

// poll looks at the names, sizes and time stamps of all files again and again. It
// ends with the context, or when the journal's folder is gone.
func (w *Watcher) poll(ctx context.Context, out chan<- Batch) {
	seed := maphash.MakeSeed()
	var before map[string]uint64
	for {
		began := time.Now()
		now, err := signs(os.DirFS(w.Dir), seed)
		b := differing(before, now)
		b.All = before == nil || err != nil
		before = now
		if b.All || len(b.Folders) > 0 {
			select {
			case out <- b:
			case <-ctx.Done():
				return
			}
		}
		// Looking takes a fifth of the time at most, however large the journal.
		select {
		case <-time.After(max(glance, 4*time.Since(began))):
		case <-ctx.Done():
			return
		}
		if err != nil {
			return
		}
	}
}

// signs returns for each folder a number that stands for what is in it. The error
// is that the top folder cannot be read.
func signs(fsys fs.FS, seed maphash.Seed) (map[string]uint64, error) {
	found := make(map[string]uint64)
	err := fs.WalkDir(fsys, ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil && name == ".":
			return err
		case err != nil:
			return nil // it went while we looked
		case name != "." && !seen(path.Base(name)):
			if d.IsDir() {
				return fs.SkipDir
			}
			return nil
		case d.IsDir():
			if _, err := fs.Stat(fsys, path.Join(name, source.SiteMark)); err == nil {
				return fs.SkipDir
			}
			found[name] += 0
		}
		if name == "." {
			return nil
		}
		sign := fmt.Sprint(path.Base(name), d.Type())
		if info, err := d.Info(); err == nil && !d.IsDir() {
			sign += fmt.Sprint(info.Size(), info.ModTime().UnixNano())
		}
		// A sum does not depend on the order.
		found[path.Dir(name)] += maphash.String(seed, sign)
		return nil
	})
	return found, err
}

// differing names the folders that are not the same in both.
func differing(before, now map[string]uint64) Batch {
	var b Batch
	for name, sign := range now {
		if old, ok := before[name]; !ok || old != sign {
			b.Folders = append(b.Folders, name)
		}
	}
	for name := range before {
		if _, ok := now[name]; !ok {
			b.Folders = append(b.Folders, name)
		}
	}
	return b
}
