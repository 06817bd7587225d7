package org.geneticsrules.ferret;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.Node.TextNode;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Sex;

/** Changes one statement in the document of a model and reads the document again. */
final class StatementEdits {

    private final Model model;

    StatementEdits(Model model) {
        this.model = model;
    }

    /** The model without a statement; empty if it is no valid model then. */
    Optional<Model> without(String pointer) {
        return read(edit(ModelDocument.of(model), Pointer.names(pointer), statement -> null));
    }

    /**
     * Valid models in which a statement says something else: another expression, all states by chance, less covered, or the reverse order.
     */
    List<Model> replacing(String pointer) {
        List<String> names = Pointer.names(pointer);
        List<Model> valid = new ArrayList<>();
        for (String other : alternatives(names)) {
            read(edit(ModelDocument.of(model), names, statement -> saying(names, statement, other)))
                    .ifPresent(valid::add);
        }
        return valid;
    }

    private List<String> alternatives(List<String> names) {
        return switch (names.get(0)) {
            case "loci" -> {
                Locus locus = model.locus(names.get(1));
                yield names.get(3).equals("order")
                        ? List.of(locus.dominance(Sex.FEMALE)
                                        .order()
                                        .get(Integer.parseInt(names.get(4)))
                                        .recessive() + " > "
                                + locus.dominance(Sex.FEMALE)
                                        .order()
                                        .get(Integer.parseInt(names.get(4)))
                                        .dominant())
                        : locus.expressions();
            }
            case "traits" -> List.of("any state by chance");
            case "masks" -> List.of("less covered");
            default -> List.of("reversed");
        };
    }

    private Node saying(List<String> names, Node statement, String other) {
        return switch (names.get(0)) {
            case "loci" -> with(statement, names.get(3), other);
            case "traits" -> anyState(statement, names.get(1));
            case "masks" -> edit(statement, List.of("covers"), covers -> firstOnly((ObjectNode) covers));
            default -> reversed((ObjectNode) statement);
        };
    }

    /** Every state of a trait with a chance of its own, in place of whatever was given. */
    private Node anyState(Node statement, String trait) {
        List<String> states = model.states(trait);
        Map<String, Node> chances = new LinkedHashMap<>();
        int sum = states.size() * (states.size() + 1) / 2;
        states.forEach(state -> chances.put(state, Node.text(chances.size() + 1 + "/" + sum)));
        Map<String, Node> members =
                statement instanceof ObjectNode object ? new LinkedHashMap<>(object.members()) : new LinkedHashMap<>();
        members.keySet().removeAll(List.of("state", "progression", "threshold"));
        members.put("chance", new ObjectNode(chances));
        return new ObjectNode(members);
    }

    /** A mask of several traits then covers its first only. */
    private static Node firstOnly(ObjectNode covers) {
        String first = covers.members().keySet().iterator().next();
        return new ObjectNode(Map.of(first, covers.members().get(first)));
    }

    /** Every locus of a population with its frequencies the other way round. */
    private static Node reversed(ObjectNode population) {
        Map<String, Node> loci = new LinkedHashMap<>();
        ((ObjectNode) population.members().get("frequencies")).members().forEach((locus, frequencies) -> {
            Map<String, Node> alleles = ((ObjectNode) frequencies).members();
            List<Node> shares = new ArrayList<>(alleles.values());
            Map<String, Node> turned = new LinkedHashMap<>();
            alleles.keySet().forEach(allele -> turned.put(allele, shares.remove(shares.size() - 1)));
            loci.put(locus, new ObjectNode(turned));
        });
        return edit(population, List.of("frequencies"), before -> new ObjectNode(loci));
    }

    private static Node with(Node statement, String member, String value) {
        return statement instanceof TextNode
                ? Node.text(value)
                : edit(statement, List.of(member), before -> Node.text(value));
    }

    /** Puts another node in the place that the names lead to, or takes it out if the change gives null. */
    private static Node edit(Node node, List<String> names, UnaryOperator<Node> change) {
        if (names.isEmpty()) {
            return change.apply(node);
        }
        List<String> rest = names.subList(1, names.size());
        if (node instanceof ListNode list) {
            List<Node> items = new ArrayList<>(list.items());
            int index = Integer.parseInt(names.get(0));
            Node changed = edit(items.remove(index), rest, change);
            if (changed != null) {
                items.add(index, changed);
            }
            return new ListNode(items);
        }
        Map<String, Node> members = new LinkedHashMap<>(((ObjectNode) node).members());
        Node changed = edit(members.get(names.get(0)), rest, change);
        if (changed == null) {
            members.remove(names.get(0));
        } else {
            members.put(names.get(0), changed);
        }
        return new ObjectNode(members);
    }

    private static Optional<Model> read(Node document) {
        try {
            return Optional.of(Documents.reader()
                    .readModel(Source.of("edited", Documents.write(document)), Ferret.REGISTRY.catalogues()));
        } catch (ProblemsException e) {
            return Optional.empty();
        }
    }
}
