package raster

import (
	"bytes"
	"fmt"
	"sync"
	"testing"

	"benchwright/render/specimen"
)

// A picture is decoded once, by its content and not by its name; a broken one
// is named each time (run with -race, this is the race test).
func TestDecodePictureOnce(t *testing.T) {
	file := append(specimen.PNG(41, 31), "of this test alone"...)
	var all [8][]byte
	var wg sync.WaitGroup
	for i := range all {
		wg.Go(func() { all[i], _, _, _, _ = Decode(fmt.Sprint(i), bytes.Clone(file)) })
	}
	wg.Wait()
	held, ok := decoded.get(file)
	if !ok || held.w != 41 || held.h != 31 || held.format != "PNG" {
		t.Fatalf("held: %t, %s %d × %d", ok, held.format, held.w, held.h)
	}
	for i, pixels := range all {
		if !bytes.Equal(pixels, held.pixels) {
			t.Errorf("goroutine %d has other pixels", i)
		}
	}
	if pixels, _, _, _, _ := Decode("again", file); &pixels[0] != &held.pixels[0] {
		t.Error("it was decoded again")
	}
	for _, name := range []string{"one", "two"} {
		if _, _, _, _, err := Decode(name, specimen.PNGHeader(100, 100)); err == nil || !bytes.Contains([]byte(err.Error()), []byte(name)) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The store never holds more than its bound.
func TestPictureStoreBound(t *testing.T) {
	var s pictureStore
	pixels := make([]byte, maxStored/3)
	for i := range 10 {
		file := []byte{byte(i)}
		s.put(file, picture{pixels: pixels})
		s.put(file, picture{pixels: pixels})
		if _, ok := s.get(file); !ok || s.bytes > maxStored || s.bytes != len(s.pictures)*len(pixels) {
			t.Errorf("after %d: held %t, %d bytes for %d pictures", i, ok, s.bytes, len(s.pictures))
		}
	}
	s.put([]byte("large"), picture{pixels: make([]byte, maxStored+1)})
	if _, ok := s.get([]byte("large")); ok {
		t.Error("a picture above the bound is held")
	}
}
