package layout

import (
	"testing"
)

// Head and foot take what the design allows them of a face: 9 % of an A4, 14 % of
// an A5, margins not counted.
func TestHeadAndFootAreThin(t *testing.T) {
	for name, most := range map[string]int{"A4": 90, "Letter": 90, "A5": 140, "half-Letter": 140} {
		o := optionsFor(name)
		s, body := o.style(), Columns(o)[0]
		if share := (o.Paper.Height - s.Top - s.Bottom - body.H) * 1000 / o.Paper.Height; share > most {
			t.Errorf("%s: head and foot take %d ‰ of the face, at most %d", name, share, most)
		}
	}
}
