package journal

import (
	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/quantity"
)

// A Pattern is what pieces are cut after: a draft, a bought one, a rubbing.
type Pattern struct {
	Page    `noun:"a pattern"`
	Garment string      `field:"garment" doc:"its kind in a word or two: jacket, petticoat, stays" eg:"jacket"`
	Era     edtf.Date   `field:"era" doc:"the date portrayed" eg:"178X"`
	From    string      `field:"from" doc:"who drafted or sells it, or what it was taken from" eg:"drafted at the kitchen table"`
	Size    string      `field:"size" tells:"body" doc:"its size, as it is sold or drafted" eg:"14"`
	After   []Ref       `field:"after" doc:"references that it follows" eg:"[green-jacket]"`
	Changed []Amendment `field:"changed" doc:"changes made to it for good" eg:"[{date: 2026-03-01, what: wider sleeve, on the pattern: yes}]"`
	Photos  []Photo     `field:"photos" doc:"pictures of it" eg:"[draft.png]"`
}

// An Amendment is a change made to the pattern for good.
type Amendment struct {
	front.Where `noun:"a change"`
	Date        edtf.Day `field:"date" doc:"when it was changed" eg:"2026-03-01"`
	What        string   `field:"what,short" doc:"what was changed" eg:"wider sleeve"`
	Measures    Changes  `field:"measures" tells:"change" doc:"what that does to each measure" eg:"{upper arm girth: 1 in}"`
	OnPattern   Answer   `field:"on the pattern" doc:"whether the change reached the paper"`
}

// A Reference is something that a garment can rest on: a surviving garment, a
// picture, a text. Where it names the same things, Dublin Core's meanings hold.
type Reference struct {
	Page      `noun:"a reference"`
	Type      ReferenceType `field:"type" doc:"what it is"`
	Date      edtf.Date     `field:"date" doc:"when the thing itself was made" eg:"ca. 1785"`
	Creator   string        `field:"creator" doc:"who made it" eg:"unknown hand"`
	Publisher string        `field:"publisher" doc:"who published it" eg:"the society of the green"`
	Holder    string        `field:"holder" doc:"who keeps it" eg:"a house by the river"`
	Accession string        `field:"accession number" doc:"its number in that collection" eg:"1.23"`
	Address   Address       `field:"address" doc:"where it is on the web" eg:"https://example.org/green-jacket"`
	Shows     []Word        `field:"shows" doc:"features that can be seen on it" eg:"[piped armhole, long sleeve]"`
	Lacks     []Word        `field:"lacks" doc:"features that it does not have" eg:"[collar]"`
	Photos    []Photo       `field:"image" doc:"pictures of it" eg:"[{file: green.png, alt: The front}]"`
}

// A ReferenceType says what a reference is.
type ReferenceType string

// ReferenceTypes lists the types of reference.
var ReferenceTypes = []ReferenceType{
	"surviving garment", "fashion plate", "portrait", "painting", "print",
	"photograph", "text", "cutting manual", "account book", "replica",
}

// An Address is a web address, http or https.
type Address string

// A Material is cloth, thread, cord, bone, hooks: whatever goes into a garment.
type Material struct {
	Page      `noun:"a material"`
	What      string          `field:"what" doc:"cloth, thread, boning, cord, hooks" eg:"cloth"`
	Fibre     string          `field:"fibre" doc:"what it is made of" eg:"linen"`
	Weave     string          `field:"weave" doc:"how it is woven or knitted" eg:"plain"`
	Colour    string          `field:"colour" doc:"its colour and figure" eg:"blue and white stripe"`
	Width     quantity.Length `field:"width" doc:"from selvedge to selvedge" eg:"54 in"`
	Thickness quantity.Length `field:"thickness" doc:"how thick it is" eg:"0.5 mm"`
	Weight    string          `field:"weight" doc:"how heavy it is, in words or by area" eg:"light"`
	Shrinks   string          `field:"shrinks" doc:"how much it shrinks when washed" eg:"5 %"`
	Nap       Answer          `field:"nap" doc:"whether all pieces must lie one way"`
	Made      edtf.Date       `field:"made" doc:"when the cloth itself was made" eg:"1990s"`
	From      string          `field:"from" tells:"place" doc:"where it was bought" eg:"the fair"`
	Price     quantity.Money  `field:"price" tells:"money" doc:"what one length or one thing costs" eg:"20 EUR"`
	Photos    []Photo         `field:"photos" doc:"pictures of it" eg:"[linen.png]"`
}

// A Technique is a way of doing a thing.
type Technique struct {
	Page     `noun:"a technique"`
	Era      edtf.Date `field:"era" doc:"when it was in use" eg:"1780s"`
	Tools    []string  `field:"tools" doc:"what it is done with" eg:"[awl, bodkin]"`
	Cautions []string  `field:"cautions" doc:"what to be careful of" eg:"[let the iron cool before it is put away]"`
	After    []Ref     `field:"after" doc:"references and notes that it was learnt from" eg:"[green-jacket]"`
	Photos   []Photo   `field:"photos" doc:"pictures of it" eg:"[piping.png]"`
}

// An Occasion is a day on which something is worn.
type Occasion struct {
	Page     `noun:"an occasion"`
	Date     edtf.Day  `field:"date,needed" doc:"the day, or the first day" eg:"2026-06-01"`
	Until    edtf.Day  `field:"until" doc:"the last day, where there are several" eg:"2026-06-02"`
	Place    string    `field:"place" tells:"place" doc:"where it is" eg:"the green"`
	Portrays edtf.Date `field:"portrays" doc:"the date portrayed" eg:"1784"`
	Weather  string    `field:"weather" doc:"what the weather was or may be" eg:"rain"`
	Worn     []Ref     `field:"worn" to:"build" doc:"builds that are worn" eg:"[striped-jacket]"`
	Photos   []Photo   `field:"photos" doc:"pictures of it" eg:"[day.png]"`
}
