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
	Title       string          `field:"title" doc:"what the journal is called" eg:"The Harbour Needles"`
	Maker       string          `field:"maker" doc:"who keeps it, as the sewing circle knows her" eg:"Ottilie"`
	Unit        quantity.Unit   `field:"unit" doc:"the unit of bare numbers, and of lengths as they are shown; inches where not given"`
	Finest      quantity.Length `field:"show to" doc:"the finest fraction of an inch that is shown; 1/8 in where not given" eg:"1/16 in"`
	Currency    Currency        `field:"currency" doc:"the currency of bare amounts of money"`
	Circa       Years           `field:"circa" doc:"years on either side of \"ca.\"; 5 where not given" eg:"5 years"`
	ShortNames  ShortNames      `field:"short names" doc:"what measure a short name stands for" eg:"{waist: natural waist girth}"`
	Keep        quantity.Length `field:"keep" doc:"seam allowance that must stay where a seam does not say" eg:"1/4 in"`
	Ease        GarmentEase     `field:"ease" tells:"body" doc:"the ease wanted by kind of garment, where a build does not say" eg:"{jacket: {bust girth: 1 to 2 in}}"`
	Errors      measure.Errors  `field:"errors" doc:"how far apart two readings may be, by class of measure" eg:"{large girth: 9 mm}"`
	Measures    []OwnMeasure    `field:"measures" doc:"measures of your own" eg:"[{name: over stomacher, class: large girth, also: [stomacher]}]"`
	Address     Address         `field:"address" doc:"where the site is on the web, so that links pasted elsewhere show their pictures" eg:"https://example.org/costumes/"`
	Share       Audience        `field:"share" tells:"sharing" doc:"the widest audience of anything; self where not given"`

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
	Name        Word          `field:"name,needed,short" doc:"what it is called" eg:"over stomacher"`
	Class       measure.Class `field:"class" doc:"how well it is read; as a segment length where not given"`
	Also        []Word        `field:"also" doc:"other names for it" eg:"[stomacher]"`
	Paired      Answer        `field:"paired" doc:"whether it is of an arm or leg, and read on one side"`
	Taken       string        `field:"taken" doc:"where the tape lies" eg:"round the body over the stomacher"`
}

// An Answer is yes, no, or nothing said.
type Answer int

// Answers.
const (
	Unsaid Answer = iota
	Yes
	No
)
