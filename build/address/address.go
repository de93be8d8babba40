// Package address answers where in a site the page of each record lies, so that
// what links to it and what checks it agree.
package address

import (
	"crypto/sha256"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"hussif/content/journal"
)

// Of returns the path of a record's page from the site's top folder.
func Of(id journal.ID) string {
	name := Slug(string(id))
	if !strings.Contains(name, "/") {
		name = "pages/" + name // not among the site's own pages
	}
	return name + ".html"
}

// Pages that are not about one record, and files beside them.
const (
	Start     = "index.html"
	NextTime  = "next-time.html"
	Tags      = "tags.html"
	Found     = "found.html"
	ToDo      = "to-do.html"
	Decisions = "decisions.html"
	Evidence  = "evidence/index.html"
	Stash     = "materials/on.hand.html"
	Search    = "search.html"
	Calendar  = "calendar.ics"
)

// Names of pages that belong to the page of a record, as [Under] takes them.
const (
	Remake        = "before-a-remake" // a sheet of a build, a pattern or a person
	TakeDown      = "take-down"       // a sheet of a build
	Documentation = "documentation"   // a sheet of a build
	Wardrobe      = "wardrobe"        // of a person
)

// Own returns the pages that are not about one record, and the lists of records.
func Own() []string {
	own := []string{Start, NextTime, Tags, Found, ToDo, Decisions, Evidence, Stash, Search}
	for _, section := range sections {
		own = append(own, List(section))
	}
	return own
}

// Feature returns the path of the page of a feature of dress.
func Feature(name string) string {
	return "evidence/" + strings.ReplaceAll(Slug(strings.Join(strings.Fields(name), " ")), "/", "-") + ".feature.html"
}

// sections are the folders of the site and the entries of its menu by kind.
var sections = map[journal.Kind]string{
	journal.KindBuild:     "builds",
	journal.KindPerson:    "people",
	journal.KindPattern:   "patterns",
	journal.KindReference: "references",
	journal.KindMaterial:  "materials",
	journal.KindTechnique: "techniques",
	journal.KindOccasion:  "occasions",
	journal.KindNote:      "notes",
}

// Section returns the name of the section that holds the records of a kind.
func Section(k journal.Kind) string { return sections[k] }

// List returns the path of the page that lists all records of a section.
func List(section string) string { return section + "/index.html" }

// Year returns the path of the page of one year's notes in a large journal.
func Year(year string) string { return "notes/of." + year + ".html" }

// SearchPart returns the path of one of so many parts of the index of words; number
// 0 is of what is no record.
func SearchPart(number, of int) string { return fmt.Sprintf("search/words.%d-of-%d.js", number, of) }

// Sheets returns the names of the pages that belong to a record of a kind, as
// [Under] takes them.
func Sheets(k journal.Kind) []string {
	switch k {
	case journal.KindBuild:
		return []string{Remake, TakeDown, Documentation}
	case journal.KindPattern:
		return []string{Remake}
	case journal.KindPerson:
		return []string{Remake, Wardrobe}
	}
	return nil
}

// Under returns the path of a page that belongs to the page of a record, such as a
// sheet to print. It lies beside that page and not in the folder of the record's
// own notes.
func Under(id journal.ID, name string) string {
	return strings.TrimSuffix(Of(id), ".html") + "." + Slug(name) + ".html"
}

// Slug makes a name that is the same on every file system and in every address:
// letters and digits in lower case, composed as Unicode's form C has it, and hyphens
// for most of the rest. Names that belong to a device on Windows get a hyphen more,
// which also stands for the dots at an end, since Windows drops them. Of a very long
// name the end gives way to a sum of the whole.
func Slug(name string) string {
	parts := strings.Split(norm.NFC.String(strings.Map(plain, name)), "/")
	for i, part := range parts {
		stem, _, _ := strings.Cut(part, ".")
		if devices[stem] {
			part = "-" + part
		}
		bare := strings.TrimRight(part, ".")
		parts[i] = shorten(bare + strings.Repeat("-", len(part)-len(bare)))
	}
	return strings.Join(parts, "/")
}

// longest is how many bytes of a name there are at most. Disks take 255 (Linux's
// NAME_MAX; 255 UTF-16 units on NTFS and APFS), and of these some are for endings
// such as ".before-a-remake.html".
const longest = 200

func shorten(part string) string {
	if len(part) <= longest {
		return part
	}
	sum := sha256.Sum256([]byte(part))
	end := fmt.Sprintf("-%x", sum[:6])
	cut := longest - len(end)
	for !utf8.RuneStart(part[cut]) {
		cut--
	}
	return strings.TrimRight(part[:cut], ".") + end
}

func plain(r rune) rune {
	switch {
	case unicode.IsLetter(r), unicode.IsDigit(r), unicode.Is(unicode.Mn, r):
		return unicode.ToLower(r)
	case strings.ContainsRune("/-_.", r):
		return r
	}
	return '-'
}

// devices are the names that no file on Windows can have, whatever its ending
// (Microsoft, "Naming Files, Paths, and Namespaces").
var devices = func() map[string]bool {
	names := map[string]bool{"con": true, "prn": true, "aux": true, "nul": true}
	for _, digit := range "0123456789" {
		names["com"+string(digit)] = true
		names["lpt"+string(digit)] = true
	}
	return names
}()

// Anchor makes the name of a part of a page from words.
func Anchor(prefix, words string) string {
	return prefix + "-" + strings.ReplaceAll(Slug(words), "/", "-")
}

// Root returns the relative way from a page to the site's top folder.
func Root(path string) string { return strings.Repeat("../", strings.Count(path, "/")) }
