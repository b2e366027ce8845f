package pdf

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"image"
	"image/color"
	"image/draw"

	"github.com/go-pdf/fpdf"

	"benchwright/render/raster"
	"benchwright/render/sheet"
)

// A placedImage is an image in the document.
type placedImage struct {
	width int // pixels
	pad   int // pixel columns added on its right, hidden by a clip
}

// image draws a picture. Two images of a document must differ in pixel width,
// because the library sorts images by width and leaves equal ones in map
// order. A second image of a width gets extra columns and a clip that hides
// them.
func (p *writer) image(op sheet.Image) error {
	if op.W <= 0 || op.H <= 0 {
		return fmt.Errorf("image %q is %s", op.Name, sheet.Millimeters(op.W, op.H))
	}
	sum := sha256.Sum256(op.Pixels)
	key := hex.EncodeToString(sum[:])
	placed, known := p.images[key]
	if !known {
		width, err := raster.Check(op.Pixels, op.Format)
		if err != nil {
			return fmt.Errorf("image %q: %w", op.Name, err)
		}
		placed.width = width
		for p.widths[width+placed.pad] {
			placed.pad++
		}
		pixels := op.Pixels
		if placed.pad > 0 {
			if pixels, err = widen(pixels, op.Format, placed.pad); err != nil {
				return fmt.Errorf("image %q: %w", op.Name, err)
			}
		}
		p.widths[width+placed.pad] = true
		p.images[key] = placed
		p.f.RegisterImageOptionsReader(key, fpdf.ImageOptions{ImageType: op.Format}, bytes.NewReader(pixels))
	}
	x, y := points(op.X), points(op.Y)
	w, h := points(op.X+op.W)-x, points(op.Y+op.H)-y
	if placed.pad > 0 {
		p.f.ClipRect(x, y, w, h, false)
		w = points(op.X+op.W*(placed.width+placed.pad)/placed.width) - x
	}
	p.f.ImageOptions(key, x, y, w, h, false, fpdf.ImageOptions{AllowNegativePosition: true}, 0, "")
	if placed.pad > 0 {
		p.f.ClipEnd()
	}
	return nil
}

// widen adds white columns on the right.
func widen(data []byte, format string, columns int) ([]byte, error) {
	src, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	b := src.Bounds()
	r := image.Rect(0, 0, b.Dx()+columns, b.Dy())
	var dst draw.Image = image.NewRGBA(r)
	if src.ColorModel() == color.GrayModel {
		dst = image.NewGray(r)
	}
	draw.Draw(dst, r, image.White, image.Point{}, draw.Src)
	draw.Draw(dst, b.Sub(b.Min), src, b.Min, draw.Src)
	return raster.Encode(dst, format)
}
