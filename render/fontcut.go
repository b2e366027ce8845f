package render

import _ "embed"

// The faces as their makers gave them (fonts/LICENSE_FONT, SIL OFL 1.1).
var (
	//go:embed fonts/SourceSans3_400Regular.ttf
	regularTTF []byte
	//go:embed fonts/SourceSans3_600SemiBold.ttf
	semiboldTTF []byte
	//go:embed fonts/SourceSans3_700Bold.ttf
	boldTTF []byte
)

// fontFile is the uncut TrueType file of a face. It is shared: read only.
func fontFile(f Font) []byte {
	switch f {
	case FontSemibold:
		return semiboldTTF
	case FontBold:
		return boldTTF
	}
	return regularTTF
}
