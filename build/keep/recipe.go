package keep

import (
	"crypto/sha256"

	"hussif/content/source"
)

// A Recipe stands for a step and everything the step was given. Equal recipes
// promise equal results.
type Recipe [sha256.Size]byte

// NewRecipe returns the recipe of a step. The version is raised whenever the
// step would make something else of the same things; given is all the step may
// look at, in a fixed order. Where one part ends counts: "ab", "c" and "a",
// "bc" are different recipes.
func NewRecipe(step string, version uint64, given ...string) Recipe {
	var h source.Hash
	h.Text(step)
	h.Number(version)
	for _, part := range given {
		h.Text(part)
	}
	return Recipe(h.Done())
}

// A Sum is the SHA-256 of a file's bytes.
type Sum = source.Sum
