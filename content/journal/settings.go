package journal

import (
	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// SettingsFile is the file with the journal's settings, in its top folder.
const SettingsFile = "journal.yaml"

// Settings are what holds for the whole journal. The zero value is a journal
// without a settings file.
type Settings struct {
	front.Where `noun:"the journal's settings"`
	Title       string          `field:"title"`
	Unit        quantity.Unit   `field:"unit"`        // of bare numbers, and for showing; inches where not given
	Finest      quantity.Length `field:"show to"`     // 1/8 in or 1/16 in
	Currency    Currency        `field:"currency"`    // of bare amounts of money
	Circa       Years           `field:"circa"`       // years on either side of "ca."; 5 where not given
	ShortNames  ShortNames      `field:"short names"` // what "waist" and the like stand for
	Keep        quantity.Length `field:"keep"`        // seam allowance that must stay where a seam does not say
	Ease        GarmentEase     `field:"ease"`        // wanted ease by garment where a build does not say
	Errors      measure.Errors  `field:"errors"`      // of measuring, by class of measure
	Measures    []OwnMeasure    `field:"measures"`
	Share       Audience        `field:"share"` // the widest audience of anything; self where not given

	Catalogue measure.Catalogue // computed: the standard's measures and the journal's own
	Format    quantity.Format   // computed: how lengths are shown
	Customs   edtf.Customs      // computed: how dates in words are read
}

// Currency is a code of ISO 4217.
type Currency string

// Years is a count of years, written with or without the word.
type Years int

// ShortNames says what measure a short form stands for.
type ShortNames map[string]string

// GarmentEase is the wanted ease of a kind of garment by measure.
type GarmentEase map[string]Wants

// An OwnMeasure is a measure that the journal adds to those of the standard.
type OwnMeasure struct {
	front.Where `noun:"a measure"`
	Name        Word          `field:"name,needed,short"`
	Class       measure.Class `field:"class"` // a segment length where not given
	Also        []Word        `field:"also"`
	Paired      Answer        `field:"paired"` // of an arm or leg, read on one side
	Taken       string        `field:"taken"`  // where the tape lies
}

// An Answer is yes, no, or nothing said.
type Answer int

// Answers.
const (
	Unsaid Answer = iota
	Yes
	No
)
