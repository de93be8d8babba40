package schema

import (
	"fmt"
	"strconv"

	"go.yaml.in/yaml/v3"
)

// exampleOf returns the value that an example written in YAML is for JSON. It
// panics where the example is no YAML: that is a fault in the program.
func exampleOf(text string) any {
	var n yaml.Node
	if err := yaml.Unmarshal([]byte(text), &n); err != nil {
		panic(fmt.Sprintf("schema: the example %q: %v", text, err))
	}
	return jsonOf(&n)
}

// jsonOf returns the value of a node as the core schema of YAML 1.2 takes it, and
// editors with it: days and times are text, and so are yes and no.
func jsonOf(n *yaml.Node) any {
	switch n.Kind {
	case yaml.DocumentNode:
		return jsonOf(n.Content[0])
	case yaml.SequenceNode:
		list := []any{}
		for _, item := range n.Content {
			list = append(list, jsonOf(item))
		}
		return list
	case yaml.MappingNode:
		group := object{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			group = append(group, member{n.Content[i].Value, jsonOf(n.Content[i+1])})
		}
		return group
	}
	switch n.ShortTag() {
	case "!!null":
		return nil
	case "!!bool":
		return n.Value == "true" || n.Value == "True" || n.Value == "TRUE"
	case "!!int":
		if i, err := strconv.ParseInt(n.Value, 10, 64); err == nil {
			return i
		}
	case "!!float":
		if f, err := strconv.ParseFloat(n.Value, 64); err == nil {
			return f
		}
	}
	return n.Value
}
