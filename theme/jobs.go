package theme

import (
	"slices"
	"strconv"
)

// A JobGroup is the jobs for one occasion.
type JobGroup struct {
	Anchor string
	Title  string
	For    Link
	Away   string
	Jobs   []Job
}

// Occasions returns the jobs by what they are for, in the order in which the
// occasions first come up. Those for none are where the first of them is.
func (t ToDo) Occasions() []JobGroup {
	var groups []JobGroup
	for _, job := range t.Jobs {
		i := slices.IndexFunc(groups, func(g JobGroup) bool {
			return g.For.Href == job.For.Href && g.For.Text == job.For.Text
		})
		if i < 0 {
			i = len(groups)
			title := job.For.Text
			if title == "" {
				title = "For no occasion"
			}
			groups = append(groups, JobGroup{Anchor: "for-" + strconv.Itoa(i), Title: title, For: job.For, Away: job.Away})
		}
		groups[i].Jobs = append(groups[i].Jobs, job)
	}
	return groups
}

// Log returns the last note of the build as a list of one, empty where it has none.
func (j Job) Log() []Entry {
	if j.Stopped.Link.Text == "" {
		return nil
	}
	return []Entry{j.Stopped}
}
