package intake

import (
	"bytes"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"

	"hussif/build/keep"
	"hussif/build/photo"
)

// A Desk is where plans are carried out.
type Desk struct {
	Journal *os.Root // its folder
	Camera  fs.FS    // the camera's folder

	// Develop makes a JPEG of a HEIC picture, or says what is wrong with it.
	Develop func(ctx context.Context, heic []byte) ([]byte, *photo.Fault, error)

	// Progress, where it is set, is told how many pictures have been copied.
	Progress func(done, total int)
}

// A Report says what was done.
type Report struct {
	Notes []Entry // as they were written, with the pictures that went in
	Left  []Left  // pictures of the plan that could not be taken after all
}

// Carry does what a plan says. Where it is stopped or the disk is in the way, the
// note at work still gets the pictures that have been copied, and the error says
// what happened; the report holds what was done until then.
func (d *Desk) Carry(ctx context.Context, p *Plan) (Report, error) {
	var report Report
	done := 0
	for _, e := range p.Notes {
		if err := d.ready(e); err != nil {
			return report, err
		}
		var pictures []Picture
		var trouble error
		for _, pic := range e.Pictures {
			var left *Left
			if left, trouble = d.bring(ctx, pic); trouble != nil {
				break
			}
			if left != nil {
				report.Left = append(report.Left, *left)
			} else {
				pictures = append(pictures, pic)
			}
			if done++; d.Progress != nil {
				d.Progress(done, p.Pictures())
			}
		}
		e.Pictures = pictures
		if len(pictures) > 0 {
			if err := d.write(e); err != nil {
				return report, errors.Join(err, trouble)
			}
			report.Notes = append(report.Notes, e)
		}
		if trouble != nil {
			return report, trouble
		}
	}
	return report, nil
}

// ready makes sure that a note can be written before its pictures are copied.
func (d *Desk) ready(e Entry) error {
	if e.New {
		return nil
	}
	info, err := d.Journal.Lstat(e.Note)
	if err != nil {
		return err
	}
	// Whoever may write the folder could replace a note without being allowed to
	// write it.
	if info.Mode().Perm()&0o222 == 0 {
		return fmt.Errorf("%s may only be read; change who may write it", e.Note)
	}
	f, err := d.Journal.OpenFile(e.Note, os.O_WRONLY, 0)
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", e.Note, err)
	}
	return f.Close()
}

// bring puts one picture in its place.
func (d *Desk) bring(ctx context.Context, p Picture) (*Left, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if p.Here {
		return nil, nil
	}
	from, err := d.Camera.Open(p.Path)
	if err != nil {
		return &Left{p.Path, "it cannot be read: " + cause(err), true}, nil
	}
	defer from.Close()
	if p.HEIC {
		return d.develop(ctx, p, from)
	}
	var left *Left
	err = putNew(d.Journal, p.To, func(to *os.File) error {
		h := sha256.New()
		r := &noting{r: stopping{ctx, from}}
		_, err := io.Copy(io.MultiWriter(to, h), r)
		switch {
		case ctx.Err() != nil:
			return ctx.Err()
		case r.err != nil:
			left = &Left{p.Path, "it cannot be read: " + cause(r.err), true}
			return r.err
		case err != nil:
			return err
		case keep.Sum(h.Sum(nil)) != p.sum:
			left = &Left{p.Path, "it was changed meanwhile; run the same again", true}
			return errors.New(left.Reason)
		}
		return nil
	})
	if left != nil {
		return left, nil
	}
	if err != nil {
		return nil, fmt.Errorf("copying %s: %w", p.Path, err)
	}
	// The file's time may be all that tells when a picture was taken. Some disks
	// keep none.
	_ = d.Journal.Chtimes(p.To, p.modified, p.modified)
	return nil, nil
}

func (d *Desk) develop(ctx context.Context, p Picture, from io.Reader) (*Left, error) {
	heic, err := io.ReadAll(io.LimitReader(from, p.size+1))
	if err != nil {
		return &Left{p.Path, "it cannot be read: " + cause(err), true}, nil
	}
	if keep.Sum(sha256.Sum256(heic)) != p.sum {
		return &Left{p.Path, "it was changed meanwhile; run the same again", true}, nil
	}
	jpeg, fault, err := d.Develop(ctx, heic)
	switch {
	case err != nil:
		return nil, err
	case fault != nil:
		return &Left{p.Path, fault.Reason, true}, nil
	}
	jpeg = photo.WithComment(jpeg, madeFrom+p.sum.String())
	err = putNew(d.Journal, p.To, func(to *os.File) error {
		_, err := to.Write(jpeg)
		return err
	})
	if err != nil {
		return nil, fmt.Errorf("writing %s: %w", p.To, err)
	}
	_ = d.Journal.Chtimes(p.To, p.modified, p.modified)
	return nil, nil
}

// write puts a note in its place.
func (d *Desk) write(e Entry) error {
	pictures := e.paths(path.Dir(e.Note))
	if e.New {
		return putNew(d.Journal, e.Note, func(to *os.File) error {
			_, err := to.Write(newNote(pictures, e.kind))
			return err
		})
	}
	before, err := d.Journal.ReadFile(e.Note)
	if err != nil {
		return err
	}
	if !bytes.Equal(before, e.before) {
		return fmt.Errorf("%s was changed meanwhile and is left as it is; run the same again", e.Note)
	}
	after, err := withPictures(e.Note, before, pictures)
	if err != nil {
		return err
	}
	return putOver(d.Journal, e.Note, after)
}

// A noting reader keeps the trouble it had in reading, which a copy does not tell
// from trouble in writing.
type noting struct {
	r   io.Reader
	err error
}

func (n *noting) Read(p []byte) (int, error) {
	got, err := n.r.Read(p)
	if err != nil && err != io.EOF {
		n.err = err
	}
	return got, err
}
