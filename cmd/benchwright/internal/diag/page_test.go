package diag

import "testing"

func TestParsePage(t *testing.T) {
	p, err := parsePage("a-b", "# a-b\n\nwarning: a few words\n\nText.\n")
	if err != nil || p.Severity != Warning || p.Summary != "a few words" || p.Slug != "a-b" {
		t.Errorf("got %+v, %v", p, err)
	}
	for what, text := range map[string]string{
		"another slug":       "# a-c\n\nerror: x\n\nText.\n",
		"no blank line":      "# a-b\nerror: x\n\nText.\n",
		"no severity":        "# a-b\n\nx\n\nText.\n",
		"an unknown one":     "# a-b\n\nnote: x\n\nText.\n",
		"nothing behind it":  "# a-b\n\nerror: x",
		"nothing whatsoever": "",
	} {
		if p, err := parsePage("a-b", text); err == nil {
			t.Errorf("%s is read as %+v", what, p)
		}
	}
}

func TestShown(t *testing.T) {
	p := Page{Text: "Text.\n\n~~~ step\na: «b°» c\n  «軸»\nlast «»\n~~~\n"}
	const want = "Text.\n\n~~~ step\na: b° c\n   ^^\n  軸\n  ^^\nlast \n     ^\n~~~\n"
	if got := p.WithCarets(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// A slug without a page is an error: nothing is let through unseen.
func TestSeverity(t *testing.T) {
	if got := (Diagnostic{Slug: "no-such-page"}).Severity(); got != Error {
		t.Errorf("a slug without a page is a %s", got)
	}
	l := &List{}
	l.Add(Diagnostic{Slug: "why-missing"})
	l.Add(Diagnostic{Slug: "limit-unknown"})
	if l.Len() != 2 || l.Errors() != 1 {
		t.Errorf("%d messages, %d errors; want 2 and 1", l.Len(), l.Errors())
	}
	l.Keep(func(d Diagnostic) bool { return d.Slug != "limit-unknown" })
	if l.Len() != 1 || l.Errors() != 0 {
		t.Errorf("after Keep %d messages, %d errors; want 1 and 0", l.Len(), l.Errors())
	}
}
