// Package evidence answers whether a detail is right for the date: what the
// references say of each feature, when it is attested, and what becomes of a
// garment's claims when they are held against that.
//
// # Dates
//
// A date is a closed interval of days, as package edtf reads it, and open where it
// says so. What is approximate is widened by the journal's custom, 5 years to each
// side where it names none: an era is widened as a reference is. An uncertain date
// ("?") stays as narrow as it is written and is told apart.
//
// A reference lies inside an era T when no day of it lies outside T; before or
// after T when none lies in T or on the other side; else it overlaps T, and may be
// of it. One open at an end is never inside an era that is not. References without
// a date are counted apart and prove nothing.
//
// # Objects
//
// What is counted is objects. Pages with one holder and one accession number are
// of one object, which counts once, with all that they say and a date that covers
// theirs. An object that is said both to show a feature and to lack it is disputed
// and counts for neither.
//
// # Verdicts
//
// The first of these that holds:
//
//	contradicted      inside T, more lack the feature than show it
//	supported         two or more show it, and at least one of them is inside T
//	thin              it is shown inside T or overlapping it
//	only earlier      it is shown, but only before T
//	only later        it is shown, but only after T
//	earlier and later it is shown before and after T, but not in it
//	without evidence  nothing dated shows it
//
// So a feature is thin when one object alone shows it, or when none that shows it
// is surely of the era. The second object of a supported feature may be of another
// time. A claim that says why it departs from its period is a stated departure,
// whatever the references say.
//
// # Share
//
//	share = shows / (shows + lacks), inside T
//
// with its 95 % interval after E. B. Wilson, "Probable inference, the law of
// succession, and statistical inference", Journal of the American Statistical
// Association 22 (1927):
//
//	(p + z²/2n ± z √(p(1-p)/n + z²/4n²)) / (1 + z²/n),  z = 1.95996
//
// The interval is that of a fair draw. What survives, and what a maker came upon,
// is no such thing; it says no more than how little a handful can tell.
package evidence
