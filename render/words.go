package render

// Words are the few words that layout itself prints. An empty one is printed
// in English.
type Words struct {
	Continued string // behind the head of a listing that runs on
	Part      string // of a section: name, number, count
	Step      string // on the face: number, count
	Steps     string // first and last on the face, count
	Face      string // number, count
	Revision  string // the revision
}

// WithDefaults fills what is empty.
func (w Words) WithDefaults() Words {
	for _, p := range []struct {
		word *string
		is   string
	}{
		{&w.Continued, "(continued)"},
		{&w.Part, "%s %d of %d"},
		{&w.Step, "Step %d of %d"},
		{&w.Steps, "Steps %d–%d of %d"},
		{&w.Face, "Face %d of %d"},
		{&w.Revision, "revision %s"},
	} {
		if *p.word == "" {
			*p.word = p.is
		}
	}
	return w
}
