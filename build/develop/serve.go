package develop

import (
	"bytes"
	"context"
	"encoding/gob"
	"errors"
	"fmt"
	"image/jpeg"
	"io"
)

// A job is what a lab sends to its process, a print what comes back.
type job struct{ HEIC []byte }

type print struct {
	JPEG   []byte
	Reason string // why there is none
}

// Serve develops pictures that a [Lab] sends, until there are no more. Nothing else
// may write to out.
func Serve(in io.Reader, out io.Writer) error {
	jobs, prints := gob.NewDecoder(in), gob.NewEncoder(out)
	for {
		var j job
		if err := jobs.Decode(&j); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
		var p print
		jpeg, err := develop(j.HEIC)
		if err != nil {
			p.Reason = err.Error()
		} else {
			p.JPEG = jpeg
		}
		if err := prints.Encode(p); err != nil {
			return err
		}
	}
}

// quality is high: the copy stands for the picture from here on.
const quality = 93

// develop makes a JPEG of a picture. The error is in words for its maker.
func develop(file []byte) (out []byte, err error) {
	defer func() {
		if p := recover(); p != nil {
			out, err = nil, damaged(fmt.Sprint(p))
		}
	}()
	m, err := decodeHEIC(context.Background(), file)
	if err != nil {
		return nil, damaged(err.Error())
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: quality}); err != nil {
		return nil, damaged(err.Error())
	}
	return b.Bytes(), nil
}

func damaged(what string) error {
	return fmt.Errorf("this HEIC picture is damaged or of a sort that cannot be read here (%s); copy it again, or save it as JPEG", what)
}
