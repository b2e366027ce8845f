package diag

import (
	"bytes"
	"testing"

	"benchwright/cmd/benchwright/internal/source"
)

// Every field of the document is always there.
func TestJSON(t *testing.T) {
	place := at("md-48/strip.md", "a\nat 20 °C: «b» <c>\n")
	messages := []Diagnostic{
		{Slug: "limit-unknown", At: place, Message: "no limit is called `b` & <c>", Label: "here", Fix: "write `d`",
			Related: []Related{{At: at("u.yaml", "«x»"), Message: "declared here"}}, Edit: &Edit{At: place, Text: "d"}},
		{Slug: "why-missing", At: source.Place{}, Message: "m"},
	}
	var b bytes.Buffer
	if err := WriteJSON(&b, messages); err != nil {
		t.Fatal(err)
	}
	const want = `{
  "format": "benchwright-messages/1",
  "messages": [
    {
      "name": "limit-unknown",
      "severity": "error",
      "file": "md-48/strip.md",
      "start": {
        "offset": 13,
        "line": 2,
        "column": 11
      },
      "end": {
        "offset": 14,
        "line": 2,
        "column": 12
      },
      "message": "no limit is called ` + "`b`" + ` & <c>",
      "label": "here",
      "related": [
        {
          "file": "u.yaml",
          "start": {
            "offset": 0,
            "line": 1,
            "column": 1
          },
          "end": {
            "offset": 1,
            "line": 1,
            "column": 2
          },
          "message": "declared here"
        }
      ],
      "fix": "write ` + "`d`" + `",
      "edit": {
        "file": "md-48/strip.md",
        "start": {
          "offset": 13,
          "line": 2,
          "column": 11
        },
        "end": {
          "offset": 14,
          "line": 2,
          "column": 12
        },
        "text": "d"
      }
    },
    {
      "name": "why-missing",
      "severity": "warning",
      "file": "",
      "start": {
        "offset": 0,
        "line": 0,
        "column": 0
      },
      "end": {
        "offset": 0,
        "line": 0,
        "column": 0
      },
      "message": "m",
      "label": "",
      "related": [],
      "fix": "",
      "edit": null
    }
  ]
}
`
	if got := b.String(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	b.Reset()
	if err := WriteJSON(&b, nil); err != nil {
		t.Fatal(err)
	}
	if got, want := b.String(), "{\n  \"format\": \"benchwright-messages/1\",\n  \"messages\": []\n}\n"; got != want {
		t.Errorf("no messages give\n%s\nwant\n%s", got, want)
	}
}
