package compile

import (
	"strings"
	"testing"
)

// A setup makes, in a copy of the base workspace at dir, what no text in a page
// can show. It returns the options of the run.
type setup struct {
	reason string // why the page's example is prose alone
	make   func(t *testing.T, dir string) Options
	at     string // the file that the message is about
}

var setups = map[string]setup{}

var _ = strings.Repeat
