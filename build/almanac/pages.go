package almanac

import (
	"cmp"
	"fmt"
	"net/url"
	"strings"
	"time"

	"hussif/content/edtf"
	"hussif/content/journal"
)

// Pages tells where the pages of a site lie.
type Pages struct {
	// Base is the address of the site's top folder on the web, nil where it has
	// none or it is not known.
	Base *url.URL
	// Path returns where the page of a record lies, from the top folder.
	Path func(journal.ID) string
}

// base returns the address of the folder with the slash that makes it one, or nil.
func (p Pages) base() (*url.URL, error) {
	if p.Base == nil {
		return nil, nil
	}
	if !p.Base.IsAbs() || p.Base.Host == "" {
		return nil, fmt.Errorf("%q is no whole address of a site; https://example.org/journal/ would be one", p.Base)
	}
	base := *p.Base
	base.RawQuery, base.Fragment = "", ""
	if !strings.HasSuffix(base.Path, "/") {
		base = *base.JoinPath("/")
	}
	return &base, nil
}

// relative writes a path in a site as a reference from its top folder.
func relative(path string) *url.URL { return &url.URL{Path: path} }

// titleOf names the journal.
func titleOf(j *journal.Journal) string { return cmp.Or(j.Settings.Title, "Workroom journal") }

// start returns the first instant of a day in UTC.
func start(d edtf.Day) time.Time {
	year, month, day := d.Date()
	return time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
}

// writable reports whether a day was written down at all and has a year of four
// digits, the day after it too, which is all that either format can hold.
func writable(d edtf.Day) bool {
	year, _, _ := d.Date()
	return d != 0 && 0 <= year && year <= 9998
}
