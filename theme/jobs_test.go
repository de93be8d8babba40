package theme

import (
	"slices"
	"testing"
)

func TestJobsByOccasion(t *testing.T) {
	market, promenade := link("market-day.html", "Market day"), link("promenade.html", "Promenade")
	page := ToDo{Jobs: []Job{
		{Build: link("", "jacket"), For: market, Away: "in 23 days"},
		{Build: link("", "skirt"), For: promenade, Away: "in 126 days"},
		{Build: link("", "petticoat"), For: market, Away: "in 23 days"},
		{Build: link("", "coat")},
	}}
	var got []string
	for _, group := range page.Occasions() {
		got = append(got, group.Anchor+" "+group.Title+" "+group.Away)
		for _, job := range group.Jobs {
			got = append(got, job.Build.Text)
		}
	}
	want := []string{"for-0 Market day in 23 days", "jacket", "petticoat", "for-1 Promenade in 126 days", "skirt", "for-2 For no occasion ", "coat"}
	if !slices.Equal(got, want) {
		t.Errorf("the jobs are %q, want %q", got, want)
	}
	if groups := (ToDo{}).Occasions(); groups != nil {
		t.Errorf("nothing to do comes to %v", groups)
	}
}

func TestJobThatNeverBegan(t *testing.T) {
	if log := (Job{}).Log(); log != nil {
		t.Errorf("a job without a note stopped at %v", log)
	}
}
