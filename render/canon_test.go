package render

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// contents is one value of each type of content; TestCanonKnowsEveryContent
// holds it against the source.
var contents = []Content{
	Stage{}, Step{}, Text{}, List{}, Table{}, Listing{}, Facts{}, Callout{}, Hazards{}, Tools{},
	Setting{}, Reading{}, Cord{}, Pack{}, Order{}, Indicator{}, Hold{}, Picture{}, Contact{}, Records{}, Ticks{}, End{},
}

// canonical is the line of one content.
func canonical(c Content) string {
	text := Canonical(Deck{Sections: []Section{{Groups: []Group{{Elements: []Element{{Content: c}}}}}}})
	lines := strings.Split(text, "\n")
	return lines[len(lines)-2]
}

// Every type that has the method of Content, in whatever file of the package,
// stands in the list.
func TestCanonKnowsEveryContent(t *testing.T) {
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var method string
	methods := map[string][]string{} // by name, the types that have it
	for _, name := range names {
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.TypeSpec:
				if face, ok := n.Type.(*ast.InterfaceType); ok && n.Name.Name == "Content" {
					method = face.Methods.List[0].Names[0].Name
				}
			case *ast.FuncDecl:
				if n.Recv != nil && n.Type.Params.NumFields() == 0 && n.Type.Results == nil {
					if typ, ok := n.Recv.List[0].Type.(*ast.Ident); ok {
						methods[n.Name.Name] = append(methods[n.Name.Name], typ.Name)
					}
				}
			}
			return true
		})
	}
	want := methods[method]
	var have []string
	for _, c := range contents {
		have = append(have, reflect.TypeOf(c).Name())
		if got, want := canonical(c), "T "+strings.ToLower(reflect.TypeOf(c).Name()); got != want {
			t.Errorf("an empty %T is %q, want %q", c, got, want)
		}
	}
	slices.Sort(want)
	slices.Sort(have)
	if len(want) == 0 || !slices.Equal(want, have) {
		t.Errorf("contents in the source %q\nin the test %q", want, have)
	}
}

// Every field of every content shows: another value gives another text. Only
// references do not.
func TestCanonShowsEveryField(t *testing.T) {
	for _, c := range contents {
		v := reflect.New(reflect.TypeOf(c)).Elem()
		fill(v, 3)
		text := func() string { return canonical(v.Interface().(Content)) }
		before := text()
		eachLeaf(v, reflect.TypeOf(c).Name(), func(path string, leaf reflect.Value) {
			old := reflect.New(leaf.Type()).Elem()
			old.Set(leaf)
			change(leaf)
			if same := text() == before; same != (leaf.Type() == reflect.TypeFor[Ref]()) {
				t.Errorf("a change of %s shows: %v", path, !same)
			}
			leaf.Set(old)
		})
		if text() != before {
			t.Fatalf("%T was not put back", c)
		}
	}
}

// The same for what stands around the elements; Variant and references do not
// show.
func TestCanonShowsTheDeck(t *testing.T) {
	d := Deck{Sections: []Section{{Groups: []Group{{Elements: []Element{{Content: End{"x"}}}}}}}}
	v := reflect.ValueOf(&d).Elem()
	n := 0
	fillEmpty := func(path string, leaf reflect.Value) {
		if leaf.Kind() == reflect.String && leaf.String() == "" {
			leaf.SetString(path)
		}
	}
	eachLeaf(v, "Deck", fillEmpty)
	before := Canonical(d)
	eachLeaf(v, "Deck", func(path string, leaf reflect.Value) {
		old := reflect.New(leaf.Type()).Elem()
		old.Set(leaf)
		change(leaf)
		hidden := path == "Deck.Running.Variant" || leaf.Type() == reflect.TypeFor[Ref]()
		if same := Canonical(d) == before; same != hidden {
			t.Errorf("a change of %s shows: %v", path, !same)
		}
		leaf.Set(old)
		n++
	})
	if n < 15 {
		t.Errorf("only %d fields were tried", n)
	}
}

// fill gives every field of v a value that is not its zero.
func fill(v reflect.Value, depth int) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i), depth)
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		for i := range 2 {
			fill(v.Index(i), depth)
		}
	case reflect.Pointer:
		if depth > 0 {
			v.Set(reflect.New(v.Type().Elem()))
			fill(v.Elem(), depth-1)
		}
	case reflect.String:
		v.SetString("text")
	case reflect.Bool:
		v.SetBool(true)
	default:
		change(v)
	}
}

func change(v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		v.SetString(v.String() + "'")
	case reflect.Bool:
		v.SetBool(!v.Bool())
	case reflect.Int:
		v.SetInt(v.Int() + 1)
	case reflect.Uint8:
		v.SetUint((v.Uint() + 1) % 2)
	default:
		panic(fmt.Sprint("what is a ", v.Type()))
	}
}

func eachLeaf(v reflect.Value, path string, do func(string, reflect.Value)) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			eachLeaf(v.Field(i), path+"."+v.Type().Field(i).Name, do)
		}
	case reflect.Slice:
		for i := range v.Len() {
			eachLeaf(v.Index(i), fmt.Sprintf("%s[%d]", path, i), do)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			eachLeaf(v.Elem(), path, do)
		}
	case reflect.Interface: // an element's content has its own test
	default:
		do(path, v)
	}
}

func TestCanonical(t *testing.T) {
	d := Deck{
		Language: "en",
		Running:  Running{Number: "MD48-20", Title: "Strip", Variant: "early", Revision: "C"},
		Sections: []Section{{Name: "Steps", Groups: []Group{{
			Ref: 4, Bookmark: "Loosen", Anchor: "loosen", Elements: []Element{
				{Class: Technical, Ref: 9, Content: Step{Number: 3, Title: []Run{{Text: "Loosen "}, {Text: "the nut"}}}},
				{Class: Wording, Content: Text{Role: Why, Runs: []Run{{Text: "It is \"tight\"", Weight: Bold}, {Text: "", Code: true}, {Text: "x", Link: "a"}}}},
				{Class: Technical, Content: Tools{Rows: []ToolRow{{Verb: "Take", Name: "Bar"}}}},
			}}}}},
	}
	const want = `T card number="MD48-20" revision="C"
W card title="Strip" language="en"
W words
T section name="Steps"
T group anchor="loosen"
W bookmark text="Loosen"
T step number=3 title=["Loosen the nut"]
W text role=2 runs=[*"It is \"tight\"" "x"@"a"]
T tools rows=[(verb="Take" name="Bar")]
`
	if got := Canonical(d); got != want {
		t.Errorf("canonical text\n%s\nwant\n%s", got, want)
	}
	// A change of wording leaves the technical lines as they were.
	before := Canonical(d)
	d.Sections[0].Groups[0].Elements[1].Content = Text{Role: Why, Runs: []Run{{Text: "It is tight."}}}
	if after := Canonical(d); ofClass(after, "T ") != ofClass(before, "T ") || ofClass(after, "W ") == ofClass(before, "W ") {
		t.Error("a change of wording is not one of wording alone")
	}
}

func ofClass(text, mark string) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, mark) {
			b.WriteString(line)
		}
	}
	return b.String()
}

// What says something else has another text, however it is cut or quoted; what
// says the same has the same.
func TestCanonTellsApart(t *testing.T) {
	a, b := []Run{{Text: "a"}}, []Run{{Text: "b"}}
	seen := map[string]Content{}
	for _, c := range []Content{
		Table{}, Table{Head: [][]Run{nil}}, Table{Head: [][]Run{nil, nil}}, Table{Head: [][]Run{a, nil}}, Table{Head: [][]Run{nil, a}}, Table{Head: [][]Run{a, b}},
		Table{Head: [][]Run{{{Text: "ab"}}}}, Table{Head: [][]Run{{{Text: `a" "b`}}}}, Table{Head: [][]Run{{{Text: "a b"}}}}, Table{Head: [][]Run{{{Text: `a"] rows=["b`}}}},
		Table{Rows: [][][]Run{{a}, {b}}}, Table{Rows: [][][]Run{{a, b}}}, Table{Marked: []bool{false}}, Table{Marked: []bool{true}}, Table{Fine: []bool{true}}, Table{Align: []Align{Left}},
		Text{Runs: a}, Text{Runs: []Run{{Text: "a", Weight: Bold}}}, Text{Runs: []Run{{Text: "a", Code: true}}}, Text{Runs: []Run{{Text: "a", Link: "b"}}}, Text{Runs: []Run{{Text: `a"@"b`}}},
		Text{Runs: []Run{{Text: "a", Code: true}, {Text: "b"}}}, Text{Runs: []Run{{Text: "a"}, {Text: "b", Code: true}}}, Text{Runs: []Run{{Text: "ab"}}}, Text{Role: Tip, Runs: a},
		List{Items: []Item{{Runs: a, Sub: &List{Items: []Item{{Runs: b}}}}}}, List{Items: []Item{{Runs: a}, {Runs: b}}}, List{Items: []Item{{Runs: a, Sub: &List{Ordered: true, Items: []Item{{Runs: b}}}}}},
		Picture{Data: []byte("1")}, Picture{Data: []byte("2")}, Picture{Name: "1"}, Step{Number: 1}, Step{Number: 11}, Hold{Boxes: []string{"", ""}}, Hold{Boxes: []string{""}},
	} {
		if was := seen[canonical(c)]; was != nil {
			t.Errorf("%+v and %+v are both %s", was, c, canonical(c))
		}
		seen[canonical(c)] = c
	}
	for _, same := range [][2]Content{
		{Text{Runs: []Run{{Text: "a"}, {Text: "b"}}}, Text{Runs: []Run{{Text: "ab"}}}},
		{Text{Runs: []Run{{Text: "a"}, {Code: true}, {Text: "b"}}}, Text{Runs: []Run{{Text: "ab"}}}},
		{Text{Runs: []Run{{Weight: Bold}, {Text: "a"}}}, Text{Runs: a}},
		{Text{Runs: []Run{{}}}, Text{}},
	} {
		if x, y := canonical(same[0]), canonical(same[1]); x != y {
			t.Errorf("%s is not %s", x, y)
		}
	}
}
