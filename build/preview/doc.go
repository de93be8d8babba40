// Package preview answers, for a maker who is writing: what does the site of my
// journal look like now?
//
// A [Watcher] says where in the journal to look again. What the system tells of
// changed files is never believed, only taken for a hint: hints are gathered until
// all is quiet for a moment and then handed on as the names of folders. A [Window]
// has a [Maker] look there, and serves the site that the maker makes to browsers on
// the same machine, and to nobody else: see [Window.Handler] for what is refused.
//
// Pages are served as the site would hold them, with a script added that learns by
// server-sent events (HTML Living Standard, 9.2) when the page it is in has become
// another, and a bar that tells what was found in the journal. While there are
// errors, pages stay as they were when there were none.
package preview
