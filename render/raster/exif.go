package raster

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/draw"
)

// orientation returns the Exif orientation of a JPEG, 1 to 8 (Exif 2.3, CIPA
// DC-008-2012, 4.6.4, tag 274), or 1, upright, if the file has none.
func orientation(data []byte) int {
	for rest := data[2:]; len(rest) >= 4 && rest[0] == 0xFF; {
		n := int(binary.BigEndian.Uint16(rest[2:])) // length of the segment, including these two bytes
		if rest[1] == 0xDA || n < 2 || n+2 > len(rest) {
			break
		}
		if tiff, ok := bytes.CutPrefix(rest[4:n+2], []byte("Exif\x00\x00")); ok && rest[1] == 0xE1 {
			return tiffOrientation(tiff)
		}
		rest = rest[n+2:]
	}
	return 1
}

func tiffOrientation(tiff []byte) int {
	if len(tiff) < 8 {
		return 1
	}
	var order binary.ByteOrder = binary.BigEndian
	if tiff[0] == 'I' {
		order = binary.LittleEndian
	}
	at := order.Uint32(tiff[4:])
	if at > uint32(len(tiff)-2) {
		return 1
	}
	entries := tiff[at:]
	count := int(order.Uint16(entries))
	for i := range count {
		e := entries[2:]
		if len(e) < 12*(i+1) {
			break
		}
		e = e[12*i:]
		if order.Uint16(e) == 274 {
			if v := int(order.Uint16(e[8:])); v >= 1 && v <= 8 {
				return v
			}
			break
		}
	}
	return 1
}

// upright turns a picture upright.
func upright(src draw.Image, orientation int) draw.Image {
	if orientation == 1 {
		return src
	}
	size := src.Bounds().Size()
	w, h := size.X, size.Y
	if orientation >= 5 { // rotated by 90°
		w, h = h, w
	}
	r := image.Rect(0, 0, w, h)
	var dst draw.Image = image.NewRGBA(r)
	if _, ok := src.(*image.Gray); ok {
		dst = image.NewGray(r)
	}
	for y := range h {
		for x := range w {
			u, v := x, y
			switch orientation {
			case 2:
				u = size.X - 1 - x
			case 3:
				u, v = size.X-1-x, size.Y-1-y
			case 4:
				v = size.Y - 1 - y
			case 5:
				u, v = y, x
			case 6:
				u, v = y, size.Y-1-x
			case 7:
				u, v = size.X-1-y, size.Y-1-x
			case 8:
				u, v = size.X-1-y, x
			}
			dst.Set(x, y, src.At(u, v))
		}
	}
	return dst
}
