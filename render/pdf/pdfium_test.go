package pdf

import (
	"image"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"
)

// pdfReader is a PDF reader that is none of ours, started once. Compiling it
// takes seconds, so the machine code is kept in the user's cache folder.
var pdfReader = sync.OnceValues(func() (pdfium.Pdfium, error) {
	dir, err := os.UserCacheDir()
	if err != nil {
		dir = os.TempDir()
	}
	config := wazero.NewRuntimeConfig().WithCoreFeatures(api.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling)
	if cache, err := wazero.NewCompilationCacheWithDir(filepath.Join(dir, "benchwright-test-pdfium")); err == nil {
		config = config.WithCompilationCache(cache)
	}
	pool, err := webassembly.Init(webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 1, RuntimeConfig: config})
	if err != nil {
		return nil, err
	}
	return pool.GetInstance(0)
})

// withPages runs do for each page of a PDF.
func withPages(t *testing.T, pdf []byte, do func(reader pdfium.Pdfium, page requests.Page)) {
	t.Helper()
	reader, err := pdfReader()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := reader.OpenDocument(&requests.OpenDocument{File: &pdf})
	if err != nil {
		t.Fatal(err)
	}
	defer reader.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: doc.Document})
	count, err := reader.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: doc.Document})
	if err != nil {
		t.Fatal(err)
	}
	for i := range count.PageCount {
		do(reader, requests.Page{ByIndex: &requests.PageByIndex{Document: doc.Document, Index: i}})
	}
}

// pdfPages draws the pages of a PDF.
func pdfPages(t *testing.T, pdf []byte, dpi int) []image.Image {
	t.Helper()
	var pages []image.Image
	withPages(t, pdf, func(reader pdfium.Pdfium, page requests.Page) {
		r, err := reader.RenderPageInDPI(&requests.RenderPageInDPI{Page: page, DPI: dpi})
		if err != nil {
			t.Fatal(err)
		}
		src := r.Result.Image // its memory is the reader's
		copied := image.NewRGBA(src.Bounds())
		copy(copied.Pix, src.Pix)
		r.Cleanup()
		pages = append(pages, copied)
	})
	return pages
}

// pdfText is the text of each page, in the order of its operations.
func pdfText(t *testing.T, pdf []byte) []string {
	t.Helper()
	var pages []string
	withPages(t, pdf, func(reader pdfium.Pdfium, page requests.Page) {
		r, err := reader.GetPageText(&requests.GetPageText{Page: page})
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, r.Text)
	})
	return pages
}
