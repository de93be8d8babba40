package source

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// A Level says how grave a finding is.
type Level int

// Levels, gravest first. Only an Error stops a site from being made.
const (
	Error Level = iota
	Warning
	Hint
)

func (l Level) String() string {
	switch l {
	case Error:
		return "error"
	case Warning:
		return "warning"
	}
	return "hint"
}

// A Finding is one thing to tell the maker about one place in the journal.
type Finding struct {
	Span    Span
	Level   Level
	Rule    string   // its name in words, explained by `check --rules`
	Text    string   // lower case, no full stop; says what is wrong
	Instead []string // what could stand in the span's place, best first
	Help    string   // what to do, where no other spelling would mend it
	Related []Place  // other places that belong to it
}

// A Place is a second spot that a finding points at, with what is to be seen there.
type Place struct {
	Span Span
	Text string
}

// Found makes a finding.
func Found(span Span, level Level, rule, format string, args ...any) Finding {
	return Finding{Span: span, Level: level, Rule: rule, Text: fmt.Sprintf(format, args...)}
}

// Sort puts findings in the order in which they are printed and drops those said
// twice: by file, place, level, rule and text, so that the same journal gives the
// same list whatever the number of workers. It returns the shortened slice.
func Sort(findings []Finding) []Finding {
	slices.SortStableFunc(findings, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(a.Span.name(), b.Span.name()),
			cmp.Compare(a.Span.Start, b.Span.Start),
			cmp.Compare(a.Span.End, b.Span.End),
			cmp.Compare(a.Level, b.Level),
			cmp.Compare(a.Rule, b.Rule),
			cmp.Compare(a.Text, b.Text),
		)
	})
	return slices.CompactFunc(findings, func(a, b Finding) bool {
		return a.Span == b.Span && a.Level == b.Level && a.Rule == b.Rule && a.Text == b.Text
	})
}

func (s Span) name() string {
	if s.File == nil {
		return ""
	}
	return s.File.Name
}

// Count returns how many findings there are of a level.
func Count(findings []Finding, level Level) int {
	n := 0
	for _, f := range findings {
		if f.Level == level {
			n++
		}
	}
	return n
}

// Tally counts findings in words, gravest first: "2 errors, 1 warning". It is empty
// where there are none.
func Tally(findings []Finding) string {
	var parts []string
	for _, level := range []Level{Error, Warning, Hint} {
		switch n := Count(findings, level); n {
		case 0:
		case 1:
			parts = append(parts, "1 "+level.String())
		default:
			parts = append(parts, fmt.Sprintf("%d %ss", n, level))
		}
	}
	return strings.Join(parts, ", ")
}
