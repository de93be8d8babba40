// Package check tells the maker what in the journal does not hang together: what
// reading it brought up, and what can only be seen when all of it is known.
//
// Each rule is a value with its own examples. A test runs them, and
// `hussif check --rules` prints them.
package check

import (
	"io/fs"
	"runtime"
	"slices"

	"golang.org/x/sync/errgroup"

	"hussif/content/journal"
	"hussif/content/source"
)

// A Rule is one thing that is looked for.
type Rule struct {
	Name string      // in words; stands in brackets after each finding
	Doc  string      // what it means and what to do, in a sentence or two
	Bad  string      // files of a small journal in which it is found, as a txtar archive
	Good string      // the same, put right
	Run  func(*Pass) // nil for rules that reading the journal speaks for
}

// A Pass is one rule's way through a journal.
type Pass struct {
	Journal *journal.Journal
	Files   fs.FS // the journal's folder, for looking at pictures
	rule    string
	found   *[]source.Finding
}

// Report adds a finding of the pass's rule and returns it for more to be said.
func (p *Pass) Report(at source.Span, level source.Level, format string, args ...any) *source.Finding {
	*p.found = append(*p.found, source.Found(at, level, p.rule, format, args...))
	return &(*p.found)[len(*p.found)-1]
}

// builds visits the builds whose files could be read whole. A fault in a file has
// been told already, and what the rest of it does not say proves nothing.
func (p *Pass) builds(visit func(*journal.Build)) {
	for _, b := range p.Journal.Builds() {
		if !p.Journal.Faulty(b) {
			visit(b)
		}
	}
}

// notes visits the notes whose files, and those of their builds, could be read
// whole.
func (p *Pass) notes(visit func(*journal.Note)) {
	for _, n := range p.Journal.Notes() {
		if !p.Journal.Faulty(n) && (n.Of == nil || !p.Journal.Faulty(n.Of)) {
			visit(n)
		}
	}
}

// Rules returns all rules, those of reading first.
func Rules() []Rule {
	return append(readingRules(), []Rule{
		unknownSeam, seamTwice, unknownPiece, levelNotCrossed, noEffect, ledger,
		missingPicture, badPicture, noAltText,
		unlikelyMeasure, strangeLayer, datesOutOfOrder, samePage, notesOfNoBuild,
		keepsTooMuch, belowNothing, neverMeasuredOver, caughtInACircle, unjoinedPiece, seamOfNoPiece,
		remakesItself, uncorrectedPattern, noWearer,
		unanswered, answersNothing, movingAnchor, carriedAndSetAside,
		worksheetFault,
	}...)
}

// Run looks for everything that the rules know. read holds what reading the
// journal brought up; the answer has both, sorted.
func Run(j *journal.Journal, files fs.FS, read []source.Finding) []source.Finding {
	return new(Checker).Run(j, files, read, nil)
}

// A Checker looks through one state of a journal after another. The zero Checker is
// ready.
type Checker struct {
	journal *journal.Journal
	found   [][]source.Finding // by rule
}

// Run does so for a journal that [journal.Keeper] keeps. Where its facts are as they
// were the last time, only the rules are asked again that found something in the
// files of the records that were read again: there it may stand elsewhere now.
func (c *Checker) Run(j *journal.Journal, files fs.FS, read []source.Finding, again []journal.Record) []source.Finding {
	rules := Rules()
	old := make(map[string]bool)
	for _, r := range again {
		old[r.Head().File.Name] = true
	}
	known := c.journal == j && len(c.found) == len(rules)
	if !known {
		c.journal, c.found = j, make([][]source.Finding, len(rules))
	}
	var group errgroup.Group
	group.SetLimit(runtime.GOMAXPROCS(0))
	for i, r := range rules {
		if r.Run == nil || known && !touches(c.found[i], old) {
			continue
		}
		group.Go(func() error {
			var found []source.Finding
			r.Run(&Pass{Journal: j, Files: files, rule: r.Name, found: &found})
			c.found[i] = found
			return nil
		})
	}
	_ = group.Wait() // no rule fails
	return source.Sort(append(slices.Clone(read), slices.Concat(c.found...)...))
}

// touches reports whether any finding names a place in one of some files.
func touches(findings []source.Finding, files map[string]bool) bool {
	in := func(s source.Span) bool { return s.File != nil && files[s.File.Name] }
	return slices.ContainsFunc(findings, func(f source.Finding) bool {
		return in(f.Span) || slices.ContainsFunc(f.Related, func(p source.Place) bool { return in(p.Span) })
	})
}
