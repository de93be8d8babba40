package site

import (
	"cmp"
	"regexp"

	"hussif/build/address"
	"hussif/build/agenda"
	"hussif/build/almanac"
	"hussif/build/effort"
	"hussif/build/show"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/theme"
)

// toDo is the page of all that is planned, under way or waits for repair.
func (b *book) toDo() any {
	d := b.at(address.ToDo)
	view := theme.ToDo{
		Frame: b.frame(d.path, "To do", "", "to do"),
	}
	if len(b.tasks()) == 0 {
		view.Empty = "Nothing is planned, under way or waiting for repair."
	}
	for _, t := range b.tasks() {
		view.Jobs = append(view.Jobs, d.job(t))
	}
	return view
}

func (d desk) job(t agenda.Task) theme.Job {
	job := theme.Job{State: string(t.State), Mark: outlookMark(t.Work.Outlook.Verdict), Ready: plainDays(t.Work.OutlookWords())}
	if r, ok := d.Journal.Find(string(t.Build)); ok {
		job.Build = d.to(r)
		open, _ := d.openFor(r.(*journal.Build))
		job.Next = d.next(open)
	}
	if r, ok := d.Journal.Named(string(t.Work.Next.Occasion)); ok {
		job.For = d.to(r)
		job.Away = away(t.Work.Next.Day, d.Today)
		if t.Work.Next.Passed {
			job.Away = "over"
		}
	}
	if r, ok := d.Journal.Find(string(t.Stopped.Note)); ok {
		job.Stopped = d.entry(r.(*journal.Note), false)
		job.Stopped.Text = d.Journal.Titled(cmp.Or(t.Stopped.Words, job.Stopped.Text))
	}
	for _, h := range t.Holds {
		if h.Why != agenda.TimeShort { // said above
			job.HeldUp = append(job.HeldUp, d.hold(h))
		}
	}
	for _, open := range t.Stopped.Open {
		job.HeldUp = append(job.HeldUp, "not ticked off: "+open)
	}
	return job
}

// hold says what holds a build up, with the title of a material that is short.
func (d desk) hold(h agenda.Hold) string {
	f := d.Journal.Settings.Format
	if m, ok := d.Journal.Named(string(h.Lack.Material), journal.KindMaterial); ok {
		return m.Head().Title + ": " + h.Lack.Words(f)
	}
	return plainDays(h.Words(f))
}

var isoDay = regexp.MustCompile(`\b\d{4}-\d{2}-\d{2}\b`)

// plainDays writes the days in a sentence as pages show them.
func plainDays(words string) string {
	return isoDay.ReplaceAllStringFunc(words, func(text string) string {
		if on, err := edtf.ParseDay(text); err == nil {
			return show.Day(on)
		}
		return text
	})
}

func outlookMark(v effort.Verdict) string {
	switch v {
	case effort.InTime:
		return "in time"
	case effort.Tight:
		return "tight"
	case effort.Late, effort.Passed:
		return "late"
	}
	return "unknown"
}

// forecasts are the days on which builds under way can be expected to be ready.
func (b *book) forecasts() []almanac.Ready {
	var out []almanac.Ready
	for _, t := range b.tasks() {
		if o := t.Work.Outlook; o.Middle != 0 {
			out = append(out, almanac.Ready{Build: t.Build, Reckoned: b.Today, Earliest: o.First, Likely: o.Middle, Latest: o.Last})
		}
	}
	return out
}

// calendar and feed are files beside the pages.
func (b *book) calendar() ([]byte, error) {
	return almanac.Calendar(b.Journal, b.forecasts(), almanac.Pages{Path: address.Of})
}

func (b *book) feed() ([]byte, error) {
	return almanac.Atom(b.Journal, almanac.Pages{Path: address.Of})
}
