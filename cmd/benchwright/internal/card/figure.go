package card

import "benchwright/cmd/benchwright/internal/procedure"

// A Figure is a picture with callouts.
type Figure struct {
	*procedure.Figure
	Name string // path below the workspace
	Data []byte // nil if unreadable, which is reported
}

func (f *Figure) Readings() []*Measurement { return nil }
func (f *Figure) causes() []Cause          { return nil }
func (f *Figure) complete(*Card) bool      { return f.Data != nil }

func (r *resolver) figure(f *procedure.Figure) Item {
	out := &Figure{Figure: f}
	if f.Image.Name != "" {
		out.Name, out.Data, _ = r.load(f.Image)
	}
	return out
}
