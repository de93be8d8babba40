package main

import (
	"time"

	"hussif/build/intake"
	"hussif/content/journal"
)

type photosReport struct {
	Written bool            `json:"written" doc:"whether it was done; false for a plan"`
	Notes   []photosNote    `json:"notes" doc:"the notes that take pictures, by day"`
	Already []photosAlready `json:"already" doc:"pictures that were there already"`
	LeftOut []photosLeft    `json:"left_out" doc:"files that were left out"`
}

type photosNote struct {
	Day      string          `json:"day" doc:"the day of the pictures and of the note"`
	Build    journal.ID      `json:"build" doc:"the ID of the build"`
	Why      string          `json:"why,omitempty" doc:"why this build"`
	Note     string          `json:"note" doc:"the note, from the journal's folder"`
	New      bool            `json:"new" doc:"whether the note is a new one"`
	Pictures []photosPicture `json:"pictures" doc:"the pictures, in the order taken"`
}

type photosPicture struct {
	From      string `json:"from" doc:"the file, from the camera's folder"`
	To        string `json:"to" doc:"its copy, from the journal's folder"`
	Taken     string `json:"taken,omitempty" doc:"when it was taken, with the zone where the camera says it"`
	ByFile    bool   `json:"by_file_time,omitempty" doc:"whether that is only the time of the file"`
	Developed bool   `json:"developed,omitempty" doc:"whether it was HEIC and became JPEG"`
}

type photosAlready struct {
	File      string `json:"file" doc:"the file, from the camera's folder"`
	Same      string `json:"same_as" doc:"the file that holds the same picture"`
	InJournal bool   `json:"in_journal" doc:"whether that is one of the journal's"`
}

type photosLeft struct {
	File    string `json:"file" doc:"the file, from the camera's folder"`
	Reason  string `json:"reason" doc:"why it was left out"`
	Trouble bool   `json:"trouble" doc:"whether it is a picture that should have gone in"`
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
