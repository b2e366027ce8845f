package raster

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"image/color"
	"image/jpeg"
	"image/png"
)

// errForeign reports an image that Encode did not write.
var errForeign = errors.New("not an 8-bit gray or RGB image as decodePicture writes it")

// Check verifies, without decoding, that the PDF library can read an image,
// and returns its width in pixels.
func Check(data []byte, format string) (int, error) {
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

// checkPNG checks the chunks: length, type, data, checksum.
func checkPNG(data []byte) (int, error) {
	c, err := png.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return 0, err
	}
	const depth, kind, interlace = 24, 25, 28 // file offsets
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
