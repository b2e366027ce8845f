package compare

import (
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// Every field of every content of a deck is compared, or passed over for a
// reason; a content that is forgotten would let a change slip through.
func TestEveryFieldIsCompared(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "../../../../render/model.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	structs, contents := map[string]*ast.StructType{}, map[string]bool{}
	for _, d := range file.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			if d.Name.Name == "content" {
				contents[d.Recv.List[0].Type.(*ast.Ident).Name] = true
			}
		case *ast.GenDecl:
			for _, s := range d.Specs {
				if s, ok := s.(*ast.TypeSpec); ok {
					if fields, ok := s.Type.(*ast.StructType); ok {
						structs[s.Name.Name] = fields
					}
				}
			}
		}
	}
	seen := 0
	for name := range contents {
		if names[name] == "" {
			t.Errorf("a %s has no name in a report", name)
		}
		for _, list := range structs[name].Fields.List {
			for _, f := range list.Names {
				at := name + "." + f.Name
				if seen++; fields[at] == (field{}) {
					t.Errorf("%s is neither compared nor passed over for a reason", at)
				}
			}
		}
	}
	if seen == 0 || seen != len(fields) {
		t.Errorf("%d fields of contents, %d in the table", seen, len(fields))
	}
}

// One quantity has one key, however it is written.
func TestKeyed(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"100 ±5 N·m", "95 to 105 N·m", true},
		{"max 0.05 mm", "max 50 µm", true},
		{"manual: 100 ±5 N·m (table 4)", "manual: 95 to 105 N·m (table 4)", true},
		{"manual: 100 ±5 N·m (table 4)", "manual: 95 to 105 N·m (table 5)", false},
		{"max 0.05 mm", "at least 0.05 mm", false},
		{"95 to 105 N·m", "95 to 106 N·m", false},
		{"Wait 10 min.", "Wait 600 s.", true},
		{"Wait 10 min.", "Wait 10 s.", false},
		{"turn  it\u00a0round", "turn it round", true},
	} {
		if got := keyed(c.a, quantity.Point) == keyed(c.b, quantity.Point); got != c.same {
			t.Errorf("%q and %q: same %v, want %v", c.a, c.b, got, c.same)
		}
	}
}

func TestHow(t *testing.T) {
	for _, c := range []struct{ before, after, want string }{
		{"150 N·m", "105 N·m", "30 % less"},
		{"95 to 105 N·m", "100 to 110 N·m", "5 % more"},
		{"95 to 105 N·m", "90 to 110 N·m", "wider"},
		{"95 to 105 N·m", "95 to 126 N·m", "upper limit 20 % more, wider"},
		{"95 to 105 N·m", "100 to 105 N·m", "lower limit 5 % more, narrower"},
		{"max 0.05 mm", "max 0.10 mm", "100 % more"},
		{"max 0.05 mm", "at least 0.05 mm", "other side open"},
		{"72 to 130 °C", "72 to 150 °C", "upper limit 20 °C more, wider"},
		{"90 °C", "194 °F", ""},
		{"Wipe it", "Wipe it dry", ""},
	} {
		if got := how(c.before, c.after, quantity.Point, quantity.Point); got != c.want {
			t.Errorf("%s to %s: %q, want %q", c.before, c.after, got, c.want)
		}
	}
}

func TestMoved(t *testing.T) {
	for _, c := range []struct {
		places []int
		want   []bool
	}{
		{[]int{0, 1, 2}, []bool{false, false, false}},
		{[]int{2, 0, 1}, []bool{true, false, false}},
		{[]int{0, -1, 1}, []bool{false, false, false}},
		{[]int{3, 0, 1, 2}, []bool{true, false, false, false}},
	} {
		if got := moved(c.places); !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, want %v", c.places, got, c.want)
		}
	}
}

func TestRaised(t *testing.T) {
	for _, c := range []struct {
		old, new string
		want     bool
	}{
		{"A", "B", true}, {"B", "A", false}, {"A", "A", false}, {"Z", "AA", true}, {"AA", "Z", false},
		{"9", "10", true}, {"10", "9", false}, {"1.9", "1.10", true}, {"a", "B", true},
	} {
		if got := raised(c.old, c.new); got != c.want {
			t.Errorf("%s to %s: %v, want %v", c.old, c.new, got, c.want)
		}
	}
}

func TestTurned(t *testing.T) {
	for _, c := range []struct {
		before, after string
		want          bool
	}{
		{"Turn it clockwise.", "Turn it counterclockwise.", true},
		{"Slide the holder on.", "Slide the holder off.", true},
		{"Do not use a hammer.", "Use a hammer.", true},
		{"Do not use a hammer.", "Never use a hammer.", false},
		{"Don't use a hammer.", "Do not use a hammer.", false},
		{"Wipe it.", "Wipe it on the bench.", false},
		{"Lift the cover out.", "Lift the cover up and out.", false},
	} {
		if got := turned(c.before, c.after); got != c.want {
			t.Errorf("%q to %q: %v, want %v", c.before, c.after, got, c.want)
		}
	}
}

func TestNumbers(t *testing.T) {
	for text, want := range map[string]string{
		"Turn it ten times. Paint mark 1.": "ten 1", "Wait 10 min, then 2.5 h.": "10 2.5", "Do step 12 again (X-20).": "", "Wipe it.": "",
	} {
		if got := strings.Join(numbers(text), " "); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
