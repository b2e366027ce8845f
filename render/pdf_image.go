package render

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"

	"github.com/go-pdf/fpdf"
)

// A placedImage is one that the document holds.
type placedImage struct {
	width int // pixels
	pad   int // pixel columns added on its right, to be clipped away
}

// image draws a picture. Two images of one document must differ in pixel
// width: the library sorts them by it and leaves equal ones in map order. A
// second image of a width gets some columns more, and a clip that hides them.
func (p *pdfWriter) image(op Image) error {
	if op.W <= 0 || op.H <= 0 {
		return fmt.Errorf("image %q is %s", op.Name, millimetres(op.W, op.H))
	}
	sum := sha256.Sum256(op.Pixels)
	key := hex.EncodeToString(sum[:])
	placed, known := p.images[key]
	if !known {
		width, err := checkPixels(op.Pixels, op.Format)
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

// errForeign says that an image is not as layout encodes it.
var errForeign = errors.New("not an 8-bit grey or RGB image as decodePicture writes it")

// checkPixels proves, without decoding, that the library can read an image to
// its end, and returns the width in pixels.
func checkPixels(data []byte, format string) (int, error) {
	switch format {
	case "PNG":
		return checkPNG(data)
	case "JPEG":
		c, err := jpeg.DecodeConfig(bytes.NewReader(data))
		if err != nil {
			return 0, err
		}
		if c.ColorModel != color.GrayModel && c.ColorModel != color.YCbCrModel {
			return 0, errForeign
		}
		return c.Width, nil
	}
	return 0, fmt.Errorf("format %q is neither PNG nor JPEG", format)
}

// checkPNG walks the chunks: length, type, data, checksum.
func checkPNG(data []byte) (int, error) {
	c, err := png.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return 0, err
	}
	const depth, kind, interlace = 24, 25, 28 // offsets in the file
	if data[depth] != 8 || data[kind] != 0 && data[kind] != 2 || data[interlace] != 0 {
		return 0, errForeign
	}
	for rest := data[8:]; len(rest) >= 12; {
		n := int(binary.BigEndian.Uint32(rest))
		last := string(rest[4:8]) == "IEND"
		if n > len(rest)-12 || n == 0 && !last {
			break
		}
		if rest = rest[n+12:]; last {
			return c.Width, nil
		}
	}
	return 0, errors.New("the PNG ends too early")
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
	return encodePixels(dst, format)
}
