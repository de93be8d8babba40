// Package wardrobe answers what can be worn: every garment of a wearer against the
// body as last measured over the layers worn under it, on any day; and who else
// could wear a garment.
//
// Fit itself, with its formula, its error and their sources, is that of package
// fit. Here each garment gets one answer, by its gravest measure: short at one is
// short. A measure counts as asked where an ease is wanted there, by the build or
// by the journal's settings; the answer says how many of those could be judged,
// and claims nothing of the others. What is too close to call on the ample side
// keeps nobody from wearing a garment and counts as ample.
//
// A journal says where a build stands and not since when. What keeps a garment from
// being worn is taken to have come with the last dated note of its build: before,
// from its first finish on, it could be worn.
package wardrobe
