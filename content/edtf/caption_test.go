package edtf

import (
	"strings"
	"testing"
)

func TestCaptions(t *testing.T) {
	for caption, want := range map[string]string{
		"ca. 1785":                         "1785~",
		"ca 1785":                          "1785~",
		"c. 1785":                          "1785~",
		"c1785":                            "1785~",
		"circa 1785":                       "1785~",
		"about 1785":                       "1785~",
		"1785 (?)":                         "1785?",
		"1785 ?":                           "1785?",
		"possibly 1784":                    "1784?",
		"probably 1784":                    "1784?",
		"probably ca. 1784":                "1784%",
		"dated 1784":                       "1784",
		"probably made in 1784":            "1784?",
		"made in 1784":                     "1784",
		"1780s":                            "178X",
		"the 1780's":                       "178X",
		"ca. 1780s":                        "1780~/1789~",
		"early 1780s":                      "1780/1783",
		"mid 1780s":                        "1784/1786",
		"mid-1780s":                        "1784/1786",
		"late 1780s":                       "1787/1789",
		"second half of the 1780s":         "1785/1789",
		"1784-87":                          "1784/1787",
		"1784–87":                          "1784/1787",
		"1784–7":                           "1784/1787",
		"1784 - 1787":                      "1784/1787",
		"1784-1787":                        "1784/1787",
		"1784 to 1787":                     "1784/1787",
		"from 1784 to 1787":                "1784/1787",
		"1784/85":                          "1784/1785",
		"1801–02":                          "1801/1802",
		"1820-30":                          "1820/1830",
		"ca. 1780-85":                      "1780~/1785~",
		"1780-ca. 1785":                    "1780/1785~",
		"1780-85 (?)":                      "1780?/1785?",
		"1780?-85":                         "1780?/1785",
		"between 1784 and 1787":            "[1784..1787]",
		"between ca. 1784 and May 1787":    "1784~/1787-05~",
		"1784 or 1785":                     "[1784,1785]",
		"1784, 1785 or 1787":               "[1784,1785,1787]",
		"1780s or 1790s":                   "[1780..1789,1790..1799]",
		"1784 and 1786":                    "{1784,1786}",
		"1784 & 1786":                      "{1784,1786}",
		"before 1790":                      "[..1789]",
		"pre-1790":                         "[..1789]",
		"before May 1784":                  "[..1784-04]",
		"before 1 March 1784":              "[..1784-02-29]",
		"before ca. 1790":                  "[..1789~]",
		"by 1790":                          "[..1790]",
		"not after 1790":                   "[..1790]",
		"no later than 1790":               "[..1790]",
		"after 1784":                       "[1785..]",
		"after the 1780s":                  "[1790..]",
		"not before 1784":                  "[1784..]",
		"not earlier than 1784":            "[1784..]",
		"no earlier than 1784":             "[1784..]",
		"post-1784":                        "[1785..]",
		"1784 onwards":                     "[1784..]",
		"1790 or earlier":                  "[..1790]",
		"1784 or later":                    "[1784..]",
		"from 1784":                        "[1784..]",
		"18th century":                     "17XX",
		"18th-century":                     "17XX",
		"18th c.":                          "17XX",
		"Eighteenth Century":               "17XX",
		"ca. 18th century":                 "1700~/1799~",
		"late 18th century":                "1775/1799",
		"early 19th c.":                    "1800/1825",
		"mid-19th c.":                      "1835/1865",
		"middle of the 19th century":       "1835/1865",
		"first half of the 18th century":   "1700/1749",
		"2nd quarter of the 19th century":  "1825/1849",
		"last quarter of the 18th century": "1775/1799",
		"middle third of the 18th century": "1734/1766",
		"1760s-1770s":                      "1760/1779",
		"1760s–70s":                        "1760/1779",
		"1690s-1700s":                      "1690/1709",
		"late 18th-early 19th century":     "1775/1825",
		"late 18th or early 19th century":  "[1775..1799,1800..1825]",
		"early to mid 18th century":        "1700/1765",
		"18th and 19th centuries":          "{1700..1799,1800..1899}",
		"May 1784":                         "1784-05",
		"Sept. 1784":                       "1784-09",
		"ca. May 1784":                     "1784-05~",
		"May-June 1784":                    "1784-05/1784-06",
		"17 May 1784":                      "1784-05-17",
		"17th of May 1784":                 "1784-05-17",
		"May 17, 1784":                     "1784-05-17",
		"12-17 May 1784":                   "1784-05-12/1784-05-17",
		"spring 1784":                      "1784-25",
		"fall of 1784":                     "1784-27",
		"winter 1784":                      "1784-28",
		"winter 1784/85":                   "1784-12/1785-02",
		"spring-summer 1784":               "1784-03/1784-08",
		"late 1784":                        "1784-39",
		"first quarter of 1784":            "1784-33",
	} {
		for _, text := range []string{caption, strings.ToUpper(caption), " " + caption + "\n"} {
			d := mustRead(t, text, Customs{})
			if d.EDTF != want || d.Text != strings.TrimSpace(text) {
				t.Errorf("%q is read as %s with text %q, want %s", text, d.EDTF, d.Text, want)
			}
		}
	}
}

// EDTF is what counts where a text can be a caption too.
func TestEDTFComesFirst(t *testing.T) {
	for _, text := range []string{"1801-02", "1784-12", "1784-21", "1785?", "1784/1787"} {
		if d := mustRead(t, text, Customs{}); d != mustParse(t, text) {
			t.Errorf("%q is read as %s", text, d.EDTF)
		}
	}
}

// Spans as published: "ca. 1610" and "designed 1911 or 1912" in Cataloging
// Cultural Objects (Visual Resources Association, 2006), rules for date,
// syntax of display dates; ten years to each side in the Object ID guide
// (ICOM), "Date or Period". The centuries counted from 00 are the date rules of
// the UC San Diego visual resources collection, cited at second hand; other
// collections have wider ones.
func TestPublishedSpans(t *testing.T) {
	for _, c := range []struct {
		customs Customs
		want
	}{
		{Customs{}, want{"ca. 1610", "1605-01-01", "1615-12-31", "~"}},
		{Customs{}, want{"designed 1911 or 1912", "1911-01-01", "1912-12-31", ""}},
		{Customs{}, want{"16th century", "1500-01-01", "1599-12-31", ""}},
		{Customs{}, want{"early 19th century", "1800-01-01", "1825-12-31", ""}},
		{Customs{}, want{"mid 13th century", "1235-01-01", "1265-12-31", ""}},
		{Customs{FromOne: true}, want{"16th century", "1501-01-01", "1600-12-31", ""}},
		{Customs{FromOne: true}, want{"first quarter of the 18th century", "1701-01-01", "1725-12-31", ""}},
		{Customs{Circa: 10}, want{"ca. 1610", "1600-01-01", "1620-12-31", "~"}},
	} {
		checkDate(t, mustRead(t, c.text, c.customs).Padded(c.customs), c.want)
	}
}
