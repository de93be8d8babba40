package output

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
)

// Write makes a folder hold exactly the files of a site, and leaves what is
// right already as it is. As many files are made at once as Go runs threads;
// each is held in memory only until it is whole.
//
// Nothing is touched if dir holds what no site put there, a [*Foreign], if two
// files of the site get in each other's way, a [*Clash], or if a path or the
// folder's mark is not to be trusted. A file that cannot be made is a [*Fault]:
// all others are still written, and the error joins the faults in the order of
// the site's files. Any other error is trouble with the disk, or that of ctx;
// the work stops there, and the next Write takes it up.
func Write(ctx context.Context, dir string, s Site) (Report, error) {
	plan, err := newPlan(s)
	if err != nil {
		return Report{}, err
	}
	for {
		real, exists, err := locate(dir)
		if err != nil {
			return Report{}, err
		}
		write := writeNew
		if exists {
			write = writeOver
		}
		report, done, err := write(ctx, dir, real, plan)
		if done || err != nil {
			return report, err
		}
	}
}

// writeOver writes a site to a folder that is there.
func writeOver(ctx context.Context, dir, real string, p *plan) (_ Report, done bool, err error) {
	root, err := os.OpenRoot(real)
	if err != nil {
		return Report{}, false, err
	}
	defer root.Close()
	if err := checkEmpty(dir, root); err != nil {
		return Report{}, false, err
	}
	unlock, err := lock(ctx, filepath.Join(real, lockName))
	if err != nil {
		return Report{}, false, err
	}
	defer unlock()
	report, err := newRun(dir, root, p).write(ctx)
	return report, true, err
}

// writeNew writes a site to a folder that is not there: beside it first. It is
// not done if another run has made the folder meanwhile.
func writeNew(ctx context.Context, dir, real string, p *plan) (_ Report, done bool, err error) {
	parent, name := filepath.Split(real)
	unlock, err := lock(ctx, filepath.Join(parent, "."+name+".hussif-lock"))
	if err != nil {
		return Report{}, false, err
	}
	defer unlock()
	if _, err := os.Lstat(real); err == nil {
		return Report{}, false, nil
	}

	// What a killed run has left here is a site's folder like any other.
	beside := "." + name + ".hussif-new"
	if err := os.Mkdir(parent+beside, 0o777); err != nil && !os.IsExist(err) {
		return Report{}, false, err
	}
	root, err := openFolder(parent + beside)
	if err != nil {
		return Report{}, false, err
	}
	r := newRun(filepath.Join(filepath.Dir(dir), beside), root, p)
	r.hidden = true
	report, fault := r.write(ctx)
	if r.broken {
		r.discard()
		root.Close()
		os.Remove(parent + beside)
		return report, true, fault
	}
	// Some systems do not rename a folder that is open.
	if err := root.Close(); err != nil {
		return report, true, err
	}
	if err := patiently(func() error { return os.Rename(parent+beside, real) }); err != nil {
		return report, true, fmt.Errorf("put %s in its place: %w", dir, err)
	}
	return report, true, fault
}

// openFolder opens a folder, but does not follow a link to one.
func openFolder(name string) (*os.Root, error) {
	info, err := os.Lstat(name)
	if err != nil {
		return nil, err
	}
	if !info.IsDir() {
		return nil, fmt.Errorf("%s is not a folder; move it elsewhere", name)
	}
	return os.OpenRoot(name)
}
