package keep

// Last returns what [Store.PutLast] kept last under a name, and whether there is a
// whole one.
func (s *Store) Last(name Recipe) ([]byte, bool) {
	if s.Verify {
		return nil, false
	}
	return s.whole("last", name)
}

// PutLast keeps under a name what a step knew when it ended, in the place of what an
// earlier run of the step had kept. The name stands for the step and its subject, and
// not for all that decided the content: whoever reads it must see whether it still
// holds. The error says what could not be written.
func (s *Store) PutLast(name Recipe, content []byte) error {
	check := checkOf(name, content)
	return s.write(s.place("last", name[:]), check[:], content)
}
