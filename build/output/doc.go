// Package output answers: how is a site's folder brought up to date without
// harm to anything that a maker keeps there?
//
// # What belongs to the site
//
// A site's folder carries a mark, [source.SiteMark], that names every file of
// the site with its size, its SHA-256 and its time stamp. Only files that the
// mark names are ever replaced or removed, also when somebody has changed them
// since. A folder that holds any other file, link or device is refused with a
// [Foreign] error and keeps every byte. These are left alone and do not count:
//
//   - names beginning with a dot in the folder itself, such as those a
//     version-keeping program needs to publish the folder, but for the names
//     below
//   - .DS_Store, Thumbs.db and desktop.ini at any depth, which file managers
//     leave wherever somebody looks
//   - folders without files
//
// The names ".hussif-site" and whatever is added to it are this package's own,
// and so are ".NAME.hussif-new" and ".NAME.hussif-lock" beside a folder NAME
// that is not there yet. A mark that is damaged, or was written by a newer
// version, is a reason to refuse: nothing is removed on a guess. What a mark
// says is not trusted; a path that leads out of the folder makes it damaged.
//
// No link inside the folder is followed. The folder itself may be reached by
// one.
//
// The mark also says whom the site is for. A site for somebody else is never put in
// its place: what was made to be shared must not turn into the maker's own copy for
// want of a word, nor the other way round. That is an [Others] error.
//
// # What a killed run leaves
//
// A folder that is not there yet is filled under another name beside it and
// appears with one rename. A folder that is there is changed file by file, each
// written elsewhere and renamed, so that each file is whole at every instant:
// first comes a mark that names the old and the new files together, then the
// files, then the removals, then the final mark. Whenever that is broken off,
// the next run finds all that is the site's own and finishes the work. Until
// then the names of pages that were still to come count as the site's own.
//
// Only the mark is forced to the disk. A page that a power cut loses does not
// match what the mark says of it and is written again; a lost mark would leave
// a folder that nobody may touch.
//
// # Two runs at once
//
// The second waits for the first. The lock is a file in the folder, or beside
// it while it is missing, so that whoever can write the folder can take part;
// it is taken away afterwards. A lock left by a killed run holds nobody up.
package output
