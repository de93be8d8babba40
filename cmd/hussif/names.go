package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"hussif/content/journal"
	"hussif/content/near"
)

// atMostOne refuses more than one argument in words of our own.
func atMostOne(what string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) > 1 {
			return fmt.Errorf("%s takes one %s at the most; %q is too much", c.Name(), what, args[1])
		}
		return nil
	}
}

// called returns the page that a name typed at a prompt means, of one of some
// kinds. The error tells a name that several pages have from one that none has,
// with what could have been meant.
func (w *workroom) called(name string, kinds ...journal.Kind) (journal.Record, error) {
	if r, ok := w.journal.Find(name, kinds...); ok {
		return r, nil
	}
	var names, same []string
	for _, r := range w.journal.Records() {
		page := r.Head()
		if len(kinds) > 0 && !slices.Contains(kinds, page.Kind) {
			continue
		}
		names = append(names, page.ID.Name())
		if strings.EqualFold(page.ID.Name(), name) {
			same = append(same, string(page.ID))
		}
	}
	what := "page"
	if len(kinds) > 0 {
		what = string(kinds[0])
		for _, k := range kinds[1:] {
			what += " and no " + string(k)
		}
	}
	switch instead := near.Of(name, names); {
	case len(same) > 1:
		return nil, fmt.Errorf("several pages are called %q: %s", name, strings.Join(same, ", "))
	case len(instead) > 0:
		return nil, fmt.Errorf("no %s is called %q; did you mean %s?", what, name, strings.Join(instead, " or "))
	case len(kinds) > 0 && len(names) > 0 && len(names) <= fewNames:
		return nil, fmt.Errorf("no %s is called %q; there are %s", what, name, strings.Join(names, ", "))
	}
	return nil, fmt.Errorf("no %s is called %q", what, name)
}

// fewNames is how many names are listed for somebody to choose from.
const fewNames = 20
