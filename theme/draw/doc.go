// Package draw answers how a panel, a layout, a measure or a change looks on
// paper: it draws them as SVG, from views in millimetres and ready words.
//
// Every drawing is an image with a title and a text alternative and can be read
// without colour: kinds of line, patterns and words tell things apart. It holds no
// style of its own beyond SVG's presentation attributes, so that a content
// security policy may refuse inline styles; its classes are styled by draw.css,
// which belongs into the site's style sheet. Drawings are as wide as a narrow
// telephone, 328 units, and grow with the page; the sheets of [Tiles] have the
// real size and must not be scaled when printed.
//
// Identifiers within a drawing begin with the ID of its [Words], which must be
// another one for each drawing of a page. Views come from the program itself:
// figures that are not finite numbers are drawn as 0.
package draw

// Words names a drawing and says what it shows to those who do not see it.
type Words struct {
	ID    string // for identifiers, unique on the page; letters, digits and hyphens
	Title string
	Desc  string // the text alternative, in whole sentences
}

// A Point is a place in millimetres, Y downwards.
type Point struct{ X, Y float64 }
