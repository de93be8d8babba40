package journal

import (
	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/quantity"
)

// A Pattern is what pieces are cut after: a draft, a bought one, a rubbing.
type Pattern struct {
	Page    `noun:"a pattern"`
	Garment string      `field:"garment"`
	Era     edtf.Date   `field:"era"`
	From    string      `field:"from"` // who drafted or sells it, or what it was taken from
	Size    string      `field:"size"`
	After   []Ref       `field:"after"` // references that it follows
	Changed []Amendment `field:"changed"`
	Photos  []Photo     `field:"photos"`
}

// An Amendment is a change made to the pattern for good.
type Amendment struct {
	front.Where `noun:"a change"`
	Date        edtf.Day `field:"date"`
	What        string   `field:"what,short"`
	Measures    Changes  `field:"measures"`
	OnPattern   Answer   `field:"on the pattern"`
}

// A Reference is something that a garment can rest on: a surviving garment, a
// picture, a text. Where it names the same things, Dublin Core's meanings hold.
type Reference struct {
	Page      `noun:"a reference"`
	Type      ReferenceType `field:"type"`
	Date      edtf.Date     `field:"date"`
	Creator   string        `field:"creator"`
	Publisher string        `field:"publisher"`
	Holder    string        `field:"holder"`
	Accession string        `field:"accession number"`
	Address   Address       `field:"address"`
	Shows     []Word        `field:"shows"` // features
	Lacks     []Word        `field:"lacks"`
	Photos    []Photo       `field:"image"`
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
	What      string          `field:"what"` // cloth, thread, boning ...
	Fibre     string          `field:"fibre"`
	Weave     string          `field:"weave"`
	Colour    string          `field:"colour"`
	Width     quantity.Length `field:"width"`
	Thickness quantity.Length `field:"thickness"`
	Weight    string          `field:"weight"`
	Shrinks   string          `field:"shrinks"`
	Nap       Answer          `field:"nap"`  // whether all pieces must lie one way
	Made      edtf.Date       `field:"made"` // date of the cloth itself
	From      string          `field:"from"`
	Price     quantity.Money  `field:"price"`
	Photos    []Photo         `field:"photos"`
}

// A Technique is a way of doing a thing.
type Technique struct {
	Page     `noun:"a technique"`
	Era      edtf.Date `field:"era"`
	Tools    []string  `field:"tools"`
	Cautions []string  `field:"cautions"`
	After    []Ref     `field:"after"` // references and notes that it was learnt from
	Photos   []Photo   `field:"photos"`
}

// An Occasion is a day on which something is worn.
type Occasion struct {
	Page     `noun:"an occasion"`
	Date     edtf.Day  `field:"date,needed"`
	Until    edtf.Day  `field:"until"`
	Place    string    `field:"place"`
	Portrays edtf.Date `field:"portrays"`
	Weather  string    `field:"weather"`
	Worn     []Ref     `field:"worn" to:"build"`
	Photos   []Photo   `field:"photos"`
}
