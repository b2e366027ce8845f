package raster

import (
	"bytes"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"

	"benchwright/render/specimen"
)

func TestDecodePictureRefuses(t *testing.T) {
	var anim bytes.Buffer
	if err := gif.Encode(&anim, specimen.Colorful(4, 4), nil); err != nil {
		t.Fatal(err)
	}
	good := specimen.PNG(40, 30)
	for _, c := range []struct {
		name string
		data []byte
		want string
	}{
		{"empty.png", nil, "`empty.png` is empty"},
		{"fig.gif", anim.Bytes(), "`fig.gif` is neither a PNG nor a JPEG file"},
		{"huge.png", specimen.PNGHeader(40000, 40000), "`huge.png` has 40000 × 40000 pixels; the most is 8 million"},
		{"wide.png", specimen.PNGHeader(1<<31-1, 1<<31-1), "`wide.png` has"},
		{"lying.png", specimen.PNGHeader(100, 100), "`lying.png` cannot be decoded to its end"},
		{"none.png", specimen.PNGHeader(0, 100), "`none.png` has"},
		{"cut.png", good[:len(good)/2], "`cut.png` cannot be decoded to its end"},
		{"head.png", good[:20], "`head.png` has a broken PNG header"},
		{"cut.jpg", specimen.JPEG(40, 30)[:400], "`cut.jpg` "},
		{"head.jpg", []byte("\xFF\xD8\xFF\xE0"), "`head.jpg` has a broken JPEG header"},
		{"half.jpg", specimen.JPEG(400, 300)[:3000], "`half.jpg` cannot be decoded to its end"},
	} {
		pixels, _, _, _, err := Decode(c.name, c.data)
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: error %v, want %q", c.name, err, c.want)
		}
		if pixels != nil {
			t.Errorf("%s: pixels of a broken picture", c.name)
		}
	}
}

// Each kind of picture comes out as the PDF writer takes it, its colors kept
// and its transparency laid on white.
func TestDecodePicture(t *testing.T) {
	const w, h = 30, 20
	rect := image.Rect(5, 7, 5+w, 7+h) // bounds need not begin at zero
	red := color.NRGBA{R: 200, G: 30, B: 40, A: 255}
	glass := image.NewNRGBA(rect)
	deep := image.NewNRGBA64(rect)
	gray := image.NewGray(rect)
	gray16 := image.NewGray16(rect)
	flat := image.NewPaletted(rect, color.Palette{red, color.Gray{Y: 128}})
	dim := image.NewPaletted(rect, color.Palette{color.NRGBA{}, color.Gray{Y: 128}})
	for y := rect.Min.Y; y < rect.Max.Y; y++ {
		for x := rect.Min.X; x < rect.Max.X; x++ {
			if x > rect.Min.X+w/2 {
				glass.Set(x, y, red)
			}
			deep.Set(x, y, red)
			gray.Set(x, y, color.Gray{Y: 90})
			gray16.Set(x, y, color.Gray{Y: 90})
		}
	}
	for _, c := range []struct {
		name        string
		src         image.Image
		format      string
		colors      color.Model
		left, right color.Color
	}{
		{"glass", glass, "PNG", color.RGBAModel, color.White, red},
		{"deep", deep, "PNG", color.RGBAModel, red, red},
		{"gray", gray, "PNG", color.GrayModel, color.Gray{Y: 90}, color.Gray{Y: 90}},
		{"gray16", gray16, "PNG", color.GrayModel, color.Gray{Y: 90}, color.Gray{Y: 90}},
		{"flat", flat, "PNG", color.RGBAModel, red, red},
		{"dim", dim, "PNG", color.GrayModel, color.White, color.White},
		{"photo", deep, "JPEG", color.YCbCrModel, red, red},
		{"gray photo", gray, "JPEG", color.GrayModel, color.Gray{Y: 90}, color.Gray{Y: 90}},
	} {
		var b bytes.Buffer
		var err error
		if c.format == "PNG" {
			err = png.Encode(&b, c.src)
		} else {
			err = jpeg.Encode(&b, c.src, nil)
		}
		if err != nil {
			t.Fatal(err)
		}
		pixels, format, gotW, gotH, err := Decode(c.name, b.Bytes())
		if err != nil || format != c.format || gotW != w || gotH != h {
			t.Errorf("%s: %s %d × %d, %v", c.name, format, gotW, gotH, err)
			continue
		}
		if width, err := Check(pixels, format); err != nil || width != w {
			t.Errorf("%s: the writer would see %d columns, %v", c.name, width, err)
		}
		m, _, err := image.Decode(bytes.NewReader(pixels))
		if err != nil || m.ColorModel() != c.colors {
			t.Errorf("%s: %v, %v", c.name, m, err)
		}
		for x, want := range map[int]color.Color{2: c.left, w - 2: c.right} {
			if got := m.At(x, h/2); !near(got, want) {
				t.Errorf("%s at %d: %v, want %v", c.name, x, got, want)
			}
		}
	}
}

func near(a, b color.Color) bool {
	r, g, bl, _ := a.RGBA()
	R, G, B, _ := b.RGBA()
	for _, d := range []int{int(r) - int(R), int(g) - int(G), int(bl) - int(B)} {
		if d < -0x600 || d > 0x600 {
			return false
		}
	}
	return true
}

// A photograph stands upright. The eight orientations, by where the upper left
// and the upper right of the scene lie in the file (Exif 2.3, tag 274: row 0
// and column 0 of 1 top left, 2 top right, 3 bottom right, 4 bottom left,
// 5 left top, 6 right top, 7 right bottom, 8 left bottom).
func TestDecodePictureTurns(t *testing.T) {
	red, green, white := color.NRGBA{R: 220, G: 0, B: 0, A: 255}, color.NRGBA{R: 0, G: 160, B: 0, A: 255}, color.White
	const w, h = 64, 32 // of the file
	at := map[byte][2]image.Point{
		1: {{X: 0, Y: 0}, {X: 1, Y: 0}}, 2: {{X: 1, Y: 0}, {X: 0, Y: 0}}, 3: {{X: 1, Y: 1}, {X: 0, Y: 1}}, 4: {{X: 0, Y: 1}, {X: 1, Y: 1}},
		5: {{X: 0, Y: 0}, {X: 0, Y: 1}}, 6: {{X: 0, Y: 1}, {X: 0, Y: 0}}, 7: {{X: 1, Y: 1}, {X: 1, Y: 0}}, 8: {{X: 1, Y: 0}, {X: 1, Y: 1}},
	}
	for value, corners := range at {
		m := image.NewNRGBA(image.Rect(0, 0, w, h))
		for y := range h {
			for x := range w {
				m.Set(x, y, white)
				for i, c := range []color.Color{red, green} {
					if x/(w/2) == corners[i].X && y/(h/2) == corners[i].Y {
						m.Set(x, y, c)
					}
				}
			}
		}
		var b bytes.Buffer
		if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: 95}); err != nil {
			t.Fatal(err)
		}
		for _, little := range []bool{false, true} {
			pixels, _, gotW, gotH, err := Decode("photo.jpg", specimen.Exif(b.Bytes(), value, little))
			if err != nil {
				t.Fatal(err)
			}
			if wide := value < 5; (gotW == w) != wide || (gotH == h) != wide {
				t.Errorf("orientation %d: %d × %d", value, gotW, gotH)
			}
			out, err := jpeg.Decode(bytes.NewReader(pixels))
			if err != nil {
				t.Fatal(err)
			}
			if l, r := out.At(gotW/4, gotH/4), out.At(gotW*3/4, gotH/4); !near(l, red) || !near(r, green) {
				t.Errorf("orientation %d: top left %v, top right %v", value, l, r)
			}
			if below := out.At(gotW/4, gotH*3/4); !near(below, white) {
				t.Errorf("orientation %d: bottom left %v", value, below)
			}
		}
	}
}
