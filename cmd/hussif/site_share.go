package main

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"hussif/build/audience"
	"hussif/build/keep"
	"hussif/build/photo"
	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/source"
	"hussif/theme"
)

// An audienceFlag is a flag that says whom something is for.
type audienceFlag struct{ who journal.Audience }

// Set implements pflag.Value.
func (f *audienceFlag) Set(text string) error {
	var names []string
	for _, a := range journal.Audiences {
		if text == string(a) {
			f.who = a
			return nil
		}
		names = append(names, string(a))
	}
	if instead := near.Of(text, names); len(instead) > 0 {
		return fmt.Errorf("there is no audience %q; did you mean %s?", text, instead[0])
	}
	return fmt.Errorf("there is no audience %q; there are self, circle and public", text)
}

func (f *audienceFlag) String() string { return string(f.who) }

// Type implements pflag.Value.
func (f *audienceFlag) Type() string { return "others" }

// others returns the audience, or "" for the maker.
func (f *audienceFlag) others() journal.Audience {
	if f.who == journal.Self {
		return ""
	}
	return f.who
}

func completeAudience(c *cobra.Command) {
	words := []cobra.Completion{
		cobra.CompletionWithDesc("circle", "the sewing group"), cobra.CompletionWithDesc("public", "anyone"),
		cobra.CompletionWithDesc("self", "the maker alone"),
	}
	_ = c.RegisterFlagCompletionFunc("for", cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp))
}

// shareSite makes a site for others. All but the check sees only the smaller journal,
// and so does the recipe that stays in the site's folder.
func shareSite(ctx context.Context, say *voice, o siteOrder, store *keep.Store, folder *journal.Folder) (siteJSON, error) {
	w := openFolder(o.dir, folder, nil)
	if source.Count(w.findings, source.Error) > 0 {
		return siteJSON{Site: o.out, For: string(o.who)}.refused(w.findings), nil
	}
	share, err := audience.For(w.journal, o.who, o.day)
	if err != nil {
		return siteJSON{}, err
	}
	if len(share.Folder.Texts) == 1 {
		return siteJSON{}, nothingShared(w.journal, o.who)
	}
	given := []string{string(o.who), version, program(), theme.Hash(), o.day.String(), fmt.Sprint(share.Blur), fmt.Sprint(share.Fits)}
	given = append(given, entriesGiven(share.Folder)...)
	recipe := keep.NewRecipe("site for others", 1, given...)
	if report, ok := currentSite(o, store, recipe); ok {
		return report, nil
	}
	parts := siteParts{folder: share.Folder, journal: share.Journal, fits: share.Fits, recipe: recipe, blur: make(map[string][]photo.Region)}
	for name, regions := range share.Blur {
		for _, r := range regions {
			parts.blur[name] = append(parts.blur[name], photo.Region(r))
		}
	}
	return writeSite(ctx, say, o, store, w, parts)
}

// nothingShared says why an audience would see nothing, and what to write.
func nothingShared(j *journal.Journal, who journal.Audience) error {
	if !who.MaySee(j.Settings.Share) {
		return fmt.Errorf("nothing of this journal may be seen by the %s: write `share: %s` in %s, and `share: self` where a page is for you alone", who, who, journal.SettingsFile)
	}
	return fmt.Errorf("nothing of this journal may be seen by the %s: all its pages say `share: self` or belong to some that do", who)
}
