package main

import (
	"time"

	"hussif/build/intake"
	"hussif/content/journal"
)

type photosReport struct {
	Written bool            `json:"written"` // false for a plan
	Notes   []photosNote    `json:"notes"`
	Already []photosAlready `json:"already"`
	LeftOut []photosLeft    `json:"left_out"`
}

type photosNote struct {
	Day      string          `json:"day"`
	Build    journal.ID      `json:"build"`
	Why      string          `json:"why,omitempty"`
	Note     string          `json:"note"`
	New      bool            `json:"new"`
	Pictures []photosPicture `json:"pictures"`
}

type photosPicture struct {
	From      string `json:"from"`
	To        string `json:"to"`
	Taken     string `json:"taken,omitempty"` // with the zone where the camera says it
	ByFile    bool   `json:"by_file_time,omitempty"`
	Developed bool   `json:"developed,omitempty"`
}

type photosAlready struct {
	File      string `json:"file"`
	Same      string `json:"same_as"`
	InJournal bool   `json:"in_journal"`
}

type photosLeft struct {
	File    string `json:"file"`
	Reason  string `json:"reason"`
	Trouble bool   `json:"trouble"` // a picture that should have gone in
}

// photosJSON is a plan, or what was done of it, for another program.
func photosJSON(p *intake.Plan, notes []intake.Entry, left []intake.Left, written bool) photosReport {
	out := photosReport{Written: written, Notes: []photosNote{}, Already: []photosAlready{}, LeftOut: []photosLeft{}}
	for _, e := range notes {
		note := photosNote{Day: e.Day.String(), Build: e.Build.ID, Why: e.Why, Note: e.Note, New: e.New}
		for _, pic := range e.Pictures {
			picture := photosPicture{From: pic.Path, To: pic.To, ByFile: pic.ByFile, Developed: pic.HEIC}
			switch {
			case pic.Taken.Zoned:
				picture.Taken = pic.Taken.Time.Format(time.RFC3339)
			case !pic.Taken.IsZero():
				picture.Taken = pic.Taken.Time.Format("2006-01-02T15:04:05")
			}
			note.Pictures = append(note.Pictures, picture)
		}
		out.Notes = append(out.Notes, note)
	}
	for _, d := range p.Doubles {
		out.Already = append(out.Already, photosAlready{d.Path, d.Same, d.Here})
	}
	for _, l := range left {
		out.LeftOut = append(out.LeftOut, photosLeft{l.Path, l.Reason, l.Trouble})
	}
	return out
}
