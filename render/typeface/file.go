package typeface

import _ "embed"

// The fonts as published (fonts/LICENSE_FONT, SIL OFL 1.1).
var (
	//go:embed fonts/SourceSans3_400Regular.ttf
	regularTTF []byte
	//go:embed fonts/SourceSans3_600SemiBold.ttf
	semiboldTTF []byte
	//go:embed fonts/SourceSans3_700Bold.ttf
	boldTTF []byte
)

// File returns the complete TrueType file of a font, which the caller must not
// change.
func File(f Font) []byte {
	switch f {
	case Semibold:
		return semiboldTTF
	case Bold:
		return boldTTF
	}
	return regularTTF
}
