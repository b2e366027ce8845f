package render

import (
	"bytes"
	"strings"
	"testing"
)

// No picture file makes decodePicture panic; what it accepts, the PDF writer
// takes.
func FuzzDecodePicture(f *testing.F) {
	f.Add(testPNG(12, 7))
	f.Add(testJPEG(12, 7))
	f.Add(exif(testJPEG(12, 7), 6, true))
	f.Add(pngHeader(40000, 40000))
	f.Add(pngHeader(3, 3))
	f.Add([]byte("\xFF\xD8\xFF"))
	f.Add([]byte("GIF89a"))
	f.Fuzz(func(t *testing.T, data []byte) {
		pixels, format, w, h, err := decodePicture("fig", data)
		if err != nil {
			if !strings.HasPrefix(err.Error(), "`fig` ") || pixels != nil {
				t.Fatalf("%d bytes with error %q", len(pixels), err)
			}
			return
		}
		if width, err := checkPixels(pixels, format); err != nil || width != w || h <= 0 {
			t.Fatalf("%s %d × %d: the writer sees %d columns, %v", format, w, h, width, err)
		}
		var b bytes.Buffer
		face := Sheet{Width: 105000, Height: 148000, Ops: []Op{Image{W: 50000, H: 50000, Pixels: pixels, Format: format}}}
		if err := WritePDF(&b, Info{}, []Sheet{face}); err != nil {
			t.Fatal(err)
		}
	})
}
