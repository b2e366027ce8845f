package pdf

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"benchwright/render"
	"benchwright/render/impose"
	"benchwright/render/layout"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
	"benchwright/render/symbol"
	"benchwright/render/typeface"
)

// The pixel references show what text cannot: boxes, symbols, register.
const (
	pixelDir  = "../../testdata/pixel"
	pixelDPI  = 60
	maxBytes  = 20 << 10
	maxUnlike = 4 // pixels
)

// pixelSheets are the references of this package, by file name without its
// ending. They lie under "render-"; other packages may keep their own beside.
func pixelSheets(t *testing.T) map[string][]sheet.Sheet {
	face := seen(specimen.Sheets()[0])
	imposed, err := impose.Sheets([]sheet.Sheet{face, face, face}, impose.Plan{Paper: sheet.Papers[0], Up: 2, Flip: impose.LongEdge})
	if err != nil {
		t.Fatal(err)
	}
	return map[string][]sheet.Sheet{
		"render-specimen": {face},
		"render-imposed":  imposed[1:2], // the back, turned
		"render-symbols":  {symbolSheet()},
		"render-spots":    {pictureSheet(t)},
		"render-contact":  {contactSheet(t)},
	}
}

// seen is a sheet without what has no picture.
func seen(s sheet.Sheet) sheet.Sheet {
	s.Ops = slices.DeleteFunc(slices.Clone(s.Ops), func(op sheet.Op) bool { _, ok := op.(sheet.Link); return ok })
	s.Anchors, s.Groups, s.Marks = nil, nil, nil
	return s
}

// pictureSheet shows a picture with its numbers and their legend.
func pictureSheet(t *testing.T) sheet.Sheet {
	d := render.Deck{Sections: []render.Section{{Name: "Steps", Groups: []render.Group{specimen.Step(1, "", "Look at the flange", render.Picture{
		Name: "flange.png", Data: specimen.Picture(), Caption: specimen.Runs("Output end"), Spots: []render.Spot{
			{X: 650, Y: 90, Leads: true, ToX: 622, ToY: 256, Says: specimen.Runs("Dowel")}, {X: 500, Y: 500, Says: specimen.Runs("Bore")},
			{X: 0, Y: 1000, Says: specimen.Runs("Case")}}})}}}}
	sheets, problems := layout.Faces(d, layout.Options{Paper: sheet.Papers[2]})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return seen(sheets[0])
}

// contactSheet shows a contact pattern in its step.
func contactSheet(t *testing.T) sheet.Sheet {
	d := render.Deck{Sections: []render.Section{{Name: "Steps", Groups: []render.Group{specimen.Step(7, "race", "Read the pattern", render.Text{Runs: specimen.Runs("Read all four painted teeth.")}, specimen.Contact())}}}}
	sheets, problems := layout.Faces(d, layout.Options{Paper: sheet.Papers[1]})
	if len(problems) > 0 || len(sheets) > 1 {
		t.Fatal(problems, len(sheets))
	}
	return seen(sheets[0])
}

// symbolSheet shows every symbol, small ones in the corner of large ones.
func symbolSheet() sheet.Sheet {
	s := sheet.Sheet{Width: 184000, Height: 190000, Name: "Symbols"}
	for i, code := range symbol.Codes() {
		x, y := 4000+i%6*30000, 4000+i/6*31000
		ground := sheet.Rect{X: x, Y: y, W: 28000, H: 29000, Fill: 0xDDDDDD, Stroke: sheet.NoColor}
		large, _ := symbol.Draw(code, x+1000, y+1000, 20000)
		small, _ := symbol.Draw(code, x+20000, y+19000, 8000)
		s.Ops = append(s.Ops, ground)
		s.Ops = append(append(s.Ops, large...), small...)
		s.Ops = append(s.Ops, sheet.Glyphs{X: x + 1000, Y: y + 27000, Size: 3500, Text: code})
	}
	return s
}

// Each sheet, drawn by a reader that is not ours, looks as its reference.
// UPDATE=1 rewrites the references.
func TestPixels(t *testing.T) {
	for name, sheets := range pixelSheets(t) {
		path := filepath.Join(pixelDir, name+".png")
		got := small(pdfPages(t, writePDF(t, sheets), pixelDPI)[0])
		var b bytes.Buffer
		encoder := png.Encoder{CompressionLevel: png.BestCompression}
		if err := encoder.Encode(&b, got); err != nil {
			t.Fatal(err)
		}
		if b.Len() > maxBytes {
			t.Errorf("%s takes %d bytes, more than %d", path, b.Len(), maxBytes)
		}
		file, err := os.ReadFile(path)
		var want image.Image
		if err == nil {
			want, err = png.Decode(bytes.NewReader(file))
		}
		same := err == nil && unlike(got, want) <= maxUnlike
		switch {
		case same:
		case os.Getenv("UPDATE") == "1":
			if err := os.MkdirAll(pixelDir, 0o777); err != nil {
				t.Fatal(err)
			}
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
}

// A reference that no test owns is litter.
func TestPixelsAreOwned(t *testing.T) {
	owned := pixelSheets(t)
	files, err := filepath.Glob(filepath.Join(pixelDir, "render-*"))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if name, ok := strings.CutSuffix(filepath.Base(f), ".png"); !ok || owned[name] == nil {
			t.Errorf("no test owns %s", f)
		}
	}
}

// small maps a page to 6 levels a color, which compresses well.
func small(m image.Image) *image.Paletted {
	var palette color.Palette
	for i := range 216 {
		palette = append(palette, color.NRGBA{R: uint8(i / 36 * 51), G: uint8(i / 6 % 6 * 51), B: uint8(i % 6 * 51), A: 255})
	}
	out := image.NewPaletted(m.Bounds(), palette)
	draw.Draw(out, m.Bounds(), m, m.Bounds().Min, draw.Src)
	return out
}

// unlike counts the pixels that differ after small: the reader is compiled to
// WebAssembly, so it draws alike on every machine.
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

// The comparison sees a box that is gone and a symbol that is another.
func TestPixelsSee(t *testing.T) {
	draw := func(s sheet.Sheet) image.Image { return small(pdfPages(t, writePDF(t, []sheet.Sheet{s}), pixelDPI)[0]) }
	base := seen(specimen.Sheets()[0])
	want := draw(base)
	for i := range base.Ops {
		less := base
		less.Ops = slices.Delete(slices.Clone(base.Ops), i, i+1)
		if n := unlike(draw(less), want); n <= 2*maxUnlike {
			t.Errorf("without operation %d, %d pixels are unlike", i, n)
		}
	}
}

// The text comes out of the file in reading order with the right characters,
// of a turned side too.
func TestPDFText(t *testing.T) {
	sheets := specimen.Sheets()
	sheets[1].Turned = true
	got := pdfText(t, writePDF(t, sheets))
	want := []string{
		strings.Join([]string{
			"Pinion nut, M24×1.5",
			specimen.Signs,
			"100 N·m, 0.15–0.25 mm, (a\\b) Ελλάδα Кириллица ő",
			"see the second sheet, or example.org",
		}, "\r\n"),
		"Back to the top",
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("page %d reads\n%q\nwant\n%q", i+1, got[i], want[i])
		}
	}
	// Every character of the repertoire comes back as itself.
	all := typeface.Repertoire()
	var ops []sheet.Op
	for i, r := range all {
		ops = append(ops, sheet.Glyphs{X: 5000 + i%32*9000, Y: 8000 + i/32*9000, Size: 5000, Text: "x" + string(r) + "x", Font: typeface.Font(i % 3)})
	}
	read := pdfText(t, writePDF(t, []sheet.Sheet{{Width: 297000, Height: 420000, Ops: ops}}))[0]
	for _, r := range all {
		if !strings.Contains(read, "x"+string(r)+"x") {
			t.Errorf("%q (%U) does not come back", r, r)
		}
	}
}
