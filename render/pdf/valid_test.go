package pdf

import (
	"bytes"
	"maps"
	"slices"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"benchwright/render/specimen"
)

// A validator that is none of ours finds the files sound. Relaxed: the PDF
// library gives a bookmark without children a /Count of 0.
func TestPDFIsValid(t *testing.T) {
	model.ConfigPath = "disable" // no settings folder in the user's home
	for _, name := range slices.Sorted(maps.Keys(pixelSheets(t))) {
		pdf := writePDF(t, pixelSheets(t)[name])
		config := model.NewDefaultConfiguration()
		config.ValidationMode = model.ValidationRelaxed
		if err := api.Validate(bytes.NewReader(pdf), config); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := api.Validate(bytes.NewReader(writePDF(t, specimen.Sheets())[:9000]), nil); err == nil {
		t.Error("half a file is valid")
	}
}
