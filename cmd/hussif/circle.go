package main

import (
	"context"
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"hussif/build/circle"
	"hussif/build/export"
	"hussif/content/edtf"
	"hussif/content/source"
)

func circleCommand(say *voice) *cobra.Command {
	var o circleOrder
	var asJSON bool
	c := &cobra.Command{
		Use:   "circle site...",
		Short: "Make one site of what several makers share",
		Long: `circle takes the sites that members of a sewing circle made with
` + "`hussif site --for circle`" + `, folders or the zip files of --zip, and makes one site of them:
builds by era, pattern, technique and maker, who used the same pattern and how that
fitted, and everybody's next-time notes and evidence together. What each lets
the others know of a fit is her own choice, and no measure is handed over.

It reads nothing but the ` + export.Path + ` and the pictures of each site, which it trusts
in nothing: what is not as ` + "`hussif schema circle`" + ` says is refused, texts are
stripped of all that could run or mislead, and pictures are made anew.`,
		Example: `  hussif circle ada/site-circle bea.zip
  hussif circle --title "The Tuesday circle" -o tuesday members/*.zip
  hussif circle ada.zip bea.zip --zip`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return fmt.Errorf("name the sites of the members: folders made with `hussif site --for circle`, or their zip files")
			}
			return nil
		},
	}
	c.ValidArgsFunction = func(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
		return nil, cobra.ShellCompDirectiveDefault
	}
	c.Flags().StringVarP(&o.out, "output", "o", "circle-site", "the site's `folder`")
	c.Flags().StringVar(&o.title, "title", "Our sewing circle", "what the site is `called`")
	c.Flags().BoolVar(&o.zip, "zip", false, "pack the site into one file too, named as its folder")
	c.Flags().BoolVar(&asJSON, "json", false, "print what was done as JSON")
	_ = c.RegisterFlagCompletionFunc("title", cobra.NoFileCompletions)
	on := onFlag(c, today())
	c.RunE = func(c *cobra.Command, args []string) error {
		o.sites, o.day = args, on.day
		report, err := joinSites(c.Context(), say, o)
		if err != nil {
			return err
		}
		if asJSON {
			if err := say.json(report); err != nil {
				return err
			}
		} else if err := say.joined(report); err != nil {
			return err
		}
		if !report.Made {
			return errFound
		}
		return nil
	}
	return c
}

// A circleOrder says what site to make of whose.
type circleOrder struct {
	sites      []string
	out, title string
	day        edtf.Day
	zip        bool
}

// circleJSON is what came of making a site of several.
type circleJSON struct {
	Site     string               `json:"site" doc:"the site's folder"`
	Zip      string               `json:"zip,omitempty" doc:"the one file that it was packed into"`
	Made     bool                 `json:"made" doc:"whether the site was made; where not it stays as it was"`
	Makers   int                  `json:"makers" doc:"whose sites it is made of"`
	Builds   int                  `json:"builds" doc:"builds shown"`
	Pages    int                  `json:"pages" doc:"pages of the site"`
	Photos   int                  `json:"photos" doc:"photos shown"`
	Written  int                  `json:"written" doc:"files written"`
	Kept     int                  `json:"kept" doc:"files left as they were"`
	Removed  int                  `json:"removed" doc:"files of the site's own that were removed"`
	Findings []source.FindingJSON `json:"findings,omitempty" doc:"what was found in what the members share, as hussif check --json has it"`

	found []source.Finding
}

// joinSites makes one site of several.
func joinSites(ctx context.Context, say *voice, o circleOrder) (circleJSON, error) {
	report := circleJSON{Site: o.out}
	members, found, closeAll, err := openSites(o)
	defer closeAll()
	if err != nil {
		return report, err
	}
	if source.Count(found, source.Error) == 0 {
		store, err := openStore(say)
		if err != nil {
			return report, err
		}
		made, leftOut, err := circle.Make(ctx, circle.Order{
			Members: members, Title: o.title, Today: o.day, Out: o.out, Store: store, Progress: say.progress("pictures"),
		})
		if err != nil {
			return report, err
		}
		found = append(found, leftOut...)
		report = circleJSON{
			Site: o.out, Made: true, Makers: made.Makers, Builds: made.Builds, Pages: made.Pages, Photos: made.Photos,
			Written: made.Written, Kept: made.Kept, Removed: made.Removed,
		}
		if o.zip {
			if report.Zip, err = packSite(siteOrder{out: o.out}); err != nil {
				return report, err
			}
		}
	}
	report.found = source.Sort(found)
	report.Findings = source.JSON(report.found)
	return report, nil
}

// openSites opens what the members handed over. What it returns is to be called at the
// end in any case.
func openSites(o circleOrder) (members []circle.Member, found []source.Finding, closeAll func(), err error) {
	var closers []io.Closer
	closeAll = func() {
		for _, c := range closers {
			c.Close() // it was only read
		}
	}
	var infos []os.FileInfo
	for _, name := range o.sites {
		if info, err := os.Stat(name); err == nil {
			for i, other := range infos {
				if os.SameFile(info, other) {
					return nil, nil, closeAll, fmt.Errorf("%s is named twice, the first time as %s", name, o.sites[i])
				}
			}
			infos = append(infos, info)
		}
		m, f, closer, err := circle.Open(name)
		closers = append(closers, closer)
		if err != nil {
			return nil, nil, closeAll, err
		}
		found = append(found, f...)
		if m.Log != nil {
			members = append(members, m)
		}
	}
	return members, found, closeAll, circle.Namesakes(members)
}

// joined says what came of making a site of several.
func (v *voice) joined(r circleJSON) error {
	if err := v.complain(r.found); err != nil {
		return err
	}
	if !r.Made {
		v.asidef("%s: %s", tally(r.found), asItWas(r.Site))
		return nil
	}
	v.sayf("%s: %s of %s, %s and %s; %d written, %d kept, %d removed; %s", r.Site, number(r.Builds, "build"), number(r.Makers, "maker"),
		number(r.Pages, "page"), number(r.Photos, "photo"), r.Written, r.Kept, r.Removed, tally(r.found))
	if r.Zip != "" {
		v.sayf("%s holds all of it in one file: unpack it and open index.html", r.Zip)
	}
	return nil
}
