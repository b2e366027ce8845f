package main

import (
	"bytes"
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/cli"
	"benchwright/cmd/benchwright/internal/compile"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/workspace"
)

// The README is held to what the program does: its procedure is a file that
// builds without a word, its picture is drawn from that build, its message is
// the program's, its walk for a newcomer works, and no command, option, key or
// block type is missing from it.

const (
	readmeFolder = "../../testdata/readme"
	pictureLimit = 60 << 10 // bytes
)

func readme(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// run runs the program in a folder and returns what it said.
func run(dir string, args ...string) (code int, out, err string) {
	var o, e bytes.Buffer
	code = cli.Main(args, cli.Streams{Out: &o, Err: &e, Dir: dir})
	return code, o.String(), e.String()
}

// fences returns the fenced blocks of text whose info string is info, without
// the blanks that a list sets them in by.
func fences(text, info string) []string {
	var out []string
	var block strings.Builder
	fence, indent, wanted := "", "", false
	for line := range strings.Lines(text) {
		bare := strings.TrimSpace(line)
		switch {
		case fence == "" && strings.HasPrefix(bare, "```"):
			fence = bare[:len(bare)-len(strings.TrimLeft(bare, "`"))]
			indent = line[:strings.IndexByte(line, '`')]
			wanted = bare[len(fence):] == info
			block.Reset()
		case fence != "" && bare == fence:
			if wanted {
				out = append(out, block.String())
			}
			fence = ""
		case fence != "":
			block.WriteString(strings.TrimPrefix(line, indent))
		}
	}
	return out
}

func TestReadmeProcedure(t *testing.T) {
	text := readme(t)
	file, err := os.ReadFile(filepath.Join(readmeFolder, "end-nut.md"))
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Contains(fences(text, "markdown"), string(file)) {
		t.Errorf("the README does not show %s/end-nut.md word for word", readmeFolder)
	}
	code, _, msgs := run(readmeFolder, "check", ".")
	if code != 0 || msgs != "" {
		t.Errorf("the README's procedure is not clean: exit %d\n%s", code, msgs)
	}
}

func TestReadmeMessage(t *testing.T) {
	const before, after = "limits: 55 to 65 N·m", "limits: 55-65 N·m"
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(readmeFolder)); err != nil {
		t.Fatal(err)
	}
	change(t, filepath.Join(dir, "end-nut.md"), before, after)
	code, _, msgs := run(dir, "check", ".")
	if code != 1 {
		t.Errorf("exit %d, want 1", code)
	}
	if !slices.Contains(fences(readme(t), ""), strings.TrimRight(msgs, "\n")+"\n") {
		t.Errorf("the README does not show this message:\n%s", msgs)
	}
}

// The walk of "Your first card": new, a changed limit, a step more, a card.
func TestReadmeWalk(t *testing.T) {
	text := readme(t)
	dir := t.TempDir()
	if code, _, msgs := run(dir, "new", "my-shop"); code != 0 {
		t.Fatal(msgs)
	}
	const before, after = "60 ±5 N·m", "70 ±5 N·m"
	const heading = "### Tighten the new end nut {#end-nut}"
	for _, said := range []string{"`" + before + "`", "`" + after + "`", "`" + heading + "`"} {
		if !strings.Contains(text, said) {
			t.Errorf("the README's walk does not say %s", said)
		}
	}
	var step string
	for _, b := range fences(text, "markdown") {
		if strings.HasPrefix(b, "### ") {
			step = b
		}
	}
	change(t, filepath.Join(dir, "my-shop/feed-roller/unit.yaml"), before, after)
	change(t, filepath.Join(dir, "my-shop/feed-roller/end-play.md"), heading, step+"\n"+heading)
	code, out, msgs := run(dir, "build", "my-shop", "-o", "cards")
	if code != 0 || msgs != "" || !strings.Contains(out, "4 steps") {
		t.Errorf("exit %d\n%s%s", code, out, msgs)
	}
	if _, err := os.Stat(filepath.Join(dir, "cards/FR-10.pdf")); err != nil {
		t.Error(err)
	}
	// The warning that the README accepts is given, and accepted so.
	change(t, filepath.Join(dir, "my-shop/feed-roller/end-play.md"), "### Wipe the shaft end\n\nWipe", "### Wipe the shaft end {#wipe}\n\nAs required, wipe")
	if _, _, msgs := run(dir, "check", "my-shop"); !strings.Contains(msgs, "[prose-vague]") {
		t.Errorf("no warning to accept: %s", msgs)
	}
	for _, b := range fences(text, "yaml") {
		if strings.HasPrefix(b, "accept:") {
			change(t, filepath.Join(dir, "my-shop/feed-roller/end-play.md"), "kind: test\n", "kind: test\n"+b)
		}
	}
	if code, _, msgs := run(dir, "check", "my-shop"); code != 0 || msgs != "" {
		t.Errorf("the README's acceptance does not hold: %s", msgs)
	}
}

// The README's shop.yaml and unit.yaml are clean as they stand.
func TestReadmeFiles(t *testing.T) {
	dir := t.TempDir()
	for _, b := range fences(readme(t), "yaml") {
		name := "shop.yaml"
		switch {
		case strings.HasPrefix(b, "unit:"):
			name = "unit.yaml"
		case !strings.HasPrefix(b, "benchwright:"):
			continue
		}
		if err := os.WriteFile(filepath.Join(dir, name), []byte(b), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	procedure, err := os.ReadFile(filepath.Join(readmeFolder, "end-nut.md"))
	if err != nil {
		t.Fatal(err)
	}
	for _, number := range []string{"FR-10", "FR-20"} {
		text := strings.Replace(string(procedure), "card: FR-20", "card: "+number, 1)
		text = strings.Replace(text, "limits: 55 to 65 N·m\nsource: roller manual, page 9", "limits: end-nut-torque", 1)
		if err := os.WriteFile(filepath.Join(dir, number+".md"), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if code, out, msgs := run(dir, "check", "."); msgs != "" {
		t.Errorf("exit %d\n%s%s", code, out, msgs)
	}
}

// The README's example of a computation is what the program answers.
func TestReadmeTerminal(t *testing.T) {
	shown := 0
	for _, b := range fences(readme(t), "") {
		line, want, _ := strings.Cut(b, "\n")
		asked, ok := strings.CutPrefix(line, "$ benchwright ")
		if !ok {
			continue
		}
		shown++
		args := regexp.MustCompile(`"[^"]*"|\S+`).FindAllString(asked, -1)
		for i := range args {
			args[i] = strings.Trim(args[i], `"`)
		}
		if code, out, msgs := run(".", args...); code != 0 || out != want {
			t.Errorf("exit %d, the README does not show:\n%s%s", code, out, msgs)
		}
	}
	if shown == 0 {
		t.Error("the README shows no computation")
	}
}

// What the README says of a comparison is what the program answers to the walk's
// change.
func TestReadmeCompare(t *testing.T) {
	dir := t.TempDir()
	for _, side := range []string{"old", "new"} {
		if code, _, msgs := run(dir, "new", side); code != 0 {
			t.Fatal(msgs)
		}
	}
	change(t, filepath.Join(dir, "new/feed-roller/unit.yaml"), "60 ±5 N·m", "70 ±5 N·m")
	code, out, msgs := run(dir, "compare", "old", "new")
	if code != 1 || msgs != "" || !slices.Contains(fences(readme(t), ""), out) {
		t.Errorf("exit %d, the README does not show:\n%s%s", code, out, msgs)
	}
}

// What the README says of a second release is what the program answers to the
// same change.
func TestReadmeRelease(t *testing.T) {
	dir := t.TempDir()
	if code, _, msgs := run(dir, "new", "my-shop"); code != 0 {
		t.Fatal(msgs)
	}
	release := []string{"release", "my-shop", "--date", "2026-10-05", "--approved-by", "shop lead", "--copies", "bench 2, bench 4"}
	if code, _, msgs := run(dir, release...); code != 0 {
		t.Fatal(msgs)
	}
	change(t, filepath.Join(dir, "my-shop/feed-roller/unit.yaml"), "60 ±5 N·m", "70 ±5 N·m")
	change(t, filepath.Join(dir, "my-shop/feed-roller/end-play.md"), "revision: A", "revision: B")
	code, out, msgs := run(dir, release...)
	if code != 0 || msgs != "" || !slices.Contains(fences(readme(t), ""), out) {
		t.Errorf("exit %d, the README does not show:\n%s%s", code, out, msgs)
	}
	if code, out, _ := run(dir, "trace", "jz4xd", "2akv2", "my-shop"); code != 0 || !strings.Contains(out, "\nCURRENT") {
		t.Errorf("exit %d, the code in the README: %s", code, out)
	}
}

func TestReadmeIsComplete(t *testing.T) {
	text := readme(t)
	has := func(what, said string) {
		if !strings.Contains(text, said) {
			t.Errorf("the README does not name the %s %s", what, said)
		}
	}
	_, help, _ := run(".", "help")
	for line := range strings.Lines(help) {
		if f := strings.Fields(line); len(f) > 1 && f[0] == "benchwright" && strings.HasPrefix(line, "  ") {
			has("command", "`benchwright "+f[1])
		}
	}
	for _, command := range []string{"check", "build"} {
		_, options, _ := run(".", command, "--help")
		for line := range strings.Lines(options) {
			if f := strings.Fields(line); len(f) > 1 && strings.HasPrefix(f[0], "-") {
				has("option", f[0]+" ")
			}
		}
	}
	for _, paper := range compile.Papers() {
		has("paper", "`"+paper+"`")
	}
	for _, kind := range slices.Concat(procedure.Built, procedure.Planned) {
		has("block type", "`"+kind+"`")
	}
	// What the README says is not built yet is what the program knows by name.
	_, later, _ := strings.Cut(text, "the step's text until then: ")
	later, _, _ = strings.Cut(later, ". ")
	if want := "`" + strings.Join(procedure.Planned, "`, `") + "`"; later != want {
		t.Errorf("the README says that %s are not built yet, want %s", later, want)
	}
	named := func(page, text, schema string) {
		for _, key := range keys(t, schema) {
			if !strings.Contains(text, "`"+key+"`") && !strings.Contains(text, "`"+key+": ") {
				t.Errorf("%s does not name the key %s of %s", page, key, schema)
			}
		}
	}
	named("the README", text, "front")
	blocks := blocksPage(t)
	var like []string // a block that takes another one's keys says so
	for _, kind := range procedure.Built {
		has("block", "[`"+kind+"`](procedures/README.md#"+kind+")")
		if link := "[" + kind + "](#" + kind + ")"; !strings.Contains(blocks[""], link) {
			t.Errorf("the head of procedures/README.md lacks the link %s", link)
		}
		section := blocks[kind]
		for _, other := range regexp.MustCompile(`keys are those of a \[(\w+)\]`).FindAllStringSubmatch(section, -1) {
			like = append(like, other[1])
			section += blocks[other[1]]
		}
		named("procedures/README.md", section+"`only`", "block-"+kind)
	}
	if len(like) == 0 {
		t.Error("no block takes another's keys")
	}
}

// blocksPage returns what procedures/README.md says of each block, by its type,
// and its head by "".
func blocksPage(t testing.TB) map[string]string {
	t.Helper()
	text, err := os.ReadFile("../../procedures/README.md")
	if err != nil {
		t.Fatal(err)
	}
	sections := strings.Split(string(text), "\n## ")
	out := map[string]string{"": sections[0]}
	for _, section := range sections[1:] {
		kind, rest, _ := strings.Cut(section, "\n")
		out[kind] = rest
	}
	return out
}

// Every block has its section and no other thing has, and each example builds
// without a word.
func TestBlockExamples(t *testing.T) {
	sections := blocksPage(t)
	for kind := range sections {
		if kind != "" && !slices.Contains(procedure.Built, kind) {
			t.Errorf("procedures/README.md speaks of a block %s", kind)
		}
	}
	for _, kind := range procedure.Built {
		t.Run(kind, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			writeExample(t, dir, kind, sections[kind])
			if code, _, msgs := run(dir, "build", ".", "-o", "cards"); code != 0 || msgs != "" {
				t.Errorf("exit %d\n%s", code, msgs)
			}
		})
	}
}

// writeExample writes the workspace of a block's example into a folder: what its
// section says and the least that must stand around it.
func writeExample(t testing.TB, dir, kind, section string) {
	t.Helper()
	files := map[string]string{
		"shop.yaml": "benchwright: 1\nshop: Fallow Lane Drive Works\n",
		"unit.yaml": "unit: winch\ntitle: Winch head\n",
		"card.md":   "---\ncard: W-10\ntitle: Set the winch up\nunit: winch\nrevision: A\ndate: 2026-02-03\n---\n\n## Stage\n\n",
	}
	for _, b := range fences(section, "yaml") {
		name, facts, _ := strings.Cut(strings.TrimPrefix(b, "# "), "\n")
		if files[name] == "" {
			t.Fatalf("no file %s", name)
		}
		files[name] += facts
	}
	steps := fences(section, "markdown")
	if len(steps) != 1 || !strings.Contains(steps[0], "```"+kind+"\n") {
		t.Fatalf("the section of %s has no example of it", kind)
	}
	files["card.md"] += steps[0]
	if err := os.Mkdir(filepath.Join(dir, "figures"), 0o777); err != nil {
		t.Fatal(err)
	}
	var picture bytes.Buffer
	if err := png.Encode(&picture, image.NewGray(image.Rect(0, 0, 800, 600))); err != nil {
		t.Fatal(err)
	}
	files["figures/oil-hole.png"] = picture.String()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

// DEVELOPERS.md lists the rooms in the order of the house, and every file and
// test that it names is there.
func TestDevelopers(t *testing.T) {
	page, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	text := string(page)
	rest := text
	for _, h := range house {
		_, after, found := strings.Cut(rest, "\n| `"+h.room+"` |")
		if !found {
			t.Errorf("room %s is not in its place", h.room)
			continue
		}
		rest = after
	}
	for _, m := range regexp.MustCompile("`([a-z_./-]+\\.(?:go|json|md|txtar|sums))`").FindAllStringSubmatch(text, -1) {
		name := m[1]
		if _, err := os.Stat(filepath.Join("internal", name)); err == nil {
			continue
		}
		if _, err := os.Stat(filepath.Join("../..", name)); err == nil || !strings.Contains(name, "/") {
			continue
		}
		t.Errorf("there is no file %s", name)
	}
	tests, err := testNames()
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range regexp.MustCompile("`(Test[A-Za-z]+)`").FindAllStringSubmatch(text, -1) {
		if !tests[m[1]] {
			t.Errorf("there is no test %s", m[1])
		}
	}
}

// testNames returns the names of all tests of the module.
func testNames() (map[string]bool, error) {
	names := map[string]bool{}
	form := regexp.MustCompile(`(?m)^func (Test\w+)\(`)
	err := filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		for _, m := range form.FindAllStringSubmatch(string(text), -1) {
			names[m[1]] = true
		}
		return err
	})
	return names, err
}

// keys returns the keys that a schema knows at its top.
func keys(t *testing.T, schema string) []string {
	t.Helper()
	code, text, _ := run(".", "schema", schema)
	if code != 0 {
		t.Errorf("no schema for the %s", strings.Replace(schema, "block-", "block ", 1))
		return nil
	}
	var s struct {
		Properties map[string]any `json:"properties"`
	}
	if err := json.Unmarshal([]byte(text), &s); err != nil {
		t.Fatal(err)
	}
	var out []string
	for k := range s.Properties {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

// The picture is drawn from the face as it is laid out now: end-nut.sum is the
// hash of that face's display list. When the face has changed, UPDATE=1 draws
// the picture again, for which it needs pdftoppm of poppler-utils.
func TestReadmePicture(t *testing.T) {
	msgs := &diag.List{}
	spaces, err := workspace.Load(".", []string{readmeFolder}, nil, msgs)
	if err != nil {
		t.Fatal(err)
	}
	// A deck holds its sheets only while it is emitted.
	var face string
	var pdf []byte
	page := 0
	emit := func(m *compile.Made) error {
		for i, sheet := range m.Sheets {
			if strings.HasPrefix(sheet.Name, "Step") {
				page, face = i+1, fmt.Sprintf("%+v", sheet)
				pdf, err = m.PDF()
			}
		}
		return err
	}
	compile.Run(context.Background(), spaces[0], compile.Options{Workers: 1, Emit: emit}, msgs)
	if page == 0 || err != nil {
		t.Fatalf("the README's procedure makes no step face: %v", err)
	}
	if text := readme(t); !strings.Contains(text, "44 ft-lb") || !strings.Contains(face, "Text:44}") {
		t.Error("the setting on the face is not the one that the README speaks of")
	}
	hasPicture(t, "end-nut", face, pdf, page, 100)
}

// The README shows the lead the change card of the change that it speaks of.
func TestReadmeChangeCard(t *testing.T) {
	dir := t.TempDir()
	for _, side := range []string{"old", "new"} {
		if code, _, msgs := run(dir, "new", side); code != 0 {
			t.Fatal(msgs)
		}
	}
	change(t, filepath.Join(dir, "new/feed-roller/unit.yaml"), "60 ±5 N·m", "70 ±5 N·m")
	if code, _, msgs := run(dir, "compare", "old", "new", "--format", "pdf", "-o", "changes.pdf"); code != 1 || msgs != "" {
		t.Fatalf("exit %d: %s", code, msgs)
	}
	pdf, err := os.ReadFile(filepath.Join(dir, "changes.pdf"))
	if err != nil {
		t.Fatal(err)
	}
	hasPicture(t, "change-card", string(pdf), pdf, 1, 70)
}

// hasPicture holds a picture of the README to the page of a PDF that it shows the upper
// part of, in percent. Where what it is known by has changed, UPDATE=1 draws it again.
func hasPicture(t *testing.T, name, known string, pdf []byte, page, part int) {
	t.Helper()
	sum := fmt.Sprintf("%x\n", sha256.Sum256([]byte(known)))
	sumFile, picture := filepath.Join(readmeFolder, name+".sum"), filepath.Join(readmeFolder, name+".png")
	if !strings.Contains(readme(t), `src="`+strings.TrimPrefix(picture, "../../")+`"`) {
		t.Errorf("the README does not show %s", picture)
	}
	if old, err := os.ReadFile(sumFile); err != nil || string(old) != sum {
		if os.Getenv("UPDATE") == "" {
			t.Fatalf("the page in %s has changed: UPDATE=1 draws its picture again", picture)
		}
		if err := draw(pdf, page, part, picture); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(sumFile, []byte(sum), 0o666); err != nil {
			t.Fatal(err)
		}
		t.Logf("rewrote %s and %s", picture, sumFile)
	}
	info, err := os.Stat(picture)
	if err != nil {
		t.Fatal(err)
	}
	if info.Size() > pictureLimit {
		t.Errorf("%s has %d bytes, more than %d", picture, info.Size(), pictureLimit)
	}
}

// draw writes the upper part of a page of a PDF, in percent, as a picture of few colors.
func draw(pdf []byte, page, part int, name string) error {
	n := fmt.Sprint(page)
	c := exec.Command("pdftoppm", "-r", "110", "-f", n, "-l", n, "-singlefile", "-png", "-")
	c.Stdin = bytes.NewReader(pdf)
	drawn, err := c.Output()
	if err != nil {
		return fmt.Errorf("pdftoppm of poppler-utils draws the picture: %w", err)
	}
	full, err := png.Decode(bytes.NewReader(drawn))
	if err != nil {
		return err
	}
	// The commonest colors stay as they are; the others go to the nearest.
	b := full.Bounds()
	b.Max.Y = b.Min.Y + b.Dy()*part/100
	count := map[color.RGBA]int{}
	at := func(x, y int) color.RGBA { return color.RGBAModel.Convert(full.At(x, y)).(color.RGBA) }
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			count[at(x, y)]++
		}
	}
	colors := slices.SortedFunc(maps.Keys(count), func(a, b color.RGBA) int {
		return cmp.Or(cmp.Compare(count[b], count[a]), cmp.Compare(a.R, b.R), cmp.Compare(a.G, b.G), cmp.Compare(a.B, b.B))
	})
	few := image.NewPaletted(b, nil)
	for _, c := range colors[:min(len(colors), 96)] {
		few.Palette = append(few.Palette, c)
	}
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			few.Set(x, y, at(x, y))
		}
	}
	var out bytes.Buffer
	e := png.Encoder{CompressionLevel: png.BestCompression}
	if err := e.Encode(&out, few); err != nil {
		return err
	}
	return os.WriteFile(name, out.Bytes(), 0o666)
}

// change replaces a text that stands in a file exactly once.
func change(t *testing.T, name, before, after string) {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if n := bytes.Count(text, []byte(before)); n != 1 {
		t.Fatalf("%q stands %d times in %s", before, n, name)
	}
	if err := os.WriteFile(name, bytes.Replace(text, []byte(before), []byte(after), 1), 0o666); err != nil {
		t.Fatal(err)
	}
}
