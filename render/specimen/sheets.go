package specimen

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"

	"benchwright/render"
	"benchwright/render/sheet"
	"benchwright/render/typeface"
)

// Signs are signs of the trade that must come through every writer.
const Signs = "· × ± ° µ Ω Ø ≤ ≥ − – — … ′ ″ ½ ¼ ⅛ → ↑ ↓ ☐ ☑ ✓ Δ α δ ² ³"

// Sheets is two sheets of unlike size with every kind of operation on them.
func Sheets() []sheet.Sheet {
	black, blue := sheet.Color(0x111111), sheet.Color(0x0B5FA5)
	text := func(x, y, size int, f typeface.Font, s string) sheet.Glyphs {
		return sheet.Glyphs{X: x, Y: y, Size: size, Font: f, Color: black, Text: s}
	}
	photo, sketch := JPEG(60, 40), PNG(60, 30)
	return []sheet.Sheet{{
		Width: 105000, Height: 148000, Name: "Specimen 1 of 2",
		Bookmarks: []sheet.Bookmark{{Level: 0, Text: "Specimen – °µΩ", Y: 10000}, {Level: 2, Text: "Zażółć", Y: 30000}},
		Anchors:   []sheet.Anchor{{Name: "top", Y: 10000}},
		Groups:    []sheet.Group{{Name: "step 7", Area: sheet.Area{X: 10000, Y: 10000, W: 85000, H: 25000}, From: 0, To: 4}},
		Marks: []sheet.Mark{{Ref: 7, Class: render.Technical, Kind: "step", Area: sheet.Area{X: 10000, Y: 10000, W: 85000, H: 22000}, From: 0, To: 3},
			{Ref: 8, Class: render.Wording, Kind: "text", Area: sheet.Area{X: 10000, Y: 20000, W: 85000, H: 5000}, From: 1, To: 2}},
		Ops: []sheet.Op{
			text(10000, 16000, 6000, typeface.Bold, "Pinion nut, M24×1.5"),
			text(10000, 24000, 4000, typeface.Regular, Signs),
			text(10000, 31000, 4000, typeface.Semibold, "100 N·m, 0.15–0.25 mm, (a\\b) Ελλάδα Кириллица ő"),
			sheet.Rect{X: 10000, Y: 36000, W: 40000, H: 15000, Radius: 3000, Fill: 0xFFF2CC, Stroke: black, StrokeWidth: 600},
			sheet.Rect{X: 55000, Y: 36000, W: 8000, H: 8000, Fill: sheet.NoColor, Stroke: blue, StrokeWidth: 400, Role: sheet.TickBox},
			sheet.Rect{X: 70000, Y: 36000, W: 20000, H: 8000, Fill: 0xDDDDDD, Stroke: sheet.NoColor, Role: sheet.WriteBox},
			sheet.Line{X1: 10000, Y1: 56000, X2: 95000, Y2: 56000, Width: 300, Color: black},
			sheet.Line{X1: 10000, Y1: 59000, X2: 95000, Y2: 59000, Width: 500, Color: blue, Dash: 2000},
			sheet.Path{Segs: []sheet.Seg{{Verb: 'M', X: 10000, Y: 80000}, {Verb: 'C', X1: 20000, Y1: 55000, X2: 30000, Y2: 95000, X: 40000, Y: 70000}, {Verb: 'L', X: 45000, Y: 80000}, {Verb: 'Z'}},
				Fill: 0xF9A800, Stroke: black, StrokeWidth: 800},
			sheet.Image{X: 55000, Y: 64000, W: 30000, H: 20000, Name: "photo.jpg", Alt: "colors", Pixels: photo, Format: "JPEG"},
			sheet.Image{X: 55000, Y: 90000, W: 30000, H: 15000, Name: "sketch.png", Pixels: sketch, Format: "PNG"},
			sheet.Image{X: 10000, Y: 90000, W: 30000, H: 20000, Name: "photo.jpg", Pixels: photo, Format: "JPEG"},
			text(10000, 120000, 4000, typeface.Regular, "see the second sheet, or example.org"),
			sheet.Link{X: 10000, Y: 116000, W: 30000, H: 5000, To: "second"},
			sheet.Link{X: 45000, Y: 116000, W: 30000, H: 5000, To: "https://example.org/a_(b)"},
		},
	}, {
		Width: 148000, Height: 105000, Name: "Specimen 2 of 2",
		Bookmarks: []sheet.Bookmark{{Level: 1, Text: "Second", Y: 50000}},
		Anchors:   []sheet.Anchor{{Name: "second", Y: 50000}},
		Ops: []sheet.Op{
			text(10000, 50000, 5000, typeface.Regular, "Back to the top"),
			sheet.Link{X: 10000, Y: 45000, W: 30000, H: 6000, To: "top"},
		},
	}}
}

// Colorful is a picture in which a mirror or a turn would show.
func Colorful(w, h int) *image.NRGBA {
	m := image.NewNRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			m.SetNRGBA(x, y, color.NRGBA{R: uint8(255 * x / w), G: uint8(255 * y / h), B: 90, A: 255})
		}
	}
	return m
}

// JPEG is the colorful picture as a file.
func JPEG(w, h int) []byte {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, Colorful(w, h), nil); err != nil {
		panic(err) // a buffer takes all
	}
	return b.Bytes()
}

// PNG is the colorful picture as a file.
func PNG(w, h int) []byte {
	var b bytes.Buffer
	if err := png.Encode(&b, Colorful(w, h)); err != nil {
		panic(err) // a buffer takes all
	}
	return b.Bytes()
}
