package raster

import (
	"crypto/sha256"
	"sync"
)

// maxStored is the capacity of the picture store, in bytes.
const maxStored = 16 << 20

// A picture is the result of Decode.
type picture struct {
	pixels []byte // encoded; shared, so read only
	format string
	w, h   int // pixels
}

// A pictureStore caches decoded pictures by file content, because the decks of
// a procedure, and repeated layouts of each, show the same ones. It is safe
// for concurrent use. The zero value is empty.
type pictureStore struct {
	mu       sync.Mutex
	pictures map[[sha256.Size]byte]picture
	bytes    int
}

var decoded pictureStore

func (s *pictureStore) get(file []byte) (picture, bool) {
	sum := sha256.Sum256(file)
	s.mu.Lock()
	defer s.mu.Unlock()
	p, ok := s.pictures[sum]
	return p, ok
}

// put stores a picture. A full store is emptied first, because recent pictures
// are the likeliest to be used again.
func (s *pictureStore) put(file []byte, p picture) {
	if len(p.pixels) > maxStored {
		return
	}
	sum := sha256.Sum256(file)
	s.mu.Lock()
	defer s.mu.Unlock()
	if _, ok := s.pictures[sum]; ok {
		return // another goroutine stored it first
	}
	if s.pictures == nil || s.bytes+len(p.pixels) > maxStored {
		s.pictures, s.bytes = map[[sha256.Size]byte]picture{}, 0
	}
	s.pictures[sum] = p
	s.bytes += len(p.pixels)
}
