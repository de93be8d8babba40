package keep

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"io"
)

// A Recipe stands for a step and everything the step was given. Equal recipes
// promise equal results.
type Recipe [sha256.Size]byte

// NewRecipe returns the recipe of a step. The version is raised whenever the
// step would make something else of the same things; given is all the step may
// look at, in a fixed order. Where one part ends counts: "ab", "c" and "a",
// "bc" are different recipes.
func NewRecipe(step string, version uint64, given ...string) Recipe {
	h := sha256.New()
	var number [8]byte
	write := func(part string) {
		binary.BigEndian.PutUint64(number[:], uint64(len(part)))
		h.Write(number[:])
		io.WriteString(h, part)
	}
	write(step)
	binary.BigEndian.PutUint64(number[:], version)
	h.Write(number[:])
	for _, part := range given {
		write(part)
	}
	return Recipe(h.Sum(nil))
}

// A Sum is the SHA-256 of a file's bytes.
type Sum [sha256.Size]byte

// String returns the sum in hexadecimal.
func (s Sum) String() string { return hex.EncodeToString(s[:]) }

// MarshalText writes the sum in hexadecimal.
func (s Sum) MarshalText() ([]byte, error) {
	return hex.AppendEncode(nil, s[:]), nil
}

// UnmarshalText reads what [Sum.MarshalText] wrote.
func (s *Sum) UnmarshalText(text []byte) error {
	if len(text) != hex.EncodedLen(len(s)) {
		return hex.ErrLength
	}
	_, err := hex.Decode(s[:], text)
	return err
}
