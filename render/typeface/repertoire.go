package typeface

import (
	"strings"
	"unicode"
)

// repertoire is the set of characters to which the embedded fonts are subset:
// Latin 1 and Latin Extended-A (with the comma-below letters of Romanian, the
// Welsh letters and the capital sharp s), modern Greek, Cyrillic with ґ, and
// the symbols of the trade. All three fonts of Source Sans 3 have all of them.
//
// Excluded are the soft hyphen and every space but U+0020 and U+00A0, which
// print or copy as nothing; combining marks, because text is composed; ⌀,
// which the fonts lack.
var repertoire = &unicode.RangeTable{
	R16: []unicode.Range16{
		{0x0020, 0x007E, 1},
		{0x00A0, 0x00AC, 1},
		{0x00AE, 0x017F, 1},
		{0x0218, 0x021B, 1}, // Ș ș Ț ț
		{0x0384, 0x038A, 1},
		{0x038C, 0x038C, 1},
		{0x038E, 0x03A1, 1},
		{0x03A3, 0x03CE, 1},
		{0x0400, 0x045F, 1},
		{0x0490, 0x0491, 1}, // Ґ ґ
		{0x1E80, 0x1E85, 1}, // Ẁ ẁ Ẃ ẃ Ẅ ẅ
		{0x1E9E, 0x1E9E, 1}, // ẞ
		{0x1EF2, 0x1EF3, 1}, // Ỳ ỳ
		{0x2010, 0x2015, 1}, // hyphens and dashes
		{0x2018, 0x201E, 1}, // ‘ ’ ‚ ‛ “ ” „
		{0x2020, 0x2022, 1}, // † ‡ •
		{0x2026, 0x2026, 1}, // …
		{0x2030, 0x2030, 1}, // ‰
		{0x2032, 0x2033, 1}, // ′ ″
		{0x2039, 0x203A, 1}, // ‹ ›
		{0x2044, 0x2044, 1}, // ⁄
		{0x2070, 0x2070, 1},
		{0x2074, 0x207B, 1}, // ⁴ to ⁻
		{0x2080, 0x2089, 1}, // ₀ to ₉
		{0x20AC, 0x20AC, 1}, // €
		{0x2113, 0x2113, 1}, // ℓ
		{0x2116, 0x2116, 1}, // №
		{0x2122, 0x2122, 1}, // ™
		{0x2126, 0x2126, 1}, // Ω, the ohm sign
		{0x2150, 0x215E, 1}, // ⅐ to ⅞
		{0x2190, 0x2199, 1}, // arrows
		{0x2206, 0x2206, 1}, // ∆
		{0x2211, 0x2212, 1}, // ∑ −
		{0x2215, 0x2215, 1}, // ∕
		{0x221A, 0x221A, 1}, // √
		{0x221E, 0x221E, 1}, // ∞
		{0x2248, 0x2248, 1}, // ≈
		{0x2260, 0x2260, 1}, // ≠
		{0x2264, 0x2265, 1}, // ≤ ≥
		{0x25A0, 0x25A1, 1}, // ■ □
		{0x25B2, 0x25B3, 1}, // ▲ △
		{0x25B6, 0x25B7, 1}, // ▶ ▷
		{0x25BC, 0x25BD, 1}, // ▼ ▽
		{0x25C0, 0x25C1, 1}, // ◀ ◁
		{0x25C6, 0x25C6, 1}, // ◆
		{0x25CA, 0x25CB, 1}, // ◊ ○
		{0x25CF, 0x25CF, 1}, // ●
		{0x2610, 0x2611, 1}, // ☐ ☑
		{0x2713, 0x2714, 1}, // ✓ ✔
		{0x2717, 0x2718, 1}, // ✗ ✘
	},
	LatinOffset: 2,
}

// Has reports whether the fonts in the PDF have r. Layout refuses all other
// characters, even those in the complete fonts.
func Has(r rune) bool { return unicode.Is(repertoire, r) }

// Repertoire returns the repertoire as a string, in code order.
func Repertoire() string {
	var b strings.Builder
	for _, r := range repertoire.R16 {
		for c := rune(r.Lo); c <= rune(r.Hi); c++ {
			b.WriteRune(c)
		}
	}
	return b.String()
}
