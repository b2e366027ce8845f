// Package raster reads the pictures that a writer gives, PNG or JPEG, judges them
// and encodes them again in the one form that a sheet carries.
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
	maxPixels   = 8_000_000 // of one picture: sharp at 110 pixels a centimetre on a whole A4 face
	jpegQuality = 92
)

// Decode reads a writer's PNG or JPEG file and encodes it again in the
// one form that the PDF writer takes: 8-bit grey or RGB, transparency laid on
// white, a photograph turned as its camera noted. The header is judged before
// any pixel is decoded. The error is a sentence for the writer that names the
// picture. The pixels are shared: read only.
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
	img := plain(src)
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

// plain copies a picture on white, in grey where its colours are.
func plain(src image.Image) draw.Image {
	r := image.Rectangle{Max: src.Bounds().Size()}
	var dst draw.Image
	if grey(src) {
		dst = image.NewGray(r)
	} else {
		dst = image.NewRGBA(r)
	}
	draw.Draw(dst, r, image.White, image.Point{}, draw.Src)
	draw.Draw(dst, r, src, src.Bounds().Min, draw.Over)
	return dst
}

// grey reports whether a picture has no colour of its own.
func grey(m image.Image) bool {
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

// Encode writes what checkPixels accepts: an opaque picture on a Gray or
// RGBA.
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
