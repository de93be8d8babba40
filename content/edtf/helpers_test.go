package edtf

import (
	"errors"
	"slices"
	"testing"
)

// want is a row of a table: the span in days, "" where open, and the marks as
// EDTF writes them.
type want struct {
	text, earliest, latest, marks string
}

func checkDate(t *testing.T, got Date, want want) {
	t.Helper()
	if from, to := spanText(got); from != want.earliest || to != want.latest {
		t.Errorf("%s is %s to %s, want %s to %s", want.text, from, to, want.earliest, want.latest)
	}
	var m marks
	if got.Uncertain {
		m |= uncertain
	}
	if got.Approximate {
		m |= approximate
	}
	if m.String() != want.marks {
		t.Errorf("%s is marked %q, want %q", want.text, m, want.marks)
	}
}

// spanText gives the ends of a date, "" for an open one.
func spanText(d Date) (from, to string) {
	if !d.OpenStart {
		from = d.Earliest.String()
	}
	if !d.OpenEnd {
		to = d.Latest.String()
	}
	return from, to
}

func checkRefused(t *testing.T, text string, err error, reason string, instead []string) {
	t.Helper()
	var fault *Error
	if !errors.As(err, &fault) {
		t.Errorf("%q is not refused", text)
		return
	}
	if fault.Text != text || fault.Offset < 0 || fault.Offset > len(text) {
		t.Errorf("%q: the error has text %q and offset %d", text, fault.Text, fault.Offset)
	}
	if fault.Reason != reason {
		t.Errorf("%q: reason %q, want %q", text, fault.Reason, reason)
	}
	if !slices.Equal(fault.Instead, instead) {
		t.Errorf("%q: instead %q, want %q", text, fault.Instead, instead)
	}
}

func mustParse(t *testing.T, text string) Date {
	t.Helper()
	d, err := Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func mustRead(t *testing.T, text string, c Customs) Date {
	t.Helper()
	d, err := Read(text, c)
	if err != nil {
		t.Fatal(err)
	}
	return d
}
