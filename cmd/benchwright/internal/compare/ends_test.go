package compare

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// Whatever of the demo's text is a quantity ends in a unit of measure.
func TestEnds(t *testing.T) {
	found := 0
	err := filepath.WalkDir("../../../../procedures", func(path string, d fs.DirEntry, err error) error {
		if ext := filepath.Ext(path); err != nil || ext != ".md" && ext != ".yaml" {
			return err
		}
		text, err := os.ReadFile(path)
		for line := range strings.Lines(string(text)) {
			words := strings.Fields(strings.Map(func(r rune) rune {
				if strings.ContainsRune(`"{}[],;:`, r) {
					return ' '
				}
				return r
			}, line))
			for i := range words {
				for n := 1; n <= longest && i+n <= len(words) && begins(words[i:]); n++ {
					core := strings.TrimRight(strings.Join(words[i:i+n], " "), ".)?")
					band, problem := quantity.ParseBand(core, quantity.Point)
					if problem != nil || band.Unit.Dimension == quantity.None {
						continue
					}
					if found++; !ends(core) {
						t.Errorf("%s: %q is a quantity", path, core)
					}
				}
			}
		}
		return err
	})
	if err != nil || found < 100 {
		t.Errorf("%d quantities, %v", found, err)
	}
}
