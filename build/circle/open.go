package circle

import (
	"archive/zip"
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"

	"hussif/build/export"
	"hussif/content/source"
)

// LeftOut is the rule for pictures that are not shown.
const LeftOut = "picture left out"

// mostPicture is how many bytes a picture of a log may have. Copies in a site have some
// 300 kB.
const mostPicture = 32 << 20

// Open opens the site that a maker has handed over: its folder, or the file that it was
// packed into. Nothing outside it is read, wherever links in it lead. Where there is an
// error among the findings the member may not be used. The closer is never nil.
func Open(name string) (m Member, found []source.Finding, closer io.Closer, err error) {
	files, closer, err := open(name)
	if err != nil {
		return Member{}, nil, closer, err
	}
	data, err := read(files, export.Path, export.MaxSize)
	if errors.Is(err, fs.ErrNotExist) {
		return Member{}, nil, closer, noLog(name)
	}
	if err != nil {
		return Member{}, nil, closer, fmt.Errorf("opening %s: %w", name, err)
	}
	log, found := export.Read(filepath.ToSlash(name)+"/"+export.Path, data)
	if source.Count(found, source.Error) > 0 {
		return Member{}, found, closer, nil
	}
	return Member{From: filepath.ToSlash(name), Name: cmp.Or(oneLine(log.Maker), oneLine(log.Title), baseOf(name)), Log: log, Files: files}, found, closer, nil
}

// baseOf names who handed over a site by its folder or file, or where that is called as
// everybody's, by the folder that it lies in.
func baseOf(name string) string {
	if full, err := filepath.Abs(name); err == nil {
		name = full
	}
	base := strings.TrimSuffix(filepath.Base(name), ".zip")
	if base == siteFolder {
		base = filepath.Base(filepath.Dir(name))
	}
	return base
}

// siteFolder is what the site of a journal for the circle is called where nobody says.
const siteFolder = "site-circle"

// noLog says that there is no log, and where one may be: makers leave their sites in
// their journal's folder.
func noLog(name string) error {
	inside := filepath.Join(name, siteFolder)
	if _, err := os.Stat(filepath.Join(inside, export.Path)); err == nil {
		return fmt.Errorf("%s holds no %s; did you mean %s?", name, export.Path, inside)
	}
	return fmt.Errorf("%s holds no %s; its maker makes one with `hussif site --for circle`", name, export.Path)
}

func open(name string) (fs.FS, io.Closer, error) {
	info, err := os.Stat(name)
	switch {
	case err != nil:
		return nil, io.NopCloser(nil), fmt.Errorf("opening what a maker shares: %w", err)
	case info.IsDir():
		root, err := os.OpenRoot(name)
		if err != nil {
			return nil, io.NopCloser(nil), err
		}
		return root.FS(), root, nil
	case !info.Mode().IsRegular() || !strings.EqualFold(filepath.Ext(name), ".zip"):
		return nil, io.NopCloser(nil), fmt.Errorf("%s is neither a folder nor a zip file; name a site made with `hussif site --for circle`, or the file it was packed into", name)
	}
	z, err := zip.OpenReader(name)
	if err != nil {
		return nil, io.NopCloser(nil), fmt.Errorf("opening %s: %w", name, err)
	}
	return unpacked{z, topOf(&z.Reader)}, z, nil
}

// topOf returns the folder in which a packed site lies: that of its log.
func topOf(z *zip.Reader) string {
	for _, f := range z.File {
		if path.Base(f.Name) == export.Path && strings.Count(f.Name, "/") <= 1 {
			return path.Dir(f.Name)
		}
	}
	return "."
}

// unpacked reads the files of a zip file as if they lay in a folder. Each is held in
// memory while it is open, and none has more than mostPicture bytes, whatever it was
// packed into.
type unpacked struct {
	fs.FS
	top string
}

// Stat implements [fs.StatFS].
func (u unpacked) Stat(name string) (fs.FileInfo, error) {
	return fs.Stat(u.FS, path.Join(u.top, name))
}

// Open implements [fs.FS].
func (u unpacked) Open(name string) (fs.File, error) {
	name = path.Join(u.top, name)
	info, err := fs.Stat(u.FS, name)
	if err != nil {
		return nil, err
	}
	data, err := read(u.FS, name, mostPicture)
	if err != nil {
		return nil, err
	}
	return held{bytes.NewReader(data), info}, nil
}

// A held file is one in memory.
type held struct {
	*bytes.Reader
	info fs.FileInfo
}

// Stat implements [fs.File].
func (h held) Stat() (fs.FileInfo, error) { return h.info, nil }

// Close implements [fs.File].
func (held) Close() error { return nil }

// read reads a file of no more than some bytes; of a larger one it reads one more, for
// others to refuse. What is no file is not opened: it might never end.
func read(files fs.FS, name string, most int64) ([]byte, error) {
	info, err := fs.Stat(files, name)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is no file", name)
	}
	f, err := files.Open(name)
	if err != nil {
		return nil, err
	}
	data, err := io.ReadAll(io.LimitReader(f, most+1))
	return data, errors.Join(err, f.Close())
}
