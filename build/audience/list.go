package audience

import (
	"bytes"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"hussif/content/front"
	"hussif/content/journal"
	"hussif/content/source"
)

// A Page is a page as an audience sees it.
type Page struct {
	ID       journal.ID
	Title    string
	Photos   []string // by path, those that are blurred among them
	Measures []string // of a body or a garment, each with its value
	Fit      []string // how a garment fits, as its wearer lets others know
	Money    int      // how many amounts are told
}

// Pages lists what the audience sees, page by page.
func (s *Share) Pages() []Page {
	j := s.Journal
	var pages []Page
	for _, r := range j.Records() {
		p := Page{ID: r.Head().ID, Title: r.Head().Title}
		for _, picture := range journal.Pictures(r) {
			if !slices.Contains(p.Photos, picture.Path) {
				p.Photos = append(p.Photos, picture.Path)
			}
		}
		add := func(readings journal.Readings) {
			for _, m := range readings {
				p.Measures = append(p.Measures, m.Point.String()+" "+j.Settings.Format.Estimate(m.Value))
			}
		}
		sessions := func(list []journal.Session) {
			for _, session := range list {
				add(session.Readings)
			}
		}
		switch r := r.(type) {
		case *journal.Person:
			sessions(r.Measured)
		case *journal.Build:
			p.Money += count(r.Planned.Has("cost"))
			for _, row := range s.Fits[r.ID].Rows {
				p.Fit = append(p.Fit, row.Measure+": "+row.Words)
			}
		case *journal.Note:
			add(r.Measured)
			sessions(r.Body)
			p.Money += len(r.Spent)
			for _, m := range r.Bought {
				p.Money += count(m.Has("cost"))
			}
		case *journal.Material:
			p.Money += count(r.Has("price"))
		}
		pages = append(pages, p)
	}
	return pages
}

func count(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// The rules of [Share.Doubts].
const (
	InWords  = "measure in words"
	NotSaid  = "face or not"
	NamedYet = "hidden page named"
	NotParts = "not to be parted"
	NotKept  = "private and not hidden"
)

// Doubts finds what the audience will see of a journal that only its maker can judge:
// measures and money told in words, the names of hidden pages, and photos of which is not
// said whether they show a face; and texts that had to be left out. Places are those in the whole journal.
func (s *Share) Doubts(full *journal.Journal) []source.Finding {
	sight := newSight(full, s.Who)
	left := s.Journal
	at := make(map[journal.ID]journal.Record)
	for _, r := range full.Records() {
		at[r.Head().ID] = r
	}
	var found []source.Finding
	names := namesOf(s.Hidden)
	for _, r := range left.Records() {
		whole := at[r.Head().ID]
		wearers := sight.wearers(whole)
		for _, words := range sayings(r.Head().File) {
			if m := firstOf(names, words); m != "" {
				f := source.Found(find(whole.Head().File, words, m), source.Warning, NamedYet, "the %s can read %q here, which is the name of a page that it does not see", s.Who, m)
				f.Help = "put it into a paragraph that begins `Private:`, or use other words"
				found = append(found, f)
			}
			if m := notKept(s.Who, words); m != "" {
				f := source.Found(find(whole.Head().File, words, m), source.Warning, NotKept, "the %s can read what says %q here", s.Who, m)
				f.Help = "begin a paragraph or a list item with `Private:`; elsewhere the word hides nothing"
				found = append(found, f)
			}
			what, figure := "money", moneyIn(words)
			if figure == "" || sight.allowed(journal.OfMoney, wearers) {
				what, figure = "a measure", measureIn(words)
				if figure == "" || sight.allowedOn(whole, journal.OfBody, wearers) {
					continue
				}
			}
			f := source.Found(find(whole.Head().File, words, figure), source.Warning, InWords, "the %s can read %s here", s.Who, what)
			f.Help = "put it into a paragraph that begins `Private:`, or leave the figure out"
			found = append(found, f)
		}
		for _, p := range journal.Pictures(whole) {
			if ofPeople(whole) && p.Face == journal.Unsaid && p.Share == "" && !p.InText && sight.photos.shown(p.Path) && len(p.Blur) == 0 {
				f := source.Found(p.Span, source.Hint, NotSaid, "nothing says whether somebody can be recognised here, and the %s sees it", s.Who)
				f.Help = "add `face: no`, or `face: yes` with `blur:` or `share:`"
				found = append(found, f)
			}
		}
	}
	for _, r := range s.Cut {
		f := source.Found(r.Head().Text.Body.At(0, 0), source.Warning, NotParts, "what is private here cannot be cut out cleanly, so more of the text is left out than that")
		f.Help = "give it a paragraph or a list item of its own"
		found = append(found, f)
	}
	return source.Sort(found)
}

var (
	aPrivate = regexp.MustCompile(`(?i)\bprivate\b[^\pL\pN\s]{0,3}\s*(?:[:：]|[-–—]\s)`)
	aCircle  = regexp.MustCompile(`(?i)\bcircle\b[*_]{0,2}[:：]`)
)

// notKept returns the word by which words ask to be kept from an audience that reads them.
func notKept(who journal.Audience, words string) string {
	if m := aPrivate.FindString(words); m != "" || who != journal.Public {
		return strings.TrimSpace(m)
	}
	return aCircle.FindString(words)
}

// namesOf finds the names of pages in words; nil where there are none to find. A
// single word is a name only of a person: of a thing it may be any.
func namesOf(hidden []journal.Record) *regexp.Regexp {
	var names []string
	for _, r := range hidden {
		page := r.Head()
		if len(strings.Fields(page.Title)) > 1 || page.Kind == journal.KindPerson {
			names = append(names, regexp.QuoteMeta(page.Title))
		}
		if name := page.ID.Name(); strings.Contains(name, "-") && page.Kind != journal.KindNote {
			names = append(names, regexp.QuoteMeta(name))
		}
	}
	if len(names) == 0 {
		return nil
	}
	return regexp.MustCompile(`(?i)(?:^|[^\pL\pN-])(` + strings.Join(names, "|") + `)(?:[^\pL\pN-]|$)`)
}

func firstOf(names *regexp.Regexp, words string) string {
	if names == nil {
		return ""
	}
	if m := names.FindStringSubmatch(words); m != nil {
		return m[1]
	}
	return ""
}

var aQuote = regexp.MustCompile(`"(?:\\.|[^"\\])*"`)

// sayings returns what a page says in words: the lines of its text, and the values of
// its front matter.
func sayings(f *source.File) []string {
	parts, _ := front.Split(f)
	var out []string
	for _, quote := range aQuote.FindAll(f.Data[parts.Front.Start:parts.Front.End], -1) {
		var words string
		if json.Unmarshal(quote, &words) == nil {
			out = append(out, words)
		}
	}
	for line := range strings.Lines(string(f.Data[parts.Body.Start:parts.Body.End])) {
		out = append(out, strings.TrimSpace(line))
	}
	return out
}

var (
	aLength = regexp.MustCompile(`(?i)(\d+)(?:[.,]\d+|\s+\d/\d+|\s*[¼½¾⅛⅜⅝⅞])?\s*(in\b|inch(?:es)?\b|cm\b|mm\b|["″])`)
	aSpelt  = regexp.MustCompile(`(?i)\b(?:five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)(?:[- ]\w+)?)` +
		`(?:\s+and\s+(?:a|an|one|three|five|seven)(?:\s+(?:half|quarters?|eighths?))?)?\s+(?:inch(?:es)?|centimetres?)\b`)
	aBody   = regexp.MustCompile(`(?i)\b(bust|chest|waist|hips?|bicep|upper arm|elbow|wrist|thigh|calf|neck|shoulders?|across back|back width|nape|girth|tall|height)\b`)
	someSum = regexp.MustCompile(`(?i)[€£$]\s?\d|\b\d+(?:[.,]\d\d)?\s?(?:€|£|eur\b|gbp\b|usd\b|euros?\b|pounds?\b|dollars?\b)`)
)

// least is what is as long as a wrist is round, by unit: below it a length is an
// allowance, a panel or a change (common practice).
var least = map[string]float64{"in": 5, "inch": 5, "inches": 5, `"`: 5, "″": 5, "cm": 13, "mm": 130}

// measureIn returns a length that a part of the body may have, in words that name one.
func measureIn(words string) string {
	if !aBody.MatchString(words) {
		return ""
	}
	for _, m := range aLength.FindAllStringSubmatch(words, -1) {
		if v, err := strconv.ParseFloat(m[1], 64); err == nil && v >= least[strings.ToLower(m[2])] {
			return m[0]
		}
	}
	return aSpelt.FindString(words)
}

func moneyIn(words string) string { return someSum.FindString(words) }

// find returns where a file has the first of some words that it has just so; its start
// where it writes them all otherwise.
func find(f *source.File, all ...string) source.Span {
	for _, words := range all {
		if at := bytes.Index(f.Data, []byte(words)); at >= 0 {
			return f.Span(at, at+len(words))
		}
	}
	return f.Span(0, 0)
}

// Summary says in a sentence how much of a journal is seen.
func Summary(who journal.Audience, pages []Page, all int) string {
	photos := make(map[string]bool)
	measures, money := 0, 0
	for _, p := range pages {
		for _, name := range p.Photos {
			photos[name] = true
		}
		measures += len(p.Measures)
		money += p.Money
	}
	return fmt.Sprintf("the %s sees %d of %d pages, %s, %s and %s", who, len(pages), all,
		some(len(photos), "photo"), some(measures, "measure"), some(money, "amount of money", "amounts of money"))
}

func some(n int, one string, many ...string) string {
	switch {
	case n == 0:
		return "no " + append(many, one+"s")[0]
	case n == 1:
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, append(many, one+"s")[0])
}
