package preview

import (
	"bytes"
	"strings"

	"hussif/content/source"
)

// mostListed is how many findings a page lists. Whoever has more begins with these.
const mostListed = 50

// A bar stands at the foot of a page and tells what was found in the journal.
type bar struct {
	Class    string // "" where there is nothing to tell
	Words    string
	Findings []finding
	More     int // findings that are not listed
}

// A finding is one as a page shows it.
type finding struct {
	Level, Place, Rule, Text, Line, Advice string
	Related                                []string
}

// barOf returns the bar for what is known. Hints alone raise none: the pages
// themselves lead to those.
func barOf(s sight) bar {
	errors, warnings := source.Count(s.Findings, source.Error), source.Count(s.Findings, source.Warning)
	last := " The page shown is the last good one."
	switch {
	case s.trouble != nil:
		return bar{Class: "errors", Words: "The journal cannot be read just now: " + s.trouble.Error() + "." + last}
	case s.seen && !s.shown:
		return bar{} // the page itself tells
	case errors == 0 && warnings == 0:
		return bar{}
	}
	b := bar{Class: "warnings", Words: source.Tally(s.Findings) + " in the journal."}
	if !s.Sound {
		b.Class = "errors"
		b.Words += last
	}
	b.Findings = listed(s.Findings)
	b.More = len(s.Findings) - len(b.Findings)
	return b
}

// list prints what the bar opens to.
func (b bar) list() string {
	var html bytes.Buffer
	if err := templates.ExecuteTemplate(&html, "list", b); err != nil {
		panic(err)
	}
	return html.String()
}

// listed returns the findings that a page lists: the gravest, as many as fit.
func listed(found []source.Finding) []finding {
	var list []finding
	for _, level := range []source.Level{source.Error, source.Warning, source.Hint} {
		for _, f := range found {
			if f.Level != level || len(list) == mostListed {
				continue
			}
			shown := finding{
				Level: level.String(), Rule: f.Rule, Text: f.Text, Line: short(f.Span.Line()), Advice: f.Advice(),
			}
			if !f.Span.IsZero() {
				shown.Place = f.Span.String()
			}
			for _, r := range f.Related {
				shown.Related = append(shown.Related, r.Span.String()+": "+r.Text)
			}
			list = append(list, shown)
		}
	}
	return list
}

// longestLine is how many characters of a line are shown.
const longestLine = 200

func short(line string) string {
	line = strings.TrimSpace(line)
	if r := []rune(line); len(r) > longestLine {
		return string(r[:longestLine]) + "…"
	}
	return line
}
