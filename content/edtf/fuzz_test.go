package edtf

import (
	"errors"
	"testing"
)

// seeds has one text of each form, and some that are refused.
var seeds = []string{
	"1784-05-17", "178X~", "1X84-X2", "1784?-~05", "1784~/..", "/1789", "[..1760,1784-05..1784-07,1790..]", "{1784,1786}",
	"1784-28", "Y-17E7", "1950S2", "Y99999999999999999999E9", "XXXX-02-30", "[....]", "-0000", "1784-5", "1820-24", "1784..1787",
	"ca. 1785 (?)", "early to mid-18th c.", "late 18th or early 19th century", "1760s–70s", "between May 1784 and 1787",
	"not before 17th of May, 1784", "May 17, 1784", "winter 1784/85", "12-17 May 1784", "1784, 1785 and 1787", "1700s",
	"03/04/2026", "14.02.2026", "2026-2-3", "9999 or after 9999", "cira 1785", "İ 1785", "\xff1784",
}

func FuzzParse(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d, err := Parse(text)
		checkAnswer(t, text, d, err)
		for _, s := range suggestions(err) {
			if _, err := Parse(s); err != nil {
				t.Errorf("%q: the suggestion %q is refused: %v", text, s, err)
			}
		}
	})
}

func FuzzRead(f *testing.F) {
	for _, s := range seeds {
		f.Add(s, 0, false)
		f.Add(s, 10, true)
	}
	f.Fuzz(func(t *testing.T, text string, circa int, fromOne bool) {
		c := Customs{Circa: circa, FromOne: fromOne}
		d, err := Read(text, c)
		checkAnswer(t, text, d, err)
		if !d.IsZero() && !d.Within(d.Padded(c)) {
			t.Errorf("%q: padding does not widen", text)
		}
		for _, s := range suggestions(err) {
			if _, err := Read(s, c); err != nil {
				t.Errorf("%q: the suggestion %q is refused: %v", text, s, err)
			}
		}
	})
}

func FuzzParseDay(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		day, err := ParseDay(text)
		if err == nil && day.String() != text {
			t.Errorf("%q is taken for %s", text, day)
		}
		if err != nil {
			checkAnswer(t, text, Date{}, err)
		}
		for _, s := range suggestions(err) {
			if _, err := ParseDay(s); err != nil {
				t.Errorf("%q: the suggestion %q is refused: %v", text, s, err)
			}
		}
	})
}

// checkAnswer checks what holds for every answer of a parser.
func checkAnswer(t *testing.T, text string, d Date, err error) {
	t.Helper()
	if err != nil {
		var fault *Error
		if !errors.As(err, &fault) || fault.Text != text || fault.Offset < 0 || fault.Offset > len(text) || fault.Reason == "" {
			t.Errorf("%q: the error is %#v", text, err)
		}
		if !d.IsZero() {
			t.Errorf("%q is refused and read as %+v", text, d)
		}
		return
	}
	if !d.OpenStart && !d.OpenEnd && d.Earliest > d.Latest {
		t.Errorf("%q runs backwards, %s to %s", text, d.Earliest, d.Latest)
	}
	again, err := Parse(d.EDTF)
	again.Text = d.Text
	if err != nil || again != d {
		t.Errorf("%q is read as %q, which is %+v, not %+v: %v", text, d.EDTF, again, d, err)
	}
	if d.String() == "" {
		t.Errorf("%q has no words", text)
	}
}

func suggestions(err error) []string {
	var fault *Error
	if errors.As(err, &fault) {
		return fault.Instead
	}
	return nil
}
