// Package raster decodes the writer's PNG and JPEG pictures, checks them, and
// encodes them again in the form that sheets hold.
package raster

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
)

const (
	maxPixels   = 8_000_000 // in one picture: sharp at 110 pixels per centimeter on a whole A4 face
	jpegQuality = 92
)

// Decode decodes a PNG or JPEG file and encodes it again in the form that the
// PDF writer takes: 8-bit gray or RGB, on white instead of transparency, and
// turned upright according to Exif. It checks the header before decoding any
// pixels. The error is a sentence for the writer with the picture's name. The
// caller must not change the pixels, which are shared.
func Decode(name string, data []byte) (pixels []byte, format string, w, h int, err error) {
	fail := func(format string, args ...any) ([]byte, string, int, int, error) {
		return nil, "", 0, 0, fmt.Errorf("`%s` "+format, append([]any{name}, args...)...)
	}
	if p, ok := decoded.get(data); ok {
		return p.pixels, p.format, p.w, p.h, nil
	}
	var decode func() (image.Image, error)
	var config image.Config
	switch {
	case bytes.HasPrefix(data, []byte("\x89PNG\r\n\x1a\n")):
		format = "PNG"
		config, err = png.DecodeConfig(bytes.NewReader(data))
		decode = func() (image.Image, error) { return png.Decode(bytes.NewReader(data)) }
	case bytes.HasPrefix(data, []byte("\xFF\xD8\xFF")):
		format = "JPEG"
		config, err = jpeg.DecodeConfig(bytes.NewReader(data))
		decode = func() (image.Image, error) { return jpeg.Decode(bytes.NewReader(data)) }
	case len(data) == 0:
		return fail("is empty")
	default:
		return fail("is neither a PNG nor a JPEG file")
	}
	if err != nil {
		return fail("has a broken %s header", format)
	}
	if config.Width <= 0 || config.Height <= 0 {
		return fail("has no pixels")
	}
	if config.Width > maxPixels/config.Height {
		return fail("has %d × %d pixels; the most is %d million", config.Width, config.Height, maxPixels/1_000_000)
	}
	src, err := decode()
	if err != nil {
		return fail("cannot be decoded to its end")
	}
	img := opaque(src)
	if format == "JPEG" {
		img = upright(img, orientation(data))
	}
	b := img.Bounds()
	if pixels, err = Encode(img, format); err != nil {
		return fail("cannot be encoded (%v)", err)
	}
	decoded.put(data, picture{pixels, format, b.Dx(), b.Dy()})
	return pixels, format, b.Dx(), b.Dy(), nil
}

// opaque copies a picture onto white, to an image.Gray if it has no color.
func opaque(src image.Image) draw.Image {
	r := image.Rectangle{Max: src.Bounds().Size()}
	var dst draw.Image
	if isGray(src) {
		dst = image.NewGray(r)
	} else {
		dst = image.NewRGBA(r)
	}
	draw.Draw(dst, r, image.White, image.Point{}, draw.Src)
	draw.Draw(dst, r, src, src.Bounds().Min, draw.Over)
	return dst
}

// isGray reports whether a picture has no color.
func isGray(m image.Image) bool {
	switch m := m.(type) {
	case *image.Gray, *image.Gray16:
		return true
	case *image.Paletted:
		for _, c := range m.Palette {
			if r, g, b, _ := c.RGBA(); r != g || g != b {
				return false
			}
		}
		return true
	}
	return m.ColorModel() == color.GrayModel
}

// Encode encodes an opaque Gray or RGBA picture in the form that Check
// accepts.
func Encode(m image.Image, format string) ([]byte, error) {
	var out bytes.Buffer
	var err error
	if format == "JPEG" {
		err = jpeg.Encode(&out, m, &jpeg.Options{Quality: jpegQuality})
	} else {
		err = png.Encode(&out, m)
	}
	return out.Bytes(), err
}
