package edtf

import "testing"

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		text, reason string
		instead      []string
	}{
		{"", "a date is missing", nil},
		{" 1784", "a date starts with its year in four digits", []string{"1784"}},
		{"..", "a date starts with its year in four digits", nil},
		{"785", "a year has four digits", []string{"0785"}},
		{"17840", "a year has four digits", nil},
		{"178x", "a year has four digits", []string{"178X"}},
		{"178u", "a year has four digits", []string{"178X"}},
		{"-0000", "the year 0 has no minus sign", nil},
		{"1784-5", "a month has two digits", []string{"1784-05", "1784/1785"}},
		{"1784-00-10", "there is no month 00", []string{"1784-XX-10"}},
		{"1784-87", "there is no month 87", []string{"1784/1787", "1784"}},
		{"1784-4X", "there is no month 4X", nil},
		{"1784-21-03", "a season has no day", []string{"1784-03-21", "1784-21"}},
		{"1784-05-32", "there is no day 32 in any month", []string{"1784-05-31", "1784-05"}},
		{"1912-04-31", "April 1912 has only 30 days", []string{"1912-04-30", "1912-04"}},
		{"1784-02-3X", "no day of the calendar is written like that", nil},
		{"XXX1-02-29", "no day of the calendar is written like that", []string{"XXX1-02"}},
		{"178X~", "a part with an X cannot be marked ?, ~ or % as well", []string{"1780~/1789~"}},
		{"1784-XX?", "a part with an X cannot be marked ?, ~ or % as well", []string{"1784-01?/1784-12?"}},
		{"1784?~", "nothing can follow the date here", []string{"1784%"}},
		{"1790/1780", "the interval ends before it starts", []string{"1780/1790"}},
		{"1784/open", "a date starts with its year in four digits", []string{"1784/.."}},
		{"../", "an interval has a date at one end at least", nil},
		{"1784..1787", "a range with two dots stands in brackets", []string{"[1784..1787]", "1784/1787"}},
		{"[1784,1786", "the set is not closed with ]", nil},
		{"[]", "a date starts with its year in four digits", nil},
		{"[..]", "a range with two dots has a date at one end at least", nil},
		{"[....]", "a date starts with its year in four digits", nil},
		{"[1787..1784]", "the range ends before it starts", nil},
		{"[1784-05..1787]", "both ends of a range are years, both months or both days", nil},
		{"[1784,..1787]", "only the first date of a set can be open before it and only the last after it", nil},
		{"[1784, 1786]", "a date starts with its year in four digits", []string{"[1784,1786]"}},
		{"Y1784", "Y is for years of more than four digits", []string{"1784"}},
		{"Y17840-05", "a year written with Y or S has no month", []string{"Y17840"}},
		{"Y1E99", "that year is further off than days can be counted here", nil},
		{"Y99999999999999999999", "that year is further off than days can be counted here", nil},
		{"Y17E", "a power of ten follows E", nil},
		{"1950S5", "S is followed by how many of the year's 4 digits are certain", nil},
		{"195XS2", "a year with an X has no S after it", nil},
		{"ca. 1785", "a date starts with its year in four digits", []string{"1785~"}},
	} {
		_, err := Parse(c.text)
		checkRefused(t, c.text, err, c.reason, c.instead)
	}
}

func TestReadRefuses(t *testing.T) {
	const forms = "; a date may be such as 1784, ca. 1785, 1780s, late 18th century or 17 May 1784"
	for _, c := range []struct {
		text, reason string
		instead      []string
	}{
		{"  ", "a date is missing" + forms, nil},
		{"next year", `"next" does not fit into a date here` + forms, nil},
		{"cira 1785", `"cira" does not fit into a date here`, []string{"circa 1785"}},
		{"late 18th centuary", `"centuary" does not fit into a date here`, []string{"late 18th century"}},
		{"a jacket of about 1785", `"a" does not fit into a date here`, []string{"about 1785"}},
		{"not 1784", `"not" does not fit into a date here`, []string{"1784"}},
		{"1784 or", "the date is not finished", []string{"1784"}},
		{"between 1784 and late", "the year, decade or century of this date is missing", []string{"1784"}},
		{"1690s–80s", "what is shortened does not come after 1690; write it in full", []string{"1690s"}},
		{"late May 1784", `"may" does not fit into a date here`, []string{"May 1784"}},
		{"late 18th", "the year, decade or century of this date is missing" + forms, nil},
		{"second quarter of the 1780s", "that part is said of a century or a year only", []string{"1780s"}},
		{"1784, 1786", "put or, or and, before the last of several dates", []string{"1784", "1786"}},
		{"before 1784 or 1786", "only one date can be before, after or by", []string{"1784 or 1786"}},
		{"between 1784 or 1786", "between is followed by two dates with and", []string{"1784 or 1786"}},
		{"0 May 1784", `nothing can be made of "0" here`, []string{"May 1784"}},
		{"0th May 1784", `nothing can be made of "0" here`, []string{"May 1784"}},
		{"May 0, 1784", `nothing can be made of "0" here`, []string{"1784"}},
		{"00 May 1784", `"may" does not fit into a date here`, []string{"May 1784"}},
		{"31 April 1784", "April 1784 has only 30 days", []string{"April 1784"}},
		{"44 BC", "a year BC is written in EDTF, as -0043 for 44 BC" + forms, nil},
		{"1700s", "1700s may be ten years or a hundred", []string{"1700/1709", "1700/1799"}},
		{"early 1700s", "1700s may be ten years or a hundred", []string{"1700/1703", "1700/1725"}},
		{"1784-5", "this may be 1784 to 1785 or May 1784", []string{"1784/1785", "1784-05"}},
		{"1820-24", "this may be 1820 to 1824 or winter 1820", []string{"1820/1824", "[1820-24]"}},
		{"1784–12", "this may be a month of 1784 or a year of the next century", []string{"1784-12", "1784/1812"}},
		{"1784–83", "83 is no month, and as a year it does not come after 1784", []string{"1784"}},
		{"03/04/1784", "this may be 3 April 1784 or 4 March 1784", []string{"1784-04-03", "1784-03-04"}},
		{"178X~", "a part with an X cannot be marked ?, ~ or % as well", []string{"1780~/1789~"}},
	} {
		_, err := Read(c.text, Customs{})
		checkRefused(t, c.text, err, c.reason, c.instead)
	}
}

func TestErrorMessage(t *testing.T) {
	_, err := ParseDay("03/04/2026")
	const want = `"03/04/2026": this may be 3 April 2026 or 4 March 2026; write "2026-04-03" or "2026-03-04"`
	if err == nil || err.Error() != want {
		t.Errorf("got %v\nwant %s", err, want)
	}
}

func TestOffsetPointsAtTheWord(t *testing.T) {
	for text, want := range map[string]int{
		"late 18th centuary": len("late 18th "),
		"  next year":        len("  "),
		"1784-05-32":         len("1784-05-"),
		"[1784,1785-13]":     len("[1784,1785-"),
		"ca. ":               len("ca."),
	} {
		_, err := Read(text, Customs{})
		if fault, ok := err.(*Error); !ok || fault.Offset != want {
			t.Errorf("%q: %#v, want offset %d", text, err, want)
		}
	}
}
