package org.geneticsrules.document;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.geneticsrules.document.Difference.Kind;

/** Where two documents are being compared: the place in words, the pointer in each, and the name of the nearest member. */
record Spot(List<String> place, String before, String after, String member) {

    static final Spot ROOT = new Spot(List.of(), "", "", "");

    Spot member(String name) {
        return new Spot(longer(name), before + step(name), after + step(name), name);
    }

    /** An item of a list; where it is in one document only, its number there stands for the other too and is not told. */
    Spot item(String label, int from, int to) {
        return new Spot(longer(label), before + "/" + from, after + "/" + to, member);
    }

    Difference added(Node node) {
        return new Difference(
                Kind.ADDED, place, Optional.empty(), Optional.of(after), Optional.empty(), Optional.of(node));
    }

    Difference removed(Node node) {
        return new Difference(
                Kind.REMOVED, place, Optional.of(before), Optional.empty(), Optional.of(node), Optional.empty());
    }

    Difference otherwise(Kind kind, Node from, Node to) {
        return new Difference(kind, place, Optional.of(before), Optional.of(after), Optional.of(from), Optional.of(to));
    }

    private List<String> longer(String step) {
        return Stream.concat(place.stream(), Stream.of(step)).toList();
    }

    /** As RFC 6901 has it. */
    private static String step(String name) {
        return "/" + name.replace("~", "~0").replace("/", "~1");
    }
}
