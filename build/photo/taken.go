package photo

import (
	"bytes"
	"io"
	"strconv"
	"strings"
	"time"

	"github.com/bep/imagemeta"
)

// A Taken is when a picture was taken, as the clock of its camera said. It is zero
// where the picture does not say.
type Taken struct {
	Time  time.Time // the calendar day and time of day there; in UTC where not Zoned
	Zoned bool      // whether the camera said how far its clock is from UTC
}

// IsZero reports whether the picture does not say when it was taken.
func (t Taken) IsZero() bool { return t.Time.IsZero() }

// Taken reads when the picture was taken from its Exif block.
func (i Info) Taken() Taken {
	if len(i.exif) == 0 {
		return Taken{}
	}
	taken, _ := described(bytes.NewReader(i.exif), imagemeta.TIFF)
	return taken
}

// described reads DateTimeOriginal and OffsetTimeOriginal (CIPA DC-008, tags 36867
// and 36881), and the size in pixels of an upright HEIF picture. What cannot be
// read says nothing, so the library's error is not wanted.
func described(r io.ReadSeeker, format imagemeta.ImageFormat) (Taken, imagemeta.ImageConfig) {
	const date, offset = "DateTimeOriginal", "OffsetTimeOriginal"
	found := make(map[string]string)
	result, _ := imagemeta.Decode(imagemeta.Options{
		R:           r,
		ImageFormat: format,
		Sources:     imagemeta.EXIF | imagemeta.CONFIG,
		ShouldHandleTag: func(t imagemeta.TagInfo) bool {
			return (t.Tag == date || t.Tag == offset) && strings.HasPrefix(t.Namespace, "IFD0")
		},
		HandleTag: func(t imagemeta.TagInfo) error {
			if text, ok := t.Value.(string); ok && found[t.Tag] == "" {
				found[t.Tag] = text
			}
			return nil
		},
	})
	return parseTaken(found[date], found[offset]), result.ImageConfig
}

// parseTaken reads the two as Exif writes them, "2026:03:01 18:22:03" and "+01:00".
// A camera whose clock was never set leaves blanks or zeros. Some programs write
// the date with hyphens; where only the time of day cannot be read the day counts.
func parseTaken(date, offset string) Taken {
	date = strings.Trim(date, " \x00")
	const day = len("2026:03:01")
	if len(date) < day {
		return Taken{}
	}
	at, err := time.Parse("2006:01:02", strings.ReplaceAll(date[:day], "-", ":"))
	if err != nil || at.Year() == 0 {
		return Taken{}
	}
	if len(date) > day+1 {
		clock := date[day+1:]
		if of, err := time.Parse("15:04:05", clock[:min(len(clock), len("18:22:03"))]); err == nil {
			at = at.Add(time.Duration(of.Hour())*time.Hour + time.Duration(of.Minute())*time.Minute + time.Duration(of.Second())*time.Second)
		}
	}
	seconds, ok := parseOffset(strings.Trim(offset, " \x00"))
	if !ok {
		return Taken{Time: at}
	}
	year, month, d := at.Date()
	hour, minute, second := at.Clock()
	return Taken{time.Date(year, month, d, hour, minute, second, 0, time.FixedZone("", seconds)), true}
}

// parseOffset reads how far a clock is ahead of UTC, in seconds.
func parseOffset(text string) (seconds int, ok bool) {
	if text == "Z" {
		return 0, true
	}
	if len(text) != len("+01:00") || text[0] != '+' && text[0] != '-' || text[3] != ':' {
		return 0, false
	}
	hours, err := strconv.ParseUint(text[1:3], 10, 8)
	minutes, err2 := strconv.ParseUint(text[4:], 10, 8)
	if err != nil || err2 != nil || hours > 14 || minutes > 59 {
		return 0, false
	}
	seconds = int(hours)*3600 + int(minutes)*60
	if text[0] == '-' {
		seconds = -seconds
	}
	return seconds, true
}
