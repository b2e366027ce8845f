package typeface

import (
	"testing"

	"golang.org/x/image/font/sfnt"
)

// What Repertoire allows, all three faces draw: the cut cannot open a hole.
func TestFacesHaveTheRepertoire(t *testing.T) {
	for _, font := range []Font{Regular, Semibold, Bold} {
		face, err := sfnt.Parse(File(font))
		if err != nil {
			t.Fatal(err)
		}
		var buf sfnt.Buffer
		for _, r := range Repertoire() {
			if g, err := face.GlyphIndex(&buf, r); err != nil || g == 0 {
				t.Errorf("face %d lacks %q (%U): %v", font, r, r, err)
			}
		}
	}
}

// The signs of the trade are in or out, and so are four languages' letters.
func TestRepertoire(t *testing.T) {
	for _, r := range "·×±°µΩØ≤≥−–—…′″½¼⅛→↑↓☐☑✓Δαδ²³ åŁžőȘß Жґё ΩάϊΫ\u00a0" {
		if !Has(r) {
			t.Errorf("%q (%U) is not in the repertoire", r, r)
		}
	}
	for _, r := range "⌀\u00ad\u2009\u200b\ufeff\u0301\t\n中😀\ufffd" {
		if Has(r) {
			t.Errorf("%q (%U) is in the repertoire", r, r)
		}
	}
}
