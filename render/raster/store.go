package raster

import (
	"crypto/sha256"
	"sync"
)

// maxStored bounds what the store of pictures holds, in bytes.
const maxStored = 16 << 20

// A picture is what Decode makes of a file.
type picture struct {
	pixels []byte // encoded; shared, so read only
	format string
	w, h   int // pixels
}

// A pictureStore keeps pictures by what their files hold: the decks of one
// procedure, and each of their layouts, show the same ones. It may be used by
// several goroutines at once. The zero value is empty.
type pictureStore struct {
	mu    sync.Mutex
	held  map[[sha256.Size]byte]picture
	bytes int
}

var decoded pictureStore

func (s *pictureStore) get(file []byte) (picture, bool) {
	sum := sha256.Sum256(file)
	s.mu.Lock()
	defer s.mu.Unlock()
	p, ok := s.held[sum]
	return p, ok
}

// put stores a picture. A full store is emptied first: what is shown next is
// more likely to be shown again than what is long past.
func (s *pictureStore) put(file []byte, p picture) {
	if len(p.pixels) > maxStored {
		return
	}
	sum := sha256.Sum256(file)
	s.mu.Lock()
	defer s.mu.Unlock()
	if _, ok := s.held[sum]; ok {
		return // another goroutine was faster
	}
	if s.held == nil || s.bytes+len(p.pixels) > maxStored {
		s.held, s.bytes = map[[sha256.Size]byte]picture{}, 0
	}
	s.held[sum] = p
	s.bytes += len(p.pixels)
}
