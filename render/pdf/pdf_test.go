package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"os"
	"regexp"
	"runtime"
	"strings"
	"sync"
	"testing"

	"benchwright/render/impose"
	"benchwright/render/sheet"
	"benchwright/render/specimen"
)

var info = Info{Title: "Specimen µ", Author: "Fallow Lane", Subject: "MD-48", Keywords: "a b", Language: "en-GB"}

func writePDF(t testing.TB, sheets []sheet.Sheet) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, info, sheets); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// The same sheets give the same bytes: twice, on one processor and on eight,
// and from eight goroutines at once (run with -race, this is the race test).
func TestSameBytes(t *testing.T) {
	sheets := specimen.Sheets()
	want := writePDF(t, sheets)
	if name := os.Getenv("SPECIMEN"); name != "" { // to look at it
		os.WriteFile(name, want, 0o666)
	}
	for _, procs := range []int{1, 8} {
		old := runtime.GOMAXPROCS(procs)
		var wg sync.WaitGroup
		for range 8 {
			wg.Go(func() {
				var b bytes.Buffer
				if err := Write(&b, info, sheets); err != nil || !bytes.Equal(b.Bytes(), want) {
					t.Errorf("GOMAXPROCS %d: other bytes, %v", procs, err)
				}
			})
		}
		wg.Wait()
		runtime.GOMAXPROCS(old)
	}
}

// pdfStreams inflates every stream of a PDF, in file order.
func pdfStreams(t *testing.T, pdf []byte) [][]byte {
	t.Helper()
	var streams [][]byte
	for _, m := range regexp.MustCompile(`(?s)<<([^\n]*(?:\n/[^\n]*)*)>>\nstream\n`).FindAllSubmatchIndex(pdf, -1) {
		data := pdf[m[1]:]
		data = data[:bytes.Index(data, []byte("\nendstream"))]
		if bytes.Contains(pdf[m[2]:m[3]], []byte("FlateDecode")) {
			z, err := zlib.NewReader(bytes.NewReader(data))
			if err != nil {
				t.Fatal(err)
			}
			if data, err = io.ReadAll(z); err != nil {
				t.Fatal(err)
			}
		}
		streams = append(streams, data)
	}
	return streams
}

// The graphics state is balanced on every page, and the catalog says what the
// file is.
func TestPDFStructure(t *testing.T) {
	pdf := writePDF(t, specimen.Sheets())
	pages := 0
	for _, s := range pdfStreams(t, pdf) {
		if !regexp.MustCompile(`^\d J\n\d j\n`).Match(s) {
			continue
		}
		pages++
		depth := 0
		for word := range bytes.FieldsSeq(s) {
			switch string(word) {
			case "q":
				depth++
			case "Q":
				depth--
			}
		}
		if depth != 0 {
			t.Errorf("page %d leaves %d graphics states open", pages, depth)
		}
	}
	if pages != 2 {
		t.Errorf("found %d page streams, want 2", pages)
	}
	for _, want := range []string{"/Lang (en-GB)", "/MediaBox [0 0 297.64 419.53]", "/MediaBox [0 0 419.53 297.64]",
		`/URI (https://example.org/a_\(b\))`, "/CreationDate (D:19700101000000)", "/PageMode /UseOutlines"} {
		if !bytes.Contains(pdf, []byte(want)) {
			t.Errorf("the file lacks %s", want)
		}
	}
	if n := bytes.Count(pdf, []byte("/Subtype /Image")); n != 2 {
		t.Errorf("%d images in the file, want 2: one is used twice", n)
	}
	for _, dest := range []string{ // from the foot of each one's own page
		"/Dest [3 0 R /XYZ 0 391.18 null]", // 148 mm − 10 mm
		"/Dest [5 0 R /XYZ 0 155.91 null]", // 105 mm − 50 mm
	} {
		if n := bytes.Count(pdf, []byte(dest)); n != 2 { // the bookmark and the link
			t.Errorf("%d times %s, want 2", n, dest)
		}
	}
}

// A path is painted as it says: dashes, ends, joins and the even-odd rule. The
// miter limit is written once a page.
func TestPathsArePaintedAsTheySay(t *testing.T) {
	segs := []sheet.Seg{{Verb: 'M', X: 10000, Y: 10000}, {Verb: 'L', X: 20000, Y: 10000}}
	path := func(p sheet.Path) sheet.Path { p.Segs = segs; return p }
	var b bytes.Buffer
	err := Write(&b, Info{}, []sheet.Sheet{{Width: 105000, Height: 148000, Ops: []sheet.Op{
		sheet.Drawing{W: 50000, H: 50000, Name: "a.svg", Ops: []sheet.Op{
			path(sheet.Path{Fill: 0xFF0000, EvenOdd: true, Stroke: sheet.NoColor}),
			path(sheet.Path{Fill: 0xFF0000, EvenOdd: true, Stroke: 1, StrokeWidth: 254, Miter: true}),
			path(sheet.Path{Fill: sheet.NoColor, EvenOdd: true, Stroke: 1, StrokeWidth: 508, Miter: true, Butt: true, Dash: [4]int{2540, 1270}}),
			path(sheet.Path{Fill: sheet.NoColor, Stroke: 1, StrokeWidth: 508, Dash: [4]int{2540, 1270, 254, 1270}}),
		}}}}})
	if err != nil {
		t.Fatal(err)
	}
	page := string(pdfStreams(t, b.Bytes())[0])
	for _, want := range []string{"\nf*\n", "\nB*\n", "\nS\n", "\n4 M\n", "\n0 J\n", "\n1 J\n", "\n0 j\n", "\n1 j\n", "[7.20 3.60] 0.00 d", "[7.20 3.60 0.72 3.60] 0.00 d"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q:\n%s", want, page)
		}
	}
	if strings.Count(page, "4 M\n") != 1 {
		t.Error("the miter limit is written more than once")
	}
}

func TestWritePDFRefuses(t *testing.T) {
	face := func(ops ...sheet.Op) []sheet.Sheet {
		return []sheet.Sheet{{Width: 105000, Height: 148000, Name: "Steps", Ops: ops}}
	}
	glyphs := func(s string) []sheet.Sheet { return face(sheet.Glyphs{Size: 4000, Text: s}) }
	picture := func(format string, data []byte) []sheet.Sheet {
		return face(sheet.Image{W: 1000, H: 1000, Name: "fig.png", Pixels: data, Format: format})
	}
	good := specimen.PNG(9, 9)
	for _, c := range []struct {
		name   string
		info   Info
		sheets []sheet.Sheet
		want   string
	}{
		{"nothing", Info{}, nil, "no sheets"},
		{"no size", Info{}, []sheet.Sheet{{Name: "x"}}, "0 × 0 mm"},
		{"astral rune", Info{}, glyphs("grin 😀"), "U+1F600"},
		{"cut UTF-8", Info{}, glyphs("half \xc3"), "not valid UTF-8"},
		{"tab", Info{}, glyphs("a\tb"), "U+0009"},
		{"no glyph", Info{}, glyphs("⌀ 5"), "U+2300"},
		{"unknown face", Info{}, face(sheet.Glyphs{Size: 4000, Font: 9, Text: "x"}), "no face 9"},
		{"astral title", Info{Title: "😀"}, glyphs("x"), "title: character"},
		{"cut title", Info{Author: "\xff"}, glyphs("x"), "author: "},
		{"language", Info{Language: "en) /X (y"}, glyphs("x"), "not a language tag"},
		{"lost link", Info{}, face(sheet.Link{To: "step-9"}), `"step-9", which is no anchor`},
		{"http", Info{}, face(sheet.Link{To: "http://example.org"}), "no anchor"},
		{"unescaped address", Info{}, face(sheet.Link{To: "https://example.org/ü"}), "percent-encoded"},
		{"anchors", Info{}, []sheet.Sheet{{Width: 9, Height: 9, Anchors: []sheet.Anchor{{Name: "a"}, {Name: "a"}}}}, "stands twice"},
		{"bookmark", Info{}, []sheet.Sheet{{Width: 9, Height: 9, Bookmarks: []sheet.Bookmark{{Text: "a\xff"}}}}, "bookmark"},
		{"path", Info{}, face(sheet.Path{Segs: []sheet.Seg{{Verb: 'L'}}, Fill: 0}), "segment 0"},
		{"foreign op", Info{}, face(nil), "cannot be drawn"},
		{"format", Info{}, picture("GIF", good), "neither PNG nor JPEG"},
		{"no image", Info{}, picture("PNG", nil), "fig.png"},
		{"cut image", Info{}, picture("PNG", good[:len(good)-20]), "ends too early"},
		{"cut photo", Info{}, picture("JPEG", specimen.JPEG(9, 9)[:60]), "fig.png"},
	} {
		var b bytes.Buffer
		err := Write(&b, c.info, c.sheets)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one with %q", c.name, err, c.want)
		}
		if b.Len() > 0 {
			t.Errorf("%s: %d bytes were written", c.name, b.Len())
		}
	}
}

// Points are rounded from whole micrometers: 25.4 mm are 72 pt.
func TestPoints(t *testing.T) {
	for um, want := range map[int]float64{0: 0, 25400: 72, -25400: -72, 210000: 595.28, 297000: 841.89, 1: 0, 2: 0.01} {
		if got := points(um); got != want {
			t.Errorf("points(%d) = %v, want %v", um, got, want)
		}
	}
}

func BenchmarkWritePDF(b *testing.B) {
	sheets := specimen.Sheets()
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(io.Discard, info, sheets); err != nil {
			b.Fatal(err)
		}
	}
}

// In the PDF of imposed faces the outline follows the faces, and the turned side
// its links.
func TestOutlineOfImposedFaces(t *testing.T) {
	faces := make([]sheet.Sheet, 3)
	for i := range faces {
		name := fmt.Sprint("face ", i+1)
		faces[i] = sheet.Sheet{Width: 105000, Height: 148000, Name: name,
			Bookmarks: []sheet.Bookmark{{Level: 0, Text: name, Y: 7000}, {Level: 1, Text: name + " step", Y: 8000}}}
	}
	sheets, err := impose.Sheets(faces, impose.Plan{Paper: sheet.Papers[0], Up: 2, Flip: impose.LongEdge})
	if err != nil {
		t.Fatal(err)
	}
	pdf := writePDF(t, sheets)
	var titles []string
	for _, m := range bytes.Split(pdf, []byte("/Title (\xfe\xff"))[1:7] { // the last is the file's own
		title, _, _ := bytes.Cut(m, []byte(")\n"))
		titles = append(titles, strings.ReplaceAll(string(title), "\x00", ""))
	}
	if got, want := strings.Join(titles, ","), "face 1,face 1 step,face 2,face 2 step,face 3,face 3 step"; got != want {
		t.Errorf("outline %s, want %s", got, want)
	}
	// 38 mm below the upper edge as read is 38 mm above the foot of the turned
	// page.
	if !bytes.Contains(pdf, []byte("/Dest [5 0 R /XYZ 0 107.72 null]")) {
		t.Error("the bookmark of face 2 does not lead to its place on the turned side")
	}
}
