package render

// Words are the few words that layout itself prints. Empty ones default to
// English.
type Words struct {
	Continued string // behind the head of a listing that continues
	Part      string // of a section: name, number, count
	Step      string // on the face: number, count
	Steps     string // first and last on the face, count
	Face      string // number, count
	Revision  string // the revision
	Deck      string // check code of the deck that a strip belongs to
}

// WithDefaults returns w with defaults for empty fields.
func (w Words) WithDefaults() Words {
	for _, p := range []struct {
		word *string
		is   string
	}{
		{&w.Continued, "(continued)"},
		{&w.Part, "%s %d of %d"},
		{&w.Step, "Step %d of %d"},
		{&w.Steps, "Steps %d–%d of %d"},
		{&w.Face, "Page %d of %d"},
		{&w.Revision, "revision %s"},
		{&w.Deck, "Deck %s"},
	} {
		if *p.word == "" {
			*p.word = p.is
		}
	}
	return w
}
