package syntax

import (
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

// A mend that is followed to the letter must read. The texts stand where those
// of TestMarkdownSlips do.
func TestMends(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"###Check the belt\n", "write a blank after `###`"},
		{"##Strip\n", "write a blank after `##`"},
		{"####Check the belt\n", "write `###` and a blank for a step, or a paragraph"},
		{"``witness\nwho: x\n```\n", "write ```witness, and three below the block"},
		{"  ```tool\n  use: y\n  ```\n", "begin it in column 1, each of its lines as far to the left"},
		{"text\n    ```tool\n    use: y\n    ```\n", "begin it in column 1, each of its lines as far to the left"},
		{"- a\n\n  ```tool\n  use: y\n  ```\n", "put it behind the list or the quote, its fences at column 1"},
		{"> ```tool\n> use: y\n> ```\n", "put it behind the list or the quote, its fences at column 1"},
	} {
		var msgs diag.List
		ReadDoc(source.NewFile("f.md", []byte(front+"## S\n### T\n"+c.text)), &msgs)
		if got := msgs.Sorted(); len(got) != 1 || got[0].Help != c.want {
			t.Errorf("%q\ngot  %v\nwant %s", c.text, got, c.want)
		}
	}
}
