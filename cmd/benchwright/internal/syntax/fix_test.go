package syntax

import (
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// A fix that is followed to the letter must read. The texts stand where those
// of TestMarkdownSlips do.
func TestFixes(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"###Check the belt\n", "write a space after `###`"},
		{"##Strip\n", "write a space after `##`"},
		{"####Check the belt\n", "write `###` and a space for a step, or a paragraph"},
		{"``hold-point\nwho: x\n```\n", "write ```hold-point, and three below the block"},
		{"  ```tool\n  use: y\n  ```\n", "begin it in column 1, each of its lines as far to the left"},
		{"text\n    ```tool\n    use: y\n    ```\n", "begin it in column 1, each of its lines as far to the left"},
		{"- a\n\n  ```tool\n  use: y\n  ```\n", "put it behind the list or the quote, its fences at column 1"},
		{"> ```tool\n> use: y\n> ```\n", "put it behind the list or the quote, its fences at column 1"},
	} {
		var msgs diag.List
		ReadDoc(source.NewFile("f.md", []byte(front+"## S\n### T\n"+c.text)), &msgs)
		if got := msgs.Sorted(); len(got) != 1 || got[0].Fix != c.want {
			t.Errorf("%q\ngot  %v\nwant %s", c.text, got, c.want)
		}
	}
}

// The fix of a YAML slip leads to YAML that reads, whatever the shop's mark.
func TestYAMLFixes(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"fastener: x\n\tthread: oiled\n", "delete it"},
		{"\tfastener: x\n", "delete it"},
		{"fastener: x\n  \tthread: oiled\n", "delete it and the spaces before it"},
		{"use:\n  - a\n\twith: b\n", "delete it"},
		{"use:\n\t- a\n", "indent with spaces, two for each level"},
		{"limits:\n\tband: 1\n", "indent with spaces, two for each level"},
		{"a:\n  b: 1\n\tc: 2\n", "indent with spaces, two for each level"},
		{"hazard: The\n\tcan jump.\n", "indent with spaces, two for each level"},

		{"conditions:\n  - Drum out\n - Drum stands\n", "begin it in column 3"},
		{"level: x\n hazard: y\n", "begin it in column 1"},
		{"a:\n  b: 1\n c: 2\n", "begin it in column 1 or 3"},
		{"use:\n  - a\n b: 2\n", "begin it in column 1"},
		{"use:\n  - a\n    with: b\n", "begin it in column 1"},
		{"a:\n  - b: 1\n    c: 2\n   d: 3\n", "begin it in column 1 or 5"},
		{"a:\n- b\n c: 1\n", "begin it in column 1"},
		{"a:\n  b: 1\n - c\n", "write its key on the line before the list"},

		{"lash: {band: 0,10 to 0,30 mm}\n", "put quotes around it, or write the number with a point: `0.10 to 0.30 mm`"},
		{"shims: [0,10 mm, 0.20 mm]\n", "put quotes around it, or write the number with a point: `0.10 mm`"},
		{"tw: {range: 1,500 N·m}\n", "put quotes around it"},
	} {
		var msgs diag.List
		ReadTree(source.NewFile("f.yaml", []byte(c.text)), &msgs)
		if got := msgs.Sorted(); len(got) != 1 || got[0].Fix != c.want {
			t.Errorf("%q\ngot  %v\nwant %s", c.text, got, c.want)
		}
	}
}
