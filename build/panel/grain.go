package panel

import "hussif/content/quantity"

// A Grain is how the warp runs along a length: that of a left-over piece, or the
// grain line of a panel.
type Grain int

// The grains. UnknownGrain, the zero value, is that of a piece nobody marked; a
// panel asked for on UnknownGrain may lie any way.
const (
	UnknownGrain Grain = iota
	Straight           // along the warp
	Cross              // along the weft
	Bias               // at 45 degrees to both
)

// A Piece is a rectangle of cloth. Its Grain tells how the warp runs along its
// Length.
type Piece struct {
	Size  quantity.Size
	Grain Grain
}

// turns returns the angles in degrees at which a panel lies on a piece so that
// its grain line has the asked grain. Where two would do, both are there. A
// piece of unknown grain is taken for one on the straight grain.
func turns(piece, asked Grain) []int {
	if piece == UnknownGrain {
		piece = Straight
	}
	switch {
	case asked == UnknownGrain:
		return []int{0, 90, 45}
	case asked == Bias && piece == Bias:
		return []int{0, 90}
	case asked == Bias || piece == Bias:
		return []int{45}
	case asked == piece:
		return []int{0}
	}
	return []int{90}
}
