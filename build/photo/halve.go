package photo

import "image"

// halve returns the picture at half its width and height, each pixel the mean
// of the four it stands for. It works on the planes as they are stored, which
// spares turning every pixel of a large photograph into red, green and blue.
// Where the colours are stored more coarsely than a half, they are repeated. A
// last column or row that is odd stands for itself.
//
// The bounds must begin at zero, as those of every decoder used here do.
func halve(m *image.YCbCr) *image.YCbCr {
	width, height := m.Rect.Dx(), m.Rect.Dy()
	half := image.NewYCbCr(image.Rect(0, 0, (width+1)/2, (height+1)/2), image.YCbCrSubsampleRatio444)
	average(half.Y, half.YStride, half.Rect, plane{m.Y, m.YStride, width, height, 1, 1})
	across, down := coarseness(m.SubsampleRatio)
	for _, colour := range [2]struct{ to, from []uint8 }{{half.Cb, m.Cb}, {half.Cr, m.Cr}} {
		average(colour.to, half.CStride, half.Rect, plane{
			colour.from, m.CStride,
			(width + across - 1) / across, (height + down - 1) / down,
			across, down,
		})
	}
	return half
}

// coarseness returns how many pixels share one colour sample.
func coarseness(ratio image.YCbCrSubsampleRatio) (across, down int) {
	switch ratio {
	case image.YCbCrSubsampleRatio422:
		return 2, 1
	case image.YCbCrSubsampleRatio420:
		return 2, 2
	case image.YCbCrSubsampleRatio440:
		return 1, 2
	case image.YCbCrSubsampleRatio411:
		return 4, 1
	case image.YCbCrSubsampleRatio410:
		return 4, 2
	}
	return 1, 1
}

// A plane is one component of a picture; each sample covers across by down
// pixels.
type plane struct {
	samples       []uint8
	stride        int
	width, height int // in samples
	across, down  int
}

// average fills to, of the size of half, from a plane of twice that size.
func average(to []uint8, stride int, half image.Rectangle, from plane) {
	for y := range half.Dy() {
		row := to[y*stride:][:half.Dx()]
		upper, lower := from.row(2*y/from.down), from.row((2*y+1)/from.down)
		switch {
		case from.across == 1:
			pairs := from.width / 2
			for x := range pairs {
				u, l := upper[2*x:2*x+2], lower[2*x:2*x+2]
				row[x] = uint8((uint(u[0]) + uint(u[1]) + uint(l[0]) + uint(l[1]) + 2) / 4)
			}
			if pairs < len(row) {
				row[pairs] = mean(upper[2*pairs], lower[2*pairs])
			}
		case from.down == 2 && from.across == 2:
			copy(row, upper)
		default:
			for x := range row {
				i := 2 * x / from.across
				row[x] = mean(upper[i], lower[i])
			}
		}
	}
}

// row returns a row of samples; beyond the last, the last.
func (p plane) row(y int) []uint8 {
	return p.samples[min(y, p.height-1)*p.stride:][:p.width]
}

func mean(a, b uint8) uint8 { return uint8((uint(a) + uint(b) + 1) / 2) }
