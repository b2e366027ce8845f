package compile

import (
	"strings"
	"testing"
)

// A number that fell apart at its comma is fixed as the shop writes numbers, in
// shop.yaml itself too.
func TestCommaFixes(t *testing.T) {
	shop := func(decimal, span string) string {
		return "benchwright: 1\nshop: A\n" + decimal + "gauges:\n  dial: {resolution: 1 mm, range: " + span + "}\n"
	}
	const unit = "unit: md-48\ntitle: A\nlimits:\n  a: {band: 0,15 to 0,25 mm, source: m}\n"
	for _, c := range []struct{ decimal, file, want string }{
		{"decimal: comma\n", "md-48/unit.yaml", "put quotes around it"},
		{"decimal: point\n", "md-48/unit.yaml", "write the number with a point: `0.15 to 0.25 mm`"},
		{"", "md-48/unit.yaml", "write the number with a point: `0.15 to 0.25 mm`"},
		{"decimal: comma\n", "shop.yaml", "put quotes around it"},
		{"", "shop.yaml", "write the number with a point: `0.5 to 2 mm`"},
	} {
		files := map[string]string{"shop.yaml": shop(c.decimal, "max 2 mm"), "md-48/unit.yaml": unit, "md-48/a.md": sample{}.files(t)[strip]}
		if c.file == "shop.yaml" {
			files["shop.yaml"], files["md-48/unit.yaml"] = shop(c.decimal, "0,5 to 2 mm"), "unit: md-48\ntitle: A\n"
		}
		found := false
		for _, d := range messages(t, write(t, files), Options{}) {
			if d.Slug == "flow-comma" && d.At.File.Name == c.file {
				found = true
				if d.Fix != c.want {
					t.Errorf("%q in %s: %s, want %s", c.decimal, c.file, d.Fix, c.want)
				}
			}
		}
		if !found {
			t.Errorf("%q in %s: nothing is said", strings.TrimSpace(c.decimal), c.file)
		}
	}
}
