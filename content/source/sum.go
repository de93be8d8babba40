package source

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"hash"
	"io"
)

// A Sum is the SHA-256 of some bytes.
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

// A Hash makes a Sum of several parts. Where one ends and the next begins counts.
type Hash struct {
	h      hash.Hash
	number [8]byte
}

// NewHash returns a Hash of nothing yet.
func NewHash() *Hash { return &Hash{h: sha256.New()} }

// Text adds a text.
func (h *Hash) Text(s string) {
	h.Number(uint64(len(s)))
	io.WriteString(h.h, s)
}

// Number adds a number.
func (h *Hash) Number(n uint64) {
	binary.BigEndian.PutUint64(h.number[:], n)
	h.h.Write(h.number[:])
}

// Sum adds the sum of something else.
func (h *Hash) Sum(s Sum) { h.h.Write(s[:]) }

// Done returns the sum of all that was added.
func (h *Hash) Done() Sum { return Sum(h.h.Sum(nil)) }
