// Package theme answers how a page of the site looks: it turns the views that
// build/site fills into HTML, and holds the style sheet and fonts that go with it.
//
// A view says everything in words that are ready to print; the templates add
// nothing but order, headings and marks. Pages work from a disk as from a host:
// links within the site are relative, and each page's content security policy lets it
// load nothing but the site's own style, fonts and pictures. The search page alone has
// scripts, and without them is an index from A to Z.
//
// Identifiers that begin "section-" belong to the templates; those of headings
// and notes come with the views and must not begin so.
//
// The fonts are Vollkorn and Encode Sans, variable, Latin only, from the npm
// packages @fontsource-variable/vollkorn and @fontsource-variable/encode-sans,
// both 5.3.0, under the SIL Open Font License 1.1. Letters of other scripts fall
// back to the reader's own fonts. Pages are searched by MiniSearch 7.2.0 of the npm
// package minisearch, unchanged but for the line that names its source map, under the
// MIT licence.
package theme
