package compile

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
)

// A setup makes, in a copy of the base workspace at dir, what no text of a
// page can show, and returns the options of the run. Its page's example is
// prose alone.
type setup struct {
	reason string // why no text can show it
	make   func(t *testing.T, dir string) Options
	at     string // the file that the message is about
}

var setups = map[string]setup{
	"text-malformed": {"what it is about cannot be seen", func(t *testing.T, dir string) Options {
		change(t, dir, "md-48/unit.yaml", "right-angle drive", "right-angle drive\u2028")
		return Options{}
	}, "md-48/unit.yaml"},
	"too-large": {"300 KB of text", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "Wipe the flange dry.", strings.Repeat("Wipe the flange dry.\n\n", 15_000))
		return Options{}
	}, strip},
	"link-not-followed": {"a symbolic link is no text", func(t *testing.T, dir string) Options {
		if err := os.Symlink("strip.md", filepath.Join(dir, "md-48", "test.md")); err != nil {
			t.Skip("this system makes no symbolic links: ", err)
		}
		return Options{}
	}, "md-48/test.md"},
	"file-name": {"it is about the name of a file, not about what stands in it", func(t *testing.T, dir string) Options {
		if err := os.WriteFile(filepath.Join(dir, "md-48", "shop.yml"), nil, 0o666); err != nil {
			t.Fatal(err)
		}
		return Options{}
	}, "md-48/shop.yml"},
	"file-unreadable": {"a file that cannot be read shows no text", func(t *testing.T, dir string) Options {
		path := filepath.Join(dir, "shop.yaml")
		if err := os.Remove(path); err != nil {
			t.Fatal(err)
		}
		if err := os.Mkdir(path, 0o777); err != nil {
			t.Fatal(err)
		}
		return Options{}
	}, "shop.yaml"},
	"step-too-tall": {"the step would fill a page of the screen too", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "Wipe the flange dry.", strings.Repeat("Wipe the flange dry.\n\n", 40))
		return Options{}
	}, strip},
	"sheet-too-small": {"the sheet is chosen on the command line", func(*testing.T, string) Options {
		return Options{Paper: "A4", Sheet: "A4", Turn: "long"}
	}, strip},
	"internal-fault": {"it needs a fault of the program", func(*testing.T, string) Options {
		return Options{Emit: func(*Made) error { panic("a fault for the test") }}
	}, strip},
}

// change replaces the one place where a file of a workspace says old.
func change(t *testing.T, dir, name, old, by string) {
	t.Helper()
	path := filepath.Join(dir, filepath.FromSlash(name))
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Count(string(text), old) != 1 {
		t.Fatalf("%s does not say once: %s", name, old)
	}
	if err := os.WriteFile(path, []byte(strings.Replace(string(text), old, by, 1)), 0o666); err != nil {
		t.Fatal(err)
	}
}

func TestSetups(t *testing.T) {
	for slug, s := range setups {
		t.Run(slug, func(t *testing.T) {
			t.Parallel()
			page, ok := diag.PageOf(slug)
			if !ok {
				t.Fatal("there is no page")
			}
			if example := samples(page.Text, "Example"); len(example) > 0 {
				t.Error("the page has an example that is not tested")
			}
			dir := write(t, sample{}.files(t))
			list := messages(t, dir, s.make(t, dir))
			if len(list) != 1 || list[0].Slug != slug || list[0].At.File == nil || list[0].At.File.Name != s.at {
				t.Fatalf("%s gives, instead of one message about %s:\n%s", s.reason, s.at, shown(list))
			}
			manners(t, list[0])
		})
	}
}
