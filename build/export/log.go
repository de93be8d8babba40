// Package export answers: what does a maker hand to her sewing circle for a program to
// read? A [Log] lies as JSON beside the pages of a site made for a circle, at [Path],
// and `hussif circle` puts several into one site.
//
// A log is written from the same smaller journal as the pages (package audience) and
// says nothing that they do not. Its format is what [Schema] says; [Version] is raised
// when a reader of the old one would take something for what it is not.
//
// Whoever reads a log has it from somebody else, perhaps by way of others. [Read] trusts
// none of it: too large a file is not looked at, all of it is held against the schema,
// HTML keeps only the elements of plain prose, and text no sign that steers what shows
// it.
package export

// Path is where a log lies in a site.
const Path = "circle.json"

// Version is that of the format.
const Version = 1

// MaxSize is the largest log, in bytes, that is read. That of a journal of 10,000 notes
// has some 9 MB.
const MaxSize = 16 << 20

// A Log is what one maker shows of her builds. IDs hold within one log. Texts are plain
// but where they are said to be HTML.
type Log struct {
	Version    int         `json:"hussif_circle" doc:"the version of this format: 1"`
	Day        string      `json:"day" is:"day" doc:"the day it was written, and of which it tells the fit"`
	Maker      string      `json:"maker,omitempty" max:"100" doc:"who keeps the journal"`
	Title      string      `json:"title,omitempty" max:"200" doc:"what the journal is called"`
	Site       string      `json:"site,omitempty" is:"address" doc:"where the maker's own site is on the web; pages lie below it"`
	Builds     []Build     `json:"builds,omitempty" max:"5000" doc:"garments"`
	Patterns   []Pattern   `json:"patterns,omitempty" max:"5000" doc:"what they are cut after"`
	Techniques []Technique `json:"techniques,omitempty" max:"5000" doc:"how they are made"`
	References []Reference `json:"references,omitempty" max:"20000" doc:"what they rest on"`
	Next       []Next      `json:"next_time,omitempty" max:"20000" doc:"next-time notes, the newest first"`
}

// A Build is a garment.
type Build struct {
	ID         string    `json:"id" is:"id" doc:"by which the log knows it"`
	Page       string    `json:"page" is:"page" doc:"its page on the maker's site"`
	Title      string    `json:"title" is:"name" max:"500" doc:"what it is called"`
	Garment    string    `json:"garment,omitempty" max:"200" doc:"its kind in a word or two"`
	Era        *Date     `json:"era,omitempty" doc:"the date portrayed"`
	For        string    `json:"for,omitempty" max:"200" doc:"who wears it, where that may be known"`
	State      string    `json:"state,omitempty" one:"planned|under way|finished|waiting for repair|taken apart|gone" doc:"where it stands"`
	Finished   string    `json:"finished,omitempty" is:"day" doc:"when it was first fit to be worn"`
	Hours      float64   `json:"hours,omitempty" doc:"hours of work so far"`
	Patterns   []string  `json:"patterns,omitempty" is:"id" max:"20" doc:"IDs of what it is cut after"`
	Techniques []string  `json:"techniques,omitempty" is:"id" max:"100" doc:"IDs of techniques used on it"`
	About      string    `json:"about,omitempty" is:"html" doc:"its text, as HTML"`
	Features   []Feature `json:"features,omitempty" max:"200" doc:"details, with what they rest on"`
	Fit        *Fit      `json:"fit,omitempty" doc:"how it fits, as far as its wearer lets the circle know"`
	Photos     []Photo   `json:"photos,omitempty" max:"200" doc:"pictures of it; the first stands for it"`
	Log        []Entry   `json:"log,omitempty" max:"2000" doc:"what was done, the newest first"`
}

// A Date is one that a text gives or that a garment portrays.
type Date struct {
	EDTF  string `json:"edtf" is:"edtf" doc:"in the Extended Date/Time Format (ISO 8601-2:2019)"`
	Words string `json:"words,omitempty" max:"200" doc:"as its maker wrote it, where that was in words"`
}

// A Feature is a detail of a garment.
type Feature struct {
	What    string   `json:"what" is:"name" max:"200" doc:"the detail"`
	RestsOn []string `json:"rests_on,omitempty" is:"id" max:"100" doc:"IDs of references that it rests on"`
	Departs string   `json:"departs,omitempty" max:"2000" doc:"why it knowingly differs from its period"`
}

// A Fit is how a garment fits on the day of the log.
type Fit struct {
	Rows []FitRow `json:"rows" max:"100" doc:"one for each measure"`
}

// A FitRow is the fit at one measure.
type FitRow struct {
	Measure string `json:"measure" is:"name" max:"200" doc:"its name, that of ISO 8559-1:2017 where the standard has it"`
	Verdict string `json:"verdict" one:"fits|short|ample|too close to call" doc:"the verdict"`
	Words   string `json:"words" max:"300" doc:"the same in words, with by how much only where the wearer shows deltas"`
}

// A Photo is a picture of the site.
type Photo struct {
	File    string `json:"file" is:"picture" doc:"its largest copy, from the log's folder"`
	Alt     string `json:"alt,omitempty" max:"1000" doc:"what is to be seen"`
	Caption string `json:"caption,omitempty" max:"1000" doc:"what stands below it"`
}

// An Entry is a dated note.
type Entry struct {
	Page  string  `json:"page" is:"page" doc:"its page on the maker's site"`
	Title string  `json:"title" is:"name" max:"500" doc:"what it is called"`
	Day   string  `json:"day" is:"day" doc:"the day it tells of"`
	Stage string  `json:"stage,omitempty" max:"50" doc:"the kind of work"`
	Hours float64 `json:"hours,omitempty" doc:"hours of work"`
	Text  string  `json:"text,omitempty" max:"2000" doc:"how it begins"`
}

// A Pattern is what garments are cut after.
type Pattern struct {
	ID      string `json:"id" is:"id" doc:"by which the log knows it"`
	Page    string `json:"page" is:"page" doc:"its page on the maker's site"`
	Title   string `json:"title" is:"name" max:"500" doc:"what it is called"`
	Garment string `json:"garment,omitempty" max:"200" doc:"the kind of garment"`
	Era     *Date  `json:"era,omitempty" doc:"the date portrayed"`
	From    string `json:"from,omitempty" max:"500" doc:"who made it, or where it is from"`
	About   string `json:"about,omitempty" is:"html" doc:"its text, as HTML"`
}

// A Technique is a way of working.
type Technique struct {
	ID       string   `json:"id" is:"id" doc:"by which the log knows it"`
	Page     string   `json:"page" is:"page" doc:"its page on the maker's site"`
	Title    string   `json:"title" is:"name" max:"500" doc:"what it is called"`
	Era      *Date    `json:"era,omitempty" doc:"when it was in use"`
	Tools    []string `json:"tools,omitempty" max:"100" doc:"what it takes"`
	Cautions []string `json:"cautions,omitempty" max:"100" doc:"what to take care of"`
	About    string   `json:"about,omitempty" is:"html" doc:"its text, as HTML"`
}

// A Reference is something that bears witness to how garments were.
type Reference struct {
	ID        string   `json:"id" is:"id" doc:"by which the log knows it"`
	Page      string   `json:"page" is:"page" doc:"its page on the maker's site"`
	Title     string   `json:"title" is:"name" max:"500" doc:"what it is called"`
	Type      string   `json:"type,omitempty" max:"100" doc:"what it is: garment, painting, plate ..."`
	Date      *Date    `json:"date,omitempty" doc:"when it was made"`
	Creator   string   `json:"creator,omitempty" max:"500" doc:"who made it"`
	Publisher string   `json:"publisher,omitempty" max:"500" doc:"who published it"`
	Holder    string   `json:"holder,omitempty" max:"500" doc:"who keeps it"`
	Accession string   `json:"accession,omitempty" max:"200" doc:"its number there: with the holder it tells objects apart"`
	Address   string   `json:"address,omitempty" is:"address" doc:"where it is on the web"`
	Shows     []string `json:"shows,omitempty" max:"500" doc:"features that it shows"`
	Lacks     []string `json:"lacks,omitempty" max:"500" doc:"features that it lacks"`
}

// A Next is one thing to do another time.
type Next struct {
	Text       string   `json:"text" max:"5000" doc:"what to do"`
	Page       string   `json:"page" is:"page" doc:"where it is written on the maker's site"`
	From       string   `json:"from" is:"name" max:"500" doc:"what that page is called"`
	Day        string   `json:"day,omitempty" is:"day" doc:"when it was written"`
	State      string   `json:"state" one:"open|carried|set aside" doc:"what has become of it"`
	Build      string   `json:"build,omitempty" is:"id" doc:"ID of the build in whose log it is"`
	Patterns   []string `json:"patterns,omitempty" is:"id" max:"20" doc:"IDs of the patterns it is about"`
	Techniques []string `json:"techniques,omitempty" is:"id" max:"20" doc:"IDs of the techniques it is about"`
	Garments   []string `json:"garments,omitempty" max:"20" doc:"kinds of garment it is about"`
}
