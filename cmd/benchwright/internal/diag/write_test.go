package diag

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/source"
)

// at returns the place between « and » in text, as a file called name.
func at(name, text string) source.Place {
	start := strings.Index(text, "«")
	text = strings.Replace(text, "«", "", 1)
	end := strings.Index(text, "»")
	text = strings.Replace(text, "»", "", 1)
	return source.NewFile(name, []byte(text)).At(start, end)
}

func text(t *testing.T, messages ...Diagnostic) string {
	t.Helper()
	var b bytes.Buffer
	if err := WriteText(&b, messages, false); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// The caret stands under the place on a screen whose cells are all alike.
func TestCarets(t *testing.T) {
	for _, c := range []struct{ what, text, want string }{
		{"plain", "limits: «output-lsh»\n", `
a.md:1:9: error: m [limit-unknown]
  1 | limits: output-lsh
    |         ^^^^^^^^^^`},
		{"a later line", "a: 1\nb: «2»", `
a.md:2:4: error: m [limit-unknown]
  2 | b: 2
    |    ^`},
		{"nothing between", "limits:«»\n", `
a.md:1:8: error: m [limit-unknown]
  1 | limits:
    |        ^`},
		{"dash, micro, degree", "— 5 µm at 20 °C: «x» — y\n", `
a.md:1:18: error: m [limit-unknown]
  1 | — 5 µm at 20 °C: x — y
    |                  ^`},
		{"under them", "at «20 °C ±5 µm», dry\n", `
a.md:1:4: error: m [limit-unknown]
  1 | at 20 °C ±5 µm, dry
    |    ^^^^^^^^^^^`},
		{"a tab before", "\tuse: «x»\n", `
a.md:1:7: error: m [limit-unknown]
  1 |     use: x
    |          ^`},
		{"a tab itself", "use:\n«\t»- x\n", `
a.md:2:1: error: m [limit-unknown]
  2 |     - x
    | ^^^^`},
		{"CRLF", "a: 1\r\nb: «2»\r\nc: 3\r\n", `
a.md:2:4: error: m [limit-unknown]
  2 | b: 2
    |    ^`},
		{"a place that takes in the line end", "a: «1\r\n»b: 2\r\n", `
a.md:1:4: error: m [limit-unknown]
  1 | a: 1
    |    ^`},
		{"a byte order mark", "\ufeffa: «1»\n", `
a.md:1:4: error: m [limit-unknown]
  1 | a: 1
    |    ^`},
		{"wide characters", "名前: «軸受» x\n", `
a.md:1:5: error: m [limit-unknown]
  1 | 名前: 軸受 x
    |       ^^^^`},
		{"combining characters", "Me\u0301canique: «e\u0301te\u0301»\n",
			"\na.md:1:13: error: m [limit-unknown]\n  1 | Me\u0301canique: e\u0301te\u0301\n    |            ^^^"},
		{"an emoji, two cells", "🔧 «x»\n", `
a.md:1:3: error: m [limit-unknown]
  1 | 🔧 x
    |    ^`},
		{"several lines", "a: «1\nb: 2»\n", `
a.md:1:4: error: m [limit-unknown]
  1 | a: 1
    |    ^`},
		{"the end of the file", "a: 1\n«»", `
a.md:2:1: error: m [limit-unknown]
  2 |
    | ^`},
		{"controls cannot steer the screen", "\x1b[31m«x»\u202ey\n", `
a.md:1:6: error: m [limit-unknown]
  1 | ·[31mx·y
    |      ^`},
		{"a byte that is not UTF-8", "a\xff«b»\n", `
a.md:1:3: error: m [limit-unknown]
  1 | a�b
    |   ^`},
		{"ten lines need two figures", strings.Repeat("a\n", 9) + "«b»\n", `
a.md:10:1: error: m [limit-unknown]
  10 | b
     | ^`},
	} {
		got := text(t, Diagnostic{Slug: "limit-unknown", At: at("a.md", c.text), Message: "m"})
		if want := strings.TrimPrefix(c.want, "\n") + "\n\n"; got != want {
			t.Errorf("%s:\n%swant\n%s", c.what, got, want)
		}
	}
}

// A long line is cut to both sides of the place, and stays near 100 cells.
func TestLongLines(t *testing.T) {
	words := strings.Repeat("word ", 40)
	for _, c := range []struct{ what, text, want string }{
		{"behind", "«here» " + words, "  1 | here " + strings.Repeat("word ", 18) + "word…\n    | ^^^^\n"},
		{"before", words + "«here»", "  1 | …" + strings.Repeat("word ", 10) + "here\n    | " + strings.Repeat(" ", 51) + "^^^^\n"},
		{"itself", "«" + strings.Repeat("x", 150) + "»", "  1 | " + strings.Repeat("x", 99) + "…\n    | " + strings.Repeat("^", 100) + "\n"},
		{"wide ones", "«" + strings.Repeat("軸", 60) + "»", "  1 | " + strings.Repeat("軸", 49) + "…\n    | " + strings.Repeat("^", 99) + "\n"},
	} {
		got := text(t, Diagnostic{Slug: "limit-unknown", At: at("a.md", c.text+"\n"), Message: "m"})
		if _, got, _ = strings.Cut(got, "\n"); got != c.want+"\n" {
			t.Errorf("%s:\n%swant\n%s", c.what, got, c.want)
		}
	}
}

func TestWholeMessage(t *testing.T) {
	d := Diagnostic{Slug: "why-missing", At: at("a.md", "a «b» c\n"), Message: "it says `\x1b[2J`", Label: "here", Fix: "do:\n\n    this",
		Related: []Related{{At: at("u.yaml", "x: «y»\n"), Message: "declared here"}}}
	want := "a.md:1:3: warning: it says `·[2J` [why-missing]\n  1 | a b c\n    |   ^ here\n" +
		"  u.yaml:1:4: note: declared here\n  1 | x: y\n    |    ^\n  fix: do:\n\n    this\n\n"
	if got := text(t, d); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
	var b bytes.Buffer
	if err := WriteText(&b, []Diagnostic{d}, true); err != nil {
		t.Fatal(err)
	}
	for _, s := range []string{yellow + "warning:" + plain, yellow + "^ here" + plain, green + "fix:" + plain} {
		if !strings.Contains(b.String(), s) {
			t.Errorf("in color there is no %q in\n%q", s, b.String())
		}
	}
}

// A message may be about a file as a whole, or about none.
func TestNoPlace(t *testing.T) {
	d := Diagnostic{Slug: "too-large", Message: "m", At: source.Place{File: source.NewFile("a.md", nil)}}
	if got, want := text(t, d), "a.md: error: m [too-large]\n\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	d.At = source.Place{}
	if got, want := text(t, d), "error: m [too-large]\n\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestTwentyAFile(t *testing.T) {
	a, b := source.NewFile("a.md", []byte(strings.Repeat("x\n", 30))), source.NewFile("b.md", []byte("x\n"))
	l := &List{}
	for i := range 25 {
		l.Report("limit-unknown", a.At(2*i, 2*i+1), "", "m%d", i)
	}
	l.Report("limit-unknown", b.At(0, 1), "", "the other file")
	got := text(t, l.Sorted()...)
	if n := strings.Count(got, "a.md:"); n != 21 || !strings.Contains(got, "a.md: and 5 more\n\n") {
		t.Errorf("of 25 messages %d are shown:\n%s", n-1, got)
	}
	if strings.Contains(got, "m20") || !strings.Contains(got, "m19") || !strings.Contains(got, "the other file") {
		t.Errorf("not the first 20 of the one file and all of the other:\n%s", got)
	}
}

// The order is total: file, offset, slug, text; the same message is shown once.
func TestSorted(t *testing.T) {
	a, b := source.NewFile("a.md", []byte("0123456789")), source.NewFile("b.md", []byte("0123456789"))
	l := &List{}
	for _, m := range []struct {
		f     *source.File
		start int
		slug  string
		text  string
	}{{b, 0, "x-a", "1"}, {a, 5, "x-b", "1"}, {a, 5, "x-a", "2"}, {a, 5, "x-a", "1"}, {a, 2, "x-z", "1"}, {a, 5, "x-a", "1"}} {
		l.Report(m.slug, m.f.At(m.start, m.start+1), "", "%s", m.text)
	}
	var got []string
	for _, d := range l.Sorted() {
		got = append(got, fmt.Sprint(d.At.File.Name, d.At.Span.Start, d.Slug, d.Message))
	}
	if want := "[a.md2x-z1 a.md5x-a1 a.md5x-a2 a.md5x-b1 b.md0x-a1]"; fmt.Sprint(got) != want {
		t.Errorf("got %v, want %s", got, want)
	}
}
