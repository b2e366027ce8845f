package pdf

import (
	"bytes"
	"strings"
	"testing"

	"benchwright/render/raster"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
)

// No picture file makes raster.Decode panic; what it accepts, the PDF writer
// takes.
func FuzzPicture(f *testing.F) {
	f.Add(specimen.PNG(12, 7))
	f.Add(specimen.JPEG(12, 7))
	f.Add(specimen.Exif(specimen.JPEG(12, 7), 6, true))
	f.Add(specimen.PNGHeader(40000, 40000))
	f.Add(specimen.PNGHeader(3, 3))
	f.Add([]byte("\xFF\xD8\xFF"))
	f.Add([]byte("GIF89a"))
	f.Fuzz(func(t *testing.T, data []byte) {
		pixels, format, w, h, err := raster.Decode("fig", data)
		if err != nil {
			if !strings.HasPrefix(err.Error(), "`fig` ") || pixels != nil {
				t.Fatalf("%d bytes with error %q", len(pixels), err)
			}
			return
		}
		if width, err := raster.Check(pixels, format); err != nil || width != w || h <= 0 {
			t.Fatalf("%s %d × %d: the writer sees %d columns, %v", format, w, h, width, err)
		}
		var b bytes.Buffer
		face := sheet.Sheet{Width: 105000, Height: 148000, Ops: []sheet.Op{sheet.Image{W: 50000, H: 50000, Pixels: pixels, Format: format}}}
		if err := Write(&b, Info{}, []sheet.Sheet{face}); err != nil {
			t.Fatal(err)
		}
	})
}
