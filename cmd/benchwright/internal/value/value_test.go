package value

import (
	"fmt"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

// node returns the value of the key x of a YAML document.
func node(t *testing.T, yaml string) *syntax.Node {
	t.Helper()
	var msgs diag.List
	tree := syntax.ReadTree(source.NewFile("a.yaml", []byte("x: "+yaml+"\n")), &msgs)
	if tree == nil || msgs.Len() > 0 {
		t.Fatalf("%s: %v", yaml, msgs.Sorted())
	}
	return tree.Root.Get("x")
}

// readings are all ways to read a value.
var readings = map[string]func(*Reader, *syntax.Node) any{
	"text":   func(r *Reader, n *syntax.Node) any { return r.Text(n) },
	"says":   func(r *Reader, n *syntax.Node) any { return r.Wording(n, "") },
	"word":   func(r *Reader, n *syntax.Node) any { return OneOf(r, n, "in", "out") },
	"yes":    func(r *Reader, n *syntax.Node) any { return r.Switch(n) },
	"count":  func(r *Reader, n *syntax.Node) any { return r.Count(n, 7) },
	"fields": func(r *Reader, n *syntax.Node) any { return len(r.Fields(n)) },
	"row":    func(r *Reader, n *syntax.Node) any { return len(r.Sequence(n)) },
	"pair":   func(r *Reader, n *syntax.Node) any { return len(r.Pair(n, "")) },
	"list":   func(r *Reader, n *syntax.Node) any { return r.Texts(n) },
	"known": func(r *Reader, n *syntax.Node) any {
		return r.KnownName("part-unknown", "part", n, []string{"in"}, "parts")
	},
	"marks":  func(r *Reader, n *syntax.Node) any { a, b := r.Marks(n); return []int{a, b} },
	"band":   func(r *Reader, n *syntax.Node) any { return r.Band(n, quantity.Length) != nil },
	"like":   func(r *Reader, n *syntax.Node) any { return r.BandLike(n, quantity.None, quantity.Torque) != nil },
	"value":  func(r *Reader, n *syntax.Node) any { return r.Value(n, quantity.Length) != nil },
	"either": func(r *Reader, n *syntax.Node) any { return r.Deviation(n, quantity.Length) != nil },
	"above":  func(r *Reader, n *syntax.Node) any { return r.Positive(n, quantity.Length, "it is", "") != nil },
	"share":  func(r *Reader, n *syntax.Node) any { return r.Percentage(n) != nil },
	"number": func(r *Reader, n *syntax.Node) any { return r.Number(n) != nil },
}

// Whatever stands in a value's place, a reader returns what it found there, or
// says in one message why not and marks its thing. Where the schema has spoken,
// what it forbids is not said again.
func TestNothingIsLostInSilence(t *testing.T) {
	refused := (&diag.List{}).Report("value-kind", source.Place{}, "", "by the schema").Proof()
	nothing := map[string]string{"text": "", "says": "", "word": "", "yes": "false", "count": "7", "fields": "0", "list": "[]", "row": "0", "pair": "0", "marks": "[0 0]"}
	for name, read := range readings {
		want, ok := nothing[name]
		if !ok {
			want = "false"
		}
		r := &Reader{Mark: quantity.Point, Msgs: &diag.List{}}
		if got := fmt.Sprint(read(r, nil)); got != want || r.Bad().IsSet() || r.Msgs.Len() > 0 {
			t.Errorf("%s of nothing is %s, %v", name, got, r.Msgs.Sorted())
		}
		for _, yaml := range []string{`""`, "~", "null", "'  '", "[1, b]", "[]", "{a: 1}", "[[a]]", "0", "-7", "0xA", "1e1", "5.0", "+5", "1000000", "maybe", "a, b", "about 1 mm", "0 mm", "5 to -5", "about"} {
			n := node(t, yaml)
			r := &Reader{Mark: quantity.Point, Msgs: &diag.List{}}
			got := fmt.Sprint(read(r, n))
			if r.Bad().IsSet() != (r.Msgs.Errors() == 1) || r.Msgs.Len() > 1 {
				t.Errorf("%s of %s: bad %v, %v", name, yaml, r.Bad().IsSet(), r.Msgs.Sorted())
			}
			if got == want && !r.Bad().IsSet() && !((name == "list" || name == "row") && yaml == "[]") && !(name == "fields" && n.Kind == syntax.Mapping) {
				t.Errorf("%s of %s is %s, and nothing is said", name, yaml, got)
			}
			told := &Reader{Mark: quantity.Point, Msgs: &diag.List{}, SchemaRefused: refused}
			if again := fmt.Sprint(read(told, n)); again != got || told.Bad().IsSet() != r.Bad().IsSet() || told.Msgs.Len() > r.Msgs.Len() {
				t.Errorf("%s of %s after the schema: %s, %s before; %v", name, yaml, again, got, told.Msgs.Sorted())
			}
		}
	}
}

func TestReadings(t *testing.T) {
	for _, c := range []struct{ reading, yaml, want string }{
		{"text", "a  b\n  c", "a b c"},
		{"word", "out", "out"},
		{"yes", "yes", "true"}, {"yes", "True", "true"}, {"yes", "no", "false"},
		{"count", "12", "12"},
		{"list", "[a, b]", "[a b]"}, {"list", "a", "[a]"},
		{"marks", "-5 to 5", "[-5 5]"}, {"marks", "0..12", "[0 12]"},
		{"known", "in", "true"},
	} {
		r := &Reader{Mark: quantity.Point, Msgs: &diag.List{}}
		if got := fmt.Sprint(readings[c.reading](r, node(t, c.yaml))); got != c.want || r.Bad().IsSet() {
			t.Errorf("%s of %s is %s, %v", c.reading, c.yaml, got, r.Msgs.Sorted())
		}
	}
}

// A thing that is bad leaves others sound.
func TestThing(t *testing.T) {
	r := &Reader{Mark: quantity.Point, Msgs: &diag.List{}}
	in := r.ForPart()
	in.Count(node(t, "many"), 1)
	if r.Bad().IsSet() || !in.Bad().IsSet() || r.Msgs.Len() != 1 {
		t.Errorf("%v %v %v", r.Bad(), in.Bad(), r.Msgs.Sorted())
	}
}
