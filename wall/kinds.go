package wall

import "example.com/groovewright/fraction/enum"

var (
	endKinds     = enum.Of[EndKind](endNames[:]...)
	openingKinds = enum.Of[OpeningKind](openingNames[:]...)
)

// MarshalText writes the word of a kind.
func (k EndKind) MarshalText() ([]byte, error) { return endKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *EndKind) UnmarshalText(text []byte) error { return endKinds.Unmarshal(text, k) }

// MarshalText writes the word of a kind.
func (k OpeningKind) MarshalText() ([]byte, error) { return openingKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *OpeningKind) UnmarshalText(text []byte) error { return openingKinds.Unmarshal(text, k) }
