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
		change(t, dir, strip, "Wipe the flange dry.", strings.Repeat("Wipe the flange dry.\n\n", 80))
		return Options{}
	}, strip},
	"gauge-overdue": {"the day of the work is stated on the command line", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "Wipe the flange dry.\n", "```measurement\nof: Backlash\nlimits: output-lash\ngauge: dial-indicator\nif-low: Note it.\nif-high: Note it.\n```\n")
		change(t, dir, "shop.yaml", "range: 0 to 10 mm", "range: 0 to 10 mm, due: 2026-11-01")
		return Options{WorkDate: "2026-11-25"}
	}, "shop.yaml"},
	"sheet-too-small": {"the sheet is chosen on the command line", func(*testing.T, string) Options {
		return Options{Paper: "A4", Sheet: "A4", Flip: "long"}
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
			s.test(t, slug)
		})
	}
}

// test requires that the setup gives one message, with the slug, about its file.
func (s setup) test(t *testing.T, slug string) {
	t.Helper()
	dir := write(t, sample{}.files(t))
	list := messages(t, dir, s.make(t, dir))
	if len(list) != 1 || list[0].Slug != slug || list[0].At.File == nil || list[0].At.File.Name != s.at {
		t.Fatalf("%s gives, instead of one message about %s:\n%s", s.reason, s.at, shown(list))
	}
	manners(t, list[0])
}

// using is a step that names what unit.yaml and shop.yaml have.
const using = "```measurement\nof: Backlash\nlimits: output-lash\ngauge: dial-indicator\nif-low: Note it.\nif-high: Note it.\n```\n\n" +
	"```torque\nfastener: pinion-nut\nlimits: pinion-nut-torque\n```\n\n```tool\nuse: lug-socket-4\n```\n"

// more are setups of messages that have been set up above, at other places.
var more = []struct {
	slug string
	setup
}{
	{"too-large", setup{"a unit.yaml that is not read, and a card that uses it", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "Wipe the flange dry.\n", using)
		change(t, dir, "md-48/unit.yaml", "limits:", strings.Repeat("# more\n", 50_000)+"limits:")
		return Options{}
	}, "md-48/unit.yaml"}},
	{"too-large", setup{"a shop.yaml that is not read, and a card that uses it", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "Wipe the flange dry.\n", using)
		change(t, dir, "shop.yaml", "tools:", strings.Repeat("# more\n", 50_000)+"tools:")
		return Options{}
	}, "shop.yaml"}},
	{"link-not-followed", setup{"a unit.yaml that is a link, and a card that uses it", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "Wipe the flange dry.\n", using)
		path := filepath.Join(dir, "md-48", "unit.yaml")
		if err := os.Rename(path, path+".txt"); err != nil {
			t.Fatal(err)
		}
		if err := os.Symlink("unit.yaml.txt", path); err != nil {
			t.Skip("this system makes no symbolic links: ", err)
		}
		return Options{}
	}, "md-48/unit.yaml"}},
	{"link-not-followed", setup{"a picture that is a link", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "Wipe the flange dry.", "![The flange](figures/link.png)")
		if err := os.Symlink("flange.png", filepath.Join(dir, "md-48", "figures", "link.png")); err != nil {
			t.Skip("this system makes no symbolic links: ", err)
		}
		return Options{}
	}, strip}},
	{"too-large", setup{"a picture of 20 MB", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "Wipe the flange dry.", "![The flange](figures/flange.png)")
		if err := os.Truncate(filepath.Join(dir, "md-48", "figures", "flange.png"), 20<<20); err != nil {
			t.Fatal(err)
		}
		return Options{}
	}, strip}},
	{"too-large", setup{"a line of 3 KB", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "Wipe the flange dry.", strings.Repeat("Wipe it. ", 350))
		return Options{}
	}, strip}},
	{"too-large", setup{"a paragraph of 20 KB", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "Wipe the flange dry.", strings.Repeat("Wipe it dry.\n", 1600))
		return Options{}
	}, strip}},
	{"too-large", setup{"501 steps", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "Wipe the flange dry.\n", strings.Repeat("Wipe it.\n\n### Wipe it\n\n", 501)+"Wipe it.\n")
		return Options{}
	}, strip}},
	{"too-large", setup{"keys 40 deep", func(t *testing.T, dir string) Options {
		change(t, dir, "md-48/unit.yaml", "parts:\n", "parts:\n  deep: "+strings.Repeat("{a: ", 40)+strings.Repeat("}", 40)+"\n")
		change(t, dir, strip, "Wipe the flange dry.\n", using)
		return Options{}
	}, "md-48/unit.yaml"}},
	{"text-malformed", setup{"a procedure in UTF-16", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "---\ncard", "\xff\xfe-\x00-\x00-\x00\ncard")
		return Options{}
	}, strip}},
	{"text-malformed", setup{"a lone carriage return in a unit that a card uses", func(t *testing.T, dir string) Options {
		change(t, dir, "md-48/unit.yaml", "drive\nvariants", "drive\rvariants")
		change(t, dir, strip, "Wipe the flange dry.\n", using)
		return Options{}
	}, "md-48/unit.yaml"}},
	{"text-malformed", setup{"a byte that is not UTF-8", func(t *testing.T, dir string) Options {
		change(t, dir, strip, "flange dry", "flange d\xffry")
		return Options{}
	}, strip}},
	{"file-name", setup{"a unit.yml in the place of unit.yaml", func(t *testing.T, dir string) Options {
		path := filepath.Join(dir, "md-48", "unit.yaml")
		if err := os.Rename(path, strings.TrimSuffix(path, "yaml")+"yml"); err != nil {
			t.Fatal(err)
		}
		return Options{}
	}, "md-48/unit.yml"}},
}

func TestMoreSetups(t *testing.T) {
	for _, s := range more {
		t.Run(s.reason, func(t *testing.T) {
			t.Parallel()
			s.test(t, s.slug)
		})
	}
}
