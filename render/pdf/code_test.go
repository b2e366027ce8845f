package pdf

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"slices"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"

	"benchwright/render/layout"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
)

// A decoder that is another's reads the QR code of a face, printed in its size
// and seen at 150 dpi, turned by a few degrees, with glare over a tenth of it.
// Glare is put over every place of the square that leaves free the marks by which
// a reader finds it: three corners, and the small one near the fourth.
func TestCodeIsReadFromAPicture(t *testing.T) {
	const dpi = 150
	for _, p := range sheet.Papers {
		if !slices.Contains([]string{"A4", "A5", "A6"}, p.Name) {
			continue
		}
		o := layout.Options{Paper: p}
		sheets, _ := layout.Faces(specimen.Deck(), o)
		page := pdfPages(t, writePDF(t, sheets), dpi)[0]
		var code sheet.Drawing
		for _, op := range sheets[0].Ops {
			if d, is := op.(sheet.Drawing); is && d.Name == "check code" {
				code = d
			}
		}
		if code.W < 14000 || code.W > 18000 {
			t.Fatalf("%s: the square is %d µm wide", p.Name, code.W)
		}
		px := func(um int) int { return um * dpi / 25400 }
		margin := px(12000) // what stands round about is in the picture too
		seen := image.Rect(px(code.X), px(code.Y), px(code.X+code.W), px(code.Y+code.H))
		for _, degrees := range []float64{0, 3, -4, 6} {
			read, tried := 0, 0
			for _, glare := range glares(seen) {
				picture := image.NewGray(seen.Inset(-margin))
				draw.Draw(picture, picture.Bounds(), image.White, image.Point{}, draw.Src)
				draw.Draw(picture, page.Bounds(), page, image.Point{}, draw.Src)
				draw.Draw(picture, glare, image.White, image.Point{}, draw.Src)
				tried++
				if got := decode(turned(picture, degrees)); got != code.Alt {
					t.Log(glare.Sub(seen.Min), seen.Dx(), got)
				}
				if decode(turned(picture, degrees)) == code.Alt {
					read++
				}
			}
			if read != tried {
				t.Errorf("%s, %g°: read %d of %d pictures %s", p.Name, degrees, read, tried, code.Alt)
			}
		}
	}
}

// glares returns no glare, and patches over a tenth of a square.
func glares(square image.Rectangle) []image.Rectangle {
	all := []image.Rectangle{{}}
	n := square.Dx()
	side := int(math.Round(float64(n) * math.Sqrt(0.1)))
	add := func(x, y, w, h int) {
		all = append(all, image.Rect(x, y, x+w, y+h).Add(square.Min))
	}
	const modules = 29        // of a square with a card number of up to twelve characters
	finder := n*8/modules + 1 // a corner with its border
	small := image.Rect(n*20/modules, n*20/modules, n*25/modules+1, n*25/modules+1)
	for y := 0; y+side <= n; y += n / 8 {
		for x := 0; x+side <= n; x += n / 8 {
			left, right, top, low := x < finder, x+side > n-finder, y < finder, y+side > n-finder
			if !(top && (left || right) || low && left || small.Overlaps(image.Rect(x, y, x+side, y+side))) {
				add(x, y, side, side)
			}
		}
	}
	add(finder, 0, n-2*finder, n*n/10/(n-2*finder)) // above and beside
	add(0, finder, n*n/10/(n-2*finder), n-2*finder)
	return all
}

func decode(m image.Image) string {
	bitmap, err := gozxing.NewBinaryBitmapFromImage(m)
	if err != nil {
		return ""
	}
	result, err := qrcode.NewQRCodeReader().Decode(bitmap, map[gozxing.DecodeHintType]interface{}{gozxing.DecodeHintType_TRY_HARDER: true})
	if err != nil {
		return ""
	}
	return result.GetText()
}

// turned returns a picture turned about its middle, its points mixed from the
// four that they fall between.
func turned(m *image.Gray, degrees float64) *image.Gray {
	b := m.Bounds()
	out := image.NewGray(b)
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	cx, cy := float64(b.Min.X+b.Max.X)/2, float64(b.Min.Y+b.Max.Y)/2
	at := func(x, y int) float64 {
		if !(image.Point{X: x, Y: y}).In(b) {
			return 255
		}
		return float64(m.GrayAt(x, y).Y)
	}
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			dx, dy := float64(x)-cx, float64(y)-cy
			sx, sy := cx+dx*cos+dy*sin, cy-dx*sin+dy*cos
			x0, y0 := math.Floor(sx), math.Floor(sy)
			fx, fy := sx-x0, sy-y0
			i, j := int(x0), int(y0)
			v := (at(i, j)*(1-fx)+at(i+1, j)*fx)*(1-fy) + (at(i, j+1)*(1-fx)+at(i+1, j+1)*fx)*fy
			out.SetGray(x, y, color.Gray{Y: uint8(math.Round(v))})
		}
	}
	return out
}
