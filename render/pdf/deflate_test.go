package pdf

import (
	"bytes"
	"testing"

	"benchwright/render/specimen"
)

// Deflated here or by the library itself, a file has the same bytes, also when
// a deflater is used again.
func TestDeflatePages(t *testing.T) {
	for name, sheets := range pixelSheets(t) {
		p := &writer{anchors: map[string]int{}, images: map[string]placedImage{}, widths: map[int]bool{}}
		if err := p.open(info, sheets); err != nil {
			t.Fatal(err)
		}
		p.f.SetCompression(true)
		for _, s := range sheets {
			if err := p.sheet(s); err != nil {
				t.Fatal(err)
			}
		}
		if err := p.outline(sheets); err != nil {
			t.Fatal(err)
		}
		var want bytes.Buffer
		if err := p.f.Output(&want); err != nil {
			t.Fatal(err)
		}
		for range 3 {
			if !bytes.Equal(writePDF(t, sheets), want.Bytes()) {
				t.Errorf("%s: other bytes than the library's", name)
			}
		}
	}
}

// What is not a file of the library's is refused.
func TestDeflatePagesRefuses(t *testing.T) {
	pdf := writePDF(t, specimen.Sheets()) // its pages are deflated already, and as good as any
	var b bytes.Buffer
	if err := deflatePages(&b, pdf, len(specimen.Sheets())); err != nil {
		t.Error(err)
	}
	b.Reset()
	for _, broken := range [][]byte{nil, pdf[:len(pdf)/2], bytes.Replace(pdf, []byte("\nxref\n"), []byte("\nxerf\n"), 1)} {
		if err := deflatePages(&b, broken, 1); err == nil || b.Len() > 0 {
			t.Errorf("%d bytes: error %v, %d bytes written", len(broken), err, b.Len())
		}
	}
}
