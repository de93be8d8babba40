// Package edtf answers the question: which days can a maker's words for a date
// mean? It reads the Extended Date/Time Format (EDTF, ISO 8601-2:2019, as
// specified by the Library of Congress on 4 February 2019) and the captions
// museums write, and gives a closed interval of days of the proleptic Gregorian
// calendar, open at an end where the words leave it open.
//
// # What is read of EDTF
//
// Levels 0 and 1 without times of day, and level 2:
//
//	1784  1784-05  1784-05-17   year, month, day; -0044 is 45 BC
//	178X  1784-XX  1X84         any digit unspecified
//	1784?  1784~  1784%         uncertain, approximate, both
//	1784?-05  1784-~05          the same of a part: left of it for that part,
//	                            right of it for all parts up to there
//	1780/1789  1780/..  /1789   interval; open and unknown ends count alike
//	[1784,1786..1788]  [..1790] one of these; or an earlier one
//	{1784,1786}                 all of these
//	1784-21                     seasons and other parts of a year, 21 to 41
//	Y170000002  Y17E7  1950S2   far years, powers of ten, significant digits
//
// The specification gives no months for the seasons. Here 21 to 24, "independent
// of location", are the quarters of the year, as in the table the tests use; 25
// to 28 are the northern and 29 to 32 the southern seasons of three whole months
// from March. The winter (28) or southern summer (30) of a year may be the one
// that ended in it or the one that began in it, so both are covered.
//
// A mark on the whole date makes no difference to the interval;
// [Date.Padded] widens what is approximate.
//
// # What is read of captions
//
// [Read] takes these in any case, with or without "dated", "made" and the like
// before them. The last column is the EDTF each is read as.
//
//	ca. 1785, c1785, about 1785           1785~
//	possibly 1785, 1785 (?)               1785?
//	1780s; ca. 1780s                      178X; 1780~/1789~
//	1784-87, 1784–1787, from 1784 to 1787 1784/1787
//	1784/85                               1784/1785
//	between 1784 and 1787                 [1784..1787]
//	1784 or 1785; 1784 and 1786           [1784,1785]; {1784,1786}
//	before 1790; by 1790, not after 1790  [..1789]; [..1790]
//	after 1784; from 1784, 1784 or later  [1785..]; [1784..]
//	18th century, eighteenth century      17XX
//	late 18th-early 19th century          1775/1825
//	May 1784; 17 May 1784, May 17, 1784   1784-05; 1784-05-17
//	spring 1784                           1784-25, a northern spring
//	winter 1784/85                        1784-12/1785-02
//	late 1784                             1784-39
//
// "ca." before a span holds for both its ends, "?" after it too.
//
// On parts of centuries museums differ. The rules here are, counted in years
// from the first of the century or decade:
//
//	                  century       decade     year
//	whole             00 to 99      0 to 9
//	early             00 to 25      0 to 3     January to April
//	mid               35 to 65      4 to 6     May to August
//	late              75 to 99      7 to 9     September to December
//	halves            00-49 50-99   0-4 5-9    six months each
//	thirds            00-33 34-66 67-99        four months each
//	quarters          00-24 25-49 50-74 75-99  three months each
//
// So the 18th century is 1700 to 1799; [Customs] can count it from 1701.
//
// # What is refused
//
// Anything with two readings is refused with both: 1700s (ten years or a
// hundred), 1784-5 (1785 or May), 1784–12 (a month or 1812), 1820-24 (1824 or a
// winter), 03/04/2026. Where EDTF and a caption disagree otherwise EDTF is what
// counts, so that 1801-02 is February; but 1820-30 is the ten years, for what
// it is in EDTF, a southern summer, is not in common use. Refused too
// are times of day, marks on a part with an X (178X~, for 1780~/1789~), regnal
// and dynastic periods, years BC outside EDTF, and languages other than
// English. The error names what could stand there.
package edtf
