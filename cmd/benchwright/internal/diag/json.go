package diag

import (
	"encoding/json"
	"io"

	"benchwright/cmd/benchwright/internal/source"
)

// Format identifies the form of the JSON document. Later versions may add
// fields, but remove none.
const Format = "benchwright-messages/1"

type jsonPoint struct {
	Offset int `json:"offset"`
	Line   int `json:"line"`
	Column int `json:"column"`
}

type jsonRelated struct {
	File    string    `json:"file"`
	Start   jsonPoint `json:"start"`
	End     jsonPoint `json:"end"`
	Message string    `json:"message"`
}

type jsonEdit struct {
	File  string    `json:"file"`
	Start jsonPoint `json:"start"`
	End   jsonPoint `json:"end"`
	Text  string    `json:"text"`
}

type jsonMessage struct {
	Name     string        `json:"name"`
	Severity Severity      `json:"severity"`
	File     string        `json:"file"`
	Start    jsonPoint     `json:"start"`
	End      jsonPoint     `json:"end"`
	Message  string        `json:"message"`
	Label    string        `json:"label"`
	Related  []jsonRelated `json:"related"`
	Fix      string        `json:"fix"`
	Edit     *jsonEdit     `json:"edit"`
}

// WriteJSON writes all messages as one document. Every field is always
// present.
func WriteJSON(w io.Writer, messages []Diagnostic) error {
	doc := struct {
		Format   string        `json:"format"`
		Messages []jsonMessage `json:"messages"`
	}{Format, make([]jsonMessage, 0, len(messages))}
	for _, d := range messages {
		m := jsonMessage{Name: d.Slug, Severity: d.Severity(), File: name(d.At),
			Message: d.Message, Label: d.Label, Related: []jsonRelated{}, Fix: d.Fix}
		m.Start, m.End = points(d.At)
		for _, r := range d.Related {
			j := jsonRelated{File: name(r.At), Message: r.Message}
			j.Start, j.End = points(r.At)
			m.Related = append(m.Related, j)
		}
		if d.Edit != nil {
			m.Edit = &jsonEdit{File: name(d.Edit.At), Text: d.Edit.Text}
			m.Edit.Start, m.Edit.End = points(d.Edit.At)
		}
		doc.Messages = append(doc.Messages, m)
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(doc)
}

// points returns both ends of a place, zeros for the zero place.
func points(at source.Place) (start, end jsonPoint) {
	if at.File == nil {
		return
	}
	point := func(offset int) jsonPoint {
		p := at.File.Position(offset)
		return jsonPoint{offset, p.Line, p.Column}
	}
	return point(at.Span.Start), point(at.Span.End)
}
