// Package effort answers what a build has cost in hours and money, how much is still
// to come, and whether it will be ready for its next occasion.
//
// # Hours
//
//	rest     = planned - logged, never below nothing
//	r        = actual / planned, of each finished build
//	forecast = planned × (lower quartile, median, upper quartile of r) - logged
//	pace     = hours of the build in the last 28 days / 4 weeks
//	ready    = today + rest / pace
//
// The last 28 days end with the day asked for and hold it. The ratios are those of
// the same kind of garment, or of all kinds where that makes fewer than three; where
// no build is finished that had its hours planned, r is 1. Quartiles interpolate
// between the two nearest ratios at (n-1)p from the least, counted from 0: definition
// 7 of R. J. Hyndman and Y. Fan, Sample quantiles in statistical packages, The
// American Statistician 50 (1996).
//
// A plan is for the making. So a build's actual hours, and its cost beside the planned
// one, are those to the day when it was first finished; alterations, repairs and
// cleaning after it are summed apart. That day is the one its page names, or the last
// of the first unbroken run of notes of the stage finishing, or the day before it was
// first worn. A build whose page says that it is planned or under way is not finished,
// whatever its notes say.
//
// Hours in a note of the stage worn are those of wearing, not of work, and are shown
// under that stage and counted nowhere. Notes without a date count as work on the
// making, and in no pace; notes after the day asked for are left out.
//
// # In time
//
// Three days are forecast from the quartiles. Where even the last is not after the
// occasion, the build is in time; where the occasion lies among them, it is tight;
// where even the first comes after, it is late, by as many days as the middle one is.
//
// # Cost
//
// A build costs what its notes spent and what they bought, wherever that was used, by
// currency. What was bought without a cost makes the sum a least one.
package effort
