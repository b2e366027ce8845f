package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"maps"
	"os"
	"runtime"
	"slices"
	"strings"
	"testing"
)

const sumsFile = "../../testdata/pdf.render.sums"

// The bytes of a PDF are held by hash, and apart from them the hash of what
// its streams hold before they are deflated: a Go version may deflate
// otherwise, it may not draw otherwise. The bytes are compared on the
// toolchain that wrote the hashes. UPDATE=1 rewrites the file.
func TestPDFSums(t *testing.T) {
	machine := runtime.Version() + " " + runtime.GOOS + "/" + runtime.GOARCH
	var got strings.Builder
	fmt.Fprintf(&got, "machine %s\n", machine)
	sheets := pixelSheets(t)
	for _, name := range slices.Sorted(maps.Keys(sheets)) {
		pdf := writePDF(t, sheets[name])
		fmt.Fprintf(&got, "%s streams %x\n", name, sha256.Sum256(bytes.Join(pdfStreams(t, pdf), []byte("\n"))))
		fmt.Fprintf(&got, "%s file %x\n", name, sha256.Sum256(pdf))
	}
	file, err := os.ReadFile(sumsFile)
	if err == nil && string(file) == got.String() {
		return
	}
	if os.Getenv("UPDATE") == "1" {
		if err := os.WriteFile(sumsFile, []byte(got.String()), 0o666); err != nil {
			t.Fatal(err)
		}
		t.Logf("rewrote %s", sumsFile)
		return
	}
	if err != nil {
		t.Fatalf("%v; UPDATE=1 writes it", err)
	}
	old := string(file)
	here := strings.HasPrefix(old, "machine "+machine+"\n")
	for line := range strings.Lines(got.String()) {
		judged := here || strings.Contains(line, " streams ")
		if judged && !strings.Contains(old, "\n"+line) && !strings.HasPrefix(line, "machine ") {
			t.Errorf("%s has not the line %s", sumsFile, line)
		}
	}
	if strings.Count(old, "\n") != strings.Count(got.String(), "\n") {
		t.Errorf("%s has lines that no test owns", sumsFile)
	}
}
