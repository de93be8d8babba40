package journal

import (
	"time"

	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/measure"
	"hussif/content/quantity"
	"hussif/content/source"
)

// A Note is what was done, seen or decided on one day.
type Note struct {
	Page           `noun:"a note"`
	Date           edtf.Day      `field:"date" doc:"the day it tells of, where the file's name does not begin with it" eg:"2026-02-14"`
	Build          Ref           `field:"build" to:"build" doc:"the build it belongs to, where the folder does not tell" eg:"striped-jacket"`
	Stage          Stage         `field:"stage" doc:"the kind of work that it tells of"`
	Hours          time.Duration `field:"hours" doc:"how long the work took" eg:"3 h 20 min"`
	Spent          []Spending    `field:"spent" tells:"money" doc:"money paid that day" eg:"[12.50 EUR, {amount: 3 EUR, what: pins}]"`
	Techniques     []Ref         `field:"techniques" to:"technique" doc:"techniques used that day" eg:"[piping]"`
	Occasion       Ref           `field:"occasion" to:"occasion" doc:"where it was worn" eg:"market-day"`
	Measured       Readings      `field:"measured" tells:"body" doc:"the garment's own measures that day" eg:"{bust girth: 36 3/4 in, waist girth: 27 1/2 in}"`
	Body           []Session     `field:"body" tells:"body" doc:"measurings of the wearer taken that day" eg:"[{over: [shift], waist girth: 28 in}]"`
	Opened         []Word        `field:"opened" doc:"seams unpicked that day" eg:"[side]"`
	Sewed          []Word        `field:"sewed" doc:"seams sewn that day" eg:"[side]"`
	Altered        []Altered     `field:"altered" tells:"change" doc:"what was changed on the garment" eg:"[{seam: side back, was: 5/8 in, now: 1/4 in}]"`
	PatternChanged Changes       `field:"pattern changed" tells:"change" doc:"what was changed on the pattern while cutting, by measure" eg:"{upper arm girth: 1 in}"`
	OnPattern      Answer        `field:"on the pattern" tells:"change" doc:"whether that change reached the paper"`
	Decided        []Decision    `field:"decided" doc:"questions that were settled, and why" eg:"[{question: \"Keep the cuffs?\", chose: a plain wrist, because: no cloth is left}]"`
	TurnedOut      []Outcome     `field:"turned out" doc:"how earlier decisions turned out" eg:"[{decision: 2026-02-14-fitting#decided-keep-cuffs, how: regretted}]"`
	Carries        []Ref         `field:"carries" doc:"next-time notes that this work answers" eg:"[jacket-draft#next-cut-sleeve-wider]"`
	SetAside       []SetAside    `field:"set aside" doc:"next-time notes that it does not answer, with the reason" eg:"[{note: jacket-draft#next-cut-sleeve-wider, because: the sleeves are cut}]"`
	Used           []Movement    `field:"used" doc:"material that went into the work" eg:"[{material: striped-linen, amount: 2 yd}]"`
	Bought         []Movement    `field:"bought" doc:"material that came in" eg:"[{material: striped-linen, amount: 5 yd, cost: 60 EUR, from: the fair}]"`
	LeftOver       []Movement    `field:"left over" doc:"material that was left, by size and grain" eg:"[{material: striped-linen, size: 9 x 31 in, grain: straight}]"`
	Fitted         []Fault       `field:"fitted" tells:"fit" doc:"what a fitting showed" eg:"[{where: upper arm, fault: binds}]"`
	Moves          Moves         `field:"moves" tells:"fit" doc:"what the wearer can do in the garment" eg:"{reach: yes, sit: yes, dress alone: no}"`
	Photos         []Photo       `field:"photos" doc:"pictures of that day" eg:"[{file: photos/back.jpg, alt: Seen from behind}]"`

	Of *Build // computed by Resolve; nil for a note that belongs to no build
}

// A Stage is the kind of work that a note tells of.
type Stage string

// Stages, in the order in which a garment passes through them.
var Stages = []Stage{
	"planning", "mock-up", "cutting", "sewing", "fitting", "unpicking",
	"altering", "finishing", "worn", "cleaned",
}

// Spending is money paid.
type Spending struct {
	front.Where `noun:"an expense"`
	Amount      quantity.Money `field:"amount,needed,short" doc:"the money paid" eg:"12.50 EUR"`
	What        string         `field:"what" doc:"what it was paid for" eg:"pins"`
}

// An Altered is a row of a garment's ledger: what was changed, and what that
// should have done to which measure.
type Altered struct {
	front.Where `noun:"an alteration"`
	What        string          `field:"what" doc:"what was done, in words" eg:"hem let down"`
	Seam        Word            `field:"seam" doc:"the seam that was sewn anew" eg:"side back"`
	Panel       string          `field:"panel" doc:"the piece that was let in" eg:"gusset"`
	Place       string          `field:"where" doc:"where on the garment" eg:"left and right"`
	At          Levels          `field:"at" doc:"the measures at which it was done; all that the seam crosses, where not given" eg:"[waist girth]"`
	Was         quantity.Length `field:"was" doc:"allowance on each edge before" eg:"5/8 in"`
	Now         quantity.Length `field:"now" doc:"allowance on each edge after" eg:"1/4 in"`
	LetOut      quantity.Edges  `field:"let out" doc:"how much it was let out, and on what that is counted" eg:"3/8 in each edge"`
	TakenIn     quantity.Edges  `field:"taken in" doc:"how much it was taken in, and on what that is counted" eg:"1/2 in each seam"`
	Count       int             `field:"count" doc:"how many panels; 1 where not given" eg:"2"`
	Times       int             `field:"times" doc:"how often the seams cross one reading, where it is not their count" eg:"2"`
	Widths      Changes         `field:"widths" doc:"how wide one panel is, finished, at each measure" eg:"{bust girth: 1 in, waist girth: 1/2 in}"`
	Changes     Changes         `field:"changes" doc:"what it does to each measure in all; less than nothing makes it smaller" eg:"{waist girth: 1 1/2 in}"`
	Because     string          `field:"because" doc:"why it was done" eg:"it gaped"`
}

// A Level is a measure at which a seam was re-sewn, with the allowances there
// where they differ from those of the whole row.
type Level struct {
	front.Where `noun:"a level"`
	Point       measure.Point
	Name        source.Span
	Was         quantity.Length `field:"was" doc:"allowance on each edge there before" eg:"5/8 in"`
	Now         quantity.Length `field:"now" doc:"allowance on each edge there after" eg:"1/4 in"`
}

// Levels are the measures at which a seam was re-sewn, in the order written.
type Levels []Level

// A Change is what is added to a measure; less than nothing makes it smaller.
type Change struct {
	Point measure.Point
	By    quantity.Length
	Key   source.Span
	Span  source.Span
}

// Changes are the changes of several measures, in the order written.
type Changes []Change

// A Decision is a question that was settled, and why.
type Decision struct {
	front.Where `noun:"a decision"`
	Question    string   `field:"question,short" doc:"what was asked" eg:"Keep the cuffs?"`
	Chose       string   `field:"chose" doc:"what was chosen" eg:"a plain wrist"`
	InsteadOf   []string `field:"instead of" doc:"what it was chosen over" eg:"[cuffs, a ruffle]"`
	Because     string   `field:"because" doc:"why" eg:"no cloth is left"`
	RestsOn     []Ref    `field:"rests on" doc:"references and notes that the choice rests on" eg:"[green-jacket]"`

	Anchor string // computed: names the part of the page that holds it
}

// An Outcome is how an earlier decision turned out.
type Outcome struct {
	front.Where `noun:"an outcome"`
	Decision    Ref     `field:"decision,needed" doc:"the decision, as a link to its page and part" eg:"2026-02-14-fitting#decided-keep-cuffs"`
	How         Verdict `field:"how,needed" doc:"what became of it"`
	Because     string  `field:"because" doc:"why" eg:"the wrist shows"`
}

// A Verdict is what became of a decision.
type Verdict string

// Verdicts on decisions.
const (
	Kept      Verdict = "kept"
	Regretted Verdict = "regretted"
	Changed   Verdict = "changed"
)

// A Movement is material that came in, went into the work, or was left over.
type Movement struct {
	front.Where `noun:"a material entry"`
	Material    Ref             `field:"material,needed,short" to:"material" doc:"the material" eg:"striped-linen"`
	Amount      quantity.Amount `field:"amount" doc:"how much of it" eg:"2 1/4 yd"`
	Size        quantity.Size   `field:"size" doc:"width and length of a piece" eg:"9 x 31 in"`
	Grain       string          `field:"grain" doc:"which way the grain runs in a piece" eg:"straight"`
	Pieces      int             `field:"pieces" doc:"how many pieces of that size; 1 where not given" eg:"3"`
	Cost        quantity.Money  `field:"cost" tells:"money" doc:"what was paid for it" eg:"60 EUR"`
	From        string          `field:"from" tells:"place" doc:"where it was bought" eg:"the fair"`
	Lot         string          `field:"lot" doc:"which lot of the material" eg:"second bale"`
}

// A Fault is what a fitting showed.
type Fault struct {
	front.Where `noun:"a fault"`
	At          string `field:"where" doc:"where on the garment" eg:"upper arm"`
	Fault       string `field:"fault,needed,short" doc:"what is wrong there, in fitting-room words" eg:"binds"`
}

// Moves is what the wearer can do in the garment.
type Moves struct {
	front.Where `noun:"a group of moves"`
	Reach       Answer `field:"reach" doc:"whether the wearer can reach up and forward"`
	Sit         Answer `field:"sit" doc:"whether the wearer can sit"`
	Walk        Answer `field:"walk" doc:"whether the wearer can walk, and take a stair"`
	DressAlone  Answer `field:"dress alone" doc:"whether the wearer can dress without help"`
}

// A Photo is a picture with what it shows.
type Photo struct {
	front.Where `noun:"a photo"`
	File        Word     `field:"file,needed,short" doc:"the picture's file, from the note's folder" eg:"photos/back.jpg"`
	Caption     string   `field:"caption" doc:"what is said under it" eg:"After letting out"`
	Alt         string   `field:"alt" doc:"what it shows, for those who cannot see it" eg:"Back view; the side seams hang straight"`
	Piece       Word     `field:"piece" doc:"the piece that it shows" eg:"sleeve"`
	Face        Answer   `field:"face" tells:"sharing" doc:"whether somebody can be recognised"`
	Blur        []Region `field:"blur" tells:"sharing" doc:"regions that nobody else shall see sharply, such as faces: from the left, from the top, width and height in hundredths of the picture" eg:"[40% 5% 20% 25%]"`
	Share       Audience `field:"share" tells:"sharing" doc:"who may see it"`
}
