package specimen

import (
	"encoding/binary"
	"hash/crc32"
)

// PNGHeader is a PNG that claims a size and ends there.
func PNGHeader(w, h uint32) []byte {
	chunk := []byte("IHDR")
	chunk = binary.BigEndian.AppendUint32(chunk, w)
	chunk = binary.BigEndian.AppendUint32(chunk, h)
	chunk = append(chunk, 8, 2, 0, 0, 0)
	out := []byte("\x89PNG\r\n\x1a\n\x00\x00\x00\x0d")
	out = append(out, chunk...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(chunk))
}

// Exif puts an orientation into a JPEG.
func Exif(photo []byte, value byte, little bool) []byte {
	var order binary.AppendByteOrder = binary.BigEndian
	tiff := []byte("MM")
	if little {
		order, tiff = binary.LittleEndian, []byte("II")
	}
	tiff = order.AppendUint16(tiff, 42)
	tiff = order.AppendUint32(tiff, 8)
	tiff = order.AppendUint16(tiff, 2)
	for _, e := range [][2]uint16{{271, 1}, {274, uint16(value)}} {
		tiff = order.AppendUint16(tiff, e[0])
		tiff = order.AppendUint16(tiff, 3)
		tiff = order.AppendUint32(tiff, 1)
		tiff = order.AppendUint16(tiff, e[1])
		tiff = order.AppendUint16(tiff, 0)
	}
	segment := append([]byte("Exif\x00\x00"), tiff...)
	out := append([]byte("\xFF\xD8\xFF\xE1"), byte((len(segment)+2)>>8), byte(len(segment)+2))
	return append(append(out, segment...), photo[2:]...)
}
