package develop

import (
	"context"
	"encoding/gob"
	"errors"
	"fmt"
	"io"
	"os/exec"
	"time"

	"hussif/build/photo"
)

// A Lab develops pictures in a process that it starts when the first one comes. It
// is for one goroutine at a time. Close it when no more will come.
type Lab struct {
	// Command makes the command of a process that runs [Serve] on its standard
	// input and output.
	Command func() (*exec.Cmd, error)

	// Patience is how long one picture may take; zero means two minutes.
	Patience time.Duration

	at *process
}

type process struct {
	cmd    *exec.Cmd
	in     io.WriteCloser
	jobs   *gob.Encoder
	prints *gob.Decoder
}

// Develop returns a JPEG of a HEIC picture, or what is wrong with the picture. An
// error means that no process could be started, or is the context's.
func (l *Lab) Develop(ctx context.Context, heic []byte) ([]byte, *photo.Fault, error) {
	if err := ctx.Err(); err != nil {
		return nil, nil, err
	}
	if l.at == nil {
		p, err := l.start()
		if err != nil {
			return nil, nil, fmt.Errorf("starting to develop HEIC pictures: %w", err)
		}
		l.at = p
	}
	patience := l.Patience
	if patience == 0 {
		patience = 2 * time.Minute
	}
	limited, stop := context.WithTimeout(ctx, patience)
	defer stop()
	p := l.at
	// Killing the process ends both the writing and the reading below.
	unhook := context.AfterFunc(limited, func() { p.cmd.Process.Kill() })
	var got print
	err := p.jobs.Encode(job{heic})
	if err == nil {
		err = p.prints.Decode(&got)
	}
	if unhook() && err == nil {
		if got.Reason != "" {
			return nil, &photo.Fault{Reason: got.Reason}, nil
		}
		return got.JPEG, nil, nil
	}
	// The next picture gets a new process.
	l.at = nil
	p.cmd.Process.Kill()
	p.cmd.Wait()
	switch {
	case ctx.Err() != nil:
		return nil, nil, ctx.Err()
	case errors.Is(limited.Err(), context.DeadlineExceeded):
		return nil, &photo.Fault{Reason: fmt.Sprintf("this HEIC picture was not read within %s; save it as JPEG", patience)}, nil
	}
	return nil, &photo.Fault{Reason: damaged("reading it broke off").Error()}, nil
}

func (l *Lab) start() (*process, error) {
	cmd, err := l.Command()
	if err != nil {
		return nil, err
	}
	in, err := cmd.StdinPipe()
	if err != nil {
		return nil, err
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		return nil, err
	}
	if err := cmd.Start(); err != nil {
		return nil, err
	}
	return &process{cmd, in, gob.NewEncoder(in), gob.NewDecoder(out)}, nil
}

// Close ends the process, if there is one.
func (l *Lab) Close() {
	if l.at == nil {
		return
	}
	l.at.in.Close()
	l.at.cmd.Wait()
	l.at = nil
}
