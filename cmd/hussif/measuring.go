package main

import (
	"errors"
	"fmt"
	"io"

	"hussif/build/sitting"
	"hussif/content/edtf"
	"hussif/content/journal"
)

// A measuring is one person being measured.
type measuring struct {
	say    *voice
	ask    *asker
	w      *workroom
	order  measureOrder
	person *journal.Person
	state  string // the file in which it is kept
	kept   kept
	day    edtf.Day
	list   *sitting.Sitting
	items  []sitting.Item
}

// asked has everything asked for and written.
func (m *measuring) asked() error {
	resumed, err := m.resume()
	if err != nil {
		return err
	}
	if !resumed {
		if err := m.begin(); err != nil {
			return err
		}
	}
	m.prepare()
	if err := m.writable(); err != nil {
		m.ask.sayf("mind: what you measure cannot be put into %s now, and will be printed for you to paste: %v", m.person.File.Name, err)
	}
	m.ask.sayf("An empty answer leaves a measure out, and - takes an answer away again.")
	m.ask.sayf("? says where the tape lies, back goes back by one, done ends the measuring,")
	m.ask.sayf("stop breaks off until another day.")
	if err := m.take(); err != nil {
		return err
	}
	return m.finish()
}

// keep keeps what was answered so far: whoever closes the window loses nothing. That
// it cannot be kept is said once, and is no reason to stop.
func (m *measuring) keep() {
	if m.state == "" {
		return
	}
	var err error
	if len(m.kept.Answers) > 0 {
		err = m.kept.save(m.state)
	} else {
		err = forget(m.state)
	}
	if err != nil {
		m.notKept(err)
	}
}

func (m *measuring) notKept(err error) {
	m.state = ""
	fmt.Fprintf(m.say.Err, "hussif: should you stop, the answers cannot be kept for another day: %v\n", err)
}

// ended says how a sitting ended that was broken off.
func (m *measuring) ended(err error) error {
	stopped := errors.Is(err, errStopped) || errors.Is(err, io.EOF) && m.ask.typed
	if !stopped && !errors.Is(err, io.EOF) && !errors.Is(err, errInterrupted) {
		return err
	}
	text := "stopped; nothing was measured"
	switch n := len(m.kept.Answers); {
	case n > 0 && m.state == "":
		m.paste()
		text = "stopped; the answers could not be kept and are printed above"
	case n > 0:
		text = fmt.Sprintf("stopped; %s kept, and `hussif measure %s` goes on with it", number(n, "measure")+isOrAre(n), m.person.ID.Name())
	}
	if !stopped {
		return errors.New(text)
	}
	m.ask.sayf("%s", text)
	return nil
}

func isOrAre(n int) string {
	if n == 1 {
		return " is"
	}
	return " are"
}
