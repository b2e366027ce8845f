package cli

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/webassembly"
)

// Two faces of the demo, as a reader that is not ours draws them: text cannot
// see a box that is gone.
const (
	pixelDir  = top + "/testdata/pixel"
	pixelDPI  = 60
	maxBytes  = 20 << 10
	maxUnlike = 4 // pixels
)

// pixelFaces are the references of this package, which begin with "card-": of a
// deck each the first face that says something.
var pixelFaces = map[string]struct{ deck, says string }{
	"card-set-out": {"AG3-10.pdf", "Hazards of this card"},
	"card-reading": {"AG3-10.pdf", "Accept"},
}

// TestPixels builds the demo and compares. UPDATE=1 rewrites the references.
func TestPixels(t *testing.T) {
	out := t.TempDir()
	if code, text := run(t, top, "build", "procedures", "--paper", "A5", "-o", out); code != exitOK {
		t.Fatalf("the demo does not build:\n%s", text)
	}
	pool, err := webassembly.Init(webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 1})
	if err != nil {
		t.Fatal(err)
	}
	defer pool.Close()
	reader, err := pool.GetInstance(0)
	if err != nil {
		t.Fatal(err)
	}
	for name, f := range pixelFaces {
		pdf, err := os.ReadFile(filepath.Join(out, f.deck))
		if err != nil {
			t.Fatal(err)
		}
		doc, err := reader.OpenDocument(&requests.OpenDocument{File: &pdf})
		if err != nil {
			t.Fatal(err)
		}
		page := 0
		at := func() requests.Page {
			return requests.Page{ByIndex: &requests.PageByIndex{Document: doc.Document, Index: page}}
		}
		for {
			text, err := reader.GetPageText(&requests.GetPageText{Page: at()})
			if err != nil {
				t.Fatalf("no face of %s says %q", f.deck, f.says)
			}
			if strings.Contains(strings.ReplaceAll(text.Text, "\u00a0", " "), f.says) {
				break
			}
			page++
		}
		r, err := reader.RenderPageInDPI(&requests.RenderPageInDPI{DPI: pixelDPI, Page: at()})
		if err != nil {
			t.Fatal(err)
		}
		sameAsReference(t, name, fewColors(r.Result.Image))
		r.Cleanup()
	}
	files, err := filepath.Glob(filepath.Join(pixelDir, "card-*"))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if _, owned := pixelFaces[strings.TrimSuffix(filepath.Base(f), ".png")]; !owned {
			t.Errorf("no test owns %s", f)
		}
	}
}

// sameAsReference holds a picture against its reference.
func sameAsReference(t *testing.T, name string, got *image.Paletted) {
	t.Helper()
	path := filepath.Join(pixelDir, name+".png")
	var b bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.BestCompression}
	if err := encoder.Encode(&b, got); err != nil {
		t.Fatal(err)
	}
	if b.Len() > maxBytes {
		t.Errorf("%s takes %d bytes, more than %d", path, b.Len(), maxBytes)
	}
	var want image.Image
	file, err := os.ReadFile(path)
	if err == nil {
		want, err = png.Decode(bytes.NewReader(file))
	}
	switch {
	case err == nil && unlike(got, want) <= maxUnlike:
	case os.Getenv("UPDATE") == "1":
		if err := os.WriteFile(path, b.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
		t.Logf("rewrote %s", path)
	case err != nil:
		t.Errorf("%v; UPDATE=1 writes it", err)
	default:
		failed := filepath.Join(os.TempDir(), name+".png")
		os.WriteFile(failed, b.Bytes(), 0o666)
		t.Errorf("%s: %d pixels are unlike; see %s", path, unlike(got, want), failed)
	}
}

// fewColors maps a picture to 6 levels a color, which compresses well.
func fewColors(m image.Image) *image.Paletted {
	var palette color.Palette
	for i := range 216 {
		palette = append(palette, color.NRGBA{uint8(i / 36 * 51), uint8(i / 6 % 6 * 51), uint8(i % 6 * 51), 255})
	}
	out := image.NewPaletted(m.Bounds(), palette)
	draw.Draw(out, m.Bounds(), m, m.Bounds().Min, draw.Src)
	return out
}

// unlike counts the pixels that differ; the reader draws alike on every machine.
func unlike(got, want image.Image) int {
	b := got.Bounds()
	if b != want.Bounds() {
		return b.Dx() * b.Dy()
	}
	count := 0
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if color.NRGBAModel.Convert(got.At(x, y)) != color.NRGBAModel.Convert(want.At(x, y)) {
				count++
			}
		}
	}
	return count
}
