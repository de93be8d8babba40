package quantity_test

import (
	"testing"
	"time"

	. "hussif/content/quantity"
)

func TestParseDuration(t *testing.T) {
	long := 3*time.Hour + 20*time.Minute
	accepts(t, ParseDuration, []trial[time.Duration]{
		{"3h 20m", long}, {"3 h 20 min", long}, {"3h20m", long}, {"3 hours 20 minutes", long}, {"3:20", long}, {" 3 hrs. 20 mins. ", long}, {"200 min", long}, {"3 1/3 h", long},
		{"3.5 h", 210 * time.Minute}, {"3,5 h", 210 * time.Minute}, {"3½ h", 210 * time.Minute}, {"3.5", 210 * time.Minute}, {"1/2", 30 * time.Minute},
		{"3 h", 3 * time.Hour}, {"3", 3 * time.Hour}, {"20 min", 20 * time.Minute}, {"0", 0}, {"0:05", 5 * time.Minute}, {"1 h 90 min", 150 * time.Minute}, {"87600 h", 87600 * time.Hour},
	})
	refuses(t, ParseDuration, []refusal{
		{"", "", "number is missing", nil},
		{"NaN", "NaN", "number is missing", nil},
		{"Inf h", "Inf h", "number is missing", nil},
		{"-3 h", "-3 h", "less than no time", []string{"3 h"}},
		{"3 h 20", "", "hours or minutes", []string{"3 h 20 min"}},
		{"20 min 3 h", "3 h", "before minutes", nil},
		{"1 h 1 h", "1 h", "before minutes", nil},
		{"3 huors", "huors", "neither hours nor minutes", []string{"3 hours"}},
		{"3 weeks", "weeks", "neither hours nor minutes", []string{"3 h", "3 min"}},
		{"2 days", "days", "differ in length", nil},
		{"3:7", ":7", "as in 3:20", nil}, {"3:60", ":60", "as in 3:20", nil}, {"3:20:15", ":20:15", "as in 3:20", nil}, {"3.5:20", ":20", "as in 3:20", nil},
		{"1/7 h", "1/7 h", "exactly", []string{"9 min"}},
		{"87600:01", "87600:01", "ten years", nil}, {" 87601:00", "87601:00", "ten years", nil},
		{"87601 h", "87601 h", "ten years", nil},
		{"87600 h 1 min", "87600 h 1 min", "ten years", nil},
		{"9000000000000000000 h", "9000000000000000000 h", "ten years", nil},
		{"3 h!", "!", "cannot make sense", nil},
	})
}

func TestFormatDuration(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0 min", 29 * time.Second: "0 min", 30 * time.Second: "1 min", -30 * time.Second: "−1 min", -29 * time.Second: "0 min",
		200 * time.Minute: "3 h 20 min", 3 * time.Hour: "3 h", 20 * time.Minute: "20 min", 59*time.Minute + 30*time.Second: "1 h", 100 * time.Hour: "100 h",
	} {
		if got := FormatDuration(d); got != want {
			t.Errorf("%d ns is shown as %q, want %q", d, got, want)
		}
	}
}
