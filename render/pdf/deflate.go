package pdf

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"sync"
)

// deflaters are reused: each takes more than a megabyte, and the library would
// allocate one for every page.
var deflaters = sync.Pool{New: func() any {
	z, err := zlib.NewWriterLevel(nil, zlib.BestSpeed)
	if err != nil {
		panic(err) // the level is a constant
	}
	return z
}}

// errShape reports that the library's output is not in the form that
// deflatePages expects.
var errShape = errors.New("the file is not of the library's shape")

// deflatePages takes a PDF that the library wrote without compression and
// writes the same bytes as the library would with compression: it deflates the
// pages' contents and adjusts the offset table at the end. The library gives
// the pages the object numbers 3, 5, 7 and so on, and the content of each the
// next number.
func deflatePages(w io.Writer, pdf []byte, pages int) error {
	xref := bytes.LastIndex(pdf, []byte("\nxref\n")) + 1
	trailer := bytes.LastIndex(pdf, []byte("trailer\n"))
	if xref == 0 || trailer < xref {
		return errShape
	}
	// One line for each object, beginning with its offset. The table begins
	// with "xref", "0 COUNT" and the free object.
	table := bytes.Split(pdf[xref:trailer], []byte("\n"))
	offsets := make([]int, len(table)-3) // by object number; 0 for the free one
	inOrder := []int{}
	for n := 1; n < len(offsets); n++ {
		digits, _, _ := bytes.Cut(table[n+2], []byte(" "))
		at, err := strconv.Atoi(string(digits))
		if err != nil || at > xref {
			return errShape
		}
		offsets[n] = at
		inOrder = append(inOrder, n)
	}
	slices.SortFunc(inOrder, func(a, b int) int { return offsets[a] - offsets[b] })
	if len(inOrder) < 2*pages {
		return errShape
	}
	var out bytes.Buffer
	out.Write(pdf[:offsets[inOrder[0]]])
	for i, n := range inOrder {
		end := xref
		if i+1 < len(inOrder) {
			end = offsets[inOrder[i+1]]
		}
		object := pdf[offsets[n]:end]
		offsets[n] = out.Len()
		if n < 4 || n > 2*pages+2 || n%2 == 1 {
			out.Write(object)
			continue
		}
		_, content, found := bytes.Cut(object, []byte(">>\nstream\n"))
		content, whole := bytes.CutSuffix(content, []byte("\nendstream\nendobj\n"))
		if !found || !whole {
			return errShape
		}
		small := deflate(content)
		fmt.Fprintf(&out, "%d 0 obj\n<</Filter /FlateDecode /Length %d>>\nstream\n%s\nendstream\nendobj\n", n, len(small), small)
	}
	xref = out.Len()
	fmt.Fprintf(&out, "%s\n%s\n%s\n", table[0], table[1], table[2])
	for _, at := range offsets[1:] {
		fmt.Fprintf(&out, "%010d 00000 n \n", at)
	}
	rest, _, _ := bytes.Cut(pdf[trailer:], []byte("startxref\n"))
	fmt.Fprintf(&out, "%sstartxref\n%d\n%%%%EOF\n", rest, xref)
	_, err := out.WriteTo(w)
	return err
}

func deflate(content []byte) []byte {
	var b bytes.Buffer
	z := deflaters.Get().(*zlib.Writer)
	defer deflaters.Put(z)
	z.Reset(&b)
	z.Write(content) // a bytes.Buffer never fails
	z.Close()
	return b.Bytes()
}
