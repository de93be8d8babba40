package almanac

import (
	"crypto/sha1"
	"fmt"

	"hussif/content/journal"
)

// A uuid is a name that no other thing has.
type uuid [16]byte

// ours is the name space of all names that this package makes, drawn once at random.
var ours = uuid{0xf9, 0xf5, 0x89, 0xe3, 0x93, 0xb1, 0x48, 0x47, 0xa7, 0x96, 0x47, 0x4e, 0x8b, 0x9d, 0x83, 0x24}

// named makes a UUID of version 5 from a name within a name space.
func named(space uuid, name string) uuid {
	sum := sha1.Sum(append(space[:], name...))
	u := uuid(sum[:16])
	u[6] = u[6]&0x0f | 0x50 // the version
	u[8] = u[8]&0x3f | 0x80 // the variant
	return u
}

func (u uuid) String() string {
	return fmt.Sprintf("%x-%x-%x-%x-%x", u[:4], u[4:6], u[6:8], u[8:10], u[10:])
}

// nameOf names what the almanac tells of a record. What keeps several things of one
// record apart.
func nameOf(j *journal.Journal, what string, id journal.ID) uuid {
	return named(ours, j.Settings.Title+"\n"+what+"\n"+string(id))
}
