// Package almanac answers what a maker's own calendar and feed reader can be told
// of a journal: an iCalendar (RFC 5545) of its occasions and of when builds should
// be ready, and an Atom feed (RFC 4287) of its newest notes.
//
// Neither tells more than the journal it is given: what an audience may not see is
// taken out before. Private remarks, money and body measures are never in either.
//
// # Addresses
//
// A site opens from a disk and knows no address of its own. The feed then links to
// pages from the folder it lies in, which RFC 4287 (section 2) and RFC 3986 (section
// 5.1.3) allow; the calendar has no links, for it is read where it was imported and
// not where it lay. With [Pages.Base] both have whole addresses.
//
// # Names and days
//
// What is in a calendar or a feed needs a name that no other thing has and that
// stays the same. It is a UUID of version 5 (RFC 9562, section 5.5), made from the
// journal's title and the record's ID: two journals that both have a market day do
// not overwrite each other's, and moving a site changes nothing. A new title of
// the journal, or a new name of the file, makes a new thing.
//
// No clock is read. Whatever asks for the time of a change gets the start, in UTC,
// of the day of the newest note, of the note itself, or of the day a forecast was
// made. The same journal gives the same bytes.
package almanac
