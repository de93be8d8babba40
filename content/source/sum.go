package source

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"hash"
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

// A Hash makes a Sum of several parts. Where one ends and the next begins counts. The
// zero Hash is ready.
type Hash struct {
	parts []byte // a few at a time: to hash many short ones each by itself is slow
	h     hash.Hash
}

// mostParts is how many bytes are gathered before they are hashed.
const mostParts = 4 << 10

// Text adds a text.
func (h *Hash) Text(s string) {
	h.Number(uint64(len(s)))
	h.parts = append(h.parts, s...)
}

// Number adds a number.
func (h *Hash) Number(n uint64) {
	if len(h.parts) > mostParts {
		if h.h == nil {
			h.h = sha256.New()
		}
		h.h.Write(h.parts)
		h.parts = h.parts[:0]
	}
	h.parts = binary.BigEndian.AppendUint64(h.parts, n)
}

// Sum adds the sum of something else.
func (h *Hash) Sum(s Sum) { h.parts = append(h.parts, s[:]...) }

// Done returns the sum of all that was added.
func (h *Hash) Done() Sum {
	if h.h == nil {
		return sha256.Sum256(h.parts)
	}
	h.h.Write(h.parts)
	return Sum(h.h.Sum(nil))
}
